package browsertest

import (
	"bytes"
	"encoding/base64"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/jpeg"
	"image/png"
	"math"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp/kb"
	"github.com/goccy/go-json"

	"steelyard/internal/bridge"
	"steelyard/internal/document"
	"steelyard/internal/geometry"
	"steelyard/internal/mass"
	"steelyard/internal/photograph"
)

// bikePhoto is a picture of a build as it stands, to the right, without perspective:
// dots where something is to be marked, and a patch of green high over its wheels.
type bikePhoto struct {
	bike  *geometry.Bike
	scale float64 // px to the metre
	file  string
}

const (
	photoWide, photoHigh = 1500, 1000
	rearX, axleY         = 400, 700 // px, of the rear axle
	secret               = "47.0502 N 8.3093 E, 3 May"
)

// patch is where the green is: ahead of the rear axle and over it, m.
var patch = mass.Vec{X: 0.1, Z: 0.72}

// at is where a place is in the picture, px.
func (b *bikePhoto) at(p mass.Vec) (x, y float64) {
	return rearX + p.X*b.scale, axleY - (p.Z-b.bike.RearAxle.Z)*b.scale
}

// takePhoto draws the picture, lying on its side as a camera keeps it that was turned,
// which says so beside it, and where and when it was.
func takePhoto(t *testing.T, build document.Build) *bikePhoto {
	t.Helper()
	build.Fork.Sag, build.Rear.Sag = 0, 0
	bike, problems := geometry.Pose(&build)
	if bike == nil {
		t.Fatal(problems)
	}
	b := &bikePhoto{bike: bike, scale: 700 / bike.Wheelbase}
	upright := image.NewRGBA(image.Rect(0, 0, photoWide, photoHigh))
	draw.Draw(upright, upright.Bounds(), image.NewUniform(color.RGBA{150, 160, 170, 255}), image.Point{}, draw.Src)
	dot := func(p mass.Vec, r float64, c color.Color) {
		x0, y0 := b.at(p)
		for y := -r; y <= r; y++ {
			for x := -r; x <= r; x++ {
				if x*x+y*y <= r*r {
					upright.Set(int(math.Round(x0+x)), int(math.Round(y0+y)), c)
				}
			}
		}
	}
	for _, p := range b.marks() {
		dot(p, 6, color.Black)
	}
	high := bike.RearAxle
	high.X, high.Z = patch.X, high.Z+patch.Z
	dot(high, 34, color.RGBA{0, 230, 0, 255})

	lying := image.NewRGBA(image.Rect(0, 0, photoHigh, photoWide))
	for y := range photoHigh {
		for x := range photoWide {
			lying.Set(y, photoWide-1-x, upright.At(x, y))
		}
	}
	var out bytes.Buffer
	if err := jpeg.Encode(&out, lying, &jpeg.Options{Quality: 90}); err != nil {
		t.Fatal(err)
	}
	// Exif 2.32, 4.6: tag 0x112, orientation, 6 is to be turned to the right.
	told := "Exif\x00\x00MM\x00*\x00\x00\x00\x08\x00\x01\x01\x12\x00\x03\x00\x00\x00\x01\x00\x06\x00\x00\x00\x00\x00\x00" + secret
	b.file = out.String()[:2] + "\xff\xe1\x00" + string(rune(len(told)+2)) + told + out.String()[2:]
	return b
}

// marks are the places to be marked, in the order in which they are asked for.
func (b *bikePhoto) marks() []mass.Vec {
	k := b.bike
	return []mass.Vec{k.RearAxle, k.FrontAxle, k.BottomBracket, k.HeadTop, k.HeadBottom, k.SaddleTop, k.RearAxle.Add(mass.Vec{Z: k.RearRadius})}
}

// with is the file of a document whose first build is the one in the picture, all of
// which is marked.
func (b *bikePhoto) with(t *testing.T, d *document.Document) string {
	t.Helper()
	m, err := jpeg.Decode(strings.NewReader(b.file))
	if err != nil {
		t.Fatal(err)
	}
	turned := image.NewRGBA(image.Rect(0, 0, photoWide, photoHigh))
	for y := range photoHigh {
		for x := range photoWide {
			turned.Set(x, y, m.At(y, photoWide-1-x))
		}
	}
	var out bytes.Buffer
	if err := jpeg.Encode(&out, turned, nil); err != nil {
		t.Fatal(err)
	}
	p := photograph.Photograph{ID: "k3", Width: photoWide, Height: photoHigh, Scale: photograph.ByWheelbase, Distance: 5, Within: 3, Picture: base64.StdEncoding.EncodeToString(out.Bytes())}
	for i, v := range b.marks() {
		x, y := b.at(v)
		p.Marks = append(p.Marks, photograph.Mark{Of: photograph.Marked[i], X: x, Y: y})
	}
	d.Builds[0].Photograph = p.ID
	text, err := document.Write(d)
	if err != nil {
		t.Fatal(err)
	}
	list, err := json.Marshal([]photograph.Photograph{p})
	if err != nil {
		t.Fatal(err)
	}
	return functions["fileText"](string(text), string(list))
}

const opensPhoto = "Photograph…"

// keptPhotos are the photographs that the browser keeps, with their pictures.
func (p *Page) keptPhotos() []photograph.Photograph {
	p.tb.Helper()
	p.Eval("dispatchEvent(new Event('pagehide'))") // what waits to be kept is kept now
	var out []photograph.Photograph
	decode(p.tb, []byte(Eval[string](p, inStore("readonly", "getAll(IDBKeyRange.bound('photograph ', 'photograph ~'))")+
		".then((all) => JSON.stringify(all.map(r => ({ ...r.of, picture: btoa(Array.from(r.bytes, c => String.fromCharCode(c)).join('')) }))))")), &out)
	return out
}

// greenAt says how much greener the window is at a place than what is around it is.
func greenAt(t *testing.T, window []byte, x, y, density float64) int {
	t.Helper()
	m, err := png.Decode(bytes.NewReader(window))
	if err != nil {
		t.Fatal(err)
	}
	r, g, b, _ := m.At(int(x*density), int(y*density)).RGBA()
	return int(g>>8) - int(max(r, b)>>8)
}

// behind holds that the photograph lies behind the canvas where what is marked is on
// what is drawn: the green patch is where the drawn axles say.
func (p *Page) behind(t *testing.T, text string, density float64) {
	t.Helper()
	p.Until("the photograph is behind the canvas", "(i => i?.complete && i.naturalWidth > 0 && i.checkVisibility() && i.style.transform.startsWith('matrix'))(document.querySelector('.plate-photograph img'))")
	// No name lies over it.
	p.Eval("(b => b.ariaPressed === 'true' && b.click())([...document.querySelectorAll('#picture .shows button')].find(b => b.textContent.trim() === 'Names'))")
	p.Eval("document.getElementById('plate').scrollIntoView({ block: 'center' })")
	wait(p, 300)
	box := Eval[[4]float64](p, "(() => { const f = document.querySelector('iframe'), r = f.getBoundingClientRect(); return [r.left, r.top, f.clientWidth, f.clientHeight] })()")
	d, problems := document.Open([]byte(text))
	if d == nil {
		t.Fatal(problems)
	}
	drawn, _ := geometry.Pose(&d.Builds[0])
	rx, ry, err := spotIn(text, pageView, "rear-axle", box)
	if err != nil {
		t.Fatal(err)
	}
	fx, fy, err := spotIn(text, pageView, "front-axle", box)
	if err != nil {
		t.Fatal(err)
	}
	scale := math.Hypot(fx-rx, fy-ry) / drawn.FrontAxle.Sub(drawn.RearAxle).Norm()
	x, y := rx+patch.X*scale, ry-patch.Z*scale
	window := p.Screenshot()
	if g := greenAt(t, window, x, y, density); g < 60 {
		t.Errorf("at %.0f, %.0f, where the patch should be, it is no greener than %d", x, y, g)
	}
	around := 34 / (700 / drawn.Wheelbase) * scale * 1.5
	for _, way := range [][2]float64{{1, 0}, {-1, 0}, {0, 1}, {0, -1}} {
		if g := greenAt(t, window, x+way[0]*around, y+way[1]*around, density); g > 30 {
			t.Errorf("beside the patch it is green by %d", g)
		}
	}
}

// A photograph is chosen, marked, lies behind the drawing, gives figures that are taken
// as one step and taken back, stays over a reload, goes into a file that is asked for
// and into no link; what is no picture is refused with a reason.
func TestPhotographBehindTheDrawing(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	text, before := p.saved()
	shot := takePhoto(t, before.Builds[0])

	// What cannot be taken is told, and leaves nothing.
	p.The("button", opensPhoto).Click()
	p.look("photo-begin-desk")
	mustPass(p, "before a picture is chosen", "dialog[open]")
	header := func(w, h string) string {
		return "\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR" + w + h + "\x08\x02\x00\x00\x00"
	}
	for _, c := range []struct{ name, content, why string }{
		{"thin.png", header("\x00\x00\x00\x01", "\x00\x01\x86\xa0"), "1 × 100000"},
		{"vast.png", header("\x00\x00\x7f\xff", "\x00\x00\x7f\xff"), "32767 × 32767"},
		{"broken.jpg", shot.file[:2000], "is broken"},
		{"cut.png", header("\x00\x00\x04\x00", "\x00\x00\x04\x00") + "nothing", "cannot read this picture"},
		{"text.png", "This is no picture.", "no picture in JPEG, PNG or WebP"},
		{"movie.gif", "GIF89a" + strings.Repeat("x", 100), "no picture in JPEG, PNG or WebP"},
		{"huge.jpg", shot.file + strings.Repeat("\x00", 61<<20), "larger than 60 MB"},
	} {
		p.Chooses(c.name, c.content, p.The("button", "Choose a picture…").Click)
		p.Until("it is told of "+c.name, "document.querySelector('dialog.photograph [role=alert]')?.innerText.includes("+quote(c.name)+")")
		if told := Eval[string](p, "document.querySelector('dialog.photograph [role=alert]').innerText"); !strings.Contains(told, c.why) {
			t.Errorf("%s: %q", c.name, told)
		}
	}
	p.look("photo-refused-desk")
	if kept := p.keptPhotos(); len(kept) != 0 {
		t.Errorf("%d photographs are kept of files that were refused", len(kept))
	}
	if Eval[bool](p, "!!document.querySelector('.marking')") {
		t.Error("the build has a photograph that was refused")
	}

	// One that is sound, upright, and without what the camera told.
	p.Chooses("bike.jpg", shot.file, p.The("button", "Choose a picture…").Click)
	p.Until("the picture is there to be marked", "document.querySelector('.marking img')?.naturalWidth === "+fmt.Sprint(photoWide)+" && document.activeElement === document.querySelector('.marking')")
	kept := p.keptPhotos()
	if len(kept) != 1 || kept[0].Width != photoWide || kept[0].Height != photoHigh {
		t.Fatalf("%d photographs are kept", len(kept))
	}
	raw, err := base64.StdEncoding.DecodeString(kept[0].Picture)
	if err != nil || !strings.HasPrefix(string(raw), "\xff\xd8") || strings.Contains(string(raw), "Exif") || strings.Contains(string(raw), secret[:7]) {
		t.Errorf("what is kept is no plain JPEG file: %v, %.40q", err, raw)
	}

	// The rear axle by the pointer, the front axle by the keyboard, the rest by pressing
	// beside it and dragging there.
	area := func(v mass.Vec) (x, y float64) {
		box := Eval[[4]float64](p, "(r => [r.x, r.y, r.width, r.height])((document.querySelector('.marking img').scrollIntoView({ block: 'center' }), document.querySelector('.marking img')).getBoundingClientRect())")
		x, y = shot.at(v)
		return box[0] + x*box[2]/photoWide, box[1] + y*box[3]/photoHigh
	}
	marks := shot.marks()
	p.ClickAt(area(marks[0]))
	p.Until("the next mark is asked for", "document.querySelector('.marks .chosen')?.innerText.includes('Front axle')")
	p.Key(kb.ArrowRight) // it begins in the middle
	step := Eval[float64](p, "Math.max(1, Math.round("+fmt.Sprint(photoWide)+" / document.querySelector('.marking img').clientWidth))")
	wantX, wantY := shot.at(marks[1])
	press := func(key string, px float64) {
		for ; px >= 10*step; px -= 10 * step {
			p.Key(key, kb.ModifierShift)
		}
		for ; px >= step; px -= step {
			p.Key(key)
		}
	}
	press(kb.ArrowRight, wantX-photoWide/2)
	press(kb.ArrowDown, wantY-photoHigh/2)
	p.look("photo-keyboard-desk")
	p.Key(kb.Enter)
	p.Until("the bottom bracket is asked for", "document.querySelector('.marks .chosen')?.innerText.includes('Bottom bracket')")
	for _, v := range marks[2:] {
		x, y := area(v)
		p.Drag(x+30, y+20, x, y)
	}
	// The last mark is moved, moved again and taken away; each is taken back and made
	// again by itself, by key and by button, and the document's own steps are let be.
	spot := func() string {
		return Eval[string](p, "document.querySelector('.marks label:last-of-type .state').innerText.trim()")
	}
	whole := spot()
	x, y := area(marks[6])
	p.Drag(x, y, x+60, y)
	moved := spot()
	p.Drag(x+60, y, x+60, y+40)
	again := spot()
	p.The("button", "Take the mark away").Click()
	p.Until("it is away", "document.querySelector('.marks label:last-of-type .state').innerText.includes('open')")
	undo := func() { p.Key("z", kb.ModifierCtrl) }
	redo := func() { p.Key("z", kb.ModifierCtrl, kb.ModifierShift) }
	for i, c := range []struct {
		do   func()
		want string
	}{
		{undo, again}, {p.The("button", "Undo").Click, moved}, {undo, whole}, {redo, moved},
		{p.The("button", "Redo").Click, again}, {redo, "open"}, {undo, again}, {undo, moved}, {undo, whole},
	} {
		c.do()
		if got := spot(); got != c.want || c.want == "" {
			t.Errorf("step %d: the mark is %q, not %q", i, got, c.want)
		}
	}
	if moved == whole || again == moved {
		t.Errorf("the mark was not moved: %q, %q, %q", whole, moved, again)
	}
	if p.keptDocument().Builds[0].Photograph == "" {
		t.Error("the document's own step was taken back")
	}
	p.look("photo-marked-desk")
	mustPass(p, "marked", "dialog[open]")
	for i, m := range p.keptPhotos()[0].Marks {
		if x, y := shot.at(marks[i]); math.Hypot(m.X-x, m.Y-y) > 2*step+1 {
			t.Errorf("%s is marked at %.1f, %.1f, not at %.1f, %.1f", m.Of, m.X, m.Y, x, y)
		}
	}

	// What is read is what the bike has, and the check of the scale agrees: the drawing
	// is of this bike. The figures are taken as one step.
	figures := Eval[[]string](p, "[...document.querySelectorAll('.photograph .read tbody tr')].map(r => r.innerText.replace(/\\s+/g, ' '))")
	if len(figures) != 11 || !strings.HasPrefix(figures[0], "Stack") || !strings.Contains(figures[0], "±") {
		t.Errorf("read are %q", figures)
	}
	if said := p.says(".photograph .read"); !strings.Contains(said, "rear wheel agree") {
		t.Errorf("the scale is not checked: %q", said)
	}
	if n := Eval[int](p, "document.querySelectorAll('.photograph .read input:checked').length"); n > 2 {
		t.Errorf("%d figures of the bike itself are said to differ: %q", n, figures)
	}
	p.Eval("document.querySelectorAll('.photograph .read input').forEach(i => i.checked && i.click())")
	for _, name := range []string{"Stack", "Reach", "Chainstay length"} {
		p.The("checkbox", name).Click()
	}
	p.Like("button", "Take 3 figures").Click()
	p.Until("they are taken", "document.querySelector('.notes')?.innerText.includes('3 figures taken')")
	taken := p.keptDocument().Builds[0].Frame
	want := before.Builds[0].Frame
	for name, of := range map[string][2]float64{"stack": {taken.Stack, want.Stack}, "reach": {taken.Reach, want.Reach}, "chainstay": {taken.Chainstay, want.Chainstay}} {
		// Without perspective a depth is taken for one that is not there: 7 cm in 5 m.
		if math.Abs(of[0]-of[1]) > 20 {
			t.Errorf("%s is %g, was %g", name, of[0], of[1])
		}
	}
	if taken.Stack == want.Stack || taken.HeadAngle != want.HeadAngle || taken.BBDrop != want.BBDrop {
		t.Errorf("%+v was taken, not ticked", taken)
	}
	p.The("button", "Done").Click()
	p.Until("it is closed", shut)
	p.Key("z", kb.ModifierCtrl)
	p.Until("they are taken back", "document.querySelector('#f-gearbox--frame_stack_mm')?.value === "+quote(fmt.Sprint(want.Stack))+" || document.body.innerText.includes('Undone')")
	back := p.keptDocument()
	if back.Builds[0].Frame != want || back.Builds[0].Photograph == "" {
		t.Errorf("after one step back: %+v", back.Builds[0].Frame)
	}

	// It lies behind the drawing, also after a reload, and only behind its own build.
	p.behind(t, text, 1)
	p.look("photo-behind-desk")
	p.Reload()
	p.started()
	p.behind(t, text, 1)
	p.The("button", "Build B").Click()
	p.Until("the other build has none", "!document.querySelector('.plate-photograph img')?.checkVisibility()")
	p.The("button", "Build A").Click()
	p.Until("its own build has it again", "document.querySelector('.plate-photograph img')?.checkVisibility()")
	fits := Eval[string](p, "document.querySelector('.plate-photograph img').style.transform")
	p.The("button", "Nearer").Click()
	p.Until("it follows the picture", "document.querySelector('.plate-photograph img').style.transform !== "+quote(fits))
	p.The("button", "Fit").Click()
	p.Until("it follows the picture back", "document.querySelector('.plate-photograph img').style.transform === "+quote(fits))
	p.The("button", "Rear").Click()
	p.Until("from behind there is none", "!document.querySelector('.plate-photograph img')?.checkVisibility()")
	p.The("button", "Side").Click()

	// A link has nothing of it; a file has it when that is asked for.
	p.command("Share link").Click()
	p.Until("the link is there", "document.querySelector('dialog.share input.link')?.value")
	link := Eval[string](p, "document.querySelector('dialog.share input.link').value")
	var linked struct{ Document document.Document }
	session := new(bridge.Session)
	decode(t, []byte(session.Functions()["decodeLink"](link[strings.Index(link, "#"):])), &linked)
	if len(linked.Document.Builds) == 0 || linked.Document.Builds[0].Photograph != "" || len(link) > 60_000 {
		t.Errorf("a link of %d letters has the photograph %q", len(link), linked.Document.Builds[0].Photograph)
	}
	p.Key(kb.Escape)
	if plain, _ := p.saved(); strings.Contains(plain, "photographs") || len(plain) > 300_000 {
		t.Errorf("a file of %d bytes has the photograph unasked", len(plain))
	}
	_, file := p.Saves(p.The("button", "Save it with the photograph").Click)
	if !strings.Contains(file, `"photographs"`) || strings.Contains(file, "Exif") {
		t.Error("the file has no photograph")
	}

	// In German on dark paper; taken away, it can be had back, and is forgotten at last.
	dark := Desk
	dark.Dark = true
	p.Look(dark)
	p.speak("de")
	p.look("photo-behind-dark")
	p.The("button", "Foto…").Click()
	p.Until("the picture is there", "document.querySelector('.marking img')?.naturalWidth > 0")
	p.look("photo-dark")
	mustPass(p, "in the dark", "dialog[open]")
	p.The("button", "Bild wegnehmen").Click()
	p.Until("it is away", "!document.querySelector('.marking') && document.querySelector('.notes')?.innerText.includes('weggenommen')")
	p.The("button", "Rückgängig").Click()
	p.Until("it is back", "document.querySelector('.marking img')?.naturalWidth > 0")
	p.The("button", "Bild wegnehmen").Click()
	p.Until("it is away again", "!document.querySelector('.marking')")
	if len(p.keptPhotos()) != 1 || p.keptDocument().Builds[0].Photograph != "" {
		t.Error("what was taken away cannot be had back, or is still there")
	}
	p.speak("en")
	p.Look(FinePhone)
	p.Reload()
	p.started()
	p.until("it is forgotten", func() bool { return len(p.keptPhotos()) == 0 })

	// So this browser is another one now: somebody else opens the file, on a phone.
	p.Chooses("with.json", file, p.command("Open…").Click)
	p.behind(t, text, FinePhone.Density)
	p.look("photo-behind-phone")
	if kept := p.keptPhotos(); len(kept) != 1 || len(kept[0].Marks) != 7 {
		t.Errorf("%d photographs came with the file", len(kept))
	}
	p.The("button", "How it is drawn").Click()
	p.The("button", opensPhoto).Click()
	p.Until("the picture is there", "document.querySelector('.marking img')?.naturalWidth > 0")
	p.look("photo-phone")
	mustPass(p, "on a phone", "dialog[open]")
	if wide := Eval[float64](p, "document.querySelector('dialog.photograph').scrollWidth - document.querySelector('dialog.photograph').clientWidth"); wide > 0 {
		t.Errorf("the dialog is %v px too wide", wide)
	}
	// A finger that stays beside a mark moves it by as much as it moves.
	was := p.keptPhotos()[0].Marks
	p.Eval("document.querySelector('.marking').scrollIntoView({ block: 'start' })")
	box := Eval[[4]float64](p, "(r => [r.x, r.y, r.width, r.height])(document.querySelector('.marking img').getBoundingClientRect())")
	x, y = box[0]+box[2]*0.5, box[1]+box[3]*0.85
	p.Touch(input.DispatchTouchEventTypeTouchStart, [2]float64{x, y})
	p.Touch(input.DispatchTouchEventTypeTouchMove, [2]float64{x + 10, y - 6})
	p.look("photo-finger-phone")
	p.Touch(input.DispatchTouchEventTypeTouchMove, [2]float64{x + 20, y - 12})
	p.Touch(input.DispatchTouchEventTypeTouchEnd)
	px := photoWide / box[2]
	for _, m := range p.keptPhotos()[0].Marks {
		for _, w := range was {
			if w.Of == m.Of && m.Of == "rear_axle" && (math.Abs(m.X-w.X-20*px) > 2*px || math.Abs(m.Y-w.Y+12*px) > 2*px) {
				t.Errorf("the finger moved the mark from %.0f, %.0f to %.0f, %.0f", w.X, w.Y, m.X, m.Y)
			}
		}
	}
	p.Eval("document.querySelector('.photograph .read').scrollIntoView({ block: 'start' })")
	p.look("photo-figures-phone")
}
