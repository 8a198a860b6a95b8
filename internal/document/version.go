package document

import (
	"bytes"
	"fmt"
	"strconv"

	"github.com/goccy/go-json"

	"steelyard/internal/words"
)

// migration turns the tree of a text of one version into that of the next.
type migration func(tree map[string]any) error

// migrations holds the step from version i+1 to version i+2. Version 1 is the
// first, so there is none yet. To change the format: raise Version, add the
// step here and a document of the old version to testdata/documents, and let
// the old text open.
var migrations []migration

// upgrade judges format and version of a text that was walked carefully. It
// returns the text in this program's version if it was of an older one, or a
// refusal; neither, if format and version are this program's.
func upgrade(text []byte, s *scanner) (migrated []byte, refusal []Problem) {
	if s.format != "" && s.format != Format {
		return nil, refuse("format", "document.format.other", "format", words.Quote(s.format), "want", words.Quote(Format))
	}
	if s.hasVersion {
		version, err := strconv.Atoi(s.version)
		switch {
		case err != nil || version < 1:
			return nil, refuse("version", "document.version.wrong", "version", words.Shorten(s.version), "most", Version)
		case version > Version:
			return nil, refuse("version", "document.version.newer", "version", version, "most", Version)
		case version < Version && !s.fatal:
			migrated, err := migrate(text, version, migrations)
			if err != nil {
				return nil, refuse("version", "document.version.migrate", "version", version, "most", Version, "why", err)
			}
			return migrated, nil
		}
	}
	switch {
	case s.fatal, bytes.TrimSpace(text)[0] != '{':
		return nil, nil // no object: that is told better
	case s.format == "":
		return nil, refuse("format", "document.format.none", "want", words.Quote(Format))
	case !s.hasVersion:
		return nil, refuse("version", "document.version.none", "want", Version)
	}
	return nil, nil
}

// migrate brings a text from a version through the steps to the version after
// the last of them. Numbers keep their digits.
func migrate(text []byte, version int, steps []migration) ([]byte, error) {
	var tree map[string]any
	if err := decodeExact(text, &tree); err != nil {
		return nil, err
	}
	for ; version <= len(steps); version++ {
		if err := steps[version-1](tree); err != nil {
			return nil, fmt.Errorf("from version %d: %w", version, err)
		}
		tree["version"] = version + 1
	}
	return json.Marshal(tree)
}

// decodeExact decodes a text without rounding its numbers.
func decodeExact(text []byte, v any) error {
	dec := json.NewDecoder(bytes.NewReader(text))
	dec.UseNumber()
	return dec.Decode(v)
}
