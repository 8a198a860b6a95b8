package parts

import (
	"fmt"
	"io/fs"
	"path"
	"slices"
	"sort"
	"strings"
	"sync"

	"github.com/goccy/go-json"
	"steelyard/data"
)

// Catalogue returns the parts that this program comes with, by file and in the
// order of each file. The list is shared: it must not be changed.
func Catalogue() []Entry { return catalogue() }

var catalogue = sync.OnceValue(func() []Entry {
	entries, err := readCatalogue(data.Files)
	if err != nil {
		panic("parts: the embedded catalogue: " + err.Error()) // kept from happening by a test
	}
	return entries
})

// readCatalogue reads catalogue/*.json, in the order of their names.
func readCatalogue(files fs.FS) ([]Entry, error) {
	names, err := fs.Glob(files, "catalogue/*.json")
	if err != nil {
		return nil, err
	}
	var all []Entry
	for _, name := range names {
		text, err := fs.ReadFile(files, name)
		if err != nil {
			return nil, err
		}
		var entries []Entry
		if err := json.Unmarshal(text, &entries); err != nil {
			return nil, fmt.Errorf("%s: %w", path.Base(name), err)
		}
		all = append(all, entries...)
	}
	return all, nil
}

// EntryByID returns the entry of the catalogue with that id, nil if there is
// none. It must not be changed.
func EntryByID(id string) *Entry {
	if i, ok := catalogueIndex()[id]; ok {
		return &catalogue()[i]
	}
	return nil
}

var catalogueIndex = sync.OnceValue(func() map[string]int {
	index := make(map[string]int)
	for i, e := range catalogue() {
		index[e.ID] = i
	}
	return index
})

// Part returns a part like the entry, to be fitted under the given id.
func (e *Entry) Part(id string) Part {
	return Part{
		ID: id, Name: e.Name, Kind: e.Kind, Catalogue: e.ID, Quantity: max(1, e.Quantity),
		Mass: e.Mass, HalfWidth: e.HalfWidth, Basis: e.Basis,
		Station: e.Station, Offset: e.Offset, Within: e.Within, Carrier: e.Carrier, Shape: e.Shape, Note: e.Note,
	}
}

// Find returns the entries of the catalogue that a query names, best first, at
// most limit of them (0 or less is all). Every word of the query must be in the
// entry's name, kind or search words, or begin one of them; words that are in
// the name count for more. Only when nothing at all is found, words may be
// misspelt by a letter, long ones by two. An empty query finds everything.
func Find(query string, limit int) []Entry {
	words := wordsOf(query[:min(len(query), 400)])
	if telling := slices.DeleteFunc(slices.Clone(words), filler); len(telling) > 0 {
		words = telling
	}
	words = words[:min(len(words), 12)]
	found := rank(words, false)
	if len(found) == 0 {
		found = rank(words, true)
	}
	if limit > 0 && len(found) > limit {
		found = found[:limit]
	}
	entries := make([]Entry, len(found))
	for i, f := range found {
		entries[i] = catalogue()[f.entry]
	}
	return entries
}

// filler says whether a word only joins others.
func filler(w string) bool {
	switch w {
	case "a", "an", "and", "for", "in", "of", "on", "the", "to", "with", "without":
		return true
	}
	return false
}

// indexed is an entry's words, folded.
type indexed struct {
	name   []string
	kind   []string
	search []string
}

var searchIndex = sync.OnceValue(func() []indexed {
	all := make([]indexed, len(catalogue()))
	for i, e := range catalogue() {
		x := indexed{name: wordsOf(e.Name), kind: wordsOf(e.Kind)}
		for _, s := range e.Search {
			x.search = append(x.search, joined(s)...)
		}
		x.name = append(x.name, hyphenated(e.Name)...)
		all[i] = x
	}
	return all
})

// joined returns the words of a text, and its hyphenated ones as one word too:
// "u-lock" is found as "ulock".
func joined(s string) []string { return append(wordsOf(s), hyphenated(s)...) }

func hyphenated(s string) []string {
	var words []string
	for w := range strings.FieldsSeq(s) {
		if strings.Contains(w, "-") {
			words = append(words, strings.Join(wordsOf(w), ""))
		}
	}
	return words
}

type ranked struct {
	entry, score, length int
}

// rank scores every entry that all words match.
func rank(words []string, misspelt bool) []ranked {
	var found []ranked
	for i, x := range searchIndex() {
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
			found = append(found, ranked{i, score, len(x.name)})
		}
	}
	if len(words) > 0 {
		sort.SliceStable(found, func(i, j int) bool {
			a, b := &found[i], &found[j]
			return a.score > b.score || a.score == b.score && a.length < b.length
		})
	}
	return found
}

// score says how well a word of a query fits an entry, 0 for not at all. An
// entry of the kind that the word names comes before one that only goes with
// it: a chain before a chain lock.
func (x *indexed) score(w string, misspelt bool) int {
	best, kind := 0, 0
	for i, n := range x.name {
		s := likeness(w, n, misspelt)
		if s > within {
			s += 6
			if i == 0 {
				s += 2 // the noun that the part is called by
			}
		}
		best = max(best, s)
	}
	for _, k := range x.kind {
		if s := likeness(w, k, misspelt); s > within {
			best = max(best, s+4)
			kind = 8 / len(x.kind)
		}
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
	if d := editDistance(w, of, limit); d <= limit {
		return 6 - 2*d
	}
	// A word still being typed: compare with as much of the other.
	if len(of) > len(w) && editDistance(w, of[:len(w)], 1) <= 1 {
		return 2
	}
	return 0
}

// singular takes the s of a plural off.
func singular(w string) string {
	if len(w) > 3 && strings.HasSuffix(w, "s") && !strings.HasSuffix(w, "ss") {
		return w[:len(w)-1]
	}
	return w
}

// CheckCatalogue judges entries as a catalogue: what Check asks of a part, and
// besides that ids in kebab case, a doubt on every mass, a size for every form,
// and an entry for every kind. A Problem names the entry as its part.
func CheckCatalogue(entries []Entry) []Problem {
	var problems []Problem
	ids := make(map[string]bool)
	kinds := make(map[string]bool)
	for i := range entries {
		e := &entries[i]
		fail := func(field, format string, args ...any) {
			problems = append(problems, Problem{
				Severity: SeverityError, Part: e.ID, Field: field,
				Message: placed(titled(holdPart, label(e.Name, e.ID)), "", fmt.Sprintf(format, args...)),
			})
		}
		if !kebab(e.ID) {
			fail("id", "the id %s should be small letters and digits with hyphens between", quote(e.ID))
		}
		if ids[e.ID] {
			fail("id", "the id %s is there twice", quote(e.ID))
		}
		ids[e.ID], kinds[e.Kind] = true, true
		p := e.Part(e.ID)
		c := checker{inner: thing{holdPart, p.ID, p.Name}}
		c.one(&p)
		problems = append(problems, c.problems...)
		if e.Mass <= 0 {
			fail("mass_g", "the mass is %v; it should be more than 0 g", e.Mass)
		}
		if e.HalfWidth <= 0 || e.HalfWidth > e.Mass {
			fail("half_width_g", "the half-width is %v; it should be more than 0 g and at most the mass", e.HalfWidth)
		}
		if e.Basis != Typical {
			fail("basis", "the basis is %s; the catalogue's figures are %s", quote(string(e.Basis)), quote(string(Typical)))
		}
		if e.Quantity < 1 {
			fail("quantity", "the quantity is %d; it should be 1 or more", e.Quantity)
		}
		for k := range sizes(e.Shape.Form) {
			if e.Shape.Size[k] <= 0 {
				fail("shape.size_mm", "size %d of a %s is %v; it should be more than 0 mm", k+1, e.Shape.Form, e.Shape.Size[k])
			}
		}
		for _, s := range e.Search {
			if blank(s) || s != strings.ToLower(s) {
				fail("search", "the search word %s should be in small letters", quote(s))
			}
		}
	}
	for _, k := range Kinds {
		if !kinds[k.ID] {
			problems = append(problems, Problem{Severity: SeverityError, Field: "kind", Message: fmt.Sprintf("no entry is of the kind %s", quote(k.ID))})
		}
	}
	return problems
}

// sizes returns how many of the three sizes a form has.
func sizes(f Form) int {
	switch f {
	case FormRod, FormRing, FormPair:
		return 1
	case FormDisc:
		return 2
	case FormBox:
		return 3
	}
	return 0
}

func kebab(s string) bool {
	for word := range strings.SplitSeq(s, "-") {
		if word == "" || strings.Trim(word, "abcdefghijklmnopqrstuvwxyz0123456789") != "" {
			return false
		}
	}
	return true
}
