package words_test

import (
	"testing"

	"steelyard/internal/words"
)

func german(t *testing.T) *words.Words {
	t.Helper()
	w, err := words.New([]byte(`{
		"number.decimal": ",",
		"list.or": " oder ",
		"greeting": "Guten Tag, {name}",
		"carrier.link": "Dämpfer oder Hebel",
		"Part %s of %s weighs %s g.": "In %[2]s wiegt %[1]s %[3]s g.",
		"part “%s”": "Teil „%s“",
		"It sinks %.1f mm.": "Es sinkt um %.1f mm."
	}`))
	if err != nil {
		t.Fatal(err)
	}
	return w
}

func TestSprint(t *testing.T) {
	de := german(t)
	tests := []struct {
		text    words.Text
		en, de  string
		comment string
	}{
		{words.Textf("Part %s of %s weighs %s g.", words.Textf("part “%s”", "A"), "B", words.Number(12.5)),
			"Part part “A” of B weighs 12.5 g.", "In B wiegt Teil „A“ 12,5 g.", "arguments change places, pieces are said too"},
		{words.Textf("It sinks %.1f mm.", 3.25), "It sinks 3.2 mm.", "Es sinkt um 3,2 mm.", "a verb of its own keeps its precision"},
		{words.Textf("It sinks %6.2f m.", 3.25), "It sinks   3.25 m.", "It sinks   3,25 m.", "a sentence nobody translated keeps the decimal sign of the language"},
		{words.Textf("One of %s.", words.ListOf([]string{"a", "b", "c"})), `One of "a", "b" or "c".`, `One of "a", "b" oder "c".`, "a choice"},
		{words.Textf("On the %s.", words.Label("carrier.link")), "On the Shock or link.", "On the Dämpfer oder Hebel.", "a label"},
		{words.Textf("Used up by 50 %%."), "Used up by 50 %.", "Used up by 50 %.", "no arguments"},
	}
	for _, tt := range tests {
		if got := words.English().Sprint(tt.text); got != tt.en {
			t.Errorf("%s: English %q, want %q", tt.comment, got, tt.en)
		}
		if got := de.Sprint(tt.text); got != tt.de {
			t.Errorf("%s: German %q, want %q", tt.comment, got, tt.de)
		}
		if got := tt.text.String(); got != tt.en {
			t.Errorf("%s: String %q, want %q", tt.comment, got, tt.en)
		}
	}
}

// What is said in one language must not stay in the text.
func TestSprintLeavesTheTextAlone(t *testing.T) {
	text := words.Textf("It sinks %.1f mm, not %s.", 3.25, words.Number(0.5))
	german(t).Sprint(text)
	if got, want := text.String(), "It sinks 3.2 mm, not 0.5."; got != want {
		t.Errorf("afterwards in English %q, want %q", got, want)
	}
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
