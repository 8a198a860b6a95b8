package linear_test

import (
	"fmt"
	"math"
	"testing"

	"steelyard/internal/linear"
)

// The Hilbert matrices H_ij = 1/(i + j - 1) have inverses of whole numbers, and
// condition numbers that are printed in tables (R. T. Gregory and D. L. Karney, A
// Collection of Matrices for Testing Computational Algorithms, 1969 (memory)).
func TestHilbert(t *testing.T) {
	for n, want := range map[int]float64{1: 1, 2: 27, 3: 748, 4: 28375, 5: 943656, 6: 29070279} {
		chol, ok := linear.Factorize(hilbert(n))
		if !ok {
			t.Errorf("n = %d: refused", n)
			continue
		}
		tolerance := 1e-15 * want // relative, and of the inverse too
		if got := chol.Cond(); math.Abs(got-want) > tolerance*want {
			t.Errorf("n = %d: cond %v, want %v", n, got, want)
		}
		corner := float64(n * n) // of the inverse
		if got := chol.Inverse().At(0, 0); math.Abs(got-corner) > tolerance*corner+1e-12 {
			t.Errorf("n = %d: corner of the inverse %v, want %v", n, got, corner)
		}
	}
	if _, ok := linear.Factorize(hilbert(16)); ok { // cond 2e22
		t.Error("n = 16: taken")
	}
}

func hilbert(n int) *linear.Sym {
	h := linear.NewSym(n)
	for i := range n {
		for j := range i + 1 {
			h.Set(i, j, 1/float64(i+j+1))
		}
	}
	return h
}

// What is no positive definite matrix of numbers is refused, and nothing panics.
func TestNoMatrix(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, v := range [][3]float64{
		{0, 0, 0}, {1, 0, 0}, {0, 0, 1}, {-1, 0, 1}, {1, 0, -1}, {1, 1, 1}, {1, 2, 1}, {0, 1, 0},
		{nan, 0, 1}, {1, nan, 1}, {1, 0, nan}, {inf, 0, 1}, {1, inf, 1}, {1, 0, inf}, {inf, inf, inf}, {-inf, 0, 1},
		{1e300, 0, 1}, {5e-324, 0, 5e-324}, {1, 0, 1e-17},
	} {
		a := linear.NewSym(2)
		a.Set(0, 0, v[0])
		a.Set(1, 0, v[1])
		a.Set(1, 1, v[2])
		if chol, ok := linear.Factorize(a); ok || chol != nil {
			t.Errorf("%v: taken", v)
		}
	}
}

// Sizes that do not fit are no sum of half of the terms.
func TestSizes(t *testing.T) {
	two, three := linear.Vec{1, 2}, linear.Vec{1, 2, 3}
	s := linear.NewSym(2)
	s.Set(0, 0, 1)
	s.Set(1, 1, 1)
	chol, _ := linear.Factorize(s)
	for what, do := range map[string]func(){
		"Dot":           func() { two.Dot(three) },
		"AddScaled":     func() { three.AddScaled(1, two) },
		"Add":           func() { s.Add(linear.NewSym(3)) },
		"AddOuter":      func() { s.AddOuter(1, three) },
		"MulVec into":   func() { s.MulVec(three, two) },
		"MulVec of":     func() { s.MulVec(two, three) },
		"Inner left":    func() { s.Inner(three, two) },
		"Inner right":   func() { s.Inner(two, three) },
		"SolveVec into": func() { chol.SolveVec(three, two) },
		"SolveVec of":   func() { chol.SolveVec(two, three) },
		"Solve":         func() { chol.Solve(linear.NewDense(3, 1)) },
		"SetColumn":     func() { linear.NewDense(3, 1).SetColumn(0, two) },
	} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("%s goes on", what)
				}
			}()
			do()
		}()
	}
}

// The loop over ten thousand parts takes no memory.
func TestNoAllocation(t *testing.T) {
	s, x, y := hilbert(3), linear.Vec{1, 2, 3}, make(linear.Vec, 3)
	chol, _ := linear.Factorize(s)
	if n := testing.AllocsPerRun(100, func() {
		s.AddOuter(1, x)
		y.AddScaled(s.Inner(x, x), x)
		s.MulVec(y, x)
		chol.SolveVec(y, x)
	}); n != 0 {
		t.Errorf("%v allocations", n)
	}
}

// A line through three points, y = p + q x, by its normal equations.
func Example() {
	points := [][2]float64{{0, 1}, {1, 3}, {2, 4}}
	normal, right := linear.NewSym(2), make(linear.Vec, 2)
	for _, p := range points {
		row := linear.Vec{1, p[0]}
		normal.AddOuter(1, row)
		right.AddScaled(p[1], row)
	}
	chol, ok := linear.Factorize(normal)
	if !ok {
		return
	}
	line := make(linear.Vec, 2)
	chol.SolveVec(line, right)
	fmt.Printf("y = %.4f + %.4f x\n", line[0], line[1])
	// Output: y = 1.1667 + 1.5000 x
}

// BenchmarkAddOuter is one part's share of a covariance.
func BenchmarkAddOuter(b *testing.B) {
	s, x := linear.NewSym(3), linear.Vec{1, 0.4, 0.6}
	b.ReportAllocs()
	for b.Loop() {
		s.AddOuter(1, x)
	}
}
