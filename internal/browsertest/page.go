package browsertest

import (
	"context"
	"fmt"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
)

// Page is a tab with storage of its own.
type Page struct {
	tb       testing.TB
	ctx      context.Context
	patience time.Duration

	file  string // the page's own path, when it is opened from a file
	spent bool   // the tab is left as no other test should find it

	mu      sync.Mutex
	wrongs  []string
	tally   map[string]int    // requests by path
	chooser cdp.BackendNodeID // the file input that asks
}

// Look is how a page is looked at.
type Look struct {
	Width, Height int     // CSS pixels
	Density       float64 // device pixels to the CSS pixel; 0 is 1
	Touch         bool    // a phone
	Dark          bool
}

// Desk and Phone are the two sizes that the page must fit. A FinePhone has the pixels
// of one, nine times as many to draw by software: it is for what depends on them.
var (
	Desk      = Look{Width: 1280, Height: 800}
	Phone     = Look{Width: 390, Height: 844, Touch: true}
	FinePhone = Look{Width: 390, Height: 844, Density: 3, Touch: true}
)

// patience is how long anything on the page may take, unless a browser has
// another. Generous: machines that
// draw by software while other tests run are slow.
const patience = 30 * time.Second

// Open opens an address in a fresh tab; the test's end closes it and fails the
// test for whatever went wrong on the page by then.
func (b *Browser) Open(tb testing.TB, address string, look Look) *Page {
	tb.Helper()
	p := b.page(tb, address)
	ctx, cancel := chromedp.NewContext(b.ctx, chromedp.WithNewBrowserContext(), chromedp.WithListener(p.hear))
	p.ctx = ctx
	tb.Cleanup(func() {
		if tb.Failed() {
			p.keepPicture()
		}
		cancel()
		p.blame()
	})
	p.prepare()
	p.Look(look)
	Do(p, chromedp.Navigate(address))
	return p
}

// page makes a page of a test, in no tab yet.
func (b *Browser) page(tb testing.TB, address string) *Page {
	p := &Page{tb: tb, patience: b.Patience, tally: map[string]int{}}
	if u, err := url.Parse(address); err == nil && u.Scheme == "file" {
		p.file = u.Path
	}
	return p
}

// prepare has a tab tell what happens in it.
func (p *Page) prepare() {
	p.tb.Helper()
	Call(p, network.Enable, network.EnableParams{})
	Call(p, log.Enable, cdp.Empty{})
	// Others are open beside it, and each is to be as if it were the only one.
	Call(p, emulation.SetFocusEmulationEnabled, emulation.SetFocusEmulationEnabledParams{Enabled: true})
}

// blame fails the test for what went wrong on the page.
func (p *Page) blame() {
	p.tb.Helper()
	for _, w := range p.Wrongs() {
		p.tb.Errorf("on the page: %s", w)
	}
}

// During has a page of a test serve one of its subtests, until that ends.
func (p *Page) During(tb testing.TB) {
	outer := p.tb
	p.tb = tb
	tb.Cleanup(func() { p.tb = outer })
}

// hear notes what goes wrong on the page.
func (p *Page) hear(ev any) {
	switch e := ev.(type) {
	case *runtime.EventExceptionThrown:
		p.wrong("exception: " + describe(e.ExceptionDetails))
	case *runtime.EventConsoleAPICalled:
		if e.Type == runtime.ConsoleAPICalledTypeError || e.Type == runtime.ConsoleAPICalledTypeAssert {
			var said []string
			for _, a := range e.Args {
				said = append(said, fmt.Sprintf("%s%s", a.Value, a.Description))
			}
			p.wrong("console: " + strings.Join(said, " "))
		}
	case *log.EventEntryAdded:
		if e.Entry.Level == log.EntryLevelError {
			p.wrong(fmt.Sprintf("log: %s %s", e.Entry.Text, e.Entry.URL))
		}
	case *page.EventFileChooserOpened:
		p.mu.Lock()
		p.chooser = e.BackendNodeID
		p.mu.Unlock()
	case *network.EventRequestWillBeSent:
		u, err := url.Parse(e.Request.URL)
		if err != nil {
			p.wrong("request: " + err.Error())
			return
		}
		p.mu.Lock()
		p.tally[u.Path]++
		p.mu.Unlock()
		switch u.Scheme {
		case "data", "blob", "about":
		case "file":
			if p.file == "" || u.Path != p.file {
				p.wrong("request for another file: " + e.Request.URL)
			}
		default:
			if u.Hostname() != "127.0.0.1" {
				p.wrong("request that leaves this machine: " + e.Request.URL)
			}
		}
	}
}

func describe(d *runtime.ExceptionDetails) string {
	s := d.Text
	if d.Exception != nil {
		s += " " + d.Exception.Description
	}
	return s
}

func (p *Page) wrong(s string) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.wrongs = append(p.wrongs, s)
}

// Wrongs returns what went wrong since the last call.
func (p *Page) Wrongs() []string {
	p.mu.Lock()
	defer p.mu.Unlock()
	w := p.wrongs
	p.wrongs = nil
	return w
}

// Requests returns how often a path was asked for.
func (p *Page) Requests(path string) int {
	p.mu.Lock()
	defer p.mu.Unlock()
	return p.tally[path]
}

// Look changes the size of the window and what it pretends to be.
func (p *Page) Look(look Look) {
	p.tb.Helper()
	density := look.Density
	if density == 0 {
		density = 1
	}
	scheme := "light"
	if look.Dark {
		scheme = "dark"
	}
	touches := int64(0)
	if look.Touch {
		touches = 5
	}
	Call(p, emulation.SetDeviceMetricsOverride, emulation.SetDeviceMetricsOverrideParams{
		Width: int64(look.Width), Height: int64(look.Height), DeviceScaleFactor: density, Mobile: look.Touch,
	})
	Call(p, emulation.SetTouchEmulationEnabled, emulation.SetTouchEmulationEnabledParams{Enabled: look.Touch, MaxTouchPoints: touches})
	Call(p, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
		Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: scheme}, {Name: "prefers-reduced-motion", Value: "reduce"}},
	})
}

// Do runs a step and fails the test when it cannot be done.
func Do(p *Page, step chromedp.Action[chromedp.Void]) {
	p.tb.Helper()
	Run(p, step)
}

// Run runs a step within the page's patience.
func Run[T any](p *Page, step chromedp.Action[T]) T {
	p.tb.Helper()
	out, err := attempt(p, step)
	if err != nil {
		p.tb.Fatalf("%v%s", err, p.told())
	}
	return out
}

// attempt runs a step within the page's patience, which may fail.
func attempt[T any](p *Page, step chromedp.Action[T]) (T, error) {
	p.tb.Helper()
	if chromedp.FromContext(p.ctx).Target == nil {
		// The tab lives as long as the context of the first step.
		if err := chromedp.Do(p.ctx); err != nil {
			p.tb.Fatalf("a tab cannot be opened: %v", err)
		}
	}
	ctx, cancel := context.WithTimeout(p.ctx, p.patience)
	defer cancel()
	return chromedp.Run(ctx, step)
}

// told is what went wrong on the page, to go with another failure.
func (p *Page) told() string {
	p.mu.Lock()
	defer p.mu.Unlock()
	if len(p.wrongs) == 0 {
		return ""
	}
	return "\non the page: " + strings.Join(p.wrongs, "\n  ")
}

// Eval evaluates an expression in the page, and waits when it is a promise. What
// the expression looks for may be on its way: one that found nothing to go on with
// is evaluated again, as long as the page may take, so it finds before it changes.
func Eval[T any](p *Page, expression string) T {
	p.tb.Helper()
	var out T
	p.until("there is what this looks for: "+expression, func() bool {
		var err error
		out, err = attempt(p, chromedp.Evaluate[T](expression, chromedp.EvalAwaitPromise))
		if err != nil && !early(err) {
			p.tb.Fatalf("%v%s", err, p.told())
		}
		return err == nil
	})
	return out
}

// early reports whether an expression found nothing to go on with: what it looks for
// may be on its way.
func early(err error) bool {
	return strings.Contains(err.Error(), "TypeError: Cannot read properties of")
}

// Until waits for an expression to be truthy. A page that is just then loaded
// again is asked once more.
func (p *Page) Until(what, expression string) {
	p.tb.Helper()
	p.until(what, func() bool {
		holds, err := attempt(p, chromedp.Evaluate[bool]("!!("+expression+")"))
		if err != nil && !early(err) && !strings.Contains(err.Error(), "navigated or closed") && !strings.Contains(err.Error(), "context") {
			p.tb.Fatalf("%v%s", err, p.told())
		}
		return err == nil && holds
	})
}

func (p *Page) until(what string, holds func() bool) {
	p.tb.Helper()
	// Asking keeps the page from what it is to do: the longer it takes, the less
	// often it is asked.
	for began := time.Now(); !holds(); {
		waited := time.Since(began)
		if waited > p.patience {
			p.tb.Fatalf("waited in vain until %s%s", what, p.told())
		}
		time.Sleep(min(max(waited/4, 10*time.Millisecond), 200*time.Millisecond))
	}
}

// Screenshot returns what is in the window, as PNG.
func (p *Page) Screenshot() []byte {
	p.tb.Helper()
	return Run(p, chromedp.CaptureScreenshot())
}

// keepPicture writes what a failed test last saw to a file, and says where.
func (p *Page) keepPicture() {
	ctx, cancel := context.WithTimeout(p.ctx, 5*time.Second)
	defer cancel()
	png, err := chromedp.Run(ctx, chromedp.CaptureScreenshot())
	if err != nil {
		return
	}
	keepPicture(p.tb, png)
}

// keepPicture writes a picture of a failed test's page to a file, and says where.
func keepPicture(tb testing.TB, png []byte) {
	path := filepath.Join(os.TempDir(), "steelyard-"+strings.ReplaceAll(tb.Name(), "/", "-")+".png")
	if os.WriteFile(path, png, 0o644) == nil {
		tb.Logf("what the page looked like: %s", path)
	}
}

// Reload loads the page again, with its storage.
func (p *Page) Reload() {
	p.tb.Helper()
	Do(p, chromedp.Reload())
}

// Navigate goes to another address in the same tab.
func (p *Page) Navigate(address string) {
	p.tb.Helper()
	Do(p, chromedp.Navigate(address))
}

// Preload has a script run before those of every page opened from now on.
func (p *Page) Preload(script string) {
	p.tb.Helper()
	p.spent = true
	Call(p, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: script})
}
