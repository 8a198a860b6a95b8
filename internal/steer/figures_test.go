package steer_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"steelyard/internal/mass"
	"steelyard/internal/steer"
)

// figures are all figures of a bicycle that have a gradient.
func figures(b *steer.Bicycle) map[string]mass.Figure {
	m, ok := steer.New(b)
	if !ok {
		return nil
	}
	f := map[string]mass.Figure{
		"steering inertia": m.SteeringInertia(), "ahead": m.Ahead(), "roll inertia": m.RollInertia(),
		"held": m.HoldStanding(0.17), "turn": m.HoldTurn(1.4, 5), "flick": m.Flick(0.17, 0.5),
	}
	if v, ok := m.Weave(); ok {
		f["weave"] = v
	}
	if v, ok := m.Capsize(); ok {
		f["capsize"] = v
	}
	for i, s := range m.Eigenvalues(4) {
		name := string(rune('a' + i))
		f["growth "+name], f["frequency "+name] = m.Rate(4, s)
	}
	h := steer.Held{Items: b.Items, Wheelbase: b.Wheelbase}
	f["lift rear"], f["lift front"] = h.Lift(-0.1), h.Lift(b.Wheelbase-0.15)
	f["upright"], f["push"] = h.Upright(0.2, 0.9), h.Push(0.08, 0.01)
	f["follow"], _ = h.FollowUp(mass.Vec{X: -0.1, Z: 0.9}, 0.2)
	if r, ok := h.On(steer.Stand{Forward: 0.4, Out: 0.15, Lean: 0.15}); ok {
		f["foot"], f["slope"], f["wind"] = r.Foot, r.Slope, r.Wind
	}
	return f
}

// The gradient with respect to every mass and place, by differences.
func TestGradients(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 8))
	for n := range 60 {
		b := random(rng)
		if n == 0 {
			b = benchmark(t)
		}
		base := figures(b)
		for i := range b.Items {
			for _, what := range []string{"mass", "x", "z"} {
				const h = 1e-6
				step := func(f float64) map[string]mass.Figure {
					c := *b
					c.Items = append([]mass.Item(nil), b.Items...)
					it := &c.Items[i]
					switch what {
					case "mass":
						it.Mass *= 1 + f*h
					case "x":
						it.Place.X += f * h
					case "z":
						it.Place.Z += f * h
					}
					return figures(&c)
				}
				up, down := step(1), step(-1)
				for name, f := range base {
					u, ok1 := up[name]
					d, ok2 := down[name]
					if !ok1 || !ok2 {
						continue
					}
					slope := (u.Value - d.Value) / (2 * h)
					// One source of doubt at a time: 1 in what is moved here.
					one := append([]mass.Item(nil), b.Items...)
					for k := range one {
						one[k].MassU, one[k].PlaceU = 0, mass.Vec{}
					}
					switch what {
					case "mass":
						one[i].MassU = one[i].Mass
					case "x":
						one[i].PlaceU.X = 1
					case "z":
						one[i].PlaceU.Z = 1
					}
					got, _ := mass.Uncertainty(one, f)
					if math.Abs(got-math.Abs(slope)) > 1e-4*(1+math.Abs(slope)+math.Abs(f.Value)) {
						t.Errorf("bicycle %d: %s of item %d moves %s by %g, by differences %g", n, what, i, name, got, slope)
					}
				}
			}
		}
	}
}

// The ± of a figure against draws: the benchmark with 1 % of doubt in each mass
// and 5 mm in each place. JCGM 101:2008: the standard deviation of the draws.
func TestPlusAgainstDraws(t *testing.T) {
	b := benchmark(t)
	base := figures(b)
	rng := rand.New(rand.NewPCG(9, 10))
	sums := map[string][2]float64{}
	const draws = 20000
	for range draws {
		c := *b
		c.Items = append([]mass.Item(nil), b.Items...)
		for i := range c.Items {
			it := &c.Items[i]
			it.Mass += it.MassU * rng.NormFloat64()
			it.Place.X += it.PlaceU.X * rng.NormFloat64()
			it.Place.Z += it.PlaceU.Z * rng.NormFloat64()
		}
		for name, f := range figures(&c) {
			d := f.Value - base[name].Value
			s := sums[name]
			sums[name] = [2]float64{s[0] + d, s[1] + d*d}
		}
	}
	for _, name := range []string{"weave", "capsize", "steering inertia", "held", "turn", "lift rear", "slope", "growth a", "frequency a"} {
		mean := sums[name][0] / draws
		want := math.Sqrt(sums[name][1]/draws - mean*mean)
		got, _ := mass.Uncertainty(b.Items, base[name])
		if math.Abs(got-want) > 0.05*want {
			t.Errorf("%s is known within %.4g by its gradient, %.4g by draws", name, got, want)
		}
	}
}

// Steering inertia by the parallel axis: a front of one ring whose centre is on
// the axis, and one that is moved off it.
func TestSteeringInertiaByTheParallelAxis(t *testing.T) {
	b := benchmark(t)
	b.Trail, b.HeadAngle = 0, math.Pi/2 // the axis stands at the front axle
	b.Items = append([]mass.Item(nil), b.Items...)
	b.Items[2].Mass = 0
	b.Items[3] = mass.Item{Mass: 2, Place: mass.Vec{X: b.Wheelbase, Z: 0.35}, Spread: mass.Ring(0.3)}
	// A ring about its diameter: m r²/2.
	near(t, "about a diameter", model(t, b).SteeringInertia().Value, 2*0.09/2, 1e-15)
	b.Items[3].Place.X += 0.25
	near(t, "moved off", model(t, b).SteeringInertia().Value, 2*(0.09/2+0.25*0.25), 1e-15)
	near(t, "ahead", model(t, b).Ahead().Value, 0.25, 1e-15)
}

// Limits: standing still nothing but two pendulums; mirrored nothing changes;
// without trail, offset mass and spinning wheels the bar is not turned by
// anything, and no speed makes the bike stable.
func TestLimits(t *testing.T) {
	b := benchmark(t)
	m := model(t, b)
	e := m.Eigenvalues(0)
	for _, s := range e {
		found := false
		for _, o := range e {
			found = found || math.Abs(real(s)+real(o)) < 1e-12 && imag(s) == 0
		}
		if !found {
			t.Errorf("standing still %v has no opposite in %v", s, e)
		}
	}
	// Steer held: lean alone falls as an inverted pendulum, sqrt(m g z / I).
	k, i := steer.Gravity*-m.K0[0][0], m.M[0][0]
	near(t, "pendulum", math.Sqrt(k/i), math.Sqrt(9.81*80.95/80.81722), 1e-12)

	mirrored := *b
	mirrored.Items = append([]mass.Item(nil), b.Items...)
	for i := range mirrored.Items {
		it := &mirrored.Items[i]
		it.Place.Y, it.Spread.XY, it.Spread.YZ = -it.Place.Y, -it.Spread.XY, -it.Spread.YZ
	}
	if got := model(t, &mirrored); got.M != m.M || got.C1 != m.C1 || got.K0 != m.K0 || got.K2 != m.K2 {
		t.Error("mirrored it steers otherwise")
	}

	plain := *b
	plain.Trail, plain.HeadAngle = 0, math.Pi/2
	plain.Items = append([]mass.Item(nil), b.Items...)
	plain.Items[2] = mass.Item{}
	for _, w := range []int{0, 3} { // a point on each axle does not spin
		plain.Items[w].Spread = mass.Sym{YY: 1e-3}
	}
	pm := model(t, &plain)
	near(t, "torque of the standing bar", pm.HoldStanding(0.2).Value, 0, 1e-12)
	if _, ok := pm.Weave(); ok {
		t.Error("a bicycle without trail and gyroscopic wheels balances by itself")
	}
	for _, v := range []float64{1, 5, 20} {
		if e := pm.Eigenvalues(v); !(real(e[0]) > 0 || real(e[1]) > 0 || real(e[2]) > 0 || real(e[3]) > 0) {
			t.Errorf("at %g m/s it is stable: %v", v, e)
		}
	}
}

// What makes no bicycle gives no equation and no number that is none.
func TestBadBicycles(t *testing.T) {
	for name, change := range map[string]func(*steer.Bicycle){
		"no wheelbase":  func(b *steer.Bicycle) { b.Wheelbase = 0 },
		"flat axis":     func(b *steer.Bicycle) { b.HeadAngle = 0 },
		"no wheel":      func(b *steer.Bicycle) { b.FrontRadius = 0 },
		"nothing":       func(b *steer.Bicycle) { b.Items, b.Front, b.RearWheel, b.FrontWheel = nil, nil, nil, nil },
		"not a number":  func(b *steer.Bicycle) { b.Trail = math.NaN() },
		"nothing ahead": func(b *steer.Bicycle) { b.Items, b.Front, b.Trail = b.Items[:2], mass.Share{0, 0}, 0 },
	} {
		b := benchmark(t)
		change(b)
		if name == "nothing ahead" {
			b.RearWheel, b.FrontWheel = mass.Share{1, 0}, mass.Share{0, 0}
		}
		if _, ok := steer.New(b); ok {
			t.Errorf("%s: there is an equation of motion", name)
		}
	}
	// Odd, but bicycles: negative and no trail, an upright axis.
	for _, change := range []func(*steer.Bicycle){
		func(b *steer.Bicycle) { b.Trail = -0.05 }, func(b *steer.Bicycle) { b.Trail = 0 },
		func(b *steer.Bicycle) { b.HeadAngle = math.Pi / 2 }, func(b *steer.Bicycle) { b.Items[3].Spread = mass.Sym{}; b.Items[0].Spread = mass.Sym{} },
	} {
		b := benchmark(t)
		b.Items = append([]mass.Item(nil), b.Items...)
		change(b)
		m := model(t, b)
		for _, s := range m.Eigenvalues(5) {
			if math.IsNaN(real(s) + imag(s)) {
				t.Error("an eigenvalue is not a number")
			}
		}
	}
}

// By hand, moments about the wheel that stands: 20 kg whose centre is 0.6 m
// ahead of the rear contact and 0.5 m up, a wheelbase of 1 m.
func TestInTheHandByMoments(t *testing.T) {
	h := steer.Held{Items: []mass.Item{{Mass: 20, Place: mass.Vec{X: 0.6, Z: 0.5}}}, Wheelbase: 1}
	w := 20 * 9.81
	near(t, "by the saddle's rear", h.Lift(-0.1).Value, w*0.4/1.1, 1e-12)
	near(t, "by the bar", h.Lift(0.9).Value, w*0.6/0.9, 1e-12)
	near(t, "whole", h.Weight().Value, w, 1e-12)
	near(t, "held upright at 45°", h.Upright(math.Pi/4, 1).Value, w*0.5, 1e-12)
	near(t, "pushed up 3 in 4", h.Push(0.75, 0).Value, w*0.6, 1e-12)
	// Front wheel 0.6 m up: sine 0.6, cosine 0.8. The centre is at 0.6·0.8 - 0.5·0.6
	// = 0.18 m, the front contact at 0.8 m, the hand at (0, 1) comes to -0.6 m.
	if f, ok := h.FollowUp(mass.Vec{X: 0, Z: 1}, 0.6); !ok {
		t.Error("no force")
	} else {
		near(t, "the rear wheel after it", f.Value, w*(0.8-0.18)/(0.8+0.6), 1e-12)
	}
	// Leant by the angle whose sine is 0.1, the foot 0.2 m out and at x 0.6: the
	// centre is 0.05 m out of the line of the wheels, which is the nearest.
	r, ok := h.On(steer.Stand{Forward: 0.6, Out: 0.2, Lean: math.Asin(0.1)})
	if !ok || r.Over {
		t.Fatalf("%+v", r)
	}
	near(t, "foot", r.Foot.Value, w*0.05/0.2, 1e-12)
	near(t, "slope", r.Slope.Value, math.Asin(0.1), 1e-12)
	near(t, "wind", r.Wind.Value, w*math.Tan(math.Asin(0.1)), 1e-12)
	if r, ok := h.On(steer.Stand{Forward: 0.6, Out: 0.04, Lean: math.Asin(0.1)}); !ok || !r.Over {
		t.Errorf("with its centre beyond the foot it stands: %+v", r)
	}
}

func BenchmarkCurves(b *testing.B) {
	bike := benchmark(b)
	for b.Loop() {
		m := model(b, bike)
		for v := range 60 {
			m.Eigenvalues(float64(v) * 0.25)
		}
	}
}
