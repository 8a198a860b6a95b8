package rider

import (
	"math"

	"steelyard/internal/mass"
)

// Limb is a piece of a body to draw: a tapered capsule, which is the hull of
// two balls.
type Limb struct {
	Name     string // as a segment's, or "neck"
	Side     string // Left, Right or empty
	From, To mass.Vec
	R, S     float64 // radii at From and To, m
}

// Neck is the name of a limb that is no segment of its own: a body table counts
// it with head and trunk.
const Neck = "neck"

// density of the body, kg/m³, that turns the mass of a segment into its girth
// (memory: limbs are a little denser than that, the trunk less).
const density = 1050

// taper says how thick a segment is at its ends, as multiples of the radius of an
// even cylinder of its mass: estimates of ours.
var taper = [kinds]struct{ from, to float64 }{
	upperArm: {1.15, 0.85},
	forearm:  {1.15, 0.65},
	hand:     {0.75, 0.95},
	thigh:    {1.10, 0.75},
	shank:    {1.20, 0.62},
}

// Breadths and depths of the parts that no cylinder resembles, as fractions of
// stature; those of hips and shoulders are Drillis and Contini's (memory), the
// others estimates of ours.
const (
	hipBreadth      = 0.191
	shoulderBreadth = 0.259
	hipDepth        = 0.120 // of a body of usual mass
	chestDepth      = 0.130
	headRadius      = 0.052
	jawRadius       = 0.036
	neckRadius      = 0.032
	heelRadius      = 0.019
	instepRadius    = 0.024
	toeRadius       = 0.012
)

// usualIndex is the body-mass index, kg/m², at which hips and chest are as deep
// as stated.
const usualIndex = 23

// Outline returns what to draw of a body, back to front for who looks at it
// from its right: left arm, left leg, trunk, neck and head, right leg, right
// arm. Girth follows from mass; clothes are not drawn.
func (b *Body) Outline() []Limb {
	limbs := make([]Limb, 0, 20)
	limbs = b.arm(limbs, Left, &b.Left)
	limbs = b.leg(limbs, Left, &b.Left)
	limbs = b.torso(limbs)
	limbs = b.leg(limbs, Right, &b.Right)
	return b.arm(limbs, Right, &b.Right)
}

// bare is the mass of a segment's kind without clothes, kg.
func (b *Body) bare(k kind) float64 {
	for i := range b.Segments {
		if b.Segments[i].Name == kindNames[k] {
			return b.Segments[i].bare
		}
	}
	return 0
}

// limb is a segment as a capsule.
func (b *Body) limb(k kind, side string, from, to mass.Vec) Limb {
	r := math.Sqrt(b.bare(k) / (math.Pi * density * b.body.length[k]))
	return Limb{kindNames[k], side, from, to, r * taper[k].from, r * taper[k].to}
}

func (b *Body) arm(to []Limb, side string, s *Side) []Limb {
	return append(to,
		b.limb(upperArm, side, s.Shoulder, s.Elbow),
		b.limb(forearm, side, s.Elbow, s.Wrist),
		b.limb(hand, side, s.Wrist, s.Hand))
}

func (b *Body) leg(to []Limb, side string, s *Side) []Limb {
	h := b.body.stature
	// The feet lie within their length, and over the sole.
	f := b.limb(foot, side, s.Heel, s.Toe)
	f.R, f.S = heelRadius*h, toeRadius*h
	up := s.Ankle.Sub(s.Heel)
	way := f.To.Sub(f.From)
	way = way.Scale(1 / way.Norm())
	f.From, f.To = f.From.Add(way.Scale(f.R)), f.To.Sub(way.Scale(f.S))
	up = square(up, way)
	f.From = f.From.Add(up.Scale(f.R - soleToFoot*h))
	f.To = f.To.Add(up.Scale(f.S - soleToFoot*h))
	calf := b.limb(shank, side, s.Knee, s.Ankle)
	instep := Limb{Foot, side, s.Ankle, f.To, instepRadius * h, f.S}
	return append(to, f, instep, calf, b.limb(thigh, side, s.Hip, s.Knee))
}

// torso is a capsule down the middle and one down either side, so that it is as deep as a body from the
// side and as broad from behind, then neck and head.
func (b *Body) torso(to []Limb) []Limb {
	h := b.body.stature
	girth := math.Sqrt(b.bare(trunk) / (b.body.rows[trunk].mass / b.body.sum()) / (usualIndex * h * h))
	hips, chest := hipDepth/2*h*girth, chestDepth/2*h*girth
	side := func(name string, sign float64) Limb {
		out := func(breadth, radius float64) mass.Vec {
			return mass.Vec{Y: sign * max(0, breadth/2*h-radius)}
		}
		return Limb{Trunk, name, b.MidHip.Add(out(hipBreadth, hips)), b.MidShoulder.Add(out(shoulderBreadth, chest)), hips, chest}
	}
	left, mid, right := side(Left, 1), side("", 0), side(Right, -1)
	// The shoulders' line is as far below the top of the chest as it is deep.
	down := b.MidHip.Sub(b.MidShoulder)
	down = down.Scale(0.6 * chest / down.Norm())
	left.To, mid.To, right.To = left.To.Add(down), mid.To.Add(down), right.To.Add(down)
	crown := b.Vertex.Lerp(b.Midgonion, headRadius*h/b.body.length[head])
	return append(to, left, mid, right,
		Limb{Neck, "", b.MidShoulder, b.Midgonion, neckRadius * h * 1.15, neckRadius * h},
		Limb{Head, "", crown, b.Midgonion.Lerp(b.Vertex, 0.25), headRadius * h, jawRadius * h})
}
