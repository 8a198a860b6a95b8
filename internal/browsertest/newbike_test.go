package browsertest

import (
	"strings"
	"testing"

	"steelyard/internal/document"
)

// A whole plausible bike is made on a phone in five presses, and the figures of its
// frame are then typed over, or pasted: nothing changes before it is said, what
// contradicts the rest is told, and one step takes it back.
func TestNewBikeAndItsFrame(t *testing.T) {
	t.Parallel()
	const most = 5
	look := Phone
	look.Dark = true
	p := openFirst(t, look)
	c := &counted{p: p}
	c.press(p.The("button", "Begin a bike"))
	p.look("newbike-phone")
	// A small frame comes for smaller wheels too, a large one does not.
	p.Like("radio", "Small").Click()
	p.Eval("document.querySelector('[name=newbike-wheel]').scrollIntoView({ block: 'center' })")
	p.Like("radio", "584 mm").Click()
	p.Until("its wheels are smaller, and so are the sets of wheels", "[...document.querySelectorAll('dialog.newbike .fitted select')].filter(s => s.value.endsWith('-584')).length === 2")
	p.look("newbike-wheels-phone")
	p.Eval("document.querySelector('dialog.newbike').scrollTo(0, 0)")
	c.press(p.Like("radio", "Full suspension"))
	p.Until("it is a suspended one", "document.querySelector('dialog.newbike .among.frame .chosen input').value === 'full'")
	c.press(p.Like("radio", "Large"))
	p.Until("there are the usual wheels only", "document.querySelectorAll('dialog.newbike input[name=newbike-wheel]').length === 1 && document.querySelector('dialog.newbike input[name=newbike-wheel]:checked').value === '622'")
	mustPass(p, "a new bike", "dialog[open]")
	p.Eval("document.querySelector('dialog.newbike').scrollTo(0, 400)")
	p.look("newbike-phone-lower")
	c.press(p.The("button", "Make this bike"))
	p.until("the bike is there", func() bool { return p.lines() > 40 })
	t.Logf("%d presses make a bike of %d parts", c.presses, p.lines())
	if c.presses > most {
		t.Errorf("%d presses, %d are too many", c.presses, most)
	}
	if total := p.total(); total < 12 || total > 18 {
		t.Errorf("it weighs %v kg", total)
	}
	if shown := Eval[bool](p, "document.querySelector('#parts .missing:not([hidden])')?.checkVisibility() ?? false"); shown {
		t.Errorf("it lacks %q", p.says("#parts .missing"))
	}
	_, d := p.saved()
	frame := func(d *document.Document) document.Frame { return d.Builds[0].Frame }
	if b := d.Builds[0]; b.Rear.Travel != 120 || b.Frame.Stack != 645 || len(d.Builds) != 1 {
		t.Fatalf("the bike is %+v", b.Frame)
	}
	before := frame(d)

	// One figure is typed over.
	p.Like("textbox", "Reach").Fill("480")
	p.until("it is taken", func() bool { _, d = p.saved(); return frame(d).Reach == 480 })
	before.Reach = 480

	// A table of three sizes, its wheelbase 40 mm too long.
	p.The("button", "Paste a maker’s table…").Click()
	p.Until("it can be pasted", "document.activeElement?.matches('dialog.frametable textarea')")
	p.types("Geometry\tM\tL\tXL\nStack\t622\t641\t660\nReach\t450\t474\t500\nLenkwinkel\t66°\t65,5°\t65,5°\nHead tube\t12.8\t15.0\t17.0\nStandover\t760\t780\t800\nWheelbase\t1245\t1282\t1300\n")
	p.Until("the sizes are asked for", "document.querySelectorAll('dialog.frametable .sizes input').length === 3")
	if d = p.keptDocument(); frame(d) != before || !Eval[bool](p, "document.querySelector('dialog.frametable .go').disabled") {
		t.Error("something is taken before a size is chosen")
	}
	p.The("radio", "L").Click()
	p.Until("the contradiction is told", "document.querySelector('dialog.frametable .off')?.innerText.includes('1282')")
	p.look("table-phone")
	mustPass(p, "a maker's table", "dialog[open]")
	if left := p.says("dialog.frametable ul.left"); !strings.Contains(left, "Standover") {
		t.Errorf("not used are %q", left)
	}
	p.Eval("document.querySelector('dialog.frametable').scrollTo(0, 500)")
	p.look("table-phone-lower")
	p.The("button", "Take these figures").Click()
	want := before
	want.Stack, want.Reach, want.HeadAngle, want.HeadTube = 641, 474, 65.5, 150
	p.until("it is taken", func() bool { _, d = p.saved(); return frame(d) == want })
	p.command("Undo").Click()
	p.until("one step takes it back", func() bool { _, d = p.saved(); return frame(d) == before })

	// The room in its main triangle, and the outline to cut cardboard by.
	p.unfold("#limits details.fold")
	p.Until("it is said that limits are reckoned with a load", "/with its load/.test(document.querySelector('#limits .quiet')?.innerText ?? '') && !/centre of mass/.test(document.querySelector('#limits .quiet').innerText)")
	p.Until("the largest frame bag is told", "document.querySelector('#limits .framebag')?.innerText.includes('±')")
	name, svg := p.Saves(p.The("button", "Outline at 1:1, SVG").Click)
	if !strings.HasSuffix(name, "frame bag 1-1.svg") || !strings.Contains(svg, `mm" viewBox="0 0 `) || !strings.Contains(svg, "±8 mm") || !strings.Contains(svg, "beside the shock") && !strings.Contains(svg, "Shock") {
		t.Errorf("%s: %.600s", name, svg)
	}
	p.look("framebag-phone")
	mustPass(p, "room for it", "#limits")
}
