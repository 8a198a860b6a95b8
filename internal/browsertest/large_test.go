package browsertest

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp/kb"

	"steelyard/internal/document"
)

// manyParts is the demo with ten thousand lines in build A, the demo's own over
// and over, and as many in its copy, build B, with one that differs.
func manyParts(t *testing.T) (text string, d *document.Document) {
	t.Helper()
	const n = 10000
	d, problems := document.Open([]byte(demo()))
	if d == nil {
		t.Fatal(problems)
	}
	d.Builds = d.Builds[:1]
	d.Riders, d.Loads, d.WeighIns, d.Show.Loads = nil, nil, nil, nil
	a := &d.Builds[0]
	given := a.Parts
	a.Parts = nil
	for i := range n {
		p := given[i%len(given)]
		p.ID = fmt.Sprintf("p%d", i)
		p.Name = fmt.Sprintf("%s no. %d", p.Name, i)
		p.Mass = float64(1 + i%50)
		a.Parts = append(a.Parts, p)
	}
	b := *a
	b.ID, b.Name = "copy", "Copy"
	b.Parts = append([]document.Part{}, a.Parts...)
	b.Parts[7].Mass += 100
	d.Builds = append(d.Builds, b)
	d.Show.Compare = []string{a.ID, b.ID}
	written, err := document.WriteCompact(d)
	if err != nil {
		t.Fatal(err)
	}
	return string(written), d
}

// longTasks notes how long the page was deaf at a time.
const longTasks = `window.deaf = []; new PerformanceObserver(l => window.deaf.push(...l.getEntries().map(e => Math.round(e.duration)))).observe({ type: 'longtask', buffered: true })`

// deaf returns the times, in ms, since the last call.
func (p *Page) deaf() []int {
	p.tb.Helper()
	wait(p, 100)
	return Eval[[]int](p, "window.deaf.splice(0)")
}

func TestTenThousandParts(t *testing.T) {
	t.Parallel()
	text, d := manyParts(t)
	t.Logf("the document has %d bytes", len(text))
	p := browser.Open(t, server.URL+"icon.svg", Desk)
	p.Preload(longTasks)
	p.Navigate(server.URL)
	p.started()
	p.deaf()
	from := time.Now()
	p.Chooses("many.json", text, p.Like("button", "Open").Click)
	const rounding = 0.06 // the total is shown to a tenth of a kilogram, as its ± is kilograms
	sum := 0.0
	for _, q := range d.Builds[0].Parts {
		sum += q.Mass * float64(q.Quantity)
	}
	p.until("the total is there", func() bool { return math.Abs(p.total()-sum/1000) < rounding })
	p.kept()
	t.Logf("opened and kept after %v, deaf for %v ms", time.Since(from), p.deaf())
	t.Logf("the page has %d elements", Eval[int](p, "document.querySelectorAll('*').length"))

	// One line is found among all, and edited; every figure follows. Fields are
	// looked up in the document: asking for them as a screen reader does makes the
	// browser describe tens of thousands of elements.
	const (
		search = "document.querySelector('#parts input[type=search]')"
		lines  = "document.querySelectorAll('#parts tr.part')"
	)
	from = time.Now()
	p.Eval(search + ".focus()")
	for _, letter := range "no. 9999" {
		p.typing(string(letter))
	}
	p.Until("the line is found", lines+".length === 1")
	t.Logf("found after %v, deaf for %v ms", time.Since(from), p.deaf())
	from = time.Now()
	last := d.Builds[0].Parts[9999]
	p.Eval("const e = document.querySelector('#parts tr.part .m input'); e.focus(); e.select()")
	p.typing("5432")
	want := sum/1000 + (5432-last.Mass)*float64(last.Quantity)/1000
	p.until(fmt.Sprintf("the total is %.2f", want), func() bool { return math.Abs(p.total()-want) < rounding })
	t.Logf("weighed after %v, deaf for %v ms", time.Since(from), p.deaf())
	p.kept()
	p.Key("z", kb.ModifierCtrl)
	p.Eval("document.activeElement.blur(); dispatchEvent(new KeyboardEvent('keydown', { key: 'z', ctrlKey: true, bubbles: true }))")
	p.until("the total is as before", func() bool { return math.Abs(p.total()-sum/1000) < rounding })
	t.Logf("undone, deaf for %v ms", p.deaf())

	// Without the search there are the lines again, and more of them to be had.
	p.Eval(search + ".focus(); " + search + ".select()")
	p.Key(kb.Backspace)
	p.Until("the list is there", lines+".length > 100")
	n := Eval[int](p, lines+".length")
	t.Logf("%d lines, deaf for %v ms", n, p.deaf())
	p.Eval("document.querySelector('#parts .morerow button').click()")
	p.Until("there are more lines", fmt.Sprintf("%s.length > %d", lines, n))
	t.Logf("more, deaf for %v ms", p.deaf())
	p.Eval("scrollTo(0, document.scrollingElement.scrollHeight)")
	p.Until("the end is in view", "scrollY > 1000")
	t.Logf("scrolled, deaf for %v ms", p.deaf())
	p.kept()
	from = time.Now()
	p.Reload()
	p.started()
	p.until("the total is there", func() bool { return math.Abs(p.total()-sum/1000) < rounding })
	t.Logf("reloaded after %v, deaf for %v ms", time.Since(from), p.deaf())
	if said := p.notices(); strings.Contains(said, "stopped") {
		t.Errorf("it says %q", said)
	}
}
