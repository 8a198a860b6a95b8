package rider

import (
	"math"
	"slices"
	"sort"
	"strconv"
	"strings"

	"steelyard/internal/document"
	"steelyard/internal/words"
)

// list gathers the problems of one rider on one bike.
type list struct {
	rider    *document.Rider
	problems []document.Problem
	failed   bool // whether one of them is an error
}

// fault adds an error: without it put right there is no body.
func (l *list) fault(field, message string) {
	l.failed = true
	l.add(document.SeverityError, field, message)
}

// doubt adds a warning: it is odd, and is taken as it is.
func (l *list) doubt(field, message string) {
	l.add(document.SeverityWarning, field, message)
}

// add tells a problem. A field with a dot is one of the build, and not the
// rider's.
func (l *list) add(severity, field, message string) {
	p := document.Problem{Severity: severity, Field: field, Message: words.Plain(message)}
	if !strings.Contains(field, ".") && field != "frame" {
		p.Rider = l.rider.ID
	}
	l.problems = append(l.problems, p)
}

// figures checks every figure of a rider by itself. document.Check tells the same of
// a document; who seats a rider of one that it has passed is told nothing here.
func (l *list) figures(r *document.Rider) {
	for _, f := range [...]struct {
		field, name, unit string
		v, low, high      float64
	}{
		{"stature_mm", "stature", "mm", r.Stature, document.MinStature, document.MaxStature},
		{"mass_g", "mass", "g", r.Mass, document.MinBody, document.MaxBody},
		{"half_width_g", "half-width of the mass", "g", r.HalfWidth, 0, document.MaxBody},
		{"clothing_g", "clothing", "g", r.Clothing, 0, document.MaxClothing},
		{"shoes_g", "pair of shoes", "g", r.Shoes, 0, document.MaxShoes},
		{"crank_deg", "crank angle", "degrees", r.Crank, -document.MaxCrank, document.MaxCrank},
	} {
		if f.v >= f.low && f.v <= f.high {
			continue
		}
		is := number(f.v) + " " + f.unit
		if math.IsNaN(f.v) || math.IsInf(f.v, 0) {
			is = "not a finite number"
		}
		l.fault(f.field, l.sentence("the "+f.name+" is "+is+"; it must lie between "+number(f.low)+" and "+number(f.high)+" "+f.unit+"."))
	}
	if r.HalfWidth > r.Mass && r.Mass >= document.MinBody && r.HalfWidth <= document.MaxBody {
		l.fault("half_width_g", l.sentence("the half-width of the mass, "+number(r.HalfWidth)+" g, must not be more than the mass, "+number(r.Mass)+" g."))
	}
	if !slices.Contains(document.Tables, r.Table) {
		l.fault("table", l.sentence("there is no body table "+quote(r.Table)+"; it must be "+choice(document.Tables)+"."))
	}
	if !slices.Contains(document.Postures, r.Posture) {
		l.fault("posture", l.sentence("there is no posture "+quote(r.Posture)+"; it must be "+choice(document.Postures)+"."))
	}
}

// The messages below say what is wrong by how much, and what would be right. They
// name fields by the labels that the page gives them.

// short tells of legs that are too short for the pedals.
func (l *list) short(m *body, c *contact, by float64) {
	what := "the legs are " + ceil(by) + " too short for the pedals at the bottom of their turn, though the toes point. "
	lower, ok := least(func(d float64) bool { return m.short(m.hip(c, -d), c.crank, toesMost) <= eps })
	if !ok || m.tight(m.hip(c, -lower), c.crank) > eps {
		l.misfit(what)
		return
	}
	l.fault("saddle.height_mm", l.sentence(what+"The saddle (“Height along seat tube”) must be at least "+whole(lower)+" lower."))
}

// tight tells of knees that do not fold as far as the pedals at the top need.
func (l *list) tight(m *body, c *contact, by float64) {
	what := "the knees cannot fold far enough for the pedals at the top of their turn: the hips are " + ceil(by) + " too near. "
	higher, ok := least(func(d float64) bool { return m.tight(m.hip(c, d), c.crank) <= eps })
	if !ok || m.short(m.hip(c, higher), c.crank, toesMost) > eps {
		l.misfit(what)
		return
	}
	l.fault("saddle.height_mm", l.sentence(what+"The saddle (“Height along seat tube”) must be at least "+whole(higher)+" higher."))
}

// misfit tells of legs for which no saddle is right.
func (l *list) misfit(what string) {
	l.fault("stature_mm", l.sentence(what+"No height of the saddle is right for a stature of "+number(l.rider.Stature)+
		" mm with these cranks: check the stature, the saddle (“Height along seat tube”, “Behind seat-tube line”) and the cranks (“Crank length”, “Width at the pedals”)."))
}

// pointed tells of legs that reach the pedals with the toes only.
func (l *list) pointed(m *body, c *contact) {
	text := "the saddle is high: at the bottom of the turn the feet reach the pedals with the toes pointed. "
	if lower, ok := least(func(d float64) bool { return m.short(m.hip(c, -d), c.crank, 0) <= eps }); ok {
		text += "With the saddle (“Height along seat tube”) " + whole(lower) + " lower they would not have to. "
	}
	l.doubt("saddle.height_mm", l.sentence(text+"It is taken as it is."))
}

// astride tells of legs that cannot stand on pedals so far apart.
func (l *list) astride(m *body, by float64) {
	l.fault("stature_mm", l.sentence("the legs are "+ceil(by)+" too short to stand on pedals that far apart: check the stature, "+number(l.rider.Stature)+
		" mm, and the cranks (“Crank length”, “Width at the pedals”)."))
}

// squat tells of a leg that cannot fold as far as standing on the other needs.
func (l *list) squat(by float64) {
	l.fault("stature_mm", l.sentence("standing on the lower pedal, the other knee cannot fold far enough: the hips are "+ceil(by)+
		" too low over the upper pedal. Check the stature, "+number(l.rider.Stature)+" mm, and the cranks (“Crank length”), or turn them towards level (“Left crank, above level”)."))
}

// inTheWay tells of a saddle higher than standing lifts the hips.
func (l *list) inTheWay(by float64) {
	l.doubt("saddle.height_mm", l.sentence("standing like this, the hips are "+ceil(by)+
		" lower than on the saddle, which is in the way. A saddle (“Height along seat tube”) lower by that, or level cranks (0 at “Left crank, above level”), would be right. It is taken as it is."))
}

// far tells of arms that do not reach the grips.
func (l *list) far(b *Body, c *contact, by float64) {
	text := "the arms are " + ceil(by) + " too short for the grips, however far the trunk leans. "
	nearer, ok := least(func(d float64) bool {
		w := b.body.bow(b.MidHip, c.grip.Sub(c.ahead.Scale(d)))
		return w.reach(clamp(w.lean(b.body.arms.straight), leanLeast, leanMost)) <= b.body.arms.straight+eps
	})
	if !ok {
		l.fault("stature_mm", l.sentence(text+"No reach of the frame is right for a stature of "+number(l.rider.Stature)+
			" mm: check the stature, the bar (“Bar width”, “Bar rise”) and the frame’s “Stack”."))
		return
	}
	l.fault("frame.reach_mm", l.sentence(text+"The grips must be "+whole(nearer)+" nearer: a shorter “Reach” of the frame, a shorter stem (“Stem length”) or a bar that comes further back (“Grips behind clamp”)."))
}

// near tells of grips that are too near to the shoulders.
func (l *list) near(b *Body, c *contact, by float64) {
	text := "the grips are " + ceil(by) + " too near to the shoulders for elbows to fold. "
	further, ok := least(func(d float64) bool {
		w := b.body.bow(b.MidHip, c.grip.Add(c.ahead.Scale(d)))
		return w.reach(clamp(w.lean(b.body.arms.folded), leanLeast, leanMost)) >= b.body.arms.folded-eps
	})
	if ok {
		text += "They must be " + whole(further) + " further ahead: a longer “Reach” of the frame, a longer stem (“Stem length”) or a lower bar."
	} else {
		text += "Check the frame’s “Reach” and “Stack”."
	}
	l.fault("frame.reach_mm", l.sentence(text))
}

// leans tells of a trunk outside the range of its posture.
func (l *list) leans(p posture, lean float64) {
	text := "on this bike the trunk leans to " + degrees(lean) + " over level, because the arms reach the grips no other way; " +
		"the posture “" + p.name + "” is from " + degrees(p.from) + " to " + degrees(p.to) + ". It is taken as it is"
	if p.name != standing {
		for _, o := range postures {
			if o.name != standing && lean >= o.from && lean <= o.to {
				text += "; “" + o.name + "” would fit"
			}
		}
	}
	l.doubt("posture", l.sentence(text+"."))
}

// least is the smallest way in whole mm, given in m, from which on ok holds. It
// does not hold at 0, and need not for ever: the way is first sought by doubling.
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

// sentence names the rider and makes a sentence of its words.
func (l *list) sentence(s string) string {
	name := l.rider.Name
	if strings.TrimSpace(name) == "" {
		name = l.rider.ID
	}
	return "Rider “" + short(name) + "”: " + string(s[0]-'a'+'A') + s[1:]
}

// Number writes a figure as it was typed.
func number(v float64) string { return strconv.FormatFloat(v, 'g', 7, 64) }

// whole writes a length of whole mm.
func whole(m float64) string { return strconv.FormatFloat(math.Round(m/mm), 'f', -1, 64) + " mm" }

// ceil writes a length as mm, rounded up.
func ceil(m float64) string {
	return strconv.FormatFloat(math.Ceil(m/mm-eps), 'f', -1, 64) + " mm"
}

func degrees(a float64) string {
	return strconv.FormatFloat(math.Round(a/degree)+0, 'f', -1, 64) + "°"
}

func choice(names []string) string {
	return strings.Join(names[:len(names)-1], ", ") + " or " + names[len(names)-1]
}

func quote(s string) string { return "“" + short(s) + "”" }

// Shorten makes one line of a text of the user's, cut to what a message can bear.
func short(s string) string {
	const most = 40
	s = strings.Join(strings.Fields(strings.ToValidUTF8(s[:min(len(s), 8*most)], "")), " ")
	n := 0
	for i := range s {
		if n == most {
			return s[:i] + "…"
		}
		n++
	}
	return s
}
