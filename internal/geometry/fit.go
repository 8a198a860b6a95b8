package geometry

import (
	"math"

	"steelyard/internal/document"
	"steelyard/internal/mass"
	"steelyard/internal/words"
)

const (
	gapOdd   = 0.025 // a front tyre this far off the ground before levelling is told, m
	gapWrong = 0.080 // and this far is a contradiction, m

	shellRoom   = 0.025        // what the bottom-bracket shell and the bridge behind it need, m (common practice, no source)
	leverLeast  = 0.050        // a swingarm shorter than this carries no wheel, m
	leverTop    = 0.999        // how far a swingarm may rise, as a share of its length
	pitchMost   = math.Pi / 12 // a bike that stands further than 15 degrees from its printed figures is not the one printed
	pedalRoom   = 0.040        // a pedal spindle this low at the bottom of its turn has its pedal on the ground, m (common practice, no source)
	saddleRoom  = 0.050        // a saddle and its rails over the top of the seat tube, m (common practice, no source)
	shockGrowth = 0.001        // what a shock may lengthen by rounded figures, m
)

// fit checks whether the figures agree about one bike, before its suspension
// is let down.
func (l *list) fit(b *document.Build, f *frame) {
	if f.rearTravel > 0 {
		l.lever(b, f)
	}
	if f.rearAxle.Z >= f.rearRadius {
		l.fault("frame.bb_drop_mm", "pose.underground", "drop", cite(b, "frame.bb_drop_mm"), "radius", showMM(f.rearRadius))
	}
	if f.overlap() {
		l.fault("frame.reach_mm", "pose.overlap", "reach", cite(b, "frame.reach_mm"), "chainstay", cite(b, "frame.chainstay_mm"),
			"apart", showMM(f.rearRadius+f.frontRadius))
	}
	l.gap(b, f)
	if l.failed {
		return
	}
	l.clearances(b, f)
}

// lever checks that the swingarm can carry the rear wheel through its travel.
func (l *list) lever(b *document.Build, f *frame) {
	arm := f.rearAxle.Sub(f.pivot)
	length := arm.Norm()
	switch {
	case length < leverLeast:
		l.fault("rear.pivot_forward_mm", "pose.lever.short", "forward", cite(b, "rear.pivot_forward_mm"), "up", cite(b, "rear.pivot_up_mm"),
			"length", showMM(length), "chainstay", cite(b, "frame.chainstay_mm"), "travel", cite(b, "rear.travel_mm"))
		return
	case arm.X >= 0:
		l.fault("rear.pivot_forward_mm", "pose.lever.behind", "forward", cite(b, "rear.pivot_forward_mm"), "by", showMM(arm.X),
			"chainstay", cite(b, "frame.chainstay_mm"))
		return
	case arm.Z+f.rearTravel > leverTop*length:
		l.fault("rear.travel_mm", "pose.lever.travel", "travel", cite(b, "rear.travel_mm"), "length", showMM(length),
			"forward", cite(b, "rear.pivot_forward_mm"), "up", cite(b, "rear.pivot_up_mm"),
			"most", showMM(max(0, math.Floor((leverTop*length-arm.Z)*1000)/1000)))
		return
	}
	if !f.shock {
		l.doubt("rear.shock_swing_mm", "pose.shock.point")
		return
	}
	before := f.shockSwing.Sub(f.shockFrame).Norm()
	turned := f.pivot.Add(f.shockSwing.Sub(f.pivot).PitchBy(swing(arm, f.rearTravel)))
	if after := turned.Sub(f.shockFrame).Norm(); after > before+shockGrowth {
		l.doubt("rear.shock_swing_mm", "pose.shock.grows", "before", showMM(before), "after", showMM(after))
	}
}

// overlap reports whether the wheels would share space, or stand in the wrong
// order.
func (f *frame) overlap() bool {
	d := f.frontAxle.Sub(f.rearAxle)
	return d.X <= 0 || d.Norm() <= f.rearRadius+f.frontRadius
}

// gap compares the two ways in which the figures tell where the front axle is:
// from the ground up by the front wheel, and from the head tube down by the
// fork.
func (l *list) gap(b *document.Build, f *frame) {
	gap := f.gap()
	if math.Abs(gap) <= gapOdd {
		return
	}
	key := "pose.gap.above"
	if gap < 0 {
		key = "pose.gap.below"
	}
	pairs := []any{
		"fork", cite(b, "fork.length_mm"), "stack", cite(b, "frame.stack_mm"), "gap", showMM(math.Abs(gap)),
		"right_fork", showMM(metres(b.Fork.Length) - gap/f.down.Z), "right_stack", showMM(metres(b.Frame.Stack) - gap),
	}
	if math.Abs(gap) > gapWrong {
		l.fault("fork.length_mm", key, pairs...)
		return
	}
	l.doubt("fork.length_mm", "pose.gap.turned", "gap", words.Tell(key, pairs...))
}

// gap is how far the front tyre is above the ground that the rear one stands on, m,
// with the frame as its figures lay it out.
func (f *frame) gap() float64 {
	return (f.frontAxle.Z - f.frontRadius) - (f.rearAxle.Z - f.rearRadius)
}

// Lengthen returns by how many mm a build's fork, or its head tube, must be longer
// for both tyres to stand on the ground as the figures of its frame have it; less
// than 0 is shorter. It is false where the figures are of no bike.
func Lengthen(b *document.Build) (mm float64, ok bool) {
	l := list{}
	if l.figures(b); !l.failed {
		l.pairs(b)
	}
	if l.failed {
		return 0, false
	}
	f := unloaded(b)
	return -1000 * f.gap() / f.down.Z, true
}

// clearances doubts wheels that would rub.
func (l *list) clearances(b *document.Build, f *frame) {
	rear := f.rearAxle.Norm()
	if f.rearTravel > 0 {
		arm := f.rearAxle.Sub(f.pivot)
		rear = min(rear, f.pivot.Add(arm.PitchBy(swing(arm, f.rearTravel))).Norm())
	}
	if rear < f.rearRadius+shellRoom {
		l.doubt("frame.chainstay_mm", "pose.clear.rear", "chainstay", cite(b, "frame.chainstay_mm"), "radius", showMM(f.rearRadius), "near", showMM(rear))
	}
	// With the fork fully in, the front wheel is nearest to crown and down tube.
	axle := f.frontAxle.Sub(f.down.Scale(f.frontTravel))
	if room := axle.Sub(f.crown).Norm(); room < f.frontRadius {
		l.doubt("fork.travel_mm", "pose.clear.crown", "radius", showMM(f.frontRadius), "length", cite(b, "fork.length_mm"),
			"travel", cite(b, "fork.travel_mm"), "room", showMM(room))
	}
	if room := fromSegment(axle, mass.Vec{}, f.headBottom); room < f.frontRadius {
		l.doubt("frame.reach_mm", "pose.clear.tube", "radius", showMM(f.frontRadius), "reach", cite(b, "frame.reach_mm"),
			"travel", cite(b, "fork.travel_mm"), "room", showMM(room))
	}
	if metres(b.Saddle.Height-b.Frame.SeatTube) < saddleRoom {
		l.doubt("saddle.height_mm", "pose.clear.saddle", "height", cite(b, "saddle.height_mm"), "tube", cite(b, "frame.seat_tube_mm"), "room", showMM(saddleRoom))
	}
}

// fromSegment is the distance in m from p to the straight line from a to c
// between these two.
func fromSegment(p, a, c mass.Vec) float64 {
	way := c.Sub(a)
	l2 := way.Dot(way)
	if l2 == 0 {
		return p.Sub(a).Norm()
	}
	t := min(1, max(0, p.Sub(a).Dot(way)/l2))
	return p.Sub(a.Lerp(c, t)).Norm()
}

// sagged checks the bike with its suspension let down.
func (l *list) sagged(b *document.Build, f *frame) {
	if f.overlap() {
		l.fault("fork.sag_mm", "pose.sagged", "fork", cite(b, "fork.sag_mm"), "rear", cite(b, "rear.sag_mm"))
	}
}

// standing checks the bike once it stands on the ground.
func (l *list) standing(b *document.Build, bike *Bike) {
	if math.Abs(bike.Pitch) > pitchMost {
		l.fault("fork.sag_mm", "pose.pitch", "fork", cite(b, "fork.sag_mm"), "rear", cite(b, "rear.sag_mm"),
			"pitch", show(math.Abs(bike.Pitch)*180/math.Pi), "most", show(pitchMost*180/math.Pi))
		return
	}
	if bike.BBHeight <= 0 {
		l.fault("frame.bb_drop_mm", "pose.sunk", "drop", cite(b, "frame.bb_drop_mm"), "sag", cite(b, "rear.sag_mm"))
		return
	}
	if bike.BBHeight-metres(b.Cranks.Length) < pedalRoom {
		l.doubt("cranks.length_mm", "pose.pedals", "cranks", cite(b, "cranks.length_mm"), "height", showMM(bike.BBHeight), "drop", cite(b, "frame.bb_drop_mm"))
	}
}
