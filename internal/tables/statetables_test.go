package tables_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"steelyard/internal/document"
	"steelyard/internal/document/documenttest"
	"steelyard/internal/report"
	"steelyard/internal/tables"
	"steelyard/internal/words"
)

// demoReport is the report of the demo, with a load and a rider on it.
func demoReport(t *testing.T) (*document.Document, *report.Report) {
	t.Helper()
	d := documenttest.Demo(t)
	return d, report.Weigh(d, nil).Report
}

// Every state is on a line of its own, with the figures of the report; a name
// that begins like a formula is text.
func TestStatesCSV(t *testing.T) {
	_, r := demoReport(t)
	r.Sides[0].Name = "=1+1"
	table, err := rows(tables.StatesCSV(r, tables.Export{}))
	if err != nil {
		t.Fatal(err)
	}
	n := 1
	for _, side := range r.Sides {
		for _, s := range side.States {
			line := table[n]
			n++
			want := side.Name
			if want == "=1+1" {
				want = "'=1+1"
			}
			if line[0] != want || line[1] != (*words.Words)(nil).Label("state."+string(s.State)) || line[2] != (*words.Words)(nil).Label("supplies."+string(s.Supplies)) {
				t.Errorf("line %d is of %q", n, line[:3])
			}
			// the axle loads make the total
			number := func(i int) float64 {
				v, err := strconv.ParseFloat(line[i], 64)
				if err != nil {
					t.Errorf("line %d: %v", n, err)
				}
				return v
			}
			if sum := number(11) + number(13); math.Abs(sum-number(3)) > 0.05 {
				t.Errorf("line %d: the wheels carry %g g of %g g", n, sum, number(3))
			}
			for k, f := range s.Figures {
				if number(3+2*k) != f.Value || number(4+2*k) != f.Plus {
					t.Errorf("line %d: %s is %s ± %s, want %g ± %g", n, table[0][3+2*k], line[3+2*k], line[4+2*k], f.Value, f.Plus)
				}
			}
		}
	}
	if len(table) != n || n < 2*(2+3+3) {
		t.Errorf("%d lines for %d states", len(table), n)
	}
	comma := string(tables.StatesCSV(r, tables.Export{Semicolon: true, Notes: []string{"=a note"}}))
	if !strings.Contains(comma, "Side;State;Supplies;") || !strings.Contains(comma, "'=a note") {
		t.Errorf("%s", comma)
	}
}

// A state without supplies has one line, one with them three.
func TestStatesMarkdown(t *testing.T) {
	d, r := demoReport(t)
	text := string(tables.StatesMarkdown(r, d.Show, tables.Export{Notes: []string{"A note."}}))
	for _, c := range []struct {
		begins string
		n      int
	}{{"| Bare bike | – |", 1}, {"| Loaded | Full |", 1}, {"| Loaded | Half used |", 1}, {"| Loaded, with rider | Used up |", 1}, {"| State | Supplies | Total mass |", 1}} {
		if n := strings.Count(text, c.begins); n != c.n*len(r.Sides) {
			t.Errorf("%d lines begin with %q, want %d a side:\n%s", n, c.begins, c.n, text)
		}
	}
	if !strings.HasSuffix(text, "\n\nA note.\n") || !strings.Contains(text, " ± ") {
		t.Errorf("%s", text)
	}
}
