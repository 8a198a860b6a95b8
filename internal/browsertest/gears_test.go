package browsertest

import "testing"

// The chapters on gears and climbing ask the core once they are opened, and show
// both builds with their difference; what the rider holds and the slope can be
// typed, and the time follows.
func TestGearsAndClimbing(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	p.Until("gears are closed", "document.querySelector('#gears details') && !document.querySelector('#gears details').open")
	p.Eval("document.querySelector('#gears details').open = true")
	p.Until("a line of gears for each build", "document.querySelectorAll('#gears svg.ladder g.series').length === 3 && document.querySelectorAll('#gears svg.ladder path.line').length > 25")
	p.Until("a table of gears with their efficiency", "[...document.querySelectorAll('#gears table')].some((t) => /efficiency/.test(t.innerText) && t.rows.length > 8)")
	p.Until("figures of both with a difference", "[...document.querySelectorAll('#gears table.compared tbody tr')].some((r) => r.cells.length === 5)")
	p.look("gears-desk")
	p.Eval("document.querySelector('#climbing details').open = true")
	p.Until("the time of the climb", "/Time/.test(document.querySelector('#climbing')?.innerText ?? '') && document.querySelectorAll('#climbing table.compared').length >= 2")
	time := `document.querySelector('#climbing table.compared tbody td').innerText`
	before := Eval[string](p, time)
	slope := p.Like("textbox", "Slope")
	slope.Fill("9")
	p.Key("\r")
	p.until("a steeper climb takes another time", func() bool { now := Eval[string](p, time); return now != "" && now != before })
	p.Eval("document.querySelector('#climbing').scrollIntoView()")
	p.look("climbing-desk")
	p.Look(Phone)
	p.Eval("document.querySelector('#gears').scrollIntoView()")
	p.look("gears-phone")
	dark := Phone
	dark.Dark = true
	p.Look(dark)
	p.Eval("document.querySelector('#climbing').scrollIntoView()")
	p.look("climbing-dark")
}
