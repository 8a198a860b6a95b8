package parts

import (
	"slices"
	"strings"
	"sync"

	"steelyard/internal/document"
	"steelyard/internal/spelling"
)

// vocabulary knows which kinds a word, or a short run of words, may mean. It is
// read off the catalogue: the kind's own name, how its entries are called, and
// what they are searched by.
type vocabulary map[string]map[string]int // words joined by spaces -> kind -> entries

var kindWords = sync.OnceValue(func() vocabulary {
	v := make(vocabulary)
	add := func(words []string, kind string) {
		if len(words) == 0 || len(words) > maxPhrase {
			return
		}
		for i := range words {
			words[i] = singular(words[i])
		}
		phrase := strings.Join(words, " ")
		if v[phrase] == nil {
			v[phrase] = make(map[string]int)
		}
		v[phrase][kind]++
	}
	for _, k := range document.Kinds {
		add(spelling.Words(k.ID), k.ID)
	}
	for _, e := range Catalogue() {
		// The words before the first comma name the part, the others describe it.
		thing, _, _ := strings.Cut(e.Name, ",")
		words := spelling.Words(thing)
		if i := slices.IndexFunc(words, filler); i > 0 {
			words = words[:i]
		}
		add(slices.Clone(words), e.Kind)
		if len(words) > 1 && (words[0] == "front" || words[0] == "rear") {
			add(words[1:], e.Kind)
		}
		for _, w := range spelling.Words(e.Name) {
			if len(w) > 1 && !filler(w) && !isFigure(w) {
				add([]string{w}, e.Kind)
			}
		}
		for _, s := range e.Search {
			if words := spelling.Words(s); len(words) > 0 && !isFigure(words[0]) {
				add(words, e.Kind)
			}
		}
	}
	return v
})

// isFigure reports whether a word is a size, which any kind may have.
func isFigure(w string) bool { return w[0] >= '0' && w[0] <= '9' }

// maxPhrase is the longest run of words that the vocabulary keeps.
const maxPhrase = 3

// GuessKind returns the kind of part that a name in English, German or French
// most likely means, "" when nothing in it points to one. The words before a
// comma or a word like "for" name the part itself and are tried first, then the
// whole name. The longest words of the catalogue in it decide; a word that
// several kinds share counts for none of them, unless it nearly always means one.
func GuessKind(name string) string {
	name = name[:min(len(name), 400)]
	thing := name
	if i := strings.IndexAny(name, ",;:(/"); i > 0 {
		thing = name[:i]
	}
	head := EnglishWords(spelling.Words(thing))
	if i := slices.IndexFunc(head, filler); i > 0 {
		head = head[:i]
	}
	if kind := guessKind(head); kind != "" {
		return kind
	}
	return guessKind(EnglishWords(spelling.Words(name)))
}

func guessKind(words []string) string {
	words = slices.Clone(words[:min(len(words), 30)])
	for i := range words {
		words[i] = singular(words[i])
	}
	if slices.Contains(words, "spare") {
		return "spare" // it is carried, whatever it is
	}
	best, bestScore := "", 0
	votes := make(map[string]int)
	for i := range words {
		for n := 1; n <= maxPhrase && i+n <= len(words); n++ {
			kind, sure := kindWords().meaning(strings.Join(words[i:i+n], " "))
			if kind == "" {
				continue
			}
			votes[kind] += 2*n*n + sure
			// In a tie the later word is the noun: "chain tool", "seat clamp".
			if votes[kind] >= bestScore {
				best, bestScore = kind, votes[kind]
			}
		}
	}
	return best
}

// meaning returns the kind that a phrase means, and 1 more if that is the name
// of the kind itself.
func (v vocabulary) meaning(phrase string) (kind string, sure int) {
	kinds := v[phrase]
	total, most := 0, 0
	for k, n := range kinds {
		total += n
		if n > most || n == most && k < kind {
			kind, most = k, n
		}
	}
	if id := strings.ReplaceAll(phrase, " ", "-"); document.KnownKind(id) {
		return id, 1
	}
	if total == 0 || most*4 < total*3 {
		return "", 0
	}
	return kind, 0
}

// GuessEntry returns the entry of a kind whose words the name shares most, nil
// for an unknown kind. Between equals the first wins, which is the most usual.
func GuessEntry(kind, name string) *Entry {
	words := EnglishWords(spelling.Words(name[:min(len(name), 400)]))
	words = slices.DeleteFunc(words[:min(len(words), 30)], filler)
	return likeliest(kind, words, "")
}

// likeliest is GuessEntry for the words of a name. With an end, "front" or
// "rear", an entry that belongs to the other end is left out.
func likeliest(kind string, words []string, end string) *Entry {
	var best *Entry
	bestScore := -1
	if kind == "other" {
		bestScore = 0 // these have nothing in common
	}
	for i, x := range searchIndex() {
		e := &Catalogue()[i]
		if e.Kind != kind || end != "" && EndOf(x.name) != "" && EndOf(x.name) != end {
			continue
		}
		score := 0
		for _, w := range words {
			switch {
			case slices.Contains(x.name, w):
				score += 3
			case slices.Contains(x.search, w):
				score += 2
			}
		}
		if score > bestScore {
			best, bestScore = e, score
		}
	}
	return best
}

// IsPlural reports whether a word is the plural of what a kind is called.
func IsPlural(word, kind string) bool {
	one := singular(word)
	if one == word {
		return false
	}
	of, _ := kindWords().meaning(one)
	return of == kind
}
