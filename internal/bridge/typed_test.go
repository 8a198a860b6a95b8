package bridge_test

import (
	"testing"

	"github.com/goccy/go-json"

	"steelyard/internal/document"
	"steelyard/internal/parts"
)

// typed is something that people type, and what must come of it.
type typed struct {
	text  string
	first string  // entry that is found first
	mass  float64 // that was typed, 0 for none
	name  string  // what is left of the text, where there is a mass

	// What the first entry becomes where a size is filled in.
	sized       string
	usual, half float64
}

// A hundred and more things that people type who add parts. Which sizes they call
// parts by is common practice, no source; masses of sizes that the catalogue has not
// lie between those that it has.
func TestWhatPeopleType(t *testing.T) {
	defer call(t, "speak", "")
	for language, list := range map[string][]typed{"en": typedInEnglish, "de": typedInGerman} {
		call(t, "speak", map[string]string{"en": "", "de": germanWords(t)}[language])
		for _, c := range list {
			f := seek(t, c.text, "parts", nil)
			if first(f) != c.first {
				t.Errorf("%q finds %v, want %s first", c.text, f.Found[:min(4, len(f.Found))], c.first)
				continue
			}
			name := c.text
			if c.mass > 0 {
				name = c.name
			}
			if c.mass == 0 && f.Mass != nil || c.mass > 0 && (f.Mass == nil || *f.Mass != c.mass) || f.Name != name {
				t.Errorf("%q is %q of %v g, want %q of %v g", c.text, f.Name, deref(f.Mass), name, c.mass)
			}
			if c.sized == "" {
				if len(f.Other) > 0 && f.Other[0].ID == c.first && c.mass == 0 {
					e := parts.EntryByID(c.first)
					if o := f.Other[0]; o.Mass != e.Mass || o.HalfWidth != e.HalfWidth {
						t.Errorf("%q makes %+v", c.text, o)
					}
				}
				continue
			}
			if len(f.Other) == 0 || f.Other[0].ID != c.first || f.Other[0].Name != c.sized || f.Other[0].Mass != c.usual || f.Other[0].HalfWidth != c.half {
				t.Errorf("%q makes %+v, want %q of %v ± %v g", c.text, f.Other, c.sized, c.usual, c.half)
			}
		}
	}
}

func deref(m *float64) any {
	if m == nil {
		return "no"
	}
	return *m
}

var typedInEnglish = []typed{
	{"tyre 50", "tyre-front-50-622", 0, "", "", 0, 0},
	{"tyre 55", "tyre-front-57-622", 0, "", "Tyre, front, 55-622", 771, 105},
	{"tyre 100", "tyre-front-65-622", 0, "", "Tyre, front, 100-622", 1508, 332},
	{"tyre 2.4", "tyre-front-60-622", 0, "", "Tyre, front, 61-622", 908, 122},
	{"tyre 29 x 2.4", "tyre-front-60-622", 0, "", "Tyre, front, 61-622", 908, 122},
	{"tyre 55-622", "tyre-front-57-622", 0, "", "Tyre, front, 55-622", 771, 105},
	{"tyre 700", "tyre-front-37-622", 0, "", "", 0, 0},
	{"tyre 560", "tyre-front-37-622", 560, "tyre", "", 0, 0},
	{"tyre 800 g", "tyre-front-37-622", 800, "tyre", "", 0, 0},
	{"50 tyre", "tyre-front-50-622", 0, "", "", 0, 0},
	{"rear tyre 57", "tyre-rear-57-622", 0, "", "", 0, 0},
	{"tire 2.35", "tyre-front-60-622", 0, "", "", 0, 0},
	{"tyre 5", "tyre-front-50-622", 0, "", "", 0, 0},
	{"cassette 11", "cassette-11", 0, "", "", 0, 0},
	{"cassette 12", "cassette-12", 0, "", "", 0, 0},
	{"cassette 11-46", "cassette-11", 0, "", "Cassette, 11-speed, wide range, 11–46 t", 450, 70},
	{"cassette 11-50", "cassette-12", 0, "", "Cassette, 12-speed, very wide range, 11–50 t", 560, 80},
	{"cassette 46", "cassette-11", 0, "", "Cassette, 11-speed, wide range, 11–46 t", 450, 70},
	{"cassette 330", "cassette-10", 330, "cassette", "", 0, 0},
	{"cassette 11 450 g", "cassette-11", 450, "cassette 11", "", 0, 0},
	{"11 speed cassette", "cassette-11", 0, "", "", 0, 0},
	{"chain 10", "chain-9", 0, "", "", 0, 0},
	{"chain 11", "chain-11", 0, "", "", 0, 0},
	{"chain 12", "chain-12", 0, "", "", 0, 0},
	{"chain 250", "chain-12", 250, "chain", "", 0, 0},
	{"chain 116", "chain-12", 0, "", "", 0, 0},
	{"chain 300", "chain-9", 300, "chain", "", 0, 0},
	{"chain 265 g", "chain-12", 265, "chain", "", 0, 0},
	{"chain 1", "chain-wide", 0, "", "", 0, 0},
	{"water 0.75", "water-075", 0, "", "", 0, 0},
	{"water 1", "water-1", 0, "", "", 0, 0},
	{"water 1.5", "water-1", 0, "", "Water, 1.5 l", 1500, 134},
	{"water 2", "water-1", 0, "", "Water, 2 l", 2000, 167},
	{"water 500 ml", "water-075", 0, "", "Water, 0.5 l", 500, 67},
	{"water 10", "water-4", 0, "", "Water, 10 l", 10000, 750},
	{"bottle 0.5", "bottle-075", 0, "", "Bottle, 0.5 l, empty", 55, 19},
	{"bottle 0.75", "bottle-075", 0, "", "", 0, 0},
	{"bottle 1", "bottle-1", 0, "", "", 0, 0},
	{"bottle 500", "bottle-075", 0, "", "Bottle, 0.5 l, empty", 55, 19},
	{"bottle 82", "bottle-075", 82, "bottle", "", 0, 0},
	{"bottle 81 g", "bottle-075", 81, "bottle", "", 0, 0},
	{"rotor 180", "rotor-front-180", 0, "", "", 0, 0},
	{"rotor 160 rear", "rotor-rear-160", 0, "", "", 0, 0},
	{"rotor 140", "rotor-front-160", 0, "", "Brake rotor, front, 140 mm", 96, 21},
	{"rotor 220", "rotor-front-203", 0, "", "Brake rotor, front, 220 mm", 195, 31},
	{"rotor 180mm", "rotor-front-180", 0, "", "Brake rotor, front, 180 mm", 140, 20},
	{"rotor 203 180 g", "rotor-front-203", 180, "rotor 203", "", 0, 0},
	{"saddle 512 g", "saddle-padded", 512, "saddle", "", 0, 0},
	{"saddle 512", "saddle-gel", 512, "saddle", "", 0, 0},
	{"saddle 300", "saddle-padded", 300, "saddle", "", 0, 0},
	{"saddle 143", "saddle-padded", 0, "", "", 0, 0},
	{"saddle 5120 g", "saddle-padded", 5120, "saddle", "", 0, 0},
	{"stem 80", "stem-long", 0, "", "Stem, 80 mm", 155, 30},
	{"stem 50", "stem-short", 0, "", "Stem, 50 mm", 135, 25},
	{"stem 130 g", "stem-short", 130, "stem", "", 0, 0},
	{"crank 170", "cranks-aluminium", 0, "", "Cranks with axle, aluminium, without ring", 680, 70},
	{"crank 175", "cranks-aluminium", 0, "", "Cranks with axle, aluminium, without ring, 175 mm", 680, 70},
	{"crank 680", "cranks-aluminium", 680, "crank", "", 0, 0},
	{"cranks 165 mm", "cranks-aluminium", 0, "", "Cranks with axle, aluminium, without ring, 165 mm", 680, 70},
	{"bar 760", "bar-flat-aluminium", 0, "", "Bar, flat, aluminium, 760 mm", 280, 50},
	{"bar 780", "bar-flat-aluminium", 0, "", "Bar, flat, aluminium, 780 mm", 280, 50},
	{"bar 300", "bar-flat-aluminium", 300, "bar", "", 0, 0},
	{"drop bar 44", "bar-drop-aluminium", 0, "", "Bar, drop, aluminium", 300, 50},
	{"chainring 32", "chainring-single", 0, "", "Chainring, single, aluminium", 75, 20},
	{"chainring 34", "chainring-single", 0, "", "Chainring, single, aluminium, 34 t", 75, 20},
	{"chainring 30t", "chainring-single", 0, "", "Chainring, single, aluminium, 30 t", 75, 20},
	{"cog 18", "cog-single", 0, "", "Cog on a freehub, single", 55, 15},
	{"cog 17", "cog-gear-hub", 0, "", "Cog for a gear hub, 17 t", 55, 15},
	{"fork 120", "fork-120-upper", 0, "", "", 0, 0},
	{"fork 130", "fork-120-upper", 0, "", "Suspension fork, 130 mm, upper part", 1200, 124},
	{"fork 1900 g", "fork-100-upper", 1900, "fork", "", 0, 0},
	{"battery 10", "battery-10", 0, "", "", 0, 0},
	{"battery 15", "battery-20", 0, "", "Buffer battery, 15 Ah", 278, 40},
	{"sealant 60", "sealant-front", 0, "", "Sealant, front, 60 ml", 60, 18},
	{"sealant 100", "sealant-front", 0, "", "", 0, 0},
	{"dry bag 20", "dry-bag", 0, "", "Dry bag, 20 l", 262, 116},
	{"seatpost 27.2", "seatpost-aluminium", 0, "", "", 0, 0},
	{"seatpost 272", "seatpost-aluminium", 272, "seatpost", "", 0, 0},
	{"seatpost 30.9", "seatpost-aluminium", 0, "", "", 0, 0},
	{"bell 42", "bell", 42, "bell", "", 0, 0},
	{"bell 42 g", "bell", 42, "bell", "", 0, 0},
	{"lock 1.2 kg", "lock-folding", 1200, "lock", "", 0, 0},
	{"lock 1200", "lock-folding", 1200, "lock", "", 0, 0},
	{"pedals 200", "pedal-flat-aluminium", 200, "pedals", "", 0, 0},
	{"pump 300", "pump-small", 0, "", "", 0, 0},
	{"rack 750", "rear-rack-aluminium", 750, "rack", "", 0, 0},
	{"rim 622", "rim-front-622-aluminium", 0, "", "", 0, 0},
	{"rim 32", "rim-front-622-aluminium", 0, "", "", 0, 0},
	{"spokes 32", "spokes-front-622", 0, "", "", 0, 0},
	{"tube 29", "tube-front-622", 0, "", "", 0, 0},
	{"hub 148", "hub-rear-cassette", 0, "", "", 0, 0},
	{"grips 52", "grip-clamped", 52, "grips", "", 0, 0},
	{"tent 2", "tent-two", 0, "", "", 0, 0},
	{"power bank 20 Ah", "battery-20", 0, "", "", 0, 0},
	{"pannier 900", "pannier-rear", 900, "pannier", "", 0, 0},
	{"light 100", "front-light-dynamo", 100, "light", "", 0, 0},
	{"qqq 42", "", 0, "", "", 0, 0},
	{"qqq 42 g", "", 42, "qqq", "", 0, 0},
	{"saddle ca. 300 g", "saddle-padded", 300, "saddle", "", 0, 0},
	{"saddle 300 ± 5 g", "saddle-padded", 300, "saddle", "", 0, 0},
	{"tyre 50-622 700 g", "tyre-front-50-622", 700, "tyre 50-622", "", 0, 0},
	{"chain lock 90", "lock-chain", 0, "", "", 0, 0},
}

var typedInGerman = []typed{
	{"Reifen 50", "tyre-front-50-622", 0, "", "", 0, 0},
	{"Reifen 55", "tyre-front-57-622", 0, "", "Reifen, vorn, 55-622", 771, 105},
	{"Mantel 2,4", "tyre-front-60-622", 0, "", "Reifen, vorn, 61-622", 908, 122},
	{"Reifen 28 Zoll", "tyre-front-37-622", 0, "", "", 0, 0},
	{"Kassette 11", "cassette-11", 0, "", "", 0, 0},
	{"Kassette 11-46", "cassette-11", 0, "", "Kassette, 11-fach, großer Umfang, 11–46 Z", 450, 70},
	{"Kassette 11fach", "cassette-11", 0, "", "", 0, 0},
	{"Kette 10", "chain-9", 0, "", "", 0, 0},
	{"Kette 265 g", "chain-12", 265, "Kette", "", 0, 0},
	{"Wasser 0,75", "water-075", 0, "", "", 0, 0},
	{"Wasser 1,5 l", "water-1", 0, "", "Wasser, 1,5 l", 1500, 134},
	{"Wasser 2 Liter", "water-1", 0, "", "Wasser, 2 l", 2000, 167},
	{"Flasche 0,5", "bottle-075", 0, "", "Trinkflasche, 0,5 l, leer", 55, 19},
	{"Flasche 0,75 l", "bottle-075", 0, "", "", 0, 0},
	{"Bremsscheibe 180", "rotor-front-180", 0, "", "", 0, 0},
	{"Bremsscheibe 140", "rotor-front-160", 0, "", "Bremsscheibe, vorn, 140 mm", 96, 21},
	{"Bremsscheibe hinten 203", "rotor-rear-203", 0, "", "", 0, 0},
	{"Sattel 512 g", "saddle-padded", 512, "Sattel", "", 0, 0},
	{"Sattel 512 Gramm", "saddle-padded", 512, "Sattel", "", 0, 0},
	{"Sattel 300", "saddle-padded", 300, "Sattel", "", 0, 0},
	{"Sattel 143", "saddle-padded", 0, "", "", 0, 0},
	{"Vorbau 80", "stem-long", 0, "", "Vorbau, 80 mm", 155, 30},
	{"Vorbau 50", "stem-short", 0, "", "Vorbau, 50 mm", 135, 25},
	{"Kettenblatt 34", "chainring-single", 0, "", "Kettenblatt, einfach, Aluminium, 34 Z", 75, 20},
	{"Kettenblatt 34 Z", "chainring-single", 0, "", "Kettenblatt, einfach, Aluminium, 34 Z", 75, 20},
	{"Ritzel 17", "cog-gear-hub", 0, "", "Ritzel für Getriebenabe, 17 Z", 55, 15},
	{"Kurbel 175", "cranks-aluminium", 0, "", "Kurbeln mit Achse, Aluminium, ohne Kettenblatt, 175 mm", 680, 70},
	{"Lenker 780", "bar-flat-aluminium", 0, "", "Lenker, gerade, Aluminium, 780 mm", 280, 50},
	{"Rennlenker 44", "bar-drop-aluminium", 0, "", "Rennlenker, Aluminium", 300, 50},
	{"Federgabel 120", "fork-120-upper", 0, "", "", 0, 0},
	{"Federgabel 130", "fork-120-upper", 0, "", "Federgabel, 130 mm, oberer Teil", 1200, 124},
	{"Schloss 1,2 kg", "lock-folding", 1200, "Schloss", "", 0, 0},
	{"Klingel 42", "bell", 42, "Klingel", "", 0, 0},
	{"Klingel ca. 40 g", "bell", 40, "Klingel", "", 0, 0},
	{"Sattelstütze 27,2", "seatpost-aluminium", 0, "", "", 0, 0},
	{"Packsack 20", "dry-bag", 0, "", "Wasserdichter Packsack, 20 l", 262, 116},
	{"Akku 15", "battery-20", 0, "", "Pufferakku, 15 Ah", 278, 40},
	{"Dichtmilch 60", "sealant-front", 0, "", "Dichtmilch, vorn, 60 ml", 60, 18},
	{"Schlauch 29", "tube-front-622", 0, "", "", 0, 0},
}

// A number alone is never taken for a mass that no such part has.
func TestBareNumbersAreMassesOnlyInRange(t *testing.T) {
	for i := 0; i < len(parts.Catalogue()); i += 9 {
		e := &parts.Catalogue()[i]
		for _, n := range []string{"1", "7", "10", "33", "50", "75", "128", "215", "333", "512", "999", "1234", "5000"} {
			var grams float64
			if err := json.Unmarshal([]byte(n), &grams); err != nil {
				t.Fatal(err)
			}
			f := seek(t, e.Name+" "+n, "parts", nil)
			if f.Mass == nil {
				continue
			}
			x := parts.EntryByID(first(f))
			if grams < x.Mass-x.HalfWidth || grams > x.Mass+x.HalfWidth {
				t.Errorf("%s %s weighs %v g, and %s comes first, which weighs %v ± %v g", e.Name, n, *f.Mass, x.ID, x.Mass, x.HalfWidth)
			}
		}
	}
}

type entered struct {
	Part      document.Part
	Given     bool
	Unusual   string
	Usual     float64         `json:"usual_g"`
	Displaces []document.Part `json:"displaces"`
	InPlace   *document.Part  `json:"in_place"`
}

// enter asks as the page does, on a build of the demo.
func enter(t *testing.T, on, entry, text string) entered {
	t.Helper()
	options, err := json.Marshal(map[string]string{"entry": entry, "typed": text, "unit": "g"})
	if err != nil {
		t.Fatal(err)
	}
	var e entered
	read(t, &e, "enter", call(t, "demo"), on, string(options))
	return e
}

func TestEnter(t *testing.T) {
	for _, c := range []struct {
		entry, text string
		name        string
		mass, half  float64
		basis       document.Basis
		kind        string
		given       bool
		unusual     string
		usual       float64
	}{
		{"saddle-leather", "saddle", "Saddle, leather", 530, 60, document.Typical, "saddle", false, "", 0},
		{"saddle-leather", "saddle 512 g", "Saddle, leather", 512, 26, document.Stated, "saddle", true, "", 0},
		{"saddle-leather", "saddle 512 ± 2 g", "Saddle, leather", 512, 2, document.Stated, "saddle", true, "", 0},
		{"saddle-leather", "saddle ca. 500 g", "Saddle, leather", 500, 100, document.Guessed, "saddle", true, "", 0},
		{"saddle-leather", "saddle 105 g", "Saddle, leather", 105, 5, document.Stated, "saddle", true, "light", 530},
		{"saddle-leather", "saddle 106 g", "Saddle, leather", 106, 5, document.Stated, "saddle", true, "", 0},
		{"saddle-leather", "saddle 2650 g", "Saddle, leather", 2650, 133, document.Stated, "saddle", true, "", 0},
		{"saddle-leather", "saddle 5120 g", "Saddle, leather", 5120, 256, document.Stated, "saddle", true, "heavy", 530},
		{"saddle-padded", "saddle 512", "Saddle, padded", 310, 60, document.Typical, "saddle", false, "", 0}, // it is out of its range
		{"", "saddle 512 g", "saddle", 512, 26, document.Stated, "saddle", true, "", 0},
		{"", "my tyre 50 g", "my tyre", 50, 3, document.Stated, "tyre", true, "light", 480},
		{"", "tyre 5.6 kg", "tyre", 5600, 280, document.Stated, "tyre", true, "heavy", 980},
		{"", "qwertz 50 kg", "qwertz", 50000, 2500, document.Stated, "other", true, "", 0}, // nobody knows
		{"", "saddle 143", "saddle 143", 0, 1, document.Guessed, "saddle", false, "", 0},
		{"water-1", "water 1.5", "Water, 1.5 l", 1500, 134, document.Typical, "water", false, "", 0},
		{"tyre-front-57-622", "tyre 55", "Tyre, front, 55-622", 771, 105, document.Typical, "tyre", false, "", 0},
		{"rotor-front-180", "rotor 180", "Brake rotor, front, 180 mm", 140, 20, document.Typical, "rotor", false, "", 0},
	} {
		e := enter(t, "derailleur", c.entry, c.text)
		p := e.Part
		if p.Name != c.name || p.Mass != c.mass || p.HalfWidth != c.half || p.Basis != c.basis || p.Kind != c.kind || p.Catalogue != c.entry || p.ID != "" {
			t.Errorf("%q as %q is %+v", c.text, c.entry, p)
		}
		if e.Given != c.given || e.Unusual != c.unusual || e.Usual != c.usual {
			t.Errorf("%q as %q: given %v, %q against %v g", c.text, c.entry, e.Given, e.Unusual, e.Usual)
		}
	}
	if g := enter(t, "derailleur", "cassette-11", "cassette 11-46").Part.Gearing; g == nil || g.Teeth[0] != 11 || g.Teeth[10] != 46 || len(g.Teeth) != 11 {
		t.Errorf("cogs of 11 to 46 teeth are %+v", g)
	}
	if p := enter(t, "derailleur", "stem-long", "stem 80").Part; p.Shape.Size[0] != 80 {
		t.Errorf("a stem of 80 mm is %+v", p.Shape)
	}
}

// What a bike has one of is asked about, what it has several of or both of is not.
func TestEnterAsksWhatItReplaces(t *testing.T) {
	d, _ := document.Open([]byte(call(t, "demo")))
	b := d.Build("derailleur")
	for _, c := range []struct {
		entry, text string
		displaces   string // kind, "" for none
	}{
		{"saddle-leather", "saddle", "saddle"},
		{"", "my saddle 400 g", "saddle"},
		{"chain-11", "chain", "chain"},
		{"belt", "belt", "chain"},
		{"rigid-fork-steel", "fork", "fork"},
		{"tyre-rear-57-622", "tyre", "tyre"},
		{"stem-short", "stem", "stem"},
		{"rear-rack-steel", "rack", ""},
		{"bottle-075", "bottle", ""},
		{"tyre-insert-front", "insert", ""},
		{"caliper-adapter-front", "adapter", ""},
		{"bell", "bell", ""},
	} {
		e := enter(t, "derailleur", c.entry, c.text)
		if c.displaces == "" {
			if len(e.Displaces) > 0 || e.InPlace != nil {
				t.Errorf("%s takes the place of %+v", c.entry, e.Displaces)
			}
			continue
		}
		if len(e.Displaces) == 0 || e.Displaces[0].Kind != c.displaces || e.InPlace == nil {
			t.Errorf("%s takes the place of %+v", c.text, e.Displaces)
			continue
		}
		if q := e.InPlace; q.Mass != e.Part.Mass || q.Name != e.Part.Name || q.ID != "" {
			t.Errorf("%s in its place is %+v", c.text, q)
		}
		for i, old := range e.Displaces {
			if i == 0 && old.Station == e.Part.Station && old.Carrier == e.Part.Carrier && (e.InPlace.Offset != old.Offset || e.InPlace.Within != old.Within) {
				t.Errorf("%s stands at %+v, the old one at %+v", c.text, e.InPlace.Offset, old.Offset)
			}
			if b.Part(old.ID) == nil {
				t.Errorf("%s: the build has no %s", c.text, old.ID)
			}
		}
	}
	// A rigid fork takes the place of both parts of a suspension fork.
	if e := enter(t, "derailleur", "rigid-fork-steel", "fork"); len(e.Displaces) != 2 {
		t.Errorf("a rigid fork takes the place of %d parts", len(e.Displaces))
	}
}

// Where a wheel lacks its tyre, that one is found first.
func TestFindWhatTheOtherEndHas(t *testing.T) {
	front := document.Part{Kind: "tyre", Carrier: document.FrontWheel}
	rear := document.Part{Kind: "tyre", Carrier: document.RearWheel}
	wheels := document.Wheels{Front: document.Wheel{BeadSeat: 622, Tyre: 50}, Rear: document.Wheel{BeadSeat: 622, Tyre: 50}}
	for _, c := range []struct {
		has         []document.Part
		typed, want string
	}{
		{nil, "tyre", "tyre-front-50-622"},
		{[]document.Part{front}, "tyre", "tyre-rear-50-622"},
		{[]document.Part{front}, "tyre 60", "tyre-rear-60-622"},
		{[]document.Part{rear}, "tyre", "tyre-front-50-622"},
		{[]document.Part{front, rear}, "tyre", "tyre-front-50-622"},
		{[]document.Part{front}, "front tyre", "tyre-front-50-622"},
	} {
		if f := seek(t, c.typed, "parts", &document.Build{Parts: c.has, Wheels: wheels}); first(f) != c.want {
			t.Errorf("beside %d tyres, %q is %v, want %s first", len(c.has), c.typed, f.Found[:min(3, len(f.Found))], c.want)
		}
	}
}

// Several parts in the search are a list, which goes through its preview.
func TestFindKnowsAList(t *testing.T) {
	for text, want := range map[string]int{"saddle 512 g, post 272 g, two bottles 81 g": 3, "Sattel 512 g\nStütze 272 g": 2, "saddle 512 g": 0, "Tyre, front, 50-622": 0} {
		var f struct{ List int }
		read(t, &f, "find", text, `{"of":"parts","unit":"g","limit":4}`)
		if f.List != want {
			t.Errorf("%q is a list of %d parts, want %d", text, f.List, want)
		}
		var table struct {
			Note  bool
			Parts []document.Part
		}
		if read(t, &table, "readPartsCSV", text, "{}"); want > 0 && (!table.Note || len(table.Parts) != want) {
			t.Errorf("%q is read as %d parts, note: %v", text, len(table.Parts), table.Note)
		}
	}
}
