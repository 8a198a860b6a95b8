package rooms

import (
	"slices"

	"steelyard/internal/document"
	"steelyard/internal/drive"
	"steelyard/internal/effort"
	"steelyard/internal/report"
)

// ridden is a chapter of the table of all builds whose figures are told of a
// build as it is ridden. What two such builds have in common is only known where
// they are evaluated as the two sides of a comparison.
type ridden struct {
	key    string   // of the chapter, and of its labels
	rows   []string // the figures it shows, in order
	wanted map[string]string
	told   func(e *report.Evaluation) [2][]told // of the sides
}

var riddenChapters = []ridden{
	{"climb", []string{"time", "speed", "efficiency", "steepest"},
		map[string]string{"time": report.Less, "speed": report.More, "efficiency": report.More, "steepest": report.More}, climbsTold},
	{"road", []string{"tyre_load_rms_rear", "tyre_load_rms_front", "saddle_wk_m_s2", "grips_wh_m_s2", "rack_m_s2"},
		map[string]string{"tyre_load_rms_rear": report.Less, "tyre_load_rms_front": report.Less, "saddle_wk_m_s2": report.Less, "grips_wh_m_s2": report.Less, "rack_m_s2": report.Less}, roadsTold},
	{"steering", []string{"trail", "steered_mass", "steering_inertia", "weave", "capsize", "held", "lift_rear", "lift_front"},
		map[string]string{"lift_rear": report.Less, "lift_front": report.Less}, steeringsTold},
}

// trial is two builds ridden: what each does, and how the second differs from the
// first, by the key of the row.
type trial struct {
	figures [2]map[string]Figure
	changes map[string]Change
}

// trials are the pairs of builds that have been ridden.
type trials struct {
	of     *report.Evaluation
	builds []report.Column
	ridden map[[2]int]*trial
}

// at rides the builds i and j of the table, or one alone.
func (t *trials) at(i, j int) *trial {
	if r := t.ridden[[2]int{i, j}]; r != nil {
		return r
	}
	r := &trial{[2]map[string]Figure{{}, {}}, map[string]Change{}}
	t.ridden[[2]int{i, j}] = r
	d := *t.of.Document
	d.Builds, d.WeighIns, d.Days = nil, nil, nil
	d.Show.Compare, d.Show.Loads, d.Show.Table, d.Show.Base = nil, nil, nil, ""
	d.Show.State = document.Ridden // or as near to it as there is luggage and a rider
	for k, at := range []int{i, j} {
		if k == 1 && i == j {
			break
		}
		c := &t.builds[at]
		b := t.of.Document.Build(c.ID)
		d.Builds = append(d.Builds, *b)
		d.Show.Compare, d.Show.Loads = append(d.Show.Compare, c.ID), append(d.Show.Loads, c.Load)
	}
	e := report.Weigh(&d, t.of.Words())
	for k := range riddenChapters {
		c := &riddenChapters[k]
		lists := c.told(e)
		shown := func(list []told) (out []told) {
			for n := range list {
				if f := &list[n]; f.real() && slices.Contains(c.rows, f.key) {
					out = append(out, *f)
				}
			}
			return out
		}
		for side := range lists {
			lists[side] = shown(lists[side])
			for n := range lists[side] {
				f := &lists[side][n]
				switch f.unit {
				case "share":
					f.unit, f.factor, f.decimals = "percent", 100*f.factor, f.decimals-2
				case "s":
					f.unit, f.factor, f.decimals = "min", f.factor/60, f.decimals+2
				}
				r.figures[side][c.key+"."+f.key] = f.figure(unlabelled)
			}
		}
		for _, change := range changes(e, lists[0], lists[1], unlabelled) {
			r.changes[c.key+"."+change.Key] = change
		}
	}
	return r
}

// alone is what a build does by itself: from a trial against the base, which is
// wanted anyhow.
func (t *trials) alone(i, base int) map[string]Figure {
	if i != base {
		return t.at(base, i).figures[1]
	}
	for j := range t.builds {
		if j != base && t.builds[j].Weighed {
			return t.at(base, j).figures[0]
		}
	}
	return t.at(base, base).figures[0]
}

// chapters makes the chapters of the builds as they are ridden.
func (t *trials) chapters(base int) (list []report.Chapter) {
	w := t.of.Words()
	alone := make([]map[string]Figure, len(t.builds))
	for i := range t.builds {
		if t.builds[i].Weighed {
			alone[i] = t.alone(i, base)
		}
	}
	for k := range riddenChapters {
		c := &riddenChapters[k]
		chapter := report.Chapter{Key: c.key, Label: w.Label("chapter." + c.key)}
		for _, name := range c.rows {
			key := c.key + "." + name
			row := report.Row{Key: key, Label: w.Label(key), Wanted: c.wanted[name], Cells: make([]*report.Cell, len(t.builds))}
			any := false
			for i := range t.builds {
				f, ok := alone[i][key]
				if !ok {
					continue
				}
				any = true
				row.Unit = f.Unit
				row.Cells[i] = &report.Cell{Value: f.Value, Plus: f.Plus, Verdict: report.Same}
			}
			if !any {
				continue
			}
			row.Judge(t.builds, base, func(i int) float64 { return alone[i][key].Value }, func(i, from int) (delta, plus float64) {
				// Either order will do: a ± is the same both ways.
				if r := t.ridden[[2]int{i, from}]; r != nil {
					return -r.changes[key].Delta, r.changes[key].Plus
				}
				change := t.at(from, i).changes[key]
				return change.Delta, change.Plus
			})
			chapter.Rows = append(chapter.Rows, row)
		}
		if chapter.Rows != nil {
			list = append(list, chapter)
		}
	}
	return list
}

// unlabelled is for figures that are not shown as the room shows them.
func unlabelled(string) string { return "" }

// climbsTold are the figures of a climb.
func climbsTold(e *report.Evaluation) (lists [2][]told) {
	rides := RidesOf(e)
	var courses []*course
	var climbs []effort.Climb
	for i := range e.Sides {
		_, c, climb := rides.climbSide(i, unlabelled)
		courses, climbs = append(courses, c), append(climbs, climb)
	}
	if len(courses) == 2 && courses[0] != nil && courses[1] != nil {
		compare(e, courses)
	} else {
		for _, c := range courses {
			if c != nil {
				c.compared.Charge(c.items(), c.total, 1)
			}
		}
	}
	for i, c := range courses {
		if c == nil {
			continue
		}
		var efficiency drive.Figure
		if g := climbs[i].Gear; g >= 0 {
			efficiency = c.efficiencyOf(&c.lines[g], climbs[i].Cadence)
		}
		lists[i] = c.figures(climbs[i], efficiency, c.steep, &c.compared)
	}
	return lists
}

// roadsTold are the figures of the road that the document shows.
func roadsTold(e *report.Evaluation) (lists [2][]told) {
	rough, shown, surface := roadShown(e.Document, unlabelled)
	for i := range e.Sides {
		var side RoadSide
		r := rideOf(e, i, &side, rough, unlabelled)
		if r == nil {
			continue
		}
		if _, err := r.rides(shown.Speed, surface); err == nil {
			lists[i] = r.told
		}
	}
	return lists
}

// steeringsTold are the figures of steering and of the bike in the hand.
func steeringsTold(e *report.Evaluation) (lists [2][]told) {
	for i, weighed := range e.Sides {
		if weighed != nil {
			lists[i], _ = steerSide(new(SteeringSide), weighed.Assembly, &usualHand, unlabelled)
		}
	}
	return lists
}
