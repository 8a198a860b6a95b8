package browsertest

import (
	"math"
	"strings"
	"testing"

	"steelyard/internal/document"
)

// noCanvas is a browser without WebGL: an old graphics driver, a virtual
// machine, a private mode that forbids it.
const noCanvas = `if (location.pathname.endsWith('frame.html')) {
	const get = HTMLCanvasElement.prototype.getContext;
	HTMLCanvasElement.prototype.getContext = function (kind, ...rest) { return kind.startsWith('webgl') ? null : get.call(this, kind, ...rest) };
}`

// Without a canvas the picture is there all the same, as SVG over the frame, and
// can be worked on; also after the window has changed its size, as a phone's does
// whenever it is turned.
func TestWithoutACanvas(t *testing.T) {
	t.Parallel()
	for name, look := range map[string]Look{"desk": Desk, "phone": FinePhone} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			p := browser.Open(t, server.URL+"icon.svg", look)
			p.Preload(noCanvas)
			p.Navigate(server.URL)
			p.Until("the frame says that there is no canvas", inFrame+".steelyardFrame?.still")
			p.kept()
			drawn := func() string { return Eval[string](p, "document.querySelector('#plate svg')?.outerHTML ?? ''") }
			p.until("there is a picture", func() bool { return strings.Count(drawn(), "<path") > 20 })
			p.Until("it fills its place", `(() => {
				const still = document.querySelector('#plate svg').getBoundingClientRect(), plate = document.querySelector('#plate').getBoundingClientRect();
				return Math.abs(still.width - plate.width) < 1 && Math.abs(still.height - plate.height) < 1;
			})()`)
			changes := func(what string, act func()) {
				t.Helper()
				before := drawn()
				act()
				p.until("the picture follows "+what, func() bool { return drawn() != before })
			}

			// On a phone the further figures and the picture's tools come with a press.
			p.Eval("document.querySelectorAll('details.allfigures').forEach(d => { d.open = true }); document.querySelectorAll('#picture .opens[aria-expanded=false]').forEach(b => b.checkVisibility() && b.click())")
			p.until("the place of the centre is told", func() bool { return len(p.row("Ahead of rear axle")) > 0 })
			text, _ := p.saved()
			x, y := p.spot(text, pageView, "saddle")
			centre := p.row("Ahead of rear axle")[0]
			changes("a drag", func() { p.Drag(x, y, x-60, y+15) })
			p.until("the centre of mass moves back", func() bool { return p.row("Ahead of rear axle")[0] < centre })
			p.Until("the part is told", `document.querySelector('#picture').innerText.includes('Saddle')`)
			changes("the camera", p.The("button", "Nearer").Click)
			changes("the view", p.The("button", "Rear").Click)
			changes("the view", p.The("button", "Side").Click)
			changes("what is shown", p.The("button", "Steering").Click)
			p.until("the wheel flop is told", func() bool { return strings.Contains(drawn(), "48&nbsp;mm") }) // the demo's flop
			changes("what is shown", p.The("button", "Steering").Click)

			total := p.total()
			changes("a mass", func() { p.mass(gearbox).Fill("4250") }) // by 2000 g
			p.until("the total follows", func() bool { return math.Abs(p.total()-total-2) < 0.011 })
			turned := look
			turned.Width, turned.Height = look.Height, look.Width
			changes("the size", func() { p.Look(turned) })
			p.Look(look)
			wait(p, 500) // for what the canvas's program might do about it
			changes("a mass", func() { p.mass(gearbox).Fill("2250") })
			p.until("the total follows still", func() bool { return math.Abs(p.total()-total) < 0.011 })
			if state := Eval[string](p, inFrame+".steelyardFrame.state"); state != "ready" {
				t.Errorf("the program is %s", state)
			}
			// A photograph shows through the drawing.
			p.The("button", "Fit").Click()
			d, _ := document.Open([]byte(demo()))
			p.Chooses("with.json", takePhoto(t, d.Builds[0]).with(t, d), p.command("Open…").Click)
			p.behind(t, demo(), max(look.Density, 1))
			for _, v := range audit(p) {
				t.Errorf("%s (%s): %v", v.ID, v.Help, v.Nodes)
			}
		})
	}
}

// A program that dies tells its last words, not where in the middle of its
// stack they end.
func TestADeadProgramTellsWhy(t *testing.T) {
	t.Parallel()
	p := browser.Open(t, server.URL+"icon.svg", Look{Width: 640, Height: 400})
	p.Preload(keepGo)
	p.Navigate(server.URL + "frame.html")
	p.Until("it runs", "window.steelyardFrame?.state == 'ready'")
	Eval[bool](p, `(fs.writeSync(2, new TextEncoder().encode("\npanic: out of ideas\n\ngoroutine 1 [running]:\n" + "main.main()\n\tmain.go:1\n".repeat(1500))),
		theGo.exited = true, theGo._resolveExitPromise(), true)`)
	p.Until("it has stopped", "steelyardFrame.state == 'stopped'")
	if why := Eval[string](p, "steelyardFrame.problem"); !strings.HasPrefix(why, "panic: out of ideas\n") || len(why) > 2000 {
		t.Errorf("%d letters: %.200s", len(why), why)
	}
}
