package browsertest

import "testing"

// The chapter on rough roads asks the core once it is opened; another road gives
// other figures.
func TestRoughRoad(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	p.Until("it is closed", "document.querySelector('#rough details') && !document.querySelector('#rough details').open")
	p.Eval("document.querySelector('#rough details').open = true")
	p.Until("figures of both with a difference", "[...document.querySelectorAll('#rough table.compared tbody tr')].some((r) => r.cells.length === 5)")
	p.Until("motions and a chart", "/Hz/.test(document.querySelector('#rough').innerText) && document.querySelectorAll('#rough svg.chart path.line').length === 2")
	first := `document.querySelector('#rough table.compared tbody td').innerText`
	before := Eval[string](p, first)
	p.The("combobox", "Road").choose("E, a bad track")
	p.until("a worse road gives another figure", func() bool { now := Eval[string](p, first); return now != "" && now != before })
	p.Eval("document.querySelector('#rough').scrollIntoView()")
	p.look("rough-desk")
	dark := Phone
	dark.Dark = true
	p.Look(dark)
	p.Eval("document.querySelector('#rough').scrollIntoView()")
	p.look("rough-dark")
}
