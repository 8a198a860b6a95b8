package words

import (
	"fmt"
	"strings"
	"sync"

	"github.com/goccy/go-json"

	"steelyard/data"
)

// Words are the texts of one language. They do not change, and may be used from
// several goroutines. A nil *Words is English.
type Words struct {
	texts map[string]string // labels by key, sentences by their English template
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

// English returns the words that come with the program.
func English() *Words { return english() }

// New reads the words of a language: a JSON object of labels by key and of
// sentences by their English template. The label "number.decimal" is the decimal
// sign. What the object lacks is said in English.
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

// Say fills in the label of a key: {name} becomes the value that follows "name"
// in pairs. What is filled in is not looked at again, so that a name may hold
// braces.
func (w *Words) Say(key string, pairs ...string) string {
	rest := w.Label(key)
	var b strings.Builder
	for {
		open := strings.IndexByte(rest, '{')
		if open < 0 {
			break
		}
		length := strings.IndexByte(rest[open:], '}')
		if length < 0 {
			break
		}
		b.WriteString(rest[:open])
		b.WriteString(lookUp(rest[open+1:open+length], pairs))
		rest = rest[open+length+1:]
	}
	b.WriteString(rest)
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

// Sprint writes a text.
func (w *Words) Sprint(t Text) string {
	w = w.or()
	template, ok := w.texts[t.Template]
	if !ok {
		template = t.Template
	}
	args := t.Args
	for i, a := range t.Args {
		s, changed := w.said(a)
		if !changed {
			continue
		}
		if &args[0] == &t.Args[0] {
			args = append([]any(nil), t.Args...)
		}
		args[i] = s
	}
	return fmt.Sprintf(template, args...)
}

// said is what becomes of an argument in a language, if anything does.
func (w *Words) said(a any) (any, bool) {
	switch a := a.(type) {
	case Text:
		return w.Sprint(a), true
	case Label:
		return w.Label(string(a)), true
	case List:
		return w.list(a), true
	case Number:
		return w.decimal(a.String()), true
	case float64:
		if w.comma {
			return decimal(a), true
		}
	}
	return a, false
}

func (w *Words) list(l List) string {
	var b strings.Builder
	for i, a := range l {
		switch {
		case i == 0:
		case i == len(l)-1:
			b.WriteString(w.Label("list.or"))
		default:
			b.WriteString(", ")
		}
		if s, changed := w.said(a); changed {
			a = s
		}
		fmt.Fprint(&b, a)
	}
	return b.String()
}

// decimal puts the language's decimal sign into a number.
func (w *Words) decimal(number string) string {
	if w.comma {
		return strings.Replace(number, ".", ",", 1)
	}
	return number
}
