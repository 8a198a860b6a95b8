package mass_test

import (
	"math"
	"testing"

	"steelyard/internal/mass"
)

// The budget of a difference is the sum of the budgets of its halves, and of a
// thing with itself nothing is left.
func TestBudgetAdd(t *testing.T) {
	a, b := tourer(), tourer()
	b[3].Mass, b[3].MassSource, b[4].Place.X = 2.4, 6, 0.1
	for name, figure := range figures() {
		var charged, one, other mass.Budget
		charged.Charge(a, figure(a), -1)
		charged.Charge(b, figure(b), 1)
		one.Charge(a, figure(a), -1)
		other.Charge(b, figure(b), 1)
		one.Add(&other, 1)
		if got, want := one.Standard(), charged.Standard(); math.Abs(got-want) > 1e-12*want {
			t.Errorf("%s: %v, want %v", name, got, want)
		}
		other.Add(&other, -1)
		if got := other.Variance(); got != 0 {
			t.Errorf("%s: %v left of nothing", name, got)
		}
	}
}
