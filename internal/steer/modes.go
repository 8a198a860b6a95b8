package steer

import (
	"math"
	"math/cmplx"

	"steelyard/internal/mass"
)

// at returns the stiffness and the damping at a speed, m/s.
func (m *Model) at(v float64) (k, c Matrix) {
	for i := range 2 {
		for j := range 2 {
			k[i][j] = Gravity*m.K0[i][j] + v*v*m.K2[i][j]
			c[i][j] = v * m.C1[i][j]
		}
	}
	return k, c
}

// Eigenvalues returns the four eigenvalues at a speed, 1/s, those with a larger
// imaginary part first and then those with a larger real part: a weave that is
// one comes before what creeps. They are the zeros of det(M s² + C s + K).
func (m *Model) Eigenvalues(v float64) [4]complex128 {
	p := m.characteristic(v)
	out := p.zeros()
	paired := imag(out[0]) != 0 || imag(out[2]) != 0
	before := func(a, b complex128) bool {
		if paired {
			// Conjugates come beside each other, the one above the axis first.
			if x, y := math.Abs(imag(a)), math.Abs(imag(b)); x != y {
				return x > y
			}
		}
		if imag(a) != imag(b) {
			return imag(a) > imag(b)
		}
		return real(a) > real(b)
	}
	for i := 1; i < len(out); i++ {
		for j := i; j > 0 && before(out[j], out[j-1]); j-- {
			out[j], out[j-1] = out[j-1], out[j]
		}
	}
	return out
}

// characteristic is det(M s² + v C1 s + g K0 + v² K2).
func (m *Model) characteristic(v float64) quartic {
	k, c := m.at(v)
	mixed := func(a, b *Matrix) float64 {
		return a[0][0]*b[1][1] + a[1][1]*b[0][0] - a[0][1]*b[1][0] - a[1][0]*b[0][1]
	}
	return quartic{k.det(), mixed(&k, &c), mixed(&m.M, &k) + c.det(), mixed(&m.M, &c), m.M.det()}
}

// Rate is an eigenvalue with how it moves: Growth is its real part, 1/s, and
// Frequency its imaginary part over 2π, Hz.
func (m *Model) Rate(v float64, s complex128) (growth, frequency mass.Figure) {
	gradient, _, ok := m.moves(v, s)
	if !ok { // two in one place, which move at once
		return mass.Figure{Value: real(s)}, mass.Figure{Value: imag(s) / (2 * math.Pi)}
	}
	var re, im [numEntries]float64
	for i, g := range gradient {
		re[i], im[i] = real(g), imag(g)/(2*math.Pi)
	}
	return m.figure(real(s), &re), m.figure(imag(s)/(2*math.Pi), &im)
}

// moves returns how an eigenvalue moves with each entry of the matrices and with
// the speed: with the vectors q and p that are turned into nothing on either
// side, ds = -pᵀ (dM s² + v dC s + g dK0 + v² dK2) q / pᵀ (2 M s + C) q. Ok is
// false where two are in one place.
func (m *Model) moves(v float64, s complex128) (entries [numEntries]complex128, withSpeed complex128, ok bool) {
	k, c := m.at(v)
	var a [2][2]complex128
	for i := range 2 {
		for j := range 2 {
			a[i][j] = complex(m.M[i][j], 0)*s*s + complex(c[i][j], 0)*s + complex(k[i][j], 0)
		}
	}
	// The longer row, and the longer column, are across what they turn into nothing.
	q := [2]complex128{-a[0][1], a[0][0]}
	if cmplx.Abs(a[1][0])+cmplx.Abs(a[1][1]) > cmplx.Abs(a[0][0])+cmplx.Abs(a[0][1]) {
		q = [2]complex128{-a[1][1], a[1][0]}
	}
	p := [2]complex128{-a[1][0], a[0][0]}
	if cmplx.Abs(a[0][1])+cmplx.Abs(a[1][1]) > cmplx.Abs(a[0][0])+cmplx.Abs(a[1][0]) {
		p = [2]complex128{-a[1][1], a[0][1]}
	}
	var below, size, speed complex128
	for i := range 2 {
		for j := range 2 {
			w := p[i] * q[j]
			below += w * (2*complex(m.M[i][j], 0)*s + complex(c[i][j], 0))
			size += complex(cmplx.Abs(w)*(2*math.Abs(m.M[i][j])*cmplx.Abs(s)+math.Abs(c[i][j])), 0)
			speed += w * (complex(m.C1[i][j], 0)*s + complex(2*v*m.K2[i][j], 0))
		}
	}
	if cmplx.Abs(below) <= 1e-9*cmplx.Abs(size) {
		return entries, 0, false
	}
	at := func(i, j int, f complex128) complex128 { return -p[i] * q[j] * f / below }
	g, vv, vs := complex(Gravity, 0), complex(v*v, 0), complex(v, 0)*s
	entries[m00] = at(0, 0, s*s)
	entries[m01] = at(0, 1, s*s) + at(1, 0, s*s)
	entries[m11] = at(1, 1, s*s)
	entries[k00] = at(0, 0, g)
	entries[k01] = at(0, 1, g) + at(1, 0, g)
	entries[k11] = at(1, 1, g)
	entries[k201] = at(0, 1, vv)
	entries[k211] = at(1, 1, vv)
	entries[c01] = at(0, 1, vs)
	entries[c10] = at(1, 0, vs)
	entries[c11] = at(1, 1, vs)
	return entries, -speed / below, true
}

// Weave returns the speed above which the weave dies away, m/s; ok is false for a
// bicycle that has none.
//
// A pair of eigenvalues ±iω fulfils a1 a2 a3 = a1² a4 + a0 a3² (Routh and
// Hurwitz) with ω² = a1/a3 > 0. As a1 and a3 are odd in the speed and the others
// even, that is a quadratic in the square of the speed.
func (m *Model) Weave() (speed mass.Figure, ok bool) {
	// Coefficients of characteristic(v) by powers of v²: read off at speeds where
	// they separate.
	still, one := m.characteristic(0), m.characteristic(1)
	two := m.characteristic(2)
	a4, a3 := still[4], one[3]
	a2 := [2]float64{still[2], one[2] - still[2]}
	a0 := [2]float64{still[0], one[0] - still[0]}
	// a1 = v (b + c v²).
	c := (two[1]/2 - one[1]) / 3
	a1 := [2]float64{one[1] - c, c}
	quad := [3]float64{
		a1[0]*a2[0]*a3 - a1[0]*a1[0]*a4 - a0[0]*a3*a3,
		(a1[0]*a2[1]+a1[1]*a2[0])*a3 - 2*a1[0]*a1[1]*a4 - a0[1]*a3*a3,
		a1[1]*a2[1]*a3 - a1[1]*a1[1]*a4,
	}
	best := 0.0
	for _, s := range quadraticZeros(quad) {
		if !(s > 0) {
			continue
		}
		v, ww := math.Sqrt(s), (a1[0]+a1[1]*s)/a3
		if !(ww > 0) {
			continue
		}
		// It must die away above, and everything faster be what matters.
		if _, rate, ok := m.moves(v, complex(0, math.Sqrt(ww))); ok && real(rate) < 0 && v > best {
			best = v
		}
	}
	if best == 0 {
		return mass.Figure{}, false
	}
	ww := (a1[0] + a1[1]*best*best) / a3
	gradient, rate, _ := m.moves(best, complex(0, math.Sqrt(ww)))
	var slope [numEntries]float64
	for i, g := range gradient {
		slope[i] = -real(g) / real(rate)
	}
	return m.figure(best, &slope), true
}

// quadraticZeros returns the real zeros of c0 + c1 x + c2 x².
func quadraticZeros(c [3]float64) []float64 {
	if c[2] == 0 {
		if c[1] == 0 {
			return nil
		}
		return []float64{-c[0] / c[1]}
	}
	x, y := factor{c[1] / c[2], c[0] / c[2]}.zeros()
	if imag(x) != 0 {
		return nil
	}
	return []float64{real(x), real(y)}
}

// Capsize returns the speed from which on the bicycle falls over slowly, with the
// bar left to itself, m/s: there det(g K0 + v² K2) is 0. Ok is false for a
// bicycle that has no such speed.
func (m *Model) Capsize() (speed mass.Figure, ok bool) {
	k := &m.K0
	d := k[0][0]*m.K2[1][1] - k[1][0]*m.K2[0][1]
	n := k.det()
	vv := -Gravity * n / d
	if d == 0 || !(vv > 0) || math.IsInf(vv, 0) {
		return mass.Figure{}, false
	}
	v := math.Sqrt(vv)
	// An eigenvalue that goes from below to above 0, not the other way round: at
	// 0 it moves against the determinant, if the others die away.
	_, rate, moves := m.moves(v, 0)
	if !moves || !(real(rate) > 0) {
		return mass.Figure{}, false
	}
	// d(v²) = -g (dn/d - n dd/d²), and dv = d(v²)/2v.
	f := -Gravity / (2 * v * d)
	r := n / d
	var slope [numEntries]float64
	slope[k00] = f * (k[1][1] - r*m.K2[1][1])
	slope[k11] = f * k[0][0]
	slope[k01] = f * (-2*k[0][1] + r*m.K2[0][1])
	slope[k211] = -f * r * k[0][0]
	slope[k201] = f * r * k[1][0]
	return m.figure(v, &slope), true
}
