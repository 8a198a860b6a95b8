package scene

import (
	"math"
	"strconv"
	"strings"

	"steelyard/internal/geometry"
	"steelyard/internal/mass"
	"steelyard/internal/units"
)

// Weighing says how a bike is weighed on one bathroom scale.
type Weighing struct {
	Raised string  // the wheel that stands on a block in the end, "front" or "rear"; any other shows the bike level alone
	Height float64 // of that block, m: how far the one contact is above the other
	Ridden bool    // it is weighed with its rider
	Units  Units
	Words  func(key string) string // as a View's
}

// Sizes of what the bike stands on, m.
const (
	scaleHigh = 0.035 // a bathroom scale, and the boards that are as thick
	scaleWide = 0.32
	boardWide = 0.24
	blockWide = 0.28
)

// WeighIn draws how the centre of mass of a bike is found on a scale: the bike
// level with one wheel on the scale, the same from behind with the plumb line
// that says whether it is upright, and with one wheel raised; below that what to
// do, step by step. Where there is no room for the steps they are left to Desc.
func WeighIn(b *geometry.Bike, w Weighing, width, height float64) *Scene {
	out := &Scene{Width: sane(width, 1, 1e5), Height: sane(height, 1, 1e5)}
	v := View{Units: w.Units, Words: w.Words}
	out.Title = v.word("weigh_title")
	if b == nil || !standable(b) {
		return out
	}
	s := &sheet{pen: &pen{out: out, segs: make([]Seg, 0, 8192)}, v: v, type1: 12, type2: 11}
	switch {
	case out.Width < 520:
		s.type1, s.type2 = 11, 10
	case out.Width >= 1000 && out.Height >= 560:
		s.type1, s.type2 = 15, 13.5
	}
	s.cam = Camera{Width: out.Width, Height: out.Height, Scale: 1, fit: 1}
	j := weighing{sheet: s, b: b}
	switch w.Raised {
	case "front":
		j.rise = w.Height
	case "rear":
		j.rise = -w.Height
	}
	j.pose()
	steps, caution := j.steps(w.Raised), j.caution(w.Ridden)
	out.Desc = strings.Join(append(steps, caution), " ")
	list := j.figures(w.Raised)
	j.lay(list, j.tell(steps, caution, list))
	return out
}

// standable says whether a bike has two wheels to stand on.
func standable(b *geometry.Bike) bool {
	for _, v := range [...]float64{b.RearRadius, b.FrontRadius, b.FrontAxle.X - b.RearAxle.X} {
		if !(v > 0.05 && v < 5) {
			return false
		}
	}
	for _, p := range [...]mass.Vec{b.RearAxle, b.FrontAxle, b.SaddleTop, b.Grip} {
		if !(p.Norm() < 10) {
			return false
		}
	}
	return true
}

// weighing is the drawing in hand.
type weighing struct {
	*sheet
	b    *geometry.Bike
	rise float64 // the front contact above the rear one, m
	turn float64 // how far the raised bike is pitched, nose up, rad
	lift float64 // and how far its rear axle is lifted, m
	told bool    // the steps are written down
}

// pose finds how the raised bike stands. Its axles stay as far apart as they
// are, so with the contact H higher the way between them rises by φ, where
// sin φ = (R - r + H)/D; see package weighin.
func (j *weighing) pose() {
	step := j.b.FrontAxle.Z - j.b.RearAxle.Z
	along := j.b.FrontAxle.X - j.b.RearAxle.X
	span := math.Hypot(along, step)
	j.rise = sane(math.Abs(j.rise), 0, 0.7*span-math.Abs(step)) * math.Copysign(1, j.rise)
	if j.rise != 0 {
		j.turn = math.Asin((step+j.rise)/span) - math.Atan2(step, along)
	}
	j.lift = max(0, -j.rise)
}

func (j *weighing) raised() bool { return math.Abs(j.rise) > 0.001 }

// stood is where a place of the bike is when it stands raised, over the scale.
func (j *weighing) stood(r mass.Vec) mass.Vec {
	p := about(j.b.RearAxle, r, j.turn)
	p.Z += j.lift
	return p
}

// steps are what to do, in words.
func (j *weighing) steps(raised string) []string {
	v := &j.v
	steps := []string{v.word("weigh_level"), v.word("weigh_swap"), v.word("weigh_upright")}
	if j.raised() {
		steps = append(steps, v.word("weigh_raise_"+raised), v.say("weigh_height", "height", v.Units.length(math.Abs(j.rise))), v.word("weigh_again"))
	}
	if j.b.FrontSprung || j.b.RearSprung {
		steps = append(steps, v.word("weigh_springs"))
	}
	return steps
}

// caution is what to beware of, in words: it stands below the steps, in bold.
func (j *weighing) caution(ridden bool) string {
	v := &j.v
	list := []string{v.word("weigh_caution")}
	if j.raised() {
		list = append(list, v.word("weigh_caution_raised"))
	} else if ridden {
		list = append(list, v.word("weigh_caution_ridden"))
	}
	return strings.Join(append(list, v.word("weigh_caution_scale")), " ")
}

// bullet draws the number of a step at c, or close by where that is taken.
func (j *weighing) bullet(c pt, n int) {
	if !j.told || !units.Finite(c.x) || !units.Finite(c.y) {
		return
	}
	r := 0.72 * j.type1
	for _, off := range [...]pt{{}, {0, -2}, {0, 2}, {-2, 0}, {2, 0}, {0, -4}} {
		if at := c.add(off.mul(r)); j.free(square(at, r+1)) {
			j.numeral(at, r, n)
			return
		}
	}
}

func (j *weighing) numeral(c pt, r float64, n int) {
	j.circle(c, r)
	j.paint(Paper, Text, 1)
	l := Label{X: c.x, Y: c.y + 0.36*j.type2, Text: strconv.Itoa(n), Size: j.type2, Bold: true, Ink: Text}
	l.Width = textWidth(l.Text, l.Size, true)
	j.taken = append(j.taken, square(c, r+1))
	j.out.Labels = append(j.out.Labels, l)
}

// wrap breaks a text into lines that are at most as wide.
func wrap(text string, width, size float64, bold bool) (lines []string) {
	line := ""
	for _, word := range strings.Fields(text) {
		longer := word
		if line != "" {
			longer = line + " " + word
		}
		if line != "" && textWidth(longer, size, bold) > width {
			lines = append(lines, line)
			longer = word
		}
		line = longer
	}
	return append(lines, line)
}

// tell writes the steps at the foot of the paper, in one column or two, and the
// caution below, if they leave enough room for the figures. Where steps and
// caution leave too little, the caution stands alone. It returns the height that
// is left above.
func (j *weighing) tell(steps []string, caution string, list []figure) float64 {
	const margin = 14
	lead := 1.32 * j.type2
	lines := wrap(caution, j.out.Width-2*margin, j.type2, true)
	for _, line := range lines {
		if textWidth(line, j.type2, true) > j.out.Width-2*margin {
			return j.stepsAbove(steps, list, j.out.Height) // a word alone is too long
		}
	}
	tall := float64(len(lines))*lead + 0.9*lead
	foot := j.out.Height - tall
	left := j.stepsAbove(steps, list, foot)
	if left == foot && !j.enough(list, foot) {
		return j.out.Height
	}
	y := foot + 0.4*lead
	for _, line := range lines {
		j.write(Label{X: margin, Y: y + 0.36*j.type2, Text: line, Size: j.type2, Bold: true, Align: -1, Ink: Text})
		y += lead
	}
	return left
}

// enough reports whether the figures above the height left are not much smaller
// than they would be by themselves.
func (j *weighing) enough(list []figure, left float64) bool {
	const enough = 0.6
	_, with := j.rows(list, left)
	_, without := j.rows(list, j.out.Height)
	return with > 0 && with >= enough*without
}

// stepsAbove writes the steps above a height, and returns what is left above
// them: that height when there is no room for them.
func (j *weighing) stepsAbove(steps []string, list []figure, foot float64) float64 {
	const margin, between = 14, 26
	indent := 2.05 * j.type1
	columns := 1
	if j.out.Width >= 560 {
		columns = 2
	}
	wide := (j.out.Width - 2*margin - float64(columns-1)*between) / float64(columns)
	lead, gap := 1.32*j.type2, 0.5*j.type2
	texts := make([][]string, len(steps))
	for i, t := range steps {
		texts[i] = wrap(t, wide-indent, j.type2, false)
		for _, line := range texts[i] {
			if textWidth(line, j.type2, false) > wide-indent {
				return foot // a word alone is too long
			}
		}
	}
	high := func(from, to int) (h float64) {
		for _, t := range texts[from:to] {
			h += float64(len(t))*lead + gap
		}
		return h
	}
	split, tall := len(steps), high(0, len(steps))
	if columns == 2 {
		for k := 1; k < len(steps); k++ {
			if h := max(high(0, k), high(k, len(steps))); h < tall {
				split, tall = k, h
			}
		}
	}
	top := foot - tall - margin + gap
	left := top - 0.6*lead
	if !j.enough(list, left) {
		return foot
	}
	j.told = true
	x, y := float64(margin), top
	for i, lines := range texts {
		if i == split {
			x, y = x+wide+between, top
		}
		j.bullet(pt{x + 0.75*j.type1, y + 0.5*lead}, i+1)
		for _, line := range lines {
			j.write(Label{X: x + indent, Y: y + 0.5*lead + 0.36*j.type2, Text: line, Size: j.type2, Align: -1, Ink: Text})
			y += lead
		}
		y += gap
	}
	return left
}

// figure is one of the drawings of a weighing.
type figure struct {
	box         // its reach in the plane, m, the ground at 0
	name string // key of its words
	draw func(ground float64)
}

// figures are those that a weighing is shown in.
func (j *weighing) figures(raised string) []figure {
	b := j.b
	reach := func(at func(mass.Vec) mass.Vec) box {
		e := nothing
		for _, p := range [...]struct {
			at mass.Vec
			r  float64
		}{{b.RearAxle, b.RearRadius}, {b.FrontAxle, b.FrontRadius}, {b.SaddleTop, 0.04}, {b.Grip, 0.05}} {
			e = e.ball(Side, at(p.at), p.r)
		}
		return box{e.x0, 0, e.x1, e.y1 + scaleHigh}
	}
	side := reach(func(r mass.Vec) mass.Vec { return r })
	half := sane(math.Abs(b.Grip.Y), 0.1, 1) + 0.08
	list := []figure{
		{side, "weigh_flat", j.level},
		{box{-half, 0, half, side.y1}, "weigh_behind", j.upright},
	}
	if j.raised() {
		list = append(list, figure{reach(j.stood), "weigh_up_" + raised, j.lifted})
	}
	return list
}

// Room above and below the figures of a row, px.
func (j *weighing) above() float64 { return edge + 2.2*j.type1 }
func (j *weighing) below() float64 { return 18 + 2*j.dial() + 4 }

// dial is the radius of a scale's dial, px.
func (j *weighing) dial() float64 { return 0.95 * j.type1 }

// fits is the scale at which rows of figures fill the paper above left.
func (j *weighing) fits(rows [][]figure, left float64) float64 {
	scale, high := math.Inf(1), 0.0
	for _, row := range rows {
		wide, _ := extents(row)
		scale = min(scale, (j.out.Width-float64(len(row)+1)*12)/wide)
		_, h := extents(row)
		high += h
	}
	return min(scale, (left-float64(len(rows))*(j.above()+j.below()))/high)
}

// extents is how wide the figures of a row are together, and how high the
// highest is, m.
func extents(row []figure) (wide, high float64) {
	for i := range row {
		wide += row[i].x1 - row[i].x0
		high = max(high, row[i].y1)
	}
	return wide, high
}

// rows sets the figures out above the height left: in one row, or with the
// raised bike below the others, whichever shows them larger.
func (j *weighing) rows(list []figure, left float64) (rows [][]figure, scale float64) {
	rows = [][]figure{list}
	scale = j.fits(rows, left)
	if len(list) == 3 {
		two := [][]figure{list[:2], list[2:]}
		if larger := j.fits(two, left); larger > scale {
			return two, larger
		}
	}
	return rows, scale
}

// lay draws the figures above the height left.
func (j *weighing) lay(list []figure, left float64) {
	rows, scale := j.rows(list, left)
	if !(scale > 4) {
		return
	}
	used := 0.0
	for _, row := range rows {
		_, high := extents(row)
		used += j.above() + high*scale + j.below()
	}
	gap := (left - used) / float64(len(rows)+1)
	y := gap
	for _, row := range rows {
		wide, high := extents(row)
		ground := y + j.above() + high*scale
		j.cam.Scale, j.cam.fit, j.cam.U, j.cam.V = scale, scale, 0, (ground-j.out.Height/2)/scale
		j.ground()
		apart := (j.out.Width - wide*scale) / float64(len(row)+1)
		x := apart
		for i := range row {
			f := &row[i]
			j.cam.U = (j.out.Width/2-x)/scale + f.x0
			f.draw(ground)
			j.write(Label{X: x + (f.x1-f.x0)*scale/2, Y: y + edge + 1.2*j.type1, Text: j.v.word(f.name), Size: j.type1, Bold: true, Ink: Text})
			x += (f.x1-f.x0)*scale + apart
		}
		y = ground + j.below() + gap
	}
}

// standing draws the bike on what is as high as the scale.
func (j *weighing) standing(draw func(drawing)) {
	j.cam.V -= scaleHigh
	edge := sane(0.0032*j.cam.Scale, 0.7, 1.5)
	draw(drawing{pen: j.pen, b: j.b, fitted: &Subject{Fittings: plainDrive}, edge: edge, hair: 0.6 * edge})
	j.cam.V += scaleHigh
}

func (j *weighing) level(ground float64) {
	rear, front := j.at(j.b.RearAxle.X, 0), j.at(j.b.FrontAxle.X, 0)
	j.board(rear.x, boardWide, 0, scaleHigh)
	j.bathroomScale(front.x)
	j.standing(func(d drawing) { (&sideView{d}).draw() })
	j.reading(front.x, ground)
	j.bullet(pt{front.x + 0.8*j.b.FrontRadius*j.cam.Scale, ground - 0.9*j.type1}, 1)
	j.bullet(pt{front.x - j.dial() - 1.1*j.type1, ground + j.below() - 4 - j.dial()}, 2)
	if j.b.FrontSprung || j.b.RearSprung {
		n := 4
		if j.raised() {
			n = 7
		}
		c := j.px(plane(j.b.Crown))
		j.bullet(pt{c.x + 0.09*j.cam.Scale + j.type1, c.y - scaleHigh*j.cam.Scale}, n)
	}
}

// upright draws the bike from behind, and the plumb line that hangs from the
// middle of its saddle.
func (j *weighing) upright(ground float64) {
	x := j.at(0, 0).x
	j.board(x, boardWide, 0, scaleHigh)
	j.standing(func(d drawing) { (&rearView{d}).draw() })
	top, foot := j.at(0, j.b.SaddleTop.Z+scaleHigh-0.03), pt{x, ground - (scaleHigh+0.05)*j.cam.Scale}
	bob := sane(0.05*j.cam.Scale, 5, 12)
	for _, l := range [2]struct {
		ink Ink
		w   float64
	}{{Paper, 3.4}, {Select, 1.2}} {
		j.move(top)
		j.line(foot)
		j.stroke(l.ink, l.w)
	}
	j.shape(foot, foot.add(pt{-0.45 * bob, -0.8 * bob}), foot.add(pt{-0.45 * bob, -1.2 * bob}), foot.add(pt{0.45 * bob, -1.2 * bob}), foot.add(pt{0.45 * bob, -0.8 * bob}))
	j.paint(Select, Paper, 0.8)
	j.bullet(pt{x + 0.07*j.cam.Scale + j.type1, ground - 0.16*j.cam.Scale}, 3)
}

// lifted draws the bike with one wheel on a block.
func (j *weighing) lifted(ground float64) {
	scale := j.cam.Scale
	up, down := j.stood(j.b.FrontAxle).X, j.b.RearAxle.X
	out := 1.0 // the way from the bike to beyond the raised wheel
	if j.rise < 0 {
		up, down, out = down, up, -1
	}
	high := math.Abs(j.rise)
	x := j.at(up, 0).x
	j.board(x, blockWide, 0, scaleHigh)
	j.board(x, blockWide, scaleHigh, scaleHigh+high)
	on := j.at(down, 0).x
	j.bathroomScale(on)
	first := len(j.out.Marks)
	j.standing(func(d drawing) { (&sideView{d}).draw() })
	axle := j.px(plane(j.b.RearAxle))
	axle.y -= scaleHigh * scale
	turn(j.out.Marks[first:], axle, -j.turn, -j.lift*scale)

	j.reading(on, ground)
	j.bullet(pt{on - j.dial() - 1.1*j.type1, ground + j.below() - 4 - j.dial()}, 6)
	// The height is measured on the side where there is room: below the bike.
	foot := pt{x - out*blockWide/2*scale, ground - scaleHigh*scale}
	top := pt{foot.x, foot.y - high*scale}
	line := foot.x - out*1.4*j.type1
	j.taken = append(j.taken, box{x - blockWide/2*scale, top.y, x + blockWide/2*scale, ground})
	height := j.v.Units.length(high)
	beside := line - out*(12+textWidth(height, j.type2, false))
	j.bullet(pt{beside - out*0.8*j.type1, (foot.y + top.y) / 2}, 5)
	if (beside-on)*out < j.tyreAt(j.rise > 0, high/2)*scale { // no room beside the other wheel
		j.write(Label{X: x, Y: ground + 7 + j.type2, Text: height, Size: j.type2, Ink: Dimension})
		height = ""
	}
	j.dimension(foot, top, pt{line, foot.y}, pt{line, top.y}, "", height)
	j.bullet(pt{x + out*(blockWide/2*scale+1.1*j.type1), ground - 0.9*j.type1}, 4)
}

// tyreAt is how far a tyre reaches from its axle at a height over its contact, m.
func (j *weighing) tyreAt(rear bool, height float64) float64 {
	r := j.b.FrontRadius
	if rear {
		r = j.b.RearRadius
	}
	return math.Sqrt(max(0, r*r-(r-height)*(r-height)))
}

// turn turns marks about a point, rad from x towards y, and then moves them
// down.
func turn(marks []Mark, c pt, angle, down float64) {
	sin, cos := math.Sincos(angle)
	to := func(x, y float64) (float64, float64) {
		x, y = x-c.x, y-c.y
		return c.x + x*cos - y*sin, c.y + x*sin + y*cos + down
	}
	turned := make(map[*Seg]bool, len(marks)) // marks may share a path
	for i := range marks {
		path := marks[i].Path
		if turned[&path[0]] {
			continue
		}
		turned[&path[0]] = true
		for k := range path {
			g := &path[k]
			g.X, g.Y = to(g.X, g.Y)
			g.X1, g.Y1 = to(g.X1, g.Y1)
			g.X2, g.Y2 = to(g.X2, g.Y2)
		}
	}
}

// reading draws what the scale under x says: the load, and a dial.
func (j *weighing) reading(x, ground float64) {
	r := j.dial()
	c := pt{x, ground + j.below() - 4 - r}
	j.arrow(pt{x, ground + 2}, pt{x, c.y - r - 1.5}, Load, 2, 8)
	j.circle(c, r)
	j.paint(Paper, Outline, 1.2)
	for i := range 7 {
		sin, cos := math.Sincos(math.Pi * (0.85 + 1.3*float64(i)/6))
		j.move(c.add(pt{cos, sin}.mul(0.68 * r)))
		j.line(c.add(pt{cos, sin}.mul(0.88 * r)))
	}
	j.stroke(Quiet, 0.8)
	sin, cos := math.Sincos(math.Pi * 1.72)
	j.move(c.sub(pt{cos, sin}.mul(0.15 * r)))
	j.line(c.add(pt{cos, sin}.mul(0.78 * r)))
	j.stroke(Select, 1.4)
	j.circle(c, 1.5)
	j.fill(Select)
	j.taken = append(j.taken, square(c, r+1))
	j.write(Label{X: x + r + 6, Y: c.y + 0.36*j.type2, Text: j.v.word("weigh_reading"), Size: j.type2, Align: -1, Ink: Text})
}

// board draws a board or block with its grain, across x, between two heights.
func (j *weighing) board(x, wide, from, to float64) {
	scale := j.cam.Scale
	b := box{x - wide/2*scale, j.at(0, to).y, x + wide/2*scale, j.at(0, from).y}
	gap := sane(0.03*scale, 3, 7)
	for d := gap; d < b.x1-b.x0+b.y1-b.y0; d += gap { // lines that fall to the left
		p := pt{b.x0 + d, b.y0}
		q := pt{b.x0, b.y0 + d}
		if over := p.x - b.x1; over > 0 {
			p = p.add(pt{-over, over})
		}
		if over := q.y - b.y1; over > 0 {
			q = q.add(pt{over, -over})
		}
		j.move(p)
		j.line(q)
	}
	j.stroke(Hair, 0.7)
	j.shape(pt{b.x0, b.y0}, pt{b.x1, b.y0}, pt{b.x1, b.y1}, pt{b.x0, b.y1})
	j.stroke(Outline, 1)
}

// bathroomScale draws the scale across x: its feet, its body and its plate.
func (j *weighing) bathroomScale(x float64) {
	scale := j.cam.Scale
	half := scaleWide / 2 * scale
	top, foot := j.at(0, scaleHigh).y, j.at(0, 0).y
	h := foot - top
	for _, k := range [2]float64{-0.72, 0.72} {
		j.roundBox(square(pt{x + k*half, foot - 0.2*h}, 0.2*h), 1)
	}
	j.paint(Tyre, Outline, 0.8)
	j.roundBox(box{x - half, top, x + half, foot - 0.25*h}, 0.35*h)
	j.paint(Metal, Outline, 1)
	j.move(pt{x - 0.9*half, top + 0.3*h})
	j.line(pt{x + 0.9*half, top + 0.3*h})
	j.stroke(Hair, 0.7)
}
