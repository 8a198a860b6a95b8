package report

import (
	"math"
	"slices"

	"steelyard/internal/assembly"
	"steelyard/internal/document"
	"steelyard/internal/mass"
	"steelyard/internal/parts"
	"steelyard/internal/units"
)

// Verdicts on a difference.
const (
	More      = "more"
	Less      = "less"
	Undecided = "undecided" // the difference is smaller than its own ±
	Same      = "same"      // no difference and no doubt about it
)

// What changed about a part.
const (
	Added   = "added"
	Removed = "removed"
	Changed = "changed" // its mass, its type, or how well its place is known; it may have moved besides
	Moved   = "moved"   // its place or its carrier, and nothing else
)

// verdict judges a difference as it is shown: rounding is part of the figure.
func verdict(delta, plus float64) string {
	switch {
	case delta == 0 && plus == 0:
		return Same
	case math.Abs(delta) < plus || delta == 0:
		return Undecided
	case delta > 0:
		return More
	}
	return Less
}

// pair is a line of A and the line of B that takes its place, by index; -1
// where one of them has none, or has one that is left out.
type pair struct{ a, b int }

// match says which lines of two builds go together.
func match(a, b *Weighed) []pair {
	pairs := parts.Match(a.Build, b.Build)
	list := make([]pair, len(pairs))
	in := indexer{parts: b.Build.Parts}
	for i, p := range pairs {
		c := pair{-1, -1}
		if p.A != nil { // the first pairs are those of A, in its order
			c.a = i
		}
		if p.B != nil {
			c.b = in.of(p.B)
		}
		list[i] = c
	}
	return list
}

// countedPairs are the lines that go together without those that are left out.
func countedPairs(a, b *Weighed, matched []pair) []pair {
	list := make([]pair, 0, len(matched))
	for _, c := range matched {
		if c.a >= 0 && !a.Lines[c.a].OK {
			c.a = -1
		}
		if c.b >= 0 && !b.Lines[c.b].OK {
			c.b = -1
		}
		if c.a >= 0 || c.b >= 0 {
			list = append(list, c)
		}
	}
	return list
}

// indexer finds the index of a part by its address. Mostly it is the one after
// the last.
type indexer struct {
	parts []document.Part
	next  int
	all   map[*document.Part]int
}

func (x *indexer) of(p *document.Part) int {
	i := x.next
	if i >= len(x.parts) || &x.parts[i] != p {
		if x.all == nil {
			x.all = make(map[*document.Part]int, len(x.parts))
			for j := range x.parts {
				x.all[&x.parts[j]] = j
			}
		}
		i = x.all[p]
	}
	x.next = i + 1
	return i
}

// shareSpots makes lines that were changed but stayed where they were misplaced
// together, so that this doubt cancels between the builds. A spot of b takes the
// number of a spot of a that b does not have, so that b by itself does not depend
// on a. Spots are numbered up to n.
func shareSpots(a, b *Weighed, list []pair, n int) {
	taken := make([]bool, n) // numbers in b
	for i := range b.Lines {
		if b.Lines[i].OK {
			taken[b.Lines[i].Spot] = true
		}
	}
	renamed := map[int]int{}
	stays := func(la, lb *assembly.Line) bool { return la.Spot == lb.Spot || taken[la.Spot] }
	for _, c := range list {
		if c.a < 0 || c.b < 0 {
			continue
		}
		la, lb := &a.Lines[c.a], &b.Lines[c.b]
		if stays(la, lb) || !assembly.SamePlace(&a.Build.Parts[c.a], &b.Build.Parts[c.b]) {
			continue
		}
		if _, done := renamed[lb.Spot]; !done {
			renamed[lb.Spot] = la.Spot
			taken[la.Spot] = true
		}
	}
	if len(renamed) == 0 {
		return
	}
	// A spot that a has too keeps its number: there it cancels already.
	for i := range a.Lines {
		if a.Lines[i].OK {
			delete(renamed, a.Lines[i].Spot)
		}
	}
	for i := range b.Lines {
		l := &b.Lines[i]
		spot, ok := renamed[l.Spot]
		if !ok || !l.OK {
			continue
		}
		l.Spot = spot
		for j := l.First; j < l.End; j++ {
			b.Items[j].PlaceSource = spot
		}
	}
}

// renaming is a line of b that keeps its id and all that is known of its mass,
// but has another name or entry than in a: it is still one piece, so its mass is
// off by as much in both builds. This holds for the difference only: what b is by
// itself, with the parts that share its type there, must not depend on a.
type renaming struct {
	line     int
	own, inA int // sources of mass
}

// renamings finds the renamed lines.
func renamings(a, b *Weighed, list []pair) []renaming {
	var out []renaming
	for _, c := range list {
		if c.a < 0 || c.b < 0 || a.Lines[c.a].Source == b.Lines[c.b].Source {
			continue
		}
		pa, pb := &a.Build.Parts[c.a], &b.Build.Parts[c.b]
		if pa.ID == pb.ID && pa.Kind == pb.Kind && pa.Mass == pb.Mass && pa.HalfWidth == pb.HalfWidth && pa.Basis == pb.Basis {
			out = append(out, renaming{c.b, b.Lines[c.b].Source, a.Lines[c.a].Source})
		}
	}
	return out
}

// rename gives the lines the source that they have in a, or their own again.
func (w *Weighed) rename(list []renaming, asInA bool) {
	if len(list) > 0 {
		w.Renamed++
	}
	for _, r := range list {
		l := &w.Lines[r.line]
		l.Source = r.own
		if asInA {
			l.Source = r.inA
		}
		for j := l.First; j < l.End; j++ {
			w.Items[j].MassSource = l.Source
		}
		for j := l.WholeFirst; j < l.WholeEnd; j++ {
			w.Whole[j].MassSource = l.Source
		}
	}
}

// difference sets build b against build a; both have been measured, and
// plus holds the expanded uncertainties of the differences.
func (t *workspace) difference(a, b *Weighed, list []pair, plus *[numFigures]float64) *Difference {
	d := &Difference{Comparison: Comparison{
		A: a.Build.ID, B: b.Build.ID, LoadA: loadID(a.Load), LoadB: loadID(b.Load), StateA: a.Level.State(), StateB: b.Level.State(),
		Figures: make([]Change, 0, numFigures),
	}}
	for s := range numFigures {
		if !a.figures.has(s) || !b.figures.has(s) || !units.Finite(plus[s]) {
			continue
		}
		k, va, vb := &figureKeys[s], a.figures.of[s].Value, b.figures.of[s].Value
		c := Change{
			Key: k.key, Unit: k.unit.name, A: k.unit.of(va), B: k.unit.of(vb),
			Delta: k.unit.of(vb - va), Plus: k.unit.of(plus[s]),
		}
		c.Verdict = verdict(c.Delta, c.Plus)
		d.Figures = append(d.Figures, c)
	}
	d.Groups = groupChanges(a, b, &t.tally)
	d.Parts = partChanges(a, b, list, &t.tally)
	d.Moved = movers(a, b, list)
	d.Weigh = t.adviseDifference(a, b)
	d.Summary = t.phrasing.difference(a, b, d)
	return d
}

// groupChanges tells what each group adds to the difference, largest first.
func groupChanges(a, b *Weighed, t *assembly.Tally) []GroupChange {
	out := make([]GroupChange, 0, len(assembly.Groups))
	sizes := make([]float64, 0, len(assembly.Groups)) // of the changes, g
	ofA, ofB := a.groups(), b.groups()
	for g := range assembly.Groups {
		if len(ofA[g])+len(ofB[g]) == 0 {
			continue
		}
		var kgA, kgB float64
		for _, i := range ofA[g] {
			t.Add(&a.Lines[i], -1)
			kgA += a.Lines[i].Mass
		}
		for _, i := range ofB[g] {
			t.Add(&b.Lines[i], 1)
			kgB += b.Lines[i].Mass
		}
		c := GroupChange{Key: assembly.Groups[g], A: gram.of(kgA), B: gram.of(kgB), Delta: gram.of(kgB - kgA)}
		c.Plus = gram.of(t.Plus())
		out, sizes = append(out, c), append(sizes, math.Abs(c.Delta))
	}
	return gather(out, order(sizes, nil))
}

// few is how many parts are mostly not the same in two builds.
const few = 32

// partChanges tells the parts that are not the same in both builds, the
// largest change of mass first, then the furthest moved mass.
func partChanges(a, b *Weighed, list []pair, t *assembly.Tally) []PartChange {
	out := make([]PartChange, 0, few)
	sizes, moments := make([]float64, 0, few), make([]float64, 0, few) // of the changes, g and kg m
	for _, c := range list {
		var la, lb *assembly.Line
		var pa, pb *document.Part
		if c.a >= 0 {
			la, pa = &a.Lines[c.a], &a.Build.Parts[c.a]
		}
		if c.b >= 0 {
			lb, pb = &b.Lines[c.b], &b.Build.Parts[c.b]
		}
		if la != nil && lb != nil && alike(la, lb) && pa.Within == pb.Within {
			continue
		}
		var r PartChange
		moment := 0.0
		if la != nil {
			r.A, r.Name, r.Group = pa.ID, pa.Name, assembly.Groups[la.Group]
			t.Add(la, -1)
		}
		if lb != nil {
			r.B, r.Name, r.Group = pb.ID, pb.Name, assembly.Groups[lb.Group]
			t.Add(lb, 1)
		}
		r.Delta = gram.of(t.Mass)
		r.Plus = gram.of(t.Plus())
		switch {
		case la == nil:
			r.What = Added
		case lb == nil:
			r.What = Removed
		default:
			by := lb.Place.Sub(la.Place)
			r.Moved = inMillimetres(by)
			r.Far = millimetre.of(by.Norm())
			moment = by.Norm() * min(la.Mass, lb.Mass)
			r.WithFrame = r.Moved != document.Vec3{} && assembly.SamePlace(pa, pb)
			if la.Carrier != lb.Carrier {
				r.CarrierA, r.CarrierB = string(pa.Carrier), string(pb.Carrier)
			}
			if pa.Within != pb.Within {
				r.WithinA, r.WithinB = round(pa.Within, 1e2), round(pb.Within, 1e2)
			}
			switch {
			case la.Source != lb.Source || la.Pieces != lb.Pieces:
				r.What = Changed
			case r.Moved != document.Vec3{} || r.CarrierA != r.CarrierB:
				r.What = Moved
			case r.WithinA != r.WithinB:
				r.What = Changed
			default:
				continue
			}
		}
		out, sizes, moments = append(out, r), append(sizes, math.Abs(r.Delta)), append(moments, moment)
	}
	return gather(out, order(sizes, moments))
}

// alike reports whether two lines are the same in mass, place and carrier.
func alike(l, o *assembly.Line) bool {
	return l.Source == o.Source && l.Pieces == o.Pieces && l.Carrier == o.Carrier && l.Place == o.Place
}

// movers lists by how much each change moved the centre of mass, furthest first.
// That is what mass.Shift makes of a part's moments in both builds; the shifts of
// all parts add up to the whole movement.
func movers(a, b *Weighed, list []pair) []Mover {
	sa, sb := mass.Sum(a.Items, nil), mass.Sum(b.Items, nil)
	if sa.M == 0 || sb.M == 0 {
		return []Mover{}
	}
	out, ways := make([]Mover, 0, few), make([]float64, 0, few) // and how far each moved it, m
	for _, c := range list {
		var ia, ib []mass.Item
		if c.a >= 0 {
			ia = a.itemsOf(c.a)
		}
		if c.b >= 0 {
			ib = b.itemsOf(c.b)
		}
		if sameMoments(ia, ib) {
			continue
		}
		by := mass.Shift(sa, sb, mass.Sum(ia, nil), mass.Sum(ib, nil))
		r := Mover{By: inMillimetres(by)}
		if (r.By == document.Vec3{}) {
			continue
		}
		if c.a >= 0 {
			r.A, r.Name = a.Build.Parts[c.a].ID, a.Build.Parts[c.a].Name
		}
		if c.b >= 0 {
			r.B, r.Name = b.Build.Parts[c.b].ID, b.Build.Parts[c.b].Name
		}
		out, ways = append(out, r), append(ways, by.Norm())
	}
	return gather(out, order(ways, nil))
}

// itemsOf returns the items of a line.
func (w *Weighed) itemsOf(line int) []mass.Item {
	l := &w.Lines[line]
	return w.Items[l.First:l.End]
}

// sameMoments reports whether two lines have the same masses at the same
// places.
func sameMoments(a, b []mass.Item) bool {
	return slices.EqualFunc(a, b, func(x, y mass.Item) bool { return x.Mass == y.Mass && x.Place == y.Place })
}
