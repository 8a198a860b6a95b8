package report

import (
	"steelyard/internal/document"
)

// Side is one side of the comparison: a build with what it carries. Everything
// from Figures to Summary is of the state shown.
type Side struct {
	Carrying
	Findings
	States []State `json:"states"` // every state there is, at full, half and used-up supplies
}

// Carrying is what a build carries, and what that does.
type Carrying struct {
	Build    string            `json:"build"` // ids; of load and rider nothing for none
	Load     string            `json:"load"`
	Rider    string            `json:"rider"` // who sits on it when ridden
	Name     string            `json:"name"`  // that tells the sides apart
	State    document.State    `json:"state"` // the one shown, or the fullest there is below it
	Supplies document.Supplies `json:"supplies"`
	Weighed  bool              `json:"weighed"` // whether all that follows holds

	Path     []Path    `json:"path"`      // of the centre of mass, in the state shown
	Luggage  float64   `json:"luggage_g"` // bags and what is in them, at full supplies
	Bags     []Bag     `json:"bags"`      // of the load, in its order
	Goods    []Good    `json:"goods"`
	Body     *Body     `json:"body,omitempty"`
	Handling *Handling `json:"handling,omitempty"`
	Ratings  *Ratings  `json:"ratings,omitempty"`
}

// State is a state of the load with its main figures.
type State struct {
	Condition
	Figures []Figure `json:"figures"` // total, centre_x, centre_y, centre_z, front_load, rear_load, front_share
}

// Condition is how much of a load is on a bike, and how much of it is left.
type Condition struct {
	State    document.State    `json:"state"`
	Supplies document.Supplies `json:"supplies"`
}

// Path is the way of the centre of mass while something is used up.
type Path struct {
	Supply string `json:"supply"` // "water", "food" or "fuel", or "all" of them together
	Points []Stop `json:"points"` // from all of it to nothing

	// The sum of the path, from the first point to the last; absent with fewer than
	// two points.
	Gone    float64       `json:"gone_g"`
	Moved   document.Vec3 `json:"moved_mm"`
	ShareBy float64       `json:"front_share_by"` // how much larger the share of the front wheel is at the end
}

// Stop is a point of a path.
type Stop struct {
	Left       float64       `json:"left"` // share of the supply, 1 to 0
	Total      float64       `json:"total_g"`
	Centre     document.Vec3 `json:"centre_mm"`
	FrontShare float64       `json:"front_share"`
}

// Bag is a bag of the load with what is in it, at full supplies.
type Bag struct {
	ID        string        `json:"id"`
	OK        bool          `json:"ok"`     // false: left out, see Problems
	Mass      float64       `json:"mass_g"` // empty
	Plus      float64       `json:"plus_g"`
	Goods     float64       `json:"goods_g"`
	GoodsPlus float64       `json:"goods_plus_g"`
	Whole     float64       `json:"whole_g"` // the bag with what is in it
	WholePlus float64       `json:"whole_plus_g"`
	Pieces    int           `json:"pieces"`
	Volume    float64       `json:"volume_l"` // of what is in it
	Place     document.Vec3 `json:"place_mm"`
	Headroom  *Headroom     `json:"headroom,omitempty"` // of the load that its maker permits
	Room      *Headroom     `json:"room,omitempty"`     // of its volume
}

// Good is a good of the load, at full supplies.
type Good struct {
	ID     string        `json:"id"`
	OK     bool          `json:"ok"`     // false: left out, see Problems
	Bag    string        `json:"bag"`    // nothing when it is not packed
	Mass   float64       `json:"mass_g"` // all pieces
	Plus   float64       `json:"plus_g"`
	Volume float64       `json:"volume_l"`
	Place  document.Vec3 `json:"place_mm"`
}

// Body is the rider on the bike.
type Body struct {
	Rider    string        `json:"rider"`
	Posture  string        `json:"posture"`
	Lean     float64       `json:"lean_deg"` // of the trunk over level; 90° is upright
	Mass     float64       `json:"mass_g"`   // with clothes and shoes
	Plus     float64       `json:"plus_g"`
	Centre   document.Vec3 `json:"centre_mm"`
	Note     string        `json:"note"` // key of the words that say how this mass is counted
	Segments []Segment     `json:"segments"`
}

// Segment is a rigid piece of a body.
type Segment struct {
	Name  string        `json:"name"`
	Side  string        `json:"side"` // "left", "right" or nothing
	Mass  float64       `json:"mass_g"`
	From  document.Vec3 `json:"from_mm"`
	To    document.Vec3 `json:"to_mm"`
	Place document.Vec3 `json:"place_mm"`
}

// Handling says what masses mean on the road, in the state shown if the load is
// on the bike there, and otherwise in the fullest state. Only a bike with a load
// has it.
type Handling struct {
	State    document.State    `json:"state"`
	Supplies document.Supplies `json:"supplies"`

	Left      float64    `json:"left_g"` // bags and goods to either side of the middle
	Right     float64    `json:"right_g"`
	Lean      *Figure    `json:"lean,omitempty"` // deg, to the right positive: what keeps the bike straight on
	Rebalance *Rebalance `json:"rebalance,omitempty"`

	Braking []Braking   `json:"braking"`
	Climb   *Climb      `json:"climb,omitempty"`
	Slopes  []SlopeLoad `json:"slopes"`
}

// Rebalance is what to move over for a bike that needs no lean.
type Rebalance struct {
	Mass  float64 `json:"mass_g"`
	Plus  float64 `json:"plus_g"`
	From  string  `json:"from"`     // "left" or "right"
	Apart float64 `json:"apart_mm"` // between the outermost bags of both sides
}

// Value is a number with its doubt.
type Value struct {
	Value float64 `json:"value"`
	Plus  float64 `json:"plus"`
}

// Braking is what ends a braking: decelerations in g, at the grip of Climb.
type Braking struct {
	Gradient float64 `json:"gradient"` // rise over run, uphill positive
	Lift     Value   `json:"lift"`     // the rear wheel leaves the road
	Slip     Value   `json:"slip"`     // the tyres slip
	First    Value   `json:"first"`
	Slips    bool    `json:"slips"`   // which of the two is first
	Decided  bool    `json:"decided"` // and whether that is beyond doubt
}

// Climb is what ends a climb: gradients.
type Climb struct {
	Grip    float64 `json:"grip"` // coefficient of the rear tyre on the road
	Lift    Value   `json:"lift"` // the front wheel leaves the road
	Slip    *Value  `json:"slip"` // the rear tyre slips; null: it never does
	First   Value   `json:"first"`
	Slips   bool    `json:"slips"`   // which of the two is first
	Decided bool    `json:"decided"` // and whether that is beyond doubt
}

// SlopeLoad is what the wheels carry on a slope at steady speed, square to the
// road.
type SlopeLoad struct {
	Gradient  float64 `json:"gradient"`
	Front     float64 `json:"front_g"`
	FrontPlus float64 `json:"front_plus_g"`
	Rear      float64 `json:"rear_g"`
	RearPlus  float64 `json:"rear_plus_g"`
}

// Ratings sets loads against what makers permit, in the fullest state there is,
// at full supplies.
type Ratings struct {
	State document.State `json:"state"`
	Rider bool           `json:"rider"` // whether one is counted
	List  []Headroom     `json:"list"`
}

// Headroom is a load, or a volume, beside its limit.
type Headroom struct {
	What    string  `json:"what"`          // of document.Rateds, or "bag" or "volume" of a bag
	Bag     string  `json:"bag,omitempty"` // bag id
	Name    string  `json:"name"`
	Unit    string  `json:"unit"` // "g" or "l"
	Load    float64 `json:"load"`
	Plus    float64 `json:"plus"`
	Limit   float64 `json:"limit"`
	Left    float64 `json:"left"` // below 0 the excess
	Used    float64 `json:"used"` // share of the limit
	Verdict string  `json:"verdict"`
	Sure    bool    `json:"sure"` // of "over": beyond doubt
	Text    string  `json:"text"`
}
