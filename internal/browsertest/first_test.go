package browsertest

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp/kb"
	"github.com/goccy/go-json"

	"steelyard/internal/document"
)

// bounds is where something lies in the window, CSS px.
type bounds struct{ Left, Top, Right, Bottom float64 }

func (p *Page) bounds(selector string) bounds {
	p.tb.Helper()
	return Eval[bounds](p, "(r => ({ left: r.left, top: r.top, right: r.right, bottom: r.bottom }))(document.querySelector("+quote(selector)+").getBoundingClientRect())")
}

func (b bounds) middle() [2]float64 {
	return [2]float64{(b.Left + b.Right) / 2, (b.Top + b.Bottom) / 2}
}

// atChapter waits until a chapter's head is at the top of the window, with the focus,
// its body open and its name marked in the contents.
func (p *Page) atChapter(name string) {
	p.tb.Helper()
	p.Until("the address is #"+name, "location.hash === "+quote("#"+name))
	p.Until(name+" is before the eyes", "(r => r.top < 0.45 * innerHeight && r.bottom > 0)(document.getElementById("+quote(name)+").getBoundingClientRect())")
	p.Until(name+" has the focus", "document.activeElement?.closest('section')?.id === "+quote(name))
	p.Until(name+" is open", "document.querySelector("+quote("#"+name+" details.fold")+")?.open ?? true")
	p.Until(name+" is marked", "document.querySelector('.contents .line [aria-current]')?.hash === "+quote("#"+name))
}

// chapters are the names of all, in the order of the page.
func (p *Page) chapters() []string {
	p.tb.Helper()
	return Eval[[]string](p, "[...document.querySelectorAll('.contents .line a')].map(a => a.hash.slice(1))")
}

// A first visit on a phone: totals, verdict and picture are on the first screen, with
// what the page is for and three ways on; all else is a press away.
func TestFirstVisitOnAPhone(t *testing.T) {
	t.Parallel()
	p := openFirst(t, FinePhone)
	p.look("first-phone")
	foot := p.bounds("sy-contents").Top
	for _, what := range []string{".welcome p", ".welcome button:last-child", ".plate.A .total", ".plate.B .total", ".plate.delta .verdict", ".plate.delta .total"} {
		if b := p.bounds(what); b.Top < 0 || b.Bottom > foot || b.Right > 390 {
			t.Errorf("%s lies at %+v, not on the first screen", what, b)
		}
	}
	if b := p.bounds("#plate"); b.Bottom-b.Top > 240 || b.Top > foot-60 {
		t.Errorf("the picture lies at %+v", b)
	}

	// The commands are one; what was given closes them, and gives the focus back.
	if _, there := p.find("button", "Share link", false); there {
		t.Error("the commands are not folded")
	}
	p.The("button", "Commands").Click()
	p.look("commands-phone")
	p.The("button", "Share link").Click()
	p.Until("the link is there", "document.querySelector('dialog.share[open]')")
	p.Key(kb.Escape)
	p.Until("the focus is back", "!document.querySelector('dialog[open]') && document.activeElement?.matches('.nameplate .opens')")
	if _, there := p.find("button", "Share link", false); there {
		t.Error("the commands stay open")
	}

	p.The("button", "See the demo").Click()
	p.Until("the sentence is gone, and the balance has the focus", "!document.querySelector('.welcome') && document.activeElement?.id === 'balance'")
	p.atChapter("balance")
	p.look("first-phone-demo")
	if b := p.bounds("#plate"); b.Bottom > foot {
		t.Errorf("the picture lies at %+v, and the contents begin at %v", b, foot)
	}

	// The contents say what each chapter comes to, in the core's words.
	p.The("button", "Contents").Click()
	var gears, climb struct{ Words string }
	for name, into := range map[string]*struct{ Words string }{"gears": &gears, "climb": &climb} {
		if err := json.Unmarshal([]byte(functions[name](demo())), into); err != nil {
			t.Fatal(err)
		}
	}
	answer := func(name string) string {
		return "document.querySelector('.contents .list a[href=\"#" + name + "\"] .answer')?.textContent"
	}
	p.Until("the gears are told", answer("gears")+" === "+quote(gears.Words))
	p.Until("so is the climb", answer("climbing")+" === "+quote(climb.Words))
	p.Until("so are the parts", answer("parts")+"?.includes('weighed')")
	p.Until("all are told", "[...document.querySelectorAll('.contents .list .answer')].length === document.querySelectorAll('.contents .list a').length")
	p.look("contents-phone")
	mustPass(p, "contents", "sy-contents")
	at := p.bounds(".contents .list a[href='#gears']").middle()
	p.Tap(at[0], at[1])
	p.atChapter("gears")
	p.look("gears-phone")

	// One press: a finger goes down on the contents, slides, and is lifted.
	from := p.bounds(".contents .opens").middle()
	p.Touch(input.DispatchTouchEventTypeTouchStart, from)
	p.Until("the list is open", "document.querySelector('.contents .list a')")
	to := p.bounds(".contents .list a[href='#parts']").middle()
	for i := 1; i <= 4; i++ {
		f := float64(i) / 4
		p.Touch(input.DispatchTouchEventTypeTouchMove, [2]float64{from[0] + (to[0]-from[0])*f, from[1] + (to[1]-from[1])*f})
	}
	p.Until("the chapter below the finger is marked", "document.querySelector('.contents .list a.over')?.hash === '#parts'")
	p.Touch(input.DispatchTouchEventTypeTouchEnd)
	p.atChapter("parts")
	p.Until("the list is closed", "document.querySelector('.contents .list').hidden")

	// Back and forward; and what was opened is open when the page is loaded anew, at
	// the chapter of its address.
	p.Eval("history.back()")
	p.atChapter("gears")
	p.Eval("history.forward()")
	p.Until("it is the parts again", "location.hash === '#parts'")
	p.Eval("history.back()")
	p.atChapter("gears")
	p.Reload()
	p.started()
	p.atChapter("gears")
	if Eval[bool](p, "!!document.querySelector('.welcome')") {
		t.Error("who has been welcomed is welcomed again")
	}
}

// On a desk every chapter is one press away and has an address, which a share link
// carries too; the first list makes a document of one's own.
func TestContentsAndFirstVisitOnADesk(t *testing.T) {
	t.Parallel()
	p := openFirst(t, Desk)
	p.look("first-desk")
	names := p.chapters()
	if len(names) < 14 {
		t.Fatalf("the contents have %q", names)
	}
	mustPass(p, "first visit", "sy-welcome")

	// One press each, from wherever one is.
	for _, name := range []string{"frame", "gears", "picture", "parts", "steering", "balance", "difference", "limits"} {
		b := p.bounds(".contents .line a[href='#" + name + "']")
		if b.Left < 0 || b.Right > 1280 || b.Top < 0 || b.Bottom > 160 {
			t.Errorf("%s lies at %+v, out of reach", name, b)
		}
		p.ClickAt(b.middle()[0], b.middle()[1])
		p.atChapter(name)
		if head := p.bounds("#" + name + " h2"); name != "frame" && head.Top < p.bounds("sy-contents").Bottom-1 {
			t.Errorf("the head of %s lies below the contents, at %+v", name, head)
		}
	}
	p.look("contents-desk-line")

	// Back through them, and the window is where it was.
	p.Eval("history.back()")
	p.Until("back at the difference", "location.hash === '#difference' && document.activeElement?.closest('section')?.id === 'difference'")
	p.Eval("history.forward()")
	p.Until("forward to the limits", "location.hash === '#limits' && document.activeElement?.closest('section')?.id === 'limits'")

	// By keyboard: the list, its answers, and Escape.
	p.The("button", "Contents").Focus()
	p.Key(kb.Enter)
	p.Until("the chapter that one is at has the focus", "document.activeElement?.matches('.list a[href=\"#limits\"]')")
	p.Until("all are told", "[...document.querySelectorAll('.contents .list .answer')].length === document.querySelectorAll('.contents .list a').length")
	wait(p, 1200)
	p.look("contents-desk")
	mustPass(p, "contents", "sy-contents")
	p.Key(kb.ArrowDown)
	p.Key(kb.Escape)
	p.Until("the list is closed", "document.querySelector('.contents .list').hidden && document.activeElement?.matches('.contents .opens')")
	p.Key(kb.Enter)
	p.Until("it is open", "document.activeElement?.matches('.list a')")
	p.Key(kb.End)
	p.Key(kb.Enter)
	p.atChapter("frame")

	// Each chapter is a landmark with the name of its heading.
	var told []string
	for _, r := range p.All("region", "") {
		told = append(told, r.Name)
	}
	for _, name := range names {
		if head := Eval[string](p, "document.querySelector("+quote("#"+name+" h2")+").textContent.trim()"); !slices.Contains(told, head) {
			t.Errorf("%s is no landmark: %q are", head, told)
		}
	}

	// A share link opens at the chapter that it was made in, or where one says.
	p.The("button", "Share link").Click()
	link := Eval[string](p, "document.querySelector('dialog.share input.link').value")
	if !strings.HasSuffix(link, "&frame") {
		t.Errorf("the link ends with %q", link[len(link)-20:])
	}
	p.look("share-desk")
	p.Eval("(s => { s.value = 'weighin'; s.dispatchEvent(new Event('change')) })(document.querySelector('dialog.share select.at'))")
	p.Until("the link follows", "document.querySelector('dialog.share input.link').value.endsWith('&weighin')")
	link = Eval[string](p, "document.querySelector('dialog.share input.link').value")
	p.Key(kb.Escape)
	q := browser.Open(t, link, Desk)
	q.Until("it is asked", "document.querySelector('dialog.incoming[open]')")
	q.The("button", "Open it").Click()
	q.atChapter("weighin")
	// As it always was, a link alone opens the document.
	q.Eval("location.hash = " + quote(strings.TrimSuffix(link[strings.Index(link, "#"):], "&weighin")))
	q.Until("it is asked", "document.querySelector('dialog.incoming[open]')")
	q.Key(kb.Escape)
	q.Until("the address is clean", "location.hash === ''")

	// The second way in: a list. Nothing is lost, and nothing comes before the answer.
	before := p.total()
	p.The("button", "Bring a list").Click()
	p.Until("there is room for it", "document.querySelector('dialog.csv textarea')")
	p.look("list-desk")
	mustPass(p, "a list", "dialog[open]")
	p.Eval("document.querySelector('dialog.csv textarea').focus()")
	p.types("Saddle\t512 g\nSeat post\t272 g\nBell\t42 g")
	p.Until("three parts are shown", "document.querySelectorAll('dialog.csv table.lines tbody tr').length === 3")
	if p.total() != before {
		t.Error("they are taken already")
	}
	p.The("button", "Make the build").Click()
	p.until("they make a build of their own", func() bool { return p.lines() == 3 && math.Abs(p.total()-0.826) < 0.006 })
	p.Until("the next part can be typed", "document.activeElement?.id === 'add' && !document.querySelector('.welcome')")
	p.kept()
	wait(p, 700)
	p.Reload()
	p.started()
	p.until("it is there again", func() bool { return p.lines() == 3 })
	if Eval[bool](p, "!!document.querySelector('.welcome')") {
		t.Error("who has a document is welcomed again")
	}
}

// counted is a person at work whose every key and press is counted.
type counted struct {
	p             *Page
	keys, presses int
}

func (c *counted) key(key string) {
	c.p.tb.Helper()
	c.p.Key(key)
	c.keys++
}

func (c *counted) types(text string) {
	c.p.tb.Helper()
	for _, r := range text {
		c.key(string(r))
	}
}

func (c *counted) press(t Thing) {
	c.p.tb.Helper()
	t.Click()
	c.presses++
}

// weighs puts what is not weighed yet of the build on the scale, part by part: a
// fiftieth heavier than the catalogue has it.
func (c *counted) weighs(build string) (parts int) {
	p := c.p
	p.tb.Helper()
	_, d := p.saved()
	all := map[string]string{}
	for _, b := range d.Builds {
		if b.ID == build {
			for _, q := range b.Parts {
				all[q.Name] = fmt.Sprint(math.Round(float64(q.Quantity) * q.Mass * 1.02))
			}
		}
	}
	c.press(p.The("button", "At the scale"))
	p.Until("the digits have the focus", "document.activeElement?.id === 'scale-digits'")
	for {
		now := p.atScale()
		if now.Focus != "scale-digits" || now.Part == "" {
			break
		}
		if all[now.Part] == "" {
			p.tb.Fatalf("%q is asked for, which is no part of %s", now.Part, build)
		}
		c.types(all[now.Part])
		c.key(kb.Enter)
		parts++
		p.Until("it is taken", "document.getElementById('scale-part')?.innerText.trim() !== "+quote(now.Part))
	}
	c.key(kb.Escape)
	p.Until("the scale is put away", shut)
	return parts
}

// adds types a part into the search and takes what comes first.
func (c *counted) adds(typed string) {
	p := c.p
	p.tb.Helper()
	lines := p.lines()
	c.types(typed)
	p.Until("it is offered", "document.querySelector('#add-list [role=option]')")
	c.key(kb.Enter)
	p.until(typed+" is in the list", func() bool { return p.lines() == lines+1 })
	p.Until("the next can be typed", "document.activeElement?.id === 'add' && document.activeElement.value === ''")
}

// A bike of 51 parts in three builds, every part with a mass of its own, from the
// empty page: frame, size and sets, a part typed, the kitchen scale, and two changes of the
// drivetrain.
func TestKeysForABikeOfThreeBuilds(t *testing.T) {
	t.Parallel()
	const most = 450
	p := openFirst(t, Desk)
	c := &counted{p: p}
	c.press(p.The("button", "Begin a bike"))
	c.press(p.Like("radio", "Rigid"))
	c.press(p.Like("radio", "Large"))
	for _, choice := range [][2]string{
		{"Drivetrain", "Crank gearbox, wide range, chain"}, {"Front wheel", "Front wheel, disc, dynamo hub, 622"}, {"Cockpit", "Flat bar, ergonomic grips, inner bar ends"},
		{"Lighting", "Dynamo lighting and charger"}, {"Racks", "Rear rack and low front rack, steel"}, {"Mudguards", "Mudguards, full length"},
	} {
		p.The("combobox", choice[0]).choose(choice[1])
		c.presses += 2 // its list is opened, and a line of it taken
	}
	p.look("newbike-desk")
	mustPass(p, "a new bike", "dialog[open]")
	c.press(p.The("button", "Make this bike"))
	p.until("the bike is there", func() bool { return p.lines() > 50 })
	if missing := p.says("#parts .missing"); missing != "" {
		t.Errorf("it lacks %q", missing)
	}
	p.Eval("document.getElementById('add').focus()")
	c.presses++
	sets := p.lines()
	c.adds("bell")
	t.Logf("%d parts, %d of them chosen at once: %d keys, %d presses", p.lines(), sets, c.keys, c.presses)
	_, d := p.saved()
	weighed := c.weighs(d.Builds[0].ID)
	t.Logf("%d weighed: %d keys, %d presses", weighed, c.keys, c.presses)
	for _, drive := range []string{"Gear hub, wide range, chain", "Derailleur, one ring, very wide"} {
		c.press(p.The("button", opens))
		c.press(p.Like("radio", drive))
		c.press(p.The("button", "Make a new build of it"))
		p.Until("it is made", shut)
		made := Eval[string](p, "document.querySelector('#build-B').value")
		weighed = c.weighs(made)
		t.Logf("%s, %d weighed: %d keys, %d presses", made, weighed, c.keys, c.presses)
	}
	t.Logf("%d keys and %d presses, %d in all", c.keys, c.presses, c.keys+c.presses)
	if n := c.keys + c.presses; n >= most {
		t.Errorf("%d keys and presses, %d are too many", n, most)
	}

	_, d = p.saved()
	if len(d.Builds) != 3 {
		t.Fatalf("%d builds", len(d.Builds))
	}
	if n := len(d.Builds[0].Parts); n < 51 {
		t.Errorf("the first build has %d parts", n)
	}
	drives := map[string]bool{}
	for _, b := range d.Builds {
		for _, q := range b.Parts {
			switch q.Kind {
			case "crank-gearbox", "gear-hub", "derailleur":
				drives[q.Kind] = true
			}
			if q.Basis != document.Weighed {
				t.Errorf("%s in %s is not weighed, but %s", q.Name, b.Name, q.Basis)
			}
		}
	}
	if len(drives) != 3 {
		t.Errorf("the drives are %v", drives)
	}
}
