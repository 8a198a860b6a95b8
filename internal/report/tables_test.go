package report_test

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
	r := report.EvaluateDocument(d)
	golden(t, "figures.csv", report.FiguresCSV(r, report.Export{}))
	golden(t, "difference.csv", report.DifferenceCSV(r, report.Export{}))
	golden(t, "figures.md", report.FiguresMarkdown(r, d.Show, report.Export{}))
	golden(t, "difference.md", report.DifferenceMarkdown(r, d.Show, report.Export{}))
	golden(t, "difference-pounds.md", report.DifferenceMarkdown(r, document.Show{Mass: "lb_oz", Length: "in"}, report.Export{}))
}

// rows reads a table back.
func rows(text []byte) ([][]string, error) {
	return csv.NewReader(bytes.NewReader(bytes.TrimPrefix(text, []byte("\xef\xbb\xbf")))).ReadAll()
}

// A spreadsheet reads back what the report says.
func TestFiguresCSV(t *testing.T) {
	a := fitted("a")
	a.Name = "=HYPERLINK(1)\n,\"x\""
	r := report.EvaluateDocument(documentOf(a, other("b")))
	lines, err := rows(report.FiguresCSV(r, report.Export{}))
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
		r := report.EvaluateDocument(d)
		if lines, err := rows(report.DifferenceCSV(r, report.Export{})); err != nil || len(lines) != 1 {
			t.Errorf("%d lines, %v", len(lines), err)
		}
		if got := report.DifferenceMarkdown(r, d.Show, report.Export{}); len(got) != 0 {
			t.Errorf("%s", got)
		}
		report.FiguresMarkdown(r, d.Show, report.Export{})
		report.FiguresCSV(r, report.Export{})
	}
}

// Names stand for themselves in Markdown, on one line.
func TestMarkdownNames(t *testing.T) {
	a, b := fitted("a"), other("b")
	a.Name = "a|b <script>\n# *c* `d` [e](f)"
	b.Parts[9].Name = a.Name
	text := string(report.DifferenceMarkdown(report.EvaluateDocument(documentOf(a, b)), document.Show{}, report.Export{}))
	want := "a\\|b \\<script\\> \\# \\*c\\* \\`d\\` \\[e\\](f)"
	if n := strings.Count(text, want); n != 4 {
		t.Errorf("%d times: %s", n, text)
	}
}
