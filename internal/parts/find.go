package parts

import (
	"slices"
	"sort"
	"strings"
	"sync"

	"steelyard/internal/document"
	"steelyard/internal/order"
	"steelyard/internal/spelling"
)

// A Finder finds what this program comes with, best first, in English and in one
// other language, by what entries, kinds, groups, stations and supplies are called
// in it, and by what else it calls them.
// Every word of a query must be in the entry's name, kind or search words, or
// begin one of them; words in the name count for more. Only when nothing is found
// may words be misspelt by a letter, long ones by two. An empty query finds
// everything; a limit of 0 or less is none.
type Finder struct {
	parts, goods, bags []indexed
	fits               []fitting // of parts
}

// NewFinder makes a Finder. The function gives the words for a key of
// data/words, such as "kind.chain"; nil leaves those words out.
func NewFinder(label func(key string) string) *Finder {
	f := &Finder{fits: fittings()}
	words := func(key, of string) []string {
		if label == nil || of == "" {
			return nil
		}
		return telling(spelling.Words(label(key + of)))
	}
	// Nothing is found for a key that the language has no words for.
	further := func(key string) string {
		if label == nil {
			return ""
		}
		if s := label(key); s != key {
			return s
		}
		return ""
	}
	name := func(x *indexed, key string) {
		if s := further(key); s != "" {
			x.spoken, x.spokenNoun = joined(s), spokenNoun(s)
		}
		x.search = slices.Concat(x.search, joined(further(key+".search")))
	}
	for _, x := range searchIndex() {
		e := &Catalogue()[len(f.parts)]
		if x.label = words("kind.", e.Kind); slices.ContainsFunc(x.label, func(w string) bool { return slices.Contains(x.kind, w) }) {
			x.label = nil // it is English, and counts by its kind already
		}
		name(&x, "entry."+e.ID)
		x.search = slices.Concat(x.search, words("group.", document.GroupOf(e.Kind)))
		x.also = joined(further("kind." + e.Kind + ".search"))
		f.parts = append(f.parts, x)
	}
	for _, g := range Goods() {
		x := index(g.Name, g.Supply, g.Search)
		x.label = words("supply.", g.Supply)
		name(&x, "goods."+g.ID)
		f.goods = append(f.goods, x)
	}
	for _, b := range Bags() {
		x := index(b.Name, "", b.Search)
		x.search = append(x.search, words("station.", b.Station)...)
		name(&x, "bags."+b.ID)
		f.bags = append(f.bags, x)
	}
	return f
}

// fit says how parts fit a build; nil is no build.
func (f *Finder) fit(on *document.Build) fits {
	if on == nil {
		return nil
	}
	has, ends := Meets(on), endsOf(on)
	return func(i int) (counts int, off float64) {
		counts, off = f.fits[i].on(on, has)
		// With a tyre in front, the next one is the rear one.
		e := &Catalogue()[i]
		if end := EntryEnd(e); end != "" && ends[[2]string{e.Kind, end}] && !ends[[2]string{e.Kind, Opposite(end)}] {
			counts--
		}
		return counts, off
	}
}

// A Listing finds parts of a build, as a Finder does entries.
type Listing struct {
	ids   []string
	parts []indexed
}

// NewListing makes a Listing of a build's parts, which are found by name, kind,
// group, station and note; label is as for NewFinder.
func NewListing(b *document.Build, label func(key string) string) *Listing {
	l := &Listing{ids: make([]string, len(b.Parts)), parts: make([]indexed, len(b.Parts))}
	known := make(map[string][]string) // most parts share their kind and station with others
	words := func(key, of string) []string {
		if of == "" {
			return nil
		}
		w, ok := known[key+of]
		if !ok {
			w = spelling.Words(of)
			if label != nil {
				w = append(w, spelling.Words(label(key+of))...)
			}
			known[key+of] = w
		}
		return w
	}
	for i := range b.Parts {
		p := &b.Parts[i]
		x := indexed{name: joined(p.Name), noun: noun(p.Name), kind: words("kind.", p.Kind)}
		x.search = slices.Concat(words("group.", document.GroupOf(p.Kind)), words("station.", p.Station), spelling.Words(p.Note))
		l.ids[i], l.parts[i] = p.ID, x
	}
	return l
}

// Find returns the ids of the parts that a query names, in the order of the build.
func (l *Listing) Find(query string) []string {
	found := seek(l.parts, searched(query), nil)
	order.Stable(found, func(a, b ranked) int { return a.entry - b.entry })
	return pick(l.ids, found, 0)
}

func pick[T any](all []T, found []ranked, limit int) []T {
	if limit > 0 && len(found) > limit {
		found = found[:limit]
	}
	out := make([]T, len(found))
	for i, f := range found {
		out[i] = all[f.entry]
	}
	return out
}

// searched returns the words of a query that something is looked for by.
func searched(query string) []string {
	words := telling(spelling.Words(query[:min(len(query), 400)]))
	words = slices.Clone(words[:min(len(words), 12)])
	for i, w := range words {
		words[i] = british(w)
	}
	return words
}

// seek ranks what words name.
func seek(all []indexed, words []string, fit fits) []ranked {
	found := rank(all, words, false, fit)
	if len(found) == 0 {
		found = rank(all, words, true, fit)
	}
	return found
}

// telling leaves out words that only join others, if others are left.
func telling(words []string) []string {
	if rest := slices.DeleteFunc(slices.Clone(words), joins); len(rest) > 0 {
		return rest
	}
	return words
}

// filler reports whether a word only joins others.
func filler(w string) bool {
	switch w {
	case "a", "an", "and", "for", "in", "of", "on", "the", "to", "with", "without":
		return true
	}
	return false
}

// joins reports so of a word of either language, folded.
func joins(w string) bool {
	switch w {
	case "am", "auf", "aus", "das", "der", "die", "fur", "im", "mit", "oder", "ohne", "und", "von", "zum", "zur":
		return true
	}
	return filler(w)
}

// british returns the word that the catalogue has for one that Americans write or
// spell otherwise.
func british(w string) string {
	stem := singular(w)
	to, ok := american[stem]
	if !ok {
		return w
	}
	return to + w[len(stem):]
}

var american = map[string]string{
	"tire": "tyre", "aluminum": "aluminium", "fiber": "fibre", "center": "centre", "liter": "litre", "fender": "mudguard",
}

// nicknames are what people call a kind, and much that goes with it.
var nicknames = map[string][]string{
	"igh": {"gear", "hub"}, "bb": {"bottom", "bracket"}, "disc": {"rotor"}, "disk": {"rotor"}, "mech": {"derailleur"}, "post": {"seatpost"},
}

// indexed is what an entry is found by: words, folded.
type indexed struct {
	name   []string
	noun   int // where in name the word is that the thing is called by: the "light" of "Front light, dynamo"
	kind   []string
	label  []string // the kind in the language of the user
	search []string

	spoken     []string // the name in the language of the user, nil where that is English
	spokenNoun int
	also       []string // what else the kind is called in it
}

func index(name, kind string, search []string) indexed {
	x := indexed{name: joined(name), noun: noun(name), kind: spelling.Words(kind)}
	for _, s := range search {
		for _, w := range joined(s) {
			x.search = append(x.search, w)
			if b := british(w); b != w {
				x.search = append(x.search, b)
			}
		}
	}
	return x
}

// noun returns the place of a name's noun among its words: the last before a
// comma or a word like "for".
func noun(name string) int { return nounBefore(name, filler) }

// spokenNoun is noun for a name in the language of the user.
func spokenNoun(name string) int { return nounBefore(name, joins) }

func nounBefore(name string, joins func(word string) bool) int {
	thing, _, _ := strings.Cut(name, ",")
	words := spelling.Words(thing)
	if i := slices.IndexFunc(words, joins); i > 0 {
		words = words[:i]
	}
	return len(words) - 1
}

var searchIndex = sync.OnceValue(func() []indexed {
	all := make([]indexed, len(catalogue()))
	for i, e := range catalogue() {
		all[i] = index(e.Name, e.Kind, e.Search)
	}
	return all
})

// joined returns the words of a text, and its hyphenated ones as one word too:
// "u-lock" is found as "ulock".
func joined(s string) []string { return append(spelling.Words(s), hyphenated(s)...) }

func hyphenated(s string) []string {
	var words []string
	for w := range strings.FieldsSeq(s) {
		if strings.Contains(w, "-") {
			words = append(words, strings.Join(spelling.Words(w), ""))
		}
	}
	return words
}

// fits is how well the element at a place of a list fits: by its needs, and by
// how far its sizes are from those that would fit best.
type fits func(i int) (counts int, off float64)

type ranked struct {
	entry, score int
	off          float64
	whole        bool // no word of the name is missing in the query
}

// rank scores everything that all words match. Between equals, an exact name
// comes first, then what fits, then the order of the list, which begins with the
// most usual.
func rank(all []indexed, words []string, misspelt bool, fit fits) []ranked {
	var found []ranked
	for i := range all {
		x := &all[i]
		score := 0
		for _, w := range words {
			s := x.score(w, misspelt)
			if s == 0 {
				score = -1
				break
			}
			score += s
		}
		if score >= 0 {
			r := ranked{entry: i, score: score, whole: len(words) > 1 && x.whole(words)}
			if fit != nil {
				var counts int
				counts, r.off = fit(i)
				r.score += 3 * counts // more than which word of a name it was, less than whether it was there
			}
			found = append(found, r)
		}
	}
	if len(words) > 0 {
		sort.SliceStable(found, func(i, j int) bool {
			a, b := &found[i], &found[j]
			switch {
			case a.score != b.score:
				return a.score > b.score
			case a.whole != b.whole:
				return a.whole
			}
			return a.off < b.off
		})
	}
	return found
}

// whole reports whether words are all of a name.
func (x *indexed) whole(words []string) bool {
	missing := func(n string) bool { return !joins(n) && !slices.Contains(words, n) }
	return !slices.ContainsFunc(x.name, missing) || x.spoken != nil && !slices.ContainsFunc(x.spoken, missing)
}

// score returns how well a word of a query fits an entry, 0 for not at all. An
// entry of the kind that the word names comes before one that only goes with it:
// a chain before a chain lock.
func (x *indexed) score(w string, misspelt bool) int {
	best, kind := 0, 0
	for i, n := range x.name {
		s := likeness(w, n, misspelt)
		if s > within {
			s += 6
			if i == x.noun {
				s += 2
			}
		}
		best = max(best, s)
	}
	for i, n := range x.spoken {
		s := compound(w, n, misspelt)
		if s > within {
			s += 6
			if i == x.spokenNoun {
				s += 2
			}
		}
		best = max(best, s)
	}
	for _, k := range x.kind {
		if s := likeness(w, k, misspelt); s > within {
			best, kind = max(best, s+4), max(kind, 8*s/10/len(x.kind))
		}
	}
	for _, k := range x.label {
		if s := compound(w, k, misspelt); s > within {
			best, kind = max(best, s+4), max(kind, 8*s/10/len(x.label))
		}
	}
	for _, k := range x.also {
		if s := likeness(w, k, misspelt); s > within {
			best, kind = max(best, s+4), max(kind, 8*s/10)
		}
	}
	if k, ok := nicknames[w]; ok && slices.Equal(x.kind, k) {
		best, kind = max(best, 14), max(kind, 3)
	}
	for _, k := range x.search {
		best = max(best, likeness(w, k, misspelt))
	}
	if best == 0 {
		return 0
	}
	return best + kind
}

// within is the likeness of a word that is only somewhere inside the other.
const within = 1

// likeness says how well a word of a query fits a word of an entry: 10 for the
// same, give or take a plural's s, 7 for its beginning, within for a part of
// it, 2 to 4 when misspelt, 0 for not at all.
func likeness(w, of string, misspelt bool) int {
	switch {
	case w == of, singular(w) == singular(of):
		return 10
	case strings.HasPrefix(of, w):
		return 7
	case len(w) >= 4 && strings.Contains(of, w):
		return within
	}
	if !misspelt || len(w) < 4 || w[0] >= '0' && w[0] <= '9' {
		return 0
	}
	limit := 1
	if len(w) >= 8 {
		limit = 2
	}
	if d := spelling.Distance(singular(w), singular(of), limit); d <= limit {
		return 6 - 2*d
	}
	// A word still being typed: compare with as much of the other.
	if len(of) > len(w) && spelling.Distance(w, of[:len(w)], 1) <= 1 {
		return 2
	}
	return 0
}

// compound is likeness to a word of the user's language: the noun of a German
// compound is at its end.
func compound(w, of string, misspelt bool) int {
	s := likeness(w, of, misspelt)
	if s == within && strings.HasSuffix(of, w) {
		return 7
	}
	return s
}

// singular takes the s of a plural off.
func singular(w string) string {
	if len(w) > 3 && strings.HasSuffix(w, "s") && !strings.HasSuffix(w, "ss") {
		return w[:len(w)-1]
	}
	return w
}
