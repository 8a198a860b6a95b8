package report

import (
	"math"

	"steelyard/internal/mass"
)

// tally adds up masses that share sources of doubt, such as those of a group.
type tally struct {
	kg    float64
	lines int
	part  []float64 // signed standard uncertainty by mass source
	seen  []int     // the sources in part
}

// add counts a line with a sign.
func (t *tally) add(l *Line, sign float64) {
	t.kg += sign * l.Mass
	t.lines++
	if l.MassU == 0 {
		return
	}
	if n := l.source + 1 - len(t.part); n > 0 {
		t.part = append(t.part, make([]float64, n)...)
	}
	if t.part[l.source] == 0 {
		t.seen = append(t.seen, l.source)
	}
	t.part[l.source] += sign * l.MassU
}

// plus returns the expanded uncertainty and empties the tally.
func (t *tally) plus() float64 {
	v, sum := 0.0, 0.0
	for _, s := range t.seen {
		v += t.part[s] * t.part[s]
		sum += math.Abs(t.part[s])
		t.part[s] = 0 // a source that was seen twice counts once
	}
	t.seen, t.kg, t.lines = t.seen[:0], 0, 0
	return mass.Expanded(v, sum)
}

// buckets sorts the lines of a build into n buckets: index i holds the lines
// of bucket i.
func (w *Weighed) buckets(n int, bucket func(*Line) int) [][]int32 {
	count := make([]int, n+1)
	for i := range w.Lines {
		if w.Lines[i].OK {
			count[bucket(&w.Lines[i])]++
		}
	}
	lists := make([][]int32, n)
	all := make([]int32, w.Count)
	for b := range lists {
		lists[b], all = all[:0:count[b]], all[count[b]:]
	}
	for i := range w.Lines {
		if l := &w.Lines[i]; l.OK {
			b := bucket(l)
			lists[b] = append(lists[b], int32(i))
		}
	}
	return lists
}

// groups are the lines of a build by group.
func (w *Weighed) groups() [][]int32 {
	if w.byGroup == nil {
		w.byGroup = w.buckets(len(groups), groupOf)
	}
	return w.byGroup
}

func groupOf(l *Line) int       { return int(l.group) }
func carrierOfLine(l *Line) int { return int(l.carrier) }

// subsets tells the mass of every bucket that has lines, heaviest first.
func (w *Weighed) subsets(lists [][]int32, key func(int) string, t *tally) []Subset {
	out, masses := make([]Subset, 0, len(lists)), make([]float64, 0, len(lists))
	for b, lines := range lists {
		if len(lines) == 0 {
			continue
		}
		for _, i := range lines {
			t.add(&w.Lines[i], 1)
		}
		s := Subset{Key: key(b), Mass: gram.of(t.kg), Count: t.lines}
		s.Plus = gram.of(t.plus())
		out, masses = append(out, s), append(masses, s.Mass)
	}
	return gather(out, order(masses, nil))
}

// ownGroups tells the mass of the build's own parts by group, those included
// that are not on the bike in its state.
func (w *Weighed) ownGroups(t *tally) []Subset {
	lists := make([][]int32, len(groups))
	for i := range w.Lines[:w.own] {
		if l := &w.Lines[i]; l.OK || l.Off {
			lists[l.group] = append(lists[l.group], int32(i))
		}
	}
	return w.subsets(lists, groupKey, t)
}

func groupKey(i int) string   { return groups[i] }
func carrierKey(i int) string { return string(carrierKeys[i]) }
