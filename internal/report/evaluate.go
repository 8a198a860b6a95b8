package report

import (
	"sync"

	"steelyard/internal/geometry"
	"steelyard/internal/mass"
	"steelyard/internal/parts"
)

// Evaluation is a document evaluated: the report, and what it was made from.
type Evaluation struct {
	Document *parts.Document // nil when the text was refused
	Report   *Report
	Builds   []*Weighed // one for each build of the document; nil where it could not be weighed
}

// Evaluate reads the text of a document and works out everything that there is
// to tell about it. It never fails: what is wrong is told in the report's
// problems, and all that can be reckoned without it is. The result depends on
// the text alone, and every number in it is finite.
func Evaluate(text []byte) *Report { return EvaluateText(text).Report }

// EvaluateDocument is Evaluate for a document in memory.
func EvaluateDocument(d *parts.Document) *Report { return Weigh(d).Report }

// EvaluateText is Evaluate, and keeps what the report was made from.
func EvaluateText(text []byte) *Evaluation {
	d, problems := parts.Open(text)
	if d == nil {
		r := newReport()
		r.Problems = append(r.Problems, problems...)
		return &Evaluation{Report: r}
	}
	return weigh(d, problems)
}

// Weigh is EvaluateDocument, and keeps what the report was made from. The
// document must not be changed while the result is in use.
func Weigh(d *parts.Document) *Evaluation { return weigh(d, nil) }

func newReport() *Report {
	return &Report{
		Format: Format, Version: Version, Program: Program(),
		Problems: []parts.Problem{}, Builds: []Build{},
	}
}

func weigh(d *parts.Document, problems []parts.Problem) *Evaluation {
	r := newReport()
	e := &Evaluation{Document: d, Report: r, Builds: make([]*Weighed, len(d.Builds))}
	checked := parts.Check(d)
	r.Problems = append(append(r.Problems, problems...), checked...)
	omit := newOmissions(checked)

	src := newSources(d)
	var before *Weighed
	for i := range d.Builds {
		b := &d.Builds[i]
		bike, problems := geometry.Pose(b)
		r.Problems = append(r.Problems, problems...)
		if bike == nil {
			continue
		}
		e.Builds[i], problems = assemble(b, bike, omit, src, before)
		r.Problems = append(r.Problems, problems...)
		before = e.Builds[i]
	}

	a, b := compared(d, e.Builds)
	t := tables.Get().(*table)
	t.words, t.src = newWords(d.Show), src
	var pairs []couple
	var standard *[numFigures]float64
	if a != nil && b != nil {
		pairs = couples(a, b)
		shareSpots(a, b, pairs)
		a.measure()
		b.measure()
		standard = judgePair(a, b, &t.one, &t.both)
	}
	r.Builds = make([]Build, len(d.Builds))
	for i, w := range e.Builds {
		if w != nil && w != a && w != b {
			w.measure()
			w.judge(&t.one)
		}
		r.Builds[i] = t.build(&d.Builds[i], w)
	}
	if a != nil && b != nil {
		r.Difference = t.difference(a, b, pairs, standard)
	}
	t.words, t.src = nil, nil
	tables.Put(t) // not after a panic: what it holds may be half done
	return e
}

// tables are tables that are free.
var tables = sync.Pool{New: func() any { return new(table) }}

// table is where an evaluation works: what its builds share, and memory to use
// again.
type table struct {
	words     *words
	src       *sources
	one, both mass.Budget
	tally     tally
}

// compared returns the builds that the document sets against each other: the
// second of show.compare minus the first. Both are nil unless there are two
// and both could be weighed.
func compared(d *parts.Document, builds []*Weighed) (a, b *Weighed) {
	if len(d.Show.Compare) < 2 || d.Show.Compare[0] == d.Show.Compare[1] {
		return nil, nil
	}
	find := func(id string) *Weighed {
		for i := range d.Builds {
			if d.Builds[i].ID == id {
				return builds[i]
			}
		}
		return nil
	}
	if a, b = find(d.Show.Compare[0]), find(d.Show.Compare[1]); a == nil || b == nil {
		return nil, nil
	}
	return a, b
}

// build writes a build into a report; w is nil when it could not be weighed.
func (t *table) build(b *parts.Build, w *Weighed) Build {
	out := Build{
		ID: b.ID, Name: b.Name,
		Geometry: []Length{}, Figures: []Figure{}, Groups: []Subset{}, Carriers: []Subset{},
		Weigh: []Advice{},
	}
	if w == nil {
		out.Parts = make([]Part, len(b.Parts))
		for i := range b.Parts {
			out.Parts[i] = Part{ID: b.Parts[i].ID, Group: parts.GroupOf(b.Parts[i].Kind)}
		}
		out.Summary = t.words.unweighed(b)
		return out
	}
	out.Weighed = true
	out.FrontSprung, out.RearSprung = w.Bike.FrontSprung, w.Bike.RearSprung
	out.Geometry = lengths(w.Bike)
	out.Figures = w.figures.tell()
	w.byGroup = w.buckets(len(parts.Groups), groupOf)
	out.Groups = w.subsets(w.byGroup, groupKey, &t.tally)
	out.Carriers = w.subsets(w.buckets(int(numCarriers), carrierOfLine), carrierKey, &t.tally)
	doubts := mass.Doubts(w.Items)
	out.Parts = w.tellParts(doubts)
	out.Weigh = t.adviseTotal(w, doubts)
	out.Summary = t.words.build(w)
	return out
}

// omissions are the parts that have an error and must not enter any figure.
type omissions struct {
	parts map[partRef]bool // true: only those after the first of that id
}

type partRef struct{ build, part string }

func newOmissions(problems []parts.Problem) *omissions {
	o := &omissions{}
	for i := range problems {
		p := &problems[i]
		if p.Severity != parts.SeverityError {
			continue
		}
		if o.parts == nil {
			o.parts = make(map[partRef]bool)
		}
		ref := partRef{p.Build, p.Part}
		later, ok := o.parts[ref]
		o.parts[ref] = p.Field == "id" && p.Part != "" && (later || !ok)
	}
	return o
}

// omitted tells, line by line, which parts of a build are left out; nil for
// none.
func (o *omissions) of(b *parts.Build) []bool {
	if o.parts == nil {
		return nil
	}
	out := make([]bool, len(b.Parts))
	seen := make(map[string]bool)
	for i := range b.Parts {
		id := b.Parts[i].ID
		later, ok := o.parts[partRef{b.ID, id}]
		out[i] = id == "" || ok && (!later || seen[id])
		seen[id] = true
	}
	return out
}
