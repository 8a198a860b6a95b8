package browsertest

import (
	"slices"
	"strings"
	"testing"
)

// What a packing must be told is said beside goods and bags, and the packing keeps
// to it: the camera is wanted at hand and goes with the tablet, and no more things
// move than are allowed.
func TestPackingRules(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name string
		look Look
	}{{"desk", Desk}, {"phone", Phone}} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			p := openPage(t, c.look)
			p.unfold("#load details.fold")
			p.unfold("#packing details.fold")
			for _, name := range []string{"Camera", "Tablet"} {
				p.Eval("[...document.querySelectorAll('#load tr.good .n input')].find(e => e.value === " + quote(name) + ").closest('tr').querySelector('.a button').click()")
				p.Until("its details are open", "[...document.querySelectorAll('#load tr.details input')].some(e => e.id.endsWith('together'))")
				p.The("textbox", "Used together, as").Fill("photos")
				if name == "Camera" {
					p.The("combobox", "Needed at hand").choose("yes")
					p.Eval("document.querySelector('#load tr.good + tr.details h3').scrollIntoView({ block: 'center' })")
					p.look("packrules-good-" + c.name)
				}
				p.Eval("[...document.querySelectorAll('#load tr.good .n input')].find(e => e.value === " + quote(name) + ").closest('tr').querySelector('.a button').click()")
			}
			p.The("textbox", "At most so many moves").Fill("12")
			p.until("the document says so", func() bool {
				_, d := p.saved()
				camera, tablet := d.Loads[0].Good("camera"), d.Loads[0].Good("tablet")
				return camera.AtHand && camera.Together == "photos" && tablet.Together == "photos" && d.Show.Packing != nil && d.Show.Packing.Moves != nil && *d.Show.Packing.Moves == 12
			})
			p.press("Find the best packing")
			p.until("a packing is found", func() bool { return len(p.cells("#packing .terms", "The aim")) == 3 })
			p.press("Stop")
			p.Until("what moves is told", "document.querySelector('#packing table.moves')")
			to := map[string]string{}
			n := 0
			for _, row := range Eval[[]string](p, "[...document.querySelectorAll('#packing table.moves tbody tr')].map(r => [...r.children].map(c => c.textContent.trim()).join('|'))") {
				cell := strings.Split(row, "|")
				if cell[2] != "set aside" {
					to[cell[0]] = cell[2]
					n++
				}
			}
			reach := []string{"Handlebar roll", "Frame bag, half", "Top-tube bag"}
			if n == 0 || n > 12 || !slices.Contains(reach, to["Camera"]) || to["Tablet"] != to["Camera"] {
				t.Errorf("%d moves: %v", n, to)
			}
			p.Eval("document.querySelector('#packing .aims').scrollIntoView()")
			p.look("packrules-aims-" + c.name)
			p.Eval("document.querySelector('#packing table.moves').scrollIntoView()")
			p.look("packrules-moves-" + c.name)
			dark := c.look
			dark.Dark = true
			p.Look(dark)
			p.look("packrules-dark-" + c.name)
			if wide := Eval[float64](p, "document.scrollingElement.scrollWidth"); wide > float64(c.look.Width) {
				t.Errorf("the page is %v px wide in a window of %d", wide, c.look.Width)
			}
			for _, v := range audit(p) {
				for _, n := range v.Nodes[:min(3, len(v.Nodes))] {
					t.Errorf("%s (%s): %v %s", v.ID, v.Help, n.Target, n.Summary)
				}
			}
		})
	}
}
