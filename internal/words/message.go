package words

import (
	"fmt"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/goccy/go-json"
)

// Message is a sentence, or a piece of one, that is not in a language yet: the
// key of a template, and what fills it in. It can be told as an error, in
// English, and is said in another language where the user's is known, see
// [Message.In]. The zero Message is empty.
type Message struct {
	Key   string
	Pairs []any
	Text  string // of a message without a key, in whatever language
}

// Tell makes a message of the template under a key. {name} in it becomes the
// value that follows "name" in pairs: a text of the user's as it is, a whole
// number, a figure, or a value that reads differently in each language, such as another
// Message, a [Number], a text to [Quote] or a [Choice].
func Tell(key string, pairs ...any) Message { return Message{Key: key, Pairs: pairs} }

// Plain makes a message of a text that reads the same in every language.
func Plain(text string) Message { return Message{Text: text} }

// IsZero reports whether the message says nothing at all.
func (m Message) IsZero() bool { return m.Key == "" && m.Text == "" }

// In says the message in a language.
func (m Message) In(w *Words) string {
	if m.Key == "" {
		return m.Text
	}
	return fill(w.Label(m.Key), func(name string) string { return m.value(name, w) })
}

// Said is the message in a language, and from then on in no other.
func (m Message) Said(w *Words) Message { return Plain(m.In(w)) }

// String says the message in English, or as it was said.
func (m Message) String() string { return m.In(nil) }

// Error is String, for a message that is an error.
func (m Message) Error() string { return m.In(nil) }

// MarshalJSON writes what String says.
func (m Message) MarshalJSON() ([]byte, error) {
	return json.MarshalWithOption(m.String(), json.DisableHTMLEscape())
}

// UnmarshalJSON reads a message that was said.
func (m *Message) UnmarshalJSON(text []byte) error {
	*m = Message{}
	return json.Unmarshal(text, &m.Text)
}

// value is what a blank becomes.
func (m Message) value(name string, w *Words) string {
	for i := 0; i+1 < len(m.Pairs); i += 2 {
		if m.Pairs[i] == name {
			return in(m.Pairs[i+1], w)
		}
	}
	return "{" + name + "}"
}

// in writes a value in a language.
func in(v any, w *Words) string {
	switch v := v.(type) {
	case interface{ In(*Words) string }:
		return v.In(w)
	case string:
		return v
	case int:
		return strconv.Itoa(v)
	case float64:
		return Number(v).In(w)
	}
	return fmt.Sprint(v)
}

// Explain says an error in a language. One that is no [Message], or none in
// another error, is told as it tells itself.
func Explain(err error, w *Words) string {
	if m, ok := err.(interface{ In(*Words) string }); ok {
		return m.In(w)
	}
	return err.Error()
}

// Sentence is a piece of a sentence that is to stand as one: it begins with a
// capital letter.
type Sentence struct{ Of error }

// In says the sentence in a language.
func (s Sentence) In(w *Words) string {
	text := Explain(s.Of, w)
	first, n := utf8.DecodeRuneInString(text)
	if n == 0 {
		return ""
	}
	return string(unicode.ToUpper(first)) + text[n:]
}

// Quoted is a text of the user's to stand in quotes, see [Quote].
type Quoted string

// Quote puts a text of the user's into quotes, shortened.
func Quote[S ~string](s S) Quoted { return Quoted(Shorten(string(s))) }

// In writes the text in the quotes of a language.
func (q Quoted) In(w *Words) string { return w.Say("list.quoted", "text", string(q)) }

// String writes the text in the quotes of English.
func (q Quoted) String() string { return q.In(nil) }

// Choice is a choice of some values, each in quotes: "a", "b" or "c".
type Choice []string

// Choose makes a choice of values.
func Choose[S ~string](values []S) Choice {
	c := make(Choice, len(values))
	for i, v := range values {
		c[i] = string(v)
	}
	return c
}

// In writes the choice in a language.
func (c Choice) In(w *Words) string {
	quoted := make([]string, len(c))
	for i, v := range c {
		quoted[i] = Quote(v).In(w)
	}
	return listed(quoted, w.Label("list.or"))
}

// String writes the choice in English.
func (c Choice) String() string { return c.In(nil) }

// Row is several values with commas between them: a, b, c.
type Row []any

// In writes the row in a language.
func (r Row) In(w *Words) string {
	texts := make([]string, len(r))
	for i, v := range r {
		texts[i] = in(v, w)
	}
	return strings.Join(texts, ", ")
}

// List is several values in a row: a, b and c.
type List []any

// In writes the list in a language.
func (l List) In(w *Words) string {
	texts := make([]string, len(l))
	for i, v := range l {
		texts[i] = in(v, w)
	}
	return listed(texts, w.Label("list.and"))
}

// listed writes texts with commas between them, and last before the last of
// them.
func listed(texts []string, last string) string {
	var b strings.Builder
	for i, t := range texts {
		switch {
		case i == 0:
		case i == len(texts)-1:
			b.WriteString(last)
		default:
			b.WriteString(", ")
		}
		b.WriteString(t)
	}
	return b.String()
}
