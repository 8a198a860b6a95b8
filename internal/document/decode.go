package document

import (
	"bytes"
	"unicode/utf8"

	"github.com/goccy/go-json"

	"steelyard/internal/words"
)

// Limits of a document. They are far above any bike and far below what would
// trouble a browser.
const (
	MaxText     = 8 << 20 // bytes
	MaxBuilds   = 100
	MaxParts    = 20000 // of all builds
	MaxRiders   = 100
	MaxLoads    = 100
	MaxBags     = 1000 // of all loads
	MaxGoods    = 10000
	MaxWeighIns = 100
	MaxReadings = 2000 // of all weigh-ins
	MaxScales   = 1000 // of all weigh-ins
	MaxAside    = 2000
	MaxRatings  = 2000 // of all builds
)

// Open reads a document. It accepts a byte order mark, and any version of the
// format up to this program's. What is not there gets a default:
//
//	show.mass, show.length   "kg", "mm"
//	id                       a fresh one: "b1", "p1", ...
//	quantity                 1
//	basis                    "guessed"
//	half_width_g             by basis and mass, see Basis.HalfWidth
//	carrier                  "main-frame"
//	within_mm                20
//	shape.form               "point"
//	posture of a rider       "leaned"
//	half_width_g of a rider  1000
//	what show.packing lacks  as in DefaultPacking
//	any other figure, text   0, empty
//
// Everything that is there is kept or refused, never dropped: an unknown key, a
// key written twice or a value of the wrong sort is an error that names the
// build, the part and the key. A text of another version is refused whole, so
// that no later program's work is lost by saving it here. When the document is
// refused, it is nil and at least one problem is an error. The second
// of two builds, or of two parts of a build, with the same id gets a fresh one,
// with a warning.
//
// Open judges the form only; Check judges what is said.
func Open(text []byte) (d *Document, problems []Problem) {
	d, problems, _ = openSpans(text)
	return d, problems
}

// openSpans is Open that also returns where in the text, after its byte order
// mark, the parts stand, build by build; they are nil for a text of another
// version.
func openSpans(text []byte) (d *Document, problems []Problem, spans []span) {
	defer func() {
		// A fault of ours or of the decoder must not take the page with it.
		if r := recover(); r != nil {
			d, problems = nil, refuse("", "document.fault", "fault", r)
		}
	}()
	text, refusal := plain(text)
	if refusal != nil {
		return nil, refusal, nil
	}
	return open(text)
}

func open(text []byte) (*Document, []Problem, []span) {
	s := newScanner(text, false)
	if s.scan(documentLayout()) {
		d := new(Document)
		if err := json.Unmarshal(text, d); err == nil && d.Format == Format && d.Version == Version {
			s.defaults(d)
			return d, d.assignIDs(), s.parts
		}
	}

	// The text is wrong or of another version: a second, careful walk finds
	// everything out.
	s = newScanner(text, true)
	s.scan(documentLayout())
	migrated, refusal := upgrade(text, s)
	switch {
	case refusal != nil:
		return nil, refusal, nil
	case migrated != nil:
		d, problems, _ := open(migrated)
		return d, problems, nil
	}
	if problems := s.problems(); len(problems) > 0 {
		return nil, problems, nil
	}
	// The scanner let through what the decoder does not take.
	err := json.Unmarshal(text, new(Document))
	return nil, refuse("", "document.unread", "why", err), nil
}

// plain removes a byte order mark and refuses what is not text.
func plain(text []byte) ([]byte, []Problem) {
	switch {
	case len(text) > MaxText:
		return nil, refuse("", "document.large", "most", MaxText>>20)
	case bytes.HasPrefix(text, []byte("\xff\xfe")), bytes.HasPrefix(text, []byte("\xfe\xff")):
		return nil, refuse("", "document.utf16")
	}
	text = bytes.TrimPrefix(text, []byte(byteOrderMark))
	if len(bytes.TrimSpace(text)) == 0 {
		return nil, refuse("", "document.empty")
	}
	if !utf8.Valid(text) {
		line := 1
		for i, l := range bytes.SplitAfter(text, []byte("\n")) {
			if !utf8.Valid(l) {
				line = i + 1
				break
			}
		}
		return nil, refuse("", "document.not_utf8", "line", line)
	}
	return text, nil
}

const byteOrderMark = "\xef\xbb\xbf"

// refuse returns the one problem for which a text is refused.
func refuse(field, key string, pairs ...any) []Problem {
	return []Problem{{Severity: SeverityError, Field: field, Message: words.Tell(key, pairs...)}}
}

// Defaults that Open gives.
const (
	defaultQuantity = 1
	defaultWithin   = 20   // mm
	defaultBody     = 1000 // g that a rider's mass may be off by: what a meal, a drink and the day do to it (common practice, no source)
	defaultPosture  = "leaned"
)

// Bits of the keys whose absence means something.
var (
	showLayout           = documentLayout().at("show")
	showMass, showLength = showLayout.bit("mass"), showLayout.bit("length")

	packingLayout = showLayout.at("packing")

	partLayout    = documentLayout().at("builds").elem.at("parts").elem
	partQuantity  = partLayout.bit("quantity")
	partHalfWidth = partLayout.bit("half_width_g")
	partBasis     = partLayout.bit("basis")
	partWithin    = partLayout.bit("within_mm")
	partCarrier   = partLayout.bit("carrier")
	partShape     = partLayout.bit("shape")
	shapeForm     = partLayout.at("shape").bit("form")

	riderLayout    = documentLayout().at("riders").elem
	riderHalfWidth = riderLayout.bit("half_width_g")
	riderPosture   = riderLayout.bit("posture")

	bagLayout    = documentLayout().at("loads").elem.at("bags").elem
	bagHalfWidth = bagLayout.bit("half_width_g")
	bagBasis     = bagLayout.bit("basis")
	bagCarrier   = bagLayout.bit("carrier")

	goodLayout    = documentLayout().at("loads").elem.at("goods").elem
	goodQuantity  = goodLayout.bit("quantity")
	goodHalfWidth = goodLayout.bit("half_width_g")
	goodBasis     = goodLayout.bit("basis")
)

func (l *layout) at(key string) *layout { return l.fields[l.index[key]].layout }

func (l *layout) bit(key string) uint64 { return 1 << l.index[key] }

// defaults fills in what the text does not say.
func (s *scanner) defaults(d *Document) {
	show := uint64(0)
	if k := s.keys[kindShow]; len(k) > 0 {
		show = k[0]
	}
	if show&showMass == 0 {
		d.Show.Mass = "kg"
	}
	if show&showLength == 0 {
		d.Show.Length = "mm"
	}
	if k := s.keys[kindPacking]; len(k) > 0 {
		d.Show.Packing.fill(k[0])
	}
	parts, shapes := s.keys[kindPart], s.keys[kindShape]
	for i := range d.Builds {
		b := &d.Builds[i]
		for j := range b.Parts {
			shape := uint64(0)
			if parts[j]&partShape != 0 {
				shape, shapes = shapes[0], shapes[1:]
			}
			b.Parts[j].defaults(parts[j], shape)
		}
		parts = parts[len(b.Parts):]
	}
	for i, has := range s.keys[kindRider] {
		r := &d.Riders[i]
		if has&riderHalfWidth == 0 {
			r.HalfWidth = defaultBody
		}
		if has&riderPosture == 0 {
			r.Posture = defaultPosture
		}
	}
	bags, goods := s.keys[kindBag], s.keys[kindGood]
	for i := range d.Loads {
		l := &d.Loads[i]
		for j := range l.Bags {
			b, has := &l.Bags[j], bags[j]
			massDefaults(b.Mass, &b.HalfWidth, &b.Basis, has&bagHalfWidth != 0, has&bagBasis != 0)
			if has&bagCarrier == 0 {
				b.Carrier = MainFrame
			}
		}
		bags = bags[len(l.Bags):]
		for j := range l.Goods {
			g, has := &l.Goods[j], goods[j]
			if has&goodQuantity == 0 {
				g.Quantity = defaultQuantity
			}
			massDefaults(g.Mass, &g.HalfWidth, &g.Basis, has&goodHalfWidth != 0, has&goodBasis != 0)
		}
		goods = goods[len(l.Goods):]
	}
	for i := range d.Aside {
		d.Aside[i].Part.defaultsOfEmpty()
	}
}

// defaults fills in what the text of a part, and of its shape, does not say.
func (p *Part) defaults(has, shape uint64) {
	if has&partQuantity == 0 {
		p.Quantity = defaultQuantity
	}
	massDefaults(p.Mass, &p.HalfWidth, &p.Basis, has&partHalfWidth != 0, has&partBasis != 0)
	if has&partWithin == 0 {
		p.Within = defaultWithin
	}
	if has&partCarrier == 0 {
		p.Carrier = MainFrame
	}
	if shape&shapeForm == 0 {
		p.Shape.Form = FormPoint
	}
}

// defaultsOfEmpty fills in the words that a part must have, for a part without a
// record of its keys.
func (p *Part) defaultsOfEmpty() {
	if p.Basis == "" {
		p.Basis = Guessed
	}
	if p.Carrier == "" {
		p.Carrier = MainFrame
	}
	if p.Shape.Form == "" {
		p.Shape.Form = FormPoint
	}
}

// massDefaults fills in a missing basis and half-width of a mass.
func massDefaults(mass float64, half *float64, basis *Basis, hasHalf, hasBasis bool) {
	if !hasBasis {
		*basis = Guessed
	}
	if !hasHalf && mass > 0 {
		*half = basis.HalfWidth(mass)
	}
}

// fill takes from DefaultPacking what the text did not have.
func (p *Packing) fill(has uint64) {
	d := &DefaultPacking
	if has&packingLayout.bit("of") == 0 {
		p.Of = d.Of
	}
	for key, v := range map[string][2]*float64{
		"front_share": {&p.FrontShare, &d.FrontShare}, "front": {&p.Front, &d.Front},
		"low": {&p.Low, &d.Low}, "balance": {&p.Balance, &d.Balance}, "middle": {&p.Middle, &d.Middle},
	} {
		if has&packingLayout.bit(key) == 0 {
			*v[0] = *v[1]
		}
	}
}
