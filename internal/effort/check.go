package effort

import (
	"math"

	"steelyard/internal/document"
	"steelyard/internal/drive"
	"steelyard/internal/words"
)

// Limits of what may be asked. Beyond them lies a slip of the pen.
const (
	MaxPower   = 2500 // W
	MinCadence = 5    // turns per minute
	MaxCadence = 250
	MaxSpeed   = 40 // m/s, of walking, top speed and wind
	MaxSlope   = 1  // 100 %
	MaxRolling = 0.5
	MaxDensity = 2 // kg/m³
	MaxDrag    = 5 // m²
	MaxLength  = 1e6
)

// checker collects problems by field.
type checker []document.Problem

// within checks a figure; what ends the key of its name.
func (c *checker) within(field, what string, x, least, most float64, unit string) {
	if !(x >= least && x <= most) { // nor is it a number
		*c = append(*c, document.Problem{Severity: document.SeverityError, Field: field, Message: words.Tell("effort.between",
			"what", words.Tell("effort.of."+what), "x", words.Number(x), "least", words.Number(least), "most", words.Number(most), "unit", unit)})
	}
}

// known checks a quantity and its half-width.
func (c *checker) known(field, what string, q drive.Quantity, least, most float64, unit string) {
	c.within(field, what, q.Value, least, most, unit)
	if !(q.Half >= 0) || math.IsInf(q.Half, 0) {
		*c = append(*c, document.Problem{Severity: document.SeverityError, Field: field, Message: words.Tell("effort.half", "what", words.Tell("effort.of."+what), "half", words.Number(q.Half))})
	}
}

// Check returns what is wrong with a rider's figures. The fields are those of the
// type in small letters: "power", "cadence", "least", "most", "walk", "top".
func (r *Rider) Check() []document.Problem {
	var c checker
	c.known("power", "power", r.Power, 0, MaxPower, " W")
	c.within("cadence", "cadence", r.Cadence, MinCadence, MaxCadence, "/min")
	c.within("least", "least", r.Least, 0, MaxCadence, "/min")
	if r.Most != 0 {
		c.within("most", "most", r.Most, max(r.Cadence, r.Least, MinCadence), MaxCadence, "/min")
	}
	c.within("walk", "walk", r.Walk, 0.1, MaxSpeed, " m/s")
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
