package bridge_test

import (
	"encoding/base64"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/goccy/go-json"

	"steelyard/internal/bridge"
	"steelyard/internal/document"
)

// english finds words that only an English sentence has, outside what is quoted.
var english = regexp.MustCompile(`(?i)\b(the|this|is|are|should|there|which|and|with|must|give|write|of)\b`)

// quotedText are what a message quotes: the user's own texts, and keys.
var quotedText = regexp.MustCompile(`„[^“]*“|\([a-z_., ]*\)`)

// Whatever is wrong is told in German: no sentence is the same in both languages,
// and none has an English word in it.
func TestEveryProblemIsToldInGerman(t *testing.T) {
	words, err := os.ReadFile("../../data/words/de.json")
	if err != nil {
		t.Fatal(err)
	}
	var en, de bridge.Session
	inEnglish, inGerman := en.Functions(), de.Functions()
	if answer := inGerman["speak"](string(words)); answer != "" {
		t.Fatal(answer)
	}
	told := 0
	compare := func(at, a, b string) {
		t.Helper()
		told++
		if a == b || b == "" {
			t.Errorf("%s: in both languages it is %q", at, a)
		}
		if m := english.FindString(quotedText.ReplaceAllString(b, "")); m != "" {
			t.Errorf("%s: %q is English in %q", at, m, b)
		}
	}
	type answer struct {
		Problem  *document.Problem  `json:"problem"`
		Problems []document.Problem `json:"problems"`
		Bad      []struct {
			Why string `json:"why"`
		} `json:"bad"`
		Shortage *struct {
			Message string `json:"message"`
		} `json:"shortage"`
		Measured *struct {
			Text string `json:"text"`
		} `json:"measured"`
		Agreement *struct {
			Text string `json:"text"`
		} `json:"agreement"`
		Explained string `json:"explained"`
	}
	both := func(at, function string, args ...string) {
		t.Helper()
		var a, b answer
		one, other := inEnglish[function](args...), inGerman[function](args...)
		if !strings.HasPrefix(one, "{") {
			return
		}
		if json.Unmarshal([]byte(one), &a) != nil || json.Unmarshal([]byte(other), &b) != nil || len(a.Problems) != len(b.Problems) || len(a.Bad) != len(b.Bad) {
			t.Fatalf("%s, %s: %.300s and %.300s", at, function, one, other)
		}
		if a.Problem != nil {
			compare(at, a.Problem.Message.String(), b.Problem.Message.String())
		}
		for i := range a.Problems {
			compare(at, a.Problems[i].Message.String(), b.Problems[i].Message.String())
		}
		for i := range a.Bad {
			compare(at, a.Bad[i].Why, b.Bad[i].Why)
		}
		if a.Shortage != nil {
			compare(at, a.Shortage.Message, b.Shortage.Message)
		}
		if a.Measured != nil {
			compare(at, a.Measured.Text, b.Measured.Text)
		}
		if a.Agreement != nil {
			compare(at, a.Agreement.Text, b.Agreement.Text)
		}
		if a.Explained != "" {
			compare(at, a.Explained, b.Explained)
		}
	}
	files := func(pattern string) (list map[string]string) {
		names, err := filepath.Glob("../../testdata/" + pattern)
		if err != nil || len(names) == 0 {
			t.Fatal(pattern, err)
		}
		list = make(map[string]string)
		for _, name := range names {
			text, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			list[filepath.Base(name)] = string(text)
		}
		return list
	}
	for name, text := range files("documents/*.json") {
		both(name, "open", text)
		both(name, "evaluate", text)
		both(name, "packStart", text)
		both(name, "weighIn", text, "kitchen")
	}
	for name, text := range files("csv/*.*") {
		both(name, "readPartsCSV", text, "")
		both(name, "readPartsCSV", text, `{"mass_unit":"stone","columns":{"name":99,"weight":1}}`)
	}
	for _, typed := range []string{"", "abc", "1.234", "-5 g", "5", "1/0 in", "2.5 lb 3 oz", "2 lb 20 oz", "3 m", "5 stone", "1 2 3", "kg", "9e9", strings.Repeat("1", 90), "1e", "12 kg 3"} {
		both(typed, "parseMass", typed, "g")
		both(typed, "parseMass", typed, "lb_oz")
		both(typed, "parseLength", typed, "mm")
	}
	for _, link := range []string{"", "x", "sy1.", "sy9.abc", "sy1.a!b", "sy1." + base64.RawURLEncoding.EncodeToString([]byte("none of it"))} {
		both(link, "decodeLink", link)
	}
	d := demoDocument(t)
	for name, spoil := range map[string]func(d *document.Document){
		"heavy good":   func(d *document.Document) { d.Load("tour").Goods[0].Mass = 400e3 },
		"no bags":      func(d *document.Document) { d.Load("tour").Bags = nil },
		"rider":        func(d *document.Document) { d.Riders[0].Stature = 1300 },
		"posture":      func(d *document.Document) { d.Riders[0].Posture = "upright"; d.Builds[0].Frame.Reach = 520 },
		"figures":      func(d *document.Document) { d.Builds[0].Frame.Chainstay = 100 },
		"fork":         func(d *document.Document) { d.Builds[0].Fork.Length = 300 },
		"pivot":        func(d *document.Document) { d.Builds[0].Rear.PivotFwd = -600 },
		"sag":          func(d *document.Document) { d.Builds[0].Fork.Sag = 400 },
		"drop":         func(d *document.Document) { d.Builds[0].Frame.BBDrop = 400 },
		"odd":          func(d *document.Document) { d.Builds[0].Frame.HeadAngle = 50; d.Builds[0].Wheels.Front.BeadSeat = 600 },
		"part station": func(d *document.Document) { d.Builds[0].Parts[0].Station = "sadle" },
		"bag station":  func(d *document.Document) { d.Load("tour").Bags[0].Station = "rear-panniers" },
		"weigh-in":     func(d *document.Document) { d.WeighIns[0].Readings[0].Mass *= 1.3 },
		"one reading":  func(d *document.Document) { d.WeighIns[0].Readings = d.WeighIns[0].Readings[:1] },
	} {
		text := written(t, d)
		spoilt := new(document.Document)
		if err := json.Unmarshal([]byte(text), spoilt); err != nil {
			t.Fatal(err)
		}
		func() {
			defer func() {
				if r := recover(); r != nil {
					t.Errorf("%s: the demo has no such thing: %v", name, r)
				}
			}()
			spoil(spoilt)
		}()
		text = written(t, spoilt)
		both(name, "evaluate", text)
		both(name, "packStart", text, `{"load":"tour"}`)
		for _, w := range spoilt.WeighIns {
			both(name, "weighIn", text, w.ID)
		}
	}
	for _, args := range [][]string{{"findParts", written(t, d), "none", ""}, {"copyLoad", written(t, d), "none", "x"}, {"weighIn", written(t, d), "none"},
		{"newIDs", written(t, d), "part", "-1"}, {"newIDs", written(t, d), "thing", "2"}, {"partFromEntry", "none"}, {"halfWidth", "weighed", "x"}, {"packRun", "x"}, {"packStop"}, {"find", "x", `{"of":"y"}`}} {
		both(args[0], args[0], args[1:]...)
	}
	if told < 250 {
		t.Errorf("only %d messages were compared", told)
	}
	t.Log(told, "messages")
}
