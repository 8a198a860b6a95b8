package browsertest

import (
	"strings"
	"testing"
)

// The chapter on steering is closed at first and asks the core nothing; opened it
// has its caution, words, figures of both sides with a verdict, and a chart. Where
// the stand's foot is can be typed, and undone.
func TestSteering(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	p.Until("it is closed", "document.querySelector('#steering details') && !document.querySelector('#steering details').open")
	p.Eval("document.querySelector('#steering details').open = true")
	p.Until("its table has both sides and a verdict", "[...document.querySelectorAll('#steering table.compared tbody tr')].some((r) => /Inertia about the steering axis/.test(r.innerText) && r.cells.length === 5)")
	for _, want := range []string{"hands off", "km/h", "qualified mechanic", "Lifting the rear wheel by the saddle"} {
		if said := strings.ReplaceAll(p.says("#steering"), "\u00a0", " "); !strings.Contains(said, want) {
			t.Errorf("%q is not said in the chapter", want)
		}
	}
	p.Until("a chart is drawn", "document.querySelectorAll('#steering svg.chart path.line').length >= 1")
	p.Until("nothing is hung on the bike", "/Nothing is hung/.test(document.querySelector('#steering').innerText)")

	// Weighed loaded, each bag is tried at each place, and copies of the load are made in one step.
	p.press("loaded")
	p.Until("bags are at places", "document.querySelectorAll('#steering .placements tbody').length >= 4 && document.querySelectorAll('#steering .placements tbody:first-of-type tr').length === 6")
	// The same is drawn, of the figure that is picked, and printed with all else.
	p.Until("a spot for each bag at each place", "document.querySelectorAll('#steering svg.spots .marker').length === document.querySelectorAll('#steering .placements tbody tr:not(.group)').length")
	p.The("combobox", "Figure drawn for the places").choose("Holding the bar back at 10°, standing")
	p.Until("another is drawn", "/^Holding the bar back/.test(document.querySelector('#steering svg.spots').getAttribute('aria-label'))")
	push := "[...document.querySelectorAll('#steering table.compared tr')].find((r) => /Pushing it up a slope/.test(r.innerText))?.innerText ?? ''"
	p.Like("textbox", "Slope that it is pushed up").Fill("5")
	p.Until("a slope of one's own", "/slope of 5 %/.test(("+push+").replace(/\u00a0/g, ' '))")
	Eval[bool](p, "(dispatchEvent(new Event('beforeprint')), true)")
	for _, want := range []string{"Balance by speed", "Where to hang the bags", "weave of", "hands off the bar", "slope of 5 %"} {
		if said := strings.ReplaceAll(p.says("#printed"), "\u00a0", " "); !strings.Contains(said, want) {
			t.Errorf("%q is not printed", want)
		}
	}
	p.Until("charts are printed", "document.querySelectorAll('#printed svg.spots').length === 1 && document.querySelectorAll('#printed svg.chart').length >= 2 && ![...document.querySelectorAll('#printed button')].some((b) => /Try as loads/.test(b.innerText))")
	Eval[bool](p, "(dispatchEvent(new Event('afterprint')), true)")
	p.Eval("document.querySelector('#steering .placements button').click()")
	p.Until("there are copies of the load", "[...document.querySelectorAll('option')].filter((o) => /On both fork legs|On a front rack|In the frame/.test(o.textContent)).length >= 3")
	p.look("steering-desk")
	p.Look(Phone)
	p.Eval("document.querySelector('#steering .compared').scrollIntoView()")
	p.look("steering-phone")
	dark := Phone
	dark.Dark = true
	p.Look(dark)
	p.Eval("document.querySelector('#steering .placements').scrollIntoView()")
	p.look("steering-dark")
	p.Eval("document.querySelector('#steering svg.spots').scrollIntoView()")
	p.look("steering-spots")
}
