package scene

import (
	"math"

	"steelyard/internal/mass"
	"steelyard/internal/units"
)

// sheet is the paper while it is being lettered: what is written stays clear
// of what was written before, so that whatever matters more is written first.
type sheet struct {
	*pen
	v       View
	type1   float64 // size of most letters, px
	type2   float64 // of those of second rank
	longest int     // runes of a name
	taken   []box   // nothing may be written here
	kept    []box   // nor here, and no leader may cross it but from what lies within
	leaders [][2]pt
	busy    busyMap
	lines   busyMap // of the bike: see cover
	wheels  [2]disc
}

// edge is how far letters stay off the edge of the paper, px.
const edge = 5

func (s *sheet) paper() box { return box{0, 0, s.cam.Width, s.cam.Height} }

func (s *sheet) onPaper(b box) bool {
	return b.x0 >= edge && b.y0 >= edge && b.x1 <= s.cam.Width-edge && b.y1 <= s.cam.Height-edge
}

// keep keeps letters off what they would hide: the saddle and its post, which
// stand alone before the paper and are read by their outline.
func (s *sheet) keep(sub *Subject) {
	b := sub.Bike
	if b == nil {
		return
	}
	top, foot := s.spot(b.SaddleTop), s.spot(b.SeatTop)
	mm := func(v float64) float64 { return v / 1000 * s.cam.Scale }
	half, high := 142.0, 13.0
	if s.cam.Aspect == Rear {
		half = 76
	}
	list := []box{{top.x - mm(half), top.y - mm(high), top.x + mm(half), top.y + mm(78)}}
	const pieces = 5
	for i := range pieces {
		p, q := top.lerp(foot, float64(i)/pieces), top.lerp(foot, float64(i+1)/pieces)
		w := mm(16)
		list = append(list, box{min(p.x, q.x) - w, min(p.y, q.y), max(p.x, q.x) + w, max(p.y, q.y)})
	}
	for _, k := range list {
		if units.Finite(k.x0 + k.y0 + k.x1 + k.y1) {
			s.kept = append(s.kept, k)
		}
	}
}

// spot is a place of the bike in the picture.
func (s *sheet) spot(r mass.Vec) pt {
	x, y := s.cam.At(r)
	return pt{x, y}
}

// hides says whether letters in a box would hide what is kept.
func (s *sheet) hides(b box) bool {
	return meetsAny(b, s.kept)
}

// meetsAny says whether a box meets one of several. It is asked thousands of times
// for a picture: box.meets written out.
func meetsAny(b box, list []box) bool {
	for i := range list {
		if c := &list[i]; c.x0 < b.x1 && b.x0 < c.x1 && c.y0 < b.y1 && b.y0 < c.y1 {
			return true
		}
	}
	return false
}

// crosses says whether a leader from a to b would cross what is kept without
// beginning in it.
func (s *sheet) crosses(a, b pt) bool {
	x0, x1, y0, y1 := min(a.x, b.x), max(a.x, b.x), min(a.y, b.y), max(a.y, b.y)
	for i := range s.kept {
		k := &s.kept[i]
		if x1 < k.x0 || x0 > k.x1 || y1 < k.y0 || y0 > k.y1 {
			continue // far off
		}
		if !k.holds(a.x, a.y) && crossesBox(a, b, *k) {
			return true
		}
	}
	return false
}

// free says whether something can be written in a box.
func (s *sheet) free(b box) bool {
	if !s.onPaper(b) || meetsAny(b, s.taken) {
		return false
	}
	for i := range s.leaders {
		if crossesBox(s.leaders[i][0], s.leaders[i][1], b) {
			return false
		}
	}
	return true
}

// textBox is what a line of text takes up.
func textBox(x, y, w, size float64, align int) box {
	switch {
	case align == 0:
		x -= w / 2
	case align > 0:
		x -= w
	}
	return box{x, y - size*capHeight - 2, x + w, y + size*descent + 1}
}

// write writes a line unless something is there already.
func (s *sheet) write(l Label) bool {
	l.Width = textWidth(l.Text, l.Size, l.Bold)
	b := textBox(l.X, l.Y, l.Width, l.Size, l.Align)
	if l.Angle != 0 {
		b = turned(b, l.X, l.Y, l.Angle*math.Pi/180)
	}
	const apart = 3 // px between two lines of letters
	if !units.Finite(l.X) || !units.Finite(l.Y) || !s.free(box{b.x0 - apart, b.y0, b.x1 + apart, b.y1}) {
		return false
	}
	s.taken = append(s.taken, b)
	s.out.Labels = append(s.out.Labels, l)
	return true
}

// turned is the upright box round a box turned about (x, y).
func turned(b box, x, y, a float64) box {
	sin, cos := math.Sincos(a)
	t := nothing
	for _, c := range [4]pt{{b.x0, b.y0}, {b.x1, b.y0}, {b.x1, b.y1}, {b.x0, b.y1}} {
		dx, dy := c.x-x, c.y-y
		t = t.with(x+dx*cos-dy*sin, y+dx*sin+dy*cos)
	}
	return t
}

// crossesBox says whether the way from a to b goes through a box.
func crossesBox(a, b pt, q box) bool {
	if a.x < q.x0 && b.x < q.x0 || a.x > q.x1 && b.x > q.x1 || a.y < q.y0 && b.y < q.y0 || a.y > q.y1 && b.y > q.y1 {
		return false // most are far off, and need no division
	}
	t0, t1 := 0.0, 1.0
	d := b.sub(a)
	for _, e := range [4][2]float64{{-d.x, a.x - q.x0}, {d.x, q.x1 - a.x}, {-d.y, a.y - q.y0}, {d.y, q.y1 - a.y}} {
		p, r := e[0], e[1]
		switch {
		case p == 0:
			if r < 0 {
				return false
			}
		case p < 0:
			t0 = max(t0, r/p)
		default:
			t1 = min(t1, r/p)
		}
	}
	return t0 < t1
}

// cross says whether the ways a-b and c-d cross.
func cross(a, b, c, d pt) bool {
	side := func(a, b, p pt) float64 { return b.sub(a).left().dot(p.sub(a)) }
	return side(a, b, c)*side(a, b, d) < 0 && side(c, d, a)*side(c, d, b) < 0
}

// busyMap says how much is drawn where, so that letters look for empty paper.
type busyMap struct {
	cell       float64
	cols, rows int
	sum        []float32 // summed-area table, one row and column larger
}

func (m *busyMap) at(x, y float64) *float32 {
	i, j := int(x/m.cell), int(y/m.cell)
	if x < 0 || y < 0 || i >= m.cols || j >= m.rows {
		return nil
	}
	return &m.sum[(j+1)*(m.cols+1)+i+1]
}

// newBusyMap surveys what is drawn so far, and dots on top of it. After total
// it can be asked.
func newBusyMap(w, h float64) busyMap {
	m := busyMap{cell: max(8, w/160, h/160)}
	m.cols, m.rows = int(w/m.cell)+1, int(h/m.cell)+1
	m.sum = make([]float32, (m.cols+1)*(m.rows+1))
	return m
}

func (m *busyMap) touch(p pt, weight float32) {
	if c := m.at(p.x, p.y); c != nil && *c < 6 {
		*c += weight
	}
}

// way adds a straight line. It is touch and lerp written out: this and the search of
// a place for names are most of the time of a picture.
func (m *busyMap) way(a, b pt, weight float32) {
	dx, dy := b.x-a.x, b.y-a.y
	l := math.Sqrt(dx*dx + dy*dy)
	if !(l < 1e5) {
		return
	}
	n := int(l/m.cell) + 1
	step, per := 1/float64(n), 1/m.cell
	for i := range n {
		t := (float64(i) + 0.5) * step
		x, y := (a.x+dx*t)*per, (a.y+dy*t)*per
		if x < 0 || y < 0 {
			continue
		}
		if i, j := int(x), int(y); i < m.cols && j < m.rows {
			if c := &m.sum[(j+1)*(m.cols+1)+i+1]; *c < 6 {
				*c += weight
			}
		}
	}
}

func (m *busyMap) disc(c pt, r float64, weight float32) {
	x0, x1 := max(0, c.x-r), min(float64(m.cols)*m.cell, c.x+r)
	y0, y1 := max(0, c.y-r), min(float64(m.rows)*m.cell, c.y+r)
	for y := y0; y <= y1; y += m.cell {
		for x := x0; x <= x1; x += m.cell {
			m.touch(pt{x, y}, weight)
		}
	}
}

// marks adds the lines of marks.
func (m *busyMap) marks(marks []Mark) {
	for i := range marks {
		k := &marks[i]
		weight := float32(1)
		switch {
		case k.Stroke == Hair:
			weight = 0.2
		case k.Stroke == Tyre || k.Stroke == Metal:
			weight = 0.5
		case k.Stroke == None:
			continue
		}
		var start, at pt
		for j := range k.Path {
			g := &k.Path[j]
			to := pt{g.X, g.Y}
			switch g.Op {
			case Move:
				start = to
			case Line:
				m.way(at, to, weight)
			case Cubic:
				mid := at.add(pt{g.X1, g.Y1}.mul(3)).add(pt{g.X2, g.Y2}.mul(3)).add(to).mul(0.125)
				m.way(at, mid, weight)
				m.way(mid, to, weight)
			case Circle:
				if n := int(2*math.Pi*g.R/m.cell) + 1; n < 4096 {
					for q := range n {
						sin, cos := math.Sincos(2 * math.Pi * float64(q) / float64(n))
						m.touch(pt{g.X + g.R*cos, g.Y + g.R*sin}, weight)
					}
				}
			case Close:
				m.way(at, start, weight)
				to = start
			}
			at = to
		}
	}
}

// total sums the map up.
func (m *busyMap) total() {
	w := m.cols + 1
	for j := 1; j <= m.rows; j++ {
		row := float32(0)
		for i := 1; i <= m.cols; i++ {
			row += m.sum[j*w+i]
			m.sum[j*w+i] = m.sum[(j-1)*w+i] + row
		}
	}
}

// in is how much is drawn in a box, all cells together.
func (m *busyMap) in(b box) float64 {
	per := 1 / m.cell
	i0, i1 := max(int(b.x0*per), 0), min(int(b.x1*per)+1, m.cols)
	j0, j1 := max(int(b.y0*per), 0), min(int(b.y1*per)+1, m.rows)
	if i1 <= i0 || j1 <= j0 {
		return 0
	}
	top, foot := m.sum[j0*(m.cols+1):], m.sum[j1*(m.cols+1):]
	return float64(foot[i1] - foot[i0] - top[i1] + top[i0])
}
