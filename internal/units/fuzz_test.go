package units_test

import (
	"errors"
	"math"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"steelyard/internal/units"
)

func itoa(n int) string { return strconv.Itoa(n) }

var seeds = []string{
	"", "1234", "1,2 kg", "1.234,5 g", "1.234", "2 lb 3 oz", "12oz", "1\u202f234 g", "1'234", "−5 mm", "-0",
	"1 1/8 in", "1-1/8\"", "1⅛″", "5'9½\"", "1 m 5 cm 3 mm", "NaN", "1e309", "0x1p-2", "..", "1/0", "' ' '", "1 '", "/",
	"2 lb, ", "\xff\xfe", "99999999999999999999999999999999999999", "½½", "1,,2", "12 ± 3", "\u212a", "1/2 3", "2lb.5oz",
}

func FuzzParseMass(f *testing.F) {
	for _, s := range seeds {
		for _, unit := range []string{"g", "kg", "lb", "oz", "lb_oz", ""} {
			f.Add(s, unit, int32(0))
		}
		f.Add(s, "g", ',')
		f.Add(s, "g", '.')
	}
	f.Fuzz(func(t *testing.T, text, unit string, mark int32) {
		g, err := units.ParseMassMarked(text, unit, mark)
		check(t, text, g, err)
		if err == nil && g < 0 {
			t.Errorf("%q reads %v g", text, g)
		}
		if m := units.DecimalMark(text); m != 0 && m != '.' && m != ',' {
			t.Errorf("%q has the decimal mark %q", text, m)
		}
		if err != nil {
			return
		}
		again, err := units.ParseMass(point.Mass(g, "g", 2), "")
		if err != nil || math.Abs(again-g) > 0.005+1e-9*g {
			t.Errorf("%q reads %v, written and read again %v, %v", text, g, again, err)
		}
	})
}

func FuzzParseLength(f *testing.F) {
	for _, s := range seeds {
		for _, unit := range []string{"mm", "cm", "m", "in", "ft", ""} {
			f.Add(s, unit)
		}
	}
	f.Fuzz(func(t *testing.T, text, unit string) {
		mm, err := units.ParseLength(text, unit)
		check(t, text, mm, err)
		if err != nil {
			return
		}
		again, err := units.ParseLength(point.Length(mm, "mm", 2), "")
		if err != nil || math.Abs(again-mm) > 0.005+1e-9*math.Abs(mm) {
			t.Errorf("%q reads %v, written and read again %v, %v", text, mm, again, err)
		}
	})
}

// check holds for every text: a finite number in range, or an error that says
// what is wrong and what would be right, in a message fit to be shown.
func check(t *testing.T, text string, v float64, err error) {
	t.Helper()
	if err == nil {
		if !(math.Abs(v) <= units.Largest) || v == 0 && math.Signbit(v) {
			t.Errorf("%q reads %v", text, v)
		}
		return
	}
	var e *units.Error
	if !errors.As(err, &e) {
		t.Fatalf("%q: %T", text, err)
	}
	if v != 0 || e.Reason == 0 || e.Wrong.IsZero() || e.Right.IsZero() {
		t.Errorf("%q: %v, %+v", text, v, e)
	}
	if m := e.Error(); !utf8.ValidString(m) || utf8.RuneCountInString(m) > 300 {
		t.Errorf("%q: message %q", text, m)
	}
}

func FuzzFormat(f *testing.F) {
	f.Add(1234.5, 12.0, "g", 0)
	f.Add(-1e300, 1e-300, "lb_oz", 300)
	f.Add(math.NaN(), math.Inf(1), "in", -400)
	f.Fuzz(func(t *testing.T, v, plus float64, unit string, decimals int) {
		for _, s := range []string{point.Mass(v, unit, decimals), point.Length(v, unit, decimals)} {
			number := !math.IsNaN(v) && !math.IsInf(v, 0)
			if s == "" || number == (s == "–") || strings.ContainsAny(s, "NI") {
				t.Errorf("%v in %q with %d decimals is written %q", v, unit, decimals, s)
			}
		}
		point.MassWithin(v, plus, unit)
		point.LengthWithin(v, plus, unit)
	})
}
