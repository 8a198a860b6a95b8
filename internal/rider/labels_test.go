package rider

import (
	"os"
	"regexp"
	"strings"
	"testing"
)

// The page's own labels stand in its text; a message that names a field must
// name it as the page does, and never by its key.
func TestMessagesNameFieldsAsThePageDoes(t *testing.T) {
	read := func(name string) string {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		return string(text)
	}
	messages := regexp.MustCompile(`(?s)// The messages below say.*?// least is`).FindString(read("problems.go"))
	page := read("../../web/text/en.ts") + read("../../web/text/load.ts")
	labels := regexp.MustCompile(`“([A-Z][^”]*)”`).FindAllStringSubmatch(messages, -1)
	if len(labels) < 10 {
		t.Fatalf("only %d labels are named", len(labels))
	}
	for _, m := range labels {
		if !regexp.MustCompile(`": "` + regexp.QuoteMeta(m[1]) + `",`).MatchString(page) {
			t.Errorf("no field of the page is called %q", m[1])
		}
	}
	for _, m := range regexp.MustCompile(`"[^"\n]*"`).FindAllString(messages, -1) {
		if text := strings.Trim(m, `"`); strings.Contains(text, " ") && regexp.MustCompile(`_(mm|deg|g)\b`).MatchString(text) {
			t.Errorf("a message shows the key of a field: %s", text)
		}
	}
}
