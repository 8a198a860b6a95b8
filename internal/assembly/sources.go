package assembly

import (
	"slices"

	"steelyard/internal/document"
	"steelyard/internal/parts"
)

// Sources gives small numbers to the sources of doubt of all builds of a
// document, so that what two builds share cancels in their difference.
type Sources struct {
	mass  map[parts.Source]int
	first []line       // the first line of each source of mass
	spots map[spot]int // of further lines of the same source; most have none
	bags  map[bagSpot]int
	Count int // spots so far
}

// line is a line of a parts list with the numbers it was given.
type line struct {
	part         *document.Part
	source, spot int
}

// spot is what makes two lines misplaced together: pieces of one type at one
// place, wherever its station really is on the bike.
type spot struct {
	source  int
	part    string // of a joint reading, whose parts are no pieces of one type
	station string
	offset  document.Vec3
	within  float64
	at      document.Vec3
	placed  bool // by at
}

// Len returns how many sources of mass there are.
func (s *Sources) Len() int { return len(s.first) }

// Room makes room for the lines of a document: builds that are compared have
// most of them in common.
func (s *Sources) Room(d *document.Document) {
	all, most := 0, 0
	for i := range d.Builds {
		n := len(d.Builds[i].Parts)
		all += n
		most = max(most, n)
	}
	n := most + (all-most)/8
	if s.mass == nil {
		s.mass = make(map[parts.Source]int, n)
	}
	s.first = slices.Grow(s.first, n)
}

// Reset forgets all sources, and keeps the memory of a document of usual size.
func (s *Sources) Reset() {
	const usual = 1000 // sources
	if len(s.first) > usual {
		*s = Sources{}
		return
	}
	clear(s.mass)
	clear(s.first)
	clear(s.spots)
	clear(s.bags)
	*s = Sources{mass: s.mass, first: s.first[:0], spots: s.spots, bags: s.bags}
}

// of returns the numbers of the sources of a part's mass and of its place. Like
// is a line that is probably of the same type, as the same line of another build,
// or empty; it only saves searching.
//
// Whatever its basis, a mass lies within ± half-width, equally likely everywhere;
// the half-width of a weighed part is the scale's resolution.
func (s *Sources) of(p *document.Part, like *line) (source, place int) {
	key := parts.ErrorKey(p)
	if like.part != nil && key == parts.ErrorKey(like.part) {
		if placedTogether(p, like.part) {
			return like.source, like.spot
		}
		return like.source, s.place(p, like.source)
	}
	source, known := s.mass[key]
	if !known {
		source = len(s.first)
		s.mass[key] = source
		s.first = append(s.first, line{p, source, s.Count})
		s.Count++
		return source, s.Count - 1
	}
	return source, s.place(p, source)
}

// place returns the number of the place of a part of a source that has been
// seen before.
func (s *Sources) place(p *document.Part, source int) int {
	if first := &s.first[source]; placedTogether(p, first.part) {
		return first.spot
	}
	key := spot{source: source, station: p.Station, offset: p.Offset, within: p.Within}
	if p.Weighed() != nil {
		key.part = p.ID
	}
	if p.At != nil {
		key.station, key.offset, key.at, key.placed = "", document.Vec3{}, *p.At, true
	}
	n, ok := s.spots[key]
	if !ok {
		if s.spots == nil {
			s.spots = make(map[spot]int)
		}
		n = s.Count
		s.spots[key] = n
		s.Count++
	}
	return n
}

// placedTogether reports whether two parts of one source of mass are misplaced
// together.
func placedTogether(a, b *document.Part) bool {
	return SamePlace(a, b) && (a.Weighed() == nil || a.ID == b.ID)
}

// SamePlace reports whether two parts are said to sit at the same place, and
// are placed equally well.
func SamePlace(a, b *document.Part) bool {
	if a.Within != b.Within || (a.At == nil) != (b.At == nil) {
		return false
	}
	if a.At != nil {
		return *a.At == *b.At
	}
	return a.Station == b.Station && a.Offset == b.Offset
}

// bagSpot is what makes lines in bags misplaced together: bags at one place.
type bagSpot struct {
	station string
	offset  document.Vec3
}

// inBag returns the source of place of what lies in a bag.
func (s *Sources) inBag(p *document.Part) int {
	key := bagSpot{p.Station, p.Offset}
	n, ok := s.bags[key]
	if !ok {
		if s.bags == nil {
			s.bags = make(map[bagSpot]int)
		}
		n = s.Count
		s.bags[key] = n
		s.Count++
	}
	return n
}
