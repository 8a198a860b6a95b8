package linear_test

import (
	"math"
	"math/cmplx"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"

	"steelyard/internal/linear"
)

// farthest pairs each value with the nearest that is left, and returns the
// largest distance of a pair.
func farthest(got, want []complex128) float64 {
	left := append([]complex128(nil), want...)
	worst := 0.0
	for _, g := range got {
		best := 0
		for i, w := range left {
			if cmplx.Abs(g-w) < cmplx.Abs(g-left[best]) {
				best = i
			}
		}
		worst = math.Max(worst, cmplx.Abs(g-left[best]))
		left = append(left[:best], left[best+1:]...)
	}
	return worst
}

// The referee is gonum's mat.Eigen.
func TestEigenvaluesAgainstGonum(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for n := 1; n <= 16; n++ {
		for range 200 {
			a, b := linear.NewDense(n, n), mat.NewDense(n, n, nil)
			for i := range n {
				for j := range n {
					v := rng.NormFloat64()
					switch rng.IntN(6) {
					case 0:
						v = 0
					case 1:
						v *= 1e3
					}
					a.Row(i)[j] = v
					b.Set(i, j, v)
				}
			}
			var e mat.Eigen
			if !e.Factorize(b, mat.EigenNone) {
				t.Fatal("gonum gave up")
			}
			got, ok := linear.Eigenvalues(a)
			if !ok {
				t.Fatalf("no eigenvalues of %v", mat.Formatted(b))
			}
			if far := farthest(got, e.Values(nil)); far > 1e-9*(1+mat.Norm(b, 1)) {
				t.Errorf("%d rows: off by %g of %g\n%v\nwant %v", n, far, mat.Norm(b, 1), got, e.Values(nil))
			}
			for i, v := range got {
				if imag(v) > 0 && got[i+1] != cmplx.Conj(v) || imag(v) < 0 && got[i-1] != cmplx.Conj(v) {
					t.Errorf("%v is not beside its conjugate in %v", v, got)
				}
			}
		}
	}
}

// Matrices whose eigenvalues are known: a cyclic shift has the roots of one, on
// which shifts taken from the matrix itself make no headway; a double value in
// one block is found as well as a number of 53 bits allows, half its digits.
func TestEigenvaluesThatAreKnown(t *testing.T) {
	for n := 2; n <= 9; n++ {
		a := linear.NewDense(n, n)
		want := make([]complex128, n)
		for i := range n {
			a.Row((i + 1) % n)[i] = 1
			want[i] = cmplx.Exp(complex(0, 2*math.Pi*float64(i)/float64(n)))
		}
		if got, ok := linear.Eigenvalues(a); !ok || farthest(got, want) > 1e-13 {
			t.Errorf("shift of %d: %v, want %v", n, got, want)
		}
	}
	double := linear.NewDense(4, 4)
	for i, row := range [][]float64{{2, 1, 0, 0}, {0, 2, 1, 0}, {0, 0, -1, 3}, {0, 0, 0, -1}} {
		copy(double.Row(i), row)
	}
	if got, ok := linear.Eigenvalues(double); !ok || farthest(got, []complex128{2, 2, -1, -1}) > 1e-7 {
		t.Errorf("double values: %v", got)
	}
	bad := linear.NewDense(3, 3)
	bad.Row(1)[2] = math.NaN()
	if _, ok := linear.Eigenvalues(bad); ok {
		t.Error("what is not a number has eigenvalues")
	}
	if got, ok := linear.Eigenvalues(linear.NewDense(3, 3)); !ok || farthest(got, make([]complex128, 3)) != 0 {
		t.Errorf("nothing at all: %v", got)
	}
}
