package document

import (
	"fmt"
	"math"
	"slices"

	"steelyard/internal/words"
)

// Limits of what a document may say. Beyond them lies a slip of the pen, not a
// bike.
const (
	MaxMass     = 500e3 // g, of one piece
	MaxLength   = 5000  // mm, of a size, an offset, a coordinate or a doubt in place
	MaxQuantity = 10000

	maxWarnings = 200 // of one document; errors are all told
)

// Severities of a Problem.
const (
	SeverityError   = "error"
	SeverityWarning = "warning"
)

// Bases, Carriers and Forms are the values that a document may use.
var (
	Bases    = []Basis{Weighed, Stated, Typical, Guessed}
	Carriers = []Carrier{MainFrame, Swingarm, RearWheel, ForkUpper, ForkLower, FrontWheel, Link}
	Forms    = []Form{FormPoint, FormRod, FormRing, FormDisc, FormBox, FormPair}
)

// Units that a document may ask to be shown.
var (
	MassUnits   = []string{"g", "kg", "lb_oz"}
	LengthUnits = []string{"mm", "in"}
)

// HalfWidth returns the half-width, in grams, that a mass of this basis is
// given when nobody states one: 1 g for a part on a scale, else 5 % of a stated
// mass, 10 % of a typical one and 20 % of a guessed one, and never less than
// 1 g. These are common practice, no source: put in the half-width you know.
func (b Basis) HalfWidth(mass float64) float64 {
	share := 0.20
	switch b {
	case Weighed:
		return 1
	case Stated:
		share = 0.05
	case Typical:
		share = 0.10
	}
	return max(1, math.Round(share*mass))
}

// Check looks at everything in a document that can be judged without knowing
// where a station lies: ids, masses and their doubt, quantities, sizes and the
// words that have a fixed set. A thing with a problem of severity "error" must
// not enter any figure; its Problem names it by id: a part and its build, a bag
// or a good and its load, a rider, a weigh-in. What is wrong with a rating is
// told of its build, by the field. Frame figures and the names of stations are
// judged by package geometry and package report.
func Check(d *Document) []Problem {
	c := checker{}
	c.document(d)
	if c.held > 0 {
		c.problems = append(c.problems, Problem{
			Severity: SeverityWarning,
			Message:  words.Plain(fmt.Sprintf("And %d more warnings of these kinds.", c.held)),
		})
	}
	return c.problems
}

// CheckPart is [Check] for one part of a document in which nothing else is
// wrong, by index. It does not look whether the part has an id of its own.
func CheckPart(d *Document, build, part int) []Problem {
	b := &d.Builds[build]
	p := &b.Parts[part]
	c := checker{outer: thing{holdBuild, b.ID, b.Name}, inner: thing{holdPart, p.ID, p.Name}}
	c.one(p)
	return c.problems
}

// Check returns what is wrong with a part as such, whatever build it is part of.
func (p *Part) Check() []Problem {
	c := checker{}
	c.one(p)
	return c.problems
}

// checker collects problems. It is at a thing of the document, and may be at
// one in a list of it.
type checker struct {
	problems     []Problem
	outer, inner thing
	warned       int
	held         int // warnings not told
}

func (c *checker) add(severity, field, format string, args ...any) {
	if severity == SeverityWarning {
		if c.warned++; c.warned > maxWarnings {
			c.held++
			return
		}
	}
	p := Problem{Severity: severity, Field: field}
	c.outer.put(&p)
	c.inner.put(&p)
	p.Message = words.Plain(placed(c.inner.title(), c.outer.title(), fmt.Sprintf(format, args...)))
	c.problems = append(c.problems, p)
}

func (c *checker) fail(field, format string, args ...any) {
	c.add(SeverityError, field, format, args...)
}

func (c *checker) warn(field, format string, args ...any) {
	c.add(SeverityWarning, field, format, args...)
}

func (c *checker) document(d *Document) {
	if !slices.Contains(MassUnits, d.Show.Mass) {
		c.warn("show.mass", "Masses are to be shown in %s, which is none of %s.", words.Quote(d.Show.Mass), words.Choose(MassUnits))
	}
	if !slices.Contains(LengthUnits, d.Show.Length) {
		c.warn("show.length", "Lengths are to be shown in %s, which is none of %s.", words.Quote(d.Show.Length), words.Choose(LengthUnits))
	}
	if len(d.Show.Compare) > 2 {
		c.warn("show.compare", "%d builds are to be compared; only the first two are.", len(d.Show.Compare))
	}
	c.carried(&d.Show)
	builds := make(map[string]bool, len(d.Builds))
	for i := range d.Builds {
		b := &d.Builds[i]
		c.outer = thing{holdBuild, b.ID, b.Name}
		c.id(b.ID, "build", builds)
		if words.Blank(b.Name) {
			c.warn("name", "This build has no name; give it one to tell it from the others.")
		}
		c.parts(b.Parts)
		c.ratings(b.Ratings)
	}
	c.outer = thing{}
	riders := c.riders(d.Riders)
	loads := c.loads(d.Loads, riders)
	c.weighIns(d.WeighIns, builds, loads)
	for _, id := range d.Show.Compare {
		if !builds[id] {
			c.warn("show.compare", "The build %s is to be compared, but there is none with that id.", words.Quote(id))
		}
	}
	for _, id := range d.Show.Loads {
		if id != "" && !loads[id] {
			c.warn("show.loads", "The load %s is to be carried, but there is none with that id.", words.Quote(id))
		}
	}
	if len(d.Builds) == 0 {
		c.warn("builds", "There is no build in this document; add one.")
	}
}

func (c *checker) parts(parts []Part) {
	ids := make(map[string]bool, len(parts))
	for i := range parts {
		p := &parts[i]
		c.inner = thing{holdPart, p.ID, p.Name}
		c.id(p.ID, "part", ids)
		c.one(p)
	}
	c.inner = thing{}
}

// id checks that an id is there and used once.
func (c *checker) id(id, what string, ids map[string]bool) {
	switch {
	case id == "":
		c.fail("id", "This %s has no id; it should have one that no other %s has.", what, what)
	case ids[id]:
		c.fail("id", "Two %ss have the id %s; each should have its own.", what, words.Quote(id))
	}
	ids[id] = true
}

// one checks a part.
func (c *checker) one(p *Part) {
	if words.Blank(p.Name) {
		c.warn("name", "This part has no name; give it one to find it again.")
	}
	if !KnownKind(p.Kind) {
		if p.Kind == "" {
			c.warn("kind", "This part has no kind; its mass is counted under \"other\".")
		} else {
			c.warn("kind", "The kind %s is not known; its mass is counted under \"other\".", words.Quote(p.Kind))
		}
	}
	c.quantity(p.Quantity)
	c.mass("part", p.Mass, p.HalfWidth, p.Basis, p.Quantity > 0)
	if !slices.Contains(Carriers, p.Carrier) {
		c.fail("carrier", "The carrier is %s; it should be one of %s.", words.Quote(string(p.Carrier)), words.Choose(Carriers))
	}
	switch {
	case p.At != nil && p.Station != "":
		c.warn("at_mm", "There is a station (%s) and an absolute place as well; the absolute place is taken. Leave one of them out.", words.Quote(p.Station))
	case p.At == nil && p.Station == "":
		c.fail("station", "It is not said where this part sits; give a station, or an absolute place in at_mm.")
	}
	if p.At != nil {
		c.place("at_mm", p.At)
	}
	c.place("offset_mm", &p.Offset)
	c.length("within_mm", "The doubt in place", p.Within)
	c.shape(&p.Shape)
}

func (c *checker) quantity(n int) {
	if n < 0 || n > MaxQuantity {
		c.fail("quantity", "The quantity is %d; it should be from 0 to %d.", n, MaxQuantity)
	}
}

// mass checks the mass of one piece of what, its doubt and where it comes from;
// wanted says that a mass of 0 is one not yet given.
func (c *checker) mass(what string, m, h float64, basis Basis, wanted bool) {
	switch {
	case !finite(m):
		c.fail("mass_g", "The mass is %v; it should be a number of grams.", m)
	case m < 0:
		c.fail("mass_g", "The mass is %s g; it should be 0 g or more.", words.Number(m))
	case m > MaxMass:
		c.fail("mass_g", "The mass of one piece is %s g; it should be at most %s g. Was it meant in another unit?", words.Number(m), words.Number(MaxMass))
	case m == 0 && wanted:
		c.warn("mass_g", "This %s has no mass yet; it counts as 0 g.", what)
	}
	switch {
	case !finite(h):
		c.fail("half_width_g", "The half-width is %v; it should be a number of grams.", h)
	case h < 0:
		c.fail("half_width_g", "The half-width is %s g; it should be 0 g or more.", words.Number(h))
	case h > MaxMass:
		c.fail("half_width_g", "The half-width is %s g; it should be at most %s g.", words.Number(h), words.Number(MaxMass))
	case h > m && m > 0:
		c.warn("half_width_g", "The half-width, %s g, is larger than the mass, %s g; it is taken as it is.", words.Number(h), words.Number(m))
	case h == 0 && m > 0 && basis == Weighed:
		c.warn("half_width_g", "The mass is weighed to ± 0 g; give the step of the scale's display, often 1 g.")
	case h == 0 && m > 0:
		c.warn("half_width_g", "The mass is said to be exact; give the half-width that it may be off by.")
	}
	if !slices.Contains(Bases, basis) {
		c.fail("basis", "The basis is %s; it should be one of %s.", words.Quote(string(basis)), words.Choose(Bases))
	}
}

func (c *checker) place(field string, v *Vec3) {
	for i, axis := range [3]string{"forward", "left", "up"} {
		if x := v[i]; !finite(x) {
			c.fail(field, "The place (%s) is %v; it should be a number of millimetres.", axis, x)
		} else if math.Abs(x) > MaxLength {
			c.fail(field, "The place (%s) is %s mm; it should be within %d mm.", axis, words.Number(x), MaxLength)
		}
	}
}

func (c *checker) length(field, what string, x float64) {
	switch {
	case !finite(x):
		c.fail(field, "%s is %v; it should be a number of millimetres.", what, x)
	case x < 0 || x > MaxLength:
		c.fail(field, "%s is %s mm; it should be from 0 to %d mm.", what, words.Number(x), MaxLength)
	}
}

func (c *checker) shape(s *Shape) {
	if !slices.Contains(Forms, s.Form) {
		c.fail("shape.form", "The form is %s; it should be one of %s.", words.Quote(string(s.Form)), words.Choose(Forms))
	}
	for _, x := range s.Size {
		c.length("shape.size_mm", "A size", x)
	}
	if !finite(s.Pitch) || math.Abs(s.Pitch) > 360 {
		c.fail("shape.pitch_deg", "The pitch is %v°; it should be from -360° to 360°.", s.Pitch)
	}
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
