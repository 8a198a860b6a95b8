package static

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/goccy/go-json"

	"steelyard/internal/bridge"
	"steelyard/internal/report"
)

// first is what the page shows of the demo until its program is there, in one
// language: all of it is what the program itself would answer with.
type first struct {
	Document json.RawMessage `json:"document"`
	Report   json.RawMessage `json:"report"`
	Kinds    json.RawMessage `json:"kinds"`
	Stations json.RawMessage `json:"stations"`
	Pictures []drawn         `json:"pictures"` // of Document's first build, narrow and wide
}

// drawn is a picture in the colours of the page's style, for a plate of a size in
// CSS pixels.
type drawn struct {
	Width  float64 `json:"width"`
	Height float64 `json:"height"`
	SVG    string  `json:"svg"`
}

// plates are the sizes that the picture has on a phone, and on a desk.
var plates = [...]drawn{{Width: 358, Height: 273}, {Width: 622, Height: 471}}

// addFirst adds the demo evaluated and pictured, first/xx.json for every language
// that data/words has. The program is asked here, where it runs natively.
func (s site) addFirst(root, version string) error {
	for _, code := range languages {
		words, err := wordsOf(root, code)
		if err != nil {
			return err
		}
		f, err := firstSight(words, version)
		if err != nil {
			return fmt.Errorf("the demo in %q: %w", code, err)
		}
		if s["first/"+code+".json"], err = json.Marshal(f); err != nil {
			return err
		}
	}
	return nil
}

// languages are those that the program speaks; English needs no words.
var languages = []string{"en", "de"}

// wordsOf are the words of a language as the page hands them to the program.
func wordsOf(root, code string) (string, error) {
	if code == "en" {
		return "", nil
	}
	all := map[string]string{}
	for _, name := range []string{code, "entries." + code} {
		text, err := os.ReadFile(filepath.Join(root, "data", "words", name+".json"))
		if err != nil {
			return "", err
		}
		if err := json.Unmarshal(text, &all); err != nil {
			return "", fmt.Errorf("%s.json: %w", name, err)
		}
	}
	text, err := json.Marshal(all)
	return string(text), err
}

// firstSight asks the program for the demo, its figures and its picture.
func firstSight(words, version string) (*first, error) {
	session := new(bridge.Session)
	program := session.Functions()
	stage := &bridge.Stage{Session: session}
	var failed error
	ask := func(answer string) json.RawMessage {
		if failed == nil && strings.HasPrefix(answer, `{"problem"`) {
			failed = fmt.Errorf("the program answered %s", answer)
		}
		return json.RawMessage(answer)
	}
	ask(program["speak"](words))
	f := &first{Document: ask(program["demo"]())}
	f.Report = ask(program["evaluate"](string(f.Document)))
	// The version that is being built, not that of what builds it.
	f.Report = json.RawMessage(strings.Replace(string(f.Report), fmt.Sprintf(`"program":%q`, report.Program()), fmt.Sprintf(`"program":%q`, version), 1))
	f.Kinds, f.Stations = ask(program["kinds"]()), ask(program["stations"]())

	var show struct {
		Show struct {
			Mass    string   `json:"mass"`
			Length  string   `json:"length"`
			Compare []string `json:"compare"`
		} `json:"show"`
	}
	if err := json.Unmarshal(f.Document, &show); err != nil {
		return nil, err
	}
	view := bridge.View{Side: "side", At: "a", Labels: true, Units: bridge.Units{Mass: show.Show.Mass, Length: show.Show.Length}}
	if c := show.Show.Compare; len(c) > 0 {
		view.Build = c[0]
		if len(c) > 1 {
			view.Ghost, view.GhostAt = c[1], "b"
		}
	}
	for _, p := range plates {
		view.Width, view.Height = p.Width, p.Height
		text, err := json.Marshal(view)
		if err != nil {
			return nil, err
		}
		ask(stage.Show(string(f.Document), string(text)))
		if p.SVG = stage.Picture(); p.SVG == "" {
			return nil, fmt.Errorf("there is no picture of build %q", view.Build)
		}
		f.Pictures = append(f.Pictures, p)
	}
	return f, failed
}
