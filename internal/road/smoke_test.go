package road_test

import "testing"

func TestSmoke(t *testing.T) {
	for name, b := range every() {
		m := model(t, b)
		t.Log(name, m.Marks())
		for _, o := range m.Modes() {
			t.Logf("  %-10s %.3f ± %.3f Hz  %.3f ± %.3f", o.Motion, o.Frequency.Value, o.Frequency.Plus(), o.Damping.Value, o.Damping.Plus())
		}
		r := at(t, m, 5, gravel())
		for k, f := range r.Figures {
			if f.There {
				t.Logf("  %d %.5g ± %.3g", k, f.Value, f.Plus())
			}
		}
		t.Log(r.Marks)
	}
}
