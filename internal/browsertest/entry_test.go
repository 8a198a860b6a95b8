package browsertest

import (
	"math"
	"strings"
	"testing"

	"github.com/chromedp/chromedp/kb"
)

// lines counts the parts of the list.
func (p *Page) lines() int { return Eval[int](p, "document.querySelectorAll('#parts tr.part').length") }

// A number is a size or a mass by what it can be, what was added is told with its ±
// and basis, and a second one of what a bike has one of is asked about.
func TestEntryIsSafe(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	total, lines := p.total(), p.lines()
	told := func(what string, words ...string) {
		t.Helper()
		said := ""
		defer func() {
			if t.Failed() {
				t.Logf("it is told %q", said)
			}
		}()
		p.until(what+" is told", func() bool {
			said = strings.ReplaceAll(p.notices(), "\u00a0", " ")
			for _, w := range words {
				if !strings.Contains(said, w) {
					return false
				}
			}
			return true
		})
	}

	// One saddle is there: Enter on the question replaces it, and Undo brings it back.
	p.typeInto("add", "saddle 2 kg")
	p.Key(kb.Enter)
	p.Until("it is asked", "document.activeElement?.id === 'add-replace'")
	if asked := p.says(".asking p"); !strings.Contains(asked, "already") || !strings.Contains(asked, "±") {
		t.Errorf("it is asked %q", asked)
	}
	if p.lines() != lines || p.total() != total {
		t.Error("something was added before the answer")
	}
	p.Key(kb.Enter)
	told("the replacement", "takes the place of", "2000 ±100 g", "Stated by the maker")
	p.Until("the search has the focus", "document.activeElement?.id === 'add'")
	if p.lines() != lines {
		t.Errorf("%d parts, before the replacement %d", p.lines(), lines)
	}
	p.press("Undo")
	p.until("the old saddle is there", func() bool { return p.lines() == lines && math.Abs(p.total()-total) < 1e-9 })

	// Escape adds nothing; the other answer adds beside.
	p.typeInto("add", "chain 10")
	p.Key(kb.Enter)
	p.Until("it is asked", "document.activeElement?.id === 'add-replace'")
	p.Key(kb.Escape)
	p.Until("the search has the focus", "document.activeElement?.id === 'add' && !document.querySelector('.asking')")
	if p.lines() != lines {
		t.Error("Escape adds a chain")
	}
	p.typeInto("add", "tyre 55")
	p.Until("the width is filled in", "document.querySelector('#add-list [role=option] .name')?.innerText.includes('55-622')")
	p.Key(kb.Enter)
	p.Until("it is asked", "document.activeElement?.id === 'add-replace'")
	p.Key(kb.Tab)
	p.Key(kb.Enter)
	told("the tyre", "Added Tyre", "55-622", "Typical figure")
	p.until("there is a tyre more", func() bool { return p.lines() == lines+1 })

	// What such a part never weighs is taken and remarked.
	p.typeInto("add", "bell 420 g")
	p.Key(kb.Enter)
	told("the mass", "420 g is more than five times 32 g")
	p.until("there is a bell more", func() bool { return p.lines() == lines+2 })
}

// A list that is pasted into the search, or typed there, is looked at before it is
// taken in, and can be put right there.
func TestEntryOfAList(t *testing.T) {
	t.Parallel()
	look := Phone
	look.Dark = true
	p := openPage(t, look)
	lines := p.lines()
	p.Eval(`(() => {
		const data = new DataTransfer();
		data.setData('text/plain', '- front light 115 g\n- bell: 42 g\n- two bottles, 81 g each');
		const e = document.getElementById('add');
		e.focus();
		e.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }));
	})()`)
	p.Until("three parts are shown", "document.querySelectorAll('dialog[open] table.lines tbody tr').length === 3")
	if p.lines() != lines {
		t.Error("they are in the list already")
	}
	p.Eval(`(e => { e.value += '\nflag 180 g'; e.dispatchEvent(new Event('input', { bubbles: true })) })(document.querySelector('dialog[open] textarea'))`)
	p.Until("and the one that was written below", "document.querySelectorAll('dialog[open] table.lines tbody tr').length === 4")
	p.Eval("document.querySelector('dialog[open] .go').click()")
	p.until("they are in the list", func() bool { return p.lines() == lines+4 })

	p.typeInto("add", "bell 42 g, flag 180 g")
	p.Key(kb.Enter)
	p.Until("two parts are shown", "document.querySelectorAll('dialog[open] table.lines tbody tr').length === 2")
}
