package rider

import (
	"math"

	"steelyard/internal/document"
	"steelyard/internal/mass"
)

// Body is a person on a bike.
type Body struct {
	Posture string
	Note    string // key of the words that say how the mass is counted: NoteSeated or NoteStanding

	Lean        float64 // of the trunk: the way from mid-hip to mid-shoulder over level and forward, rad; 90° is upright
	Left, Right Side
	MidHip      mass.Vec
	MidShoulder mass.Vec
	Midgonion   mass.Vec // between the angles of the jaw: where the head begins
	Vertex      mass.Vec // top of the head

	Segments []Segment // head to foot, left before right

	body *body
}

// Keys of the words that say how a body's mass is counted.
const (
	NoteSeated   = "rider.seated"   // sprung mass on the main frame
	NoteStanding = "rider.standing" // the same, though the legs are a spring of their own
)

// Side is one side of a body: its joints, m, and how far they are bent, rad.
type Side struct {
	Shoulder, Elbow, Wrist mass.Vec
	Hand                   mass.Vec // third metacarpale: on the middle of the grip
	Hip, Knee, Ankle       mass.Vec
	Heel, Toe              mass.Vec // ends of the foot
	Ball                   mass.Vec // of the foot, on the sole
	Pedal                  mass.Vec // middle of the spindle under it

	ElbowBend, KneeBend float64 // 0 is straight
	Toes                float64 // the sole against level, toes down positive
}

// Names of the sides. Head and trunk have none.
const (
	Left  = "left"
	Right = "right"
)

// Segment is a rigid piece of a body.
type Segment struct {
	Name     string // Head, Trunk, ...
	Side     string // Left, Right or empty
	From, To mass.Vec

	Mass   float64  // kg, with its share of the clothes, and the foot's with its shoe
	MassU  float64  // its share of the standard uncertainty of the body's mass, kg
	Place  mass.Vec // centre of its mass
	Spread mass.Sym // second moment per unit of mass about that centre, m²

	bare float64 // mass without clothes, kg
}

// PlaceWithin is the half-width of each coordinate of a body's place, m: an
// estimate of ours. It covers where somebody sits on the saddle, how the trunk
// bends and the shoulders give, proportions that differ from person to person,
// and the two body tables in use, whose centres of a seated body differ by
// about as much.
const PlaceWithin = 0.020

// The masses entered for clothes and shoes are right within these shares:
// estimates of ours, since people dress by the weather, fill pockets, and weigh
// neither often.
const (
	ClothesWithin = 0.25
	ShoesWithin   = 0.15
)

// HalfWidth returns how far the mass of a rider, with clothes and shoes, may be
// off, g. The three are independent of each other, so they add up as the root of
// the sum of squares.
func HalfWidth(r *document.Rider) float64 {
	return math.Hypot(r.HalfWidth, math.Hypot(ClothesWithin*r.Clothing, ShoesWithin*r.Shoes))
}

// Items returns the body as items for package mass. The rider's mass, as dressed,
// has one error that all segments share by their mass: massSource. Of clothes
// that is so, as they are spread that way; an error of the shoes is spread too,
// which moves the centre of a body by less than 2 mm, far below the doubt of
// its place. The segments are misplaced
// together as well, by up to [PlaceWithin]: placeSource. All belong on the main
// frame; the package's doc says why.
func (b *Body) Items(massSource, placeSource int) []mass.Item {
	items := make([]mass.Item, len(b.Segments))
	u := mass.Alike(mass.Rectangular(PlaceWithin))
	for i := range b.Segments {
		s := &b.Segments[i]
		items[i] = mass.Item{
			Mass: s.Mass, Place: s.Place, Spread: s.Spread,
			MassU: s.MassU, MassSource: massSource,
			PlaceU: u, PlaceSource: placeSource,
		}
	}
	return items
}

// masses are what a body weighs, kg.
type masses struct {
	body, clothes, shoes float64
	u                    float64 // standard uncertainty of all three together
}

// weigh makes the segments of a body whose joints are solved.
func (b *Body) weigh(l masses) {
	b.Segments = make([]Segment, 0, 2*kinds-2)
	add := func(k kind, side string, from, to, across mass.Vec) {
		r := &b.body.rows[k]
		share := r.mass / b.body.sum()
		s := Segment{
			Name: kindNames[k], Side: side, From: from, To: to,
			Mass: share * (l.body + l.clothes), MassU: share * l.u,
			Place:  from.Lerp(to, r.centre),
			Spread: r.spread(from, to, across),
			bare:   share * l.body,
		}
		if k == foot {
			s.Mass += l.shoes / 2
		}
		b.Segments = append(b.Segments, s)
	}
	left := mass.Vec{Y: 1}
	add(head, "", b.Vertex, b.Midgonion, left)
	add(trunk, "", b.MidShoulder, b.MidHip, left)
	sides := [...]struct {
		name string
		*Side
		knee, elbow mass.Vec // axes of the joints
	}{
		{Left, &b.Left, b.Left.kneeAxis(), b.Left.elbowAxis()},
		{Right, &b.Right, b.Right.kneeAxis(), b.Right.elbowAxis()},
	}
	for _, s := range sides {
		add(upperArm, s.name, s.Shoulder, s.Elbow, s.elbow)
	}
	for _, s := range sides {
		add(forearm, s.name, s.Elbow, s.Wrist, s.elbow)
	}
	for _, s := range sides {
		add(hand, s.name, s.Wrist, s.Hand, s.elbow)
	}
	for _, s := range sides {
		add(thigh, s.name, s.Hip, s.Knee, s.knee)
	}
	for _, s := range sides {
		add(shank, s.name, s.Knee, s.Ankle, s.knee)
	}
	for _, s := range sides {
		add(foot, s.name, s.Heel, s.Toe, left)
	}
}

func (s *Side) kneeAxis() mass.Vec  { return cross(s.Knee.Sub(s.Hip), s.Ankle.Sub(s.Knee)) }
func (s *Side) elbowAxis() mass.Vec { return cross(s.Elbow.Sub(s.Shoulder), s.Wrist.Sub(s.Elbow)) }

// spread is the second moment per unit of mass about the centre of a segment,
// m², in the axes of the bike. The direction across is about which the segment
// swings back and forth: its transverse axis.
//
// A radius of gyration k about an axis is the root of the second moments along
// the two others: k1² = K2 + K3. So K1 = (k2² + k3² - k1²)/2, and the tensor is
// the sum of K e eᵀ over the unit vectors e of the three axes.
func (r *row) spread(from, to, across mass.Vec) mass.Sym {
	way := to.Sub(from)
	l := way.Norm()
	way = way.Scale(1 / l)
	across = square(across, way)
	s, t, g := r.sagittal*r.sagittal, r.transverse*r.transverse, r.longitudinal*r.longitudinal
	return mass.Outer(cross(across, way)).Scale((t + g - s) / 2 * l * l).
		Add(mass.Outer(across).Scale((s + g - t) / 2 * l * l)).
		Add(mass.Outer(way).Scale((s + t - g) / 2 * l * l))
}
