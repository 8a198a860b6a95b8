package browsertest

import (
	"context"
	"net/url"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/storage"
	"github.com/chromedp/chromedp"
)

// A tab with storage of its own that serves one test after another. A fresh one
// starts a process, compiles the program and fetches all files anew, which is
// two fifths of what opening a page costs.
type tab struct {
	ctx    context.Context
	cancel context.CancelFunc

	mu   sync.Mutex
	page *Page // that it serves, or nil
}

// hear hands on what happens to the page that the tab serves. Between two of
// them nobody is asked whether the last may be left.
func (t *tab) hear(ev any) {
	t.mu.Lock()
	p := t.page
	t.mu.Unlock()
	if p != nil {
		p.hear(ev)
		return
	}
	if _, asks := ev.(*page.EventJavascriptDialogOpening); asks {
		go chromedp.Run(t.ctx, func(ctx context.Context, _ *chromedp.Target) (struct{}, error) { //nolint:errcheck // the tab is given up then
			_, err := chromedp.Call(ctx, page.HandleJavaScriptDialog, page.HandleJavaScriptDialogParams{Accept: true})
			return struct{}{}, err
		})
	}
}

func (t *tab) serve(p *Page) {
	t.mu.Lock()
	defer t.mu.Unlock()
	t.page = p
}

// Lend opens an address in a tab that is as good as fresh: nothing is stored but
// that the page has greeted, and nothing is left of a page before. It has no
// service worker, which would fetch and keep the whole site once more for every
// test: what works without a network is tested in tabs of its own. The test's end
// gives the tab back, or closes it when the test failed or changed what storage
// does not hold (spent), and fails the test for whatever went wrong on the page by
// then.
func (b *Browser) Lend(tb testing.TB, address string, look Look) *Page {
	tb.Helper()
	p := b.page(tb, address)
	t := b.idle()
	used := t != nil
	if !used {
		t = new(tab)
		t.ctx, t.cancel = chromedp.NewContext(b.ctx, chromedp.WithNewBrowserContext(), chromedp.WithListener(t.hear))
	}
	p.ctx = t.ctx
	t.serve(p)
	tb.Cleanup(func() {
		if tb.Failed() {
			p.keepPicture()
		}
		t.serve(nil)
		if tb.Failed() || p.spent || !t.leave() {
			t.cancel()
		} else {
			b.giveBack(t)
		}
		p.blame()
	})
	if used {
		u, err := url.Parse(address)
		if err != nil {
			tb.Fatal(err)
		}
		Call(p, storage.ClearDataForOrigin, storage.ClearDataForOriginParams{Origin: u.Scheme + "://" + u.Host, StorageTypes: "all"})
		p.Mouse(input.DispatchMouseEventTypeMouseMoved, -1, -1, false)
	} else {
		p.prepare()
		p.Preload(`location.protocol.startsWith('http') && localStorage.setItem('steelyard.greeted', 'yes')
			delete Navigator.prototype.serviceWorker`)
		p.spent = false // so is every page in it
	}
	p.Look(look)
	Do(p, chromedp.Navigate(address))
	return p
}

// leave takes the tab away from its page, and reports whether it went.
func (t *tab) leave() bool {
	ctx, cancel := context.WithTimeout(t.ctx, 10*time.Second)
	defer cancel()
	_, err := chromedp.Run(ctx, chromedp.Navigate("about:blank"))
	return err == nil
}

func (b *Browser) idle() *tab {
	b.mu.Lock()
	defer b.mu.Unlock()
	n := len(b.tabs)
	if n == 0 {
		return nil
	}
	t := b.tabs[n-1]
	b.tabs = b.tabs[:n-1]
	return t
}

func (b *Browser) giveBack(t *tab) {
	b.mu.Lock()
	defer b.mu.Unlock()
	b.tabs = append(b.tabs, t)
}
