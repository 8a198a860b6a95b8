package effort

import (
	"math"
	"steelyard/internal/document"
	"steelyard/internal/drive"
	"steelyard/internal/words"
)

// What only the tests ask.

// NewBike puts the gears of a drive, such as those of [drive.Order], together
// with their losses at a power, W.
func NewBike(total, rollOut drive.Figure, d *drive.Drive, gears []drive.Gear, l *drive.Losses, power float64) *Bike {
	b := &Bike{Mass: total, RollOut: rollOut}
	for i := range gears {
		b.Gears = append(b.Gears, Gear{gears[i], d.Line(&gears[i], l, power)})
	}
	return b
}

// Check returns what is wrong with a day's stretches, with fields such as
// "stretches.2.length".
func (d *Day) Check() []document.Problem {
	var c checker
	if n := len(d.Stretches); n > MaxStretches {
		return append(c, document.Problem{Severity: document.SeverityError, Field: "stretches", Message: words.Tell("effort.stretches", "n", n, "most", MaxStretches)})
	}
	for i := range d.Stretches {
		s, at := &d.Stretches[i], "stretches."+words.Number(i).String()
		c.within(at+".length", "length", s.Length, 0, MaxLength, " m")
		c.within(at+".slope", "slope", s.Slope, -MaxSlope, MaxSlope, "")
		c.within(at+".surface", "surface", float64(s.Surface), 0, float64(len(d.Rolling)-1), "")
	}
	return c
}

// Check returns what is wrong with a rider's figures. The fields are those of the
// type in small letters: "power", "cadence", "least", "most", "walk", "top".
func (r *Rider) Check() []document.Problem {
	var c checker
	c.known("power", "power", r.Power, 0, MaxPower, " W")
	c.within("cadence", "cadence", r.Cadence, MinCadence, MaxCadence, "/min")
	c.within("least", "least", r.Least, 0, MaxCadence, "/min")
	if r.Most.Value != 0 {
		c.within("most", "most", r.Most.Value, max(r.Cadence, r.Least, MinCadence), MaxCadence, "/min")
	}
	c.within("walk", "walk", r.Walk.Value, 0.1, MaxSpeed, " m/s")
	if r.Top != 0 {
		c.within("top", "top", r.Top, 1, MaxSpeed, " m/s")
	}
	if r.Least > r.Cadence && len(c) == 0 {
		c.within("least", "least", r.Least, 0, r.Cadence, "/min")
	}
	return c
}

// Check returns what is wrong with a road's figures, with fields "slope",
// "rolling", "wind", "density", "drag".
func (r *Road) Check() []document.Problem {
	var c checker
	c.known("slope", "slope", r.Slope, -MaxSlope, MaxSlope, "")
	c.known("rolling", "rolling", r.Rolling, 0, MaxRolling, "")
	c.known("wind", "wind", r.Wind, -MaxSpeed, MaxSpeed, " m/s")
	c.known("density", "density", r.Density, 0, MaxDensity, " kg/m³")
	c.known("drag", "drag", r.Drag, 0, MaxDrag, " m²")
	return c
}

// known checks a quantity and its half-width.
func (c *checker) known(field, what string, q drive.Quantity, least, most float64, unit string) {
	c.within(field, what, q.Value, least, most, unit)
	if !(q.Half >= 0) || math.IsInf(q.Half, 0) {
		*c = append(*c, document.Problem{Severity: document.SeverityError, Field: field, Message: words.Tell("effort.half", "what", words.Tell("effort.of."+what), "half", words.Number(q.Half))})
	}
}

// within checks a figure; what ends the key of its name.
func (c *checker) within(field, what string, x, least, most float64, unit string) {
	if !(x >= least && x <= most) { // nor is it a number
		*c = append(*c, document.Problem{Severity: document.SeverityError, Field: field, Message: words.Tell("effort.between",
			"what", words.Tell("effort.of."+what), "x", words.Number(x), "least", words.Number(least), "most", words.Number(most), "unit", unit)})
	}
}

// Between returns the difference of two bikes by what each takes.
func Between(a, b *Bike, time func(*Bike) drive.Figure) Difference {
	ab, ba := *b, *a // the mass of a on the drive of b, and the other way round
	ab.Mass, ba.Mass = a.Mass, b.Mass
	return Split(time(a), time(b), time(&ab), time(&ba))
}

// Climbing is the power against the slope, W: m g sin(slope) v.
func Climbing(mass, slope, v float64) float64 { return mass * G * sinOf(slope) * v }

// Kinetic is the energy of a moving bike, J: ½ (m + I/r²) v², with I/r² of both
// wheels added up, kg.
func Kinetic(mass, wheels, v float64) float64 { return 0.5 * (mass + wheels) * v * v }

// Speed is how fast a bike of a mass, kg, goes on a road with so much power at the
// rear wheel, W, m/s: between 0 and 100.
func Speed(r *Road, mass, power float64) float64 {
	l := loadOf(r, mass)
	return l.speed(power, 0, 4, exactly)
}
