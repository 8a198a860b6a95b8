package bridge_test

import (
	"os"
	"regexp"
	"strings"
	"testing"

	"steelyard/internal/bridge"
	"steelyard/internal/report"
)

func TestSpeak(t *testing.T) {
	german, err := os.ReadFile("../../data/words/de.json")
	if err != nil {
		t.Fatal(err)
	}
	document := call(t, "demo")
	told := func() (summary, table, picture string) {
		var r report.Report
		read(t, &r, "evaluate", document)
		return r.Builds[0].Summary + r.Difference.Summary, call(t, "figuresMarkdown", document), call(t, "svg", document, `{"build":"gearbox","labels":true,"key":true,"units":{"mass":"kg"}}`)
	}
	summary, table, picture := told()
	defer functions["speak"]("")
	if answer := call(t, "speak", string(german)); answer != "" {
		t.Fatal(answer)
	}
	deutsch, tabelle, bild := told()
	for _, c := range []struct{ english, german, wantEnglish, wantGerman string }{
		{summary, deutsch, " weighs ", " wiegt "},
		{table, tabelle, "Total mass", "Gesamtmasse"},
		{picture, bild, "unsprung", "ungefedert"},
	} {
		if !strings.Contains(c.english, c.wantEnglish) || strings.Contains(c.english, c.wantGerman) {
			t.Errorf("English has no %q, or has %q:\n%.400s", c.wantEnglish, c.wantGerman, c.english)
		}
		if !strings.Contains(c.german, c.wantGerman) || strings.Contains(c.german, c.wantEnglish) {
			t.Errorf("German has no %q, or has %q:\n%.400s", c.wantGerman, c.wantEnglish, c.german)
		}
	}
	// Decimals have a comma in what is read, and a point in coordinates.
	if !regexp.MustCompile(`\d,\d+\x{00a0}kg`).MatchString(deutsch) || regexp.MustCompile(`\d\.\d`).MatchString(deutsch) {
		t.Errorf("no mass with a decimal comma in %q", deutsch)
	}
	if strings.Contains(bild, `x="1,`) || !strings.Contains(bild, " viewBox=") {
		t.Errorf("the picture's coordinates are not a picture's: %.300s", bild)
	}

	// What is not said in the language is said in English; nothing is English again.
	call(t, "speak", `{"figure.total":"Masse"}`)
	if _, table, _ := told(); !strings.Contains(table, "| Masse ") || !strings.Contains(table, "Front") {
		t.Errorf("a table of one word: %.300s", table)
	}
	call(t, "speak", "")
	if again, _, _ := told(); again != summary {
		t.Errorf("English again, it says %q, not %q", again, summary)
	}
	for _, bad := range []string{"{", "[1]", `{"a":1}`} {
		if problemIn(call(t, "speak", bad)) == nil {
			t.Errorf("%s is taken for words", bad)
		}
	}
}

// Each page has its own language: what one session is told says nothing to
// another.
func TestSessionsSpeakApart(t *testing.T) {
	text, err := os.ReadFile("../../data/words/de.json")
	if err != nil {
		t.Fatal(err)
	}
	english, german := new(bridge.Session).Functions(), new(bridge.Session).Functions()
	document := english["demo"]()
	if answer := german["speak"](string(text)); answer != "" {
		t.Fatal(answer)
	}
	for _, name := range []string{"figuresMarkdown", "statesMarkdown"} {
		if a, b := english[name](document), german[name](document); strings.Contains(a, "Gesamtmasse") || !strings.Contains(b, "Gesamtmasse") {
			t.Errorf("%s: English %.200s\nGerman %.200s", name, a, b)
		}
	}
}
