package assembly

import (
	"math"

	"steelyard/internal/mass"
)

// Tally adds up masses that share sources of doubt, such as those of a group.
type Tally struct {
	Mass  float64
	Lines int
	part  []float64 // signed standard uncertainty by mass source
	seen  []int     // the sources in part
}

// Add counts a line with a sign.
func (t *Tally) Add(l *Line, sign float64) {
	t.Mass += sign * l.Mass
	t.Lines++
	if l.MassU == 0 {
		return
	}
	if n := l.Source + 1 - len(t.part); n > 0 {
		t.part = append(t.part, make([]float64, n)...)
	}
	if t.part[l.Source] == 0 {
		t.seen = append(t.seen, l.Source)
	}
	t.part[l.Source] += sign * l.MassU
}

// Plus returns the expanded uncertainty and empties the tally.
func (t *Tally) Plus() float64 {
	v, sum := 0.0, 0.0
	for _, s := range t.seen {
		v += t.part[s] * t.part[s]
		sum += math.Abs(t.part[s])
		t.part[s] = 0 // a source that was seen twice counts once
	}
	t.seen, t.Mass, t.Lines = t.seen[:0], 0, 0
	return mass.Expanded(v, sum)
}
