package rooms

import (
	"math"
	"strings"

	"steelyard/internal/report"
	"steelyard/internal/road"
	"steelyard/internal/words"
)

// bearsOn are the figures of an end, in place of %, that a mark bears on; one
// without bears on all.
var bearsOn = map[road.Key][]string{
	road.TyreLifts: {"tyre_load_rms_%", "lift_off_%"}, road.LoadFormal: {"tyre_load_rms_%", "lift_off_%"}, road.TyreFlat: {"tyre_load_rms_%", "lift_off_%"},
	road.Bottoms: {"travel_rms_%_mm", "bottoming_%"}, road.TravelFormal: {"travel_rms_%_mm", "bottoming_%"},
	road.SagChanged: {"sag_%_mm"}, road.SagGone: {"sag_%_mm", "travel_rms_%_mm", "bottoming_%"},
	road.OverDamped: {"travel_rms_%_mm", "bottoming_%"}, road.UnDamped: {"travel_rms_%_mm", "bottoming_%"},
	road.LiftsOff: {"least_load_%", "most_load_%"}, road.HitsEnd: {"most_travel_%"},
	road.StepSteep: {"least_load_%", "most_load_%", "most_travel_%"}, road.HoleNarrow: {"least_load_%", "most_load_%", "most_travel_%"},
}

// roadMark tells where a figure is at the end of what the model can say.
func roadMark(w *words.Words, m road.Mark) RoadMark {
	number := numbers(w)
	value, limit := number(m.Value, 2), number(m.Limit, 2)
	switch m.Key {
	case road.TyreLifts, road.LoadFormal:
		value, limit = number(100*m.Value, 0), number(100*m.Limit, 0)
	case road.Bottoms, road.TravelFormal, road.SagChanged, road.SagGone, road.TyreFlat, road.HitsEnd, road.StepSteep, road.HoleNarrow:
		value, limit = number(1e3*m.Value, 0), number(1e3*m.Limit, 0)
	case road.SpeedHigh:
		value, limit = number(3.6*m.Value, 0), number(3.6*m.Limit, 0)
	}
	figures := []string{}
	for _, f := range bearsOn[m.Key] {
		if m.Side != road.Both {
			f = strings.Replace(f, "%", m.Side.String(), 1)
		}
		figures = append(figures, f)
	}
	return RoadMark{
		Figures: figures,
		Key:     string(m.Key), Side: m.Side.String(), Value: m.Value, Limit: m.Limit,
		Words: w.Say("road.mark."+string(m.Key), "end", w.Label("road.end."+m.Side.String()), "value", value, "limit", limit),
	}
}

// roadWords says in a paragraph what the figures of a side mean, and no more than
// they say.
func roadWords(w *words.Words, shown *RoadShown, s *RoadSide) string {
	number := numbers(w)
	var list []string
	say := func(key string, pairs ...string) { list = append(list, w.Say("road.words."+key, pairs...)) }
	percent := func(v float64) string { return number(100*v, 0) }
	if riderless(s.State) {
		say("riderless")
	}
	if s.LoadFront != nil && s.LoadRear != nil {
		say("loads", "road", shown.Label, "speed", number(3.6*shown.Speed, 0), "front", percent(*s.LoadFront), "rear", percent(*s.LoadRear))
	}
	for _, end := range []string{"front", "rear"} {
		if lift, ok := find(s.Figures, "lift_off_"+end); ok && lift.Value >= 0.0005 {
			say("lifts."+end, "percent", number(100*lift.Value, 1))
		}
		if bottom, ok := find(s.Figures, "bottoming_"+end); ok && bottom.Value >= 0.0005 {
			say("bottoms."+end, "percent", number(100*bottom.Value, 1))
		}
	}
	if s.Saddle != nil && s.Grips != nil {
		say("shaken", "saddle", number(*s.Saddle, 2), "grips", number(*s.Grips, 2))
	}
	for _, set := range s.Settings {
		if set.Typical {
			say("typical")
			break
		}
	}
	return strings.Join(list, " ")
}

// roadDifferenceWords says what differs on a rough road beyond doubt, what it
// comes from, and whether anybody would feel it.
func roadDifferenceWords(w *words.Words, a, b string, list []RoadChange) string {
	number := numbers(w)
	var out []string
	say := func(key string, pairs ...string) { out = append(out, w.Say("road.words."+key, pairs...)) }
	for i := range list {
		c := &list[i]
		decided := c.Verdict == report.More || c.Verdict == report.Less
		switch c.Key {
		case "tyre_load_rms_front", "tyre_load_rms_rear":
			if !decided {
				continue
			}
			say(c.Key+"."+c.Verdict, "a", a, "b", b, "points", number(100*math.Abs(c.Delta), 2), "plus", number(100*c.Plus, 2))
			if len(c.Causes) > 0 && c.Causes[0].Delta*c.Delta > 0 {
				say("cause", "cause", c.Causes[0].Label, "points", number(100*math.Abs(c.Causes[0].Delta), 2))
			}
		case "saddle_wk_m_s2", "grips_wh_m_s2":
			if c.A <= 0 || !decided {
				continue
			}
			say(c.Key+"."+c.Verdict, "a", a, "b", b, "percent", number(100*math.Abs(c.Delta)/c.A, 1))
			say("felt." + c.Felt)
		}
	}
	if len(out) == 0 {
		return w.Say("road.words.same", "a", a, "b", b)
	}
	return strings.Join(out, " ")
}
