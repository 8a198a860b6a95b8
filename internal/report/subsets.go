package report

import (
	"steelyard/internal/assembly"
)

// buckets sorts the lines of a build into n buckets: index i holds the lines
// of bucket i.
func (w *Weighed) buckets(n int, bucket func(*assembly.Line) int) [][]int32 {
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
		w.byGroup = w.buckets(len(assembly.Groups), groupOf)
	}
	return w.byGroup
}

func groupOf(l *assembly.Line) int       { return int(l.Group) }
func carrierOfLine(l *assembly.Line) int { return int(l.Carrier) }

// subsets writes the mass of every bucket that has lines, heaviest first.
func (w *Weighed) subsets(lists [][]int32, key func(int) string, t *assembly.Tally) []Subset {
	out, masses := make([]Subset, 0, len(lists)), make([]float64, 0, len(lists))
	for b, lines := range lists {
		if len(lines) == 0 {
			continue
		}
		for _, i := range lines {
			t.Add(&w.Lines[i], 1)
		}
		s := Subset{Key: key(b), Mass: gram.of(t.Mass), Count: t.Lines}
		s.Plus = gram.of(t.Plus())
		out, masses = append(out, s), append(masses, s.Mass)
	}
	return gather(out, order(masses, nil))
}

// ownGroups writes the mass of the build's own parts by group, including those
// that are not on the bike in its state.
func (w *Weighed) ownGroups(t *assembly.Tally) []Subset {
	lists := make([][]int32, len(assembly.Groups))
	for i := range w.Lines[:w.Own] {
		if l := &w.Lines[i]; l.OK || l.Off {
			lists[l.Group] = append(lists[l.Group], int32(i))
		}
	}
	return w.subsets(lists, groupKey, t)
}

func groupKey(i int) string   { return assembly.Groups[i] }
func carrierKey(i int) string { return string(assembly.CarrierKeys[i]) }
