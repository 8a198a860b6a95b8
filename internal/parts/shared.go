package parts

import "steelyard/internal/document"

// Known is what is known about a part wherever it is fitted. Parts of several
// builds that have the same id and of which the same is known are one part,
// weighed once.
type Known struct {
	ID              string
	Mass, HalfWidth float64
	Basis           document.Basis
}

// KnownOf returns what is known about a part.
func KnownOf(p *document.Part) Known { return Known{p.ID, p.Mass, p.HalfWidth, p.Basis} }

// identity is what makes a part the same in two builds, however well its mass is
// known: its id, and the entry that it came from, or the name of one that came
// from none.
type identity struct{ id, kind, what string }

func identityOf(p *document.Part) identity {
	if p.Catalogue != "" {
		return identity{p.ID, p.Kind, "entry " + p.Catalogue}
	}
	return identity{p.ID, p.Kind, "name " + p.Name}
}

// Place is a part of a build, by their places in the document.
type Place struct{ Build, Part int }

// Sharing says of every part which others are the same, and whether another
// build knows it better.
type Sharing struct {
	same   map[Known][]Place
	best   map[identity]Place
	builds []document.Build
}

// ShareOf finds the shared parts of the builds of a document. The result holds
// until they change.
func ShareOf(builds []document.Build) *Sharing {
	s := &Sharing{make(map[Known][]Place), make(map[identity]Place), builds}
	for i := range builds {
		for j := range builds[i].Parts {
			p, at := &builds[i].Parts[j], Place{i, j}
			k := KnownOf(p)
			s.same[k] = append(s.same[k], at)
			t := identityOf(p)
			if best, ok := s.best[t]; !ok || better(p, s.at(best)) {
				s.best[t] = at
			}
		}
	}
	return s
}

func (s *Sharing) at(p Place) *document.Part { return &s.builds[p.Build].Parts[p.Part] }

// better reports whether more is known of p than of q: a better basis, or the
// same and a smaller half-width.
func better(p, q *document.Part) bool {
	return p.Basis.Better(q.Basis) || p.Basis == q.Basis && p.HalfWidth < q.HalfWidth
}

// Same returns where the same part is in other builds, in their order.
func (s *Sharing) Same(at Place) []Place {
	var others []Place
	for _, o := range s.same[KnownOf(s.at(at))] {
		if o.Build != at.Build && s.at(o).Kind == s.at(at).Kind {
			others = append(others, o)
		}
	}
	return others
}

// Better returns where more is known of the same part: in another build its mass
// stands on a better basis. Two masses on the same basis are two opinions, of
// which neither is better.
func (s *Sharing) Better(at Place) (Place, bool) {
	best, ok := s.best[identityOf(s.at(at))]
	return best, ok && best.Build != at.Build && s.at(best).Basis.Better(s.at(at).Basis)
}
