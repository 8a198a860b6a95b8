package parts

import (
	"slices"
	"sort"
	"strings"

	"steelyard/internal/document"
	"steelyard/internal/units"
)

// Sorts of what a Finder finds.
const (
	OfParts = "parts"
	OfGoods = "goods"
	OfBags  = "bags"
)

// Reading is what somebody typed into a search for something to add.
//
// A number is a mass with a unit of mass behind it; without one only where no
// entry is found by it, none has it for a size, and it lies within the mass ± the
// half-width of an entry that the words mean. Any other number belongs to the name.
type Reading struct {
	Name    string  // without the mass
	Mass    float64 // g
	Within  float64 // half-width of Mass, g; 0 where none was typed
	About   bool    // the mass is a rough one
	HasMass bool
	Hits    []Hit // best first
}

// Hit is an entry that may be meant.
type Hit struct {
	At     int  // its place in the list of its sort
	Size   Size // that it is to have; zero for its own
	Weighs bool // the mass typed is its
}

// Read reads what somebody typed who wants to add something of a sort. Unit is
// that of a bare number, as for [units.ParseMass]. Of entries that are named about
// equally well, those that fit the build on come first; nil is no build. A limit of
// 0 or less is none.
func (f *Finder) Read(sort, typed, unit string, on *document.Build, limit int) Reading {
	s := search{all: f.parts}
	switch sort {
	case OfGoods:
		s.all = f.goods
		s.usual = func(i int) (mass, half float64) { e := &Goods()[i]; return e.Mass, e.HalfWidth }
	case OfBags:
		s.all = f.bags
		s.usual = func(i int) (mass, half float64) { e := &Bags()[i]; return e.Mass, e.HalfWidth }
	default:
		s.fit = f.fit(on)
		s.sized = true
		s.usual = func(i int) (mass, half float64) { e := &Catalogue()[i]; return e.Mass, e.HalfWidth }
	}
	var r Reading
	w, ok := units.CutMass(typed)
	r.Name, r.Mass, r.Within, r.About, r.HasMass = w.Name, w.Grams, w.Within, w.About, ok
	s.read(&r, unit)
	if limit > 0 && len(r.Hits) > limit {
		r.Hits = r.Hits[:limit]
	}
	return r
}

// search looks for a reading among entries of a sort.
type search struct {
	all   []indexed
	fit   fits
	sized bool // the entries are those of the catalogue, which take sizes
	usual func(i int) (mass, half float64)
}

func (s *search) read(r *Reading, unit string) {
	given := r.HasMass
	defer func() {
		for i := range r.Hits {
			r.Hits[i].Weighs = r.Hits[i].Weighs || given
		}
	}()
	words := searched(r.Name)
	r.Hits = hits(seek(s.all, words, s.fit))
	figures := figuresOf(words)
	if len(figures) == 0 {
		return
	}
	rest := slices.Clone(words)
	for i := len(figures) - 1; i >= 0; i-- {
		rest = slices.Delete(rest, figures[i].word, figures[i].word+figures[i].words)
	}
	var others []Hit // what the words mean without the numbers
	if len(rest) > 0 {
		others = hits(seek(s.all, rest, s.fit))
	}
	has := func(h Hit) bool {
		for j := range figures {
			if !s.all[h.At].has(figures[j].text) {
				return false
			}
		}
		return true
	}
	// Those that have the numbers come before those with longer ones, and those of
	// the kind that is meant before what only goes with it.
	meant := func(h Hit) bool { return has(h) && (len(others) == 0 || s.kind(h) == s.kind(others[0])) }
	foremost(r.Hits, has)
	foremost(r.Hits, meant)
	if len(r.Hits) > 0 && meant(r.Hits[0]) {
		for i := range r.Hits {
			if h := &r.Hits[i]; s.sized && meant(*h) {
				if e := &Catalogue()[h.At]; sizings[e.Kind].unit == "t" || sizings[e.Kind].shape >= 0 {
					h.Size, _ = e.takes(figures, &s.all[h.At])
				}
			}
		}
		return
	}
	if s.sized && s.size(r, others, figures) {
		return
	}
	if !given && s.weigh(r, others, unit) {
		return
	}
	known := make(map[int]bool, len(r.Hits))
	for _, h := range r.Hits {
		known[h.At] = true
	}
	for _, h := range others {
		if !known[h.At] {
			r.Hits = append(r.Hits, h)
		}
	}
	if len(others) > 0 {
		foremost(r.Hits, func(h Hit) bool { return s.kind(h) == s.kind(others[0]) })
	}
}

// foremost puts those first of which something is true, and keeps the order
// otherwise.
func foremost(list []Hit, is func(Hit) bool) {
	sort.SliceStable(list, func(i, j int) bool { return is(list[i]) && !is(list[j]) })
}

// kind returns the kind of a part of the catalogue; goods and bags have none.
func (s *search) kind(h Hit) string {
	if !s.sized {
		return ""
	}
	return Catalogue()[h.At].Kind
}

// size puts those first that can have the size, of several that differ only in it
// the nearest, and reports whether there are any.
func (s *search) size(r *Reading, others []Hit, figures []figure) bool {
	var sized, left []Hit
	done := make(map[*[]int]int) // family to its place in sized
	for _, h := range others {
		e := &Catalogue()[h.At]
		size, ok := e.takes(figures, &s.all[h.At])
		own, named := namedSizes()[e.ID]
		named = named && own.to == 0
		switch {
		case !ok:
			left = append(left, h)
			continue
		case named:
			if at, again := done[own.family]; again {
				if off(own.value, size.Value) < off(namedSizes()[Catalogue()[sized[at].At].ID].value, size.Value) {
					sized[at].At = h.At
				}
				continue
			}
			done[own.family] = len(sized)
		}
		sized = append(sized, Hit{At: h.At, Size: size})
	}
	// Of the number of a chain lock, chainrings know nothing.
	if !slices.ContainsFunc(sized, func(h Hit) bool { return s.kind(h) == s.kind(others[0]) }) {
		return false
	}
	r.Hits = append(sized, left...)
	return true
}

func off(a, b float64) float64 { return max(a, b) / min(a, b) }

// weigh takes a bare number at the end for a mass where that is what one of the
// entries weighs; these then come first.
func (s *search) weigh(r *Reading, others []Hit, unit string) bool {
	at := strings.LastIndexAny(r.Name, " \t\u00a0")
	if at < 0 {
		return false
	}
	name, last := strings.TrimSpace(r.Name[:at]), strings.TrimSpace(r.Name[at:])
	grams, err := units.ParseMass(last, unit)
	if err != nil || name == "" {
		return false
	}
	var weighing, left []Hit
	for _, h := range others {
		if mass, half := s.usual(h.At); s.kind(h) == s.kind(others[0]) && grams >= mass-half && grams <= mass+half {
			h.Weighs = true
			weighing = append(weighing, h)
		} else {
			left = append(left, h)
		}
	}
	if len(weighing) == 0 {
		return false
	}
	r.Name, r.Mass, r.HasMass = name, grams, true
	r.Hits = append(weighing, left...)
	return true
}

func hits(found []ranked) []Hit {
	out := make([]Hit, len(found))
	for i, f := range found {
		out[i].At = f.entry
	}
	return out
}
