package document

import (
	"slices"
	"strconv"
)

// Sort is a sort of thing that has ids of its own in a document.
type Sort string

// The sorts.
const (
	SortPart    Sort = "part"
	SortBuild   Sort = "build"
	SortRider   Sort = "rider"
	SortLoad    Sort = "load"
	SortBag     Sort = "bag"
	SortGood    Sort = "good"
	SortWeighIn Sort = "weigh_in"
	SortScale   Sort = "scale"
	SortDay     Sort = "day"
)

// NewIDs returns n short ids for entities of a sort, the same ones for the same
// document; nil for an unknown sort. Ids of parts, bags and goods are new in the
// whole document, not only in their build or load, so that the same id in two of
// them always means a common ancestor: Match relies on it.
func (d *Document) NewIDs(sort Sort, n int) []string {
	prefix, taken := "", map[string]bool(nil)
	switch sort {
	case SortPart:
		prefix, taken = "p", d.partIDs()
	case SortBuild:
		prefix, taken = "b", d.buildIDs()
	case SortRider:
		prefix, taken = "r", d.riderIDs()
	case SortLoad:
		prefix, taken = "l", d.loadIDs()
	case SortBag:
		prefix, taken = "b", d.bagIDs()
	case SortGood:
		prefix, taken = "g", d.goodIDs()
	case SortWeighIn:
		prefix, taken = "w", d.weighInIDs()
	case SortScale:
		prefix, taken = "s", d.scaleIDs()
	case SortDay:
		prefix, taken = "d", d.dayIDs()
	default:
		return nil
	}
	ids := make([]string, 0, n)
	for i := 1; len(ids) < n; i++ {
		if id := prefix + strconv.Itoa(i); !taken[id] {
			ids = append(ids, id)
		}
	}
	return ids
}

// newID returns the first of prefix1, prefix2, ... that is not taken.
func newID(prefix string, taken map[string]bool) string {
	for n := 1; ; n++ {
		if id := prefix + strconv.Itoa(n); !taken[id] {
			return id
		}
	}
}

// FreshID returns an id with that prefix and marks it as taken. It starts at the
// number of taken ids, so that naming many in a row stays linear.
func FreshID(prefix string, taken map[string]bool) string {
	for n := len(taken) + 1; ; n++ {
		if id := prefix + strconv.Itoa(n); !taken[id] {
			taken[id] = true
			return id
		}
	}
}

// partIDs returns the ids of the parts of all builds, and so on.
func (d *Document) partIDs() map[string]bool {
	n := 0
	for i := range d.Builds {
		n += len(d.Builds[i].Parts)
	}
	ids := make(map[string]bool, n)
	for i := range d.Builds {
		for j := range d.Builds[i].Parts {
			ids[d.Builds[i].Parts[j].ID] = true
		}
	}
	for i := range d.Aside {
		ids[d.Aside[i].Part.ID] = true
	}
	return ids
}

func (d *Document) bagIDs() map[string]bool {
	ids := make(map[string]bool)
	for i := range d.Loads {
		addIDs(ids, d.Loads[i].Bags, func(b *Bag) string { return b.ID })
	}
	return ids
}

func (d *Document) goodIDs() map[string]bool {
	ids := make(map[string]bool)
	for i := range d.Loads {
		addIDs(ids, d.Loads[i].Goods, func(g *Good) string { return g.ID })
	}
	return ids
}

func (d *Document) buildIDs() map[string]bool {
	return addIDs(nil, d.Builds, func(b *Build) string { return b.ID })
}

func (d *Document) riderIDs() map[string]bool {
	return addIDs(nil, d.Riders, func(r *Rider) string { return r.ID })
}

func (d *Document) loadIDs() map[string]bool {
	return addIDs(nil, d.Loads, func(l *Load) string { return l.ID })
}

func (d *Document) weighInIDs() map[string]bool {
	return addIDs(nil, d.WeighIns, func(w *WeighIn) string { return w.ID })
}

func (d *Document) dayIDs() map[string]bool {
	return addIDs(nil, d.Days, func(y *Day) string { return y.ID })
}

func (d *Document) scaleIDs() map[string]bool {
	ids := make(map[string]bool)
	for i := range d.WeighIns {
		addIDs(ids, d.WeighIns[i].Scales, func(s *Scale) string { return s.ID })
	}
	return ids
}

// addIDs adds the ids of a list to a set, a new one if there is none. Entities
// without an id add none.
func addIDs[T any](ids map[string]bool, list []T, id func(*T) string) map[string]bool {
	if ids == nil {
		ids = make(map[string]bool, len(list))
	}
	for i := range list {
		if id := id(&list[i]); id != "" {
			ids[id] = true
		}
	}
	return ids
}

// find returns the element with that id, nil if there is none.
func find[T any](list []T, id string, of func(*T) string) *T {
	for i := range list {
		if of(&list[i]) == id {
			return &list[i]
		}
	}
	return nil
}

// Rider returns the rider with that id, nil if there is none. The pointer is
// into the document and holds until a rider is added.
func (d *Document) Rider(id string) *Rider {
	return find(d.Riders, id, func(r *Rider) string { return r.ID })
}

// Load returns the load with that id, nil if there is none, likewise.
func (d *Document) Load(id string) *Load {
	return find(d.Loads, id, func(l *Load) string { return l.ID })
}

// WeighIn returns the weigh-in with that id, nil if there is none, likewise.
func (d *Document) WeighIn(id string) *WeighIn {
	return find(d.WeighIns, id, func(w *WeighIn) string { return w.ID })
}

// Bag returns the bag with that id, nil if there is none. The pointer is into
// the load and holds until a bag is added.
func (l *Load) Bag(id string) *Bag {
	return find(l.Bags, id, func(b *Bag) string { return b.ID })
}

// Good returns the good with that id, nil if there is none, likewise.
func (l *Load) Good(id string) *Good {
	return find(l.Goods, id, func(g *Good) string { return g.ID })
}

// Build returns the build with that id, nil if there is none. The pointer is
// into the document and holds until a build is added.
func (d *Document) Build(id string) *Build {
	for i := range d.Builds {
		if d.Builds[i].ID == id {
			return &d.Builds[i]
		}
	}
	return nil
}

// Part returns the part with that id, nil if there is none. The pointer is into
// the build and holds until a part is added.
func (b *Build) Part(id string) *Part {
	for i := range b.Parts {
		if b.Parts[i].ID == id {
			return &b.Parts[i]
		}
	}
	return nil
}

// CopyBuild adds a copy of a build to the end of the document, under a new id
// and the given name, and returns it. The parts keep their ids: that is how the
// difference of the two knows which of them is which. It returns nil when there
// is no such build.
func (d *Document) CopyBuild(id, name string) *Build {
	from := d.Build(id)
	if from == nil {
		return nil
	}
	c := *from
	c.ID = newID("b", d.buildIDs())
	c.Name = name
	c.Parts = slices.Clone(from.Parts)
	c.Ratings = slices.Clone(from.Ratings)
	c.Setup = from.Setup.Clone()
	c.RollOut = from.RollOut.Clone()
	if l := from.Losses; l != nil {
		c.Losses = &DriveLosses{l.Efficiency.Clone(), l.Power, slices.Clone(l.Stages)}
	}
	if l := from.DriveLimits; l != nil {
		limits := *l
		c.DriveLimits = &limits
	}
	for i := range c.Parts {
		if at := c.Parts[i].At; at != nil {
			place := *at
			c.Parts[i].At = &place
		}
		c.Parts[i].Gearing = c.Parts[i].Gearing.Clone()
	}
	d.Builds = append(d.Builds, c)
	return &d.Builds[len(d.Builds)-1]
}

// CopyLoad adds a copy of a load to the end of the document, under a new id and
// the given name, and returns it. Bags and goods keep their ids, as parts do
// when a build is copied. It returns nil when there is no such load.
func (d *Document) CopyLoad(id, name string) *Load {
	from := d.Load(id)
	if from == nil {
		return nil
	}
	c := *from
	c.ID = newID("l", d.loadIDs())
	c.Name = name
	c.Bags = slices.Clone(from.Bags)
	c.Goods = slices.Clone(from.Goods)
	d.Loads = append(d.Loads, c)
	return &d.Loads[len(d.Loads)-1]
}
