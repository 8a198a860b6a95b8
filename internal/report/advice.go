package report

import (
	"math"

	"steelyard/internal/mass"
)

// A list of advice is short: nobody weighs fifty parts to move a figure by a
// gram.
const (
	leastAdvice = 3    // lines, if there are as many
	mostAdvice  = 12   // lines, unless more of them settle a difference
	mostSettle  = 40   // lines at most
	worthWhile  = 0.98 // further lines must bring ± below this share of what it was
)

// enough reports whether a list of n lines can end before a line that takes the
// expanded uncertainty from now to then.
func enough(n int, now, then float64) bool {
	return n >= mostAdvice || n >= leastAdvice && then > now*worthWhile
}

// scale is the standard uncertainty, kg, of a part weighed on a scale that
// reads to 1 g, as a document tells it: weighed, half-width 1 g.
var scale = mass.Rectangular(1 / gram.perSI)

// adviseTotal says what to weigh first for a better total.
func (t *workspace) adviseTotal(w *Weighed, doubts []float64) []Advice {
	t.one.Reset()
	w.figures.charge(&t.one, total, 1)
	list := t.one.Ranking(doubts, scale)
	out := make([]Advice, 0, min(len(list), mostAdvice))
	now := w.figures.plus[total]
	first := firstLines(t.src.Len(), w)
	// Lines that are equal come in the order of the list, as source numbers depend
	// on what other builds there are. The uncertainties stay with the places in the
	// ranking.
	for i := 0; i < len(list); {
		n := i + 1
		for n < len(list) && list[n].Gain == list[i].Gain {
			n++
		}
		for same := list[i:n]; len(same) > 1; same = same[1:] {
			for k := 1; k < len(same); k++ {
				if first[same[k].Source] < first[same[0].Source] {
					same[k].Source, same[0].Source = same[0].Source, same[k].Source
				}
			}
		}
		i = n
	}
	for _, line := range list {
		if enough(len(out), now, line.Then) {
			break
		}
		out = append(out, advice(line, now, w, first))
		now = line.Then
	}
	return out
}

// adviseDifference says what to weigh first to settle which build is heavier.
// A line settles it when the difference, were it to stay as it is, would then
// be larger than its ±. Weighing moves the difference too, so that is a fair
// expectation and no promise.
func (t *workspace) adviseDifference(a, b *Weighed) []Advice {
	t.both.Reset()
	a.figures.charge(&t.both, total, -1)
	b.figures.charge(&t.both, total, 1)
	delta := math.Abs(b.figures.of[total].Value - a.figures.of[total].Value)
	now := t.both.Expanded()
	undecided := delta < now
	list := t.both.Ranking(mass.Doubts(a.Items, b.Items), scale)
	settled := len(list) // the first line that settles it
	if undecided {
		for i, line := range list {
			if delta >= line.Then {
				settled = i
				break
			}
		}
	}
	out := make([]Advice, 0, min(len(list), mostAdvice))
	firstA, firstB := firstLines(t.src.Len(), a), firstLines(t.src.Len(), b)
	for i, line := range list {
		wanted := undecided && settled < len(list) && settled < mostSettle && i <= settled
		if !wanted && enough(len(out), now, line.Then) {
			break
		}
		w, first := b, firstB
		if first[line.Source] < 0 {
			w, first = a, firstA
		}
		v := advice(line, now, w, first)
		v.Settles = i >= settled
		out = append(out, v)
		now = line.Then
	}
	return out
}

// firstLines gives the first line of a build for every source of mass, -1 for
// a source that the build does not have.
func firstLines(n int, w *Weighed) []int32 {
	first := make([]int32, n)
	for i := range first {
		first[i] = -1
	}
	for i := len(w.Lines) - 1; i >= 0; i-- {
		if w.Lines[i].OK {
			first[w.Lines[i].Source] = int32(i)
		}
	}
	return first
}

func advice(line mass.Weighing, now float64, w *Weighed, first []int32) Advice {
	p := &w.Build.Parts[first[line.Source]]
	return Advice{
		Part: p.ID, Build: w.Build.ID, Name: p.Name,
		Now: gram.of(now), Then: gram.of(line.Then),
	}
}
