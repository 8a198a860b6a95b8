package browsertest

import (
	"errors"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/goccy/go-json"

	"steelyard/internal/bridge"
	"steelyard/internal/document"
)

// job is the main job, what people come for, done in the window of a browser.
// What it finds is found by roles and names, as far as a script can tell them.
type job struct {
	tb testing.TB
	engine
	file bool // the page is opened from a file
}

// mainJob does the part of the job that any page can do, wherever it came from.
// It returns the total that it leaves, kg.
func (p *Page) mainJob() (total float64) {
	p.tb.Helper()
	return (&job{p.tb, blink{p}, p.file != ""}).figures()
}

// must fails the test when a step cannot be done.
func (j *job) must(err error) {
	j.tb.Helper()
	if err != nil {
		j.tb.Fatal(err)
	}
}

// ask evaluates an expression in the page.
func ask[T any](j *job, expression string) (v T) {
	j.tb.Helper()
	text, err := j.eval(expression)
	if err == nil {
		err = json.Unmarshal(text, &v)
	}
	if err != nil {
		j.tb.Fatalf("%v in %.300s", err, expression)
	}
	return v
}

// until waits until something holds.
func (j *job) until(what string, holds func() bool) {
	j.tb.Helper()
	for deadline := time.Now().Add(patience); !holds(); time.Sleep(20 * time.Millisecond) {
		if time.Now().After(deadline) {
			j.tb.Fatalf("waited in vain until %s\non the page: %q", what, j.wrongs())
		}
	}
}

// sees waits until an expression holds. A page that is just then loaded again is
// asked once more.
func (j *job) sees(what, expression string) {
	j.tb.Helper()
	var last error
	defer func() {
		if last != nil {
			j.tb.Logf("until %s: %v", what, last)
		}
	}()
	j.until(what, func() bool {
		var text []byte
		text, last = j.eval("!!(" + expression + ")")
		return last == nil && string(text) == "true"
	})
}

// started waits until figures and picture are there, and the document is kept.
func (j *job) started() {
	j.tb.Helper()
	j.sees("the picture is painted, or cannot be", inFrame+".steelyardFrame?.state == 'painted' || "+inFrame+".steelyardFrame?.problem")
	if problem := ask[string](j, inFrame+".steelyardFrame.problem"); problem != "" {
		j.tb.Fatal(problem)
	}
	j.kept()
}

func (j *job) kept() {
	j.tb.Helper()
	j.sees("the document is kept", "document.querySelector('.keeping.kept')")
}

// element is an expression for the first element of a role that is seen and
// whose name begins so; an open dialog hides all else.
func element(role, name string) string { return finds(role, name, true) }

// middle scrolls an element into view, when there is one, and returns its
// middle.
func (j *job) middle(of string) (x, y float64) {
	j.tb.Helper()
	j.sees("there is "+of, of)
	at := ask[[2]float64](j, "((e) => { e.scrollIntoView({ block: 'center', behavior: 'instant' }); const r = e.getBoundingClientRect(); return [r.left + r.width / 2, r.top + r.height / 2] })("+of+")")
	return at[0], at[1]
}

// clicks clicks on an element of a role whose name begins so.
func (j *job) clicks(role, name string) {
	j.tb.Helper()
	x, y := j.middle(element(role, name))
	j.must(j.drag(x, y, x, y))
}

// fills puts text into a field in place of what is there, and leaves it by Enter.
func (j *job) fills(name, text string) {
	j.tb.Helper()
	j.clicks("textbox", name)
	j.must(j.chord(keyControl, "a"))
	j.must(j.types(text))
	j.must(j.chord(keyEnter))
}

// chooses picks the option of a select that says so. Its list is the system's,
// out of reach of a script's hands.
func (j *job) chooses(name, option string) {
	j.tb.Helper()
	j.sees("there is "+name, element("combobox", name))
	if !ask[bool](j, "((e, says) => { const o = [...e.options].find((o) => o.textContent.trim() === says); if (!o) return false; e.value = o.value; e.dispatchEvent(new Event('input', { bubbles: true })); e.dispatchEvent(new Event('change', { bubbles: true })); return true })("+element("combobox", name)+", "+quote(option)+")") {
		j.tb.Fatalf("%s has no option %q", name, option)
	}
}

// saves does something that saves a file, and returns its name and what is in it.
func (j *job) saves(act func()) (name, content string) {
	j.tb.Helper()
	dir, err := j.downloads()
	j.must(err)
	files, err := os.ReadDir(dir)
	j.must(err)
	before := map[string]bool{}
	for _, f := range files {
		before[f.Name()] = true
	}
	act()
	var size int
	j.until("a file is saved", func() bool {
		files, err := os.ReadDir(dir)
		j.must(err)
		for _, f := range files {
			if strings.HasSuffix(f.Name(), ".part") || strings.HasSuffix(f.Name(), ".wkdownload") || strings.HasSuffix(f.Name(), ".crdownload") {
				return false
			}
			if !before[f.Name()] {
				name = f.Name()
			}
		}
		if name == "" {
			return false
		}
		data, err := os.ReadFile(filepath.Join(dir, name))
		content = string(data)
		whole := len(content) > 0 && len(content) == size // it has stopped growing
		size = len(content)
		return err == nil && whole
	})
	j.must(os.Remove(filepath.Join(dir, name)))
	return name, content
}

// saved returns the document as the page saves it.
func (j *job) saved() (text string, d *document.Document) {
	j.tb.Helper()
	name, text := j.saves(func() { j.clicks("button", "Save") })
	if !strings.HasSuffix(name, ".json") {
		j.tb.Errorf("the file is named %q", name)
	}
	d, problems := document.Open([]byte(text))
	if d == nil {
		j.tb.Fatalf("the saved document does not open: %v", problems)
	}
	return text, d
}

// gives does something that asks for a file, and gives it one in place of the
// system's dialog.
func (j *job) gives(name, content string, act func()) {
	j.tb.Helper()
	path := filepath.Join(j.tb.TempDir(), name)
	j.must(os.WriteFile(path, []byte(content), 0o600))
	ask[bool](j, `(() => {
		const proto = HTMLInputElement.prototype, { click } = proto;
		proto.click = function () {
			if (this.type !== 'file') return click.call(this);
			proto.click = click;
			window.steelyardAsks = this;
			document.body.append(this);
		};
		return true;
	})()`)
	act()
	j.sees("a file is asked for", "window.steelyardAsks")
	j.must(j.give("window.steelyardAsks", path))
	ask[bool](j, "(() => { window.steelyardAsks.remove(); delete window.steelyardAsks; return true })()")
}

// total returns the total mass of build A as the page shows it, kg.
func (j *job) total() float64 {
	j.tb.Helper()
	return ask[float64](j, read+"(document.querySelector('#balance .num'))")
}

// row returns the numbers of the balance's row that begins so.
func (j *job) row(begin string) []float64 {
	j.tb.Helper()
	return ask[[]float64](j, rowOf(begin))
}

func (j *job) weighs(want float64) {
	j.tb.Helper()
	j.until(fmt.Sprintf("the total is %.2f kg", want), func() bool { return math.Abs(j.total()-want) < 0.011 })
}

// gearboxMass is the mass of the part that the job edits.
func gearboxMass(d *document.Document) float64 { return d.Build("gearbox").Part("gearbox").Mass }

// figures reads totals, edits a part, undoes, shows, shares, prints and saves.
func (j *job) figures() (total float64) {
	j.tb.Helper()
	before := j.total()
	_, d := j.saved()
	j.fills("Mass of one, "+gearbox, "3000")
	want := before + (3000-gearboxMass(d))/1000
	j.weighs(want)
	j.clicks("button", "Undo")
	j.until("the total is as before", func() bool { return j.total() == before })
	j.clicks("button", "Redo")
	j.weighs(want)
	total = j.total()

	j.clicks("button", "Dimensions")
	j.clicks("button", "Rear")
	j.clicks("button", "Share link")
	if j.file {
		j.sharesFromAFile()
	}
	j.sees("there is a link", "document.querySelector('dialog input.link')?.value.includes('#')")
	j.must(j.chord(keyEscape))
	j.clicks("button", "Keys")
	j.sees("the keys are told", "document.querySelector('dialog.keys')?.open")
	j.must(j.chord(keyEscape))
	ask[bool](j, "dispatchEvent(new Event('beforeprint'))")
	j.sees("the picture is drawn for paper", "document.querySelector('#printed svg')")
	ask[bool](j, "dispatchEvent(new Event('afterprint'))")
	name, csv := j.saves(func() { j.clicks("button", "CSV out") })
	if !strings.HasSuffix(name, ".csv") || !strings.Contains(csv, gearbox) {
		j.tb.Errorf("%s holds %.100q", name, csv)
	}
	if _, d := j.saved(); gearboxMass(d) != 3000 {
		j.tb.Errorf("saved with %v g", gearboxMass(d))
	}
	j.kept()
	return total
}

// sharesFromAFile does what the page asks for where its own address means
// nothing to others: it says so, and wants the address of a page that does.
func (j *job) sharesFromAFile() {
	j.tb.Helper()
	j.sees("it says that a file leads nobody anywhere", "document.querySelector('dialog.share')?.innerText.includes('nobody else can open it')")
	if ask[bool](j, "!!document.querySelector('dialog.share input.link') || document.querySelector('dialog.share').innerText.includes('Copy the link')") {
		j.tb.Error("there is a link from a file")
	}
	retype := func(text string) {
		j.tb.Helper()
		j.clicks("textbox", "Address of a published copy")
		j.must(j.chord(keyControl, "a"))
		j.must(j.types(text))
	}
	for _, wrong := range []string{"file:///tmp/x.html", "javascript:alert(1)", "nowhere"} {
		retype(wrong)
		j.sees("it says that "+wrong+" is no address", "document.querySelector('dialog.share .wrong') && !document.querySelector('dialog.share input.link')")
	}
	retype("bikes.example/steelyard.html#old")
	j.sees("the link leads there", "/^https:\\/\\/bikes\\.example\\/steelyard\\.html#[^=]+=sy1\\./.test(document.querySelector('dialog.share input.link')?.value)")
}

// TestMainJob does all of the main job in each engine that a browser may have:
// open, move by pointer and keys, compare, edit, save, load again, list parts,
// follow a link, publish.
func TestMainJob(t *testing.T) {
	t.Parallel()
	for _, e := range []struct {
		name  string
		start func(*testing.T) engine
	}{{"Chromium", startChromium}, {"Firefox", startFirefox}, {"WebKit", startWebKit}} {
		t.Run(e.name, func(t *testing.T) {
			j := &job{tb: t, engine: e.start(t)}
			j.waits(startSlowHost(t))
			j.whole()
			for _, w := range j.wrongs() {
				t.Errorf("on the page: %s", w)
			}
		})
	}
}

// waits opens the page while its program is kept back: figures and picture are
// there, and are the same once it has come.
func (j *job) waits(h *slowHost) {
	j.tb.Helper()
	h.hold()
	ask[bool](j, "(setTimeout(() => location.assign("+quote(h.URL)+")), true)")
	j.sees("figures are there without the program", "document.documentElement?.dataset.early === 'demo' && document.querySelector('#balance .total .num') && document.querySelectorAll('#plate svg path').length > 20")
	before := ask[string](j, opening)
	h.letGo()
	j.started()
	j.sees("the program has reckoned", "document.documentElement?.dataset.early === undefined && document.getElementById('plate').getAttribute('aria-busy') === 'false'")
	if after := ask[string](j, opening); after != before {
		j.tb.Errorf("before the program it said\n%s\nand after\n%s", before, after)
	}
}

// whole does all of the job on a page that has just been opened.
func (j *job) whole() {
	j.tb.Helper()
	j.moves()
	j.compares()
	total := j.figures()

	j.must(j.reload())
	j.started()
	if now := j.total(); now != total {
		j.tb.Errorf("after loading again the page says %v kg, before %v", now, total)
	}
	if _, d := j.saved(); gearboxMass(d) != 3000 {
		j.tb.Errorf("after loading again the gearbox weighs %v g", gearboxMass(d))
	}

	j.clicks("button", "Share link")
	j.sees("there is a link", "document.querySelector('dialog input.link')?.value.includes('#')")
	link := ask[string](j, "document.querySelector('dialog input.link').value")
	j.must(j.chord(keyEscape))

	total = j.lists(total)
	j.publishes()
	j.follows(link, total-listed)
}

// moves drags the saddle in the picture, and nudges it by keys.
func (j *job) moves() {
	j.tb.Helper()
	text, d := j.saved()
	centre := j.row("Ahead of rear axle")[0]
	x, y := j.finds(text, "saddle")
	j.must(j.drag(x, y, x-120, y+30))
	j.until("the centre of mass moves back", func() bool { return j.row("Ahead of rear axle")[0] < centre })
	j.sees("what greets a first visit is gone", "!document.querySelector('.welcome')")
	_, dragged := j.saved()
	at := func(d *document.Document) document.Vec3 {
		p := d.Build("gearbox").Part("saddle")
		if p.At != nil {
			return *p.At
		}
		return p.Offset
	}
	a, b := at(d), at(dragged)
	if dx, dz := b[0]-a[0], b[2]-a[2]; dx > -50 || dz > -10 || math.Abs(dx/dz-120./30) > 0.1 {
		j.tb.Errorf("dragged 120 px back and 30 down, the saddle moved %.1f and %.1f mm", dx, dz)
	}
	j.clicks("button", "Undo")
	j.until("the centre of mass is back", func() bool { return j.row("Ahead of rear axle")[0] == centre })

	x, y = j.finds(text, "saddle")
	j.must(j.drag(x, y, x, y))
	j.sees("the saddle is chosen", "document.querySelector('#picture').innerText.includes('Deselect')")
	j.must(j.chord(keyArrowLeft))
	j.must(j.chord(keyShift, keyArrowUp))
	j.kept()
	_, nudged := j.saved()
	if c := at(nudged); c[0] >= a[0] || c[2] <= a[2] || c[1] != a[1] {
		j.tb.Errorf("a step back and a large one up moved the saddle from %v to %v", a, c)
	}
}

// finds moves the pointer onto a part in the picture of a document, and returns
// where that is. It waits for the picture, which is painted after the figures
// are, and may be laid out anew: WebKit's window shows below the page what was
// saved.
func (j *job) finds(document, part string) (x, y float64) {
	j.tb.Helper()
	j.until(part+" is in the picture, to be dragged", func() bool {
		box := ask[[4]float64](j, "(() => { const f = document.querySelector('iframe'); f.scrollIntoView({ block: 'nearest', behavior: 'instant' }); const r = f.getBoundingClientRect(); return [r.left + f.clientLeft, r.top + f.clientTop, f.clientWidth, f.clientHeight] })()")
		var err error
		x, y, err = spotIn(document, pageView, part, box)
		j.must(err)
		j.must(j.hover(x+1, y))
		j.must(j.hover(x, y))
		return ask[string](j, inFrame+".document.querySelector('canvas').style.cursor") == "grab"
	})
	return x, y
}

// compares takes another build for B.
func (j *job) compares() {
	j.tb.Helper()
	_, d := j.saved()
	third := d.Builds[2]
	j.chooses("Choose build B", third.Name)
	d.Show.Compare = []string{"gearbox", third.ID}
	text, err := document.Write(d)
	j.must(err)
	for _, c := range weigh(j.tb, string(text)).Difference.Figures {
		if c.Key != "unsprung_rear" {
			continue
		}
		j.until("the difference is that of the two", func() bool {
			row := j.row("Rear unsprung, tally")
			return len(row) == 3 && math.Abs(row[2]-c.Delta/1000) < 0.006 && math.Abs(row[1]-c.B/1000) < 0.006
		})
		return
	}
	j.tb.Fatal("the difference has no unsprung mass")
}

// listed is what lists adds to the bike, kg.
const listed = 0.193

// lists takes in parts from a spreadsheet, and returns the new total.
func (j *job) lists(total float64) float64 {
	j.tb.Helper()
	j.gives("list.csv", "Name;Weight;Note\nBell;42 g;brass\nMirror;0,12 kg;\nFlag;31;\n", func() { j.clicks("button", "CSV in") })
	j.sees("the preview is there", "document.querySelector('dialog.csv')?.innerText.includes('Mirror')")
	j.clicks("button", "Add them")
	j.weighs(total + listed)
	return j.total()
}

// publishes saves the picture with its caption.
func (j *job) publishes() {
	j.tb.Helper()
	total := ask[string](j, "document.querySelector('#balance .num .whole').textContent + document.querySelector('#balance .num .rest').textContent")
	j.clicks("button", "Publish…")
	j.sees("the preview is drawn", proofed+"?.complete && "+proofed+".naturalWidth > 0")
	name, svg := j.saves(func() { j.clicks("button", "Save SVG") })
	if got := readSVG(j.tb, svg); !strings.HasSuffix(name, ".svg") || got.fonts != 2 || !strings.Contains(strings.Join(got.texts, " "), total) {
		j.tb.Errorf("%s has %d fonts and does not say %s, but %q", name, got.fonts, total, got.texts)
	}
	j.must(j.chord(keyEscape))
}

// follows opens a link to a document, and takes it in.
func (j *job) follows(link string, total float64) {
	j.tb.Helper()
	j.kept()
	j.must(j.open("about:blank"))
	j.must(j.open(link))
	j.started()
	j.sees("it asks", "document.querySelector('dialog[open] button.go')")
	j.clicks("button", ask[string](j, "document.querySelector('dialog[open] button.go').textContent.trim()"))
	j.weighs(total)
	if address := ask[string](j, "location.href"); strings.Contains(address, "sy1.") {
		j.tb.Error("the document stays in the address")
	}
}

// spotIn returns where a picture in a box of the window, CSS px, has a part.
func spotIn(document, view, part string, box [4]float64) (x, y float64, err error) {
	s := bridge.Stage{Session: new(bridge.Session)}
	if problem := s.Show(document, view); problem != "" {
		return 0, 0, errors.New(problem)
	}
	picture, _ := s.Draw(box[2], box[3])
	for _, spot := range picture.Spots {
		if spot.Part == part {
			return box[0] + spot.X, box[1] + spot.Y, nil
		}
	}
	return 0, 0, fmt.Errorf("%s is not in the picture", part)
}

// watchPolicy notes, in the page and its frames, what their policies forbid.
const watchPolicy = `window.forbidden = []; addEventListener('securitypolicyviolation', e => window.forbidden.push(e.effectiveDirective + ' ' + e.blockedURI))`

// forbidden returns what was, in page and frame.
func (p *Page) forbidden() []string {
	p.tb.Helper()
	return Eval[[]string](p, "[...window.forbidden, ..."+inFrame+".forbidden]")
}

// requests returns the addresses that page and frame have asked for.
func (p *Page) requests() []string {
	p.tb.Helper()
	return Eval[[]string](p, "[window, "+inFrame+"].flatMap(w => w.performance.getEntries().filter(e => e.entryType == 'resource' || e.entryType == 'navigation').map(e => e.name))")
}

func mustAllBeUnder(t *testing.T, addresses []string, begin string) {
	t.Helper()
	if len(addresses) < 5 {
		t.Errorf("only %d requests were seen: %q", len(addresses), addresses)
	}
	for _, a := range addresses {
		if !strings.HasPrefix(a, begin) && !strings.HasPrefix(a, "data:") && !strings.HasPrefix(a, "blob:"+begin[:strings.Index(begin[8:], "/")+8]) {
			t.Errorf("a request went to %.100s", a)
		}
	}
}
