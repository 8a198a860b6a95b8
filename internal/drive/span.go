package drive

import "math"

// Apart is how far two gears must differ to be two: 2 %.
const Apart = 0.02

// Shift is a gear in the order of shifting.
type Shift struct {
	Gear
	Step   float64 // to the next, as a share: 0.15 is 15 % more; 0 of the highest
	Double bool    // more than one lever moves to the next
}

// Order returns the gears that differ by more than [Apart], the lowest first, as
// one shifts through them. Of gears that are as good as one it takes those that
// leave the fewest double shifts, and among these the ones on the smallest ring.
func Order(gears []Gear) []Shift {
	if len(gears) == 0 {
		return nil
	}
	var groups [][]Gear
	for _, g := range gears {
		if n := len(groups); n > 0 && g.Ratio <= groups[n-1][0].Ratio*(1+Apart) {
			groups[n-1] = append(groups[n-1], g)
		} else {
			groups = append(groups, []Gear{g})
		}
	}
	// The fewest double shifts from each gear up to the highest, and the next
	// gear on that way.
	cost, next := make([][]int, len(groups)), make([][]int, len(groups))
	for k := len(groups) - 1; k >= 0; k-- {
		cost[k], next[k] = make([]int, len(groups[k])), make([]int, len(groups[k]))
		if k == len(groups)-1 {
			continue
		}
		for i := range groups[k] {
			cost[k][i] = math.MaxInt
			for j := range groups[k+1] {
				c := cost[k+1][j]
				if groups[k][i].Moved(&groups[k+1][j]) > 1 {
					c++
				}
				if c < cost[k][i] {
					cost[k][i], next[k][i] = c, j
				}
			}
		}
	}
	at := 0
	for i := range cost[0] {
		if cost[0][i] < cost[0][at] {
			at = i
		}
	}
	order := make([]Shift, len(groups))
	for k := range groups {
		order[k] = Shift{Gear: groups[k][at]}
		at = next[k][at]
	}
	for k := range order[:len(order)-1] {
		order[k].Step = order[k+1].Ratio/order[k].Ratio - 1
		order[k].Double = order[k].Moved(&order[k+1].Gear) > 1
	}
	return order
}

// Span is what there is to say of all gears together. Shares are of 1: a range of
// 5 is 500 %.
type Span struct {
	Range     float64 // highest over lowest
	Distinct  int     // gears that differ by more than Apart
	Mean      float64 // step, geometric: Range^(1/(Distinct-1)) - 1
	Least     float64 // step
	Most      float64 // step
	Uneven    float64 // standard deviation of the steps' logarithms: 0 when all are the same
	Doubles   int     // double shifts from the lowest gear to the highest
	Overlaps  []Overlap
	Positions int // gears that the rule leaves, alike ones counted each
}

// Overlap is what two neighbouring rings have in common.
type Overlap struct {
	Small, Large int     // teeth
	Ratio        float64 // highest gear on the small ring over the lowest on the large one; below 1 is a gap
	Gears        int     // on either ring that lie in what both reach
}

// SpanOf returns what there is to say of gears, the lowest first.
func SpanOf(gears []Gear) Span {
	if len(gears) == 0 {
		return Span{}
	}
	order := Order(gears)
	s := Span{Range: gears[len(gears)-1].Ratio / gears[0].Ratio, Distinct: len(order), Positions: len(gears)}
	if n := float64(len(order) - 1); n > 0 {
		whole := math.Log(order[len(order)-1].Ratio / order[0].Ratio)
		s.Mean = math.Expm1(whole / n)
		s.Least = math.Inf(1)
		for _, o := range order[:len(order)-1] {
			s.Least, s.Most = min(s.Least, o.Step), max(s.Most, o.Step)
			off := math.Log1p(o.Step) - whole/n
			s.Uneven += off * off / n
			if o.Double {
				s.Doubles++
			}
		}
		s.Uneven = math.Sqrt(s.Uneven)
	}
	s.Overlaps = overlaps(gears)
	return s
}

func overlaps(gears []Gear) []Overlap {
	type reach struct {
		ring      int
		low, high float64
	}
	var rings []reach // by teeth
	for _, g := range gears {
		i := 0
		for i < len(rings) && rings[i].ring < g.Ring {
			i++
		}
		if i == len(rings) || rings[i].ring != g.Ring {
			rings = append(rings, reach{})
			copy(rings[i+1:], rings[i:])
			rings[i] = reach{g.Ring, g.Ratio, g.Ratio}
		}
		rings[i].low, rings[i].high = min(rings[i].low, g.Ratio), max(rings[i].high, g.Ratio)
	}
	var all []Overlap
	for i := range max(len(rings)-1, 0) {
		a, b := rings[i], rings[i+1]
		o := Overlap{Small: a.ring, Large: b.ring, Ratio: a.high / b.low}
		for _, g := range gears {
			if (g.Ring == a.ring || g.Ring == b.ring) && g.Ratio >= b.low && g.Ratio <= a.high {
				o.Gears++
			}
		}
		all = append(all, o)
	}
	return all
}
