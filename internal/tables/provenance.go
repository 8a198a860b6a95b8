package tables

import (
	"slices"
	"strconv"
	"strings"

	"steelyard/internal/document"
	"steelyard/internal/report"
)

// Provenance tells, in a sentence each, how the figures of a report were
// obtained, to stand beside whatever leaves the program: by which version of it
// and when, where the masses of each side come from, and what ± means. The date
// is as people write it.
func Provenance(e *report.Evaluation, date string) []string {
	p := report.NewPhrasing(e.Words(), &e.Document.Show)
	out := []string{p.Say("provenance.program", "version", e.Report.Program, "date", date)}
	for i, w := range e.Sides {
		if w == nil {
			continue
		}
		if kg, _, ok := w.Figure("total"); ok && kg > 0 {
			out = append(out, basis(p, w, e.Report.Sides[i].Name))
		}
	}
	return append(out, p.Label("provenance.method"), p.Label("provenance.plus"))
}

// ProvenanceOfAll is [Provenance] of all builds that are set side by side, whether
// a side of the comparison or not.
func ProvenanceOfAll(e *report.Evaluation, date string) []string {
	out := Provenance(e, date)
	p := report.NewPhrasing(e.Words(), &e.Document.Show)
	var more []string
	for _, i := range e.InTable() {
		w := e.Builds[i]
		if w == nil || onSide(e, e.Document.Builds[i].ID) {
			continue
		}
		if kg, _, ok := w.Figure("total"); ok && kg > 0 {
			more = append(more, basis(p, w, e.Column(i).Name))
		}
	}
	return slices.Insert(out, len(out)-2, more...) // before what holds for all
}

// ProvenanceOf is [Provenance] of these builds of the document alone.
func ProvenanceOf(e *report.Evaluation, date string, builds []int) []string {
	p := report.NewPhrasing(e.Words(), &e.Document.Show)
	out := []string{p.Say("provenance.program", "version", e.Report.Program, "date", date)}
	for _, i := range builds {
		if w := e.Builds[i]; w != nil {
			if kg, _, ok := w.Figure("total"); ok && kg > 0 {
				out = append(out, basis(p, w, e.Column(i).Name))
			}
		}
	}
	return append(out, p.Label("provenance.method"), p.Label("provenance.plus"))
}

func onSide(e *report.Evaluation, id string) bool {
	for i := range e.Report.Sides {
		if e.Report.Sides[i].Build == id && e.Sides[i] != nil {
			return true
		}
	}
	return false
}

// Notes are what goes with whatever leaves the program with figures in it: how
// they were obtained, and the caution.
func Notes(e *report.Evaluation, date string) []string {
	return append(Provenance(e, date), Caution(e))
}

// Caution says that figures do not make a bike safe, and who decides.
func Caution(e *report.Evaluation) string {
	return e.Words().Say("caution", "text", e.Words().Label("help.caution"))
}

// basis says how many of a bike's lines, and how much of its mass, are known from
// which basis.
func basis(p *report.Phrasing, w *report.Weighed, name string) string {
	count := make([]int, len(document.Bases)+1) // the last is the rider
	kg := make([]float64, len(count))
	all, sum := 0, 0.0
	for i := range w.Lines {
		l := &w.Lines[i]
		if !l.OK {
			continue
		}
		k := len(document.Bases)
		for j, b := range document.Bases {
			if b == w.Build.Parts[i].Basis {
				k = j
			}
		}
		if list, _, _ := w.Owner(i); list == "riders" {
			k = len(document.Bases)
		}
		count[k]++
		kg[k] += l.Mass
		all++
		sum += l.Mass
	}
	var of []string
	for k, n := range count {
		if n == 0 {
			continue
		}
		key := "provenance.rider"
		if k < len(document.Bases) {
			key = "provenance." + string(document.Bases[k])
		}
		of = append(of, p.Say(key, "n", strconv.Itoa(n), "share", report.Percent(kg[k]/sum)))
	}
	return p.Say("provenance.basis", "name", name, "n", strconv.Itoa(all), "of", strings.Join(of, ", "))
}

// Digest is what a caption tells of a picture: the main figures of a side of
// the comparison and, with other, how they differ from those of the other side;
// in the units that the document wants shown. The figures are those of the keys,
// Main without any. The first column, and the first of each row, are names.
func Digest(e *report.Evaluation, side int, other bool, keys ...string) (head []string, rows [][]string) {
	r := e.Report
	if side >= len(r.Sides) || !r.Sides[side].Weighed {
		return nil, nil
	}
	s, w := &r.Sides[side], report.NewPhrasing(e.Words(), &e.Document.Show)
	state := w.Label("state." + string(s.State))
	if s.State == document.Loaded || s.State == document.Ridden {
		state = w.Say("provenance.state", "state", state, "supplies", w.Label("supplies."+string(s.Supplies)))
	}
	head = []string{state, s.Name}
	other = other && r.Difference != nil && len(r.Sides) > 1
	if other {
		head = append(head, w.Say("provenance.from", "name", r.Sides[1-side].Name))
	}
	for _, key := range chosen(keys) {
		for _, f := range s.Figures {
			if f.Key != key {
				continue
			}
			row := []string{w.Label("figure." + key), w.Figure(f.Unit, f.Value, f.Plus)}
			if other {
				row = append(row, change(w, r.Difference, key, side))
			}
			rows = append(rows, row)
		}
	}
	return head, rows
}

// Main are the figures that a caption tells when nobody picks others.
var Main = []string{"total", "unsprung_rear", "centre_x", "centre_y", "centre_z", "rear_load", "front_load"}

func chosen(keys []string) []string {
	if len(keys) == 0 {
		return Main
	}
	return keys
}

// DigestOf is what a caption tells of builds in a row: their figures, each with
// how it differs from that of the base below it.
func DigestOf(e *report.Evaluation, builds []int, keys ...string) (head []string, rows [][]string) {
	s, w := e.SideBySideOf(builds), report.NewPhrasing(e.Words(), &e.Document.Show)
	head = []string{w.Label("table.figure")}
	base := ""
	for _, b := range s.Builds {
		head = append(head, b.Name)
		if b.ID == s.Base {
			base = b.Name
		}
	}
	found := make(map[string]*report.Row)
	for i := range s.Chapters {
		for k := range s.Chapters[i].Rows {
			r := &s.Chapters[i].Rows[k]
			found[r.Key] = r
		}
	}
	for _, key := range chosen(keys) {
		r := found[key]
		if r == nil {
			continue
		}
		row, apart := []string{r.Label}, []string{w.Say("provenance.from", "name", base)}
		for i, b := range s.Builds {
			value, delta := "–", ""
			if c := r.Cells[i]; c != nil {
				value = w.Figure(r.Unit, c.Value, c.Plus)
				if b.ID != s.Base {
					delta = plusSign(c.Delta, w.Figure(r.Unit, c.Delta, c.DeltaPlus))
					if c.Verdict == report.Undecided {
						delta += ", " + w.Label("verdict."+c.Verdict)
					}
				}
			}
			row, apart = append(row, value), append(apart, delta)
		}
		rows = append(rows, row)
		if len(s.Builds) > 1 {
			rows = append(rows, apart)
		}
	}
	return head, rows
}

// change writes how a side's figure differs from the other side's.
func change(w *report.Phrasing, d *report.Difference, key string, side int) string {
	for _, c := range d.Figures {
		if c.Key != key {
			continue
		}
		delta := c.Delta
		if side == 0 {
			delta = -delta
		}
		return plusSign(delta, w.Figure(c.Unit, delta, c.Plus))
	}
	return ""
}
