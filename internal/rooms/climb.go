package rooms

import (
	"math"
	"slices"

	"steelyard/internal/document"
	"steelyard/internal/drive"
	"steelyard/internal/effort"
	"steelyard/internal/mass"
	"steelyard/internal/report"
	"steelyard/internal/units"
	"steelyard/internal/words"
)

// Climb is what a climb and a day cost the sides of a comparison.
type Climb struct {
	Sides      []ClimbSide      `json:"sides"`
	Difference *ClimbDifference `json:"difference,omitempty"` // of the second side minus the first
	Day        *ClimbDay        `json:"day,omitempty"`        // nothing without one
	Surfaces   []Option         `json:"surfaces"`             // that a stretch may have
	Days       int              `json:"days_left"`            // that the document may have more
	Stretches  int              `json:"stretches_left"`       // that all days may have more
	Words      string           `json:"words,omitempty"`
	Caution    string           `json:"caution"`
}

// ClimbSide is how one side climbs, with all its load and its rider.
type ClimbSide struct {
	Build    string             `json:"build"`
	Load     string             `json:"load"`
	Name     string             `json:"name"`
	State    document.State     `json:"state"` // that is reckoned with: the fullest that there is
	OK       bool               `json:"ok"`    // false: it cannot be told, see Why
	Why      string             `json:"why,omitempty"`
	Problems []document.Problem `json:"problems"`
	Words    string             `json:"words,omitempty"`

	Mass           float64 `json:"mass_g"`
	MassPlus       float64 `json:"mass_plus_g"`
	Mode           string  `json:"mode"` // how one gets along: one of effort's modes
	Speed          float64 `json:"speed_m_s"`
	SpeedPlus      float64 `json:"speed_plus"`
	Cadence        float64 `json:"cadence_rpm"` // 0 on foot
	Gear           int     `json:"gear"`        // its number in the order of shifting, from 1; 0 on foot
	Efficiency     float64 `json:"efficiency"`  // in that gear, 0 on foot
	EfficiencyPlus float64 `json:"efficiency_plus"`
	Length         float64 `json:"length_m"`
	Time           float64 `json:"time_s"`
	TimePlus       float64 `json:"time_plus_s"`
	Worth          *Worth  `json:"worth,omitempty"` // nothing on foot

	Steepest     *float64 `json:"steepest_percent,omitempty"` // slope on which the lowest gear is just held at the least cadence
	SteepestPlus *float64 `json:"steepest_plus,omitempty"`
	Lift         *float64 `json:"lift_percent,omitempty"` // slope on which the front wheel leaves the road
	LiftPlus     *float64 `json:"lift_plus,omitempty"`
	Slip         *float64 `json:"slip_percent,omitempty"` // slope on which the rear tyre slips
	SlipPlus     *float64 `json:"slip_plus,omitempty"`

	Inputs  []Input   `json:"inputs"`
	Figures []Figure  `json:"figures"` // those by which sides are set against each other
	First   []Measure `json:"first"`   // what to measure first for the time, s
}

// Worth says what a kilogram, a point of efficiency and a minute are worth in each
// other.
type Worth struct {
	Kilogram           float64 `json:"kilogram_s"` // longer for one kilogram more
	Point              float64 `json:"point_s"`    // longer for one point of efficiency less
	KilogramsPerPoint  float64 `json:"kilograms_per_point"`
	KilogramsPerMinute float64 `json:"kilograms_per_minute"`
	PointsPerMinute    float64 `json:"points_per_minute"`
}

// ClimbDifference is a difference of times with its two causes.
type ClimbDifference struct {
	Time     float64   `json:"time_s"`
	TimePlus float64   `json:"time_plus_s"`
	Verdict  string    `json:"verdict"`
	Mass     float64   `json:"mass_s"` // of that for the weight
	MassPlus float64   `json:"mass_plus_s"`
	Loss     float64   `json:"loss_s"` // for losses and gears
	LossPlus float64   `json:"loss_plus_s"`
	Grams    float64   `json:"mass_g"` // heavier by that
	Points   float64   `json:"loss_points"`
	Turn     *float64  `json:"turn_g,omitempty"` // so much more on the second side, and both take as long; below 0 is less
	Words    string    `json:"words"`
	Figures  []Change  `json:"figures"`
	First    []Measure `json:"first"` // what to measure first to decide it, s
}

// ClimbDay is what a day costs.
type ClimbDay struct {
	ID         string           `json:"id"`
	Name       string           `json:"name"`
	Length     float64          `json:"length_m"`
	Ascent     float64          `json:"ascent_m"`
	Left       int              `json:"stretches_left"` // that this day may have more
	Profile    [][2]float64     `json:"profile"`        // distance and height from the start, m, at the end of each stretch
	Sides      []DaySide        `json:"sides"`
	Difference *ClimbDifference `json:"difference,omitempty"`
}

// DaySide is what a day costs one side.
type DaySide struct {
	OK             bool      `json:"ok"`
	Time           float64   `json:"time_s"`
	TimePlus       float64   `json:"time_plus_s"`
	Speed          float64   `json:"speed_m_s"`   // mean
	Cadence        float64   `json:"cadence_rpm"` // mean while pedalling
	Gear           int       `json:"gear"`        // that is used longest, 0 for none
	Efficiency     float64   `json:"efficiency"`  // over the work put into each gear
	EfficiencyPlus float64   `json:"efficiency_plus"`
	Energy         DayEnergy `json:"energy"`
	Gears          []GearUse `json:"gears"`
	Modes          []ModeUse `json:"modes"`
	Walked         float64   `json:"walked_m"`
	Worth          *Worth    `json:"worth,omitempty"`
	Words          string    `json:"words"`
}

// DayEnergy is where the work of a day goes, kJ.
type DayEnergy struct {
	Pedals   float64 `json:"pedals_kj"`
	Drive    float64 `json:"drive_kj"`
	Air      float64 `json:"air_kj"`
	Rolling  float64 `json:"rolling_kj"`
	Bearings float64 `json:"bearings_kj"`
	Climbing float64 `json:"climbing_kj"`
	Brakes   float64 `json:"brakes_kj"`
}

// GearUse is how long a gear of the order of shifting is used.
type GearUse struct {
	Gear  int     `json:"gear"`
	Time  float64 `json:"time_s"`
	Share float64 `json:"share"` // of the time in all gears
}

// ModeUse is how long one gets along in a way.
type ModeUse struct {
	Key   string  `json:"key"`
	Label string  `json:"label"`
	Time  float64 `json:"time_s"`
}

// Climb tells what a climb, and a day, cost the sides of the document.
func (r *Rides) Climb() *Climb {
	e := r.of
	w := e.Words()
	label := func(key string) string { return w.Label("climb." + key) }
	out := &Climb{Sides: []ClimbSide{}, Surfaces: optionsOf(label, "surface.", document.Surfaces), Days: document.MaxDays - len(e.Document.Days), Stretches: document.MaxAllStretches, Caution: label("caution")}
	for i := range e.Document.Days {
		out.Stretches -= len(e.Document.Days[i].Stretches)
	}
	var courses []*course
	var climbs []effort.Climb
	for i := range e.Sides {
		side, c, climb := r.climbSide(i, label)
		out.Sides = append(out.Sides, side)
		courses, climbs = append(courses, c), append(climbs, climb)
	}
	both := len(courses) == 2 && courses[0] != nil && courses[1] != nil
	if both {
		compare(e, courses)
		out.Difference = climbDifference(e, courses, climbs, label)
	}
	if day := dayOf(e.Document); day != nil {
		out.Day = r.climbDay(day, courses, label)
		out.Day.Left = min(document.MaxStretches-len(day.Stretches), out.Stretches)
	}
	out.Words = climbWords(w, out)
	return out
}

// climbSide tells how one side climbs; the course is nil where that cannot be
// told.
func (r *Rides) climbSide(i int, label func(string) string) (ClimbSide, *course, effort.Climb) {
	e := r.of
	w, s := e.Words(), &e.Report.Sides[i]
	side := ClimbSide{Build: s.Build, Load: s.Load, Name: e.SideName(i), State: s.State, Problems: []document.Problem{}, Inputs: []Input{}, Figures: []Figure{}, First: []Measure{}}
	if e.Sides[i] == nil {
		side.Why = label("unweighed")
		return side, nil, effort.Climb{}
	}
	t := r.side(i)
	c := t.course
	if c == nil || len(t.order) == 0 {
		side.Why, side.Problems = label("no_drive"), document.SayAll(t.problems, w)
		return side, nil, effort.Climb{}
	}
	climb := c.bike.Climb(&c.rides.Rider, &c.road, c.climb)
	if !units.Finite(climb.Time.Value) {
		side.Why, side.Problems = label("no_way"), document.SayAll(t.problems, w)
		return side, nil, climb
	}
	problems := t.problems
	if c.wind.Value > climb.Speed {
		problems = append(slices.Clip(problems), document.Problem{Severity: document.SeverityWarning, Field: "show.road.wind_m_s", Message: words.Tell("climb.wind", "wind", words.Fixed(c.wind.Value, 1), "speed", words.Fixed(climb.Speed, 1))})
	}
	side.OK, side.State = true, c.level.State()
	if c.added {
		side.Problems = append(side.Problems, document.Problem{Severity: document.SeverityWarning, Load: s.Load, Message: words.Tell("climb.nobody", "mass", words.Fixed(typicalRider.Value, 0)).Said(w)})
	}
	side.Problems = append(side.Problems, document.SayAll(problems, w)...)

	all := c.bike.Mass
	side.Mass, side.MassPlus = report.Decimal(1000*all.Value, 0), report.Decimal(1000*c.plus(all), 0)
	side.Mode, side.Speed, side.Cadence, side.Gear = string(climb.Mode), report.Decimal(climb.Speed, 4), report.Decimal(climb.Cadence, 2), climb.Gear+1
	side.Length, side.Time = report.Decimal(climb.Length, 1), report.Decimal(climb.Time.Value, 1)
	timePlus := c.plus(climb.Time)
	side.TimePlus = report.Decimal(timePlus, 1)
	side.SpeedPlus = report.Decimal(c.plus(c.speed(climb)), 4)
	var f drive.Figure
	if climb.Gear >= 0 {
		f = t.efficiencyOf(&t.lines[climb.Gear], climb.Cadence)
		side.Efficiency, side.EfficiencyPlus = report.Decimal(f.Value, 5), report.Decimal(f.Plus(), 5)
	}
	side.Worth = worthOf(climb.Worth)
	steepest := c.steepest()
	if units.Finite(steepest.Value) && steepest.Value > -1 {
		side.Steepest, side.SteepestPlus = told100(steepest.Value, c.plus(steepest))
	}
	if h := s.Handling; h != nil && h.Climb != nil {
		side.Lift, side.LiftPlus = told100(h.Climb.Lift.Value, h.Climb.Lift.Plus)
		if slip := h.Climb.Slip; slip != nil {
			side.Slip, side.SlipPlus = told100(slip.Value, slip.Plus)
		}
	}
	side.Inputs = c.inputs(label)
	list := c.figures(climb, f, steepest, &c.alone)
	for i := range list {
		if list[i].real() {
			side.Figures = append(side.Figures, list[i].figure(label))
		}
	}
	c.steep = steepest
	side.First = first(c.explicit(climb.Time), c.sources(nil), label, 1, 1)
	side.Words = sideWords(w, &side)
	return side, c, climb
}

// told100 is a share and its ± in per cent.
func told100(v, plus float64) (value, within *float64) {
	v, plus = report.Decimal(100*v, 2), report.Decimal(100*plus, 2)
	return &v, &plus
}

// worthOf tells what is worth what; nil where the time does not move with it.
func worthOf(w effort.Worth) *Worth {
	if !(w.Kilogram > 0) || !(w.Point > 0) {
		return nil
	}
	return &Worth{
		report.Decimal(w.Kilogram, 2), report.Decimal(w.Point, 2),
		report.Decimal(w.KilogramsPerPoint(), 3), report.Decimal(w.KilogramsPerMinute(), 3), report.Decimal(w.PointsPerMinute(), 3),
	}
}

// speed is that of a climb, with what it owes: the length is known as well as the
// slope, so the time's doubt less that of the length.
func (c *course) speed(climb effort.Climb) drive.Figure {
	f := drive.Figure{Value: climb.Speed, Budget: new(mass.Budget)}
	if climb.Time.Budget == nil {
		return f
	}
	// v = length / time: dv = -v/t dt + v/length dlength, length = height/sin(slope).
	f.Budget.Add(climb.Time.Budget, -climb.Speed/climb.Time.Value)
	slope := c.road.Slope
	slope.Charge(f.Budget, -climb.Speed/(slope.Value*(1+slope.Value*slope.Value)))
	return f
}

// steepest is that of the bike, with what the least cadence is owed.
func (c *course) steepest() drive.Figure {
	r := c.rides.Rider
	f := c.bike.Steepest(&r, &c.road)
	if f.Budget == nil {
		return f
	}
	const step = 0.01
	up, down := r, r
	up.Least += step
	down.Least -= step
	slope := (c.bike.Steepest(&up, &c.road).Value - c.bike.Steepest(&down, &c.road).Value) / (2 * step)
	if units.Finite(slope) {
		c.rides.least.Charge(f.Budget, slope)
	}
	return f
}

// explicit is a figure whose budget has the mass as one source by its standard
// uncertainty, for what to measure first.
func (c *course) explicit(f drive.Figure) drive.Figure {
	out := drive.Figure{Value: f.Value, Budget: new(mass.Budget)}
	if f.Budget == nil {
		return out
	}
	slope := f.Budget.Named(c.massName)
	out.Budget.Add(f.Budget, 1)
	out.Budget.ChargeNamed(c.massName, slope*c.alone.Standard()-slope)
	return out
}

// compare finds what the masses of two sides owe where they are set against each
// other: there a part that was only renamed is one piece.
func compare(e *report.Evaluation, courses []*course) {
	e.Difference(func(side int, _ *mass.Budget, _ float64) {
		c := courses[side]
		c.compared.Reset()
		c.compared.Charge(c.items(), c.total, 1)
	})
}

// apart is the ± of a figure that owes to both sides, each by its mass's name.
func apart(courses []*course, f drive.Figure) float64 {
	if f.Budget == nil {
		return 0
	}
	b := budgets.Get().(*mass.Budget)
	defer budgets.Put(b)
	b.Reset()
	b.Add(f.Budget, 1)
	for i, name := range massNames {
		slope := f.Budget.Named(name)
		b.ChargeNamed(name, -slope)
		b.Add(&courses[i].compared, slope)
	}
	return b.Expanded()
}

// differenceOf tells a difference of times and its causes.
func differenceOf(courses []*course, d effort.Difference, efficiencies [2]drive.Figure, label func(string) string, sources []string) *ClimbDifference {
	out := &ClimbDifference{
		Time: report.Decimal(d.Time.Value, 1), TimePlus: report.Decimal(apart(courses, d.Time), 1),
		Mass: report.Decimal(d.Mass.Value, 1), MassPlus: report.Decimal(apart(courses, d.Mass), 1),
		Loss: report.Decimal(d.Drive.Value, 1), LossPlus: report.Decimal(apart(courses, d.Drive), 1),
		Grams:   report.Decimal(1000*(courses[1].bike.Mass.Value-courses[0].bike.Mass.Value), 0),
		Points:  report.Decimal(100*(efficiencies[0].Value-efficiencies[1].Value), 2),
		Figures: []Change{}, First: []Measure{},
	}
	out.Verdict = report.Verdict(out.Time, out.TimePlus)
	// What to measure: the masses as one source, by what is left of them in the
	// difference.
	f := drive.Figure{Value: d.Time.Value, Budget: new(mass.Budget)}
	if d.Time.Budget != nil {
		f.Budget.Add(d.Time.Budget, 1)
		for _, name := range massNames {
			f.Budget.ChargeNamed(name, -d.Time.Budget.Named(name))
		}
		only := new(mass.Budget)
		for i, name := range massNames {
			only.ChargeNamed(name, d.Time.Budget.Named(massNames[i]))
		}
		// Expanded is at most twice the standard one: near enough to rank by.
		f.Budget.ChargeNamed("mass", apart(courses, drive.Figure{Budget: only})/mass.Coverage)
	}
	out.First = first(f, append(sources, "mass"), label, 1, 1)
	return out
}

// climbDifference sets two climbs against each other.
func climbDifference(e *report.Evaluation, courses []*course, climbs []effort.Climb, label func(string) string) *ClimbDifference {
	a, b := courses[0], courses[1]
	time := func(c *course, bike *effort.Bike) drive.Figure {
		return bike.Climb(&c.rides.Rider, &c.road, c.climb).Time
	}
	// What rider and road are to each is part of its side; the mass alone changes.
	mixedA, mixedB := *b.bike, *a.bike
	mixedA.Mass, mixedB.Mass = a.bike.Mass, b.bike.Mass
	d := effort.Split(climbs[0].Time, climbs[1].Time, time(b, &mixedA), time(a, &mixedB))
	if !units.Finite(d.Time.Value) || !units.Finite(d.Mass.Value) {
		return nil
	}
	var efficiencies [2]drive.Figure
	for i, c := range courses {
		if g := climbs[i].Gear; g >= 0 {
			efficiencies[i] = c.efficiencyOf(&c.lines[g], climbs[i].Cadence)
		}
	}
	out := differenceOf(courses, d, efficiencies, label, append(a.sources(nil), b.sources(nil)...))
	turn := effort.Turn(b.bike, climbs[0].Time.Value, func(bike *effort.Bike) float64 {
		v := bike.Ride(&b.rides.Rider, &b.road).Speed
		return climbs[1].Length / v
	})
	if units.Finite(turn) && climbs[1].Gear >= 0 {
		turn = report.Decimal(1000*turn, 0)
		out.Turn = &turn
	}
	var lists [2][]told
	for i, c := range courses {
		lists[i] = c.figures(climbs[i], efficiencies[i], c.steep, &c.compared)
	}
	out.Figures = changes(e, lists[0], lists[1], label)
	out.Words = splitWords(e.Words(), e.SideName(0), e.SideName(1), out, "climb")
	return out
}

// figures are those by which climbs are set against each other; what the mass owes
// is given.
func (c *course) figures(climb effort.Climb, efficiency, steepest drive.Figure, total *mass.Budget) []told {
	list := []told{
		{"mass", "g", 1e3, 0, c.bike.Mass.Value, c.charge(c.bike.Mass, total)},
		{"speed", "m_s", 1, 3, climb.Speed, c.charge(c.speed(climb), total)},
		{"time", "s", 1, 0, climb.Time.Value, c.charge(climb.Time, total)},
	}
	if climb.Gear >= 0 {
		list = append(list, told{"efficiency", "percent", 100, 2, efficiency.Value, of(efficiency)})
	}
	return append(list, told{"steepest", "percent", 100, 2, steepest.Value, c.charge(steepest, total)})
}

// climbDay tells what a day costs the sides.
func (r *Rides) climbDay(day *document.Day, courses []*course, label func(string) string) *ClimbDay {
	e := r.of
	w := e.Words()
	out := &ClimbDay{ID: day.ID, Name: words.Shorten(day.Name), Profile: [][2]float64{{0, 0}}, Sides: []DaySide{}}
	x, z, ascent := 0.0, 0.0, 0.0
	for _, s := range (&course{}).day(day).Stretches {
		run := s.Length / math.Sqrt(1+s.Slope*s.Slope)
		x, z = x+s.Length, z+run*s.Slope
		ascent += max(run*s.Slope, 0)
		out.Profile = append(out.Profile, [2]float64{report.Decimal(x, 1), report.Decimal(z, 1)})
	}
	out.Length, out.Ascent = report.Decimal(x, 1), report.Decimal(ascent, 1)
	var days [2]*effort.Day
	var results [2]*effort.DayResult
	var efficiencies [2]drive.Figure
	told := 0
	for i, c := range courses {
		side := DaySide{Gears: []GearUse{}, Modes: []ModeUse{}}
		if c != nil && x > 0 {
			days[i], results[i] = r.side(i).ridden()
			efficiencies[i] = c.mean(results[i].Work)
			if units.Finite(results[i].Time.Value) {
				c.tellDay(&side, results[i], efficiencies[i], label)
				side.Words = dayWords(w, &side)
				told++
			}
		}
		out.Sides = append(out.Sides, side)
	}
	if told == 2 {
		a, b := courses[0], courses[1]
		mixedA, mixedB := *b.bike, *a.bike
		mixedA.Mass, mixedB.Mass = a.bike.Mass, b.bike.Mass
		d := effort.Split(results[0].Time, results[1].Time, mixedA.Day(&b.rides.Rider, &b.road, days[1]).Time, mixedB.Day(&a.rides.Rider, &a.road, days[0]).Time)
		if units.Finite(d.Time.Value) && units.Finite(d.Mass.Value) {
			out.Difference = differenceOf(courses, d, efficiencies, label, append(a.sources(days[0]), b.sources(days[1])...))
			out.Difference.Words = splitWords(w, e.SideName(0), e.SideName(1), out.Difference, "day")
		}
	}
	return out
}

// tellDay tells what a day costs this side.
func (c *course) tellDay(side *DaySide, r *effort.DayResult, efficiency drive.Figure, label func(string) string) {
	side.OK = true
	side.Time, side.TimePlus = report.Decimal(r.Time.Value, 1), report.Decimal(c.plus(r.Time), 1)
	side.Speed = report.Decimal(r.Length/r.Time.Value, 4)
	side.Efficiency, side.EfficiencyPlus = report.Decimal(efficiency.Value, 5), report.Decimal(efficiency.Plus(), 5)
	kJ := func(v float64) float64 { return report.Decimal(v/1000, 1) }
	x := &r.Energy
	side.Energy = DayEnergy{kJ(x.Pedals), kJ(x.Drive), kJ(x.Air), kJ(x.Rolling), kJ(x.Bearings), kJ(x.Climbing), kJ(x.Brakes)}
	side.Walked = report.Decimal(r.Walked, 1)
	side.Worth = worthOf(r.Worth)
	inGears, most := 0.0, 0.0
	for i, t := range r.Gears {
		inGears += t
		if t > most {
			most, side.Gear = t, i+1
		}
	}
	for i, t := range r.Gears {
		if t > 0 {
			side.Gears = append(side.Gears, GearUse{i + 1, report.Decimal(t, 1), report.Decimal(t/inGears, 4)})
		}
	}
	for _, m := range []effort.Mode{effort.Pedalling, effort.Easing, effort.Coasting, effort.Braking, effort.Walking} {
		if t := r.Modes[m]; t > 0 {
			side.Modes = append(side.Modes, ModeUse{string(m), label("mode." + string(m)), report.Decimal(t, 1)})
		}
	}
	if inGears > 0 {
		side.Cadence = report.Decimal(60*r.Turns/inGears, 2)
	}
}
