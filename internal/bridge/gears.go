package bridge

import (
	"steelyard/internal/report"
	"steelyard/internal/rooms"
)

// gears takes a document. It answers with the gears of all its builds, what their
// drives lose, and the difference of the two builds compared: gears.schema.json.
func (s *Session) gears(text string) string {
	e := s.evaluated(text)
	if e.Document == nil {
		return s.refusal(e.Report.Problems)
	}
	return answer(s.rides(e).Gears())
}

// climb takes a document. It answers with what a climb and a day cost the sides
// that it compares, and their difference: climb.schema.json.
func (s *Session) climb(text string) string {
	e := s.evaluated(text)
	if e.Document == nil {
		return s.refusal(e.Report.Problems)
	}
	return answer(s.rides(e).Climb())
}

// rides are those of an evaluation: both chapters ask for them.
func (s *Session) rides(e *report.Evaluation) *rooms.Rides {
	if !s.ridden.Of(e) {
		s.ridden = rooms.RidesOf(e)
	}
	return s.ridden
}

// stretches takes a track. It answers with the stretches of a day that it gives:
// stretches.schema.json.
func (s *Session) stretches(text string) string {
	list, problem := rooms.StretchesOf([]byte(text), s.words)
	if problem != nil {
		return s.failed(*problem)
	}
	return answer(list)
}
