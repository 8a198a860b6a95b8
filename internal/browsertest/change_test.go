package browsertest

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp/kb"

	"steelyard/internal/document"
	"steelyard/internal/report"
)

// presses counts how often a person presses something.
type presses struct {
	p *Page
	n int
}

func (c *presses) on(role, name string) {
	c.p.tb.Helper()
	c.p.The(role, name).Click()
	c.n++
}

// like presses what has a name that begins so.
func (c *presses) like(role, begin string) {
	c.p.tb.Helper()
	c.p.Like(role, begin).Click()
	c.n++
}

const opens = "Change drivetrain, wheels…"

// shiftClick clicks at a place in the window with the Shift key held.
func (p *Page) shiftClick(x, y float64) {
	p.tb.Helper()
	for _, kind := range []input.DispatchMouseEventType{input.DispatchMouseEventTypeMousePressed, input.DispatchMouseEventTypeMouseReleased} {
		Call(p, input.DispatchMouseEvent, input.DispatchMouseEventParams{Type: kind, X: x, Y: y, Button: input.MouseButtonLeft, ClickCount: 1, Modifiers: int64(kb.ModifierShift)})
	}
}

// totalsOf are the total masses of builds without a load, with their ±.
func totalsOf(r *report.Report) (values, plus []float64) {
	for _, b := range r.Builds {
		for _, f := range b.Figures {
			if f.Key == "total" {
				values, plus = append(values, f.Value), append(plus, f.Plus)
			}
		}
	}
	return values, plus
}

// opensDocument opens a document in the page as a file.
func (p *Page) opensDocument(d *document.Document) {
	p.tb.Helper()
	text, err := document.Write(d)
	if err != nil {
		p.tb.Fatal(err)
	}
	p.Chooses("own.json", string(text), p.command("Open…").Click)
	p.until("the document is open", func() bool { return Eval[string](p, "document.getElementById('title').value") == d.Title })
	p.kept()
}

// demoWith is the demo with some of its builds only.
func demoWith(t *testing.T, title string, builds ...string) *document.Document {
	t.Helper()
	d, _ := document.Open([]byte(demo()))
	d.Title = title
	d.WeighIns = nil
	d.Builds = slices.DeleteFunc(d.Builds, func(b document.Build) bool { return !slices.Contains(builds, b.ID) })
	d.Show.Compare = []string{d.Builds[0].ID}
	return d
}

const shut = "!document.querySelector('dialog[open]')"

// From one build to three with other drivetrains.
func TestFromOneBuildToThree(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	p.opensDocument(demoWith(t, "One build", "gearbox"))
	text, before := p.saved()

	c := &presses{p: p}
	c.on("button", opens)
	c.like("radio", "Gear hub, wide range, belt")
	p.Until("it says what comes", "document.querySelectorAll('.change .tick').length > 6")
	p.look("change-desk")
	c.on("button", "Make a new build of it")
	p.Until("it is closed", shut)
	c.on("button", opens)
	c.like("radio", "Derailleur, one ring, very wide")
	c.on("button", "Make a new build of it")
	p.Until("it is closed", shut)
	t.Logf("%d presses", c.n)
	if c.n > 10 {
		t.Errorf("%d presses from one build to three", c.n)
	}
	_, d := p.saved()
	drive := func(b *document.Build) string {
		for _, q := range b.Parts {
			switch q.Kind {
			case "crank-gearbox", "gear-hub", "derailleur":
				return q.Kind
			}
		}
		return ""
	}
	var drives []string
	for i := range d.Builds {
		drives = append(drives, drive(&d.Builds[i]))
	}
	slices.Sort(drives)
	if !slices.Equal(drives, []string{"crank-gearbox", "derailleur", "gear-hub"}) {
		t.Errorf("drives %v", drives)
	}
	if b := d.Build("gearbox"); b == nil || len(b.Parts) != len(before.Builds[0].Parts) {
		t.Error("the first build has changed")
	}
	// Each was one step.
	for range 2 {
		p.command("Undo").Click()
	}
	if after, _ := p.saved(); after != text {
		t.Error("two steps back do not bring back what was there")
	}
}

// What is unticked is left as it is; what is known better than the catalogue is
// kept aside, and comes back.
func TestChangeInPlaceAndBack(t *testing.T) {
	t.Parallel()
	p := openPage(t, with(Phone, func(l *Look) { l.Dark = true }))
	d := demoWith(t, "In place", "derailleur")
	b := d.Build("derailleur")
	for i := range b.Parts {
		if q := &b.Parts[i]; q.ID == "derailleur" || q.ID == "cassette" {
			q.Basis, q.HalfWidth = document.Weighed, 1
		}
	}
	p.opensDocument(d)
	text, _ := p.saved()
	p.chooses(".plate.A sy-menu", opens)
	p.Like("radio", "Gear hub, wide range, chain").Click()
	p.Until("it says what the build weighs then", "document.querySelector('.change .sum strong')")
	p.look("change-phone")
	p.Like("checkbox", "Bottom bracket").Click() // it would stay, and goes
	p.Like("checkbox", "Chain, 12").Click()
	p.Until("the chain stays", "[...document.querySelectorAll('.change .tick')].some(l => l.textContent.includes('Chain, 12') && !l.querySelector('input').checked)")
	p.The("button", "Change this build").Click()
	p.Until("it is closed", shut)
	_, d = p.saved()
	bracket := slices.ContainsFunc(d.Builds[0].Parts, func(q document.Part) bool { return q.Kind == "bottom-bracket" })
	if len(d.Builds) != 1 || d.Builds[0].Part("chain") == nil || d.Builds[0].Part("cassette") != nil || bracket {
		t.Error("the build was not changed as it was ticked")
	}
	if len(d.Aside) < 2 {
		t.Fatalf("%d parts are kept aside", len(d.Aside))
	}
	p.Until("they are listed", "document.querySelector('details.aside')")
	p.Eval("document.querySelector('details.aside').open = true; document.querySelector('details.aside').scrollIntoView({block: 'center'})")
	p.look("aside-phone")
	mustPass(p, "parts kept aside", "#parts")
	n := len(d.Aside)
	p.Like("button", "Fit again to build A: Cassette").Click()
	p.Until("its line has the focus", "document.activeElement?.closest('#parts tr.part')")
	p.until("the cassette is on", func() bool {
		_, d = p.saved()
		return d.Builds[0].Part("cassette") != nil && len(d.Aside) == n-1
	})
	p.command("Undo").Click()
	p.Like("button", "Forget Cassette").Click()
	p.Until("what is kept aside has the focus", "document.activeElement?.id === 'kept-aside'") // which closes a menu
	p.until("it is forgotten", func() bool { _, d = p.saved(); return d.Builds[0].Part("cassette") == nil && len(d.Aside) == n-1 })
	p.command("Undo").Click()
	p.command("Undo").Click()
	if after, _ := p.saved(); after != text {
		t.Error("undo does not bring back what was there")
	}
}

// Of three copies one part is weighed in one: it is in all, no difference arises
// from it, and the ± of every total shrinks. What is made a thing of its own is not.
func TestWeighedOnce(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	d := demoWith(t, "Three copies", "gearbox")
	b, c := d.CopyBuild("gearbox", "Second").ID, d.CopyBuild("gearbox", "Third").ID
	d.Show.Compare = []string{"gearbox", b}
	p.opensDocument(d)
	text, _ := p.saved()
	_, wide := totalsOf(weigh(t, text))
	p.Until("the rows say in how many builds a part is", "document.querySelectorAll('#parts .also').length > 30")
	if s := Eval[string](p, "document.querySelector('#parts .also').textContent.trim()"); s != "in 3 builds" {
		t.Errorf("a row says %q", s)
	}
	p.Eval("document.querySelector('#parts').scrollIntoView()")
	wait(p, 200)
	p.look("shared-desk")

	p.Like("combobox", "Known from, "+gearbox).choose("weighed")
	p.mass(gearbox).Fill("2744")
	p.until("it is weighed in all", func() bool {
		_, d = p.saved()
		for _, id := range []string{"gearbox", b, c} {
			if q := d.Build(id).Part("gearbox"); q.Mass != 2744 || q.Basis != document.Weighed {
				return false
			}
		}
		return true
	})
	text, _ = p.saved()
	r := weigh(t, text)
	values, plus := totalsOf(r)
	for i := range plus {
		if !(plus[i] < wide[i]) {
			t.Errorf("build %d was known within %g g, now within %g", i, wide[i], plus[i])
		}
		if math.Abs(values[i]-values[0]) > 1e-9 {
			t.Errorf("the totals are %v", values)
		}
	}
	if len(r.Difference.Parts) > 0 {
		t.Errorf("the builds differ by %+v", r.Difference.Parts)
	}
	// Typing was one step, and the basis another.
	p.command("Undo").Click()
	p.command("Undo").Click()
	p.until("all is as before", func() bool { _, e := p.saved(); return e.Build(c).Part("gearbox").Basis != document.Weighed })
	p.command("Redo").Click()
	p.command("Redo").Click()

	// Only here, and what another build knows better.
	p.The("button", "Details of "+gearbox).Click()
	p.The("button", "Only here").Click()
	p.until("it has an id of its own", func() bool { _, d = p.saved(); return d.Build("gearbox").Part("gearbox") == nil })
	p.mass(gearbox).Fill("2800")
	p.until("it counts only here", func() bool {
		_, d = p.saved()
		mine := slices.ContainsFunc(d.Build("gearbox").Parts, func(q document.Part) bool { return q.Kind == "crank-gearbox" && q.Mass == 2800 })
		return mine && d.Build(b).Part("gearbox").Mass == 2744
	})
}

// A half-typed figure that is another build's by chance does not take that along.
func TestTypingPassesByAnothersFigure(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	d := demoWith(t, "Two opinions", "gearbox")
	id := d.CopyBuild("gearbox", "Second").ID
	d.Show.Compare = []string{"gearbox", id}
	q := d.Build(id).Part("gearbox")
	q.Mass = 27
	for _, x := range []*document.Part{q, d.Build("gearbox").Part("gearbox")} {
		x.HalfWidth, x.Basis = 7, document.Weighed
	}
	p.opensDocument(d)
	p.mass(gearbox).Focus()
	p.Eval("document.activeElement.select()")
	for _, key := range "2744" {
		p.types(string(key))
	}
	p.Key(kb.Enter)
	p.until("the mass is typed", func() bool { _, d = p.saved(); return d.Build("gearbox").Part("gearbox").Mass == 2744 })
	if m := d.Build(id).Part("gearbox").Mass; m != 27 {
		t.Errorf("the other build's was 27 g and is %g", m)
	}
}

// What another build knows better is offered, and taken with one press.
func TestBetterKnownIsOffered(t *testing.T) {
	t.Parallel()
	p := openPage(t, Phone)
	d := demoWith(t, "Known better", "gearbox")
	id := d.CopyBuild("gearbox", "Second").ID
	d.Show.Compare = []string{"gearbox", id}
	q := d.Build(id).Part("saddle")
	q.Mass, q.HalfWidth, q.Basis = 377, 1, document.Weighed
	was := d.Build("gearbox").Part("saddle")
	was.HalfWidth, was.Basis = 40, document.Typical
	p.opensDocument(d)
	p.Until("it is offered", "document.querySelector('#parts .better button')")
	p.Eval("document.querySelector('#parts .better').scrollIntoView({block: 'center'})")
	wait(p, 200)
	p.look("better-phone")
	p.Like("button", "Use it here: 377").Click()
	p.until("it is taken", func() bool {
		_, d = p.saved()
		q := d.Build("gearbox").Part("saddle")
		return q.Mass == 377 && q.HalfWidth == 1 && q.Basis == document.Weighed
	})
	p.Until("it is offered no more", "!document.querySelector('#parts .better')")
}

// Bags and goods are weighed once for all loads that have them.
func TestLoadsWeighOnce(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	d := demoWith(t, "Two loads", "gearbox")
	tour := d.Loads[0].ID
	again := d.CopyLoad(tour, "Again").ID
	good, bag := d.Loads[0].Goods[0], d.Loads[0].Bags[0]
	p.opensDocument(d)
	p.unfold("#load details.fold")
	p.Until("a good says in how many loads it is", "document.querySelector('#load .good .also')")
	p.Like("textbox", "Mass of one, "+good.Name).Fill("123")
	p.until("it weighs that in both", func() bool {
		_, d = p.saved()
		return d.Load(tour).Good(good.ID).Mass == 123 && d.Load(again).Good(good.ID).Mass == 123
	})
	p.Eval("document.querySelector('#load tr.bag .disclose').click()")
	p.The("button", "Only here").Click()
	p.until("the bag has an id of its own, and what is in it stays", func() bool {
		_, d = p.saved()
		l := d.Load(tour)
		return l.Bag(bag.ID) == nil && d.Load(again).Bag(bag.ID) != nil && !slices.ContainsFunc(l.Goods, func(g document.Good) bool { return g.In == bag.ID }) &&
			slices.ContainsFunc(l.Goods, func(g document.Good) bool { return g.In == l.Bags[0].ID })
	})
}

// Marked parts are changed, copied and deleted together, each as one step.
func TestMarkSeveral(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	d := demoWith(t, "Marks", "gearbox")
	id := d.CopyBuild("gearbox", "Second").ID
	other := d.Build(id)
	d.Show.Compare = []string{"gearbox", id}
	gone := other.Parts[len(other.Parts)-1]
	other.Parts = other.Parts[:len(other.Parts)-1]
	p.opensDocument(d)
	text, d := p.saved()
	p.The("button", "Mark several").Click()
	row := func(i int) string { return fmt.Sprintf("document.querySelectorAll('#parts .marker input')[%d]", i) }
	marked := func() []string {
		return Eval[[]string](p, "[...document.querySelectorAll('#parts tr.marked')].map(r => r.dataset.part)")
	}
	p.Until("the lines can be marked", row(2))
	Eval[bool](p, "("+row(2)+".click(), true)")
	p.until("one is marked", func() bool { return len(marked()) == 1 })
	// With Shift all in between, by the pointer and by the keyboard.
	x := Eval[[]float64](p, "(e => { e.scrollIntoView({ block: 'center' }); const r = e.getBoundingClientRect(); return [r.left + r.width / 2, r.top + r.height / 2] })("+row(5)+")")
	p.shiftClick(x[0], x[1])
	p.until("four are marked", func() bool { return len(marked()) == 4 })
	Eval[bool](p, "("+row(5)+".focus(), true)")
	p.Key(kb.ArrowDown, kb.ModifierShift)
	p.until("five are marked", func() bool { return len(marked()) == 5 })
	ids := marked()
	p.look("marks-desk")

	p.Eval(`(s => { s.value = 'weighed'; s.dispatchEvent(new Event('change')) })(document.querySelectorAll('.markbar select')[0])`)
	p.Eval(`(s => { s.value = 'swingarm'; s.dispatchEvent(new Event('change')) })(document.querySelectorAll('.markbar select')[3])`)
	p.The("button", "Set for 5 parts").Click()
	p.until("all five are set, what is known in both builds, their place in one", func() bool {
		_, d = p.saved()
		for _, i := range ids {
			a, b := d.Build("gearbox").Part(i), d.Build(id).Part(i)
			if a.Basis != document.Weighed || a.Carrier != "swingarm" || b.Basis != document.Weighed || b.Carrier != other.Part(i).Carrier {
				return false
			}
		}
		return true
	})
	p.command("Undo").Click()
	if after, _ := p.saved(); after != text {
		t.Error("setting was not one step")
	}

	p.The("button", "Mark all").Click()
	p.chooses(".markbar sy-menu", "Second")
	p.until("the one that was missing there is copied, no other", func() bool {
		_, d = p.saved()
		return d.Build(id).Part(gone.ID) != nil && len(d.Build(id).Parts) == len(d.Build("gearbox").Parts)
	})
	p.command("Undo").Click()
	p.The("button", "Mark none").Click()
	p.until("none is marked", func() bool { return len(marked()) == 0 })
	Eval[bool](p, "("+row(0)+".click(), "+row(1)+".focus(), true)")
	p.Key(" ")
	p.until("two are marked", func() bool { return len(marked()) == 2 })
	Eval[bool](p, "("+row(1)+".focus(), true)")
	p.Key(kb.Delete)
	p.until("they are deleted", func() bool { _, e := p.saved(); return len(e.Build("gearbox").Parts) == len(other.Parts)+1-2 })
	p.command("Undo").Click()
	if after, _ := p.saved(); after != text {
		t.Error("deleting was not one step")
	}
}

// What is missing is said, dismissed for the build, and brought back.
func TestMissingIsSaid(t *testing.T) {
	t.Parallel()
	p := openPage(t, with(Desk, func(l *Look) { l.Dark = true }))
	d := demoWith(t, "Missing", "gearbox")
	b := d.Build("gearbox")
	b.Parts = slices.DeleteFunc(b.Parts, func(q document.Part) bool { return q.Kind == "saddle" || q.Kind == "pedal" })
	p.opensDocument(d)
	said := func() string { return strings.Join(strings.Fields(p.says("#missing")), " ") }
	p.until("saddle and pedals are missed", func() bool { s := said(); return strings.Contains(s, "pedals") && strings.Contains(s, "saddle") })
	p.Eval("document.querySelector('#parts').scrollIntoView()")
	wait(p, 200)
	p.look("missing-desk-dark")
	p.The("button", "This build goes without: pedals").Click()
	p.until("it goes without", func() bool { _, d = p.saved(); return slices.Equal(d.Builds[0].Without, []string{"pedals"}) })
	p.until("they are missed no more", func() bool {
		return !strings.Contains(strings.Split(said(), "Goes without")[0], "pedals") && strings.Contains(said(), "Goes without: pedals")
	})
	p.The("button", "Not without: pedals").Click()
	p.until("they are missed again", func() bool {
		_, d = p.saved()
		return len(d.Builds[0].Without) == 0 && !strings.Contains(said(), "Goes without")
	})
}
