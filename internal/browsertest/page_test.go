package browsertest

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/dom"
	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp/kb"
	"github.com/goccy/go-json"

	"steelyard/internal/document"
	"steelyard/internal/report"
	"steelyard/internal/scene"
	"steelyard/internal/site/static"
	"steelyard/internal/units"
)

// inFrame is the canvas's window, seen from the page.
const inFrame = "document.querySelector('iframe').contentWindow"

// openPage opens the page for somebody who has been there before, and waits until
// figures and picture are there.
func openPage(t *testing.T, look Look) *Page {
	t.Helper()
	p := browser.Lend(t, server.URL, look)
	p.started()
	return p
}

// openFirst opens the page for somebody who has not.
func openFirst(t *testing.T, look Look) *Page {
	t.Helper()
	p := browser.Open(t, server.URL, look)
	p.started()
	return p
}

// started waits until the page is as one finds it: figures, picture, nothing
// left to keep.
func (p *Page) started() {
	p.tb.Helper()
	p.Until("the picture is painted, or cannot be", inFrame+".steelyardFrame?.state == 'painted' || "+inFrame+".steelyardFrame?.problem")
	if problem := Eval[string](p, inFrame+".steelyardFrame.problem"); problem != "" {
		p.tb.Fatal(problem)
	}
	p.kept()
}

// kept waits until the browser has kept the document.
func (p *Page) kept() {
	p.tb.Helper()
	p.Until("the document is kept", "document.querySelector('.keeping.kept')")
}

// saved returns the document as the page saves it to a file.
func (p *Page) saved() (text string, d *document.Document) {
	p.tb.Helper()
	return p.savedBy("Save")
}

// savedBy is saved with the button of another language.
func (p *Page) savedBy(button string) (text string, d *document.Document) {
	p.tb.Helper()
	name, text := p.Saves(p.command(button).Click)
	p.Until("the commands are folded up again", "!document.querySelector('.dateline.shown')")
	if !strings.HasSuffix(name, ".json") {
		p.tb.Errorf("the file is named %q", name)
	}
	d, problems := document.Open([]byte(text))
	if d == nil {
		p.tb.Fatalf("the saved document does not open: %v", problems)
	}
	return text, d
}

// command is a button of the masthead, where they may lie folded into one. A focus
// that goes elsewhere folds them up again.
func (p *Page) command(name string) (found Thing) {
	p.tb.Helper()
	p.until("there is a command "+name, func() (ok bool) {
		p.Eval("(b => b?.checkVisibility() && b.ariaExpanded === 'false' && b.click())(document.querySelector('.nameplate .opens'))")
		found, ok = p.find("button", name, false)
		return ok
	})
	return found
}

// weigh evaluates a document here.
func weigh(tb testing.TB, text string) *report.Report {
	tb.Helper()
	var r report.Report
	if err := json.Unmarshal([]byte(functions["evaluate"](text)), &r); err != nil {
		tb.Fatal(err)
	}
	return &r
}

func figure(tb testing.TB, r *report.Report, build, key string) float64 {
	tb.Helper()
	for _, b := range r.Builds {
		if b.ID != build {
			continue
		}
		for _, f := range b.Figures {
			if f.Key == key {
				return f.Value
			}
		}
	}
	tb.Fatalf("the report has no %s of %s", key, build)
	return 0
}

// read is a script that reads a number as the page sets it: whole and decimals
// apart, its ± behind.
const read = `(n => Number((n.querySelector('.whole').textContent + n.querySelector('.rest').textContent).replace('−', '-').replace(/\s/g, '')))`

// row returns the numbers of the balance's row that begins so: A, B, and their
// difference.
func (p *Page) row(begin string) []float64 {
	p.tb.Helper()
	return Eval[[]float64](p, rowOf(begin))
}

// rowOf is an expression for the numbers of the balance's row that begins so.
func rowOf(begin string) string {
	return `[...([...document.querySelectorAll('#balance tr')].find(r => r.textContent.trim().startsWith(` + quote(begin) + `))?.querySelectorAll('.num') ?? [])].map(` + read + `)`
}

// total returns the total mass of build A as the page shows it, kg.
func (p *Page) total() float64 {
	p.tb.Helper()
	return Eval[float64](p, read+"(document.querySelector('#balance .num'))")
}

func TestThePageOpensOnTheDemo(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	r := weigh(t, demo())
	if got, want := p.total(), figure(t, r, "gearbox", "total")/1000; math.Abs(got-want) > 0.006 {
		t.Errorf("the page says %v kg, want %v", got, want)
	}
	for begin, key := range map[string]string{"Rear unsprung, tally": "unsprung_rear", "Rear, effective": "effective_rear", "Front wheel": "front_load"} {
		row := p.row(begin)
		a, b := figure(t, r, r.Difference.A, key)/1000, figure(t, r, r.Difference.B, key)/1000
		if len(row) != 3 || math.Abs(row[0]-a) > 0.006 || math.Abs(row[1]-b) > 0.006 || math.Abs(row[2]-(b-a)) > 0.006 {
			t.Errorf("%s: the page shows %v, want %.3f, %.3f and their difference", begin, row, a, b)
		}
	}
	// Picture, totals and difference are in view together.
	for _, what := range []string{
		"document.querySelector('iframe')",
		"document.querySelector('#balance h2')",
		"[...document.querySelectorAll('#balance *')].find(e => e.textContent.trim() == 'B is lighter' && !e.children.length) ?? [...document.querySelectorAll('#balance *')].filter(e => e.textContent.includes('B is lighter')).at(-1)",
		"[...document.querySelectorAll('#balance tr')].find(r => r.textContent.includes('Rear unsprung'))",
	} {
		if box := Eval[[]float64](p, "(r => [r.left, r.top, r.right, r.bottom])(("+what+").getBoundingClientRect())"); box[0] < 0 || box[1] < 0 || box[2] > 1280 || box[3] > 800 || box[2] <= box[0] {
			t.Errorf("%.60s lies at %v, not in view", what, box)
		}
	}
	p.keepScreenshot("page")
}

// mass is the field of the mass of one piece of a part.
func (p *Page) mass(part string) Thing {
	p.tb.Helper()
	return p.Like("textbox", "Mass of one, "+part)
}

const gearbox = "Crank gearbox, wide range"

func TestEditAndUndo(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	before := p.total()
	text, d := p.saved()
	old := d.Build("gearbox").Part("gearbox")
	if old == nil {
		t.Fatalf("the demo has no part gearbox: %.300s", text)
	}
	p.mass(gearbox).Fill("3000")
	want := before + (3000-old.Mass)/1000
	p.until(fmt.Sprintf("the total is %.2f", want), func() bool { return math.Abs(p.total()-want) < 0.011 })
	if _, d := p.saved(); d.Build("gearbox").Part("gearbox").Mass != 3000 {
		t.Errorf("saved with %v g", d.Build("gearbox").Part("gearbox").Mass)
	}
	// A decimal comma and a unit of its own do as well.
	p.mass(gearbox).Fill("2,5005 kg")
	p.until("the total follows", func() bool { return math.Abs(p.total()-(before+(2500.5-old.Mass)/1000)) < 0.011 })
	p.command("Undo").Click()
	p.command("Undo").Click()
	p.until("the total is as before", func() bool { return p.total() == before })
	p.command("Redo").Click()
	p.until("the total is as after the first edit", func() bool { return math.Abs(p.total()-want) < 0.011 })
}

func TestBadInputStaysAtItsField(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	before := p.total()
	for _, typed := range []string{"heavy", "-3", "NaN", "1e99"} {
		field := p.mass(gearbox)
		field.Fill(typed)
		p.until("the field says that it is wrong", func() bool {
			return Ask[string](p.mass(gearbox), "e => e.getAttribute('aria-invalid') + document.getElementById(e.getAttribute('aria-describedby'))?.textContent.length") > "true1"
		})
		if now := p.total(); now != before {
			t.Errorf("%q changed the total from %v to %v", typed, before, now)
		}
		field = p.mass(gearbox)
		field.Focus()
		p.Key(kb.Escape)
		p.until("the field is right again", func() bool { return Ask[bool](p.mass(gearbox), "e => e.getAttribute('aria-invalid') === null") })
	}
	// Markup is a name like any other.
	const name = `<img src=x onerror="document.title='bad'"><script>1</script>`
	p.Eval(`[...document.querySelectorAll('#parts input')].find(e => e.value === ` + quote(gearbox) + `).focus()`)
	p.Key("a", kb.ModifierCtrl)
	Call(p, input.InsertText, input.InsertTextParams{Text: name})
	p.Key(kb.Enter)
	p.until("the name is taken", func() bool { return strings.Contains(Eval[string](p, "document.body.innerText"), "<img src=x") })
	if n := Eval[int](p, "document.querySelectorAll('img[src=x]').length"); n != 0 {
		t.Errorf("the name became %d elements", n)
	}
	if title := Eval[string](p, "document.title"); strings.Contains(title, "bad") {
		t.Errorf("the name ran as a script")
	}
}

// Eval evaluates for effect.
func (p *Page) Eval(script string) {
	p.tb.Helper()
	Eval[bool](p, "(() => { "+script+"; return true })()")
}

// spot returns where the page's picture has a part, in the window.
func (p *Page) spot(document, view, part string) (x, y float64) {
	p.tb.Helper()
	box := Eval[[4]float64](p, "(() => { const f = document.querySelector('iframe'); f.scrollIntoView({ block: 'nearest' }); const r = f.getBoundingClientRect(); return [r.left + f.clientLeft, r.top + f.clientTop, f.clientWidth, f.clientHeight] })()")
	x, y, err := spotIn(document, view, part, box)
	if err != nil {
		p.tb.Fatal(err)
	}
	return x, y
}

// pageView is what the page shows at first.
const pageView = `{"build":"gearbox","side":"side","labels":true}`

func TestDragOnTheCanvasMovesThePart(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	text, before := p.saved()
	r0 := weigh(t, text)
	centre := p.row("Ahead of rear axle")[0]
	x, y := p.spot(text, pageView, "saddle")

	// Hovering tells the part.
	p.Hover(x, y)
	p.Until("the part is told", `document.querySelector('#picture').innerText.includes('Saddle')`)
	p.Drag(x, y, x-120, y+30)
	p.until("the centre of mass moves back", func() bool { return p.row("Ahead of rear axle")[0] < centre })
	text, after := p.saved()
	a, b := before.Build("gearbox").Part("saddle"), after.Build("gearbox").Part("saddle")
	if a == nil || b == nil {
		t.Fatal("the demo has no part saddle")
	}
	at := func(p *document.Part) document.Vec3 {
		if p.At != nil {
			return *p.At
		}
		return p.Offset
	}
	dx, dz := at(b)[0]-at(a)[0], at(b)[2]-at(a)[2]
	// Both are to one scale, downwards is less z; the doc holds tenths of a mm.
	if dx > -50 || dz > -10 || math.Abs(dx/dz-120./30) > 0.1 {
		t.Errorf("dragged 120 px back and 30 down, the part moved %.1f and %.1f mm", dx, dz)
	}
	// The page shows what the document says, and what one part moves the centre
	// of mass by is its share of the mass.
	r1 := weigh(t, text)
	if got, want := p.row("Ahead of rear axle")[0], figure(t, r1, "gearbox", "centre_x"); math.Abs(got-want) > 0.51 {
		t.Errorf("the page says %v mm, want %.1f", got, want)
	}
	moved := figure(t, r1, "gearbox", "centre_x") - figure(t, r0, "gearbox", "centre_x")
	if want := dx * a.Mass * float64(max(a.Quantity, 1)) / figure(t, r0, "gearbox", "total"); math.Abs(moved-want) > 0.05 {
		t.Errorf("the centre of mass moved %.2f mm, want %.2f", moved, want)
	}
	// One drag is one step to undo.
	p.command("Undo").Click()
	p.until("the centre of mass is back", func() bool { return p.row("Ahead of rear axle")[0] == centre })
}

func TestArrowKeysNudge(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	text, before := p.saved()
	x, y := p.spot(text, pageView, "saddle")
	p.ClickAt(x, y)
	p.Until("the part is chosen", `document.querySelector('#picture').innerText.includes('Deselect')`)
	for range 3 {
		p.Key(kb.ArrowLeft)
	}
	p.Key(kb.ArrowUp, kb.ModifierShift)
	p.kept()
	_, after := p.saved()
	a, b := before.Build("gearbox").Part("saddle").Offset, after.Build("gearbox").Part("saddle").Offset
	if b[0] >= a[0] || b[2] <= a[2] || b[1] != a[1] {
		t.Errorf("three steps back and a large one up moved the part from %v to %v", a, b)
	}
	// The keyboard gets out of the canvas again.
	p.Key(kb.Tab)
	p.Until("the page has the keyboard", "document.activeElement?.tagName !== 'IFRAME'")
}

// Over the picture the wheel scrolls the page as it does elsewhere; with Ctrl,
// as which a pinch on a touch pad comes too, it zooms.
func TestTheWheelScrollsAndWithCtrlZooms(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	text, _ := p.saved()
	x, y := p.spot(text, pageView, "saddle")
	p.Wheel(x, y, 300)
	p.Until("the page has scrolled", "scrollY > 100")
	p.Wheel(x, y, -2000)
	p.Until("the page has scrolled back", "scrollY === 0")
	p.Hover(x, 5) // off the part
	Eval[bool](p, "new Promise(done => setTimeout(() => done(true), 300))")
	n := Eval[int](p, inFrame+".steelyard.frames()")
	p.Wheel(x, y, -400, kb.ModifierCtrl)
	p.Until("the picture is drawn anew", fmt.Sprintf("%s.steelyard.frames() > %d", inFrame, n))
	// What was under the pointer still is.
	p.Hover(x+1, y+1)
	p.Until("the part is told", `document.querySelector('#picture').innerText.includes('Saddle')`)
	if top := Eval[float64](p, "scrollY"); top != 0 {
		t.Errorf("the page scrolled by %v", top)
	}
}

// choose picks an option of a select by what it says.
func (t Thing) choose(option string) {
	t.p.tb.Helper()
	if !Ask[bool](t, `e => { const o = [...e.options].find(o => o.textContent.trim() === `+quote(option)+`); if (!o) return false; e.value = o.value; e.dispatchEvent(new Event('input', { bubbles: true })); e.dispatchEvent(new Event('change', { bubbles: true })); return true }`) {
		t.p.tb.Fatalf("%s has no option %q", t.Name, option)
	}
}

func TestCompareAnotherBuild(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	_, d := p.saved()
	third := d.Builds[2]
	p.The("combobox", "Choose build B").choose(third.Name)
	d.Show.Compare = []string{"gearbox", third.ID}
	text, err := document.Write(d)
	if err != nil {
		t.Fatal(err)
	}
	want := weigh(t, string(text)).Difference
	var delta report.Change
	for _, c := range want.Figures {
		if c.Key == "unsprung_rear" {
			delta = c
		}
	}
	p.until("the difference is that of the two", func() bool {
		row := p.row("Rear unsprung, tally")
		return len(row) == 3 && math.Abs(row[2]-delta.Delta/1000) < 0.006 && math.Abs(row[1]-delta.B/1000) < 0.006
	})
	if _, now := p.saved(); len(now.Show.Compare) != 2 || now.Show.Compare[1] != third.ID {
		t.Errorf("the document compares %v", now.Show.Compare)
	}
}

func TestNothingIsLostOnReload(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	p.mass(gearbox).Fill("3210")
	p.until("it is weighed", func() bool { return strings.Contains(p.mass(gearbox).Value(), "3210") })
	total := p.total()
	// What lies folded in chapters is left as it was, too, also what is open by itself.
	const folds = `['#balance .explain', '#picture sy-picture-foot .words', '#picture sy-markers .words', '#climbing .aside-fold', '#rough .rough-curves', '#rough .rough-settings', '#limits .explain'].map(s => document.querySelector(s)?.open)`
	p.Eval("document.querySelectorAll('#climbing > * > .fold, #rough > * > .fold, #limits > * > .fold').forEach(d => { d.open = true })")
	p.Until("the folds are there", folds+".every(open => open !== undefined)")
	before := Eval[string](p, folds+".join()")
	p.Eval("document.querySelectorAll('#balance .explain > summary, #picture .words > summary, #climbing .aside-fold > summary, #rough .aside-fold > summary, #limits .explain > summary').forEach(s => s.click())")
	other := strings.NewReplacer("true", "false", "false", "true").Replace(before)
	p.Until("all of them are otherwise", folds+".join() === "+quote(other))
	p.Until("that is remembered", "(localStorage.getItem('steelyard.unfolded') ?? '').includes('!rough/curves')")
	p.kept()
	p.Reload()
	p.started()
	p.Until("the folds are as they were left", folds+".join() === "+quote(other))
	if now := p.total(); now != total {
		t.Errorf("after a reload the page says %v kg, before %v", now, total)
	}
	// At once after an edit as well.
	p.mass(gearbox).Fill("2220")
	p.Reload()
	p.started()
	p.until("the last edit is there", func() bool { return strings.HasPrefix(p.mass(gearbox).Value(), "2220") })
}

func TestSaveAndOpen(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	p.mass(gearbox).Fill("3210")
	text, d := p.saved()
	if d.Build("gearbox").Part("gearbox").Mass != 3210 {
		t.Errorf("saved with %v g", d.Build("gearbox").Part("gearbox").Mass)
	}
	total := p.total()

	q := openPage(t, Desk)
	q.Chooses("mine.json", text, q.Like("button", "Open").Click)
	q.until("the document is open", func() bool { return q.total() == total })
	again, _ := q.saved()
	if again != text {
		t.Errorf("opened and saved again, the document is another")
	}
	// What cannot be opened is told, and the work stays.
	for name, content := range map[string]string{"broken.json": `{"format":"steelyard","ver`, "other.json": `{"recipe":"soup"}`, "newer.json": `{"format":"steelyard","version":99,"builds":[]}`} {
		q.Chooses(name, content, q.Like("button", "Open").Click)
		q.Until("it says that "+name+" cannot be opened", "document.body.innerText.includes("+quote(name)+")")
		if now := q.total(); now != total {
			t.Errorf("%s changed the total", name)
		}
	}
}

// A saved file is the text that the core writes, a part to a line, and figures
// stand on the page with their ± as the core rounds them in copies.
func TestOneWayOfWriting(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	text, d := p.saved()
	want, err := document.Write(d)
	if err != nil {
		t.Fatal(err)
	}
	if text != string(want) {
		t.Errorf("the file is not what the core writes: %.300s", text)
	}
	r := weigh(t, text)
	for i, side := range r.Sides {
		for _, f := range side.Figures {
			switch f.Key {
			case "front_load", "rear_load", "sprung", "unsprung_front", "effective_rear":
			default:
				continue // not a mass, or not in the table as it opens
			}
			value, within := units.Format{}.MassWithin(f.Value, f.Plus, d.Show.Mass)
			bare := func(s string) string { return strings.TrimSuffix(s, "\u00a0"+d.Show.Mass) }
			number := bare(value)
			if within != "" {
				number += "±" + bare(within)
			}
			if !Eval[bool](p, "[...document.querySelectorAll('#balance td:nth-child("+strconv.Itoa(i+2)+") .num')].some(n => n.textContent === "+quote(number)+")") {
				t.Errorf("%s of side %d is not written %q in %.900q", f.Key, i, number, p.says("#balance"))
			}
		}
	}
}

func TestShareLink(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	p.mass(gearbox).Fill("3210")
	p.until("it is weighed", func() bool { return strings.Contains(p.mass(gearbox).Value(), "3210") })
	total := p.total()
	p.command("Share link").Click()
	p.Until("there is a link", "document.querySelector('dialog input.link')?.value.includes('#')")
	link := Eval[string](p, "document.querySelector('dialog input.link').value")
	if !strings.HasPrefix(link, server.URL+"#") && !strings.HasPrefix(link, server.URL+"index.html#") {
		t.Fatalf("the link is %.80s", link)
	}
	q := browser.Open(t, link, Desk)
	q.started()
	// The reader is asked before the document takes the place of the other.
	q.The("button", Eval[string](q, "[...document.querySelectorAll('dialog button.go')].map(b => b.textContent.trim())[0] ?? 'none'")).Click()
	q.until("the document is open", func() bool { return q.total() == total })
	if address := Eval[string](q, "location.href"); strings.Contains(address, "#") && len(address) > len(server.URL)+30 {
		t.Errorf("the document stays in the address")
	}
	// A broken link is told.
	q.Navigate(link[:len(link)-40])
	q.Until("it says that the link is broken", "/link/i.test([...document.querySelectorAll('sy-notices, sy-notes')].map(e => e.innerText).join(' '))")
}

func TestPartsFromCSV(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	before := p.total()
	_, d := p.saved()
	n := len(d.Build("gearbox").Parts)
	csv := "Name;Weight;Note\nBell;42 g;brass\nMirror;0,12 kg;\nBroken;heavy;\nFlag;31;\n"
	p.Chooses("list.csv", csv, p.Like("button", "CSV in").Click)
	p.Until("the preview is there", "document.querySelector('dialog')?.innerText.includes('Mirror')")
	dialog := Eval[string](p, "document.querySelector('dialog').innerText")
	if !strings.Contains(dialog, "Line 4") {
		t.Errorf("the bad row is not shown with its line:\n%s", dialog)
	}
	p.The("button", "Add them").Click()
	p.until("the total follows", func() bool { return math.Abs(p.total()-before-0.193) < 0.011 })
	_, d = p.saved()
	got := d.Build("gearbox").Parts
	if len(got) != n+3 {
		t.Fatalf("%d parts, want %d", len(got), n+3)
	}
	for i, want := range []struct {
		name string
		mass float64
	}{{"Bell", 42}, {"Mirror", 120}, {"Flag", 31}} {
		if q := got[n+i]; q.Name != want.name || q.Mass != want.mass {
			t.Errorf("part %d is %s of %v g, want %s of %v g", n+i, q.Name, q.Mass, want.name, want.mass)
		}
	}
	// And out again.
	name, out := p.Saves(p.The("button", "CSV out").Click)
	if !strings.HasSuffix(name, ".csv") || !strings.Contains(out, "Mirror") {
		t.Errorf("%s holds %.100q", name, out)
	}
}

// A list as a spreadsheet of another country writes it: in its code page, with
// bare CRs, kilograms that nobody names, pairs, sums and things unheard of. What
// is made of it is told, and can be changed.
func TestPreviewOfASpreadsheet(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	_, d := p.saved()
	n := len(d.Build("gearbox").Parts)
	list := "St\xfcck;Bezeichnung;Gewicht\r1;Rahmen;2,4\r1;Gabel;1,1\r2;Felge;0,53\r64;Speichen;0,0065\r1;Sattelst\xfctze;0,28\r2;Bremsscheibe;0,14\r" +
		"1;Sattel;0,31\r1;Zwirbel;0,2\r1;Schl\xe4uche;0,43\r1;Kette;0,3\r;Summe;7\r1;Dings;0,05\r1;kaputt;schwer\r"
	p.Chooses("liste.csv", list, p.Like("button", "CSV in").Click)
	says := func(what string) {
		t.Helper()
		p.Until("it says "+what, "document.querySelector('dialog.csv')?.innerText.replaceAll('\u00a0', ' ').includes("+quote(what)+")")
	}
	for _, what := range []string{"Windows-1252", "Sattelstütze", "Take in as a part", "Line 12: Summe", "15 parts, 6.83 kg together", "Of that, 6.58 kg is recognised", "2 of 15 parts have no place yet", "taken as kg", "Line 14"} {
		says(what)
	}
	choose := func(css, value string) {
		t.Helper()
		p.Eval("const s = document.querySelector(" + quote(css) + "); s.value = " + quote(value) + "; s.dispatchEvent(new Event('change'))")
	}
	p.Until("a choice for each that is open", "document.querySelectorAll('dialog.csv .ends select').length === 4")
	says("32 in front, 32 at the rear")
	choose("dialog.csv .ends li:nth-child(1) select", "rear")
	says("both at the rear")
	p.Until("and it stays", "document.querySelector('dialog.csv .ends select').value === 'rear'")
	p.The("button", "Take in as a part: Line 12, Summe").Click()
	says("3 of 15 parts have no place yet")
	p.The("button", "Take in as a part: Line 12, Summe").Click()
	says("2 of 14 parts have no place yet")
	choose("dialog.csv select.unit", "lb")
	says("3.10 kg together")
	choose("dialog.csv select.unit", "kg")
	says("6.83 kg together")
	p.The("button", "Show all").Click()
	p.Until("all are there", "document.querySelectorAll('dialog.csv tbody tr').length === 14 && document.querySelectorAll('dialog.csv tbody em').length === 2")
	mustPass(p, "the preview", "dialog")
	p.The("button", "Add them").Click()
	p.until("the parts are there", func() bool { _, d = p.saved(); return len(d.Build("gearbox").Parts) == n+14 })
	stations := map[string]string{}
	for _, q := range d.Build("gearbox").Parts[n:] {
		stations[q.Name] += fmt.Sprint(q.Station, " ", q.Quantity, ";")
	}
	for name, want := range map[string]string{
		"Felge": "rear-axle 2;", "Speichen": "front-axle 32;rear-axle 32;", "Bremsscheibe": "front-rotor 1;rear-rotor 1;",
		"Schläuche": "front-axle 1;rear-axle 1;", "Sattelstütze": "seatpost 1;", "Zwirbel": "frame 1;",
	} {
		if stations[name] != want {
			t.Errorf("%s is at %s, want %s", name, stations[name], want)
		}
	}
}

func TestAddAPartFromTheCatalogue(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	before := p.total()
	box := p.Like("combobox", "Add a part to build A")
	box.Focus()
	Call(p, input.InsertText, input.InsertTextParams{Text: "belt"})
	p.Until("something is found", "document.querySelectorAll('[role=option]').length > 0")
	p.Key(kb.Enter)
	p.The("button", "Add beside it").Click() // there is a chain
	p.until("the total grows", func() bool { return p.total() > before })
	p.command("Undo").Click()
	p.until("the total is as before", func() bool { return p.total() == before })
	// What the catalogue does not know can be typed.
	box = p.Like("combobox", "Add a part to build A")
	box.Focus()
	Call(p, input.InsertText, input.InsertTextParams{Text: "Zither 1.5 kg"})
	p.Key(kb.Enter)
	p.until("the total grows by it", func() bool { return math.Abs(p.total()-before-1.5) < 0.011 })
}

func TestPhone(t *testing.T) {
	t.Parallel()
	p := openPage(t, FinePhone)
	if wide := Eval[float64](p, "document.scrollingElement.scrollWidth"); wide > float64(Phone.Width) {
		t.Errorf("the page is %v px wide on a screen of %d", wide, Phone.Width)
	}
	// Sections stand one below the other.
	tops := Eval[[]float64](p, "['#balance', '#picture', '#difference', '#parts'].map(s => document.querySelector(s).getBoundingClientRect().top)")
	for i := 1; i < len(tops); i++ {
		if tops[i] <= tops[i-1] {
			t.Errorf("sections begin at %v", tops)
		}
	}
	text, before := p.saved()
	x, y := p.spot(text, pageView, "saddle")
	p.Tap(x, y)
	p.Until("the part is chosen", `document.querySelector('#picture').innerText.includes('Saddle')`)
	// A finger on a marker drags it, and the page stays where it is.
	x, y = p.spot(text, pageView, "saddle")
	top := Eval[float64](p, "scrollY")
	p.Touch(input.DispatchTouchEventTypeTouchStart, [2]float64{x, y})
	for i := 1; i <= 6; i++ {
		p.Touch(input.DispatchTouchEventTypeTouchMove, [2]float64{x - 5*float64(i), y + 10*float64(i)})
	}
	p.Touch(input.DispatchTouchEventTypeTouchEnd)
	if now := Eval[float64](p, "scrollY"); now != top {
		t.Errorf("dragging a marker scrolled the page from %v to %v", top, now)
	}
	p.until("the part has moved", func() bool {
		_, after := p.saved()
		a, b := before.Build("gearbox").Part("saddle").Offset, after.Build("gearbox").Part("saddle").Offset
		return b[2] < a[2]-20
	})
}

// broken is one rule of axe-core's broken at some elements.
type broken struct {
	ID    string `json:"id"`
	Help  string `json:"help"`
	Nodes []struct {
		Target  []any  `json:"target"`
		Summary string `json:"failureSummary"`
	} `json:"nodes"`
}

// audit runs axe-core's rules over the page and its frame.
func audit(p *Page) []broken {
	p.tb.Helper()
	return auditOf(p, "")
}

// auditOf is audit of what a selector finds, without the frame unless that is
// in it; empty for all.
func auditOf(p *Page, selector string) []broken {
	p.tb.Helper()
	p.bringAxe()
	// An audit of all of the page, unfolded, is the longest single thing asked of it.
	defer func(usual time.Duration) { p.patience = usual }(p.patience)
	p.patience *= 5
	if selector == "" {
		return Eval[[]broken](p, axeRun+"(document, {})")
	}
	// What a page must have once is not in every part of it.
	return Eval[[]broken](p, fmt.Sprintf("%s(%s, () => %s(%[2]s, { 'landmark-one-main': { enabled: false }, 'page-has-heading-one': { enabled: false } }))", alone, quote(selector), axeRun))
}

// axeRun is a script that runs axe-core's rules, some of them put otherwise, over
// the document or what a selector finds.
const axeRun = `((of, rules) => axe.run(of, { resultTypes: ['violations'], rules }).then(r =>
	r.violations.map(v => ({ id: v.id, help: v.help, nodes: v.nodes.map(n => ({ target: n.target, failureSummary: n.failureSummary })) }))))`

// alone is a script that puts away all but what a selector finds while something is
// done. axe-core looks at each element of the page whatever part of it is asked about,
// which takes as long as all rules for the page. What has the focus stays, and so
// does the frame, which would measure itself anew.
const alone = `(async (of, act) => {
	const kept = new Set(), away = [], top = scrollY;
	for (const e of document.querySelectorAll(of)) for (let up = e; up; up = up.parentElement) kept.add(up);
	const stays = e => e.matches('iframe, script') || e.querySelector('iframe') || e.contains(document.activeElement);
	const putAway = within => {
		for (const e of within.children) {
			if (e.matches(of)) continue;
			if (kept.has(e)) putAway(e);
			else if (!stays(e)) {
				away.push([e, e.style.display]);
				e.style.display = 'none';
			}
		}
	};
	putAway(document.body);
	try {
		return await act();
	} finally {
		for (const [e, display] of away) e.style.display = display;
		scrollTo(0, top);
	}
})`

// bringAxe brings axe-core into the page and its frame.
func (p *Page) bringAxe() {
	p.tb.Helper()
	if Eval[bool](p, "!!window.axe && !!"+inFrame+".axe") {
		return
	}
	root, err := static.Root(".")
	if err != nil {
		p.tb.Fatal(err)
	}
	axe, err := os.ReadFile(filepath.Join(root, "web", "node_modules", "axe-core", "axe.min.js"))
	if err != nil {
		p.tb.Fatal(err)
	}
	p.Eval(string(axe))
	// The frame's policy forbids text as code; the browser itself may run it there.
	page := Call(p, dom.GetDocument, dom.GetDocumentParams{}).Root
	frame := Call(p, dom.QuerySelector, dom.QuerySelectorParams{NodeID: page.NodeID, Selector: "iframe"})
	inside := Call(p, dom.DescribeNode, dom.DescribeNodeParams{NodeID: frame.NodeID}).Node.ContentDocument
	Ask[bool](Thing{p: p, Role: "document", node: inside.BackendNodeID}, "() => { "+string(axe)+"; return true }")
}

// The whole page at once, by the rules that hold for a page as well. Of its pieces
// and dialogs one by one see TestEveryViewIsAccessible.
func TestAccessibility(t *testing.T) {
	t.Parallel()
	desk, phone := openPage(t, Desk), openPage(t, Phone)
	for _, c := range []struct {
		name   string
		p      *Page
		before func(p *Page)
	}{
		{"desk", desk, func(*Page) {}},
		{"phone", phone, func(*Page) {}},
		{"details", desk, func(p *Page) {
			p.Like("button", "Details of "+gearbox).Click()
			p.The("button", "Dimensions").Click()
			p.mass(gearbox).Fill("heavy")
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := c.p
			p.During(t)
			c.before(p)
			wait(p, 300)
			for _, v := range audit(p) {
				for i, n := range v.Nodes {
					if i == 3 {
						t.Errorf("%s: and %d more", v.ID, len(v.Nodes)-3)
						break
					}
					t.Errorf("%s (%s): %v %s", v.ID, v.Help, n.Target, n.Summary)
				}
			}
		})
	}
	// The audit sees the page, and into the frame.
	t.Run("sabotage", func(t *testing.T) {
		p := desk
		p.During(t)
		p.Eval("document.querySelector('main').append(new Image()); " + inFrame + ".document.body.append(document.createElement('button'))")
		for _, of := range []string{"", "main", "#parts"} {
			if of == "#parts" {
				p.Eval("document.querySelector('#parts').append(new Image(), document.createElement('button'))")
			}
			found := map[string]bool{}
			for _, v := range auditOf(p, of) {
				found[v.ID] = true
			}
			if !found["image-alt"] || !found["button-name"] {
				t.Errorf("a picture without words and a button without a name were not found in %q: %v", of, found)
			}
		}
		if away := Eval[int](p, "[...document.querySelectorAll('main > *')].filter(e => e.style.display).length"); away > 0 {
			t.Errorf("%d parts of the sheet stay put away", away)
		}
	})
}

// keepGo keeps the Go program at hand, to end it.
const keepGo = "if (location.pathname.endsWith('frame.html')) { let made; Object.defineProperty(window, 'Go', { get: () => made, set: (G) => { made = class extends G { constructor() { super(); window.theGo = this } } } }) }"

// The work in the page outlives the program behind it.
func TestAProgramThatDiesIsStartedAgain(t *testing.T) {
	t.Parallel()
	p := browser.Open(t, server.URL+"icon.svg", Desk)
	p.Preload(keepGo)
	p.Navigate(server.URL)
	p.started()
	p.mass(gearbox).Fill("3210")
	p.until("it is weighed", func() bool { return strings.Contains(p.mass(gearbox).Value(), "3210") })
	total := p.total()
	p.Eval("const go = " + inFrame + ".theGo; go.exited = true; go._resolveExitPromise()")
	p.The("button", "Start it again").Click()
	p.started()
	p.until("the figures are there", func() bool { return p.total() == total })
	p.mass(gearbox).Fill("4210")
	p.until("the program works again", func() bool { return math.Abs(p.total()-total-1) < 0.011 })
}

func TestALostContextKeepsTheWork(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	p.mass(gearbox).Fill("3210")
	p.until("it is weighed", func() bool { return strings.Contains(p.mass(gearbox).Value(), "3210") })
	total := p.total()
	p.Eval(inFrame + ".old = true")
	p.Eval(inFrame + ".document.querySelector('canvas').getContext('webgl2').getExtension('WEBGL_lose_context').loseContext()")
	p.Until("the frame has loaded again", "!"+inFrame+".old && "+inFrame+".steelyardFrame?.state == 'painted'")
	p.until("the figures are there", func() bool { return p.total() == total })
	p.Eval("scrollTo(0, 0)")
	p.until("the picture is back", func() bool { return count(picture(t, p.Screenshot()), scene.Light.Of(scene.Tyre)) > 500 })
}

// keepScreenshot renews a picture in the README, when the variable
// STEELYARD_SCREENSHOT is set. The page stays dense: it is a test's last step.
func (p *Page) keepScreenshot(name string) {
	p.tb.Helper()
	if os.Getenv("STEELYARD_SCREENSHOT") == "" {
		return
	}
	root, err := static.Root(".")
	if err != nil {
		p.tb.Fatal(err)
	}
	look := Desk
	look.Density = 2
	p.Look(look)
	wait(p, 1000)
	dir := filepath.Join(root, "testdata", "screenshots")
	if err := os.MkdirAll(dir, 0o755); err != nil {
		p.tb.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(dir, name+".png"), p.Screenshot(), 0o644); err != nil {
		p.tb.Fatal(err)
	}
}
