package reconcile

import (
	"slices"

	"steelyard/internal/document"
	"steelyard/internal/report"
	"steelyard/internal/weighin"
	"steelyard/internal/words"
)

// Reconciliation is a weigh-in set against the build that was weighed.
type Reconciliation struct {
	WeighIn  *document.WeighIn
	Problems []document.Problem // with the weigh-in; those of document.Check first
	Bike     *report.Weighed    // as it stood on the scale; nil when the problems say why not
	Expected []weighin.Expected // what the scale should show if the list is right
	Result   *weighin.Result    // nil when the problems say why not

	lines map[int][]int // of the bike, by source of mass
}

// Of reconciles a weigh-in of a document that was opened.
func Of(d *document.Document, w *document.WeighIn) *Reconciliation {
	r := &Reconciliation{WeighIn: w}
	for _, p := range document.Check(d) {
		if p.WeighIn == w.ID {
			r.Problems = append(r.Problems, p)
		}
	}
	if slices.ContainsFunc(r.Problems, func(p document.Problem) bool {
		return p.Severity == document.SeverityError && (p.Field == "build" || p.Field == "load" || p.Field == "state" || p.Field == "id")
	}) {
		return r
	}
	fault := func(p document.Problem) *Reconciliation {
		p.Severity, p.WeighIn, p.Build = document.SeverityError, w.ID, w.Build
		r.Problems = append(r.Problems, p)
		return r
	}
	build := w.Sunk(d.Build(w.Build))
	for _, end := range []struct {
		field, key string
		sag        *float64
		travel     float64
	}{
		{"front_sag_mm", "reconcile.sunk.front", w.FrontSag, build.Fork.Travel},
		{"rear_sag_mm", "reconcile.sunk.rear", w.RearSag, build.Rear.Travel},
	} {
		if end.sag != nil && *end.sag > end.travel {
			return fault(document.Problem{Field: end.field, Message: words.Tell(end.key, "sag", *end.sag, "travel", end.travel)})
		}
	}
	bike := onScale(d, w, build)
	if bike == nil {
		return fault(document.Problem{Field: "build", Message: words.Tell("reconcile.figures")})
	}
	if bike.State() != w.State {
		return fault(document.Problem{Load: w.Load, Field: "state", Message: words.Tell("reconcile.state")})
	}
	r.Bike, r.lines = bike, bike.Sources()
	r.Expected = weighin.Expect(w, bike.Bike, bike.Items)
	result, problems := weighin.Weigh(w, bike.Bike, bike.Items)
	r.Result, r.Problems = result, append(r.Problems, problems...)
	return r
}

// onScale is the bike in the state that it was weighed in; nil when its figures
// have errors.
func onScale(d *document.Document, w *document.WeighIn, build document.Build) *report.Weighed {
	one := *d
	one.Builds = []document.Build{build}
	one.Show.Compare, one.Show.Loads = []string{w.Build}, []string{w.Load}
	one.Show.State, one.Show.Supplies = w.State, document.Full
	return report.Weigh(&one, nil).Sides[0]
}

// part is the first line that has its mass from a source, nil when none has.
func (r *Reconciliation) part(source int) *document.Part {
	if i := r.lines[source]; len(i) > 0 {
		return &r.Bike.Build.Parts[i[0]]
	}
	return nil
}

// Teller returns what tells the result in a language, in the units of the
// document's show.
func (r *Reconciliation) Teller(show document.Show, language *words.Words) *weighin.Teller {
	return &weighin.Teller{
		Show: show, Words: language,
		Source: func(source int) string {
			if p := r.part(source); p != nil {
				return p.Name
			}
			return ""
		},
		Station: func(name string) string { return language.Label("station." + name) },
	}
}
