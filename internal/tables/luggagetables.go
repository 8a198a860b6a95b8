package tables

import (
	"math"
	"strconv"

	"steelyard/internal/document"
	"steelyard/internal/report"
	"steelyard/internal/words"
)

// packedLine is a line of a list of luggage: a bag, or a good in one.
type packedLine struct {
	bag, name  string
	pieces     int
	mass, half float64 // g, of one
	volume     float64 // l, of all
	basis      document.Basis
	supply     string
}

// luggage is everything that a load takes along: each bag with what is in it,
// then what is in no bag.
func luggage(l *document.Load, words *words.Words) []packedLine {
	var list []packedLine
	goods := func(in, bag string) {
		for i := range l.Goods {
			if g := &l.Goods[i]; g.In == in {
				list = append(list, packedLine{bag, g.Name, g.Quantity, g.Mass, g.HalfWidth, float64(g.Quantity) * g.Volume, g.Basis, g.Supply})
			}
		}
	}
	for i := range l.Bags {
		b := &l.Bags[i]
		list = append(list, packedLine{b.Name, words.Label("table.empty"), 1, b.Mass, b.HalfWidth, 0, b.Basis, ""})
		goods(b.ID, b.Name)
	}
	goods("", words.Label("table.unpacked"))
	return list
}

func luggageHead(words *words.Words, mass, litres string) []string {
	return []string{
		words.Label("table.bag"), words.Label("table.thing"), words.Label("table.number"), words.Label("table.each") + mass, words.Label("table.within") + mass,
		words.Label("table.together") + mass, words.Label("table.volume") + litres, words.Label("table.basis"), words.Label("table.supplies"),
	}
}

func (t *packedLine) uses(words *words.Words) string {
	if t.supply == "" {
		return ""
	}
	return words.Label("supply." + t.supply)
}

// LuggageCSV writes the bags and goods of a load for a spreadsheet, in g and l.
// Notes are as in [FiguresCSV].
func LuggageCSV(l *document.Load, x Export) []byte {
	t := csvTable{Export: x}
	t.line(luggageHead(x.Words, ", g", ", l")...)
	for _, g := range luggage(l, x.Words) {
		n := float64(g.pieces)
		t.line(g.bag, g.name, strconv.Itoa(g.pieces), t.number(g.mass), t.number(g.half), t.number(n*g.mass), t.number(math.Round(g.volume*1e3)/1e3),
			x.Words.Label("basis."+string(g.basis)), g.uses(x.Words))
	}
	return t.bytes()
}

// LuggageMarkdown writes the bags and goods of a load as a table for an article,
// in the units that the document wants shown. Notes follow below.
func LuggageMarkdown(l *document.Load, show document.Show, x Export) []byte {
	w := report.NewPhrasing(x.Words, &show)
	var t markdownTable
	t.text(report.LoadName(l))
	t.head("wwfffffww", luggageHead(x.Words, "", "")...)
	for _, g := range luggage(l, x.Words) {
		n, volume := float64(g.pieces), ""
		if g.volume > 0 {
			volume = w.Litres(g.volume)
		}
		t.line(g.bag, g.name, strconv.Itoa(g.pieces), w.Limit(g.mass), w.Limit(g.half), w.Limit(n*g.mass), volume, x.Words.Label("basis."+string(g.basis)), g.uses(x.Words))
	}
	return t.end(x)
}
