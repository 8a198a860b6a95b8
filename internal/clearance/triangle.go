package clearance

import (
	"math"

	"steelyard/internal/geometry"
	"steelyard/internal/mass"
)

const (
	tubeHalf  = 0.020 // half a frame tube, m; common practice, no source
	shockHalf = 0.030 // half a shock with its reservoir or spring, m; likewise

	// TubeWithin is how far a tube's face may be from where it is drawn, m: tubes are
	// 30 to 50 mm thick.
	TubeWithin = 0.005
)

// Side is a side of the room in the main triangle: from one corner to the next, in
// the middle plane.
type Side struct {
	From, To mass.Vec
	Along    string // the station of the tube that it lies along; "shock" beside a shock
}

// out is the unit vector out of a room that lies to the right of its sides.
func (s *Side) out() mass.Vec {
	d := s.To.Sub(s.From)
	d = d.Scale(1 / max(d.Norm(), 1e-9))
	return mass.Vec{X: -d.Z, Z: d.X}
}

// Tubes is the room between the tubes of the main frame, as its sides in turn: up the
// seat tube, along the top tube, down the head tube and the down tube. There are none
// where the tubes leave no room.
func Tubes(b *geometry.Bike) []Side {
	axes := []Side{
		{b.BottomBracket, b.SeatTop, "seat-tube"}, {b.SeatTop, b.HeadTop, "top-tube"},
		{b.HeadTop, b.HeadBottom, "head-tube"}, {b.HeadBottom, b.BottomBracket, "down-tube"},
	}
	// Begin with more than a frame takes up, and cut off what is beyond each tube.
	room := Outline(Solid{Place: b.BottomBracket, Half: mass.Vec{X: 3, Z: 3}}, nil)
	for i := range axes {
		n := axes[i].out()
		room = cut(room, n, n.Dot(axes[i].From)-tubeHalf, axes[i].Along)
	}
	return room
}

// Outline is that of a box in the middle plane, without what a room cuts off: what is
// sewn to fit ends at the tubes.
func Outline(s Solid, room []Side) []Side {
	corner := func(x, z float64) mass.Vec {
		return s.Place.Add(mass.Vec{X: x * s.Half.X, Z: z * s.Half.Z}.PitchBy(s.Pitch))
	}
	a, b, c, d := corner(-1, -1), corner(-1, 1), corner(1, 1), corner(1, -1)
	box := []Side{{From: a, To: b}, {From: b, To: c}, {From: c, To: d}, {From: d, To: a}}
	for i := range room {
		n := room[i].out()
		box = cut(box, n, n.Dot(room[i].From), "")
	}
	return box
}

// Shock is the least room between what has an outline and the shock while the
// suspension moves; without a shock ok is false.
func Shock(b *geometry.Bike, s Solid, outline []Side) (least Gap, ok bool) {
	if b.ShockFrame == b.ShockSwing {
		return least, false
	}
	for _, axle := range b.AxlePath(steps) {
		eye := b.ShockSwing.Sub(b.Pivot).PitchBy(turned(b, axle)).Add(b.Pivot)
		d := eye.Sub(b.ShockFrame)
		shock := Solid{
			Place: b.ShockFrame.Lerp(eye, 0.5), Pitch: math.Atan2(d.Z, d.X), Within: TubeWithin,
			Half: mass.Vec{X: d.Norm() / 2, Z: shockHalf},
		}
		if g := Between(s, shock, outline, Outline(shock, nil)); !ok || g.Value < least.Value {
			least, ok = g, true
		}
	}
	return least, ok
}

// Triangle is the room for a bag between the tubes of the main frame: all of it, or
// where a shock crosses it while the suspension moves the larger part beside the shock.
func Triangle(b *geometry.Bike) []Side {
	room := Tubes(b)
	if b.ShockFrame == b.ShockSwing {
		return room
	}
	best := []Side(nil)
	for _, side := range [...]float64{1, -1} {
		part := room
		for _, axle := range b.AxlePath(steps) {
			eye := b.ShockSwing.Sub(b.Pivot).PitchBy(turned(b, axle)).Add(b.Pivot)
			shock := Side{b.ShockFrame, eye, ""}
			n := shock.out().Scale(side)
			part = cut(part, n, n.Dot(b.ShockFrame)-shockHalf, "shock")
		}
		if Area(part) > Area(best) {
			best = part
		}
	}
	return best
}

// turned is by how much the swingarm is turned from the pose, rad, with the axle at
// a place.
func turned(b *geometry.Bike, axle mass.Vec) float64 {
	was, is := b.RearAxle.Sub(b.Pivot), axle.Sub(b.Pivot)
	return math.Atan2(is.Z, is.X) - math.Atan2(was.Z, was.X)
}

// cut keeps of a room what lies at most so far out in a direction, with a side along
// what cut it.
func cut(room []Side, n mass.Vec, most float64, along string) []Side {
	var kept []Side
	for i := range room {
		s := room[i]
		from, to := n.Dot(s.From)-most, n.Dot(s.To)-most
		at := func() mass.Vec { return s.From.Lerp(s.To, from/(from-to)) }
		switch {
		case from <= 0 && to <= 0:
			kept = append(kept, s)
		case from <= 0:
			kept = append(kept, Side{s.From, at(), s.Along})
		case to <= 0:
			kept = append(kept, Side{at(), s.To, s.Along})
		}
	}
	// Where the room was cut, its ends are not joined.
	for i := range kept {
		next := &kept[(i+1)%len(kept)]
		if gap := next.From.Sub(kept[i].To); gap.Norm() > 1e-9 {
			end := Side{kept[i].To, next.From, along}
			return append(kept[:i+1:i+1], append([]Side{end}, kept[i+1:]...)...)
		}
	}
	return kept
}

// Area is that of a room, m².
func Area(room []Side) (a float64) {
	for i := range room {
		a -= (room[i].From.X*room[i].To.Z - room[i].To.X*room[i].From.Z) / 2
	}
	return a
}

// Extent is how long and how high a room is, m.
func Extent(room []Side) (long, high float64) {
	if len(room) == 0 {
		return 0, 0
	}
	low, top := room[0].From, room[0].From
	for i := range room {
		p := room[i].From
		low = mass.Vec{X: min(low.X, p.X), Z: min(low.Z, p.Z)}
		top = mass.Vec{X: max(top.X, p.X), Z: max(top.Z, p.Z)}
	}
	return top.X - low.X, top.Z - low.Z
}

// Inside is how far a box stays inside of a room, and the tube that it is nearest
// to; negative where it sticks out. The tube with the name own is left out: what is
// fixed to it touches it. Without a room ok is false.
func Inside(room []Side, s Solid, own string, frame float64) (g Gap, along string, ok bool) {
	for i := range room {
		side := &room[i]
		if side.Along == own {
			continue
		}
		n := side.out()
		if v := n.Dot(side.From) - n.Dot(s.Place) - s.reach(n); !ok || v < g.Value {
			g, along, ok = Gap{s.ID, v, plus(&s, n, math.Hypot(frame, TubeWithin))}, side.Along, true
		}
	}
	return g, along, ok
}
