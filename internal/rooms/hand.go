package rooms

import (
	"math"

	"steelyard/internal/assembly"
	"steelyard/internal/document"
	"steelyard/internal/mass"
	"steelyard/internal/report"
	"steelyard/internal/steer"
)

// usual is what is done with a bike in the hand, as it was taken.
type usual struct{ document.Hand }

// of takes what somebody said, and what is usual for all else.
func (u *usual) of(said *document.Hand, label func(string) string) []Input {
	u.Hand = usualHand
	if said == nil {
		said = &document.Hand{}
	}
	in := []Input{}
	take := func(key, unit, field string, to *float64, v float64, s document.Span) {
		if s.Has(v) {
			*to = v
		}
		in = append(in, bare(label, key, unit, *to, !s.Has(v)).at("show.hand."+field))
	}
	take("step", "mm", "step_mm", &u.Step, said.Step, document.HandStepSpan)
	take("lean", "deg", "lean_deg", &u.Lean, said.Lean, document.HandLeanSpan)
	take("push", "percent", "slope_percent", &u.Slope, said.Slope, document.HandSlopeSpan)
	return in
}

// says is the number in what a figure is called, 0 for none.
func (u *usual) says(key string) float64 {
	switch key {
	case "step_rear":
		return u.Step
	case "upright":
		return u.Lean
	case "push":
		return u.Slope
	}
	return 0
}

// handOf tells what the bike is in the hand, without its rider, and returns the
// figures.
func handOf(side *SteeringSide, a *assembly.Assembly, hand *document.Hand, label func(string) string) []told {
	items := a.At(min(a.Level, assembly.Loaded), a.Left)
	h := steer.Held{Items: items, Wheelbase: a.Bike.Wheelbase}
	of := func(f mass.Figure) func(*mass.Budget, float64) {
		return func(b *mass.Budget, sign float64) { b.Charge(items, f, sign) }
	}
	var list []told
	add := func(key, unit string, factor float64, decimals int, f mass.Figure) {
		t := told{key, unit, factor, decimals, f.Value, of(f)}
		if t.real() {
			list = append(list, t)
		}
	}
	const gravity, grams = steer.Gravity, 1e3 / steer.Gravity // a force as the mass that weighs as much
	saddle := mass.Vec{X: a.Bike.SaddleTop.X - behindSeat, Z: a.Bike.SaddleTop.Z}
	if a.Bike.Wheelbase > 0 {
		add("lift_rear", "g", grams, 0, h.Lift(saddle.X))
		add("lift_front", "g", grams, 0, h.Lift(a.Bike.Grip.X))
		add("carry", "g", grams, 0, h.Weight())
		if f, ok := h.FollowUp(saddle, hand.Step/1e3); ok {
			add("step_rear", "g", grams, 0, f)
		}
		if a.Bike.Grip.Z > 0 {
			add("upright", "n", 1, 0, h.Upright(hand.Lean*math.Pi/180, a.Bike.Grip.Z))
		}
		add("push", "n", 1, 0, h.Push(hand.Slope/100, pushRolling))
	}
	for i := range list {
		side.Hand = append(side.Hand, list[i].figure(label))
	}
	rest := standOf(a, &h, items)
	if rest == nil {
		return list
	}
	side.Stand = &StandRest{
		Typical: rest.typical, Over: rest.over, Figures: []Figure{},
		Forward: report.Decimal(1e3*rest.at.Forward, 0), Out: report.Decimal(1e3*rest.at.Out, 1), Lean: report.Decimal(rest.at.Lean*180/math.Pi, 1),
	}
	for i := range rest.figures {
		if rest.figures[i].real() {
			side.Stand.Figures = append(side.Stand.Figures, rest.figures[i].figure(label))
		}
	}
	return append(list, rest.figures...)
}

// A stand whose place nobody typed, m and rad, with half-widths. Common practice,
// no source.
const (
	standOut, standOutWithin   = 0.18, 0.05
	standLean, standLeanWithin = 8 * math.Pi / 180, 3 * math.Pi / 180
	typedWithin                = 0.005 // of a length that was typed
	typedLeanWithin            = 0.5 * math.Pi / 180
)

type standing struct {
	at            steer.Stand
	typical, over bool
	figures       []told
}

// standOf tells how the bike rests on its stand; nil without one. Its foot is
// where the part is, as far forward; out and lean are typed or typical, and what
// they are off by is a source of doubt of its own.
func standOf(a *assembly.Assembly, h *steer.Held, items []mass.Item) *standing {
	line := -1
	for i := range a.Build.Parts {
		if a.Build.Parts[i].Kind == "stand" && a.Lines[i].OK {
			line = i
			break
		}
	}
	typed := a.Build.Stand
	if line < 0 && typed == nil {
		return nil
	}
	s, typical := steer.Stand{Out: standOut, Lean: standLean}, true
	outU, leanU := mass.Rectangular(standOutWithin), mass.Rectangular(standLeanWithin)
	if line >= 0 {
		s.Forward = a.Lines[line].Place.X
	} else {
		s.Forward = a.Bike.BottomBracket.X
	}
	if typed != nil {
		typical = false
		s = steer.Stand{Forward: typed.Forward / 1e3, Out: typed.Out / 1e3, Lean: typed.Lean * math.Pi / 180}
		outU, leanU = mass.Rectangular(typedWithin), mass.Rectangular(typedLeanWithin)
	}
	rest, ok := h.On(s)
	if !ok {
		return nil
	}
	// How far a figure moves with the stand's two doubts.
	moves := func(pick func(steer.Rest) mass.Figure) (out, lean float64) {
		slope := func(change func(*steer.Stand, float64), step float64) float64 {
			up, down := s, s
			change(&up, step)
			change(&down, -step)
			ru, ok1 := h.On(up)
			rd, ok2 := h.On(down)
			if !ok1 || !ok2 {
				return 0
			}
			return (pick(ru).Value - pick(rd).Value) / (2 * step)
		}
		return slope(func(s *steer.Stand, d float64) { s.Out += d }, 1e-4), slope(func(s *steer.Stand, d float64) { s.Lean += d }, 1e-4)
	}
	which := "typical"
	if !typical {
		which = a.Build.ID
	}
	add := func(key, unit string, factor float64, decimals int, pick func(steer.Rest) mass.Figure) told {
		f := pick(rest)
		out, lean := moves(pick)
		return told{key, unit, factor, decimals, f.Value, func(b *mass.Budget, sign float64) {
			b.Charge(items, f, sign)
			b.ChargeNamed("stand out "+which, sign*out*outU)
			b.ChargeNamed("stand lean "+which, sign*lean*leanU)
		}}
	}
	return &standing{s, typical, rest.Over, []told{
		add("stand_foot", "g", 1e3/steer.Gravity, 0, func(r steer.Rest) mass.Figure { return r.Foot }),
		add("stand_slope", "deg", 180/math.Pi, 1, func(r steer.Rest) mass.Figure { return r.Slope }),
		add("stand_wind", "n", 1, 1, func(r steer.Rest) mass.Figure { return r.Wind }),
	}}
}
