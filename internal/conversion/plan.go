package conversion

import (
	"fmt"
	"slices"
	"strings"

	"steelyard/internal/document"
	"steelyard/internal/parts"
	"steelyard/internal/words"
)

// Origin says where a part that comes was found.
type Origin string

// The origins, the best first: a part that was on the bike before and may have
// been weighed, the same part of another build, the catalogue.
const (
	FromAside     Origin = "aside"
	FromBuild     Origin = "build"
	FromCatalogue Origin = "catalogue"
)

// Coming is a part that a change brings.
type Coming struct {
	Part   document.Part
	Origin Origin
	Build  string // of FromBuild: the build's id
	aside  int    // of FromAside: its place in Document.Aside
	after  int    // place in the build's list that it comes behind, -1 for its end
}

// Plan is a change of a build that has not been made yet.
type Plan struct {
	Goes  []document.Part
	Comes []Coming
	Stays []document.Part // of the area of the set, and still there
	Set   *parts.Set

	document *document.Document
	build    *document.Build
	words    *words.Words
}

// New plans to change a build to a set. The document stays as it is. What comes
// from the catalogue is called in a language.
//
// What stays: a part that is the set's entry already; for a line with Keep also
// one of the same kind on the same carrier that needs the same; and what is not
// of the set's area. What comes is looked for first among what was kept aside from
// this build, then in the other builds, so that a part that somebody weighed
// is not forgotten, and then in the catalogue.
func New(d *document.Document, build string, set *parts.Set, w *words.Words) (*Plan, error) {
	b := d.Build(build)
	if b == nil {
		return nil, fmt.Errorf("there is no build with the id %q", build)
	}
	p := &Plan{Set: set, document: d, build: b, words: w}
	has := parts.Meets(b)
	if set.Area == parts.Drivetrain {
		has[parts.GearHub], has[parts.Gearbox], has[parts.Derailleur] = false, false, false
		has[set.Drive] = true
	}
	bare := !slices.ContainsFunc(b.Parts, func(q document.Part) bool {
		return q.Kind == "tyre" && string(q.Carrier) == string(set.Area)
	})
	has[parts.OtherSize] = bare || set.BeadSeat > 0 && set.BeadSeat != wheelOf(b, set.Area).BeadSeat

	goes := make([]bool, len(b.Parts))  // is of the area, or its place is taken
	stays := make([]bool, len(b.Parts)) // is as good as what the set wants
	for i := range b.Parts {
		goes[i] = p.concerns(&b.Parts[i], has)
	}
	wanted := slices.DeleteFunc(linesOf(b, set, has), func(l line) bool {
		return l.entry.ID == "gearbox-cradle" && holdsGearbox(b)
	})
	// First the very parts, then those that are as good.
	var comes []line
	for _, w := range wanted {
		if i := slices.IndexFunc(b.Parts, func(p document.Part) bool { return p.Catalogue == w.entry.ID }); i >= 0 && !stays[i] {
			stays[i] = true
			continue
		}
		comes = append(comes, w)
	}
	wanted, comes = comes, nil
	for _, w := range wanted {
		role, known := -1, false
		for i := range b.Parts {
			q := &b.Parts[i]
			if stays[i] || q.Kind != w.entry.Kind || q.Carrier != w.entry.Carrier {
				continue
			}
			if w.part.Keep && slices.Equal(needs(q), w.entry.Needs) {
				role, known = i, true
				break
			}
			// A part of the kind on the same carrier makes room, where there is but one.
			if slices.Contains(single, q.Kind) {
				goes[i] = true
			}
		}
		if known {
			stays[role] = true
			continue
		}
		if w.part.If == parts.OtherSize && !bare && !slices.ContainsFunc(b.Parts, func(q document.Part) bool {
			return q.Kind == w.entry.Kind && q.Carrier == w.entry.Carrier
		}) {
			continue // no tube where there was none
		}
		comes = append(comes, w)
	}
	if set.Area == parts.Drivetrain && set.Drive != parts.Gearbox {
		for i := range b.Parts {
			if e := plainFrame(&b.Parts[i]); e != nil {
				goes[i] = true
				comes = append(comes, line{entry: e})
			}
		}
	}
	for i := range b.Parts {
		switch {
		case stays[i]:
			p.Stays = append(p.Stays, b.Parts[i])
		case goes[i]:
			p.Goes = append(p.Goes, b.Parts[i])
		}
	}
	taken := make(map[int]bool)
	for _, w := range comes {
		p.Comes = append(p.Comes, p.find(w.entry, taken))
	}
	return p, nil
}

// concerns reports whether a part of the build is one of those that a change of
// the set's area is about, or one that is of no use afterwards.
func (p *Plan) concerns(q *document.Part, has map[parts.Need]bool) bool {
	if p.Set.Area == parts.Drivetrain {
		for _, n := range needs(q) {
			if (n == parts.GearHub || n == parts.Gearbox || n == parts.Derailleur) && !has[n] && q.Kind != "frame" {
				return true
			}
		}
	}
	turns := q.Carrier
	switch p.Set.Area {
	case parts.Drivetrain:
		switch q.Kind {
		case "pedal", "guard":
			return false
		case "hub":
			return turns == document.RearWheel
		}
		return document.GroupOf(q.Kind) == "drivetrain" || q.Catalogue == "gearbox-bolts" || q.Catalogue == "gearbox-cradle" ||
			q.Catalogue == "torque-support" || q.Catalogue == "derailleur-hanger" || q.Catalogue == "battery-shifting"
	case parts.FrontWheel:
		return turns == document.FrontWheel && slices.Contains([]string{"rim", "hub", "spokes", "wheel", "rim-tape", "dynamo"}, q.Kind)
	case parts.RearWheel:
		return turns == document.RearWheel && slices.Contains([]string{"rim", "hub", "spokes", "wheel", "rim-tape"}, q.Kind)
	case parts.Brakes:
		return document.GroupOf(q.Kind) == "brakes"
	case parts.Cockpit:
		return slices.Contains([]string{"bar", "stem", "grip", "bar-end"}, q.Kind)
	case parts.Lighting:
		return q.Kind == "light" || q.Kind == "dynamo" || q.Catalogue == "dynamo-charger" ||
			q.Kind == "hub" && turns == document.FrontWheel
	case parts.Racks:
		return q.Kind == "rack"
	case parts.Mudguards:
		return q.Kind == "mudguard"
	}
	return false
}

// single are the kinds of which one carrier has one: there is one set of spokes,
// one tyre, one pair of brake levers to a bike, but any number of small parts.
var single = []string{"rim", "hub", "spokes", "tyre", "tube", "rim-tape", "wheel", "brake-lever", "bar", "stem", "dynamo"}

// needs returns what the entry needs that a part came from.
func needs(p *document.Part) []parts.Need {
	if e := parts.EntryByID(p.Catalogue); e != nil {
		return e.Needs
	}
	return nil
}

const gearboxFrame = "-gearbox"

// holdsGearbox reports whether the frame is made to hold a gearbox, so that its
// mass has the cradle in it.
func holdsGearbox(b *document.Build) bool {
	return slices.ContainsFunc(b.Parts, func(p document.Part) bool {
		return p.Kind == "frame" && strings.HasSuffix(p.Catalogue, gearboxFrame)
	})
}

// plainFrame returns the frame that is like one made to hold a gearbox but is
// not, nil for any other part.
func plainFrame(p *document.Part) *parts.Entry {
	if id, ok := strings.CutSuffix(p.Catalogue, gearboxFrame); ok && p.Kind == "frame" {
		return parts.EntryByID(id)
	}
	return nil
}

// find looks for the best known part that is the entry. Taken are the places in
// Document.Aside that are spoken for.
func (p *Plan) find(e *parts.Entry, taken map[int]bool) Coming {
	c := Coming{Origin: FromCatalogue, after: p.placeOf(e.Kind)}
	// The best known first, and of several the last that was put aside.
	aside, rank := -1, 0
	for i := range p.document.Aside {
		a := &p.document.Aside[i]
		same := a.Part.Catalogue == e.ID
		if taken[i] || a.Part.Kind != e.Kind {
			continue
		}
		// A part that stands in no catalogue comes back with the drive it left with.
		if !same && (p.Set.Drive == "" || a.With != string(p.Set.Drive) || a.Build != p.build.ID || a.Part.Carrier != e.Carrier) {
			continue
		}
		r := 1
		if same {
			r++
		}
		if a.Build == p.build.ID {
			r += 2
		}
		if r >= rank {
			aside, rank = i, r
		}
	}
	if aside >= 0 {
		taken[aside] = true
		c.Part, c.Origin, c.aside = p.document.Aside[aside].Part, FromAside, aside
		return c
	}
	for i := range p.document.Builds {
		b := &p.document.Builds[i]
		if b.ID == p.build.ID {
			continue
		}
		for j := range b.Parts {
			q := &b.Parts[j]
			if q.Catalogue == e.ID && (c.Origin != FromBuild || q.Basis.Better(c.Part.Basis)) {
				c.Part, c.Origin, c.Build = *q, FromBuild, b.ID
			}
		}
	}
	if c.Origin == FromBuild {
		return c
	}
	c.Part = e.In(p.words).Part("")
	return c
}

// placeOf returns the place in the list that a new part of a kind comes behind:
// the last of its kind, else the last of its group, else the end.
func (p *Plan) placeOf(kind string) int {
	last, group := -1, -1
	for i := range p.build.Parts {
		switch k := p.build.Parts[i].Kind; {
		case k == kind:
			last = i
		case document.GroupOf(k) == document.GroupOf(kind):
			group = i
		}
	}
	if last < 0 {
		return group
	}
	return last
}
