package report

import (
	"math"
	"strconv"
	"strings"

	"steelyard/internal/assembly"
	"steelyard/internal/document"
	"steelyard/internal/words"
)

// build is a build in words, for those who do not see the picture.
func (w *Phrasing) build(b *Weighed) string {
	name := w.bike(b)
	f := &b.figures
	if !(f.of[total].Value > 0) {
		return w.Say("summary.build.empty", "build", name) + w.leftOut(b)
	}
	var text []string
	add := func(key string, pairs ...string) { text = append(text, w.Say("summary.build."+key, pairs...)) }

	add("total", "build", name, "total", w.mass(f, total))
	where := "centre"
	if f.of[centreX].Value < 0 {
		where = "centre_behind"
	}
	add(where,
		"x", w.length(math.Abs(f.of[centreX].Value), f.plus[centreX]),
		"z", w.length(f.of[centreZ].Value, f.plus[centreZ]))
	if y := f.of[centreY].Value; math.Abs(y) > max(0.001, f.plus[centreY]) {
		side := "left"
		if y < 0 {
			side = "right"
		}
		add(side, "y", w.length(math.Abs(y), f.plus[centreY]))
	}
	front := f.of[frontShare].Value
	add("axles",
		"front", w.mass(f, frontLoad), "front_percent", Percent(front),
		"rear", w.mass(f, rearLoad), "rear_percent", Percent(1-front))
	switch bike := b.Bike; {
	case bike.FrontSprung && bike.RearSprung:
		add("unsprung",
			"front", w.mass(f, unsprungFront), "rear", w.mass(f, unsprungRear), "effective", w.mass(f, effectiveRear))
	case bike.FrontSprung:
		add("unsprung_front", "front", w.mass(f, unsprungFront))
		add("rigid_rear")
	case bike.RearSprung:
		add("unsprung_rear", "rear", w.mass(f, unsprungRear), "effective", w.mass(f, effectiveRear))
		add("rigid_front")
	default:
		add("rigid_both")
	}
	return strings.Join(text, " ") + w.leftOut(b)
}

func (w *Phrasing) unweighed(b *document.Build) string {
	return w.Say("summary.build.unweighed", "build", BuildName(b))
}

// leftOut says how many lines are left out, with a space before.
func (w *Phrasing) leftOut(b *Weighed) string {
	switch n := len(b.Lines) - b.Count - b.Off; n {
	case 0:
		return ""
	case 1:
		return " " + w.Say("summary.build.left_out.one")
	default:
		return " " + w.Say("summary.build.left_out.many", "count", strconv.Itoa(n))
	}
}

// difference is the difference of two builds in words.
func (w *Phrasing) difference(a, b *Weighed, d *Difference) string {
	var text []string
	add := func(key string, pairs ...string) { text = append(text, w.Say("summary.difference."+key, pairs...)) }
	change := func(key string) *Change {
		for i := range d.Figures {
			if d.Figures[i].Key == key {
				return &d.Figures[i]
			}
		}
		return nil
	}
	nameA, nameB := w.bike(a), w.bike(b)
	if c := change("total"); c != nil {
		add("total."+c.Verdict, "a", nameA, "b", nameB, "delta", w.delta(c))
		if len(d.Groups) > 0 && (c.Verdict == More || c.Verdict == Less) {
			if g := &d.Groups[0]; (g.Delta > 0) == (c.Delta > 0) && math.Abs(g.Delta) > math.Abs(c.Delta)/2 {
				add("group."+c.Verdict, "group", w.On("group", g.Key, !a.Bike.RearSprung && !b.Bike.RearSprung), "delta", w.Grams(math.Abs(g.Delta), g.Plus))
			}
		}
	}
	if c := change("unsprung_rear"); c != nil {
		add("rear."+c.Verdict, "delta", w.delta(c))
	}
	if c := change("unsprung_front"); c != nil && c.Verdict != Same {
		add("front."+c.Verdict, "delta", w.delta(c))
	}
	text = append(text, w.movement(change("centre_x"), change("centre_z"), d)...)
	if c := change("total"); c != nil && c.Verdict == Undecided {
		text = append(text, w.settling(d)...)
	}
	return strings.Join(text, " ")
}

// movement says how the centre of mass moved, as far as that is decided.
func (w *Phrasing) movement(x, z *Change, d *Difference) []string {
	if x == nil || z == nil {
		return nil
	}
	var text []string
	for _, way := range []struct {
		c          *Change
		more, less string
	}{{x, "forward", "back"}, {z, "up", "down"}} {
		key := "summary.difference."
		switch way.c.Verdict {
		case More:
			key += way.more
		case Less:
			key += way.less
		default:
			continue
		}
		text = append(text, w.Say(key, "delta", w.millimetres(math.Abs(way.c.Delta), way.c.Plus)))
	}
	if len(text) == 0 {
		return []string{w.Say("summary.difference.still")}
	}
	if len(d.Moved) > 0 {
		text = append(text, w.Say("summary.difference.mover", "part", words.ShortenName(d.Moved[0].Name)))
	}
	return text
}

// settling says what to weigh to decide which build is heavier.
func (w *Phrasing) settling(d *Difference) []string {
	var names []string
	for i := range d.Weigh {
		names = append(names, words.ShortenName(d.Weigh[i].Name))
		if d.Weigh[i].Settles {
			return []string{w.Say("summary.difference.settle", "parts", strings.Join(names, ", "))}
		}
	}
	return []string{w.Say("summary.difference.no_settle")}
}

// called is what a build is called in a sentence.
func BuildName(b *document.Build) string {
	if strings.TrimSpace(b.Name) == "" {
		return words.ShortenName(b.ID)
	}
	return words.ShortenName(b.Name)
}

// LoadName is what a load is called.
func LoadName(l *document.Load) string {
	if strings.TrimSpace(l.Name) == "" {
		return l.ID
	}
	return l.Name
}

// bike is what a bike is called in its state: with what is on it.
func (w *Phrasing) bike(b *Weighed) string {
	name := BuildName(b.Build)
	switch {
	case b.Level == assembly.Bare:
		return w.Say("summary.bare", "build", name)
	case b.Level < assembly.Loaded || b.Cargo == nil:
		return name
	case b.Level == assembly.Loaded:
		return w.Say("summary.loaded", "build", name, "load", LoadName(b.Cargo.Load))
	}
	who := b.Cargo.Rider.Name
	if strings.TrimSpace(who) == "" {
		who = b.Cargo.Rider.ID
	}
	return w.Say("summary.ridden", "build", name, "load", LoadName(b.Cargo.Load), "rider", who)
}
