package frametable_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"steelyard/internal/document"
	"steelyard/internal/frametable"
	"steelyard/internal/newbike"
)

// bike is a build whose figures are none of those in the tables below.
func bike() *document.Build {
	return &newbike.Make(newbike.Choice{Frame: "front", Size: "small"}, nil).Document.Builds[0]
}

// told are the values of a table in a column, by field, and what follows by key.
func told(t *frametable.Table) map[string]float64 {
	m := map[string]float64{}
	for _, f := range t.Figures {
		if f.Given && !strings.HasPrefix(f.Remark.Key, "frametable.ground") {
			m[f.Field] = f.Value
		}
	}
	for _, c := range t.Checks {
		m[c.Key] = c.Printed
	}
	return m
}

// A medium frame as one of our own has it; wheelbase and trail were worked out with
// the fork at full length.
var medium = map[string]float64{
	"frame.stack_mm": 605, "frame.reach_mm": 392, "frame.head_tube_mm": 155, "frame.head_angle_deg": 71, "frame.seat_tube_mm": 490, "frame.seat_angle_deg": 73.5,
	"frame.chainstay_mm": 450, "frame.bb_drop_mm": 72, "fork.length_mm": 420, "fork.offset_mm": 50, "wheelbase": 1073, "trail": 71,
}

// What people copy: lines, tables with and without a header of sizes, from pages,
// from spreadsheets and from texts, in both languages, units and decimal signs.
var tables = []struct {
	name, text string
	size       int // -1: there is but one
	sizes      int
	want       map[string]float64 // nil: the medium frame
}{
	{"lines", "Stack 605\nReach 392\nHead tube 155\nHead angle 71\nSeat tube 490\nSeat angle 73.5\nChainstay 450\nBB drop 72\nFork length 420\nFork offset 50\nWheelbase 1073\nTrail 71\n", -1, 1, nil},
	{"lines with units", "Stack: 605 mm\nReach: 392mm\nHead tube length: 155 mm\nHead tube angle: 71°\nSeat tube length (c-t): 490 mm\nSeat tube angle: 73.5 °\nChainstay length: 450 mm\n" +
		"Bottom bracket drop: 72 mm\nAxle-to-crown: 420 mm\nFork rake: 50 mm\nWheelbase: 1,073 mm\nTrail: 71 mm", -1, 1, nil},
	{"German lines", "Stack\t605\nReach\t392\nSteuerrohrlänge\t155\nLenkwinkel\t71,0°\nSitzrohrlänge\t490\nSitzwinkel\t73,5°\nKettenstrebenlänge\t450\nTretlagerabsenkung\t72\n" +
		"Gabeleinbaulänge\t420\nGabelvorbiegung\t50\nRadstand\t1.073\nNachlauf\t71\n", -1, 1, nil},
	{"centimetres", "Stack (cm) 60,5\nReach (cm) 39,2\nSteuerrohr (cm) 15,5\nLenkwinkel (°) 71\nSitzrohr (cm) 49,0\nSitzrohrwinkel (°) 73,5\nKettenstreben (cm) 45,0\n" +
		"Tretlagerabsenkung (cm) 7,2\nGabellänge (cm) 42,0\nVorbiegung (cm) 5,0\nRadstand (cm) 107,3\nNachlauf (cm) 7,1", -1, 1, nil},
	{"unsaid centimetres", "Stack 60.5\nReach 39.2\nHead tube 15.5\nHead angle 71\nSeat tube 49\nSeat angle 73.5\nChainstay 45\nBB drop 7.2 cm\nA-C 42\nOffset 5.0 cm\nWheelbase 107.3\nTrail 7.1 cm", -1, 1, nil},
	{"sizes", "Geometry\tS\tM\tL\nA\tStack\t575\t605\t638\nB\tReach\t378\t392\t408\nC\tHead tube\t125\t155\t190\nD\tHead angle\t70.5\t71\t71.5\nE\tSeat tube\t440\t490\t540\nF\tSeat angle\t74\t73.5\t73\n" +
		"G\tChainstay\t450\t450\t450\nH\tBB drop\t72\t72\t70\nI\tFork length\t420\t420\t420\nJ\tFork offset\t50\nK\tWheelbase\t1053\t1073\t1095\nL\tTrail\t75\t71\t68\n", 1, 3, nil},
	{"sizes in gaps", "Size          S     M     L\nStack         575   605   638\nReach         378   392   408\nHead tube     125   155   190\nHead angle    70.5° 71°   71.5°\nSeat tube     440   490   540\nSeat angle    74    73.5  73\n" +
		"Chainstay     450   450   450\nBB drop       72    72    70\nFork length   420   420   420\nFork offset   50    50    50\nWheelbase     1053  1073  1095\nTrail         75    71    68", 1, 3, nil},
	{"numbered sizes", "Rahmengröße | 48 | 52 | 56\nStack | 575 | 605 | 638\nReach | 378 | 392 | 408\nSteuerrohr | 125 | 155 | 190\nSteuerrohrwinkel | 70,5 | 71 | 71,5\nSitzrohr | 440 | 490 | 540\nSitzrohrwinkel | 74 | 73,5 | 73\n" +
		"Kettenstrebe | 450 | 450 | 450\nTretlagerabsenkung | 72 | 72 | 70\nEinbaulänge | 420 | 420 | 420\nGabelvorbiegung | 50 | 50 | 50\nRadstand | 1053 | 1073 | 1095\nNachlauf | 75 | 71 | 68", 1, 3, nil},
	{"a row of a table", "Size\tStack\tReach\tHead tube\tHead angle\tSeat tube\tSeat angle\tChainstay\tBB drop\tFork length\tFork offset\tWheelbase\tTrail\nM\t605\t392\t155\t71\t490\t73.5\t450\t72\t420\t50\t1073\t71", -1, 1, nil},
	{"rows of a table", "Größe;Stack;Reach;Steuerrohr;Lenkwinkel;Sitzrohr;Sitzwinkel;Kettenstrebe;Tretlagerabsenkung;Gabellänge;Gabelvorbiegung;Überstandshöhe;Radstand;Nachlauf\n" +
		"S;575;378;125;70,5;440;74;450;72;420;50;740;1053;75\nM;605;392;155;71;490;73,5;450;72;420;50;775;1073;71\nL;638;408;190;71,5;540;73;450;70;420;50;805;1095;68", 1, 3, nil},
	{"a row by single spaces", "Size Stack Reach Head tube Head angle Seat tube Seat angle Chainstay BB drop Fork length Fork offset Wheelbase Trail\nM 605 392 155 71 490 73.5 450 72 420 50 1073 71", -1, 1, nil},
	{"names over numbers", "Stack\n605 mm\nReach\n392 mm\nHead tube\n155 mm\nHead angle\n71°\nSeat tube\n490 mm\nSeat angle\n73.5°\nChainstay\n450 mm\nBB drop\n72 mm\nFork length\n420 mm\nOffset\n50 mm\nWheelbase\n1073 mm\nTrail\n71 mm", -1, 1, nil},
	{"commas", "Size,S,M,L\nStack,575,605,638\nReach,378,392,408\n", 1, 3, map[string]float64{"frame.stack_mm": 605, "frame.reach_mm": 392}},
	{"inches and holes", "\tM\tL\nStack\t24\"\t25.1\"\nReach\t-\t16\"\nHead angle\t71\t71\n", 1, 2, map[string]float64{"frame.stack_mm": 637.54, "frame.reach_mm": 406.4, "frame.head_angle_deg": 71}},
	{"below the axles", "BB drop -35 mm\nStack 620", -1, 1, map[string]float64{"frame.bb_drop_mm": 35, "frame.stack_mm": 620}},
	// A wheel of 622 mm with a tyre of 60 mm: 371 mm over the ground, 311 mm are 60 mm below.
	{"height", "Bottom bracket height 311\nStack 620", -1, 1, map[string]float64{"frame.bb_drop_mm": 60, "frame.stack_mm": 620}},
	{"the effective angle", "Seat tube angle (actual) 70\nSeat tube angle (effective) 75\nHead tube 110", -1, 1, map[string]float64{"frame.seat_angle_deg": 75, "frame.head_tube_mm": 110}},
}

func TestTablesAreRead(t *testing.T) {
	for _, c := range tables {
		b := bike()
		o := frametable.Options{}
		if c.size >= 0 {
			o.Size = &c.size
			if free := frametable.Read(c.text, b, frametable.Options{}); free.Size != -1 || free.Build != nil {
				t.Errorf("%s: the size %d is taken before one is chosen", c.name, free.Size)
			}
		}
		got := frametable.Read(c.text, b, o)
		want := c.want
		if want == nil {
			want = medium
		}
		if len(got.Sizes) != c.sizes {
			t.Errorf("%s: the sizes %q", c.name, got.Sizes)
		}
		values := told(got)
		for id, v := range want {
			if g, ok := values[id]; !ok || math.Abs(g-v) > 1e-9 {
				t.Errorf("%s: %s is %v, want %v", c.name, id, values[id], v)
			}
		}
		if len(values) != len(want) {
			t.Errorf("%s: %v", c.name, values)
		}
		if got.Build == nil || got.Build.Frame.Stack != want["frame.stack_mm"] && want["frame.stack_mm"] != 0 {
			t.Errorf("%s: the build has not the stack", c.name)
		}
		if b.Frame.Stack != 605 || b.Frame.HeadTube != 75 {
			t.Fatalf("%s: the build itself has changed", c.name)
		}
	}
}

func TestSizesAreNamed(t *testing.T) {
	for text, want := range map[string]string{
		"Geometry\tS\tM\tL\nStack\t1\t2\t3":      "[S M L]",
		"S M L\nStack 575 605 638":               "[S M L]",
		"Size S M L\nStack 575 605 638":          "[S M L]",
		"Größe 48 52 56\nStack 575 605 638":      "[48 52 56]",
		"Stack 575 605 638":                      "[  ]",
		"Size Stack Reach\nS 575 378\nM 605 392": "[S M]",
		"Size\tStack\tReach\n52\t575\t378":       "[52]",
	} {
		if got := fmt.Sprint(frametable.Read(text, bike(), frametable.Options{}).Sizes); got != want {
			t.Errorf("%q: %s, want %s", text, got, want)
		}
	}
}

// What is no figure of a frame is told, and why; nothing is dropped in silence.
func TestWhatIsLeft(t *testing.T) {
	text := "Bikes 2026\nStack 605\nStandover height 780\nStack 610\nReach\nHead angle 392 mm\nWeight 12 kg\nChainstay 0\nActual top tube 560"
	got := frametable.Read(text, bike(), frametable.Options{})
	var keys []string
	for _, l := range got.Left {
		keys = append(keys, fmt.Sprintf("%d %s", l.Line, strings.TrimPrefix(l.Why.Key, "frametable.left.")))
		if strings.Contains(l.Why.String(), "{") {
			t.Errorf("line %d: %q", l.Line, l.Why)
		}
	}
	want := "[1 unknown 3 unknown 4 twice 5 number 6 unit 7 unknown 8 far 9 other]"
	if fmt.Sprint(keys) != want {
		t.Errorf("left are %v, want %s", keys, want)
	}
	if len(got.Figures) != 1 {
		t.Errorf("figures %+v", got.Figures)
	}
}

// A table that fits together says so; a wheelbase 30 mm longer and a trail 15 mm
// shorter contradict it, and so does a reach that was mistyped, by what then follows.
// Rounding and the lower bearing are inside the tolerance.
func TestContradictions(t *testing.T) {
	text := tables[0].text
	check := func(text string) map[string]frametable.Check {
		m := map[string]frametable.Check{}
		for _, c := range frametable.Read(text, bike(), frametable.Options{}).Checks {
			m[c.Key] = c
		}
		return m
	}
	for _, c := range check(text) {
		if !c.Agrees || math.Abs(c.Follows-medium[c.Key]) > 6 || c.Plus < 2 || c.Plus > 12 {
			t.Errorf("%s: %+v", c.Key, c)
		}
	}
	far := check(strings.NewReplacer("1073", "1103", "Trail 71", "Trail 56").Replace(text))
	for _, key := range []string{"wheelbase", "trail"} {
		c := far[key]
		if c.Agrees || math.Abs(c.Follows-medium[key]) > 6 {
			t.Errorf("%s: %+v", key, c)
		}
		for _, figure := range []string{fmt.Sprint(c.Printed), fmt.Sprint(math.Round(c.Follows)), fmt.Sprint(c.Plus)} {
			if !strings.Contains(c.Text.String(), figure) {
				t.Errorf("%s: %q does not say %s", key, c.Text, figure)
			}
		}
	}
	if c := check(strings.Replace(text, "Reach 392", "Reach 329", 1))["wheelbase"]; c.Agrees || math.Abs(c.Follows-1010) > 4 {
		t.Errorf("a reach of 329 mm: %+v", c)
	}
	// Without the offset the trail rests on the build's own, and that is said.
	c := check(strings.NewReplacer("Fork offset 50\n", "", "Trail 71", "Trail 20").Replace(text))["trail"]
	if c.Agrees || !strings.Contains(c.Text.String(), "fork offset 46 mm") {
		t.Errorf("no offset: %q", c.Text)
	}
	// 605 / tan 73.5° = 179.2 and 392: a level top tube of 571 mm.
	if c := check(text + "Effective top tube 571")["top_tube"]; !c.Agrees || math.Abs(c.Follows-571.2) > 0.1 {
		t.Errorf("top tube: %+v", c)
	}
}

// The length of a fork that a table leaves out follows from the rest. Ours is 420 mm.
func TestForkThatStandsTheBike(t *testing.T) {
	b := &newbike.Make(newbike.Choice{Frame: "rigid", Size: "large"}, nil).Document.Builds[0]
	text := strings.Replace(tables[0].text, "Fork length 420\n", "", 1)
	got := frametable.Read(text, b, frametable.Options{})
	if f := got.Build.Fork.Length; math.Abs(f-420) > 1 {
		t.Errorf("the fork is %v mm", f)
	}
	if got = frametable.Read(text, b, frametable.Options{Skip: []string{"fork.length_mm", "frame.reach_mm"}}); got.Build.Frame.Reach != 408 || got.Build.Fork.Length != 420 || got.Build.Frame.Stack != 605 {
		t.Errorf("what is to stay does not: %+v", got.Build.Frame)
	}
}

// Nothing that can be pasted breaks it, every line is accounted for, and what is put
// into a build is a number that a bike can have.
func FuzzRead(f *testing.F) {
	for _, c := range tables {
		f.Add(c.text, c.size)
	}
	f.Add("\t\t\n1\n-\nStack", 0)
	f.Add("Size Stack Reach\n1 2 3 4\n5", 3)
	f.Add("Stack 1.2.3,4 999999999999 -5° 3\u00a0mm", 1)
	before := *bike()
	f.Fuzz(func(t *testing.T, text string, size int) {
		b := bike()
		got := frametable.Read(text, b, frametable.Options{Size: &size, Skip: []string{"frame.reach_mm"}})
		if b.Frame != before.Frame || b.Fork != before.Fork {
			t.Fatal("the build itself has changed")
		}
		if got.Size >= len(got.Sizes) || (got.Build == nil) != (got.Size < 0) {
			t.Fatalf("size %d of %d", got.Size, len(got.Sizes))
		}
		if got.Build != nil && got.Build.Frame.Reach != 412 {
			t.Fatal("what was to stay did not")
		}
		for _, f := range got.Figures {
			if !(math.Abs(f.Value) <= 5000) || f.Label.String() == "" || strings.Contains(f.Remark.String(), "{") {
				t.Fatalf("%+v", f)
			}
		}
		for _, c := range got.Checks {
			if !(c.Plus >= 0) || strings.Contains(c.Text.String(), "{") {
				t.Fatalf("%+v", c)
			}
		}
		for _, l := range got.Left {
			if l.Line < 1 || l.Why.IsZero() || strings.HasPrefix(l.Why.String(), "frametable.") {
				t.Fatalf("%+v", l)
			}
		}
	})
}
