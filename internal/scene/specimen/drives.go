package specimen

import (
	"sync"

	"steelyard/data"
	"steelyard/internal/conversion"
	"steelyard/internal/document"
	"steelyard/internal/geometry"
	"steelyard/internal/mass"
	"steelyard/internal/parts"
	"steelyard/internal/scene"
)

// Drives are drivetrains of all kinds, as sets of the catalogue: derailleurs with
// one ring and with two, a gear hub and a crank gearbox each with chain and belt.
var Drives = []string{
	"derailleur-one-ring", "derailleur-two-rings", "gear-hub-chain", "gear-hub-belt", "gearbox-chain", "gearbox-belt",
}

var demo = sync.OnceValue(func() *document.Document {
	text, err := data.Files.ReadFile("demo/travel.json")
	if err != nil {
		panic(err)
	}
	d, problems := document.Open(text)
	if d == nil {
		panic(problems[0].Message.String())
	}
	return d
})

// Driven is the demo's bike with a drivetrain of the catalogue.
func Driven(set string) scene.Subject { return fitted(set) }

// Equipped is the same with mudguards, a stand, a drop bar and what else is
// fitted to a bike for daily use.
func Equipped(set string) scene.Subject {
	return fitted(set, "mudguard-rear", "mudguard-front", "stand-side", "bar-drop-aluminium", "bottle-1", "bottle-cage-plastic", "frame-bag-half")
}

func fitted(set string, more ...string) scene.Subject {
	d := demo()
	build := d.Builds[0].ID
	plan, err := conversion.New(d, build, parts.SetByID(set), nil)
	if err != nil {
		panic(err)
	}
	b := *plan.Apply(conversion.Except{}).Build(build)
	b.Parts = append([]document.Part(nil), b.Parts...)
	for _, id := range more {
		e := parts.EntryByID(id)
		if e.Kind == "bar" {
			for i := range b.Parts {
				if b.Parts[i].Kind == e.Kind {
					b.Parts = append(b.Parts[:i], b.Parts[i+1:]...)
					break
				}
			}
		}
		b.Parts = append(b.Parts, document.Part{
			ID: id, Name: e.Name, Kind: e.Kind, Quantity: e.Quantity, Mass: e.Mass, Station: e.Station, Offset: e.Offset, Carrier: e.Carrier, Shape: e.Shape, Gearing: e.Gearing.Clone(),
		})
	}
	b.Name = parts.SetByID(set).Name().String()
	return subjectOf(&b)
}

// subjectOf draws a build of a document, with every mass in doubt by 4 %.
func subjectOf(b *document.Build) scene.Subject {
	bike, problems := geometry.Pose(b)
	if bike == nil {
		panic(problems[0].Message.String())
	}
	s := scene.Subject{Name: b.Name, Bike: bike}
	for i := range b.Parts {
		p := &b.Parts[i]
		places, ok := bike.Place(p.Station, mass.Vec{X: p.Offset[0] / 1000, Y: p.Offset[1] / 1000, Z: p.Offset[2] / 1000})
		if !ok {
			panic("no station " + p.Station)
		}
		s.Mount(p, places...)
		kg := p.Mass * float64(p.Quantity) / 1000 / float64(len(places))
		for k, at := range places {
			m := scene.Marker{Part: p.ID, Name: p.Name, Mass: kg, MassPlus: 0.04 * kg, Place: at, Carrier: string(p.Carrier), Mirror: k == 1}
			switch p.Carrier {
			case document.Swingarm, document.RearWheel, document.ForkLower, document.FrontWheel:
				m.Unsprung = 1
			case document.Link:
				m.Unsprung = 0.5
			}
			switch p.Shape.Form {
			case document.FormRing:
				m.Ring = p.Shape.Size[0] / 1000
			case document.FormBox:
				m.Size = mass.Vec{X: p.Shape.Size[0] / 1000, Y: p.Shape.Size[1] / 1000, Z: p.Shape.Size[2] / 1000}
			}
			if g := document.GroupOf(p.Kind); g == "bags" || g == "carried" {
				m.Role = scene.Baggage
			}
			s.Markers = append(s.Markers, m)
		}
	}
	weigh(&s)
	return s
}

// Against sets a subject against another one.
func Against(a, b scene.Subject) scene.Subject {
	b.Ghost = nil
	a.Ghost = &b
	return a
}
