package scene

import "strings"

// headHigh is what the name above a bike takes up, px.
const headHigh = 26

// SideBySide lays out several bikes in a row, to one scale and on one ground,
// each with its name above, and a caption below all. Width and height, px, are
// of the row without its caption. What is behind a subject is not drawn.
func SideBySide(subs []Subject, v View, c *Caption, width, height float64) *Scene {
	cams := fitRow(subs, v, width, height-headHigh) // what is written in a picture stays below its head
	out := &Scene{Width: sane(width, 1, 1e5), Height: sane(height, 1, 1e5)}
	var names, descs []string
	for i := range subs {
		sub := subs[i]
		sub.Ghost = nil
		one := Draw(sub, v, cams[i])
		x := float64(i) * cams[i].Width
		for _, m := range one.Marks {
			m.Path = shifted(m.Path, x, headHigh)
			out.Marks = append(out.Marks, m)
		}
		for _, l := range one.Labels {
			l.X, l.Y = l.X+x, l.Y+headHigh
			out.Labels = append(out.Labels, l)
		}
		descs = append(descs, one.Title+": "+one.Desc)
		names = append(names, short(sub.Name, maxName))
	}
	cam := Camera{Aspect: v.Aspect, Width: out.Width, Height: out.Height}
	s := &captioner{pen: &pen{cam: cam, out: out}, small: 11, usual: 13}
	for i, name := range names {
		x := float64(i) * cams[i].Width
		left, right := x+14, x+cams[i].Width-14
		if i > 0 {
			s.move(pt{x, 12})
			s.line(pt{x, out.Height - 12})
			s.mark(Mark{Stroke: Hair, Width: 0.6, Butt: true})
		}
		s.put(left, headHigh-7, lines(name, right-left, s.usual, true)[0], s.usual, true, -1, Text)
		s.move(pt{left, headHigh})
		s.line(pt{right, headHigh})
		s.mark(Mark{Stroke: Text, Width: 0.8, Butt: true})
	}
	out.Title = v.say("title_row", "names", strings.Join(names, ", "))
	out.Desc = strings.Join(descs, " ")
	out.caption(cam, c)
	return out
}

// fitRow returns a camera for each of several subjects in equal panels: the
// scale is that at which all of them fit, and the ground is at one height.
func fitRow(subs []Subject, v View, width, height float64) []Camera {
	wide := sane(width, 1, 1e5) / float64(max(len(subs), 1))
	cams := make([]Camera, len(subs))
	m := margins(v, wide, sane(height, 1, 1e5))
	all := nothing // the widest and the highest, as if at one place
	for i := range subs {
		sub := subs[i]
		sub.Ghost = nil
		cams[i] = Fit(&sub, v, wide, height)
		r := cams[i].room
		all = all.with(0, r.y0).with(r.x1-r.x0, r.y1)
	}
	for i := range cams {
		k := &cams[i]
		k.Scale = max(1, min((k.Width-m.x0-m.x1)/(all.x1-all.x0), (k.Height-m.y0-m.y1)/(all.y1-all.y0)))
		k.U = (k.room.x0 + k.room.x1) / 2
		k.V = (all.y0+all.y1)/2 + (m.y0-m.y1)/2/k.Scale
		k.fit, k.fu, k.fv = k.Scale, k.U, k.V
	}
	return cams
}

// shifted is a path elsewhere.
func shifted(path []Seg, dx, dy float64) []Seg {
	out := make([]Seg, len(path))
	for i, g := range path {
		g.X, g.X1, g.X2 = g.X+dx, g.X1+dx, g.X2+dx
		g.Y, g.Y1, g.Y2 = g.Y+dy, g.Y1+dy, g.Y2+dy
		out[i] = g
	}
	return out
}
