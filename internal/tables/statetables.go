package tables

import (
	"slices"

	"steelyard/internal/document"
	"steelyard/internal/report"
)

// stateColumns are the figures in the table of states.
var stateColumns = slices.DeleteFunc(report.Keys(), func(k report.Key) bool {
	switch k.Key {
	case "total", "centre_x", "centre_y", "centre_z", "front_load", "rear_load", "front_share":
		return false
	}
	return true
})

// StatesCSV writes every state of both sides for a spreadsheet: one line a state
// and level of supplies, for every figure its value and its ±, in the report's
// units. Notes are as in [FiguresCSV].
func StatesCSV(r *report.Report, x Export) []byte {
	t := csvTable{Export: x}
	head := []string{"Side", "State", "Supplies"}
	for _, k := range stateColumns {
		name := x.Words.Label("figure."+k.Key) + ", " + k.Unit
		head = append(head, name, name+" ±")
	}
	t.line(head...)
	for i := range r.Sides {
		for _, s := range r.Sides[i].States {
			cells := []string{r.Sides[i].Name, x.Words.Label("state." + string(s.State)), x.Words.Label("supplies." + string(s.Supplies))}
			for _, c := range stateColumns {
				if f := stateFigure(&s, c.Key); f != nil {
					cells = append(cells, t.number(f.Value), t.number(f.Plus))
				} else {
					cells = append(cells, "", "")
				}
			}
			t.line(cells...)
		}
	}
	return t.bytes()
}

// StatesMarkdown writes the states of each side as a table for an article, in
// the units that the document wants shown. A state in which nothing is used up
// has one line. Notes follow below.
func StatesMarkdown(r *report.Report, show document.Show, x Export) []byte {
	w := report.NewPhrasing(x.Words, &show)
	var t markdownTable
	for i := range r.Sides {
		side := &r.Sides[i]
		if len(side.States) == 0 {
			continue
		}
		t.text(side.Name)
		head := []string{w.Label("table.state"), w.Label("table.supplies")}
		for _, c := range stateColumns {
			head = append(head, w.Label("figure."+c.Key))
		}
		t.head("wwf", head...)
		for _, s := range side.States {
			supplies := w.Label("supplies." + string(s.Supplies))
			if lasts(side, s.State) {
				if s.Supplies != document.Full {
					continue
				}
				supplies = "–"
			}
			cells := []string{w.Label("state." + string(s.State)), supplies}
			for _, c := range stateColumns {
				if f := stateFigure(&s, c.Key); f != nil {
					cells = append(cells, w.Figure(f.Unit, f.Value, f.Plus))
				} else {
					cells = append(cells, "–")
				}
			}
			t.line(cells...)
		}
	}
	return t.end(x)
}

// stateFigure finds a figure of a state; nil is none.
func stateFigure(s *report.State, key string) *report.Figure {
	for i := range s.Figures {
		if s.Figures[i].Key == key {
			return &s.Figures[i]
		}
	}
	return nil
}

// lasts reports whether a state is the same at all levels of supplies.
func lasts(s *report.Side, state document.State) bool {
	var first *report.State
	for i := range s.States {
		switch of := &s.States[i]; {
		case of.State != state:
		case first == nil:
			first = of
		case !slices.Equal(of.Figures, first.Figures):
			return false
		}
	}
	return true
}
