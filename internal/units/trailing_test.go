package units

import "testing"

func TestCutMass(t *testing.T) {
	for _, c := range []struct {
		text          string
		name          string
		grams, within float64
	}{
		{"bell 42 g", "bell", 42, 0},
		{"  bar bag   320g ", "bar bag", 320, 0},
		{"lock 1,2 kg", "lock", 1200, 0},
		{"lock 1.2 Kilo", "lock", 1200, 0},
		{"saddle 512 Gramm", "saddle", 512, 0},
		{"bell 2 oz", "bell", 2 * 28.349523125, 0},                                     // NIST SP 811, appendix B.8
		{"bag 2 lb 3 oz", "bag", 2*453.59237 + 3*28.349523125, 0},                      // likewise
		{"bag 2LBS 3OZ", "bag", 2*453.59237 + 3*28.349523125, 0},                       // likewise
		{"bag 2lb 3oz, waterproof", "bag waterproof", 2*453.59237 + 3*28.349523125, 0}, // likewise
		{"bell 42 g heavy", "bell heavy", 42, 0},
		{"512 g saddle", "saddle", 512, 0},
		{"saddle: 512 g", "saddle", 512, 0},
		{"saddle – 512 g", "saddle", 512, 0},
		{"saddle (512 g)", "saddle", 512, 0},
		{"saddle = 512g", "saddle", 512, 0},
		{"saddle 512 ± 5 g", "saddle", 512, 5},
		{"saddle 512 g ±5 g", "saddle", 512, 5},
		{"saddle 512 g +/- 5 g", "saddle", 512, 5},
		{"lock 1.2 kg ± 0.1 kg", "lock", 1200, 100},
		// A size stays with the name.
		{"cassette 11 450 g", "cassette 11", 450, 0},
		{"tyre 50 700 g", "tyre 50", 700, 0},
		{"29 x 2.35 tyre 890 g", "29 x 2.35 tyre", 890, 0},
		{"lock 1\u00a0200\u00a0g", "lock", 1200, 0},
		{"Klingel\u00a042\u00a0g", "Klingel", 42, 0},
		{"\xff 42 g", "\xff", 42, 0},
	} {
		w, ok := CutMass(c.text)
		name, grams, within := w.Name, w.Grams, w.Within
		if name != c.name || !ok || !near(grams, c.grams) || !near(within, c.within) {
			t.Errorf("%q is %q, %v ± %v, %v; want %q, %v ± %v", c.text, name, grams, within, ok, c.name, c.grams, c.within)
		}
	}
	for _, text := range []string{"saddle ca. 500 g", "saddle ~500 g", "Sattel etwa 500 g", "saddle about 500 g", "saddle (ca. 500 g)"} {
		if w, ok := CutMass(text); !ok || !w.About || w.Grams != 500 || w.Name != "saddle" && w.Name != "Sattel" {
			t.Errorf("%q is %+v, %v", text, w, ok)
		}
	}
	// Without a unit it is no mass; a mass alone has no name.
	for _, text := range []string{
		"bell 42", "power bank 20 Ah", "29 x 2.35 tyre", "42 g", "bell", "", "bell 1.2.3.4 g", "saddle ± 5 g", "±", "± 5 g", "water 0.75 l", "rotor 180 mm", "g", "bell g", "bell 1.234 g",
	} {
		if w, ok := CutMass(text); ok || w != (Written{Name: text}) {
			t.Errorf("%q is %+v, %v", text, w, ok)
		}
	}
}

func near(a, b float64) bool { return a-b < 1e-9 && b-a < 1e-9 }

func FuzzCutMass(f *testing.F) {
	for _, s := range []string{"bell 42 g", "bag 2 lb 3 oz", " 1 1", "\xff\xfe 3\xff", "a\u20283 kg", "a 5 ± 3 g", "( 3 g ) ±", "1\u00a0200\u00a0g x"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		w, ok := CutMass(text)
		if !ok && (w.Grams != 0 || w.Within != 0) || ok && (w.Name == "" || !(w.Grams >= 0) || !(w.Within >= 0)) {
			t.Errorf("%q: %+v, %v", text, w, ok)
		}
	})
}
