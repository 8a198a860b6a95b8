package report

import (
	"math"
	"strconv"

	"steelyard/internal/document"
	"steelyard/internal/units"
	"steelyard/internal/words"
)

// Phrasing writes figures and sentences in a language, and in the units that a
// document wants shown.
type Phrasing struct {
	*words.Words
	numbers              units.Format
	massUnit, lengthUnit string
}

func NewPhrasing(w *words.Words, show *document.Show) *Phrasing {
	return &Phrasing{w, units.Format{Comma: w.Comma()}, show.Mass, show.Length}
}

// within joins a value with its doubt.
func within(value, plus string) string {
	if plus == "" {
		return value
	}
	return value + " ± " + plus
}

// Grams writes a mass that is known within ±plus grams.
func (w *Phrasing) Grams(g, plus float64) string {
	return within(w.numbers.MassWithin(g, plus, w.massUnit))
}

// Limit writes a mass that is stated exactly.
func (w *Phrasing) Limit(g float64) string { return w.Grams(g, 0) }

// Litres writes a volume, to a millilitre.
func (w *Phrasing) Litres(v float64) string {
	return w.numbers.Number(strconv.FormatFloat(round(v, 1e3), 'f', -1, 64)) + "\u00a0" + w.Label("unit.l")
}

// millimetres writes a length that is known within ±plus millimetres.
func (w *Phrasing) millimetres(mm, plus float64) string {
	return within(w.numbers.LengthWithin(mm, plus, w.lengthUnit))
}

// Exact writes a figure of the geometry, as fine as a frame is made.
func (w *Phrasing) Exact(unit string, value float64) string {
	if unit == degree.name {
		return w.decimal(round(value, 10), 0) + w.Label("unit.deg")
	}
	decimals := 0
	if w.lengthUnit == units.Inch {
		decimals = 2
	}
	return w.numbers.Length(value, w.lengthUnit, decimals)
}

// Figure writes a figure of a report in its unit.
func (w *Phrasing) Figure(unit string, value, plus float64) string {
	switch unit {
	case gram.name:
		return w.Grams(value, plus)
	case millimetre.name:
		return w.millimetres(value, plus)
	}
	text := w.decimal(value, plus)
	if plus > 0 {
		text = within(text, w.decimal(plus, plus))
	}
	if label := w.Label("unit." + unit); label != "" {
		text += "\u00a0" + label
	}
	return text
}

// decimal writes a number that is known within ±plus; see [units.Decimals].
func (w *Phrasing) decimal(v, plus float64) string {
	places, told := units.Decimals(plus, units.MostDecimals)
	if !told {
		places = units.Shortest(v, units.MostDecimals)
	}
	v = round(v, math.Pow10(places))
	s := strconv.FormatFloat(math.Abs(v), 'f', max(places, 0), 64)
	if v < 0 {
		s = "\u2212" + s
	}
	return w.numbers.Number(s)
}

// mass and length write a figure of a build.
func (w *Phrasing) mass(f *figures, s slot) string {
	return w.Grams(f.of[s].Value*gram.perSI, f.plus[s]*gram.perSI)
}

func (w *Phrasing) length(m, plus float64) string {
	return w.millimetres(m*millimetre.perSI, plus*millimetre.perSI)
}

// delta writes a difference in mass without its sign.
func (w *Phrasing) delta(c *Change) string { return w.Grams(math.Abs(c.Delta), c.Plus) }

// On is the name of a place or a group on a bike. A rigid rear has neither
// swingarm nor shock: what is there instead has a name of its own.
func (w *Phrasing) On(kind, name string, rigid bool) string {
	if key := kind + "_rigid." + name; rigid && w.Label(key) != key {
		return w.Label(key)
	}
	return w.Label(kind + "." + name)
}

// Percent writes a share as whole percents, without the sign.
func Percent(share float64) string {
	return strconv.FormatFloat(round(share*100, 1), 'f', 0, 64)
}
