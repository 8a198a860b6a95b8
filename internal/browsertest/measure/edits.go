package main

import (
	"context"
	"fmt"
	"slices"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/heapprofiler"
	"github.com/chromedp/cdproto/runtime"

	"steelyard/internal/browsertest"
)

// watchFrame runs before the program does in its frame: it keeps the program's
// memory at hand, and tells the page when a frame is done.
const watchFrame = `if (location.pathname.endsWith('frame.html')) {
	const start = WebAssembly.instantiateStreaming.bind(WebAssembly);
	WebAssembly.instantiateStreaming = async (...given) => {
		const made = await start(...given);
		window.programMemory = made.instance.exports.mem;
		return made;
	};
	const next = window.requestAnimationFrame.bind(window);
	window.requestAnimationFrame = f => next(t => { f(t); parent.frameDone?.() });
}`

// typeMasses types masses into a part of the list, one after the other, and
// returns how long each took to show in the totals and on the canvas, in ms: an
// edit in the document, evaluated, told and laid out; then painted.
const typeMasses = `async n => {
	const frame = document.querySelector('iframe').contentWindow;
	const input = document.querySelector('#parts input[id*="mass_g"]');
	const shown = () => document.querySelector('#balance .num').textContent;
	const edit = mass => {
		const was = shown(), frames = frame.steelyard.frames(), from = performance.now();
		const figures = new Promise(done => {
			const watch = new MutationObserver(() => {
				if (shown() === was) return;
				watch.disconnect();
				document.body.offsetHeight; // laid out
				done(performance.now() - from);
			});
			watch.observe(document.querySelector('#balance'), { childList: true, characterData: true, subtree: true });
		});
		const picture = new Promise(done => {
			window.frameDone = () => { if (frame.steelyard.frames() > frames) done(performance.now() - from) };
		});
		input.value = String(mass);
		input.dispatchEvent(new InputEvent('input', { bubbles: true }));
		input.dispatchEvent(new FocusEvent('blur'));
		return Promise.all([figures, picture]);
	};
	const took = [];
	for (let i = 0; i < n; i++) {
		window.typed = ((window.typed ?? 0) + 1) % 7; // never the mass that is there already
		took.push(await edit(1000 + 100 * window.typed));
		await new Promise(done => setTimeout(done)); // nobody types faster
	}
	return took;
}`

// memory is what the page and the program hold, after collecting what they do
// not, in bytes. The program's never shrinks.
type memory struct{ page, program float64 }

func hold(p *browsertest.Page) memory {
	browsertest.Call(p, heapprofiler.CollectGarbage, cdp.Empty{})
	usage := browsertest.Call(p, runtime.GetHeapUsage, cdp.Empty{})
	return memory{
		page:    usage.UsedSize,
		program: browsertest.Eval[float64](p, frame+".programMemory.buffer.byteLength"),
	}
}

// edits times edits of a mass in the demo, as somebody types them, and weighs
// what a thousand of them leave behind.
func edits(ctx context.Context, page *site) (lines []line, err error) {
	url, err := page.url()
	if err != nil {
		return nil, err
	}
	const (
		// By then the list of steps to undo is full, and the compilers of the
		// browser have had their second go.
		warm  = 600
		timed = 200
		many  = 1000
	)
	err = inTabs(ctx, func(t *tab) {
		p := t.open(url, "", watchFrame)
		p.Until("the picture is painted", frame+"?.steelyardFrame?.state === 'painted'")
		p.Until("the parts are listed", `document.querySelector('#parts input[id*="mass_g"]')`)
		kind := func(n int) (figures, picture []float64) {
			for left := n; left > 0; left -= 100 { // a step has only so much patience
				for _, took := range browsertest.Eval[[][2]float64](p, fmt.Sprintf("(%s)(%d)", typeMasses, min(left, 100))) {
					figures, picture = append(figures, took[0]), append(picture, took[1])
				}
			}
			return figures, picture
		}
		kind(warm)
		before := hold(p)
		figures, picture := kind(timed)
		kind(many - timed)
		after := hold(p)
		lines = append(lines,
			line{what: "from an edit to the figures, half of them within", measured: at(figures, 0.5), reference: "the demo, three builds with a load"},
			line{what: "  nineteen of twenty within", measured: at(figures, 0.95)},
			line{what: "from an edit to the picture, half of them within", measured: at(picture, 0.5), reference: "the same; WebGL by software"},
			line{what: "  nineteen of twenty within", measured: at(picture, 0.95)},
			grown("memory of the program after 1000 edits", before.program, after.program),
			grown("memory of the page's scripts after 1000 edits", before.page, after.page),
		)
	})
	return lines, err
}

// grown sets memory against what it was; a twentieth more is no growth but the
// state of the collectors.
func grown(what string, before, after float64) line {
	return line{what, fmt.Sprintf("%.1f MB", after/1e6), fmt.Sprintf("%.1f MB before", before/1e6), after / before, "1.05 at most", kept(after <= 1.05*before)}
}

// at is the value that a share of them does not exceed.
func at(took []float64, share float64) string {
	sorted := slices.Sorted(slices.Values(took))
	return ms(time.Duration(sorted[int(share*float64(len(sorted)-1))] * float64(time.Millisecond)))
}
