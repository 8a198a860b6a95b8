package rider

import (
	"math"
	"slices"
	"sort"
	"strconv"
	"strings"

	"steelyard/internal/document"
	"steelyard/internal/units"
	"steelyard/internal/words"
)

// list gathers the problems of one rider on one bike.
type list struct {
	rider    *document.Rider
	problems []document.Problem
	failed   bool // whether one of them is an error
}

// fault adds an error: there is no body until it is put right.
func (l *list) fault(field string, message words.Message) {
	l.failed = true
	l.add(document.SeverityError, field, message)
}

// doubt adds a warning: the figure is odd, and is used as it is.
func (l *list) doubt(field string, message words.Message) {
	l.add(document.SeverityWarning, field, message)
}

// add tells a problem, with the rider's name before it. A field with a dot is one of
// the build, and not the rider's.
func (l *list) add(severity, field string, message words.Message) {
	name := l.rider.Name
	if words.Blank(name) {
		name = l.rider.ID
	}
	p := document.Problem{Severity: severity, Field: field, Message: words.Tell("seat.rider", "name", words.Shorten(name), "message", message)}
	if !strings.Contains(field, ".") && field != "frame" {
		p.Rider = l.rider.ID
	}
	l.problems = append(l.problems, p)
}

// figures checks every figure of a rider by itself. document.Check finds the same
// in a document, so a rider of a document that it has passed has no problem here.
func (l *list) figures(r *document.Rider) {
	for _, f := range [...]struct {
		field, name, unit string
		v, low, high      float64
	}{
		{"stature_mm", "stature", "mm", r.Stature, document.MinStature, document.MaxStature},
		{"mass_g", "mass", "g", r.Mass, document.MinBody, document.MaxBody},
		{"half_width_g", "half_width", "g", r.HalfWidth, 0, document.MaxBody},
		{"clothing_g", "clothing", "g", r.Clothing, 0, document.MaxClothing},
		{"shoes_g", "shoes", "g", r.Shoes, 0, document.MaxShoes},
		{"crank_deg", "crank", "degrees", r.Crank, -document.MaxCrank, document.MaxCrank},
	} {
		if f.v >= f.low && f.v <= f.high {
			continue
		}
		key := "seat.beyond"
		if !units.Finite(f.v) {
			key = "seat.infinite"
		}
		l.fault(f.field, words.Tell(key, "name", words.Tell("seat.name."+f.name), "value", number(f.v),
			"low", number(f.low), "high", number(f.high), "unit", words.Tell("seat.unit."+f.unit)))
	}
	if r.HalfWidth > r.Mass && r.Mass >= document.MinBody && r.HalfWidth <= document.MaxBody {
		l.fault("half_width_g", words.Tell("seat.half_width", "half", number(r.HalfWidth), "mass", number(r.Mass)))
	}
	if !slices.Contains(document.Tables, r.Table) {
		l.fault("table", words.Tell("seat.table", "table", words.Shorten(r.Table), "choice", choice(document.Tables)))
	}
	if !slices.Contains(document.Postures, r.Posture) {
		l.fault("posture", words.Tell("seat.posture", "posture", words.Shorten(r.Posture), "choice", choice(document.Postures)))
	}
}

// The messages below say what is wrong by how much, and what would be right. Their
// words name fields by the labels that the page gives them.

// short tells of legs that are too short for the pedals.
func (l *list) short(m *body, c *contact, by float64) {
	what := words.Tell("seat.short", "by", ceil(by))
	lower, ok := least(func(d float64) bool { return m.short(m.hip(c, -d), c.crank, toesMost) <= eps })
	if !ok || m.tight(m.hip(c, -lower), c.crank) > eps {
		l.misfit(what)
		return
	}
	l.fault("saddle.height_mm", words.Tell("seat.lower", "what", what, "by", whole(lower)))
}

// tight tells of knees that do not fold as far as the pedals at the top need.
func (l *list) tight(m *body, c *contact, by float64) {
	what := words.Tell("seat.tight", "by", ceil(by))
	higher, ok := least(func(d float64) bool { return m.tight(m.hip(c, d), c.crank) <= eps })
	if !ok || m.short(m.hip(c, higher), c.crank, toesMost) > eps {
		l.misfit(what)
		return
	}
	l.fault("saddle.height_mm", words.Tell("seat.higher", "what", what, "by", whole(higher)))
}

// misfit tells of legs for which no saddle is right.
func (l *list) misfit(what words.Message) {
	l.fault("stature_mm", words.Tell("seat.misfit", "what", what, "stature", number(l.rider.Stature)))
}

// pointed tells of legs that reach the pedals with the toes only.
func (l *list) pointed(m *body, c *contact) {
	text := words.Tell("seat.pointed")
	if lower, ok := least(func(d float64) bool { return m.short(m.hip(c, -d), c.crank, 0) <= eps }); ok {
		text = words.Tell("seat.pointed.lower", "by", whole(lower))
	}
	l.doubt("saddle.height_mm", text)
}

// astride tells of legs that cannot stand on pedals so far apart.
func (l *list) astride(m *body, by float64) {
	l.fault("stature_mm", words.Tell("seat.astride", "by", ceil(by), "stature", number(l.rider.Stature)))
}

// squat tells of a leg that cannot fold as far as standing on the other needs.
func (l *list) squat(by float64) {
	l.fault("stature_mm", words.Tell("seat.squat", "by", ceil(by), "stature", number(l.rider.Stature)))
}

// inTheWay tells of a saddle higher than standing lifts the hips.
func (l *list) inTheWay(by float64) {
	l.doubt("saddle.height_mm", words.Tell("seat.in_the_way", "by", ceil(by)))
}

// far tells of arms that do not reach the grips.
func (l *list) far(b *Body, c *contact, by float64) {
	what := words.Tell("seat.far", "by", ceil(by))
	nearer, ok := least(func(d float64) bool {
		w := b.body.bow(b.MidHip, c.grip.Sub(c.ahead.Scale(d)))
		return w.reach(clamp(w.lean(b.body.arms.straight), leanLeast, leanMost)) <= b.body.arms.straight+eps
	})
	if !ok {
		l.fault("stature_mm", words.Tell("seat.far.misfit", "what", what, "stature", number(l.rider.Stature)))
		return
	}
	l.fault("frame.reach_mm", words.Tell("seat.far.nearer", "what", what, "by", whole(nearer)))
}

// near tells of grips that are too near to the shoulders.
func (l *list) near(b *Body, c *contact, by float64) {
	text := words.Tell("seat.near", "by", ceil(by))
	further, ok := least(func(d float64) bool {
		w := b.body.bow(b.MidHip, c.grip.Add(c.ahead.Scale(d)))
		return w.reach(clamp(w.lean(b.body.arms.folded), leanLeast, leanMost)) >= b.body.arms.folded-eps
	})
	if ok {
		text = words.Tell("seat.near.further", "what", text, "by", whole(further))
	} else {
		text = words.Tell("seat.near.check", "what", text)
	}
	l.fault("frame.reach_mm", text)
}

// leans tells of a trunk outside the range of its posture.
func (l *list) leans(p posture, lean float64) {
	text := words.Tell("seat.leans", "lean", degrees(lean), "posture", words.Tell("seat.posture."+p.name), "from", degrees(p.from), "to", degrees(p.to))
	if p.name != standing {
		for _, o := range postures {
			if o.name != standing && lean >= o.from && lean <= o.to {
				text = words.Tell("seat.leans.fit", "leans", text, "posture", words.Tell("seat.posture."+o.name))
			}
		}
	}
	l.doubt("posture", words.Tell("seat.leans.end", "leans", text))
}

// least is the smallest length in whole mm, given in m, from which on ok holds.
// It must not hold at 0. The search first doubles the length, as ok need not hold
// for all larger ones.
func least(ok func(d float64) bool) (float64, bool) {
	const most = 4096
	for n := 1; n <= most; n *= 2 {
		if !ok(float64(n) * mm) {
			continue
		}
		low := n / 2
		low += 1 + sort.Search(n-low-1, func(i int) bool { return ok(float64(low+1+i) * mm) })
		return float64(low) * mm, true
	}
	return 0, false
}

// number is a figure as it was typed, to seven digits.
func number(v float64) words.Number {
	n, _ := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 7, 64), 64)
	return words.Number(n)
}

// whole is a length in whole mm.
func whole(m float64) int { return int(math.Round(m / mm)) }

// ceil is a length in whole mm, rounded up.
func ceil(m float64) int { return int(math.Ceil(m/mm - eps)) }

// degrees is an angle in whole degrees.
func degrees(a float64) int { return int(math.Round(a / degree)) }

// choice is names to choose from.
func choice(names []string) words.Message {
	last := len(names) - 1
	return words.Tell("seat.choice", "names", strings.Join(names[:last], ", "), "last", names[last])
}
