package parts

import (
	"bytes"
	"fmt"
	"unicode/utf8"

	"github.com/goccy/go-json"
)

// Limits of a document. They are far above any bike and far below what would
// trouble a browser.
const (
	MaxText   = 8 << 20 // bytes
	MaxBuilds = 100
	MaxParts  = 20000 // of all builds
)

// Open reads a document. It accepts a byte order mark, and any version of the
// format up to this program's. What is not there gets a default:
//
//	show.mass, show.length   "kg", "mm"
//	id of a build, of a part a fresh one: "b1", "p1", ...
//	quantity                 1
//	basis                    "guessed"
//	half_width_g             by basis and mass, see Basis.HalfWidth
//	carrier                  "main-frame"
//	within_mm                20
//	shape.form               "point"
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
	defer func() {
		// A fault of ours or of the decoder must not take the page with it.
		if r := recover(); r != nil {
			d, problems = nil, refuse("", "This text could not be read because of a fault in this program (%v). It has not been changed.", r)
		}
	}()
	text, refusal := plain(text)
	if refusal != nil {
		return nil, refusal
	}
	return open(text)
}

func open(text []byte) (*Document, []Problem) {
	s := newScanner(text, false)
	if s.scan(documentLayout()) {
		d := new(Document)
		if err := json.Unmarshal(text, d); err == nil && d.Format == Format && d.Version == Version {
			s.defaults(d)
			return d, d.christen()
		}
	}

	// Something is wrong, or the text is of another version. Walk again, and
	// find out all about it.
	s = newScanner(text, true)
	s.scan(documentLayout())
	migrated, refusal := upgrade(text, s)
	switch {
	case refusal != nil:
		return nil, refusal
	case migrated != nil:
		return open(migrated)
	}
	if problems := s.problems(); len(problems) > 0 {
		return nil, problems
	}
	// The scanner let through what the decoder does not take.
	err := json.Unmarshal(text, new(Document))
	return nil, refuse("", "This text could not be read: %v.", err)
}

// plain takes a byte order mark off and refuses what is not text at all.
func plain(text []byte) ([]byte, []Problem) {
	switch {
	case len(text) > MaxText:
		return nil, refuse("", "This text is larger than %d MiB; a document is at most that.", MaxText>>20)
	case bytes.HasPrefix(text, []byte("\xff\xfe")), bytes.HasPrefix(text, []byte("\xfe\xff")):
		return nil, refuse("", "This text is written in UTF-16; save it as UTF-8.")
	}
	text = bytes.TrimPrefix(text, []byte("\xef\xbb\xbf"))
	if len(bytes.TrimSpace(text)) == 0 {
		return nil, refuse("", "There is nothing in this text; it should be a document in JSON.")
	}
	if !utf8.Valid(text) {
		line := 1
		for i, l := range bytes.SplitAfter(text, []byte("\n")) {
			if !utf8.Valid(l) {
				line = i + 1
				break
			}
		}
		return nil, refuse("", "Line %d is not in UTF-8; save the text as UTF-8.", line)
	}
	return text, nil
}

// refuse returns the one problem for which a text is refused.
func refuse(field, format string, args ...any) []Problem {
	return []Problem{{Severity: SeverityError, Field: field, Message: fmt.Sprintf(format, args...)}}
}

// Defaults that Open gives.
const (
	defaultQuantity = 1
	defaultWithin   = 20 // mm
)

// Bits of the keys whose absence means something.
var (
	showLayout           = documentLayout().at("show")
	showMass, showLength = showLayout.bit("mass"), showLayout.bit("length")

	partLayout    = documentLayout().at("builds").elem.at("parts").elem
	partQuantity  = partLayout.bit("quantity")
	partHalfWidth = partLayout.bit("half_width_g")
	partBasis     = partLayout.bit("basis")
	partWithin    = partLayout.bit("within_mm")
	partCarrier   = partLayout.bit("carrier")
	partShape     = partLayout.bit("shape")
	shapeForm     = partLayout.at("shape").bit("form")
)

func (l *layout) at(key string) *layout { return l.fields[l.index[key]].layout }

func (l *layout) bit(key string) uint64 { return 1 << l.index[key] }

// defaults fills in what the text does not say.
func (s *scanner) defaults(d *Document) {
	if s.show&showMass == 0 {
		d.Show.Mass = "kg"
	}
	if s.show&showLength == 0 {
		d.Show.Length = "mm"
	}
	parts, shapes := s.parts, s.shapes
	for i := range d.Builds {
		b := &d.Builds[i]
		for j := range b.Parts {
			p, has := &b.Parts[j], parts[j]
			if has&partQuantity == 0 {
				p.Quantity = defaultQuantity
			}
			if has&partBasis == 0 {
				p.Basis = Guessed
			}
			if has&partHalfWidth == 0 && p.Mass > 0 {
				p.HalfWidth = p.Basis.HalfWidth(p.Mass)
			}
			if has&partWithin == 0 {
				p.Within = defaultWithin
			}
			if has&partCarrier == 0 {
				p.Carrier = MainFrame
			}
			if has&partShape == 0 {
				p.Shape.Form = FormPoint
			} else {
				if shapes[0]&shapeForm == 0 {
					p.Shape.Form = FormPoint
				}
				shapes = shapes[1:]
			}
		}
		parts = parts[len(b.Parts):]
	}
}

// christen gives an id to every build and part without one, and a new one to
// the second of two that have the same. The latter it tells.
func (d *Document) christen() []Problem {
	var problems []Problem
	var taken map[string]bool // ids of parts, once it is needed
	builds := make(map[string]bool, len(d.Builds))
	parts := make(map[string]bool)
	for i := range d.Builds {
		b := &d.Builds[i]
		if b.ID == "" {
			b.ID = d.NewBuildID()
		} else if builds[b.ID] {
			old := b.ID
			b.ID = d.NewBuildID()
			problems = append(problems, renamed(b, nil, old))
		}
		builds[b.ID] = true
		clear(parts)
		for j := range b.Parts {
			p := &b.Parts[j]
			if p.ID == "" || parts[p.ID] {
				if taken == nil {
					taken = d.partIDs()
				}
				old := p.ID
				p.ID = freshPartID(taken)
				if old != "" {
					problems = append(problems, renamed(b, p, old))
				}
			}
			parts[p.ID] = true
		}
	}
	return problems
}

func renamed(b *Build, p *Part, old string) Problem {
	problem := Problem{Severity: SeverityWarning, Build: b.ID, Field: "id"}
	if p == nil {
		problem.Message = sentence(label(b.Name, b.ID), "", fmt.Sprintf("the id %s was used by another build already; this one is now %s.", quote(old), quote(b.ID)))
		return problem
	}
	problem.Part = p.ID
	problem.Message = sentence(label(b.Name, b.ID), label(p.Name, p.ID), fmt.Sprintf("the id %s was used by another part already; this one is now %s.", quote(old), quote(p.ID)))
	return problem
}
