package browsertest

import (
	"fmt"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/chromedp/chromedp/kb"

	"steelyard/internal/site/static"
)

// slowHost serves the site, and can keep the program back.
type slowHost struct {
	URL  string
	mu   sync.Mutex
	gate chan struct{} // nil when it is open
}

func startSlowHost(tb testing.TB) *slowHost {
	tb.Helper()
	h := &slowHost{}
	site := static.Handler(built)
	host := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.URL.Path == "/favicon.ico" {
			w.WriteHeader(http.StatusNoContent)
			return
		}
		if strings.HasSuffix(r.URL.Path, ".wasm.gz") {
			h.mu.Lock()
			gate := h.gate
			h.mu.Unlock()
			if gate != nil {
				select {
				case <-gate:
				case <-r.Context().Done():
					return
				}
			}
		}
		site.ServeHTTP(w, r)
	}))
	tb.Cleanup(host.Close)
	tb.Cleanup(h.letGo)
	h.URL = host.URL + "/"
	return h
}

func (h *slowHost) hold() {
	h.mu.Lock()
	defer h.mu.Unlock()
	h.gate = make(chan struct{})
}

func (h *slowHost) letGo() {
	h.mu.Lock()
	defer h.mu.Unlock()
	if h.gate != nil {
		close(h.gate)
		h.gate = nil
	}
}

// uncached is a browser that keeps no copy of the page's files, and adds up by how
// much of the window what is seen has moved without a hand.
const uncached = `delete Navigator.prototype.serviceWorker;
if (window === window.parent) {
	window.moved = [];
	new PerformanceObserver(l => l.getEntries().forEach(e => e.hadRecentInput || window.moved.push([e.value, ...e.sources.map(s => (s.node?.parentElement?.outerHTML ?? String(s.node?.nodeName)).slice(0, 120) + ' ' + JSON.stringify(s.previousRect) + JSON.stringify(s.currentRect))]))).observe({ type: 'layout-shift', buffered: true });
}`

// early opens a page whose program is kept back.
func (h *slowHost) early(t *testing.T, look Look, preload, hash string) *Page {
	t.Helper()
	h.hold()
	p := browser.Open(t, h.URL+"icon.svg", look)
	p.Preload(uncached + preload)
	p.goes(h.URL + hash)
	return p
}

// goes follows an address without waiting until all of it is there.
func (p *Page) goes(address string) {
	p.tb.Helper()
	p.Eval("setTimeout(() => location.assign(" + quote(address) + "))")
}

// goesAgain loads the page anew, likewise.
func (p *Page) goesAgain() {
	p.tb.Helper()
	p.Eval("window.old = true; setTimeout(() => location.reload())")
	p.Until("the page is another", "!window.old")
}

// opening is all that the first screen says in figures.
const opening = `['.pair', 'table.figures'].map(s => document.querySelector('#balance ' + s)?.innerText ?? '').join('\n').replace(/[\u00a0\s]+/g, ' ')`

const bar = `(document.querySelector('sy-early')?.innerText ?? '')`

// mustBeEarly waits until figures are there without the program.
func (p *Page) mustBeEarly(of string) {
	p.tb.Helper()
	p.Until("figures are there without the program", "document.documentElement?.dataset.early === "+quote(of)+" && document.querySelector('#balance .total .num')")
	p.Until("all of the page is there", "!document.querySelector(':not(:defined)')")
	if Eval[bool](p, "!!"+inFrame+"?.steelyard") {
		p.tb.Fatal("the program is there")
	}
}

// keepLook keeps a picture of the window in the folder that STEELYARD_LOOK names.
func (p *Page) keepLook(name string) {
	if dir := os.Getenv("STEELYARD_LOOK"); dir != "" {
		if err := os.WriteFile(filepath.Join(dir, name+".png"), p.Screenshot(), 0o644); err != nil {
			p.tb.Error(err)
		}
	}
}

// Before the program is there the page shows the demo's figures and picture as the
// build has worked them out, says so, and when the program comes nothing moves and
// nothing is another.
func TestDemoBeforeTheProgram(t *testing.T) {
	t.Parallel()
	german := `Object.defineProperty(Navigator.prototype, 'languages', { get: () => ['de-CH', 'en'] });`
	dark := Phone
	dark.Dark = true
	for name, c := range map[string]struct {
		look    Look
		preload string
		says    []string
		printed string
	}{
		"desk":  {Desk, "", []string{"Demo, worked out", "on its way"}, "Printed before the program was there: the figures of the demo"},
		"phone": {dark, german, []string{"Beispiel, ausgerechnet", "unterwegs"}, "Gedruckt, bevor das Programm da war: die Werte des Beispiels"},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			h := startSlowHost(t)
			p := h.early(t, c.look, watchPolicy+";"+c.preload, "")
			p.mustBeEarly("demo")
			p.Until("there is a picture", "document.querySelectorAll('#plate svg path').length > 20")
			p.Until("the fonts are there", "document.fonts.status === 'loaded'")
			wait(p, 300)
			before := Eval[string](p, opening)
			for _, says := range c.says {
				if said := Eval[string](p, bar); !strings.Contains(said, says) {
					t.Errorf("it does not say %q, but %q", says, said)
				}
			}
			if marks := Eval[int](p, "document.querySelectorAll('#balance .early-mark, #plate .early-mark').length"); marks != 2 {
				t.Errorf("figures and picture have %d marks", marks)
			}
			if busy := Eval[string](p, "document.getElementById('plate').ariaBusy ?? ''"); busy != "true" {
				t.Errorf("the picture is busy: %q", busy)
			}
			if ink := Eval[string](p, "getComputedStyle(document.querySelector('#plate svg rect')).fill"); ink != Eval[string](p, "getComputedStyle(document.body).backgroundColor") {
				t.Errorf("the picture's paper is %s", ink)
			}
			p.keepLook("early-" + name)
			for _, v := range audit(p) {
				t.Errorf("%s (%s): %v", v.ID, v.Help, v.Nodes)
			}
			p.Eval("dispatchEvent(new Event('beforeprint'))")
			if paper := Eval[string](p, "document.querySelector('#printed').textContent"); !strings.Contains(paper, c.printed) {
				t.Errorf("on paper stands %.400q", paper)
			}
			p.Eval("dispatchEvent(new Event('afterprint'))")

			h.letGo()
			p.started()
			p.Until("the program has reckoned", "document.documentElement?.dataset.early === undefined && document.getElementById('plate').ariaBusy === 'false'")
			p.Until("the picture is the canvas's", "!document.querySelector('#plate svg')")
			wait(p, 500)
			if after := Eval[string](p, opening); after != before {
				t.Errorf("before the program it said\n%s\nand after\n%s", before, after)
			}
			if n := Eval[int](p, "document.querySelectorAll('.amended').length"); n > 0 {
				t.Errorf("%d figures are marked as corrected", n)
			}
			if bar := Eval[string](p, bar); bar != "" {
				t.Errorf("it still says %q", bar)
			}
			p.keepLook("then-" + name)
			moved := Eval[float64](p, "moved.reduce((sum, [v]) => sum + v, 0)")
			t.Logf("layout shift %.4f", moved)
			if moved > 0.02 {
				t.Errorf("the page moved by %.3f: %s", moved, Eval[string](p, "JSON.stringify(moved, null, 1)"))
			}
			if got := p.forbidden(); len(got) > 0 {
				t.Errorf("the policy had to forbid %q", got)
			}
		})
	}
}

// What is typed, pasted and opened before the program is there waits for it, and
// is counted then.
func TestWorkBeforeTheProgram(t *testing.T) {
	t.Parallel()
	h := startSlowHost(t)
	p := h.early(t, Desk, "", "")
	p.mustBeEarly("demo")
	total := Eval[string](p, opening)
	p.mass(gearbox).Fill("4250")
	p.Until("the field says that it waits", "document.querySelector('#parts').innerText.includes('Counted as soon as')")
	box := p.Like("combobox", "Add a part to build A")
	for _, text := range []string{"Zither 1.5 kg", "Lyre 2 kg"} {
		box.Focus()
		p.typing(text)
		p.Key(kb.Enter)
	}
	p.Until("the field says what waits", "document.querySelector('sy-add').innerText.includes('Zither 1.5 kg; Lyre 2 kg')")
	p.The("textbox", "Title of the document").Fill("Mine")
	p.keepLook("work-early")
	if now := Eval[string](p, opening); now != total {
		t.Errorf("something was reckoned without the program: %s", now)
	}
	h.letGo()
	p.started()
	p.The("button", "Add them").Click() // several are a list, which is looked at first
	p.until("what waited was taken", func() bool {
		_, d := p.saved()
		b := d.Build("gearbox")
		names := ""
		for _, part := range b.Parts {
			names += fmt.Sprintf("%s %v, ", part.Name, part.Mass)
		}
		return d.Title == "Mine" && gearboxMass(d) == 4250 && strings.Contains(names, "Zither 1500") && strings.Contains(names, "Lyre 2000")
	})
	p.Until("nothing waits any more", "!document.querySelector('#parts').innerText.includes('Counted as soon as') && !document.querySelector('sy-add .why')")

	// A list goes through its preview, a document is opened.
	h.hold()
	p.goesAgain()
	p.Until("the program is on its way", bar+" !== ''")
	p.Until("there is a field", "document.querySelector('#add') || true")
	p.Chooses("other.steelyard.json", `{"format":"steelyard-document","version":1,"title":"Of a friend","show":{"mass":"kg","length":"mm"},"builds":[{"id":"a","name":"A"}]}`, p.The("button", "Open…").Click)
	p.Until("it says what waits", bar+".includes('other.steelyard.json')")
	// It lies in the browser: a page that dies before takes nothing along.
	lies := func() bool {
		return Eval[bool](p, inStore("readonly", "getAllKeys()")+".then(keys => keys.some(k => k.startsWith('waiting ')))")
	}
	p.until("it is kept", lies)
	p.goesAgain()
	p.Until("it still waits", bar+".includes('other.steelyard.json')")
	h.letGo()
	p.started()
	p.until("the document is open", func() bool { _, d := p.saved(); return d.Title == "Of a friend" })
	p.until("it waits no more", func() bool { return !lies() })
}

// A list pasted before the program is there is looked at when it is.
func TestListBeforeTheProgram(t *testing.T) {
	t.Parallel()
	h := startSlowHost(t)
	p := h.early(t, Phone, "", "")
	p.mustBeEarly("demo")
	// No chapter minds being opened without the program.
	p.Eval("document.querySelectorAll('main details:not([open]) > summary').forEach(s => s.click())")
	wait(p, 500)
	if said := Eval[string](p, "document.querySelector('.note.error')?.innerText ?? ''"); said != "" {
		t.Errorf("the page says %q", said)
	}
	p.Eval(`(() => { const e = document.getElementById('add'), d = new DataTransfer(); d.setData('text/plain', 'saddle 512 g\npost 272 g\n'); e.focus(); e.dispatchEvent(new ClipboardEvent('paste', { clipboardData: d, bubbles: true, cancelable: true })) })()`)
	p.Until("the field says what waits", "document.querySelector('sy-add').innerText.includes('saddle 512 g post 272 g')")
	h.letGo()
	p.Until("the list is shown", "document.querySelector('dialog[open] table')?.innerText.includes('512')")
}

// A document of one's own shows its last figures and picture, with their time; what
// the program then finds otherwise is marked.
func TestKeptBeforeTheProgram(t *testing.T) {
	t.Parallel()
	h := startSlowHost(t)
	h.letGo()
	p := browser.Open(t, h.URL+"icon.svg", Desk)
	p.Preload(uncached)
	p.Navigate(h.URL)
	p.started()
	p.mass(gearbox).Fill("4250")
	p.kept()
	p.until("what is seen is remembered", func() bool {
		return Eval[bool](p, inStore("readonly", "get('seen')")+".then(s => (s?.picture.length ?? 0) > 1000)")
	})
	figures := Eval[string](p, opening)
	h.hold()
	p.goesAgain()
	p.mustBeEarly("kept")
	p.Until("there is a picture", "document.querySelectorAll('#plate svg path').length > 20")
	if now := Eval[string](p, opening); now != figures {
		t.Errorf("it shows\n%s\nand showed\n%s", now, figures)
	}
	if said := Eval[string](p, bar+" + document.querySelector('#balance .early-mark').innerText"); !strings.Contains(said, "Last figures, from this browser, ") || !strings.Contains(said, "as of ") || strings.Contains(said, "edited after") {
		t.Errorf("it says %q", said)
	}
	p.keepLook("kept-early")
	h.letGo()
	p.started()
	p.Until("the program has reckoned", "document.documentElement?.dataset.early === undefined")
	if n := Eval[int](p, "document.querySelectorAll('.amended').length"); n > 0 {
		t.Errorf("%d figures are marked as corrected", n)
	}

	// A figure that was another, as of an older program.
	h.hold()
	Eval[any](p, inStore("readonly", "get('seen')")+`.then(seen => {
		const f = seen.report.sides[0].figures.find(f => f.key === 'total');
		f.value += 1000;
		window.seen = seen;
	}).then(() => `+inStore("readwrite", "put(window.seen, 'seen')")+")")
	p.goesAgain()
	p.mustBeEarly("kept")
	wrong := Eval[string](p, "document.querySelector('#balance .total .num').textContent")
	h.letGo()
	p.started()
	p.Until("the figure is marked", "document.querySelector('#balance .total .amended')")
	if now := Eval[string](p, "document.querySelector('#balance .total .num').textContent"); now == wrong {
		t.Errorf("it still shows %s", now)
	}
	if n := Eval[int](p, "document.querySelectorAll('.amended').length"); n != 1 {
		t.Errorf("%d figures are marked", n)
	}
	if said := Eval[string](p, "document.querySelector('.amended').textContent"); !strings.Contains(said, "corrected, before: ") {
		t.Errorf("the mark says %q", said)
	}
	p.Until("it is told", "document.querySelector('sy-notes').innerText.includes('one figure is corrected')")
	p.Eval("scrollTo(0, 0)")
	p.keepLook("corrected")
	p.mass(gearbox).Fill("4251")
	p.Until("the mark goes with the next edit", "!document.querySelector('.amended')")
}

// A link says what it brings before it can be read, and shows nobody else's
// figures meanwhile.
func TestLinkBeforeTheProgram(t *testing.T) {
	t.Parallel()
	h := startSlowHost(t)
	p := h.early(t, Phone, "", "#Two_bikes,_%C3%BCberladen=sy1.eJyrVkrLL8pNLFGyUiouSU3NqUwsSklVslJKyU8uzU3NK1HSUSpLLSrOzM9TsjIEAPQHD3U")
	p.Until("it says what comes", bar+".includes('called “Two bikes, überladen”')")
	if Eval[bool](p, "!!document.querySelector('#balance .num')") {
		t.Error("it shows figures that are not the link's")
	}
	p.keepLook("link-early")
	h.letGo()
	p.Until("what the link holds is dealt with", "document.querySelector('dialog[open]') || document.querySelector('sy-notes .note.error')")
}
