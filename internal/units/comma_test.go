package units_test

import (
	"math"
	"testing"

	"steelyard/internal/units"
)

func TestComma(t *testing.T) {
	comma := units.Format{Comma: true}
	for _, c := range []struct {
		g        float64
		unit     string
		decimals int
		want     string
	}{
		{12345.6, units.Kilogram, 2, "12,35\u00a0kg"},
		{12345.6, units.Gram, 1, "12\u00a0345,6\u00a0g"},
		{-450.5, units.Gram, 1, "\u2212450,5\u00a0g"},
		{1000, units.PoundOunce, 1, "2\u00a0lb\u00a03,3\u00a0oz"},
		{7, units.Gram, 0, "7\u00a0g"},
	} {
		if got := comma.Mass(c.g, c.unit, c.decimals); got != c.want {
			t.Errorf("%v g in %s: %q, want %q", c.g, c.unit, got, c.want)
		}
	}
	value, within := comma.LengthWithin(1234.5, 2.5, units.Inch)
	if value != "48,602\u00a0in" || within != "0,098\u00a0in" {
		t.Errorf("1234.5 mm ± 2.5 mm in inches: %q ± %q", value, within)
	}
	// What is written is read back.
	text := comma.Mass(81234, units.Kilogram, 3)
	if g, err := units.ParseMass(text, units.Gram); err != nil || math.Abs(g-81234) > 1e-9 {
		t.Errorf("%q is read as %v g, %v", text, g, err)
	}
}
