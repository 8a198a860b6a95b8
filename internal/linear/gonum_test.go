package linear_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"

	"steelyard/internal/linear"
)

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

func anyVec(t *rapid.T, name string, n int) linear.Vec {
	return rapid.SliceOfN(rapid.Float64Range(-10, 10), n, n).Draw(t, name)
}

// anySym draws a matrix that is symmetric and no more.
func anySym(t *rapid.T, n int) *linear.Sym {
	s := linear.NewSym(n)
	for i := range n {
		for j, v := range anyVec(t, "row", i+1) {
			s.Set(i, j, v)
		}
	}
	return s
}

// anyPositive draws D (Σ x xᵀ + I) D, positive definite, where D is diagonal
// with powers of 10 up to a reach each way: quantities in units of their own.
func anyPositive(t *rapid.T, reach int) *linear.Sym {
	n := rapid.IntRange(1, 12).Draw(t, "n")
	s := linear.NewSym(n)
	for i := range n {
		s.Set(i, i, 1)
	}
	for range rapid.IntRange(0, n).Draw(t, "rank") {
		s.AddOuter(1, anyVec(t, "x", n))
	}
	scale := make([]float64, n)
	for i := range scale {
		scale[i] = math.Pow10(rapid.IntRange(-reach, reach).Draw(t, "power"))
	}
	for i := range n {
		for j := range i + 1 {
			s.Set(i, j, scale[i]*s.At(i, j)*scale[j])
		}
	}
	return s
}

// exactCond is ‖A‖₁ ‖A⁻¹‖₁ by gonum's general inverse, by LU: its Cholesky only
// estimates it.
func exactCond(t *rapid.T, a mat.Matrix) float64 {
	var inverse mat.Dense
	if err := inverse.Inverse(a); err != nil {
		t.Fatal(err)
	}
	return mat.Norm(a, 1) * mat.Norm(&inverse, 1)
}

// alike reports whether two are the same but for rounding, by the size of the
// larger.
func alike(got, want mat.Matrix, tolerance float64) bool {
	var off mat.Dense
	off.Sub(got, want)
	return mat.Norm(&off, 2) <= tolerance*(mat.Norm(got, 2)+mat.Norm(want, 2))
}

func TestArithmetic(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 12).Draw(t, "n")
		x, y, k := anyVec(t, "x", n), anyVec(t, "y", n), rapid.Float64Range(-3, 3).Draw(t, "k")
		a, b := anySym(t, n), anySym(t, n)
		// Terms are at most 10³ each: sums of them are good to 1e-9.
		const tolerance = 1e-9
		same := func(what string, got, want mat.Matrix) {
			if !mat.EqualApprox(got, want, tolerance) {
				t.Errorf("%s = %v, want %v", what, mat.Formatted(got), mat.Formatted(want))
			}
		}
		if got, want := x.Dot(y), mat.Dot(vec(x), vec(y)); math.Abs(got-want) > tolerance {
			t.Errorf("xᵀ y = %v, want %v", got, want)
		}
		if got, want := a.Inner(x, y), mat.Inner(vec(x), sym(a), vec(y)); math.Abs(got-want) > tolerance {
			t.Errorf("xᵀ A y = %v, want %v", got, want)
		}
		var v mat.VecDense
		z := append(linear.Vec(nil), x...)
		z.AddScaled(k, y)
		v.AddScaledVec(vec(x), k, vec(y))
		same("x + k y", vec(z), &v)
		a.MulVec(z, x)
		v.MulVec(sym(a), vec(x))
		same("A x", vec(z), &v)

		var s mat.SymDense
		before := sym(a)
		sum := a.Clone()
		sum.Add(b)
		s.AddSym(sym(a), sym(b))
		same("A + B", sym(sum), &s)
		sum.AddOuter(k, x)
		s.SymRankOne(&s, k, vec(x))
		same("A + B + k x xᵀ", sym(sum), &s)
		sum.Scale(k)
		s.ScaleSym(k, &s)
		same("k (A + B + k x xᵀ)", sym(sum), &s)
		same("A after all that was done to its clone", sym(a), before)
		for i := range n {
			for j := range n {
				if sum.At(i, j) != sum.At(j, i) {
					t.Errorf("(%d, %d) and its mirror image are %v and %v", i, j, sum.At(i, j), sum.At(j, i))
				}
			}
		}
	})
}

// Solutions against gonum's. Both are off by about the condition number times
// 1e-16.
func TestSolve(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := anyPositive(t, 1)
		n := a.Order()
		b := linear.NewDense(n, rapid.IntRange(1, 4).Draw(t, "columns"))
		_, columns := b.Dims()
		for i := range n {
			copy(b.Row(i), anyVec(t, "b", columns))
		}
		chol, ok := linear.Factorize(a)
		var referee mat.Cholesky
		if !ok || !referee.Factorize(sym(a)) {
			t.Fatalf("%v not taken", mat.Formatted(sym(a)))
		}
		tolerance := 1e-14 * float64(n) * chol.Cond()
		var want mat.Dense
		if err := referee.SolveTo(&want, dense(b)); err != nil {
			t.Fatal(err)
		}
		if x := dense(chol.Solve(b)); !alike(x, &want, tolerance) {
			t.Errorf("X = %v, want %v", mat.Formatted(x), mat.Formatted(&want))
		}
		first := b.Column(0)
		x := make(linear.Vec, n)
		chol.SolveVec(x, first)
		if !alike(vec(x), want.ColView(0), tolerance) {
			t.Errorf("x = %v, want %v", x, mat.Formatted(want.ColView(0)))
		}
		last := b.Column(columns - 1)
		if got, size := chol.Inner(last, first), mat.Norm(vec(last), 2)*mat.Norm(vec(x), 2); math.Abs(got-mat.Dot(vec(last), vec(x))) > tolerance*size {
			t.Errorf("bᵀ A⁻¹ b = %v, want %v", got, mat.Dot(vec(last), vec(x)))
		}
		chol.SolveVec(first, first)
		if !mat.Equal(vec(first), vec(x)) {
			t.Errorf("in place %v, elsewhere %v", first, x)
		}
		var inverse mat.SymDense
		if err := referee.InverseTo(&inverse); err != nil {
			t.Fatal(err)
		}
		if got := sym(chol.Inverse()); !alike(got, &inverse, tolerance) {
			t.Errorf("inverse %v, want %v", mat.Formatted(got), mat.Formatted(&inverse))
		}
	})
}

// The condition number against that of gonum's inverse; its estimate is never
// more.
func TestCond(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := anyPositive(t, 1)
		chol, ok := linear.Factorize(a)
		if !ok {
			t.Fatal("not taken")
		}
		got, want := chol.Cond(), exactCond(t, sym(a))
		slack := 1e-14 * float64(a.Order()) * want // relative
		if math.Abs(got-want) > slack*want {
			t.Errorf("cond %v, want %v", got, want)
		}
		var referee mat.Cholesky
		if !referee.Factorize(sym(a)) || referee.Cond() > got*(1+slack) {
			t.Errorf("cond %v, gonum estimates %v", got, referee.Cond())
		}
	})
}

// What gonum refuses is refused, and what it takes is taken, also close to
// singular and beyond: only within a factor of 1000 of the limit rounding may
// decide otherwise. Numbers of very different size, not cancellation, make a
// matrix of this kind singular, so that its condition number is still sure.
func TestRefused(t *testing.T) {
	taken, refused := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		a := anyPositive(t, rapid.IntRange(0, 8).Draw(t, "reach"))
		var referee mat.Cholesky
		cond := math.Inf(1)
		if referee.Factorize(sym(a)) {
			cond = referee.Cond()
		}
		_, ok := linear.Factorize(a)
		switch {
		case cond < mat.ConditionTolerance/1000 && !ok:
			t.Errorf("cond %.3g refused", cond)
		case cond > mat.ConditionTolerance*1000 && ok:
			t.Errorf("cond %.3g taken", cond)
		}
		if ok {
			taken++
		} else {
			refused++
		}
	})
	if taken == 0 || refused == 0 {
		t.Errorf("%d taken, %d refused: the test is to see both", taken, refused)
	}
}

// A matrix that is not positive definite is refused just when gonum refuses it:
// a symmetric one moved along by its least eigenvalue, and then well to one side.
func TestIndefinite(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := anySym(t, rapid.IntRange(1, 8).Draw(t, "n"))
		for i := range a.Order() { // gonum 0.17 panics on eigenvalues near 1e-123
			for j := range i + 1 {
				a.Set(i, j, math.Round(a.At(i, j)*16)/16)
			}
		}
		var eigen mat.EigenSym
		if !eigen.Factorize(sym(a), false) {
			t.Skip("no eigenvalues")
		}
		least := rapid.SampledFrom([]float64{-5, -1, -1e-3, 1e-3, 1, 5}).Draw(t, "least eigenvalue")
		for i := range a.Order() {
			a.Set(i, i, a.At(i, i)-eigen.Values(nil)[0]+least)
		}
		var referee mat.Cholesky
		_, ok := linear.Factorize(a)
		if want := referee.Factorize(sym(a)); ok != want || ok != (least > 0) {
			t.Errorf("least eigenvalue %v: taken %v, by gonum %v", least, ok, want)
		}
	})
}
