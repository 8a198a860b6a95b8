package document

import (
	"slices"
	"strings"
)

// State is how much of what a bike carries is on it.
type State string

// The states, lightest first. Each has all that the one before has.
const (
	Bare   State = "bare"   // the build without what comes along for the way, see OfBareBike
	Ready  State = "ready"  // all parts of the build
	Loaded State = "loaded" // with the load's bags and what is packed in them
	Ridden State = "ridden" // with the rider
)

// States are all of them, lightest first.
var States = []State{Bare, Ready, Loaded, Ridden}

// OfBareBike reports whether a part of this kind, in this group (see GroupOf),
// belongs to the bare bike: all but bags, what is carried, and locks. Racks,
// mudguards, cages, lights and stands are part of the bike.
func OfBareBike(kind, group string) bool {
	return group != "bags" && group != "carried" && kind != "lock"
}

// Supplies is how much is left of what is used up on the way.
type Supplies string

// The supplies.
const (
	Full  Supplies = "full"
	Half  Supplies = "half"
	Empty Supplies = "empty"
)

// SupplyLevels are all of them, fullest first.
var SupplyLevels = []Supplies{Full, Half, Empty}

// Left returns the share that is left, 0 to 1. An unknown level is full.
func (s Supplies) Left() float64 {
	switch s {
	case Half:
		return 0.5
	case Empty:
		return 0
	}
	return 1
}

// SupplyKinds are the kinds of goods that are used up on the way. Parts of the
// kind "water" are water too.
var SupplyKinds = []string{"water", "food", "fuel"}

// DefaultGrip is the coefficient of grip of a tyre when none is stated: about
// that of packed gravel (memory).
const DefaultGrip = 0.6

// Packing says what is wanted of a packing. The weights set the terms against
// each other, 0 leaves one out; with equal weights a percentage point of front
// share, a centimetre of height and a centimetre to the side count alike.
type Packing struct {
	Of         string  `json:"of"`          // entityInfo is judged: the "load" alone, or "all": bike, load and rider
	FrontShare float64 `json:"front_share"` // wanted share of that on the front wheel, 0 to 1
	Front      float64 `json:"front"`       // weight of keeping to it
	Low        float64 `json:"low"`         // weight of being low
	Balance    float64 `json:"balance"`     // weight of being as heavy left as right
	Middle     float64 `json:"middle"`      // weight of heavy things near the middle

	Steered float64 `json:"steered,omitempty"` // weight of little inertia about the steering axis
	Moves   *int    `json:"moves,omitempty"`   // at most so many things change bags; nil is any number
}

// BagLiquids say what a bag takes: liquids "only", as a bottle does, or liquids
// too, since they stand "upright" in it, or "none".
var BagLiquids = []string{"only", "upright", "none"}

// GoodLiquids say of a good that it is a liquid which "stays" in its bag when the
// bags are packed anew, or "moves", or that it is "no" liquid.
var GoodLiquids = []string{"stays", "moves", "no"}

// TakesLiquids is one of [BagLiquids]. A bag at the place of a bottle takes nothing else
// unless it says so; one that is taller than long and wide holds them upright.
func (b *Bag) TakesLiquids() string {
	switch {
	case b.Liquids != "":
		return b.Liquids
	case strings.HasPrefix(b.Station, "bottle-"):
		return "only"
	case b.Size[2] >= max(b.Size[0], b.Size[1]):
		return "upright"
	}
	return "none"
}

// InReach reports whether a bag can be reached into while riding: as it says, or
// by its place (common practice, no source).
func (b *Bag) InReach() bool {
	if b.AtHand != nil {
		return *b.AtHand
	}
	return slices.Contains([]string{"handlebar-bag", "top-tube-bag", "stem", "frame-bag", "bottle-down-tube", "bottle-seat-tube"}, b.Station)
}

// AsLiquid is "stays", "moves" or "no", of [GoodLiquids]: water stays unless the
// good says otherwise, and nothing else is a liquid unless it says so.
func (g *Good) AsLiquid() string {
	switch {
	case g.Liquid != "":
		return g.Liquid
	case g.Supply == "water":
		return "stays"
	}
	return "no"
}

// DefaultPacking is what is wanted when nobody says otherwise: two fifths of
// the load in front (common practice, no source).
var DefaultPacking = Packing{Of: "load", FrontShare: 0.4, Front: 100, Low: 50, Balance: 100, Middle: 25}

// Rider is somebody who sits on the bike.
type Rider struct {
	ID        string  `json:"id"` // unique in the document
	Name      string  `json:"name"`
	Stature   float64 `json:"stature_mm"`
	Mass      float64 `json:"mass_g"`       // unclothed
	HalfWidth float64 `json:"half_width_g"` // the mass lies within ± this
	Clothing  float64 `json:"clothing_g"`   // clothes, helmet and what is in the pockets, spread over the body
	Shoes     float64 `json:"shoes_g"`      // the pair
	Table     string  `json:"table"`        // "female" or "male": the body table of de Leva (1996)
	Posture   string  `json:"posture"`      // "upright", "leaned", "low" or "standing"
	Crank     float64 `json:"crank_deg"`    // left crank from level and forward, positive up; the right one is opposite

	Effort   *Effort `json:"effort,omitempty"`   // what the rider holds and likes; nil is typical
	Standing *Spring `json:"standing,omitempty"` // how the body stands on legs and arms; nil is typical
}

// Spring is how a body that stands on bent legs and arms goes up and down by itself
// while what it stands on keeps still. What is not there is typical.
type Spring struct {
	Frequency *Known `json:"frequency_hz,omitempty"`
	Damping   *Known `json:"damping_share,omitempty"` // of the critical one
}

// Load is what is taken along: a rider, bags, and the goods in them. It is kept
// beside the builds, so that two builds can carry the same load and one build
// two loads.
type Load struct {
	ID    string `json:"id"` // unique in the document
	Name  string `json:"name"`
	Notes string `json:"notes,omitempty"`
	Rider string `json:"rider,omitempty"` // rider id; empty is nobody
	Bags  []Bag  `json:"bags"`
	Goods []Good `json:"goods"`
}

// Bag is a place to pack: a pannier, a bag, a rack deck with a strap, a cage.
type Bag struct {
	ID        string  `json:"id"` // unique in its load
	Name      string  `json:"name"`
	Mass      float64 `json:"mass_g"` // empty
	HalfWidth float64 `json:"half_width_g"`
	Basis     Basis   `json:"basis"`
	Station   string  `json:"station"` // a single place, not a pair
	Offset    Vec3    `json:"offset_mm"`
	Carrier   Carrier `json:"carrier"`
	Size      Vec3    `json:"size_mm"`     // x, y, z: its own inertia and its drawing
	Volume    float64 `json:"volume_l"`    // 0 is not limited
	Permitted float64 `json:"permitted_g"` // what the maker lets it hold; 0 is not stated

	Liquids string `json:"liquids,omitempty"` // one of BagLiquids; empty is as place and size say
	AtHand  *bool  `json:"at_hand,omitempty"` // whether it can be reached into while riding; nil is as the place says
}

// Good is something packed.
type Good struct {
	ID        string  `json:"id"` // unique in its load
	Name      string  `json:"name"`
	Quantity  int     `json:"quantity"`
	Mass      float64 `json:"mass_g"` // of one piece, full
	HalfWidth float64 `json:"half_width_g"`
	Basis     Basis   `json:"basis"`
	Volume    float64 `json:"volume_l"`         // of one piece
	In        string  `json:"in"`               // bag id; empty is not packed, and does not count
	Pinned    bool    `json:"pinned,omitempty"` // stays where it is when the bags are packed anew, at home if it is in none
	Supply    string  `json:"supply,omitempty"` // "water", "food" or "fuel" is used up on the way; empty stays

	Split    bool   `json:"split,omitempty"`    // its pieces may go into several bags
	Together string `json:"together,omitempty"` // goods with the same name here are used together, and lie in one bag
	AtHand   bool   `json:"at_hand,omitempty"`  // lies in a bag that can be reached into while riding
	Liquid   string `json:"liquid,omitempty"`   // one of GoodLiquids; empty is as the supply says
}

// Rating is a limit that a maker has set and the user has entered.
type Rating struct {
	What  string  `json:"what"` // one of Rateds
	Limit float64 `json:"limit_g"`
}

// WeighIn is one visit to the bathroom scale.
type WeighIn struct {
	ID       string    `json:"id"`
	Name     string    `json:"name"`
	Build    string    `json:"build"`          // build id
	State    State     `json:"state"`          // what was on the bike: "bare", "ready", "loaded" or "ridden"
	Load     string    `json:"load,omitempty"` // load id, for the last two
	Scales   []Scale   `json:"scales,omitempty"`
	Readings []Reading `json:"readings"`

	// How far wheelbase and each wheel's radius may be off as the bike stood on
	// the scale: they lie within ± this of the build's. Nil is WheelbaseWithin and
	// RadiusWithin.
	WheelbasePlus *float64 `json:"wheelbase_within_mm,omitempty"`
	RadiusPlus    *float64 `json:"radius_within_mm,omitempty"`

	// How far the suspension had sunk on the scale, measured as in the build; nil
	// is as far as it says there. A bike without its rider sits higher.
	FrontSag *float64 `json:"front_sag_mm,omitempty"`
	RearSag  *float64 `json:"rear_sag_mm,omitempty"`
}

// Scale is a scale that readings were taken on. Its calibration error is the same
// in all of them.
type Scale struct {
	ID          string   `json:"id"` // unique in its weigh-in; readings name it
	Name        string   `json:"name,omitempty"`
	Step        float64  `json:"step_g"`                      // of its display: it shows a load to within ± half of this
	Calibration *float64 `json:"calibration_share,omitempty"` // it shows up to this share of a load too much or too little; nil is CalibrationShare
}

// Half-widths that a weigh-in assumes where nobody has measured one (common
// practice, no source). A bathroom scale shows a load to half a per cent; frame
// figures are rounded and sag is set by eye, which moves the wheelbase by 5 mm; a
// tyre's radius varies as much, with its width on this rim, its pressure and its
// load.
const (
	CalibrationShare = 0.005
	WheelbaseWithin  = 5 // mm
	RadiusWithin     = 5 // mm
)

// CalibrationWithin is the share of a load that the scale may be off by.
func (s *Scale) CalibrationWithin() float64 {
	if s.Calibration != nil {
		return *s.Calibration
	}
	return CalibrationShare
}

// StandWithin is what wheelbase and radii may be off by, mm.
func (w *WeighIn) StandWithin() (wheelbase, radius float64) {
	wheelbase, radius = WheelbaseWithin, RadiusWithin
	if w.WheelbasePlus != nil {
		wheelbase = *w.WheelbasePlus
	}
	if w.RadiusPlus != nil {
		radius = *w.RadiusPlus
	}
	return wheelbase, radius
}

// Sunk returns the build that was weighed, with its suspension as it was then.
func (w *WeighIn) Sunk(build *Build) Build {
	b := *build
	if w.FrontSag != nil {
		b.Fork.Sag = *w.FrontSag
	}
	if w.RearSag != nil {
		b.Rear.Sag = *w.RearSag
	}
	return b
}

// ScalesOf returns the scales of a weigh-in, and for each reading the number of
// its scale in that list. Readings that name none are of scales without an id,
// after the named ones: those of one resolution share one. A reading that names
// a scale that is not there has the number -1.
func (w *WeighIn) ScalesOf() (scales []Scale, of []int) {
	scales = append(scales, w.Scales...)
	of = make([]int, len(w.Readings))
	for i := range w.Readings {
		r := &w.Readings[i]
		of[i] = -1
		if r.Scale != "" {
			for j := range w.Scales {
				if w.Scales[j].ID == r.Scale {
					of[i] = j
					break
				}
			}
			continue
		}
		for j := len(w.Scales); j < len(scales); j++ {
			if scales[j].Step == r.Resolution {
				of[i] = j
			}
		}
		if of[i] < 0 {
			of[i] = len(scales)
			scales = append(scales, Scale{Step: r.Resolution})
		}
	}
	return scales, of
}

// Reading is what the scale showed under one wheel.
type Reading struct {
	Wheel      string  `json:"wheel"`            // the wheel on the scale: "front" or "rear"
	Raised     string  `json:"raised,omitempty"` // the wheel that stood on a block: "front", "rear" or none
	Height     float64 `json:"height_mm"`        // of the block, or of the scale where it lifts the wheel
	HeightPlus float64 `json:"height_within_mm"` // the height lies within ± this
	Mass       float64 `json:"mass_g"`
	Scale      string  `json:"scale,omitempty"`        // scale id; empty is one without a name, whose step is the resolution
	Resolution float64 `json:"resolution_g,omitempty"` // the step of that: readings that name no scale and have the same resolution are of the same scale
}
