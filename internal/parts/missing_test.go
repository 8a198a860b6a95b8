package parts_test

import (
	"slices"
	"testing"

	"steelyard/internal/document"
	"steelyard/internal/parts"
)

// fit returns a rigid build of entries of the catalogue.
func fit(ids ...string) *document.Build {
	b := &document.Build{ID: "b"}
	for _, id := range ids {
		b.Parts = append(b.Parts, parts.EntryByID(id).Part(id))
	}
	return b
}

// whole is a bike with nothing missing.
var whole = []string{
	"touring-frame-steel", "rigid-fork-steel", "headset-straight",
	"rim-front-622-touring", "hub-front", "spokes-front-622", "tyre-front-50-622", "tube-front-622",
	"rim-rear-622-touring", "hub-rear-cassette", "spokes-rear-622", "tyre-rear-50-622", "tube-rear-622",
	"cranks-aluminium", "bottom-bracket-threaded", "chainring-single", "cassette-12", "chain-12", "derailleur-12",
	"shifter-right", "cable-rear", "pedal-flat-aluminium",
	"brake-lever-hydraulic", "caliper-front-two-piston", "caliper-rear-two-piston", "hose-front", "hose-rear",
	"rotor-front-180", "rotor-rear-160", "bar-flat-aluminium", "stem-long", "grip-clamped", "saddle-leather", "seatpost-aluminium",
}

func TestWholeBikeMissesNothing(t *testing.T) {
	if got := parts.Missing(fit(whole...)); len(got) > 0 {
		t.Errorf("%v", got)
	}
}

// Each part that is taken off a whole bike is missed, and nothing else with it.
func TestWhatIsTakenOffIsMissed(t *testing.T) {
	for id, want := range map[string][]parts.Role{
		"touring-frame-steel": {"frame"}, "rigid-fork-steel": {"fork"}, "headset-straight": {"headset"},
		"tyre-front-50-622": {"front-tyre"}, "tyre-rear-50-622": {"rear-tyre"}, "hub-front": {"front-hub"}, "spokes-rear-622": {"rear-spokes"},
		"rim-front-622-touring": {"front-wheel"}, "cranks-aluminium": {"crank"}, "bottom-bracket-threaded": {"bottom-bracket"},
		"chainring-single": {"chainring"}, "cassette-12": {"cog"}, "chain-12": {"chain"}, "shifter-right": {"shifter"}, "cable-rear": {"gear-cable"},
		"pedal-flat-aluminium": {"pedals"}, "brake-lever-hydraulic": {"brake-lever"}, "caliper-front-two-piston": {"front-brake"},
		"hose-rear": {"rear-brake-hose"}, "rotor-front-180": {"front-rotor"}, "bar-flat-aluminium": {"bar"}, "stem-long": {"stem"},
		"grip-clamped": {"grips"}, "saddle-leather": {"saddle"}, "seatpost-aluminium": {"seatpost"},
	} {
		b := fit(slices.DeleteFunc(slices.Clone(whole), func(s string) bool { return s == id })...)
		if got := parts.Missing(b); !slices.Equal(got, want) {
			t.Errorf("without %s: %v, want %v", id, got, want)
		}
		for _, r := range want {
			b.Without = append(b.Without, string(r))
		}
		if got := parts.Missing(b); len(got) > 0 {
			t.Errorf("%v is said to be left off, and yet missed", got)
		}
	}
}

func TestGearboxWantsNoBottomBracketAndButtonsNoCable(t *testing.T) {
	box := slices.DeleteFunc(slices.Clone(whole), func(s string) bool {
		return s == "bottom-bracket-threaded" || s == "derailleur-12" || s == "cassette-12" || s == "chain-12"
	})
	box = append(box, "gearbox-wide", "belt", "belt-cog-single")
	if got := parts.Missing(fit(box...)); len(got) > 0 {
		t.Errorf("gearbox: %v", got)
	}
	buttons := slices.DeleteFunc(slices.Clone(whole), func(s string) bool {
		return s == "cable-rear" || s == "shifter-right" || s == "derailleur-12"
	})
	buttons = append(buttons, "derailleur-electronic", "shifter-electronic")
	if got := parts.Missing(fit(buttons...)); len(got) > 0 {
		t.Errorf("buttons: %v", got)
	}
}

func TestEmptyBuildMissesWhatEveryBikeHas(t *testing.T) {
	got := parts.Missing(&document.Build{})
	for _, r := range []parts.Role{"frame", "chain", "rotor"} {
		if want := r == "frame"; slices.Contains(got, r) != want {
			t.Errorf("%s missed: %v, want %v (all: %v)", r, !want, want, got)
		}
	}
}
