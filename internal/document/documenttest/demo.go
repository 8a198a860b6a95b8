package documenttest

import (
	"testing"

	"steelyard/data"
	"steelyard/internal/document"
)

// Demo opens the demo that the program comes with.
func Demo(t testing.TB) *document.Document {
	t.Helper()
	text, err := data.Files.ReadFile("demo/travel.json")
	if err != nil {
		t.Fatal(err)
	}
	d, problems := document.Open(text)
	if d == nil {
		t.Fatal(problems)
	}
	return d
}
