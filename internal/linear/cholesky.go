package linear

import "math"

// MaxCond is the condition number beyond which a matrix is taken for singular:
// in numbers of 53 bits, about 1.1e-16 apart, the solution of a system with it
// may be wrong in its first digit.
const MaxCond = 1e16

// Cholesky is the decomposition A = L Lᵀ of a positive definite matrix, with L
// zero above its diagonal (Golub and Van Loan, Matrix Computations, section 4.2
// (memory)).
type Cholesky struct {
	n    int
	l    []float64 // row by row
	cond float64
}

// Factorize decomposes A; ok is false when it is not positive definite or its
// condition number is beyond [MaxCond], or not a number.
//
// Row by row (Cholesky-Banachiewicz), each number of L follows from those
// before it, since A_ij = Σ L_ik L_jk for k up to j:
//
//	L_ij = (A_ij - Σ L_ik L_jk) / L_jj    k < j < i
//	L_ii = √(A_ii - Σ L_ik²)              k < i
//
// where A is positive definite just if there is a root of something above 0 in
// each row. No exchange of rows is needed: no number of L is larger than the
// root of the diagonal of A in its row.
func Factorize(a *Sym) (c *Cholesky, ok bool) {
	c = &Cholesky{n: a.n, l: make([]float64, a.n*a.n)}
	for i := range c.n {
		row := c.row(i)
		for j := range i {
			before := c.row(j)
			row[j] = (a.At(i, j) - row[:j].Dot(before[:j])) / before[j]
		}
		square := a.At(i, i) - row[:i].Dot(row[:i])
		if !(square > 0) {
			return nil, false
		}
		row[i] = math.Sqrt(square)
	}
	c.cond = a.norm() * c.Inverse().norm()
	if !(c.cond <= MaxCond) {
		return nil, false
	}
	return c, true
}

// row is row i of L.
func (c *Cholesky) row(i int) Vec { return c.l[i*c.n : (i+1)*c.n] }

// Cond is the condition number ‖A‖₁ ‖A⁻¹‖₁: how many times larger the relative
// error of a solution may be than that of what was solved for. It is no mere
// bound: for small matrices the inverse can be had.
func (c *Cholesky) Cond() float64 { return c.cond }

// SolveVec puts the x with A x = b in x, which may be b. It solves L y = b from
// the top, then Lᵀ x = y from the bottom.
func (c *Cholesky) SolveVec(x, b Vec) {
	fit(c.n, len(x))
	fit(c.n, len(b))
	copy(x, b)
	for i := range x {
		row := c.row(i)
		x[i] = (x[i] - row[:i].Dot(x[:i])) / row[i]
	}
	for i := c.n - 1; i >= 0; i-- {
		row := c.row(i)
		x[i] /= row[i]
		x[:i].AddScaled(-x[i], row[:i]) // column i of Lᵀ
	}
}

// Solve returns the X with A X = B.
func (c *Cholesky) Solve(b *Dense) *Dense {
	x := NewDense(b.rows, b.columns)
	for j := range b.columns {
		column := b.Column(j)
		c.SolveVec(column, column)
		x.SetColumn(j, column)
	}
	return x
}

// Inner is aᵀ A⁻¹ b.
func (c *Cholesky) Inner(a, b Vec) float64 {
	x := make(Vec, c.n)
	c.SolveVec(x, b)
	return a.Dot(x)
}

// Inverse returns A⁻¹.
func (c *Cholesky) Inverse() *Sym {
	inverse, x := NewSym(c.n), make(Vec, c.n)
	for i := range c.n {
		clear(x)
		x[i] = 1
		c.SolveVec(x, x)
		for j := range i + 1 {
			inverse.Set(i, j, x[j])
		}
	}
	return inverse
}
