package units

import "testing"

func TestTrailingMass(t *testing.T) {
	for _, c := range []struct {
		text, unit string
		name       string
		grams      float64
		ok         bool
	}{
		{"bell 42 g", "g", "bell", 42, true},
		{"  bar bag   320g ", "g", "bar bag", 320, true},
		{"lock 1,2 kg", "g", "lock", 1200, true},
		{"bell 42", "g", "bell", 42, true},
		{"bell 2", "oz", "bell", 2 * 28.349523125, true}, // NIST SP 811, appendix B.8
		{"bag 2 lb 3 oz", "g", "bag", 2*453.59237 + 3*28.349523125, true},
		{"bag 2LBS 3OZ", "g", "bag", 2*453.59237 + 3*28.349523125, true},
		{"power bank 20 Ah", "g", "power bank 20 Ah", 0, false},
		{"29 x 2.35 tyre", "g", "29 x 2.35 tyre", 0, false},
		{"42 g", "g", "42 g", 0, false},
		{"bell", "g", "bell", 0, false},
		{"", "g", "", 0, false},
		{"bell 1.2.3.4 g", "g", "bell 1.2.3.4 g", 0, false},
		{"bell 42 g heavy", "g", "bell 42 g heavy", 0, false},
		{"Klingel\u00a042\u00a0g", "g", "Klingel", 42, true},
		{"\xff 42 g", "g", "\xff", 42, true},
	} {
		name, grams, ok := TrailingMass(c.text, c.unit)
		if name != c.name || ok != c.ok || grams-c.grams > 1e-9 || c.grams-grams > 1e-9 {
			t.Errorf("%q in %s is %q, %v, %v; want %q, %v, %v", c.text, c.unit, name, grams, ok, c.name, c.grams, c.ok)
		}
	}
}

func FuzzTrailingMass(f *testing.F) {
	for _, s := range []string{"bell 42 g", "bag 2 lb 3 oz", " 1 1", "\xff\xfe 3\xff", "a\u20283 kg"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		name, grams, ok := TrailingMass(text, "g")
		if len(name) > len(text) || !ok && grams != 0 || ok && name == "" {
			t.Errorf("%q: %q, %v, %v", text, name, grams, ok)
		}
	})
}
