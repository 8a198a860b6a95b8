package scene

import (
	"math"
	"sort"
)

// called is a part whose name may be written.
type called struct {
	*dot
	differs bool // the other build has it not, or not so heavy
	gone    bool // only the other build has it
}

// callOrder says in which order parts are named: first what differs between the
// builds, here and there, then the rest; in each the heaviest first.
func callOrder(here, there, gone []dot) []called {
	list := make([]called, 0, len(here)+len(gone))
	kg := make(map[string]float64, len(there))
	for i := range there {
		kg[there[i].m.Part] = there[i].part
	}
	for i := range here {
		d := &here[i]
		other, ok := kg[d.m.Part]
		list = append(list, called{dot: d, differs: len(there) > 0 && d.m.Role != Body && (!ok || unlike(d.part, other))})
	}
	for i := range gone {
		list = append(list, called{dot: &gone[i], differs: true, gone: true})
	}
	sort.SliceStable(list, func(i, j int) bool {
		a, b := &list[i], &list[j]
		if a.differs != b.differs {
			return a.differs
		}
		return a.kg > b.kg
	})
	return list
}

// unlike says whether two masses differ by more than pieces of one type do.
func unlike(a, b float64) bool { return math.Abs(a-b) > 0.02*max(a, b) }

// cover surveys what names are not to cover while there is room beside it: the
// lines of the bike and its dots, and what lies within its wheels.
func (s *sheet) cover(sub *Subject, marks []Mark, here []dot) {
	s.lines = newBusyMap(s.cam.Width, s.cam.Height)
	drawn := make([]Mark, 0, len(marks))
	for _, m := range marks {
		if m.Stroke != Hair {
			drawn = append(drawn, m)
		}
	}
	s.lines.marks(drawn)
	for i := range here {
		if here[i].m.Role != Body {
			s.lines.disc(here[i].at, here[i].r, 1)
		}
	}
	s.lines.total()
	b := sub.Bike
	if b == nil {
		return
	}
	if s.cam.Aspect == Side {
		s.wheels = [2]disc{{s.spot(b.RearAxle), b.RearRadius * s.cam.Scale}, {s.spot(b.FrontAxle), b.FrontRadius * s.cam.Scale}}
	}
}

// disc is a round area of the picture.
type disc struct {
	at pt
	r  float64
}

func (d disc) meets(b box) bool {
	near := pt{sane(d.at.x, b.x0, b.x1), sane(d.at.y, b.y0, b.y1)}
	return near.sub(d.at).len() < d.r
}

// covers says how much of the bike letters in a box would cover: 0 for nothing,
// 1 for the spokes of a wheel at most, 2 for lines that tell something.
func (s *sheet) covers(b box) int {
	switch {
	case s.lines.in(b) > 0:
		return 2
	case s.wheels[0].meets(b) || s.wheels[1].meets(b):
		return 1
	}
	return 0
}
