package mass_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"steelyard/internal/mass"
)

func TestShift(t *testing.T) {
	// Two equal masses at 0 and 1 m; the second goes to 3 m: the centre goes
	// from 0.5 to 1.5 m, and all of it is owed to the second.
	at := func(x float64) mass.Moments {
		it := mass.Item{Mass: 2, Place: mass.Vec{X: x}}
		return it.Moments()
	}
	a, b := at(0).Add(at(1)), at(0).Add(at(3))
	if got := mass.Shift(a, b, at(1), at(3)); cmp.Diff(mass.Vec{X: 1}, got, approx) != "" {
		t.Errorf("moved part: %v", got)
	}
	if got := mass.Shift(a, b, at(0), at(0)); got != (mass.Vec{}) {
		t.Errorf("part at rest: %v", got)
	}
	var none mass.Moments
	if got := mass.Shift(none, none, none, none); got != (mass.Vec{}) {
		t.Errorf("nothing: %v", got)
	}
	// From nothing, the whole way from the origin.
	if got := mass.Shift(none, at(3), none, at(3)); cmp.Diff(mass.Vec{X: 3}, got, approx) != "" {
		t.Errorf("from nothing: %v", got)
	}
}
