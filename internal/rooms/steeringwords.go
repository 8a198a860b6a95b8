package rooms

import (
	"math"
	"strings"

	"steelyard/internal/report"
	"steelyard/internal/words"
)

// steeringWords says in a paragraph what the figures of a side mean, and no more
// than they say.
func steeringWords(w *words.Words, s *SteeringSide) string {
	if !s.OK {
		return s.Why
	}
	number := numbers(w)
	var list []string
	say := func(key string, pairs ...string) { list = append(list, w.Say("steering.words."+key, pairs...)) }
	kmh := func(v *float64) string { return number(*v*3.6, 0) }
	switch {
	case s.Weave != nil && s.Capsize != nil && *s.Weave < *s.Capsize:
		say("range", "from", kmh(s.Weave), "to", kmh(s.Capsize))
	case s.Weave != nil && s.Capsize == nil:
		say("above", "from", kmh(s.Weave))
	default:
		say("never")
	}
	for _, t := range s.Touring {
		if t.Key != "usual" {
			continue
		}
		switch {
		case t.Verdict == report.More:
			say("grows", "speed", number(t.Speed*3.6, 0), "time", number(t.Time, 1))
		case t.Verdict == report.Less:
			say("dies", "speed", number(t.Speed*3.6, 0), "time", number(t.Time, 1))
		default:
			say("open", "speed", number(t.Speed*3.6, 0))
		}
	}
	plain := func(key string) (Figure, bool) { return find(s.Plain, key) }
	if held, ok := plain("held"); ok {
		switch {
		case held.Value > held.Plus:
			say("flops", "force", number(held.Value, 0))
		case held.Value < -held.Plus:
			say("centres", "force", number(-held.Value, 0))
		}
	}
	if lift, ok := find(s.Hand, "lift_rear"); ok {
		say("lift", "mass", number(lift.Value/1000, 1))
	}
	return strings.Join(list, " ")
}

// find returns the figure of a key.
func find(list []Figure, key string) (Figure, bool) {
	for _, f := range list {
		if f.Key == key {
			return f, true
		}
	}
	return Figure{}, false
}

// differenceWords says what of the steering differs beyond doubt.
func differenceWords(w *words.Words, a, b string, list []Change) string {
	number := numbers(w)
	var out []string
	for _, c := range list {
		if c.Verdict != report.More && c.Verdict != report.Less || c.A == 0 {
			continue
		}
		switch c.Key {
		case "steering_inertia", "held", "flick", "roll_inertia":
		default:
			continue
		}
		if c.A < 0 || c.B < 0 || math.Abs(c.Delta) < 0.01*c.A {
			continue // too little to be told in percent
		}
		percent := number(100*math.Abs(c.Delta)/c.A, 0)
		out = append(out, w.Say("steering.words."+c.Key+"."+c.Verdict, "a", a, "b", b, "percent", percent))
	}
	if len(out) == 0 {
		return w.Say("steering.words.same", "a", a, "b", b)
	}
	return strings.Join(out, " ")
}
