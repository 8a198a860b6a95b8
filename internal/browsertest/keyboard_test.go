package browsertest

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/accessibility"
	"github.com/chromedp/cdproto/dom"
	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp/kb"
)

// watchFocus notes every stop of the keyboard, in page and frame: what it is,
// and whether one sees that the focus is there.
const watchFocus = `(() => {
	window.stops = [];
	window.unseenStops = [];
	const name = e => (e.ariaLabel ?? e.labels?.[0]?.innerText ?? e.innerText ?? e.title ?? '').trim().slice(0, 40) || e.id || e.tagName;
	const see = (w, inFrame) => w.document.addEventListener('focusin', ({ target: e }) => {
		window.stops.push(e);
		const s = w.getComputedStyle(e);
		const r = e.getBoundingClientRect();
		if (s.outlineStyle === 'none' || parseFloat(s.outlineWidth) < 1 || r.width < 1 || r.height < 1) window.unseenStops.push(e.tagName + '.' + e.className + ' ' + name(e) + ' ' + s.outlineStyle + ' ' + Math.round(r.width) + '×' + Math.round(r.height));
		if (!inFrame && (r.bottom < 0 || r.top > innerHeight)) requestAnimationFrame(() => {
			const r = e.getBoundingClientRect();
			if (r.bottom < 0 || r.top > innerHeight) window.unseenStops.push(name(e) + ' out of sight at ' + Math.round(r.top));
		});
	});
	see(window, false);
	see(` + inFrame + `, true);
})()`

// focused is what has the keyboard: an element's name as a script finds it.
const focused = `(e => e ? (e.tagName === 'IFRAME' ? 'the picture' : (e.getAttribute('aria-label') ?? e.labels?.[0]?.innerText ?? e.innerText ?? '').replace(/\s+/g, ' ').trim()) : '')(document.activeElement)`

// tab presses Tab, or Shift and Tab, until what has the focus begins so.
func (p *Page) tab(begin string, modifiers ...kb.Modifier) {
	p.tb.Helper()
	var seen []string
	for range 150 {
		p.Key(kb.Tab, modifiers...)
		now := Eval[string](p, focused)
		if strings.HasPrefix(now, begin) {
			return
		}
		seen = append(seen, now)
	}
	p.tb.Fatalf("Tab does not come to %q, but to %q", begin, seen)
}

// typeKeys types text key by key.
func (p *Page) typeKeys(text string) {
	p.tb.Helper()
	for _, r := range text {
		p.Key(string(r))
	}
}

// strike presses a key as a hand does: where the page takes the key for itself,
// nothing is typed.
func (p *Page) strike(key string, code int64) {
	p.tb.Helper()
	Call(p, input.DispatchKeyEvent, input.DispatchKeyEventParams{Type: input.DispatchKeyEventTypeKeyDown, Key: key, Text: key, WindowsVirtualKeyCode: code})
	Call(p, input.DispatchKeyEvent, input.DispatchKeyEventParams{Type: input.DispatchKeyEventTypeKeyUp, Key: key, WindowsVirtualKeyCode: code})
}

// The main job with nothing but keys: choose builds, add a part, edit it, move
// it in the picture, compare, save, undo.
func TestTheMainJobByKeyboardAlone(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	p.Eval(watchFocus)

	// Past the masthead in one step.
	p.Key(kb.Tab)
	if now := Eval[string](p, focused); now != "Skip to the balance" {
		t.Errorf("the first stop is %q", now)
	}
	p.Key(kb.Enter)
	p.Until("the balance has the focus", "document.activeElement?.id === 'balance'")

	// Builds are chosen.
	p.tab("Choose build B")
	was := Eval[string](p, "document.activeElement.value")
	p.Key(kb.ArrowDown)
	p.Until("another build is B", "document.activeElement.value !== "+quote(was))
	p.Key(kb.ArrowUp)
	p.Until("it is the one before", "document.activeElement.value === "+quote(was))

	// A part is found and added.
	total := p.total()
	p.strike("/", 191)
	p.Until("the search has the focus", "document.activeElement?.id === 'add'")
	p.typeKeys("bell")
	p.Until("something is found", "document.querySelectorAll('#add-list [role=option]').length > 1")
	p.Until("the first is marked", "document.getElementById(document.activeElement.getAttribute('aria-activedescendant'))?.ariaSelected === 'true'")
	bell := Eval[string](p, "document.getElementById(document.activeElement.getAttribute('aria-activedescendant')).querySelector('.name').innerText.trim()")
	p.Key(kb.Enter)
	p.until("it is weighed", func() bool { return p.total() > total })

	// Its mass is edited, by way of the filter of the list.
	p.Key(kb.Escape)
	p.tab("Find in the list")
	p.typeKeys(bell)
	p.Until("the list is short", "document.querySelectorAll('#parts .part').length < 4")
	p.tab("Mass of one, " + bell)
	p.typeKeys("250,5")
	p.until("it weighs 250.5 g", func() bool { return math.Abs(p.total()-total-0.2505) < 0.006 })
	p.Key(kb.Enter)

	// Its marker is moved, and the focus leaves the picture both ways.
	p.tab("the picture", kb.ModifierShift)
	p.Key(kb.ArrowUp)
	p.Key(kb.ArrowRight, kb.ModifierShift)
	p.Until("the picture told of it", "document.querySelector('.picked').innerText.includes("+quote(bell)+")")
	p.tab("Back by") // out of it, to what moves the marker by buttons
	p.tab("the picture", kb.ModifierShift)
	p.Key(kb.Tab, kb.ModifierShift)
	if now := Eval[string](p, focused); now == "the picture" {
		t.Error("Shift and Tab do not leave the picture")
	}

	// Saved by the keyboard, the document holds all of it.
	var saved string
	_, saved = p.Saves(func() { p.Key("s", kb.ModifierCtrl) })
	for _, want := range []string{`"mass_g": 250.5`, bell} {
		if !strings.Contains(saved, want) {
			t.Errorf("the saved document does not have %s", want)
		}
	}
	offset := Eval[[]float64](p, "(async () => { const d = JSON.parse("+quote(saved)+"); return d.builds.flatMap(b => b.parts).find(x => x.mass_g === 250.5).offset_mm })()")
	base := Eval[[]float64](p, "JSON.parse("+inFrame+".steelyard.catalogue()).find(e => e.name === "+quote(bell)+").offset_mm")
	if len(offset) != 3 || offset[0]-base[0] != 50 || offset[2]-base[2] != 5 {
		t.Errorf("moved by keys it lies at %v from its station, in the catalogue at %v; want 50 forward and 5 up", offset, base)
	}

	// Undone, and done again.
	for range 5 {
		p.Key("z", kb.ModifierCtrl)
	}
	p.until("all is undone", func() bool { return p.total() == total })
	for range 5 {
		p.Key("z", kb.ModifierCtrl, kb.ModifierShift)
	}
	p.until("the part is there again", func() bool { return p.total() > total })

	// A dialog keeps the focus while it is open, and gives it back.
	p.tab("Keys", kb.ModifierShift)
	p.Key(kb.Enter)
	p.Until("the keys are told", "document.querySelector('dialog[open]')")
	for range 4 {
		p.Key(kb.Tab)
		if !Eval[bool](p, "!document.hasFocus() || document.activeElement === document.body || !!document.activeElement.closest('dialog')") {
			t.Errorf("from the dialog Tab leads to %q behind it", Eval[string](p, focused))
		}
	}
	p.Key(kb.Escape)
	p.Until("it is closed, and the focus where it was", "!document.querySelector('dialog[open]') && document.activeElement?.matches('.keys')")

	// So does a menu.
	p.tab("New", kb.ModifierShift)
	p.Key(kb.Enter)
	p.Until("the menu is open", "document.activeElement?.closest('.menu-items')")
	p.Key(kb.ArrowDown)
	p.Key(kb.Escape)
	p.Until("it is closed, and the focus where it was", "document.activeElement?.getAttribute('aria-expanded') === 'false'")

	if unseen := Eval[[]string](p, "[...new Set(window.unseenStops)]"); len(unseen) > 0 {
		t.Errorf("the focus is not seen at %q", unseen)
	}
}

// Tab comes to all that can be pressed, once, and out of it again.
func TestTabComesToEverything(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	p.unfoldAll()
	// A short list of parts will do.
	p.Eval("(e => { e.focus(); e.value = 'gearbox'; e.dispatchEvent(new Event('input', { bubbles: true })) })(document.querySelector('#parts input[type=search], #parts .filter input, #parts input[id*=filter]'))")
	p.Until("the list is short", "document.querySelectorAll('#parts .part').length < 12")
	p.Eval("scrollTo(0, 0); document.activeElement.blur(); " + watchFocus)
	const all = `[...document.querySelectorAll('button, a[href], select, input, textarea, summary, iframe, [tabindex="0"]')].filter(e => !e.disabled && e.tabIndex >= 0 && e.checkVisibility({ visibilityProperty: true }) && !e.closest('[hidden], [inert]') && !(e.type === 'radio' && !e.checked))`
	n := Eval[int](p, "(window.everything = "+all+").length")
	if n < 100 {
		t.Fatalf("only %d things can be pressed", n)
	}
	p.Eval("document.querySelector('.skip').focus()")
	for range n + 10 {
		p.Key(kb.Tab)
		Eval[bool](p, "true") // the page has done what a line does that is gone to
	}
	missed := Eval[[]string](p, `window.everything.filter(e => e.isConnected && !window.stops.includes(e) && !(e.tagName === 'IFRAME' && window.stops.some(s => s.tagName === 'CANVAS'))).map(e => e.tagName + '.' + e.className + ' ' + (e.ariaLabel ?? e.innerText ?? '').slice(0, 40))`)
	if len(missed) > 0 {
		t.Errorf("of %d things Tab does not come to %d: %q", n, len(missed), missed[:min(len(missed), 10)])
	}
	if unseen := Eval[[]string](p, "[...new Set(window.unseenStops)].filter(s => !s.includes('Skip to'))"); len(unseen) > 0 {
		t.Errorf("the focus is not seen at %d stops: %q", len(unseen), unseen[:min(len(unseen), 10)])
	}
	if again := Eval[[]string](p, "window.stops.filter((s, i, a) => s === a[i - 1]).map(s => s.tagName + s.className)"); len(again) > 2 {
		t.Errorf("Tab stays at %q", again)
	}
}

// What the picture shows is told in text, and stays true.
func TestThePictureIsTold(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	told := func() string { return strings.ReplaceAll(p.says("#picture-told"), "\u00a0", " ") }
	r := weigh(t, demo())
	p.Eval("document.querySelector('sy-markers details').open = true")
	p.Until("the table is there", "document.querySelectorAll('.markers tbody tr').length > 20")
	said := told()
	for _, want := range []string{
		"Crank gearbox", "right side",
		fmt.Sprintf("%.2f", figure(t, r, "gearbox", "total")/1000),
		fmt.Sprintf("%.1f mm ahead of the rear axle", figure(t, r, "gearbox", "centre_x")),
		fmt.Sprintf("%.1f mm above the ground", figure(t, r, "gearbox", "centre_z")),
		fmt.Sprintf("%.2f", figure(t, r, "gearbox", "front_load")/1000),
		fmt.Sprintf("%.2f", figure(t, r, "gearbox", "rear_load")/1000),
		"Heaviest: ", gearbox, "behind it is Rear gear hub",
		fmt.Sprintf("%.0f mm forward", figure(t, r, "gearbox", "centre_x")-figure(t, r, r.Difference.B, "centre_x")),
	} {
		if !strings.Contains(said, want) {
			t.Errorf("of the picture it is not told %q: %s", want, said)
		}
	}

	// The canvas's frame is described by it, to whom it may concern.
	root := Call(p, dom.GetDocument, dom.GetDocumentParams{}).Root
	frame := Call(p, dom.QuerySelector, dom.QuerySelectorParams{NodeID: root.NodeID, Selector: "#canvas"})
	nodes := Call(p, accessibility.GetPartialAXTree, accessibility.GetPartialAXTreeParams{NodeID: frame.NodeID}).Nodes
	described := false
	for _, n := range nodes {
		described = described || strings.Contains(text(n.Description), "above the ground")
	}
	if !described {
		t.Error("the frame is not described")
	}

	// One row is one marker, with the report's figures.
	row := Eval[[]string](p, "[...[...document.querySelectorAll('.markers tbody tr')].find(r => r.innerText.includes("+quote(gearbox)+")).cells].map(c => c.innerText.trim())")
	var place [3]float64
	var mass float64
	_, d := p.saved()
	id := ""
	for _, part := range d.Build("gearbox").Parts {
		if part.Name == gearbox {
			id = part.ID
		}
	}
	for i := range r.Builds {
		if r.Builds[i].ID == "gearbox" {
			for _, part := range r.Builds[i].Parts {
				if part.ID == id {
					place, mass = part.Place, part.Mass
				}
			}
		}
	}
	for i, want := range []string{gearbox, fmt.Sprintf("%.0f ", mass), fmt.Sprintf("%.0f", place[0]), fmt.Sprintf("%.0f", place[1]), fmt.Sprintf("%.0f", place[2]), "Main frame", "sprung"} {
		if len(row) != 7 || !strings.HasPrefix(row[i]+" ", strings.TrimPrefix(want, "-")) {
			t.Errorf("the row of the gearbox is %q, want %q in column %d", row, want, i+1)
		}
	}

	// Chosen in the table, it can be moved beside the picture, and the table follows.
	p.Eval("[...document.querySelectorAll('.markers button')].find(b => b.innerText.trim() === " + quote(gearbox) + ").focus()")
	p.Key(kb.Enter)
	p.Until("it is chosen", "document.querySelector('#picture-told').innerText.includes('Chosen: ')")
	p.Like("button", "Forward by").Click()
	want := fmt.Sprintf("%.0f", place[0]+5)
	p.Until("the table follows", "[...document.querySelectorAll('.markers tbody tr')].find(r => r.innerText.includes("+quote(gearbox)+")).cells[2].innerText.trim() === "+quote(want))

	// Seen from behind, without the other build, and with the rider.
	p.The("button", "Rear").Click()
	p.The("button", "Other build").Click()
	p.until("it is told", func() bool { return strings.Contains(told(), "from behind") && strings.Contains(told(), "not drawn") })
	p.press("with rider")
	p.Until("the rider is a marker", "[...document.querySelectorAll('.markers tbody tr')].some(r => r.innerText.includes('rider'))")
	p.Until("so are bags", "[...document.querySelectorAll('.markers tbody tr')].filter(r => r.cells[6].innerText.trim() === 'bag').length >= 2")
}

// An edit is told once it is made, not at each key, and politely.
func TestEditsAreTold(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	wait(p, 1500) // what is told at the start
	p.Eval(`(() => {
		const e = document.querySelector('sy-teller [role=status]');
		window.told = [];
		new MutationObserver(() => window.told.push(e.innerText)).observe(e, { childList: true, characterData: true, subtree: true });
	})()`)
	if live := Eval[string](p, "document.querySelector('sy-teller [role=status]').ariaLive"); live != "polite" {
		t.Errorf("the totals are told %q", live)
	}
	// Key by key, as fast as one types; a busy machine would be slower.
	Ask[bool](p.mass(gearbox), `async e => {
		e.focus();
		for (const typed of ['2', '23', '234', '2345']) {
			e.value = typed;
			e.dispatchEvent(new Event('input', { bubbles: true }));
			await new Promise(r => setTimeout(r, 50));
		}
		return true;
	}`)
	p.Until("the totals are told", "window.told.length > 0")
	wait(p, 1200)
	said := Eval[[]string](p, "window.told")
	if len(said) != 1 || !strings.Contains(said[0], fmt.Sprintf("%.2f", p.total())) || !strings.Contains(said[0], "lighter") {
		t.Errorf("for four keys in a row it is told %q, want the new totals once", said)
	}
}
