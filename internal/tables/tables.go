package tables

import (
	"bytes"
	"encoding/csv"
	"slices"
	"strconv"
	"strings"

	"steelyard/internal/assembly"
	"steelyard/internal/document"
	"steelyard/internal/partslist"
	"steelyard/internal/report"
	"steelyard/internal/words"
)

// Export is how a table leaves the program.
type Export struct {
	Words     *words.Words // the language; nil is English
	Notes     []string     // what there is to say about the table, one paragraph each
	Semicolon bool         // of CSV: cells parted by semicolons and numbers with a decimal comma, as spreadsheets of many countries want it
}

// FiguresCSV writes the figures of all builds side by side, for a spreadsheet:
// one line a figure, for every build its value and its ±. Numbers are in the
// report's units. Notes follow below an empty line.
func FiguresCSV(r *report.Report, x Export) []byte {
	t := csvTable{Export: x}
	head := []string{"Key", "Figure", "Unit"}
	for i := range r.Builds {
		head = append(head, r.Builds[i].Name, r.Builds[i].Name+" ±")
	}
	t.line(head...)
	for _, row := range rows(r, x.Words) {
		cells := []string{row.key, row.label, row.unit}
		for i := range r.Builds {
			value, plus, ok := row.in(&r.Builds[i])
			switch {
			case !ok:
				cells = append(cells, "", "")
			case row.exact:
				cells = append(cells, t.number(value), "")
			default:
				cells = append(cells, t.number(value), t.number(plus))
			}
		}
		t.line(cells...)
	}
	return t.bytes()
}

// DifferenceCSV writes the difference of two builds as one table: figures, then
// groups, then the parts that are not the same in both. It is only a head when
// no two builds are compared. Notes are as in [FiguresCSV].
func DifferenceCSV(r *report.Report, x Export) []byte {
	t := csvTable{Export: x}
	number, w := t.number, &report.Phrasing{Words: x.Words}
	d := r.Difference
	a, b := sidesOf(r)
	t.line("Section", "Key", "Name", "Unit", a.Name, b.Name, "Difference", "±", "Verdict")
	if d == nil {
		return t.bytes()
	}
	for _, c := range d.Figures {
		t.line("figure", c.Key, w.Label("figure."+c.Key), c.Unit, number(c.A), number(c.B), number(c.Delta), number(c.Plus), w.Label("verdict."+c.Verdict))
	}
	for _, g := range d.Groups {
		t.line("group", g.Key, w.On("group", g.Key, rigid(d, r)), gramUnit, number(g.A), number(g.B), number(g.Delta), number(g.Plus), "")
	}
	massA, massB := t.masses(r, a), t.masses(r, b)
	for _, p := range d.Parts {
		t.line("part", p.Group, p.Name, gramUnit, massA[p.A], massB[p.B], number(p.Delta), number(p.Plus), w.Label("change."+p.What))
	}
	return t.bytes()
}

// FiguresMarkdown writes the figures of all builds side by side as a table for
// an article, in the units that the document wants shown. Notes follow below.
func FiguresMarkdown(r *report.Report, show document.Show, x Export) []byte {
	w := report.NewPhrasing(x.Words, &show)
	var t markdownTable
	head := []string{w.Label("table.figure")}
	for i := range r.Builds {
		head = append(head, r.Builds[i].Name)
	}
	t.head("wf", head...)
	for _, row := range rows(r, x.Words) {
		cells := []string{row.label}
		for i := range r.Builds {
			value, plus, ok := row.in(&r.Builds[i])
			if !ok {
				cells = append(cells, "–")
				continue
			}
			if row.exact {
				cells = append(cells, w.Exact(row.unit, value))
				continue
			}
			cells = append(cells, w.Figure(row.unit, value, plus))
		}
		t.line(cells...)
	}
	return t.end(x)
}

// DifferenceMarkdown writes the difference of two builds for an article: what it
// says in words, its figures, its groups, and the parts that are not the same.
// Notes follow below.
func DifferenceMarkdown(r *report.Report, show document.Show, x Export) []byte {
	d := r.Difference
	if d == nil {
		return nil
	}
	w := report.NewPhrasing(x.Words, &show)
	var t markdownTable
	a, b := sidesOf(r)
	t.text(d.Summary)
	t.head("wfffw", w.Label("table.figure"), a.Name, b.Name, w.Label("table.difference"), w.Label("table.verdict"))
	for _, c := range d.Figures {
		fa, fb := plusOf(a, c.Key), plusOf(b, c.Key)
		t.line(w.Label("figure."+c.Key), w.Figure(c.Unit, c.A, fa), w.Figure(c.Unit, c.B, fb), plusSign(c.Delta, w.Figure(c.Unit, c.Delta, c.Plus)), w.Label("verdict."+c.Verdict))
	}
	t.head("wf", w.Label("table.group"), a.Name, b.Name, w.Label("table.difference"))
	for _, g := range d.Groups {
		t.line(w.On("group", g.Key, rigid(d, r)), w.Grams(g.A, subsetPlus(a, g.Key)), w.Grams(g.B, subsetPlus(b, g.Key)), plusSign(g.Delta, w.Grams(g.Delta, g.Plus)))
	}
	if len(d.Parts) > 0 {
		t.head("wwf", w.Label("table.part"), w.Label("table.change"), w.Label("table.difference"))
		for _, p := range d.Parts {
			delta := "0"
			if p.Delta != 0 || p.Plus != 0 {
				delta = plusSign(p.Delta, w.Grams(p.Delta, p.Plus))
			}
			t.line(p.Name, w.Label("change."+p.What), delta)
		}
	}
	return t.end(x)
}

// row is a figure or a length of geometry in a table of builds.
type row struct {
	key, label, unit string
	exact            bool // a length of geometry
}

// rows are the figures that any build has, in their order, then the geometry.
func rows(r *report.Report, words *words.Words) []row {
	var out []row
	for _, k := range report.Keys() {
		w := row{key: k.Key, label: words.Label("figure." + k.Key), unit: k.Unit}
		if slices.ContainsFunc(r.Builds, func(b report.Build) bool { _, _, ok := w.in(&b); return ok }) {
			out = append(out, w)
		}
	}
	for i := range r.Builds {
		if len(r.Builds[i].Geometry) == 0 {
			continue
		}
		for _, l := range r.Builds[i].Geometry { // the same keys in every build that has them
			out = append(out, row{key: l.Key, label: words.Label("geometry." + l.Key), unit: l.Unit, exact: true})
		}
		break
	}
	return out
}

// in finds the figure of the row in a build.
func (w row) in(b *report.Build) (value, plus float64, ok bool) {
	if w.exact {
		for _, l := range b.Geometry {
			if l.Key == w.key {
				return l.Value, 0, true
			}
		}
		return 0, 0, false
	}
	for _, f := range b.Figures {
		if f.Key == w.key {
			return f.Value, f.Plus, true
		}
	}
	return 0, 0, false
}

func plusOf(s *report.Side, key string) float64 {
	for _, f := range s.Figures {
		if f.Key == key {
			return f.Plus
		}
	}
	return 0
}

func subsetPlus(side *report.Side, key string) float64 {
	for _, s := range side.Groups {
		if s.Key == key {
			return s.Plus
		}
	}
	return 0
}

// sidesOf returns the sides that a report compares, or two without a name.
func sidesOf(r *report.Report) (a, b *report.Side) {
	if r.Difference == nil || len(r.Sides) < 2 {
		return &report.Side{Carrying: report.Carrying{Name: "A"}}, &report.Side{Carrying: report.Carrying{Name: "B"}}
	}
	return &r.Sides[0], &r.Sides[1]
}

// masses are the masses of a side's lines as written, by id.
func (t *csvTable) masses(r *report.Report, s *report.Side) map[string]string {
	number := t.number
	m := make(map[string]string)
	for i := range r.Builds {
		if r.Builds[i].ID != s.Build {
			continue
		}
		for _, p := range r.Builds[i].Parts {
			if p.OK && !p.Off {
				m[p.ID] = number(p.Mass)
			}
		}
		break
	}
	for _, b := range s.Bags {
		if b.OK {
			m[assembly.BagPrefix+b.ID] = number(b.Mass)
		}
	}
	for _, g := range s.Goods {
		if g.OK && g.Bag != "" {
			m[assembly.GoodPrefix+g.ID] = number(g.Mass)
		}
	}
	if s.Body != nil {
		m[assembly.RiderPrefix+s.Body.Rider] = number(s.Body.Mass)
	}
	return m
}

func (t *csvTable) number(v float64) string {
	s := strconv.FormatFloat(v, 'f', -1, 64)
	if t.Semicolon {
		s = strings.Replace(s, ".", ",", 1)
	}
	return s
}

// plusSign puts a plus before a positive difference. A difference that is written
// as 0 has no sign.
func plusSign(delta float64, text string) string {
	value, _, _ := strings.Cut(text, "±")
	if delta > 0 && strings.ContainsAny(value, "123456789") {
		return "+" + text
	}
	return text
}

// gramUnit is the unit of masses in a report.
const gramUnit = "g"

const byteOrderMark = "\xef\xbb\xbf"

// csvTable writes a table as RFC 4180 has it, in UTF-8 with a byte order mark:
// spreadsheets need that to know ± when they see it.
type csvTable struct {
	Export
	b    bytes.Buffer
	w    *csv.Writer
	wide int // cells in a line
}

func (t *csvTable) line(cells ...string) {
	if t.w == nil {
		t.b.WriteString(byteOrderMark)
		t.w = csv.NewWriter(&t.b)
		t.w.UseCRLF = true
		if t.Semicolon {
			t.w.Comma = ';'
		}
	}
	for i, c := range cells {
		cells[i] = t.safe(c)
	}
	t.wide = len(cells)
	t.w.Write(cells) // to memory: it does not fail
}

func (t *csvTable) bytes() []byte {
	if len(t.Notes) > 0 {
		t.line(make([]string, t.wide)...)
		for _, n := range t.Notes {
			cells := make([]string, t.wide)
			cells[0] = n
			t.line(cells...)
		}
	}
	t.w.Flush()
	return t.b.Bytes()
}

// PartsCSV writes the parts of a build as [partslist.WriteCSV] does, for a spreadsheet
// or to be read again, with the notes in one cell above the list.
func PartsCSV(b *document.Build, x Export) []byte {
	list := partslist.WriteCSV(b, partslist.CSVStyle{Semicolon: x.Semicolon})
	if len(x.Notes) == 0 {
		return list
	}
	list = bytes.TrimPrefix(list, []byte(byteOrderMark))
	t := csvTable{Export: x}
	head, _, _ := bytes.Cut(list, []byte("\r"))
	comma := ","
	if x.Semicolon {
		comma = ";"
	}
	cells := make([]string, 1+bytes.Count(head, []byte(comma)))
	cells[0] = partslist.NotePrefix + strings.Join(x.Notes, " ")
	t.line(cells...)
	t.w.Flush()
	return append(t.b.Bytes(), list...)
}

// PartsMarkdown writes the parts of a build for an article, in the units that the
// document wants shown, by group. What is left out of the figures has no mass
// together.
func PartsMarkdown(e *report.Evaluation, b *document.Build, x Export) []byte {
	w := report.NewPhrasing(x.Words, &e.Document.Show)
	var t markdownTable
	t.head("wwffffww", w.Label("table.group"), w.Label("table.part"), w.Label("table.number"), w.Label("table.each"), w.Label("table.within"), w.Label("table.together"), w.Label("table.basis"), w.Label("table.station"))
	told := make(map[string]*report.Part)
	rigid := false
	for i := range e.Report.Builds {
		if r := &e.Report.Builds[i]; r.ID == b.ID {
			rigid = r.Weighed && !r.RearSprung
			for k := range r.Parts {
				told[r.Parts[k].ID] = &r.Parts[k]
			}
		}
	}
	for _, g := range document.Groups {
		for i := range b.Parts {
			p := &b.Parts[i]
			if document.GroupOf(p.Kind) != g {
				continue
			}
			together := "–"
			if r := told[p.ID]; r != nil && r.OK {
				together = w.Grams(r.Mass, r.Plus)
			}
			where := ""
			if p.At == nil {
				where = w.On("station", p.Station, rigid)
			}
			t.line(w.On("group", g, rigid), p.Name, strconv.Itoa(p.Quantity), w.Limit(p.Mass), w.Limit(p.HalfWidth), together, w.Label("basis."+string(p.Basis)), where)
		}
	}
	return t.end(x)
}

// rigid reports whether neither of the builds compared has a spring at its rear.
func rigid(d *report.Difference, r *report.Report) bool {
	for i := range r.Builds {
		if b := &r.Builds[i]; (b.ID == d.A || b.ID == d.B) && (!b.Weighed || b.RearSprung) {
			return false
		}
	}
	return true
}

// safe keeps a spreadsheet from taking a name for a formula. A number is left
// alone.
func (t *csvTable) safe(cell string) string {
	number := cell
	if t.Semicolon {
		number = strings.Replace(cell, ",", ".", 1)
	}
	if _, err := strconv.ParseFloat(number, 64); err == nil {
		return cell
	}
	return partslist.EscapeFormula(cell)
}

// markdownTable writes tables as GitHub Flavored Markdown has them.
type markdownTable struct{ b bytes.Buffer }

// text writes a paragraph.
func (t *markdownTable) text(s string) {
	t.gap()
	t.b.WriteString(escape(s))
	t.b.WriteByte('\n')
}

// head begins a table. Columns of words are set to the left, of figures to the
// right: 'w' and 'f' in columns.
func (t *markdownTable) head(columns string, cells ...string) {
	t.gap()
	t.line(cells...)
	for i := range cells {
		if columns[min(i, len(columns)-1)] == 'f' {
			t.b.WriteString("| ---: ")
		} else {
			t.b.WriteString("| --- ")
		}
	}
	t.b.WriteString("|\n")
}

func (t *markdownTable) line(cells ...string) {
	for _, c := range cells {
		t.b.WriteString("| ")
		t.b.WriteString(escape(c))
		t.b.WriteByte(' ')
	}
	t.b.WriteString("|\n")
}

func (t *markdownTable) gap() {
	if t.b.Len() > 0 {
		t.b.WriteByte('\n')
	}
}

// end writes the notes and returns all that was written.
func (t *markdownTable) end(x Export) []byte {
	for _, n := range x.Notes {
		t.text(n)
	}
	return t.b.Bytes()
}

// escape makes a text stand for itself in Markdown, on one line; an address does
// not become a link.
func escape(s string) string {
	var b strings.Builder
	for i, r := range s {
		switch {
		case r == ':' && strings.HasPrefix(s[i:], "://"), r == '.' && i >= 3 && strings.EqualFold(s[i-3:i], "www"):
			b.WriteByte('\\')
			b.WriteRune(r)
		case r == '\n' || r == '\r' || r == '\t':
			b.WriteByte(' ')
		case r < ' ' || r == 0x7f:
		case strings.ContainsRune("\\`*_{}[]<>#|~!&@", r):
			b.WriteByte('\\')
			b.WriteRune(r)
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}
