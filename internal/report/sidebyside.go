package report

import (
	"slices"

	"steelyard/internal/assembly"
	"steelyard/internal/mass"
)

// SideBySide is any number of builds set against one of them, figure by figure.
type SideBySide struct {
	Base     string    `json:"base"` // the id of the build that the others are set against
	Builds   []Column  `json:"builds"`
	Chapters []Chapter `json:"chapters"`
}

// Column is a build of a table.
type Column struct {
	ID      string `json:"id"`
	Name    string `json:"name"`
	Load    string `json:"load"` // the id of what it carries, "" for nothing
	State   string `json:"state"`
	Weighed bool   `json:"weighed"` // false: it has no figures, see the report's problems
}

// Chapter is some rows of a table that belong together.
type Chapter struct {
	Key   string `json:"key"`
	Label string `json:"label"`
	Rows  []Row  `json:"rows"`
}

// Row is a figure of all builds. Best is only named where its difference from
// every other build is decided.
type Row struct {
	Key    string  `json:"key"`
	Label  string  `json:"label"`
	Unit   string  `json:"unit"`
	Wanted string  `json:"wanted,omitempty"` // Less or More, for a figure of which one is better
	Best   string  `json:"best,omitempty"`   // the id of the build
	Cells  []*Cell `json:"cells"`            // one for each build; null where it has no such figure
}

// Cell is a figure of a build, and its difference from the base.
type Cell struct {
	Value     float64 `json:"value"`
	Plus      float64 `json:"plus"`
	Delta     float64 `json:"delta"`
	DeltaPlus float64 `json:"delta_plus"`
	Verdict   string  `json:"verdict"` // on the difference; Same for the base itself
}

// chapters are the figures of a build by chapter. Of inertia only the radii of
// gyration are in one: moments go with the mass.
var chapters = []struct {
	key   string
	slots []slot
}{
	{"mass", []slot{total}},
	{"sprung", []slot{sprung, unsprungFront, unsprungRear, effectiveFront, effectiveRear, ratioFront, ratioRear, rotatingFront, rotatingRear, rimFront, rimRear}},
	{"place", []slot{centreX, centreZ, centreY}},
	{"loads", []slot{frontLoad, rearLoad, frontShare}},
	{"inertia", []slot{inertiaRoll, inertiaPitch, inertiaYaw, inertiaXZ, gyrationRoll, gyrationPitch, gyrationYaw}},
}

// wanted says of which figures less, or more, is better in itself. Where a bike
// should be heavy or long is for its rider to decide.
var wanted = map[slot]string{
	total: Less, unsprungFront: Less, unsprungRear: Less, effectiveFront: Less, effectiveRear: Less,
	rotatingFront: Less, rotatingRear: Less, rimFront: Less, rimRear: Less, ratioFront: More, ratioRear: More,
}

// SideBySide sets the builds that Show.Table names, all without it, against the
// one that Show.Base names, the first without it.
func (e *Evaluation) SideBySide() *SideBySide {
	if e.Document == nil {
		return e.SideBySideOf(nil)
	}
	return e.SideBySideOf(e.InTable())
}

// SideBySideOf sets builds of the document, by their indices, against the one of
// them that Show.Base names, the first without it.
func (e *Evaluation) SideBySideOf(builds []int) *SideBySide {
	out := &SideBySide{Builds: []Column{}, Chapters: []Chapter{}}
	if e.Document == nil {
		return out
	}
	show, w := &e.Document.Show, NewPhrasing(e.words, &e.Document.Show)
	var list []*Weighed
	base := 0
	for _, i := range builds {
		b := &e.Document.Builds[i]
		if b.ID == show.Base {
			base = len(list)
		}
		list = append(list, e.Builds[i])
		out.Builds = append(out.Builds, e.Column(i))
	}
	if len(list) == 0 {
		return out
	}
	out.Base = out.Builds[base].ID
	t := tabulation{list: list, base: base, pairs: make(map[[2]int]*comparison), columns: out.Builds}
	for _, ch := range chapters {
		chapter := Chapter{Key: ch.key, Label: w.Label("chapter." + ch.key)}
		if ch.key == "sprung" && !t.any(func(w *Weighed) bool { return w.Bike.FrontSprung || w.Bike.RearSprung }) {
			chapter.Label = w.Label("chapter.rotating")
		}
		for _, s := range ch.slots {
			k := &figureKeys[s]
			row, any := t.row(wanted[s], k.unit, func(w *Weighed) (float64, float64, bool) {
				return w.figures.of[s].Value, w.figures.plus[s], w.figures.has(s)
			}, func(c *comparison) float64 { return c.plus[s] })
			if any {
				row.Key, row.Label, row.Unit = k.key, w.Label("figure."+k.key), k.unit.name
				chapter.Rows = append(chapter.Rows, row)
			}
		}
		if ch.key == "mass" {
			chapter.Rows = append(chapter.Rows, t.groups(w)...)
		}
		if chapter.Rows != nil {
			out.Chapters = append(out.Chapters, chapter)
		}
	}
	return out
}

// tabulation is a table in the making.
type tabulation struct {
	list    []*Weighed
	columns []Column
	base    int
	pairs   map[[2]int]*comparison
	one     mass.Budget
	both    mass.Budget
	tally   assembly.Tally
}

// comparison is what is known of the differences of two builds, SI.
type comparison struct {
	plus   [numFigures]float64
	groups map[string]float64 // ±, kg
}

// pair compares two builds of the list, once. It works on clones, as comparing
// changes a build and other pairs must find it as it was.
func (t *tabulation) pair(i, j int) *comparison {
	if i > j {
		i, j = j, i // a ± is the same either way
	}
	if c := t.pairs[[2]int{i, j}]; c != nil {
		return c
	}
	a, b := t.list[i], t.list[j].clone()
	pairs := countedPairs(a, b, match(a, b))
	spots := 0
	for _, w := range []*Weighed{a, b} {
		for k := range w.Lines {
			spots = max(spots, w.Lines[k].Spot+1)
		}
	}
	shareSpots(a, b, pairs, spots)
	b.computeFigures()
	renamed := renamings(a, b, pairs)
	c := &comparison{plus: *pairUncertainties(a, b, renamed, &t.one, &t.both), groups: make(map[string]float64)}
	b.rename(renamed, true)
	for _, g := range groupChanges(a, b, &t.tally) {
		c.groups[g.Key] = g.Plus / gram.perSI
	}
	t.pairs[[2]int{i, j}] = c
	return c
}

// clone copies a build as far as comparing it with another changes it.
func (w *Weighed) clone() *Weighed {
	a := *w.Assembly
	a.Lines, a.Items, a.Whole = slices.Clone(a.Lines), slices.Clone(a.Items), slices.Clone(a.Whole)
	return &Weighed{Assembly: &a}
}

// row makes a row of a figure; any is false when no build has it. Figure returns
// it and its ±, SI, and plus the ± of its difference.
func (t *tabulation) row(wanted string, u *unit, figure func(*Weighed) (value, plus float64, ok bool), plus func(*comparison) float64) (row Row, any bool) {
	row = Row{Wanted: wanted, Cells: make([]*Cell, len(t.list))}
	values := make([]float64, len(t.list))
	for i, w := range t.list {
		if w == nil {
			continue
		}
		v, p, ok := figure(w)
		if !ok {
			continue
		}
		any = true
		values[i] = v
		row.Cells[i] = &Cell{Value: u.of(v), Plus: u.of(p), Verdict: Same}
	}
	row.Judge(t.columns, t.base, func(i int) float64 { return values[i] }, func(i, from int) (delta, within float64) {
		return u.of(values[i] - values[from]), u.of(plus(t.pair(from, i)))
	})
	return row, any
}

// Judge sets the cells of a row, which hold their values, against that of the base
// and names the best, where a figure is wanted small or large and its difference
// from every other is decided. Value is a figure as it is, not rounded; difference
// gives that of cell i minus that of another, and its ±, both as they are shown.
func (r *Row) Judge(columns []Column, base int, value func(i int) float64, difference func(i, from int) (delta, plus float64)) {
	best, others := -1, 0
	for i, c := range r.Cells {
		if c == nil {
			continue
		}
		if i != base && r.Cells[base] != nil {
			c.Delta, c.DeltaPlus = difference(i, base)
			c.Verdict = verdict(c.Delta, c.DeltaPlus)
		}
		if best < 0 || r.Wanted == Less && value(i) < value(best) || r.Wanted == More && value(i) > value(best) {
			best = i
		}
	}
	if r.Wanted == "" {
		return
	}
	for i, c := range r.Cells {
		if c == nil || i == best {
			continue
		}
		others++
		if verdict(difference(best, i)) != r.Wanted {
			return
		}
	}
	if others > 0 {
		r.Best = columns[best].ID
	}
}

// groups are the masses by group, in the order of the parts list.
func (t *tabulation) groups(w *Phrasing) []Row {
	var rows []Row
	for g, key := range assembly.Groups {
		row, any := t.row("", &gram, func(w *Weighed) (float64, float64, bool) {
			lines := w.groups()[g]
			if len(lines) == 0 {
				return 0, 0, t.inSome(g)
			}
			for _, i := range lines {
				t.tally.Add(&w.Lines[i], 1)
			}
			kg := t.tally.Mass
			return kg, t.tally.Plus(), true
		}, func(c *comparison) float64 { return c.groups[key] })
		if any {
			row.Key, row.Label, row.Unit = "group."+key, w.On("group", key, !t.any(func(w *Weighed) bool { return w.Bike.RearSprung })), gram.name
			rows = append(rows, row)
		}
	}
	return rows
}

// any reports whether something holds of one of the builds.
func (t *tabulation) any(holds func(*Weighed) bool) bool {
	return slices.ContainsFunc(t.list, func(w *Weighed) bool { return w != nil && holds(w) })
}

// inSome reports whether some build has parts of a group; a build that has none
// has 0 of it, which is a figure too.
func (t *tabulation) inSome(g int) bool {
	return slices.ContainsFunc(t.list, func(w *Weighed) bool { return w != nil && len(w.groups()[g]) > 0 })
}
