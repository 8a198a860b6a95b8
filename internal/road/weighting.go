package road

import (
	"math"
	"math/cmplx"
)

// Weighting is a frequency weighting of what a body feels, a product of
//
//	high pass  s² / (s² + s w1/Q1 + w1²)
//	low pass   1 / (1 + s/(Q2 w2) + (s/w2)²)
//	transition (1 + s/w3) / (1 + s/(Q4 w4) + (s/w4)²)
//	step       (f5/f6)² (1 + s/(Q5 w5) + (s/w5)²) / (1 + s/(Q6 w6) + (s/w6)²)
//
// with the parameters of ISO 8041; Q1 and Q2 are 1/√2.
type Weighting struct {
	f1, f2, f3, f4, q4 float64
	f5, q5, f6, q6     float64 // 0 for no step
}

// Wk is the weighting of ISO 2631-1 for vertical vibration of a seated or
// standing person.
func Wk() Weighting { return Weighting{0.4, 100, 12.5, 12.5, 0.63, 2.37, 0.91, 3.35, 0.91} }

// Wh is the weighting of ISO 5349-1 for vibration that hands are given.
func Wh() Weighting {
	f := 100 / (2 * math.Pi)
	return Weighting{f1: math.Pow(10, 0.8), f2: math.Pow(10, 3.1), f3: f, f4: f, q4: 0.64}
}

// quadratic is 1 + s/(Q w) + (s/w)² with w = 2πf.
type quadratic struct{ w, q float64 }

func (a quadratic) at(s complex128) complex128 {
	x, y := real(s)/a.w, imag(s)/a.w
	return complex(1+x/a.q+x*x-y*y, y/a.q+2*x*y)
}

// slope is its derivative.
func (a quadratic) slope(s complex128) complex128 {
	return complex(1/(a.q*a.w), 0) + 2*s/complex(a.w*a.w, 0)
}

// pole is its zero above the real axis.
func (a quadratic) pole() complex128 {
	return complex(-a.w/(2*a.q), a.w*math.Sqrt(1-1/(4*a.q*a.q)))
}

// below are the factors under the fraction bar.
func (w Weighting) below() (list [4]quadratic, n int) {
	list = [4]quadratic{
		{2 * math.Pi * w.f1, math.Sqrt2 / 2}, {2 * math.Pi * w.f2, math.Sqrt2 / 2}, {2 * math.Pi * w.f4, w.q4}, {2 * math.Pi * w.f6, w.q6},
	}
	if w.f6 == 0 {
		return list, 3
	}
	return list, 4
}

// above is what is over it.
func (w Weighting) above(s complex128) complex128 {
	w1, w3 := 2*math.Pi*w.f1, 2*math.Pi*w.f3
	x, y := real(s)/w1, imag(s)/w1
	n := complex(x*x-y*y, 2*x*y) * complex(1+real(s)/w3, imag(s)/w3)
	if w.f6 != 0 {
		r := w.f5 / w.f6
		n *= complex(r*r, 0) * quadratic{2 * math.Pi * w.f5, w.q5}.at(s)
	}
	return n
}

// At is the weighting at a complex frequency s, 1/s.
func (w Weighting) At(s complex128) complex128 {
	list, n := w.below()
	under := complex(1, 0)
	for i := range n {
		under *= list[i].at(s)
	}
	return w.above(s) * inverse(under)
}

// Gain is by what a vibration of the frequency f, Hz, is multiplied.
func (w Weighting) Gain(f float64) float64 { return cmplx.Abs(w.At(complex(0, 2*math.Pi*f))) }

// residues are the poles above the real axis and what the weighting is near
// them: residue/(s - pole).
func (w Weighting) residues() (poles, residues []complex128) {
	below, n := w.below()
	for i := range n {
		p := below[i].pole()
		r := w.above(p) / below[i].slope(p)
		for j := range n {
			if j != i {
				r /= below[j].at(p)
			}
		}
		poles, residues = append(poles, p), append(residues, r)
	}
	return poles, residues
}
