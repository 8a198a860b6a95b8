package weighin_test

import (
	"fmt"

	"steelyard/internal/weighin"
)

// A bike with its rider: both wheels level, and the rear one once more with the
// front one on a block of 20 cm.
func Example() {
	s := weighin.Stand{Wheelbase: 1.02, RearRadius: 0.3, FrontRadius: 0.35, WheelbaseU: 0.003, LevelU: 0.003}
	m, problems := weighin.Solve(s, []weighin.Reading{
		{Front: true, Mass: 31.5, MassU: 0.029},
		{Mass: 62.5, MassU: 0.029},
		{Rise: 0.2, RiseU: 0.001, Mass: 72.7, MassU: 0.029},
	}, weighin.About)
	fmt.Println(len(problems), "problems")
	fmt.Printf("%.2f ± %.2f kg\n", m.Total.Value, m.Total.Plus())
	fmt.Printf("%.0f ± %.0f mm ahead of the rear axle\n", m.X.Value*1000, m.X.Plus()*1000)
	fmt.Printf("%.0f ± %.0f mm up\n", m.Z.Value*1000, m.Z.Plus()*1000)
	// Output:
	// 0 problems
	// 94.00 ± 0.08 kg
	// 342 ± 4 mm ahead of the rear axle
	// 862 ± 10 mm up
}
