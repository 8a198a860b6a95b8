package browsertest

import (
	"context"
	"fmt"
	"math"
	"net/url"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/storage"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"steelyard/internal/document"
)

// beside opens an address in another tab on the same storage.
func (p *Page) beside(address string) *Page {
	p.tb.Helper()
	p.spent = true
	q := &Page{tb: p.tb, tally: map[string]int{}, file: p.file, patience: p.patience}
	ctx, cancel := chromedp.NewContext(p.ctx, chromedp.WithListener(q.hear))
	q.ctx = ctx
	p.tb.Cleanup(func() {
		cancel()
		for _, w := range q.Wrongs() {
			p.tb.Errorf("on the page beside: %s", w)
		}
	})
	Call(q, network.Enable, network.EnableParams{})
	Call(q, log.Enable, cdp.Empty{})
	q.Look(Desk)
	Do(q, chromedp.Navigate(address))
	return q
}

// crash kills the page's process: nothing of it runs any more.
func (p *Page) crash() {
	p.tb.Helper()
	p.spent = true
	ctx, cancel := context.WithTimeout(p.ctx, time.Second)
	defer cancel()
	chromedp.Run(ctx, func(ctx context.Context, _ *chromedp.Target) (cdp.Empty, error) { //nolint:errcheck // nobody is left to answer
		return chromedp.Call(ctx, page.Crash, cdp.Empty{})
	})
}

// typing puts text in at the cursor, as a hand does that does not leave the field.
func (p *Page) typing(text string) {
	p.tb.Helper()
	Call(p, input.InsertText, input.InsertTextParams{Text: text})
}

// A second is what the issue of a dead tab may cost. Typing goes on all the
// time, so that no pause lets the page keep what was typed.
func TestADeadTabLosesAtMostASecondOfTyping(t *testing.T) { // alone: it counts seconds
	p := openPage(t, Desk)
	// What a headless browser keeps is in memory, and goes with the last that has it
	// open; a browser's is on disk.
	holder := p.beside(server.URL + "icon.svg")
	Eval[bool](holder, "new Promise((yes, no) => { const r = indexedDB.open('steelyard'); r.onerror = () => no(r.error); r.onsuccess = () => { window.held = r.result; yes(true) } })")
	p.Eval("const e = [...document.querySelectorAll('#parts input')].find(e => e.value === " + quote(gearbox) + "); e.focus(); e.select()")
	began := time.Now()
	typed := ""
	var at []time.Duration // when so many letters had been typed
	for time.Since(began) < 3*time.Second {
		letter := string(rune('a' + len(typed)%26))
		p.typing(letter)
		typed += letter
		at = append(at, time.Since(began))
		time.Sleep(90 * time.Millisecond) // as a quick hand types; a page painted by software has time for nothing else otherwise
	}
	died := time.Since(began)
	if now := Eval[string](p, "document.activeElement.value ?? ''"); !strings.HasSuffix(typed, now) || now == "" {
		t.Errorf("typed was %q, and the field holds %q", typed, now)
	}
	p.crash()

	q := p.beside(server.URL)
	q.started()
	_, d := q.saved()
	got := d.Build("gearbox").Part("gearbox").Name
	if got == "" || !strings.HasPrefix(typed, got) {
		t.Fatalf("after the crash the part is called %q, typed was %q", got, typed)
	}
	safe := 0
	// A machine that paints by software is up to half a second behind the hand.
	for safe < len(at) && at[safe] < died-1500*time.Millisecond {
		safe++
	}
	if len(got) < safe {
		t.Errorf("%d of %d letters are kept; %d had been there for more than a second and a half", len(got), len(typed), safe)
	}
}

// What makes no sense yet, or is not a thing yet, is in no document; it is
// there again all the same.
func TestADeadTabKeepsWhatIsNotDone(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	before := p.total()
	box := p.Like("combobox", "Add a part to build A")
	box.Focus()
	p.typing("Zither 1.5")
	p.mass(gearbox).Focus()
	Ask[bool](p.mass(gearbox), "e => { e.select(); return true }")
	p.typing("2 kg 3")
	p.until("the field says that it is wrong", func() bool { return Ask[bool](p.mass(gearbox), "e => e.getAttribute('aria-invalid') === 'true'") })
	wait(p, 1000)
	p.crash()

	q := p.beside(server.URL)
	q.started()
	if got := q.mass(gearbox).Value(); got != "2 kg 3" {
		t.Errorf("in the field stands %q", got)
	}
	if !Ask[bool](q.mass(gearbox), "e => e.getAttribute('aria-invalid') === 'true'") {
		t.Error("the field does not say that it is wrong")
	}
	if got := q.Like("combobox", "Add a part to build A").Value(); got != "Zither 1.5" {
		t.Errorf("to be added was %q", got)
	}
	if now := q.total(); now != before {
		t.Errorf("the total is %v kg, before %v", now, before)
	}
	// The field goes back to what it held.
	q.mass(gearbox).Focus()
	q.Key(kb.Escape)
	q.until("the field is right again", func() bool { return Ask[bool](q.mass(gearbox), "e => e.getAttribute('aria-invalid') === null") })
}

const apart = "[...document.querySelectorAll('sy-notices, sy-notes')].map(e => e.innerText).join(' ').includes('changed in another window')"

// parted opens one document in two windows and edits it in both: 3210 g in the
// first, which is kept, 4210 g in the second, which is not.
func parted(t *testing.T) (p, q *Page) {
	t.Helper()
	p = openPage(t, Desk)
	p.mass(gearbox).Fill("3000")
	p.kept()
	wait(p, 700)
	p.kept()
	q = p.beside(server.URL)
	q.started()
	p.mass(gearbox).Fill("3210")
	wait(p, 700)
	p.kept()
	q.mass(gearbox).Fill("4210")
	q.Until("it says that the document was changed elsewhere", apart)
	return p, q
}

// grams returns what the gearbox weighs in the document that the page saves.
func (p *Page) grams() float64 {
	p.tb.Helper()
	_, d := p.saved()
	return d.Build("gearbox").Part("gearbox").Mass
}

// keptGrams returns what it weighs in the document that a fresh window finds.
func (p *Page) keptGrams() float64 {
	p.tb.Helper()
	q := p.beside(server.URL)
	q.started()
	return q.grams()
}

func TestTwoWindowsUseTheOther(t *testing.T) {
	t.Parallel()
	p, q := parted(t)
	q.The("button", "Use the other one").Click()
	q.Until("the message is gone", "!"+apart)
	q.kept()
	if got := q.grams(); got != 3210 {
		t.Errorf("the second window has %v g", got)
	}
	if got := p.keptGrams(); got != 3210 {
		t.Errorf("%v g are kept", got)
	}
	// What it had is a step back.
	q.command("Undo").Click()
	q.until("its own is back", func() bool { return q.grams() == 4210 })
	q.kept()
	// And the first window is told before it goes on.
	p.Eval("dispatchEvent(new Event('focus'))")
	p.Until("the first window says so too", apart)
}

func TestTwoWindowsKeepThis(t *testing.T) {
	t.Parallel()
	p, q := parted(t)
	q.The("button", "Keep this one").Click()
	q.Until("the message is gone", "!"+apart)
	q.kept()
	// What it took the place of can still be saved.
	_, other := q.Saves(q.The("button", "Save the other as a file").Click)
	if !strings.Contains(other, "3210") || strings.Contains(other, "4210") {
		t.Errorf("the other's file holds %.300q", other)
	}
	if got := p.keptGrams(); got != 4210 {
		t.Errorf("%v g are kept", got)
	}
	p.Eval("dispatchEvent(new Event('focus'))")
	p.Until("the first window says that it is behind", apart)
	if got := p.grams(); got != 3210 {
		t.Errorf("the first window has %v g", got)
	}
}

// Two windows that hold the same are not at odds, whoever wrote it.
func TestTwoWindowsThatAgree(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	p.mass(gearbox).Fill("3210")
	wait(p, 700)
	p.kept()
	q := p.beside(server.URL)
	q.started()
	q.mass(gearbox).Fill("4000")
	wait(q, 700)
	q.command("Undo").Click()
	wait(q, 700)
	q.kept()
	p.Eval("dispatchEvent(new Event('focus'))")
	wait(p, 500)
	if Eval[bool](p, apart) {
		t.Error("the first window says that the document was changed")
	}
	p.mass(gearbox).Fill("3300")
	wait(p, 700)
	p.kept()
}

// A window that dies before its reader has chosen is not lost either.
func TestAWindowThatDiesApart(t *testing.T) {
	t.Parallel()
	p, q := parted(t)
	wait(q, 500)
	q.crash()
	r := p.beside(server.URL)
	r.started()
	if got := r.grams(); got != 3210 {
		t.Errorf("%v g are kept", got)
	}
	r.Until("it tells of the other", "[...document.querySelectorAll('sy-notices, sy-notes')].map(e => e.innerText).join(' ').includes('kept beside this one')")
	r.The("button", "Open it").Click()
	r.until("the other is open", func() bool { return r.grams() == 4210 })
}

// told waits until the page says that nothing is kept, edits, and saves a file.
func (p *Page) savesUnkept(why string) {
	p.tb.Helper()
	p.mass(gearbox).Fill("3210")
	p.Until("it says that nothing is kept", "[...document.querySelectorAll('sy-notices, sy-notes')].map(e => e.innerText).join(' ').includes('does not keep the document')")
	if said := p.notices(); !strings.Contains(said, why) {
		p.tb.Errorf("it does not say %q: %q", why, said)
	}
	if !Eval[bool](p, "!!document.querySelector('.keeping.failed')") {
		p.tb.Error("the masthead says that the document is kept")
	}
	if got := p.grams(); got != 3210 {
		p.tb.Errorf("saved with %v g", got)
	}
	_, text := p.Saves(p.The("button", "Save as a file").Click)
	if !strings.Contains(text, "3210") {
		p.tb.Errorf("the message's own button saves %.200q", text)
	}
}

func TestFullStorage(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	at, err := url.Parse(server.URL)
	if err != nil {
		t.Fatal(err)
	}
	origin := at.Scheme + "://" + at.Host
	p.spent = true
	none := 1.0
	Call(p, storage.OverrideQuotaForOrigin, storage.OverrideQuotaForOriginParams{Origin: origin, QuotaSize: &none})
	p.savesUnkept("")
	// Leaving would lose it: the browser asks.
	if !Eval[bool](p, "!dispatchEvent(new Event('beforeunload', { cancelable: true }))") {
		t.Error("the page lets itself be closed")
	}
	// With room again, the next edit is kept, and all before it.
	Call(p, storage.OverrideQuotaForOrigin, storage.OverrideQuotaForOriginParams{Origin: origin})
	p.mass(gearbox).Fill("3211")
	p.kept()
	if got := p.keptGrams(); got != 3211 {
		t.Errorf("%v g are kept", got)
	}
	if !Eval[bool](p, "dispatchEvent(new Event('beforeunload', { cancelable: true }))") {
		t.Error("the page does not let itself be closed")
	}
}

func TestBlockedStorage(t *testing.T) {
	t.Parallel()
	for name, script := range map[string]string{
		"refused":     "for (const n of ['indexedDB', 'localStorage']) Object.defineProperty(window, n, { get() { throw new DOMException('storage is off', 'SecurityError') } })",
		"missing":     "for (const n of ['indexedDB', 'localStorage']) Object.defineProperty(window, n, { value: undefined })",
		"fails":       "IDBFactory.prototype.open = function () { const r = {}; setTimeout(() => { r.error = new DOMException('storage is off', 'UnknownError'); r.onerror() }); return r }; Storage.prototype.setItem = () => { throw new Error('off') }",
		"never wakes": "IDBFactory.prototype.open = () => ({}); Storage.prototype.setItem = () => { throw new Error('off') }",
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			p := browser.Open(t, server.URL+"icon.svg", Phone)
			p.Preload("if (location.pathname.endsWith('/folder/')) { " + script + " }")
			p.Navigate(server.URL)
			p.Until("the picture is painted", inFrame+".steelyardFrame?.state == 'painted'")
			why := map[string]string{"missing": "undefined", "never wakes": "does not answer"}[name]
			if why == "" {
				why = "storage is off"
			}
			p.savesUnkept(why)
		})
	}
}

// put is a script that writes a value where the page keeps the document.
func put(value string) string {
	return `new Promise((yes, no) => { const r = indexedDB.open('steelyard'); r.onerror = () => no(r.error); r.onsuccess = () => { const db = r.result, tx = db.transaction('documents', 'readwrite'); tx.objectStore('documents').put(` + value + `, 'current'); tx.oncomplete = () => { db.close(); yes(true) } } })`
}

// inStore is a script that does something with what the page keeps documents in,
// and gives what comes of it.
func inStore(mode, act string) string {
	return `new Promise((yes, no) => { const r = indexedDB.open('steelyard'); r.onerror = () => no(r.error); r.onsuccess = () => { const tx = r.result.transaction('documents', ` + quote(mode) + `), q = tx.objectStore('documents').` + act + `; tx.oncomplete = () => { r.result.close(); yes(q.result ?? null) } } })`
}

// keeps waits until what the browser keeps has the gearbox at so many grams.
func (p *Page) keeps(grams float64) {
	p.tb.Helper()
	p.until(fmt.Sprintf("a gearbox of %v g is kept", grams), func() bool {
		text := Eval[string](p, inStore("readonly", "get('current')")+".then((kept) => typeof kept?.text === 'string' ? kept.text : '')")
		d, _ := document.Open([]byte(text))
		return d != nil && gearboxMass(d) == grams
	})
	p.kept()
}

func TestCorruptStorage(t *testing.T) {
	t.Parallel()
	record := func(text string) string { return "{ text: " + text + ", rev: 7, by: 'x', at: 1 }" }
	// One page has one mishap after the other. What it keeps from then on is read
	// where it lies; that such a record is taken up again other tests show, and
	// the last case here.
	p := openPage(t, Phone)
	for name, c := range map[string]struct {
		value string
		holds string // what can be saved of it
	}{
		"cut off":         {record(`'{"format":"steelyard-document","version":1,"title":"Mine","bui'`), `"title":"Mine"`},
		"no JSON":         {record(`'\u0000\u0001 nonsense'`), "nonsense"},
		"another JSON":    {record(`'[1, 2, 3]'`), "[1, 2, 3]"},
		"a figure's text": {record(`'{"format":"steelyard-document","version":1,"title":"Mine","show":{"mass":"kg","length":"mm"},"builds":[{"id":"a","name":"A","parts":[{"id":"p","mass_g":"heavy"}]}]}'`), "heavy"},
		"newer":           {record(`'{"format":"steelyard-document","version":99}'`), "99"},
		"empty text":      {record(`''`), ""},
		"a number":        {"42", "42"},
		"a string":        {"'all my work'", "all my work"},
		"nothing":         {"null", "null"},
		"bare text":       {"{ text: 'all my work' }", "all my work"},
		"text of a type":  {"{ text: { title: 'Mine' }, rev: 1, by: 'x', at: 1 }", "Mine"},
		"no revision":     {"{ text: 'all my work', rev: NaN, by: 'x', at: 1 }", "all my work"},
		"a list":          {"[1, 'all my work']", "all my work"},
	} {
		t.Run(name, func(t *testing.T) {
			p.During(t)
			p.mass(gearbox).Fill("3210")
			p.keeps(3210)
			p.Navigate(server.URL + "icon.svg")
			Eval[bool](p, put(c.value))
			p.Navigate(server.URL)
			p.started()
			p.Until("it says that what was kept cannot be read", "[...document.querySelectorAll('sy-notices, sy-notes')].map(e => e.innerText).join(' ').includes('could not be read')")
			if c.holds != "" {
				if _, text := p.Saves(p.The("button", "Save what was kept").Click); !strings.Contains(text, c.holds) {
					t.Errorf("saved is %.200q", text)
				}
			}
			// The page works, and keeps the work.
			p.mass(gearbox).Fill("3333")
			p.keeps(3333)
			// And what could not be read lies beside.
			const aside = "IDBKeyRange.bound('unreadable', 'unreadable~')"
			if n := len(Eval[[]any](p, inStore("readonly", "getAllKeys("+aside+")"))); n != 1 {
				t.Errorf("%d texts are set aside", n)
			}
			Eval[any](p, inStore("readwrite", "delete("+aside+")"))
		})
	}
	p.Reload()
	p.started()
	if got := p.grams(); got != 3333 {
		t.Errorf("%v g are taken up again", got)
	}
	// What only helps is forgotten without a word.
	t.Run("preferences and journal", func(t *testing.T) {
		p := openPage(t, Phone)
		for _, nonsense := range []string{"{", "[]", "42", "null", `{"look":{}}`, `{"text":1,"rev":9,"at":9e15}`, `{"text":"x","rev":9,"by":"y","at":"late"}`} {
			p.Eval("for (const n of ['look', 'unfolded', 'journal']) localStorage.setItem('steelyard.' + n, " + quote(nonsense) + ")")
			p.Reload()
			p.started()
			if said := p.notices(); said != "" {
				t.Errorf("%s: it says %q", nonsense, said)
			}
		}
	})
	// A database without its table, or of a higher version, is mended.
	for name, script := range map[string]string{
		"no table":       "const r = indexedDB.open('steelyard', 3)",
		"higher version": "const r = indexedDB.open('steelyard', 9); r.onupgradeneeded = () => r.result.createObjectStore('documents')",
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			p := browser.Open(t, server.URL+"icon.svg", Phone)
			Eval[bool](p, "new Promise((yes, no) => { "+script+"; r.onerror = () => no(r.error); r.onsuccess = () => { r.result.close(); yes(true) } })")
			p.Navigate(server.URL)
			p.started()
			p.mass(gearbox).Fill("3210")
			wait(p, 700)
			p.kept()
			p.Reload()
			p.started()
			if got := p.grams(); got != 3210 {
				t.Errorf("%v g are kept", got)
			}
		})
	}
}

// The site's data may be cleared under the page's feet.
func TestClearedStorage(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	before := p.total()
	p.mass(gearbox).Fill("3000")
	wait(p, 700)
	p.kept()
	at, err := url.Parse(server.URL)
	if err != nil {
		t.Fatal(err)
	}
	Call(p, storage.ClearDataForOrigin, storage.ClearDataForOriginParams{Origin: at.Scheme + "://" + at.Host, StorageTypes: "indexeddb,local_storage"})
	p.mass(gearbox).Fill("3210")
	wait(p, 700)
	p.mass(gearbox).Fill("3211")
	wait(p, 700)
	p.kept()
	p.Reload()
	p.started()
	if got := p.grams(); got != 3211 || math.IsNaN(before) {
		t.Errorf("%v g are kept", got)
	}
}
