package bridge

import (
	"steelyard/internal/mass"
	"steelyard/internal/parts"
	"steelyard/internal/report"
	"steelyard/internal/scene"
)

// subject makes what a picture shows of a build; nil when the document does not
// have the build, or it could not be weighed.
func subject(e *report.Evaluation, id string) *scene.Subject {
	for _, w := range e.Builds {
		if w != nil && w.Build.ID == id {
			return subjectOf(w)
		}
	}
	return nil
}

func subjectOf(w *report.Weighed) *scene.Subject {
	s := &scene.Subject{
		Name: w.Build.Name, Bike: w.Bike,
		Markers: make([]scene.Marker, 0, len(w.Items)),
	}
	for i := range w.Lines {
		l, p := &w.Lines[i], &w.Build.Parts[i]
		for j := l.First; j < l.End; j++ {
			it := &w.Items[j]
			m := scene.Marker{
				Part: p.ID, Name: p.Name, Mass: it.Mass, MassPlus: mass.Coverage * it.MassU,
				Place: it.Place, Unsprung: l.Unsprung, Role: role(p.Kind), Carrier: string(p.Carrier),
				Mirror: l.End-l.First == 2 && it.Place.Y < 0,
			}
			if p.Shape.Form == parts.FormBox {
				m.Size = mass.Vec{X: p.Shape.Size[0] / 1000, Y: p.Shape.Size[1] / 1000, Z: p.Shape.Size[2] / 1000}
			}
			s.Markers = append(s.Markers, m)
		}
	}
	s.Total, s.TotalPlus, _ = w.Figure("total")
	s.Centre.X, s.CentrePlus.X, _ = w.Figure("centre_x")
	s.Centre.Y, s.CentrePlus.Y, _ = w.Figure("centre_y")
	s.Centre.Z, s.CentrePlus.Z, _ = w.Figure("centre_z")
	s.FrontLoad, s.FrontLoadPlus, _ = w.Figure("front_load")
	s.RearLoad, s.RearLoadPlus, _ = w.Figure("rear_load")
	return s
}

// role is the sort of mass that a kind of part is.
func role(kind string) scene.Role {
	switch parts.GroupOf(kind) {
	case "bags", "carried":
		return scene.Baggage
	}
	return scene.Fitted
}
