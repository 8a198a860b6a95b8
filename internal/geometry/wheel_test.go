package geometry

import (
	"slices"
	"testing"

	"steelyard/internal/document"
)

// Bead seat diameters of ISO 5775 (memory), and the radius with a tyre whose
// section is as high as it is wide.
func TestTyreRadius(t *testing.T) {
	for _, c := range []struct{ bead, tyre, radius float64 }{
		{622, 40, 351}, {622, 61, 372}, {584, 47, 339}, {559, 50, 329.5}, {507, 47, 300.5}, {406, 40, 243}, {349, 35, 209.5},
	} {
		near(t, "radius", tyreRadius(document.Wheel{BeadSeat: c.bead, Tyre: c.tyre}), c.radius/1000, exact)
		if !KnownBeadSeat(c.bead) {
			t.Errorf("bead seat %v is not known", c.bead)
		}
	}
}

func TestBeadSeats(t *testing.T) {
	for _, no := range []float64{0, 29, 621, 623, 700} {
		if KnownBeadSeat(no) {
			t.Errorf("bead seat %v is known", no)
		}
	}
	if !slices.IsSortedFunc(BeadSeats, func(a, b float64) int { return int(b - a) }) {
		t.Errorf("not largest first: %v", BeadSeats)
	}
	for _, c := range [][2]float64{{29, 305}, {620, 622}, {627, 630}, {5000, 630}, {560, 559}} {
		if got := nearestBeadSeat(c[0]); got != c[1] {
			t.Errorf("nearest to %v is %v, want %v", c[0], got, c[1])
		}
	}
}
