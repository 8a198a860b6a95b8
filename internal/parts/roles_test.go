package parts

import (
	"strings"
	"testing"

	"github.com/goccy/go-json"

	"steelyard/data"
)

func TestEveryRoleHasItsWord(t *testing.T) {
	text, err := data.Files.ReadFile("words/en.json")
	if err != nil {
		t.Fatal(err)
	}
	words := make(map[string]string)
	if err := json.Unmarshal(text, &words); err != nil {
		t.Fatal(err)
	}
	want := make(map[string]bool)
	for i := range roles {
		key := "role." + string(roles[i].id)
		want[key] = true
		if words[key] == "" {
			t.Errorf("%s has no word", key)
		}
	}
	for key := range words {
		if strings.HasPrefix(key, "role.") && !want[key] {
			t.Errorf("%s is the word of nothing", key)
		}
	}
}
