package units

import (
	"strings"

	"steelyard/internal/words"
)

// The names of units, as documents and callers write them.
const (
	Gram       = "g"
	Kilogram   = "kg"
	Pound      = "lb"
	Ounce      = "oz"
	PoundOunce = "lb_oz" // pounds and ounces together, such as 2 lb 3 oz

	Millimetre = "mm"
	Centimetre = "cm"
	Metre      = "m"
	Inch       = "in"
	Foot       = "ft"
)

// GramsPerPound and MillimetresPerInch are exact: the international yard and
// pound agreement of 1959.
const (
	GramsPerPound      = 453.59237
	GramsPerOunce      = GramsPerPound / 16
	MillimetresPerInch = 25.4
)

// unit is one unit of a quantity.
type unit struct {
	name   string
	size   float64 // in grams or millimetres
	finest int     // most decimals that are written
	small  bool    // thousands of it are usual: 1.234 may be 1234
	below  string  // what a bare number means after it: 2 lb 3
}

// quantity is what is measured: its units and how to speak of it.
type quantity struct {
	name   string // "mass": the end of the keys of what it is called and of how to write one
	signed bool
	units  []unit
	names  map[string]string // what people write, in lower case, to a unit's name
}

var masses = quantity{
	name: "mass",
	units: []unit{
		{name: Kilogram, size: 1000, finest: 5},
		{name: Pound, size: GramsPerPound, finest: 4, below: Ounce},
		{name: Ounce, size: GramsPerOunce, finest: 3},
		{name: Gram, size: 1, finest: 2, small: true},
	},
	names: names(map[string]string{
		Gram:     "g gr gram grams gramm gramme grammes",
		Kilogram: "kg kgs kilo kilos kilogram kilograms kilogramm kilogramme kilogrammes",
		Pound:    "lb lbs pound pounds",
		Ounce:    "oz ozs ounce ounces",
	}),
}

var lengths = quantity{
	name:   "length",
	signed: true,
	units: []unit{
		{name: Metre, size: 1000, finest: 5},
		{name: Foot, size: 12 * MillimetresPerInch, finest: 4, below: Inch},
		{name: Inch, size: MillimetresPerInch, finest: 4},
		{name: Centimetre, size: 10, finest: 3},
		{name: Millimetre, size: 1, finest: 2, small: true},
	},
	names: names(map[string]string{
		Millimetre: "mm millimetre millimetres millimeter millimeters",
		Centimetre: "cm centimetre centimetres centimeter centimeters",
		Metre:      "m metre metres meter meters",
		Inch:       `in ins inch inches "`,
		Foot:       "ft foot feet '",
	}),
}

func names(spellings map[string]string) map[string]string {
	m := make(map[string]string)
	for unit, words := range spellings {
		for _, w := range strings.Fields(words) {
			m[w] = unit
		}
	}
	return m
}

// noun is what the quantity is called: "a mass".
func (q *quantity) noun() words.Message { return words.Tell("units.noun." + q.name) }

// write says how to write one.
func (q *quantity) write() words.Message { return words.Tell("units.write." + q.name) }

// unit returns the unit of that name, or nil.
func (q *quantity) unit(name string) *unit {
	for i := range q.units {
		if q.units[i].name == name {
			return &q.units[i]
		}
	}
	return nil
}
