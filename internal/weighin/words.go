package weighin

import (
	"math"
	"strings"

	"steelyard/internal/document"
	"steelyard/internal/units"
	"steelyard/internal/words"
)

// Teller writes a result for people who do not read statistics.
type Teller struct {
	Show    document.Show           // the units
	Words   *words.Words            // the language; nil is English
	Source  func(source int) string // what a mass source is called
	Station func(name string) string
}

// say says the message of a key, see [words.Tell].
func (t *Teller) say(key string, pairs ...any) string { return words.Tell(key, pairs...).In(t.Words) }

// Measured says what the scale found, and how well its readings agree.
func (t *Teller) Measured(r *Result) string {
	m := r.Measured
	var text []string
	add := func(key string, pairs ...any) { text = append(text, t.say(key, pairs...)) }
	if m.HasHeight {
		add("weighin.found.height", "total", t.mass(m.Total), "x", t.length(m.X), "z", t.length(m.Z))
	} else {
		add("weighin.found", "total", t.mass(m.Total), "x", t.length(m.X))
	}
	switch b := r.Block; {
	case m.HasHeight:
	case r.Ridden:
		add("weighin.no_height.ridden")
	default:
		add("weighin.no_height")
		if b != nil && b.Enough {
			add("weighin.no_height.block", "block", t.plain(b.Height), "plus", t.plain(b.Plus))
		}
	}
	switch s := m.Self; {
	case s.Freedom <= 0 && r.repeated():
		add("weighin.repeated")
	case s.Freedom <= 0:
		add("weighin.unchecked")
	case s.Unlikely():
		add("weighin.disagree", "odds", odds(s.P))
		if w := r.worst(); w != nil {
			key := "weighin.worst.more"
			if w.By < 0 {
				key = "weighin.worst.less"
			}
			add(key, "n", w.Line+1, "by", t.plainMass(math.Abs(w.By)), "times", words.Fixed(m.Widened, 1))
		}
	default:
		add("weighin.agree")
	}
	return strings.Join(text, " ")
}

// repeated reports whether a load was read more than once.
func (r *Result) repeated() bool { return len(loadsOf(r.Readings)) < len(r.Readings) }

// worst is the reading that fits least.
func (r *Result) worst() *Residual {
	var worst *Residual
	for i := range r.Measured.Left {
		if l := &r.Measured.Left[i]; worst == nil || math.Abs(l.Score) > math.Abs(worst.Score) {
			worst = l
		}
	}
	return worst
}

// Compared says whether scale and parts list agree.
func (t *Teller) Compared(r *Result) string {
	if r.Paper == nil {
		return t.say("weighin.compared.no_paper")
	}
	key := "weighin.compared.no"
	list := t.apart(r.Figures)
	switch {
	case r.Verdict == Contradict:
		key = "weighin.compared.open"
	case !r.Together.Unlikely() && list == "":
		key = "weighin.compared.yes"
	case !r.Together.Unlikely():
		key = "weighin.compared.together"
	case list == "":
		key = "weighin.compared.each"
	}
	return t.say(key, "list", list, "odds", odds(r.Together.P))
}

// apart tells the figures that do not agree.
func (t *Teller) apart(figures []Comparison) string {
	var total string
	var moved words.List
	for i := range figures {
		f := &figures[i]
		if f.Agrees {
			continue
		}
		way := ".more"
		if f.Difference.Value < 0 {
			way = ".less"
		}
		by := Value{math.Abs(f.Difference.Value), f.Difference.U}
		if f.Key == "total" {
			total = t.say("weighin.apart.total"+way, "by", t.mass(by))
		} else {
			moved = append(moved, t.say("weighin.apart."+f.Key+way, "by", t.length(by)))
		}
	}
	if len(moved) == 0 {
		return total
	}
	centre := t.say("weighin.apart.centre", "moved", moved)
	if total == "" {
		return centre
	}
	return t.say("weighin.apart.both", "total", total, "centre", centre)
}

// Explained says what would explain a difference; nothing when there is none to
// explain.
func (t *Teller) Explained(r *Result) string {
	weights, missing := t.weights(r.Weights), t.missing(r.Missing)
	fits := t.fits(r)
	join := func(s ...string) string { return strings.Join(s, " ") }
	switch r.Verdict {
	case Contradict:
		return t.say("weighin.explained.again")
	case ByWeights:
		return join(t.say("weighin.explained.weights"), weights, t.say("weighin.explained.no_single"), fits)
	case ByMissing, BySurplus:
		also := t.say("weighin.explained.no_weights")
		if r.Weights.Possible {
			also = t.say("weighin.explained.weights_too")
		}
		return join(t.say("weighin.explained.single"), missing, also, fits)
	case ByEither:
		return join(t.say("weighin.explained.either"), weights, t.say("weighin.explained.or"), missing, fits)
	case Unexplained:
		return t.say("weighin.explained.not")
	}
	return ""
}

// weights names the parts that move most.
func (t *Teller) weights(w *Weights) string {
	if w == nil || len(w.Moves) == 0 {
		return t.say("weighin.moves.none")
	}
	var list []string
	for i := range w.Moves {
		if i == 3 {
			break
		}
		m := &w.Moves[i]
		key := "weighin.move.more"
		if m.By < 0 {
			key = "weighin.move.less"
		}
		one := t.say(key, "part", t.Source(m.Source), "by", t.plainMass(math.Abs(m.By)))
		if m.Limit {
			one = t.say("weighin.move.limit", "move", one)
		}
		list = append(list, one)
	}
	return t.say("weighin.moves", "list", strings.Join(list, "; "))
}

// missing tells the single mass and where it may be.
func (t *Teller) missing(m *Missing) string {
	if m == nil || len(m.Near) == 0 {
		return ""
	}
	s := &m.Near[0]
	key := "weighin.missing"
	if s.Mass.Value < 0 {
		key = "weighin.surplus"
	}
	here := t.Station(s.Station)
	if more := m.Near[1:]; len(more) > 0 {
		var others []string
		for i := range more[:min(3, len(more))] {
			others = append(others, t.Station(more[i].Station))
		}
		here = t.say("weighin.missing.others", "here", here, "others", strings.Join(others, ", "))
	}
	return t.say(key, "by", t.mass(Value{math.Abs(s.Mass.Value), s.Mass.U}), "here", here)
}

// fits sets the two explanations side by side in numbers.
func (t *Teller) fits(r *Result) string {
	if r.Weights == nil || r.Missing == nil || len(r.Missing.Near) == 0 {
		return ""
	}
	weights, _ := r.Weights.Fit.PerDegree()
	missing, _ := r.Missing.Fit.PerDegree()
	text := t.say("weighin.fits", "weights", words.Fixed(weights, 1), "missing", words.Fixed(missing, 1))
	if !r.Measured.HasHeight {
		text += " " + t.say("weighin.fits.no_height")
	}
	return text
}

// odds says how often chance does something.
func odds(p float64) words.Message {
	switch {
	case p < 0.0005:
		return words.Tell("weighin.odds.fewer")
	case p < 0.00995:
		return words.Tell("weighin.odds.thousand", "n", words.Fixed(p*1000, 0))
	}
	return words.Tell("weighin.odds.hundred", "n", words.Fixed(p*100, 0))
}

// within joins a value with its doubt.
func within(value, plus string) string {
	if plus == "" {
		return value
	}
	return value + " ± " + plus
}

func (t *Teller) format() units.Format { return units.Format{Comma: t.Words.Comma()} }

func (t *Teller) mass(v Value) string {
	return within(t.format().MassWithin(v.Value*1000, v.Plus()*1000, t.Show.Mass))
}

func (t *Teller) length(v Value) string {
	return within(t.format().LengthWithin(v.Value*1000, v.Plus()*1000, t.Show.Length))
}

// plain is a length without its doubt, as fine as a ruler.
func (t *Teller) plain(m float64) string {
	decimals := 0
	if t.Show.Length == units.Inch {
		decimals = 1
	}
	return t.format().Length(m*1000, t.Show.Length, decimals)
}

// plainMass is a mass without its doubt, to a gram or three digits.
func (t *Teller) plainMass(kg float64) string {
	value, _ := t.format().MassWithin(kg*1000, max(kg*20, 10), t.Show.Mass)
	return value
}
