package browsertest

import (
	"net/http"
	"net/http/httptest"
	"slices"
	"sync"
	"testing"

	"github.com/chromedp/chromedp/kb"

	"steelyard/internal/site/static"
)

// Once the page is loaded and works offline, its host hears no more of it,
// whatever is done.
func TestNoRequestAfterLoading(t *testing.T) {
	t.Parallel()
	_, dir := serveSite(t)
	var mu sync.Mutex
	var heard []string
	site := static.Handler(dir)
	host := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		mu.Lock()
		heard = append(heard, r.Method+" "+r.URL.String())
		mu.Unlock()
		if r.URL.Path == "/favicon.ico" {
			w.WriteHeader(http.StatusNoContent)
			return
		}
		site.ServeHTTP(w, r)
	}))
	t.Cleanup(host.Close)
	since := func() []string {
		mu.Lock()
		defer mu.Unlock()
		h := heard
		heard = nil
		return h
	}

	p := browser.Open(t, "about:blank", Desk)
	p.Preload(watchPolicy)
	p.Navigate(host.URL + "/")
	p.started()
	p.standing("Works offline")
	wait(p, 500)
	if got := since(); len(got) < 8 || !slices.ContainsFunc(got, func(s string) bool { return len(s) > 5 && s[:5] == "GET /" }) {
		t.Fatalf("loading, the host heard only %q", got)
	}
	p.mainJob()
	p.Eval("document.querySelectorAll('main details:not([open]) > summary').forEach(s => s.click())")
	p.command("About").Click()
	p.Eval("document.querySelector('dialog.about summary').click()")
	p.Until("the licences are there", "document.querySelector('dialog.about pre')?.innerText.includes('The Go Authors')")
	p.Key(kb.Escape)
	wait(p, 700)
	if got := since(); len(got) > 0 {
		t.Errorf("after loading, the host hears %q", got)
	}
	if got := p.forbidden(); len(got) > 0 {
		t.Errorf("the policy had to forbid %q", got)
	}
}
