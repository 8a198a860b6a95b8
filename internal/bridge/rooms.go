package bridge

import "steelyard/internal/rooms"

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

// placements answers a document with what it does to the steering of its sides to
// hang their bags elsewhere. The schema is rooms.Placements.
func (s *Session) placements(text string) string {
	e := s.evaluated(text)
	if e.Document == nil {
		return s.refusal(e.Report.Problems)
	}
	return answer(rooms.PlacementsOf(e))
}
