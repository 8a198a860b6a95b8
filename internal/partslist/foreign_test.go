package partslist

import (
	"encoding/csv"
	"io"
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"

	"steelyard/internal/document"
)

// split reads a list as a spreadsheet does that splits at another character
// than the list was written with: quotes count only at the start of a cell.
func split(t interface{ Fatal(...any) }, text string, at rune) (cells []string) {
	r := csv.NewReader(strings.NewReader(strings.TrimPrefix(text, "\xef\xbb\xbf")))
	r.Comma, r.LazyQuotes, r.FieldsPerRecord = at, true, -1
	for {
		row, err := r.Read()
		if err == io.EOF {
			return cells
		}
		if err != nil {
			t.Fatal(err)
		}
		cells = append(cells, row...)
	}
}

// A list that another country's spreadsheet tears apart has no formula among
// the pieces.
func TestNoFormulaWhereverAListIsSplit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringOfN(rapid.SampledFrom([]rune("=+-@＝'\",;\t\n\r a1")), 0, 12, -1)
		if s := text.Draw(t, "text"); uncover(cover(s)) != s {
			t.Fatalf("%q is covered as %q, and uncovered as %q", s, cover(s), uncover(cover(s)))
		}
		b := document.Build{Parts: []document.Part{{Name: text.Draw(t, "name"), Note: text.Draw(t, "note"), ID: text.Draw(t, "id"), Offset: document.Vec3{-1, 2, -3.5}}}}
		for _, semicolon := range []bool{false, true} {
			list := string(WriteCSV(&b, CSVStyle{Semicolon: semicolon}))
			for _, at := range ",;\t" {
				for _, cell := range split(t, list, at) {
					r, n := utf8.DecodeRuneInString(cell)
					if n == 0 || !strings.ContainsRune("=+-@＝＋－＠", r) {
						continue
					}
					if strings.Trim(cell, "-0123456789.,") == "" {
						continue // a coordinate
					}
					t.Fatalf("split at %q, %q has the formula %q", at, list, cell)
				}
			}
		}
	})
}

func TestCoverWithin(t *testing.T) {
	for s, want := range map[string]string{
		"Bell;=1+1":      "Bell;'=1+1",
		"a,'=1":          "a,''=1",
		"x\t@y":          "x\t'@y",
		"one\n-two":      "one\n'-two",
		"one\r\ntwo":     "one\r\ntwo",
		"one\n\ntwo":     "one\n\ntwo",
		`;"=1"`:          `;'"=1"`,
		"a, -5 g; +2 mm": "a, -5 g; +2 mm",
		"=a;=b":          "'=a;'=b",
		"\xff;=\xff":     "\xff;'=\xff",
	} {
		if got := cover(s); got != want || uncover(got) != s {
			t.Errorf("%q is covered as %q, want %q, and uncovered as %q", s, got, want, uncover(got))
		}
	}
}
