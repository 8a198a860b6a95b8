package rooms

import (
	"slices"

	"steelyard/internal/drive"
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
	if len(s.Builds) == 0 {
		return s
	}
	base := slices.IndexFunc(s.Builds, func(c report.Column) bool { return c.ID == s.Base })
	for i := range chapters {
		if c := chapters[i].of(e, s.Builds, base); len(c.Rows) > 0 {
			s.Chapters = append(s.Chapters, c)
		}
	}
	t := trials{e, s.Builds, map[[2]int]*trial{}}
	s.Chapters = append(s.Chapters, t.chapters(base)...)
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
		for i := range builds {
			if f := all[i][key]; f != nil {
				cell := f.figure(unlabelled)
				row.Unit = f.unit
				row.Cells[i] = &report.Cell{Value: cell.Value, Plus: cell.Plus, Verdict: report.Same}
			}
		}
		row.Judge(builds, base, func(i int) float64 { return all[i][key].value }, func(i, from int) (delta, plus float64) {
			c := differ(all[from][key], all[i][key])
			return c.Delta, c.Plus
		})
		if slices.ContainsFunc(row.Cells, func(c *report.Cell) bool { return c != nil }) {
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
		t := RidesOf(e).build(i)
		if t.drive == nil {
			return nil
		}
		var list []told
		for _, f := range t.figures(drive.SpanOf(t.used), t.mean(nil)) {
			switch f.key {
			case "range", "distinct", "mean_step", "lowest", "highest", "efficiency":
				list = append(list, f)
			}
		}
		return list
	}
	return nil
}
