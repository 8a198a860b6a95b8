package report

import (
	"strings"
	"sync"
	"sync/atomic"

	"github.com/goccy/go-json"

	"steelyard/data"
	"steelyard/internal/units"
)

// english are the words that come with the program, by key.
var english = sync.OnceValue(func() map[string]string {
	words := map[string]string{}
	text, err := data.Files.ReadFile("words/en.json")
	if err == nil {
		err = json.Unmarshal(text, &words)
	}
	if err != nil {
		panic("report: words/en.json: " + err.Error()) // embedded, and tested
	}
	return words
})

// spoken are the words of another language, or nil.
var spoken atomic.Pointer[map[string]string]

// Speak chooses the words that reports, tables and pictures are written in from
// then on, by key; nil is English. The key "number.decimal" is the decimal sign.
// A key that has no word is said in English.
func Speak(words map[string]string) {
	spoken.Store(&words)
	units.WriteComma(Label("number.decimal") == ",")
}

// Label returns the words for a key, or the key itself when it has none.
func Label(key string) string {
	if s := spoken.Load(); s != nil {
		if w, ok := (*s)[key]; ok {
			return w
		}
	}
	if w, ok := english()[key]; ok {
		return w
	}
	return key
}

// say fills in the template of a key: {name} becomes the value that follows
// "name" in pairs. What is filled in is not looked at again, so that a name
// may hold braces.
func say(key string, pairs ...string) string {
	template := Label(key)
	var b strings.Builder
	for {
		open := strings.IndexByte(template, '{')
		if open < 0 {
			break
		}
		length := strings.IndexByte(template[open:], '}')
		if length < 0 {
			break
		}
		b.WriteString(template[:open])
		b.WriteString(lookUp(template[open+1:open+length], pairs))
		template = template[open+length+1:]
	}
	b.WriteString(template)
	return b.String()
}

func lookUp(name string, pairs []string) string {
	for i := 0; i+1 < len(pairs); i += 2 {
		if pairs[i] == name {
			return pairs[i+1]
		}
	}
	return "{" + name + "}"
}
