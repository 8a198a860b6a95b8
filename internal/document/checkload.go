package document

import (
	"slices"
	"strconv"

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
		c.warn("show.loads", "%d loads are to be carried; only the first two are.", len(s.Loads))
	}
	if s.State != "" && !slices.Contains(States, s.State) {
		c.warn("show.state", "The state %s is to be shown, which is none of %s; the bike is shown ready to ride.", words.Quote(string(s.State)), words.Choose(States))
	}
	if s.Supplies != "" && !slices.Contains(SupplyLevels, s.Supplies) {
		c.warn("show.supplies", "Supplies are to be %s, which is none of %s; they are taken as full.", words.Quote(string(s.Supplies)), words.Choose(SupplyLevels))
	}
	if s.Grip != 0 {
		c.between("show.grip", "The coefficient of grip", "", s.Grip, MinGrip, MaxGrip)
	}
	p := s.Packing
	if p == nil {
		return
	}
	if !slices.Contains(Judgeds, p.Of) {
		c.fail("show.packing.of", "A packing is to be judged by %s; it should be one of %s.", words.Quote(p.Of), words.Choose(Judgeds))
	}
	c.between("show.packing.front_share", "The wanted share on the front wheel", "", p.FrontShare, 0, 1)
	c.between("show.packing.front", "The weight of the share in front", "", p.Front, 0, MaxWeight)
	c.between("show.packing.low", "The weight of being low", "", p.Low, 0, MaxWeight)
	c.between("show.packing.balance", "The weight of balance", "", p.Balance, 0, MaxWeight)
	c.between("show.packing.middle", "The weight of being near the middle", "", p.Middle, 0, MaxWeight)
}

// between checks a figure that has a least and a greatest value.
func (c *checker) between(field, what, unit string, v, least, most float64) {
	switch {
	case !finite(v):
		c.fail(field, "%s is %v; it should be from %s to %s%s.", what, v, words.Number(least), words.Number(most), unit)
	case v < least || v > most:
		c.fail(field, "%s is %s%s; it should be from %s to %s%s.", what, words.Number(v), unit, words.Number(least), words.Number(most), unit)
	}
}

// ratings checks the ratings of the build in hand.
func (c *checker) ratings(ratings []Rating) {
	seen := make(map[string]bool)
	for i, r := range ratings {
		at := "ratings." + strconv.Itoa(i)
		switch {
		case !slices.Contains(Rateds, r.What):
			c.fail(at+".what", "A rating is of %s; it should be of one of %s.", words.Quote(r.What), words.Choose(Rateds))
		case seen[r.What]:
			c.fail(at+".what", "There are two ratings of %s; the first is taken. Leave the other one out.", words.Quote(r.What))
		}
		seen[r.What] = true
		if r.Limit != 0 {
			c.between(at+".limit_g", "The permitted load", " g", r.Limit, 1, MaxRating)
		}
	}
}

// riders checks the riders and returns their ids.
func (c *checker) riders(riders []Rider) map[string]bool {
	ids := make(map[string]bool, len(riders))
	for i := range riders {
		r := &riders[i]
		c.outer = thing{holdRider, r.ID, r.Name}
		c.id(r.ID, "rider", ids)
		if words.Blank(r.Name) {
			c.warn("name", "This rider has no name; give one to tell riders apart.")
		}
		c.between("stature_mm", "The stature", " mm", r.Stature, MinStature, MaxStature)
		c.between("mass_g", "The mass of the body", " g", r.Mass, MinBody, MaxBody)
		switch h := r.HalfWidth; {
		case finite(h) && h >= 0 && h > r.Mass && r.Mass >= MinBody:
			c.fail("half_width_g", "The half-width, %s g, is larger than the mass, %s g.", words.Number(h), words.Number(r.Mass))
		default:
			c.between("half_width_g", "The half-width", " g", h, 0, MaxBody)
		}
		c.between("clothing_g", "The mass of clothes and helmet", " g", r.Clothing, 0, MaxClothing)
		c.between("shoes_g", "The mass of the pair of shoes", " g", r.Shoes, 0, MaxShoes)
		if !slices.Contains(Tables, r.Table) {
			c.fail("table", "The body table is %s; it should be one of %s.", words.Quote(r.Table), words.Choose(Tables))
		}
		if !slices.Contains(Postures, r.Posture) {
			c.fail("posture", "The posture is %s; it should be one of %s.", words.Quote(r.Posture), words.Choose(Postures))
		}
		c.between("crank_deg", "The angle of the left crank", "°", r.Crank, -MaxCrank, MaxCrank)
	}
	c.outer = thing{}
	return ids
}

// loads checks the loads and returns their ids.
func (c *checker) loads(loads []Load, riders map[string]bool) map[string]bool {
	ids := make(map[string]bool, len(loads))
	for i := range loads {
		l := &loads[i]
		c.outer = thing{holdLoad, l.ID, l.Name}
		c.id(l.ID, "load", ids)
		if words.Blank(l.Name) {
			c.warn("name", "This load has no name; give it one to tell it from the others.")
		}
		if l.Rider != "" && !riders[l.Rider] {
			c.fail("rider", "The rider is %s, but there is none with that id.", words.Quote(l.Rider))
		}
		bags := make(map[string]bool, len(l.Bags))
		for j := range l.Bags {
			b := &l.Bags[j]
			c.inner = thing{holdBag, b.ID, b.Name}
			c.id(b.ID, "bag", bags)
			c.bag(b)
		}
		goods := make(map[string]bool, len(l.Goods))
		for j := range l.Goods {
			g := &l.Goods[j]
			c.inner = thing{holdGood, g.ID, g.Name}
			c.id(g.ID, "good", goods)
			c.good(g, bags)
		}
		c.inner = thing{}
	}
	c.outer = thing{}
	return ids
}

func (c *checker) bag(b *Bag) {
	if words.Blank(b.Name) {
		c.warn("name", "This bag has no name; give it one to find it again.")
	}
	c.mass("bag", b.Mass, b.HalfWidth, b.Basis, false)
	if b.Station == "" {
		c.fail("station", "It is not said where this bag sits; give a station.")
	}
	c.place("offset_mm", &b.Offset)
	if !slices.Contains(Carriers, b.Carrier) {
		c.fail("carrier", "The carrier is %s; it should be one of %s.", words.Quote(string(b.Carrier)), words.Choose(Carriers))
	}
	for _, x := range b.Size {
		c.length("size_mm", "A size", x)
	}
	c.between("volume_l", "The volume", " l", b.Volume, 0, MaxVolume)
	c.between("permitted_g", "The permitted load", " g", b.Permitted, 0, MaxMass)
}

func (c *checker) good(g *Good, bags map[string]bool) {
	if words.Blank(g.Name) {
		c.warn("name", "This good has no name; give it one to find it again.")
	}
	c.quantity(g.Quantity)
	c.mass("good", g.Mass, g.HalfWidth, g.Basis, g.Quantity > 0)
	c.between("volume_l", "The volume of one piece", " l", g.Volume, 0, MaxVolume)
	if g.In != "" && !bags[g.In] {
		c.fail("in", "It is packed in the bag %s, but this load has none with that id.", words.Quote(g.In))
	}
	if g.Supply != "" && !slices.Contains(SupplyKinds, g.Supply) {
		c.fail("supply", "The supply is %s; it should be one of %s, or left out for what is not used up.", words.Quote(g.Supply), words.Choose(SupplyKinds))
	}
}

// weighIns checks the weigh-ins.
func (c *checker) weighIns(weighIns []WeighIn, builds, loads map[string]bool) {
	ids := make(map[string]bool, len(weighIns))
	for i := range weighIns {
		w := &weighIns[i]
		c.outer = thing{holdWeighIn, w.ID, w.Name}
		c.id(w.ID, "weigh-in", ids)
		if words.Blank(w.Name) {
			c.warn("name", "This weigh-in has no name; give it one to tell it from the others.")
		}
		if !builds[w.Build] {
			c.fail("build", "The build %s was weighed, but there is none with that id.", words.Quote(w.Build))
		}
		if !slices.Contains(States, w.State) {
			c.fail("state", "The state is %s; it should be one of %s.", words.Quote(string(w.State)), words.Choose(States))
		}
		switch loaded := w.State == Loaded || w.State == Ridden; {
		case w.Load != "" && !loads[w.Load]:
			c.fail("load", "The load %s was on the bike, but there is none with that id.", words.Quote(w.Load))
		case w.Load == "" && loaded:
			c.fail("load", "The bike was weighed %s, but it is not said with which load.", words.Quote(string(w.State)))
		}
		if w.FrontSag != nil {
			c.between("front_sag_mm", "The fork's sag on the scale", " mm", *w.FrontSag, 0, maxSag)
		}
		if w.RearSag != nil {
			c.between("rear_sag_mm", "The rear's sag on the scale", " mm", *w.RearSag, 0, maxSag)
		}
		if w.WheelbasePlus != nil {
			c.between("wheelbase_within_mm", "What the wheelbase may be off by", " mm", *w.WheelbasePlus, 0, MaxStandWithin)
		}
		if w.RadiusPlus != nil {
			c.between("radius_within_mm", "What the wheels' radii may be off by", " mm", *w.RadiusPlus, 0, MaxStandWithin)
		}
		scales := c.scales(w.Scales)
		if len(w.Readings) == 0 {
			c.warn("readings", "There is no reading of the scale yet.")
		}
		for j := range w.Readings {
			c.reading("readings."+strconv.Itoa(j), &w.Readings[j], w.State, scales)
		}
	}
	c.outer = thing{}
}

// scales checks the scales of a weigh-in and returns their ids.
func (c *checker) scales(scales []Scale) map[string]bool {
	ids := make(map[string]bool, len(scales))
	for i := range scales {
		s := &scales[i]
		at := "scales." + strconv.Itoa(i)
		switch {
		case s.ID == "":
			c.fail(at+".id", "Scale %d has no id; give it one, such as \"s1\", that readings can name.", i+1)
		case ids[s.ID]:
			c.fail(at+".id", "Two scales have the id %s; readings cannot tell which is theirs.", words.Quote(s.ID))
		}
		ids[s.ID] = true
		c.between(at+".step_g", "The step of the scale's display", " g", s.Step, minStep, MaxMass)
		if s.Calibration != nil {
			c.between(at+".calibration_share", "The share of a load that the scale may be off by", "", *s.Calibration, 0, MaxCalibration)
		}
	}
	return ids
}

func (c *checker) reading(at string, r *Reading, state State, scales map[string]bool) {
	if r.Wheel != "front" && r.Wheel != "rear" {
		c.fail(at+".wheel", "The wheel on the scale is %s; it should be \"front\" or \"rear\".", words.Quote(r.Wheel))
	}
	switch r.Raised {
	case "":
		c.length(at+".height_mm", "The height", r.Height)
	case "front", "rear":
		c.between(at+".height_mm", "The height by which the wheel was raised", " mm", r.Height, 1, MaxLength)
		if state == Ridden {
			c.fail(at+".raised", "The %s wheel is raised with the rider on the bike. This reading is refused: nobody sits on a bike with a raised wheel, because it tips over or rolls off its block, with nobody's feet on the ground. Weigh it level with the rider, on a board as thick as the scale, and raise it without.", r.Raised)
		}
	default:
		c.fail(at+".raised", "The raised wheel is %s; it should be \"front\" or \"rear\", or left out when the bike stood level.", words.Quote(r.Raised))
	}
	c.length(at+".height_within_mm", "The doubt in height", r.HeightPlus)
	c.between(at+".mass_g", "The reading", " g", r.Mass, 0, MaxMass)
	switch {
	case r.Scale == "":
		c.between(at+".resolution_g", "The scale's resolution", " g", r.Resolution, minStep, MaxMass)
	case !scales[r.Scale]:
		c.fail(at+".scale", "The reading is of the scale %s, but this weigh-in has none with that id.", words.Quote(r.Scale))
	case r.Resolution != 0:
		c.warn(at+".resolution_g", "The reading names its scale, so the step of that counts, and the resolution of %s g does not.", words.Number(r.Resolution))
	}
}
