package main

import (
	"context"
	"encoding/xml"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"time"

	"steelyard/internal/document"
	"steelyard/internal/report"
)

// spreadsheet times the same sums in a spreadsheet, where LibreOffice is
// installed: of each of two builds of 60 parts the total with its ±, the centre
// of mass, axle loads, and moments of inertia. Starting the program, which takes
// a second or more, is left out: a file with many such sheets is set against one
// with a single one.
func spreadsheet(ctx context.Context, evaluation time.Duration) ([]line, error) {
	what := "the same sums in a spreadsheet, opened and recalculated"
	office, err := exec.LookPath("soffice")
	if err != nil {
		return []line{{what: what, measured: "–", reference: "LibreOffice is not installed here"}}, nil
	}
	dir, err := os.MkdirTemp("", "steelyard-spreadsheet-")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	builds, err := placed(60)
	if err != nil {
		return nil, err
	}
	const more = 300
	took := func(sheets int) (time.Duration, error) {
		file := filepath.Join(dir, fmt.Sprintf("sums%d.fods", sheets))
		if err := os.WriteFile(file, []byte(workbook(builds, sheets)), 0o600); err != nil {
			return 0, err
		}
		var all []time.Duration
		for i := range 4 {
			from := time.Now()
			cmd := exec.CommandContext(ctx, office, "-env:UserInstallation=file://"+filepath.Join(dir, "profile"),
				"--headless", "--norestore", "--convert-to", "csv", "--outdir", dir, file)
			if out, err := cmd.CombinedOutput(); err != nil {
				return 0, fmt.Errorf("%s: %w\n%s", office, err, out)
			}
			if i > 0 { // the first makes its profile
				all = append(all, time.Since(from))
			}
		}
		return median(all), nil
	}
	one, err := took(1)
	if err != nil {
		return nil, err
	}
	many, err := took(1 + more)
	if err != nil {
		return nil, err
	}
	if err := sumsAgree(filepath.Join(dir, "sums1.csv"), builds); err != nil {
		return nil, err
	}
	each := (many - one) / more
	if each <= 0 { // the machine was busy with something else meanwhile
		return []line{{what: what, measured: "–", reference: "could not be told from the start of LibreOffice"}}, nil
	}
	if evaluation <= 0 {
		return []line{{what: what, measured: ms(each), reference: "the evaluation could not be measured"}}, nil
	}
	return []line{{
		what: what, measured: ms(each), reference: ms(evaluation) + ", evaluated in Chromium after an edit",
		ratio: float64(each) / float64(evaluation),
	}}, nil
}

// sheet is a build in rows, with the total that this program makes of them, g.
type sheet struct {
	rows  []row
	total float64
}

// row is a part of a build where it is on the bike: g and mm.
type row struct{ mass, half, x, y, z float64 }

// placed are two builds of n parts each.
func placed(n int) (builds [2]sheet, err error) {
	texts, err := demoPair(n, false, heavier)
	if err != nil {
		return builds, err
	}
	d, _ := document.Open([]byte(texts[0]))
	r := report.Evaluate([]byte(texts[0]))
	for i := range builds {
		for j, p := range r.Builds[i].Parts {
			of := d.Builds[i].Parts[j]
			builds[i].rows = append(builds[i].rows, row{p.Mass, of.HalfWidth * float64(of.Quantity), p.Place[0], p.Place[1], p.Place[2]})
			builds[i].total += p.Mass
		}
	}
	return builds, nil
}

// workbook is a flat OpenDocument spreadsheet with both builds side by side on
// each sheet. Nothing in it is worked out beforehand.
func workbook(builds [2]sheet, sheets int) string {
	var s strings.Builder
	s.WriteString(`<?xml version="1.0" encoding="UTF-8"?><office:document xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0"` +
		` xmlns:table="urn:oasis:names:tc:opendocument:xmlns:table:1.0" xmlns:text="urn:oasis:names:tc:opendocument:xmlns:text:1.0"` +
		` xmlns:of="urn:oasis:names:tc:opendocument:xmlns:of:1.2" office:version="1.2" office:mimetype="application/vnd.oasis.opendocument.spreadsheet"><office:body><office:spreadsheet>`)
	number := func(v float64) {
		fmt.Fprintf(&s, `<table:table-cell office:value-type="float" office:value="%g"/>`, v)
	}
	formula := func(f string) {
		s.WriteString(`<table:table-cell table:formula="of:=`)
		xml.EscapeText(&s, []byte(f)) //nolint:errcheck // a builder takes everything
		s.WriteString(`"/>`)
	}
	n := max(len(builds[0].rows), len(builds[1].rows))
	for k := range sheets {
		fmt.Fprintf(&s, `<table:table table:name="Sums %d">`, k+1)
		// Sums first, one line for each: with the columns m half x y z of A in
		// A to E, of B in F to J.
		first := 12
		last := first + n - 1
		sums := func(c string) []string {
			col := func(i int) string {
				return fmt.Sprintf("[.%[1]c$%[2]d:.%[1]c$%[3]d]", c[i], first, last)
			}
			m, u, x, y, z := col(0), col(1), col(2), col(3), col(4)
			at := func(line int) string { return fmt.Sprintf("[.%c%d]", c[0], line) }
			about := func(p, q string, i, j int) string {
				return fmt.Sprintf("SUMPRODUCT(%s;(%s-%s)^2+(%s-%s)^2)", m, p, at(i), q, at(j))
			}
			return []string{
				"SUM(" + m + ")",
				"2*SQRT(SUMSQ(" + u + ")/3)",
				"SUMPRODUCT(" + m + ";" + x + ")/" + at(1),
				"SUMPRODUCT(" + m + ";" + y + ")/" + at(1),
				"SUMPRODUCT(" + m + ";" + z + ")/" + at(1),
				at(1) + "*" + at(3) + "/1200",
				at(1) + "-" + at(6),
				about(y, z, 4, 5),
				about(x, z, 3, 5),
				about(x, y, 3, 4),
			}
		}
		a, b := sums("ABCDE"), sums("FGHIJ")
		for i := range a {
			s.WriteString(`<table:table-row>`)
			formula(a[i])
			s.WriteString(`<table:table-cell table:number-columns-repeated="4"/>`)
			formula(b[i])
			s.WriteString(`<table:table-cell/>`)
			formula(fmt.Sprintf("[.F%d]-[.A%d]", i+1, i+1)) // the difference
			s.WriteString(`</table:table-row>`)
		}
		s.WriteString(`<table:table-row/>`)
		for i := range n {
			s.WriteString(`<table:table-row>`)
			for _, build := range builds {
				if i < len(build.rows) {
					r := build.rows[i]
					for _, v := range []float64{r.mass, r.half, r.x, r.y, r.z} {
						number(v)
					}
				}
			}
			s.WriteString(`</table:table-row>`)
		}
		s.WriteString(`</table:table>`)
	}
	s.WriteString(`</office:spreadsheet></office:body></office:document>`)
	return s.String()
}

// sumsAgree makes sure that the spreadsheet has worked, and worked out the
// same.
func sumsAgree(file string, builds [2]sheet) error {
	text, err := os.ReadFile(file)
	if err != nil {
		return err
	}
	first, _, _ := strings.Cut(string(text), "\n")
	cells := strings.Split(first, ",")
	if len(cells) < 6 {
		return fmt.Errorf("the spreadsheet has only %q in its first line", first)
	}
	for i, cell := range []string{cells[0], cells[5]} {
		var total float64
		if _, err := fmt.Sscan(cell, &total); err != nil || total < builds[i].total-1 || total > builds[i].total+1 {
			return fmt.Errorf("the spreadsheet makes %s g of build %d, and this program %g g", cell, i+1, builds[i].total)
		}
	}
	return nil
}
