package geometry

import (
	"math"
	"strconv"

	"steelyard/internal/document"
)

// figure is one number of a build: what it may be at all, and what it usually
// is. The usual ranges are wide: from a child's folding bike to a large
// downhill frame (common practice, no source).
type figure struct {
	field     string // as written in the document
	name      string // in words, to open a sentence with
	unit      string
	low, high float64 // beyond them it is an error
	from, to  float64 // beyond them it is odd
	of        func(*document.Build) float64
}

// absurd is the length in mm beyond which no figure of a bike can be.
const absurd = 5000

// figures are all the numbers that a bike is posed from.
var figures = []figure{
	{"frame.stack_mm", "stack", "mm", 1, absurd, 350, 800, func(b *document.Build) float64 { return b.Frame.Stack }},
	{"frame.reach_mm", "reach", "mm", 1, absurd, 250, 600, func(b *document.Build) float64 { return b.Frame.Reach }},
	{"frame.head_tube_mm", "head tube", "mm", 1, absurd, 60, 350, func(b *document.Build) float64 { return b.Frame.HeadTube }},
	{"frame.head_angle_deg", "head angle", "degrees", 45, 85, 60, 76, func(b *document.Build) float64 { return b.Frame.HeadAngle }},
	{"frame.seat_tube_mm", "seat tube", "mm", 1, absurd, 250, 700, func(b *document.Build) float64 { return b.Frame.SeatTube }},
	{"frame.seat_angle_deg", "seat angle", "degrees", 45, 90, 65, 82, func(b *document.Build) float64 { return b.Frame.SeatAngle }},
	{"frame.chainstay_mm", "chainstay", "mm", 1, absurd, 300, 600, func(b *document.Build) float64 { return b.Frame.Chainstay }},
	{"frame.bb_drop_mm", "bottom-bracket drop", "mm", -absurd, absurd, -150, 100, func(b *document.Build) float64 { return b.Frame.BBDrop }},

	{"fork.length_mm", "fork length", "mm", 1, absurd, 280, 650, func(b *document.Build) float64 { return b.Fork.Length }},
	{"fork.offset_mm", "fork offset", "mm", -absurd, absurd, 0, 90, func(b *document.Build) float64 { return b.Fork.Offset }},
	{"fork.travel_mm", "fork travel", "mm", 0, absurd, 0, 230, func(b *document.Build) float64 { return b.Fork.Travel }},
	{"fork.sag_mm", "fork sag", "mm", 0, absurd, 0, 230, func(b *document.Build) float64 { return b.Fork.Sag }},

	{"rear.travel_mm", "rear travel", "mm", 0, absurd, 0, 250, func(b *document.Build) float64 { return b.Rear.Travel }},
	{"rear.sag_mm", "rear sag", "mm", 0, absurd, 0, 250, func(b *document.Build) float64 { return b.Rear.Sag }},
	{"rear.pivot_forward_mm", "main pivot's forward distance", "mm", -absurd, absurd, -100, 400, func(b *document.Build) float64 { return b.Rear.PivotFwd }},
	{"rear.pivot_up_mm", "main pivot's height", "mm", -absurd, absurd, -100, 400, func(b *document.Build) float64 { return b.Rear.PivotUp }},
	{"rear.shock_frame_mm", "shock eye on the frame, forward", "mm", -absurd, absurd, -500, 700, func(b *document.Build) float64 { return b.Rear.ShockFrom[0] }},
	{"rear.shock_frame_mm", "shock eye on the frame, up", "mm", -absurd, absurd, -200, 700, func(b *document.Build) float64 { return b.Rear.ShockFrom[1] }},
	{"rear.shock_swing_mm", "shock eye on the swingarm, forward", "mm", -absurd, absurd, -500, 700, func(b *document.Build) float64 { return b.Rear.ShockTo[0] }},
	{"rear.shock_swing_mm", "shock eye on the swingarm, up", "mm", -absurd, absurd, -200, 700, func(b *document.Build) float64 { return b.Rear.ShockTo[1] }},

	{"wheels.front.bead_seat_mm", "front bead seat", "mm", 1, absurd, 1, absurd, func(b *document.Build) float64 { return b.Wheels.Front.BeadSeat }},
	{"wheels.front.tyre_mm", "front tyre width", "mm", 1, absurd, 18, 130, func(b *document.Build) float64 { return b.Wheels.Front.Tyre }},
	{"wheels.rear.bead_seat_mm", "rear bead seat", "mm", 1, absurd, 1, absurd, func(b *document.Build) float64 { return b.Wheels.Rear.BeadSeat }},
	{"wheels.rear.tyre_mm", "rear tyre width", "mm", 1, absurd, 18, 130, func(b *document.Build) float64 { return b.Wheels.Rear.Tyre }},

	{"cockpit.spacers_mm", "spacers under the stem", "mm", 0, absurd, 0, 150, func(b *document.Build) float64 { return b.Cockpit.Spacers }},
	{"cockpit.stem_mm", "stem length", "mm", 0, absurd, 0, 160, func(b *document.Build) float64 { return b.Cockpit.Stem }},
	{"cockpit.stem_angle_deg", "stem angle", "degrees", -90, 90, -45, 60, func(b *document.Build) float64 { return b.Cockpit.StemAngle }},
	{"cockpit.bar_width_mm", "bar width", "mm", 0, absurd, 300, 900, func(b *document.Build) float64 { return b.Cockpit.BarWidth }},
	{"cockpit.bar_rise_mm", "bar rise", "mm", -absurd, absurd, -180, 200, func(b *document.Build) float64 { return b.Cockpit.BarRise }},
	{"cockpit.bar_back_mm", "grips' distance behind the clamp", "mm", -absurd, absurd, -150, 250, func(b *document.Build) float64 { return b.Cockpit.BarBack }},

	{"saddle.height_mm", "saddle height", "mm", 1, absurd, 400, 950, func(b *document.Build) float64 { return b.Saddle.Height }},
	{"saddle.setback_mm", "saddle setback", "mm", -absurd, absurd, -100, 150, func(b *document.Build) float64 { return b.Saddle.Setback }},

	{"cranks.length_mm", "crank length", "mm", 0, absurd, 100, 200, func(b *document.Build) float64 { return b.Cranks.Length }},
	{"cranks.width_mm", "width between the cranks' pedal faces", "mm", 0, absurd, 100, 260, func(b *document.Build) float64 { return b.Cranks.Width }},
}

// figures checks every number by itself.
func (l *list) figures(b *document.Build) {
	for i := range figures {
		f := &figures[i]
		v := f.of(b)
		switch {
		case math.IsNaN(v) || math.IsInf(v, 0):
			l.fault(f.field, sentence(f.name+" is not a finite number; it must lie between "+bounds(f.low, f.high, f.unit)))
		case v < f.low || v > f.high:
			l.fault(f.field, sentence(f.name+" is "+raw(v)+" "+f.unit+"; it must lie between "+bounds(f.low, f.high, f.unit)))
		case v < f.from || v > f.to:
			l.doubt(f.field, sentence(f.name+" is "+raw(v)+" "+f.unit+"; most bikes lie between "+bounds(f.from, f.to, f.unit)+". It is taken as it is"))
		}
	}
	l.beadSeat("wheels.front.bead_seat_mm", b.Wheels.Front)
	l.beadSeat("wheels.rear.bead_seat_mm", b.Wheels.Rear)
}

// beadSeat doubts a bead seat that ISO 5775 does not have.
func (l *list) beadSeat(field string, w document.Wheel) {
	if v := w.BeadSeat; v >= 1 && v <= absurd && !KnownBeadSeat(v) {
		l.doubt(field, "A bead seat of "+raw(v)+" mm is not one of ISO 5775; the nearest is "+raw(nearestBeadSeat(v))+" mm. It is taken as it is.")
	}
}

func nearestBeadSeat(mm float64) float64 {
	best := BeadSeats[0]
	for _, s := range BeadSeats {
		if math.Abs(s-mm) < math.Abs(best-mm) {
			best = s
		}
	}
	return best
}

// pairs checks figures that must agree with each other before anything can be
// drawn. Every figure is within its own bounds by then.
func (l *list) pairs(b *document.Build) {
	if b.Frame.Chainstay <= math.Abs(b.Frame.BBDrop) {
		l.fault("frame.chainstay_mm", "The "+cite(b, "frame.chainstay_mm")+" must be longer than the "+cite(b, "frame.bb_drop_mm")+": the rear axle cannot be that far above or below the bottom bracket.")
	}
	if b.Fork.Travel >= b.Fork.Length {
		l.fault("fork.travel_mm", "The "+cite(b, "fork.travel_mm")+" must be less than the "+cite(b, "fork.length_mm")+".")
	}
	l.sagWithin(b, "fork.sag_mm", "fork.travel_mm", b.Fork.Sag, b.Fork.Travel)
	l.sagWithin(b, "rear.sag_mm", "rear.travel_mm", b.Rear.Sag, b.Rear.Travel)
}

func (l *list) sagWithin(b *document.Build, sag, travel string, s, t float64) {
	switch {
	case s <= t:
	case t == 0:
		l.fault(sag, "The "+cite(b, sag)+" must be 0, because the "+cite(b, travel)+" is that of a rigid end.")
	default:
		l.fault(sag, "The "+cite(b, sag)+" must not be more than the "+cite(b, travel)+".")
	}
}

// sentence makes a sentence of its words.
func sentence(s string) string { return string(s[0]-'a'+'A') + s[1:] + "." }

// bounds writes a range.
func bounds(low, high float64, unit string) string {
	return raw(low) + " and " + raw(high) + " " + unit
}

// raw writes a number as it was typed.
func raw(v float64) string { return strconv.FormatFloat(v, 'g', 7, 64) }
