package mesh

// rim is a corner of a shape on its way into the mesh: the way outward, and
// the vertices half a pixel inside and outside.
type rim struct {
	out          point
	inner, outer uint32
}

// fill adds the area inside a closed line. Its rim is soft, but where a stroke
// along the line is going to hide it.
func (m *Mesh) fill(p []point, hidden bool) {
	n := len(p)
	if n < 3 {
		return
	}
	area, length := 0., 0.
	for i, a := range p {
		b := p[(i+1)%n]
		area += a.sub(p[0]).cross(b.sub(p[0])) / 2
		length += b.sub(a).len()
	}
	// Twice the area over the length is the mean width of a long thin shape.
	width := 2 * abs(area) / length
	if !(width > near) {
		return
	}
	cover, inset := 1., 0.5
	if width < 1 {
		cover, inset = width, width-0.5
	}
	side := 1. // to the right when the line goes round from x towards y
	if area < 0 {
		side = -1
	}
	m.rim = m.rim[:0]
	if hidden {
		for _, b := range p {
			m.rim = append(m.rim, rim{inner: m.vertex(b, 1)})
		}
		m.body(p, side)
		return
	}
	for i, b := range p {
		out := bisector(b.sub(p[(i+n-1)%n]), p[(i+1)%n].sub(b)).mul(-side)
		m.rim = append(m.rim, rim{out, m.vertex(b.sub(out.mul(inset)), cover), m.vertex(b.add(out.mul(0.5)), 0)})
	}
	for i, a := range m.rim {
		b := m.rim[(i+1)%n]
		m.quad(a.inner, b.inner, b.outer, a.outer)
	}
	m.body(p, side)
}

// bisector returns the way to the left of a corner between two edges, as long
// as takes both edges one pixel to their left; no longer than sharp, since the
// corner of a thin spike lies far out.
func bisector(in, out point) point {
	a, b := in.len(), out.len()
	if a == 0 || b == 0 {
		return point{}
	}
	return mitre(in.mul(1/a), out.mul(1/b))
}

// mitre is bisector for edges of length 1.
func mitre(in, out point) point {
	const sharp = 3
	u, v := in.left(), out.left()
	w := u.add(v)
	l := w.dot(w)
	if l < 1e-6 {
		return u // it turns right back
	}
	// |w|²/2 = 1 + cos of the turn; the bisector's length is 1 over the cosine
	// of half the turn.
	w = w.mul(2 / l)
	if k := w.len(); k > sharp {
		w = w.mul(sharp / k)
	}
	return w
}

// body adds the triangles between the inner vertices of m.rim: a fan when the
// shape bulges everywhere, ears cut off one by one otherwise.
func (m *Mesh) body(p []point, side float64) {
	n := len(p)
	turn := func(a, b, c int) float64 { return side * p[b].sub(p[a]).cross(p[c].sub(p[b])) }
	convex := true
	for i := range p {
		if turn((i+n-1)%n, i, (i+1)%n) < 0 {
			convex = false
			break
		}
	}
	if convex {
		for i := 2; i < n; i++ {
			m.triangle(m.rim[0].inner, m.rim[i-1].inner, m.rim[i].inner)
		}
		return
	}
	m.ears = m.ears[:0]
	for i := range p {
		m.ears = append(m.ears, i)
	}
	// Each pass over what is left cuts off at least one ear of a simple
	// polygon; what crosses itself may have none left, and ends as a fan.
	for at, missed := 0, 0; len(m.ears) > 3 && missed < len(m.ears); {
		k := len(m.ears)
		i0, i1, i2 := (at+k-1)%k, at%k, (at+1)%k
		a, b, c := m.ears[i0], m.ears[i1], m.ears[i2]
		if turn(a, b, c) >= 0 && m.empty(p, a, b, c, side) {
			m.triangle(m.rim[a].inner, m.rim[b].inner, m.rim[c].inner)
			m.ears = append(m.ears[:i1], m.ears[i1+1:]...)
			at, missed = i0, 0
			if i1 == 0 {
				at = k - 2
			}
			continue
		}
		at = i2
		missed++
	}
	for i := 2; i < len(m.ears); i++ {
		m.triangle(m.rim[m.ears[0]].inner, m.rim[m.ears[i-1]].inner, m.rim[m.ears[i]].inner)
	}
}

// empty reports whether none of the remaining corners lies in the triangle.
func (m *Mesh) empty(p []point, a, b, c int, side float64) bool {
	for _, i := range m.ears {
		if i == a || i == b || i == c {
			continue
		}
		q := p[i]
		if side*p[b].sub(p[a]).cross(q.sub(p[a])) >= 0 &&
			side*p[c].sub(p[b]).cross(q.sub(p[b])) >= 0 &&
			side*p[a].sub(p[c]).cross(q.sub(p[c])) >= 0 {
			return false
		}
	}
	return true
}

func abs(x float64) float64 { return max(x, -x) }
