package report

import (
	"strconv"

	"steelyard/internal/document"
)

// thing is a line of a list of luggage: a bag, or a good in one.
type thing struct {
	bag, name  string
	pieces     int
	mass, half float64 // g, of one
	volume     float64 // l, of all
	basis      document.Basis
	supply     string
}

// luggage is everything that a load takes along: each bag with what is in it,
// then what is in none.
func luggage(l *document.Load) []thing {
	var list []thing
	goods := func(in, bag string) {
		for i := range l.Goods {
			if g := &l.Goods[i]; g.In == in {
				list = append(list, thing{bag, g.Name, g.Quantity, g.Mass, g.HalfWidth, float64(g.Quantity) * g.Volume, g.Basis, g.Supply})
			}
		}
	}
	for i := range l.Bags {
		b := &l.Bags[i]
		list = append(list, thing{b.Name, Label("table.empty"), 1, b.Mass, b.HalfWidth, 0, b.Basis, ""})
		goods(b.ID, b.Name)
	}
	goods("", Label("table.unpacked"))
	return list
}

func luggageHead(mass, litres string) []string {
	return []string{
		Label("table.bag"), Label("table.thing"), Label("table.number"), Label("table.each") + mass, Label("table.within") + mass,
		Label("table.together") + mass, Label("table.volume") + litres, Label("table.basis"), Label("table.supplies"),
	}
}

func (t *thing) uses() string {
	if t.supply == "" {
		return ""
	}
	return Label("supply." + t.supply)
}

// LuggageCSV writes the bags and goods of a load for a spreadsheet, in g and l.
// Notes are as in [FiguresCSV].
func LuggageCSV(l *document.Load, x Export) []byte {
	t := csvTable{Export: x}
	t.line(luggageHead(", g", ", l")...)
	for _, g := range luggage(l) {
		n := float64(g.pieces)
		t.line(g.bag, g.name, strconv.Itoa(g.pieces), t.number(g.mass), t.number(g.half), t.number(n*g.mass), t.number(round(g.volume, 1e3)),
			Label("basis."+string(g.basis)), g.uses())
	}
	return t.bytes()
}

// LuggageMarkdown writes the bags and goods of a load as a table for an article,
// in the units that the document wants shown. Notes follow below.
func LuggageMarkdown(l *document.Load, show document.Show, x Export) []byte {
	w := newPhrasing(show)
	var t markdownTable
	t.text(loadCalled(l))
	t.head("wwfffffww", luggageHead("", "")...)
	for _, g := range luggage(l) {
		n, volume := float64(g.pieces), ""
		if g.volume > 0 {
			volume = litres(round(g.volume, 1e3))
		}
		t.line(g.bag, g.name, strconv.Itoa(g.pieces), w.limit(g.mass), w.limit(g.half), w.limit(n*g.mass), volume, Label("basis."+string(g.basis)), g.uses())
	}
	return t.end(x)
}
