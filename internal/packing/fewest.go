package packing

// Among packings that are as good as the best within the tolerance, the one with
// the fewest moves is taken. Once the aim is proved, any packing is good enough that
// is within the tolerance of the bound. So that there is something to choose from,
// the aim is proved to half of the tolerance, unless that takes too long. Then a
// second search looks for packings that are good enough with a move less than the
// best. Whenever it has found one it asks for a move less than that, and when it
// comes to its end there is none.

// tolerance is that of the aim's proof.
func (t *Task) tolerance() float64 {
	if t.unmoved() {
		return t.Tolerance
	}
	return t.Tolerance / 2
}

// unmoved reports whether every packing takes as many moves: none.
func (t *Task) unmoved() bool {
	for i := range t.Start {
		for _, n := range t.Start[i] {
			if n > 0 && !t.Goods[i].Pinned {
				return false
			}
		}
	}
	return true
}

// giveUp is the effort after which fewer moves are looked for no longer: a
// difference of one move is not worth a wait of minutes.
const giveUp = 200000

// settled reports whether fewer moves are looked for no longer.
func (s *Solver) settled() bool { return s.fewest || s.unmet >= giveUp }

// attempt is the effort that a leap gets, of several moves less at once.
const attempt = 1500

// lessen looks at up to n parts of the search for fewer moves. It leaps: twice as
// many moves less after a leap that succeeded, half as many after one that did not.
// Each leap is a search of its own. Only that for one move less goes on when it has
// succeeded, to its end, for that proves that there are no fewer.
func (s *Solver) lessen(n int) {
	t := s.in.task
	have := -1
	if s.best != nil {
		have = t.Moves(s.packing)
	}
	if s.any || have <= s.least {
		s.fewest = true
		return
	}
	if s.fewer == nil {
		s.leap = min(max(s.leap, 1), have-s.least)
		most := have - s.leap
		sub := *t
		sub.AtMost = &most
		ceiling := max(t.Figures(s.packing).Aim, s.in.unit*s.bound+s.in.zero+t.Tolerance)
		fewer, err := newSolver(&sub, ceiling+t.Rounding()+1e-9*s.in.unit)
		if err != nil { // a *Shortage
			s.least = most + 1
			return
		}
		s.fewer = fewer
		fewer.once = s.leap > 1
		fewer.seed = fewer.in.fold(s.packing)
	}
	f := s.fewer
	spent, nodes := f.spent, f.nodes
	for f.spent < spent+n && !f.done && !f.found {
		f.step()
	}
	f.settleBound()
	s.spent, s.nodes, s.unmet = s.spent+max(1, f.spent-spent), s.nodes+f.nodes-nodes, s.unmet+f.spent-spent
	switch {
	case f.found:
		s.packing, s.unmet, f.found = f.packing, 0, false
		if f.once {
			s.fewer, s.leap = nil, 2*s.leap
		}
	case f.done:
		s.fewer, s.least = nil, have-s.leap+1
	case s.leap > 1 && f.spent >= attempt:
		s.fewer, s.leap = nil, s.leap/2
	}
}
