package mesh

import "math"

// pattern returns dash lengths in pixels of the screen: line and gap in turn,
// an odd number of them taken twice, as in SVG. It is not ok when there is
// nothing to cut: no lengths, or so short ones that the line is grey.
func pattern(dash []float64, density float64) (lengths []float64, ok bool) {
	if len(dash) == 0 {
		return nil, false
	}
	total := 0.
	for range 1 + len(dash)%2 {
		for _, d := range dash {
			if !(d >= 0) || math.IsInf(d, 0) {
				return nil, false
			}
			lengths = append(lengths, d*density)
			total += d * density
		}
	}
	return lengths, total > 1
}

// dash replaces m.lines by the dashes of them that touch a picture of the given
// size, margin px around it included. The pattern begins anew with each line.
func (m *Mesh) dash(pattern []float64, margin, width, height float64) {
	total := 0.
	for _, d := range pattern {
		total += d
	}
	whole, points := m.lines, m.points
	m.lines, m.points = m.uncut.lines[:0], m.uncut.points[:0]
	m.uncut.lines, m.uncut.points = whole, points
	for _, l := range whole {
		way := 0. // along the line up to a
		n := l.to - l.from
		segments := n - 1
		if l.closed {
			segments = n
		}
		for i := range segments {
			a, b := points[l.from+i], points[l.from+(i+1)%n]
			length := b.sub(a).len()
			if from, to, ok := within(a, b, -margin, -margin, width+margin, height+margin); ok {
				m.dashes(a, b, length, way, from*length, to*length, pattern, total)
			}
			way = math.Mod(way+length, total)
		}
	}
}

// dashes adds the dashes of one straight piece between the ways from and to
// along it; phase is the way into the pattern at a.
func (m *Mesh) dashes(a, b point, length, phase, from, to float64, pattern []float64, total float64) {
	at := func(s float64) point { return a.add(b.sub(a).mul(s / length)) }
	s := math.Floor((from+phase)/total)*total - phase // where the pattern begins that from lies in
	for i := 0; s < to; i++ {
		d := pattern[i%len(pattern)]
		if on := i%2 == 0; on && s+d > from {
			p, q := at(max(s, from)), at(min(s+d, to))
			// A dash that goes round a corner is one.
			if k := len(m.lines); k > 0 && s < from+near && m.points[len(m.points)-1].sub(p).len() < near {
				if q.sub(p).len() >= near {
					m.points = append(m.points, q)
					m.lines[k-1].to++
				}
			} else if q.sub(p).len() >= near {
				m.points = append(m.points, p, q)
				m.lines = append(m.lines, polyline{len(m.points) - 2, len(m.points), false})
			}
		}
		s += d
	}
}

// within returns the part of the line from a to b that lies in a box, as shares
// of its length (Liang and Barsky's clipping).
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
