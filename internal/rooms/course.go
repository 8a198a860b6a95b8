package rooms

import (
	"fmt"
	"math"
	"strings"

	"steelyard/internal/assembly"
	"steelyard/internal/document"
	"steelyard/internal/drive"
	"steelyard/internal/effort"
	"steelyard/internal/mass"
)

// Typical figures of a road (common practice, no source).
const (
	typicalSlope = 0.06
	typicalClimb = 1000 // m
)

var (
	typicalWind        = drive.Quantity{Value: 0, Half: 2}     // m/s
	typicalAltitude    = drive.Quantity{Value: 500, Half: 500} // m
	typicalTemperature = drive.Quantity{Value: 15, Half: 10}   // °C
)

// course is a build on the road of the document, with its load and its rider.
type course struct {
	*drivetrain
	bike *effort.Bike
	road effort.Road

	climb          float64 // m
	climbTypical   bool
	surface        string
	surfaceTypical bool
	tyre           string
	slope, wind    taken
	altitude       taken
	temperature    taken
	drag           taken
	rolling        taken // on the surface

	massName string // under which the mass stands in budgets, 1 kg to a unit: see charge
	level    assembly.Level
	total    mass.Figure  // of the items, kg
	alone    mass.Budget  // what it owes to its own sources
	compared mass.Budget  // likewise where the other side has part of them, see compare
	steep    drive.Figure // the steepest slope
	added    bool         // a typical rider, for nobody rides
}

// onRoad puts a build on the road of the document. Its mass is that of the fullest
// state that there is of it, for nobody climbs without luggage and rider; it stands
// in budgets under a name, which two bikes that are set against each other have
// each of their own.
func onRoad(d *document.Document, t *drivetrain, massName string) *course {
	c := &course{drivetrain: t, massName: massName, level: t.weighed.Highest()}
	items := c.items()
	c.total = mass.Total(items, nil)
	c.alone.Charge(items, c.total, 1)
	all := drive.Figure{Value: c.total.Value, Budget: new(mass.Budget)}
	all.Budget.ChargeNamed(massName, 1)
	if c.level < assembly.Ridden {
		c.added = true
		all.Value += typicalRider.Value
		typicalRider.Charge(all.Budget, 1)
	}

	var r document.Road
	if d.Show.Road != nil {
		r = *d.Show.Road
	}
	none := drive.Quantity{}
	c.slope = take("slope", r.Slope, document.ClimbSlopeSpan, 0.01, drive.Quantity{Value: typicalSlope})
	if c.climb = r.Climb; !document.ClimbSpan.Has(c.climb) {
		c.climb, c.climbTypical = typicalClimb, true
	}
	if c.surface = r.Surface; !knownSurface(c.surface) {
		c.surface, c.surfaceTypical = document.Surfaces[0], true
	}
	c.wind = take("wind", r.Wind, document.WindSpan, 1, typicalWind)
	c.altitude = take("altitude", r.Altitude, document.AltitudeSpan, 1, typicalAltitude)
	c.temperature = take("temperature", r.Temperature, document.TemperatureSpan, 1, typicalTemperature)
	w := t.build.Wheels.Rear
	c.tyre = fmt.Sprintf("%g-%g", w.Tyre, w.BeadSeat)
	c.rolling = take("rolling", r.Rolling, document.RollingSpan, 1, none)
	if c.rolling.typical {
		c.rolling.Quantity = effort.Rolling(effort.Surface(c.surface), c.tyre)
	}
	posture := "leaned"
	if t.rides.body != nil {
		posture = t.rides.body.Posture
	}
	c.drag = take("drag-area", r.Drag, document.DragSpan, 1, effort.DragArea(posture, bagsBeside(t.weighed)))
	density := drive.Quantity{Value: effort.AirDensity(c.altitude.Value, c.temperature.Value), Basis: c.altitude.Basis, Source: "density"}
	if !c.altitude.typical || !c.temperature.typical {
		density.Source = "density " + c.altitude.Source + " " + c.temperature.Source
	}
	// The half-width of a density that is owed to two figures.
	by := func(h, celsius float64) float64 {
		return (effort.AirDensity(c.altitude.Value+h, c.temperature.Value+celsius) - effort.AirDensity(c.altitude.Value-h, c.temperature.Value-celsius)) / 2
	}
	density.Half = math.Hypot(by(c.altitude.Half, 0), by(0, c.temperature.Half))
	c.road = effort.Road{Slope: c.slope.Quantity, Rolling: c.rolling.Quantity, Wind: c.wind.Quantity, Density: density, Drag: c.drag.Quantity}

	gears := make([]drive.Gear, len(t.order))
	for i := range gears {
		gears[i] = t.order[i].Gear
	}
	c.bike = &effort.Bike{Mass: all, RollOut: t.rollOut}
	for i := range gears {
		c.bike.Gears = append(c.bike.Gears, effort.Gear{Gear: gears[i], Line: t.lines[i]})
	}
	return c
}

func knownSurface(s string) bool {
	for _, k := range document.Surfaces {
		if s == k {
			return true
		}
	}
	return false
}

// bagsBeside reports whether bags hang beside the wheels, in the wind.
func bagsBeside(a *assembly.Assembly) bool {
	if a.Cargo == nil {
		return false
	}
	for i := range a.Cargo.Load.Bags {
		b := &a.Cargo.Load.Bags[i]
		if strings.Contains(b.Station, "pannier") || math.Abs(b.Offset[1]) > 100 {
			return true
		}
	}
	return false
}

// items are those of the bike as it rides.
func (c *course) items() []mass.Item { return c.weighed.At(c.level, c.weighed.Left) }

// charge adds what a figure owes to a budget, with the mass by what that owes.
func (c *course) charge(f drive.Figure, total *mass.Budget) func(*mass.Budget, float64) {
	return func(b *mass.Budget, sign float64) {
		if f.Budget == nil {
			return
		}
		slope := f.Budget.Named(c.massName)
		b.Add(f.Budget, sign)
		b.ChargeNamed(c.massName, -sign*slope)
		b.Add(total, sign*slope)
	}
}

// plus is the ± of a figure of this bike alone.
func (c *course) plus(f drive.Figure) float64 {
	t := told{charge: c.charge(f, &c.alone)}
	return t.plus()
}

// day is a day of the document on the surfaces that this bike's tyre rolls on.
func (c *course) day(d *document.Day) *effort.Day {
	out := &effort.Day{Stretches: make([]effort.Stretch, 0, len(d.Stretches))}
	for _, s := range effort.Surfaces {
		q := effort.Rolling(s, c.tyre)
		if string(s) == c.surface {
			q = c.rolling.Quantity
		}
		out.Rolling = append(out.Rolling, q)
	}
	if len(d.Stretches) > document.MaxStretches {
		return out
	}
	for _, s := range d.Stretches {
		if !document.StretchSpan.Has(s.Length) || !document.SlopeSpan.Has(s.Slope) {
			continue
		}
		surface := 0
		for i, k := range document.Surfaces {
			if s.Surface == k {
				surface = i
			}
		}
		out.Stretches = append(out.Stretches, effort.Stretch{Length: s.Length, Slope: s.Slope / 100, Surface: surface})
	}
	return out
}

// dayOf is the day that the document shows, nil without one.
func dayOf(d *document.Document) *document.Day {
	for i := range d.Days {
		if y := &d.Days[i]; y.ID == d.Show.Day || d.Show.Day == "" {
			return y
		}
	}
	return nil
}

// inputs tells what was taken.
func (c *course) inputs(label func(string) string) []Input {
	in := c.rides.inputs(label)
	if c.added {
		t := taken{typicalRider, true}
		in = append(in, t.input(label, "rider", "g", 1e3, 0))
	}
	road := func(t *taken, key, unit string, factor float64, decimals int, field string) Input {
		return t.input(label, key, unit, factor, decimals).at("show.road." + field)
	}
	in = append(in,
		road(&c.slope, "slope", "percent", 100, 2, "slope_percent"),
		bare(label, "climb", "m", c.climb, c.climbTypical).at("show.road.climb_m"),
		chosen(label, "surface", c.surface, c.surfaceTypical, optionsOf(label, "surface.", document.Surfaces)).at("show.road.surface"),
		road(&c.rolling, "rolling", "ratio", 1, 4, "rolling"), road(&c.drag, "drag-area", "m2", 1, 3, "drag_area_m2"),
		road(&c.wind, "wind", "m_s", 1, 2, "wind_m_s"), road(&c.altitude, "altitude", "m", 1, 0, "altitude_m"), road(&c.temperature, "temperature", "c", 1, 1, "temperature_c"),
	)
	return in
}

// sources are all names that a budget of this bike on this road may hold.
func (c *course) sources(d *effort.Day) []string {
	names := append([]string{
		c.massName, typicalRider.Source, c.rides.power.Source, c.rides.cadence.Source, c.rides.least.Source, c.rides.highest.Source, c.rides.walking.Source,
		c.road.Slope.Source, c.road.Rolling.Source, c.road.Wind.Source, c.road.Density.Source, c.road.Drag.Source, "rolled radius",
	}, c.names...)
	if c.measured {
		names = append(names, take("roll-out", c.build.RollOut, document.RollOutSpan, 1, drive.Quantity{}).Source)
	} else {
		names = append(names, "radius "+c.tyre, "deflection "+c.tyre)
	}
	if d != nil {
		for _, q := range d.Rolling {
			names = append(names, q.Source)
		}
	}
	return names
}
