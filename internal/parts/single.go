package parts

import (
	"slices"

	"steelyard/internal/document"
)

// singles are the kinds of which a bike has one, or one at each end, and what
// takes whose place: a rigid fork that of a suspension fork.
var singles = map[string]string{
	"frame": "frame", "headset": "headset", "fork": "fork", "fork-rigid": "fork", "shock": "shock", "seat-clamp": "seat-clamp",
	"wheel": "wheel", "rim": "rim", "hub": "hub", "dynamo": "hub", "gear-hub": "hub", "spokes": "spokes", "tyre": "tyre", "tube": "tube", "rim-tape": "rim-tape",
	"crank": "crank", "bottom-bracket": "bottom-bracket", "cassette": "cog", "cog": "cog", "chain": "chain", "belt": "chain",
	"derailleur": "derailleur", "front-derailleur": "front-derailleur", "crank-gearbox": "crank-gearbox",
	"brake": "brake", "rotor": "rotor", "hose": "hose", "bar": "bar", "stem": "stem", "saddle": "saddle", "seatpost": "seatpost",
}

// besides are entries of those kinds that go with the one.
var besides = []string{
	"caliper-adapter-front", "caliper-adapter-rear", "coil-spring", "coil-spring-titanium", "shock-hardware", "cog-spacers", "tyre-dynamo",
	"tyre-insert-front", "tyre-insert-rear", "headset-spacers", "dropper-remote",
}

// Displaced returns the parts of a build, by index, whose place a further part
// would take, as a second saddle does. A bike that has two of them all the same is
// its rider's business, so this is a question and no fault.
func Displaced(b *document.Build, p *document.Part) []int {
	if !single(p) {
		return nil
	}
	var taken []int
	for i := range b.Parts {
		old := &b.Parts[i]
		if old.Quantity > 0 && singles[old.Kind] == singles[p.Kind] && single(old) && samePlace(old, p) {
			taken = append(taken, i)
		}
	}
	return taken
}

func single(p *document.Part) bool {
	return singles[p.Kind] != "" && !slices.Contains(besides, like(p))
}

// like returns the id of the entry that a part is of, or is most like.
func like(p *document.Part) string {
	if p.Catalogue == "" {
		if e := GuessEntry(p.Kind, p.Name); e != nil {
			return e.ID
		}
	}
	return p.Catalogue
}

// samePlace reports whether two parts that a bike has one of are at the same place
// of it. A suspension fork is two parts, and a rigid one in the place of both.
func samePlace(a, b *document.Part) bool {
	switch {
	case singles[a.Kind] == "hub" || EndKinds[a.Kind]:
		return atFront(a) == atFront(b)
	case a.Kind != b.Kind:
		return true
	case a.At != nil || b.At != nil || a.Station == "" || b.Station == "":
		return a.Carrier == b.Carrier
	}
	return a.Station == b.Station
}

// InPlaceOf returns p standing where old stands, if old is at the station that p is
// at by itself: what somebody found out about the place goes on counting.
func InPlaceOf(p, old *document.Part) document.Part {
	q := *p
	if old.Station == p.Station && old.Carrier == p.Carrier && old.At == nil {
		q.Offset, q.Within = old.Offset, old.Within
	}
	return q
}

// An Unusual mass is one under a fifth of what such a part weighs, or over five
// times of it: a slip of a digit or a unit, by common practice, no source.
type Unusual string

// The ways in which a mass is unusual.
const (
	Light Unusual = "light"
	Heavy Unusual = "heavy"
)

const unusual = 5

// Judge compares the mass of a piece with that of its entry, or, of a part of
// somebody's own, with those of its kind. It returns what would be usual, g: the
// entry's mass, or that of the lightest or heaviest of the kind. Nothing is usual of
// what has no kind, and of no mass.
func Judge(p *document.Part) (how Unusual, usual float64) {
	if p.Mass <= 0 || p.Kind == "other" {
		return "", 0
	}
	low, high := 0.0, 0.0
	id := p.Catalogue
	if id == "" && slices.Contains(besides, like(p)) {
		id = like(p) // an adapter is no brake
	}
	for i := range Catalogue() {
		e := &Catalogue()[i]
		if e.ID == id {
			low, high = e.Mass, e.Mass
			break
		}
		if e.Kind == p.Kind && !slices.Contains(besides, e.ID) {
			if low == 0 {
				low = e.Mass
			}
			low, high = min(low, e.Mass), max(high, e.Mass)
		}
	}
	switch {
	case low > 0 && p.Mass*unusual < low:
		return Light, low
	case high > 0 && p.Mass > high*unusual:
		return Heavy, high
	}
	return "", 0
}
