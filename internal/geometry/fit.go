package geometry

import (
	"math"

	"steelyard/internal/document"
	"steelyard/internal/mass"
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
		l.fault("frame.bb_drop_mm", "The "+cite(b, "frame.bb_drop_mm")+" puts the bottom bracket on or under the ground, because the rear wheel's radius is only "+
			showMM(f.rearRadius)+" (wheels.rear.bead_seat_mm, wheels.rear.tyre_mm).")
	}
	if f.overlap() {
		l.fault("frame.reach_mm", "The "+cite(b, "frame.reach_mm")+" and the "+cite(b, "frame.chainstay_mm")+" leave no room for both wheels: the axles must be more than "+
			showMM(f.rearRadius+f.frontRadius)+" apart, the front one ahead.")
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
		l.fault("rear.pivot_forward_mm", "The "+cite(b, "rear.pivot_forward_mm")+" and the "+cite(b, "rear.pivot_up_mm")+" put it "+showMM(length)+
			" from the rear axle, given the "+cite(b, "frame.chainstay_mm")+"; a swingarm needs some length to turn through the "+cite(b, "rear.travel_mm")+".")
		return
	case arm.X >= 0:
		l.fault("rear.pivot_forward_mm", "The main pivot must be ahead of the rear axle: the "+cite(b, "rear.pivot_forward_mm")+" puts it "+showMM(arm.X)+
			" behind, given the "+cite(b, "frame.chainstay_mm")+".")
		return
	case arm.Z+f.rearTravel > leverTop*length:
		l.fault("rear.travel_mm", "The "+cite(b, "rear.travel_mm")+" is more than a swingarm "+showMM(length)+" long can rise, with the "+
			cite(b, "rear.pivot_forward_mm")+" and the "+cite(b, "rear.pivot_up_mm")+": at most "+showMM(max(0, math.Floor((leverTop*length-arm.Z)*1000)/1000))+".")
		return
	}
	if !f.shock {
		l.doubt("rear.shock_swing_mm", "Both eyes of the shock (rear.shock_frame_mm, rear.shock_swing_mm) are at one point, so the shock is not drawn. They are measured forward and up of the bottom bracket.")
		return
	}
	before := f.shockSwing.Sub(f.shockFrame).Norm()
	turned := f.pivot.Add(f.shockSwing.Sub(f.pivot).PitchBy(swing(arm, f.rearTravel)))
	if after := turned.Sub(f.shockFrame).Norm(); after > before+shockGrowth {
		l.doubt("rear.shock_swing_mm", "The shock gets longer as the wheel rises, from "+showMM(before)+" to "+showMM(after)+
			": check its eyes (rear.shock_frame_mm, rear.shock_swing_mm) and the main pivot. They are taken as they are.")
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
	gap := (f.frontAxle.Z - f.frontRadius) - (f.rearAxle.Z - f.rearRadius)
	if math.Abs(gap) <= gapOdd {
		return
	}
	where := "above"
	if gap < 0 {
		where = "below"
	}
	text := "The " + cite(b, "fork.length_mm") + " and the " + cite(b, "frame.stack_mm") + " do not agree: with the bottom bracket at its height the front tyre would be " +
		showMM(math.Abs(gap)) + " " + where + " the ground. A fork length near " + showMM(metres(b.Fork.Length)-gap/f.down.Z) +
		" or a stack near " + showMM(metres(b.Frame.Stack)-gap) + " would agree."
	if math.Abs(gap) > gapWrong {
		l.fault("fork.length_mm", text)
		return
	}
	l.doubt("fork.length_mm", text+" The bike is turned until both tyres stand on the ground.")
}

// clearances doubts wheels that would rub.
func (l *list) clearances(b *document.Build, f *frame) {
	rear := f.rearAxle.Norm()
	if f.rearTravel > 0 {
		arm := f.rearAxle.Sub(f.pivot)
		rear = min(rear, f.pivot.Add(arm.PitchBy(swing(arm, f.rearTravel))).Norm())
	}
	if rear < f.rearRadius+shellRoom {
		l.doubt("frame.chainstay_mm", "The "+cite(b, "frame.chainstay_mm")+" leaves the rear tyre, with a radius of "+showMM(f.rearRadius)+
			" (wheels.rear.bead_seat_mm, wheels.rear.tyre_mm), no room behind the bottom bracket: their middles come as near as "+showMM(rear)+".")
	}
	// With the fork fully in, the front wheel is nearest to crown and down tube.
	axle := f.frontAxle.Sub(f.down.Scale(f.frontTravel))
	if room := axle.Sub(f.crown).Norm(); room < f.frontRadius {
		l.doubt("fork.travel_mm", "The front tyre, with a radius of "+showMM(f.frontRadius)+" (wheels.front.bead_seat_mm, wheels.front.tyre_mm), would hit the fork's crown: the "+
			cite(b, "fork.length_mm")+" less the "+cite(b, "fork.travel_mm")+" leaves "+showMM(room)+".")
	}
	if room := fromSegment(axle, mass.Vec{}, f.headBottom); room < f.frontRadius {
		l.doubt("frame.reach_mm", "The front tyre, with a radius of "+showMM(f.frontRadius)+" (wheels.front.bead_seat_mm, wheels.front.tyre_mm), would hit a straight down tube: the "+
			cite(b, "frame.reach_mm")+" and the "+cite(b, "fork.travel_mm")+" leave "+showMM(room)+" when the fork is fully in.")
	}
	if metres(b.Saddle.Height-b.Frame.SeatTube) < saddleRoom {
		l.doubt("saddle.height_mm", "The "+cite(b, "saddle.height_mm")+" is too low for the "+cite(b, "frame.seat_tube_mm")+": saddle and clamp need about "+showMM(saddleRoom)+" over its top.")
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
		l.fault("fork.sag_mm", "With the "+cite(b, "fork.sag_mm")+" and the "+cite(b, "rear.sag_mm")+" the wheels would run into each other.")
	}
}

// standing checks the bike once it stands on the ground.
func (l *list) standing(b *document.Build, bike *Bike) {
	if math.Abs(bike.Pitch) > pitchMost {
		l.fault("fork.sag_mm", "With the "+cite(b, "fork.sag_mm")+" and the "+cite(b, "rear.sag_mm")+" the frame stands "+show(math.Abs(bike.Pitch)*180/math.Pi)+
			" degrees from its printed figures; more than "+show(pitchMost*180/math.Pi)+" degrees is not the same bike.")
		return
	}
	if bike.BBHeight <= 0 {
		l.fault("frame.bb_drop_mm", "The "+cite(b, "frame.bb_drop_mm")+" and the "+cite(b, "rear.sag_mm")+" put the bottom bracket on or under the ground.")
		return
	}
	if bike.BBHeight-metres(b.Cranks.Length) < pedalRoom {
		l.doubt("cranks.length_mm", "The "+cite(b, "cranks.length_mm")+" lets the pedals touch the ground: the bottom bracket is "+showMM(bike.BBHeight)+
			" high with the "+cite(b, "frame.bb_drop_mm")+" and the suspension at its sag.")
	}
}
