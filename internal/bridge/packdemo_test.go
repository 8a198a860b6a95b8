package bridge_test

import "testing"

// Without another tolerance the demo's tour is proved to be packed to within a
// twentieth of the aim's unit, and that soon.
func TestPackDemoToTheEnd(t *testing.T) {
	p := finish(t, decoded[pack](t, call(t, "packStart", call(t, "demo"), "")))
	if p.Tolerance != 0.05 || !(*p.Gap <= p.Tolerance) || p.After == nil || !p.After.Keeps || !(*p.Incumbent < p.Before.Aim-5) {
		t.Errorf("within %v: gap %v, aim %v, before %v", p.Tolerance, *p.Gap, *p.Incumbent, p.Before.Aim)
	}
	if p := decoded[pack](t, call(t, "packStart", call(t, "demo"), `{"tolerance":0}`)); !(p.Tolerance > 0 && p.Tolerance < 0.001) {
		t.Errorf("0 is taken as %v", p.Tolerance)
	}
	call(t, "packStop")
}

// The demo's tour, 37 lines of goods in 9 bags, until it is proved.
func BenchmarkPackDemo(b *testing.B) {
	text := call(b, "demo")
	for b.Loop() {
		finish(b, decoded[pack](b, call(b, "packStart", text, "")))
	}
}
