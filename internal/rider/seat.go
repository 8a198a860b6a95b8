package rider

import (
	"math"

	"steelyard/internal/document"
	"steelyard/internal/geometry"
	"steelyard/internal/mass"
	"steelyard/internal/words"
)

const (
	mm = 0.001
	// A reach that is too short by less than this is rounding, m: the angle of toes
	// that point just as far as the leg is long comes out of an arc cosine, which is
	// coarse near 0 and π.
	eps = 1e-7
)

// standBend is the bend of the knees of a person standing on level cranks: an
// estimate of ours.
const standBend = 16 * degree

// Seat puts a rider on a posed bike.
//
// Seated, the hips are over the middle of the saddle and the feet on the pedals
// at the rider's crank angle; the trunk leans within the range of the posture as
// far as elbows that bend as usual in it let it, and the arms reach for the
// grips. Standing, the hips are over the feet, as high as nearly straight legs
// lift them. A leg that is a little short points its toes; a trunk leans beyond
// its posture's range before the arms give up: both are told as warnings.
//
// With an error there is no body: the result is nil exactly when a problem has
// document.SeverityError, or when there is no bike or nobody to sit on it. A problem
// names the rider where the field is one of the rider's ("stature_mm"). Where it
// is one of the build's, which has a dot in it ("saddle.height_mm"), Build is left
// for the caller to set: a posed bike does not know whose it is.
func Seat(b *geometry.Bike, r *document.Rider) (*Body, []document.Problem) {
	if b == nil || r == nil {
		return nil, nil
	}
	l := list{rider: r}
	l.figures(r)
	if l.failed {
		return nil, l.problems
	}
	p, _ := postureNamed(r.Posture)
	m := measure(r.Stature*mm, tables[r.Table])
	c := contacts(b)
	if !c.plausible() {
		l.fault("frame", words.Tell("seat.no_place"))
		return nil, l.problems
	}
	body := &Body{Posture: p.name, Note: NoteSeated, body: m}
	angle := math.Remainder(r.Crank, 360) * degree
	if p.name == standing {
		body.Note = NoteStanding
		l.rise(body, c, angle)
	} else {
		l.sit(body, c, angle)
	}
	if l.failed {
		return nil, l.problems
	}
	l.reachOut(body, c, p)
	if l.failed {
		return nil, l.problems
	}
	u := mass.Rectangular(HalfWidth(r) / 1000)
	body.weigh(masses{r.Mass / 1000, r.Clothing / 1000, r.Shoes / 1000, u})
	return body, l.problems
}

// contact is where a body touches the bike: on the left side, the right one
// mirrors it.
type contact struct {
	saddle mass.Vec
	up     mass.Vec // unit vector in which the saddle goes up
	ahead  mass.Vec // unit vector in which the grips go as the frame's reach grows
	grip   mass.Vec
	crank
}

func contacts(b *geometry.Bike) contact {
	s, c := math.Sincos(b.SeatAngle)
	return contact{
		saddle: b.SaddleTop,
		up:     mass.Vec{X: -c, Z: s},
		ahead:  mass.Vec{X: 1}.PitchBy(b.Pitch),
		grip:   b.Grip,
		crank: crank{
			centre:   b.BottomBracket,
			length:   b.PedalFront.Sub(b.BottomBracket).X,
			sideways: b.PedalFront.Y,
		},
	}
}

// plausible refuses what is not finite, and what no bike can be, so that no square
// overflows.
func (c *contact) plausible() bool {
	sum := math.Abs(c.length) + math.Abs(c.sideways)
	for _, v := range [...]mass.Vec{c.saddle, c.up, c.ahead, c.grip, c.centre} {
		sum += math.Abs(v.X) + math.Abs(v.Y) + math.Abs(v.Z)
	}
	return sum < 1000
}

// hip is the left hip joint of somebody seated, with the saddle raised by rise.
func (m *body) hip(c *contact, rise float64) mass.Vec {
	p := c.saddle.Add(c.up.Scale(rise))
	return mass.Vec{X: p.X, Y: hipHalf * m.stature, Z: p.Z + hipOverSeat*m.stature}
}

// legs solves both legs from a hip joint on the left. The right crank is
// opposite to the left one.
func (b *Body) legs(c *contact, hip mass.Vec, angle float64) {
	m := b.body
	up := b.Posture == standing
	b.MidHip = mass.Vec{X: hip.X, Z: hip.Z}
	for i, s := range [...]*Side{&b.Left, &b.Right} {
		a := angle + float64(i)*math.Pi
		p := c.spindle(a)
		m.leg(hip, p, m.point(hip, p, toesDown(a, up)), s)
	}
	b.Right = b.Right.mirror()
}

// mirror returns a side as seen in the bike's middle plane.
func (s Side) mirror() Side {
	for _, p := range [...]*mass.Vec{&s.Shoulder, &s.Elbow, &s.Wrist, &s.Hand, &s.Hip, &s.Knee, &s.Ankle, &s.Heel, &s.Toe, &s.Ball, &s.Pedal} {
		p.Y = -p.Y
	}
	return s
}

// sit puts hips and legs of a seated body. The legs must do for a whole turn of
// the cranks, whatever the angle that is asked for.
func (l *list) sit(b *Body, c contact, angle float64) {
	m := b.body
	hip := m.hip(&c, 0)
	if short := m.short(hip, c.crank, toesMost); short > eps {
		l.short(m, &c, short)
		return
	}
	if tight := m.tight(hip, c.crank); tight > eps {
		l.tight(m, &c, tight)
		return
	}
	if short := m.short(hip, c.crank, 0); short > eps {
		l.pointed(m, &c)
	}
	b.legs(&c, hip, angle)
}

// rise puts hips and legs of a standing body.
func (l *list) rise(b *Body, c contact, angle float64) {
	m := b.body
	far := apart(m.legs.a, m.legs.b, standBend)
	var ankles [2]mass.Vec
	var x float64
	for i := range ankles {
		a := angle + float64(i)*math.Pi
		ankles[i] = m.foot.stand(c.spindle(a), toesDown(a, true))
		x += ankles[i].X / 2
	}
	y, z := hipHalf*m.stature, math.Inf(1)
	for _, k := range ankles {
		up := far*far - (k.X-x)*(k.X-x) - (k.Y-y)*(k.Y-y)
		if !(up > 0) {
			l.astride(m, math.Hypot(k.X-x, k.Y-y)-far)
			return
		}
		z = min(z, k.Z+math.Sqrt(up))
	}
	hip := mass.Vec{X: x, Y: y, Z: z}
	for _, k := range ankles {
		if low := m.legs.folded - (z - k.Z); low > eps {
			l.squat(low)
			return
		}
	}
	if low := m.hip(&c, 0).Z - z; low > eps {
		l.inTheWay(low)
	}
	b.legs(&c, hip, angle)
}

// reachOut puts trunk, head and arms.
func (l *list) reachOut(b *Body, c contact, p posture) {
	m := b.body
	w := m.bow(b.MidHip, c.grip)
	lean := clamp(w.lean(apart(m.arms.a, m.arms.b, p.elbow)), p.from, p.to)
	switch r := w.reach(lean); {
	case r > m.arms.straight:
		lean = clamp(w.lean(m.arms.straight), leanLeast, leanMost)
		if short := w.reach(lean) - m.arms.straight; short > eps {
			l.far(b, &c, short)
			return
		}
	case r < m.arms.folded:
		lean = clamp(w.lean(m.arms.folded), leanLeast, leanMost)
		if tight := m.arms.folded - w.reach(lean); tight > eps {
			l.near(b, &c, tight)
			return
		}
	}
	if lean < p.from-eps || lean > p.to+eps {
		l.leans(p, lean)
	}
	b.hold(lean)
	shoulder := b.MidShoulder.Add(mass.Vec{Y: shoulderHalf * m.stature})
	m.arm(shoulder, c.grip, &b.Left)
	r := b.Left.mirror()
	b.Right.Shoulder, b.Right.Elbow, b.Right.Wrist, b.Right.Hand, b.Right.ElbowBend = r.Shoulder, r.Elbow, r.Wrist, r.Hand, r.ElbowBend
}
