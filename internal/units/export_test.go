package units

import "math"

// finestStep is as fine as any unit is written, in decimals.
const finestStep = 5

// Step is one step of [Decimals]: from a plus of Least on, in the unit that is
// written, a figure has so many decimals.
type Step struct {
	Least    float64 `json:"least"`
	Decimals int     `json:"decimals"`
}

// Steps are the steps of [Decimals], the coarsest first, for who rounds where
// this package does not run. Where the unit has fewer decimals than the step,
// the unit's count.
func Steps() []Step {
	list := make([]Step, 0, finestStep-coarsest+1)
	for d := coarsest; d <= finestStep; d++ {
		least := 9.95 * math.Pow10(-d)
		// The least number that rounds so is a hair beside it.
		for place(least) <= d {
			least = math.Nextafter(least, 0)
		}
		for place(least) > d {
			least = math.Nextafter(least, math.Inf(1))
		}
		list = append(list, Step{least, d})
	}
	return list
}

// Rounding is what the page rounds by: it shows hundreds of figures at every
// edit, too many to ask for each.
type Rounding struct {
	Steps []Step          `json:"steps"`
	Units map[string]Size `json:"units"`
	Most  int             `json:"most"` // decimals of what is neither mass nor length
}

// Size is a unit's size in grams or millimetres, and the most decimals that it is
// written with.
type Size struct {
	Per  float64 `json:"per"`
	Most int     `json:"most"`
}

// PageRounding returns what web/model/rounding.json holds.
func PageRounding() Rounding {
	r := Rounding{Steps: Steps(), Units: make(map[string]Size), Most: MostDecimals}
	for _, q := range [...]*quantity{&masses, &lengths} {
		for i := range q.units {
			r.Units[q.units[i].name] = Size{q.units[i].size, q.units[i].finest}
		}
	}
	return r
}
