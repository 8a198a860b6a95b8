package scene

import (
	"steelyard/internal/geometry"
	"steelyard/internal/mass"
)

// Subject is a build to draw, with what was found out about it.
type Subject struct {
	Name    string
	Bike    *geometry.Bike
	Markers []Marker

	Total, TotalPlus         float64  // kg
	Centre, CentrePlus       mass.Vec // m; Plus is half the expanded interval of each coordinate
	FrontLoad, FrontLoadPlus float64  // kg that the wheel carries
	RearLoad, RearLoadPlus   float64

	Rider []Limb  // the rider's body, to be drawn; none is nobody
	Crank float64 // left crank over level and forward, where the rider's feet are, rad
	Path  []Stop  // of the centre of mass while supplies are used up, fullest first

	Fittings              []Fitting // parts that are drawn as what they are
	RearRack, FrontRack   bool
	RearRotor, FrontRotor float64 // radius of the brake disc, m; 0 for none

	Ghost *Subject // the build that this one is set against, drawn behind; its own Ghost is not looked at
}

// Marker is a part at one of its places: a pair gives two markers with the same
// Part, each with its half of the mass.
type Marker struct {
	Part     string // part id
	Name     string
	Mass     float64 // kg at this place
	MassPlus float64 // kg, half the expanded interval
	Place    mass.Vec
	Unsprung float64  // share that counts as unsprung, 0 to 1
	Role     Role     // what sort of mass it is
	Carrier  string   // what it is fixed to, for whoever asks
	Size     mass.Vec // m, of a box-shaped part, so that a bag is drawn as large as it is; else zero
	Fill     float64  // how full such a bag is, 0 to 1; 0 also where that is not known
	Ring     float64  // m, radius of a part that is a ring about its place, as a tyre is; else 0
	Mirror   bool     // the right one of a pair, whose offset outward is towards -y
}

// Role is what sort of mass a marker stands for.
type Role uint8

// The roles.
const (
	Fitted  Role = iota // a part of the bike
	Baggage             // bags, and what is in them or strapped on
	Body                // the rider, or a part of him or her
)

// Limb is a piece of the rider's body: a tapered capsule, which is the hull of
// two balls.
type Limb struct {
	From, To mass.Vec
	R, S     float64 // radii at From and To, m
	Member   Member
}

// Member is what a limb belongs to. Limbs of one member flow into each other.
type Member uint8

// The members. An arm or leg with y > 0 is the left one.
const (
	Torso Member = iota // trunk and neck
	Head
	Arm
	Leg
)

// Stop is where the centre of mass is at some stage of the day.
type Stop struct {
	Place mass.Vec
	Name  string // "full", "half", "used up"
}

// View says what to show of a subject. Light or dark is the painter's choice,
// see Palette.
type View struct {
	Aspect     Aspect
	Selected   string // part id
	Hovered    string // part id
	Dimensions bool
	Steering   bool // what turns with the bar, and trail and flop
	Labels     bool
	Key        bool // what the figures mean, in a corner
	Units      Units
	Words      func(key string) string // the words of the picture, by keys that begin with "scene."; nil shows the keys
}

// Units say how the figures in the picture are written.
type Units struct {
	Mass   string // as package units names them: "g", "kg", "lb_oz"; "" is "g"
	Length string // "mm", "in"; "" is "mm"
	Comma  bool   // decimals are written with a comma
}

// Aspect is where the picture is seen from.
type Aspect uint8

// The two aspects.
const (
	Side Aspect = iota // from the rider's right: forward is to the right
	Rear               // from behind: the rider's left is to the left
)

// Plane returns the coordinates of a place in the plane of the picture, m:
// rightward and upward.
func (a Aspect) Plane(r mass.Vec) (u, v float64) {
	if a == Rear {
		return -r.Y, r.Z
	}
	return r.X, r.Z
}

// nearer says whether a place is nearer to the eye than another.
func (a Aspect) nearer(r, than mass.Vec) bool {
	if a == Rear {
		return r.X < than.X
	}
	return r.Y < than.Y
}

// Space is the inverse of Plane for a displacement in the plane.
func (a Aspect) Space(u, v float64) mass.Vec {
	if a == Rear {
		return mass.Vec{Y: -u, Z: v}
	}
	return mass.Vec{X: u, Z: v}
}
