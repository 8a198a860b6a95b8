package linear

import "math"

// Sym is a symmetric matrix. It is kept whole, both halves of it.
type Sym struct {
	n int
	a []float64 // row by row
}

// NewSym returns a matrix of n rows and columns, all 0.
func NewSym(n int) *Sym { return &Sym{n, make([]float64, n*n)} }

// Order is the number of rows.
func (s *Sym) Order() int { return s.n }

// Clone returns a copy.
func (s *Sym) Clone() *Sym { return &Sym{s.n, append([]float64(nil), s.a...)} }

// At is the number in row i and column j, counted from 0.
func (s *Sym) At(i, j int) float64 { return s.row(i)[j] }

// Set changes the number in row i and column j, and its mirror image.
func (s *Sym) Set(i, j int, v float64) { s.row(i)[j], s.row(j)[i] = v, v }

// row is row i, which is column i too.
func (s *Sym) row(i int) Vec { return s.a[i*s.n : (i+1)*s.n] }

// Add adds t to s.
func (s *Sym) Add(t *Sym) { Vec(s.a).AddScaled(1, t.a) }

// Scale multiplies s by k.
func (s *Sym) Scale(k float64) {
	for i := range s.a {
		s.a[i] *= k
	}
}

// AddOuter adds k x xᵀ to s, a change of rank one.
func (s *Sym) AddOuter(k float64, x Vec) {
	fit(s.n, len(x))
	for i, v := range x {
		row := s.row(i)
		for j, w := range x {
			row[j] += k * (v * w) // in brackets, so that both halves are rounded alike
		}
	}
}

// MulVec puts S x in y, which must be another vector.
func (s *Sym) MulVec(y, x Vec) {
	fit(s.n, len(y))
	for i := range y {
		y[i] = s.row(i).Dot(x)
	}
}

// Inner is xᵀ S y.
func (s *Sym) Inner(x, y Vec) float64 {
	fit(s.n, len(x))
	sum := 0.0
	for i, v := range x {
		sum += v * s.row(i).Dot(y)
	}
	return sum
}

// norm is the largest sum of magnitudes in a column, ‖S‖₁; NaN if there is one
// in it.
func (s *Sym) norm() float64 {
	largest := 0.0
	for i := range s.n {
		sum := 0.0
		for _, v := range s.row(i) {
			sum += math.Abs(v)
		}
		largest = max(largest, sum)
	}
	return largest
}
