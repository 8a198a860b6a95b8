package browsertest

import (
	"encoding/csv"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/chromedp/kb"

	"steelyard/internal/report"
)

// tabled is what the table of all builds shows of one figure.
type tabled struct {
	Heads []string   `json:"heads"`
	Cells [][]string `json:"cells"` // of each build its value and its difference, "" for none
	Best  []bool     `json:"best"`
	Said  []string   `json:"said"` // the verdicts
	Sort  string     `json:"sort"`
}

func (p *Page) tabled(figure string) tabled {
	p.tb.Helper()
	return Eval[tabled](p, `(() => {
		const table = document.querySelector('#builds table.all');
		const row = [...table.rows].find(r => r.cells[0].innerText.trim().startsWith(`+quote(figure)+`));
		const text = n => n ? (n.querySelector('.whole').textContent + n.querySelector('.rest').textContent).replace('−', '-').replace(/[\s\u202f]/g, '') : '';
		const cells = [...row.cells].slice(1);
		return {
			heads: [...table.tHead.rows[0].cells].slice(1).map(c => c.querySelector('.of').innerText.trim().replace(/^[AB]\s+/, '')),
			cells: cells.map(c => [text(c.querySelector('.value .num')), text(c.querySelector('.against .num'))]),
			best: cells.map(c => c.classList.contains('best') && c.innerText.includes('best')),
			said: cells.map(c => c.querySelector('.said')?.innerText.trim() ?? ''),
			sort: row.cells[0].getAttribute('aria-sort') ?? '',
		};
	})()`)
}

// mustShow holds what the table shows of a figure against the core's.
func (p *Page) mustShow(key string, per float64) {
	p.tb.Helper()
	text, _ := p.saved()
	s := report.EvaluateText([]byte(text)).SideBySide()
	for _, c := range s.Chapters {
		for _, r := range c.Rows {
			if r.Key != key {
				continue
			}
			got := p.tabled(r.Label)
			for i, b := range s.Builds {
				at := slices.Index(got.Heads, b.Name)
				if at < 0 {
					p.tb.Fatalf("%s has no column among %q", b.Name, got.Heads)
				}
				var shown [2]float64
				for k := range shown {
					if _, err := fmt.Sscan(got.Cells[at][k], &shown[k]); err != nil && !(k == 1 && b.ID == s.Base) {
						p.tb.Errorf("%s of %s shows %q", key, b.Name, got.Cells[at])
					}
				}
				if math.Abs(shown[0]-r.Cells[i].Value/per) > 0.006 || math.Abs(shown[1]-r.Cells[i].Delta/per) > 0.006 {
					p.tb.Errorf("%s of %s shows %v, want %v and %v", key, b.Name, shown, r.Cells[i].Value/per, r.Cells[i].Delta/per)
				}
				if got.Best[at] != (r.Best == b.ID) {
					p.tb.Errorf("%s: is %s the best? The page says %v, the core %q", key, b.Name, got.Best[at], r.Best)
				}
				if undecided := strings.Contains(got.Said[at], "undecided"); undecided != (r.Cells[i].Verdict == report.Undecided) {
					p.tb.Errorf("%s of %s: the page says %q, the core %s", key, b.Name, got.Said[at], r.Cells[i].Verdict)
				}
			}
			return
		}
	}
	p.tb.Errorf("the core has no figure %s", key)
}

// The chapter is closed and says what it comes to; open, it shows what the core
// says of every build that is ticked, against the base that is chosen, in the
// order that is wanted; its table can be taken along.
func TestAllBuilds(t *testing.T) {
	t.Parallel()
	for _, look := range []Look{Desk, Phone} {
		t.Run(fmt.Sprint(look.Width), func(t *testing.T) {
			t.Parallel()
			p := openPage(t, look)
			p.until("the closed chapter names the lightest", func() bool {
				return strings.HasPrefix(p.says("#builds .gist"), "Lightest of 3: Single-ring derailleur, 15.79")
			})
			if n := Eval[int](p, "document.querySelectorAll('#builds table').length"); n != 0 {
				t.Error("the closed chapter has a table")
			}
			p.unfold("#builds details")
			p.Until("the table is there", "document.querySelector('#builds table.all')")
			p.mustShow("total", 1000)
			p.mustShow("group.drivetrain", 1000)
			p.mustShow("unsprung_rear", 1000)
			if bars := Eval[[]int](p, "[document.querySelectorAll('#builds svg.stacks .whisker').length, document.querySelectorAll('#builds .stackkey li').length]"); bars[0] != 3 || bars[1] < 8 {
				t.Errorf("the chart has %d whiskers and %d entries in its key", bars[0], bars[1])
			}

			// The chart by itself, as it is seen, with what its hatchings mean.
			name, chart := p.Saves(p.Like("button", "Save chart").Click)
			if !strings.HasSuffix(name, ".svg") || strings.Contains(chart, "class=") || strings.Contains(chart, "var(") || !strings.Contains(chart, "font-family:Go") {
				t.Errorf("%s: %.300q", name, chart)
			}
			drawn := Eval[[]int](p, `(async text => {
				const image = new Image();
				image.src = 'data:image/svg+xml;charset=utf-8,' + encodeURIComponent(text);
				await image.decode();
				return [image.naturalWidth, image.naturalHeight, text.match(/<text/g).length, text.match(/<(rect|path)[^>]* stroke="/g).length];
			})(`+quote(chart)+")")
			if drawn[0] < 300 || drawn[1] < 200 || drawn[2] < 15 || drawn[3] < 20 {
				t.Errorf("the chart is drawn with %v", drawn)
			}

			// Another base.
			p.Eval("document.querySelectorAll('#builds .asbase input')[2].click()")
			p.until("the derailleur is the base", func() bool { _, d := p.saved(); return d.Show.Base == "derailleur" })
			p.until("it has no difference", func() bool { return p.tabled("Total mass").Cells[2][1] == "" })
			p.mustShow("total", 1000)

			// Sorted one way, the other, and as they were.
			was := p.tabled("Total mass").Heads
			for _, c := range []struct {
				sort string
				want []string
			}{{"ascending", []string{was[2], was[1], was[0]}}, {"descending", was}, {"", was}} {
				p.Eval("[...document.querySelectorAll('#builds th[scope=row] button')].find(b => b.innerText.startsWith('Total mass')).click()")
				p.until("the columns are sorted: "+c.sort, func() bool { return p.tabled("Total mass").Sort == c.sort })
				if got := p.tabled("Total mass").Heads; !slices.Equal(got, c.want) {
					t.Errorf("sorted %q: %q, want %q", c.sort, got, c.want)
				}
			}

			// One less, and the last of all stays.
			tick := func(i int) {
				p.Eval(fmt.Sprintf("document.querySelectorAll('#builds .ticks input')[%d].click()", i))
			}
			tick(1)
			p.until("two columns are left", func() bool { return len(p.tabled("Total mass").Heads) == 2 })
			p.mustShow("total", 1000)
			tick(0)
			p.until("one column is left", func() bool { return len(p.tabled("Total mass").Heads) == 1 })
			if !Eval[bool](p, "document.querySelectorAll('#builds .ticks input')[2].disabled") {
				t.Error("the last build can be unticked")
			}
			tick(0)
			tick(1)
			p.until("all are back", func() bool { return len(p.tabled("Total mass").Heads) == 3 })
			if _, d := p.saved(); len(d.Show.Table) != 0 {
				t.Errorf("all are ticked, and %q are listed", d.Show.Table)
			}

			// Taken along, in all formats.
			p.Eval("navigator.clipboard.writeText = async text => { window.copied = text }")
			take := func(item string) string {
				p.Eval("window.copied = ''")
				p.Like("button", "Copy this table: Figures of all builds").Click()
				p.The("button", item).Click()
				p.Until("it is copied", "window.copied")
				return Eval[string](p, "window.copied")
			}
			rows, err := csv.NewReader(strings.NewReader(strings.TrimPrefix(take("as CSV"), "\ufeff"))).ReadAll()
			if err != nil || len(rows) < 20 || !slices.Contains(rows[0], "Rear gear hub Δ ±") {
				t.Errorf("%v: %.200q", err, rows)
			}
			if got := take("as CSV, decimal comma"); !strings.Contains(got, ";total;") {
				t.Errorf("%.200s", got)
			}
			if got := take("as Markdown"); !strings.Contains(got, "| Total mass |") || !strings.Contains(got, "weighed (") {
				t.Errorf("%.300s", got)
			}

			if look.Width == Phone.Width {
				// It scrolls by the keyboard as well, and the names of the figures stay.
				p.Eval("(e => { e.scrollIntoView({ block: 'start' }); e.focus() })(document.querySelector('#builds .scroll'))")
				for range 5 {
					p.Key(kb.ArrowRight)
				}
				p.Until("it has scrolled", "document.querySelector('#builds .scroll').scrollLeft > 60")
				off := Eval[float64](p, "(e => e.querySelector('tbody th[scope=row]').getBoundingClientRect().left - e.getBoundingClientRect().left)(document.querySelector('#builds .scroll'))")
				if math.Abs(off) > 1 {
					t.Errorf("the first column has gone %v px aside", off)
				}
			}
			if bad := Eval[touched](p, touchable).Bad; look.Touch && len(bad) > 0 {
				t.Errorf("too small for a finger: %q", bad)
			}
			mustPass(p, "all builds", "#builds")
			p.speak("de")
			p.Until("it is in German", "document.querySelector('#builds')?.innerText.includes('Aufbauten in der Tabelle') || document.querySelector('#builds')?.innerText.toLowerCase().includes('aufbauten in der tabelle')")
			mustPass(p, "all builds in German", "#builds")
		})
	}
}

// The README shows the table of all builds as the demo opens it.
func TestAllBuildsFromTheirTop(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	p.unfold("#builds details")
	p.Until("each build is ridden", "/Weave|Climb/i.test(document.querySelector('#builds table.all')?.innerText ?? '')")
	p.Eval("document.querySelector('#builds').scrollIntoView()")
	p.Until("table and heading are in view", "(r => r.top >= 0 && r.top < 200)(document.querySelector('#builds h2').getBoundingClientRect()) && document.querySelector('#builds table.all').getBoundingClientRect().top < innerHeight")
	p.keepScreenshot("builds")
}

// Two to four builds are drawn in a row, with the figures that are picked and
// where the masses of each come from; what is not in the row is not told of.
func TestBuildsInARow(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	p.publishing()
	p.after(p.The("radio", "Builds in a row").Click)
	_, svg := p.savesSVG()
	d := readSVG(t, svg)
	all := strings.Join(d.texts, " ")
	for _, want := range []string{"Crank gearbox", "Rear gear hub", "Single-ring derailleur", "Unsprung mass at the rear", "Difference from Crank gearbox", "Single-ring derailleur: 55 lines", "qualified mechanic"} {
		if !strings.Contains(all, want) {
			t.Errorf("%q is not in the row", want)
		}
	}
	p.Eval("document.querySelector('dialog.publish .picks').open = true")
	p.tick("Load on the front wheel")
	p.tick("Rear gear hub")
	_, svg = p.savesSVG()
	all = strings.Join(readSVG(t, svg).texts, " ")
	for _, gone := range []string{"Rear gear hub", "Load on the front wheel"} {
		if strings.Contains(all, gone) {
			t.Errorf("%q is still in the row", gone)
		}
	}
	if !Eval[bool](p, "[...document.querySelectorAll('dialog.publish input[name^=publish-row]')].filter(e => e.checked).every(e => e.disabled)") {
		t.Error("a row of one can be asked for")
	}
	_, img := p.savesPNG()
	if b := img.Bounds(); b.Dx() != 1200 || b.Dy() < 400 {
		t.Errorf("the PNG is %v", b)
	}
	mustPass(p, "publishing a row", "dialog[open]")
}
