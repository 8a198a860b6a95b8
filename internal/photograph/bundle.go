package photograph

import (
	"strings"

	"github.com/goccy/go-json"

	"steelyard/internal/words"
)

// member is what photographs are called in the file of a document.
const member = "photographs"

// Most photographs that a file may have.
const most = 20

// Bundle puts photographs, a JSON list, behind the last member of a document's text.
func Bundle(document, photographs string) string {
	end := strings.LastIndexByte(document, '}')
	if end < 0 || photographs == "" || photographs == "[]" {
		return document
	}
	return strings.TrimRight(document[:end], " \t\n") + ",\n\t\"" + member + "\": " + photographs + "\n}\n"
}

// Unbundle takes the photographs out of the text of a file: what is left is the text
// of a document, byte for byte as it stood there, sound or not. A photograph that
// cannot be read is left out, and told of in the error; the others are sound.
func Unbundle(text string) (document string, photographs []Photograph, err error) {
	from, to, value := find(text)
	if to == 0 {
		return text, nil, nil
	}
	var all []json.RawMessage
	if json.Unmarshal([]byte(text[value:to]), &all) != nil {
		err = words.Tell("photograph.bundle")
	}
	for i, raw := range all {
		var p Photograph
		if i >= most || json.Unmarshal(raw, &p) != nil || p.check() != nil || !p.picture() {
			err = words.Tell("photograph.bundle")
			continue
		}
		photographs = append(photographs, p)
	}
	// One of the commas around goes with it.
	rest := strings.TrimLeft(text[to:], " \t\r\n")
	before := strings.TrimRight(text[:from], " \t\r\n")
	switch {
	case strings.HasPrefix(rest, ","):
		rest = rest[1:]
	case strings.HasSuffix(before, ","):
		before = before[:len(before)-1]
	}
	return before + rest, photographs, err
}

// find finds the member in the outermost object of a text: from its key to behind
// its value. There is none where to is 0.
func find(text string) (from, to, value int) {
	if !strings.Contains(text, `"`+member+`"`) {
		return 0, 0, 0
	}
	depth := 0
	for i := 0; i < len(text); i++ {
		switch text[i] {
		case '{', '[':
			depth++
		case '}', ']':
			if depth--; depth == 1 && value > 0 {
				return from, i + 1, value
			}
		case '"':
			start := i
			for i++; i < len(text) && text[i] != '"'; i++ {
				if text[i] == '\\' {
					i++
				}
			}
			if depth != 1 || value > 0 || i >= len(text) || text[start:i] != `"`+member {
				continue
			}
			after := strings.TrimLeft(text[i+1:], " \t\r\n")
			if !strings.HasPrefix(after, ":") {
				continue
			}
			after = strings.TrimLeft(after[1:], " \t\r\n")
			if strings.HasPrefix(after, "[") || strings.HasPrefix(after, "{") {
				from, value = start, len(text)-len(after)
			}
		}
	}
	return 0, 0, 0
}
