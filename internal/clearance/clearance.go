// Package clearance tells how much room there is: under the cranks to the ground,
// from a gearbox or bag to the rear tyre while the suspension moves, and from a
// bag to the rider's knees. Lengths are in m, axes are those of package geometry:
// x forward, y left, z up.
package clearance

import (
	"math"

	"steelyard/internal/geometry"
	"steelyard/internal/mass"
)

// Solid is what a part takes up: a box, turned about the axis across the bike, or
// a disc whose axis that is.
type Solid struct {
	ID     string
	Place  mass.Vec // its middle, on the posed bike
	Half   mass.Vec // half of a box's sides; of a disc only Y counts, half its width
	Pitch  float64  // of a box, nose up, rad
	Radius float64  // of a disc; 0 for a box
	Within float64  // each coordinate of its place lies within ± this
	Size   float64  // each of its faces lies within ± this of where its size puts it
	Swings bool     // it is carried by the swingarm, and moves with the wheel
}

// Gap is the room between two things. It is negative where they overlap, by how
// far one had to give way.
type Gap struct {
	ID    string  // of the solid
	Value float64 // m
	Plus  float64 // half the expanded interval, m
}

// Travel is a gap in the pose, and the least while the suspension moves.
type Travel struct {
	Pose, Least Gap
	Rear, Front float64 // travel in use where it is least, m, from full length
}

// Knee is a rider's knee at some turn of the cranks.
type Knee struct {
	At     mass.Vec
	Radius float64
}

// steps are how many places of each end the travel is looked at.
const steps = 13

// Ground is the room under what hangs at the cranks, the main frame's alone. Of
// each pair of travels, rear and front, the bike stands on level ground on both
// tyres. Frame is the half-width of how far the figures of frame, fork and tyres
// may put the frame wrong, m. Without a solid ok is false.
func Ground(b *geometry.Bike, hung []Solid, frame float64) (t Travel, ok bool) {
	low := func(rear, front mass.Vec) (least Gap) {
		turn := level(b, rear, front)
		least.Value = math.Inf(1)
		for i := range hung {
			s := &hung[i]
			z := s.Place.Sub(rear).PitchBy(turn).Z + b.RearRadius - s.drop(turn)
			if z < least.Value {
				least = Gap{s.ID, z, plus(s, mass.Vec{Z: 1}, frame)}
			}
		}
		return least
	}
	if len(hung) == 0 {
		return t, false
	}
	t.Pose = low(b.RearAxle, b.FrontAxle)
	t.Least, t.Rear, t.Front = t.Pose, b.RearSag, b.FrontSag
	for i, rear := range b.AxlePath(steps) {
		for k, front := range forkPath(b) {
			if g := low(rear, front); g.Value < t.Least.Value {
				t.Least, t.Rear, t.Front = g, share(i)*b.RearTravel, share(k)*b.FrontTravel
			}
		}
	}
	return t, true
}

func share(i int) float64 { return float64(i) / (steps - 1) }

// forkPath are places of the front axle over the travel of the fork, along the
// steering axis, while the frame stays where it is in the pose.
func forkPath(b *geometry.Bike) (path [steps]mass.Vec) {
	up := b.HeadTop.Sub(b.HeadBottom)
	up = up.Scale(1 / max(up.Norm(), 1e-9))
	for i := range path {
		path[i] = b.FrontAxle
		if b.FrontSprung {
			path[i] = b.FrontAxle.Add(up.Scale(share(i)*b.FrontTravel - b.FrontSag))
		}
	}
	return path
}

// level is the angle, rad, by which the bike must be turned, nose up, for both
// tyres to touch level ground with its axles at two places of the pose's axes.
func level(b *geometry.Bike, rear, front mass.Vec) float64 {
	d := front.Sub(rear)
	return math.Asin(max(-1, min(1, (b.FrontRadius-b.RearRadius)/math.Hypot(d.X, d.Z)))) - math.Atan2(d.Z, d.X)
}

// drop is how far the lowest point lies under the middle when the solid is turned
// by an angle.
func (s *Solid) drop(turn float64) float64 {
	if s.Radius > 0 {
		return s.Radius
	}
	sin, cos := math.Sincos(s.Pitch + turn)
	return math.Abs(sin)*s.Half.X + math.Abs(cos)*s.Half.Z
}

// Tyre is the room between a solid and the rear tyre, in the pose and at least
// while the wheel moves. The tyre is as wide as it is high, and its tread is flat.
// What the swingarm carries keeps its room. Frame is as in Ground.
func Tyre(b *geometry.Bike, s Solid, frame float64) Travel {
	gap := func(axle mass.Vec) Gap { return s.wheel(axle, b.RearRadius, b.RearRim, frame) }
	t := Travel{Pose: gap(b.RearAxle), Rear: b.RearSag, Front: b.FrontSag}
	t.Least = t.Pose
	if s.Swings {
		return t
	}
	for i, axle := range b.AxlePath(steps) {
		if g := gap(axle); g.Value < t.Least.Value {
			t.Least, t.Rear = g, share(i)*b.RearTravel
		}
	}
	return t
}

// Front is the room between a solid that frame or bar carries and the front tyre,
// steered straight, in the pose and at least over the fork's travel. Frame is as in
// Ground.
func Front(b *geometry.Bike, s Solid, frame float64) Travel {
	gap := func(axle mass.Vec) Gap { return s.wheel(axle, b.FrontRadius, b.FrontRim, frame) }
	t := Travel{Pose: gap(b.FrontAxle), Rear: b.RearSag, Front: b.FrontSag}
	t.Least = t.Pose
	for i, axle := range forkPath(b) {
		if g := gap(axle); g.Value < t.Least.Value {
			t.Least, t.Front = g, share(i)*b.FrontTravel
		}
	}
	return t
}

// wheel is the room between a solid and the tyre of a wheel with that axle.
func (s *Solid) wheel(axle mass.Vec, radius, rim, frame float64) Gap {
	flat, n := s.aside(s.own(axle))
	out := math.Abs(s.Place.Y-axle.Y) - s.Half.Y - (radius-rim)/2
	value, way := apart(flat-radius, out, n)
	return Gap{s.ID, value, plus(s, way, frame)}
}

// Bar is the room between a solid and the bar at its clamp, a tube of that radius
// across the bike. Frame is as in Ground.
func Bar(b *geometry.Bike, s Solid, radius, frame float64) Gap {
	flat, way := s.aside(s.own(b.BarClamp))
	return Gap{s.ID, flat - radius, plus(&s, way, frame)}
}

// Between is the room between two outlines in the middle plane, along the direction,
// square to a side of one of them, that parts them best. The solids are what the
// outlines are of.
func Between(a, b Solid, one, two []Side) Gap {
	best := Gap{ID: a.ID, Value: math.Inf(-1)}
	for _, pair := range [...][2][]Side{{one, two}, {two, one}} {
		for i := range pair[0] {
			n := pair[0][i].out()
			value := math.Inf(1)
			for j := range pair[1] {
				value = min(value, n.Dot(pair[1][j].From)-n.Dot(pair[0][i].From))
			}
			if value > best.Value {
				best.Value, best.Plus = value, plus(&a, n, math.Hypot(b.Within, b.Size))
			}
		}
	}
	return best
}

// reach is how far a box goes from its middle in a direction of the middle plane.
func (s *Solid) reach(n mass.Vec) float64 {
	own := n.PitchBy(-s.Pitch)
	return math.Abs(own.X)*s.Half.X + math.Abs(own.Z)*s.Half.Z
}

// Knees is the least room between a solid and a rider's knees, over all that are
// given: both, at several turns of the cranks. Body is the half-width of how far
// a knee may be from where it is said to be, and from its radius, m. Without
// knees ok is false.
func Knees(s Solid, knees []Knee, body float64) (least Gap, ok bool) {
	for i := range knees {
		k := &knees[i]
		q := s.own(k.At)
		flat, n := s.aside(q)
		out := math.Abs(q.Y) - s.Half.Y
		value, way := apart(flat, out, n)
		if g := (Gap{s.ID, value - k.Radius, plus(&s, way, body)}); !ok || g.Value < least.Value {
			least, ok = g, true
		}
	}
	return least, ok
}

// apart is how far two things are apart that are flat apart in the plane of the
// wheels, in the direction n, and out apart across it; and in which direction. A
// negative distance is an overlap.
func apart(flat, out float64, n mass.Vec) (value float64, way mass.Vec) {
	switch {
	case flat > 0 && out > 0:
		value = math.Hypot(flat, out)
		return value, n.Scale(flat / value).Add(mass.Vec{Y: out / value})
	case out > flat:
		return out, mass.Vec{Y: 1}
	}
	return flat, n
}

// own is a place in the solid's own axes, from its middle.
func (s *Solid) own(p mass.Vec) mass.Vec { return p.Sub(s.Place).PitchBy(-s.Pitch) }

// aside is how far a place, in the solid's own axes, lies outside of its outline
// as seen from the side, negative inside, and which way is out.
func (s *Solid) aside(q mass.Vec) (d float64, out mass.Vec) {
	if s.Radius > 0 {
		r := math.Hypot(q.X, q.Z)
		if r == 0 {
			return -s.Radius, mass.Vec{Z: 1}
		}
		return r - s.Radius, mass.Vec{X: q.X / r, Z: q.Z / r}
	}
	x, z := math.Abs(q.X)-s.Half.X, math.Abs(q.Z)-s.Half.Z
	switch {
	case x > 0 && z > 0:
		d = math.Hypot(x, z)
		return d, mass.Vec{X: x / d, Z: z / d}
	case x > z:
		return x, mass.Vec{X: 1}
	}
	return z, mass.Vec{Z: 1}
}

// plus is half the expanded interval of a gap whose way is a unit vector: the
// place of the solid moves it by each coordinate's share of the way, its size and
// the other thing by all of theirs. All are rectangular.
func plus(s *Solid, way mass.Vec, other float64) float64 {
	variance, sum := 0.0, 0.0
	for _, half := range [...]float64{s.Within * way.X, s.Within * way.Y, s.Within * way.Z, s.Size, other} {
		u := mass.Rectangular(math.Abs(half))
		variance += u * u
		sum += u
	}
	return mass.Expanded(variance, sum)
}
