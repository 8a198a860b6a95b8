package bridge

import (
	"steelyard/internal/document"
	"steelyard/internal/rooms"
)

// steering takes a document. It answers with how the sides that it compares steer
// and balance, what each is in the hand, and the difference of the two:
// steering.schema.json.
func (s *Session) steering(text string) string {
	e := s.evaluated(text)
	if e.Document == nil {
		return s.refusal(e.Report.Problems)
	}
	return answer(rooms.SteeringOf(e))
}

// clearances answers a document with the room that the sides it compares have:
// under the cranks, at the rear tyre and at the knees. The schema is
// rooms.Clearances.
func (s *Session) clearances(text string) string {
	e := s.evaluated(text)
	if e.Document == nil {
		return s.refusal(e.Report.Problems)
	}
	return answer(rooms.ClearancesOf(e))
}

// frameBag takes a document and the id of a build. It answers with the outline of the
// largest frame bag of that build as SVG, at its true size.
func (s *Session) frameBag(text, build string) string {
	d, problems := s.document(text)
	if d == nil {
		return s.refusal(problems)
	}
	b := d.Build(build)
	if b == nil {
		return s.failed(noBuild(build))
	}
	svg, err := rooms.FrameBagSVG(b, s.words)
	if err != nil {
		return s.failed(document.Problem{Severity: document.SeverityError, Field: "build", Message: sentence(err)})
	}
	return svg
}

// placements answers a document with what it does to the steering of its sides to
// hang their bags elsewhere. The schema is rooms.Placements.
func (s *Session) placements(text string) string {
	e := s.evaluated(text)
	if e.Document == nil {
		return s.refusal(e.Report.Problems)
	}
	return answer(rooms.PlacementsOf(e))
}

// road answers a document with what the rough road that it shows does to the sides
// that it compares, with the difference of the two. The schema is rooms.Road.
func (s *Session) road(text string) string {
	e := s.evaluated(text)
	if e.Document == nil {
		return s.refusal(e.Report.Problems)
	}
	return answer(rooms.RoadOf(e))
}

// roadCurves answers with what takes longer of it: curves over speed, the response,
// spectra, a ride over an obstacle, and what it would take to do as well. The
// schema is rooms.RoadCurves.
func (s *Session) roadCurves(text string) string {
	e := s.evaluated(text)
	if e.Document == nil {
		return s.refusal(e.Report.Problems)
	}
	return answer(rooms.RoadCurvesOf(e))
}
