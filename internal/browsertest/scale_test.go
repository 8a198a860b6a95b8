package browsertest

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/chromedp/chromedp/kb"

	"steelyard/internal/document"
)

// atScale is what the mode for weighing shows.
type atScale struct {
	Part, About, Told, Why, Total, Done, Digits, Focus string
}

func (p *Page) atScale() atScale {
	p.tb.Helper()
	return Eval[atScale](p, `(() => {
		const text = (s) => (document.querySelector('dialog.scale ' + s)?.innerText ?? '').replaceAll('\u00a0', ' ').replaceAll('\u202f', '').trim();
		return { Part: text('#scale-part'), About: text('.about'), Told: text('.told'), Why: text('#scale-why'), Total: text('.sum strong'), Done: text('.top .fine'),
			Digits: document.getElementById('scale-digits')?.value ?? '', Focus: document.activeElement?.id ?? '' };
	})()`)
}

// tapOn taps a button of the mode with a finger and counts it.
func (c *presses) tapOn(class string) {
	c.p.tb.Helper()
	at := Eval[[]float64](c.p, "(r => [r.x + r.width / 2, r.y + r.height / 2])(document.querySelector('dialog.scale "+class+"').getBoundingClientRect())")
	c.p.Tap(at[0], at[1])
	c.n++
}

// unweighed is the demo with nothing weighed; what builds share they share still.
func unweighed(t *testing.T) *document.Document {
	t.Helper()
	d := demoWith(t, "Nothing weighed", "gearbox", "gearhub", "derailleur")
	d.Show.Compare = []string{"gearbox", "gearhub"}
	for i := range d.Builds {
		for j := range d.Builds[i].Parts {
			if p := &d.Builds[i].Parts[j]; p.Basis == document.Weighed {
				p.Basis, p.HalfWidth = document.Guessed, document.Guessed.HalfWidth(p.Mass)
			}
		}
	}
	return d
}

// Ten parts are weighed on a phone, one is skipped, one taken back, a bowl's tare
// taken off; it goes on after the page was loaded anew, and other builds follow.
func TestAtTheScale(t *testing.T) {
	t.Parallel()
	p := openPage(t, Phone)
	before := unweighed(t)
	p.opensDocument(before)
	build, other := before.Build("gearbox"), before.Build("gearhub")
	p.Eval("document.querySelector('#parts .weighing').click()")
	p.Until("the digits have the focus", "document.activeElement?.id === 'scale-digits' && document.querySelector('dialog.scale').open")
	if mode := Eval[string](p, "document.getElementById('scale-digits').inputMode"); mode != "decimal" {
		t.Errorf("the keyboard is %q", mode)
	}
	start := p.atScale()
	masses := map[string]float64{}
	byName := func(name string) *document.Part {
		for i := range build.Parts {
			if build.Parts[i].Name == name {
				return &build.Parts[i]
			}
		}
		t.Fatalf("%q is no part of the build", name)
		return nil
	}
	const places = "(l => JSON.stringify(l.map(s => { const r = document.querySelector('dialog.scale ' + s).getBoundingClientRect(); return [r.x, r.y, r.width, r.height].map(Math.round) })))(['#scale-digits', '.take', '.pass', '.back', '.ways', '#scale-order'])"
	p.look("scale-start")
	stand := Eval[string](p, places)

	// The digits, and one press: that is a part. Enter does as well as the button.
	c := &presses{p: p}
	digits := 0
	for i := range 10 {
		now := p.atScale()
		part := byName(now.Part)
		if masses[part.ID] != 0 {
			t.Fatalf("%s is asked for again", now.Part)
		}
		all := math.Round(float64(part.Quantity) * part.Mass * 1.02)
		masses[part.ID] = all / float64(part.Quantity)
		text := fmt.Sprint(all)
		p.types(text)
		digits += len(text)
		if i%2 == 0 {
			c.tapOn(".take")
		} else {
			p.Key(kb.Enter)
			c.n++
		}
		p.Until("the next is asked for", "document.getElementById('scale-part').innerText.trim() !== "+quote(now.Part)+" && document.querySelector('dialog.scale .told').innerText.includes('weighed')")
		if then := p.atScale(); then.Focus != "scale-digits" || then.Digits != "" {
			t.Errorf("after %s the focus is on %q, the digits are %q", now.Part, then.Focus, then.Digits)
		}
		if now := Eval[string](p, places); now != stand {
			t.Errorf("after part %d the page has jumped: %s, before %s", i, now, stand)
		}
	}
	t.Logf("ten parts: %d presses beyond %d digits", c.n, digits)
	if c.n > 20 {
		t.Errorf("%d presses for ten parts, two each are allowed", c.n)
	}
	after := p.atScale()
	if after.Total == start.Total || after.Done == start.Done {
		t.Errorf("it says %q, %q as at the start", after.Total, after.Done)
	}
	d := p.keptDocument()
	alsoThere := 0
	for id, m := range masses {
		q := d.Build(build.ID).Part(id)
		if math.Abs(q.Mass-m) > 1e-3 || q.Basis != document.Weighed || math.Abs(q.HalfWidth*float64(q.Quantity)-1) > 1e-3 {
			t.Errorf("%s has %g ±%g, %s; %g was weighed", id, q.Mass, q.HalfWidth, q.Basis, m)
		}
		was, there := before.Build(build.ID).Part(id), other.Part(id)
		if there != nil && there.Mass == was.Mass && there.Basis == was.Basis && there.HalfWidth == was.HalfWidth {
			alsoThere++
			if o := d.Build(other.ID).Part(id); math.Abs(o.Mass-m) > 1e-3 || o.Basis != document.Weighed {
				t.Errorf("%s has not followed in %s: %g, %s", id, other.Name, o.Mass, o.Basis)
			}
		}
	}
	if alsoThere == 0 {
		t.Error("nothing weighed is of another build too")
	}

	// Nothing typed, and nonsense: it says so, and stays.
	here := p.atScale().Part
	c.tapOn(".take")
	p.Until("it says what to type", "document.getElementById('scale-why').innerText.includes('skip')")
	p.types("heavy")
	p.Key(kb.Enter)
	p.Until("it says what is wrong", "document.getElementById('scale-digits').ariaInvalid === 'true' && !document.getElementById('scale-why').innerText.includes('skip')")
	p.look("scale-wrong")
	p.types("500") // what is wrong is marked
	if now := p.atScale(); now.Part != here || now.Digits != "500" || now.Why != "" {
		t.Errorf("after nonsense %+v", now)
	}

	// A bowl of 120 g is taken off.
	p.Eval("(e => { e.focus(); e.value = '120'; e.dispatchEvent(new Event('change', { bubbles: true })) })(document.getElementById('scale-tare_g'))")
	p.Key(kb.Enter)
	p.Until("the digits have the focus", "document.activeElement?.id === 'scale-digits'")
	p.Key(kb.Enter)
	p.Until("the net mass is told", "document.querySelector('.told').innerText.replaceAll('\u00a0', ' ').includes('380.0 ±1.4')")
	d = p.keptDocument()
	bowl := byName(here)
	if q := d.Build(build.ID).Part(bowl.ID); math.Abs(q.Mass*float64(q.Quantity)-380) > 0.01 || math.Abs(q.HalfWidth*float64(q.Quantity)-1.4) > 0.01 {
		t.Errorf("with a tare %s has %g ±%g", here, q.Mass, q.HalfWidth)
	}

	// Taken back: the part is asked for again, with what was typed.
	c.tapOn(".back")
	p.Until("it is asked for again", "document.getElementById('scale-part').innerText.trim() === "+quote(here)+" && document.getElementById('scale-digits').value === '500'")
	d = p.keptDocument()
	if q := d.Build(build.ID).Part(bowl.ID); q.Mass != bowl.Mass || q.Basis != bowl.Basis {
		t.Errorf("taken back, %s has %g, %s", here, q.Mass, q.Basis)
	}

	// Skipped: another is asked for, and that one when the page is loaded anew.
	c.tapOn(".pass")
	p.Until("another is asked for", "document.getElementById('scale-part').innerText.trim() !== "+quote(here))
	next := p.atScale()
	if !strings.Contains(next.Told, "Skipped") || next.Focus != "scale-digits" {
		t.Errorf("after skipping %+v", next)
	}
	p.kept()
	p.Reload()
	p.started()
	p.Until("it goes on at the scale", "document.querySelector('dialog.scale')?.open && document.activeElement?.id === 'scale-digits'")
	if now := p.atScale(); now.Part != next.Part || now.Done != next.Done {
		t.Errorf("after loading it asks for %q (%s), before for %q (%s)", now.Part, now.Done, next.Part, next.Done)
	}
	if tare := Eval[string](p, "document.getElementById('scale-tare_g').value"); tare != "120" {
		t.Errorf("the tare is %q after loading", tare)
	}
	p.look("scale-phone")

	// By the list, and by name.
	p.The("combobox", "Next comes").choose("the list's next")
	p.Until("the first of the list is asked for", "document.activeElement?.id === 'scale-digits'")
	p.typeInto("scale-find", "saddle")
	p.Until("it is found", "document.querySelector('#scale-find-list [role=option]')")
	p.Key(kb.Enter)
	p.Until("it is asked for", "document.getElementById('scale-part').innerText.includes('addle') && document.activeElement?.id === 'scale-digits'")

	// Three parts lie on the scale at once: one reading, in shares, taken back as one.
	p.Eval("document.querySelector('.together').open = true")
	p.Eval("[...document.querySelectorAll('.together input')].slice(0, 2).forEach((e) => e.click())")
	p.Until("it says how many lie there", "document.querySelector('.together summary').innerText.includes('2 other')")
	p.look("scale-together")
	p.Eval("document.getElementById('scale-digits').focus()")
	unshared := p.keptDocument()
	p.types("900")
	p.Key(kb.Enter)
	p.Until("three are weighed", "document.querySelector('.told').innerText.replaceAll('\u00a0', ' ').includes('3 parts together: 780.0 ±1.4')")
	d = p.keptDocument()
	var mass, plus, was float64
	id, shares := "", 0
	for _, q := range d.Build(build.ID).Parts {
		if j := q.Weighed(); j != nil {
			mass, plus = mass+float64(q.Quantity)*q.Mass, plus+float64(q.Quantity)*q.HalfWidth
			old := unshared.Build(build.ID).Part(q.ID)
			was += float64(old.Quantity) * old.Mass
			if id != "" && j.ID != id {
				t.Errorf("the readings are %q and %q", id, j.ID)
			}
			id, shares = j.ID, shares+1
		}
	}
	if shares != 3 || math.Abs(mass-780) > 0.01 || math.Abs(plus-1.4) > 0.01 {
		t.Errorf("%d parts share %g ±%g g", shares, mass, plus)
	}
	for _, q := range d.Build(build.ID).Parts {
		if old := unshared.Build(build.ID).Part(q.ID); q.Weighed() != nil && math.Abs(q.Mass-old.Mass*780/was) > 0.01 {
			t.Errorf("%s has %g g of the reading, of %g before", q.Name, q.Mass, old.Mass)
		}
	}
	c.tapOn(".back")
	p.Until("all three are as before, and lie there", "document.getElementById('scale-digits').value === '900' && document.querySelector('.together summary').innerText.includes('2 other')")
	for _, q := range p.keptDocument().Build(build.ID).Parts {
		if old := unshared.Build(build.ID).Part(q.ID); q.Mass != old.Mass || q.Joint != nil {
			t.Errorf("taken back, %s has %g g", q.Name, q.Mass)
		}
	}

	p.Key(kb.Escape)
	p.Until("it is closed", "!document.querySelector('dialog[open]') && location.hash === ''")
	p.Eval("document.querySelector('.advice button.name').click()")
	p.Until("the first advice is asked for", "document.getElementById('scale-part')?.innerText.trim() === document.querySelector('.advice button.name').innerText.trim()")
}

// keptDocument is the document as the browser keeps it.
func (p *Page) keptDocument() *document.Document {
	p.tb.Helper()
	p.kept()
	d, problems := document.Open([]byte(Eval[string](p, inStore("readonly", "get('current')")+".then((kept) => kept.text)")))
	if d == nil {
		p.tb.Fatal(problems)
	}
	return d
}
