package bridge_test

import (
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/goccy/go-json"

	"steelyard/internal/document"
)

type found struct {
	Name  string
	Mass  *float64 `json:"mass_g"`
	Found []string
	Other []struct {
		ID, Name  string
		Mass      float64 `json:"mass_g"`
		HalfWidth float64 `json:"half_width_g"`
	}
}

// seek asks as the page does.
func seek(t testing.TB, typed, of string, on *document.Build) found {
	t.Helper()
	wanted := map[string]any{"of": of, "unit": "g", "limit": 40}
	if on != nil {
		there := []map[string]any{}
		for _, p := range on.Parts {
			there = append(there, map[string]any{"kind": p.Kind, "carrier": p.Carrier})
		}
		wanted["on"] = map[string]any{"fork": on.Fork, "rear": on.Rear, "wheels": on.Wheels, "parts": there}
	}
	options, err := json.Marshal(wanted)
	if err != nil {
		t.Fatal(err)
	}
	var f found
	read(t, &f, "find", typed, string(options))
	return f
}

func first(f found) string {
	if len(f.Found) == 0 {
		return ""
	}
	return f.Found[0]
}

// What Enter takes when somebody has typed a word, and has no build to fit.
func TestFindFirst(t *testing.T) {
	for of, queries := range map[string]map[string]string{
		"parts": {
			"chain": "chain-12", "Chain": "chain-12", "chians": "chain-12", "chain lock": "lock-chain", "chain oil": "lubricant", "chain guide": "chain-guide",
			"tire": "tyre-front-37-622", "tires": "tyre-front-37-622", "tyre": "tyre-front-37-622", "rear tire": "tyre-rear-37-622",
			"tire levers": "tyre-levers", "29 x 2.35 tire": "tyre-front-60-622", "tire insert": "tyre-insert-front",
			"frame": "touring-frame-steel", "frame steel": "touring-frame-steel", "aluminum frame": "touring-frame-aluminium", "frame bag": "frame-bag-full",
			"fender": "mudguard-rear", "fenders front": "mudguard-front", "carbon fiber bar": "bar-riser-carbon",
			"crank": "cranks-aluminium", "crankset": "cranks-aluminium", "gearbox": "gearbox-wide", "gear hub": "gear-hub-wide", "igh": "gear-hub-wide",
			"stepless": "gear-hub-heavy", "hub": "hub-front", "rim": "rim-front-622-aluminium", "rear rim": "rim-rear-622-aluminium", "tube": "tube-front-622",
			"fork": "fork-100-upper", "rigid fork": "rigid-fork-steel", "shock": "air-shock", "rotor": "rotor-front-160", "disc": "rotor-front-160",
			"disk brake": "caliper-front-two-piston", "caliper": "caliper-front-two-piston", "saddle": "saddle-padded", "dropper": "seatpost-dropper",
			"handlebar": "bar-flat-aluminium", "stem": "stem-short", "grips": "grip-clamped", "pedals": "pedal-flat-aluminium", "light": "front-light-dynamo",
			"rack": "rear-rack-aluminium", "kickstand": "stand-side", "bottle": "bottle-075", "bottle cage": "bottle-cage-aluminium", "pump": "pump-small",
			"derailer": "derailleur-12", "casette": "cassette-12", "cassette": "cassette-12", "belt": "belt", "bb": "bottom-bracket-threaded",
			"thru axle": "rear-through-axle", "battery": "battery-10", "spare tube": "spare-tube", "twist shifter": "twist-shifter",
			"qqqqqq": "", "rim zzzzz": "",
		},
		"goods": {
			"chain": "lubricant", "tent": "tent-one", "gas": "gas", "tire": "spare-tyre", "batery": "power-bank", "sleping bag": "sleeping-bag-summer",
			"water": "water-bottle", "stove": "stove-gas", "fuel": "fuel", "qqqqqq": "",
		},
		"bags": {
			"pannier": "pannier-rear-left", "panier left": "pannier-rear-left", "right pannier front": "pannier-front-right", "fork": "fork-bag-left",
			"saddle bag": "saddle-bag-large", "dry bag": "rack-bag", "bottle": "bottle-down-tube", "qqqqqq": "",
		},
	} {
		for typed, want := range queries {
			if f := seek(t, typed, of, nil); first(f) != want || f.Mass != nil || f.Name != typed {
				t.Errorf("%s: %q is %+v, want %q first", of, typed, f, want)
			}
		}
	}
}

// With a build, what fits it comes first.
func TestFindWhatFits(t *testing.T) {
	rigid := &document.Build{Wheels: document.Wheels{Front: document.Wheel{BeadSeat: 584, Tyre: 56}, Rear: document.Wheel{BeadSeat: 559, Tyre: 51}}}
	hardtail := &document.Build{Fork: document.Fork{Travel: 120}, Wheels: document.Wheels{Front: document.Wheel{BeadSeat: 622, Tyre: 58}, Rear: document.Wheel{BeadSeat: 622, Tyre: 58}}}
	sprung := &document.Build{Fork: document.Fork{Travel: 150}, Rear: document.Rear{Travel: 140}, Wheels: hardtail.Wheels}
	gearbox := *sprung
	gearbox.Parts = []document.Part{{Kind: "crank-gearbox"}}
	hub := *rigid
	hub.Parts = []document.Part{{Kind: "gear-hub"}}
	for _, c := range []struct {
		on          *document.Build
		typed, want string
	}{
		{rigid, "frame steel", "touring-frame-steel"},
		{hardtail, "frame steel", "hardtail-frame-steel"},
		{sprung, "frame steel", "full-suspension-main-frame-steel"},
		{&gearbox, "frame steel", "full-suspension-main-frame-steel-gearbox"},
		{sprung, "hardtail frame", "hardtail-frame-steel"}, // who asks for it gets it
		{rigid, "tire", "tyre-front-57-584"},
		{rigid, "rear tire", "tyre-rear-50-559"},
		{sprung, "tire", "tyre-front-57-622"},
		{sprung, "37-622 tire", "tyre-front-37-622"},
		{rigid, "rim", "rim-front-584-aluminium"},
		{rigid, "fork", "rigid-fork-steel"},
		{hardtail, "fork", "fork-120-upper"},
		{sprung, "rear rack", "rear-rack-full-suspension"},
		{rigid, "rear rack", "rear-rack-aluminium"},
		{&gearbox, "crank", "cranks-gearbox"},
		{&gearbox, "chain", "chain-12"}, // and not the chainring for a gearbox
		{&gearbox, "chainring", "chainring-gearbox"},
		{&hub, "cog", "cog-gear-hub"},
		{&hub, "622 rear spokes", "spokes-gear-hub-622"},
		{sprung, "pump", "pump-small"},
	} {
		if f := seek(t, c.typed, "parts", c.on); first(f) != c.want {
			t.Errorf("on a bike with %v mm in front, %v mm behind, %q is %v, want %s first", c.on.Fork.Travel, c.on.Rear.Travel, c.typed, f.Found[:min(3, len(f.Found))], c.want)
		}
	}
}

// Kinds are found by what they are called in the language that is spoken, and
// English goes on being found.
func TestFindInGerman(t *testing.T) {
	words, err := os.ReadFile("../../data/words/de.json")
	if err != nil {
		t.Fatal(err)
	}
	call(t, "speak", string(words))
	defer call(t, "speak", "")
	for typed, want := range map[string]string{
		"Kette": "chain-12", "Kasette": "cassette-12", "Reifen": "tyre-front-37-622", "Rahmen": "touring-frame-steel", "Sattel": "saddle-padded",
		"Sattelstütze": "seatpost-aluminium", "Kurbel": "cranks-aluminium", "Gabel": "fork-100-upper", "Felge": "rim-front-622-aluminium",
		"Getriebenabe": "gear-hub-wide", "Kettenblatt": "chainring-single", "Schaltwerk": "derailleur-12", "Klingel": "bell", "Schloss": "lock-folding",
		"chain": "chain-12", "tire": "tyre-front-37-622",
	} {
		if f := seek(t, typed, "parts", nil); first(f) != want {
			t.Errorf("%q is %v, want %s first", typed, f.Found[:min(3, len(f.Found))], want)
		}
	}
	if f := seek(t, "Gabel", "bags", nil); !slices.Contains(f.Found, "fork-bag-left") {
		t.Errorf("a bag on the fork is not among %v", f.Found)
	}
	call(t, "speak", "")
	if f := seek(t, "Kettenblatt", "parts", nil); len(f.Found) > 0 {
		t.Errorf("in English, Kettenblatt finds %v", f.Found)
	}
}

func TestFindTakesTheMass(t *testing.T) {
	f := seek(t, " bell 42 g ", "parts", nil)
	if f.Name != "bell" || f.Mass == nil || *f.Mass != 42 || first(f) != "bell" {
		t.Errorf("%+v", f)
	}
	read(t, &f, "find", "straps 2", `{"of":"parts","unit":"oz"}`)
	if f.Mass == nil || *f.Mass < 56.6 || *f.Mass > 56.8 {
		t.Errorf("2 oz are %+v", f)
	}
	for _, bad := range []string{"", "{", `{"of":"riders"}`, `{"of":"parts","on":[]}`} {
		if problemIn(call(t, "find", "bell", bad)) == nil {
			t.Errorf("%q is taken as options", bad)
		}
	}
}

// The list of a build is searched by the same rules, in its own order.
func TestFindParts(t *testing.T) {
	demoText := call(t, "demo")
	find := func(typed string) []string {
		var ids []string
		read(t, &ids, "findParts", demoText, "derailleur", typed)
		return ids
	}
	for typed, want := range map[string]string{
		"derailer": "derailleur hanger spare-hanger", "tire": "tyre-front tyre-rear", "Tyre rear": "tyre-rear", "chain": "small-parts chainring chain",
		"down-tube": "cables hose-rear bottle-cage bottle", "qqqqqq": "",
	} {
		if got := strings.Join(find(typed), " "); got != want {
			t.Errorf("%q finds %s, want %s", typed, got, want)
		}
	}
	d, _ := document.Open([]byte(demoText))
	if got := find(" "); len(got) != len(d.Build("derailleur").Parts) {
		t.Errorf("nothing typed finds %d parts", len(got))
	}
	if problemIn(call(t, "findParts", demoText, "none", "chain")) == nil || problemIn(call(t, "findParts", "{", "", "chain")) == nil {
		t.Error("a build that is not there is searched")
	}
}

func BenchmarkFindAsThePageDoes(b *testing.B) {
	for name, typed := range map[string]string{"word": "rim", "words": "rear rim 622", "misspelt": "derailer reer"} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				call(b, "find", typed, `{"of":"parts","unit":"g","limit":40,"on":{"fork":{"travel_mm":150},"rear":{"travel_mm":140},"parts":[{"kind":"gear-hub","carrier":"rear-wheel"}]}}`)
			}
		})
	}
}
