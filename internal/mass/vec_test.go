package mass_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"steelyard/internal/mass"
)

// Nose up is a right-handed turn by -a about y, for z is up and y left.
func pitch(a float64) *r3.Mat {
	m := r3.NewMat(nil)
	r := r3.NewRotation(-a, r3.Vec{Y: 1})
	for j, e := range []r3.Vec{{X: 1}, {Y: 1}, {Z: 1}} {
		v := r.Rotate(e)
		m.Set(0, j, v.X)
		m.Set(1, j, v.Y)
		m.Set(2, j, v.Z)
	}
	return m
}

func TestPitchByAgainstGonum(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := rapid.Float64Range(-2*math.Pi, 2*math.Pi).Draw(t, "angle")
		v := vec(t, "v", 2)
		got := v.PitchBy(a)
		want := r3.NewRotation(-a, r3.Vec{Y: 1}).Rotate(r3.Vec(v))
		if d := r3.Norm(r3.Sub(r3.Vec(got), want)); d > 1e-14*(1+v.Norm()) {
			t.Errorf("%+v turned by %v = %+v, want %+v", v, a, got, want)
		}

		k := mass.Outer(v).Add(mass.Outer(vec(t, "w", 1))).Add(mass.Box(0.3, 0.2, 0.1))
		r := pitch(a)
		var turned mat.Dense
		turned.Product(r, dense(k), r.T())
		if !mat.EqualApprox(dense(k.PitchBy(a)), &turned, 1e-13) {
			t.Errorf("%+v turned by %v = %+v, want\n%v", k, a, k.PitchBy(a), mat.Formatted(&turned))
		}
		// The turned second moment of a point is that of the turned point.
		p, q := mass.Outer(v).PitchBy(a), mass.Outer(got)
		if !mat.EqualApprox(dense(p), dense(q), 1e-13) {
			t.Errorf("turned outer %+v, outer of turned %+v", p, q)
		}
	})
}

func TestPitchLiftsTheFront(t *testing.T) {
	up := mass.Vec{X: 1}.PitchBy(math.Pi / 2)
	near(t, "z of the front wheel after a quarter turn", up.Z, 1, 1e-15)
	near(t, "x", up.X, 0, 1e-15)
}

func TestVecAndSymAgainstGonum(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v, w := vec(t, "v", 2), vec(t, "w", 2)
		f := rapid.Float64Range(-3, 3).Draw(t, "f")
		gv, gw := r3.Vec(v), r3.Vec(w)
		for what, p := range map[string][2]r3.Vec{
			"Add":   {r3.Vec(v.Add(w)), r3.Add(gv, gw)},
			"Sub":   {r3.Vec(v.Sub(w)), r3.Sub(gv, gw)},
			"Scale": {r3.Vec(v.Scale(f)), r3.Scale(f, gv)},
			"Lerp":  {r3.Vec(v.Lerp(w, f)), r3.Add(r3.Scale(1-f, gv), r3.Scale(f, gw))},
		} {
			if r3.Norm(r3.Sub(p[0], p[1])) > 1e-14 {
				t.Errorf("%s(%v, %v, %v) = %v, want %v", what, v, w, f, p[0], p[1])
			}
		}
		if got, want := v.Dot(w), r3.Dot(gv, gw); math.Abs(got-want) > 1e-14 {
			t.Errorf("Dot = %v, want %v", got, want)
		}
		if got, want := v.Norm(), r3.Norm(gv); math.Abs(got-want) > 1e-14 {
			t.Errorf("Norm = %v, want %v", got, want)
		}

		a := mass.Outer(v).Add(mass.Outer(w).Scale(f))
		b := mass.Outer(w).Add(mass.Box(1, 2, 3))
		da, db := dense(a), dense(b)
		var av mat.VecDense
		av.MulVec(da, mat.NewVecDense(3, []float64{w.X, w.Y, w.Z}))
		if got := a.Times(w); r3.Norm(r3.Sub(r3.Vec(got), r3.Vec{X: av.AtVec(0), Y: av.AtVec(1), Z: av.AtVec(2)})) > 1e-13 {
			t.Errorf("Times = %v, want %v", got, av.RawVector().Data)
		}
		var prod mat.Dense
		prod.MulElem(da, db)
		if got, want := a.Inner(b), mat.Sum(&prod); math.Abs(got-want) > 1e-12 {
			t.Errorf("Inner = %v, want %v", got, want)
		}
		if got, want := a.Trace(), mat.Trace(da); math.Abs(got-want) > 1e-13 {
			t.Errorf("Trace = %v, want %v", got, want)
		}
	})
}

// vec draws a vector with coordinates within ±reach.
func vec(t *rapid.T, name string, reach float64) mass.Vec {
	c := rapid.Float64Range(-reach, reach)
	return mass.Vec{X: c.Draw(t, name+".x"), Y: c.Draw(t, name+".y"), Z: c.Draw(t, name+".z")}
}
