package words

import (
	"math"
	"strconv"
)

// Number is a figure of the user's, written back without an exponent and without
// a tail of zeros.
type Number float64

// String writes the number with a decimal point.
func (n Number) String() string {
	if math.Abs(float64(n)) >= 1e15 {
		return strconv.FormatFloat(float64(n), 'g', 4, 64)
	}
	return strconv.FormatFloat(float64(n), 'f', -1, 64)
}
