package rider

import (
	"math"
	"slices"

	"steelyard/internal/mass"
)

const standing = "standing"

// posture is a way to sit: how far the trunk leans, and how much the elbows
// bend if the trunk is free to choose. Ranges and bends are estimates of ours:
// upright is a town bike's seat, leaned a tourer's, low a racer's.
type posture struct {
	name     string
	from, to float64 // lean of the trunk over level, rad
	elbow    float64 // bend, rad
}

// postures are those of document.Postures.
var postures = []posture{
	{"upright", 62 * degree, 90 * degree, 30 * degree},
	{"leaned", 38 * degree, 62 * degree, 25 * degree},
	{"low", 15 * degree, 38 * degree, 45 * degree},
	{standing, 30 * degree, 75 * degree, 30 * degree},
}

func postureNamed(name string) (posture, bool) {
	i := slices.IndexFunc(postures, func(p posture) bool { return p.name == name })
	if i < 0 {
		return posture{}, false
	}
	return postures[i], true
}

// The range in which any trunk can lean, over level, rad: no riding position lies
// beyond it.
const (
	leanLeast = 5 * degree
	leanMost  = 95 * degree
)

// bow is the trunk leaning from the hips towards the grips. Everything about
// its reach follows from one triangle in the middle plane: hip, shoulder, grip.
type bow struct {
	trunk float64 // length, m
	far   float64 // hip to grip in the middle plane, m
	slope float64 // of that way over level, rad
	aside float64 // grip outside the shoulder joint, m
}

func (m *body) bow(hip, grip mass.Vec) bow {
	d := grip.Sub(hip)
	return bow{
		trunk: m.length[trunk],
		far:   math.Hypot(d.X, d.Z), slope: math.Atan2(d.Z, d.X),
		aside: grip.Y - shoulderHalf*m.stature,
	}
}

// reach is how far the grip is from the shoulder joint when the trunk leans by
// the angle lean: the law of cosines, and the way aside. It is least when the
// trunk points at the grip, and grows as the trunk rises from there.
func (w bow) reach(lean float64) float64 {
	return math.Sqrt(max(0, w.aside*w.aside+w.far*w.far+w.trunk*w.trunk-2*w.far*w.trunk*math.Cos(lean-w.slope)))
}

// lean is the inverse of reach: how the trunk leans, at or above the way to the
// grip, for the grip to be that far from the shoulder. Where no lean does it,
// it is the nearest.
func (w bow) lean(reach float64) float64 {
	twice := 2 * w.far * w.trunk
	c := w.aside*w.aside + w.far*w.far + w.trunk*w.trunk - reach*reach
	if math.Abs(c) >= twice { // also where the grip is at the hip, and every lean is the same
		if c > 0 {
			return w.slope
		}
		return w.slope + math.Pi
	}
	return w.slope + math.Acos(c/twice)
}

// arm solves the left arm from shoulder and grip. The elbow points back, down
// and a little out.
func (m *body) arm(shoulder, grip mass.Vec, s *Side) {
	s.Shoulder, s.Hand = shoulder, grip
	s.Elbow = m.arms.joint(shoulder, grip, elbowTo)
	s.Wrist = s.Elbow.Lerp(grip, m.length[forearm]/m.arms.b)
	s.ElbowBend = m.arms.bend(grip.Sub(shoulder).Norm())
}

var elbowTo = mass.Vec{X: -1, Y: 0.6, Z: -0.6}

// Neck and head, which look where the bike goes, keep this much of the trunk's
// lean from the vertical: estimates of ours.
const (
	neckKeeps = 0.65
	headKeeps = 0.30
)

// upward is a way in the middle plane of that length, leaning forward from the
// vertical by an angle.
func upward(length, forward float64) mass.Vec {
	s, c := math.Sincos(forward)
	return mass.Vec{X: length * s, Z: length * c}
}

// hold sets trunk, neck and head.
func (b *Body) hold(lean float64) {
	m := b.body
	b.Lean = lean
	forward := math.Pi/2 - lean
	b.MidShoulder = b.MidHip.Add(upward(m.length[trunk], forward))
	b.Midgonion = b.MidShoulder.Add(upward(m.neck, neckKeeps*forward))
	b.Vertex = b.Midgonion.Add(upward(m.length[head], headKeeps*forward))
}
