package document

import (
	"slices"
	"strconv"

	"steelyard/internal/units"
	"steelyard/internal/words"
)

// Limits of riders, loads and weigh-ins. Beyond them lies a slip of the pen.
const (
	MinStature  = 800   // mm
	MaxStature  = 2500  // mm
	MinBody     = 10e3  // g
	MaxBody     = 300e3 // g
	MaxClothing = 30e3  // g
	MaxShoes    = 10e3  // g
	MaxCrank    = 360   // degrees, either way
	MaxVolume   = 500   // l, of a bag or of one piece
	maxSag      = 500   // mm
	MaxRating   = 1e6   // g
	MinGrip     = 0.05  // of a tyre on the road
	MaxGrip     = 2
	MaxWeight   = 1000 // of a term of a packing's aim

	MaxStandWithin = 200 // mm, of wheelbase and wheels on the scale
	MaxCalibration = 0.2 // of a load
	minStep        = 0.1 // g, of a scale's display
)

// Tables, Postures, Rateds and Judgeds are the words that a document may use
// for the body table of a rider, for the posture, for what a rating is of, and
// for what a packing is judged by.
var (
	Tables   = []string{"female", "male"}
	Postures = []string{"upright", "leaned", "low", "standing"}
	Rateds   = []string{
		"total", "front-rack", "rear-rack", "fork-cage-left", "fork-cage-right", "down-tube-cage", "front-tyre", "rear-tyre", "front-rim", "rear-rim",
	}
	Judgeds = []string{"load", "all"}
)

// carried checks what the page shows of riders and loads.
func (c *checker) carried(s *Show) {
	if len(s.Loads) > 2 {
		c.warn("show.loads", "document.show.loads.many", "n", len(s.Loads))
	}
	if s.State != "" && !slices.Contains(States, s.State) {
		c.warn("show.state", "document.show.state", "state", words.Quote(string(s.State)), "choice", words.Choose(States))
	}
	if s.Supplies != "" && !slices.Contains(SupplyLevels, s.Supplies) {
		c.warn("show.supplies", "document.show.supplies", "supplies", words.Quote(string(s.Supplies)), "choice", words.Choose(SupplyLevels))
	}
	if s.Grip != 0 {
		c.between("show.grip", "grip", "", s.Grip, MinGrip, MaxGrip)
	}
	p := s.Packing
	if p == nil {
		return
	}
	if !slices.Contains(Judgeds, p.Of) {
		c.fail("show.packing.of", "document.show.packing", "of", words.Quote(p.Of), "choice", words.Choose(Judgeds))
	}
	c.between("show.packing.front_share", "front_share", "", p.FrontShare, 0, 1)
	c.between("show.packing.front", "front", "", p.Front, 0, MaxWeight)
	c.between("show.packing.low", "low", "", p.Low, 0, MaxWeight)
	c.between("show.packing.balance", "balance", "", p.Balance, 0, MaxWeight)
	c.between("show.packing.middle", "middle", "", p.Middle, 0, MaxWeight)
	c.between("show.packing.steered", "steered", "", p.Steered, 0, MaxWeight)
	if p.Moves != nil {
		c.between("show.packing.moves", "moves", "", float64(*p.Moves), 0, MaxQuantity)
	}
}

// between checks a figure that has a least and a greatest value; what is the last
// part of the key of its name.
func (c *checker) between(field, what, unit string, v, least, most float64) {
	switch {
	case !units.Finite(v):
		c.fail(field, "document.between.infinite", "what", words.Tell("document.of."+what), "x", v, "least", least, "most", most, "unit", unit)
	case v < least || v > most:
		c.fail(field, "document.between", "what", words.Tell("document.of."+what), "x", v, "least", least, "most", most, "unit", unit)
	}
}

// ratings checks the ratings of the build in hand.
func (c *checker) ratings(ratings []Rating) {
	seen := make(map[string]bool)
	for i, r := range ratings {
		at := "ratings." + strconv.Itoa(i)
		switch {
		case !slices.Contains(Rateds, r.What):
			c.fail(at+".what", "document.rating.what", "what", words.Quote(r.What), "choice", words.Choose(Rateds))
		case seen[r.What]:
			c.fail(at+".what", "document.rating.twice", "what", words.Quote(r.What))
		}
		seen[r.What] = true
		if r.Limit != 0 {
			c.between(at+".limit_g", "permitted", " g", r.Limit, 1, MaxRating)
		}
	}
}

// riders checks the riders and returns their ids.
func (c *checker) riders(riders []Rider) map[string]bool {
	ids := make(map[string]bool, len(riders))
	for i := range riders {
		r := &riders[i]
		c.outer = entity{kindRider, r.ID, r.Name}
		c.id(r.ID, "rider", ids)
		if words.Blank(r.Name) {
			c.warn("name", "document.name.rider")
		}
		c.between("stature_mm", "stature", " mm", r.Stature, MinStature, MaxStature)
		c.between("mass_g", "body", " g", r.Mass, MinBody, MaxBody)
		switch h := r.HalfWidth; {
		case units.Finite(h) && h >= 0 && h > r.Mass && r.Mass >= MinBody:
			c.fail("half_width_g", "document.half_width.rider", "half", words.Number(h), "mass", words.Number(r.Mass))
		default:
			c.between("half_width_g", "half_width", " g", h, 0, MaxBody)
		}
		c.between("clothing_g", "clothing", " g", r.Clothing, 0, MaxClothing)
		c.between("shoes_g", "shoes", " g", r.Shoes, 0, MaxShoes)
		if !slices.Contains(Tables, r.Table) {
			c.fail("table", "document.table", "table", words.Quote(r.Table), "choice", words.Choose(Tables))
		}
		if !slices.Contains(Postures, r.Posture) {
			c.fail("posture", "document.posture", "posture", words.Quote(r.Posture), "choice", words.Choose(Postures))
		}
		c.between("crank_deg", "crank", "°", r.Crank, -MaxCrank, MaxCrank)
		c.effort(r.Effort)
		if s := r.Standing; s != nil {
			c.known("standing.frequency_hz", "body_frequency", " Hz", s.Frequency, BodyFrequencySpan)
			c.known("standing.damping_share", "body_damping", "", s.Damping, BodyDampingSpan)
		}
	}
	c.outer = entity{}
	return ids
}

// loads checks the loads and returns their ids.
func (c *checker) loads(loads []Load, riders map[string]bool) map[string]bool {
	ids := make(map[string]bool, len(loads))
	for i := range loads {
		l := &loads[i]
		c.outer = entity{kindLoad, l.ID, l.Name}
		c.id(l.ID, "load", ids)
		if words.Blank(l.Name) {
			c.warn("name", "document.name.load")
		}
		if l.Rider != "" && !riders[l.Rider] {
			c.fail("rider", "document.rider.none", "id", words.Quote(l.Rider))
		}
		bags := make(map[string]bool, len(l.Bags))
		for j := range l.Bags {
			b := &l.Bags[j]
			c.inner = entity{kindBag, b.ID, b.Name}
			c.id(b.ID, "bag", bags)
			c.bag(b)
		}
		goods := make(map[string]bool, len(l.Goods))
		for j := range l.Goods {
			g := &l.Goods[j]
			c.inner = entity{kindGood, g.ID, g.Name}
			c.id(g.ID, "good", goods)
			c.good(g, bags)
		}
		c.inner = entity{}
	}
	c.outer = entity{}
	return ids
}

func (c *checker) bag(b *Bag) {
	if words.Blank(b.Name) {
		c.warn("name", "document.name.bag")
	}
	c.mass("bag", b.Mass, b.HalfWidth, b.Basis, false)
	if b.Station == "" {
		c.fail("station", "document.place.bag")
	}
	c.place("offset_mm", &b.Offset)
	if !slices.Contains(Carriers, b.Carrier) {
		c.fail("carrier", "document.carrier", "carrier", words.Quote(string(b.Carrier)), "choice", words.Choose(Carriers))
	}
	for _, x := range b.Size {
		c.length("size_mm", "size", x)
	}
	c.between("volume_l", "volume", " l", b.Volume, 0, MaxVolume)
	c.between("permitted_g", "permitted", " g", b.Permitted, 0, MaxMass)
	c.liquids("liquids", b.Liquids, BagLiquids)
}

func (c *checker) good(g *Good, bags map[string]bool) {
	if words.Blank(g.Name) {
		c.warn("name", "document.name.good")
	}
	c.quantity(g.Quantity)
	c.mass("good", g.Mass, g.HalfWidth, g.Basis, g.Quantity > 0)
	c.between("volume_l", "volume_each", " l", g.Volume, 0, MaxVolume)
	if g.In != "" && !bags[g.In] {
		c.fail("in", "document.in.none", "id", words.Quote(g.In))
	}
	if g.Supply != "" && !slices.Contains(SupplyKinds, g.Supply) {
		c.fail("supply", "document.supply", "supply", words.Quote(g.Supply), "choice", words.Choose(SupplyKinds))
	}
	c.liquids("liquid", g.Liquid, GoodLiquids)
}

func (c *checker) liquids(field, is string, choice []string) {
	if is != "" && !slices.Contains(choice, is) {
		c.fail(field, "document.liquids", "is", words.Quote(is), "choice", words.Choose(choice))
	}
}

// weighIns checks the weigh-ins.
func (c *checker) weighIns(weighIns []WeighIn, builds, loads map[string]bool) {
	ids := make(map[string]bool, len(weighIns))
	for i := range weighIns {
		w := &weighIns[i]
		c.outer = entity{kindWeighIn, w.ID, w.Name}
		c.id(w.ID, "weigh_in", ids)
		if words.Blank(w.Name) {
			c.warn("name", "document.name.weigh_in")
		}
		if !builds[w.Build] {
			c.fail("build", "document.weigh_in.build", "id", words.Quote(w.Build))
		}
		if !slices.Contains(States, w.State) {
			c.fail("state", "document.state", "state", words.Quote(string(w.State)), "choice", words.Choose(States))
		}
		switch loaded := w.State == Loaded || w.State == Ridden; {
		case w.Load != "" && !loads[w.Load]:
			c.fail("load", "document.weigh_in.load", "id", words.Quote(w.Load))
		case w.Load == "" && loaded:
			c.fail("load", "document.weigh_in.no_load", "state", words.Quote(string(w.State)))
		}
		if w.FrontSag != nil {
			c.between("front_sag_mm", "front_sag", " mm", *w.FrontSag, 0, maxSag)
		}
		if w.RearSag != nil {
			c.between("rear_sag_mm", "rear_sag", " mm", *w.RearSag, 0, maxSag)
		}
		if w.WheelbasePlus != nil {
			c.between("wheelbase_within_mm", "wheelbase", " mm", *w.WheelbasePlus, 0, MaxStandWithin)
		}
		if w.RadiusPlus != nil {
			c.between("radius_within_mm", "radii", " mm", *w.RadiusPlus, 0, MaxStandWithin)
		}
		scales := c.scales(w.Scales)
		if len(w.Readings) == 0 {
			c.warn("readings", "document.readings.none")
		}
		for j := range w.Readings {
			c.reading("readings."+strconv.Itoa(j), &w.Readings[j], w.State, scales)
		}
	}
	c.outer = entity{}
}

// scales checks the scales of a weigh-in and returns their ids.
func (c *checker) scales(scales []Scale) map[string]bool {
	ids := make(map[string]bool, len(scales))
	for i := range scales {
		s := &scales[i]
		at := "scales." + strconv.Itoa(i)
		switch {
		case s.ID == "":
			c.fail(at+".id", "document.scale.no_id", "n", i+1)
		case ids[s.ID]:
			c.fail(at+".id", "document.scale.twice", "id", words.Quote(s.ID))
		}
		ids[s.ID] = true
		c.between(at+".step_g", "step", " g", s.Step, minStep, MaxMass)
		if s.Calibration != nil {
			c.between(at+".calibration_share", "calibration", "", *s.Calibration, 0, MaxCalibration)
		}
	}
	return ids
}

func (c *checker) reading(at string, r *Reading, state State, scales map[string]bool) {
	if r.Wheel != "front" && r.Wheel != "rear" {
		c.fail(at+".wheel", "document.reading.wheel", "wheel", words.Quote(r.Wheel))
	}
	switch r.Raised {
	case "":
		c.length(at+".height_mm", "height_level", r.Height)
	case "front", "rear":
		c.between(at+".height_mm", "height", " mm", r.Height, 1, MaxLength)
		if state == Ridden {
			c.fail(at+".raised", "document.reading.ridden."+r.Raised)
		}
	default:
		c.fail(at+".raised", "document.reading.raised", "wheel", words.Quote(r.Raised))
	}
	c.length(at+".height_within_mm", "height_within", r.HeightPlus)
	c.between(at+".mass_g", "reading", " g", r.Mass, 0, MaxMass)
	switch {
	case r.Scale == "":
		c.between(at+".resolution_g", "resolution", " g", r.Resolution, minStep, MaxMass)
	case !scales[r.Scale]:
		c.fail(at+".scale", "document.reading.scale", "id", words.Quote(r.Scale))
	case r.Resolution != 0:
		c.warn(at+".resolution_g", "document.reading.resolution", "step", words.Number(r.Resolution))
	}
}
