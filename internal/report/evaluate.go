package report

import (
	"sync"

	"steelyard/internal/assembly"
	"steelyard/internal/document"
	"steelyard/internal/geometry"
	"steelyard/internal/mass"
	"steelyard/internal/words"
)

// Evaluation is a document evaluated: the report, and what it was made from.
type Evaluation struct {
	Document *document.Document // nil when the text was refused
	Report   *Report
	Builds   []*Weighed // one for each build of the document; nil where it could not be weighed
	Sides    []*Weighed // one for each of Report.Sides, likewise; mostly they are among Builds

	words   *words.Words       // the language of the report
	posed   []posed            // one for each build
	checked []document.Problem // what document.Check has to tell
	matched []pair             // the lines of both sides, before any is left out; nil when there are not two
	renamed []renaming         // lines of the second side that are the same piece as in the first
	texts   texts              // of the report, as far as they were written
}

// Words returns the language of the report; nil is English.
func (e *Evaluation) Words() *words.Words { return e.words }

// posed is a build's bike in its pose, nil when it has none, with what there is
// to tell about it.
type posed struct {
	bike     *geometry.Bike
	problems []document.Problem
}

func (p *posed) known() bool { return p.bike != nil || len(p.problems) > 0 }

// sound reports whether there is nothing to tell.
func (p *posed) sound() bool { return p.bike != nil && len(p.problems) == 0 }

// sameFigures reports whether two builds have the same bike, as far as its pose
// goes: mostly they differ in their parts.
func sameFigures(a, b *document.Build) bool {
	return a.Frame == b.Frame && a.Fork == b.Fork && a.Rear == b.Rear && a.Wheels == b.Wheels &&
		a.Cockpit == b.Cockpit && a.Saddle == b.Saddle && a.Cranks == b.Cranks
}

// Evaluate reads the text of a document and works out everything that there is
// to tell about it, in English. It never fails: what is wrong is told in the
// report's problems, and all that can be reckoned without it is. The result
// depends on the text alone, and every number in it is finite.
func Evaluate(text []byte) *Report { return EvaluateText(text).Report }

// EvaluateText is Evaluate, and keeps what the report was made from.
func EvaluateText(text []byte) *Evaluation {
	d, problems := document.Open(text)
	if d == nil {
		return refused(problems, nil)
	}
	return weigh(d, nil, problems, nil)
}

// Weigh is EvaluateText for a document in memory, in a language; nil is English.
// The document must not be changed while the result is in use.
func Weigh(d *document.Document, w *words.Words) *Evaluation { return weigh(d, w, nil, nil) }

// refused is the evaluation of a text that is no document.
func refused(problems []document.Problem, w *words.Words) *Evaluation {
	r := newReport()
	r.Problems = append(r.Problems, problems...)
	r.say(w)
	return &Evaluation{Report: r, words: w}
}

// say says the problems in the language of the report.
func (r *Report) say(w *words.Words) {
	for i := range r.Problems {
		r.Problems[i] = r.Problems[i].Said(w)
	}
}

func newReport() *Report {
	return &Report{
		Head:   Head{Format: Format, Version: Version, Program: Program(), Problems: []document.Problem{}},
		Builds: []Build{}, Sides: []Side{},
	}
}

// weigh evaluates a document whose opening had these problems. Last is the
// evaluation of the document before, or nil when nothing of it can be reused.
func weigh(d *document.Document, words *words.Words, problems []document.Problem, last *edit) *Evaluation {
	r := newReport()
	e := &Evaluation{Document: d, Report: r, words: words, Builds: make([]*Weighed, len(d.Builds)), posed: last.poses(len(d.Builds))}
	checked := last.check(d)
	e.checked = checked
	r.Problems = append(append(r.Problems, problems...), checked...)
	omit := assembly.NewOmissions(checked)

	t := workspaces.Get().(*workspace)
	t.phrasing, t.show = NewPhrasing(words, &d.Show), &d.Show
	src := &t.src
	src.Room(d)
	sides := newSides(d)
	to, left := assembly.LevelOf(d.Show.State), d.Show.Supplies.Left()
	var before *assembly.Assembly
	// put weighs a build with a load. For a build that is weighed a second time only
	// the problems of the load are added.
	put := func(i int, l *document.Load, side, again bool) *Weighed {
		b := &d.Builds[i]
		tell := func(problems []document.Problem) { r.Problems = append(r.Problems, problems...) }
		p := &e.posed[i]
		if i > 0 && !p.known() && e.posed[i-1].sound() && sameFigures(b, &d.Builds[i-1]) {
			*p = e.posed[i-1]
		}
		if !p.known() {
			p.bike, p.problems = geometry.Pose(b)
		}
		if !again {
			tell(p.problems)
		}
		if p.bike == nil {
			return nil
		}
		bike := p.bike
		var carried *assembly.Cargo
		if l != nil && (side || to >= assembly.Loaded) {
			var problems []document.Problem
			carried, problems = assembly.Carry(d, b, bike, l, omit)
			tell(problems)
		}
		a, problems := assembly.Assemble(b, bike, carried, to, left, omit, src, before)
		if !again {
			tell(problems)
		}
		a.Load = l
		before = a
		return &Weighed{Assembly: a}
	}
	for i := range d.Builds {
		l := sides.loads[0]
		side := sides.find(i)
		if side != nil {
			l = side.load
		}
		e.Builds[i] = put(i, l, side != nil, false)
		if side != nil {
			side.weighed = e.Builds[i]
		}
	}
	for i := range sides.list {
		s := &sides.list[i]
		if s.weighed == nil && e.Builds[s.build] != nil { // one build with two loads
			s.weighed = put(s.build, s.load, true, true)
		}
		e.Sides = append(e.Sides, s.weighed)
	}

	var a, b *Weighed
	if len(e.Sides) == 2 && e.Sides[0] != nil && e.Sides[1] != nil {
		a, b = e.Sides[0], e.Sides[1]
	}
	var pairs []pair
	var plus *[numFigures]float64
	var renamed []renaming
	if a != nil {
		if e.matched = last.match(a, b); e.matched == nil {
			e.matched = match(a, b)
		}
		pairs = countedPairs(a, b, e.matched)
		shareSpots(a, b, pairs, src.Count)
		a.computeFigures()
		b.computeFigures()
		renamed = renamings(a, b, pairs)
		e.renamed = renamed
		plus = pairUncertainties(a, b, renamed, &t.one, &t.both)
	}
	r.Builds = make([]Build, len(d.Builds))
	e.texts = last.texts(len(d.Builds), len(sides.list))
	for i, w := range e.Builds {
		if w != nil && w != a && w != b {
			w.computeFigures()
			w.uncertainties(&t.one)
		}
		if !last.build(e, i) {
			r.Builds[i] = t.build(&d.Builds[i], w)
		}
	}
	for i := range sides.list {
		if !last.side(e, i, sides.list[i].build) {
			r.Sides = append(r.Sides, t.side(d, sides, i, r.Builds))
		}
	}
	if a != nil {
		b.rename(renamed, true)
		r.Difference = t.difference(a, b, pairs, plus)
		b.rename(renamed, false)
	}
	r.say(words)
	t.phrasing, t.show = nil, nil
	src.Reset()
	workspaces.Put(t) // not after a panic: what it holds may be half done
	return e
}

// workspaces are the free ones.
var workspaces = sync.Pool{New: func() any { return new(workspace) }}

// workspace is where an evaluation works: what its builds share, and memory to use
// again.
type workspace struct {
	phrasing  *Phrasing
	src       assembly.Sources
	show      *document.Show
	one, both mass.Budget
	tally     assembly.Tally
	spread    spreading
}

// build writes a build into a report; w is nil when it could not be weighed.
func (t *workspace) build(b *document.Build, w *Weighed) Build {
	out := Build{
		Bike:     Bike{ID: b.ID, Name: b.Name, State: assembly.LevelOf(t.show.State).State(), Supplies: t.supplies()},
		Geometry: []Length{}, Own: []Subset{},
		Findings: newFindings(),
	}
	if w == nil {
		out.Parts = make([]Part, len(b.Parts))
		for i := range b.Parts {
			out.Parts[i] = Part{ID: b.Parts[i].ID, Group: document.GroupOf(b.Parts[i].Kind)}
		}
		out.Summary = t.phrasing.unweighed(b)
		return out
	}
	out.Weighed = true
	out.Load, out.State = loadID(w.Load), w.Level.State()
	out.FrontSprung, out.RearSprung = w.Bike.FrontSprung, w.Bike.RearSprung
	out.Geometry = lengths(w.Bike)
	doubts := mass.Doubts(w.Items)
	out.Parts = w.tellParts(doubts)
	out.Findings = t.tell(w, doubts)
	if out.Own = out.Groups; w.Cargo != nil || w.Off > 0 {
		out.Own = w.ownGroups(&t.tally)
	}
	return out
}

func newFindings() Findings {
	return Findings{Sums: Sums{Figures: []Figure{}, Groups: []Subset{}, Carriers: []Subset{}}, Weigh: []Advice{}}
}

// tell writes what a build and a side of the comparison have in common.
func (t *workspace) tell(w *Weighed, doubts []float64) Findings {
	var out Findings
	out.Figures = w.figures.tell()
	out.Groups = w.subsets(w.groups(), groupKey, &t.tally)
	out.Carriers = w.subsets(w.buckets(int(assembly.NumCarriers), carrierOfLine), carrierKey, &t.tally)
	out.Weigh = t.adviseTotal(w, doubts)
	out.Summary = t.phrasing.build(w)
	return out
}
