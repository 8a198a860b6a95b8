package browsertest

import (
	"math"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp/kb"
)

// typeInto empties a search and types into it.
func (p *Page) typeInto(id, text string) {
	p.tb.Helper()
	p.Eval("(e => { e.focus(); e.select() })(document.getElementById(" + quote(id) + "))")
	Call(p, input.InsertText, input.InsertTextParams{Text: text})
	p.Until("it is typed", "document.getElementById("+quote(id)+").value === "+quote(text))
	wait(p, 50)
}

// marked is the name of the one option that the search marks: to the eye, and
// to a screen reader.
func (p *Page) marked(id string) string {
	p.tb.Helper()
	return Eval[string](p, `(e => {
		const chosen = [...document.querySelectorAll('#' + e.id + '-list [role=option][aria-selected=true]')];
		if (chosen.length !== 1) return chosen.length + ' are marked';
		const o = chosen[0], r = o.getBoundingClientRect(), list = o.closest('.options').getBoundingClientRect();
		if (e.getAttribute('aria-activedescendant') !== o.id) return 'another is active';
		if (getComputedStyle(o).boxShadow === 'none') return 'it looks like the others';
		if (r.top < list.top || r.bottom > list.bottom + 1) return 'it is out of sight';
		return o.querySelector('.name').innerText.trim();
	})(document.getElementById(`+quote(id)+`))`)
}

// The page finds what the core finds, marks what Enter takes, and says when
// nothing is found.
func TestFind(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	p.unfold("#load details.fold")
	p.Until("there is a search for goods", "document.getElementById('add-good')")
	for _, c := range []struct{ id, typed, first string }{
		{"add", "chain", "Chain, 12-speed"},
		{"add", "casette", "Cassette, 12-speed, very wide range"},
		{"add", "tire", "Tyre, front, 60-622"},
		{"add", "frame steel", "Main frame, full suspension, steel, made to hold a gearbox"}, // what the demo's first build is
		{"add", "bell 42 g", "Add “bell” at 0.04 kg"},
		{"add", "zzzzqq", "Add “zzzzqq” as a part of your own"},
		{"add-good", "chian", "Chain lubricant and rag"},
		{"add-good", "batery", "Power bank, 20 Ah"},
		{"add-bag", "panier", "Pannier, rear, left"},
		{"add-bag", "zzzzqq", "Add “zzzzqq” as a bag of your own"},
	} {
		p.typeInto(c.id, c.typed)
		if got := p.marked(c.id); strings.ReplaceAll(got, " ", " ") != strings.ReplaceAll(c.first, " ", " ") {
			t.Errorf("%s: %q marks %q, want %q", c.id, c.typed, got, c.first)
		}
		none := Eval[bool](p, "(e => !!e && e.getClientRects().length > 0 && e.innerText.trim() !== '')(document.getElementById("+quote(c.id)+").closest('.combo').querySelector('.options .none'))")
		if none != (c.typed == "zzzzqq") {
			t.Errorf("%s: %q: that nothing is found shows: %v", c.id, c.typed, none)
		}
		p.look("find-" + c.id + "-" + c.typed)
		p.typeInto(c.id, "")
	}

	// The arrows go on from what is marked, and round.
	p.typeInto("add", "chain")
	p.Key(kb.ArrowDown)
	p.Until("the next is marked", "document.getElementById('add').getAttribute('aria-activedescendant') === 'add-1'")
	p.Key(kb.ArrowUp)
	p.Key(kb.ArrowUp)
	p.Until("the last is marked", "(list => document.getElementById('add').getAttribute('aria-activedescendant') === list.lastElementChild.id)(document.getElementById('add-list'))")
	p.Key(kb.ArrowDown)
	if got := p.marked("add"); got != "Chain, 12-speed" {
		t.Errorf("after the arrows %q is marked", got)
	}

	// Enter takes it, and beside the one that is there by the second answer.
	total := p.total()
	p.Key(kb.Enter)
	p.Until("it is asked", "document.activeElement?.id === 'add-replace'")
	p.Key(kb.Tab)
	p.Key(kb.Enter)
	p.until("a chain is weighed", func() bool { return math.Abs(p.total()-total-0.265) < 0.011 })
	p.Until("it says so", "[...document.querySelectorAll('sy-notices, sy-notes')].map(e => e.innerText).join(' ').includes('Added Chain, 12-speed')")

	// The list of parts is searched by the same rules.
	find := p.The("searchbox", "Find in the list")
	p.Eval("document.querySelector('#parts .part input').focus()") // a chosen part stays on the list
	find.Fill("zzzzqq")
	p.Until("it says that no part matches", "document.querySelector('.nofind').innerText.includes('zzzzqq')")
	p.look("find-list")
	find.Fill("tensionar")
	p.Until("misspelt, it is found", "[...document.querySelectorAll('#parts .part input')].some(e => e.value === 'Chain tensioner, two pulleys') && document.querySelectorAll('#parts .part').length < 5")
	if said := Eval[string](p, "document.querySelector('.nofind').innerText"); said != "" {
		t.Errorf("what is found is denied: %q", said)
	}
	find.Fill("")

	// What a letter costs, told and not judged.
	t.Log(Eval[map[string]float64](p, `(f => {
		const on = { fork: { travel_mm: 150 }, rear: { travel_mm: 140 }, wheels: { front: { bead_seat_mm: 622 }, rear: { bead_seat_mm: 622 } }, parts: [{ kind: 'crank-gearbox', carrier: 'main-frame' }] };
		const options = JSON.stringify({ of: 'parts', unit: 'g', limit: 40, on }), out = {}, demo = f.demo();
		f.evaluate(demo);
		for (const typed of ['r', 'rim', 'rear rim 622x', 'derailer reer', 'zzzzqq']) {
			const at = performance.now();
			for (let i = 0; i < 20; i++) f.find(typed, options);
			out[typed + ' ms'] = (performance.now() - at) / 20;
		}
		const at = performance.now();
		for (let i = 0; i < 20; i++) f.findParts(demo, 'gearbox', 'derailer');
		out['list ms'] = (performance.now() - at) / 20;
		return out;
	})(`+inFrame+`.steelyard)`))
}

// The same in the dark on a phone: what is marked and what is not found show.
func TestFindOnAPhone(t *testing.T) {
	t.Parallel()
	look := Phone
	look.Dark = true
	p := openPage(t, look)
	for typed, first := range map[string]string{"tire": "Tyre, front, 60-622", "zzzzqq": "Add “zzzzqq” as a part of your own"} {
		p.typeInto("add", typed)
		if got := p.marked("add"); got != first {
			t.Errorf("%q marks %q, want %q", typed, got, first)
		}
		if low := Eval[float64](p, "Math.min(...[...document.querySelectorAll('#add-list [role=option]')].map(o => o.getBoundingClientRect().height))"); low < 44 {
			t.Errorf("an option is %v px high", low)
		}
		p.look("phone-" + typed)
	}
}
