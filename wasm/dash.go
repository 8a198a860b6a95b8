package main

import (
	"math"

	"steelyard/internal/scene"
)

// dashes cuts a path into dashes: pattern is lengths of line and gap in turn,
// as in SVG (an odd number of them is taken twice), and begins anew with each
// sub-path. Curves become short lines on the way. What lies outside a picture
// of the given size is left out, so that a line which runs far out of it costs
// nothing. A pattern that is no pattern gives nil: draw the line whole.
func dashes(path []scene.Seg, pattern []float64, width, height, margin float64) []scene.Seg {
	if len(pattern)%2 == 1 {
		pattern = append(append([]float64(nil), pattern...), pattern...)
	}
	total := 0.
	for _, d := range pattern {
		if !(d >= 0) {
			return nil
		}
		total += d
	}
	// A pattern finer than this is grey, not dashed.
	if !(total > 0.5) || math.IsInf(total, 0) {
		return nil
	}
	var out []scene.Seg
	for _, line := range flatten(path) {
		phase := 0. // way into the pattern
		for i := 1; i < len(line); i++ {
			a, b := line[i-1], line[i]
			length := math.Hypot(b.x-a.x, b.y-a.y)
			if from, to, ok := within(a, b, -margin, -margin, width+margin, height+margin); ok {
				out = appendDashes(out, a, b, length, from*length, to*length, phase, pattern, total)
			}
			phase = math.Mod(phase+length, total)
		}
	}
	return out
}

// appendDashes appends the dashes of the line from a to b between the ways
// from and to; phase is the way into the pattern at a.
func appendDashes(out []scene.Seg, a, b point, length, from, to, phase float64, pattern []float64, total float64) []scene.Seg {
	if length == 0 {
		return out
	}
	at := func(s float64) point { return point{a.x + (b.x-a.x)*s/length, a.y + (b.y-a.y)*s/length} }
	// Start at the beginning of the pattern that from lies in.
	s := math.Floor((from+phase)/total)*total - phase
	for i := 0; s < to; i++ {
		d := pattern[i%len(pattern)]
		if on := i%2 == 0; on && s+d > from {
			p, q := at(max(s, from)), at(min(s+d, to))
			// A dash round a corner is one dash: its joint is drawn.
			if n := len(out); n > 0 && s <= from && out[n-1].X == p.x && out[n-1].Y == p.y {
				out = append(out, scene.Seg{Op: scene.Line, X: q.x, Y: q.y})
			} else {
				out = append(out, scene.Seg{Op: scene.Move, X: p.x, Y: p.y}, scene.Seg{Op: scene.Line, X: q.x, Y: q.y})
			}
		}
		s += d
	}
	return out
}

type point struct{ x, y float64 }

// within returns the part of the line from a to b that lies in the box, as
// shares of its length (Liang and Barsky's clipping).
func within(a, b point, x0, y0, x1, y1 float64) (from, to float64, ok bool) {
	from, to = 0, 1
	for _, edge := range [4][2]float64{
		{a.x - b.x, a.x - x0}, {b.x - a.x, x1 - a.x},
		{a.y - b.y, a.y - y0}, {b.y - a.y, y1 - a.y},
	} {
		towards, room := edge[0], edge[1]
		switch {
		case towards == 0:
			if room < 0 {
				return 0, 0, false
			}
		case towards < 0:
			from = max(from, room/towards)
		default:
			to = min(to, room/towards)
		}
	}
	return from, to, from < to
}

// flatten turns a path into lines of points, one for each sub-path.
func flatten(path []scene.Seg) [][]point {
	var lines [][]point
	var line []point
	end := func() {
		if len(line) > 1 {
			lines = append(lines, line)
		}
		line = nil
	}
	for _, g := range path {
		switch g.Op {
		case scene.Move:
			end()
			line = []point{{g.X, g.Y}}
		case scene.Line:
			line = append(line, point{g.X, g.Y})
		case scene.Cubic:
			if len(line) == 0 {
				line = append(line, point{g.X1, g.Y1})
			}
			a := line[len(line)-1]
			reach := math.Hypot(g.X1-a.x, g.Y1-a.y) + math.Hypot(g.X2-g.X1, g.Y2-g.Y1) + math.Hypot(g.X-g.X2, g.Y-g.Y2)
			n := steps(reach)
			for i := 1; i <= n; i++ {
				t := float64(i) / float64(n)
				u := 1 - t
				line = append(line, point{
					u*u*u*a.x + 3*u*u*t*g.X1 + 3*u*t*t*g.X2 + t*t*t*g.X,
					u*u*u*a.y + 3*u*u*t*g.Y1 + 3*u*t*t*g.Y2 + t*t*t*g.Y,
				})
			}
		case scene.Circle:
			end()
			n := steps(2 * math.Pi * g.R)
			for i := 0; i <= n; i++ {
				s, c := math.Sincos(2 * math.Pi * float64(i) / float64(n))
				line = append(line, point{g.X + g.R*c, g.Y + g.R*s})
			}
			end()
		case scene.Close:
			if len(line) > 1 {
				line = append(line, line[0])
				first := line[0]
				end()
				line = []point{first}
			}
		}
	}
	end()
	return lines
}

// steps is how many lines stand for a curve of a length, px. A line of 3 px
// strays from a circle of 100 px by a hundredth of a px.
func steps(length float64) int {
	if !(length > 0) {
		return 1
	}
	return int(min(max(math.Ceil(length/3), 8), 2000))
}
