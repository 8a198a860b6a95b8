package data_test

import (
	"slices"
	"strings"
	"testing"

	"steelyard/internal/parts"
)

func words(s string) []string {
	return strings.FieldsFunc(strings.ToLower(s), func(r rune) bool { return r == ' ' || r == ',' || r == '-' })
}

// whole leaves hyphens in, for a search box that does: "12 speed" is worth having
// beside "12-speed".
func whole(s string) []string {
	return strings.FieldsFunc(strings.ToLower(s), func(r rune) bool { return r == ' ' || r == ',' })
}

func TestSearchWordsAddSomething(t *testing.T) {
	for _, e := range catalogue(t) {
		if len(e.Search) == 0 {
			t.Errorf("%s: no search words", e.ID)
		}
		inName := whole(e.Name)
		for i, s := range e.Search {
			if slices.Contains(e.Search[:i], s) {
				t.Errorf("%s: %q twice", e.ID, s)
			}
			if !slices.ContainsFunc(whole(s), func(w string) bool { return !slices.Contains(inName, w) }) {
				t.Errorf("%s: %q is in the name already", e.ID, s)
			}
		}
	}
}

// What people type, and an entry that must then be on the list: other names,
// sizes as they are said, abbreviations, American spelling.
func TestPeopleFindWhatTheyType(t *testing.T) {
	const shown = 12 // as many as a list under a search box bears
	for query, id := range map[string]string{
		"fender":                "mudguard-rear",
		"29 x 2.35":             "tyre-rear-60-622",
		"29er tire":             "tyre-front-60-622",
		"700c tube":             "tube-front-622",
		"tpu":                   "tube-rear-622-plastic",
		"rear mech 12":          "derailleur-12",
		"front mech":            "front-derailleur",
		"igh wide range":        "gear-hub-wide",
		"internally geared hub": "gear-hub-medium",
		"stepless hub":          "gear-hub-heavy",
		"gear box":              "gearbox-wide",
		"bottom bracket gear":   "gearbox-medium",
		"belt drive":            "belt",
		"12 speed cassette":     "cassette-12",
		"chainset":              "cranks-aluminium",
		"crankset carbon":       "cranks-carbon",
		"bb":                    "bottom-bracket-threaded",
		"thru axle":             "rear-through-axle",
		"qr":                    "front-quick-release",
		"aluminum frame":        "touring-frame-aluminium",
		"fully carbon":          "full-suspension-main-frame-carbon",
		"rear triangle":         "swingarm-aluminium",
		"lowers":                "fork-150-lower",
		"stanchions":            "fork-120-upper",
		"handlebars drop":       "bar-drop-aluminium",
		"grips clamp":           "grip-clamped",
		"dropper":               "seatpost-dropper",
		"seat post":             "seatpost-suspension",
		"generator hub":         "dynamo-hub",
		"headlight":             "front-light-dynamo",
		"taillight":             "rear-light-dynamo",
		"power bank":            "battery-10",
		"lowrider":              "front-rack-low-steel",
		"fork cage":             "cargo-cage",
		"kickstand":             "stand-side",
		"seat pack":             "saddle-bag-large",
		"bar bag":               "handlebar-bag",
		"bidon":                 "bottle-075",
		"tire levers":           "tyre-levers",
		"disk rotor 180":        "rotor-rear-180",
		"calliper":              "caliper-rear-four-piston",
		"pressfit":              "bottom-bracket-press-fit",
		"shock pump":            "pump-shock",
		"gasoline":              "stove-fuel",
		"kick stand double":     "stand-two-leg",
		"trigger":               "shifter-right",
		"twist grip hub":        "twist-shifter-gear-hub",
		"carbon fiber rim 29":   "rim-rear-622-carbon",
	} {
		if parts.EntryByID(id) == nil {
			t.Errorf("there is no entry %q", id)
			continue
		}
		if got := ids(found(query, shown)); !slices.Contains(got, id) {
			t.Errorf("%q does not find %s, but %v", query, id, got)
		}
	}
}

func ids(entries []parts.Entry) []string {
	var ids []string
	for _, e := range entries {
		ids = append(ids, e.ID)
	}
	return ids
}

func TestEveryEntryIsFirstByItsOwnName(t *testing.T) {
	for _, e := range catalogue(t) {
		if got := ids(found(e.Name, 1)); !slices.Contains(got, e.ID) {
			t.Errorf("%q finds %v, not %s", e.Name, got, e.ID)
		}
	}
}

// Whoever writes American finds what is written British here.
func TestBothSpellingsFind(t *testing.T) {
	all := catalogue(t)
	for _, pair := range [][2]string{
		{"aluminium", "aluminum"}, {"tyre", "tire"}, {"mudguard", "fender"}, {"litre", "liter"}, {"centre", "center"},
	} {
		got := ids(found(pair[1], 0))
		seen := 0
		for i := range all {
			e := &all[i]
			if !slices.Contains(words(e.Name+" "+strings.Join(e.Search, " ")), pair[0]) {
				continue
			}
			seen++
			if !slices.Contains(got, e.ID) {
				t.Errorf("%s has %q, but %q does not find it", e.ID, pair[0], pair[1])
			}
		}
		if seen == 0 {
			t.Errorf("no entry has %q", pair[0])
		}
	}
}

// found are the entries that a query finds.
func found(query string, limit int) (list []parts.Entry) {
	for _, h := range parts.NewFinder(nil).Read("", query, "g", nil, limit).Hits {
		list = append(list, parts.Catalogue()[h.At])
	}
	return list
}
