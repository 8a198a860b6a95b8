package main

import (
	"context"
	"errors"
	"fmt"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/performance"

	"steelyard/internal/browsertest"
)

const frame = "document.querySelector('iframe').contentWindow"

// rest counts the frames of two seconds in which nothing happens, and times one
// in which something does.
func rest(ctx context.Context, page *site) ([]line, error) {
	url, err := page.url()
	if err != nil {
		return nil, err
	}
	var idle int
	const frames = 100
	var each time.Duration
	err = inTabs(ctx, func(t *tab) {
		p := t.open(url, "", "")
		p.Until("the picture is painted", frame+"?.steelyardFrame?.state === 'painted'")
		browsertest.Eval[bool](p, "new Promise(done => setTimeout(() => done(true), 1500))")
		idle = browsertest.Eval[int](p, `(async () => {
			const before = `+frame+`.steelyard.frames();
			await new Promise(done => setTimeout(done, 2000));
			return `+frame+`.steelyard.frames() - before;
		})()`)
		// The processor time of the thread that the page runs in: without a graphics
		// card the picture is drawn on the same two cores.
		browsertest.Call(p, performance.Enable, performance.EnableParams{TimeDomain: performance.EnableTimeDomainThreadTicks})
		draw := func(n int) time.Duration {
			before := scripts(p)
			browsertest.Eval[bool](p, fmt.Sprintf(`(async () => {
				const f = %s;
				for (let i = 0; i < %d; i++) {
					f.steelyard.camera(i %% 2 ? 'in' : 'out');
					const n = f.steelyard.frames();
					while (f.steelyard.frames() === n) await new Promise(done => setTimeout(done, 10));
				}
				return true;
			})()`, frame, n))
			return scripts(p) - before
		}
		draw(3 * frames) // the compiler of WebAssembly has had its second go by then
		each = draw(frames) / frames
	})
	if err != nil {
		return nil, err
	}
	return []line{
		{what: "frames drawn in two idle seconds", measured: fmt.Sprint(idle), bound: "0", ok: kept(idle == 0)},
		{what: "a frame of the demo: layout, triangles, letters", measured: ms(each), reference: "of the page's thread", bound: "5 ms at most", ok: kept(each <= 5*time.Millisecond)},
	}, nil
}

// scripts is how long the page's scripts have run, in the time that performance was
// enabled with.
func scripts(p *browsertest.Page) time.Duration {
	for _, m := range browsertest.Call(p, performance.GetMetrics, cdp.Empty{}).Metrics {
		if m.Name == "ScriptDuration" {
			return time.Duration(m.Value * float64(time.Second))
		}
	}
	panic(failure{errors.New("the browser does not tell how long scripts run")})
}

func size(pageSite, emptySite *site) ([]line, error) {
	for _, s := range []*site{pageSite, emptySite} {
		if _, err := s.url(); err != nil {
			return nil, err
		}
	}
	page, empty := pageSite.sizes, emptySite.sizes
	ratio := float64(page.ProgramGzip) / float64(empty.ProgramGzip)
	return []line{
		{"program, gzipped", fmt.Sprintf("%.3f MB", float64(page.ProgramGzip)/1e6), fmt.Sprintf("%.3f MB, empty ebiten program", float64(empty.ProgramGzip)/1e6), ratio, "1.80 at most", kept(ratio <= 1.80)},
		{what: "  inflated", measured: fmt.Sprintf("%.1f MB", float64(page.Program)/1e6), reference: fmt.Sprintf("%.1f MB", float64(empty.Program)/1e6), ratio: float64(page.Program) / float64(empty.Program)},
		{what: "  the whole site", measured: fmt.Sprintf("%.2f MB", float64(page.Site)/1e6)},
	}, nil
}

// start times the page's first totals and first picture, and the first frame of
// the empty program's page; in turn, each time in a tab that has kept nothing.
func start(ctx context.Context, page, empty *site) ([]line, error) {
	pageURL, err := page.url()
	if err != nil {
		return nil, err
	}
	emptyURL, err := empty.url()
	if err != nil {
		return nil, err
	}
	// Both watch from the page's own beginning.
	const watch = `if (window === window.parent) {
		window.times = {};
		const note = what => { window.times[what] ??= performance.now() };
		addEventListener('message', e => { if (e.data?.steelyardFrame) note(e.data.steelyardFrame.state) });
		new MutationObserver(() => { if (document.querySelector('#balance .num')) note('totals') }).observe(document, { childList: true, subtree: true });
	}`
	var totals, picture, ready, first []float64
	const rounds = 7
	err = inTabs(ctx, func(t *tab) {
		for i := range rounds + 1 {
			p := t.open(emptyURL, "", watch)
			p.Until("the empty program has drawn", "window.times.painted > 0")
			if i > 0 { // the first round warms the browser up
				first = append(first, browsertest.Eval[float64](p, "times.painted"))
			}
			t.close()
			p = t.open(pageURL, "", watch)
			p.Until("the page has totals and picture", "window.times.totals > 0 && window.times.painted > 0")
			if i > 0 {
				at := browsertest.Eval[[]float64](p, "[times.totals, times.painted, times.ready]")
				totals, picture, ready = append(totals, at[0]), append(picture, at[1]), append(ready, at[2])
			}
			t.close()
		}
	})
	if err != nil {
		return nil, err
	}
	what := func(v []float64) string { return ms(time.Duration(median(v) * float64(time.Millisecond))) }
	ratio := median(totals) / median(first)
	return []line{
		{"time to the first totals", what(totals), what(first) + ", first frame of the empty program", ratio, "1.3 at most", kept(ratio <= 1.3)},
		{what: "  until the program runs", measured: what(ready), reference: what(first), ratio: median(ready) / median(first)},
		{what: "  to the first picture", measured: what(picture), reference: what(first), ratio: median(picture) / median(first)},
	}, nil
}
