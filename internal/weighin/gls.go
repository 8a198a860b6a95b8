package weighin

import "steelyard/internal/linear"

// gls is the generalised least-squares solution of y = A p + noise, where the
// noise has the covariance V: p = (Aᵀ V⁻¹ A)⁻¹ Aᵀ V⁻¹ y (A. C. Aitken, 1935;
// JCGM 102:2011 (memory)).
type gls struct {
	p         linear.Vec
	cov       *linear.Sym // of p
	left      linear.Vec  // y - A p
	chiSquare float64     // leftᵀ V⁻¹ left
	a         *linear.Dense
	v         *linear.Sym
	va        *linear.Dense // V⁻¹ A
}

// newGLS solves; nil when V or the normal matrix is not positive definite.
func newGLS(a *linear.Dense, y linear.Vec, v *linear.Sym) *gls {
	n, k := a.Dims()
	whole, ok := linear.Factorize(v)
	if !ok {
		return nil
	}
	va := whole.Solve(a) // V⁻¹ A
	normal, right := linear.NewSym(k), make(linear.Vec, k)
	for i := range k {
		column := va.Column(i)
		right[i] = column.Dot(y)
		for j := range i + 1 {
			normal.Set(i, j, column.Dot(a.Column(j)))
		}
	}
	chol, ok := linear.Factorize(normal)
	if !ok {
		return nil
	}
	g := &gls{p: right, cov: chol.Inverse(), left: make(linear.Vec, n), a: a, v: v, va: va}
	chol.SolveVec(g.p, right)
	for i := range n {
		g.left[i] = y[i] - a.Row(i).Dot(g.p)
	}
	g.chiSquare = max(whole.Inner(g.left, g.left), 0)
	return g
}

// variance is the variance of the residual of observation i, an entry of V - A
// cov Aᵀ; 0 when nothing checks the observation.
func (g *gls) variance(i int) float64 {
	row := g.a.Row(i)
	all := g.v.At(i, i)
	if v := all - g.cov.Inner(row, row); v > 1e-9*all {
		return v
	}
	return 0
}

// moved is by how much errors e of the observations move p: cov Aᵀ V⁻¹ e.
func (g *gls) moved(e linear.Vec) linear.Vec {
	out, right := make(linear.Vec, len(g.p)), make(linear.Vec, len(g.p))
	for i := range right {
		right[i] = g.va.Column(i).Dot(e)
	}
	g.cov.MulVec(out, right)
	return out
}

// owed is the part of the covariance of p that an effect causes; the parts of all
// effects add up to it.
func (g *gls) owed(e *effect) *linear.Sym {
	v := linear.NewSym(len(g.p))
	if !e.alone {
		v.AddOuter(1, g.moved(e.by))
		return v
	}
	one := make(linear.Vec, len(e.by))
	for i, u := range e.by {
		one[i] = u
		v.AddOuter(1, g.moved(one))
		one[i] = 0
	}
	return v
}
