package steer

import (
	"math"
	"math/cmplx"
	"math/rand/v2"
	"testing"
)

// The referee is the polynomial itself: multiplied out again, the zeros give its
// coefficients back. Zeros of very unlike size, in pairs, double, fourfold, nought
// and on the imaginary axis are among them.
func TestZerosOfAQuartic(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 6))
	size := func() float64 { return math.Copysign(math.Pow(10, 3*rng.Float64()-2), rng.Float64()-0.6) }
	two := func() (complex128, complex128) {
		switch rng.IntN(6) {
		case 0:
			s := size()
			return complex(s, 0), complex(s, 0)
		case 1:
			w := math.Abs(size())
			return complex(0, w), complex(0, -w)
		case 2:
			return complex(size(), 0), 0
		case 3:
			s := complex(size(), math.Abs(size()))
			return s, cmplx.Conj(s)
		default:
			return complex(size(), 0), complex(size(), 0)
		}
	}
	for n := range 20000 {
		var want [4]complex128
		want[0], want[1] = two()
		if want[2], want[3] = two(); n%5 == 0 {
			want[2], want[3] = want[0], want[1]
		}
		first := size()
		c := product(want, first)
		for i, v := range product(c.zeros(), first) {
			if math.Abs(v-c[i]) > 1e-10*sizes(want, first)[i] {
				t.Fatalf("quartic %d of %v has zeros %v, which give coefficient %d as %v, not %v", n, want, c.zeros(), i, v, c[i])
			}
		}
		for i, z := range c.zeros() {
			if i%2 == 0 && imag(z) != 0 && c.zeros()[i+1] != cmplx.Conj(z) {
				t.Fatalf("quartic %d: %v are no conjugates", n, c.zeros())
			}
		}
	}
	for _, c := range []quartic{{math.NaN(), 1, 1, 1, 1}, {1, math.Inf(1), 1, 1, 1}, {1, 2, 3, 4, 0}} {
		for _, z := range c.zeros() {
			if !cmplx.IsNaN(z) && !cmplx.IsInf(z) {
				t.Errorf("%v has the zero %v", c, z)
			}
		}
	}
}

// product multiplies a quartic out of its zeros and its first coefficient.
func product(zeros [4]complex128, first float64) (c quartic) {
	list := [5]complex128{complex(first, 0)}
	for n, z := range zeros {
		for i := n + 1; i >= 0; i-- {
			list[i] *= -z
			if i > 0 {
				list[i] += list[i-1]
			}
		}
	}
	for i, v := range list {
		c[i] = real(v)
	}
	return c
}

// sizes are the coefficients as they would be if nothing cancelled, and no zero
// were below a twentieth of the largest.
func sizes(zeros [4]complex128, first float64) quartic {
	var most float64
	for _, z := range zeros {
		most = max(most, cmplx.Abs(z))
	}
	for i, z := range zeros {
		zeros[i] = complex(-max(cmplx.Abs(z), 0.05*most), 0)
	}
	return product(zeros, math.Abs(first))
}
