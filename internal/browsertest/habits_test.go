package browsertest

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp/kb"

	"steelyard/internal/document"
)

// look keeps what is in the window in the folder that STEELYARD_LOOK names, for
// people to look at.
func (p *Page) look(name string) {
	p.tb.Helper()
	if dir := os.Getenv("STEELYARD_LOOK"); dir != "" {
		if err := os.WriteFile(filepath.Join(dir, name+".png"), p.Screenshot(), 0o644); err != nil {
			p.tb.Fatal(err)
		}
	}
}

// types types text where the focus is.
func (p *Page) types(text string) {
	p.tb.Helper()
	Call(p, input.InsertText, input.InsertTextParams{Text: text})
}

const (
	focusID = "document.activeElement?.id"
	marked  = "(e => e.selectionStart === 0 && e.selectionEnd === e.value.length && e.value.length > 0)(document.activeElement)"
)

// chooses presses an item of a menu.
func (p *Page) chooses(menu, item string) {
	p.tb.Helper()
	Eval[bool](p, `(m => { m.querySelector('button').click(); return true })(document.querySelector(`+quote(menu)+`))`)
	p.Until("the menu is open", `document.querySelector(`+quote(menu)+`).querySelector('.menu-items:not([hidden])')`)
	Eval[bool](p, `([...document.querySelector(`+quote(menu)+`).querySelectorAll('.menu-items button')].find(b => b.textContent.trim() === `+quote(item)+`).click(), true)`)
}

// What whoever has used other forms and lists expects of these.
func TestHabits(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	p.Until("the parts are listed", `document.querySelector('#parts tr.part')`)

	// In a list, Enter and the arrows go to the same field of the next line, and
	// change nothing.
	before, _ := p.saved()
	Eval[bool](p, `(document.querySelectorAll('#parts tr.part .m input')[1].focus(), true)`)
	line := `[...document.querySelectorAll('#parts tr.part')].findIndex(r => r.querySelector('.m input') === document.activeElement)`
	for _, step := range []struct {
		key  string
		with []kb.Modifier
		line string
	}{{kb.Enter, nil, "2"}, {kb.ArrowDown, nil, "3"}, {kb.ArrowUp, nil, "2"}, {kb.ArrowUp, nil, "1"}, {kb.Enter, []kb.Modifier{kb.ModifierShift}, "0"}, {kb.ArrowUp, nil, "0"}} {
		p.Key(step.key, step.with...)
		p.Until("the mass of line "+step.line+" has the focus, marked", line+" === "+step.line+" && "+marked)
	}
	if after, _ := p.saved(); after != before {
		t.Error("Enter or an arrow changed the document")
	}

	// Heads stay in view in a long list, below the strip of totals.
	Eval[bool](p, `(e => { e.scrollIntoView({ block: 'end' }); return true })([...document.querySelectorAll('#parts tr.part')].at(-1))`)
	p.Until("the strip is there", `document.querySelector('.strip.on')`)
	p.Until("the heads stand below it", `(h => { const strip = document.querySelector('.strip').getBoundingClientRect().bottom; const at = h.getBoundingClientRect(); return at.top >= strip - 2 && at.bottom < strip + 80 && document.elementFromPoint(at.left + 4, at.bottom - 4)?.closest('thead') })(document.querySelector('#parts thead .n'))`)
	p.look("heads")

	// What is to be weighed first opens at the scale; the focus comes back to it.
	Eval[bool](p, `(document.querySelector('.advice button.name').focus(), document.activeElement.click(), true)`)
	p.Until("it is asked for at the scale", focusID+` === 'scale-digits' && document.getElementById('scale-part').innerText.trim() === document.querySelector('.advice button.name').innerText.trim()`)
	p.Key(kb.Escape)
	p.Until("it has the focus again", `document.activeElement.matches('.advice button.name')`)

	// A name to be changed is marked; the focus stays with the build.
	p.chooses(".plate.A sy-menu", "Rename")
	p.Until("the old name is marked", focusID+` === 'name-A' && `+marked)
	was := Eval[string](p, "document.activeElement.value")
	p.types("Northbound")
	p.Key(kb.Escape)
	p.Until("the build is chosen, under its old name", focusID+` === 'build-A' && document.activeElement.selectedOptions[0].textContent === `+quote(was))
	p.chooses(".plate.A sy-menu", "Rename")
	p.Until("the old name is marked", focusID+` === 'name-A' && `+marked)
	p.types("Northbound")
	p.Key(kb.Enter)
	p.Until("the build has the new name, and the focus", focusID+` === 'build-A' && document.activeElement.selectedOptions[0].textContent === 'Northbound'`)

	// A copy to be changed is what is shown.
	p.The("combobox", "Choose build B").choose("none")
	p.The("button", "Copy build A and change the copy").Click()
	p.Until("the copy's name is marked", focusID+` === 'name-B' && `+marked+` && document.activeElement.value.startsWith('Northbound')`)
	p.types("Southbound")
	p.Key(kb.Enter)
	p.Until("the copy has its name, and the focus", focusID+` === 'build-B' && document.activeElement.selectedOptions[0].textContent === 'Southbound'`)
	p.Until("the copy is in the list and in the picture", `document.querySelector('#parts .named[aria-pressed=true]').textContent.includes('Southbound') && document.querySelector('iframe').title.includes('Southbound')`)

	// A new load is not called what the button says.
	p.unfoldAll()
	p.The("button", "New load").Click()
	p.Until("its name is marked", focusID+` === 'load-name' && `+marked)
	if name := Eval[string](p, "document.activeElement.value"); name == "New load" {
		t.Errorf("the load is named %q as the button is", name)
	}
	p.Key(kb.Enter)
	p.Until("the load has the focus", focusID+` === 'load-chosen'`)

	// Front and rear are told apart, and not in the colours of sprung and unsprung.
	type stroke struct{ Ink, Width, Shape string }
	of := func(end string) stroke {
		return Eval[stroke](p, `(g => { const l = getComputedStyle(g.querySelector('.line')); return { Ink: l.stroke, Width: l.strokeWidth, Shape: g.querySelector('.marker')?.tagName ?? '' } })(document.querySelector('.chart .series.`+end+`'))`)
	}
	p.Until("there is a chart of slopes", "document.querySelector('.chart .series.rear')")
	front, rear := of("front"), of("rear")
	if front.Width == rear.Width || front.Shape == rear.Shape || front.Shape == "" {
		t.Errorf("front %+v and rear %+v are told apart by nothing but colour", front, rear)
	}
	for _, ink := range []string{"--sprung", "--unsprung", "--luggage", "--rider"} {
		colour := Eval[string](p, `(e => { e.style.color = 'var(`+ink+`)'; document.body.append(e); const c = getComputedStyle(e).color; e.remove(); return c })(document.createElement('i'))`)
		if colour == front.Ink || colour == rear.Ink {
			t.Errorf("a load on the road has the colour of %s", ink)
		}
	}
	Eval[bool](p, `(document.querySelector('.chart').scrollIntoView({ block: 'center' }), true)`)
	p.look("chart")

	// A message shows above a dialog, and can be pressed there.
	Eval[bool](p, "(scrollTo(0, 0), true)")
	p.command("Share link").Click()
	p.Until("the dialog is open", "document.querySelector('dialog[open]')")
	p.Saves(p.The("button", "Save as a file").Click)
	p.Until("a message says so, on top", `(n => { if (!n) return false; const b = n.querySelector('button').getBoundingClientRect(); return n.closest('dialog[open]') && document.elementFromPoint(b.x + b.width / 2, b.y + b.height / 2)?.closest('.note') })(document.querySelector('.note'))`)
	p.look("message")
	p.Key(kb.Escape)
	p.Until("the dialog is gone, and the message still there", `!document.querySelector('dialog[open]') && document.querySelector('.note') && !document.querySelector('dialog .note')`)

	// Where a printer leaves backgrounds out, A is still an A.
	Eval[bool](p, "(dispatchEvent(new Event('beforeprint')), true)")
	p.printing(true)
	if a := Eval[[]string](p, `(s => [s.backgroundColor, s.color])(getComputedStyle(document.querySelector('#printed .badge.A')))`); a[0] != "rgba(0, 0, 0, 0)" || a[1] == "rgb(255, 255, 255)" {
		t.Errorf("a printed A is %s on %s", a[1], a[0])
	}
	p.printing(false)
	Eval[bool](p, "(dispatchEvent(new Event('afterprint')), true)")
}

// A bike without springs has no rows of springs: not in the balance, the list,
// the sheet of its frame, or on paper.
func TestARigidBikeHasNoSprings(t *testing.T) {
	t.Parallel()
	d, _ := document.Open([]byte(demo()))
	for i := range d.Builds {
		b := &d.Builds[i]
		b.Fork.Travel, b.Fork.Sag, b.Rear = 0, 0, document.Rear{}
		var kept []document.Part
		for _, q := range b.Parts {
			if q.Kind == "shock" || q.Kind == "link" {
				continue
			}
			if q.Kind == "swingarm" || strings.Contains(strings.ToLower(q.Name+q.Note), "swingarm") || strings.Contains(strings.ToLower(q.Name+q.Note), "shock") {
				q.Name, q.Note = "Stays", ""
			}
			kept = append(kept, q)
		}
		b.Parts = kept
	}
	text, err := document.Write(d)
	if err != nil {
		t.Fatal(err)
	}
	p := openPage(t, Desk)
	p.Chooses("rigid.json", string(text), p.Like("button", "Open").Click)
	p.Until("the bikes are rigid", `document.querySelector('#picture-words').textContent.includes('only springs')`)
	p.Until("the frame asks for travel only", `!document.querySelector('#frame').innerText.includes('Sag')`)
	Eval[bool](p, `(document.querySelector('#parts tr.part .disclose').click(), true)`)
	p.Until("a part's details are open", "document.querySelector('#parts .details')")
	Eval[bool](p, "(dispatchEvent(new Event('beforeprint')), true)")
	found := Eval[[]string](p, `(words => [...document.querySelectorAll('#balance :is(th, td, caption), #parts :is(th, .sw, .still, :is(.s, .c) option), #frame :is(label, th), #difference th, #printed :is(th, td, option), #picture-words, #picture .facts')]
		.map(e => e.textContent.trim()).filter(text => words.test(text)))(/swingarm|shock|sprung|effective/i)`)
	if len(found) > 0 {
		t.Errorf("a rigid bike has %q", found)
	}
	if travel := Eval[int](p, `[...document.querySelectorAll('#frame label')].filter(l => l.textContent.includes('Travel')).length`); travel != 2 {
		t.Errorf("travel can be given in %d places, want 2", travel)
	}
	Eval[bool](p, "(dispatchEvent(new Event('afterprint')), true)")
	p.look("rigid")
}

// printing has the page look as it does on paper.
func (p *Page) printing(on bool) {
	p.tb.Helper()
	media := ""
	if on {
		media = "print"
	}
	Call(p, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: media})
}
