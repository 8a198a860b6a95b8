package words_test

import (
	"testing"

	"steelyard/internal/words"
)

func german(t *testing.T) *words.Words {
	t.Helper()
	w, err := words.New([]byte(`{
		"number.decimal": ",",
		"greeting": "Guten Tag, {name}",
		"carrier.link": "Dämpfer oder Hebel"
	}`))
	if err != nil {
		t.Fatal(err)
	}
	return w
}

func TestSay(t *testing.T) {
	de := german(t)
	if got, want := de.Say("greeting", "name", "{name}"), "Guten Tag, {name}"; got != want {
		t.Errorf("%q, want %q: what is filled in is not looked at again", got, want)
	}
	if got := de.Say("greeting"); got != "Guten Tag, {name}" {
		t.Errorf("%q: a blank without a value stays", got)
	}
	if got, want := de.Label("carrier.swingarm"), "Swingarm"; got != want {
		t.Errorf("%q, want %q: what German lacks is said in English", got, want)
	}
	if got := de.Label("no.such"); got != "no.such" {
		t.Errorf("%q: a key without words is its own label", got)
	}
	var none *words.Words
	if none.Comma() || none.Label("carrier.swingarm") != "Swingarm" {
		t.Error("no words are not English")
	}
	if !de.Comma() {
		t.Error("German writes no comma")
	}
}

func TestNewRefuses(t *testing.T) {
	if _, err := words.New([]byte(`{"a": 1}`)); err == nil {
		t.Error("words that are no texts were taken")
	}
}

func TestShorten(t *testing.T) {
	for in, want := range map[string]string{
		"":        "",
		" a\n b ": "a b",
		"0123456789012345678901234567890123456789":  "0123456789012345678901234567890123456789",
		"01234567890123456789012345678901234567890": "0123456789012345678901234567890123456789…",
		"ääääääääääääääääääääääääääääääääääääääää":  "ääääääääääääääääääääääääääääääääääääääää",
		"a\xffb": "a�b",
	} {
		if got := words.Shorten(in); got != want {
			t.Errorf("Shorten(%q) = %q, want %q", in, got, want)
		}
	}
}

func TestChoose(t *testing.T) {
	for want, list := range map[string][]string{"": nil, `"a"`: {"a"}, `"a" or "b"`: {"a", "b"}, `"a", "b" or "c"`: {"a", "b", "c"}} {
		if got := words.Choose(list).String(); got != want {
			t.Errorf("Choose(%q) = %s, want %s", list, got, want)
		}
	}
}

func TestNumber(t *testing.T) {
	for want, n := range map[string]words.Number{"0": 0, "12.5": 12.5, "100000": 1e5, "1e+15": 1e15, "-0.001": -0.001} {
		if got := n.String(); got != want {
			t.Errorf("%v is written %s, want %s", float64(n), got, want)
		}
	}
}
