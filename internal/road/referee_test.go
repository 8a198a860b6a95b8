package road_test

import (
	"math"
	"math/cmplx"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/mat"

	"steelyard/internal/road"
)

// state is the motion as a system of the first order that a white w' drives:
// with x = q - g w, where g is where a road that is higher by 1 under one wheel
// leaves the bike, and y = q',
//
//	x' = y - g w',  y' = M⁻¹ (-K x - C y + J ct w')
type state struct {
	a *mat.Dense
	b [2]*mat.VecDense
	p *road.Plain
}

func newState(t *testing.T, p *road.Plain) *state {
	t.Helper()
	n := p.N
	s := &state{a: mat.NewDense(2*n, 2*n, nil), p: p}
	var inv, mk, mc mat.Dense
	if err := inv.Inverse(p.M); err != nil {
		t.Fatal(err)
	}
	mk.Mul(&inv, p.K)
	mc.Mul(&inv, p.C)
	for i := range n {
		s.a.Set(i, n+i, 1)
		for j := range n {
			s.a.Set(n+i, j, -mk.At(i, j))
			s.a.Set(n+i, n+j, -mc.At(i, j))
		}
	}
	for side := range 2 {
		var g, pull, f mat.VecDense
		f.ScaleVec(p.Kt[side], p.Axle[side])
		if err := g.SolveVec(p.K, &f); err != nil {
			t.Fatal(err)
		}
		pull.MulVec(&inv, p.Axle[side])
		s.b[side] = mat.NewVecDense(2*n, nil)
		for i := range n {
			s.b[side].SetVec(i, -g.AtVec(i))
			s.b[side].SetVec(n+i, p.Ct[side]*pull.AtVec(i))
		}
	}
	return s
}

// output is the row that reads a figure off the state, the road's own rate of
// change aside; direct is by how much that counts.
func (s *state) output(k road.Kind) (row *mat.VecDense, direct [2]float64) {
	n := s.p.N
	row = mat.NewVecDense(2*n, nil)
	r := s.p.Row[k]
	for i := range n {
		switch k {
		case road.LoadFront, road.LoadRear:
			row.SetVec(i, -s.p.Kt[k]*r.AtVec(i))
			row.SetVec(n+i, -s.p.Ct[k]*r.AtVec(i))
			direct[k] = s.p.Ct[k]
		case road.TravelFront, road.TravelRear:
			row.SetVec(i, r.AtVec(i))
		default:
			for j := range 2 * n {
				row.SetVec(j, row.AtVec(j)+r.AtVec(i)*s.a.At(n+i, j))
			}
			for side := range direct {
				direct[side] += r.AtVec(i) * s.b[side].AtVec(n+i)
			}
		}
	}
	return row, direct
}

// lyapunov solves A X + X Aᵀ = -b cᵀ as one system of all the entries of X.
func lyapunov(t *testing.T, a *mat.Dense, b, c *mat.VecDense) *mat.Dense {
	t.Helper()
	n, _ := a.Dims()
	big, right := mat.NewDense(n*n, n*n, nil), mat.NewVecDense(n*n, nil)
	for i := range n {
		for j := range n {
			at := i*n + j
			right.SetVec(at, -b.AtVec(i)*c.AtVec(j))
			for k := range n {
				big.Set(at, k*n+j, big.At(at, k*n+j)+a.At(i, k))
				big.Set(at, i*n+k, big.At(at, i*n+k)+a.At(j, k))
			}
		}
	}
	var x mat.VecDense
	if err := x.SolveVec(big, right); err != nil {
		t.Log(err)
	}
	return mat.NewDense(n, n, x.RawVector().Data)
}

var plainKinds = []road.Kind{road.LoadFront, road.LoadRear, road.RackUp, road.ForkBagsUp, road.BarBagUp, road.TravelFront, road.TravelRear}

// The same matrices through a Lyapunov equation, and the delay of the rear wheel
// through a matrix exponential, both gonum's.
func TestLyapunov(t *testing.T) {
	const q = 0.001
	for name, b := range every() {
		b.PointContact = true
		for i := range b.Ends {
			b.Ends[i].Tyre.Lag.Value = 0
		}
		if b.Ends[road.Front].Spring == nil || b.Ends[road.Rear].Spring == nil {
			if b.Standing == nil {
				continue // nothing but the tyres' damping there
			}
		}
		m := model(t, b)
		s := newState(t, m.Plain())
		r := at(t, m, 1, white(q))
		var far mat.Dense
		far.Scale(b.FrontAxle.X-b.RearAxle.X, s.a) // at 1 m/s
		far.Exp(&far)
		own := [2]*mat.Dense{lyapunov(t, s.a, s.b[0], s.b[0]), lyapunov(t, s.a, s.b[1], s.b[1])}
		var cross mat.Dense
		cross.Mul(&far, lyapunov(t, s.a, s.b[0], s.b[1]))
		for _, k := range plainKinds {
			f := r.Figures[k]
			if !f.There {
				continue
			}
			row, _ := s.output(k)
			v := q * (mat.Inner(row, own[0], row) + mat.Inner(row, own[1], row) + 2*mat.Inner(row, &cross, row))
			want := math.Sqrt(v)
			if k <= road.LoadRear {
				want /= m.Static(road.Side(k))
			}
			near(t, name+" "+k.String(), f.Value, want, 1e-9)
		}
	}
}

// Gonum's eigenvalues of the state matrix.
func TestEigenvalues(t *testing.T) {
	for name, b := range every() {
		m := model(t, b)
		p := m.Plain()
		var e mat.Eigen
		if !e.Factorize(newState(t, p).a, mat.EigenNone) {
			t.Fatal("gonum finds none")
		}
		var want []complex128
		for _, v := range e.Values(nil) {
			if imag(v) >= 0 {
				want = append(want, v)
			}
		}
		if len(want) != len(p.Poles) {
			t.Fatalf("%s: %v, want %v", name, p.Poles, want)
		}
		for _, v := range p.Poles {
			if !slices.ContainsFunc(want, func(w complex128) bool { return cmplx.Abs(v-w) < 1e-9*cmplx.Abs(w) }) {
				t.Errorf("%s: %v is none of %v", name, v, want)
			}
		}
		for _, o := range m.Modes() {
			if o.Motion == "" || !(o.Frequency.Value > 0 && o.Damping.Value > 0) {
				t.Errorf("%s: mode %q of %g Hz", name, o.Motion, o.Frequency.Value)
			}
		}
	}
}

// The spectra, integrated by Simpson's rule over the logarithm of the frequency,
// add up to the squares of the figures.
func TestSpectraAddUp(t *testing.T) {
	const n, from, to = 16000, 0.02, 6000
	frequencies := make([]float64, n+1)
	step := math.Log(to/from) / n
	for i := range frequencies {
		frequencies[i] = from * math.Exp(step*float64(i))
	}
	for name, b := range every() {
		speed := 2.0
		if name == "both sprung" {
			speed = 8
		}
		m := model(t, b)
		r := at(t, m, speed, gravel())
		for k := range road.LiftFront {
			if !r.Figures[k].There {
				continue
			}
			s := m.Spectrum(k, speed, gravel(), frequencies)
			var sum float64
			for i, v := range s {
				w := float64(2 + 2*(i%2))
				if i == 0 || i == n {
					w = 1
				}
				sum += w * v * frequencies[i] * step / 3
			}
			near(t, name+" "+k.String(), math.Sqrt(sum), r.Figures[k].Value, 1e-3)
		}
	}
}

// 200 s of a road whose spectrum is that of the standard, integrated exactly by
// gonum's matrix exponential: w' is steady for a millisecond at a time, and felt
// averaged over the contacts.
func TestFrequencyAgainstTime(t *testing.T) {
	const dt, seconds, speed = 0.001, 200.0, 5.0
	random := rand.New(rand.NewPCG(1, 2))
	b := rough(2.1)
	m := model(t, b)
	p := m.Plain()
	s := newState(t, p)
	n := int(seconds / dt)
	// q of the road, see the reference on white roads: half of (2π)² n0² Gd v.
	q := 2 * math.Pi * math.Pi * 0.01 * gravel().Roughness.Value * speed
	white := make([]float64, n)
	for i := range white {
		white[i] = random.NormFloat64() * math.Sqrt(q/dt)
	}
	var felt [2][]float64
	for side := range felt {
		width := int(math.Round(p.Contact[side] / speed / dt))
		delay := 0
		if side == 1 {
			delay = int(math.Round(p.Distance / speed / dt))
		}
		felt[side] = make([]float64, n)
		var sum float64
		for i := range felt[side] {
			if k := i - delay; k >= 0 {
				sum += white[k]
				if k >= width {
					sum -= white[k-width]
				}
			}
			felt[side][i] = sum / float64(width)
		}
	}
	// exp of [A B; 0 0] dt has the step of the state and that of what drives it.
	d := 2 * p.N
	all := mat.NewDense(d+2, d+2, nil)
	for i := range d {
		for j := range d {
			all.Set(i, j, dt*s.a.At(i, j))
		}
		all.Set(i, d, dt*s.b[0].AtVec(i))
		all.Set(i, d+1, dt*s.b[1].AtVec(i))
	}
	all.Exp(all)
	x, next := mat.NewVecDense(d+2, nil), mat.NewVecDense(d+2, nil)
	squares := map[road.Kind]float64{}
	type reading struct {
		row    *mat.VecDense
		direct [2]float64
	}
	rows := map[road.Kind]reading{}
	for _, k := range plainKinds {
		row, direct := s.output(k)
		rows[k] = reading{row, direct}
	}
	for i := range n {
		x.SetVec(d, felt[0][i])
		x.SetVec(d+1, felt[1][i])
		next.MulVec(all, x)
		x, next = next, x
		for k, r := range rows {
			y := mat.Dot(r.row, x.SliceVec(0, d)) + r.direct[0]*felt[0][i] + r.direct[1]*felt[1][i]
			squares[k] += y * y / float64(n)
		}
	}
	ride := at(t, m, speed, gravel())
	for _, k := range plainKinds {
		want := math.Sqrt(squares[k])
		if k <= road.LoadRear {
			want /= m.Static(road.Side(k))
		}
		// The slowest motion has about 2 Hz of width, so that 200 s are some 800
		// independent values: 1/√1600 of the root mean square, three times that.
		near(t, k.String(), ride.Figures[k].Value, want, 0.075)
	}
}
