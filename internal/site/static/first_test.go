package static

import (
	"strings"
	"testing"

	"github.com/goccy/go-json"

	"steelyard/internal/bridge"
)

// What is shown before the program is there is what the program answers, in its
// language, with a picture for light and dark paper.
func TestFirstSightIsWhatTheProgramAnswers(t *testing.T) {
	for _, code := range languages {
		spoken, err := wordsOf(root(t), code)
		if err != nil {
			t.Fatal(err)
		}
		got, err := firstSight(spoken, "7.5")
		if err != nil {
			t.Fatal(err)
		}
		program := new(bridge.Session).Functions()
		program["speak"](spoken)
		var want, have struct {
			Program string           `json:"program"`
			Builds  []map[string]any `json:"builds"`
			Sides   []map[string]any `json:"sides"`
		}
		if err := json.Unmarshal([]byte(program["evaluate"](program["demo"]())), &want); err != nil {
			t.Fatal(err)
		}
		if err := json.Unmarshal(got.Report, &have); err != nil {
			t.Fatal(err)
		}
		if have.Program != "7.5" {
			t.Errorf("%s: the report is of version %q", code, have.Program)
		}
		if len(want.Builds) < 2 || len(have.Builds) != len(want.Builds) || len(have.Sides) != 2 {
			t.Fatalf("%s: %d builds and %d sides", code, len(have.Builds), len(have.Sides))
		}
		for i, b := range want.Builds {
			if have.Builds[i]["summary"] != b["summary"] || b["summary"] == "" {
				t.Errorf("%s: build %d: %q; want %q", code, i, have.Builds[i]["summary"], b["summary"])
			}
		}
		for _, p := range got.Pictures {
			if !strings.Contains(p.SVG, "var(--sprung)") || strings.Contains(p.SVG, `="#`) {
				t.Errorf("%s: the picture of %v px has colours of its own", code, p.Width)
			}
		}
		if comma := strings.Contains(got.Pictures[1].SVG, "9,13"); len(got.Pictures) != 2 || comma != (code == "de") {
			t.Errorf("%s: %d pictures, with a comma %t", code, len(got.Pictures), comma)
		}
		if text, err := json.Marshal(got); err != nil || len(text) > 400_000 {
			t.Errorf("%s: %d bytes, %v", code, len(text), err)
		}
	}
}
