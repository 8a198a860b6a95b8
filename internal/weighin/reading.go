package weighin

import (
	"math"
	"slices"
	"strconv"

	"steelyard/internal/document"
	"steelyard/internal/mass"
	"steelyard/internal/words"
)

// Reading is what the scale showed under one wheel.
type Reading struct {
	Line  int     // its number in the document's list, from 0, to name it by
	Front bool    // under the front wheel; otherwise under the rear one
	Rise  float64 // the front contact above the rear one, m; below 0 when the rear wheel is raised
	RiseU float64 // its standard uncertainty; readings with the same Rise and RiseU share the error of one block
	Mass  float64 // kg
	MassU float64 // > 0, of what the display rounds: repeats, of the same scale, wheel and height, share this error

	PlacingU float64 // kg, of how the wheel was placed: each reading has its own
	Scale    int     // which scale it was; readings of one share its calibration error
	ScaleU   float64 // the standard uncertainty of that, a share of the load
}

// placingWithin is how far the placing of a wheel on the scale, and the hand that
// holds the bike, may move a reading, as a part of the display's step (common
// practice, no source): less than a step, or nobody would use so fine a scale.
const placingWithin = 0.3

// MaxReadings is how many readings of a weigh-in are taken.
const MaxReadings = 100

const (
	minHeight = 1   // mm, as document.Check has it
	minStep   = 0.1 // g, of a scale's display, likewise

	steepest = 45 * math.Pi / 180 // a bike cannot be held steeper than that
	steep    = 30 * math.Pi / 180 // and here it is hard to
)

// Read turns the readings of a document into SI units. A reading lies within
// half of the scale's step, and the height within what is stated, nowhere more
// likely than elsewhere; so does the scale's calibration. Which scale a reading is
// of, document.WeighIn.ScalesOf tells.
//
// A reading with an error is left out. What document.Check finds is not told
// again; the problems are those that need to know the bike. They name the
// weigh-in and the field, such as "readings.2.height_mm", counted from 0.
func Read(w *document.WeighIn, s Stand) ([]Reading, []document.Problem) {
	c := &checker{of: w}
	list := c.read(w, &s)
	return list, c.problems
}

func (c *checker) read(w *document.WeighIn, s *Stand) []Reading {
	var list []Reading
	scales, of := w.ScalesOf()
	for i := range w.Readings {
		if len(list) == MaxReadings {
			c.warn("readings", "weighin.many", "n", MaxReadings)
			break
		}
		d := &w.Readings[i]
		if of[i] < 0 || !sound(d, w.State, &scales[of[i]]) {
			continue
		}
		scale := &scales[of[i]]
		r := Reading{
			Line: i, Front: d.Wheel == "front", Mass: d.Mass / 1000, MassU: mass.Resolution(scale.Step / 1000),
			PlacingU: mass.Rectangular(placingWithin * scale.Step / 1000),
			Scale:    of[i], ScaleU: mass.Rectangular(scale.CalibrationWithin()),
		}
		if d.Raised != "" {
			r.Rise = d.Height / 1000
			if d.Raised == "rear" {
				r.Rise = -r.Rise
			}
			r.RiseU = mass.Rectangular(d.HeightPlus / 1000)
		}
		if c.reading(&r, d, scale.Step, s) {
			list = append(list, r)
		}
	}
	return list
}

// sound reports whether document.Check finds no error in a reading and its scale.
func sound(d *document.Reading, state document.State, scale *document.Scale) bool {
	within := func(v, least, most float64) bool { return v >= least && v <= most }
	least := 0.0
	if d.Raised != "" {
		least = minHeight
	}
	return !(d.Raised != "" && state == document.Ridden) && slices.Contains([]string{"front", "rear"}, d.Wheel) &&
		slices.Contains([]string{"", "front", "rear"}, d.Raised) &&
		within(d.Height, least, document.MaxLength) && within(d.HeightPlus, 0, document.MaxLength) &&
		within(d.Mass, 0, document.MaxMass) && within(scale.Step, minStep, document.MaxMass) &&
		within(scale.CalibrationWithin(), 0, document.MaxCalibration)
}

// reading checks a reading against the bike, and says whether it can be used.
func (c *checker) reading(r *Reading, d *document.Reading, step float64, s *Stand) bool {
	at := func(name string) string { return field(r.Line, name) }
	n := r.Line + 1
	if step > d.Mass/5 && d.Mass > 0 {
		of := "resolution_g"
		if d.Scale != "" {
			of = "scale"
		}
		c.warn(at(of), "weighin.coarse", "n", n, "step", number(step), "mass", number(d.Mass))
	}
	if d.Raised == "" {
		if d.Height != 0 {
			c.warn(at("height_mm"), "weighin.height.level", "n", n, "height", number(d.Height))
		}
		return true
	}
	_, pitch, ok := s.pitch(r.Rise)
	switch {
	case !ok || math.Abs(pitch) > steepest:
		c.fail(at("height_mm"), "weighin.steepest."+d.Raised, "n", n, "height", number(d.Height), "wheelbase", words.Fixed(s.Wheelbase*1000, 0))
		return false
	case d.HeightPlus >= d.Height:
		c.fail(at("height_within_mm"), "weighin.height.unsure", "n", n, "within", number(d.HeightPlus), "height", number(d.Height))
		return false
	case math.Abs(pitch) > steep:
		c.warn(at("height_mm"), "weighin.height.steep", "n", n, "height", number(d.Height), "pitch", words.Fixed(math.Abs(pitch)*180/math.Pi, 0))
	}
	if d.HeightPlus == 0 {
		c.warn(at("height_within_mm"), "weighin.height.exact", "n", n)
	}
	return true
}

// checker collects problems of a weigh-in; of none when readings come without.
type checker struct {
	of       *document.WeighIn
	problems []document.Problem
}

func (c *checker) add(severity, field, key string, pairs ...any) {
	p := document.Problem{Severity: severity, Field: field, Message: words.Tell(key, pairs...)}
	if c.of != nil {
		p.WeighIn = c.of.ID
		name := c.of.Name
		if name == "" {
			name = c.of.ID
		}
		p.Message = words.Tell("weighin.of", "name", words.Shorten(name), "message", p.Message)
	}
	c.problems = append(c.problems, p)
}

func (c *checker) fail(field, key string, pairs ...any) {
	c.add(document.SeverityError, field, key, pairs...)
}

func (c *checker) warn(field, key string, pairs ...any) {
	c.add(document.SeverityWarning, field, key, pairs...)
}

// field is the path of a field of a reading.
func field(line int, name string) string { return "readings." + strconv.Itoa(line) + "." + name }

// number is a figure of the document for people, to seven digits.
func number(v float64) words.Number {
	n, _ := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 7, 64), 64)
	return words.Number(n)
}
