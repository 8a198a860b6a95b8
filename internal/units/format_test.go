package units_test

import (
	"math"
	"strings"
	"testing"

	"steelyard/internal/units"
)

// point writes with a decimal point.
var point units.Format

// set writes plain text as it is set: no breaks inside, a true minus.
func set(s string) string {
	return strings.NewReplacer(" ", "\u00a0", "-", "\u2212").Replace(s)
}

func TestFormatMass(t *testing.T) {
	for _, c := range []struct {
		g        float64
		unit     string
		decimals int
		want     string
	}{
		{350, "g", 0, "350 g"},
		{350.49, "g", 0, "350 g"},
		{350.5, "g", 1, "350.5 g"},
		{1234, "g", 0, "1234 g"},
		{1234, "g", -1, "1230 g"},
		{1235, "g", -1, "1240 g"},
		{96, "g", -2, "100 g"},
		{12340, "g", 0, "12 340 g"},
		{1234567.89, "g", 1, "1 234 567.9 g"},
		{1.2345, "g", 5, "1.23 g"}, // 1.234 could be read as 1234
		{1234, "kg", 2, "1.23 kg"},
		{999.96, "kg", 1, "1.0 kg"},
		{104380, "kg", 2, "104.38 kg"},
		{0, "g", 0, "0 g"},
		{-0.4, "g", 0, "0 g"},
		{-0.4, "g", -1, "0 g"},
		{-350, "g", 0, "-350 g"},
		{453.59237, "lb", 2, "1.00 lb"},
		{28.349523125, "oz", 1, "1.0 oz"},
		{2*453.59237 + 3*28.349523125, "lb_oz", 0, "2 lb 3 oz"},
		{12 * 28.349523125, "lb_oz", 1, "12.0 oz"},
		{15.96 * 28.349523125, "lb_oz", 1, "1 lb 0.0 oz"}, // carried
		{15.94 * 28.349523125, "lb_oz", 1, "15.9 oz"},
		{-2.5 * 453.59237, "lb_oz", 0, "-2 lb 8 oz"},
		{-0.1, "lb_oz", 0, "0 oz"},
		{453.59237, "lb_oz", -3, "1 lb 0 oz"},
		{20000 * 453.59237, "lb_oz", 0, "20 000 lb 0 oz"},
		{350, "stone", 0, "350 g"},
	} {
		if got := point.Mass(c.g, c.unit, c.decimals); got != set(c.want) {
			t.Errorf("FormatMass(%v, %q, %d) = %q, want %q", c.g, c.unit, c.decimals, got, set(c.want))
		}
	}
}

func TestFormatLength(t *testing.T) {
	for _, c := range []struct {
		mm       float64
		unit     string
		decimals int
		want     string
	}{
		{435.4, "mm", 0, "435 mm"},
		{-12.5, "mm", 1, "-12.5 mm"},
		{12345, "mm", 0, "12 345 mm"},
		{435, "cm", 1, "43.5 cm"},
		{1020, "m", 2, "1.02 m"},
		{25.4, "in", 2, "1.00 in"},
		{28.575, "in", 3, "1.125 in"},
		{304.8, "ft", 1, "1.0 ft"},
		{1, "", 0, "1 mm"},
	} {
		if got := point.Length(c.mm, c.unit, c.decimals); got != set(c.want) {
			t.Errorf("FormatLength(%v, %q, %d) = %q, want %q", c.mm, c.unit, c.decimals, got, set(c.want))
		}
	}
}

func TestFormatWithin(t *testing.T) {
	const lb, oz = 453.59237, 28.349523125
	for _, c := range []struct {
		g, plus      float64
		unit         string
		value, doubt string
	}{
		// JCGM 100:2008, 7.2.6: 10.057 62 Ω with u = 27 mΩ is 10.058 Ω. In grams:
		{10057.62, 27, "kg", "10.058 kg", "0.027 kg"},
		{1234.4, 12.4, "g", "1234 g", "12 g"},
		{1234.4, 123.4, "g", "1230 g", "120 g"},
		{12344, 1234, "g", "12 300 g", "1200 g"},
		{1234.46, 1.24, "g", "1234.5 g", "1.2 g"},
		{1234.46, 0.124, "g", "1234.46 g", "0.12 g"},
		{1234.46, 0.0124, "g", "1234.46 g", "0.01 g"}, // the finest that is written
		{1234.46, 0.001, "g", "1234.46 g", ""},
		{1234, 0, "g", "1234 g", ""},
		{1234, 0, "kg", "1.234 kg", ""},
		{350.000001, 0, "g", "350 g", ""},
		{1234, 9.96, "g", "1234 g", "10 g"}, // 9.96 has two digits as 10
		{1234, 9.94, "g", "1234.0 g", "9.9 g"},
		{1234, 99.6, "g", "1230 g", "100 g"},
		{1234, -12, "g", "1234 g", "12 g"},
		{-1234, 120, "g", "-1230 g", "120 g"},
		{40, 350, "g", "40 g", "350 g"},
		{1234, math.Inf(1), "g", "1234 g", "–"},
		{1234, math.NaN(), "g", "1234 g", "–"},
		{math.NaN(), 12, "g", "–", "12 g"},
		{math.Inf(-1), 0, "g", "–", ""},
		{math.NaN(), 0, "lb_oz", "–", ""},
		{2*lb + 3.14*oz, 0.42 * oz, "lb_oz", "2 lb 3.14 oz", "0.42 oz"},
		{2*lb + 3.14*oz, 4.2 * oz, "lb_oz", "2 lb 3.1 oz", "4.2 oz"},
		{20*lb + 3.14*oz, 120 * oz, "lb_oz", "20 lb 3 oz", "7 lb 8 oz"},
		{2.5 * lb, 0.1 * lb, "lb", "2.50 lb", "0.10 lb"},
	} {
		value, doubt := point.MassWithin(c.g, c.plus, c.unit)
		if value != set(c.value) || doubt != set(c.doubt) {
			t.Errorf("FormatMassWithin(%v, %v, %q) = %q, %q, want %q, %q", c.g, c.plus, c.unit, value, doubt, set(c.value), set(c.doubt))
		}
	}
	for _, c := range []struct {
		mm, plus     float64
		unit         string
		value, doubt string
	}{
		{861.17, 4.2, "mm", "861.2 mm", "4.2 mm"},
		{861.17, 42, "mm", "861 mm", "42 mm"},
		{861.17, 4.2, "in", "33.90 in", "0.17 in"},
		{-3, 1, "mm", "-3.0 mm", "1.0 mm"},
		{28.575, 0, "in", "1.125 in", ""},
	} {
		value, doubt := point.LengthWithin(c.mm, c.plus, c.unit)
		if value != set(c.value) || doubt != set(c.doubt) {
			t.Errorf("FormatLengthWithin(%v, %v, %q) = %q, %q, want %q, %q", c.mm, c.plus, c.unit, value, doubt, set(c.value), set(c.doubt))
		}
	}
}
