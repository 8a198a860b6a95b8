package rooms_test

import (
	"encoding/xml"
	"errors"
	"io"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"steelyard/internal/document"
	"steelyard/internal/newbike"
	"steelyard/internal/report"
	"steelyard/internal/rooms"
)

// fitted are the gaps of a rigid bike of ours with bags hung on it.
func fitted(t *testing.T, frame string, bags ...document.Bag) []rooms.Gap {
	t.Helper()
	d := newbike.Make(newbike.Choice{Frame: frame}, nil).Document
	for i := range bags {
		bags[i].ID, bags[i].Mass, bags[i].HalfWidth, bags[i].Basis = strconv.Itoa(i), 300, 10, document.Weighed
		if bags[i].Carrier == "" {
			bags[i].Carrier = document.MainFrame
		}
	}
	d.Loads = []document.Load{{ID: "l1", Name: "Load", Bags: bags}}
	d.Show.Loads, d.Show.State = []string{"l1"}, document.Loaded
	return rooms.ClearancesOf(evaluated(t, d)).Sides[0].Gaps
}

func gapOf(gaps []rooms.Gap, key, name string) *rooms.Gap {
	for i := range gaps {
		if gaps[i].Key == key && gaps[i].Name == name {
			return &gaps[i]
		}
	}
	return nil
}

// A frame bag that is longer, or higher, than the main triangle is told, by its name
// and the triangle's; what is left of one that fits is the difference of the two.
func TestFrameBagThatFitsAndOneTooBig(t *testing.T) {
	bag := func(long, high float64) document.Bag {
		return document.Bag{Name: "Cloth bag", Station: "frame-bag", Size: document.Vec3{long, 60, high}}
	}
	small := gapOf(fitted(t, "rigid", bag(420, 200)), "long", "Cloth bag")
	if small == nil || small.Verdict != report.More || small.Text != "" || small.LeastPlus < 5 || small.LeastPlus > 25 {
		t.Fatalf("a small bag: %+v", small)
	}
	if less := gapOf(fitted(t, "rigid", bag(430, 200)), "long", "Cloth bag"); less == nil || less.Least != small.Least-10 {
		t.Errorf("10 mm longer: %+v, before %+v", less, small)
	}
	for key, big := range map[string]document.Bag{"long": bag(900, 200), "high": bag(400, 800)} {
		g := gapOf(fitted(t, "rigid", big), key, "Cloth bag")
		if g == nil || g.Verdict != report.Less || !strings.Contains(g.Text, "Cloth bag") || !strings.Contains(g.Text, "main triangle") {
			t.Errorf("too %s: %+v", key, g)
		}
	}
}

// A bottle lies in line with its tube: on the down tube of a large enough frame there
// is room for one of 200 mm, as it would not be if it stood upright, and one of 700 mm
// runs into the seat tube or the head tube. Two bottles where there is room for one
// are told by both names.
func TestBottlesInTheFrame(t *testing.T) {
	bottle := func(name, station string, long float64) document.Bag {
		return document.Bag{Name: name, Station: station, Size: document.Vec3{75, 75, long}}
	}
	if g := gapOf(fitted(t, "rigid", bottle("Flask", "bottle-down-tube", 200)), "tube", "Flask"); g != nil && g.Verdict == report.Less {
		t.Errorf("a bottle on the down tube: %+v", g)
	}
	if g := gapOf(fitted(t, "rigid", bottle("Flask", "bottle-down-tube", 700)), "tube", "Flask"); g == nil || g.Verdict != report.Less || !strings.Contains(g.Text, "tube") {
		t.Errorf("a bottle of 700 mm: %+v", g)
	}
	// Longer along the tube: what is left to a tube square to it shrinks by half of it.
	short, long := fitted(t, "rigid", bottle("Flask", "bottle-seat-tube", 300)), fitted(t, "rigid", bottle("Flask", "bottle-seat-tube", 500))
	a, b := gapOf(short, "tube", "Flask"), gapOf(long, "tube", "Flask")
	if a == nil || b == nil || b.Least > a.Least-50 {
		t.Errorf("300 mm leave %+v, 500 mm %+v", a, b)
	}
	both := fitted(t, "rigid", bottle("Flask", "bottle-seat-tube", 400), bottle("Jar", "bottle-down-tube", 400))
	if g := gapOf(both, "beside", "Flask"); g == nil || g.Verdict != report.Less || !strings.Contains(g.Text, "Jar") {
		t.Errorf("two bottles: %+v", both)
	}
}

// A roll at the bar has less room to the front tyre where the fork moves, and one
// that is too thick touches bar and tyre.
func TestRollBetweenBarAndTyre(t *testing.T) {
	roll := func(thick float64) document.Bag {
		return document.Bag{Name: "Roll", Station: "handlebar-bag", Carrier: document.ForkUpper, Size: document.Vec3{thick, 450, thick}}
	}
	big := fitted(t, "full", roll(600))
	for _, key := range []string{"front", "bar"} {
		if g := gapOf(big, key, "Roll"); g == nil || g.Verdict != report.Less || !strings.Contains(g.Text, "Roll") {
			t.Errorf("%s: %+v", key, g)
		}
	}
	if g := gapOf(big, "front", "Roll"); g != nil && g.Least > g.Pose-50 {
		t.Errorf("the fork moves, and it leaves %+v", g)
	}
	if g := gapOf(fitted(t, "rigid", roll(600)), "front", "Roll"); g == nil || g.Least != g.Pose {
		t.Errorf("a rigid fork: %+v", g)
	}
}

// The outline is drawn a millimetre to a millimetre, with a line of 100 mm, and says
// its ± in words; a name cannot break it.
func TestFrameBagOutline(t *testing.T) {
	d := newbike.Make(newbike.Choice{Frame: "rigid"}, nil).Document
	d.Builds[0].Name = "<script>&\x01\"bike"
	text, err := rooms.FrameBagSVG(&d.Builds[0], nil)
	if err != nil {
		t.Fatal(err)
	}
	for dec := xml.NewDecoder(strings.NewReader(text)); ; {
		tok, err := dec.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.Fatal(err)
		}
		if e, ok := tok.(xml.StartElement); ok && e.Name.Local == "script" {
			t.Error("a name became an element")
		}
	}
	size := regexp.MustCompile(`width="([\d.]+)mm" height="([\d.]+)mm" viewBox="0 0 ([\d.]+) ([\d.]+)"`).FindStringSubmatch(text)
	if size == nil || size[1] != size[3] || size[2] != size[4] {
		t.Fatalf("it is not 1:1: %v", size)
	}
	if !strings.Contains(text, "h100M") || !strings.Contains(text, "within ±8 mm") || !strings.Contains(text, "100 mm long") || !strings.Contains(text, "Down tube") {
		t.Errorf("it does not say all of it:\n%s", text)
	}
	var xs []float64
	for _, p := range regexp.MustCompile(`([\d.]+),([\d.]+) `).FindAllStringSubmatch(text[strings.Index(text, "points="):], -1) {
		v, _ := strconv.ParseFloat(p[1], 64)
		xs = append(xs, v)
	}
	low, high := math.Inf(1), math.Inf(-1)
	for _, v := range xs {
		low, high = min(low, v), max(high, v)
	}
	bag := rooms.ClearancesOf(evaluated(t, d)).Sides[0].Bag
	if len(xs) != 4 || bag == nil || math.Abs(high-low-bag.Long) > 1 || bag.Long < 400 || bag.Long > 650 {
		t.Errorf("%d corners, %.1f mm long; told are %+v", len(xs), high-low, bag)
	}
	d.Builds[0].Frame.Stack = -1
	if text, err = rooms.FrameBagSVG(&d.Builds[0], nil); err == nil {
		t.Errorf("a frame that cannot be: %.80s", text)
	}
}
