package browsertest

import (
	"math"
	"strings"
	"testing"
)

// The weigh-in's room: scales and what they are within, what limits the answer,
// readings that repeat each other, and what is refused, at both sizes.
func TestWeighInRoom(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name string
		look Look
	}{{"desk", Desk}, {"phone", Phone}} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			p := openPage(t, c.look)
			p.unfold("#weighin details.fold")
			p.Until("there is a result", "document.querySelector('#weighin .limiting li')")
			limits := func() string { return p.says("#weighin .limiting") }
			if said := limits(); !strings.Contains(said, "Total mass ±") || !strings.Contains(said, "what the scale may be off by") {
				t.Errorf("what limits the answer: %q", said)
			}
			if usual := Ask[string](p.Like("textbox", "Calibration within, of the load, scale 1"), "e => e.placeholder"); usual != "0.5" {
				t.Errorf("the usual calibration is %q", usual)
			}
			if said := p.says("#weighin .caution"); !strings.Contains(said, "Nobody sits on a bike with a raised wheel") || !strings.Contains(said, "than its maker allows") {
				t.Errorf("the caution is %q", said)
			}

			// A scale that is known better no longer limits the total.
			p.Like("textbox", "Calibration within, of the load, scale 1").Fill("0.05")
			p.until("the steps limit the total", func() bool { return strings.Contains(limits(), "rounds away") })
			_, d := p.saved()
			if s := d.WeighIns[0].Scales[0]; s.Calibration == nil || math.Abs(*s.Calibration-0.0005) > 1e-9 || s.Step != 50 {
				t.Errorf("%+v", s)
			}
			plus := Eval[string](p, "document.querySelector('#weighin .weighed tbody td .plus, #weighin .weighed tbody td').textContent")

			// The same reading again is none the better.
			p.press("Add a reading")
			p.Like("textbox", "Scale shows, reading 4").Fill("9.5")
			p.until("it says that repeats do not check each other", func() bool { return strings.Contains(p.says("#weighin .come"), "do not check each other") })
			if again := Eval[string](p, "document.querySelector('#weighin .weighed tbody td .plus, #weighin .weighed tbody td').textContent"); again != plus {
				t.Errorf("with a reading twice the total is %q, once %q", again, plus)
			}

			// What nothing explains offers no weights.
			p.Like("textbox", "Scale shows, reading 1").Fill("4.6")
			p.Like("textbox", "Scale shows, reading 2").Fill("11.3")
			p.Like("textbox", "Scale shows, reading 3").Fill("12.25")
			p.Like("textbox", "Scale shows, reading 4").Fill("12.25")
			p.until("nothing explains it", func() bool { return strings.Contains(p.says("#weighin .come"), "Neither other weights") })
			if Eval[bool](p, "!!document.querySelector('#weighin .adjusted, #weighin .come .acts')") {
				t.Error("weights are offered where nothing explains the readings")
			}

			// A second scale for the last reading.
			p.press("Add a scale")
			p.Like("textbox", "Scale’s steps, scale 2").Fill("0.01")
			Ask[bool](p.Like("combobox", "Scale, reading 4"), "e => { e.value = 's2'; e.dispatchEvent(new Event('change', { bubbles: true })); return true }")
			p.until("the reading is of the second scale", func() bool {
				_, d := p.saved()
				w := d.WeighIns[0]
				return len(w.Scales) == 2 && w.Scales[1].Step == 10 && w.Readings[3].Scale == "s2" && w.Readings[2].Scale == "s1"
			})
			p.press("Delete Scale 2")
			p.until("its reading keeps its step", func() bool {
				_, d := p.saved()
				w := d.WeighIns[0]
				return len(w.Scales) == 1 && w.Readings[3].Scale == "" && w.Readings[3].Resolution == 10
			})
			if said := p.says("#weighin .enter"); !strings.Contains(said, "Readings without a scale, with steps of 0.01") {
				t.Errorf("of readings without a scale it says %q", said)
			}

			if wide := Eval[float64](p, "document.scrollingElement.scrollWidth"); wide > float64(c.look.Width) {
				t.Errorf("the page is %v px wide in a window of %d", wide, c.look.Width)
			}
			for _, v := range audit(p) {
				for _, n := range v.Nodes[:min(3, len(v.Nodes))] {
					t.Errorf("%s (%s): %v %s", v.ID, v.Help, n.Target, n.Summary)
				}
			}

			// With a rider the raised reading is refused where it stands.
			Ask[bool](p.Like("combobox", "Weighed"), "e => { e.value = 'ridden'; e.dispatchEvent(new Event('change', { bubbles: true })); return true }")
			Ask[bool](p.Like("combobox", "Load"), "e => { e.value = e.options[1].value; e.dispatchEvent(new Event('change', { bubbles: true })); return true }")
			p.until("the raised reading is refused", func() bool {
				return strings.Contains(p.says("#weighin .readings"), "nobody sits on a bike with a raised wheel")
			})
			if said := p.says("#weighin .caution"); !strings.Contains(said, "no wheel is raised") {
				t.Errorf("the caution is %q", said)
			}
		})
	}
}
