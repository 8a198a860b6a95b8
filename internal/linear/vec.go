package linear

// Vec is a column of numbers.
type Vec []float64

// Dot is vᵀ w.
func (v Vec) Dot(w Vec) float64 {
	fit(len(v), len(w))
	sum := 0.0
	for i, x := range v {
		sum += x * w[i]
	}
	return sum
}

// AddScaled adds k w to v.
func (v Vec) AddScaled(k float64, w Vec) {
	fit(len(v), len(w))
	for i, x := range w {
		v[i] += k * x
	}
}

// fit panics when two sizes are not the same.
func fit(a, b int) {
	if a != b {
		panic("linear: sizes do not fit")
	}
}
