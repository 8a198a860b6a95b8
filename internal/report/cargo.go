package report

import (
	"fmt"
	"slices"
	"strings"

	"steelyard/internal/document"
	"steelyard/internal/geometry"
	"steelyard/internal/mass"
	"steelyard/internal/rider"
	"steelyard/internal/words"
)

// What is carried is weighed as further lines of the parts list. In a report
// they are named by these prefixes and their own ids, wherever a part is named
// by its id.
const (
	bagPrefix   = "bag:"
	goodPrefix  = "good:"
	riderPrefix = "rider:"
)

// riderGroup is the group that a rider's mass is counted under, besides
// document.Groups.
const riderGroup = "rider"

// groups are all groups that mass is counted under.
var groups = append(slices.Clone(document.Groups), riderGroup)

// How far the middle of a bag, and of what is in it, may lie from where it is
// said to be: estimates of ours. How it is filled moves it by up to a sixth of
// the bag's size along each axis, as when a box that is two thirds full is
// packed from one end; how it hangs, by a few mm. A bag whose size is not known
// is taken for one of 240 mm.
const (
	bagFill    = 1. / 6
	bagHang    = 5   // mm
	bagUnsized = 240 // mm
)

// bagWithin returns the standard uncertainty of the place of a bag, m, from its
// size in mm. All that is in a bag is misplaced with it.
func bagWithin(size document.Vec3) mass.Vec {
	var u [3]float64
	for i, s := range size {
		if s <= 0 {
			s = bagUnsized
		}
		u[i] = mass.Rectangular((bagHang + bagFill*s) / millimetre.perSI)
	}
	return mass.Vec{X: u[0], Y: u[1], Z: u[2]}
}

// cargo is what a build carries, as lines of a parts list.
type cargo struct {
	load  *document.Load
	omit  *omissions
	rider *document.Rider
	body  *rider.Body // nil when nobody rides, or nobody can

	lines  []document.Part
	supply []supply // of each line
	bag    []int    // the bag of each line, by index in load.Bags; -1 for the rider
	good   []int    // the good of each line, by index in load.Goods; -1 for what is none
}

// supply is what a line is used up as.
type supply uint8

const (
	lasting supply = iota
	water
	food
	fuel
	numSupplies
)

var supplyKeys = [numSupplies]string{water: "water", food: "food", fuel: "fuel"}

func supplyOf(key string) supply {
	for s := water; s < numSupplies; s++ {
		if supplyKeys[s] == key {
			return s
		}
	}
	return lasting
}

// level is a document.State as a number.
type level uint8

const (
	bare level = iota
	ready
	loaded
	ridden
	numLevels
)

// levelOf returns the level of a state; what is none is ready.
func levelOf(s document.State) level {
	if i := slices.Index(document.States, s); i >= 0 {
		return level(i)
	}
	return ready
}

func (l level) state() document.State { return document.States[l] }

// carry makes lines of a load for a posed bike. What cannot be placed is left
// out and told.
func carry(d *document.Document, b *document.Build, bike *geometry.Bike, l *document.Load, omit *omissions) (*cargo, []document.Problem) {
	c := &cargo{load: l, omit: omit}
	var problems []document.Problem
	n := len(l.Bags) + len(l.Goods) + 1
	c.lines, c.supply = make([]document.Part, 0, n), make([]supply, 0, n)
	c.bag, c.good = make([]int, 0, n), make([]int, 0, n)
	at := make(map[string]int, len(l.Bags)) // the line of each bag that is in use
	for i := range l.Bags {
		g := &l.Bags[i]
		if omit.bag(l, g) {
			continue
		}
		if p := misplaced(b, bike, l, g); p != nil {
			problems = append(problems, *p)
			continue
		}
		at[g.ID] = len(c.lines)
		c.add(document.Part{
			ID: bagPrefix + g.ID, Name: g.Name, Kind: "bag", Quantity: 1,
			Mass: g.Mass, HalfWidth: g.HalfWidth, Basis: g.Basis,
		}, g, lasting, i, -1)
	}
	for i := range l.Goods {
		g := &l.Goods[i]
		line, ok := at[g.In]
		if g.In == "" || !ok || omit.good(l, g) {
			continue
		}
		kind := "load"
		if g.Supply == supplyKeys[water] {
			kind = "water"
		}
		j := c.bag[line]
		c.add(document.Part{
			ID: goodPrefix + g.ID, Name: g.Name, Kind: kind, Quantity: g.Quantity,
			Mass: g.Mass, HalfWidth: g.HalfWidth, Basis: g.Basis,
		}, &l.Bags[j], supplyOf(g.Supply), j, i)
	}
	if r := d.Rider(l.Rider); l.Rider != "" && r != nil && !omit.riders[r.ID] {
		body, found := rider.Seat(bike, r)
		for _, p := range found {
			problems = append(problems, seatProblem(p, b, l, r))
		}
		if body != nil {
			c.rider, c.body = r, body
			c.lines = append(c.lines, document.Part{
				ID: riderPrefix + r.ID, Name: r.Name, Kind: riderGroup, Quantity: 1,
				Mass: r.Mass, HalfWidth: rider.HalfWidth(r), Basis: document.Stated, Within: rider.PlaceWithin * 1000,
				Carrier: document.MainFrame, Shape: document.Shape{Form: document.FormPoint},
			})
			c.supply, c.bag, c.good = append(c.supply, lasting), append(c.bag, -1), append(c.good, -1)
		}
	}
	return c, problems
}

// add adds a line that lies in a bag: spread over the bag's box.
func (c *cargo) add(p document.Part, b *document.Bag, s supply, bag, good int) {
	p.Station, p.Offset, p.Carrier = b.Station, b.Offset, b.Carrier
	p.Shape = document.Shape{Form: document.FormBox, Size: b.Size}
	c.lines = append(c.lines, p)
	c.supply, c.bag, c.good = append(c.supply, s), append(c.bag, bag), append(c.good, good)
}

// misplaced says that a bag is at no place of the bike, or at two.
func misplaced(b *document.Build, bike *geometry.Bike, l *document.Load, g *document.Bag) *document.Problem {
	var why string
	switch n := len(bike.Stations[g.Station].Points); {
	case n == 1:
		return nil
	case n > 1:
		why = fmt.Sprintf("the station %q is on both sides, and a bag hangs on one; make two bags of it", shorten(g.Station))
		if left := strings.TrimSuffix(g.Station, "s") + "-left"; slices.Contains(geometry.StationNames, left) {
			why = fmt.Sprintf("the station %q is on both sides, and a bag hangs on one; say %q or %q", shorten(g.Station), left, strings.TrimSuffix(g.Station, "s")+"-right")
		}
	default:
		why = fmt.Sprintf("there is no station %q on this bike; did you mean %q?", shorten(g.Station), nearest(shorten(g.Station), geometry.StationNames))
	}
	return &document.Problem{
		Severity: document.SeverityError, Build: b.ID, Load: l.ID, Bag: g.ID, Field: "station",
		Message: words.Plain(fmt.Sprintf("Bag “%s” of load “%s” on build “%s”: %s. The bag is left out, with what is in it.",
			shorten(g.Name), shorten(l.Name), shorten(b.Name), strings.TrimSuffix(why, "."))),
	}
}

// seatProblem says on which bike and with which load a rider does not sit well.
func seatProblem(p document.Problem, b *document.Build, l *document.Load, r *document.Rider) document.Problem {
	p.Build, p.Load, p.Rider = b.ID, l.ID, r.ID
	if head, rest, ok := strings.Cut(p.Message.String(), ": "); ok {
		p.Message = words.Plain(fmt.Sprintf("%s on build “%s”: %s", head, shorten(b.Name), rest))
	}
	return p
}

// seat makes the items of the rider's line.
func (w *Weighed) seat(p *document.Part, l *Line, src *sources) {
	l.source, l.spot = src.of(p, &line{})
	l.First = len(w.Items)
	w.Items = append(w.Items, w.cargo.body.Items(l.source, l.spot)...)
	l.End = len(w.Items)
	var at mass.Vec
	for _, it := range w.Items[l.First:] {
		l.Mass += it.Mass
		l.MassU += it.MassU
		at = at.Add(it.Place.Scale(it.Mass))
	}
	if l.Mass > 0 {
		l.Place = at.Scale(1 / l.Mass)
	}
	l.pieces = 1
	l.group = uint8(len(groups) - 1)
	l.wholeFirst, l.wholeEnd = l.First, l.End
	l.OK = true
	w.Count++
}

// bagSpot is what makes lines in bags misplaced together: bags at one place.
type bagSpot struct {
	station string
	offset  document.Vec3
}

// inBag returns the source of place of what lies in a bag.
func (s *sources) inBag(p *document.Part) int {
	key := bagSpot{p.Station, p.Offset}
	n, ok := s.bags[key]
	if !ok {
		if s.bags == nil {
			s.bags = make(map[bagSpot]int)
		}
		n = s.count
		s.bags[key] = n
		s.count++
	}
	return n
}

// take brings the bike into a state, with a share of its supplies left. What is
// not on it then has no items; of what is used up a share remains. All items, at
// full supplies, stay in whole.
func (w *Weighed) take(to level, left float64) {
	w.whole = w.Items
	w.level, w.left = to, left
	change := false
	for i := range w.Lines {
		l := &w.Lines[i]
		change = change || l.OK && (l.level > to || l.supply != lasting && left < 1)
	}
	if !change {
		return
	}
	w.Items = make([]mass.Item, 0, len(w.whole))
	from := make([]int32, len(w.whole)) // the line of each item
	ends := w.spans.end
	for i := range w.Lines {
		for j := w.Lines[i].First; j < w.Lines[i].End; j++ {
			from[j] = int32(i)
		}
	}
	first, end := -1, -1
	c := carrier(0)
	for j, i := range from {
		for j >= ends[c] {
			w.spans.end[c] = len(w.Items)
			c++
		}
		l := &w.Lines[i]
		if j == l.wholeFirst {
			first = len(w.Items)
		}
		if it := w.whole[j]; l.level <= to {
			if l.supply != lasting {
				it.Mass *= left
				it.MassU *= left
			}
			if l.supply == lasting || left > 0 {
				w.Items = append(w.Items, it)
			}
		}
		if end = len(w.Items); j == l.wholeEnd-1 {
			l.First, l.End = first, end
		}
	}
	for ; c < numCarriers; c++ {
		w.spans.end[c] = len(w.Items)
	}
	for i := range w.Lines {
		l := &w.Lines[i]
		if l.wholeFirst == l.wholeEnd || l.supply != lasting && left == 0 {
			l.First, l.End = 0, 0
		}
		switch {
		case !l.OK:
		case l.level > to:
			l.OK, l.Off = false, true
			l.First, l.End = 0, 0
			w.Count--
			w.off++
		case l.supply != lasting && left < 1:
			l.Mass *= left
			l.MassU *= left
			l.pieces *= left
		}
	}
}

// highest is the fullest state that there is of the bike.
func (w *Weighed) highest() level {
	switch {
	case w.cargo == nil:
		return ready
	case w.cargo.body == nil:
		return loaded
	}
	return ridden
}

// at returns the items of the bike in a state, with a share of its supplies
// left. They are not to be changed.
func (w *Weighed) at(to level, left float64) []mass.Item {
	if to == w.level && (left == w.left || !w.usesUp(to)) {
		return w.Items
	}
	items := make([]mass.Item, 0, len(w.whole))
	for i := range w.Lines {
		l := &w.Lines[i]
		if l.level > to || !l.OK && !l.Off || l.supply != lasting && left == 0 {
			continue
		}
		for _, it := range w.whole[l.wholeFirst:l.wholeEnd] {
			if l.supply != lasting {
				it.Mass *= left
				it.MassU *= left
			}
			items = append(items, it)
		}
	}
	return items
}

// usesUp reports whether anything on the bike in a state is used up.
func (w *Weighed) usesUp(to level) bool {
	return slices.ContainsFunc(w.Lines, func(l Line) bool {
		return l.supply != lasting && l.level <= to && l.wholeEnd > l.wholeFirst
	})
}
