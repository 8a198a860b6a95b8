package bridge

import (
	"encoding/xml"
	"errors"
	"io"
	"strings"
	"testing"

	"steelyard/data"
)

func TestWeighInDrawing(t *testing.T) {
	text, err := data.Files.ReadFile("demo/travel.json")
	if err != nil {
		t.Fatal(err)
	}
	draw := new(Session).weighInDrawing
	wide := draw(string(text), "", `{"width":1000,"height":520,"units":{"length":"mm"}}`)
	for d := xml.NewDecoder(strings.NewReader(wide)); ; {
		if _, err := d.Token(); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			t.Fatalf("the drawing is not well-formed: %v", err)
		}
	}
	if !strings.HasPrefix(wide, "<svg") || !strings.Contains(wide, "300") {
		t.Errorf("want a drawing with a block of 300 mm, got %.200s", wide)
	}
	if inches := draw(string(text), "", `{"units":{"length":"in"}}`); !strings.Contains(inches, "11.8") {
		t.Errorf("want the height of the block in inches")
	}
	for name, args := range map[string][]string{
		"no document": {"{", ""},
		"a bad view":  {string(text), "", "["},
		"no build":    {buildless, ""},
	} {
		if got := draw(args...); !strings.HasPrefix(got, `{"problem`) {
			t.Errorf("%s: want a problem, got %.80s", name, got)
		}
	}
}

// buildless is a document without builds.
const buildless = `{"format":"steelyard-document","version":1,"title":"","show":{"mass":"g","length":"mm"},"builds":[]}`
