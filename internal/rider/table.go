package rider

// Names of the segments of a body, in the order of [Body.Segments].
const (
	Head     = "head"
	Trunk    = "trunk"
	UpperArm = "upper-arm"
	Forearm  = "forearm"
	Hand     = "hand"
	Thigh    = "thigh"
	Shank    = "shank"
	Foot     = "foot"
)

// kind is a kind of segment: an index of the tables.
type kind int

const (
	head kind = iota
	trunk
	upperArm
	forearm
	hand
	thigh
	shank
	foot
	kinds
)

var kindNames = [kinds]string{Head, Trunk, UpperArm, Forearm, Hand, Thigh, Shank, Foot}

// row is what a body table says of one segment.
type row struct {
	mass   float64 // as a fraction of the body's
	centre float64 // from the first end, as a fraction of the segment's length

	// Radii of gyration about the segment's own centre, as fractions of its
	// length: about its sagittal axis (from back to front), its transverse axis
	// (from side to side) and along it.
	sagittal, transverse, longitudinal float64
}

// table is a body table.
type table struct {
	rows [kinds]row
	head float64 // vertex to midgonion, as a fraction of stature
	hand float64 // wrist to third metacarpale, likewise
}

// tables are those of P. de Leva, Adjustments to Zatsiorsky-Seluyanov's segment
// inertia parameters, J. Biomechanics 29(9), 1996, table 4. Ends of the
// segments: head from vertex to midgonion, trunk from mid-shoulder to mid-hip,
// foot from heel to the tip of the longest toe, the hand to the third
// metacarpale, all others from joint to joint.
//
// Lengths of head and hand are the mean lengths of the table over the mean
// stature of the people measured, 1741 mm for men and 1735 mm for women, since
// the fractions of stature in use end elsewhere. The other lengths are Drillis
// and Contini's for both tables, and the table's fractions are taken of them. The
// women measured had shorter thighs, 0.212 of stature to the 0.245 in use, which
// puts the centre of a woman's body up to 6 mm too far forward: less than half of
// [PlaceWithin].
var tables = map[string]*table{
	"male": {
		rows: [kinds]row{
			head:     {0.0694, 0.5976, 0.362, 0.376, 0.312},
			trunk:    {0.4346, 0.4310, 0.384, 0.358, 0.197},
			upperArm: {0.0271, 0.5772, 0.285, 0.269, 0.158},
			forearm:  {0.0162, 0.4574, 0.276, 0.265, 0.121},
			hand:     {0.0061, 0.7900, 0.628, 0.513, 0.401},
			thigh:    {0.1416, 0.4095, 0.329, 0.329, 0.149},
			shank:    {0.0433, 0.4395, 0.251, 0.246, 0.102},
			foot:     {0.0137, 0.4415, 0.257, 0.245, 0.124},
		},
		head: 203.3 / 1741,
		hand: 86.2 / 1741,
	},
	"female": {
		rows: [kinds]row{
			head:     {0.0668, 0.5894, 0.330, 0.359, 0.318},
			trunk:    {0.4257, 0.3782, 0.379, 0.361, 0.182},
			upperArm: {0.0255, 0.5754, 0.278, 0.260, 0.148},
			forearm:  {0.0138, 0.4559, 0.261, 0.257, 0.094},
			hand:     {0.0056, 0.7474, 0.531, 0.454, 0.335},
			thigh:    {0.1478, 0.3612, 0.369, 0.364, 0.162},
			shank:    {0.0481, 0.4352, 0.267, 0.263, 0.092},
			foot:     {0.0129, 0.4014, 0.299, 0.279, 0.139},
		},
		head: 200.2 / 1735,
		hand: 78.0 / 1735,
	},
}

// count is how often a segment comes.
func (k kind) count() float64 {
	if k == head || k == trunk {
		return 1
	}
	return 2
}

// sum is what the rows add up to, arms and legs counted twice: 1, and 0.9999
// for the table of women, which its rounding has left short. Masses are divided
// by it, so that the segments weigh what the body weighs.
func (t *table) sum() float64 {
	s := 0.
	for k := range kinds {
		s += k.count() * t.rows[k].mass
	}
	return s
}

// Lengths as fractions of stature: R. Drillis and R. Contini, Body Segment
// Parameters, 1966 (memory).
const (
	thighLength    = 0.245
	shankLength    = 0.246
	ankleHeight    = 0.039 // ankle over the sole
	footLength     = 0.152
	trunkLength    = 0.288 // mid-hip to mid-shoulder
	upperArmLength = 0.186
	forearmLength  = 0.146
	shoulderToTop  = 0.182 // mid-shoulder to the top of the head, standing
)

// Fractions of stature that no table has: estimates of ours.
const (
	// hipOverSeat is the hip joint over the saddle. Sitting up straight on a hard
	// seat it is what the sitting height, 0.520 (Drillis and Contini, memory), is
	// more than hip to shoulder to top of the head: 0.050. A pelvis that tips
	// forward on a saddle that gives comes a little lower.
	hipOverSeat = 0.045

	hipHalf      = 0.049 // half the distance between the hip joints
	shoulderHalf = 0.105 // half the distance between the shoulder joints; the shoulders themselves are 0.129 (Drillis and Contini, memory)
	soleToFoot   = 0.016 // the line from heel to toe tip over the sole

	// As fractions of the foot's length, from the heel.
	ankleAt = 0.25
	ballAt  = 0.72
)

// spindleToSole is from the middle of a pedal's spindle to the sole of the foot
// in its shoe, m: half a pedal and the shoe's own sole (common practice, no
// source).
const spindleToSole = 0.025

// body holds the measures of one person.
type body struct {
	*table
	stature float64
	length  [kinds]float64 // m
	neck    float64        // mid-shoulder to midgonion, m

	legs, arms chain
	foot       shoe
}

// chain is two links and how far they open and close.
type chain struct {
	a, b             float64 // m
	straight, folded float64 // longest and shortest distance between their ends, m
}

// Angles by which a joint must and can bend from straight: estimates of ours.
// Nobody pedals with a locked knee or rides with a locked elbow, so the least
// is a little more than nothing.
const (
	leastBend = 5 * degree
	kneeMost  = 145 * degree
	elbowMost = 145 * degree
)

func newChain(a, b, most float64) chain {
	return chain{a, b, apart(a, b, leastBend), apart(a, b, most)}
}

func measure(stature float64, t *table) *body {
	m := &body{table: t, stature: stature}
	for k, f := range [kinds]float64{
		head: t.head, trunk: trunkLength, upperArm: upperArmLength, forearm: forearmLength, hand: t.hand,
		thigh: thighLength, shank: shankLength, foot: footLength,
	} {
		m.length[k] = f * stature
	}
	m.neck = shoulderToTop*stature - m.length[head]
	m.legs = newChain(m.length[thigh], m.length[shank], kneeMost)
	// The fist holds the grip in line with the forearm, so both are one link.
	m.arms = newChain(m.length[upperArm], m.length[forearm]+m.length[hand], elbowMost)
	m.foot = newShoe(stature)
	return m
}
