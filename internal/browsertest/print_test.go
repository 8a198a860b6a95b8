package browsertest

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/page"

	"steelyard/internal/document"
	"steelyard/internal/scene"
)

// paper is a size of paper, in.
type paper struct {
	name          string
	width, height float64
}

var papers = []paper{{"A4", 210 / 25.4, 297 / 25.4}, {"Letter", 8.5, 11}}

// The margins of the printed report, in, as print.css has them.
const (
	marginTop    = 15 / 25.4
	marginSide   = 14 / 25.4
	marginBottom = 17 / 25.4
)

const dpi = 75

// sheets are the pages of a report that was printed.
type sheets struct {
	images []image.Image
	texts  []string
}

// printed prints the page to PDF and returns its sheets as poppler sees them.
func (p *Page) printed(size paper) sheets {
	p.tb.Helper()
	yes := true
	pdf := Call(p, page.PrintToPDF, page.PrintToPDFParams{PaperWidth: size.width, PaperHeight: size.height, PrintBackground: &yes})
	dir := p.tb.TempDir()
	file := filepath.Join(dir, "report.pdf")
	if err := os.WriteFile(file, pdf.Data, 0o600); err != nil {
		p.tb.Fatal(err)
	}
	if keep := os.Getenv("STEELYARD_LOOK"); keep != "" {
		if err := os.WriteFile(filepath.Join(keep, strings.ReplaceAll(p.tb.Name(), "/", "-")+".pdf"), pdf.Data, 0o644); err != nil {
			p.tb.Fatal(err)
		}
	}
	run := func(name string, args ...string) []byte {
		p.tb.Helper()
		var errs bytes.Buffer
		cmd := exec.Command(name, args...)
		cmd.Stderr = &errs
		out, err := cmd.Output()
		if err != nil {
			p.tb.Fatalf("%s: %v %s; it is part of poppler-utils (on Debian and Ubuntu: sudo apt-get install -y poppler-utils)", name, err, errs.Bytes())
		}
		return out
	}
	run("pdftoppm", "-png", "-r", fmt.Sprint(dpi), file, filepath.Join(dir, "sheet"))
	names, err := filepath.Glob(filepath.Join(dir, "sheet*.png"))
	if err != nil || len(names) == 0 {
		p.tb.Fatalf("no sheets: %v", err)
	}
	slices.Sort(names)
	var s sheets
	for i, name := range names {
		data, err := os.ReadFile(name)
		if err != nil {
			p.tb.Fatal(err)
		}
		img, err := png.Decode(bytes.NewReader(data))
		if err != nil {
			p.tb.Fatal(err)
		}
		s.images = append(s.images, img)
		n := fmt.Sprint(i + 1)
		s.texts = append(s.texts, string(run("pdftotext", "-layout", "-f", n, "-l", n, file, "-")))
	}
	return s
}

// inked counts the pixels of a part of an image, given in inches, that are not
// paper.
func inked(img image.Image, x0, y0, x1, y1 float64) (n int) {
	for y := int(y0 * dpi); y < int(y1*dpi); y++ {
		for x := int(x0 * dpi); x < int(x1*dpi); x++ {
			if g := color.GrayModel.Convert(img.At(x, y)).(color.Gray); g.Y < 200 {
				n++
			}
		}
	}
	return n
}

func TestPrintedReport(t *testing.T) {
	t.Parallel()
	dark := Phone
	dark.Dark = true
	for name, look := range map[string]Look{"desk": Desk, "dark phone": dark} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			p := openPage(t, look)
			total := Eval[string](p, "document.querySelector('#balance .num').textContent.trim()")
			_, d := p.saved()
			wait(p, 100)
			for _, size := range papers {
				t.Run(size.name, func(t *testing.T) {
					was := p.tb
					p.tb = t
					defer func() { p.tb = was }()
					mustBeAReport(t, p, p.printed(size), size, total, d)
				})
			}
			if left := Eval[int](p, "document.querySelector('#printed').childElementCount"); left != 0 {
				t.Errorf("after printing %d elements of the report are left on the page", left)
			}
		})
	}
}

func mustBeAReport(t *testing.T, p *Page, s sheets, size paper, total string, d *document.Document) {
	t.Helper()
	if n := len(s.images); n < 4 || n > 10 {
		t.Errorf("%d sheets", n)
	}
	for i, img := range s.images {
		w, h := size.width, size.height
		if b := img.Bounds(); b.Dx() < int(w*dpi)-1 || b.Dx() > int(w*dpi)+2 || b.Dy() < int(h*dpi)-1 || b.Dy() > int(h*dpi)+2 {
			t.Errorf("sheet %d has %v px", i+1, b)
		}
		const slack = 1 / 25.4
		if n := inked(img, marginSide-slack, marginTop-slack, w-marginSide+slack, h-marginBottom+slack); n < 400 {
			t.Errorf("sheet %d is all but blank: %d px of ink", i+1, n)
		}
		for where, n := range map[string]int{
			"left":   inked(img, 0, 0, marginSide-slack, h),
			"right":  inked(img, w-marginSide+slack, 0, w, h),
			"top":    inked(img, 0, 0, w, marginTop-slack),
			"bottom": inked(img, 0, h-marginBottom+slack, w-marginSide-1, h), // the number of the sheet stands to its right
			"foot":   inked(img, 0, h-6/25.4, w, h),
		} {
			if n > 0 {
				t.Errorf("sheet %d: %d px of ink in the %s margin", i+1, n, where)
			}
		}
		if inked(img, w-marginSide-1, h-marginBottom, w-marginSide, h) == 0 {
			t.Errorf("sheet %d has no number", i+1)
		}
		if r, g, b, _ := img.At(3, 3).RGBA(); r != 0xffff || g != 0xffff || b != 0xffff {
			t.Errorf("sheet %d is not white", i+1)
		}
		// Ink on white is mostly white.
		if share := float64(inked(img, 0, 0, w, h)) / (w * h * dpi * dpi); share > 0.3 {
			t.Errorf("sheet %d is %.0f %% ink", i+1, 100*share)
		}
	}
	if n := count(s.images[0], scene.Light.Of(scene.Tyre)); n < 800 {
		t.Errorf("the picture is not on the first sheet: %d px of tyre", n)
	}
	all := strings.Join(s.texts, "\n")
	squeezed := strings.Join(strings.Fields(all), " ")
	build := d.Build(d.Show.Compare[0])
	for _, want := range []string{
		d.Title, total, "B − A", "likely between", "Where the difference comes from", "Weigh these first", "How the figures were obtained",
		"coverage factor k = 2", "What does ± mean?", "JCGM 100:2008", "qualified mechanic", "weighed (", "Version", build.Name, d.Build(d.Show.Compare[1]).Name,
	} {
		if want == "Version" {
			want = Eval[string](p, "JSON.parse("+inFrame+".steelyard.evaluate("+inFrame+".steelyard.demo())).program")
		}
		if !strings.Contains(squeezed, strings.Join(strings.Fields(want), " ")) {
			t.Errorf("the report does not say %q", want)
		}
	}
	// Nothing is printed on every sheet, as what is fixed to the window would be.
	if n := strings.Count(squeezed, strings.Join(strings.Fields(d.Notes), " ")); d.Notes == "" || n != 1 {
		t.Errorf("the document's notes are printed %d times", n)
	}
	for _, control := range []string{"Undo", "Share link", "Publish", "CSV out", "Copy", "Dimensions", "Search, or type"} {
		if strings.Contains(all, control) {
			t.Errorf("the control %q is printed", control)
		}
	}
	// Every part is there, and wherever the list goes on, its head stands again.
	letters := strings.Join(strings.Fields(all), "")
	for _, part := range build.Parts {
		if !strings.Contains(letters, strings.Join(strings.Fields(part.Name), "")) && !strings.Contains(squeezed, firstWords(part.Name)) {
			t.Errorf("the part %q is not in the report", part.Name)
		}
	}
	lists := 0
	for i, text := range s.texts {
		rows := strings.Count(text, " weighed ") + strings.Count(text, " maker says ")
		if rows < 6 {
			continue
		}
		lists++
		if !strings.Contains(text, "Known from") || !strings.Contains(text, "Together, g") {
			t.Errorf("sheet %d has %d lines of parts and no head over them", i+1, rows)
		}
	}
	if lists < 2 {
		t.Errorf("the parts are on %d sheets", lists)
	}
}

// firstWords are the first two words of a name: a long one goes on in the next
// line, where the text of a table has other columns between.
func firstWords(s string) string {
	words := strings.Fields(s)
	return strings.Join(words[:min(2, len(words))], " ")
}

// A build that cannot be drawn or weighed costs its own pieces of the report, with
// the reason in their place, and not the report.
func TestPrintsWhatThereIs(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	_, d := p.saved()
	for i := range d.Builds {
		d.Builds[i].Frame.HeadAngle = 0
	}
	text, err := document.WriteCompact(d)
	if err != nil {
		t.Fatal(err)
	}
	p.Chooses("broken.json", string(text), p.Like("button", "Open").Click)
	p.Until("it says what is wrong", "document.body.innerText.includes('ead angle')")
	p.Eval("dispatchEvent(new Event('beforeprint'))")
	p.Until("there is a report, with what cannot be drawn", `(e => e?.querySelector('h1') && e.querySelector('p.remark') && e.innerText.includes('Crank gearbox'))(document.querySelector('#printed'))`)
	p.Eval("dispatchEvent(new Event('afterprint'))")
}
