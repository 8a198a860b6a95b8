package tables_test

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"steelyard/internal/document"
	"steelyard/internal/partslist"
	"steelyard/internal/report"
	"steelyard/internal/tables"
)

const day = "3 May 2026"

// Counts and shares are those of the lines that are on the bike.
func TestProvenance(t *testing.T) {
	d := withState(laden(), document.Ridden, document.Full)
	for i := range d.Builds {
		for k := range d.Builds[i].Parts {
			d.Builds[i].Parts[k].Basis = document.Bases[k%len(document.Bases)]
		}
	}
	e := report.Weigh(d, nil)
	notes := tables.Provenance(e, day)
	if len(notes) != 5 {
		t.Fatalf("%d sentences: %q", len(notes), notes)
	}
	if !strings.Contains(notes[0], report.Program()) || !strings.Contains(notes[0], day) {
		t.Errorf("%q does not name the program's version and the day", notes[0])
	}
	for i, side := range e.Report.Sides {
		count, grams := map[document.Basis]int{}, map[document.Basis]float64{}
		for _, p := range d.Builds[i].Parts {
			count[p.Basis]++
			grams[p.Basis] += p.Mass * float64(p.Quantity)
		}
		for _, b := range d.Loads[0].Bags {
			count[b.Basis]++
			grams[b.Basis] += b.Mass
		}
		for _, g := range d.Loads[0].Goods {
			if g.In != "" {
				count[g.Basis]++
				grams[g.Basis] += g.Mass * float64(g.Quantity)
			}
		}
		total := 0.0
		for _, f := range side.Figures {
			if f.Key == "total" {
				total = f.Value
			}
		}
		said := notes[1+i]
		for basis, words := range map[document.Basis]string{document.Weighed: "weighed", document.Stated: "stated by makers", document.Typical: "typical figures", document.Guessed: "guessed"} {
			want := fmt.Sprintf("%d %s (%.0f %%)", count[basis], words, 100*grams[basis]/total)
			if !strings.Contains(said, want) {
				t.Errorf("%q does not say %q", said, want)
			}
		}
		if want := fmt.Sprintf("the rider (%.0f %%)", 100*side.Body.Mass/total); !strings.Contains(said, want) {
			t.Errorf("%q does not say %q", said, want)
		}
		sum := 0
		for _, m := range regexp.MustCompile(`\((\d+) %\)`).FindAllStringSubmatch(said, -1) {
			n, err := strconv.Atoi(m[1])
			if err != nil {
				t.Fatal(err)
			}
			sum += n
		}
		if sum < 98 || sum > 102 {
			t.Errorf("%q: the shares make %d %%", said, sum)
		}
	}
	// Bare, there is no load to tell of.
	bare := tables.Provenance(report.Weigh(withState(laden(), document.Ready, document.Full), nil), day)
	if strings.Contains(strings.Join(bare, " "), "rider") {
		t.Errorf("%q", bare)
	}
	// Without anything to weigh only the program and the method are told.
	if notes := tables.Provenance(report.Weigh(documentOf(), nil), day); len(notes) != 3 {
		t.Errorf("%q", notes)
	}
}

// A caption's difference is the report's, the other way round for the other side.
func TestDigest(t *testing.T) {
	d := documentOf(fitted("a"), other("b"))
	e := report.Weigh(d, nil)
	headA, a := tables.Digest(e, 0, true)
	headB, b := tables.Digest(e, 1, true)
	if len(a) != 7 || len(b) != 7 || len(headA) != 3 || headA[1] != "Bike a" || headB[1] != "Bike b" || !strings.Contains(headA[2], "Bike b") || !strings.Contains(headB[2], "Bike a") {
		t.Fatalf("%q %q, %q %q", headA, a, headB, b)
	}
	// The total of a is 16.9 kg and of b 18.1 kg, see testdata/tables.
	if a[0][1] != "16.9\u00a0kg ± 1.1\u00a0kg" || b[0][1] != "18.1\u00a0kg ± 1.1\u00a0kg" {
		t.Errorf("%q, %q", a[0], b[0])
	}
	if !strings.HasPrefix(b[0][2], "+1.25\u00a0kg ± ") || !strings.HasPrefix(a[0][2], "−1.25\u00a0kg ± ") || strings.TrimPrefix(b[0][2], "+") != strings.TrimPrefix(a[0][2], "−") {
		t.Errorf("differences %q and %q", a[0][2], b[0][2])
	}
	if head, rows := tables.Digest(e, 1, false); len(head) != 2 || len(rows[0]) != 2 {
		t.Errorf("%q %q", head, rows)
	}
	// Other figures, in the order in which they are wanted; one that there is not is left out.
	if _, rows := tables.Digest(e, 1, false, "front_share", "nothing", "total"); len(rows) != 2 || rows[1][1] != b[0][1] {
		t.Errorf("%q", rows)
	}
	if head, rows := tables.Digest(report.Weigh(documentOf(bike("a")), nil), 1, true); head != nil || rows != nil {
		t.Errorf("%q %q of a side that is not there", head, rows)
	}
}

// plain puts a fixed word in the place of the program's version.
func plain(text []byte) []byte {
	return bytes.ReplaceAll(text, []byte(report.Program()), []byte("VERSION"))
}

func TestTablesWithNotes(t *testing.T) {
	d := withState(laden(), document.Ridden, document.Full)
	e := report.Weigh(d, nil)
	notes := tables.Provenance(e, day)
	golden(t, "loaded-figures.md", plain(tables.FiguresMarkdown(e.Report, d.Show, tables.Export{Notes: notes})))
	golden(t, "loaded-difference-semicolon.csv", plain(tables.DifferenceCSV(e.Report, tables.Export{Notes: notes, Semicolon: true})))
	golden(t, "parts.md", plain(tables.PartsMarkdown(e, &d.Builds[1], tables.Export{Notes: notes})))
	golden(t, "parts-semicolon.csv", plain(tables.PartsCSV(&d.Builds[1], tables.Export{Notes: notes, Semicolon: true})))
}

// With semicolons the same numbers come back, and a name is still no formula.
func TestSemicolons(t *testing.T) {
	a := fitted("a")
	a.Name = "=1;2"
	r := report.Weigh(documentOf(a, other("b")), nil).Report
	comma, err := rows(tables.FiguresCSV(r, tables.Export{}))
	if err != nil {
		t.Fatal(err)
	}
	in := csv.NewReader(bytes.NewReader(bytes.TrimPrefix(tables.FiguresCSV(r, tables.Export{Semicolon: true, Notes: []string{"+49 a", "fine"}}), []byte("\xef\xbb\xbf"))))
	in.Comma = ';'
	semi, err := in.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if len(semi) != len(comma)+3 {
		t.Fatalf("%d lines, without notes %d", len(semi), len(comma))
	}
	points := 0
	for i, line := range comma {
		for j, cell := range line {
			got := semi[i][j]
			if v, err := strconv.ParseFloat(cell, 64); err == nil {
				w, err := strconv.ParseFloat(strings.Replace(got, ",", ".", 1), 64)
				if err != nil || v != w || strings.Contains(got, ".") {
					t.Errorf("%q, want %q", got, cell)
				}
				if math.Trunc(v) != v {
					points++
				}
				continue
			}
			if got != cell {
				t.Errorf("%q, want %q", got, cell)
			}
		}
	}
	if points < 10 {
		t.Errorf("only %d numbers with decimals", points)
	}
	if semi[0][3] != "'=1;2" || semi[len(semi)-2][0] != "'+49 a" || semi[len(semi)-1][0] != "fine" {
		t.Errorf("%q, %q", semi[0], semi[len(semi)-2:])
	}
}

// A list of parts is read again as it was, whatever notes stand above it.
func TestPartsComeBackFromBelowNotes(t *testing.T) {
	d := documentOf(fitted("a"), other("b"))
	d.Builds[1].Parts[2].Name = "Dämpfer; groß, \"neu\""
	e := report.Weigh(d, nil)
	for _, x := range []tables.Export{{}, {Semicolon: true}, {Notes: tables.Provenance(e, day)}, {Notes: tables.Provenance(e, day), Semicolon: true}} {
		text := tables.PartsCSV(&d.Builds[1], x)
		back := partslist.ReadCSV(text, partslist.CSVOptions{})
		if len(back.Bad) > 0 || len(back.Parts) != len(d.Builds[1].Parts) {
			t.Fatalf("%d parts of %d, bad: %+v\n%s", len(back.Parts), len(d.Builds[1].Parts), back.Bad, text)
		}
		for i, p := range back.Parts {
			if w := d.Builds[1].Parts[i]; p.Name != w.Name || p.Mass != w.Mass || p.HalfWidth != w.HalfWidth || p.Basis != w.Basis {
				t.Errorf("%+v, want %+v", p, w)
			}
		}
	}
}

// What is nought as it is written has no sign, in a caption and in a table.
func TestNoughtHasNoSign(t *testing.T) {
	a, b := bike("a"), bike("b")
	a.Parts = []document.Part{point("p", 10000, document.MainFrame, 400, 0, 600)}
	b.Parts = []document.Part{point("p", 10000, document.MainFrame, 400.2, 0, 600.2)}
	a.Parts[0].Within, b.Parts[0].Within = 10, 10
	d := documentOf(a, b)
	e := report.Weigh(d, nil)
	_, rows := tables.Digest(e, 1, true)
	if len(rows) == 0 {
		t.Fatal("the caption has no rows")
	}
	texts := []string{string(tables.DifferenceMarkdown(e.Report, d.Show, tables.Export{}))}
	for _, r := range rows {
		texts = append(texts, strings.Join(r, " | "))
	}
	for _, text := range texts {
		if m := regexp.MustCompile(`\+0(\.0+)?([^0-9.]|$)`).FindString(text); m != "" {
			t.Errorf("%q in %s", m, text)
		}
	}
}

// What shows all builds tells where the masses of all come from, of each once,
// and no other picture does.
func TestProvenanceOfAll(t *testing.T) {
	d := documentOf(fitted("a"), other("b"), fitted("c"), other("d"))
	e := report.Weigh(d, nil)
	two, all := tables.Provenance(e, day), tables.ProvenanceOfAll(e, day)
	if len(two) != 5 || len(all) != 7 || all[0] != two[0] || all[6] != two[4] {
		t.Fatalf("%q\n%q", two, all)
	}
	for i, name := range []string{"Bike a", "Bike b", "Bike c", "Bike d"} {
		if !strings.HasPrefix(all[1+i], name) {
			t.Errorf("%q does not tell of %s", all[1+i], name)
		}
	}
	d.Show.Table = []string{"a", "d"}
	if all := tables.ProvenanceOfAll(report.Weigh(d, nil), day); len(all) != 6 {
		t.Errorf("%q", all)
	}
}

// Builds in a row are told as the two sides are: the same figures and the same
// differences, from the base.
func TestDigestOf(t *testing.T) {
	d := documentOf(fitted("a"), other("b"), fitted("c"))
	e := report.Weigh(d, nil)
	_, sides := tables.Digest(e, 1, true)
	head, rows := tables.DigestOf(e, []int{0, 1})
	if len(head) != 3 || head[1] != "Bike a" || head[2] != "Bike b" || len(rows) != 2*len(sides) {
		t.Fatalf("%q %q", head, rows)
	}
	for i, side := range sides {
		value, apart := rows[2*i], rows[2*i+1]
		if value[0] != side[0] || value[2] != side[1] || !strings.HasPrefix(apart[2], side[2]) || apart[1] != "" {
			t.Errorf("%q and %q, the sides say %q", value, apart, side)
		}
	}
	// The base is one of those shown.
	d.Show.Base = "c"
	e = report.Weigh(d, nil)
	if _, rows := tables.DigestOf(e, []int{0, 2}, "total"); len(rows) != 2 || rows[1][2] != "" || rows[1][1] == "" || !strings.Contains(rows[1][0], "Bike c") {
		t.Errorf("%q", rows)
	}
	if _, rows := tables.DigestOf(e, []int{1}, "total"); len(rows) != 1 {
		t.Errorf("%q of one build", rows)
	}
	if notes := tables.ProvenanceOf(e, day, []int{2, 0}); len(notes) != 5 || !strings.HasPrefix(notes[1], "Bike c") || !strings.HasPrefix(notes[2], "Bike a") {
		t.Errorf("%q", notes)
	}
}
