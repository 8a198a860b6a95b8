package browsertest

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"steelyard/internal/report"
)

// sets chooses builds and loads for both sides and waits until the page shows
// the difference of the total that a document with that choice has.
func (p *Page) sets(state string, builds, loads [2]string) *report.Report {
	p.tb.Helper()
	for i, letter := range []string{"A", "B"} {
		p.The("combobox", "Choose build "+letter).choose(builds[i])
		p.loads(letter, loads[i])
	}
	p.press(state)
	text, _ := p.saved()
	r := weigh(p.tb, text)
	if r.Difference == nil {
		p.tb.Fatal("nothing is compared")
	}
	var want report.Change
	for _, c := range r.Difference.Figures {
		if c.Key == "total" {
			want = c
		}
	}
	p.until(fmt.Sprintf("the totals differ by %.2f kg", want.Delta/1000), func() bool {
		row := Eval[[]float64](p, `[...document.querySelectorAll('#balance .num')].slice(0, 3).map(`+read+`)`)
		const near = 0.06 // a rider's mass is rounded to a tenth of a kilogram, by its ±
		return len(row) == 3 && math.Abs(row[0]-want.A/1000) < near && math.Abs(row[1]-want.B/1000) < near && math.Abs(row[2]-want.Delta/1000) < near
	})
	return r
}

// loads puts a load on a side: beside the build, or, where a phone leaves that out
// while both carry the same, in the chapter on loads.
func (p *Page) loads(letter, name string) {
	p.tb.Helper()
	if choice, ok := p.find("combobox", "Load of "+letter, false); ok {
		choice.choose(name)
		return
	}
	p.unfold("#load details.fold")
	p.Until("the load can be chosen", "[...document.querySelectorAll('#load .toggle.named')].some(b => b.innerText.trim() === "+quote(name)+")")
	p.Eval("[...document.querySelectorAll('#load .toggle.named')].find(b => b.innerText.trim() === " + quote(name) + ").click()")
	side := "[...document.querySelectorAll('#load .toggle.letter')].find(b => b.innerText.includes(" + quote(letter) + "))"
	p.Until("it is worked on", "[...document.querySelectorAll('#load .toggle.named')].find(b => b.innerText.trim() === "+quote(name)+")?.ariaPressed === 'true' && "+side)
	p.Eval("(b => b.ariaPressed === 'true' || b.click())(" + side + ")")
	p.Until("the side carries it", side+"?.ariaPressed === 'true'")
}

// Two loads on one bike differ by what is packed, and by nothing that is bolted
// on; two bikes with the same rider and load differ by their parts alone, and far
// less doubtfully than either is known.
func TestCompareLoadsAndBuilds(t *testing.T) {
	t.Parallel()
	for _, look := range []Look{Desk, Phone} {
		t.Run(fmt.Sprint(look.Width), func(t *testing.T) {
			t.Parallel()
			p := openPage(t, look)
			_, d := p.saved()
			one, other := d.Builds[0].Name, d.Builds[1].Name
			tour, weekend := d.Loads[0].Name, d.Loads[1].Name
			said := func() string { return p.says("#difference") }
			has := func(r *report.Report, prefix string) bool {
				return slices.ContainsFunc(r.Difference.Parts, func(c report.PartChange) bool {
					return strings.HasPrefix(c.A+" "+c.B, prefix) || strings.Contains(c.A+" "+c.B, " "+prefix)
				})
			}

			r := p.sets("loaded", [2]string{one, one}, [2]string{tour, weekend})
			for _, c := range r.Difference.Parts {
				if id := max(c.A, c.B); !strings.HasPrefix(id, "bag:") && !strings.HasPrefix(id, "good:") && !strings.HasPrefix(id, "rider:") {
					t.Errorf("on one bike %s differs", c.Name)
				}
			}
			if !has(r, "good:") {
				t.Error("the loads do not differ by any goods")
			}
			p.until("the page lists what differs", func() bool { return strings.Contains(said(), r.Difference.Parts[0].Name) })
			if s := p.says("#balance"); !strings.Contains(s, one) {
				t.Errorf("the sides are called %.200q", s)
			}

			r = p.sets("with rider", [2]string{one, other}, [2]string{tour, tour})
			for _, prefix := range []string{"bag:", "good:", "rider:"} {
				if has(r, prefix) {
					t.Errorf("with the same rider and load something with %s differs", prefix)
				}
			}
			for _, c := range r.Difference.Figures {
				if c.Key == "total" && !(c.Plus < 0.3*plus(r, "total")) {
					t.Errorf("the difference is known within %g g, the total within %g g", c.Plus, plus(r, "total"))
				}
			}
			p.until("the page lists the parts that differ", func() bool { return strings.Contains(said(), r.Difference.Parts[0].Name) })
			p.unfold("#limits details.fold")
			p.until("braking is told of both", func() bool { return len(p.cells("#limits .road", "Braking on the level")) == 2 })
		})
	}
}

// On a phone a note lies over what is at the bottom of the window: that can be
// pressed all the same, at once.
func TestNoteLetsPressesThrough(t *testing.T) {
	t.Parallel()
	p := openPage(t, Phone)
	button := p.Like("button", "At the scale")
	Ask[bool](button, `e => { window.note = () => document.querySelector('.notes .note')?.getBoundingClientRect(); return true }`)
	// A note does not stay: where it is gone before it could be pressed, another
	// is called up.
	var at []float64
	for try := 1; ; try++ {
		p.saved()
		p.Until("it says that it is saved", "window.note()")
		Ask[bool](button, `e => { const r = e.getBoundingClientRect(), n = window.note(); scrollBy(0, r.top + r.height / 2 - n.top - n.height / 2); return true }`)
		wait(p, 100)
		at = Ask[[]float64](button, "e => (r => [r.left + r.width / 2, r.top + r.height / 2])(e.getBoundingClientRect())")
		covered := Eval[bool](p, fmt.Sprintf("(n => !!n && n.left < %v && %[1]v < n.right && n.top < %v && %[2]v < n.bottom)(window.note())", at[0], at[1]))
		if covered {
			break
		}
		if try == 5 {
			t.Fatalf("no note covers the button at %v", at)
		}
	}
	p.ClickAt(at[0], at[1])
	p.Until("the scale is open", "document.querySelector('dialog.scale')?.open")
}

// plus is the ± of a figure of side A.
func plus(r *report.Report, key string) float64 {
	for _, f := range r.Sides[0].Figures {
		if f.Key == key {
			return f.Plus
		}
	}
	return math.NaN()
}
