package words

import (
	"strings"
	"sync"

	"github.com/goccy/go-json"

	"steelyard/data"
)

// Words are the texts of one language. They do not change, and may be used from
// several goroutines. A nil *Words is English.
type Words struct {
	texts map[string]string // by key
	comma bool              // the decimal sign is a comma
}

// english are the words that come with the program.
var english = sync.OnceValue(func() *Words {
	text, err := data.Files.ReadFile("words/en.json")
	if err == nil {
		var w *Words
		if w, err = New(text); err == nil {
			return w
		}
	}
	panic("words: words/en.json: " + err.Error()) // embedded, and tested
})

// New reads the words of a language: a JSON object of labels by key. The label
// "number.decimal" is the decimal sign. What the object lacks is said in English.
func New(text []byte) (*Words, error) {
	w := &Words{}
	if err := json.Unmarshal(text, &w.texts); err != nil {
		return nil, err
	}
	w.comma = w.texts["number.decimal"] == ","
	return w, nil
}

func (w *Words) or() *Words {
	if w == nil {
		return english()
	}
	return w
}

// Comma reports whether decimals are written with a comma.
func (w *Words) Comma() bool { return w.or().comma }

// Label returns the words for a key, or the key itself when it has none.
func (w *Words) Label(key string) string {
	if s, ok := w.or().texts[key]; ok {
		return s
	}
	if s, ok := english().texts[key]; ok {
		return s
	}
	return key
}

// Or returns the words that this language itself has for a key, or a text that
// stands in for them: names of the catalogue are English in its own files.
func (w *Words) Or(key, otherwise string) string {
	if w != nil {
		if s, ok := w.texts[key]; ok {
			return s
		}
	}
	return otherwise
}

// Say fills in the label of a key, see [Fill].
func (w *Words) Say(key string, pairs ...string) string { return Fill(w.Label(key), pairs...) }

// Fill fills in a template: {name} becomes the value that follows "name" in
// pairs. What is filled in is not looked at again, so that a name may hold
// braces.
func Fill(template string, pairs ...string) string {
	return fill(template, func(name string) string {
		for i := 0; i+1 < len(pairs); i += 2 {
			if pairs[i] == name {
				return pairs[i+1]
			}
		}
		return "{" + name + "}"
	})
}

func fill(template string, value func(name string) string) string {
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
		b.WriteString(value(template[open+1 : open+length]))
		template = template[open+length+1:]
	}
	b.WriteString(template)
	return b.String()
}
