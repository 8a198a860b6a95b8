package document

import (
	"slices"

	"steelyard/internal/words"
)

// Known is a figure that lies within Value ± HalfWidth, nowhere more likely than
// elsewhere. The unit stands in the key that it is under.
type Known struct {
	Value     float64 `json:"value"`
	HalfWidth float64 `json:"half_width"`
	Basis     Basis   `json:"basis,omitempty"` // one of KnownBases; empty is Guessed
}

// Measured is the basis of a figure that was measured and is no mass.
const Measured Basis = "measured"

// KnownBases are those of figures that are no masses, best known first.
var KnownBases = []Basis{Measured, Stated, Typical, Guessed}

// Clone returns a copy; nil of nil.
func (k *Known) Clone() *Known {
	if k == nil {
		return nil
	}
	c := *k
	return &c
}

// Span is what a figure may be. Beyond it lies a slip of the pen.
type Span struct{ Least, Most float64 }

// Has reports whether a value may be; what is no number may not.
func (s Span) Has(v float64) bool { return v >= s.Least && v <= s.Most }

// Sound returns the figure where it may be reckoned with, else nil.
func (s Span) Sound(k *Known) *Known {
	if k == nil || !s.Has(k.Value) || !(k.HalfWidth >= 0 && k.HalfWidth <= s.Most-s.Least) {
		return nil
	}
	return k
}

// What riders, roads, drives and days may say.
var (
	PowerSpan       = Span{1, 2500}    // W
	CadenceSpan     = Span{5, 250}     // turns per minute
	WalkingSpan     = Span{0.1, 3}     // m/s
	TopSpeedSpan    = Span{1, 40}      // m/s
	SlopeSpan       = Span{-50, 50}    // per cent, rise over run
	ClimbSlopeSpan  = Span{0.1, 50}    // of what is climbed
	ClimbSpan       = Span{1, 10000}   // m
	WindSpan        = Span{-25, 25}    // m/s
	AltitudeSpan    = Span{-500, 9000} // m
	TemperatureSpan = Span{-60, 60}    // °C
	DragSpan        = Span{0.05, 5}    // m²
	RollingSpan     = Span{0.0005, 0.5}
	RollOutSpan     = Span{500, 4000} // mm
	EfficiencySpan  = Span{0.1, 1}    // share
	StretchSpan     = Span{0.1, 1e6}  // m
	LeastRatioSpan  = Span{0.1, 10}   // teeth of the ring over those of the cog
	TorqueSpan      = Span{1, 2000}   // N m

	BodyFrequencySpan = Span{0.5, 20} // Hz
	BodyDampingSpan   = Span{0.01, 2} // share of the critical one

	HandStepSpan  = Span{10, 1000} // mm
	HandLeanSpan  = Span{1, 45}    // degrees
	HandSlopeSpan = Span{0.5, 50}  // per cent, rise over run
)

// How many there may be.
const (
	MaxDays         = 100
	MaxStretches    = 2000  // of one day
	MaxAllStretches = 20000 // of all days
	MaxStageLosses  = 40    // of one build
	MaxCrossedCogs  = 32
)

// Effort is what a rider holds and likes. What is not there is typical.
type Effort struct {
	Power   *Known  `json:"power_w,omitempty"`             // held at the pedals
	For     string  `json:"power_for,omitempty"`           // how long: one of Holds; empty is a day
	Cadence *Known  `json:"cadence_rpm,omitempty"`         // liked
	Least   *Known  `json:"least_cadence_rpm,omitempty"`   // below it the rider walks
	Highest *Known  `json:"highest_cadence_rpm,omitempty"` // above it the rider does not follow
	Walking *Known  `json:"on_foot_m_s,omitempty"`         // speed on foot with the bike
	Top     float64 `json:"top_speed_m_s,omitempty"`       // above it the rider brakes

	// Bare is Walking as documents said it once, without a ±; 0 is none.
	Bare float64 `json:"walking_m_s,omitempty"`
}

// OnFoot is the speed on foot, nil where nobody said one. One without a ± is taken
// within a quarter: common practice, no source.
func (e *Effort) OnFoot() *Known {
	if e.Walking == nil && WalkingSpan.Has(e.Bare) {
		return &Known{Value: e.Bare, HalfWidth: e.Bare / 4, Basis: Stated}
	}
	return e.Walking
}

// Holds are how long a power may be held.
var Holds = []string{"day", "hour"}

// Road is what is climbed, and what acts from outside. What is not there is
// typical.
type Road struct {
	Slope       *Known  `json:"slope_percent,omitempty"` // rise over run
	Climb       float64 `json:"climb_m,omitempty"`       // height to climb
	Surface     string  `json:"surface,omitempty"`       // one of Surfaces
	Wind        *Known  `json:"wind_m_s,omitempty"`      // against the rider positive
	Altitude    *Known  `json:"altitude_m,omitempty"`
	Temperature *Known  `json:"temperature_c,omitempty"`
	Drag        *Known  `json:"drag_area_m2,omitempty"`
	Rolling     *Known  `json:"rolling,omitempty"` // coefficient of rolling resistance on the surface
}

// Hand is what is done with a bike in the hand. 0 is as is usual.
type Hand struct {
	Step  float64 `json:"step_mm,omitempty"`       // that it is lifted up, front first
	Lean  float64 `json:"lean_deg,omitempty"`      // at which it is held
	Slope float64 `json:"slope_percent,omitempty"` // that it is pushed up, rise over run
}

// Surfaces are what one rides on, smoothest first.
var Surfaces = []string{"asphalt", "rough-asphalt", "gravel", "track", "sand"}

// GearUnits are how a gear may be shown: by its development, or as the inches of a
// wheel that goes as far for a turn.
var GearUnits = []string{"development", "inches"}

// DriveLosses are what somebody knows of the losses of a build's drive. What is
// not there is typical.
type DriveLosses struct {
	Efficiency *Known      `json:"efficiency,omitempty"` // share, of the whole drive; it takes the place of all stages
	Power      float64     `json:"power_w,omitempty"`    // at which that was found
	Stages     []StageLoss `json:"stages,omitempty"`
}

// StageLoss is a quantity that a stage of a drive loses power by.
type StageLoss struct {
	Of        string  `json:"of"` // one of StageLosses
	Value     float64 `json:"value"`
	HalfWidth float64 `json:"half_width"`
	Basis     Basis   `json:"basis,omitempty"`
	Note      string  `json:"note,omitempty"`
}

// Known is the quantity without what it is of.
func (s *StageLoss) Known() *Known { return &Known{s.Value, s.HalfWidth, s.Basis} }

// StageLosses are what a stage may lose by: shares of the power, torques in N m at
// the shaft that they act on, numbers of meshes, and what package drive says of
// the others.
var StageLosses = []string{
	"chain-friction", "chain-slack", "pulley-torque", "belt-share", "belt-torque",
	"gearbox-mesh", "gearbox-meshes", "gearbox-torque", "hub-mesh", "hub-meshes", "hub-torque", "crank-torque",
	"other-share", "other-power",
}

// StageLossSpan is what a quantity of a stage may be.
func StageLossSpan(of string) Span {
	switch of {
	case "chain-friction":
		return Span{0, 1}
	case "chain-slack": // N
		return Span{0, 300}
	case "gearbox-meshes", "hub-meshes":
		return Span{0, MaxMeshes}
	case "pulley-torque", "belt-torque", "gearbox-torque", "hub-torque", "crank-torque":
		return Span{0, 20}
	case "other-power": // W
		return Span{0, 500}
	}
	return Span{0, 0.9}
}

// DriveLimits are what makers permit; 0 is not stated.
type DriveLimits struct {
	LeastRatio  float64 `json:"least_ratio,omitempty"`     // teeth of the ring over those of the cog
	CrankTorque float64 `json:"crank_torque_nm,omitempty"` // at the cranks
	HubTorque   float64 `json:"hub_torque_nm,omitempty"`   // at the cog
}

// Day is a road of several stretches.
type Day struct {
	ID        string    `json:"id"` // unique in the document
	Name      string    `json:"name"`
	Notes     string    `json:"notes,omitempty"`
	Stretches []Stretch `json:"stretches"`
}

// Stretch is a piece of a day's road.
type Stretch struct {
	Length  float64 `json:"length_m"`
	Slope   float64 `json:"slope_percent"` // rise over run
	Surface string  `json:"surface,omitempty"`
}

// known warns of a figure that is not what it may be, and of its half-width. What
// is wrong is not reckoned with; it takes nothing else along.
func (c *checker) known(field, what, unit string, k *Known, s Span) {
	if k == nil {
		return
	}
	c.span(field+".value", what, unit, k.Value, s)
	if h := k.HalfWidth; !(h >= 0 && h <= s.Most-s.Least) {
		c.warn(field+".half_width", "document.between", "what", words.Tell("document.of.half_width"), "x", words.Number(h), "least", 0, "most", words.Number(s.Most-s.Least), "unit", unit)
	}
	c.knownBasis(field, k.Basis)
}

func (c *checker) knownBasis(field string, b Basis) {
	if b != "" && !slices.Contains(KnownBases, b) {
		c.warn(field+".basis", "document.basis", "basis", words.Quote(string(b)), "choice", words.Choose(KnownBases))
	}
}

func (c *checker) span(field, what, unit string, v float64, s Span) {
	if !s.Has(v) {
		c.warn(field, "document.between", "what", words.Tell("document.of."+what), "x", words.Number(v), "least", words.Number(s.Least), "most", words.Number(s.Most), "unit", unit)
	}
}

// stated is span for a figure of which 0 is none.
func (c *checker) stated(field, what, unit string, v float64, s Span) {
	if v != 0 {
		c.span(field, what, unit, v, s)
	}
}

func (c *checker) oneOf(field, key, v string, of []string) {
	if v != "" && !slices.Contains(of, v) {
		c.warn(field, key, "value", words.Quote(v), "choice", words.Choose(of))
	}
}

// effort checks what the rider in hand holds.
func (c *checker) effort(e *Effort) {
	if e == nil {
		return
	}
	c.known("effort.power_w", "power", " W", e.Power, PowerSpan)
	c.oneOf("effort.power_for", "document.power_for", e.For, Holds)
	c.known("effort.cadence_rpm", "cadence", "/min", e.Cadence, CadenceSpan)
	c.known("effort.least_cadence_rpm", "least_cadence", "/min", e.Least, CadenceSpan)
	c.known("effort.highest_cadence_rpm", "highest_cadence", "/min", e.Highest, CadenceSpan)
	for _, pair := range []struct {
		low, high *Known
		field     string
	}{{e.Least, e.Cadence, "effort.least_cadence_rpm"}, {e.Cadence, e.Highest, "effort.highest_cadence_rpm"}, {e.Least, e.Highest, "effort.highest_cadence_rpm"}} {
		if pair.low != nil && pair.high != nil && pair.low.Value > pair.high.Value {
			c.warn(pair.field, "document.cadences")
			break
		}
	}
	c.known("effort.on_foot_m_s", "walking", " m/s", e.Walking, WalkingSpan)
	c.stated("effort.walking_m_s", "walking", " m/s", e.Bare, WalkingSpan)
	c.stated("effort.top_speed_m_s", "top_speed", " m/s", e.Top, TopSpeedSpan)
}

// hand checks what is done with the bike in the hand.
func (c *checker) hand(h *Hand) {
	if h == nil {
		return
	}
	c.stated("show.hand.step_mm", "hand_step", " mm", h.Step, HandStepSpan)
	c.stated("show.hand.lean_deg", "hand_lean", "°", h.Lean, HandLeanSpan)
	c.stated("show.hand.slope_percent", "slope", " %", h.Slope, HandSlopeSpan)
}

// driven checks what the page shows of gears and of the road.
func (c *checker) driven(s *Show, days map[string]bool) {
	c.oneOf("show.gears", "document.gears", s.Gears, GearUnits)
	if n := s.CrossedCogs; n != nil && (*n < 0 || *n > MaxCrossedCogs) {
		c.warn("show.crossed_cogs", "document.between", "what", words.Tell("document.of.crossed_cogs"), "x", *n, "least", 0, "most", MaxCrossedCogs, "unit", "")
	}
	if s.Day != "" && !days[s.Day] {
		c.warn("show.day", "document.show.day.none", "id", words.Quote(s.Day))
	}
	r := s.Road
	if r == nil {
		return
	}
	c.known("show.road.slope_percent", "slope", " %", r.Slope, ClimbSlopeSpan)
	c.stated("show.road.climb_m", "climb", " m", r.Climb, ClimbSpan)
	c.oneOf("show.road.surface", "document.surface", r.Surface, Surfaces)
	c.known("show.road.wind_m_s", "wind", " m/s", r.Wind, WindSpan)
	c.known("show.road.altitude_m", "altitude", " m", r.Altitude, AltitudeSpan)
	c.known("show.road.temperature_c", "temperature", " °C", r.Temperature, TemperatureSpan)
	c.known("show.road.drag_area_m2", "drag_area", " m²", r.Drag, DragSpan)
	c.known("show.road.rolling", "rolling", "", r.Rolling, RollingSpan)
}

// drive checks what the build in hand says of its drive.
func (c *checker) drive(b *Build) {
	c.known("roll_out_mm", "roll_out", " mm", b.RollOut, RollOutSpan)
	if l := b.Losses; l != nil {
		c.known("losses.efficiency", "efficiency", "", l.Efficiency, EfficiencySpan)
		c.stated("losses.power_w", "losses_power", " W", l.Power, PowerSpan)
		if n := len(l.Stages); n > MaxStageLosses {
			c.warn("losses.stages", "document.losses.many", "n", n, "most", MaxStageLosses)
		} else {
			for i := range l.Stages {
				s, at := &l.Stages[i], item("losses.stages", i)
				if !slices.Contains(StageLosses, s.Of) {
					c.warn(at+".of", "document.losses.of", "value", words.Quote(s.Of), "choice", words.Choose(StageLosses))
					continue
				}
				c.known(at, "loss", "", s.Known(), StageLossSpan(s.Of))
			}
		}
	}
	if l := b.DriveLimits; l != nil {
		c.stated("drive_limits.least_ratio", "least_ratio", "", l.LeastRatio, LeastRatioSpan)
		c.stated("drive_limits.crank_torque_nm", "crank_torque", " N m", l.CrankTorque, TorqueSpan)
		c.stated("drive_limits.hub_torque_nm", "hub_torque", " N m", l.HubTorque, TorqueSpan)
	}
}

// days checks the days and returns their ids.
func (c *checker) days(days []Day) map[string]bool {
	ids := make(map[string]bool, len(days))
	for i := range days {
		d := &days[i]
		c.outer = entity{kindDay, d.ID, d.Name}
		c.id(d.ID, "day", ids)
		if words.Blank(d.Name) {
			c.warn("name", "document.name.day")
		}
		if n := len(d.Stretches); n > MaxStretches {
			c.warn("stretches", "document.stretches.many", "n", n, "most", MaxStretches)
		}
		for j := range d.Stretches[:min(len(d.Stretches), MaxStretches)] {
			s := &d.Stretches[j]
			c.list, c.index = "stretches", j
			c.span("length_m", "stretch", " m", s.Length, StretchSpan)
			c.span("slope_percent", "stretch_slope", " %", s.Slope, SlopeSpan)
			c.oneOf("surface", "document.surface", s.Surface, Surfaces)
		}
		c.list = ""
	}
	c.outer = entity{}
	return ids
}
