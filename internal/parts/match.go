package parts

import (
	"steelyard/internal/document"
)

// Source is what makes two lines of a parts list pieces of one part type: they
// came out of the same mould, and whatever is wrong with the stated mass of one
// is wrong with that of the other.
type Source struct {
	Kind, Catalogue, Name string
	Mass, HalfWidth       float64
	Basis                 document.Basis
}

// SourceKey returns the part type of p. Parts with the same key share one error
// of mass: in a sum it adds up linearly, in the difference of two builds it
// cancels. Where a part sits, and how many there are, makes no difference.
func SourceKey(p *document.Part) Source {
	return Source{p.Kind, p.Catalogue, p.Name, p.Mass, p.HalfWidth, p.Basis}
}

// ErrorKey returns what the error of a part's mass is the error of: its type, or the
// reading that it was weighed in together with others.
func ErrorKey(p *document.Part) Source {
	if j := p.Weighed(); j != nil {
		return Source{Kind: "joint", Name: j.ID} // no kind of part
	}
	return SourceKey(p)
}

// Pair is a part of build A and the one of build B that takes its place. One of
// the two is nil for a part that only the other build has.
type Pair struct {
	A, B *document.Part
}

// Match says which part of a corresponds to which part of b. Every part of
// either build is in exactly one pair: first those of a in their order, then
// what only b has in its order. The pointers are into the builds.
//
// A copied build keeps the ids of its parts, so a part of the same id and kind
// is the same line, whatever was changed on it. What is left over is paired by
// what it is, the surest sign first: the same part type at the same place, the
// same part type, the same entry of the catalogue at the same station, the same
// entry, and at last the same kind and name. Among several of one kind the
// first of a goes with the first of b. The cost is linear in the parts.
func Match(a, b *document.Build) []Pair {
	n := len(a.Parts)
	toB := make([]int, n) // index in b, or -1
	for i := range toB {
		toB[i] = -1
	}
	taken := make([]bool, len(b.Parts))
	open := n // parts of a that have no partner yet

	type line struct{ id, kind string }
	open -= pairUp(a.Parts, b.Parts, toB, taken, func(p *document.Part) (line, bool) {
		return line{p.ID, p.Kind}, p.ID != ""
	})
	type placed struct {
		source  Source
		station string
		at      document.Vec3
		absent  bool
		offset  document.Vec3
		carrier document.Carrier
	}
	if open > 0 {
		open -= pairUp(a.Parts, b.Parts, toB, taken, func(p *document.Part) (placed, bool) {
			k := placed{source: SourceKey(p), station: p.Station, absent: p.At == nil, offset: p.Offset, carrier: p.Carrier}
			if p.At != nil {
				k.at = *p.At
			}
			return k, true
		})
	}
	if open > 0 {
		open -= pairUp(a.Parts, b.Parts, toB, taken, func(p *document.Part) (Source, bool) { return SourceKey(p), true })
	}
	type entry struct{ catalogue, kind, station string }
	if open > 0 {
		open -= pairUp(a.Parts, b.Parts, toB, taken, func(p *document.Part) (entry, bool) {
			return entry{p.Catalogue, p.Kind, p.Station}, p.Catalogue != ""
		})
	}
	if open > 0 {
		open -= pairUp(a.Parts, b.Parts, toB, taken, func(p *document.Part) (entry, bool) {
			return entry{p.Catalogue, p.Kind, ""}, p.Catalogue != ""
		})
	}
	type named struct{ kind, name string }
	if open > 0 {
		pairUp(a.Parts, b.Parts, toB, taken, func(p *document.Part) (named, bool) {
			return named{p.Kind, p.Name}, p.Name != ""
		})
	}

	pairs := make([]Pair, 0, n+len(b.Parts))
	for i, j := range toB {
		pair := Pair{A: &a.Parts[i]}
		if j >= 0 {
			pair.B = &b.Parts[j]
		}
		pairs = append(pairs, pair)
	}
	for j := range b.Parts {
		if !taken[j] {
			pairs = append(pairs, Pair{B: &b.Parts[j]})
		}
	}
	return pairs
}

// pairUp pairs the free parts of a and b that have the same key, in their
// order, and returns how many pairs it made. A key that does not hold pairs
// nothing.
func pairUp[K comparable](a, b []document.Part, toB []int, taken []bool, key func(*document.Part) (K, bool)) int {
	// Free parts of b with the same key form a chain in their order.
	first := make(map[K]int)
	next := make([]int, len(b))
	for j := len(b) - 1; j >= 0; j-- {
		if taken[j] {
			continue
		}
		if k, ok := key(&b[j]); ok {
			next[j] = -1
			if f, ok := first[k]; ok {
				next[j] = f
			}
			first[k] = j
		}
	}
	if len(first) == 0 {
		return 0
	}
	made := 0
	for i := range a {
		if toB[i] >= 0 {
			continue
		}
		k, ok := key(&a[i])
		if !ok {
			continue
		}
		j, ok := first[k]
		if !ok || j < 0 {
			continue
		}
		toB[i], taken[j], first[k] = j, true, next[j]
		made++
	}
	return made
}
