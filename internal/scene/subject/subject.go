// Package subject makes what a picture shows ([scene.Subject]) of a build that
// was weighed: its parts and bags as markers, the outline of its parts, its rider,
// the path of its centre of mass, and its figures.
package subject

import (
	"math"

	"steelyard/internal/document"
	"steelyard/internal/mass"
	"steelyard/internal/report"
	"steelyard/internal/rider"
	"steelyard/internal/scene"
	"steelyard/internal/words"
)

// In returns what a picture shows of a build of an evaluation; nil when the
// document does not have the build, or it could not be weighed. At is "a" or "b"
// for that side of the comparison instead, and empty for the build with the id.
func In(e *report.Evaluation, id, at string) *scene.Subject {
	for i, w := range e.Sides {
		if at == [...]string{"a", "b"}[i] {
			if w == nil {
				return nil
			}
			return Of(w, e.Words())
		}
	}
	for _, w := range e.Builds {
		if w != nil && w.Build.ID == id {
			return Of(w, e.Words())
		}
	}
	return nil
}

// Of returns what a picture shows of a build; names are in the language.
func Of(w *report.Weighed, language *words.Words) *scene.Subject {
	s := &scene.Subject{
		Name: w.Build.Name, Bike: w.Bike,
		Markers: make([]scene.Marker, 0, len(w.Items)),
	}
	for i := range w.Lines {
		if w.Carried(i) {
			continue
		}
		l, p := &w.Lines[i], &w.Build.Parts[i]
		for j := l.First; j < l.End; j++ {
			it := &w.Items[j]
			m := scene.Marker{
				Part: p.ID, Name: p.Name, Mass: it.Mass, MassPlus: mass.HalfWidth(it.MassU),
				Place: it.Place, Unsprung: l.Unsprung, Role: role(p.Kind), Carrier: string(p.Carrier),
				Mirror: l.End-l.First == 2 && it.Place.Y < 0,
			}
			switch p.Shape.Form {
			case document.FormBox:
				m.Size = size(p.Shape.Size)
			case document.FormRing:
				m.Ring = p.Shape.Size[0] / 1000
			}
			s.Markers = append(s.Markers, m)
		}
		if l.OK {
			places := make([]mass.Vec, 0, 2)
			for j := l.First; j < l.End; j++ {
				places = append(places, w.Items[j].Place)
			}
			s.Mount(p, places...)
		}
	}
	for _, b := range w.Bags() {
		m := scene.Marker{
			Part: b.ID, Name: b.Bag.Name, Mass: b.Mass, MassPlus: b.Plus,
			Place: b.Place, Unsprung: b.Unsprung, Role: scene.Baggage, Carrier: string(b.Bag.Carrier), Size: size(b.Bag.Size),
		}
		if b.Bag.Volume > 0 {
			m.Fill = min(1, b.Volume/b.Bag.Volume)
		}
		s.Markers = append(s.Markers, m)
	}
	if body, r := w.Seated(); body != nil {
		items := body.Items(0, 0)
		whole := mass.Sum(items, nil)
		_, plus := mass.Uncertainty(items, mass.Total(items, nil))
		s.Markers = append(s.Markers, scene.Marker{
			Part: "rider:" + r.ID, Name: r.Name, Mass: whole.M, MassPlus: plus,
			Place: whole.Centre(), Role: scene.Body, Carrier: string(document.MainFrame),
		})
		s.Rider = limbs(body)
		s.Crank = r.Crank * degree
	}
	for _, p := range w.Path() {
		s.Path = append(s.Path, scene.Stop{Place: p.Place, Name: language.Label("supplies." + string(p.Supplies))})
	}
	s.Total, s.TotalPlus, _ = w.Figure("total")
	s.Centre.X, s.CentrePlus.X, _ = w.Figure("centre_x")
	s.Centre.Y, s.CentrePlus.Y, _ = w.Figure("centre_y")
	s.Centre.Z, s.CentrePlus.Z, _ = w.Figure("centre_z")
	s.FrontLoad, s.FrontLoadPlus, _ = w.Figure("front_load")
	s.RearLoad, s.RearLoadPlus, _ = w.Figure("rear_load")
	return s
}

const degree = math.Pi / 180

// size is a box's in m.
func size(v document.Vec3) mass.Vec { return mass.Vec{X: v[0] / 1000, Y: v[1] / 1000, Z: v[2] / 1000} }

// limbs are a rider's body as the picture draws it.
func limbs(b *rider.Body) []scene.Limb {
	outline := b.Outline()
	list := make([]scene.Limb, len(outline))
	for i, l := range outline {
		list[i] = scene.Limb{From: l.From, To: l.To, R: l.R, S: l.S, Member: member(l.Name)}
	}
	return list
}

func member(segment string) scene.Member {
	switch segment {
	case rider.Head:
		return scene.Head
	case rider.UpperArm, rider.Forearm, rider.Hand:
		return scene.Arm
	case rider.Thigh, rider.Shank, rider.Foot:
		return scene.Leg
	}
	return scene.Torso
}

// role is the sort of mass that a kind of part is.
func role(kind string) scene.Role {
	switch document.GroupOf(kind) {
	case "bags", "carried":
		return scene.Baggage
	}
	return scene.Fitted
}
