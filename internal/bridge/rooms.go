package bridge

import "steelyard/internal/rooms"

// steering answers a document with how the sides that it compares steer and
// balance, and what each is in the hand, with the difference of the two. The
// schema is rooms.Steering.
func (s *Session) steering(text string) string {
	e := s.evaluated(text)
	if e.Document == nil {
		return s.refusal(e.Report.Problems)
	}
	return answer(rooms.SteeringOf(e))
}
