package effort

import "math"

// Point is one of a track: how far along the road it lies, and how high, m.
type Point struct{ Distance, Height float64 }

// MaxStretches is how many stretches a day may have.
const MaxStretches = 2000

// Profile makes stretches of a track. Points that go back, or are no numbers,
// are left out. Heights are smoothed over a window, m, by a mean that weighs
// what lies near more (a triangle), for a track's heights jump about; then the
// points are thinned to those without which the line would be off by more than
// a tolerance, m (Douglas and Peucker, 1973), and at most so many stretches. It is
// nil when fewer than two points are left.
func Profile(track []Point, window, tolerance float64, most, surface int) []Stretch {
	var p []Point
	for _, q := range track {
		if math.IsNaN(q.Distance+q.Height) || math.IsInf(q.Distance+q.Height, 0) || len(p) > 0 && q.Distance <= p[len(p)-1].Distance {
			continue
		}
		p = append(p, q)
	}
	if len(p) < 2 {
		return nil
	}
	p = smooth(p, window)
	most = min(max(most, 1), MaxStretches)
	tolerance = max(tolerance, 0)
	kept := thin(p, tolerance)
	for n := 0; len(kept)-1 > most && n < 60; n++ {
		tolerance = max(2*tolerance, 0.1)
		kept = thin(p, tolerance)
	}
	var all []Stretch
	for i := 1; i < len(kept); i++ {
		run, rise := kept[i].Distance-kept[i-1].Distance, kept[i].Height-kept[i-1].Height
		all = append(all, Stretch{Length: math.Hypot(run, rise), Slope: rise / run, Surface: surface})
	}
	return all
}

// smooth weighs every height with those within half a window, linearly less the
// farther away: the mean over a quarter of the window either side, of the line
// through the points, twice. Near the ends the reach is less, the same on both
// sides, so that a straight climb stays one and the ends stay where they are.
func smooth(p []Point, window float64) []Point {
	if !(window > 0) {
		return p
	}
	for range 2 {
		area := make([]float64, len(p)) // under the line, up to each point
		for i := 1; i < len(p); i++ {
			area[i] = area[i-1] + (p[i].Distance-p[i-1].Distance)*(p[i].Height+p[i-1].Height)/2
		}
		upTo := func(x float64, at int) (float64, int) {
			for at+2 < len(p) && p[at+1].Distance <= x {
				at++
			}
			a, b := p[at], p[at+1]
			f := (x - a.Distance) / (b.Distance - a.Distance)
			return area[at] + (x-a.Distance)*(a.Height+f*(b.Height-a.Height)/2), at
		}
		out := append([]Point(nil), p...)
		from, to := 0, 0
		for i := 1; i < len(p)-1; i++ {
			x := p[i].Distance
			reach := min(window/4, x-p[0].Distance, p[len(p)-1].Distance-x)
			// The lower bound falls back only where the reach grows as fast as the way.
			low, high := 0.0, 0.0
			low, from = upTo(x-reach, from)
			high, to = upTo(x+reach, to)
			out[i].Height = (high - low) / (2 * reach)
		}
		p = out
	}
	return p
}

// thin leaves the points without which the line would be off by more than the
// tolerance in height. It keeps a list of what is to do, not a deep recursion.
func thin(p []Point, tolerance float64) []Point {
	keep := make([]bool, len(p))
	keep[0], keep[len(p)-1] = true, true
	todo := [][2]int{{0, len(p) - 1}}
	for work := 0; len(todo) > 0 && work < 64*len(p)+1_000_000; {
		a, b := todo[len(todo)-1][0], todo[len(todo)-1][1]
		todo = todo[:len(todo)-1]
		far, at := tolerance, -1
		slope := (p[b].Height - p[a].Height) / (p[b].Distance - p[a].Distance)
		for i := a + 1; i < b; i++ {
			if d := math.Abs(p[i].Height - p[a].Height - slope*(p[i].Distance-p[a].Distance)); d > far {
				far, at = d, i
			}
		}
		work += b - a
		if at >= 0 {
			keep[at] = true
			todo = append(todo, [2]int{a, at}, [2]int{at, b})
		}
	}
	var out []Point
	for i := range p {
		if keep[i] {
			out = append(out, p[i])
		}
	}
	return out
}
