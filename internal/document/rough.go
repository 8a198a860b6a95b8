package document

import (
	"slices"

	"steelyard/internal/words"
)

// Rough is the rough road that the page shows, and how it is ridden. What is not
// there is as in DefaultRough.
type Rough struct {
	Class     string    `json:"class,omitempty"`         // of ISO 8608, "A" to "E"; see RoadClasses
	Roughness *float64  `json:"roughness_cm3,omitempty"` // displacement spectral density at 0.1 cycle/m, 1e-6 m³: goes before the class
	Speed     *float64  `json:"speed_km_h,omitempty"`
	Obstacle  *Obstacle `json:"obstacle,omitempty"` // a single one beside it
	Rider     string    `json:"rider,omitempty"`    // "seated" or "standing"; empty is as the rider's posture says
	Contact   string    `json:"contact,omitempty"`  // "length": the road is averaged over the tyre's contact; "point": it is not, and the tyre has no damping
}

// Obstacle is something upright-sided that lies across a level road.
type Obstacle struct {
	Form   string  `json:"form"`      // "edge" is ridden up and stays, "step" is a bar that lies across, "hole" is sunk in
	Height float64 `json:"height_mm"` // of a hole its depth
	Length float64 `json:"length_mm"` // along the road; of an edge it means nothing
}

// Setup is what a build is set up with that matters on a rough road, besides sag
// and travel of fork and rear.
type Setup struct {
	Front *EndSetup `json:"front,omitempty"`
	Rear  *EndSetup `json:"rear,omitempty"`
	// Springs are "kept", as they were set with the rider on and all supplies full,
	// or set "anew" to the same sag in each state; empty is kept.
	Springs string `json:"springs,omitempty"`
}

// EndSetup is that of one wheel; nil is a typical value. Half-widths that are not
// there are typical too.
type EndSetup struct {
	Pressure     *float64 `json:"pressure_bar,omitempty"`
	PressurePlus *float64 `json:"pressure_within_bar,omitempty"`
	// What the makers permit.
	TyreLeast *float64 `json:"tyre_least_bar,omitempty"`
	TyreMost  *float64 `json:"tyre_most_bar,omitempty"`
	RimMost   *float64 `json:"rim_most_bar,omitempty"`
	// Drop goes before the pressure: how the tyre gave way when somebody tried.
	Drop *TyreDrop `json:"drop,omitempty"`

	Spring     *float64 `json:"spring_n_mm,omitempty"` // along the travel; goes before the sag
	SpringPlus *float64 `json:"spring_within_n_mm,omitempty"`
	SagPlus    *float64 `json:"sag_within_mm,omitempty"`

	Damping     *float64 `json:"damping_share,omitempty"` // of the critical one
	DampingPlus *float64 `json:"damping_within_share,omitempty"`
	Damper      *float64 `json:"damper_n_s_m,omitempty"` // as measured along the travel; goes before the share
	DamperPlus  *float64 `json:"damper_within_n_s_m,omitempty"`
}

// TyreDrop is a test of a tyre: the axle sank by so much when the load on the
// wheel grew by so much.
type TyreDrop struct {
	Load     float64 `json:"load_g"`
	LoadPlus float64 `json:"load_within_g"`
	Drop     float64 `json:"drop_mm"`
	DropPlus float64 `json:"drop_within_mm"`
}

// The words that a document may use for a class of roads, an obstacle, a rider, a
// tyre's contact and the springs.
var (
	RoadClasses   = []string{"A", "B", "C", "D", "E"}
	ObstacleForms = []string{"edge", "step", "hole"}
	RiderWays     = []string{"seated", "standing"}
	Contacts      = []string{"length", "point"}
	SpringWays    = []string{"kept", "anew"}
)

// What is taken where nothing is said: a gravel road at a touring speed, and a
// kerb that is let down (common practice, no source).
const (
	DefaultRoadClass  = "C"
	DefaultRoadSpeed  = 20.0 // km/h
	DefaultForm       = "edge"
	DefaultEdgeHeight = 40.0  // mm
	DefaultLength     = 300.0 // mm, of a bar or a hole
)

// Limits of a rough road and of what a bike is set up with. Beyond them lies a
// slip of the pen.
const (
	MinRoadSpeed   = 1 // km/h
	MaxRoadSpeed   = 200
	MinRoughness   = 0.1 // cm³
	MaxRoughness   = 1e6
	MinPressure    = 0.2 // bar
	MaxPressure    = 15
	MaxObstacle    = 1000 // mm high
	MaxObstacleWay = 4000 // mm long
	MinSpring      = 0.1  // N/mm
	MaxSpring      = 10000
	MaxDamping     = 10 // of critical
	usualDamping   = 1.5
	MaxDamper      = 1e5 // N s/m
)

// Clone returns a copy that shares nothing; nil of nil.
func (s *Setup) Clone() *Setup {
	if s == nil {
		return nil
	}
	return &Setup{Front: s.Front.clone(), Rear: s.Rear.clone(), Springs: s.Springs}
}

func (e *EndSetup) clone() *EndSetup {
	if e == nil {
		return nil
	}
	c := *e
	for _, v := range c.figures() {
		if *v != nil {
			figure := **v
			*v = &figure
		}
	}
	if c.Drop != nil {
		drop := *c.Drop
		c.Drop = &drop
	}
	return &c
}

func (e *EndSetup) figures() []**float64 {
	return []**float64{
		&e.Pressure, &e.PressurePlus, &e.TyreLeast, &e.TyreMost, &e.RimMost, &e.Spring, &e.SpringPlus, &e.SagPlus,
		&e.Damping, &e.DampingPlus, &e.Damper, &e.DamperPlus,
	}
}

// rough checks the road that is shown.
func (c *checker) rough(r *Rough) {
	if r == nil {
		return
	}
	c.choice("show.rough.class", "document.rough.class", r.Class, RoadClasses)
	c.choice("show.rough.rider", "document.rough.rider", r.Rider, RiderWays)
	c.choice("show.rough.contact", "document.rough.contact", r.Contact, Contacts)
	c.perhaps("show.rough.roughness_cm3", "roughness", " cm³", r.Roughness, MinRoughness, MaxRoughness)
	c.perhaps("show.rough.speed_km_h", "road_speed", " km/h", r.Speed, MinRoadSpeed, MaxRoadSpeed)
	if o := r.Obstacle; o != nil {
		if !slices.Contains(ObstacleForms, o.Form) {
			c.fail("show.rough.obstacle.form", "document.rough.form", "word", words.Quote(o.Form), "choice", words.Choose(ObstacleForms))
		}
		c.between("show.rough.obstacle.height_mm", "obstacle_height", " mm", o.Height, 1, MaxObstacle)
		if o.Form == DefaultForm {
			c.between("show.rough.obstacle.length_mm", "obstacle_length", " mm", o.Length, 0, MaxObstacleWay)
		} else {
			c.between("show.rough.obstacle.length_mm", "obstacle_length", " mm", o.Length, 1, MaxObstacleWay)
		}
	}
}

// setup checks what the build in hand is set up with.
func (c *checker) setup(s *Setup) {
	if s == nil {
		return
	}
	c.choice("setup.springs", "document.rough.springs", s.Springs, SpringWays)
	for _, end := range []struct {
		key string
		*EndSetup
	}{{"front", s.Front}, {"rear", s.Rear}} {
		if end.EndSetup != nil {
			c.endSetup("setup."+end.key+".", end.EndSetup)
		}
	}
}

func (c *checker) endSetup(at string, e *EndSetup) {
	c.perhaps(at+"pressure_bar", "pressure", " bar", e.Pressure, MinPressure, MaxPressure)
	c.perhaps(at+"pressure_within_bar", "pressure_within", " bar", e.PressurePlus, 0, MaxPressure)
	c.perhaps(at+"tyre_least_bar", "tyre_least", " bar", e.TyreLeast, MinPressure, MaxPressure)
	c.perhaps(at+"tyre_most_bar", "tyre_most", " bar", e.TyreMost, MinPressure, MaxPressure)
	c.perhaps(at+"rim_most_bar", "rim_most", " bar", e.RimMost, MinPressure, MaxPressure)
	if p := e.Pressure; p != nil {
		// Makers' limits go before what the arithmetic would take.
		for _, limit := range []struct {
			of    string
			bar   *float64
			below bool
		}{{"tyre_most", e.TyreMost, false}, {"rim_most", e.RimMost, false}, {"tyre_least", e.TyreLeast, true}} {
			if limit.bar != nil && *p != *limit.bar && (*p < *limit.bar) == limit.below {
				c.warn(at+"pressure_bar", "document.rough.pressure."+limit.of, "pressure", words.Number(*p), "limit", words.Number(*limit.bar))
			}
		}
	}
	if d := e.Drop; d != nil {
		c.between(at+"drop.load_g", "drop_load", " g", d.Load, 1, MaxMass)
		c.between(at+"drop.load_within_g", "drop_load_within", " g", d.LoadPlus, 0, MaxMass)
		c.between(at+"drop.drop_mm", "drop", " mm", d.Drop, 0.01, 200)
		c.between(at+"drop.drop_within_mm", "drop_within", " mm", d.DropPlus, 0, 200)
	}
	c.perhaps(at+"spring_n_mm", "spring", " N/mm", e.Spring, MinSpring, MaxSpring)
	c.perhaps(at+"spring_within_n_mm", "spring_within", " N/mm", e.SpringPlus, 0, MaxSpring)
	c.perhaps(at+"sag_within_mm", "sag_within", " mm", e.SagPlus, 0, maxSag)
	c.perhaps(at+"damping_share", "damping", "", e.Damping, 0, MaxDamping)
	c.perhaps(at+"damping_within_share", "damping_within", "", e.DampingPlus, 0, MaxDamping)
	if v := e.Damping; v != nil && *v == 0 {
		c.warn(at+"damping_share", "document.rough.damping.none")
	} else if v != nil && *v > usualDamping && *v <= MaxDamping {
		c.warn(at+"damping_share", "document.rough.damping.high", "share", words.Number(*v), "most", words.Number(usualDamping))
	}
	c.perhaps(at+"damper_n_s_m", "damper", " N s/m", e.Damper, 0, MaxDamper)
	c.perhaps(at+"damper_within_n_s_m", "damper_within", " N s/m", e.DamperPlus, 0, MaxDamper)
}

// perhaps is between for a figure that need not be there.
func (c *checker) perhaps(field, what, unit string, v *float64, least, most float64) {
	if v != nil {
		c.between(field, what, unit, *v, least, most)
	}
}

// choice checks a word that need not be there.
func (c *checker) choice(field, key, word string, list []string) {
	if word != "" && !slices.Contains(list, word) {
		c.fail(field, key, "word", words.Quote(word), "choice", words.Choose(list))
	}
}
