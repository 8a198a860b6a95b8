package road_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"steelyard/internal/mass"
	"steelyard/internal/road"
)

// kept is [rough] with its springs as they were set without the bags.
func kept(hub float64) *road.Bike {
	b := rough(hub)
	set := loaded(touring(hub), false)
	set.Items[8].Mass, set.Items[9].Mass, set.Items[10].Mass = 2, 0.5, 0.3
	b.Set = &set
	return b
}

// draw moves everything that is in doubt by a random error, the same for what has
// one source.
func draw(b *road.Bike, random *rand.Rand, by float64) {
	type errors struct{ m, x, z float64 }
	seen := map[int]errors{}
	for _, l := range []*road.Loading{&b.Loading, b.Set} {
		if l == nil {
			continue
		}
		for i := range l.Items {
			it := &l.Items[i]
			e, ok := seen[it.MassSource]
			if !ok {
				e = errors{random.NormFloat64(), random.NormFloat64(), random.NormFloat64()}
				seen[it.MassSource] = e
			}
			it.Mass += by * e.m * it.MassU
			it.Place.X += by * e.x * it.PlaceU.X
			it.Place.Z += by * e.z * it.PlaceU.Z
		}
	}
	named := map[string]float64{}
	move := func(k *road.Known) {
		e, ok := named[k.Source]
		if !ok {
			e = random.NormFloat64()
			named[k.Source] = e
		}
		k.Value += by * e * k.U
	}
	for i := range b.Ends {
		e := &b.Ends[i]
		move(&e.Tyre.Rate)
		move(&e.Tyre.Lag)
		if e.Spring != nil {
			move(&e.Spring.Sag)
			move(&e.Spring.Ratio)
		}
	}
	if b.Standing != nil {
		move(&b.Standing.Frequency)
		move(&b.Standing.Ratio)
	}
}

// The law of propagation of uncertainty against draws (JCGM 101:2008), with all
// doubts small enough for what is in proportion: the draws scatter by 1/√(2n), and
// four times that is allowed.
func TestDoubtAgainstDraws(t *testing.T) {
	const n, by = 800, 0.1
	fresh := map[string]func() *road.Bike{
		"both sprung":     func() *road.Bike { return rough(2.1) },
		"kept springs":    func() *road.Bike { return kept(2.1) },
		"standing, rigid": func() *road.Bike { return rigid(stand(rough(2.1), 2.1), road.Front) },
	}
	r := road.Road{Roughness: known(road.C.Roughness(), 0, "")}
	for name, bike := range fresh {
		random := rand.New(rand.NewPCG(3, 5))
		m := model(t, bike())
		base := at(t, m, 5, r)
		modes := m.Modes()
		var sum, squares [road.NumKinds]float64
		sumF, squaresF := make([]float64, len(modes)), make([]float64, len(modes))
		for range n {
			b := bike()
			draw(b, random, by)
			drawn := model(t, b)
			for k, f := range at(t, drawn, 5, r).Figures {
				v := f.Value - base.Figures[k].Value
				sum[k] += v
				squares[k] += v * v
			}
			for i, o := range drawn.Modes() {
				v := o.Frequency.Value - modes[i].Frequency.Value
				sumF[i] += v
				squaresF[i] += v * v
			}
		}
		check := func(what string, f *road.Figure, sum, squares float64) {
			var budget mass.Budget
			f.Charge(&budget, 1)
			want := math.Sqrt(squares/n-sum*sum/n/n) / by
			near(t, name+" "+what, budget.Standard(), want, 4/math.Sqrt(2*n))
		}
		for k := range base.Figures {
			if f := &base.Figures[k]; f.There && road.Kind(k) < road.LiftFront {
				check(road.Kind(k).String(), f, sum[k], squares[k])
			}
		}
		for i := range modes {
			check("mode "+string(modes[i].Motion), &modes[i].Frequency, sumF[i], squaresF[i])
		}
	}
}

// What two bikes share cancels: a bike differs from itself by nothing ± nothing,
// and from one with another hub by far less than what either is in doubt.
func TestWhatIsCommonCancels(t *testing.T) {
	a, b := at(t, model(t, rough(2.1)), 5, gravel()), at(t, model(t, rough(2.1)), 5, gravel())
	light := at(t, model(t, rough(1.2)), 5, gravel())
	for k := range a.Figures {
		f := &a.Figures[k]
		if d := road.Compare(f, &b.Figures[k]); d.Value != 0 || d.Plus != 0 || d.Differs != road.No {
			t.Errorf("%v: a bike differs from itself by %g ± %g, %s", road.Kind(k), d.Value, d.Plus, d.Differs)
		}
		if f.Value == 0 {
			continue
		}
		if d := road.Compare(f, &light.Figures[k]); !(d.Plus < f.Plus()/5) {
			t.Errorf("%v: ± %g of a difference, ± %g of the figure", road.Kind(k), d.Plus, f.Plus())
		}
	}
	if d := road.Compare(&a.Figures[road.LoadRear], &light.Figures[road.LoadRear]); d.Differs != road.Yes || d.Value >= 0 {
		t.Errorf("a hub of half the mass makes %g ± %g", d.Value, d.Plus)
	}
	if d := road.Compare(&a.Figures[road.SaddleWk], &light.Figures[road.SaddleWk]); d.Felt != road.No {
		t.Errorf("a lighter hub at the saddle is felt: %s, ratio %g", d.Felt, d.Ratio)
	}
	hard := rough(2.1)
	hard.Ends[road.Rear].Spring = nil
	r := at(t, model(t, hard), 5, gravel())
	if d := road.Compare(&a.Figures[road.SaddleWk], &r.Figures[road.SaddleWk]); d.Felt != road.Yes {
		t.Errorf("a rigid rear is felt: %s, ratio %g ± %g", d.Felt, d.Ratio, d.RatioPlus)
	}
}

// A difference that one part makes is explained by it, in whichever way the
// springs are set; what is set otherwise stands by itself.
func TestExplain(t *testing.T) {
	for name, bike := range map[string]func(float64) *road.Bike{"set anew": rough, "kept": kept} {
		a, b := model(t, bike(2.4)), model(t, bike(1.2))
		other := bike(1.2)
		other.Ends[road.Rear].Tyre.Rate.Value *= 0.95
		c := model(t, other)
		x, y, z := at(t, a, 6, gravel()), at(t, b, 6, gravel()), at(t, c, 6, gravel())
		part := []road.Part{
			{A: road.Pieces{Items: []int{5}, Set: []int{5}}, B: road.Pieces{Items: []int{5}, Set: []int{5}}},
			{A: road.Pieces{Items: []int{0}, Set: []int{0}}, B: road.Pieces{Items: []int{0}, Set: []int{0}}},
		}
		for k := range road.LiftFront {
			f, g, h := &x.Figures[k], &y.Figures[k], &z.Figures[k]
			whole := g.Value - f.Value
			e := road.Explain(f, g, part)
			if e.Parts[1] != 0 || !(math.Abs(e.Rest) < 0.02*math.Abs(whole)) {
				t.Errorf("%s %v: of %g the hub makes %g, a part that is the same %g, nothing %g", name, k, whole, e.Parts[0], e.Parts[1], e.Rest)
			}
			near(t, name+" sum", e.Parts[0]+e.Parts[1]+e.Springs+e.Dampers+e.Tyres+e.Body+e.Rest, whole, 1e-9)
			e = road.Explain(f, h, part)
			if e.Tyres == 0 || !(math.Abs(e.Rest) < 0.02*(math.Abs(e.Tyres)+math.Abs(e.Parts[0]))) {
				t.Errorf("%s %v: the tyre makes %g, the hub %g, nothing %g", name, k, e.Tyres, e.Parts[0], e.Rest)
			}
		}
	}
}

// The amount of a lever that is found does what it is to do.
func TestMatch(t *testing.T) {
	m, other := model(t, rough(2.4)), model(t, rough(1.9))
	found := map[road.Lever]int{}
	for k, want := range at(t, other, 6, gravel()).Figures {
		kind := road.Kind(k)
		for _, l := range road.Levers() {
			amount, ok := m.Match(kind, want.Value, l, 6, gravel())
			if !ok {
				continue
			}
			found[l]++
			b := rough(2.4)
			switch l {
			case road.PressureFront, road.PressureRear:
				b.Ends[l-road.PressureFront].Tyre.Rate.Value *= amount
			case road.PressureBoth:
				b.Ends[0].Tyre.Rate.Value *= amount
				b.Ends[1].Tyre.Rate.Value *= amount
			case road.ForkLoad:
				p := b.ForkBags.Place
				b.Items = append(b.Items, mass.Item{Mass: amount, Place: p}, mass.Item{Mass: -amount, Place: p})
				for body := range b.Shares {
					b.Shares[body] = append(b.Shares[body], 0, 0)
				}
				n := len(b.Items)
				b.Shares[road.Frame][n-2], b.Shares[road.ForkLower][n-1] = 1, 1
			default:
				b.Ends[l-road.SagFront].Spring.Sag.Value = amount
			}
			near(t, kind.String()+" by "+l.String(), at(t, model(t, b), 6, gravel()).Figures[k].Value, want.Value, 1e-6)
		}
	}
	for _, l := range []road.Lever{road.PressureFront, road.PressureRear, road.PressureBoth, road.SagRear} {
		if found[l] == 0 {
			t.Errorf("%v leads nowhere", l)
		}
	}
	if _, ok := m.Match(road.LoadRear, 1e-6, road.PressureRear, 6, gravel()); ok {
		t.Error("a tyre takes nearly all away")
	}
}

// How the figures of a ride move follows from how its terms do; it is the same when
// the whole ride is found again with each number a little more and a little less.
func TestSlopesAreThoseOfTheWholeRide(t *testing.T) {
	for name, b := range map[string]*road.Bike{"anew": rough(3.2), "kept": kept(1.4), "standing": stand(rough(3.2), 3.2), "rigid": rigid(rough(3.2), road.Rear)} {
		m := model(t, b)
		for _, speed := range []float64{1.5, 5, 12} {
			slopes, anew := m.Moved(speed, gravel())
			n := 0
			for kind := range slopes {
				most := 0.0
				for i := range slopes[kind] {
					most = max(most, math.Abs(slopes[kind][i]))
				}
				for i, got := range slopes[kind] {
					n++
					if want := anew[kind][i]; math.Abs(got-want) > 1e-3*math.Abs(want)+1e-6*most {
						t.Errorf("%s at %v m/s: figure %d moves by %v with number %d, want %v", name, speed, kind, got, i, want)
					}
				}
			}
			if n < 100 {
				t.Errorf("only %d slopes", n)
			}
		}
	}
}
