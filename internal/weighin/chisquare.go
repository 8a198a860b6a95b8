package weighin

import "math"

// level is the probability below which something is called unlikely: about that
// of lying outside a coverage factor of 2.
const level = 0.05

// Test is a sum of squares held against what chance makes of it.
type Test struct {
	ChiSquare float64
	Freedom   int     // degrees of freedom: how many squares are independent
	P         float64 // how often chance alone gives as much or more, 0 to 1; 1 without freedom
}

func newTest(chiSquare float64, freedom int) Test {
	return Test{chiSquare, freedom, beyond(chiSquare, freedom)}
}

// Unlikely reports whether chance would do this in fewer than 5 of 100 cases.
func (t Test) Unlikely() bool { return t.P < level }

// PerDegree is the sum of squares per degree of freedom, near 1 when all is as
// it should be; ok is false when there is no degree of freedom.
func (t Test) PerDegree() (v float64, ok bool) {
	if t.Freedom <= 0 {
		return 0, false
	}
	return t.ChiSquare / float64(t.Freedom), true
}

// beyond is the probability that a sum of n squares of standard normal numbers
// is x or more: the regularised gamma function Q(n/2, x/2), by
// Q(1/2, y) = erfc √y, Q(1, y) = exp(-y) and Q(a+1, y) = Q(a, y) + y^a e^-y/Γ(a+1)
// (Abramowitz and Stegun, 26.4.4 and 26.4.5 (memory)).
func beyond(x float64, n int) float64 {
	if n <= 0 || !(x > 0) {
		return 1
	}
	y := x / 2
	q, a := math.Exp(-y), 1.0
	if n%2 == 1 {
		q, a = math.Erfc(math.Sqrt(y)), 0.5
	}
	for ; a < float64(n)/2; a++ {
		g, _ := math.Lgamma(a + 1)
		q += math.Exp(a*math.Log(y) - y - g)
	}
	return min(q, 1)
}
