package report

import (
	"sync/atomic"

	"steelyard/internal/units"
	"steelyard/internal/words"
)

// spoken are the words of the language that is spoken; nil is English.
var spoken atomic.Pointer[words.Words]

// Speak chooses the words that reports, tables and pictures are written in from
// then on; nil is English.
func Speak(w *words.Words) {
	spoken.Store(w)
	units.WriteComma(w.Comma())
}

// Label returns the words for a key, or the key itself when it has none.
func Label(key string) string { return spoken.Load().Label(key) }

// say fills in the template of a key, see [words.Fill].
func say(key string, pairs ...string) string { return spoken.Load().Say(key, pairs...) }
