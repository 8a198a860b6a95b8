package tables_test

import (
	"encoding/csv"
	"slices"
	"strconv"
	"strings"
	"testing"

	"steelyard/data"
	"steelyard/internal/report"
	"steelyard/internal/tables"
)

// Every figure of the table is in both files, in its column.
func TestSideBySide(t *testing.T) {
	text, err := data.Files.ReadFile("demo/travel.json")
	if err != nil {
		t.Fatal(err)
	}
	e := report.EvaluateText(text)
	s := e.SideBySide()
	lines, err := csv.NewReader(strings.NewReader(string(tables.SideBySideCSV(s, tables.Export{})))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	delta := slices.Index(lines[0], s.Builds[1].Name+" Δ")
	n := 1
	for _, c := range s.Chapters {
		for _, r := range c.Rows {
			line := lines[n]
			n++
			if line[1] != r.Key {
				t.Fatalf("line %d is %s, want %s", n, line[1], r.Key)
			}
			if r.Cells[1] == nil {
				continue
			}
			if got, err := strconv.ParseFloat(line[delta], 64); err != nil || got != r.Cells[1].Delta {
				t.Errorf("%s: the difference is %q, want %g", r.Key, line[delta], r.Cells[1].Delta)
			}
		}
	}
	if n != len(lines) || len(lines[0]) != 4+2+5*2 {
		t.Errorf("%d lines of %d cells", len(lines), len(lines[0]))
	}
	md := string(tables.SideBySideMarkdown(s, e.Document.Show, tables.Export{Notes: []string{"How it was obtained."}}))
	for _, want := range []string{"Total mass", "Centre of mass, ahead", "Crank gearbox", "How it was obtained."} {
		if !strings.Contains(md, want) {
			t.Errorf("%q is not in the Markdown:\n%.500s", want, md)
		}
	}
	if rows := strings.Count(md, "\n| "); rows < n {
		t.Errorf("%d rows of Markdown, want one for each of %d figures", rows, n-1)
	}
}
