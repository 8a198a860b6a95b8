package rider_test

import (
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/goccy/go-json"
)

// The page's own labels stand in its text; a message that names a field must
// name it as the page does, in its language, and never by its key.
func TestMessagesNameFieldsAsThePageDoes(t *testing.T) {
	read := func(name string) string {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		return string(text)
	}
	for _, c := range []struct {
		language, quoted string
		page             []string
	}{
		{"en", `“([A-Z][^”]*)”`, []string{"rooms/load/text.ts", "rooms/frame/text.ts", "text/en.ts"}},
		{"de", `„([A-Z][^“]*)“`, []string{"rooms/load/text.de.ts", "rooms/frame/text.de.ts", "text/de.ts"}},
	} {
		page := ""
		for _, name := range c.page {
			page += read("../../web/" + name)
		}
		var said map[string]string
		if err := json.Unmarshal([]byte(read("../../data/words/"+c.language+".json")), &said); err != nil {
			t.Fatal(err)
		}
		labels := 0
		for key, text := range said {
			if !strings.HasPrefix(key, "seat.") {
				continue
			}
			for _, m := range regexp.MustCompile(c.quoted).FindAllStringSubmatch(text, -1) {
				labels++
				if !regexp.MustCompile(`": "` + regexp.QuoteMeta(m[1]) + `",`).MatchString(page) {
					t.Errorf("%s, %s: no field of the page is called %q", c.language, key, m[1])
				}
			}
			if regexp.MustCompile(`_(mm|deg|g)\b`).MatchString(text) {
				t.Errorf("%s, %s shows the key of a field: %s", c.language, key, text)
			}
		}
		if labels < 10 {
			t.Errorf("%s: only %d labels are named", c.language, labels)
		}
	}
}
