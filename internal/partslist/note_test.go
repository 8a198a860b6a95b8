package partslist

import (
	"fmt"
	"strings"
	"testing"
	"unicode/utf8"
)

// told writes the parts of a list, pieces × name: mass of a piece ± half-width, and
// what is no part in brackets.
func told(r CSVResult) string {
	var s []string
	for _, p := range r.Parts {
		s = append(s, fmt.Sprintf("%d × %s: %.2f ± %.0f", p.Quantity, p.Name, p.Mass, p.HalfWidth))
	}
	for _, b := range r.Bad {
		s = append(s, "["+b.Text+"]")
	}
	return strings.ReplaceAll(strings.Join(s, "; "), ".00", "")
}

func TestReadNote(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"saddle 512 g, post 272 g, two bottles 81 g", "1 × saddle: 512 ± 26; 1 × post: 272 ± 14; 2 × bottles: 81 ± 4"},
		{"saddle 512 g\npost 272 g\ntwo bottles 81 g\n", "1 × saddle: 512 ± 26; 1 × post: 272 ± 14; 2 × bottles: 81 ± 4"},
		{"- saddle 512 g\r\n* post: 272 g\r\n• two bottles, 81 g each\r\n", "1 × saddle: 512 ± 26; 1 × post: 272 ± 14; 2 × bottles: 81 ± 4"},
		{"1. saddle 512g\n2. post 272g\n3) bell 42g", "1 × saddle: 512 ± 26; 1 × post: 272 ± 14; 1 × bell: 42 ± 2"},
		{"> saddle 512 g\n> > post 272 g", "1 × saddle: 512 ± 26; 1 × post: 272 ± 14"},
		{"[x] saddle 512 g\n[ ] post 272 g", "1 × saddle: 512 ± 26; 1 × post: 272 ± 14"},
		{"Sattel 512 g, Stütze 272 g und zwei Flaschen 81 g", "1 × Sattel: 512 ± 26; 1 × Stütze: 272 ± 14; 2 × Flaschen: 81 ± 4"},
		{"Sattel 0,5 kg, Schloss 1,2 kg", "1 × Sattel: 500 ± 25; 1 × Schloss: 1200 ± 60"},
		{"Sattel 512,5 g,Stütze 272,5 g", "1 × Sattel: 512.50 ± 26; 1 × Stütze: 272.50 ± 14"},
		{"zwölf Schrauben 4 g; Klingel 42 g", "12 × Schrauben: 4 ± 1; 1 × Klingel: 42 ± 2"},
		{"2x bottle 81 g, 2 × bottle cage 42 g, 2× bell 40 g", "2 × bottle: 81 ± 4; 2 × bottle cage: 42 ± 2; 2 × bell: 40 ± 2"},
		{"2 x bottle 81 g\nbottle cage x2 42 g\nbell 40 g (2x)\nbell 40 g x 2", "2 × bottle: 81 ± 4; 2 × bottle cage: 42 ± 2; 2 × bell: 40 ± 2; 2 × bell: 40 ± 2"},
		{"two bottles 162 g together, bell 42 g", "2 × bottles: 81 ± 4; 1 × bell: 42 ± 2"},
		{"zwei Flaschen zusammen 162 g, Klingel 42 g", "2 × Flaschen: 81 ± 4; 1 × Klingel: 42 ± 2"},
		{"zwei Flaschen à 81 g, drei Klingeln je 42 g", "2 × Flaschen: 81 ± 4; 3 × Klingeln: 42 ± 2"},
		{"12 speed chain 265 g, 11 speed cassette 450 g", "1 × 12 speed chain: 265 ± 13; 1 × 11 speed cassette: 450 ± 23"},
		{"saddle ca. 500 g, post ~270 g", "1 × saddle: 500 ± 100; 1 × post: 270 ± 54"},
		{"saddle 512 ± 2 g, post 272 g", "1 × saddle: 512 ± 2; 1 × post: 272 ± 14"},
		{"saddle 18 oz, post 9.6 oz", "1 × saddle: 510.29 ± 26; 1 × post: 272.16 ± 14"}, // NIST SP 811, appendix B.8
		{"lock 2 lb 3 oz and bell 42 g", "1 × lock: 992.23 ± 50; 1 × bell: 42 ± 2"},     // likewise
		{"saddle ..... 512 g\npost ______ 272 g", "1 × saddle: 512 ± 26; 1 × post: 272 ± 14"},
		{"512 g saddle, 272 g post", "1 × saddle: 512 ± 26; 1 × post: 272 ± 14"},
		{"frame 1.234 g, lock 1,2 kg", "1 × frame: 1234 ± 62; 1 × lock: 1200 ± 60"}, // the lock has a decimal comma
		{"frame 1.234 g, lock 1 kg", "1 × lock: 1000 ± 50; [frame 1.234 g]"},        // and here nobody knows
		// Without a unit, where such a part weighs that.
		{"saddle 300\npost 272\ntyre 55", "1 × saddle: 300 ± 15; 1 × post: 272 ± 14; [tyre 55]"},
		// What is no part is told.
		{"Hi Tom,\n\nsaddle 512 g\npost 272 g\n\nCheers", "1 × saddle: 512 ± 26; 1 × post: 272 ± 14; [Hi Tom,]; [Cheers]"},
		{"saddle, post 272 g, bell 42 g", "1 × post: 272 ± 14; 1 × bell: 42 ± 2; [saddle]"},
	} {
		r := ReadCSV([]byte(c.text), CSVOptions{})
		if got := told(r); got != c.want || !r.Note {
			t.Errorf("%q (note: %v)\n got %s\nwant %s", c.text, r.Note, got, c.want)
		}
	}
	// Two tyres go to both ends, and what is a sum is asked about, as in a table.
	r := ReadCSV([]byte("two tyres 700 g, bell 42 g"), CSVOptions{})
	if len(r.Parts) != 3 || len(r.Ends) != 1 || r.Parts[0].Carrier == r.Parts[1].Carrier {
		t.Errorf("two tyres: %s, %+v", told(r), r.Ends)
	}
	r = ReadCSV([]byte("saddle 512 g\npost 272 g\ntotal 784 g"), CSVOptions{})
	if len(r.Parts) != 2 || len(r.Sums) != 1 {
		t.Errorf("with a total: %s, %+v", told(r), r.Sums)
	}
}

// A table stays a table.
func TestTablesAreNoNotes(t *testing.T) {
	for _, text := range []string{
		"name,mass_g\nsaddle,512\npost,272\n", "saddle,512 g\npost,272 g\n", "saddle;512,5;1\npost;272,5;1\n", "saddle\t512\npost\t272\n",
		"Teil;Gewicht (g)\nSattel;512\nStütze;\n", "saddle, 512 g\npost, 272 g",
	} {
		if r := ReadCSV([]byte(text), CSVOptions{}); r.Note || len(r.Parts) == 0 {
			t.Errorf("%q is read as a note: %s", text, told(r))
		}
	}
}

func TestSeveral(t *testing.T) {
	for text, want := range map[string]int{
		"saddle 512 g, post 272 g, two bottles 81 g": 3, "saddle 512 g\npost 272 g": 2, "saddle\t512\npost\t272": 2, "saddle,512\npost,272\n": 2,
		"saddle 512 g": 0, "Tyre, front, 50-622, 700 g": 0, "saddle, leather": 0, "": 0, "tyre 50": 0, "Schloss 1,2 kg": 0, "lock and chain 1.2 kg": 0,
		"cassette 11, chain 10": 0, "\n\nsaddle 512 g\n": 0, "Tyre, front, 50-622, 700 g, tube 200 g": 2,
	} {
		if got := Several(text); got != want {
			t.Errorf("%q lists %d parts, want %d", text, got, want)
		}
	}
}

// Every item of a note is a part or told of, whatever it is.
func FuzzReadNote(f *testing.F) {
	for _, s := range []string{
		"saddle 512 g, post 272 g, two bottles 81 g", "- 2x bottle 81,5 g\n1. bell 40 g x 2", "frame 1.234 g", "> [x] a 5 g\n", "± 3 g, x", "1\u00a0200\u00a0g x", "\xff 3 g; ,,; 2 ×", "à à 3 g je", "zwölf x 5 kg zusammen", "1 x", "2 × x 3 g", "x2 x2 x2 5 g",
	} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		items := noteItems(text)
		for _, item := range items {
			if len(item.cells) != len(noteFields) || item.text == "" {
				t.Fatalf("%q: %+v", text, item)
			}
		}
		r := newReader(CSVOptions{})
		r.note = true
		r.read([]byte(text))
		if !utf8.ValidString(text) || strings.ContainsAny(text, "\x00\ufeff\r") || // which other encodings have
			len(items) > MaxCSVRows {
			return
		}
		twice := 0 // of an item that goes to both ends there are two parts
		for _, e := range r.result.Ends {
			if e.Front > 0 && e.Rear > 0 {
				twice++
			}
		}
		if got := len(r.result.Parts) - twice + len(r.result.Bad) + len(r.result.Sums); len(r.result.Problems) == 0 && got != len(items) {
			t.Errorf("%q: of %d items %d are told: %s", text, len(items), got, told(r.result))
		}
		Several(text)
	})
}
