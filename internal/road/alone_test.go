package road

import (
	"math"
	"steelyard/internal/mass"
)

// What only the tests ask.

// Compare takes two figures of the same kind; There must be true of both.
func Compare(a, b *Figure) (d Difference) {
	var budget mass.Budget
	a.Charge(&budget, -1)
	b.Charge(&budget, 1)
	d.Value, d.Plus = b.Value-a.Value, budget.Expanded()
	d.Differs, d.Felt = Undecided, Undecided
	if math.Abs(d.Value) > d.Plus {
		d.Differs = Yes
	} else if d.Plus == 0 {
		d.Differs = No
	}
	if !(a.Value > 0 && b.Value > 0) {
		return d
	}
	budget.Reset()
	a.Charge(&budget, -1/a.Value)
	b.Charge(&budget, 1/b.Value)
	d.Ratio, d.RatioPlus = b.Value/a.Value, budget.Expanded()
	d.Felt = Felt(d.Ratio, d.RatioPlus)
	return d
}

// Plus is the expanded uncertainty of a figure.
func (f *Figure) Plus() float64 {
	var b mass.Budget
	f.Charge(&b, 1)
	return b.Expanded()
}

// Static is the load of a tyre at rest, N.
func (m *Model) Static(side Side) float64 { return m.base.system.static[side] }

// String is the figure's key.
func (j Jolt) String() string {
	return [...]string{
		"most-load-front", "most-load-rear", "least-load-front", "least-load-rear", "saddle-jolt", "grips-jolt", "rack-jolt",
		"fork-bags-jolt", "bar-bag-jolt", "most-travel-front", "most-travel-rear", "rack-force",
	}[j]
}

// String is the class's letter.
func (c Class) String() string { return "ABCDE"[c : c+1] }

// String is the figure's key.
func (k Kind) String() string {
	return [...]string{
		"load-front", "load-rear", "saddle-wk", "grips-wh", "rack", "fork-bags", "bar-bag",
		"travel-front", "travel-rear", "lift-front", "lift-rear", "bottom-front", "bottom-rear",
	}[k]
}

// Curve is a ride at each of several speeds. A speed that makes no sense is the
// error.
func (m *Model) Curve(speeds []float64, road Road) ([]*Ride, error) {
	list := make([]*Ride, 0, len(speeds))
	for _, v := range speeds {
		r, err := m.At(v, road)
		if err != nil {
			return nil, err
		}
		list = append(list, r)
	}
	return list, nil
}

// PressureMark marks a pressure, Pa, that no bicycle tyre is made for. The limits
// of tyre and rim are their makers' and go before it.
func PressureMark(side Side, pressure float64) (m Mark, ok bool) {
	return Mark{PressureHigh, side, pressure, highPressure}, pressure > highPressure
}
