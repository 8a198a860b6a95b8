package browsertest

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/chromedp/chromedp/kb"

	"steelyard/internal/document"
)

// climbTime is the time of the climb that is told of the first side.
const climbTime = `document.querySelector('#climbing table.compared tbody td')?.innerText ?? ''`

// follows waits for the climb's time to become another than it was, and returns it.
func (p *Page) follows(what, was string) string {
	p.tb.Helper()
	now := ""
	p.until(what, func() bool {
		now = Eval[string](p, climbTime)
		return now != "" && now != was && Eval[bool](p, "document.querySelector('#climbing [aria-busy]').getAttribute('aria-busy') === 'false'")
	})
	return now
}

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
	p.Eval("document.querySelector('#gears').scrollIntoView()")
	p.look("gears-desk")
	p.Eval("document.querySelector('#climbing details').open = true")
	p.Until("the time of the climb", "/Time/.test(document.querySelector('#climbing')?.innerText ?? '') && document.querySelectorAll('#climbing table.compared').length >= 2")
	time := Eval[string](p, climbTime)
	p.Like("textbox", "Slope").Fill("7")
	steep := p.follows("a steeper climb takes another time", time)

	// A loss of the drive, in place; it is the document's then, until it is typical again.
	mesh := "Share that a pair of gears in the gearbox loses, %"
	typical := p.The("textbox", mesh).Value()
	p.The("textbox", mesh).Fill("6")
	worse := p.follows("a greater loss takes another time", steep)
	p.Until("the loss is the document's", "document.querySelector('#gears .reckoned tr:not(.typical) select')")
	p.Eval("document.querySelector('#gears .reckoned').scrollIntoView()")
	p.look("losses-desk")
	p.Like("button", "Typical again : "+strings.TrimSuffix(mesh, ", %")).Click()
	if again := p.follows("a typical loss takes the time of before", worse); again != steep {
		t.Errorf("%s with a typical loss again, was %s", again, steep)
	}
	if now := p.The("textbox", mesh).Value(); now != typical {
		t.Errorf("%s is %s, was %s", mesh, now, typical)
	}

	// The efficiency of the whole drive as measured takes the place of all losses.
	p.The("textbox", "Efficiency of the whole drive, %").Fill("80")
	whole := p.follows("a measured efficiency takes another time", steep)
	p.Until("it is measured", "[...document.querySelectorAll('#gears .reckoned tr')].some((r) => /whole drive/.test(r.innerText) && r.querySelector('select')?.value === 'measured')")
	p.The("textbox", "± of Efficiency of the whole drive").Fill("5")
	p.follows("its ± is that of the time", whole)
	p.Like("textbox", "Power at which that was measured").Fill("120")
	p.Until("the page keeps it", "document.querySelector('#gears .reckoned')")
	p.Like("button", "Typical again : Power at which").Click()
	p.Like("button", "Typical again : Efficiency of the whole").Click()
	p.follows("all is typical again", whole)

	// A roll-out as measured moves the gears, and what may not be is told at its field.
	lowest := "[...document.querySelectorAll('#gears table.compared tbody tr')].find((r) => /Lowest development/.test(r.innerText)).cells[1].innerText"
	before := Eval[string](p, lowest)
	p.Like("textbox", "Roll-out, loaded").Fill("2000")
	p.until("the lowest gear is another", func() bool { return Eval[string](p, lowest) != before })
	p.Like("textbox", "Roll-out, loaded").Fill("20")
	p.Until("the field says what is wrong", "[...document.querySelectorAll('#gears .reckoned .why')].some((w) => /500/.test(w.innerText))")
	p.Like("button", "Typical again : Roll-out").Click()
	p.until("the lowest gear is that of the tyre", func() bool { return Eval[string](p, lowest) == before })

	// A limit is watched once it is stated.
	p.Like("textbox", "Torque at the cranks that the maker permits").Fill("20")
	p.Until("the warning stands at the field", "[...document.querySelectorAll('#gears .reckoned .why')].some((w) => /20 N m/.test(w.innerText))")
	p.Like("textbox", "Torque at the cranks that the maker permits").Fill("")
	p.Until("no limit, no warning", "![...document.querySelectorAll('#gears .reckoned .why')].some((w) => /20 N m/.test(w.innerText))")

	// All else that a climb is reckoned with.
	p.Until("points have a unit", "[...document.querySelectorAll('#climbing table.compared tr')].some((r) => /minute is worth in efficiency/.test(r.innerText) && /\\d points/.test(r.cells[1].innerText))")
	p.Eval("document.querySelector('#climbing details.aside-fold').open = true")
	now := Eval[string](p, climbTime)
	p.Eval(choose("#climbing .reckoned", "Surface", "sand"))
	sand := p.follows("sand takes another time", now)
	p.The("textbox", "Coefficient of rolling resistance").Fill("0.0123")
	now = p.follows("the coefficient as typed takes another time", sand)
	if v := p.The("textbox", "Coefficient of rolling resistance").Value(); v != "0.0123" {
		t.Errorf("0.0123 is shown as %s", v)
	}
	p.Like("button", "Typical again : Coefficient").Click()
	p.follows("the typical coefficient takes the time of before", now)
	// Walking has its ± and where it is known from, points have their unit, and on paper
	// stand all of these and the use of each gear.
	p.Like("textbox", "Speed on foot").Fill("0.85")
	p.Like("textbox", "± of Speed on foot").Fill("0.15")
	p.Until("it is somebody's", "[...document.querySelectorAll('#climbing .reckoned tr')].some((r) => /Speed on foot/.test(r.innerText) && r.querySelector('select')?.value === 'guessed')")
	p.until("the answer is of now", func() bool {
		return Eval[bool](p, "document.querySelector('#climbing [aria-busy]').getAttribute('aria-busy') === 'false'")
	})
	Eval[bool](p, "(dispatchEvent(new Event('beforeprint')), true)")
	for _, want := range []string{"Speed on foot: 0.85 ± 0.15 m/s (guessed)", "Power held: ", "(typical)", "Use of the gears", "How one gets along"} {
		if said := strings.ReplaceAll(p.says("#printed"), "\u00a0", " "); !strings.Contains(said, want) {
			t.Errorf("%q is not printed: %s", want, said)
		}
	}
	if n := Eval[int](p, "document.querySelectorAll('#printed table.uses tbody tr').length"); n < 3 {
		t.Errorf("%d gears are printed", n)
	}
	Eval[bool](p, "(dispatchEvent(new Event('afterprint')), true)")
	for _, b := range auditOf(p, "#gears, #climbing") {
		t.Errorf("%+v", b)
	}
	p.Eval("document.querySelector('#climbing').scrollIntoView()")
	p.look("climbing-desk")
	for _, wide := range []int{390, 320} {
		narrow := Phone
		narrow.Width = wide
		p.Look(narrow)
		p.Eval("document.querySelector('#gears').scrollIntoView()")
		p.until("nothing is wider than the sheet", func() bool { return Eval[int](p, "document.documentElement.scrollWidth") <= wide })
		p.look(fmt.Sprintf("gears-%d", wide))
		if small := Eval[[]string](p, tooSmall("#gears, #climbing")); len(small) > 0 {
			t.Errorf("at %d px too small for a finger: %v", wide, small)
		}
		p.Eval("document.querySelector('#gears .reckoned').scrollIntoView()")
		p.look(fmt.Sprintf("losses-%d", wide))
		p.Eval("document.querySelector('#climbing .reckoned').scrollIntoView()")
		p.look(fmt.Sprintf("inputs-%d", wide))
		if wrapped := Eval[[]string](p, "[...document.querySelectorAll('#climbing .narrowspecs label')].filter((l) => { const r = document.createRange(); r.selectNodeContents(l.firstChild.nextSibling ?? l.firstChild); return new Set([...r.getClientRects()].map((q) => Math.round(q.top))).size > 1; }).map((l) => l.innerText)"); wide == 390 && len(wrapped) > 0 {
			t.Errorf("on more than one line: %q", wrapped)
		}
		p.Eval("document.querySelector('#climbing .narrowspecs').scrollIntoView()")
		p.look(fmt.Sprintf("quick-%d", wide))
	}
	dark := Phone
	dark.Dark = true
	p.Look(dark)
	p.Eval("document.querySelector('#climbing').scrollIntoView()")
	p.look("climbing-dark")
}

// choose takes an option of the choice with a label.
func choose(within, label, value string) string {
	return `(() => {
		const of = (s) => s.closest('.field').querySelector('label').textContent.trim();
		const select = [...document.querySelectorAll(` + quote(within+" select") + `)].find((s) => of(s).startsWith(` + quote(label) + `));
		select.value = ` + quote(value) + `;
		select.dispatchEvent(new Event('change'));
	})()`
}

// tooSmall lists what of a place a finger would miss.
func tooSmall(within string) string {
	return `[...document.querySelectorAll(` + quote(within) + `)].flatMap((e) => [...e.querySelectorAll('button, select, input:not([hidden])')])
		.filter((e) => e.checkVisibility() && (e.getBoundingClientRect().height < 43.5 || e.getBoundingClientRect().width < 43.5))
		.map((e) => e.outerHTML.slice(0, 90) + ' ' + e.getBoundingClientRect().width + '×' + e.getBoundingClientRect().height)`
}

// gpx is a file of a track that goes up and comes back.
func gpx(points int, of func(i int) (lat, lon, ele string)) string {
	var b strings.Builder
	b.WriteString(`<?xml version="1.0"?><gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1"><trk><trkseg>`)
	for i := range points {
		lat, lon, ele := of(i)
		fmt.Fprintf(&b, `<trkpt lat="%s" lon="%s">%s</trkpt>`, lat, lon, ele)
	}
	return b.String() + `</trkseg></trk></gpx>`
}

// Days are added, named, copied and deleted; their stretches are typed, pasted, or
// come from the track of a file. A file that is none changes nothing and says why.
func TestDays(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	p.Eval("document.querySelector('#climbing details').open = true")
	p.Until("the days are there", "document.querySelector('#climbing sy-day button')")
	days := func() int {
		return Eval[int](p, `(() => {
			const f = [...document.querySelectorAll('#climbing sy-day .field.choice')].find((f) => /Day shown/.test(f.textContent));
			return f ? f.querySelectorAll('option').length : document.querySelector('#climbing sy-day .danger') ? 1 : 0;
		})()`)
	}
	kept := func() document.Day {
		_, d := p.saved()
		return d.Days[len(d.Days)-1]
	}
	start := days()
	why := "document.querySelector('#climbing sy-day [role=alert]')?.innerText ?? ''"
	button := "Day from a GPX file…"

	up := gpx(401, func(i int) (string, string, string) {
		at := min(i, 400-i)
		return fmt.Sprint(46 + 0.001*float64(at)), "8", fmt.Sprintf("<ele>%.1f</ele>", 500+5*float64(at)+3*math.Sin(float64(7*i)))
	})
	p.Chooses("Up and back.gpx", up, func() { p.The("button", button).Click() })
	p.until("a day more", func() bool { return days() == start+1 })
	p.Until("it is shown, as far and as high as it is", `/4[45][.]\d km, (9[789]\d|10[0-3]\d) m up/.test(document.querySelector('#climbing')?.innerText ?? '') && /Up and back/.test(document.querySelector('#climbing')?.innerText ?? '')`)
	text, d := p.saved()
	if strings.Contains(text, "46.15") || strings.Contains(text, ".gpx") || d.Days[start].Name != "Up and back" || len(d.Days[start].Stretches) < 10 || d.Show.Day != d.Days[start].ID {
		t.Errorf("of a track is kept: %+v", d.Days[start])
	}
	p.Until("and it has times", "[...document.querySelectorAll('#climbing table.uses tbody tr')].length > 1")

	entity := `<?xml version="1.0"?><!DOCTYPE gpx [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;">]>` + strings.TrimPrefix(up, `<?xml version="1.0"?>`)
	flat := gpx(20, func(i int) (string, string, string) { return fmt.Sprint(46 + 0.001*float64(i)), "8", "" })
	nan := gpx(20, func(i int) (string, string, string) { return "NaN", "8", "<ele>NaN</ele>" })
	still := gpx(20, func(i int) (string, string, string) { return "46", "8", "<ele>500</ele>" })
	for _, bad := range []struct{ name, content, says string }{
		{"entities.gpx", entity, "entities"},
		{"picture.gpx", "\x89PNG\r\n\x1a\n\x00\x00", "no GPX"},
		{"cut.gpx", up[:len(up)/2], "damaged"},
		{"mangled.gpx", strings.Replace(up, "<trkseg>", "<trkseg></trk>", 1), "damaged"},
		{"empty.gpx", `<gpx version="1.1"></gpx>`, "neither a track nor a route"},
		{"flat.gpx", flat, "no heights"},
		{"nan.gpx", nan, "fewer than two places"},
		{"still.gpx", still, "fewer than two places"},
		{"huge.gpx", up + strings.Repeat(" ", 21<<20), "larger than 20 MB"},
	} {
		p.Chooses(bad.name, bad.content, func() { p.The("button", button).Click() })
		p.until(bad.name+" is refused", func() bool { return strings.Contains(Eval[string](p, why), bad.says) })
		if n := days(); n != start+1 {
			t.Errorf("%s leaves %d days", bad.name, n)
		}
	}
	p.look("days-refused")
	for _, w := range p.Wrongs() {
		// The parser's own report of what is damaged has a style that the page forbids.
		if !strings.Contains(w, "inline style") {
			t.Error(w)
		}
	}
	p.Key("z", kb.ModifierCtrl)
	p.until("one step back the day of the track is gone", func() bool { return days() == start })

	p.The("button", "Add a day").Click()
	p.until("a day more", func() bool { return days() == start+1 })
	p.Until("it has no stretches yet", "/no stretches yet/.test(document.querySelector('#climbing').innerText)")
	p.The("textbox", "Name of the day").Fill("Over the sand")
	p.Eval("document.querySelector('#climbing sy-day details').open = true")
	p.Eval("(e => { e.value = '3,5; 6; gravel\\n2;-4;ice'; e.dispatchEvent(new Event('input')) })(document.getElementById('day-lines'))")
	p.The("button", "Add these lines").Click()
	p.until("the line is named", func() bool { return strings.Contains(Eval[string](p, why), "Line 2") })
	p.Eval("(e => { e.value = '3,5; 6; gravel\\n2;-4;sand'; e.dispatchEvent(new Event('input')) })(document.getElementById('day-lines'))")
	p.The("button", "Add these lines").Click()
	p.Until("two stretches", "document.querySelectorAll('#climbing table.stretches tbody tr').length === 2")
	p.The("button", "Add a stretch").Click()
	p.The("textbox", "Stretch 3, km").Fill("1.25")
	p.The("textbox", "Stretch 3, %").Fill("80")
	p.Until("a slope that may not be is told of", "[...document.querySelectorAll('#climbing table.stretches .why')].some((w) => /50/.test(w.innerText))")
	p.The("textbox", "Stretch 3, %").Fill("-1")
	p.The("button", "Delete stretch 1").Click()
	p.Until("one is gone", "document.querySelectorAll('#climbing table.stretches tbody tr').length === 2")
	if s := kept().Stretches; len(s) != 2 || s[0] != (document.Stretch{Length: 2000, Slope: -4, Surface: "sand"}) || s[1] != (document.Stretch{Length: 1250, Slope: -1, Surface: "sand"}) {
		t.Errorf("%+v", s)
	}
	p.The("button", "Copy it").Click()
	p.until("a copy", func() bool { return days() == start+2 })
	if name := kept().Name; name != "Copy of Over the sand" {
		t.Errorf("the copy is called %s", name)
	}
	for _, b := range auditOf(p, "#climbing") {
		t.Errorf("%+v", b)
	}
	p.Eval("document.querySelector('#climbing sy-day').scrollIntoView()")
	p.look("days-desk")
	p.Look(Phone)
	p.Eval("document.querySelector('#climbing sy-day').scrollIntoView()")
	p.look("days-phone")
	if wide := Eval[[]string](p, `[...document.querySelectorAll('body *')].filter((e) => e.checkVisibility() && e.getBoundingClientRect().right > 391).map((e) => e.outerHTML.slice(0, 120))`); Eval[int](p, "document.documentElement.scrollWidth") > 390 {
		t.Errorf("wider than the sheet: %v", wide)
	}
	if small := Eval[[]string](p, tooSmall("#climbing")); len(small) > 0 {
		t.Errorf("too small for a finger: %v", small)
	}
	p.Look(Desk)
	p.The("button", "Delete it").Click()
	p.until("gone", func() bool { return days() == start+1 })
	p.Until("the one before is shown", "/Over the sand/.test(document.querySelector('#climbing').innerText)")
}
