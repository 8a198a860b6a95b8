package geometry

import (
	"math"

	"steelyard/internal/mass"
)

// guardRoom is how far a mudguard stays off its tyre, m (common practice, no
// source).
const guardRoom = 0.015

// Place resolves a station and an offset from it, in m, to one point or, for a
// pair, to two: left, then right. The offset is x forward, y left, z up; from
// a pair y is outward, so the right point mirrors it. Without such a station
// the result is false.
func (b *Bike) Place(station string, offset mass.Vec) ([]mass.Vec, bool) {
	s, ok := b.Stations[station]
	if !ok {
		return nil, false
	}
	places := make([]mass.Vec, len(s.Points))
	for i, p := range s.Points {
		places[i] = p.Add(offset)
		if i == 1 {
			places[i] = p.Add(mirror(offset))
		}
	}
	return places, true
}

// mirror returns v as seen in the bike's middle plane.
func mirror(v mass.Vec) mass.Vec { return mass.Vec{X: v.X, Y: -v.Y, Z: v.Z} }

// layout is a posed bike with what the stations are measured along.
type layout struct {
	*Bike
	f        *frame
	g        footing
	seatTube float64  // length, m
	deck     mass.Vec // middle of the rear rack's deck
	deckFoot mass.Vec // where its legs stand, in the middle of the bike
}

// place finds every station of a posed bike.
func place(b *Bike, f *frame, g footing) map[string]Station {
	l := layout{Bike: b, f: f, g: g, seatTube: f.seatTop.Norm()}
	l.rack()
	spots := l.spots()
	found := make(map[string]Station, len(spots))
	points := make([]mass.Vec, 0, 2*len(spots))
	for i := range spots {
		from := len(points)
		points = append(points, spots[i].points[:spots[i].n]...)
		found[spots[i].name] = Station{Points: points[from:len(points):len(points)]}
	}
	return found
}

// xyz is a displacement in the frame's own axes: forward, left and up as the
// frame is turned.
func (l *layout) xyz(x, y, z float64) mass.Vec { return mass.Vec{X: x, Y: y, Z: z}.PitchBy(l.g.turn) }

// steer is a displacement square to the steering axis, forward, and up along it.
func (l *layout) steer(ahead, up float64) mass.Vec {
	return l.f.ahead.Scale(ahead).Sub(l.f.down.Scale(up)).PitchBy(l.g.turn)
}

// middle drops a point onto the bike's middle plane.
func middle(v mass.Vec) mass.Vec { return mass.Vec{X: v.X, Z: v.Z} }

// onSeatTube is a point on the seat tube, d from the bottom bracket, and off
// ahead of its middle.
func (l *layout) onSeatTube(d, off float64) mass.Vec {
	way := l.SeatTop.Sub(l.BottomBracket).Scale(1 / l.seatTube)
	return l.BottomBracket.Add(way.Scale(d)).Add(mass.Vec{X: way.Z, Z: -way.X}.Scale(off))
}

// onDownTube is a point at the fraction t of the down tube from the bottom
// bracket, and off above its middle.
func (l *layout) onDownTube(t, off float64) mass.Vec {
	way := l.HeadBottom.Sub(l.BottomBracket)
	return l.BottomBracket.Lerp(l.HeadBottom, t).Add(mass.Vec{X: -way.Z, Z: way.X}.Scale(off / way.Norm()))
}

// swingarm is half way from the main pivot to the rear axle. A rigid rear has
// stays instead: the middle of the chainstay's middle and the seatstay's.
func (l *layout) swingarm() mass.Vec {
	if l.RearSprung {
		return l.Pivot.Lerp(l.RearAxle, 0.5)
	}
	return l.BottomBracket.Lerp(l.SeatTop, 0.5).Lerp(l.RearAxle, 0.5)
}

func (l *layout) shock() mass.Vec {
	if l.f.shock {
		return l.ShockFrame.Lerp(l.ShockSwing, 0.5)
	}
	return l.onSeatTube(0.5*l.seatTube, 0)
}

// crank is half way to a pedal, and inside the face that it is screwed to.
func (l *layout) crank(pedal mass.Vec) mass.Vec {
	arm := l.BottomBracket.Lerp(pedal, 0.5)
	arm.Y = math.Copysign(math.Abs(pedal.Y)-pedalOut, pedal.Y)
	return arm
}

// tubes is the centre of the frame's lines: every tube counts by its length, and
// the stays too where they are part of the main frame.
func (l *layout) tubes() mass.Vec {
	tubes := [...][2]mass.Vec{
		{l.BottomBracket, l.HeadBottom}, {l.SeatTop, l.HeadTop}, {l.BottomBracket, l.SeatTop}, {l.HeadTop, l.HeadBottom},
		{l.BottomBracket, l.RearAxle}, {l.SeatTop, l.RearAxle},
	}
	n := len(tubes)
	if l.RearSprung {
		n -= 2
	}
	var sum mass.Vec
	var length float64
	for _, t := range tubes[:n] {
		d := t[1].Sub(t[0]).Norm()
		sum = sum.Add(t[0].Lerp(t[1], 0.5).Scale(d))
		length += d
	}
	return sum.Scale(1 / length)
}

// triangle is the middle of the main triangle: bottom bracket, top of the seat
// tube, middle of the head tube.
func (l *layout) triangle() mass.Vec {
	return l.BottomBracket.Add(l.SeatTop).Add(l.HeadTop.Lerp(l.HeadBottom, 0.5)).Scale(1. / 3)
}

// forkUpper is on the steering axis below the crown: a seventh of the way to
// the axle's height with stanchions, a third of it for the blades of a rigid
// fork (common practice, no source).
func (l *layout) forkUpper() mass.Vec {
	if l.FrontSprung {
		return l.Crown.Lerp(l.ForkFoot, 1./7)
	}
	return l.Crown.Lerp(l.ForkFoot, 1./3)
}

// leg is the middle of the fork's lower legs, between them: a third of a fully
// compressed fork's length over the axle, and half the offset ahead of the
// steering axis. It keeps its distance from the axle whatever the sag.
func (l *layout) leg() mass.Vec {
	short := l.Crown.Sub(l.ForkFoot).Norm() + l.FrontSag - l.FrontTravel
	return l.ForkFoot.Lerp(l.FrontAxle, 0.5).Add(l.steer(0, short/3))
}

// lever is the left brake lever: inside the grip, ahead of it and below.
func (l *layout) lever() mass.Vec {
	p := l.Grip.Add(l.xyz(.035, 0, -.020))
	p.Y = max(0, p.Y-.090)
	return p
}

// rack puts the rear rack on the main frame. Its deck is level with the frame and
// over the place where the axle is at full length, high enough for the tyre at
// full travel: on a sprung rear it is further above the wheel by the travel that
// is left.
func (l *layout) rack() {
	full, top := l.f.rearAxle, l.f.rearAxle
	if l.RearSprung {
		arm := l.f.rearAxle.Sub(l.f.pivot)
		full = l.f.pivot.Add(arm.PitchBy(swing(arm, -l.RearSag)))
		top = l.f.pivot.Add(arm.PitchBy(swing(arm, l.RearTravel-l.RearSag)))
	}
	l.deck = l.g.of(mass.Vec{X: full.X, Z: top.Z + l.RearRadius + rackRoom})
	l.deckFoot = l.g.of(full)
}

// rearBag is a pannier that hangs from the rear rack, out to the left.
func (l *layout) rearBag(out float64) mass.Vec {
	return l.deck.Add(l.xyz(-heelRoom, out, -bagDrop))
}

// arc is the way from a wheel's centre to the centre of a mudguard's line, an
// arc of that many degrees round the tyre whose middle points up and back by
// 45 degrees. The centroid of an arc of radius r and half angle a is r sin a / a
// from its centre.
func arc(radius, degrees float64) mass.Vec {
	a := radians(degrees) / 2
	d := (radius + guardRoom) * math.Sin(a) / a
	return mass.Vec{X: -d, Z: d}.Scale(math.Sqrt2 / 2)
}
