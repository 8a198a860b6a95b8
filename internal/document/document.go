package document

import "steelyard/internal/words"

// Format and Version name the document format that this program writes.
const (
	Format  = "steelyard-document"
	Version = 1
)

// Document is what a user keeps in one file.
type Document struct {
	Format  string  `json:"format"`
	Version int     `json:"version"`
	Title   string  `json:"title"`
	Notes   string  `json:"notes,omitempty"`
	Show    Show    `json:"show"`
	Builds  []Build `json:"builds"`

	Riders   []Rider   `json:"riders,omitempty"`
	Loads    []Load    `json:"loads,omitempty"`
	WeighIns []WeighIn `json:"weigh_ins,omitempty"`
	Aside    []Aside   `json:"aside,omitempty"` // parts that are kept for later
	Days     []Day     `json:"days,omitempty"`  // roads to ride
}

// Show is what the page shows: in which units, which builds, and how much of
// what they carry. The units change no figure.
type Show struct {
	Mass    string   `json:"mass"`              // "g", "kg" or "lb_oz"
	Length  string   `json:"length"`            // "mm" or "in"
	Compare []string `json:"compare,omitempty"` // the ids of the build looked at and of the one it is set against; the same one twice to set two loads against each other

	Loads    []string `json:"loads,omitempty"`    // what each of the two carries: load ids, "" for none
	State    State    `json:"state,omitempty"`    // how much of it is on the bike; empty is Ready
	Supplies Supplies `json:"supplies,omitempty"` // how much is left of what is used up on the way; empty is Full
	Grip     float64  `json:"grip,omitempty"`     // of a tyre on the road: the coefficient that a climb is judged by; 0 is DefaultGrip
	Table    []string `json:"table,omitempty"`    // the ids of the builds that are set side by side; none is all of them
	Base     string   `json:"base,omitempty"`     // the id of the one of them that the others are set against; empty is the first
	Packing  *Packing `json:"packing,omitempty"`  // what a packing is wanted to be; nil is DefaultPacking
	Rough    *Rough   `json:"rough,omitempty"`    // the rough road that is ridden; nil is a typical one
	Hand     *Hand    `json:"hand,omitempty"`     // what is done with the bike in the hand; nil is as is usual

	Gears       string `json:"gears,omitempty"`        // how a gear is shown, one of GearUnits; empty is by its development
	CrossedCogs *int   `json:"crossed_cogs,omitempty"` // how many cogs are left out on the largest and on the smallest ring; nil is 2
	Road        *Road  `json:"road,omitempty"`         // what is climbed; nil is a typical one
	Day         string `json:"day,omitempty"`          // the id of the day that is ridden; empty is the first
}

// Build is one way to build the bike.
type Build struct {
	ID      string  `json:"id"` // unique in the document, kept for life
	Name    string  `json:"name"`
	Notes   string  `json:"notes,omitempty"`
	Frame   Frame   `json:"frame"`
	Fork    Fork    `json:"fork"`
	Rear    Rear    `json:"rear"`
	Wheels  Wheels  `json:"wheels"`
	Cockpit Cockpit `json:"cockpit"`
	Saddle  Saddle  `json:"saddle"`
	Cranks  Cranks  `json:"cranks"`
	Parts   []Part  `json:"parts"`

	Ratings []Rating `json:"ratings,omitempty"`
	Stand   *Stand   `json:"stand,omitempty"`   // where its foot is; nil is a typical place, where a stand is fitted
	Without []string `json:"without,omitempty"` // roles of package parts that the bike goes without
	Setup   *Setup   `json:"setup,omitempty"`   // tyres, springs and dampers; nil is typical

	Photograph string `json:"photograph,omitempty"` // the id of a picture that is kept beside the document, never in it

	RollOut     *Known       `json:"roll_out_mm,omitempty"`  // as measured, of the loaded rear wheel; nil is reckoned from the tyre
	Losses      *DriveLosses `json:"losses,omitempty"`       // of the drive; nil is typical
	DriveLimits *DriveLimits `json:"drive_limits,omitempty"` // what makers permit the drive to take
}

// Frame holds the figures of a frame as makers print them: on level ground,
// with the suspension at full length.
type Frame struct {
	Stack     float64 `json:"stack_mm"`       // bottom bracket up to the top of the head tube, on its axis
	Reach     float64 `json:"reach_mm"`       // bottom bracket forward to the same point
	HeadTube  float64 `json:"head_tube_mm"`   // its length
	HeadAngle float64 `json:"head_angle_deg"` // steering axis from the horizontal, as seen from behind it
	SeatTube  float64 `json:"seat_tube_mm"`   // bottom bracket to its top
	SeatAngle float64 `json:"seat_angle_deg"` // seat tube (effective) from the horizontal
	Chainstay float64 `json:"chainstay_mm"`   // bottom bracket to rear axle
	BBDrop    float64 `json:"bb_drop_mm"`     // bottom bracket below the line of a wheel of the rear's size; negative is above
}

// Fork holds the figures of the fork.
type Fork struct {
	Length float64 `json:"length_mm"` // crown race to axle along the steering axis, unloaded
	Offset float64 `json:"offset_mm"` // axle ahead of the steering axis
	Travel float64 `json:"travel_mm"` // 0 for a rigid fork
	Sag    float64 `json:"sag_mm"`    // along the steering axis, in the pose that is weighed
}

// Rear holds the figures of the rear suspension.
type Rear struct {
	Travel    float64 `json:"travel_mm"`        // vertical, at the axle; 0 for a rigid rear
	Sag       float64 `json:"sag_mm"`           // vertical, at the axle, in the pose that is weighed
	PivotFwd  float64 `json:"pivot_forward_mm"` // main (or effective) pivot ahead of the bottom bracket, unloaded
	PivotUp   float64 `json:"pivot_up_mm"`      // and above it
	ShockFrom Point2  `json:"shock_frame_mm"`   // shock eye on the frame: forward and up of the bottom bracket, unloaded
	ShockTo   Point2  `json:"shock_swing_mm"`   // shock eye on the swingarm or link side, likewise
}

// Point2 is forward and up, mm.
type Point2 [2]float64

// Wheels holds both wheels.
type Wheels struct {
	Front Wheel `json:"front"`
	Rear  Wheel `json:"rear"`
}

// Wheel is a wheel by its bead seat (ISO 5775) and tyre section.
type Wheel struct {
	BeadSeat float64 `json:"bead_seat_mm"` // 622, 584, 559, 507, 406, 349, ...
	Tyre     float64 `json:"tyre_mm"`      // section width, inflated; the height is taken equal
}

// Cockpit holds stem and bar.
type Cockpit struct {
	Spacers   float64 `json:"spacers_mm"`     // between head tube and stem, upper bearing included
	Stem      float64 `json:"stem_mm"`        // centre to centre
	StemAngle float64 `json:"stem_angle_deg"` // from square to the steering axis, positive up
	BarWidth  float64 `json:"bar_width_mm"`
	BarRise   float64 `json:"bar_rise_mm"`
	BarBack   float64 `json:"bar_back_mm"` // how far the grips lie behind the clamp
}

// Saddle says where the saddle is.
type Saddle struct {
	Height  float64 `json:"height_mm"`  // bottom bracket to the top of the saddle along the seat angle
	Setback float64 `json:"setback_mm"` // middle of the saddle behind (positive) the seat-tube line
}

// Stand says where the foot of a side stand is while the bike leans on it.
type Stand struct {
	Forward float64 `json:"forward_mm"` // ahead of the rear contact
	Out     float64 `json:"out_mm"`     // beside the line of the wheels
	Lean    float64 `json:"lean_deg"`   // of the bike to its side
}

// Cranks holds what the drawing and the pedals need.
type Cranks struct {
	Length float64 `json:"length_mm"`
	Width  float64 `json:"width_mm"` // between the pedals' mounting faces
}

// Basis says where a mass comes from.
type Basis string

// The four bases, best known first.
const (
	Weighed Basis = "weighed" // on a scale; the half-width is the scale's resolution
	Stated  Basis = "stated"  // the maker says so
	Typical Basis = "typical" // the catalogue says so
	Guessed Basis = "guessed"
)

// Carrier is what a part is fixed to.
type Carrier string

// The carriers.
const (
	MainFrame  Carrier = "main-frame"
	Swingarm   Carrier = "swingarm"
	RearWheel  Carrier = "rear-wheel"
	ForkUpper  Carrier = "fork-upper" // steerer, crown, stanchions, stem, bar: sprung, steered
	ForkLower  Carrier = "fork-lower"
	FrontWheel Carrier = "front-wheel"
	Link       Carrier = "link" // shock or link: half of it moves
)

// Part is a line of the parts list.
type Part struct {
	ID        string  `json:"id"` // unique in its build; kept when a build is copied
	Name      string  `json:"name"`
	Kind      string  `json:"kind"`                // a kind of the catalogue, see Kinds
	Catalogue string  `json:"catalogue,omitempty"` // the entry that it came from
	Quantity  int     `json:"quantity"`
	Mass      float64 `json:"mass_g"`       // of one piece
	HalfWidth float64 `json:"half_width_g"` // the mass lies within ± this
	Basis     Basis   `json:"basis"`
	Station   string  `json:"station,omitempty"` // a station of package geometry; empty with At
	Offset    Vec3    `json:"offset_mm"`         // from the station, or from each of a pair, y outward
	At        *Vec3   `json:"at_mm,omitempty"`   // an absolute place instead of a station
	Within    float64 `json:"within_mm"`         // each coordinate of the place lies within ± this
	Carrier   Carrier `json:"carrier"`
	Shape     Shape   `json:"shape"`
	Note      string  `json:"note,omitempty"`

	Joint   *Joint   `json:"joint,omitempty"`   // the reading with others that the mass is of
	Gearing *Gearing `json:"gearing,omitempty"` // of what takes part in the drive
}

// Vec3 is x forward, y left, z up, mm.
type Vec3 [3]float64

// Shape is a simple body.
type Shape struct {
	Form  Form    `json:"form"`
	Size  Vec3    `json:"size_mm"`             // rod: length, -, -; ring: radius, -, -; disc: radius, width, -; box: x, y, z; pair: width, -, -
	Pitch float64 `json:"pitch_deg,omitempty"` // turned about y, nose up positive
}

// Form is the kind of a shape.
type Form string

// The forms.
const (
	FormPoint Form = "point"
	FormRod   Form = "rod"
	FormRing  Form = "ring"
	FormDisc  Form = "disc"
	FormBox   Form = "box"
	FormPair  Form = "pair"
)

// Problem is something wrong with a document, told as data: which build, which
// part, which field, what is wrong and what would be right.
type Problem struct {
	Severity string        `json:"severity"`           // "error": no figure without it; "warning": looked odd, taken as it is
	Build    string        `json:"build,omitempty"`    // build id
	Part     string        `json:"part,omitempty"`     // part id
	Rider    string        `json:"rider,omitempty"`    // rider id
	Load     string        `json:"load,omitempty"`     // load id
	Bag      string        `json:"bag,omitempty"`      // bag id, in that load
	Good     string        `json:"good,omitempty"`     // good id, in that load
	WeighIn  string        `json:"weigh_in,omitempty"` // weigh-in id
	Day      string        `json:"day,omitempty"`      // day id
	Field    string        `json:"field,omitempty"`    // key as written in the document, with dots: "frame.reach_mm"; items of a list that have no id by number from 0: "readings.2.mass_g"
	Message  words.Message `json:"message"`            // a sentence for people
}

// Said is the problem with its message in a language.
func (p Problem) Said(w *words.Words) Problem {
	p.Message = p.Message.Said(w)
	return p
}

// SayAll says problems in a language; none is an empty list.
func SayAll(problems []Problem, w *words.Words) []Problem {
	out := make([]Problem, len(problems))
	for i, p := range problems {
		out[i] = p.Said(w)
	}
	return out
}
