package browsertest

import (
	"strings"
	"testing"
)

// roughRow is a script that gives the cells of a figure of the chapter's tables.
func roughRow(part, begin string) string {
	return `[...([...document.querySelectorAll('#rough ` + part + ` table.compared tbody tr')].find((r) => r.cells[0].innerText.trim().startsWith(` + quote(begin) + `))?.cells ?? [])].map((c) => c.innerText.trim())`
}

// openRough opens the chapter and its parts.
func openRough(p *Page) {
	p.tb.Helper()
	p.Until("it is closed", "document.querySelector('#rough details') && !document.querySelector('#rough details').open")
	p.Eval("document.querySelector('#rough details').open = true")
	p.Until("figures of both with a difference", "[...document.querySelectorAll('#rough table.compared tbody tr')].some((r) => r.cells.length === 5)")
	for _, part := range []string{"settings", "over"} {
		p.Eval("document.querySelector('#rough .rough-" + part + "').open = true")
	}
	p.Until("settings and obstacle", "document.querySelector('#rough .rough-settings input') && document.querySelector('#rough .rough-over input')")
}

// The chapter on rough roads asks the core once it is opened; another road gives
// other figures, and whatever it is reckoned with can be said in place.
func TestRoughRoad(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	openRough(p)
	rear := roughRow("", "Variation of the rear tyre")
	figure := func() string { return strings.Join(Eval[[]string](p, rear), "|") }
	changes := func(what string, act func()) {
		t.Helper()
		before := figure()
		act()
		p.until(what, func() bool { now := figure(); return now != "" && now != before })
	}
	// The document shows the bike as it stands; the road is ridden.
	p.Until("it is ridden", "/Reckoned is the bike with rider/.test(document.querySelector('#rough').innerText) && !/no rider/.test(document.querySelector('#rough').innerText)")
	p.Until("the bike that is drawn has its frame, fork and rider", "['frame', 'swingarm', 'fork', 'rider', 'rod'].every((c) => document.querySelector('#rough .modesketch path.' + c))")
	p.Until("motions, drawn, and charts of three sorts", "document.querySelectorAll('#rough .modesketch .way').length >= 8 && document.querySelectorAll('#rough .rough-curves svg.chart path.line').length === 6")
	p.Until("what would gain the same", "/less pressure in the rear tyre/.test(document.querySelector('#rough').innerText)")
	changes("a worse road gives another figure", func() { p.The("combobox", "Road").choose("E, a bad track") })
	p.Until("figures that are formal only are marked", "/note\\s*\\d/.test("+rear+"[1]) && document.querySelectorAll('#rough .marknotes li').length > 0")
	changes("and back", func() { p.The("combobox", "Road").choose("C, broken asphalt or good gravel") })
	changes("a roughness of one's own", func() {
		p.The("combobox", "Road").choose("a roughness of one's own")
		p.The("textbox", "Roughness at 0.1 cycle/m, cm³").Fill("90")
	})
	changes("taken back", func() { p.The("combobox", "Road").choose("C, broken asphalt or good gravel") })

	// A pressure is typed, its ± too, and both are typical again.
	typical := figure()
	first := p.Like // the first side's
	changes("a softer tyre carries a steadier load", func() { first("textbox", "Pressure of the rear tyre, bar").Fill("1.4") })
	changes("and is known worse", func() { first("textbox", "± of Pressure of the rear tyre").Fill("0.9") })
	first("textbox", "Rear tyre: most pressure by its maker").Fill("1.2")
	p.Until("the maker's most is told at the pressure", "[...document.querySelectorAll('#rough .reckoned .why')].some((e) => /1.2 bar/.test(e.innerText.replace(/\\u00a0/g, ' ')))")
	first("textbox", "Rear tyre: most pressure by its maker").Fill("")
	Eval[bool](p, "([...document.querySelectorAll('#rough .reckoned button')].find((b) => /Pressure of the rear tyre/.test(b.textContent)).click(), true)")
	p.until("it is typical again", func() bool { return figure() == typical })

	// A test of the tyre in place of the pressure leaves it about as it is; what it gave
	// is typed.
	first("combobox", "Rear tyre").choose("by a test: how far it gives way")
	p.Until("a test", "/how far the axle sank/.test(document.querySelector('#rough .rough-settings').innerText)")
	changes("a tyre that gives way more", func() { first("textbox", "Test of the rear tyre: how far the axle sank, mm").Fill("9") })
	first("combobox", "Rear tyre").choose("by its pressure")
	p.until("the pressure is typical", func() bool { return figure() == typical })
	changes("springs, by a rate", func() {
		first("combobox", "Spring of the rear").choose("by its rate")
		first("textbox", "Spring rate of the rear, at the axle, N/mm").Fill("90")
	})
	changes("damping, as measured", func() {
		first("combobox", "Damping of the rear").choose("as measured")
		first("textbox", "Damping of the rear, at the axle, N s/m").Fill("1500")
	})

	// Who stands is a body on legs and arms, which can be said in place.
	changes("standing", func() { p.The("combobox", "Rider").choose("standing") })
	first("textbox", "Natural frequency of the standing body").Fill("4.5")
	first("textbox", "± of Natural frequency of the standing body").Fill("0.2")
	p.Until("it is somebody's", "[...document.querySelectorAll('#rough .reckoned tr')].some((r) => /Natural frequency of the standing body/.test(r.innerText) && r.querySelector('select')?.value === 'guessed')")
	p.Like("button", "Typical again : Natural frequency").Click()
	changes("seated", func() { p.The("combobox", "Rider").choose("seated") })

	// What is drawn can be picked, and read in tables.
	name := "document.querySelector('#rough .rough-curves svg.chart').getAttribute('aria-label')"
	p.The("combobox", "Figure that is drawn").choose("Shaking of the saddle, weighted for a body")
	p.Until("another figure is drawn", "/^Shaking of the saddle/.test("+name+")")
	p.Eval("document.querySelector('#rough .rough-tables').open = true")
	p.Until("tables over speed, response and spectrum", "document.querySelectorAll('#rough .rough-tables table').length === 3 && document.querySelectorAll('#rough .rough-tables table')[0].tBodies[0].rows.length === 17")

	// The obstacle.
	jolt := roughRow(".rough-over", "Largest load of the rear tyre")
	edge := ""
	p.until("figures at the obstacle", func() bool { edge = strings.Join(Eval[[]string](p, jolt), "|"); return strings.Count(edge, "|") == 4 })
	p.The("combobox", "Obstacle").choose("a hole")
	p.Like("textbox", "Depth").Fill("50")
	p.until("a hole gives others", func() bool { now := strings.Join(Eval[[]string](p, jolt), "|"); return now != "" && now != edge })

	// On paper stand the figure that is picked, the obstacle and the motions.
	Eval[bool](p, "(dispatchEvent(new Event('beforeprint')), true)")
	p.Until("it is printed", "[...document.querySelectorAll('#printed svg.chart')].some((c) => /^Shaking of the saddle/.test(c.getAttribute('aria-label'))) && document.querySelectorAll('#printed .modesketch').length >= 8 && [...document.querySelectorAll('#printed tbody th')].some((c) => /Largest load of the rear tyre/.test(c.innerText))")
	Eval[bool](p, "(dispatchEvent(new Event('afterprint')), true)")

	for name, look := range map[string]Look{"desk": Desk, "dark": {Width: 1280, Height: 800, Density: 1, Dark: true}} {
		p.Look(look)
		for _, part := range []string{"", " .rough-settings", " .modes", " .rough-curves", " .rough-over"} {
			p.Eval("document.querySelector('#rough" + part + "').scrollIntoView()")
			p.look("rough-" + name + strings.ReplaceAll(part, " .", "-"))
		}
	}
}

// What makes no sense is told where it is typed, and typed right it is gone.
func TestRoughRoadSaysWhatIsWrong(t *testing.T) {
	t.Parallel()
	p := openPage(t, Phone)
	openRough(p)
	rear := roughRow("", "Variation of the rear tyre")
	p.Until("figures", rear+".length === 5")
	why := func(field string) string {
		return "([...document.querySelectorAll('#rough .field')].find((e) => e.querySelector('label').textContent.startsWith(" + quote(field) + "))?.querySelector('.why')?.innerText ?? '')"
	}
	for _, c := range []struct {
		field, wrong, right string
	}{
		{"Pressure of the rear tyre", "0", "2"}, {"Pressure of the rear tyre", "40", "2"},
		{"Damping of the fork, share", "1.6", "0.25"}, {"Damping of the fork, share", "0", "0.25"},
		{"Sag of the rear as it was set", "0", "20"}, {"Speed, km/h", "0", "20"}, {"Height", "900", "40"},
	} {
		p.Like("textbox", c.field).Fill(c.wrong)
		p.Until(c.field+" of "+c.wrong+" is told at the field", why(c.field)+" !== ''")
		if got := p.Like("textbox", c.field).Value(); got != c.wrong {
			t.Errorf("%s: %q is left of %q", c.field, got, c.wrong)
		}
		p.Like("textbox", c.field).Fill(c.right)
		p.Until(c.field+" of "+c.right+" is well", why(c.field)+" === '' && "+rear+".length === 5 && !document.querySelector('#rough .alarm')")
	}
	p.Like("textbox", "Speed, km/h").Fill("200")
	p.Until("200 km/h is marked beside every figure", "[...document.querySelectorAll('#rough table.compared')][0].querySelectorAll('.notemark').length > 20 && /Nobody rides/.test(document.querySelector('#rough .marknotes').innerText)")
	if text := p.says("#rough"); strings.Contains(text, "NaN") || strings.Contains(text, "Infinity") {
		t.Error("NaN or Infinity is shown")
	}
	p.Like("textbox", "Speed, km/h").Fill("20")

	for _, width := range []int{320, 390} {
		look := Phone
		look.Width = width
		p.Look(look)
		wait(p, 200)
		if wide := Eval[float64](p, "document.scrollingElement.scrollWidth"); wide > float64(width) {
			t.Errorf("the page is %v px wide in a window of %d: %v", wide, width, Eval[[]string](p, tooWide(width)))
		}
		if got := Eval[touched](p, touchable); len(got.Bad) > 0 {
			t.Errorf("%d px: too small for a finger: %v", width, got.Bad)
		}
	}
	for name, look := range map[string]Look{"phone": Phone, "phone-dark": with(Phone, func(l *Look) { l.Dark = true })} {
		p.Look(look)
		for _, part := range []string{"", " .rough-settings", " .modes", " .rough-curves", " .rough-over"} {
			p.Eval("document.querySelector('#rough" + part + "').scrollIntoView()")
			p.look("rough-" + name + strings.ReplaceAll(part, " .", "-"))
		}
	}
	for _, v := range auditOf(p, "#rough") {
		t.Errorf("%s (%s): %v", v.ID, v.Help, v.Nodes)
	}
}
