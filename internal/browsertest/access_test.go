package browsertest

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp/kb"
	"github.com/goccy/go-json"
	"github.com/google/go-cmp/cmp"
)

// views are what the page can show, each with the way to it. What was opened
// stays open for the next, dialogs excepted.
var views = []struct {
	name string
	of   string // where it changes the page; empty for all of it
	show func(p *Page)
}{
	{"unfolded", "", func(p *Page) { p.unfoldAll() }},
	{"all builds", "#builds", func(p *Page) {
		p.Until("the table is there", "document.querySelector('#builds table.all')")
	}},
	{"details of a part, a field gone wrong, a notice", "#parts .chosen, #parts .details, sy-notices", func(p *Page) {
		p.Eval(`(() => {
			const row = [...document.querySelectorAll('#parts .part')].find(r => r.querySelector('.n input')?.value === ` + quote(gearbox) + `);
			const b = row.querySelector('.a button');
			if (b.getAttribute('aria-expanded') !== 'true') b.click();
			const type = (e, v) => { e.focus(); e.value = v; e.dispatchEvent(new Event('input', { bubbles: true })) };
			type(row.querySelector('.m input'), 'heavy');
		})()`)
		p.Until("the field says what is wrong", "document.querySelector('#parts [aria-invalid=true]')")
		p.Eval("[...document.querySelectorAll('#parts .details .danger')].at(-1)?.click()")
		p.Until("a notice is up", "document.querySelector('.note')")
	}},
	{"parts marked, one missing", "#parts", func(p *Page) {
		p.Eval("(b => b.ariaPressed === 'false' && b.click())(document.getElementById('marks-on'))")
		p.Until("the lines can be marked", "document.querySelector('#parts .marker input')")
		p.Eval("[...document.querySelectorAll('#parts .marker input')].slice(0, 2).forEach(e => e.checked || e.click())")
		p.Until("something is missing", "document.querySelector('#parts .missing button')")
	}},
	{"rear view, dimensions and key", "#picture", func(p *Page) {
		p.Eval("[...document.querySelectorAll('#picture .head .set')][1].querySelectorAll('button')[1].click(); [...document.querySelectorAll('#picture .shows button')].forEach(b => b.ariaPressed === 'false' && b.click())")
	}},
	{"with rider", "#balance, #picture, #limits", func(p *Page) {
		p.Eval("document.querySelectorAll('sy-state .set:first-child button')[3].click()")
	}},
	{"errors to put right, remarks", "sy-notices, #frame", func(p *Page) {
		p.Eval(`(e => { e.focus(); e.value = '10'; e.dispatchEvent(new Event('input', { bubbles: true })) })(document.querySelector('#frame input[id*=head_angle]'))`)
		p.Until("a problem is told", "document.querySelector('.notice')")
	}},
	{"a packing found", "#packing", func(p *Page) {
		p.Eval("document.querySelector('#packing button.go').click()")
		p.Until("it has come to something", "document.querySelector('#packing .terms, #packing .why')")
	}},
	{"the commands", "#masthead", func(p *Page) {
		p.Eval("(b => b.ariaExpanded === 'false' && b.click())(document.querySelector('.nameplate .opens'))")
		p.Until("they are there", "document.querySelector('#commands').checkVisibility()")
	}},
	{"the contents, with what each chapter comes to", "sy-contents", func(p *Page) {
		p.Eval("(b => b.ariaExpanded === 'false' && b.click())(document.querySelector('.contents .opens'))")
		p.Until("they are there", "document.querySelectorAll('.contents .list .answer').length > 10")
	}},
	{"the catalogue searched", "sy-combo", func(p *Page) {
		p.Eval("(e => { e.focus(); e.value = 'rim'; e.dispatchEvent(new Event('input', { bubbles: true })) })(document.getElementById('add'))")
		p.Until("parts are offered", "document.querySelector('#add-list [role=option]')")
	}},
}

// dialogs are opened one by one, and menus.
func dialogs(p *Page) map[string]func() {
	open := func(selector string) func() {
		return func() {
			p.Eval("document.querySelector(" + quote(selector) + ").click()")
			p.Until("it is open", "document.querySelector('dialog[open]')")
		}
	}
	return map[string]func(){
		"keys":  open("#masthead .keys"),
		"about": open("#masthead .about"),
		"share": open("#masthead .acts > button:nth-of-type(3)"),
		"publish": func() {
			open("#masthead .acts > button:nth-of-type(4)")()
			p.Until("the proof is there", "document.querySelector('dialog[open] figure img, dialog[open] figure .why')")
		},
		"change": func() {
			open("#parts .changing")()
			p.Eval("[...document.querySelectorAll('dialog.change input[type=radio]')].find(r => !r.closest('label').querySelector('em')).click()")
			p.Until("it says what comes", "document.querySelector('dialog.change .tick')")
		},
		"scale": open("#parts .weighing"),
		"new bike": func() {
			p.Eval("[...document.querySelectorAll('#masthead sy-menu .menu-items button')][0].click()")
			p.Until("it is drawn", "document.querySelector('dialog.newbike .drawn svg')")
		},
		"frame table": func() {
			open("#frame .pasting")()
			p.Eval("(e => { e.value = 'Stack 1 2\\nReach 450 460\\nTrail 300 300\\nFoo 2'; e.dispatchEvent(new Event('input', { bubbles: true })) })(document.querySelector('dialog.frametable textarea'))")
			p.Eval("document.querySelector('dialog.frametable .sizes input').click()")
			p.Until("it is told what contradicts the rest", "document.querySelector('dialog.frametable .off')")
		},
		"photograph": open("#picture .publishing button"),
		"list": func() {
			p.Eval("[...document.querySelectorAll('#masthead sy-menu .menu-items button')][1].click()")
			p.Until("it can be pasted", "document.querySelector('dialog.csv textarea')")
		},
		"csv": func() {
			p.Chooses("list.csv", "Number,Name,Weight\n1,Bell,42\n2,Rim,500\n1,Whatsit,20\n,Total,1062\n1,Broken,heavy\n", func() {
				p.Eval("[...document.querySelectorAll('#parts button')].find(b => /^CSV (in|ein)/.test(b.textContent.trim())).focus()")
				p.Key(kb.Enter)
			})
			p.Until("the preview is there", "document.querySelector('dialog[open]')?.innerText.includes('Bell')")
		},
	}
}

// leaves closes a dialog by the keyboard.
func (p *Page) leaves() {
	p.tb.Helper()
	if !Eval[bool](p, "!!document.querySelector('dialog[open]')") {
		p.tb.Error("the dialog has gone by itself")
	}
	p.Key(kb.Escape)
	p.Until("it is closed", "!document.querySelector('dialog[open]')")
}

// mustPass audits what a selector finds, all of the page for an empty one.
func mustPass(p *Page, where, of string) {
	p.tb.Helper()
	// What is of the document before is faint for as long as the answer takes.
	p.Until("all that is shown is of now", "!document.querySelector('.stale[aria-busy=true], table.stale')")
	for _, v := range auditOf(p, of) {
		for i, n := range v.Nodes {
			if i == 3 {
				p.tb.Errorf("%s: %s: and %d more", where, v.ID, len(v.Nodes)-3)
				break
			}
			p.tb.Errorf("%s: %s (%s): %v %s", where, v.ID, v.Help, n.Target, n.Summary)
		}
	}
}

// What the tests find by name is called as assistive technology is told.
func TestThingsAreFoundByTheirNames(t *testing.T) {
	t.Parallel()
	for _, look := range []Look{Desk, Phone} {
		p := openPage(t, look)
		p.unfoldAll()
		wait(p, 1500)
		for _, role := range []string{"button", "checkbox", "radio", "combobox", "heading", "image", "searchbox", "textbox"} {
			var told []string
			for _, thing := range p.All(role, "") {
				told = append(told, strings.Join(strings.Fields(thing.Name), " "))
			}
			found := Eval[[]string](p, finder+"("+quote(role)+", null)")
			slices.Sort(told)
			slices.Sort(found)
			if !slices.Equal(told, found) {
				t.Errorf("of role %s is told, and found (-told +found):\n%.3000s", role, cmp.Diff(told, found))
			}
			names, err := json.Marshal(told)
			if err != nil {
				t.Fatal(err)
			}
			if lost := Eval[[]string](p, string(names)+".filter(name => "+finder+"("+quote(role)+", name, false) === null)"); len(lost) > 0 {
				t.Errorf("of role %s is not found by its name: %q", role, lost)
			}
		}
	}
}

// Every view, both themes, both languages, wide and narrow, the canvas's frame
// included.
func TestEveryViewIsAccessible(t *testing.T) {
	t.Parallel()
	for name, c := range map[string]struct {
		look     Look
		language string
	}{
		"desk, light, English": {Desk, "en"},
		"desk, dark, German":   {with(Desk, func(l *Look) { l.Dark = true }), "de"},
		"phone, dark, English": {with(Phone, func(l *Look) { l.Dark = true }), "en"},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			p := openFirst(t, c.look)
			if c.language != "en" {
				p.speak(c.language)
			}
			for _, v := range views {
				v.show(p)
				wait(p, 250)
				mustPass(p, v.name, v.of)
			}
			all := dialogs(p)
			for _, d := range slices.Sorted(maps.Keys(all)) {
				all[d]()
				wait(p, 150)
				mustPass(p, d, "dialog[open]")
				p.leaves()
			}
			n := Eval[int](p, "document.querySelectorAll('sy-menu').length")
			if n < 4 {
				t.Errorf("only %d menus", n)
			}
			p.Eval("document.querySelectorAll('sy-menu .menu > button').forEach(b => b.click())")
			p.Eval("document.querySelectorAll('sy-menu')[0].querySelector('.menu > button').click()")
			wait(p, 100)
			mustPass(p, "a menu", "sy-menu")
		})
	}
}

func with(l Look, change func(*Look)) Look {
	change(&l)
	return l
}

// touchable is a script that finds what can be pressed and is too small for a
// finger: less than 44 CSS px either way. A link within a sentence is as large
// as its words (WCAG 2.2, 2.5.8 and 2.5.5, "inline").
const touchable = `(() => {
	const bad = [];
	let n = 0;
	for (const e of document.querySelectorAll('button, a[href], select, input, textarea, summary, [role=option], [tabindex="0"]')) {
		if (e.disabled || e.closest('[hidden], .unseen, [inert]') || !e.checkVisibility({ visibilityProperty: true })) continue;
		if (e.matches('.scroll, [role=region], svg, dialog') || (e.matches('a') && e.closest('p, li, dd'))) continue;
		// A field's label takes the finger as well.
		const label = e.matches('input[type=checkbox], input[type=radio]') ? e.closest('label') ?? e : e;
		const r = label.getBoundingClientRect();
		if (!r.width && !r.height) continue;
		if (r.right < 0 || r.bottom + scrollY < 0) continue; // waits outside, such as the link to skip to
		n++;
		if (r.width < 43.9 || r.height < 43.9) bad.push(e.tagName.toLowerCase() + '.' + e.className + ' ' + (e.id ?? '') + ' “' + (e.ariaLabel ?? e.innerText ?? e.value ?? '').trim().slice(0, 40) + '” ' + r.width.toFixed(1) + ' × ' + r.height.toFixed(1));
	}
	return { n, bad };
})()`

type touched struct {
	N   int      `json:"n"`
	Bad []string `json:"bad"`
}

func TestFingersFindEveryTarget(t *testing.T) {
	t.Parallel()
	for _, width := range []int{390, 320} {
		t.Run(fmt.Sprint(width), func(t *testing.T) {
			t.Parallel()
			p := openFirst(t, with(Phone, func(l *Look) { l.Width = width }))
			said := map[string]bool{}
			look := func(where string) {
				t.Helper()
				wait(p, 200)
				got := Eval[touched](p, touchable)
				if got.N < 20 {
					t.Errorf("%s: only %d targets", where, got.N)
				}
				for _, b := range got.Bad {
					if !said[b] {
						said[b] = true
						t.Errorf("%s: %s", where, b)
					}
				}
				if wide := Eval[float64](p, "document.scrollingElement.scrollWidth"); wide > float64(width) {
					t.Errorf("%s: the page is %v px wide in a window of %d: %v", where, wide, width, Eval[[]string](p, tooWide(width)))
				}
			}
			look("folded")
			for _, v := range views {
				v.show(p)
				look(v.name)
			}
			p.Eval("document.activeElement?.blur()")
			all := dialogs(p)
			for _, d := range slices.Sorted(maps.Keys(all)) {
				all[d]()
				look(d)
				p.leaves()
			}
			p.Eval("document.querySelector('sy-menu .menu > button').click()")
			look("a menu")
		})
	}
}

// tooWide names what reaches beyond the window, innermost.
func tooWide(width int) string {
	return strings.ReplaceAll(`[...document.querySelectorAll('body *')].filter(e => e.getBoundingClientRect().right > WIDE + 0.5 && !e.closest('.unseen, .scroll, thead') && ![...e.children].some(c => c.getBoundingClientRect().right > WIDE + 0.5)).slice(0, 8).map(e => e.tagName.toLowerCase() + '.' + (e.className?.baseVal ?? e.className) + ' ' + (e.closest('section')?.id ?? '') + ' ' + (e.innerText ?? '').slice(0, 30) + ' ' + Math.round(e.getBoundingClientRect().right))`, "WIDE", fmt.Sprint(width))
}

// At 200 % a window of 1280 by 800 has room for 640 by 400; at 400 % for 320 by
// 200 (WCAG 2.2, 1.4.10). Nothing may need scrolling both ways.
func TestZoom(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ width, height int }{{640, 400}, {320, 256}} {
		p := openPage(t, Look{Width: c.width, Height: c.height, Density: 2})
		p.unfoldAll()
		for _, language := range []string{"en", "de"} {
			t.Run(fmt.Sprint(c.width, " ", language), func(t *testing.T) {
				p.During(t)
				p.speak(language)
				for _, v := range views[4:] {
					v.show(p)
					wait(p, 200)
					if wide := Eval[float64](p, "document.scrollingElement.scrollWidth"); wide > float64(c.width) {
						t.Errorf("%s: the page is %v px wide: %v", v.name, wide, Eval[[]string](p, tooWide(c.width)))
					}
				}
				all := dialogs(p)
				for _, d := range slices.Sorted(maps.Keys(all)) {
					all[d]()
					wait(p, 150)
					box := Eval[[]float64](p, "(d => { const r = d.getBoundingClientRect(); return [r.left, r.top, r.right, r.bottom, d.scrollWidth - d.clientWidth] })(document.querySelector('dialog[open]'))")
					if box[0] < 0 || box[1] < 0 || box[2] > float64(c.width) || box[3] > float64(c.height) {
						t.Errorf("%s reaches from %v, %v to %v, %v", d, box[0], box[1], box[2], box[3])
					}
					if box[4] > 0 {
						t.Errorf("%s scrolls sideways by %v px", d, box[4])
					}
					p.leaves()
				}
			})
		}
	}
}

// media sets what the reader's system wishes.
func (p *Page) media(features map[string]string) {
	p.tb.Helper()
	var list []*emulation.MediaFeature
	for _, k := range slices.Sorted(maps.Keys(features)) {
		list = append(list, &emulation.MediaFeature{Name: k, Value: features[k]})
	}
	Call(p, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Features: list})
}

// Where the reader wants less motion nothing moves by itself.
func TestReducedMotion(t *testing.T) {
	t.Parallel()
	const moving = `(() => {
		const out = [];
		for (const e of document.querySelectorAll('*')) {
			const s = getComputedStyle(e);
			const long = v => v.split(',').some(d => parseFloat(d) > 0);
			if (long(s.transitionDuration) || (s.animationName !== 'none' && long(s.animationDuration)) || s.scrollBehavior === 'smooth') out.push(e.tagName + '.' + e.className);
		}
		return out;
	})()`
	p := openPage(t, Desk)
	p.unfoldAll()
	if found := Eval[[]string](p, moving); len(found) > 0 {
		t.Errorf("with less motion wanted these move: %v", found)
	}
	// The check sees motion where there is some.
	p.media(map[string]string{"prefers-reduced-motion": "no-preference"})
	if found := Eval[[]string](p, moving); len(found) == 0 {
		t.Log("nothing moves even for those who do not mind")
	}
	p.Eval("document.querySelector('h1').style.transition = 'opacity 1s'")
	if found := Eval[[]string](p, moving); !slices.ContainsFunc(found, func(s string) bool { return strings.HasPrefix(s, "H1") }) {
		t.Errorf("a heading that fades was not found: %v", found)
	}
}

// In the system's own colours what is pressed, chosen, wrong, and the focus can
// be told apart, and the drawings are there.
func TestForcedColours(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	p.unfoldAll()
	for _, scheme := range []string{"light", "dark"} {
		t.Run(scheme, func(t *testing.T) {
			p.During(t)
			p.media(map[string]string{"forced-colors": "active", "prefers-color-scheme": scheme})
			if !Eval[bool](p, "matchMedia('(forced-colors: active)').matches") {
				t.Fatal("the browser does not force colours")
			}
			styles := func(selector string) map[string]string {
				return Eval[map[string]string](p, "(s => ({ color: s.color, background: s.backgroundColor, border: s.borderBottomColor + s.borderBottomWidth, stroke: s.stroke, fill: s.fill, outline: s.outlineStyle }))(getComputedStyle(document.querySelector("+quote(selector)+")))")
			}
			on, off := styles("#picture .toggle[aria-pressed=true]:not(:disabled):not(.letter)"), styles("#picture .toggle[aria-pressed=false]:not(:disabled):not(.letter)")
			if on["background"] == off["background"] && on["border"] == off["border"] && on["color"] == off["color"] {
				t.Errorf("a pressed button looks like another: %v", on)
			}
			a, b := styles(".badge.A"), styles(".badge.B")
			if a["background"] == b["background"] {
				t.Errorf("the letters A and B look alike: %v", a)
			}
			page := styles("body")["background"]
			for _, line := range []string{".bar .axis", ".beam .tick", ".beam .arm", ".mark path", "#limits .chart .axis", "#limits .chart .line"} {
				if s := styles(line); s["stroke"] == page || s["stroke"] == "none" {
					t.Errorf("%s is drawn in %s on %s", line, s["stroke"], page)
				}
			}
			p.Eval("[...document.querySelectorAll('#masthead button:not(:disabled)')].find(e => e.checkVisibility()).focus({ focusVisible: true })")
			if s := styles("#masthead button:focus"); s["outline"] == "none" {
				t.Error("the focus is not seen")
			}
			mustPass(p, "forced colours", "#picture, #balance")
		})
	}
}
