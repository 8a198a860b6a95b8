package scene

import (
	"cmp"
	"math"
	"slices"
)

// Draw lays the subject out for the camera's size.
func Draw(s Subject, v View, cam Camera) *Scene {
	out := &Scene{Width: cam.Width, Height: cam.Height, Title: s.Name}
	p := &pen{cam: cam, out: out, segs: make([]Seg, 0, 1024+8*len(s.Markers))}
	if s.Bike != nil {
		d := &sideView{pen: p, b: s.Bike, edge: 1, hair: 0.6}
		d.draw()
	}
	order := make([]int, len(s.Markers))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(s.Markers[b].Mass, s.Markers[a].Mass) })
	for _, i := range order {
		k := &s.Markers[i]
		x, y := cam.At(k.Place)
		r := max(2, 11*math.Sqrt(max(0, k.Mass)))
		p.circle(pt{x, y}, r)
		p.paint(Sprung, Paper, 1)
		out.Spots = append(out.Spots, Spot{Part: k.Part, X: x, Y: y, R: max(r, 6), Mirror: k.Mirror})
	}
	return out
}
