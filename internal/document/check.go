package document

import (
	"math"
	"slices"

	"steelyard/internal/units"
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

// HalfWidth returns the half-width, in grams, of a mass of this basis when nobody
// states one: 1 g for a part on a scale, else 5 % of a stated mass, 10 % of a
// typical one and 20 % of a guessed one, and at least 1 g. These are common
// practice, no source; a half-width that is known should be stated.
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

// Check judges everything in a document that can be judged without knowing where
// a station lies: ids, masses and their doubt, quantities, sizes and the words
// that have a fixed set. Nothing with a problem of severity "error" may enter a
// figure; the Problem names it by id: a part and its build, a bag or a good and
// its load, a rider, a weigh-in. A problem of a rating names its build and the
// field. Packages geometry and assembly judge frame figures and the names of
// stations.
func Check(d *Document) []Problem {
	c := checker{}
	c.document(d)
	if c.held > 0 {
		c.problems = append(c.problems, Problem{
			Severity: SeverityWarning,
			Message:  words.Tell("document.more_warnings", "n", c.held),
		})
	}
	return c.problems
}

// CheckPart is [Check] for one part, by index, of a document that is otherwise
// right. It does not check that the part's id is unique.
func CheckPart(d *Document, build, part int) []Problem {
	b := &d.Builds[build]
	p := &b.Parts[part]
	c := checker{outer: entity{kindBuild, b.ID, b.Name}, inner: entity{kindPart, p.ID, p.Name}}
	c.one(p)
	return c.problems
}

// Check returns what is wrong with a part as such, whatever build it belongs to.
func (p *Part) Check() []Problem {
	c := checker{}
	c.one(p)
	return c.problems
}

// checker collects problems. It stands at an entity of the document, and perhaps
// at one in a list of that.
type checker struct {
	problems     []Problem
	outer, inner entity
	list         string // whose item is in hand: fields are named within it; "" for none
	index        int
	warned       int
	held         int // warnings not told
}

func (c *checker) add(severity, field, key string, pairs ...any) {
	if severity == SeverityWarning {
		if c.warned++; c.warned > maxWarnings {
			c.held++
			return
		}
	}
	if c.list != "" { // here, not for each of thousands of items that are sound
		field = item(c.list, c.index) + "." + field
	}
	p := Problem{Severity: severity, Field: field}
	c.outer.put(&p)
	c.inner.put(&p)
	p.Message = placed(c.inner.title(), c.outer.title(), words.Tell(key, pairs...))
	c.problems = append(c.problems, p)
}

// fail adds an error: the message of a key, see [words.Tell].
func (c *checker) fail(field, key string, pairs ...any) {
	c.add(SeverityError, field, key, pairs...)
}

// warn adds a warning: the message of a key, see [words.Tell].
func (c *checker) warn(field, key string, pairs ...any) {
	c.add(SeverityWarning, field, key, pairs...)
}

func (c *checker) document(d *Document) {
	if !slices.Contains(MassUnits, d.Show.Mass) {
		c.warn("show.mass", "document.show.mass", "unit", words.Quote(d.Show.Mass), "units", words.Choose(MassUnits))
	}
	if !slices.Contains(LengthUnits, d.Show.Length) {
		c.warn("show.length", "document.show.length", "unit", words.Quote(d.Show.Length), "units", words.Choose(LengthUnits))
	}
	if len(d.Show.Compare) > 2 {
		c.warn("show.compare", "document.show.compare.many", "n", len(d.Show.Compare))
	}
	c.carried(&d.Show)
	c.rough(d.Show.Rough)
	c.hand(d.Show.Hand)
	builds := make(map[string]bool, len(d.Builds))
	for i := range d.Builds {
		b := &d.Builds[i]
		c.outer = entity{kindBuild, b.ID, b.Name}
		c.id(b.ID, "build", builds)
		if words.Blank(b.Name) {
			c.warn("name", "document.name.build")
		}
		c.parts(b.Parts)
		c.ratings(b.Ratings)
		c.setup(b.Setup)
		if s := b.Stand; s != nil {
			c.between("stand.forward_mm", "stand_forward", " mm", s.Forward, 0, MaxLength)
			c.between("stand.out_mm", "stand_out", " mm", s.Out, 20, 600)
			c.between("stand.lean_deg", "stand_lean", "°", s.Lean, 0.5, 45)
		}
		c.drive(b)
	}
	c.outer = entity{}
	riders := c.riders(d.Riders)
	loads := c.loads(d.Loads, riders)
	c.weighIns(d.WeighIns, builds, loads)
	c.driven(&d.Show, c.days(d.Days))
	for _, id := range d.Show.Compare {
		if !builds[id] {
			c.warn("show.compare", "document.show.compare.none", "id", words.Quote(id))
		}
	}
	for _, id := range d.Show.Loads {
		if id != "" && !loads[id] {
			c.warn("show.loads", "document.show.loads.none", "id", words.Quote(id))
		}
	}
	if len(d.Builds) == 0 {
		c.warn("builds", "document.builds.none")
	}
}

func (c *checker) parts(parts []Part) {
	ids := make(map[string]bool, len(parts))
	for i := range parts {
		p := &parts[i]
		c.inner = entity{kindPart, p.ID, p.Name}
		c.id(p.ID, "part", ids)
		c.one(p)
	}
	c.inner = entity{}
}

// id checks that an id is there and used once.
func (c *checker) id(id, what string, ids map[string]bool) {
	switch {
	case id == "":
		c.fail("id", "document.id.none", "one", words.Tell("document.one."+what))
	case ids[id]:
		c.fail("id", "document.id.twice", "many", words.Tell("document.many."+what), "id", words.Quote(id))
	}
	ids[id] = true
}

// one checks a part.
func (c *checker) one(p *Part) {
	if words.Blank(p.Name) {
		c.warn("name", "document.name.part")
	}
	if !KnownKind(p.Kind) {
		if p.Kind == "" {
			c.warn("kind", "document.kind.none")
		} else {
			c.warn("kind", "document.kind.unknown", "kind", words.Quote(p.Kind))
		}
	}
	c.quantity(p.Quantity)
	c.mass("part", p.Mass, p.HalfWidth, p.Basis, p.Quantity > 0)
	if !slices.Contains(Carriers, p.Carrier) {
		c.fail("carrier", "document.carrier", "carrier", words.Quote(string(p.Carrier)), "choice", words.Choose(Carriers))
	}
	switch {
	case p.At != nil && p.Station != "":
		c.warn("at_mm", "document.place.both", "station", words.Quote(p.Station))
	case p.At == nil && p.Station == "":
		c.fail("station", "document.place.none")
	}
	if p.At != nil {
		c.place("at_mm", p.At)
	}
	c.place("offset_mm", &p.Offset)
	c.length("within_mm", "within", p.Within)
	c.shape(&p.Shape)
	c.gearing(p.Gearing)
	c.joint(p)
}

func (c *checker) quantity(n int) {
	if n < 0 || n > MaxQuantity {
		c.fail("quantity", "document.quantity", "n", n, "most", MaxQuantity)
	}
}

// mass checks the mass of one piece of what, its doubt and its basis; wanted says
// that a mass of 0 is one not yet given.
func (c *checker) mass(what string, m, h float64, basis Basis, wanted bool) {
	switch {
	case !units.Finite(m):
		c.fail("mass_g", "document.mass.infinite", "mass", m)
	case m < 0:
		c.fail("mass_g", "document.mass.negative", "mass", words.Number(m))
	case m > MaxMass:
		c.fail("mass_g", "document.mass.large", "mass", words.Number(m), "most", words.Number(MaxMass))
	case m == 0 && wanted:
		c.warn("mass_g", "document.mass.none", "one", words.Tell("document.one."+what))
	}
	switch {
	case !units.Finite(h):
		c.fail("half_width_g", "document.half_width.infinite", "half", h)
	case h < 0:
		c.fail("half_width_g", "document.half_width.negative", "half", words.Number(h))
	case h > MaxMass:
		c.fail("half_width_g", "document.half_width.large", "half", words.Number(h), "most", words.Number(MaxMass))
	case h > m && m > 0:
		c.warn("half_width_g", "document.half_width.wide", "half", words.Number(h), "mass", words.Number(m))
	case h == 0 && m > 0 && basis == Weighed:
		c.warn("half_width_g", "document.half_width.weighed")
	case h == 0 && m > 0:
		c.warn("half_width_g", "document.half_width.exact")
	}
	if !slices.Contains(Bases, basis) {
		c.fail("basis", "document.basis", "basis", words.Quote(string(basis)), "choice", words.Choose(Bases))
	}
}

func (c *checker) place(field string, v *Vec3) {
	for i, axis := range [3]string{"forward", "left", "up"} {
		if x := v[i]; !units.Finite(x) {
			c.fail(field, "document.place.infinite", "axis", words.Tell("document.axis."+axis), "x", x)
		} else if math.Abs(x) > MaxLength {
			c.fail(field, "document.place.far", "axis", words.Tell("document.axis."+axis), "x", x, "most", MaxLength)
		}
	}
}

func (c *checker) length(field, what string, x float64) {
	switch {
	case !units.Finite(x):
		c.fail(field, "document.length.infinite", "what", words.Tell("document.of."+what), "x", x)
	case x < 0 || x > MaxLength:
		c.fail(field, "document.between", "what", words.Tell("document.of."+what), "x", x, "least", 0, "most", MaxLength, "unit", " mm")
	}
}

func (c *checker) shape(s *Shape) {
	if !slices.Contains(Forms, s.Form) {
		c.fail("shape.form", "document.form", "form", words.Quote(string(s.Form)), "choice", words.Choose(Forms))
	}
	for _, x := range s.Size {
		c.length("shape.size_mm", "size", x)
	}
	c.between("shape.pitch_deg", "pitch", "°", s.Pitch, -360, 360)
}
