package stowage

import (
	"math"
	"slices"

	"steelyard/internal/assembly"
	"steelyard/internal/document"
	"steelyard/internal/geometry"
	"steelyard/internal/mass"
	"steelyard/internal/packing"
	"steelyard/internal/report"
)

// newTask states the load as a task. Its limits are those of the bags and of the
// racks that they hang on; tyres, rims and the whole bike carry the goods wherever
// these are, near enough, and are left to the ratings.
func (s *Stowage) newTask(p *assembly.Packing, aim *document.Packing, w *report.Weighed) *packing.Task {
	t := &packing.Task{
		Goods: make([]packing.Good, len(s.goods)),
		Bags:  make([]packing.Bag, len(s.bags)),
		Rest:  p.Empty,
		Aim: packing.Aim{
			FrontShare: aim.FrontShare, Front: aim.Front, Low: aim.Low, Balance: aim.Balance, Middle: aim.Middle,
			Steered: aim.Steered * steeredWorth, Centre: p.Bike.Centre(),
		},
		RearContact: w.Bike.RearContact.X, FrontContact: w.Bike.FrontContact.X,
		Start: make(packing.Packing, len(s.goods)), AtMost: aim.Moves,
	}
	if aim.Of == "all" {
		t.Rest = p.Rest
	}
	bag := make(map[string]int, len(s.bags)) // by id, in the task
	for j, i := range s.bags {
		b := &s.load.Bags[i]
		bag[b.ID] = j
		t.Bags[j] = packing.Bag{Name: b.Name, Place: p.Place[i], Permitted: b.Permitted / 1000, Volume: b.Volume}
		if b.Carrier == document.ForkUpper || b.Carrier == document.ForkLower || b.Carrier == document.FrontWheel {
			t.Bags[j].Steered = offAxis(w.Bike, p.Place[i])
			t.RestSteered += b.Mass / 1000 * t.Bags[j].Steered
		}
	}
	for k, i := range s.goods {
		g := &s.load.Goods[i]
		t.Goods[k] = packing.Good{Name: g.Name, Mass: g.Mass / 1000, Volume: g.Volume, Quantity: g.Quantity, Pinned: g.Pinned, Together: !g.Split}
		t.Start[k] = make([]int, len(s.bags))
		if j, ok := bag[g.In]; ok {
			t.Goods[k].In = j
			t.Start[k][j] = g.Quantity
		}
	}
	for _, r := range w.Build.Ratings {
		rack, ok := p.Racks[r.What]
		if !ok || !(r.Limit > 0) {
			continue
		}
		limit := packing.Limit{
			Name: s.words.Label("rating." + r.What), Share: make([]float64, len(s.bags)), Permitted: max(0, r.Limit/1000-rack.Fixed),
		}
		for j, i := range s.bags {
			if slices.Contains(rack.Bags, i) {
				limit.Share[j] = 1
			}
		}
		t.Limits = append(t.Limits, limit)
		s.racks = append(s.racks, r.What)
	}
	s.rules(t)
	s.keepFuelApart(t)
	t.Tolerance = t.Fine()
	return t
}

// steeredWorth makes the weight of steered mass count about as much as the others:
// at 100, 10 cm² of mean square distance from the steering axis cost 1.
const steeredWorth = 10

// offAxis is the squared distance of a point from the steering axis, m². The axis
// leans back by the head angle's complement and meets the ground a trail ahead of
// the front contact.
func offAxis(b *geometry.Bike, p mass.Vec) float64 {
	sin, cos := math.Sincos(b.HeadAngle)
	u := (p.X-b.FrontContact.X-b.Trail)*sin + p.Z*cos
	return u*u + p.Y*p.Y
}
