package packing_test

import (
	"fmt"
	"math"
	"math/rand/v2"

	"steelyard/internal/mass"
	"steelyard/internal/packing"
)

// places are where a bike of our own invention carries bags, m, with volumes
// in l and permitted loads in kg: common practice, no source.
var places = []packing.Bag{
	{Name: "rear left", Place: mass.Vec{X: -0.04, Y: 0.18, Z: 0.56}, Permitted: 9, Volume: 20},
	{Name: "rear right", Place: mass.Vec{X: -0.04, Y: -0.18, Z: 0.56}, Permitted: 9, Volume: 20},
	{Name: "front left", Place: mass.Vec{X: 1.02, Y: 0.15, Z: 0.42}, Permitted: 5, Volume: 12},
	{Name: "front right", Place: mass.Vec{X: 1.02, Y: -0.15, Z: 0.42}, Permitted: 5, Volume: 12},
	{Name: "rack deck", Place: mass.Vec{X: -0.02, Y: 0, Z: 0.84}, Permitted: 8, Volume: 24},
	{Name: "handlebar", Place: mass.Vec{X: 0.93, Y: 0, Z: 0.95}, Permitted: 3, Volume: 8},
	{Name: "frame", Place: mass.Vec{X: 0.45, Y: 0, Z: 0.62}, Permitted: 4, Volume: 5},
	{Name: "top tube", Place: mass.Vec{X: 0.62, Y: 0, Z: 0.90}, Permitted: 1, Volume: 1.2},
}

// tour makes a task of n goods and the first b places. The bags are scaled so
// that the goods fill the given part of their volume, and of their permitted
// load the given part; 0 leaves that unlimited.
func tour(seed uint64, n, b int, fill, burden float64) *packing.Task {
	rng := rand.New(rand.NewPCG(seed, 99))
	t := &packing.Task{
		FrontContact: 1.08,
		Aim: packing.Aim{
			FrontShare: 0.35 + 0.1*rng.Float64(), Front: 100, Low: 100, Balance: 100, Middle: 100,
			Centre: mass.Vec{X: 0.5, Z: 0.6},
		},
	}
	bike := mass.Item{Mass: 16, Place: mass.Vec{X: 0.48, Y: -0.005, Z: 0.48}}
	t.Rest = bike.Moments()
	var weight, volume float64
	for i := range n {
		g := packing.Good{
			Name:     fmt.Sprint("good ", i+1),
			Mass:     math.Round(math.Exp(math.Log(0.06)+rng.Float64()*math.Log(30))*100) / 100,
			Quantity: 1,
		}
		if rng.IntN(6) == 0 {
			g.Quantity = 2 + rng.IntN(3)
		}
		g.Volume = max(0.1, math.Round(g.Mass/(0.15+rng.Float64())*10)/10)
		weight += float64(g.Quantity) * g.Mass
		volume += float64(g.Quantity) * g.Volume
		t.Goods = append(t.Goods, g)
	}
	var allLoad, allVolume float64
	for _, p := range places[:b] {
		allLoad += p.Permitted
		allVolume += p.Volume
	}
	for _, p := range places[:b] {
		if fill > 0 {
			p.Volume = math.Ceil(p.Volume*volume/allVolume/fill*10) / 10
		} else {
			p.Volume = 0
		}
		if burden > 0 {
			p.Permitted = math.Ceil(p.Permitted*weight/allLoad/burden*10) / 10
		} else {
			p.Permitted = 0
		}
		t.Bags = append(t.Bags, p)
	}
	t.Tolerance = t.Fine()
	return t
}

// ruled gives a tour the rules that people pack by: a packing to begin from, goods
// of several pieces together but for each second one, three goods that are used
// together, a liquid that stays, one thing that must be in one of three bags at
// hand, a bottle for liquids only, and inertia about the steering axis.
func ruled(t *packing.Task) *packing.Task {
	last := len(t.Bags) - 1
	for i := range t.Goods {
		t.Goods[i].Together = i%2 == 0
		if i%10 == 3 {
			t.Goods[i].Group = 1
		}
	}
	for j := range t.Bags {
		if x := t.Bags[j].Place.X; x > 0.9 {
			t.Bags[j].Steered = (x - 0.9) * (x - 0.9)
		}
		if j < last-2 {
			t.Forbidden = append(t.Forbidden, packing.Pair{Good: 5, Bag: j})
		}
	}
	t.Aim.Steered = 200
	room, bears := make([]float64, len(t.Bags)), make([]float64, len(t.Bags))
	for j, b := range t.Bags {
		room[j], bears[j] = b.Volume, b.Permitted
	}
	t.Start = make(packing.Packing, len(t.Goods))
	for i, g := range t.Goods {
		t.Start[i] = make([]int, len(t.Bags))
		best := 0
		for j := range room {
			if room[j] > room[best] {
				best = j
			}
		}
		n := float64(g.Quantity)
		room[best] -= n * g.Volume
		bears[best] -= n * g.Mass
		t.Start[i][best] = g.Quantity
	}
	for i := range t.Goods {
		if i != 7 {
			t.Forbidden = append(t.Forbidden, packing.Pair{Good: i, Bag: last})
		}
	}
	g := &t.Goods[7]
	for j, n := range t.Start[7] {
		if n > 0 {
			g.Pinned, g.In = true, j
		}
	}
	return t
}
