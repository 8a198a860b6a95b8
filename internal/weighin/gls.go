package weighin

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// gls is the generalised least-squares solution of y = A p + noise, where the
// noise has the covariance V: p = (Aᵀ V⁻¹ A)⁻¹ Aᵀ V⁻¹ y (A. C. Aitken, 1935;
// JCGM 102:2011 (memory)).
type gls struct {
	p         *mat.VecDense
	cov       *mat.SymDense // of p
	left      *mat.VecDense // y - A p
	chiSquare float64       // leftᵀ V⁻¹ left
	a         *mat.Dense
	v         *mat.SymDense
}

// newGLS solves; nil when V or the normal matrix is not positive definite.
func newGLS(a *mat.Dense, y *mat.VecDense, v *mat.SymDense) *gls {
	n, k := a.Dims()
	var whole mat.Cholesky
	if !whole.Factorize(v) {
		return nil
	}
	var va mat.Dense // V⁻¹ A
	if whole.SolveTo(&va, a) != nil {
		return nil
	}
	normal := mat.NewSymDense(k, nil)
	for i := range k {
		for j := i; j < k; j++ {
			normal.SetSym(i, j, mat.Dot(a.ColView(i), va.ColView(j)))
		}
	}
	var chol mat.Cholesky
	if !chol.Factorize(normal) {
		return nil
	}
	g := &gls{p: mat.NewVecDense(k, nil), cov: mat.NewSymDense(k, nil), left: mat.NewVecDense(n, nil), a: a, v: v}
	right := mat.NewVecDense(k, nil)
	for i := range k {
		right.SetVec(i, mat.Dot(va.ColView(i), y))
		// gonum's InverseTo and MulVec would add 14 kB each to the page.
		unit := mat.NewVecDense(k, nil)
		unit.SetVec(i, 1)
		if chol.SolveVecTo(unit, unit) != nil {
			return nil
		}
		for j := range i + 1 {
			g.cov.SetSym(i, j, unit.AtVec(j))
		}
	}
	if chol.SolveVecTo(g.p, right) != nil {
		return nil
	}
	for i := range n {
		g.left.SetVec(i, y.AtVec(i)-mat.Dot(a.RowView(i), g.p))
	}
	var vl mat.VecDense
	if whole.SolveVecTo(&vl, g.left) != nil {
		return nil
	}
	g.chiSquare = max(mat.Dot(g.left, &vl), 0)
	return g
}

// score is what is left of observation i in units of its standard uncertainty,
// whose square is that of V - A cov Aᵀ; 0 when nothing checks it.
func (g *gls) score(i int) float64 {
	row := g.a.RowView(i)
	all := g.v.At(i, i)
	if v := all - mat.Inner(row, g.cov, row); v > 1e-9*all {
		return g.left.AtVec(i) / math.Sqrt(v)
	}
	return 0
}
