package units_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"steelyard/internal/units"
)

// lb and oz by definition: the international pound of 1959 is 453.59237 g.
const (
	lb = 453.59237
	oz = 28.349523125
)

func TestParseMass(t *testing.T) {
	for _, c := range []struct {
		text, unit string
		want       float64
	}{
		{"1234", "g", 1234},
		{"1234", "kg", 1234e3},
		{"0", "g", 0},
		{"-0", "g", 0},
		{"+12", "g", 12},
		{"007", "g", 7},
		{"12.", "g", 12},
		{".5", "kg", 500},
		{",5", "kg", 500},
		{"1,2 kg", "g", 1200},
		{"1.2kg", "g", 1200},
		{"1.2 KG", "lb", 1200},
		{"  350 g ", "kg", 350},
		{"350 gram", "kg", 350},
		{"2 Kilos", "g", 2000},
		{"350 g.", "kg", 350},

		// Thousands.
		{"1.234,5 g", "g", 1234.5},
		{"1,234.5 g", "g", 1234.5},
		{"1.234.567", "g", 1234567},
		{"1,234,567.8", "g", 1234567.8},
		{"1 234", "g", 1234},
		{"1 234,5", "g", 1234.5},
		{"1 234,567", "g", 1234.567},
		{"1\u00a0234", "g", 1234},
		{"1\u2009234", "g", 1234},
		{"12\u202f340\u202fg", "kg", 12340},
		{"1'234 g", "g", 1234},
		{"1’234.5 g", "g", 1234.5},

		// One mark and three digits: decimal where thousands are not usual, or
		// where the whole part says so.
		{"1,234 kg", "g", 1234},
		{"1.234", "kg", 1234},
		{"12.345 oz", "g", 12.345 * oz},
		{"0.123 g", "g", 0.123},
		{"0,123", "g", 0.123},
		{"1.2340", "g", 1.234},
		{"1234.567 g", "g", 1234.567},

		// Pounds and ounces.
		{"2 lb 3 oz", "g", 2*lb + 3*oz},
		{"2lb3oz", "g", 2*lb + 3*oz},
		{"2 lbs. 3 oz.", "g", 2*lb + 3*oz},
		{"2 lb, 3 oz", "g", 2*lb + 3*oz},
		{"2 lb 3", "g", 2*lb + 3*oz},
		{"2 lb 3,5 oz", "g", 2*lb + 3.5*oz},
		{"2lb.5oz", "g", 2*lb + .5*oz},
		{"2 Pounds 3 Ounces", "lb_oz", 2*lb + 3*oz},
		{"2.5 lb", "g", 2.5 * lb},
		{"12oz", "g", 12 * oz},
		{"12", "oz", 12 * oz},
		{"12 oz", "lb_oz", 12 * oz},
		{"3 1/2 oz", "g", 3.5 * oz},
		{"3½ oz", "g", 3.5 * oz},
		{"1 kg 200 g", "g", 1200},
		{"3 \u212ag", "g", 3000}, // the Kelvin sign is a K
	} {
		got, err := units.ParseMass(c.text, c.unit)
		if err != nil || math.Abs(got-c.want) > 1e-9*(1+c.want) {
			t.Errorf("ParseMass(%q, %q) = %v, %v, want %v", c.text, c.unit, got, err, c.want)
		}
	}
}

func TestParseLength(t *testing.T) {
	for _, c := range []struct {
		text, unit string
		want       float64
	}{
		{"435", "mm", 435},
		{"435", "in", 435 * 25.4},
		{"43,5 cm", "mm", 435},
		{"1.02 m", "mm", 1020},
		{"1,020 m", "mm", 1020},
		{"-12.5", "mm", -12.5},
		{"−12,5 mm", "mm", -12.5},
		{"- 3 mm", "mm", -3},
		{"+3 mm", "mm", 3},
		{"17.1 in", "mm", 17.1 * 25.4},
		{`17.1"`, "mm", 17.1 * 25.4},
		{"17.1″", "mm", 17.1 * 25.4},
		{"17.1”", "mm", 17.1 * 25.4},
		{"17.1''", "mm", 17.1 * 25.4},
		{"2 inches", "mm", 50.8},
		{"1 1/8 in", "mm", 28.575},
		{"1-1/8 in", "mm", 28.575},
		{"1⅛\"", "mm", 28.575},
		{"1 ⅛ in", "mm", 28.575},
		{"⅛ in", "mm", 3.175},
		{"9/8 in", "mm", 28.575},
		{"1 1⁄8 in", "mm", 28.575},
		{"1 1 / 8 in", "mm", 28.575},
		{"1/8", "in", 3.175},
		{"-1/8", "in", -3.175},
		{"1/2 mm", "mm", 0.5},
		{"5 ft 9 in", "mm", 69 * 25.4},
		{`5'9"`, "mm", 69 * 25.4},
		{"5′9½″", "mm", 69.5 * 25.4},
		{"5'", "mm", 60 * 25.4},
		{"5' 9", "mm", 69 * 25.4},
		{"1 m 5 cm 3 mm", "mm", 1053},
		{"1'234 mm", "mm", 1234},
		{"12 345.6 mm", "mm", 12345.6},
	} {
		got, err := units.ParseLength(c.text, c.unit)
		if err != nil || math.Abs(got-c.want) > 1e-9*(1+math.Abs(c.want)) {
			t.Errorf("ParseLength(%q, %q) = %v, %v, want %v", c.text, c.unit, got, err, c.want)
		}
	}
}

func TestParseRefuses(t *testing.T) {
	for _, c := range []struct {
		text, unit string
		reason     units.Reason
		message    string // must be part of it
	}{
		{"", "g", units.Empty, "nothing is written; write a mass like 350 g"},
		{" \t\u00a0", "g", units.Empty, "nothing"},
		{strings.Repeat("1", 81), "g", units.TooLong, "81 characters"},
		{strings.Repeat("9", 1<<20), "g", units.TooLong, "1048576 characters"},
		{strings.Repeat("9", 80), "g", units.TooLarge, "larger"},
		{"1000000.1 kg", "g", units.TooLarge, "larger"},
		{"NaN", "g", units.NotANumber, "“NaN” is not a number; write a mass"},
		{"Inf", "g", units.NotANumber, "is not a number"},
		{"-inf", "g", units.NotANumber, "is not a number"},
		{"∞", "g", units.NotANumber, "is not a number"},
		{"light", "g", units.NotANumber, "is not a number"},
		{"kg", "g", units.NotANumber, "no number"},
		{"-", "g", units.NotANumber, "is not a number"},
		{".", "g", units.NotANumber, "is not a number"},
		{"1e3", "g", units.UnknownUnit, "“e”"},
		{"0x10", "g", units.UnknownUnit, "“x”"},
		{"12..5", "kg", units.NotANumber, "not one number"},
		{"1,2,3", "g", units.NotANumber, "not one number"},
		{"1.234,567,8", "g", units.NotANumber, "not one number"},
		{"1.23.456", "g", units.NotANumber, "not one number"},
		{"1234.567.890", "g", units.NotANumber, "not one number"},
		{"12 34", "g", units.NotANumber, "not one number"},
		{"0.123.456", "g", units.NotANumber, "not one number"},
		{"12-14 g", "g", units.NotANumber, "“-14 g”"},
		{"12 ± 3 g", "g", units.NotANumber, "“± 3 g”"},
		{"12 g!", "g", units.NotANumber, "“!”"},
		{"2 lb, ", "g", units.NotANumber, "“,”"},
		{"<b>12</b>", "g", units.NotANumber, "is not a number"},
		{"12\x00", "g", units.NotANumber, "12·"},
		{"12\xff", "g", units.NotANumber, "12·"},
		{"1.234", "g", units.Ambiguous, "may be 1234 g or a thousandth of it; write 1234, or 1.2340 for"},
		{"12,345 g", "kg", units.Ambiguous, "write 12345, or 12,3450 for"},
		{"-5", "g", units.Negative, "below 0"},
		{"−5 kg", "g", units.Negative, "below 0"},
		{"5 stone", "g", units.UnknownUnit, "“stone”"},
		{"5 mm", "g", units.UnknownUnit, "is a length; write a mass"},
		{"12", "lb_oz", units.MissingUnit, "write 12 oz or 12 lb"},
		{"12", "", units.MissingUnit, "no unit"},
		{"1/2", "g", units.MissingUnit, "write the unit after it, such as 1/2 oz"},
		{"1 kg 200", "g", units.MissingUnit, "without a unit"},
		{"2.5 lb 3 oz", "g", units.Mixed, "write lb alone, or whole lb"},
		{"2 lb 16 oz", "g", units.Mixed, "less than 16 oz"},
		{"3 oz 2 lb", "g", units.Mixed, "lb after oz"},
		{"2 lb 3 lb", "g", units.Mixed, "lb after lb"},
		{"1/0 oz", "g", units.NotANumber, "divides by 0"},
		{"0 0/0 oz", "g", units.NotANumber, "divides by 0"},
		{"1 9/8 oz", "g", units.NotANumber, "1 or more"},
		{"1.5 1/8 oz", "g", units.NotANumber, "not a whole number"},
		{"1/ oz", "g", units.NotANumber, "not a number"},
		{"1/2/3 oz", "g", units.NotANumber, "“/3 oz”"},
		{"1/100000 oz", "g", units.NotANumber, "not a number"},
	} {
		got, err := units.ParseMass(c.text, c.unit)
		var e *units.Error
		if !errors.As(err, &e) {
			t.Errorf("ParseMass(%.90q, %q) = %v, %v, want an *Error", c.text, c.unit, got, err)
			continue
		}
		if e.Reason != c.reason || !strings.Contains(e.Error(), c.message) {
			t.Errorf("ParseMass(%.90q, %q): reason %d, %q, want reason %d, %q", c.text, c.unit, e.Reason, e, c.reason, c.message)
		}
	}
	for text, reason := range map[string]units.Reason{
		"1 -1/8 in": units.NotANumber, "5'1234": units.Mixed, "5'12": units.Mixed, "5 cm 1 m": units.Mixed,
	} {
		got, err := units.ParseLength(text, "mm")
		var e *units.Error
		if !errors.As(err, &e) || e.Reason != reason {
			t.Errorf("ParseLength(%q) = %v, %v, want reason %d", text, got, err, reason)
		}
	}
	_, err := units.ParseLength("5 kg", "mm")
	if err == nil || !strings.Contains(err.Error(), "is a mass; write a length like 435 mm") {
		t.Errorf("5 kg as a length: %v", err)
	}
	_, err = units.ParseLength("1 1/8", "mm")
	if err == nil || !strings.Contains(err.Error(), "such as 1 1/8 in") {
		t.Errorf("1 1/8 in mm: %v", err)
	}
	_, err = units.ParseMassMarked("5", "g", ';')
	if err == nil || !strings.Contains(err.Error(), "decimal sign") {
		t.Errorf("a semicolon as decimal sign: %v", err)
	}
}

// What an error advises in place of an ambiguous text is read as it says.
func TestAdviceIsGood(t *testing.T) {
	for text, want := range map[string]float64{"1234": 1234, "1.2340": 1.234, "1,2340": 1.234} {
		if got, err := units.ParseMass(text, "g"); err != nil || got != want {
			t.Errorf("ParseMass(%q) = %v, %v", text, got, err)
		}
	}
}

func TestMarks(t *testing.T) {
	for text, want := range map[string]rune{
		"1.5": '.', "1,5 kg": ',', "1.234,5": ',', "1,234.5 g": '.', "1 234,567": ',', "0.123": '.',
		"1.234": 0, "1,234 g": 0, "1.234.567": 0, "12": 0, "": 0, "1.2.3": 0, "light": 0, "2 lb 3,5 oz": ',',
	} {
		if got := units.DecimalMark(text); got != want {
			t.Errorf("DecimalMark(%q) = %q, want %q", text, got, want)
		}
	}
	for _, c := range []struct {
		text string
		mark rune
		want float64
	}{
		{"1.234", '.', 1.234}, {"1.234", ',', 1234}, {"1,234", ',', 1.234}, {"1,234", '.', 1234},
		{"1.234,5", ',', 1234.5}, {"1234", '.', 1234}, {"1.234.567", ',', 1234567},
	} {
		if got, err := units.ParseMassMarked(c.text, "g", c.mark); err != nil || got != c.want {
			t.Errorf("ParseMassMarked(%q, %q) = %v, %v, want %v", c.text, c.mark, got, err, c.want)
		}
		if got, err := units.ParseLengthMarked(c.text, "mm", c.mark); err != nil || got != c.want {
			t.Errorf("ParseLengthMarked(%q, %q) = %v, %v, want %v", c.text, c.mark, got, err, c.want)
		}
	}
	for _, c := range []struct {
		text string
		mark rune
	}{{"1.5", ','}, {"1,5", '.'}, {"1.234,5", '.'}} {
		if got, err := units.ParseMassMarked(c.text, "g", c.mark); err == nil {
			t.Errorf("ParseMassMarked(%q, %q) = %v, want an error", c.text, c.mark, got)
		}
	}
}
