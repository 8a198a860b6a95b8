package browsertest

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"steelyard/internal/bridge"
	"steelyard/internal/report"
	"steelyard/internal/scene"
	"steelyard/internal/site/static"
)

// openFrame opens the canvas's document by itself, without the page.
func openFrame(t *testing.T, look Look) *Page {
	t.Helper()
	p := browser.Open(t, server.URL+"frame.html", look)
	p.Until("the program is there", "window.steelyardFrame?.state == 'ready'")
	show(p, firstView)
	p.Until("the first picture is painted", "window.steelyardFrame?.state == 'painted'")
	return p
}

// functions are those of the bridge, called natively.
var functions = new(bridge.Session).Functions()

func demo() string { return functions["demo"]() }

const firstView = `{"build":"gearbox","side":"side","labels":true}`

func TestEvaluateInTheBrowserIsEvaluateHere(t *testing.T) {
	t.Parallel()
	p := openFrame(t, Look{Width: 640, Height: 400})
	for _, name := range []string{"demo", "blank", "catalogue", "words", "stations", "kinds"} {
		if got, want := Eval[string](p, "steelyard."+name+"()"), functions[name](); got != want {
			t.Errorf("%s differs in the browser: %.80q, want %.80q", name, got, want)
		}
	}
	// The site's program has been told its version, this one has not.
	version := Eval[string](p, "JSON.parse(steelyard.evaluate(steelyard.demo())).program")
	if !regexp.MustCompile(`^\d{4}-\d\d-\d\d\.[0-9a-f]{8,}\+?$`).MatchString(version) {
		t.Errorf("the program's version is %q", version)
	}
	ours, theirs := `"program":`+quote(report.Program()), `"program":`+quote(version)
	for name, document := range map[string]string{"demo": demo(), "blank": functions["blank"](), "nothing": "", "half": `{"format":"steelyard"`} {
		got := Eval[string](p, "steelyard.evaluate("+quote(document)+")")
		if want := strings.Replace(functions["evaluate"](document), ours, theirs, 1); got != want {
			i := 0
			for i < min(len(got), len(want)) && got[i] == want[i] {
				i++
			}
			t.Errorf("the report of %s differs from byte %d on: %.120q, want %.120q", name, i, got[i:], want[i:])
		}
	}
}

// Whatever a function is given, it answers, and the next call finds the program
// as it was.
func TestHostileTextLeavesTheProgramAlive(t *testing.T) {
	t.Parallel()
	p := openFrame(t, Look{Width: 640, Height: 400})
	want := Eval[string](p, "steelyard.evaluate(steelyard.demo())")
	texts := []string{
		`""`, `"{"`, `"null"`, `"[]"`, `"\u0000"`, `"\ud800"`, `"NaN"`, `"1e999"`,
		`"[".repeat(100000)`, `'{"a":'.repeat(100000)`, `"[".repeat(9000) + "]".repeat(9000)`,
		`'{"format":"steelyard","version":1,"builds":' + '['.repeat(5000) + ']'.repeat(5000) + '}'`,
		`"x".repeat(1e6)`, `steelyard.demo().replaceAll("mass_g\":", "mass_g\":-")`, `steelyard.demo().replaceAll(/_mm": *[0-9.]+/g, '_mm":1e308')`,
		`steelyard.demo().replaceAll(/"name": *"[^"]*"/g, '"name":' + JSON.stringify("<b>&".repeat(3000)))`,
		`undefined`, `null`, `0`, `({})`,
	}
	for _, name := range Eval[[]string](p, "Object.keys(steelyard).filter(k => k !== 'frames')") {
		for _, text := range texts {
			call := fmt.Sprintf("typeof steelyard[%q](%s, %s)", name, text, text)
			if got := Eval[string](p, call); got != "string" {
				t.Errorf("%s of %s gave %s", name, text, got)
			}
		}
	}
	if got := Eval[string](p, "steelyard.evaluate(steelyard.demo())"); got != want {
		t.Errorf("afterwards the demo's report differs")
	}
	if state := Eval[string](p, "steelyardFrame.state + steelyardFrame.problem"); state != "painted" {
		t.Errorf("the frame is %s", state)
	}
}

func frames(p *Page) int { p.tb.Helper(); return Eval[int](p, "steelyard.frames()") }

const pause = "new Promise(done => setTimeout(() => done(true), %d))"

func wait(p *Page, ms int) { p.tb.Helper(); Eval[bool](p, fmt.Sprintf(pause, ms)) }

// settled waits until no more frames come.
func settled(p *Page) int {
	p.tb.Helper()
	last := -1
	p.until("the picture is at rest", func() bool {
		now := frames(p)
		same := now == last
		last = now
		wait(p, 150)
		return same
	})
	return last
}

func show(p *Page, view string) {
	p.tb.Helper()
	if answer := Eval[string](p, "steelyard.show(steelyard.demo(), "+quote(view)+")"); answer != "" {
		p.tb.Fatal(answer)
	}
}

func TestNothingIsDrawnWhileNothingChanges(t *testing.T) {
	t.Parallel()
	p := openFrame(t, Look{Width: 640, Height: 400})
	show(p, firstView)
	before := settled(p)
	wait(p, 2000)
	if now := frames(p); now != before {
		t.Errorf("%d frames in two idle seconds", now-before)
	}
	// The mouse over empty paper changes nothing either.
	p.Hover(3, 3)
	p.Hover(5, 4)
	settled(p)
	before = frames(p)
	p.Hover(7, 5)
	p.Hover(9, 6)
	wait(p, 300)
	if now := frames(p); now != before {
		t.Errorf("%d frames for a mouse over empty paper", now-before)
	}
}

func TestOneFrameForOneChange(t *testing.T) {
	t.Parallel()
	p := openFrame(t, Look{Width: 640, Height: 400})
	for i := range 5 {
		before := settled(p)
		show(p, strings.Replace(firstView, "{", `{"dark":`+strconv.FormatBool(i%2 == 0)+`,`, 1))
		if now := settled(p); now != before+1 {
			t.Errorf("%d frames for one change", now-before)
		}
	}
	// Many changes before the next frame are one picture.
	before := settled(p)
	Eval[bool](p, "(() => { for (let i = 0; i < 20; i++) steelyard.camera('in'); return true })()")
	if now := settled(p); now != before+1 {
		t.Errorf("%d frames for twenty changes at once", now-before)
	}
}

func picture(t *testing.T, data []byte) image.Image {
	t.Helper()
	img, err := png.Decode(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	return img
}

// count counts the pixels of a colour.
func count(img image.Image, k color.NRGBA) int {
	n := 0
	b := img.Bounds()
	for y := b.Min.Y; y < b.Max.Y; y++ {
		for x := b.Min.X; x < b.Max.X; x++ {
			if color.NRGBAModel.Convert(img.At(x, y)) == k {
				n++
			}
		}
	}
	return n
}

func TestTheCanvasShowsTheScene(t *testing.T) {
	t.Parallel()
	for _, density := range []float64{1, 1.5, 3} {
		p := openFrame(t, Look{Width: 640, Height: 400, Density: density})
		for _, dark := range []bool{false, true} {
			palette := scene.Light
			if dark {
				palette = scene.Dark
			}
			before := settled(p)
			show(p, fmt.Sprintf(`{"build":"gearbox","side":"side","labels":true,"dark":%v}`, dark))
			p.until("it is drawn", func() bool { return frames(p) > before })
			settled(p)
			img := picture(t, p.Screenshot())
			all := img.Bounds().Dx() * img.Bounds().Dy()
			// Paper, the bodies of tubes and tyres, both sorts of markers, and words.
			for ink, share := range map[scene.Ink]float64{
				scene.Paper: 0.5, scene.Tyre: 0.02, scene.Tube: 0.003, scene.Sprung: 0.001, scene.Unsprung: 0.0005, scene.Text: 0.0005,
			} {
				if n := count(img, palette.Of(ink)); float64(n) < share*float64(all) {
					t.Errorf("density %v, dark %v: %d of %d pixels have the colour of %v", density, dark, n, all, ink)
				}
			}
		}
		// A canvas pixel for each of the screen's.
		if w := Eval[float64](p, "document.querySelector('canvas').width"); w != 640*density {
			t.Errorf("density %v: the canvas is %v pixels wide", density, w)
		}
	}
}

func TestTheCanvasFollowsTheWindow(t *testing.T) {
	t.Parallel()
	p := openFrame(t, Look{Width: 640, Height: 400})
	show(p, firstView)
	settled(p)
	size := "(c => c.width + 'x' + c.height)(document.querySelector('canvas'))"
	for _, look := range []Look{
		{Width: 300, Height: 500}, {Width: 300, Height: 500, Density: 2}, {Width: 640, Height: 400, Density: 1.25}, {Width: 640, Height: 400},
	} {
		p.Look(look)
		density := max(look.Density, 1)
		want := fmt.Sprintf("%vx%v", float64(look.Width)*density, float64(look.Height)*density)
		p.Until("the canvas has "+want+" pixels", size+" === "+quote(want))
		settled(p)
		img := picture(t, p.Screenshot())
		if n := count(img, scene.Light.Of(scene.Tyre)); n < 500 {
			t.Errorf("at %+v there is no tyre in the picture", look)
		}
	}
}

// A lost graphics context brings the frame back by itself.
func TestALostContextComesBack(t *testing.T) {
	t.Parallel()
	p := openFrame(t, Look{Width: 640, Height: 400})
	Eval[bool](p, "(window.old = true)")
	Eval[bool](p, "(document.querySelector('canvas').getContext('webgl2').getExtension('WEBGL_lose_context').loseContext(), true)")
	p.Until("the frame has loaded again", "!window.old && window.steelyardFrame?.state == 'ready'")
	show(p, firstView)
	p.Until("it is painted", "window.steelyardFrame?.state == 'painted'")
	settled(p)
	if n := count(picture(t, p.Screenshot()), scene.Light.Of(scene.Tyre)); n < 500 {
		t.Errorf("the picture is not back")
	}
}

// An old browser, a missing file and a dead program are told, not left blank.
func TestTheFrameTellsWhyItCannotStart(t *testing.T) {
	t.Parallel()
	for name, c := range map[string]struct{ script, want string }{
		"missing":  {"const f = window.fetch; window.fetch = () => Promise.resolve(new Response('', { status: 404 }))", "404"},
		"offline":  {"window.fetch = () => Promise.reject(new TypeError('no network'))", "no network"},
		"broken":   {"window.fetch = () => Promise.resolve(new Response('no program'))", "WebAssembly"},
		"cut":      {"const f = window.fetch; window.fetch = async (u) => new Response((await (await f(u)).arrayBuffer()).slice(0, 100000))", ""},
		"too old":  {"delete window.DecompressionStream", "too old"},
		"inflated": {"const f = window.fetch; window.fetch = async (u) => new Response((await f(u)).body.pipeThrough(new DecompressionStream('gzip')))", "-"},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			p := browser.Open(t, server.URL+"icon.svg", Look{Width: 640, Height: 400})
			p.Preload(c.script)
			p.Navigate(server.URL + "frame.html")
			if c.want == "-" { // a host that inflated it already: no failure at all
				p.Until("it runs", "window.steelyardFrame?.state == 'ready'")
				return
			}
			p.Until("it has failed", "window.steelyardFrame?.state == 'failed'")
			if why := Eval[string](p, "steelyardFrame.problem"); why == "" || !strings.Contains(why, c.want) {
				t.Errorf("it says %q, want %q in it", why, c.want)
			}
		})
	}
}

// The program loads nearly as fast as it could: see make bench for times.
func TestTheProgramIsSmall(t *testing.T) {
	t.Parallel()
	root, err := static.Root(".")
	if err != nil {
		t.Fatal(err)
	}
	empty, err := static.WriteEmpty(t.Context(), root, filepath.Join(t.TempDir(), "empty"))
	if err != nil {
		t.Fatal(err)
	}
	if ratio := float64(sizes.ProgramGzip) / float64(empty.ProgramGzip); ratio > 1.80 {
		t.Errorf("gzipped it has %d bytes, %.3f times the %d of an empty ebiten program; 1.80 at most", sizes.ProgramGzip, ratio, empty.ProgramGzip)
	}
}
