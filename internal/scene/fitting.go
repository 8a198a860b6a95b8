package scene

import (
	"math"
	"slices"
	"strings"

	"steelyard/internal/document"
	"steelyard/internal/mass"
)

// Fitting is a part that is drawn as what it is, at one of its places.
type Fitting struct {
	Part    string
	Kind    string // one of document.Kinds
	Station string
	Carrier document.Carrier
	Place   mass.Vec
	Form    document.Form
	Size    mass.Vec // m, as the form has it: a rod's length, a disc's radius and width, a box's sides
	Pitch   float64  // rad, nose up
	Teeth   []int    // of each of its rings or cogs, where that is known
}

// drawn are the kinds that are drawn as what they are. A bike is drawn with its
// frame, fork, wheels, saddle and cranks whether or not they are in its list.
var drawn = map[string]bool{
	"chainring": true, "cassette": true, "cog": true, "chain": true, "belt": true,
	"derailleur": true, "front-derailleur": true, "tensioner": true, "gear-hub": true, "crank-gearbox": true,
	"dynamo": true, "bar": true, "mudguard": true, "stand": true, "bottle": true, "cage": true, "other": true,
}

// Mount fits a part to the subject at each of its places, so that more of it is
// drawn than a dot.
func (s *Subject) Mount(p *document.Part, places ...mass.Vec) {
	size := mass.Vec{X: p.Shape.Size[0] / 1000, Y: p.Shape.Size[1] / 1000, Z: p.Shape.Size[2] / 1000}
	switch p.Kind {
	case "rack":
		s.FrontRack = s.FrontRack || strings.HasPrefix(p.Station, "front-rack")
		s.RearRack = s.RearRack || strings.HasPrefix(p.Station, "rear-rack")
	case "rotor":
		radius := 0.0
		if p.Shape.Form == document.FormDisc {
			radius = size.X
		}
		if strings.HasPrefix(p.Station, "front-") || strings.HasPrefix(p.Station, "fork-") {
			s.FrontRotor = radius
		} else {
			s.RearRotor = radius
		}
	}
	if !drawn[p.Kind] {
		return
	}
	const most = 64 // of one build; nobody could tell more apart
	for _, at := range places {
		if len(s.Fittings) < most && known(at) && known(size) {
			s.Fittings = append(s.Fittings, Fitting{
				Part: p.ID, Kind: p.Kind, Station: p.Station, Carrier: p.Carrier, Place: at,
				Form: p.Shape.Form, Size: size, Pitch: p.Shape.Pitch * math.Pi / 180, Teeth: teeth(p),
			})
		}
	}
}

// plainDrive is a drivetrain of one ring and one cog with a flat bar, for a bike that
// is drawn for another purpose than its parts.
var plainDrive = []Fitting{
	{Kind: "chainring", Form: document.FormDisc, Size: mass.Vec{X: 0.065}},
	{Kind: "cog", Form: document.FormDisc, Size: mass.Vec{X: 0.036}},
	{Kind: "chain"},
}

// fitting returns the first fitting of a kind, nil for none.
func (s *Subject) fitting(kind string) *Fitting {
	k := slices.IndexFunc(s.Fittings, func(f Fitting) bool { return f.Kind == kind })
	if k < 0 {
		return nil
	}
	return &s.Fittings[k]
}

// each calls f for every fitting of a kind.
func (s *Subject) each(kind string, f func(*Fitting)) {
	for i := range s.Fittings {
		if s.Fittings[i].Kind == kind {
			f(&s.Fittings[i])
		}
	}
}

// radius is that of a round part, m; or what is usual where its shape is another.
func (f *Fitting) radius(usual float64) float64 {
	switch {
	case f == nil:
		return usual
	case f.Form == document.FormDisc || f.Form == document.FormRing:
		return sane(f.Size.X, 0.005, 0.5)
	}
	return usual
}

// open says whether a fitting follows the wheel and is not carried by a spring,
// on a bike that has one there.
func (d *drawing) open(f *Fitting) bool {
	switch f.Carrier {
	case document.ForkLower, document.FrontWheel:
		return d.b.FrontSprung
	case document.Swingarm, document.RearWheel:
		return d.b.RearSprung
	}
	return false
}
