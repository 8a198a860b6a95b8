package linear

import "math"

// maxSweeps is how many steps of the QR iteration an eigenvalue is given; two or
// three are usual.
const maxSweeps = 60

// Eigenvalues returns the eigenvalues of a square matrix, conjugates beside each
// other with the positive imaginary part first, and ok false when the iteration
// does not come to an end or the matrix holds what is not a number. The matrix is
// used up.
//
// The matrix is balanced by powers of two, brought to Hessenberg form by
// Householder reflections, and iterated on by Francis's implicit double shift
// (Golub and Van Loan, Matrix Computations, sections 7.4 and 7.5 (memory)).
func Eigenvalues(a *Dense) (values []complex128, ok bool) {
	n := a.rows
	if n != a.columns {
		panic("linear: the eigenvalues of a matrix that is not square")
	}
	for _, v := range a.a {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return nil, false
		}
	}
	balance(a)
	hessenberg(a)
	values = make([]complex128, n)
	for end := n; end > 0; {
		first := 0
		for sweep := 0; ; sweep++ {
			if sweep == maxSweeps {
				return nil, false
			}
			// The block that hangs together begins where a number below the diagonal is nothing.
			for first = end - 1; first > 0; first-- {
				h := a.Row(first)
				near := math.Abs(h[first]) + math.Abs(a.Row(first - 1)[first-1])
				if math.Abs(h[first-1]) <= 0x1p-53*near || h[first-1] == 0 {
					h[first-1] = 0
					break
				}
			}
			if first >= end-2 {
				break
			}
			francis(a, first, end, sweep%10 == 9)
		}
		if first == end-1 {
			values[first] = complex(a.Row(first)[first], 0)
			end--
			continue
		}
		p, q := a.Row(first), a.Row(first+1)
		values[first], values[first+1] = pair(p[first], p[first+1], q[first], q[first+1])
		end -= 2
	}
	return values, true
}

// pair returns the eigenvalues of a matrix of two rows, [a b; c d].
func pair(a, b, c, d float64) (complex128, complex128) {
	half, mean := (a-d)/2, (a+d)/2
	disc := half*half + b*c
	if disc < 0 {
		im := math.Sqrt(-disc)
		return complex(mean, im), complex(mean, -im)
	}
	// The larger by adding what has the same sign, the other from the determinant,
	// so that nothing cancels.
	root := math.Copysign(math.Sqrt(disc), half)
	t := half + root
	if t == 0 {
		return complex(mean, 0), complex(mean, 0)
	}
	return complex(d+t, 0), complex(d-b*c/t, 0)
}

// balance scales rows and columns by powers of two until those of the same
// number are about as long as each other. It changes no eigenvalue and no digit.
func balance(a *Dense) {
	for again := true; again; {
		again = false
		for i := range a.rows {
			var row, column float64
			for j := range a.rows {
				if j != i {
					row += math.Abs(a.Row(i)[j])
					column += math.Abs(a.Row(j)[i])
				}
			}
			if row == 0 || column == 0 {
				continue
			}
			f, sum := 1.0, row+column
			for column < row/2 {
				column, row, f = 2*column, row/2, 2*f
			}
			for column >= row*2 {
				column, row, f = column/2, row*2, f/2
			}
			if row+column >= 0.95*sum || f == 1 {
				continue
			}
			again = true
			for j := range a.rows {
				a.Row(i)[j] /= f
				a.Row(j)[i] *= f
			}
		}
	}
}

// hessenberg makes all 0 below the first diagonal under the main one.
func hessenberg(a *Dense) {
	n := a.rows
	v := make(Vec, n)
	for k := range n - 2 {
		for i := k + 1; i < n; i++ {
			v[i] = a.Row(i)[k]
		}
		beta := reflector(v[k+1:])
		reflectRows(a, v, beta, k+1, n, k, n)
		reflectColumns(a, v, beta, k+1, n, 0, n)
		for i := k + 2; i < n; i++ {
			a.Row(i)[k] = 0
		}
	}
}

// reflector makes of x the v of a reflection 1 - beta v vᵀ that turns x into a
// multiple of the first unit vector.
func reflector(x Vec) (beta float64) {
	var most float64
	for _, c := range x {
		most = max(most, math.Abs(c))
	}
	if most == 0 {
		return 0
	}
	var square float64
	for i := range x {
		x[i] /= most
		square += x[i] * x[i]
	}
	x[0] += math.Copysign(math.Sqrt(square), x[0])
	square = 0
	for _, c := range x {
		square += c * c
	}
	return 2 / square
}

// reflectRows reflects rows first to end, in columns from to to.
func reflectRows(a *Dense, v Vec, beta float64, first, end, from, to int) {
	for j := from; j < to; j++ {
		var s float64
		for i := first; i < end; i++ {
			s += v[i] * a.Row(i)[j]
		}
		s *= beta
		for i := first; i < end; i++ {
			a.Row(i)[j] -= s * v[i]
		}
	}
}

// reflectColumns reflects columns first to end, in rows from to to.
func reflectColumns(a *Dense, v Vec, beta float64, first, end, from, to int) {
	for i := from; i < to; i++ {
		r := a.Row(i)
		var s float64
		for j := first; j < end; j++ {
			s += v[j] * r[j]
		}
		s *= beta
		for j := first; j < end; j++ {
			r[j] -= s * v[j]
		}
	}
}

// francis does one step of the iteration on the block of rows and columns first
// to end, of at least three. Unusual takes shifts that have nothing to do with
// the block, for one that the usual ones turn round in a circle.
func francis(a *Dense, first, end int, unusual bool) {
	p, q := a.Row(end-2), a.Row(end-1)
	sum := p[end-2] + q[end-1]
	product := p[end-2]*q[end-1] - p[end-1]*q[end-2]
	if unusual {
		w := math.Abs(q[end-2]) + math.Abs(a.Row(end - 2)[end-3])
		sum, product = 1.5*w, w*w
	}
	r0, r1, r2 := a.Row(first), a.Row(first+1), a.Row(first+2)
	x := r0[first]*r0[first] + r0[first+1]*r1[first] - sum*r0[first] + product
	y := r1[first] * (r0[first] + r1[first+1] - sum)
	z := r1[first] * r2[first+1]
	v := make(Vec, end)
	for k := first; k < end-1; k++ {
		last := min(k+3, end) // three rows at a time, two at the end
		v[k], v[k+1] = x, y
		if last == k+3 {
			v[k+2] = z
		}
		beta := reflector(v[k:last])
		reflectRows(a, v, beta, k, last, max(first, k-1), end)
		reflectColumns(a, v, beta, k, last, first, min(k+4, end))
		if k+2 < end {
			x, y = a.Row(k + 1)[k], a.Row(k + 2)[k]
		}
		if k+3 < end {
			z = a.Row(k + 3)[k]
		}
		if k > first {
			for i := k + 1; i < last; i++ {
				a.Row(i)[k-1] = 0
			}
		}
	}
}
