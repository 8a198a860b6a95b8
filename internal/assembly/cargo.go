package assembly

import (
	"slices"
	"strings"

	"steelyard/internal/document"
	"steelyard/internal/geometry"
	"steelyard/internal/mass"
	"steelyard/internal/rider"
	"steelyard/internal/spelling"
	"steelyard/internal/words"
)

// What is carried is weighed as further lines of the parts list. In a report
// they are named by these prefixes and their own ids, wherever a part is named
// by its id.
const (
	BagPrefix   = "bag:"
	GoodPrefix  = "good:"
	RiderPrefix = "rider:"
)

// riderGroup is the group that a rider's mass is counted under, besides
// document.Groups.
const riderGroup = "rider"

// Groups are all groups that mass is counted under.
var Groups = append(slices.Clone(document.Groups), riderGroup)

// The middle of a bag, and of what is in it, may lie this far from where it is
// said to be: estimates of ours. How it is filled moves it by up to a sixth of
// the bag's size along each axis, as when a box that is two thirds full is packed
// from one end; how it hangs moves it by a few mm. A bag of unknown size is taken
// to be 240 mm wide.
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
		u[i] = mass.Rectangular((bagHang + bagFill*s) / millimetresPerMetre)
	}
	return mass.Vec{X: u[0], Y: u[1], Z: u[2]}
}

// Cargo is what a build carries, as lines of a parts list.
type Cargo struct {
	Load  *document.Load
	Omit  *Omissions
	Rider *document.Rider
	Body  *rider.Body // nil when nobody rides, or nobody can

	Lines  []document.Part
	supply []Supply // of each line
	Bag    []int    // the bag of each line, by index in load.Bags; -1 for the rider
	Good   []int    // the good of each line, by index in load.Goods; -1 for what is none
}

// Supply is what a line is used up as.
type Supply uint8

const (
	Lasting Supply = iota
	Water
	Food
	Fuel
	NumSupplies
)

var SupplyKeys = [NumSupplies]string{Water: "water", Food: "food", Fuel: "fuel"}

func supplyOf(key string) Supply {
	for s := Water; s < NumSupplies; s++ {
		if SupplyKeys[s] == key {
			return s
		}
	}
	return Lasting
}

// Carry turns a load into lines for a posed bike. What cannot be placed is left
// out, with a problem.
func Carry(d *document.Document, b *document.Build, bike *geometry.Bike, l *document.Load, omit *Omissions) (*Cargo, []document.Problem) {
	c := &Cargo{Load: l, Omit: omit}
	var problems []document.Problem
	n := len(l.Bags) + len(l.Goods) + 1
	c.Lines, c.supply = make([]document.Part, 0, n), make([]Supply, 0, n)
	c.Bag, c.Good = make([]int, 0, n), make([]int, 0, n)
	at := make(map[string]int, len(l.Bags)) // the line of each bag that is in use
	for i := range l.Bags {
		g := &l.Bags[i]
		if omit.Bag(l, g) {
			continue
		}
		if p := misplaced(b, bike, l, g); p != nil {
			problems = append(problems, *p)
			continue
		}
		at[g.ID] = len(c.Lines)
		c.add(document.Part{
			ID: BagPrefix + g.ID, Name: g.Name, Kind: "bag", Quantity: 1,
			Mass: g.Mass, HalfWidth: g.HalfWidth, Basis: g.Basis,
		}, g, Lasting, i, -1)
	}
	for i := range l.Goods {
		g := &l.Goods[i]
		line, ok := at[g.In]
		if g.In == "" || !ok || omit.Good(l, g) {
			continue
		}
		kind := "load"
		if g.Supply == SupplyKeys[Water] {
			kind = "water"
		}
		j := c.Bag[line]
		c.add(document.Part{
			ID: GoodPrefix + g.ID, Name: g.Name, Kind: kind, Quantity: g.Quantity,
			Mass: g.Mass, HalfWidth: g.HalfWidth, Basis: g.Basis,
		}, &l.Bags[j], supplyOf(g.Supply), j, i)
	}
	if r := d.Rider(l.Rider); l.Rider != "" && r != nil && !omit.riders[r.ID] {
		body, found := rider.Seat(bike, r)
		for _, p := range found {
			problems = append(problems, seatProblem(p, b, l, r))
		}
		if body != nil {
			c.Rider, c.Body = r, body
			c.Lines = append(c.Lines, document.Part{
				ID: RiderPrefix + r.ID, Name: r.Name, Kind: riderGroup, Quantity: 1,
				Mass: r.Mass, HalfWidth: rider.HalfWidth(r), Basis: document.Stated, Within: rider.PlaceWithin * 1000,
				Carrier: document.MainFrame, Shape: document.Shape{Form: document.FormPoint},
			})
			c.supply, c.Bag, c.Good = append(c.supply, Lasting), append(c.Bag, -1), append(c.Good, -1)
		}
	}
	return c, problems
}

// add adds a line that lies in a bag: spread over the bag's box.
func (c *Cargo) add(p document.Part, b *document.Bag, s Supply, bag, good int) {
	p.Station, p.Offset, p.Carrier = b.Station, b.Offset, b.Carrier
	p.Shape = document.Shape{Form: document.FormBox, Size: b.Size}
	c.Lines = append(c.Lines, p)
	c.supply, c.Bag, c.Good = append(c.supply, s), append(c.Bag, bag), append(c.Good, good)
}

// misplaced says that a bag has no place on the bike, or two.
func misplaced(b *document.Build, bike *geometry.Bike, l *document.Load, g *document.Bag) *document.Problem {
	var why words.Message
	switch n := len(bike.Stations[g.Station].Points); {
	case n == 1:
		return nil
	case n > 1:
		why = words.Tell("assembly.bag.two", "station", words.Quoted(words.ShortenName(g.Station)))
		if left := strings.TrimSuffix(g.Station, "s") + "-left"; slices.Contains(geometry.StationNames, left) {
			why = words.Tell("assembly.bag.side", "station", words.Quoted(words.ShortenName(g.Station)), "left", words.Quoted(left), "right", words.Quoted(strings.TrimSuffix(g.Station, "s")+"-right"))
		}
	default:
		why = words.Tell("assembly.bag.station", "station", words.Quoted(words.ShortenName(g.Station)), "meant", words.Quoted(spelling.Nearest(words.ShortenName(g.Station), geometry.StationNames)))
	}
	return &document.Problem{
		Severity: document.SeverityError, Build: b.ID, Load: l.ID, Bag: g.ID, Field: "station",
		Message: words.Tell("assembly.bag", "bag", words.ShortenName(g.Name), "load", words.ShortenName(l.Name),
			"build", words.ShortenName(b.Name), "why", why),
	}
}

// seatProblem says on which bike and with which load a rider does not sit well.
func seatProblem(p document.Problem, b *document.Build, l *document.Load, r *document.Rider) document.Problem {
	p.Build, p.Load, p.Rider = b.ID, l.ID, r.ID
	p.Message = words.Tell("assembly.seat", append([]any{"build", words.ShortenName(b.Name)}, p.Message.Pairs...)...)
	return p
}

// seat makes the items of the rider's line.
func (w *Assembly) seat(p *document.Part, l *Line, src *Sources) {
	l.Source, l.Spot = src.of(p, &line{})
	l.First = len(w.Items)
	w.Items = append(w.Items, w.Cargo.Body.Items(l.Source, l.Spot)...)
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
	l.Pieces = 1
	l.Group = uint8(len(Groups) - 1)
	l.WholeFirst, l.WholeEnd = l.First, l.End
	l.OK = true
	w.Count++
}
