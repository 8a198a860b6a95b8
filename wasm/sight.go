package main

import "steelyard/internal/scene"

// inSight tells whether a path stroked with a width may touch a picture of the
// given size. A path with a coordinate that is not finite is out of sight.
func inSight(path []scene.Seg, width, height, stroke float64) bool {
	if len(path) == 0 {
		return false
	}
	// Sums of everything: NaN and infinity stay what they are.
	finite := 0.
	var x0, y0, x1, y1 float64
	first := true
	reach := func(x, y, r float64) {
		finite += (x + y + r) * 0
		if first {
			x0, x1, y0, y1 = x-r, x+r, y-r, y+r
			first = false
			return
		}
		x0, x1 = min(x0, x-r), max(x1, x+r)
		y0, y1 = min(y0, y-r), max(y1, y+r)
	}
	for i := range path {
		g := &path[i]
		switch g.Op {
		case scene.Move, scene.Line:
			reach(g.X, g.Y, 0)
		case scene.Cubic:
			reach(g.X, g.Y, 0)
			reach(g.X1, g.Y1, 0)
			reach(g.X2, g.Y2, 0)
		case scene.Circle:
			reach(g.X, g.Y, g.R)
		}
	}
	half := stroke / 2
	return finite == 0 && !first && x1 >= -half && y1 >= -half && x0 <= width+half && y0 <= height+half
}
