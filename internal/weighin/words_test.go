package weighin_test

import (
	"strings"
	"testing"

	"steelyard/internal/document"
	"steelyard/internal/weighin"
)

// What is said of a comparison, by which figures agree and whether all of them
// do together.
func TestCompared(t *testing.T) {
	far := func(key string, by float64) weighin.Comparison {
		return weighin.Comparison{Key: key, Difference: weighin.Value{Value: by, U: 0.001}}
	}
	fits := weighin.Comparison{Key: "total", Agrees: true}
	likely, unlikely := weighin.Test{ChiSquare: 2, Freedom: 3, P: 0.57}, weighin.Test{ChiSquare: 20, Freedom: 3, P: 0.0002}
	for _, c := range []struct {
		name     string
		figures  []weighin.Comparison
		together weighin.Test
		verdict  weighin.Verdict
		says     string
	}{
		{"all", []weighin.Comparison{fits}, likely, weighin.Agree,
			"Scale and parts list agree within both uncertainties. When both are right, differences as large as these come up in 57 of 100 weighings."},
		{"one apart", []weighin.Comparison{fits, far("centre_x", -0.010)}, likely, weighin.Agree,
			"Taken together, scale and parts list agree: when both are right, differences as large as these come up in 57 of 100 weighings. " +
				"By itself, on the scale the centre of mass is 10.0 mm ± 2.0 mm further back, more than both uncertainties allow."},
		{"together apart", []weighin.Comparison{fits}, unlikely, weighin.ByWeights,
			"Each figure by itself agrees within both uncertainties, but all of them together do not: when both are right, this comes up in fewer than 1 of 1000 weighings."},
		{"all apart", []weighin.Comparison{far("total", 1), far("centre_x", 0.01), far("centre_z", -0.02)}, unlikely, weighin.ByMissing,
			"Scale and parts list do not agree: on the scale the total is 1000.0 g ± 2.0 g heavier, and the centre of mass is 10.0 mm ± 2.0 mm further forward and 20.0 mm ± 2.0 mm lower. " +
				"When both are right, this comes up in fewer than 1 of 1000 weighings."},
		{"contradiction", []weighin.Comparison{fits}, likely, weighin.Contradict,
			"Whether scale and parts list agree cannot be said while the readings do not agree among themselves."},
	} {
		r := &weighin.Result{Paper: &weighin.Paper{}, Figures: c.figures, Together: c.together, Verdict: c.verdict}
		got := strings.ReplaceAll(teller.Compared(r), "\u00a0", " ")
		if got != c.says {
			t.Errorf("%s:\n%s\nwant\n%s", c.name, got, c.says)
		}
	}
}

// Inches and pounds are a matter of showing.
func TestUnits(t *testing.T) {
	bike, items := tourer(t)
	r := weighed(t, visit(bike, items, 100, 0), bike, items)
	imperial := teller
	imperial.Show = document.Show{Mass: "lb_oz", Length: "in"}
	text := imperial.Measured(r)
	for _, want := range []string{"67\u00a0lb", "oz", "13.9", "in ahead"} {
		if !strings.Contains(text, want) {
			t.Errorf("does not say %q: %s", want, text)
		}
	}
	if strings.Contains(text, "mm") {
		t.Errorf("says mm: %s", text)
	}
}
