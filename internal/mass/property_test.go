package mass_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"

	"steelyard/internal/mass"
)

// system draws up to a dozen bodies of all shapes, with shares and with sources
// that some of them have in common.
func system(t *rapid.T) ([]mass.Item, mass.Share) {
	shapes := []mass.Sym{
		mass.Point(), mass.Rod(0.6), mass.Ring(0.3), mass.Disc(0.1, 0.05), mass.Box(0.3, 0.2, 0.1), mass.Pair(0.5),
		mass.Rod(0.6).PitchBy(0.7), mass.Box(0.3, 0.2, 0.1).Add(mass.Sym{XY: 0.002, XZ: -0.001, YZ: 0.001}),
	}
	n := rapid.IntRange(1, 12).Draw(t, "items")
	items, share := make([]mass.Item, n), make(mass.Share, n)
	for i := range items {
		items[i] = mass.Item{
			Mass:        rapid.Float64Range(0.01, 80).Draw(t, "mass"),
			Place:       vec(t, "place", 2),
			Spread:      rapid.SampledFrom(shapes).Draw(t, "shape"),
			MassU:       rapid.Float64Range(0, 0.5).Draw(t, "mass u"),
			MassSource:  rapid.IntRange(0, n).Draw(t, "mass source"),
			PlaceU:      mass.Vec{X: rapid.Float64Range(0, 0.03).Draw(t, "place u"), Y: rapid.Float64Range(0, 0.03).Draw(t, "place u, sideways"), Z: rapid.Float64Range(0, 0.03).Draw(t, "place u, up")},
			PlaceSource: rapid.IntRange(0, n).Draw(t, "place source"),
		}
		share[i] = rapid.SampledFrom([]float64{0.5, 1}).Draw(t, "share")
	}
	return items, share
}

// frame is where the levers and supports of a property test are.
type frame struct {
	pivot, end mass.Vec
	rear, fore float64
}

var stand = frame{pivot: mass.Vec{X: 0.44, Z: 0.37}, end: mass.Vec{Z: 0.34}, rear: 0, fore: 1.08}

func (f frame) moved(d mass.Vec) frame {
	return frame{f.pivot.Add(d), f.end.Add(d), f.rear + d.X, f.fore + d.X}
}

// figure is a value with its standard uncertainty.
type figure struct{ value, u float64 }

// evaluate gives all figures of a share with their uncertainties.
func evaluate(items []mass.Item, share mass.Share, f frame) map[string]figure {
	all := map[string]mass.Figure{
		"total":     mass.Total(items, share),
		"product":   mass.CentralProduct(items, share),
		"lever":     mass.LeverMass(items, share, f.pivot, f.end),
		"rear load": mass.Support(items, share, f.rear, f.fore),
		"fore load": mass.Support(items, share, f.fore, f.rear),
	}
	for name, axis := range axes {
		all["centre "+name] = mass.Centre(items, share, axis)
		all["inertia "+name] = mass.CentralInertia(items, share, axis)
		// The slope of the root has no bound near 0: a point alone is left to
		// its own test.
		if i := all["inertia "+name]; i.Value > 1e-6 {
			all["gyration "+name] = mass.Gyration(items, share, axis)
		}
	}
	out := make(map[string]figure, len(all))
	for name, f := range all {
		out[name] = figure{f.Value, standard(items, f)}
	}
	return out
}

// same holds two evaluations against each other. Values reach about 1e3
// (100 kg and more, with lengths of 2 m); what rounding does to them and to
// their gradients is far below 1e-8.
func same(t *rapid.T, what string, got, want map[string]figure) {
	t.Helper()
	if len(got) != len(want) {
		t.Fatalf("%s: %d figures, want %d", what, len(got), len(want))
	}
	for name, w := range want {
		g := got[name]
		if math.Abs(g.value-w.value) > 1e-8*(1+math.Abs(w.value)) || math.Abs(g.u-w.u) > 1e-8*(1+w.u) {
			t.Errorf("%s: %s = %v ± %v, want %v ± %v", what, name, g.value, g.u, w.value, w.u)
		}
	}
}

func TestMovingTheOrigin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		items, share := system(t)
		d := vec(t, "shift", 5)
		want := evaluate(items, share, stand)
		for name, by := range map[string]float64{"centre x": d.X, "centre y": d.Y, "centre z": d.Z} {
			want[name] = figure{want[name].value + by, want[name].u}
		}
		for i := range items {
			items[i].Place = items[i].Place.Add(d)
		}
		same(t, "moved", evaluate(items, share, stand.moved(d)), want)
	})
}

func TestMirroringLeftAndRight(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		items, share := system(t)
		want := evaluate(items, share, stand)
		c := want["centre y"]
		want["centre y"] = figure{-c.value, c.u}
		for i := range items {
			it := &items[i]
			it.Place.Y *= -1
			it.Spread.XY *= -1
			it.Spread.YZ *= -1
		}
		same(t, "mirrored", evaluate(items, share, stand), want)
	})
}

func TestOrderOfParts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		items, share := system(t)
		want := evaluate(items, share, stand)
		seed := rapid.Uint64().Draw(t, "order")
		shuffle := func(swap func(i, j int)) { rand.New(rand.NewPCG(seed, 0)).Shuffle(len(items), swap) }
		shuffle(func(i, j int) { items[i], items[j] = items[j], items[i] })
		shuffle(func(i, j int) { share[i], share[j] = share[j], share[i] })
		same(t, "shuffled", evaluate(items, share, stand), want)
	})
}

// A part written as two that share its errors is the same part.
func TestSplittingAPart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		items, share := system(t)
		want := evaluate(items, share, stand)
		i := rapid.IntRange(0, len(items)-1).Draw(t, "split")
		f := rapid.Float64Range(0, 1).Draw(t, "fraction")
		a, b := items[i], items[i]
		a.Mass, a.MassU = f*a.Mass, f*a.MassU
		b.Mass, b.MassU = (1-f)*b.Mass, (1-f)*b.MassU
		items = append(slices.Delete(items, i, i+1), a, b)
		s := share[i]
		share = append(slices.Delete(share, i, i+1), s, s)
		same(t, "split", evaluate(items, share, stand), want)
	})
}

// Sum and Central against gonum, body by body, with tensors that have all six
// entries: I = Σ (m I(K) + m (d·d 1 - d dᵀ)).
func TestSumAgainstGonum(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		items, share := system(t)
		total, centre := 0.0, mat.NewVecDense(3, nil)
		for i, it := range items {
			m := it.Mass * share[i]
			total += m
			centre.AddScaledVec(centre, m, mat.NewVecDense(3, []float64{it.Place.X, it.Place.Y, it.Place.Z}))
		}
		centre.ScaleVec(1/total, centre)
		want := mat.NewDense(3, 3, nil)
		for i, it := range items {
			var d mat.VecDense
			d.SubVec(mat.NewVecDense(3, []float64{it.Place.X, it.Place.Y, it.Place.Z}), centre)
			var steiner, outer mat.Dense
			steiner.Scale(mat.Dot(&d, &d), eye3)
			outer.Outer(1, &d, &d)
			steiner.Sub(&steiner, &outer)
			steiner.Add(&steiner, dense(mass.Inertia(it.Spread)))
			steiner.Scale(it.Mass*share[i], &steiner)
			want.Add(want, &steiner)
		}
		got := mass.Sum(items, share)
		if math.Abs(got.M-total) > 1e-12*total {
			t.Errorf("mass %v, want %v", got.M, total)
		}
		if got := dense(mass.Inertia(got.Central())); !mat.EqualApprox(got, want, 1e-10) {
			t.Errorf("inertia\n%v\nwant\n%v", mat.Formatted(got), mat.Formatted(want))
		}
		var one mass.Moments
		for i := range items {
			one = one.Add(items[i].Moments().Scale(share[i]))
		}
		if d := cmp.Diff(one, got, cmpopts.EquateApprox(1e-11, 1e-11)); d != "" {
			t.Error("one by one and in one pass:", d)
		}
	})
}

// A box sawn in two is the same body: shape formula and parallel axes agree.
func TestSawingABox(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		size := rapid.Float64Range(0.01, 1)
		x, y, z := size.Draw(t, "x"), size.Draw(t, "y"), size.Draw(t, "z")
		whole := mass.Item{Mass: 3, Place: vec(t, "place", 2), Spread: mass.Box(x, y, z)}
		cut := rapid.Float64Range(0.05, 0.95).Draw(t, "cut")
		rear := mass.Item{Mass: 3 * cut, Place: whole.Place.Sub(mass.Vec{X: (1 - cut) * x / 2}), Spread: mass.Box(cut*x, y, z)}
		fore := mass.Item{Mass: 3 * (1 - cut), Place: whole.Place.Add(mass.Vec{X: cut * x / 2}), Spread: mass.Box((1-cut)*x, y, z)}
		none := frame{end: mass.Vec{X: 1}, fore: 1}
		same(t, "sawn", evaluate([]mass.Item{rear, fore}, nil, none), evaluate([]mass.Item{whole}, nil, none))
	})
}

func TestSupportsCarryTheTotal(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		items, share := system(t)
		rear := rapid.Float64Range(-2, 2).Draw(t, "rear")
		fore := rear + rapid.Float64Range(0.5, 3).Draw(t, "wheelbase")
		sum := mass.Plus(mass.Support(items, share, rear, fore), mass.Support(items, share, fore, rear))
		total := mass.Total(items, share)
		if math.Abs(sum.Value-total.Value) > 1e-9*total.Value {
			t.Errorf("loads %v, total %v", sum.Value, total.Value)
		}
		// The doubt agrees too: what moves load to one wheel takes it off the other.
		if got, want := standard(items, sum), standard(items, total); math.Abs(got-want) > 1e-9*(1+want) {
			t.Errorf("loads ± %v, total ± %v", got, want)
		}
	})
}

func TestShiftsAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, _ := system(t)
		b, _ := system(t)
		ma, mb := mass.Sum(a, nil), mass.Sum(b, nil)
		var there, back mass.Vec
		for i := range max(len(a), len(b)) {
			var pa, pb mass.Moments
			if i < len(a) {
				pa = a[i].Moments()
			}
			if i < len(b) {
				pb = b[i].Moments()
			}
			there = there.Add(mass.Shift(ma, mb, pa, pb))
			back = back.Add(mass.Shift(mb, ma, pb, pa))
		}
		if d := there.Sub(mb.Centre().Sub(ma.Centre())).Norm(); d > 1e-11 {
			t.Errorf("shifts add up to %v, the centre moved %v", there, mb.Centre().Sub(ma.Centre()))
		}
		if there.Add(back).Norm() > 1e-11 {
			t.Errorf("there %v, back %v", there, back)
		}
	})
}

func TestLeverMassOfAPoint(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pivot := vec(t, "pivot", 1)
		arm := rapid.Float64Range(0.2, 1).Draw(t, "arm")
		s, c := math.Sincos(rapid.Float64Range(0, 2*math.Pi).Draw(t, "direction"))
		end := pivot.Add(mass.Vec{X: arm * c, Y: 0.1, Z: arm * s})
		m := rapid.Float64Range(0.01, 10).Draw(t, "mass")
		// A point on the lever counts with the square of how far out it is,
		// however far left or right; at the end for itself, at the pivot for 0.
		for _, k := range []float64{0, 0.01, 0.5, 1, 1.5} {
			at := pivot.Lerp(end, k)
			at.Y = rapid.Float64Range(-0.3, 0.3).Draw(t, "y")
			got := mass.LeverMass([]mass.Item{{Mass: m, Place: at}}, nil, pivot, end)
			if math.Abs(got.Value-k*k*m) > 1e-12*(1+m)/(arm*arm) {
				t.Errorf("%v kg at %v of the lever counts %v kg, want %v", m, k, got.Value, k*k*m)
			}
		}
	})
}

// A hub and a wheel at the end of a lever: the wheel does not turn with the
// lever in truth, but counted as fixed to it, it adds its own inertia.
func TestLeverMassOfExtent(t *testing.T) {
	end := mass.Vec{X: -0.45}
	rod := mass.Item{Mass: 1.2, Place: mass.Vec{X: -0.225}, Spread: mass.Rod(0.45)}
	// Handbook: a slender rod about its end, m l²/3.
	near(t, "swingarm as a rod", mass.LeverMass([]mass.Item{rod}, nil, mass.Vec{}, end).Value, 0.4, 1e-15)
	ring := mass.Item{Mass: 1, Place: end, Spread: mass.Ring(0.3)}
	near(t, "ring fixed to the lever", mass.LeverMass([]mass.Item{ring}, nil, mass.Vec{}, end).Value,
		1+0.3*0.3/(0.45*0.45), 1e-14)
}
