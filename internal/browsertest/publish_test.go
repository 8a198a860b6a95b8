package browsertest

import (
	"encoding/base64"
	"encoding/csv"
	"encoding/xml"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"io"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	chromium "github.com/chromedp/cdproto/browser"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/goccy/go-json"
	"golang.org/x/image/font/sfnt"

	"steelyard/internal/partslist"
	"steelyard/internal/scene"
)

// publishing opens the place where pictures and tables are made, by keyboard.
func (p *Page) publishing() {
	p.tb.Helper()
	p.command("Publish…").Focus()
	p.Key(kb.Enter)
	p.proof("")
}

const proofed = "document.querySelector('dialog.publish img')"

// proof waits until the preview is another one than before, and returns its
// address.
func (p *Page) proof(before string) string {
	p.tb.Helper()
	p.Until("the preview is drawn", proofed+"?.complete && "+proofed+".naturalWidth > 0 && "+proofed+".src != "+quote(before))
	return Eval[string](p, proofed+".src")
}

// after does something that changes the preview, and waits for the new one.
func (p *Page) after(act func()) {
	p.tb.Helper()
	was := Eval[string](p, proofed+".src")
	act()
	p.proof(was)
}

// tick clicks the checkbox of a name.
func (p *Page) tick(name string) { p.tb.Helper(); p.after(p.The("checkbox", name).Click) }

// savesSVG saves the picture and reads it.
func (p *Page) savesSVG() (name, svg string) {
	p.tb.Helper()
	return p.Saves(p.The("button", "Save SVG").Click)
}

func (p *Page) savesPNG() (name string, img image.Image) {
	p.tb.Helper()
	name, data := p.Saves(p.The("button", "Save PNG").Click)
	img, err := png.Decode(strings.NewReader(data))
	if err != nil {
		p.tb.Fatal(err)
	}
	return name, img
}

// drawn is what an SVG is made of.
type drawn struct {
	root        map[string]string
	title, desc string
	texts       []string
	fonts       int
}

func readSVG(t testing.TB, doc string) drawn {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader(doc))
	out := drawn{root: map[string]string{}}
	fonts, letters := map[string]*sfnt.Font{}, map[string]string{} // by weight
	weight := ""
	var in string
	var text strings.Builder
	for {
		tok, err := d.Token()
		if err == io.EOF {
			for w, font := range fonts {
				mustHaveLetters(t, font, letters[w])
			}
			return out
		}
		if err != nil {
			t.Fatalf("the SVG is not well-formed: %v", err)
		}
		switch k := tok.(type) {
		case xml.StartElement:
			in = k.Name.Local
			text.Reset()
			weight = "400"
			for _, a := range k.Attr {
				if a.Name.Local == "font-weight" {
					weight = a.Value
				}
				if in == "svg" {
					out.root[a.Name.Local] = a.Value
				}
				if a.Name.Local == "href" || strings.HasPrefix(a.Name.Local, "on") {
					t.Errorf("<%s> has %s", in, a.Name.Local)
				}
			}
		case xml.CharData:
			text.Write(k)
		case xml.EndElement:
			switch k.Name.Local {
			case "title":
				out.title = text.String()
			case "desc":
				out.desc = text.String()
			case "text":
				out.texts = append(out.texts, text.String())
				letters[weight] += text.String()
			case "style":
				css := text.String()
				for _, u := range regexp.MustCompile(`font-weight:(\d+);src:url\(([^)]*)\)`).FindAllStringSubmatch(css, -1) {
					b64, ok := strings.CutPrefix(u[2], "data:font/ttf;base64,")
					data, err := base64.StdEncoding.DecodeString(b64)
					if !ok || err != nil {
						t.Fatalf("the SVG takes %.60s: %v", u[2], err)
					}
					font, err := sfnt.Parse(data)
					if err != nil {
						t.Fatalf("a font in the SVG: %v", err)
					}
					fonts[u[1]] = font
				}
				out.fonts = len(fonts)
				if n := strings.Count(css, "url("); n != len(fonts) {
					t.Errorf("%d addresses in the style, %d of them fonts", n, len(fonts))
				}
			}
		}
	}
}

// mustHaveLetters looks for the outlines of letters in a font.
func mustHaveLetters(t testing.TB, font *sfnt.Font, letters string) {
	t.Helper()
	var b sfnt.Buffer
	if len(letters) < 6 {
		t.Errorf("only the letters %q", letters)
	}
	for _, r := range letters {
		g, err := font.GlyphIndex(&b, r)
		if err != nil || g == 0 {
			t.Errorf("the font has no %q: %v", r, err)
			continue
		}
		path, err := font.LoadGlyph(&b, g, 64<<6, nil)
		if err != nil || len(path) == 0 && r != ' ' && r != '\u00a0' {
			t.Errorf("the font has no outline of %q: %v", r, err)
		}
	}
}

// ink counts the pixels of a part of an image, in shares of it, that are far
// from a colour.
func ink(img image.Image, paper color.NRGBA, y0, y1 float64) (n int) {
	b := img.Bounds()
	far := func(a, b uint8) bool { return math.Abs(float64(a)-float64(b)) > 60 }
	for y := int(y0 * float64(b.Dy())); y < int(y1*float64(b.Dy())); y++ {
		for x := range b.Dx() {
			c := color.NRGBAModel.Convert(img.At(x, y)).(color.NRGBA)
			if far(c.R, paper.R) || far(c.G, paper.G) || far(c.B, paper.B) {
				n++
			}
		}
	}
	return n
}

func TestPublishThePicture(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	_, d := p.saved()
	a, b := d.Build(d.Show.Compare[0]), d.Build(d.Show.Compare[1])
	p.publishing()
	if at := Eval[string](p, "document.activeElement.closest('dialog')?.className ?? ''"); at != "publish" {
		t.Errorf("the keyboard is in %q", at)
	}

	// What is saved is what is shown.
	shown := Eval[string](p, "fetch("+proofed+".src).then(r => r.text()).catch(e => 'refused')")
	name, svg := p.savesSVG()
	if shown != "refused" && shown != svg {
		t.Error("another picture is saved than is shown")
	}
	p.Wrongs() // the page's policy forbids to read what it may show
	if want := d.Title + ", " + a.Name + ".svg"; name != want {
		t.Errorf("saved as %q, want %q", name, want)
	}
	got := readSVG(t, svg)
	if got.root["width"] != "1200" || got.root["role"] != "img" || got.fonts != 2 {
		t.Errorf("%v with %d fonts", got.root, got.fonts)
	}
	r := weigh(t, Eval[string](p, inFrame+".steelyard.demo()"))
	total := fmt.Sprintf("%.2f\u00a0kg", r.Sides[0].Figures[0].Value/1000)
	year := Eval[string](p, "String(new Date().getFullYear())")
	for _, want := range []string{total, "Difference from " + b.Name, "Total mass", "Load on the rear wheel", year, d.Title} {
		if !strings.Contains(strings.Join(got.texts, " "), want) {
			t.Errorf("the picture does not say %q", want)
		}
		if !strings.Contains(got.desc, want) {
			t.Errorf("its description does not say %q", want)
		}
	}
	if !strings.Contains(got.title, a.Name) || len(svg) > 250_000 {
		t.Errorf("the title is %q, of %d bytes", got.title, len(svg))
	}

	// As PNG: as wide as said, on the paper of the theme, with picture and caption.
	name, img := p.savesPNG()
	if want := d.Title + ", " + a.Name + ".png"; name != want {
		t.Errorf("saved as %q, want %q", name, want)
	}
	high, _ := strconv.ParseFloat(got.root["height"], 64)
	mustBePicture := func(img image.Image, width int, palette *scene.Palette) {
		t.Helper()
		paper := palette.Of(scene.Paper)
		if w := img.Bounds().Dx(); w != width {
			t.Errorf("the PNG is %d px wide, want %d", w, width)
		}
		for _, at := range [][2]int{{2, 2}, {img.Bounds().Dx() - 3, img.Bounds().Dy() - 3}} {
			if c := color.NRGBAModel.Convert(img.At(at[0], at[1])); c != paper {
				t.Errorf("the paper is %v, want %v", c, paper)
			}
		}
		if n := count(img, palette.Of(scene.Tyre)); n < width*width/400 {
			t.Errorf("only %d px of tyre", n)
		}
		// The caption begins where the picture ends.
		if n := ink(img, paper, 0.62*float64(img.Bounds().Dx())/float64(img.Bounds().Dy())+0.01, 1); n < 6*width {
			t.Errorf("only %d px of caption", n)
		}
	}
	mustBePicture(img, 1200, &scene.Light)
	if h := img.Bounds().Dy(); math.Abs(float64(h)-high) > 1 {
		t.Errorf("the PNG is %d px high, the SVG %v", h, high)
	}

	p.after(p.The("radio", "Dark").Click)
	p.after(func() { p.The("textbox", "Width, px").Fill("901") })
	_, img = p.savesPNG()
	mustBePicture(img, 901, &scene.Dark)

	// Without names and without what stands below, there is less of everything.
	labelled := len(readSVG(t, svg).texts)
	p.tick("Names")
	_, svg = p.savesSVG()
	if n := len(readSVG(t, svg).texts); n >= labelled-5 {
		t.Errorf("without names %d texts, with them %d", n, labelled)
	}
	p.tick("Dimensions")
	_, svg = p.savesSVG()
	if !strings.Contains(svg, ">wheelbase") && !strings.Contains(strings.Join(readSVG(t, svg).texts, " "), "wheelbase") {
		t.Error("there are no dimensions")
	}
	p.tick("The other build behind it")
	_, svg = p.savesSVG()
	if strings.Contains(svg, "Difference from") || !strings.Contains(svg, total) {
		t.Error("without the other build its difference is told, or no figures")
	}
	p.tick("Figures, with the difference from the other build when that is shown")
	p.tick("How the figures were obtained")
	p.tick("Date")
	p.after(func() { p.The("textbox", "Headline").Fill("") })
	_, svg = p.savesSVG()
	bare := readSVG(t, svg)
	if strings.Contains(svg, "Total mass") || strings.Contains(svg, "k = 2") || bare.root["width"] != "901" {
		t.Errorf("a caption that was switched off is there: %q", bare.texts)
	}
	if w, h := 901., bare.root["height"]; h != strconv.FormatFloat(math.Round(w*0.62*100)/100, 'f', -1, 64) {
		t.Errorf("without a caption it is %s px high", h)
	}
	p.after(p.The("radio", "Rear").Click)
	name, svg = p.savesSVG()
	if title := readSVG(t, svg).title; !strings.Contains(title, "from behind") || !strings.Contains(name, "Rear") {
		t.Errorf("%q is titled %q", name, title)
	}

	p.Key(kb.Escape)
	p.Until("the dialog is closed, and the keyboard back", "!document.querySelector('dialog.publish') && document.activeElement?.textContent.trim().startsWith('Publish')")
	if got := Eval[string](p, "document.querySelector('#masthead').textContent"); !strings.Contains(got, "Publish…") {
		t.Errorf("the masthead says %q", got)
	}
}

// A width that cannot be is told, and nothing is saved of it.
func TestPublishedWidth(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	p.publishing()
	for _, c := range []struct {
		typed string
		fine  bool
	}{{"239", false}, {"", false}, {"12.5", false}, {"wide", false}, {"8001", false}, {"-5", false}, {"240", true}, {"8000", true}} {
		p.The("textbox", "Width, px").Fill(c.typed)
		p.Until(fmt.Sprintf("%q is judged", c.typed), fmt.Sprintf("(document.querySelector('#publish-width-why') == null) == %v && document.querySelector('dialog.publish .proof button').disabled == !%v", c.fine, c.fine))
		if !c.fine {
			if why := Eval[string](p, "document.querySelector('#publish-width-why').textContent"); !strings.Contains(why, "240") || !strings.Contains(why, "8000") {
				t.Errorf("%q: %q", c.typed, why)
			}
			if Eval[string](p, "document.querySelector('#publish-width').getAttribute('aria-describedby')") != "publish-width-why" {
				t.Error("the field is not told of by its message")
			}
		}
	}
	p.after(p.The("button", "640 px wide").Click)
	if _, img := p.savesPNG(); img.Bounds().Dx() != 640 {
		t.Errorf("%v", img.Bounds())
	}
}

// permit lets the page use the clipboard, as a person would.
func (p *Page) permit() {
	p.tb.Helper()
	p.spent = true
	for _, name := range []string{"clipboard-read", "clipboard-write"} {
		Call(p, chromium.SetPermission, chromium.SetPermissionParams{
			Permission:       &chromium.PermissionDescriptor{Name: name},
			Setting:          chromium.PermissionSettingGranted,
			BrowserContextID: chromedp.FromContext(p.ctx).BrowserContextID,
		})
	}
}

const pasted = "navigator.clipboard.readText()"

func TestPublishedToTheClipboard(t *testing.T) {
	p := openPage(t, Desk)
	p.permit()
	p.publishing()
	p.The("button", "Copy SVG").Click()
	p.Until("it is said", "document.body.innerText.includes('The SVG is on the clipboard')")
	_, svg := p.savesSVG()
	if got := Eval[string](p, pasted); got != svg {
		t.Errorf("the clipboard holds %.60q", got)
	}
	p.The("button", "Copy PNG").Click()
	p.Until("it is said", "document.body.innerText.includes('The picture is on the clipboard')")
	size := Eval[[]int](p, `navigator.clipboard.read().then(async ([i]) => { const b = await createImageBitmap(await i.getType('image/png')); return [b.width, b.height] })`)
	if size[0] != 1200 || size[1] < 800 {
		t.Errorf("the picture on the clipboard is %v", size)
	}

	// Tables: each can be copied and saved, in three ways.
	p.The("button", "Copy: Difference of A and B").Click()
	p.Until("the table is copied", pasted+".then(s => s.includes('Verdict'))")
	if got := Eval[string](p, pasted); !strings.Contains(got, ",Difference,±,Verdict") || !strings.Contains(got, "k = 2") {
		t.Errorf("%.300s", got)
	}
	p.The("combobox", "As").Focus()
	p.Eval("const s = document.querySelector('#publish-format'); s.value = 'markdown'; s.dispatchEvent(new Event('change'))")
	name, text := p.Saves(p.Like("button", "Save: Parts of").Click)
	if !strings.HasSuffix(name, ".md") || !strings.Contains(name, "parts of") || !strings.Contains(text, "| --- |") || !strings.Contains(text, gearbox) {
		t.Errorf("%s: %.300s", name, text)
	}
	p.Eval("const s = document.querySelector('#publish-format'); s.value = 'semicolon'; s.dispatchEvent(new Event('change'))")
	name, text = p.Saves(p.The("button", "Save: Figures of all builds").Click)
	in := csv.NewReader(strings.NewReader(strings.TrimPrefix(text, "\ufeff")))
	in.Comma = ';'
	lines, err := in.ReadAll()
	if err != nil || !strings.HasSuffix(name, ", figures.csv") || len(lines) < 20 || !regexp.MustCompile(`^\d+,\d+$`).MatchString(lines[2][3]) {
		t.Errorf("%s: %v, %q", name, err, lines[:min(3, len(lines))])
	}
	version := Eval[string](p, "JSON.parse("+inFrame+".steelyard.evaluate("+inFrame+".steelyard.demo())).program")
	if !strings.Contains(text, version) || !strings.Contains(text, "weighed (") {
		t.Errorf("the table does not tell the version and how its figures were obtained: %.2000s", text)
	}
	name, text = p.Saves(p.The("button", "Save: State by state").Click)
	if !strings.HasSuffix(name, ", states.csv") || strings.Count(text, "\r\n") < 6 || !strings.Contains(text, version) {
		t.Errorf("%s: %.300s", name, text)
	}
	// The parts come back from what was saved, whatever the spreadsheet.
	_, text = p.Saves(p.Like("button", "Save: Parts of").Click)
	if back := partslist.ReadCSV([]byte(text), partslist.CSVOptions{}); len(back.Parts) < 40 || len(back.Bad) > 0 {
		t.Errorf("%d parts, bad: %v", len(back.Parts), back.Bad)
	}
}

// Tables of the page are copied as they are seen, whole, with their doubts in
// columns of their own.
func TestCopyTablesOfThePage(t *testing.T) {
	p := openPage(t, Desk)
	p.permit()
	p.Eval("document.querySelectorAll('details.fold').forEach(d => d.open = true)")
	p.Until("the limits are there", "document.querySelector('.ratings')")
	take := func(menu, as string) string {
		t.Helper()
		p.Eval("navigator.clipboard.writeText('')")
		p.Until("the clipboard is empty", pasted+".then(s => s.length === 0)")
		p.The("button", "Copy this table: "+menu).Click()
		item := p.The("button", as)
		item.Click()
		var got string
		p.until(menu+" is copied", func() bool {
			got = Eval[string](p, pasted)
			return len(got) > 20
		})
		return got
	}
	rows := Eval[int](p, "(() => { const n = document.querySelectorAll('#difference .column.wide tbody tr').length; return n })()")
	whole := len(weigh(t, demo()).Difference.Parts)
	var said []string
	if err := json.Unmarshal([]byte(functions["notes"](demo(), "today")), &said); err != nil {
		t.Fatal(err)
	}
	notes := len(said)
	for _, c := range []struct{ menu, head, line string }{
		{"By group of parts", "Group,\"B − A, g\",\"B − A, g ±\"", `(?m)^Frame,-?\d+,\d+\r?$`},
		{"Part by part", "Part,Change,\"B − A, g\",\"B − A, g ±\"", `(?m)^"Crank gearbox, wide range",only in A,-2250,\d+\r?$`},
		{"What moved the centre of mass", "Part,Forward,Left,Up", `(?m)^"?Gear hub.*,-?\d+\.\d,-?\d+\.\d,-?\d+\.\d\r?$`},
		{"Measured figures beside those on paper", "", `(?m)^Total mass kg,1\d\.\d+,0\.\d+,1\d\.\d+,0\.\d+,`},
		{"A mass that no line has, at", "\"A mass that no line has, at\",", `(?m)^Chain,\d+,\d+`},
		{"What follows from it", ",A,B", `(?m)^"?Wheelbase mm"?,\d+,\d+\r?$`},
	} {
		got := take(c.menu, "as CSV")
		if !strings.HasPrefix(strings.TrimPrefix(got, "\ufeff"), c.head) && c.menu != "What follows from it" {
			t.Errorf("%s begins with %.120q, want %q", c.menu, got, c.head)
		}
		if !regexp.MustCompile(c.line).MatchString(got) {
			t.Errorf("%s has no line like %s: %.900s", c.menu, c.line, got)
		}
		if !strings.Contains(got, "k = 2") {
			t.Errorf("%s does not say how its figures were obtained", c.menu)
		}
		in := csv.NewReader(strings.NewReader(strings.TrimPrefix(got, "\ufeff")))
		lines, err := in.ReadAll()
		if err != nil {
			t.Errorf("%s: %v", c.menu, err)
		}
		if c.menu == "Part by part" && (len(lines) != 1+whole+1+notes || whole <= rows) {
			t.Errorf("%d lines of %d parts, of which %d are shown", len(lines), whole, rows)
		}
	}
	if now := Eval[int](p, "document.querySelectorAll('#difference .column.wide tbody tr').length"); now != rows {
		t.Errorf("after copying, %d rows are shown, before %d", now, rows)
	}
	if got := take("By group of parts", "as CSV, decimal comma"); !strings.Contains(got, "Frame;") {
		t.Errorf("%.200s", got)
	}
	if got := take("Part by part", "as Markdown"); !regexp.MustCompile(`\| Crank gearbox, wide range \| only in A \| −2250 ± \d+ \|`).MatchString(got) || !strings.Contains(got, "| --- | --- | ---: |") {
		t.Errorf("%.600s", got)
	}
	// What was chosen last is what is offered first, and what CSV out writes.
	if _, text := p.Saves(p.The("button", "CSV out").Click); !strings.Contains(text, ";mass_g;") {
		t.Errorf("%.200s", text)
	}
	if got := take("Bags of The invented tour and the goods in them", "as CSV"); !regexp.MustCompile(`(?m)^[^,]+,"Tent, one person",1,\d+,`).MatchString(got) {
		t.Errorf("%.300s", got)
	}
	for _, begin := range []string{"Copy this table: To narrow the difference", "Copy this table: Figures of both builds", "Copy this table: Parts of"} {
		p.Like("button", begin)
	}
	p.Eval("navigator.clipboard.writeText('')")
	p.Like("button", "Copy this table: To narrow the difference").Click()
	p.The("button", "as Markdown").Click()
	p.Until("the advice is copied", pasted+".then(s => s.includes('then ±'))")
	if got := Eval[string](p, pasted); !strings.Contains(got, "| Part | ± |") {
		t.Errorf("%.400s", got)
	}
}

func TestPublishOnAPhone(t *testing.T) {
	t.Parallel()
	dark := FinePhone
	dark.Dark = true
	for name, look := range map[string]Look{"phone": FinePhone, "dark phone": dark, "dark desk": {Width: 1280, Height: 800, Dark: true}} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			p := openPage(t, look)
			p.publishing()
			for _, v := range audit(p) {
				t.Errorf("%s (%s): %v", v.ID, v.Help, v.Nodes)
			}
			if wide := Eval[float64](p, "Math.max(document.scrollingElement.scrollWidth, document.querySelector('dialog.publish').getBoundingClientRect().right)"); wide > float64(look.Width) {
				t.Errorf("the page is %v px wide in a window of %d", wide, look.Width)
			}
			if over := Eval[float64](p, "(d => d.scrollWidth - d.clientWidth)(document.querySelector('dialog.publish'))"); over > 0 {
				t.Errorf("the dialog scrolls sideways by %v px", over)
			}
			if look.Touch {
				small := Eval[[]string](p, "[...document.querySelectorAll('dialog.publish :is(button, select, input[type=text], label:has(input[type=radio]), .check)')].filter(e => e.getBoundingClientRect().height < 43.9).map(e => e.outerHTML.slice(0, 80))")
				if len(small) > 0 {
					t.Errorf("too small for fingers: %q", small)
				}
			}
		})
	}
}

// The one file publishes as the site does: it has its letters in itself.
func TestOneFilePublishes(t *testing.T) {
	t.Parallel()
	p := openSingle(t, Desk)
	p.publishing()
	_, svg := p.savesSVG()
	if got := readSVG(t, svg); got.fonts != 2 {
		t.Errorf("the SVG has %d fonts", got.fonts)
	}
	_, img := p.savesPNG()
	if img.Bounds().Dx() != 1200 || count(img, scene.Light.Of(scene.Tyre)) < 3000 {
		t.Errorf("%v, %d px of tyre", img.Bounds(), count(img, scene.Light.Of(scene.Tyre)))
	}
	if got := p.forbidden(); len(got) > 0 {
		t.Errorf("the policy forbade %q", got)
	}
}

// Who reads German has a spreadsheet with a decimal comma, unless they say
// otherwise.
func TestPublishInGerman(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	p.speak("de")
	p.The("button", "Veröffentlichen…").Click()
	p.proof("")
	if got := Eval[string](p, "document.querySelector('#publish-format').value"); got != "semicolon" {
		t.Errorf("tables are offered as %q", got)
	}
	name, text := p.Saves(p.The("button", "Speichern: Werte aller Aufbauten").Click)
	if !strings.HasSuffix(name, ", Werte.csv") || !strings.Contains(text, "Gesamtmasse;g;") || !strings.Contains(text, "Berechnet mit Steelyard") {
		t.Errorf("%s: %.300s", name, text)
	}
	_, svg := p.savesGerman()
	got := readSVG(t, svg)
	if said := strings.Join(got.texts, " "); !strings.Contains(said, "Unterschied zu") || !regexp.MustCompile(`\d+,\d+\x{a0}kg`).MatchString(said) {
		t.Errorf("the caption says %q", said)
	}
	if over := Eval[float64](p, "(d => d.scrollWidth - d.clientWidth)(document.querySelector('dialog.publish'))"); over > 0 {
		t.Errorf("the dialog scrolls sideways by %v px", over)
	}
	p.Eval("const s = document.querySelector('#publish-format'); s.value = 'csv'; s.dispatchEvent(new Event('change'))")
	_, text = p.Saves(p.The("button", "Speichern: Werte aller Aufbauten").Click)
	if !strings.Contains(text, "Gesamtmasse,g,") || !strings.Contains(text, ".") {
		t.Errorf("%.300s", text)
	}
}

func (p *Page) savesGerman() (name, svg string) {
	p.tb.Helper()
	return p.Saves(p.The("button", "SVG speichern").Click)
}
