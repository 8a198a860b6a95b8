package weighin

import (
	"fmt"
	"math"
	"strconv"
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

// Measured says what the scale found, and how well its readings agree.
func (t *Teller) Measured(r *Result) string {
	m := r.Measured
	text := []string{fmt.Sprintf("On the scale the bike weighs %s, and its centre of mass lies %s ahead of the rear axle",
		t.mass(m.Total), t.length(m.X))}
	switch {
	case m.HasHeight:
		text[0] += fmt.Sprintf(" and %s above the ground.", t.length(m.Z))
	case r.Ridden:
		text[0] += "."
		text = append(text, "Its height is not measured: nobody sits on a bike with a raised wheel. For the height weigh it without its rider.")
	default:
		text[0] += "."
		text = append(text, "Its height is not measured: that takes another reading with one wheel raised.")
		if b := r.Block; b != nil && b.Enough {
			text = append(text, fmt.Sprintf("With a block of %s under the front wheel and the scale under the rear one it would be known within ± %s.",
				t.plain(b.Height), t.plain(b.Plus)))
		}
	}
	switch s := m.Self; {
	case s.Freedom <= 0 && r.repeated():
		text = append(text, "Readings that show the same again do not check each other, nor narrow the ±: the display rounds the same load the same way each time. One more load would, such as the other wheel on the scale or another block.")
	case s.Freedom <= 0:
		text = append(text, "There are just as many readings as it takes, so nothing checks them; one more would.")
	case s.Unlikely():
		text = append(text, fmt.Sprintf("The readings do not agree among themselves: chance makes this of the scale's steps and of what else is in doubt %s.", odds(s.P)))
		if w := r.worst(); w != nil {
			more := "more"
			if w.By < 0 {
				more = "less"
			}
			text = append(text, fmt.Sprintf("Reading %d fits least, with %s %s than all of them together tell: weigh it again. Until then every doubt is taken %s times as large.",
				w.Line+1, t.plainMass(math.Abs(w.By)), more, strconv.FormatFloat(m.Widened, 'f', 1, 64)))
		}
	default:
		text = append(text, "The readings agree among themselves.")
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
		return "There is nothing on paper to set it against."
	}
	list, odds := t.apart(r.Figures), odds(r.Together.P)
	switch {
	case r.Verdict == Contradict:
		return "Whether scale and parts list agree cannot be said while the readings do not agree among themselves."
	case !r.Together.Unlikely() && list == "":
		return "Scale and parts list agree within both uncertainties. When both are right, differences as large as these come up " + odds + "."
	case !r.Together.Unlikely():
		return "Taken together, scale and parts list agree: when both are right, differences as large as these come up " + odds +
			". By itself, on the scale " + list + ", more than both uncertainties allow."
	case list == "":
		return "Each figure by itself agrees within both uncertainties, but all of them together do not: when both are right, this comes up " + odds + "."
	}
	return "Scale and parts list do not agree: on the scale " + list + ". When both are right, this comes up " + odds + "."
}

// apart tells the figures that do not agree.
func (t *Teller) apart(figures []Comparison) string {
	size := func(f *Comparison, more, less string) string {
		way := more
		if f.Difference.Value < 0 {
			way = less
		}
		by := Value{math.Abs(f.Difference.Value), f.Difference.U}
		if f.Key == "total" {
			return t.mass(by) + " " + way
		}
		return t.length(by) + " " + way
	}
	var total string
	var moved []string
	for i := range figures {
		f := &figures[i]
		switch {
		case f.Agrees:
		case f.Key == "total":
			total = "the total is " + size(f, "heavier", "lighter")
		case f.Key == "centre_x":
			moved = append(moved, size(f, "further forward", "further back"))
		case f.Key == "centre_z":
			moved = append(moved, size(f, "higher", "lower"))
		}
	}
	if len(moved) == 0 {
		return total
	}
	centre := "the centre of mass is " + strings.Join(moved, " and ")
	if total == "" {
		return centre
	}
	return total + ", and " + centre
}

// Explained says what would explain a difference; nothing when there is none to
// explain.
func (t *Teller) Explained(r *Result) string {
	weights, missing := t.weights(r.Weights), t.missing(r.Missing)
	fits := t.fits(r)
	join := func(s ...string) string { return strings.Join(s, " ") }
	switch r.Verdict {
	case Contradict:
		return "Weigh again before you look for the reason of a difference in the parts list."
	case ByWeights:
		return join("Other weights of the parts explain it best.", weights, "No single mass at a place on the bike does.", fits)
	case ByMissing, BySurplus:
		also := "Weights within what is said of the parts cannot make up for it."
		if r.Weights.Possible {
			also = "Weights within what is said of the parts could make up for it too, but that is less likely."
		}
		return join("A single mass explains it best.", missing, also, fits)
	case ByEither:
		return join("Two things explain it about as well as each other. Either other weights of the parts:", weights, "Or a single mass:", missing, fits)
	case Unexplained:
		return "Neither other weights of the parts, within what is said of them, nor a single mass at a place on the bike explains it. More than one thing may be wrong: the places of parts, the frame figures, or a reading."
	}
	return ""
}

// weights names the parts that move most.
func (t *Teller) weights(w *Weights) string {
	if w == nil || len(w.Moves) == 0 {
		return "No part's weight is in doubt."
	}
	var list []string
	for i := range w.Moves {
		if i == 3 {
			break
		}
		m := &w.Moves[i]
		more := "more"
		if m.By < 0 {
			more = "less"
		}
		one := fmt.Sprintf("%s: %s %s", t.Source(m.Source), t.plainMass(math.Abs(m.By)), more)
		if m.Limit {
			one += " (as far as is said to be possible)"
		}
		list = append(list, one)
	}
	return "Those that change most are " + strings.Join(list, "; ") + "."
}

// missing tells the single mass and where it may be.
func (t *Teller) missing(m *Missing) string {
	if m == nil || len(m.Near) == 0 {
		return ""
	}
	s := &m.Near[0]
	size := t.mass(Value{math.Abs(s.Mass.Value), s.Mass.U})
	text := "Something of about " + size + " is on the bike and not on the list"
	if s.Mass.Value < 0 {
		text = "About " + size + " of what is on the list is not on the bike"
	}
	text += ", most likely here: " + t.Station(s.Station)
	if more := m.Near[1:]; len(more) > 0 {
		var others []string
		for i := range more[:min(3, len(more))] {
			others = append(others, t.Station(more[i].Station))
		}
		text += "; or here: " + strings.Join(others, ", ")
	}
	return text + "."
}

// fits sets the two explanations side by side in numbers.
func (t *Teller) fits(r *Result) string {
	if r.Weights == nil || r.Missing == nil || len(r.Missing.Near) == 0 {
		return ""
	}
	weights, _ := r.Weights.Fit.PerDegree()
	missing, _ := r.Missing.Fit.PerDegree()
	text := fmt.Sprintf("How well they fit, as a sum of squares per degree of freedom, near 1 or below when all is well: other weights %.1f, a single mass at the best of the bike's places %.1f.", weights, missing)
	if !r.Measured.HasHeight {
		text += " Without a measured height some place fits nearly any difference."
	}
	return text
}

// odds says how often something happens.
func odds(p float64) string {
	switch {
	case p < 0.0005:
		return "in fewer than 1 of 1000 weighings"
	case p < 0.00995:
		return fmt.Sprintf("in %.0f of 1000 weighings", p*1000)
	}
	return fmt.Sprintf("in %.0f of 100 weighings", p*100)
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
