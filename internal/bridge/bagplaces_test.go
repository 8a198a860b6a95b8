package bridge_test

import (
	"os"
	"regexp"
	"slices"
	"testing"

	"steelyard/internal/geometry"
)

// The page offers no bag a place on both sides of the bike: its list of those
// must be that of the geometry.
func TestPageKnowsPlacesOnBothSides(t *testing.T) {
	text, err := os.ReadFile("../../web/loadtypes.ts")
	if err != nil {
		t.Fatal(err)
	}
	m := regexp.MustCompile(`bothSides = \[(.*)\]`).FindSubmatch(text)
	if m == nil {
		t.Fatal("the page has no list of places on both sides")
	}
	var got, want []string
	for _, s := range regexp.MustCompile(`"([^"]+)"`).FindAllSubmatch(m[1], -1) {
		got = append(got, string(s[1]))
	}
	bike, problems := geometry.Pose(&demoDocument(t).Builds[0])
	if bike == nil {
		t.Fatal(problems)
	}
	for _, name := range geometry.StationNames {
		if len(bike.Stations[name].Points) > 1 {
			want = append(want, name)
		}
	}
	slices.Sort(got)
	slices.Sort(want)
	if !slices.Equal(got, want) {
		t.Errorf("the page has %v, the geometry %v", got, want)
	}
}
