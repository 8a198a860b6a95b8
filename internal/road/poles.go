package road

import (
	"cmp"
	"math"
	"math/cmplx"

	"steelyard/internal/linear"
	"steelyard/internal/order"
)

// list are the poles of a system, without memory of its own.
type list struct {
	n    int
	pole [maxPoles]pole
}

// all are the poles.
func (l *list) all() []pole { return l.pole[:l.n] }

// places are where the poles lie.
func (l *list) places() (s [maxPoles]complex128) {
	for i := range l.all() {
		s[i] = l.pole[i].s
	}
	return s
}

// vector is a state of the coordinates at a complex frequency.
type vector [maxDOF]complex128

// dot is rᵀ v.
func (r *row) dot(v *vector) (sum complex128) {
	for i, a := range r {
		sum += complex(a*real(v[i]), a*imag(v[i]))
	}
	return sum
}

// pole is a motion that goes on by itself as exp(s t): its shape u, and what the
// square of its shape is divided by in the response, d = uᵀ (2 s M + C) u. Of two
// conjugate poles only the one above the real axis is kept, and counts twice.
type pole struct {
	s     complex128
	u     vector
	d     complex128
	twice bool
}

// weight is how often a pole counts.
func (p *pole) weight() float64 {
	if p.twice {
		return 2 // of a conjugate pair, the real part
	}
	return 1
}

// dynamic is M s² + C s + K.
func (s *system) dynamic(at complex128) (a [maxDOF]vector) {
	re2, im2 := real(at)*real(at)-imag(at)*imag(at), 2*real(at)*imag(at)
	for i := range s.n {
		m, c, k := &s.m[i], &s.c[i], &s.k[i]
		for j := range s.n {
			a[i][j] = complex(m[j]*re2+c[j]*real(at)+k[j], m[j]*im2+c[j]*imag(at))
		}
	}
	return a
}

// size is a magnitude that is quicker to find than the absolute value.
func size(z complex128) float64 { return math.Abs(real(z)) + math.Abs(imag(z)) }

// inverse is 1/z.
func inverse(z complex128) complex128 {
	f := 1 / (real(z)*real(z) + imag(z)*imag(z))
	return complex(real(z)*f, -imag(z)*f)
}

// solve solves (M s² + C s + K) x = b for two right sides at once, in place: by
// Gauss's elimination with the largest in the column as the pivot.
func (s *system) solve(at complex128, x, y *vector) {
	a := s.dynamic(at)
	n := s.n
	for k := range n {
		p := k
		for i := k + 1; i < n; i++ {
			if size(a[i][k]) > size(a[p][k]) {
				p = i
			}
		}
		if p != k {
			a[p], a[k] = a[k], a[p]
			x[p], x[k] = x[k], x[p]
			y[p], y[k] = y[k], y[p]
		}
		if size(a[k][k]) < 1e-280 { // at a pole to the last digit
			a[k][k] = 1e-280
		}
		inv := inverse(a[k][k])
		a[k][k] = inv
		for i := k + 1; i < n; i++ {
			f := a[i][k] * inv
			for j := k + 1; j < n; j++ {
				a[i][j] -= f * a[k][j]
			}
			x[i] -= f * x[k]
			y[i] -= f * y[k]
		}
	}
	for k := n - 1; k >= 0; k-- {
		for j := k + 1; j < n; j++ {
			x[k] -= a[k][j] * x[j]
			y[k] -= a[k][j] * y[j]
		}
		x[k] *= a[k][k]
		y[k] *= a[k][k]
	}
}

// slope is (2 s M + C) u.
func (s *system) slope(at complex128, u *vector) (out vector) {
	for i := range s.n {
		for j := range s.n {
			out[i] += complex(2*real(at)*s.m[i][j]+s.c[i][j], 2*imag(at)*s.m[i][j]) * u[j]
		}
	}
	return out
}

// inner is uᵀ v, without conjugates.
func inner(u, v *vector) (sum complex128) {
	for i, a := range u {
		sum += a * v[i]
	}
	return sum
}

// rayleigh puts a pole's frequency where it is, for the shape that it has. The
// matrices are symmetric, so that it is wrong by only the square of what the
// shape is.
func (s *system) rayleigh(p *pole) {
	a := s.dynamic(p.s)
	var f complex128
	for i := range s.n {
		for j := range s.n {
			f += p.u[i] * a[i][j] * p.u[j]
		}
	}
	t := s.slope(p.s, &p.u)
	p.d = inner(&p.u, &t)
	if p.d != 0 {
		p.s -= f * inverse(p.d)
	}
	if !p.twice {
		p.s = complex(real(p.s), 0)
	}
}

// refine takes a pole that is nearly right to where it is. One step is enough
// from a place a thousandth away: the error goes with its third power.
func (s *system) refine(p *pole) {
	s.rayleigh(p)
	x := s.slope(p.s, &p.u)
	var none vector
	s.solve(p.s, &x, &none)
	// As long as it was, so that it neither grows nor fades.
	var most float64
	for _, v := range x {
		most = max(most, size(v))
	}
	if most > 0 && !math.IsInf(most, 0) {
		for i := range x {
			p.u[i] = complex(real(x[i])/most, imag(x[i])/most)
		}
	}
	s.rayleigh(p)
	t := s.slope(p.s, &p.u)
	p.d = inner(&p.u, &t)
}

// poles finds the motions that go on by themselves, the slowest first; ok is false
// where some motion has no mass or the numbers are none. Where two are so near
// each other that their shapes cannot be told apart, stiffness and damping are
// moved by some ten-millionths until they can.
func (s *system) poles() (l list, ok bool) {
	for nudge := 1e-7; nudge < 1e-3; nudge *= 10 {
		l, ok = s.eigen()
		if !ok || s.apart(&l) {
			return l, ok
		}
		for i := range s.n {
			s.k[i][i] *= 1 + nudge*float64(2*i+1)
			s.c[i][i] *= 1 + nudge*float64(i+1)
		}
	}
	return l, ok
}

// apart says whether all poles can be told from each other. Two that have
// different shapes may be as near as the shapes can be found, to a part in 1e8.
// Two that share one, as at critical damping, make d nearly nothing, and the sums
// over poles lose twice as many digits as d has.
func (s *system) apart(l *list) bool {
	all := l.all()
	for i := range all {
		p := &all[i]
		for j := range i {
			if cmplx.Abs(p.s-all[j].s) < 2e-8*cmplx.Abs(p.s) {
				return false
			}
		}
		var whole float64
		for i := range s.n {
			for j := range s.n {
				whole += cmplx.Abs(p.u[i]*p.u[j]) * (2*math.Abs(s.m[i][j])*cmplx.Abs(p.s) + math.Abs(s.c[i][j]))
			}
		}
		if cmplx.Abs(p.d) < 1e-4*whole {
			return false
		}
	}
	return true
}

func (s *system) eigen() (l list, ok bool) {
	n := s.n
	// The state matrix [0 1; -M⁻¹K -M⁻¹C].
	m, right := linear.NewSym(n), linear.NewDense(n, 2*n)
	for i := range n {
		r := right.Row(i)
		for j := range n {
			m.Set(i, j, s.m[i][j])
			r[j], r[n+j] = -s.k[i][j], -s.c[i][j]
		}
	}
	chol, ok := linear.Factorize(m)
	if !ok {
		return l, false
	}
	below := chol.Solve(right)
	a := linear.NewDense(2*n, 2*n)
	for i := range n {
		a.Row(i)[n+i] = 1
		copy(a.Row(n+i), below.Row(i))
	}
	values, ok := linear.Eigenvalues(a)
	if !ok {
		return l, false
	}
	for _, v := range values {
		if imag(v) < 0 {
			continue
		}
		p := pole{s: v, twice: imag(v) > 0}
		// The vector that is turned into nothing, by inverse iteration from ones
		// that are not square to any.
		for i := range n {
			p.u[i] = complex(1, 0.3*float64(i))
			if !p.twice {
				p.u[i] = complex(1+0.3*float64(i), 0)
			}
		}
		near := v * (1 + 1e-9)
		for range 2 {
			var none vector
			s.solve(near, &p.u, &none)
			var most float64
			for _, c := range p.u {
				most = max(most, size(c))
			}
			if most == 0 || math.IsInf(most, 0) || math.IsNaN(most) {
				return l, false
			}
			for i := range n {
				p.u[i] = complex(real(p.u[i])/most, imag(p.u[i])/most)
			}
		}
		s.refine(&p)
		l.pole[l.n] = p
		l.n++
	}
	order.Stable(l.all(), func(a, b pole) int { return cmp.Compare(cmplx.Abs(a.s), cmplx.Abs(b.s)) })
	return l, true
}

// follow takes the poles of a system to where those of one that is hardly another
// are.
func (s *system) follow(l *list) {
	for i := range l.n {
		s.refine(&l.pole[i])
	}
}
