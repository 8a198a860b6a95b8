package report

import (
	"math"
	"strconv"

	"steelyard/internal/document"
	"steelyard/internal/units"
	"steelyard/internal/words"
)

// phrasing writes figures and sentences in a language, and in the units that a
// document wants shown.
type phrasing struct {
	*words.Words
	numbers              units.Format
	massUnit, lengthUnit string
}

func newPhrasing(w *words.Words, show *document.Show) *phrasing {
	return &phrasing{w, units.Format{Comma: w.Comma()}, show.Mass, show.Length}
}

// within joins a value with its doubt.
func within(value, plus string) string {
	if plus == "" {
		return value
	}
	return value + " ± " + plus
}

// grams writes a mass that is known within ±plus grams.
func (w *phrasing) grams(g, plus float64) string {
	return within(w.numbers.MassWithin(g, plus, w.massUnit))
}

// limit writes a mass that is stated exactly.
func (w *phrasing) limit(g float64) string { return w.grams(g, 0) }

// litres writes a volume.
func (w *phrasing) litres(v float64) string {
	return w.numbers.Number(strconv.FormatFloat(v, 'f', -1, 64)) + "\u00a0" + w.Label("unit.l")
}

// millimetres writes a length that is known within ±plus millimetres.
func (w *phrasing) millimetres(mm, plus float64) string {
	return within(w.numbers.LengthWithin(mm, plus, w.lengthUnit))
}

// exact writes a figure of the geometry, as fine as a frame is made.
func (w *phrasing) exact(unit string, value float64) string {
	if unit == degree.name {
		return w.decimal(round(value, 10), 0) + w.Label("unit.deg")
	}
	decimals := 0
	if w.lengthUnit == units.Inch {
		decimals = 2
	}
	return w.numbers.Length(value, w.lengthUnit, decimals)
}

// figure writes a figure of a report in its unit.
func (w *phrasing) figure(unit string, value, plus float64) string {
	switch unit {
	case gram.name:
		return w.grams(value, plus)
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
func (w *phrasing) decimal(v, plus float64) string {
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
func (w *phrasing) mass(f *figures, s slot) string {
	return w.grams(f.of[s].Value*gram.perSI, f.plus[s]*gram.perSI)
}

func (w *phrasing) length(m, plus float64) string {
	return w.millimetres(m*millimetre.perSI, plus*millimetre.perSI)
}

// delta writes a difference in mass without its sign.
func (w *phrasing) delta(c *Change) string { return w.grams(math.Abs(c.Delta), c.Plus) }
