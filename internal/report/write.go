package report

import (
	"slices"
	"strings"

	"github.com/goccy/go-json"
)

// Text returns the report as JSON. It cannot fail for a number, since every
// number of a report from this package is finite. Pieces that were taken over
// from the evaluation before are not written again.
func (e *Evaluation) Text() (string, error) {
	r, t := e.Report, &e.texts
	var w writer
	w.put("{", w.inside(&r.Head), `,"builds":[`)
	for i := range r.Builds {
		w.comma(i)
		t.builds[i].write(&w, &r.Builds[i])
	}
	w.put(`],"sides":[`)
	for i := range r.Sides {
		w.comma(i)
		t.side(&w, r, i)
	}
	w.put("]")
	if d := r.Difference; d != nil {
		w.put(`,"difference":{`, w.inside(&d.Comparison), `,"weigh":[`)
		t.weigh.write(&w, d.Weigh)
		w.put(`],"parts":[`)
		t.changes.write(&w, d.Parts)
		w.put(`],"moved":[`)
		t.moved.write(&w, d.Moved)
		w.put("]}")
	}
	w.put("}")
	return strings.Join(w.pieces, ""), w.err
}

// texts are the written pieces of a report. The next report reuses a piece as
// long as it says the same there.
type texts struct {
	builds  []buildText
	sides   []string // "" where it is not written
	weigh   listText[Advice]
	changes listText[PartChange]
	moved   listText[Mover]
}

func newTexts(builds, sides int) texts {
	return texts{builds: make([]buildText, builds), sides: make([]string, sides)}
}

// buildText is what is written of a build.
type buildText struct {
	whole    string // "" when it is not written
	findings string // without braces
	weigh    listText[Advice]
	geometry listText[Length]
	parts    listText[Part]
	own      listText[Subset]
}

func (t *buildText) write(w *writer, b *Build) {
	if t.whole != "" {
		w.put(t.whole)
		return
	}
	from := len(w.pieces)
	w.put("{", w.inside(&b.Bike), ",")
	t.findings = w.findings(&t.weigh, &b.Findings)
	w.put(`,"geometry":[`)
	t.geometry.write(w, b.Geometry)
	w.put(`],"parts":[`)
	t.parts.write(w, b.Parts)
	w.put(`],"own":[`)
	t.own.write(w, b.Own)
	w.put("]}")
	t.whole = w.join(from)
}

// side writes a side, whose findings mostly are a build's.
func (t *texts) side(w *writer, r *Report, i int) {
	if t.sides[i] != "" {
		w.put(t.sides[i])
		return
	}
	from, s := len(w.pieces), &r.Sides[i]
	w.put("{", w.inside(&s.Carrying), ",")
	if b := slices.IndexFunc(r.Builds, func(b Build) bool { return identical(b.Figures, s.Figures) }); b >= 0 {
		w.put(t.builds[b].findings)
	} else {
		w.findings(new(listText[Advice]), &s.Findings)
	}
	w.put(`,"states":[`)
	w.states(s.States)
	w.put("]}")
	t.sides[i] = w.join(from)
}

// listText is what is written of a list, in blocks of elements.
type listText[T comparable] struct {
	of     []T
	blocks []string
}

// block is how many elements of a list are written in one go.
const block = 4

// write writes a list, but for the blocks that are as they were.
func (t *listText[T]) write(w *writer, list []T) {
	blocks := make([]string, (len(list)+block-1)/block)
	for i := range blocks {
		from := i * block
		some := list[from:min(from+block, len(list))]
		if i < len(t.blocks) && slices.Equal(some, t.of[from:min(from+block, len(t.of))]) {
			blocks[i] = t.blocks[i]
		} else {
			blocks[i] = w.inside(some)
		}
		w.comma(i)
		w.put(blocks[i])
	}
	t.of, t.blocks = list, blocks
}

// writer collects the pieces of a text, and the first error.
type writer struct {
	pieces []string
	err    error
}

func (w *writer) put(pieces ...string) { w.pieces = append(w.pieces, pieces...) }

// join makes one piece of all but the first few, and returns it.
func (w *writer) join(few int) string {
	piece := strings.Join(w.pieces[few:], "")
	w.pieces = append(w.pieces[:few], piece)
	return piece
}

// comma separates element i of a list from the one before.
func (w *writer) comma(i int) {
	if i > 0 {
		w.put(",")
	}
}

// inside returns a value as JSON, without the brackets or braces around it.
func (w *writer) inside(v any) string {
	text, err := json.MarshalWithOption(v, json.DisableHTMLEscape())
	if err != nil {
		if w.err == nil {
			w.err = err
		}
		return ""
	}
	return string(text[1 : len(text)-1])
}

// findings writes findings without braces, and returns what it has written.
func (w *writer) findings(weigh *listText[Advice], f *Findings) string {
	from := len(w.pieces)
	w.put(w.inside(&f.Sums), `,"weigh":[`)
	weigh.write(w, f.Weigh)
	w.put("]")
	return w.join(from)
}

// states writes states. Where no supplies are used up, several have the same
// figures.
func (w *writer) states(list []State) {
	figures := ""
	for i := range list {
		s := &list[i]
		if i == 0 || !identical(s.Figures, list[i-1].Figures) {
			figures = w.inside(s.Figures)
		}
		w.comma(i)
		w.put("{", w.inside(&s.Condition), `,"figures":[`, figures, "]}")
	}
}

// identical reports whether two lists of figures are the same one in memory.
// Empty ones are not looked into.
func identical(a, b []Figure) bool { return len(a) > 0 && len(a) == len(b) && &a[0] == &b[0] }
