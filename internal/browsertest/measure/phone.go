package main

import (
	"context"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/network"

	"steelyard/internal/browsertest"
)

// A phone's processor, by how much slower it is than this machine's, and its link.
const (
	slower   = 4
	latency  = 150              // ms
	download = 1.6e6 / 8        // bytes a second
	upload   = download * 3 / 4 // likewise
)

// phone times the first figures, and the program's, of a first visit on a phone and
// of a later one.
func phone(ctx context.Context, page *site) ([]line, error) {
	url, err := page.url()
	if err != nil {
		return nil, err
	}
	// What is in the page is seen with its next paint: the first paint of anything, as
	// the page is seen when its figures are there, or else a frame later.
	const watch = `if (window === window.parent) {
		window.times = {};
		const note = what => { window.times[what] ??= performance.now() };
		new MutationObserver(() => {
			if (document.querySelector('#balance .total .num')) note('figures');
			if (document.querySelector('#plate svg path')) note('picture');
			if (document.querySelector('#plate')?.ariaBusy === 'false' && document.querySelector('#balance .total .num')) note('reckoned');
		}).observe(document, { childList: true, subtree: true, attributes: true, attributeFilter: ['aria-busy'] });
	}`
	const firsts, laters = 2, 3
	type visit struct{ figures, picture, reckoned []float64 }
	var first, later, german visit
	err = inTabs(ctx, func(t *tab) {
		read := func(v *visit, p *browsertest.Page) {
			p.Until("the program has reckoned", "window.times?.reckoned > 0")
			p.Until("it tells when it was painted", "performance.getEntriesByName('first-contentful-paint').length > 0")
			at := browsertest.Eval[[]float64](p, `(() => {
				const paint = performance.getEntriesByName('first-contentful-paint')[0].startTime;
				return [Math.max(times.figures, paint), Math.max(times.picture ?? times.reckoned, paint), times.reckoned];
			})()`)
			v.figures, v.picture, v.reckoned = append(v.figures, at[0]), append(v.picture, at[1]), append(v.reckoned, at[2])
		}
		// A phone's browser is running when somebody follows a link: what it takes to
		// start one, and its drawing by software, is not the page's.
		t.openAs(url, browsertest.FinePhone, "").Screenshot()
		t.close()
		for i := range firsts {
			p := t.openAs(url, browsertest.FinePhone, watch)
			slow(p)
			p.Navigate(url)
			read(&first, p)
			if i < firsts-1 {
				t.close()
				continue
			}
			p.Until("the page is kept for the next visit", "navigator.serviceWorker.ready.then(r => r.active?.state === 'activated')")
			for range laters {
				p.Navigate("about:blank")
				p.Navigate(url)
				read(&later, p)
			}
			t.close()
		}
		p := t.openAs(url, browsertest.FinePhone, "window === window.parent && localStorage.setItem('steelyard.language', 'de');"+watch)
		slow(p)
		p.Navigate(url)
		read(&german, p)
		t.close()
	})
	if err != nil {
		return nil, err
	}
	what := func(v []float64) string { return ms(time.Duration(median(v) * float64(time.Millisecond))) }
	return []line{
		{what: "first figures on a phone, first visit", measured: what(first.figures), reference: "a quarter of this processor, 1.6 Mbit/s, 150 ms", bound: "3 s", ok: kept(median(first.figures) <= 3000)},
		{what: "  first picture", measured: what(first.picture)},
		{what: "  the program has reckoned", measured: what(first.reckoned)},
		{what: "  in German, whose words come beside", measured: what(german.figures), bound: "3 s", ok: kept(median(german.figures) <= 3000)},
		{what: "first figures on a phone, later visit", measured: what(later.figures), bound: "1 s", ok: kept(median(later.figures) <= 1000)},
		{what: "  first picture", measured: what(later.picture)},
		{what: "  the program has reckoned", measured: what(later.reckoned)},
	}, nil
}

// slow makes a tab as slow as a phone.
func slow(p *browsertest.Page) {
	browsertest.Call(p, emulation.SetCPUThrottlingRate, emulation.SetCPUThrottlingRateParams{Rate: slower})
	browsertest.Call(p, network.EmulateNetworkConditionsByRule, network.EmulateNetworkConditionsByRuleParams{
		MatchedNetworkConditions: []*network.Conditions{{Latency: latency, DownloadThroughput: download, UploadThroughput: upload}},
	})
}
