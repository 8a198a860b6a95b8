package report

import (
	"slices"

	"steelyard/internal/document"
	"steelyard/internal/words"
)

// Evaluator evaluates one state of a document after the other. After an edit of a
// single part it reads only that part, and reuses what it wrote of the builds
// that do not have it. The zero Evaluator is ready for use.
type Evaluator struct {
	Words *words.Words // the language of the reports, nil is English; it stays as it is once a document was evaluated

	reader document.Reader
	last   *Evaluation // of the document that reader holds
}

// Evaluate is [EvaluateText] of the text. The result must not be changed: the
// next one may take over parts of it.
func (v *Evaluator) Evaluate(text string) *Evaluation {
	before := v.last
	v.last = nil // until there is the next: a panic leaves nothing half done
	d, problems, made := v.reader.Open(text)
	if d == nil {
		return refused(problems, v.Words)
	}
	var last *edit
	if before != nil && made != nil {
		last = &edit{before, made.Build, made.Part}
	}
	v.last = weigh(d, v.Words, problems, last)
	return v.last
}

// edit is an evaluation whose document became the present one by the change of
// a part of one build. A nil edit is no such evaluation.
//
// What is told of a build, and of a side, depends on the build with its load and
// on what is shown; never on the other builds.
type edit struct {
	before *Evaluation
	only   int // the index of that build
	part   int // and of the part in it
}

// check is document.Check of the document.
func (e *edit) check(d *document.Document) []document.Problem {
	if e == nil || len(e.before.checked) > 0 {
		return document.Check(d)
	}
	return document.CheckPart(d, e.only, e.part)
}

// match reuses the pairing of the lines of two builds. Lines pair by id and kind
// first, so nothing changes as long as these of the part stay.
func (e *edit) match(a, b *Weighed) []pair {
	if e == nil || e.before.matched == nil {
		return nil
	}
	was := &e.before.Document.Builds[e.only].Parts[e.part]
	for _, c := range e.before.matched {
		mine := c.a == e.part && a.Build.ID == e.before.Document.Builds[e.only].ID || c.b == e.part && b.Build.ID == e.before.Document.Builds[e.only].ID
		if !mine {
			continue
		}
		if c.a < 0 || c.b < 0 {
			return nil
		}
		p, q := &a.Build.Parts[c.a], &b.Build.Parts[c.b]
		if p.ID != q.ID || p.Kind != q.Kind || p.Kind != was.Kind {
			return nil
		}
	}
	return e.before.matched
}

// poses returns the poses of n builds: a part changes none.
func (e *edit) poses(n int) []posed {
	if e == nil {
		return make([]posed, n)
	}
	return slices.Clone(e.before.posed)
}

// texts takes over what was written of the evaluation before, for reuse where the
// next report says the same; it has room for so many builds and sides.
func (e *edit) texts(builds, sides int) texts {
	t := newTexts(builds, sides)
	if e == nil {
		return t
	}
	was := &e.before.texts
	copy(t.builds, was.builds)
	t.builds[e.only].whole = ""
	t.weigh, t.changes, t.moved = was.weigh, was.changes, was.moved
	return t
}

// build reuses what was written of build i, if that has not changed.
func (e *edit) build(to *Evaluation, i int) bool {
	if e == nil || i == e.only {
		return false
	}
	to.Report.Builds[i] = e.before.Report.Builds[i]
	return true
}

// side reuses what was written of side i, if its build has not changed.
func (e *edit) side(to *Evaluation, i, build int) bool {
	if e == nil || build == e.only {
		return false
	}
	to.Report.Sides = append(to.Report.Sides, e.before.Report.Sides[i])
	to.texts.sides[i] = e.before.texts.sides[i]
	return true
}
