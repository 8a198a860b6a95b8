package linear

// Dense is a matrix of any shape.
type Dense struct {
	rows, columns int
	a             []float64 // row by row
}

// NewDense returns a matrix of that many rows and columns, all 0.
func NewDense(rows, columns int) *Dense {
	return &Dense{rows, columns, make([]float64, rows*columns)}
}

// Dims is the number of rows and of columns.
func (d *Dense) Dims() (rows, columns int) { return d.rows, d.columns }

// Row is row i itself: what is written to it is in the matrix.
func (d *Dense) Row(i int) Vec { return d.a[i*d.columns : (i+1)*d.columns] }

// Column is a copy of column j.
func (d *Dense) Column(j int) Vec {
	c := make(Vec, d.rows)
	for i := range c {
		c[i] = d.Row(i)[j]
	}
	return c
}

// SetColumn puts c in column j.
func (d *Dense) SetColumn(j int, c Vec) {
	fit(d.rows, len(c))
	for i, v := range c {
		d.Row(i)[j] = v
	}
}
