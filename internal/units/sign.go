package units

import (
	"strings"
	"sync/atomic"
)

// comma says that decimals are written with a comma.
var comma atomic.Bool

// WriteComma chooses the decimal sign that everything is written with from then
// on: a comma, or the point. What is read is not touched by it: both are always
// taken.
func WriteComma(yes bool) { comma.Store(yes) }

// Set puts the decimal sign into a number as strconv writes it.
func Set(number string) string {
	if comma.Load() {
		return strings.Replace(number, ".", ",", 1)
	}
	return number
}
