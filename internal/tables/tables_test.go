package tables_test

import (
	"bytes"
	"encoding/csv"
	"flag"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"steelyard/internal/document"
	"steelyard/internal/report"
	"steelyard/internal/tables"
)

var update = flag.Bool("update", false, "write the golden tables anew")

// golden compares a table with the one kept in testdata.
func golden(t *testing.T, name string, got []byte) {
	t.Helper()
	path := filepath.Join("..", "..", "testdata", "tables", name)
	if *update {
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(string(want), string(got)); d != "" {
		t.Error(d)
	}
}

func TestTables(t *testing.T) {
	d := documentOf(fitted("a"), other("b"))
	r := report.Weigh(d, nil).Report
	golden(t, "figures.csv", tables.FiguresCSV(r, tables.Export{}))
	golden(t, "difference.csv", tables.DifferenceCSV(r, tables.Export{}))
	golden(t, "figures.md", tables.FiguresMarkdown(r, d.Show, tables.Export{}))
	golden(t, "difference.md", tables.DifferenceMarkdown(r, d.Show, tables.Export{}))
	golden(t, "difference-pounds.md", tables.DifferenceMarkdown(r, document.Show{Mass: "lb_oz", Length: "in"}, tables.Export{}))
}

// rows reads a table back.
func rows(text []byte) ([][]string, error) {
	return csv.NewReader(bytes.NewReader(bytes.TrimPrefix(text, []byte("\xef\xbb\xbf")))).ReadAll()
}

// A spreadsheet reads back what the report says.
func TestFiguresCSV(t *testing.T) {
	a := fitted("a")
	a.Name = "=HYPERLINK(1)\n,\"x\""
	r := report.Weigh(documentOf(a, other("b")), nil).Report
	lines, err := rows(tables.FiguresCSV(r, tables.Export{}))
	if err != nil {
		t.Fatal(err)
	}
	if lines[0][3] != "'"+a.Name {
		t.Errorf("name: %q", lines[0][3])
	}
	for i, f := range r.Builds[1].Figures {
		line := lines[i+1]
		value, err1 := strconv.ParseFloat(line[5], 64)
		plus, err2 := strconv.ParseFloat(line[6], 64)
		if err1 != nil || err2 != nil || line[0] != f.Key || line[2] != f.Unit || value != f.Value || plus != f.Plus {
			t.Errorf("%q, want %+v", line, f)
		}
	}
	if n := len(lines); n != 1+len(r.Builds[1].Figures)+len(r.Builds[1].Geometry) {
		t.Errorf("%d lines", n)
	}
}

// Without a second build, or without any, tables are empty and not a fault.
func TestTablesOfLittle(t *testing.T) {
	for _, d := range []*document.Document{documentOf(), documentOf(bike("a")), documentOf(fitted("a"))} {
		r := report.Weigh(d, nil).Report
		if lines, err := rows(tables.DifferenceCSV(r, tables.Export{})); err != nil || len(lines) != 1 {
			t.Errorf("%d lines, %v", len(lines), err)
		}
		if got := tables.DifferenceMarkdown(r, d.Show, tables.Export{}); len(got) != 0 {
			t.Errorf("%s", got)
		}
		tables.FiguresMarkdown(r, d.Show, tables.Export{})
		tables.FiguresCSV(r, tables.Export{})
	}
}

// Names stand for themselves in Markdown, on one line.
func TestMarkdownNames(t *testing.T) {
	a, b := fitted("a"), other("b")
	a.Name = "a|b <script>\n# *c* `d` [e](f)"
	b.Parts[9].Name = a.Name
	text := string(tables.DifferenceMarkdown(report.Weigh(documentOf(a, b), nil).Report, document.Show{}, tables.Export{}))
	want := "a\\|b \\<script\\> \\# \\*c\\* \\`d\\` \\[e\\](f)"
	if n := strings.Count(text, want); n != 4 {
		t.Errorf("%d times: %s", n, text)
	}
}
