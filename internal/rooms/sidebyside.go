package rooms

import (
	"slices"

	"steelyard/internal/drive"
	"steelyard/internal/mass"
	"steelyard/internal/report"
)

// chapter is some rows that a room adds to the table of all builds: the figures of
// each build of the table, nil where it has none.
type chapter struct {
	key    string
	label  func(e *report.Evaluation, key string) string
	wanted map[string]string // of which figures less, or more, is better by itself
	told   func(e *report.Evaluation, build string) []told
}

// chapters are those of all rooms that have some. What their figures owe stands in
// budgets by name, so that what two builds share cancels.
var chapters = []chapter{{
	key: "gears", label: func(e *report.Evaluation, key string) string { return e.Words().Label("gears." + key) },
	wanted: map[string]string{"efficiency": report.More}, told: gearsTold,
}}

// SideBySide sets the builds of the document side by side, with the chapters of the
// rooms after those of the report.
func SideBySide(e *report.Evaluation) *report.SideBySide {
	s := e.SideBySide()
	base := slices.IndexFunc(s.Builds, func(c report.Column) bool { return c.ID == s.Base })
	for i := range chapters {
		if len(s.Builds) == 0 {
			break
		}
		if c := chapters[i].of(e, s.Builds, base); len(c.Rows) > 0 {
			s.Chapters = append(s.Chapters, c)
		}
	}
	return s
}

// of makes the chapter of some builds.
func (c *chapter) of(e *report.Evaluation, builds []report.Column, base int) report.Chapter {
	out := report.Chapter{Key: c.key, Label: e.Words().Label("chapter." + c.key)}
	all := make([]map[string]*told, len(builds))
	var keys []string
	for i := range builds {
		all[i] = make(map[string]*told)
		list := c.told(e, builds[i].ID)
		for k := range list {
			f := &list[k]
			if f.real() {
				all[i][f.key] = f
			}
			if !slices.Contains(keys, f.key) {
				keys = append(keys, f.key)
			}
		}
	}
	for _, key := range keys {
		row := report.Row{Key: c.key + "." + key, Label: c.label(e, key), Wanted: c.wanted[key], Cells: make([]*report.Cell, len(builds))}
		difference := func(i, from int) (delta, plus float64, verdict string) {
			a, b := all[from][key], all[i][key]
			var budget mass.Budget
			for f, sign := range map[*told]float64{a: -1, b: 1} {
				if f.charge != nil {
					f.charge(&budget, sign)
				}
			}
			delta = report.Decimal(b.factor*(b.value-a.value), b.decimals)
			plus = report.Decimal(b.factor*budget.Expanded(), b.decimals)
			return delta, plus, report.Verdict(delta, plus)
		}
		best := -1
		for i := range builds {
			f := all[i][key]
			if f == nil {
				continue
			}
			cell := f.figure(func(string) string { return "" })
			row.Unit = f.unit
			row.Cells[i] = &report.Cell{Value: cell.Value, Plus: cell.Plus, Verdict: report.Same}
			if i != base && all[base][key] != nil {
				row.Cells[i].Delta, row.Cells[i].DeltaPlus, row.Cells[i].Verdict = difference(i, base)
			}
			if best < 0 || row.Wanted == report.More && f.value > all[best][key].value || row.Wanted == report.Less && f.value < all[best][key].value {
				best = i
			}
		}
		others := 0
		for i := range builds {
			if row.Wanted == "" || i == best || all[i][key] == nil {
				continue
			}
			if _, _, v := difference(best, i); v != row.Wanted {
				others = -len(builds)
			}
			others++
		}
		if others > 0 {
			row.Best = builds[best].ID
		}
		if best >= 0 {
			out.Rows = append(out.Rows, row)
		}
	}
	return out
}

// gearsTold are the figures of the drive of a build.
func gearsTold(e *report.Evaluation, build string) []told {
	for i := range e.Document.Builds {
		if e.Document.Builds[i].ID != build {
			continue
		}
		// All gears alike: builds that are not compared carry no load, and a day would
		// use their gears otherwise.
		t, weights := gearedOf(e, i, nil)
		if t.drive == nil {
			return nil
		}
		var list []told
		for _, f := range t.figures(drive.SpanOf(t.used), t.mean(weights)) {
			switch f.key {
			case "range", "distinct", "mean_step", "lowest", "highest", "efficiency":
				list = append(list, f)
			}
		}
		return list
	}
	return nil
}
