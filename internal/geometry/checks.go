package geometry

import (
	"math"
	"strconv"

	"steelyard/internal/document"
	"steelyard/internal/units"
	"steelyard/internal/words"
)

// figure is one number of a build: what it may be at all, and what it usually
// is. The usual ranges are wide: from a child's folding bike to a large
// downhill frame (common practice, no source).
type figure struct {
	field     string // as written in the document
	name      string // the end of the key of what it is called
	unit      string
	low, high float64 // beyond them it is an error
	from, to  float64 // beyond them it is odd
	of        func(*document.Build) float64
}

// absurd is the length in mm beyond which no figure of a bike can be.
const absurd = 5000

// figures are all the numbers that a bike is posed from.
var figures = []figure{
	{"frame.stack_mm", "frame.stack", "mm", 1, absurd, 350, 800, func(b *document.Build) float64 { return b.Frame.Stack }},
	{"frame.reach_mm", "frame.reach", "mm", 1, absurd, 250, 600, func(b *document.Build) float64 { return b.Frame.Reach }},
	{"frame.head_tube_mm", "frame.head_tube", "mm", 1, absurd, 60, 350, func(b *document.Build) float64 { return b.Frame.HeadTube }},
	{"frame.head_angle_deg", "frame.head_angle", "degrees", 45, 85, 60, 76, func(b *document.Build) float64 { return b.Frame.HeadAngle }},
	{"frame.seat_tube_mm", "frame.seat_tube", "mm", 1, absurd, 250, 700, func(b *document.Build) float64 { return b.Frame.SeatTube }},
	{"frame.seat_angle_deg", "frame.seat_angle", "degrees", 45, 90, 65, 82, func(b *document.Build) float64 { return b.Frame.SeatAngle }},
	{"frame.chainstay_mm", "frame.chainstay", "mm", 1, absurd, 300, 600, func(b *document.Build) float64 { return b.Frame.Chainstay }},
	{"frame.bb_drop_mm", "frame.bb_drop", "mm", -absurd, absurd, -150, 100, func(b *document.Build) float64 { return b.Frame.BBDrop }},

	{"fork.length_mm", "fork.length", "mm", 1, absurd, 280, 650, func(b *document.Build) float64 { return b.Fork.Length }},
	{"fork.offset_mm", "fork.offset", "mm", -absurd, absurd, 0, 90, func(b *document.Build) float64 { return b.Fork.Offset }},
	{"fork.travel_mm", "fork.travel", "mm", 0, absurd, 0, 230, func(b *document.Build) float64 { return b.Fork.Travel }},
	{"fork.sag_mm", "fork.sag", "mm", 0, absurd, 0, 230, func(b *document.Build) float64 { return b.Fork.Sag }},

	{"rear.travel_mm", "rear.travel", "mm", 0, absurd, 0, 250, func(b *document.Build) float64 { return b.Rear.Travel }},
	{"rear.sag_mm", "rear.sag", "mm", 0, absurd, 0, 250, func(b *document.Build) float64 { return b.Rear.Sag }},
	{"rear.pivot_forward_mm", "rear.pivot_forward", "mm", -absurd, absurd, -100, 400, func(b *document.Build) float64 { return b.Rear.PivotFwd }},
	{"rear.pivot_up_mm", "rear.pivot_up", "mm", -absurd, absurd, -100, 400, func(b *document.Build) float64 { return b.Rear.PivotUp }},
	{"rear.shock_frame_mm", "rear.shock_frame.forward", "mm", -absurd, absurd, -500, 700, func(b *document.Build) float64 { return b.Rear.ShockFrom[0] }},
	{"rear.shock_frame_mm", "rear.shock_frame.up", "mm", -absurd, absurd, -200, 700, func(b *document.Build) float64 { return b.Rear.ShockFrom[1] }},
	{"rear.shock_swing_mm", "rear.shock_swing.forward", "mm", -absurd, absurd, -500, 700, func(b *document.Build) float64 { return b.Rear.ShockTo[0] }},
	{"rear.shock_swing_mm", "rear.shock_swing.up", "mm", -absurd, absurd, -200, 700, func(b *document.Build) float64 { return b.Rear.ShockTo[1] }},

	{"wheels.front.bead_seat_mm", "wheels.front.bead_seat", "mm", 1, absurd, 1, absurd, func(b *document.Build) float64 { return b.Wheels.Front.BeadSeat }},
	{"wheels.front.tyre_mm", "wheels.front.tyre", "mm", 1, absurd, 18, 130, func(b *document.Build) float64 { return b.Wheels.Front.Tyre }},
	{"wheels.rear.bead_seat_mm", "wheels.rear.bead_seat", "mm", 1, absurd, 1, absurd, func(b *document.Build) float64 { return b.Wheels.Rear.BeadSeat }},
	{"wheels.rear.tyre_mm", "wheels.rear.tyre", "mm", 1, absurd, 18, 130, func(b *document.Build) float64 { return b.Wheels.Rear.Tyre }},

	{"cockpit.spacers_mm", "cockpit.spacers", "mm", 0, absurd, 0, 150, func(b *document.Build) float64 { return b.Cockpit.Spacers }},
	{"cockpit.stem_mm", "cockpit.stem", "mm", 0, absurd, 0, 160, func(b *document.Build) float64 { return b.Cockpit.Stem }},
	{"cockpit.stem_angle_deg", "cockpit.stem_angle", "degrees", -90, 90, -45, 60, func(b *document.Build) float64 { return b.Cockpit.StemAngle }},
	{"cockpit.bar_width_mm", "cockpit.bar_width", "mm", 0, absurd, 300, 900, func(b *document.Build) float64 { return b.Cockpit.BarWidth }},
	{"cockpit.bar_rise_mm", "cockpit.bar_rise", "mm", -absurd, absurd, -180, 200, func(b *document.Build) float64 { return b.Cockpit.BarRise }},
	{"cockpit.bar_back_mm", "cockpit.bar_back", "mm", -absurd, absurd, -150, 250, func(b *document.Build) float64 { return b.Cockpit.BarBack }},

	{"saddle.height_mm", "saddle.height", "mm", 1, absurd, 400, 950, func(b *document.Build) float64 { return b.Saddle.Height }},
	{"saddle.setback_mm", "saddle.setback", "mm", -absurd, absurd, -100, 150, func(b *document.Build) float64 { return b.Saddle.Setback }},

	{"cranks.length_mm", "cranks.length", "mm", 0, absurd, 100, 200, func(b *document.Build) float64 { return b.Cranks.Length }},
	{"cranks.width_mm", "cranks.width", "mm", 0, absurd, 100, 260, func(b *document.Build) float64 { return b.Cranks.Width }},
}

// figures checks every number by itself.
func (l *list) figures(b *document.Build) {
	for i := range figures {
		f := &figures[i]
		v := f.of(b)
		switch {
		case !units.Finite(v):
			l.fault(f.field, "pose.infinite", f.bounds(v, f.low, f.high)...)
		case v < f.low || v > f.high:
			l.fault(f.field, "pose.beyond", f.bounds(v, f.low, f.high)...)
		case v < f.from || v > f.to:
			l.doubt(f.field, "pose.odd", f.bounds(v, f.from, f.to)...)
		}
	}
	l.beadSeat("wheels.front.bead_seat_mm", b.Wheels.Front)
	l.beadSeat("wheels.rear.bead_seat_mm", b.Wheels.Rear)
}

// beadSeat doubts a bead seat that ISO 5775 does not have.
func (l *list) beadSeat(field string, w document.Wheel) {
	if v := w.BeadSeat; v >= 1 && v <= absurd && !KnownBeadSeat(v) {
		l.doubt(field, "pose.bead_seat", "mm", raw(v), "nearest", raw(nearestBeadSeat(v)))
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
		l.fault("frame.chainstay_mm", "pose.chainstay", "chainstay", cite(b, "frame.chainstay_mm"), "drop", cite(b, "frame.bb_drop_mm"))
	}
	if b.Fork.Travel >= b.Fork.Length {
		l.fault("fork.travel_mm", "pose.fork_travel", "travel", cite(b, "fork.travel_mm"), "length", cite(b, "fork.length_mm"))
	}
	l.sagWithin(b, "fork.sag_mm", "fork.travel_mm", b.Fork.Sag, b.Fork.Travel)
	l.sagWithin(b, "rear.sag_mm", "rear.travel_mm", b.Rear.Sag, b.Rear.Travel)
}

func (l *list) sagWithin(b *document.Build, sag, travel string, s, t float64) {
	switch {
	case s <= t:
	case t == 0:
		l.fault(sag, "pose.sag_rigid", "sag", cite(b, sag), "travel", cite(b, travel))
	default:
		l.fault(sag, "pose.sag_large", "sag", cite(b, sag), "travel", cite(b, travel))
	}
}

// bounds are the values that a message on the figure is filled in with: its value
// and a range.
func (f *figure) bounds(v, low, high float64) []any {
	return []any{
		"name", words.Sentence{Of: words.Tell("pose.name." + f.name)}, "value", raw(v),
		"low", raw(low), "high", raw(high), "unit", words.Tell("pose.unit." + f.unit),
	}
}

// raw is a number as it was typed, to seven digits.
func raw(v float64) words.Number {
	n, _ := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 7, 64), 64)
	return words.Number(n)
}
