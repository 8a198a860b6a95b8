package partslist

import (
	"bytes"
	"encoding/csv"
	"strconv"
	"strings"
	"unicode/utf8"

	"steelyard/internal/document"
)

// CSVStyle says how a list is written.
type CSVStyle struct {
	Semicolon bool // cells separated by semicolons and numbers with a decimal comma, as spreadsheets of many countries want it
}

// csvHeader is the first row of a list that WriteCSV writes.
var csvHeader = []string{
	"name", "kind", "quantity", "mass_g", "half_width_g", "basis", "station", "offset_x_mm", "offset_y_mm", "offset_z_mm",
	"carrier", "note", "within_mm", "catalogue", "id",
}

// WriteCSV returns the parts of a build as a list, RFC 4180, that ReadCSV reads
// again; of shape and gearing it only keeps what the catalogue knows. A part at
// an absolute place has no station, and its offset is from the origin. Masses are
// those of one piece. A text that a spreadsheet would take for a formula gets an
// apostrophe before it. A byte order mark is written only when there are letters
// beyond ASCII: spreadsheets need it then.
func WriteCSV(b *document.Build, style CSVStyle) []byte {
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	w.UseCRLF = true
	if style.Semicolon {
		w.Comma = ';'
	}
	figure := func(x float64) string {
		s := strconv.FormatFloat(x, 'f', -1, 64)
		if style.Semicolon {
			s = strings.Replace(s, ".", ",", 1)
		}
		return s
	}
	// Neither bytes.Buffer nor the writer's configuration can fail.
	_ = w.Write(csvHeader)
	for i := range b.Parts {
		p := &b.Parts[i]
		place := p.Offset
		if p.At != nil {
			place = *p.At
		}
		station := p.Station
		if p.At != nil {
			station = ""
		}
		_ = w.Write([]string{
			cover(p.Name), cover(p.Kind), strconv.Itoa(p.Quantity), figure(p.Mass), figure(p.HalfWidth), cover(string(p.Basis)),
			cover(station), figure(place[0]), figure(place[1]), figure(place[2]),
			cover(string(p.Carrier)), cover(p.Note), figure(p.Within), cover(p.Catalogue), cover(p.ID),
		})
	}
	w.Flush()
	if bytes.ContainsFunc(out.Bytes(), func(r rune) bool { return r >= utf8.RuneSelf }) {
		return append([]byte("\xef\xbb\xbf"), out.Bytes()...)
	}
	return out.Bytes()
}

// formulaStarts are the characters by which spreadsheets know a formula, in
// narrow and full width; tab and line ends because they drop them first. Quotes
// may come before them: those of a list that falls apart are dropped.
const formulaStarts = "=+-@\t\r\n＝＋－＠"

// startsFormula reports whether a text begins like a formula, after any number of
// apostrophes and quotes.
func startsFormula(s string) bool {
	s = strings.TrimLeft(s, "'\"")
	r, n := utf8.DecodeRuneInString(s)
	return n > 0 && strings.ContainsRune(formulaStarts, r)
}

// cellEnds are the characters at which one spreadsheet or another ends a cell: a
// list with commas, opened where they split at semicolons, loses its quotes and
// falls apart at them and at line ends.
const cellEnds = ",;\t\r\n"

// startsLater reports whether a text begins like a formula where cover has found
// the end of a cell within it; line ends there are just lines.
func startsLater(s string) bool {
	return startsFormula(s) && !strings.ContainsAny(strings.TrimLeft(s, "'\"")[:1], "\t\r\n")
}

// cover keeps a spreadsheet from taking a text, or a piece of it, for a formula.
// It adds an apostrophe to those before a formula, so that uncover can give the
// text back.
func cover(s string) string {
	var b strings.Builder
	begins := startsFormula
	for i := range len(s) {
		if begins != nil && begins(s[i:]) {
			b.WriteByte('\'')
		}
		b.WriteByte(s[i])
		begins = after(s[i])
	}
	return b.String()
}

// EscapeFormula returns a text that no spreadsheet takes for a formula, nor a
// piece of it, for tables that are not read again.
func EscapeFormula(text string) string { return cover(text) }

// uncover undoes cover.
func uncover(s string) string {
	var b strings.Builder
	begins := startsFormula
	for i := range len(s) {
		if s[i] == '\'' && begins != nil && begins(s[i:]) {
			begins = nil
			continue
		}
		b.WriteByte(s[i])
		begins = after(s[i])
	}
	return b.String()
}

// after returns the test for the text after a character, nil unless a cell may
// end there.
func after(c byte) func(string) bool {
	if strings.IndexByte(cellEnds, c) >= 0 {
		return startsLater
	}
	return nil
}
