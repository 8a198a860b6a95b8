package mesh

import "math"

// section is a cut across a line: the outer and inner vertex to its left, the
// inner and outer one to its right.
type section [4]uint32

// section adds a cut at p; across is one pixel to the left of the line.
func (m *Mesh) section(p, across point, cover, core, reach float64) section {
	if core == 0 {
		ridge := m.vertex(p, cover)
		return section{m.vertex(p.add(across.mul(reach)), 0), ridge, ridge, m.vertex(p.sub(across.mul(reach)), 0)}
	}
	return section{
		m.vertex(p.add(across.mul(reach)), 0),
		m.vertex(p.add(across.mul(core)), cover),
		m.vertex(p.sub(across.mul(core)), cover),
		m.vertex(p.sub(across.mul(reach)), 0),
	}
}

// band joins two cuts.
func (m *Mesh) band(a, b section) {
	m.quad(a[0], b[0], b[1], a[1])
	if a[1] != a[2] {
		m.quad(a[1], b[1], b[2], a[2])
	}
	m.quad(a[2], b[2], b[3], a[3])
}

// blunt is how far, px, the corner that two lines share may reach beyond a round
// one; where it would reach further, it is rounded.
const blunt = 0.45

// gentle reports whether two lines share a cut, ways of length 1. With the turn θ
// the corner lies at reach / cos(θ/2), and 2 cos²(θ/2) = 1 + cos θ.
func gentle(in, out point, reach float64) bool {
	round := reach / (reach + blunt)
	return 1+in.dot(out) > 2*round*round
}

// stroke adds a line along points, as wide as width in px, with round joints.
func (m *Mesh) stroke(p []point, closed bool, width float64, round bool) {
	cover, core, reach := profile(width)
	n := len(p)
	if n == 1 {
		if round || closed { // a dot
			m.cap(p[0], point{1, 0}, cover, core, reach)
			m.cap(p[0], point{-1, 0}, cover, core, reach)
		}
		return
	}
	if n == 2 {
		closed = false
	}
	way := func(i int) point { // of the line from point i on
		d := p[(i+1)%n].sub(p[i%n])
		return d.mul(1 / d.len())
	}
	lines := n - 1
	if closed {
		lines = n
	}

	var last section // the cut that the line goes on from
	switch {
	case closed:
		// Begin at the joint at point 0; the line comes round to it and ends it.
		_, last = m.joint(p[0], way(n-1), way(0), nil, cover, core, reach)
	case round:
		u := way(0)
		m.cap(p[0], u.mul(-1), cover, core, reach)
		last = m.section(p[0], u.left(), cover, core, reach)
	default:
		last = m.butt(p[0], way(0), p[1].sub(p[0]).len(), cover, core, reach)
	}
	u := way(0)
	for i := 1; i <= lines; i++ {
		if !closed && i == lines {
			if round {
				m.band(last, m.section(p[i], u.left(), cover, core, reach))
				m.cap(p[i], u, cover, core, reach)
			} else {
				// The cut faces the other way: turn it round.
				c := m.butt(p[i], u.mul(-1), p[i].sub(p[i-1]).len(), cover, core, reach)
				m.band(last, section{c[3], c[2], c[1], c[0]})
			}
			return
		}
		next := way(i % n)
		_, last = m.joint(p[i%n], u, next, &last, cover, core, reach)
		u = next
	}
}

// joint adds what two lines make of their corner at p, and the band from the
// cut before, if there is one, to the corner. It returns the cuts at which the
// first line ends and the second begins.
func (m *Mesh) joint(p, in, out point, before *section, cover, core, reach float64) (end, begin section) {
	if gentle(in, out, reach) {
		end = m.section(p, mitre(in, out), cover, core, reach)
		if before != nil {
			m.band(*before, end)
		}
		return end, end
	}
	end = m.section(p, in.left(), cover, core, reach)
	begin = m.section(p, out.left(), cover, core, reach)
	if before == nil {
		return end, begin // the wedge is added when the line comes round
	}
	m.band(*before, end)
	// The gap is on the side away from the turn.
	if in.cross(out) > 0 {
		m.wedge(p, in.left().mul(-1), out.left().mul(-1), cover, core, reach)
	} else {
		m.wedge(p, in.left(), out.left(), cover, core, reach)
	}
	return end, begin
}

// wedge adds the sector of a disc round p from one way to another, less than
// half a turn apart.
func (m *Mesh) wedge(p, from, to point, cover, core, reach float64) {
	angle := math.Atan2(from.cross(to), from.dot(to))
	m.sector(p, from, angle, cover, core, reach)
}

// cap adds half a disc round p, away from the line: ahead is the way out.
func (m *Mesh) cap(p, ahead point, cover, core, reach float64) {
	m.sector(p, ahead.left(), -math.Pi, cover, core, reach)
}

// sector adds a sector of a disc of the line's width round p.
func (m *Mesh) sector(p, from point, angle, cover, core, reach float64) {
	n := pieces(math.Abs(angle) / (2 * math.Acos(1-min(stray/reach, 0.5))))
	centre := m.vertex(p, cover)
	var inner, outer uint32
	for i := range n + 1 {
		sin, cos := math.Sincos(angle * float64(i) / float64(n))
		d := point{from.x*cos - from.y*sin, from.x*sin + from.y*cos}
		a, b := m.vertex(p.add(d.mul(core)), cover), m.vertex(p.add(d.mul(reach)), 0)
		if i > 0 {
			m.triangle(centre, inner, a)
			m.quad(inner, a, b, outer)
		}
		inner, outer = a, b
	}
}

// butt adds the soft end of a line that is cut square at p; u is the way along
// the line, which is length long. It returns the cut from which the line goes on.
func (m *Mesh) butt(p, u point, length, cover, core, reach float64) section {
	across := u.left().mul(reach)
	inside := m.section(p.add(u.mul(min(0.5, length/2))), u.left(), cover, core, reach)
	p = p.sub(u.mul(0.5))
	left, right := m.vertex(p.add(across), 0), m.vertex(p.sub(across), 0)
	m.quad(left, inside[0], inside[1], right)
	if inside[1] != inside[2] {
		m.triangle(right, inside[1], inside[2])
	}
	m.triangle(right, inside[2], inside[3])
	return inside
}
