package rooms

import (
	"steelyard/internal/assembly"
	"steelyard/internal/document"
	"steelyard/internal/mass"
	"steelyard/internal/report"
	"steelyard/internal/steer"
)

// Placements is what it does to the steering of the sides to hang their bags
// elsewhere.
type Placements struct {
	Sides []PlacementSide `json:"sides"`
}

// PlacementSide is one side with its bags, what weighs most on the steering first.
type PlacementSide struct {
	Build string      `json:"build"`
	Load  string      `json:"load"`
	Name  string      `json:"name"`
	Bags  []BagPlaces `json:"bags"`
}

// BagPlaces is a bag, with what is in it, at each place where bags are hung.
type BagPlaces struct {
	Bag    string     `json:"bag"` // its id
	Name   string     `json:"name"`
	Mass   float64    `json:"mass_g"`
	Share  float64    `json:"share"` // of the inertia about the steering axis that it makes now, 0 to 1
	Places []BagPlace `json:"places"`
}

// BagPlace is a place with its figures, and how far they are from those of where
// the bag hangs now.
type BagPlace struct {
	Key     string           `json:"key"` // bar, fork, front-rack, rear-rack or frame
	Label   string           `json:"label"`
	Station string           `json:"station"` // where a bag of the document would be
	Carrier document.Carrier `json:"carrier"`
	Here    bool             `json:"here"` // it hangs there now
	Figures []Change         `json:"figures"`
}

// places are where bags are hung.
var places = []struct {
	key, station string
	carrier      document.Carrier
	steered      bool
}{
	{"bar", "handlebar-bag", document.ForkUpper, true},
	{"fork", "fork-legs", document.ForkLower, true},
	{"front-rack", "front-rack-deck", document.ForkLower, true},
	{"rear-rack", "rear-rack-deck", document.MainFrame, false},
	{"frame", "frame-bag", document.MainFrame, false},
}

// PlacementsOf tells it of the bags that are on the bike in the state shown.
func PlacementsOf(e *report.Evaluation) *Placements {
	out := &Placements{Sides: []PlacementSide{}}
	label := func(key string) string { return e.Words().Label("steering." + key) }
	for i, weighed := range e.Sides {
		s := &e.Report.Sides[i]
		side := PlacementSide{Build: s.Build, Load: s.Load, Name: e.SideName(i), Bags: []BagPlaces{}}
		if weighed != nil {
			side.Bags = bagsOf(weighed.Assembly, label)
		}
		out.Sides = append(out.Sides, side)
	}
	return out
}

func bagsOf(a *assembly.Assembly, label func(string) string) []BagPlaces {
	list := []BagPlaces{}
	front := report.Share(a, assembly.ForkUpper, assembly.ForkLower, assembly.FrontWheel)
	m, ok := steer.New(bicycleOf(a, a.Items, front))
	if !ok {
		return list
	}
	now := steeredFigures(m, a, a.Items)
	whole := m.SteeringInertia().Value
	for _, b := range a.Bags() {
		in := itemsOfBag(a, b.ID)
		var moments mass.Moments
		for _, i := range in {
			moments = moments.Add(a.Items[i].Moments())
		}
		if moments.M <= 0 {
			continue
		}
		one := BagPlaces{Bag: b.Bag.ID, Name: b.Bag.Name, Mass: report.Decimal(1e3*moments.M, 0), Places: []BagPlace{}}
		if without, ok := steer.New(bicycleOf(a, a.Items, less(front, in))); ok && whole > 0 {
			one.Share = report.Decimal((whole-without.SteeringInertia().Value)/whole, 3)
		}
		for _, p := range places {
			points := a.Bike.Stations[p.station].Points
			if len(points) == 0 {
				continue
			}
			items, share := moved(a.Items, front, in, moments.Centre(), points, p.steered)
			there, ok := steer.New(bicycleOf(a, items, share))
			if !ok {
				continue
			}
			place := BagPlace{
				Key: p.key, Label: label("place." + p.key), Station: p.station, Carrier: p.carrier,
				Here: b.Bag.Station == p.station, Figures: []Change{},
			}
			for k, f := range steeredFigures(there, a, items) {
				c := differ(&now[k], &f)
				c.Label = label(c.Key)
				place.Figures = append(place.Figures, c)
			}
			one.Places = append(one.Places, place)
		}
		list = append(list, one)
		for n := len(list) - 1; n > 0 && list[n-1].Share < list[n].Share; n-- {
			list[n-1], list[n] = list[n], list[n-1]
		}
	}
	return list
}

// bicycleOf is the bicycle of a side, of some items.
func bicycleOf(a *assembly.Assembly, items []mass.Item, front mass.Share) *steer.Bicycle {
	wheel := func(c assembly.Carrier) mass.Share {
		s := report.Share(a, c)
		return append(s, make(mass.Share, len(items)-len(s))...)
	}
	return &steer.Bicycle{
		Wheelbase: a.Bike.Wheelbase, Trail: a.Bike.Trail, HeadAngle: a.Bike.HeadAngle,
		RearRadius: a.Bike.RearRadius, FrontRadius: a.Bike.FrontRadius, Items: items,
		Front: front, RearWheel: wheel(assembly.RearWheel), FrontWheel: wheel(assembly.FrontWheel),
	}
}

// itemsOfBag are the items of a bag and of what is in it, by index.
func itemsOfBag(a *assembly.Assembly, id string) (list []int) {
	c := a.Cargo
	for k, bag := range c.Bag {
		l := &a.Lines[a.Own+k]
		if bag < 0 || !l.OK || assembly.BagPrefix+c.Load.Bags[bag].ID != id {
			continue
		}
		for i := l.First; i < l.End; i++ {
			list = append(list, i)
		}
	}
	return list
}

// less is a share without some items.
func less(s mass.Share, items []int) mass.Share {
	t := append(mass.Share(nil), s...)
	for _, i := range items {
		t[i] = 0
	}
	return t
}

// moved hangs some items elsewhere, as they lie to each other: at one point, or
// half at each of two.
func moved(all []mass.Item, front mass.Share, some []int, centre mass.Vec, points []mass.Vec, steered bool) ([]mass.Item, mass.Share) {
	items := append([]mass.Item(nil), all...)
	share := append(mass.Share(nil), front...)
	turns := 0.0
	if steered {
		turns = 1
	}
	n := float64(len(points))
	for _, i := range some {
		it := all[i]
		it.Mass /= n
		it.MassU /= n
		for k, at := range points {
			there := it
			there.Place = it.Place.Add(at.Sub(centre))
			if k == 0 {
				items[i], share[i] = there, turns
			} else {
				items, share = append(items, there), append(share, turns)
			}
		}
	}
	return items, share
}

// steeredFigures are those by which places are judged.
func steeredFigures(m *steer.Model, a *assembly.Assembly, items []mass.Item) []told {
	arm := gripArm(a)
	list := []told{
		{key: "steering_inertia", unit: "kg_m2", factor: 1, decimals: 4},
		{key: "held", unit: "n", factor: 1, decimals: 2},
		{key: "roll_inertia", unit: "kg_m2", factor: 1, decimals: 2},
	}
	held := mass.Figure{}
	if arm > 0 {
		held = mass.Times(-1/arm, m.HoldStanding(heldAngle))
	}
	for i, f := range []mass.Figure{m.SteeringInertia(), held, m.RollInertia()} {
		list[i].value = f.Value
		list[i].charge = func(b *mass.Budget, sign float64) { b.Charge(items, f, sign) }
	}
	return list
}
