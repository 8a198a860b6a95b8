package main

import (
	"context"
	"fmt"
	"slices"
	"time"

	"github.com/goccy/go-json"

	"steelyard/internal/bridge"
	"steelyard/internal/browsertest"
	"steelyard/internal/document"
)

// demoPair is the demo's first two builds with n parts each, bare or with the
// demo's rider, loads, ratings and weigh-ins; and the same after an edit:
// evaluated in turn, neither is found evaluated already.
func demoPair(n int, laden bool, edit func(*document.Document)) (texts [2]string, err error) {
	d, err := demo()
	if err != nil {
		return texts, err
	}
	d.Builds = d.Builds[:2]
	for i := range d.Builds {
		b := &d.Builds[i]
		if !laden {
			b.Ratings = nil
		}
		given := b.Parts
		b.Parts = nil
		for k := range n {
			p := given[k%len(given)]
			if k >= len(given) {
				p.ID = fmt.Sprintf("%s-%d", p.ID, k/len(given))
			}
			b.Parts = append(b.Parts, p)
		}
	}
	d.Show.Compare = []string{d.Builds[0].ID, d.Builds[1].ID}
	if laden {
		d.Show.State = document.Ridden
	} else {
		d.Riders, d.Loads, d.WeighIns, d.Show.Loads = nil, nil, nil, nil
	}
	return edited(d, edit)
}

// demo opens the demo.
func demo() (*document.Document, error) {
	d, problems := document.Open([]byte(new(bridge.Session).Functions()["demo"]()))
	if d == nil {
		return nil, fmt.Errorf("the demo does not open: %v", problems)
	}
	return d, nil
}

// edited are the texts of a document after an edit and after one more.
func edited(d *document.Document, edit func(*document.Document)) (texts [2]string, err error) {
	for i := range texts {
		edit(d)
		text, err := document.WriteCompact(d)
		if err != nil {
			return texts, err
		}
		texts[i] = string(text)
	}
	return texts, nil
}

// Edits: a part weighs a gram more, as after most steps in the page; or the
// document is another, of which nothing is known from before.
func heavier(d *document.Document) { d.Builds[0].Parts[0].Mass++ }
func another(d *document.Document) { d.Title += "!" }

// native returns how long one answer of some functions takes here, together: the
// median of batches.
func native(texts [2]string, names ...string) time.Duration {
	functions := new(bridge.Session).Functions()
	ask := func(text string) {
		for _, name := range names {
			functions[name](text)
		}
	}
	var took []time.Duration
	for began := time.Now(); time.Since(began) < 1500*time.Millisecond || len(took) < 6; {
		from := time.Now()
		ask(texts[0])
		ask(texts[1])
		took = append(took, time.Since(from)/2)
	}
	return median(took)
}

// inBrowser returns how long one answer of some functions takes in the page's
// program, together: text in, text out, as the page calls them; before, each time,
// other functions are called whose time does not count. The second answer is calls
// that find the text evaluated, which for evaluate is how long the texts take to pass.
// The compiler of WebAssembly has had its second go by then.
func inBrowser(p *browsertest.Page, texts [2]string, before []string, names ...string) (evaluating, passing time.Duration) {
	asked, err := json.Marshal(map[string][]string{"before": append([]string{}, before...), "names": names})
	if err != nil {
		panic(err) // text can be written
	}
	quoted, err := json.Marshal(texts)
	if err != nil {
		panic(err) // text can be written
	}
	// The clock has steps of a tenth of a millisecond: a round takes many answers,
	// whose beginnings fall anywhere between two steps.
	ms := browsertest.Eval[[2][]float64](p, `(async () => {
		const texts = `+string(quoted)+`, {before, names} = `+string(asked)+`;
		const time = async (patience, texts) => {
			const round = n => {
				let sum = 0;
				for (let i = 0; i < n; i++) for (const text of texts) {
					for (const name of before) steelyard[name](text);
					const from = performance.now();
					for (const name of names) steelyard[name](text);
					sum += performance.now() - from;
				}
				return sum / (n * texts.length);
			};
			const took = [], began = performance.now();
			let n = 1;
			while (performance.now() - began < patience || took.length < 6) {
				const each = round(n);
				took.push(each);
				n = Math.max(1, Math.min(2 * n, Math.round(10 / Math.max(each, 0.01) / texts.length)));
				await new Promise(done => setTimeout(done));
			}
			return took.slice(took.length / 2);
		};
		return [await time(4000, texts), await time(500, texts.slice(0, 1))];
	})()`)
	one := func(ms []float64) time.Duration { return time.Duration(median(ms) * float64(time.Millisecond)) }
	return one(ms[0]), one(ms[1])
}

// took is how long an evaluation takes natively and in Chromium, and the texts to
// pass there.
type took struct{ here, there, passing time.Duration }

// clock times evaluations of two builds of n parts.
func (t *tab) clock(p *browsertest.Page, n int, laden bool, edit func(*document.Document)) took {
	texts, err := demoPair(n, laden, edit)
	if err != nil {
		t.Fatal(err)
	}
	there, passing := inBrowser(p, texts, nil, "evaluate")
	return took{native(texts, "evaluate"), there, passing}
}

// program opens the program without the page round it.
func (t *tab) program(url string) *browsertest.Page {
	p := t.open(url, "frame.html", "")
	p.Until("the program is there", "window.steelyardFrame?.state === 'ready'")
	return p
}

// against sets Chromium against native Go.
func against(what string, k took) line {
	return line{what: what, measured: ms(k.there), reference: ms(k.here) + " natively", ratio: float64(k.there) / float64(k.here)}
}

// evaluation measures evaluations of two builds of 60 parts, and returns how long
// the one after an edit takes in Chromium.
func evaluation(ctx context.Context, page *site) (lines []line, edit time.Duration, err error) {
	url, err := page.url()
	if err != nil {
		return nil, 0, err
	}
	const n = 60
	err = inTabs(ctx, func(t *tab) {
		p := t.program(url)
		first := t.clock(p, n, false, heavier)
		edit = first.there
		// Natively no text changes hands between a page and a program.
		reckoned := against("  the rest, against native Go", took{here: first.here, there: first.there - first.passing})
		reckoned.bound, reckoned.ok = "3 at most", kept(reckoned.ratio <= 3)
		lines = append(lines,
			line{"evaluate two builds of 60 parts after an edit, in Chromium", ms(first.there), "", 0, "1 ms at most", kept(first.there <= time.Millisecond)},
			line{what: "  of which the texts take to pass between page and program", measured: ms(first.passing)},
			reckoned,
			against("  both, against native Go", first))
		lines = append(lines, against("  all of it new, as when a document is opened", t.clock(p, n, false, another)))
		lines = append(lines, against("  after an edit, with rider, load, limits and ratings", t.clock(p, n, true, heavier)))
	})
	return lines, edit, err
}

// answers measures what the chapters beside the report ask for, after an edit of
// the demo, which its rider and load are on and a day of so many stretches.
func answers(ctx context.Context, page *site) (lines []line, err error) {
	url, err := page.url()
	if err != nil {
		return nil, err
	}
	const stretches, many = 200, 10
	evaluated := []string{"evaluate"}
	build := func(builds int) (texts [2]string, err error) {
		d, err := demo()
		if err != nil {
			return texts, err
		}
		for len(d.Builds) < builds {
			d.CopyBuild(d.Builds[len(d.Builds)%3].ID, "Copy")
		}
		for i := len(d.Builds) - 1; len(d.Builds) > builds; i-- {
			if id := d.Builds[i].ID; !slices.Contains(d.Show.Compare, id) {
				d.Builds = slices.Delete(d.Builds, i, i+1)
			}
		}
		day := &d.Days[0]
		for i := 0; len(day.Stretches) < stretches; i++ {
			day.Stretches = append(day.Stretches, day.Stretches[i])
		}
		return edited(d, heavier)
	}
	err = inTabs(ctx, func(t *tab) {
		p := t.program(url)
		for _, c := range []struct {
			what   string
			builds int
			most   float64  // ms; 0 is no bound
			after  []string // what the page has asked for by then
			names  []string
		}{
			{fmt.Sprintf("evaluate %d builds after an edit", many), many, 6, nil, []string{"evaluate"}},
			{fmt.Sprintf("gears and climb of two builds, with a day of %d stretches", stretches), 2, 3, evaluated, []string{"gears", "climb"}},
			{"rough road of two builds at one speed", 3, 4, evaluated, []string{"road"}},
			{"  its curves", 3, 40, nil, []string{"roadCurves"}},
			{"steering of two builds, with curves", 3, 3, evaluated, []string{"steering"}},
			{"three builds side by side, ridden in pairs", 3, 0, nil, []string{"builds"}},
		} {
			texts, err := build(c.builds)
			if err != nil {
				t.Fatal(err)
			}
			there, _ := inBrowser(p, texts, c.after, c.names...)
			l := line{what: c.what, measured: ms(there)}
			if c.most > 0 {
				l.bound, l.ok = fmt.Sprintf("%g ms at most", c.most), kept(there <= time.Duration(c.most*float64(time.Millisecond)))
			}
			if c.after == nil {
				here := native(texts, c.names...)
				l.reference, l.ratio = ms(here)+" natively", float64(there)/float64(here)
			} else { // the figures at the head of the page are asked for first, whatever is open
				whole, _ := inBrowser(p, texts, nil, append(slices.Clone(c.after), c.names...)...)
				l.reference = ms(whole) + " with the report"
			}
			lines = append(lines, l)
		}
	})
	return lines, err
}

// growth measures how evaluations grow with the number of parts.
func growth(ctx context.Context, page *site) (lines []line, err error) {
	url, err := page.url()
	if err != nil {
		return nil, err
	}
	sizes := []int{60, 1000, 10000}
	most := sizes[len(sizes)-1]
	err = inTabs(ctx, func(t *tab) {
		p := t.program(url)
		lines = append(lines, against(fmt.Sprintf("  after an edit, of %d parts", most), t.clock(p, most, false, heavier)))
		anew := map[int]took{}
		for _, n := range sizes {
			anew[n] = t.clock(p, n, false, another)
		}
		for _, where := range []struct {
			name string
			took func(n int) time.Duration
		}{
			{"natively", func(n int) time.Duration { return anew[n].here }},
			{"in Chromium", func(n int) time.Duration { return anew[n].there }},
		} {
			for i := 1; i < len(sizes); i++ {
				m, n := sizes[i-1], sizes[i]
				perPart := func(n int) float64 { return float64(where.took(n).Microseconds()) / float64(2*n) }
				growth := perPart(n) / perPart(m)
				l := line{what: fmt.Sprintf("  two new builds of %d parts, %s", n, where.name), measured: ms(where.took(n)),
					reference: fmt.Sprintf("%.2f µs a part, %.2f with %d", perPart(n), perPart(m), m), ratio: growth}
				if n == most {
					// Linear is 1; caches that no longer hold everything cost something.
					l.bound, l.ok = "1.5 at most", kept(growth <= 1.5)
				}
				lines = append(lines, l)
			}
		}
	})
	return lines, err
}

func ms(d time.Duration) string { return fmt.Sprintf("%.2f ms", float64(d)/float64(time.Millisecond)) }

func median[T int64 | float64 | time.Duration](v []T) T {
	v = slices.Sorted(slices.Values(v))
	return v[len(v)/2]
}
