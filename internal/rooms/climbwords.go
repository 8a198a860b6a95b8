package rooms

import (
	"math"
	"strconv"
	"strings"

	"steelyard/internal/effort"
	"steelyard/internal/report"
	"steelyard/internal/words"
)

// minutes writes a time: seconds below two minutes, else minutes, and hours from
// two on.
func minutes(w *words.Words, seconds float64) string {
	number, s := numbers(w), math.Abs(seconds)
	switch {
	case s < 120:
		return number(s, 0) + " s"
	case s < 7200:
		return number(s/60, 1) + " min"
	}
	return number(s/3600, 2) + " h"
}

// sideWords says how a side climbs.
func sideWords(w *words.Words, s *ClimbSide) string {
	number := numbers(w)
	key := "climb.words.ride"
	if s.Mode == string(effort.Walking) {
		key = "climb.words.walk"
	}
	out := []string{w.Say(key, "time", minutes(w, s.Time), "plus", minutes(w, s.TimePlus), "speed", number(3.6*s.Speed, 1), "gear", strconv.Itoa(s.Gear), "cadence", number(s.Cadence, 0))}
	if s.Steepest != nil && *s.Steepest > 0 {
		out = append(out, w.Say("climb.words.steepest", "slope", number(*s.Steepest, 1), "plus", number(*s.SteepestPlus, 1)))
		if s.Lift != nil && *s.Lift < *s.Steepest {
			out = append(out, w.Say("climb.words.lift", "slope", number(*s.Lift, 0)))
		}
		if s.Slip != nil && *s.Slip < *s.Steepest {
			out = append(out, w.Say("climb.words.slip", "slope", number(*s.Slip, 0)))
		}
	}
	if s.Worth != nil {
		out = append(out, w.Say("climb.words.worth", "kilogram", minutes(w, s.Worth.Kilogram), "point", minutes(w, s.Worth.Point), "weighs", number(s.Worth.KilogramsPerPoint, 2)))
	}
	return strings.Join(out, " ")
}

// splitWords says what a difference of times is owed to; of is "climb" or "day".
func splitWords(w *words.Words, a, b string, d *ClimbDifference, of string) string {
	plain := numbers(w)
	number := func(v float64, decimals int) string { return plain(math.Abs(v), decimals) }
	if d.Verdict == report.Same {
		return w.Say("climb.words.same", "a", a, "b", b)
	}
	// A cause that works against the rest has a minus.
	part := func(v float64) string {
		if v*d.Time < 0 {
			return "−" + minutes(w, v)
		}
		return minutes(w, v)
	}
	out := []string{w.Say("climb.words."+of+"."+d.Verdict, "a", a, "b", b, "time", minutes(w, d.Time), "plus", minutes(w, d.TimePlus))}
	// Between riding and walking, where the drive passes on nothing, there is no split.
	if onFoot := math.Abs(d.Points) > 50; !onFoot && (d.Mass != 0 || d.Loss != 0) {
		weight, loss := "more", "more"
		if d.Grams < 0 {
			weight = "less"
		}
		if d.Points < 0 {
			loss = "less"
		}
		out = append(out, w.Say("climb.words.split", "time", minutes(w, d.Time), "mass", part(d.Mass), "loss", part(d.Loss),
			"weight", w.Say("climb.words.weight."+weight, "mass", number(d.Grams/1000, 2)), "efficiency", w.Say("climb.words.points."+loss, "points", number(d.Points, 1))))
	}
	if d.Turn != nil && d.Verdict != report.Undecided {
		key := "climb.words.turn.more"
		if *d.Turn < 0 {
			key = "climb.words.turn.less"
		}
		out = append(out, w.Say(key, "a", a, "b", b, "mass", number(*d.Turn/1000, 1)))
	}
	return strings.Join(out, " ")
}

// dayWords says what a day costs a side.
func dayWords(w *words.Words, s *DaySide) string {
	number := numbers(w)
	out := []string{w.Say("climb.words.ridden", "time", minutes(w, s.Time), "plus", minutes(w, s.TimePlus), "energy", number(s.Energy.Pedals, 0), "drive", number(s.Energy.Drive, 0))}
	if s.Walked > 0 {
		out = append(out, w.Say("climb.words.walked", "length", number(s.Walked/1000, 2)))
	}
	return strings.Join(out, " ")
}

// climbWords says the most of it in a paragraph.
func climbWords(w *words.Words, c *Climb) string {
	if c.Difference != nil {
		return c.Difference.Words
	}
	if len(c.Sides) == 1 {
		return c.Sides[0].Words
	}
	return ""
}
