package parts

import (
	"slices"
	"strings"
	"sync"

	"steelyard/internal/spelling"
)

// EndKinds are the kinds of which a bike has something at each end.
var EndKinds = map[string]bool{
	"wheel": true, "rim": true, "hub": true, "spokes": true, "tyre": true, "tube": true, "sealant": true, "rim-tape": true,
	"axle": true, "brake": true, "rotor": true, "hose": true, "mudguard": true, "light": true, "rack": true,
}

// EndOf returns the end of the bike that the words of a name tell, "front",
// "rear" or "" for none or both.
func EndOf(words []string) string {
	front, rear := slices.Contains(words, "front"), slices.Contains(words, "rear")
	switch {
	case front && !rear:
		return "front"
	case rear && !front:
		return "rear"
	}
	return ""
}

// Opposite returns the other end.
func Opposite(end string) string {
	if end == "front" {
		return "rear"
	}
	return "front"
}

// AtEnd returns the entry at an end of the bike for a part that is like e and
// called by words: e itself, the entry that differs from e only in the end, or
// the likeliest of that end; nil if there is none.
func AtEnd(e *Entry, words []string, end string) *Entry {
	if EntryEnd(e) == end {
		return e
	}
	if other := twins()[e.ID]; other != nil && EntryEnd(other) == end {
		return other
	}
	telling := slices.DeleteFunc(slices.Clone(words), func(w string) bool { return w == Opposite(end) })
	if other := LikeliestAt(e.Kind, append(telling, end), end); other != nil && EntryEnd(other) == end {
		return other
	}
	return nil
}

// LikeliestAt returns the entry of a kind, of an end of the bike or of none, whose
// words a name shares most; nil for an unknown kind.
func LikeliestAt(kind string, words []string, end string) *Entry {
	return likeliest(kind, slices.DeleteFunc(slices.Clone(words), filler), end)
}

// EntryEnd returns the end that an entry belongs to, "" for none.
func EntryEnd(e *Entry) string { return entryEnds()[e.ID] }

var entryEnds = sync.OnceValue(func() map[string]string {
	ends := make(map[string]string)
	for _, e := range Catalogue() {
		if end := EndOf(spelling.Words(e.Name)); end != "" {
			ends[e.ID] = end
		}
	}
	return ends
})

// twins are the entries that differ from another in the end alone, by its id.
var twins = sync.OnceValue(func() map[string]*Entry {
	byName := make(map[string]*Entry)
	for i := range Catalogue() {
		e := &Catalogue()[i]
		byName[e.Kind+": "+strings.Join(spelling.Words(e.Name), " ")] = e
	}
	twins := make(map[string]*Entry)
	for name, e := range byName {
		end := EntryEnd(e)
		if other := byName[strings.Replace(name, " "+end, " "+Opposite(end), 1)]; end != "" && other != nil {
			twins[e.ID] = other
		}
	}
	return twins
})
