package bridge

import (
	"slices"

	"steelyard/internal/document"
	"steelyard/internal/onscale"
	"steelyard/internal/words"
)

// weighNext takes a document, the id of a build and the step of a kitchen scale as
// a mass. It answers with what is left to weigh of the build, and what of it
// narrows the total most: onscale.schema.json.
func (s *Session) weighNext(args ...string) string {
	e := s.evaluated(argument(args, 0))
	if e.Document == nil {
		return s.refusal(e.Report.Problems)
	}
	id := argument(args, 1)
	i := slices.IndexFunc(e.Document.Builds, func(b document.Build) bool { return b.ID == id })
	if i < 0 {
		return s.failed(noBuild(id))
	}
	step, err := grams(argument(args, 2))
	if err != nil {
		return s.failed(problemOf("step_g", err))
	}
	return answer(onscale.New(e, i, step))
}

// weighTaken takes a document, the id of a build and what the scale shows of a part
// of it, or of several at once, JSON: the reading of onscale.schema.json. It answers with what that says of
// them: taken there.
func (s *Session) weighTaken(args ...string) string {
	var r onscale.Reading
	d, b, refusal := s.ofBuild(args, &r)
	if b == nil {
		return refusal
	}
	on := make([]*document.Part, 0, 1+len(r.With))
	for _, id := range append([]string{r.Part}, r.With...) {
		p := b.Part(id)
		if p == nil {
			return s.problem("part", "onscale.part", "id", words.Shorten(id))
		}
		on = append(on, p)
	}
	joint := ""
	if len(on) > 1 {
		joint = d.NextJoint()
	}
	t, field, err := onscale.Take(on, &r, joint)
	if err != nil {
		return s.failed(problemOf(field, err))
	}
	return answer(t)
}
