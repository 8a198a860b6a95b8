package units_test

import (
	"fmt"

	"steelyard/internal/units"
)

func ExampleParseMass() {
	for _, text := range []string{"1,2 kg", "2 lb 3 oz", "1.234,5 g", "1.234", "12 mm"} {
		g, err := units.ParseMass(text, "g")
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Printf("%.1f\n", g)
	}
	// Output:
	// 1200.0
	// 992.2
	// 1234.5
	// “1.234” may be 1234 g or a thousandth of it; write 1234, or 1.2340 for the small one
	// “12 mm” is a length; write a mass like 350 g, 1.2 kg, 12 oz or 2 lb 3 oz
}

// A column of a table settles what one of its cells leaves open.
func ExampleDecimalMark() {
	column := []string{"1.234", "350,5", "78"}
	var mark rune
	for _, cell := range column {
		if m := units.DecimalMark(cell); m != 0 {
			mark = m
		}
	}
	g, _ := units.ParseMassMarked(column[0], "g", mark)
	fmt.Println(g)
	// Output: 1234
}
