package weighin

import (
	"cmp"
	"math"
	"slices"
	"sort"

	"steelyard/internal/linear"
	"steelyard/internal/mass"
	"steelyard/internal/units"
)

// Weights is the first explanation of a difference: the parts' masses are not
// what the list says, each within its half-width.
//
// With e the errors of the masses in standard uncertainties, L what they do to
// the moments, d the difference and W the covariance of what the masses do not
// answer for (the readings, and the places of parts), it is the e that makes
//
//	e² + (d - L e)ᵀ W⁻¹ (d - L e)
//
// least, with each e within what its half-width allows: the most likely masses,
// given both the list and the scale.
type Weights struct {
	Moves []Move // parts that move, most first

	Prior    float64 // e²: what it takes of the masses
	Residual float64 // the rest: what it leaves of the difference

	// Fit tests list and readings together, with one degree of freedom for each
	// reading. Possible says that masses within their half-widths meet the
	// readings within what those leave open, likely or not.
	Fit      Test
	Possible bool

	Total, X, Z float64 // of the bike with these masses, kg and m
}

// Move is what happens to the mass of one source.
type Move struct {
	Source int     // mass.Item.MassSource
	Mass   float64 // kg on the list, of all its pieces
	By     float64 // kg
	U      float64 // standard uncertainty on the list
	Then   float64 // and when list and scale are taken together; with others' errors it has much in common
	Limit  bool    // as far as the half-width goes
}

// explainByWeights solves for the errors of the masses.
//
// There are many masses and at most three moments, so it is solved in the
// moments: where the sum is least, d - L e = W λ, and each e is Lᵀλ, held within
// its bounds. That leaves an equation for λ,
//
//	W λ + L e(λ) = d
//
// which is the gradient of a convex function, quadratic in pieces; Newton's
// method, with the masses that are free at λ in the derivative and halved steps
// where the function would rise, ends on the exact solution.
func explainByWeights(m *Measured, p *Paper) *Weights {
	d, _ := m.minus(p)
	w := p.placeCovariance(m.known)
	w.Add(m.against)
	b := bounded{w, d, p.sources}
	lambda, ok := b.solve()
	if !ok {
		return nil
	}
	out := &Weights{}
	after := p.p
	chol := b.curvature(nil)
	if chol == nil {
		return nil
	}
	x := make(linear.Vec, m.known)
	for i := range p.sources {
		s := &p.sources[i]
		e := b.error(s, lambda)
		out.Prior += e * e
		if e == 0 {
			continue
		}
		for k := range after {
			after[k] += e * s.lever[k]
		}
		v := s.vec(m.known)
		chol.SolveVec(x, v)
		then := math.Sqrt(max(0, 1-v.Dot(x)))
		out.Moves = append(out.Moves, Move{
			Source: s.number, Mass: s.mass, By: e * s.u, U: s.u, Then: then * s.u,
			Limit: e <= s.low || e >= s.high,
		})
	}
	sort.Slice(out.Moves, func(i, j int) bool {
		a, b := &out.Moves[i], &out.Moves[j]
		return cmp.Or(cmp.Compare(math.Abs(b.By), math.Abs(a.By)), cmp.Compare(a.Source, b.Source)) < 0
	})
	out.Residual = w.Inner(lambda, lambda)
	out.Possible = !newTest(out.Residual, m.known).Unlikely()
	out.Fit = newTest(m.Self.ChiSquare/(m.Widened*m.Widened)+out.Prior+out.Residual, m.Self.Freedom+m.known)
	out.Total = after[0]
	if after[0] > 0 {
		out.X, out.Z = after[1]/after[0], after[2]/after[0]
	}
	return out
}

// Apply returns the items with their masses moved, and as well known as they
// are then. Their errors have much in common, which items cannot say: the total,
// for one, is known better than they make it.
func (w *Weights) Apply(items []mass.Item) []mass.Item {
	moves := make(map[int]*Move, len(w.Moves))
	for i := range w.Moves {
		moves[w.Moves[i].Source] = &w.Moves[i]
	}
	out := slices.Clone(items)
	for i := range out {
		it := &out[i]
		if m := moves[it.MassSource]; m != nil && it.MassU != 0 {
			it.Mass = max(0, it.Mass+it.MassU*m.By/m.U)
			it.MassU *= m.Then / m.U
		}
	}
	return out
}

// bounded is W λ + L e(λ) = d.
type bounded struct {
	w       *linear.Sym
	d       linear.Vec
	sources []source
}

// error is the e of a source at λ.
func (b *bounded) error(s *source, lambda linear.Vec) float64 {
	return min(max(s.along(lambda), s.low), s.high)
}

// along is Lᵀλ of one source.
func (s *source) along(lambda linear.Vec) float64 {
	return s.vec(len(lambda)).Dot(lambda)
}

// curvature is W and what the sources that are free at λ add to it; with no λ
// all are. It is nil when rounding leaves nothing to solve.
func (b *bounded) curvature(lambda linear.Vec) *linear.Cholesky {
	h := b.w.Clone()
	for i := range b.sources {
		s := &b.sources[i]
		if lambda != nil {
			if t := s.along(lambda); t <= s.low || t >= s.high {
				continue
			}
		}
		h.AddOuter(1, s.vec(len(b.d)))
	}
	chol, _ := linear.Factorize(h)
	return chol
}

// value is the function whose gradient is W λ + L e(λ) - d.
func (b *bounded) value(lambda linear.Vec) float64 {
	v := b.w.Inner(lambda, lambda)/2 - b.d.Dot(lambda)
	for i := range b.sources {
		s := &b.sources[i]
		t := s.along(lambda)
		e := b.error(s, lambda)
		v += e*t - e*e/2
	}
	return v
}

// gradient is W λ + L e(λ) - d.
func (b *bounded) gradient(lambda linear.Vec) linear.Vec {
	g := make(linear.Vec, len(lambda))
	b.w.MulVec(g, lambda)
	g.AddScaled(-1, b.d)
	for i := range b.sources {
		s := &b.sources[i]
		g.AddScaled(b.error(s, lambda), s.vec(len(g)))
	}
	return g
}

// sameFree reports whether the same sources are free at two λ, and the others at
// the same bounds.
func (b *bounded) sameFree(one, two linear.Vec) bool {
	side := func(s *source, t float64) int {
		switch {
		case t <= s.low:
			return -1
		case t >= s.high:
			return 1
		}
		return 0
	}
	for i := range b.sources {
		s := &b.sources[i]
		if side(s, s.along(one)) != side(s, s.along(two)) {
			return false
		}
	}
	return true
}

// solve finds λ; ok is false when rounding makes it impossible.
func (b *bounded) solve() (lambda linear.Vec, ok bool) {
	lambda = make(linear.Vec, len(b.d))
	value := b.value(lambda)
	for range 200 {
		chol := b.curvature(lambda)
		if chol == nil {
			return nil, false
		}
		g := b.gradient(lambda)
		step := make(linear.Vec, len(g))
		chol.SolveVec(step, g)
		decrease := g.Dot(step) // by twice of that, when the pieces do not change
		if !(decrease > 1e-22*(1+math.Abs(value))) {
			return lambda, units.Finite(value)
		}
		whole := slices.Clone(lambda)
		whole.AddScaled(-1, step)
		if b.sameFree(lambda, whole) {
			return whole, units.Finite(b.value(whole)) // on one piece a whole step is exact
		}
		for t := 1.0; ; t /= 2 {
			next := slices.Clone(lambda)
			next.AddScaled(-t, step)
			if v := b.value(next); v <= value-1e-4*t*decrease || t < 1e-6 {
				if t < 1e-6 {
					return lambda, true // no more to be gained than rounding
				}
				lambda, value = next, v
				break
			}
		}
	}
	return lambda, true
}
