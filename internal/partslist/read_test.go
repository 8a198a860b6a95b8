package partslist

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"steelyard/internal/document"
	"steelyard/internal/document/documenttest"
)

const lists = "../../testdata/csv"

// brief writes what matters of a part in a line.
func brief(p document.Part) string {
	place := p.Station
	if p.At != nil {
		place = fmt.Sprint(*p.At)
	}
	return fmt.Sprintf("%s|%s|%d|%v±%v|%s|%s|%s", p.Name, p.Kind, p.Quantity, p.Mass, p.HalfWidth, p.Basis, place, p.Carrier)
}

func TestReadCSVFixtures(t *testing.T) {
	for _, c := range []struct {
		file     string
		parts    []string
		bad      []string // line and a word of the reason
		problems []string // words of each
		sums     string   // their lines
	}{
		{file: "plain.csv", parts: []string{
			"Rear hub|hub|1|350±18|stated|rear-axle|rear-wheel",
			"Tyre, rear|tyre|1|812±41|stated|rear-axle|rear-wheel",
			`Rim 29"|rim|1|530±27|stated|front-axle|front-wheel`,
		}},
		{file: "german-semicolon.csv", parts: []string{
			"Rear hub|hub|1|350±18|stated|rear-axle|rear-wheel",
			"Pedals|pedal|2|182±9|stated|pedals|main-frame",
			`Schutzblech "lang"|mudguard|1|1250±63|stated|rear-mudguard|main-frame`,
		}, sums: "6"},
		{file: "french-latin.csv", parts: []string{
			"Selle|saddle|1|350±18|stated|saddle|main-frame",
			"Pédales|pedal|2|182.5±9|stated|pedals|main-frame",
		}, problems: []string{"Windows-1252"}},
		{file: "tabs-utf16.txt", parts: []string{
			"Chain|chain|1|298±15|stated|chain|link",
			"Saddle|saddle|1|520±26|stated|saddle|main-frame",
		}},
		{file: "headerless.csv", parts: []string{
			"Rear hub|hub|1|350±18|stated|rear-axle|rear-wheel",
			"Chain|chain|1|298±15|stated|chain|link",
			"Saddle|saddle|1|520±26|stated|saddle|main-frame",
		}},
		{file: "headerless-quantity.csv", parts: []string{
			"Rear hub|hub|1|350±18|stated|rear-axle|rear-wheel",
			"Pedals|pedal|2|182±9|stated|pedals|main-frame",
			"Chain|chain|1|298±15|stated|chain|link",
		}},
		{file: "bad-rows.csv", parts: []string{
			"Rear hub|hub|1|350±18|stated|rear-axle|rear-wheel",
			"Pedals|pedal|2|182±9|stated|pedals|main-frame",
			"Bell|bell|1|30±2|stated|bar|fork-upper",
		}, bad: []string{
			"3 no name", "4 “heavy”", "5 no mass", "6 below 0", "7 “1e3”", `8 "a few"`, "9 quote is opened", "11 at most 500000 g",
		}, sums: "12"},
		{file: "total-per-line.csv", parts: []string{
			"Pedals|pedal|2|182±9|stated|pedals|main-frame",
			"Bottle cage|cage|3|40±2|stated|bottle-down-tube|main-frame",
		}},
		{file: "title-above.csv", parts: []string{
			"Hub|hub|1|350±18|stated|front-axle|front-wheel",
			"Rim|rim|1|528±26|stated|front-axle|front-wheel",
		}, bad: []string{"1 above the headers", "3 above the headers"}},
		{file: "formulas.csv", parts: []string{
			`=HYPERLINK("x")|other|1|10±1|stated|frame|main-frame`,
			"'tis a bell|bell|1|30±2|stated|bar|fork-upper",
		}},
		{file: "sep-line.csv", parts: []string{
			"Camera|load|1|900±180|guessed|[100 0 900]|fork-upper",
			"Lamp|light|1|120±2.4|weighed|front-light|main-frame",
		}},
	} {
		t.Run(c.file, func(t *testing.T) {
			text, err := os.ReadFile(filepath.Join(lists, c.file))
			if err != nil {
				t.Fatal(err)
			}
			r := ReadCSV(text, CSVOptions{})
			var got []string
			ids := make(map[string]bool)
			for _, p := range r.Parts {
				got = append(got, brief(p))
				if p.ID == "" || ids[p.ID] {
					t.Errorf("%s has the id %q", p.Name, p.ID)
				}
				ids[p.ID] = true
			}
			if diff := cmp.Diff(c.parts, got); diff != "" {
				t.Error(diff)
			}
			if len(r.Bad) != len(c.bad) {
				t.Fatalf("bad rows %+v, want %q", r.Bad, c.bad)
			}
			for i, want := range c.bad {
				line, word, _ := strings.Cut(want, " ")
				if b := r.Bad[i]; fmt.Sprint(b.Line) != line || !strings.Contains(b.Why.String(), word) {
					t.Errorf("bad row %+v, want %q", b, want)
				}
			}
			var sums []string
			for _, s := range r.Sums {
				sums = append(sums, fmt.Sprint(s.Line))
			}
			if got := strings.Join(sums, " "); got != c.sums {
				t.Errorf("sums in %s, want %s", got, c.sums)
			}
			if len(r.Problems) != len(c.problems) {
				t.Fatalf("problems %+v, want %q", r.Problems, c.problems)
			}
			for i, want := range c.problems {
				if !strings.Contains(r.Problems[i].Message.String(), want) {
					t.Errorf("problem %+v, want %q", r.Problems[i], want)
				}
			}
		})
	}
}

func TestReadCSVOptions(t *testing.T) {
	text := []byte("a,b,c,d\nHub,350,0.2,old\nRim,528,0.3,new\n")
	r := ReadCSV(text, CSVOptions{Columns: map[string]int{"name": 0, "mass": 2, "note": 3, "half_width": 9, "colour": 1}, MassUnit: "kg", Taken: []string{"p1", "p2"}})
	if len(r.Parts) != 2 || r.Parts[0].Mass != 200 || r.Parts[1].Note != "new" || r.Parts[0].ID == "p1" || r.Parts[0].ID == "p2" {
		t.Errorf("%+v", r.Parts)
	}
	if diff := cmp.Diff(map[string]int{"name": 0, "mass": 2, "note": 3}, r.Guess); diff != "" {
		t.Error(diff)
	}
	if len(r.Problems) != 2 {
		t.Error(r.Problems)
	}
	if r := ReadCSV(text, CSVOptions{Columns: map[string]int{"name": 0}}); len(r.Parts) != 0 || len(r.Problems) != 1 || !strings.Contains(r.Problems[0].Message.String(), "mass") {
		t.Errorf("%+v", r)
	}
	if r := ReadCSV(text, CSVOptions{MassUnit: "stone"}); len(r.Parts) != 0 || !strings.Contains(r.Problems[0].Message.String(), `"stone"`) {
		t.Errorf("%+v", r)
	}
	// The unit of a header goes before that of the list, that of a cell before both.
	r = ReadCSV([]byte("name,kg\nHub,0.35\nRim,530 g\n"), CSVOptions{MassUnit: "oz"})
	if len(r.Parts) != 2 || r.Parts[0].Mass != 350 || r.Parts[1].Mass != 530 {
		t.Errorf("%+v", r.Parts)
	}
	// Stations that are not there are told, and the kind places the part.
	r = ReadCSV([]byte("name,g,station\nRear hub,350,moon\nLoad,500,Saddle bag\n"), CSVOptions{Stations: []string{"rear-axle", "saddle-bag"}})
	if len(r.Parts) != 2 || r.Parts[0].Station != "rear-axle" || r.Parts[1].Station != "saddle-bag" || len(r.Problems) != 1 || !strings.Contains(r.Problems[0].Message.String(), `"moon"`) {
		t.Errorf("%+v", r)
	}
}

func TestReadCSVLimits(t *testing.T) {
	rows := func(n int) []byte { return []byte("name,g\n" + strings.Repeat("Hub,350\n", n)) }
	if r := ReadCSV(rows(MaxCSVRows), CSVOptions{}); len(r.Parts) != MaxCSVRows || len(r.Problems) != 0 {
		t.Error(len(r.Parts), r.Problems)
	}
	if r := ReadCSV(rows(MaxCSVRows+1), CSVOptions{}); len(r.Parts) != MaxCSVRows || len(r.Problems) != 1 || !strings.Contains(r.Problems[0].Message.String(), "10000 rows") {
		t.Error(len(r.Parts), r.Problems)
	}
	if r := ReadCSV(make([]byte, MaxCSVText+1), CSVOptions{}); len(r.Problems) != 1 || !strings.Contains(r.Problems[0].Message.String(), "4 MiB") {
		t.Error(r.Problems)
	}
	for _, empty := range []string{"", "\n\n", ",,,\n;;\n", "\ufeff"} {
		if r := ReadCSV([]byte(empty), CSVOptions{}); len(r.Parts) != 0 || len(r.Problems) != 1 {
			t.Errorf("%q: %+v", empty, r)
		}
	}
	// A list of lost quotes is given up before it takes long.
	r := ReadCSV([]byte("name,g\n"+strings.Repeat("\"Hub,350\nRim,1\n", 100000)), CSVOptions{})
	if len(r.Bad) == 0 || len(r.Problems) == 0 {
		t.Error(r.Bad, r.Problems)
	}
}

// One lost quote takes one row with it, not the rest of the list.
func TestReadCSVLostQuote(t *testing.T) {
	r := ReadCSV([]byte("name,g\nHub,350\n\"Rim,528\n"+strings.Repeat("Chain,298\n", 50)), CSVOptions{})
	if len(r.Parts) != 51 || len(r.Bad) != 1 || r.Bad[0].Line != 3 || r.Bad[0].Text != "\"Rim,528" {
		t.Errorf("%d parts, bad %+v", len(r.Parts), r.Bad)
	}
}

func TestReadCSVAmbiguousNumbers(t *testing.T) {
	for _, c := range []struct {
		text string
		mass []float64
		bad  int
	}{
		{"name;g\nHub;1.234\n", nil, 1},                          // 1.234 g or 1234 g
		{"name;g\nHub;1.234\nRim;0,5\n", []float64{1234, .5}, 0}, // the other row tells
		{"name;g\nHub;1,234\nRim;0,5\n", []float64{1.234, .5}, 0},
		{"name,g\nHub,1.234\n", []float64{1.234}, 0}, // a list with commas between has a decimal point
		{"name,g\nHub,\"1,234\"\n", []float64{1234}, 0},
		{"name;kg\nHub;1.234\n", []float64{1234}, 0},
		{"name;g\nHub;1.234,5\n", []float64{1234.5}, 0},
	} {
		r := ReadCSV([]byte(c.text), CSVOptions{})
		var got []float64
		for _, p := range r.Parts {
			got = append(got, p.Mass)
		}
		if diff := cmp.Diff(c.mass, got); diff != "" || len(r.Bad) != c.bad {
			t.Errorf("%q: %v, bad %+v", c.text, got, r.Bad)
		}
	}
}

func TestReadCSVSuspectsTheUnit(t *testing.T) {
	r := ReadCSV([]byte("name,mass\na,0.35\nb,1.2\nc,0.5\nd,2\ne,0.1\n"), CSVOptions{MassUnit: "g"})
	if len(r.Parts) != 5 || len(r.Problems) != 1 || !strings.Contains(r.Problems[0].Message.String(), "another unit") {
		t.Errorf("%+v", r.Problems)
	}
}

func TestReadHeader(t *testing.T) {
	for s, want := range map[string]header{
		"Weight (kg)":       {field: "mass", exact: true, unit: "kg"},
		"mass_g":            {field: "mass", exact: true, unit: "g"},
		"Gewicht [g]":       {field: "mass", exact: true, unit: "g"},
		"Gewicht in Gramm":  {field: "mass", exact: true, unit: "g"},
		"grams":             {field: "mass", exact: true, unit: "g"},
		"Poids unitaire, g": {field: "mass", exact: true, unit: "g"},
		"Gesamtgewicht":     {field: "mass", exact: true, total: true},
		"Total weight lbs":  {field: "mass", exact: true, unit: "lb", total: true},
		"half_width_g":      {field: "half_width", exact: true, unit: "g"},
		"± g":               {field: "half_width", exact: true, unit: "g"},
		"Tolerance (+/-)":   {field: "half_width", exact: true},
		"Stück":             {field: "quantity", exact: true},
		"Quantité":          {field: "quantity", exact: true},
		"QTY.":              {field: "quantity", exact: true},
		"offset_x_mm":       {field: "offset_x", exact: true},
		"Part name":         {field: "name", exact: true},
		"Bike part":         {field: "name"},
		"price":             {},
		"":                  {},
	} {
		if got := readHeader(s); got != want {
			t.Errorf("%q: %+v, want %+v", s, got, want)
		}
	}
}

func TestWriteCSV(t *testing.T) {
	b := &document.Build{Parts: []document.Part{
		{ID: "p1", Name: `=cmd|' /C calc'!A0`, Kind: "rim", Quantity: 2, Mass: 530.5, HalfWidth: 20, Basis: document.Typical, Station: "rear-axle", Offset: document.Vec3{1, -2, 3.25}, Within: 5, Carrier: document.RearWheel, Note: "-5 °C; \"cold\""},
		{ID: "p2", Name: "Load", Kind: "load", Quantity: 1, Mass: 2000, HalfWidth: 1, Basis: document.Weighed, At: &document.Vec3{-100, 0, 900}, Within: 30, Carrier: document.MainFrame, Catalogue: "@x"},
	}}
	want := "\ufeffname,kind,quantity,mass_g,half_width_g,basis,station,offset_x_mm,offset_y_mm,offset_z_mm,carrier,note,within_mm,catalogue,id\r\n" +
		"'=cmd|' /C calc'!A0,rim,2,530.5,20,typical,rear-axle,1,-2,3.25,rear-wheel,\"'-5 °C; \"\"cold\"\"\",5,,p1\r\n" +
		"Load,load,1,2000,1,weighed,,-100,0,900,main-frame,,30,'@x,p2\r\n"
	if diff := cmp.Diff(want, string(WriteCSV(b, CSVStyle{}))); diff != "" {
		t.Error(diff)
	}
	b.Parts = b.Parts[1:]
	want = "name;kind;quantity;mass_g;half_width_g;basis;station;offset_x_mm;offset_y_mm;offset_z_mm;carrier;note;within_mm;catalogue;id\r\n" +
		"Load;load;1;2000,125;1;weighed;;-100;0;900;main-frame;;30;'@x;p2\r\n"
	b.Parts[0].Mass = 2000.125
	if diff := cmp.Diff(want, string(WriteCSV(b, CSVStyle{Semicolon: true}))); diff != "" {
		t.Error(diff)
	}
}

func TestCover(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.StringOf(rapid.SampledFrom([]rune("'=+-@\t\r\nab ＝é"))).Draw(t, "text")
		c := cover(s)
		if got := uncover(c); got != s {
			t.Fatalf("%q is covered as %q, and uncovered as %q", s, c, got)
		}
		if c != "" && strings.ContainsRune(formulaStarts, []rune(c)[0]) {
			t.Fatalf("%q begins like a formula", c)
		}
	})
}

// A cell of several lines is one cell when the separator is looked for too; an
// inch mark opens none, and a doubled quote closes none.
func TestSeparatorOfCellsOfSeveralLines(t *testing.T) {
	for _, text := range []string{
		"name;mass_g;note\nRim;0,5;\"A\n,\"\n",
		"name;mass_g\nTyre 27.5\";800,5\nTyre 29\";900,5\nRim, rear;500\n",
		"name;mass_g\n\"Tyre 29\"\", rear\";900\n\"Rim \"\"a\"\", rear\";500\n",
		"name;mass_g\n\"\"\",\";900\n",
	} {
		r := ReadCSV([]byte(text), CSVOptions{})
		if r.Separator != ";" || len(r.Parts) == 0 || len(r.Bad) > 0 {
			t.Errorf("%q is separated by %q: %+v %+v", text, r.Separator, r.Parts, r.Bad)
		}
	}
}

// What WriteCSV writes, ReadCSV reads: everything but the shape, the gearing,
// and spaces around a text.
func TestCSVRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := &document.Build{}
		for i := range rapid.IntRange(1, 5).Draw(t, "parts") {
			p := documenttest.Part(fmt.Sprint("p", i)).Draw(t, "part")
			p.Name = strings.Join(strings.Fields(p.Name), " ")
			p.Note = strings.TrimSpace(strings.ReplaceAll(strings.ReplaceAll(p.Note, "\r\n", "\n"), "\r", ""))
			if p.Name == "" {
				p.Name = "Rim"
			}
			if p.At != nil {
				p.Offset = document.Vec3{}
			}
			// Largest differences between a figure and its digits are the parser's.
			p.Mass, p.HalfWidth = float64(int(p.Mass*1000))/1000, float64(int(p.HalfWidth*1000))/1000
			for i := range p.Offset {
				p.Offset[i] = float64(int(p.Offset[i]*8)) / 8
				if p.At != nil {
					p.At[i] = float64(int(p.At[i]*8)) / 8
				}
			}
			p.Within = float64(int(p.Within*8)) / 8
			p.Shape, p.Joint, p.Gearing = document.Shape{}, nil, nil
			b.Parts = append(b.Parts, p)
		}
		style := CSVStyle{Semicolon: rapid.Bool().Draw(t, "semicolon")}
		text := WriteCSV(b, style)
		r := ReadCSV(text, CSVOptions{})
		if len(r.Bad) > 0 || len(r.Problems) > 0 {
			t.Fatalf("%+v %+v\n%s", r.Bad, r.Problems, text)
		}
		for i := range r.Parts {
			r.Parts[i].Shape, r.Parts[i].Gearing = document.Shape{}, nil
		}
		if diff := cmp.Diff(b.Parts, r.Parts); diff != "" {
			t.Fatalf("%s\n%s", diff, text)
		}
	})
}

func FuzzReadCSV(f *testing.F) {
	files, err := filepath.Glob(lists + "/*.[ct][sx][vt]")
	if err != nil || len(files) == 0 {
		f.Fatal(err)
	}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(text)
	}
	f.Add([]byte("\"\"\"\n\"a\n\n\"b\";1\n"))
	f.Add([]byte(",A\n\r\r\n0"))
	f.Add([]byte("0g,0A"))
	f.Add([]byte("n\x00a\x00m\x00e\x00,\x00g\x00\n\x00R\x00i\x00m\x00,\x005\x00"))
	f.Add([]byte("St\xfcck;Gewicht;Teil\r2;500;Felge\r64;6,5;Speichen\r;1416;\r"))
	f.Fuzz(func(t *testing.T, text []byte) {
		r := ReadCSV(text, CSVOptions{})
		if !utf8.ValidString(fmt.Sprint(r.Columns, r.Parts, r.Bad)) {
			t.Error("what was read is not in UTF-8")
		}
		total := 0.0
		for _, p := range r.Parts {
			total += p.Mass * float64(p.Quantity)
		}
		if math.Abs(total-r.Total) > 1e-9*total || r.Placed > r.Total*(1+1e-9) {
			t.Errorf("%v g, of that %v placed, but the parts weigh %v", r.Total, r.Placed, total)
		}
		pieces := make(map[string]int) // what is open does not change how many there are
		for _, p := range r.Parts {
			pieces[p.Name] += p.Quantity
		}
		ends := make(map[int]string)
		for _, e := range r.Ends {
			if e.Front+e.Rear != e.Pieces {
				t.Errorf("%+v", e)
			}
			ends[e.Line] = EndRear
		}
		other := ReadCSV(text, CSVOptions{Ends: ends})
		if math.Abs(other.Total-r.Total) > 1e-6*r.Total {
			t.Errorf("all at the rear it weighs %v g, else %v", other.Total, r.Total)
		}
		for _, p := range other.Parts {
			pieces[p.Name] -= p.Quantity
		}
		for name, n := range pieces {
			if n != 0 {
				t.Errorf("%d pieces of %q more or less at the rear", n, name)
			}
		}
		if 2*r.Rows < len(r.Parts) { // a part for each end
			t.Errorf("%d rows, %d parts", r.Rows, len(r.Parts))
		}
		plain, _, _ := decode(text)
		lines := strings.Count(plain, "\n") + 1
		if r.Note {
			lines = r.Rows // its items are counted
		}
		for _, b := range r.Bad {
			if b.Why.IsZero() || b.Line < 1 || b.Line > lines {
				t.Errorf("bad row %+v of %d lines", b, lines)
			}
		}
		ids := make(map[string]bool)
		for i := range r.Parts {
			if ids[r.Parts[i].ID] {
				t.Errorf("the id %s is given twice", r.Parts[i].ID)
			}
			ids[r.Parts[i].ID] = true
			for _, p := range r.Parts[i].Check() {
				if p.Severity == document.SeverityError {
					t.Errorf("%+v: %+v", r.Parts[i], p)
				}
			}
		}
		out := WriteCSV(&document.Build{Parts: r.Parts}, CSVStyle{})
		records, err := csv.NewReader(bytes.NewReader(out)).ReadAll()
		if err != nil || len(records) != len(r.Parts)+1 {
			t.Errorf("%d records of %d parts, %v", len(records), len(r.Parts), err)
		}
	})
}

func BenchmarkReadCSV(b *testing.B) {
	text := WriteCSV(&documenttest.TwoBuilds(60).Builds[0], CSVStyle{})
	for b.Loop() {
		ReadCSV(text, CSVOptions{})
	}
}
