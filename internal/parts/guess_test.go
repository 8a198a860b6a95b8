package parts

import "testing"

func TestGuessKind(t *testing.T) {
	for name, want := range map[string]string{
		"Rear hub":               "hub",
		"Front tire 29x2.4":      "tyre",
		"tubeless tyre, rear":    "tyre",
		"Chain tool":             "tool",
		"Chain":                  "chain",
		"Chainring 32t":          "chainring",
		"Seat clamp":             "seat-clamp",
		"SADDLE":                 "saddle",
		"Dropper post":           "seatpost",
		"inner tube":             "tube",
		"spare tube":             "spare",
		"Brake levers (pair)":    "brake-lever",
		"handlebar 780mm":        "bar",
		"handlebar bag":          "bag",
		"Bottle cage":            "cage",
		"Water 1.5 l":            "water",
		"Front derailleur":       "front-derailleur",
		"rear derailleur":        "derailleur",
		"gear hub, 14 speed":     "gear-hub",
		"Crank gearbox":          "crank-gearbox",
		"cranks 170":             "crank",
		"Suspension fork 150":    "fork",
		"dynamo hub":             "dynamo",
		"pannier rear left":      "pannier",
		"Front rack":             "rack",
		"bar tape":               "grip",
		"thru axle rear":         "axle",
		"":                       "",
		"xyz":                    "",
		"<b>650</b> 12,5 ---":    "",
		"aluminium, black, 2024": "",
	} {
		if got := GuessKind(name); got != want {
			t.Errorf("%q is taken for %q, want %q", name, got, want)
		}
	}
}

func TestGuessEntry(t *testing.T) {
	for _, c := range []struct{ kind, name, station string }{
		{"tyre", "Tyre rear 60-622", "rear-axle"},
		{"tyre", "front tire", "front-axle"},
		{"rotor", "disc rotor 180 rear", "rear-rotor"},
		{"light", "taillight, dynamo, rear", "rear-light"},
	} {
		e := GuessEntry(c.kind, c.name)
		if e == nil || e.Kind != c.kind || e.Station != c.station {
			t.Errorf("%s: %+v", c.name, e)
		}
	}
	if GuessEntry("", "x") != nil || GuessEntry("warp-drive", "rim") != nil {
		t.Error("an unknown kind has an entry")
	}
}

// Nearly every name of the catalogue is guessed to be of its own kind.
func TestGuessKindOfTheCatalogue(t *testing.T) {
	missed := 0
	for _, e := range Catalogue() {
		if got := GuessKind(e.Name); got != e.Kind {
			missed++
			t.Logf("%s: %q, is %q", e.Name, got, e.Kind)
		}
	}
	if n := len(Catalogue()); missed*10 > n {
		t.Errorf("%d of %d are guessed wrong", missed, n)
	}
}
