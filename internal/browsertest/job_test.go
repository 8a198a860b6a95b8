package browsertest

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/chromedp/chromedp/kb"
)

// mainJob does on an open page what people come for: it reads totals, edits
// parts, compares, undoes, shows, shares, prints and saves. It returns the
// total that it leaves, kg.
func (p *Page) mainJob() (total float64) {
	p.tb.Helper()
	before := p.total()
	_, d := p.saved()
	old := d.Build("gearbox").Part("gearbox").Mass
	p.mass(gearbox).Fill("3000")
	want := before + (3000-old)/1000
	p.until(fmt.Sprintf("the total is %.2f", want), func() bool { return math.Abs(p.total()-want) < 0.011 })
	p.The("button", "Undo").Click()
	p.until("the total is as before", func() bool { return p.total() == before })
	p.The("button", "Redo").Click()
	p.until("the total is as after the edit", func() bool { return math.Abs(p.total()-want) < 0.011 })
	total = p.total()

	p.The("button", "Dimensions").Click()
	p.The("button", "Rear").Click()
	p.The("button", "Share link").Click()
	if p.file != "" {
		p.sharesFromAFile()
	}
	p.Until("there is a link", "document.querySelector('dialog input.link')?.value.includes('#')")
	p.Key(kb.Escape)
	p.The("button", "Keys").Click()
	p.Until("the keys are told", "document.querySelector('dialog.keys')?.open")
	p.Key(kb.Escape)
	p.Eval("dispatchEvent(new Event('beforeprint'))")
	p.Until("the picture is drawn for paper", "document.querySelector('#printed svg')")
	p.Eval("dispatchEvent(new Event('afterprint'))")
	name, csv := p.Saves(p.The("button", "CSV out").Click)
	if !strings.HasSuffix(name, ".csv") || !strings.Contains(csv, gearbox) {
		p.tb.Errorf("%s holds %.100q", name, csv)
	}
	if _, d := p.saved(); d.Build("gearbox").Part("gearbox").Mass != 3000 {
		p.tb.Errorf("saved with %v g", d.Build("gearbox").Part("gearbox").Mass)
	}
	p.kept()
	return total
}

// sharesFromAFile does what the page asks for where its own address means
// nothing to others: it says so, and wants the address of a page that does.
func (p *Page) sharesFromAFile() {
	p.tb.Helper()
	p.Until("it says that a file leads nobody anywhere", "document.querySelector('dialog.share')?.innerText.includes('nobody else can open it')")
	if Eval[bool](p, "!!document.querySelector('dialog.share input.link') || document.querySelector('dialog.share').innerText.includes('Copy the link')") {
		p.tb.Error("there is a link from a file")
	}
	host := p.The("textbox", "Address of a published copy")
	for _, wrong := range []string{"file:///tmp/x.html", "javascript:alert(1)", "nowhere"} {
		host.Focus()
		Ask[bool](host, "e => { e.select(); return true }")
		p.typing(wrong)
		p.Until("it says that "+wrong+" is no address", "document.querySelector('dialog.share .wrong') && !document.querySelector('dialog.share input.link')")
	}
	Ask[bool](host, "e => { e.select(); return true }")
	p.typing("bikes.example/steelyard.html#old")
	p.Until("the link leads there", "document.querySelector('dialog.share input.link')?.value.startsWith('https://bikes.example/steelyard.html#sy1.')")
}

// watchPolicy notes, in the page and its frames, what their policies forbid.
const watchPolicy = `window.forbidden = []; addEventListener('securitypolicyviolation', e => window.forbidden.push(e.effectiveDirective + ' ' + e.blockedURI))`

// forbidden returns what was, in page and frame.
func (p *Page) forbidden() []string {
	p.tb.Helper()
	return Eval[[]string](p, "[...window.forbidden, ..."+inFrame+".forbidden]")
}

// requests returns the addresses that page and frame have asked for.
func (p *Page) requests() []string {
	p.tb.Helper()
	return Eval[[]string](p, "[window, "+inFrame+"].flatMap(w => w.performance.getEntries().filter(e => e.entryType == 'resource' || e.entryType == 'navigation').map(e => e.name))")
}

func mustAllBeUnder(t *testing.T, addresses []string, begin string) {
	t.Helper()
	if len(addresses) < 5 {
		t.Errorf("only %d requests were seen: %q", len(addresses), addresses)
	}
	for _, a := range addresses {
		if !strings.HasPrefix(a, begin) && !strings.HasPrefix(a, "data:") && !strings.HasPrefix(a, "blob:"+begin[:strings.Index(begin[8:], "/")+8]) {
			t.Errorf("a request went to %.100s", a)
		}
	}
}
