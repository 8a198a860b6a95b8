package weighin

import (
	"math"

	"steelyard/internal/document"
	"steelyard/internal/geometry"
	"steelyard/internal/mass"
	"steelyard/internal/units"
)

// Expected is what the scale should show at a reading if the parts list is right.
type Expected struct {
	Line int   // of the reading
	Mass Value // kg; doubts of list, wheelbase, level, block and scale together. The list stands on the same wheels, so their radii are in none
}

// Expect tells what the scale should show at each reading of a weigh-in that can
// be used, whatever it did show: the moments of the items through the same
// levers as in solve. It is nil when the bike on paper has no mass.
func Expect(w *document.WeighIn, bike *geometry.Bike, items []mass.Item) []Expected {
	s := StandOf(w, bike)
	p, ok := PaperOf(items)
	if !ok || !s.valid() {
		return nil
	}
	readings, _ := Read(w, s)
	cov := p.covariance(3)
	var list []Expected
	for _, r := range readings {
		c := s.lever(r.Front, r.Rise)
		value, v := 0.0, r.MassU*r.MassU+r.PlacingU*r.PlacingU
		for i := range c {
			value += c[i] * p.p[i]
			for j := range c {
				v += c[i] * cov.At(i, j) * c[j]
			}
		}
		wheelbase, level, rise := s.slopes(r.Front, r.Rise, p.p)
		for _, u := range [...]float64{wheelbase * s.WheelbaseU, level * s.LevelU, rise * r.RiseU, value * r.ScaleU} {
			v += u * u
		}
		if u := math.Sqrt(v); units.Finite(value) && units.Finite(u) {
			list = append(list, Expected{r.Line, Value{value, u}})
		}
	}
	return list
}
