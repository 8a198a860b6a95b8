package parts

import "steelyard/internal/document"

// Known is what is known about a part wherever it is fitted, and about a bag or a
// good whatever load it is of. Things of several builds or loads that have the same
// id and of which the same is known are one thing, weighed once.
type Known struct {
	ID              string
	Mass, HalfWidth float64
	Basis           document.Basis
}

// KnownOf returns what is known about a part.
func KnownOf(p *document.Part) Known { return Known{p.ID, p.Mass, p.HalfWidth, p.Basis} }

// identity is what makes a part, a bag or a good the same with two owners, however
// well its mass is known: its id, and the entry that it came from, or the name of
// one that came from none.
type identity struct{ id, kind, what string }

func identityOf(p *document.Part) identity {
	if p.Catalogue != "" {
		return identity{p.ID, p.Kind, "entry " + p.Catalogue}
	}
	return identity{p.ID, p.Kind, "name " + p.Name}
}

// Place is a part of a build, or a bag or good of a load, by their places in the
// document.
type Place struct{ Owner, Item int }

// sharable is one thing of one owner.
type sharable struct {
	known    Known
	identity identity
}

// Sharing says of every thing which others are the same, and whether another
// owner knows it better.
type Sharing struct {
	same  map[Known][]Place
	best  map[identity]Place
	items [][]sharable
}

// ShareOf finds the parts that builds share. The result holds until they change.
func ShareOf(builds []document.Build) *Sharing {
	items := make([][]sharable, len(builds))
	for i := range builds {
		for j := range builds[i].Parts {
			p := &builds[i].Parts[j]
			items[i] = append(items[i], sharable{KnownOf(p), identityOf(p)})
		}
	}
	return share(items)
}

// ShareOfBags finds the bags that loads share.
func ShareOfBags(loads []document.Load) *Sharing {
	items := make([][]sharable, len(loads))
	for i := range loads {
		for j := range loads[i].Bags {
			b := &loads[i].Bags[j]
			items[i] = append(items[i], sharable{Known{b.ID, b.Mass, b.HalfWidth, b.Basis}, identity{b.ID, "", b.Name}})
		}
	}
	return share(items)
}

// ShareOfGoods finds the goods that loads share, packed or not.
func ShareOfGoods(loads []document.Load) *Sharing {
	items := make([][]sharable, len(loads))
	for i := range loads {
		for j := range loads[i].Goods {
			g := &loads[i].Goods[j]
			items[i] = append(items[i], sharable{Known{g.ID, g.Mass, g.HalfWidth, g.Basis}, identity{g.ID, "", g.Name}})
		}
	}
	return share(items)
}

func share(items [][]sharable) *Sharing {
	s := &Sharing{make(map[Known][]Place), make(map[identity]Place), items}
	for i := range items {
		for j := range items[i] {
			x, at := &items[i][j], Place{i, j}
			s.same[x.known] = append(s.same[x.known], at)
			if best, ok := s.best[x.identity]; !ok || x.known.better(&s.at(best).known) {
				s.best[x.identity] = at
			}
		}
	}
	return s
}

func (s *Sharing) at(p Place) *sharable { return &s.items[p.Owner][p.Item] }

// better reports whether more is known than is of the other: a better basis, or
// the same and a smaller half-width.
func (k *Known) better(than *Known) bool {
	return k.Basis.Better(than.Basis) || k.Basis == than.Basis && k.HalfWidth < than.HalfWidth
}

// Same returns where the same thing is with other owners, in their order.
func (s *Sharing) Same(at Place) []Place {
	var others []Place
	x := s.at(at)
	for _, o := range s.same[x.known] {
		if o.Owner != at.Owner && s.at(o).identity.kind == x.identity.kind {
			others = append(others, o)
		}
	}
	return others
}

// Better returns where more is known of the same thing: with another owner its
// mass stands on a better basis. Two masses on the same basis are two opinions, of
// which neither is better.
func (s *Sharing) Better(at Place) (Place, bool) {
	x := s.at(at)
	best, ok := s.best[x.identity]
	return best, ok && best.Owner != at.Owner && s.at(best).known.Basis.Better(x.known.Basis)
}

// Known returns what is known of a thing.
func (s *Sharing) Known(at Place) Known { return s.at(at).known }
