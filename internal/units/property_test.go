package units_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"steelyard/internal/units"
)

// finest is the last place that a unit is written to, in grams or millimetres:
// half of it is the most that writing may round away.
var (
	massStep = map[string]float64{
		"g": 1e-2, "kg": 1000 * 1e-5, "lb": lb * 1e-4, "oz": oz * 1e-3, "lb_oz": oz * 1e-3,
	}
	lengthStep = map[string]float64{
		"mm": 1e-2, "cm": 10 * 1e-3, "m": 1000 * 1e-5, "in": 25.4 * 1e-4, "ft": 304.8 * 1e-4,
	}
)

// pick draws a unit of a table; map order must not decide which.
func pick(t *rapid.T, names ...string) string { return rapid.SampledFrom(names).Draw(t, "unit") }

// amount draws small and large numbers alike.
func amount(t *rapid.T, name string) float64 {
	return math.Pow(10, rapid.Float64Range(-3, 8).Draw(t, name))
}

func TestWhatIsWrittenIsRead(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := amount(t, "g")
		unit := pick(t, "g", "kg", "lb", "oz", "lb_oz")
		decimals := rapid.IntRange(-2, 6).Draw(t, "decimals")
		text := point.Mass(g, unit, decimals)
		got, err := units.ParseMass(text, "g")
		step := massStep[unit] / 2
		if coarse := massUnit[unit] * math.Pow10(-decimals) / 2; coarse > step {
			step = coarse
		}
		if err != nil || math.Abs(got-g) > step+1e-9*g {
			t.Errorf("%v g is written %q and read %v, %v", g, text, got, err)
		}

		mm := amount(t, "mm") * rapid.SampledFrom([]float64{1, -1}).Draw(t, "sign")
		unit = pick(t, "mm", "cm", "m", "in", "ft")
		text = point.Length(mm, unit, 9)
		got, err = units.ParseLength(text, "mm")
		if err != nil || math.Abs(got-mm) > lengthStep[unit]/2+1e-9*math.Abs(mm) {
			t.Errorf("%v mm is written %q and read %v, %v", mm, text, got, err)
		}
	})
}

var massUnit = map[string]float64{"g": 1, "kg": 1000, "lb": lb, "oz": oz, "lb_oz": oz}

// A value with its plus, read back, is within a tenth of the plus: rounding
// hides nothing that is known. With two digits of the plus the last place is at
// most a tenth of it, and rounding half of that; the finest places, and the
// whole ounce, may be coarser.
func TestRoundingIsFarBelowThePlus(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g, plus := amount(t, "g"), amount(t, "plus")
		unit := pick(t, "g", "kg", "lb", "oz", "lb_oz")
		value, within := point.MassWithin(g, plus, unit)
		v, err := units.ParseMass(value, "g")
		if err != nil || math.Abs(v-g) > plus/20+massStep[unit]/2+1e-9*g {
			t.Errorf("%v ± %v g is written %q and read %v, %v", g, plus, value, v, err)
		}
		if within == "" {
			if plus > massStep[unit]*(0.5+1e-9) {
				t.Errorf("%v ± %v g is written %q without a plus", g, plus, value)
			}
			return
		}
		p, err := units.ParseMass(within, "g")
		if err != nil || math.Abs(p-plus) > plus/20+massStep[unit]/2 {
			t.Errorf("± %v g is written %q and read %v, %v", plus, within, p, err)
		}
	})
}

// A number reads the same with a comma as with a point, and with its thousands
// apart as without.
func TestMarksOfMeaningNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		whole := rapid.IntRange(1, 999).Draw(t, "thousands")
		rest := rapid.StringMatching(`[0-9]{3}`).Draw(t, "units")
		part := rapid.StringMatching(`[0-9]{1,2}`).Draw(t, "part")
		plain := itoa(whole) + rest + "." + part
		want, err := units.ParseMass(plain, "g")
		if err != nil {
			t.Fatal(err)
		}
		for _, text := range []string{
			itoa(whole) + rest + "," + part,
			itoa(whole) + "." + rest + "," + part,
			itoa(whole) + "," + rest + "." + part,
			itoa(whole) + " " + rest + "." + part,
			itoa(whole) + "\u202f" + rest + "," + part,
			itoa(whole) + "'" + rest + "." + part,
			plain + " g", plain + "g", " " + plain, "+" + plain,
		} {
			if got, err := units.ParseMass(text, "g"); err != nil || got != want {
				t.Errorf("%q reads %v, %v; %q reads %v", text, got, err, plain, want)
			}
		}
	})
}
