package conversion

import (
	"slices"

	"steelyard/internal/document"
	"steelyard/internal/order"
	"steelyard/internal/parts"
	"steelyard/internal/words"
)

// Offer is a set that a build can be changed to.
type Offer struct {
	Set  *parts.Set
	Mass float64 // g, of all its parts, as the catalogue knows them
	Fits bool    // the build has what the set needs, and wheels of its size
	On   bool    // the build has it already
}

// Offers are all sets for a build of the document, area by area and in each those
// first that fit.
func Offers(d *document.Document, b *document.Build, w *words.Words) []Offer {
	has := parts.Meets(b)
	list := make([]Offer, 0, len(parts.Sets()))
	for i := range parts.Sets() {
		set := &parts.Sets()[i]
		o := Offer{Set: set, Fits: set.BeadSeat == 0 || set.BeadSeat == wheelOf(b, set.Area).BeadSeat}
		for _, n := range set.Needs {
			o.Fits = o.Fits && has[n]
		}
		for _, l := range linesOf(b, set, has) {
			o.Mass += float64(l.entry.Quantity) * l.entry.Mass
		}
		plan, err := New(d, b.ID, set, w)
		o.On = err == nil && len(plan.Comes)+len(plan.Goes) == 0
		list = append(list, o)
	}
	order.Stable(list, func(a, b Offer) int {
		if a.Set.Area != b.Set.Area || a.Fits == b.Fits {
			return slices.Index(parts.Areas, a.Set.Area) - slices.Index(parts.Areas, b.Set.Area)
		}
		if a.Fits {
			return -1
		}
		return 1
	})
	return list
}

// wheelOf is the wheel that a change of an area is about: the rear one but for the
// front wheel.
func wheelOf(b *document.Build, area parts.Area) *document.Wheel {
	if area == parts.FrontWheel {
		return &b.Wheels.Front
	}
	return &b.Wheels.Rear
}

// line is a line of a set with the entry that it stands for on a build.
type line struct {
	part  *parts.SetPart
	entry *parts.Entry
}

// linesOf are the lines of a set that come to a build which has what is said, with
// the entries for its wheel.
func linesOf(b *document.Build, set *parts.Set, has map[parts.Need]bool) []line {
	wheel := wheelOf(b, set.Area)
	bead := wheel.BeadSeat
	if set.BeadSeat > 0 {
		bead = set.BeadSeat
	}
	var list []line
	for i := range set.Parts {
		p := &set.Parts[i]
		if p.If != "" && !has[p.If] {
			continue
		}
		if e := p.EntryFor(bead, wheel.Tyre); e != nil {
			list = append(list, line{p, e})
		}
	}
	return list
}
