package road_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"

	"steelyard/internal/mass"
	"steelyard/internal/road"
)

// figures are the values of a ride, NaN where there is none.
func figures(r *road.Ride) (v [road.NumKinds]float64) {
	for k, f := range r.Figures {
		v[k] = math.NaN()
		if f.There {
			v[k] = f.Value
		}
	}
	return v
}

func sameRide(t *testing.T, what string, got, want *road.Ride, within float64) {
	t.Helper()
	g, w := figures(got), figures(want)
	for k := range road.LiftFront {
		if math.IsNaN(g[k]) != math.IsNaN(w[k]) {
			t.Errorf("%s: %v is there in only one", what, k)
		} else if !math.IsNaN(g[k]) {
			near(t, what+" "+k.String(), g[k], w[k], within)
		}
	}
}

// A rigid bike is a beam on two springs: its frequencies are the roots of
//
//	(kf + kr - M w²)(kf a² + kr b² - I w²) = (kf a - kr b)²
//
// with the axles a ahead of and b behind the centre of mass, and I about it
// (any handbook of vibrations). Damping in proportion to the stiffness leaves
// the magnitude of the poles as it is.
func TestBounceAndPitch(t *testing.T) {
	b := rigid(rough(2.1), road.Front, road.Rear)
	// Wheels turn freely: they are points.
	for i := range b.Items {
		if b.Shares[road.RearWheel][i]+b.Shares[road.FrontWheel][i] > 0 {
			b.Items[i].Spread = mass.Sym{}
		}
	}
	m := mass.Sum(b.Items, nil)
	c := m.Centre()
	inertia := m.J.XX + m.J.ZZ - m.M*(c.X*c.X+c.Z*c.Z)
	kf, kr := b.Ends[0].Tyre.Rate.Value, b.Ends[1].Tyre.Rate.Value
	a, d := b.FrontAxle.X-c.X, c.X-b.RearAxle.X
	p, q := (kf+kr)/m.M, (kf*a*a+kr*d*d)/inertia
	x := (kf*a - kr*d)
	mean, half := (p+q)/2, math.Sqrt((p-q)*(p-q)/4+x*x/(m.M*inertia))
	modes := model(t, b).Modes()
	if len(modes) != 2 || modes[0].Motion != road.Bounce || modes[1].Motion != road.Pitching {
		t.Fatalf("modes are %v", modes)
	}
	for i, w2 := range []float64{mean - half, mean + half} {
		w := math.Sqrt(w2)
		near(t, "frequency", modes[i].Frequency.Value, w/(2*math.Pi), 1e-11)
		near(t, "damping", modes[i].Damping.Value, w*b.Ends[0].Tyre.Lag.Value/2, 1e-9)
	}
}

// Matrices are symmetric and positive, and mass and inertia come back out of them.
func TestMassMatrix(t *testing.T) {
	for name, b := range every() {
		p := model(t, b).Plain()
		for what, d := range map[string]*mat.Dense{"M": p.M, "K": p.K, "C": p.C} {
			if !mat.EqualApprox(d, d.T(), 1e-12*mat.Norm(d, 1)) {
				t.Errorf("%s: %s is not symmetric", name, what)
			}
			s := mat.NewSymDense(p.N, nil)
			for i := range p.N {
				for j := range i + 1 {
					s.SetSym(i, j, d.At(i, j))
				}
			}
			var chol mat.Cholesky
			if !chol.Factorize(s) {
				t.Errorf("%s: %s is not positive", name, what)
			}
		}
		all := mass.Sum(b.Items, nil)
		near(t, name+" mass fore and aft", p.Full[5][5], all.M, 1e-12)
		if b.Standing != nil {
			continue // the rider neither heaves nor pitches with the frame
		}
		near(t, name+" mass", p.Full[0][0], all.M, 1e-12)
		var polar float64
		middle := (b.FrontAxle.X + b.RearAxle.X) / 2
		for i := range b.Items {
			it := &b.Items[i]
			own := it.Spread.XX + it.Spread.ZZ
			if b.Shares[road.RearWheel][i]+b.Shares[road.FrontWheel][i] > 0 {
				own = 0 // spins by itself
			}
			x := it.Place.X - middle
			polar += it.Mass * (x*x + it.Place.Z*it.Place.Z + own)
		}
		near(t, name+" inertia", p.Full[1][1], polar, 1e-12)
	}
}

func TestVeryStiffSpringIsARigidEnd(t *testing.T) {
	stiff := rough(2.1)
	for i := range stiff.Ends {
		stiff.Ends[i].Spring.Rate = known(3e10, 0, "")
	}
	want := at(t, model(t, rigid(rough(2.1), road.Front, road.Rear)), 5, gravel())
	got := at(t, model(t, stiff), 5, gravel())
	for k := range road.TravelFront {
		near(t, k.String(), got.Figures[k].Value, want.Figures[k].Value, 2e-4)
	}
}

// A stiff body that stands, on nothing but the pedals, is a mass that does not
// pitch; it bears on the tyres as it did.
func TestStandingBearsAsSitting(t *testing.T) {
	sit, up := model(t, rough(2.1)), model(t, stand(rough(2.1), 2.1))
	for side := range road.Both {
		near(t, "load", up.Static(side), sit.Static(side), 1e-12)
	}
}

// Where the origin lies and in how many pieces a part is told changes nothing.
func TestOriginAndSplitting(t *testing.T) {
	for name, b := range every() {
		want := at(t, model(t, b), 5, gravel())
		by := mass.Vec{X: 7.3}
		for _, p := range []*mass.Vec{&b.RearAxle, &b.FrontAxle, &b.Pivot, &b.Saddle.Place, &b.Grips.Place, &b.Rack.Place, &b.ForkBags.Place, &b.BarBag.Place} {
			*p = p.Add(by)
		}
		for i := range b.Items {
			b.Items[i].Place = b.Items[i].Place.Add(by)
		}
		sameRide(t, name+" moved", at(t, model(t, b), 5, gravel()), want, 1e-8)
		for i := range len(b.Items) {
			b.Items[i].Mass /= 4
			rest := b.Items[i]
			rest.Mass *= 3
			b.Items = append(b.Items, rest)
			for body := range b.Shares {
				b.Shares[body] = append(b.Shares[body], b.Shares[body][i])
			}
		}
		sameRide(t, name+" split", at(t, model(t, b), 5, gravel()), want, 1e-8)
	}
}

// What the literature agrees on: more unsprung mass and harder tyres mean a load
// that varies more; see for instance Gillespie, Fundamentals of Vehicle Dynamics
// (1992), chapter 5 (memory).
func TestTrends(t *testing.T) {
	load := func(change func(*road.Bike)) float64 {
		b := rough(1.4)
		change(b)
		return at(t, model(t, b), 6, gravel()).Figures[road.LoadRear].Value
	}
	base := load(func(*road.Bike) {})
	// A kilogram from the frame above the axle to the axle: the load at rest stays.
	moved := load(func(b *road.Bike) { b.Items[8].Mass -= 1; b.Items[5].Mass += 1; b.Items[8].Place.X = 0 })
	still := load(func(b *road.Bike) { b.Items[8].Place.X = 0 })
	if moved <= still {
		t.Errorf("with more unsprung mass the load varies by %g, and by %g with less", moved, still)
	}
	if soft := load(func(b *road.Bike) { b.Ends[road.Rear].Tyre.Rate.Value *= 0.7 }); soft >= base {
		t.Errorf("on a softer tyre the load varies by %g, on a harder one by %g", soft, base)
	}
	m := model(t, rough(1.4))
	slow, fast := at(t, m, 3, gravel()), at(t, m, 9, gravel())
	if slow.Figures[road.LoadRear].Value >= fast.Figures[road.LoadRear].Value {
		t.Error("faster is not rougher")
	}
	// The roughness of a class is four times that of the one before, so all is twice.
	c, d := at(t, m, 5, road.Road{Roughness: known(road.C.Roughness(), 0, "")}), at(t, m, 5, road.Road{Roughness: known(road.D.Roughness(), 0, "")})
	for k := range road.LiftFront {
		near(t, k.String(), d.Figures[k].Value, 2*c.Figures[k].Value, 1e-12)
	}
}

// Two poles in one place have no shapes of their own: ends that are alike, and a
// motion that is damped critically.
func TestPolesInOnePlace(t *testing.T) {
	alike := quarter{40, 4, 9000, 350, 90000}
	m := model(t, decoupled(alike, alike))
	r := at(t, m, 1, white(0.001))
	for i := range 2 {
		near(t, "travel", r.Figures[road.TravelFront+road.Kind(i)].Value, 7.928249672e-3, 1e-5)
		near(t, "load", r.Figures[road.LoadFront+road.Kind(i)].Value*m.Static(road.Side(i)), 247.630744687, 1e-5)
	}
	// A search for where the two slow poles of an overdamped end meet.
	least, most := 350.0, 3000.0
	creeps := func(c float64) bool {
		for _, o := range model(t, decoupled(quarter{40, 4, 9000, c, 90000}, quarter{52, 3, 11000, 300, 90000})).Modes() {
			if o.Damping.Value >= 1 {
				return true
			}
		}
		return false
	}
	if creeps(least) || !creeps(most) {
		t.Fatal("there is no place where poles meet")
	}
	for most-least > 1e-12*most {
		if c := (least + most) / 2; creeps(c) {
			most = c
		} else {
			least = c
		}
	}
	// The closed form of the reference, at that damper.
	c, q := least, 0.001
	m = model(t, decoupled(quarter{40, 4, 9000, c, 90000}, quarter{52, 3, 11000, 300, 90000}))
	near(t, "critical travel", at(t, m, 1, white(q)).Figures[road.TravelFront].Value, math.Sqrt(q*44/(2*c)), 1e-4)
}
