package bridge_test

import (
	"math"
	"testing"
)

// What the scale should show is told before it has shown anything; level, the
// two wheels carry the whole bike.
func TestExpectedReadings(t *testing.T) {
	d := demoDocument(t)
	w := &d.WeighIns[0]
	for i := range w.Readings {
		w.Readings[i].Mass = 0
	}
	r := decoded[struct {
		Expected []struct {
			Line int
			Mass float64 `json:"mass_g"`
			Plus float64 `json:"plus_g"`
		}
		Measured *struct{}
	}](t, call(t, "weighIn", written(t, d), w.ID))
	if r.Measured != nil || len(r.Expected) != len(w.Readings) {
		t.Fatalf("%+v", r)
	}
	full := decoded[struct {
		Paper struct{ Figures []struct{ Value float64 } }
	}](t, call(t, "weighIn", call(t, "demo"), w.ID))
	if sum := r.Expected[0].Mass + r.Expected[1].Mass; math.Abs(sum-full.Paper.Figures[0].Value) > 0.2 {
		t.Errorf("the wheels should show %g g, the bike weighs %g g", sum, full.Paper.Figures[0].Value)
	}
	for i, e := range r.Expected {
		if e.Line != i || !(e.Plus > 25) || e.Plus > e.Mass/5 {
			t.Errorf("reading %d: %+v", i, e)
		}
	}
}
