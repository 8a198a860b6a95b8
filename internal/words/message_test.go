package words_test

import (
	"errors"
	"testing"

	"github.com/goccy/go-json"

	"steelyard/internal/words"
)

func TestMessage(t *testing.T) {
	de, err := words.New([]byte(`{
		"number.decimal": ",", "list.or": " oder ", "list.and": " und ", "list.quoted": "„{text}“",
		"test.mass": "Die Masse beträgt {mass} g, {n} Mal: {name}; möglich {of}.",
		"test.in": "im Teil {part}",
		"test.about": "zu {about}: {message}"
	}`))
	if err != nil {
		t.Fatal(err)
	}
	mass := words.Tell("test.mass", "mass", words.Number(12.5), "n", 2, "name", words.Quote("{n}\nx"), "of", words.Choose([]string{"a", "b", "c"}))
	for want, m := range map[string]words.Message{
		"Die Masse beträgt 12,5 g, 2 Mal: „{n} x“; möglich „a“, „b“ oder „c“.": mass,
		"zu a und im Teil b: {message}": words.Tell("test.about", "about", words.List{"a", words.Tell("test.in", "part", "b")}),
		"Im Teil {part}":                words.Tell("test.about", "about", ""),
		"plain {text}":                  words.Plain("plain {text}"),
		"":                              {},
	} {
		if want == "Im Teil {part}" {
			if got := (words.Sentence{Of: words.Tell("test.in")}).In(de); got != want {
				t.Errorf("a sentence is %q, want %q", got, want)
			}
			continue
		}
		if got := m.In(de); got != want {
			t.Errorf("%q, want %q", got, want)
		}
		if got := m.Said(de).String(); got != want {
			t.Errorf("said in German and then in English it is %q, want %q", got, want)
		}
	}
	if got, want := words.Quote("a").String()+words.Choose([]string{"b", "c"}).String(), `"a""b" or "c"`; got != want {
		t.Errorf("in English %s, want %s", got, want)
	}
	if got := words.Explain(mass, de); got != mass.In(de) {
		t.Errorf("as an error it is %q", got)
	}
	if got := words.Explain(errors.New("of another"), de); got != "of another" {
		t.Errorf("an error of another is %q", got)
	}
}

func TestMessageAsJSON(t *testing.T) {
	for want, m := range map[string]words.Message{`"Swingarm"`: words.Tell("carrier.swingarm"), `"<a> \"b\""`: words.Plain(`<a> "b"`)} {
		text, err := json.MarshalWithOption(struct{ M words.Message }{m}, json.DisableHTMLEscape())
		if err != nil || string(text) != `{"M":`+want+`}` {
			t.Errorf("%s, %v, want %s", text, err, want)
		}
		var back struct{ M words.Message }
		if err := json.Unmarshal(text, &back); err != nil || back.M.String() != m.String() {
			t.Errorf("%q, %v, want %q", back.M, err, m)
		}
	}
}
