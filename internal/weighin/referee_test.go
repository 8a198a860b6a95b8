package weighin

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/optimize"
	"gonum.org/v1/gonum/stat/distuv"
	"pgregory.net/rapid"

	"steelyard/internal/linear"
	"steelyard/internal/mass"
)

// The tail of the chi-square distribution against gonum's, and against printed
// 5 % points (any table of the distribution; these from memory).
func TestBeyond(t *testing.T) {
	for n := 1; n <= 40; n++ {
		d := distuv.ChiSquared{K: float64(n)}
		for _, x := range []float64{1e-9, 0.01, 0.3, 1, 2.5, 7, 15, 40, 90, 200} {
			if got, want := beyond(x, n), d.Survival(x); math.Abs(got-want) > 1e-12+1e-9*want {
				t.Errorf("beyond(%v, %d) = %v, want %v", x, n, got, want)
			}
		}
	}
	for n, x := range map[int]float64{1: 3.841, 2: 5.991, 3: 7.815, 4: 9.488, 10: 18.307} {
		if got := beyond(x, n); math.Abs(got-0.05) > 5e-5 {
			t.Errorf("beyond(%v, %d) = %v, want 0.05", x, n, got)
		}
	}
	for _, n := range []int{-1, 0} {
		if got := beyond(3, n); got != 1 {
			t.Errorf("beyond(3, %d) = %v, want 1", n, got)
		}
	}
	for _, x := range []float64{0, -1, math.NaN()} {
		if got := beyond(x, 3); got != 1 {
			t.Errorf("beyond(%v, 3) = %v, want 1", x, got)
		}
	}
}

// The derivatives of a reading against finite differences of its lever.
func TestSlopes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := Stand{
			Wheelbase:   rapid.Float64Range(0.8, 1.6).Draw(t, "wheelbase"),
			RearRadius:  rapid.Float64Range(0.2, 0.4).Draw(t, "rear"),
			FrontRadius: rapid.Float64Range(0.2, 0.4).Draw(t, "front"),
		}
		front := rapid.Bool().Draw(t, "front wheel")
		rise := rapid.Float64Range(-0.4, 0.4).Draw(t, "rise")
		m := rapid.Float64Range(5, 200).Draw(t, "mass")
		p := moments{m, m * rapid.Float64Range(0, 1).Draw(t, "x"), m * rapid.Float64Range(0.2, 1.5).Draw(t, "z")}
		reading := func(s Stand, rise float64) float64 {
			l := s.lever(front, rise)
			return l[0]*p[0] + l[1]*p[1] + l[2]*p[2]
		}
		const h = 1e-5
		longer, shorter := s, s
		longer.Wheelbase += h
		shorter.Wheelbase -= h
		base, level, byRise := s.slopes(front, rise, p)
		byRear, byFront := s.byRadii(front, rise, p)
		larger, smaller := s, s
		check := func(what string, got, want float64) {
			if math.Abs(got-want) > 1e-6*m {
				t.Errorf("by %s: %v, by finite differences %v", what, got, want)
			}
		}
		check("wheelbase", base, (reading(longer, rise)-reading(shorter, rise))/(2*h))
		larger.RearRadius += h
		smaller.RearRadius -= h
		check("rear radius", byRear, (reading(larger, rise)-reading(smaller, rise))/(2*h))
		larger, smaller = s, s
		larger.FrontRadius += h
		smaller.FrontRadius -= h
		check("front radius", byFront, (reading(larger, rise)-reading(smaller, rise))/(2*h))
		check("rise", byRise, (reading(s, rise+h)-reading(s, rise-h))/(2*h))
		// A floor out of level turns the bike and the line between the axles
		// alike: take moments again about the turned rear axle.
		tilted := func(by float64) float64 {
			axle := mass.Vec{Z: s.RearRadius}
			_, theta, _ := s.pitch(rise)
			turn := func(v mass.Vec) float64 { return v.Sub(axle).PitchBy(theta + by).X }
			f := m * turn(mass.Vec{X: p[1] / m, Z: p[2] / m}) / turn(mass.Vec{X: s.Wheelbase, Z: s.FrontRadius})
			if front {
				return f
			}
			return m - f
		}
		check("level", level, (tilted(h)-tilted(-h))/(2*h))
	})
}

// vec, sym and dense are what gonum, the referee, calls the same.
func vec(x linear.Vec) *mat.VecDense { return mat.NewVecDense(len(x), x) }

func sym(x *linear.Sym) *mat.SymDense {
	s := mat.NewSymDense(x.Order(), nil)
	for i := range x.Order() {
		for j := range i + 1 {
			s.SetSym(i, j, x.At(i, j))
		}
	}
	return s
}

func dense(x *linear.Dense) *mat.Dense {
	rows, columns := x.Dims()
	d := mat.NewDense(rows, columns, nil)
	for i := range rows {
		d.SetRow(i, x.Row(i))
	}
	return d
}

// diagonal is a matrix with these numbers on its diagonal, and 0 elsewhere.
func diagonal(x ...float64) *linear.Sym {
	s := linear.NewSym(len(x))
	for i, v := range x {
		s.Set(i, i, v)
	}
	return s
}

// anySym is Σ x xᵀ over n vectors of n numbers that next draws, with something
// added to the diagonal.
func anySym(n int, diagonal float64, next func() float64) *linear.Sym {
	s := linear.NewSym(n)
	for range n {
		x := make(linear.Vec, n)
		for i := range x {
			x[i] = next()
		}
		s.AddOuter(1, x)
	}
	for i := range n {
		s.Set(i, i, s.At(i, i)+diagonal)
	}
	return s
}

// whiten returns L⁻¹ b for V = L Lᵀ.
func whiten(v *linear.Sym, b mat.Matrix) *mat.Dense {
	var c mat.Cholesky
	if !c.Factorize(sym(v)) {
		panic("not positive definite")
	}
	var l mat.TriDense
	c.LTo(&l)
	var out mat.Dense
	if err := out.Solve(&l, b); err != nil {
		panic(err)
	}
	return &out
}

// Generalised least squares against gonum's QR on the whitened system.
func TestGLSAgainstQR(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 5))
	for range 200 {
		n, k := 3+rng.IntN(8), 2+rng.IntN(2)
		a, y := linear.NewDense(n, k), make(linear.Vec, n)
		for i := range n {
			y[i] = rng.NormFloat64() * 50
			for j := range k {
				a.Row(i)[j] = rng.NormFloat64()
			}
		}
		v := anySym(n, 0.01, func() float64 { return 0.1 * rng.NormFloat64() })
		g := newGLS(a, y, v)
		if g == nil {
			t.Fatal("not solved")
		}
		wa, wy := whiten(v, dense(a)), whiten(v, vec(y))
		var qr mat.QR
		qr.Factorize(wa)
		var want mat.Dense
		if err := qr.SolveTo(&want, false, wy); err != nil {
			t.Fatal(err)
		}
		if !mat.EqualApprox(vec(g.p), &want, 1e-8) {
			t.Errorf("p = %v, want %v", mat.Formatted(vec(g.p)), mat.Formatted(&want))
		}
		var left mat.Dense
		left.Mul(wa, &want)
		left.Sub(wy, &left)
		if f := mat.Norm(&left, 2); math.Abs(g.chiSquare-f*f) > 1e-7*(1+f*f) {
			t.Errorf("chi-square %v, want %v", g.chiSquare, f*f)
		}
		var cov, normal mat.Dense
		normal.Mul(wa.T(), wa)
		if err := cov.Inverse(&normal); err != nil {
			t.Fatal(err)
		}
		if !mat.EqualApprox(sym(g.cov), &cov, 1e-8) {
			t.Errorf("covariance %v, want %v", mat.Formatted(sym(g.cov)), mat.Formatted(&cov))
		}
	}
}

// anyBounded draws the problem of the parts' weights.
func anyBounded(t *rapid.T, half float64) bounded {
	known := rapid.IntRange(2, 3).Draw(t, "known")
	d := make(linear.Vec, known)
	for i := range d {
		d[i] = rapid.Float64Range(-5, 5).Draw(t, "difference")
	}
	w := anySym(known, 1e-4, func() float64 { return rapid.Float64Range(-0.2, 0.2).Draw(t, "root") })
	b := bounded{w: w, d: d}
	for range rapid.IntRange(1, 12).Draw(t, "sources") {
		u := rapid.Float64Range(0.001, 1).Draw(t, "u")
		b.sources = append(b.sources, source{
			u: u, low: -half * rapid.Float64Range(0.1, 1).Draw(t, "low"), high: half,
			lever: moments{u, u * rapid.Float64Range(-0.2, 1.3).Draw(t, "x"), u * rapid.Float64Range(0, 1.3).Draw(t, "z")},
		})
	}
	return b
}

// errors are the e at λ.
func (b *bounded) errors(lambda linear.Vec) *mat.VecDense {
	e := mat.NewVecDense(len(b.sources), nil)
	for i := range b.sources {
		e.SetVec(i, b.error(&b.sources[i], lambda))
	}
	return e
}

// stacked is [1; W^-½ L] and [0; W^-½ d]: the sum to be made least is that of
// the squares of what is left over of it.
func (b *bounded) stacked() (a *mat.Dense, y *mat.VecDense) {
	known, n := len(b.d), len(b.sources)
	lever := mat.NewDense(known, n, nil)
	for i := range b.sources {
		for k := range known {
			lever.Set(k, i, b.sources[i].lever[k])
		}
	}
	wl, wd := whiten(b.w, lever), whiten(b.w, vec(b.d))
	a, y = mat.NewDense(n+known, n, nil), mat.NewVecDense(n+known, nil)
	for i := range n {
		a.Set(i, i, 1)
	}
	for k := range known {
		y.SetVec(n+k, wd.At(k, 0))
		for i := range n {
			a.Set(n+k, i, wl.At(k, i))
		}
	}
	return a, y
}

// Without bounds the weights are an ordinary least-squares problem: gonum's QR
// must find the same.
func TestFreeWeightsAgainstQR(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := anyBounded(t, 1e9)
		lambda, ok := b.solve()
		if !ok {
			t.Fatal("not solved")
		}
		a, y := b.stacked()
		var qr mat.QR
		qr.Factorize(a)
		var want mat.VecDense
		if err := qr.SolveVecTo(&want, false, y); err != nil {
			t.Fatal(err)
		}
		if e := b.errors(lambda); !mat.EqualApprox(e, &want, 1e-6) {
			t.Errorf("e = %v, want %v", mat.Formatted(e.T()), mat.Formatted(want.T()))
		}
	})
}

// Within bounds the solution is the one that the conditions of Karush, Kuhn and
// Tucker tell, which for a convex problem there is just one of: no slope at a
// free weight, and at a bound a slope that would lead out. Weights are in units
// of their standard uncertainty: ten millionths of one are nothing.
func TestBoundedWeights(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := anyBounded(t, half)
		lambda, ok := b.solve()
		if !ok {
			t.Fatal("not solved")
		}
		e := b.errors(lambda)
		a, y := b.stacked()
		var left, slope mat.VecDense
		left.MulVec(a, e)
		left.SubVec(&left, y)
		slope.MulVec(a.T(), &left)
		size := 1 + mat.Norm(y, 2)*mat.Norm(a, 2)
		for i := range b.sources {
			s := &b.sources[i]
			at, g := e.AtVec(i), slope.AtVec(i)/size
			switch {
			case at < s.low || at > s.high:
				t.Errorf("source %d is out of bounds: %v", i, at)
			case at == s.low && g >= -1e-7, at == s.high && g <= 1e-7:
			case math.Abs(g) > 1e-7:
				t.Errorf("source %d at %v of %v to %v: slope %v", i, at, s.low, s.high, g)
			}
		}
		// The two parts of the sum are told as they are.
		if got, want := mat.Dot(e, e)+mat.Inner(vec(lambda), sym(b.w), vec(lambda)), mat.Dot(&left, &left); math.Abs(got-want) > 1e-6*(1+want) {
			t.Errorf("sum %v, want %v", got, want)
		}
	})
}

// And one case against a general optimiser, with the bounds folded in by
// e = middle + reach sin(free number).
func TestBoundedWeightsAgainstOptimiser(t *testing.T) {
	w := diagonal(0.01, 0.004, 0.02)
	w.Set(0, 1, 0.002)
	b := bounded{
		w: w, d: linear.Vec{1.2, 0.9, 1},
		sources: []source{
			{lever: moments{0.2, 0, 0.07}, low: -half, high: half},
			{lever: moments{0.3, 0.15, 0.2}, low: -half, high: half},
			{lever: moments{0.1, 0.1, 0.09}, low: -0.4, high: half},
			{lever: moments{0.25, 0.1, 0.25}, low: -half, high: half},
		},
	}
	lambda, _ := b.solve()
	e := b.errors(lambda)
	if a, z := e.AtVec(2), e.AtVec(0); a != half || z == half {
		t.Fatalf("the case is to have free and bound weights: %v", mat.Formatted(e.T()))
	}
	a, y := b.stacked()
	sum := func(e *mat.VecDense) float64 {
		var left mat.VecDense
		left.MulVec(a, e)
		left.SubVec(&left, y)
		return mat.Dot(&left, &left)
	}
	fold := func(x []float64) *mat.VecDense {
		e := mat.NewVecDense(len(x), nil)
		for i, v := range x {
			s := &b.sources[i]
			e.SetVec(i, (s.high+s.low)/2+(s.high-s.low)/2*math.Sin(v))
		}
		return e
	}
	result, err := optimize.Minimize(optimize.Problem{Func: func(x []float64) float64 { return sum(fold(x)) }},
		[]float64{0.1, 0.2, 0.3, 0.1}, &optimize.Settings{Converger: &optimize.FunctionConverge{Absolute: 1e-14, Iterations: 2000}}, &optimize.NelderMead{})
	if err != nil {
		t.Fatal(err)
	}
	if !mat.EqualApprox(fold(result.X), e, 1e-4) || sum(e) > result.F+1e-9 {
		t.Errorf("e = %v with %v, the optimiser has %v with %v", mat.Formatted(e.T()), sum(e), mat.Formatted(fold(result.X).T()), result.F)
	}
}

// However many weights, and however they hang together, the solver ends.
func TestManyWeights(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for _, n := range []int{100, 10_000} {
		b := bounded{w: diagonal(1e-6, 1e-6, 1e-6), d: linear.Vec{0.5 * float64(n) * 0.05, 3, 20}}
		for range n {
			u := 0.05 * rng.Float64()
			b.sources = append(b.sources, source{u: u, low: -half, high: half, lever: moments{u, u * rng.Float64() * 1.1, u * rng.Float64()}})
		}
		lambda, ok := b.solve()
		if !ok {
			t.Fatal("not solved")
		}
		if g := vec(b.gradient(lambda)); mat.Norm(g, 2) > 1e-6*mat.Norm(vec(b.d), 2) {
			t.Errorf("%d weights: %v is left", n, mat.Formatted(g.T()))
		}
	}
}

// What readings and parts list together leave is the sum of what the readings
// leave among themselves and what the two leave between them:
// (y - A p)ᵀ (V + A P Aᵀ)⁻¹ (y - A p) in one go.
func TestSumsOfSquaresAddUp(t *testing.T) {
	s := Stand{Wheelbase: 1.05, RearRadius: 0.34, FrontRadius: 0.36, WheelbaseU: 0.003, LevelU: 0.002}
	readings := []Reading{ // of two scales, with what each is off by
		{Front: true, Mass: 41.2, MassU: 0.03}, {Mass: 55.1, MassU: 0.03}, {Front: true, Rise: 0.2, RiseU: 0.001, Mass: 30.6, MassU: 0.05},
		{Rise: 0.2, RiseU: 0.001, Mass: 65.7, MassU: 0.05}, {Front: true, Rise: -0.15, RiseU: 0.001, Mass: 49.2, MassU: 0.03},
	}
	for i := range readings {
		readings[i].PlacingU, readings[i].Scale, readings[i].ScaleU = 0.01, i%2, 0.0005
	}
	items := []mass.Item{
		{Mass: 80, Place: mass.Vec{X: 0.42, Z: 1}, MassU: 0.4, MassSource: 1, PlaceU: mass.Alike(0.01)},
		{Mass: 9, Place: mass.Vec{X: 0.1, Z: 0.5}, MassU: 0.2, MassSource: 2, PlaceU: mass.Alike(0.01), PlaceSource: 1},
		{Mass: 8, Place: mass.Vec{X: 0.9, Z: 0.5}, MassU: 0.2, MassSource: 2, PlaceU: mass.Alike(0.01), PlaceSource: 2},
	}
	p, _ := PaperOf(items)
	m := solve(&s, readings, 1, 3)
	if m == nil || m.Widened != 1 {
		t.Fatalf("%+v", m)
	}
	_, between := Compare(m, p)
	n := len(readings)
	a, left := mat.NewDense(n, 3, nil), mat.NewVecDense(n, nil)
	for i, r := range readings {
		l := s.lever(r.Front, r.Rise)
		a.SetRow(i, l[:])
		left.SetVec(i, r.Mass-l[0]*p.p[0]-l[1]*p.p[1]-l[2]*p.p[2])
	}
	var apa, ap mat.Dense
	ap.Mul(a, sym(p.covariance(3)))
	apa.Mul(&ap, a.T())
	// The doubts that readings share were taken at the measured moments, of the
	// last round but one: the same to many digits.
	whole := sym(covariance(n, effects(&s, loadsOf(readings), m.p)))
	for i := range n {
		for j := i; j < n; j++ {
			whole.SetSym(i, j, whole.At(i, j)+apa.At(i, j))
		}
	}
	var chol mat.Cholesky
	if !chol.Factorize(whole) {
		t.Fatal("not positive definite")
	}
	var solved mat.VecDense
	if err := chol.SolveVecTo(&solved, left); err != nil {
		t.Fatal(err)
	}
	want := mat.Dot(left, &solved)
	if got := m.Self.ChiSquare + between.ChiSquare; math.Abs(got-want) > 1e-6*want || between.ChiSquare < 0.01 || m.Self.ChiSquare < 0.01 {
		t.Errorf("%v + %v = %v, want %v", m.Self.ChiSquare, between.ChiSquare, got, want)
	}
	if m.Self.Freedom != 2 || between.Freedom != 3 {
		t.Errorf("degrees of freedom %d and %d", m.Self.Freedom, between.Freedom)
	}
	// And with weights free, what they cost and leave is the same sum again, as
	// long as none is at its limit.
	w := explainByWeights(m, p)
	if math.Abs(w.Prior+w.Residual-between.ChiSquare) > 1e-9*between.ChiSquare {
		t.Errorf("weights cost %v and leave %v of %v", w.Prior, w.Residual, between.ChiSquare)
	}
}
