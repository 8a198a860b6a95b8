package document_test

import (
	"io/fs"
	"reflect"
	"testing"

	"steelyard/data"
	"steelyard/internal/document"
	"steelyard/internal/parts"
)

// The files of the catalogue have no key that an entry has not, and none twice.
func TestCatalogueFilesAreStrict(t *testing.T) {
	names, err := fs.Glob(data.Files, "catalogue/*.json")
	if err != nil || len(names) == 0 {
		t.Fatal(names, err)
	}
	for _, name := range names {
		text, err := fs.ReadFile(data.Files, name)
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range document.Strict(text, reflect.TypeFor[[]parts.Entry]()) {
			t.Errorf("%s: %s", name, p.Message.String())
		}
	}
}
