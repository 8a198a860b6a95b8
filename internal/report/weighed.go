package report

import (
	"steelyard/internal/assembly"
)

// Weighed is a bike put together with its load, and its figures.
type Weighed struct {
	*assembly.Assembly
	figures figures
	byGroup [][]int32 // lines by group, once they are needed: see groups
}
