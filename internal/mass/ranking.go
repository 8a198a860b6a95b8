package mass

import (
	"math"
	"sort"
)

// Resolution returns the standard uncertainty that a reading owes to the step
// of its display, such as 1 g of a kitchen scale: step/√12 (JCGM 100:2008,
// F.2.2.1).
func Resolution(step float64) float64 { return step / math.Sqrt(12) }

// Doubts returns the standard uncertainty of the mass of each source, kg, with
// all its pieces taken together, by source number. Several systems may name
// the same source, as two builds do that share a part; the system with most of
// it counts.
func Doubts(systems ...[]Item) []float64 {
	var most, here []float64
	for _, items := range systems {
		clear(here)
		for i := range items {
			if it := &items[i]; it.MassU != 0 {
				here = grow(here, it.MassSource)
				here[it.MassSource] += it.MassU
			}
		}
		if len(here) > 0 {
			most = grow(most, len(here)-1)
		}
		for s, u := range here {
			most[s] = max(most[s], u)
		}
	}
	return most
}

// Weighing is one line of a [Budget.Ranking]: what is gained by putting all
// the pieces of one mass source on a scale.
type Weighing struct {
	Source int
	Share  float64 // of the figure's variance that is owed to the source's mass now, 0 to 1
	Gain   float64 // variance taken away, in the square of the figure's unit, > 0
	Then   float64 // expanded uncertainty left once this source and all above it are weighed
}

// byGain sorts by gain, the largest first, then by source.
type byGain []Weighing

func (l byGain) Len() int      { return len(l) }
func (l byGain) Swap(i, j int) { l[i], l[j] = l[j], l[i] }

func (l byGain) Less(i, j int) bool {
	a, b := &l[i], &l[j]
	return a.Gain > b.Gain || a.Gain == b.Gain && a.Source < b.Source
}

// Ranking lists the mass sources that are worth weighing, the one that narrows
// the figure most first; equal ones follow their source numbers. Doubts gives
// the standard uncertainty of each source's mass now, see [Doubts]; scale that
// of one weighing of all its pieces together, kg, see [Resolution]. A source
// that is known as well as the scale would tell it, or that moves nothing, is
// left out. What is owed to places stays, whatever is weighed.
//
// Sources are independent, so each gain c² (1 - (scale/doubt)²) stands by
// itself, and no other choice of k sources narrows the figure more than the
// first k of the list.
func (b *Budget) Ranking(doubts []float64, scale float64) []Weighing {
	total := b.Variance()
	if total == 0 {
		return nil
	}
	var list []Weighing
	left, sum := 0.0, 0.0 // variance, and sum of magnitudes, that no weighing takes away
	for i := range b.place {
		c := &b.place[i]
		left += c.X*c.X + c.Y*c.Y + c.Z*c.Z
		sum += math.Abs(c.X) + math.Abs(c.Y) + math.Abs(c.Z)
	}
	for s, c := range b.mass {
		v, size := c*c, math.Abs(c)
		gain, r := 0.0, 1.0
		if s < len(doubts) && doubts[s] > scale {
			r = scale / doubts[s]
			gain = v * (1 - r*r)
		}
		if gain > b.rounding() {
			if list == nil {
				list = make([]Weighing, 0, len(b.mass)-s)
			}
			list = append(list, Weighing{Source: s, Share: v / total, Gain: gain})
			v -= gain
			size *= r
		}
		left += v
		sum += size
	}
	sort.Sort(byGain(list))
	// From the end upwards, so that small remainders are added, not left over
	// from the difference of large numbers.
	for i := len(list) - 1; i >= 0; i-- {
		w := &list[i]
		w.Then = Expanded(left, sum)
		left += w.Gain
		sum += math.Abs(b.mass[w.Source]) * (1 - scale/doubts[w.Source])
	}
	return list
}
