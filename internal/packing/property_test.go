package packing_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"steelyard/internal/mass"
	"steelyard/internal/packing"
)

// best is the aim of the best packing, +Inf when there is none.
func best(t failer, task *packing.Task) float64 {
	t.Helper()
	_, st := solve(t, task)
	return st.Incumbent
}

func same(a, b float64) bool {
	return a == b || math.Abs(a-b) <= 1e-9*(1+math.Abs(a))
}

// A bag more leaves every packing of before possible.
func TestAnotherBagDoesNoHarm(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		task := tiny(t)
		before := best(t, task)
		for i := range task.Start {
			task.Start[i] = append(task.Start[i], 0)
		}
		task.Bags = append(slices.Clone(task.Bags), packing.Bag{
			Name: "one more", Volume: rapid.Float64Range(0.1, 9).Draw(t, "room"),
			Place: mass.Vec{X: rapid.Float64Range(0, 1).Draw(t, "x"), Z: rapid.Float64Range(0.3, 1).Draw(t, "z")},
		})
		if after := best(t, task); after > before+1e-9*(1+math.Abs(before)) {
			t.Fatalf("aim %v with a bag more, %v before", after, before)
		}
	})
}

func TestWeightsScaleTheAim(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		task := tiny(t)
		before := best(t, task)
		k := rapid.Float64Range(0.1, 9).Draw(t, "k")
		a := &task.Aim
		a.Front, a.Low, a.Balance, a.Middle, a.Steered = k*a.Front, k*a.Low, k*a.Balance, k*a.Middle, k*a.Steered
		if after := best(t, task); !same(k*before, after) {
			t.Fatalf("aim %v, want %v times %v", after, k, before)
		}
	})
}

func TestOrderDoesNotMatter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		task := tiny(t)
		before := best(t, task)
		rng := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 1))
		place := rng.Perm(len(task.Bags)) // old to new
		bags := make([]packing.Bag, len(task.Bags))
		for i, j := range place {
			bags[j] = task.Bags[i]
		}
		task.Bags = bags
		for i, row := range task.Start {
			moved := make([]int, len(row))
			for k, j := range place {
				moved[j] = row[k]
			}
			task.Start[i] = moved
		}
		for i := range task.Forbidden {
			task.Forbidden[i].Bag = place[task.Forbidden[i].Bag]
		}
		for i := range task.Goods {
			task.Goods[i].In = place[task.Goods[i].In]
		}
		forbidden := -1
		if len(task.Forbidden) > 0 {
			forbidden = task.Forbidden[0].Good
		}
		rng.Shuffle(len(task.Goods), func(i, j int) {
			task.Goods[i], task.Goods[j] = task.Goods[j], task.Goods[i]
			task.Start[i], task.Start[j] = task.Start[j], task.Start[i]
			switch forbidden {
			case i:
				forbidden = j
			case j:
				forbidden = i
			}
		})
		if forbidden >= 0 {
			task.Forbidden[0].Good = forbidden
		}
		if after := best(t, task); !same(before, after) {
			t.Fatalf("aim %v in another order, %v before", after, before)
		}
	})
}

// Many bags, of which the page permits up to a rack full.
func TestManyBags(t *testing.T) {
	task := tour(5, 12, len(places), 0, 0)
	for k := range 24 {
		b := task.Bags[k%len(places)]
		b.Place.X += 0.01 * float64(k+1)
		task.Bags = append(task.Bags, b)
	}
	s, err := packing.New(task)
	if err != nil {
		t.Fatal(err)
	}
	st := s.Run(2000)
	if broken := keeps(task, s.Packing()); broken != "" || !(st.Bound <= st.Incumbent) {
		t.Fatalf("%+v breaks %q", st, broken)
	}
}

// The same steps whatever the slices: a search can be stopped and resumed.
func TestSlicesDoNotMatter(t *testing.T) {
	run := func(slice int) (packing.Status, packing.Packing) {
		s, err := packing.New(tour(3, 14, 6, 0.8, 0.7))
		if err != nil {
			t.Fatal(err)
		}
		st := s.Status()
		for i := 0; i < 100_000 && !st.Done; i++ {
			st = s.Run(slice)
		}
		return st, s.Packing()
	}
	whole, p := run(1 << 20)
	parts, q := run(7)
	if !whole.Done || !same(whole.Incumbent, parts.Incumbent) || !slices.EqualFunc(p, q, slices.Equal) {
		t.Fatalf("%+v in one go, %+v in slices", whole, parts)
	}
}

// Whatever a task says: an answer, or an error, and no panic.
func FuzzTask(f *testing.F) {
	f.Add(uint64(1), 5, 3, 1.0, 2.0, 0.5, 100.0, 0)
	f.Add(uint64(2), 0, 0, 0.0, 0.0, 0.0, 0.0, -1)
	f.Add(uint64(3), 9, 8, math.NaN(), math.Inf(1), -1.0, 1e300, 7)
	f.Add(uint64(4), 30, 12, 1e-300, 1e300, 2.0, -5.0, 40)
	f.Fuzz(func(t *testing.T, seed uint64, goods, bags int, m, v, share, weight float64, in int) {
		if goods < 0 || goods > 40 || bags < 0 || bags > 40 {
			return
		}
		rng := rand.New(rand.NewPCG(seed, 2))
		odd := []float64{0, m, v, share, weight, 1, -1, 0.3}
		pick := func() float64 {
			if rng.IntN(3) == 0 {
				return odd[rng.IntN(len(odd))]
			}
			return rng.Float64() * 3
		}
		task := &packing.Task{RearContact: pick(), FrontContact: pick(), Tolerance: pick()}
		task.Aim = packing.Aim{FrontShare: share, Front: weight, Low: pick(), Balance: pick(), Middle: pick(), Centre: mass.Vec{X: pick(), Z: pick()}}
		for range goods {
			task.Goods = append(task.Goods, packing.Good{Name: "good", Mass: pick(), Volume: pick(), Quantity: rng.IntN(5) - 1, Pinned: rng.IntN(5) == 0, In: in, Together: rng.IntN(2) == 0})
		}
		for range bags {
			task.Bags = append(task.Bags, packing.Bag{Name: "bag", Place: mass.Vec{X: pick(), Y: pick(), Z: pick()}, Permitted: 9 * pick(), Volume: 9 * pick()})
		}
		s, err := packing.New(task)
		if err != nil {
			return
		}
		if st := s.Run(200); math.IsNaN(st.Incumbent) || math.IsNaN(st.Bound) || st.Bound > st.Incumbent+1e-6*(1+math.Abs(st.Bound)) {
			t.Fatalf("%+v", st)
		}
		if p := s.Packing(); p != nil {
			for i := range p {
				n := 0
				for _, k := range p[i] {
					n += k
				}
				if n != task.Goods[i].Quantity {
					t.Fatalf("%d of %d pieces", n, task.Goods[i].Quantity)
				}
			}
		}
	})
}
