package weighin

import (
	"steelyard/internal/document"
)

// ExplainByWeights opens the first explanation to the tests.
var ExplainByWeights = explainByWeights

// Solve opens the solution of readings to the tests, with what is wrong with them.
func Solve(s Stand, readings []Reading, about float64) (*Measured, []document.Problem) {
	c := &checker{}
	m := c.solve(&s, readings, about)
	return m, c.problems
}
