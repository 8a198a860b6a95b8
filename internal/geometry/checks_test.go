package geometry

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"steelyard/internal/document"
)

// leaf is one number of a build, found by its key in the document.
type leaf struct {
	field string
	index int // of a coordinate of a point
	value reflect.Value
}

// leaves finds every number that a bike could be posed from, by reflection, so
// that a figure added to the document is not forgotten here.
func leaves(b *document.Build) []leaf {
	var found []leaf
	var walk func(prefix string, v reflect.Value)
	walk = func(prefix string, v reflect.Value) {
		for i := range v.NumField() {
			key, _, _ := strings.Cut(v.Type().Field(i).Tag.Get("json"), ",")
			f := v.Field(i)
			switch f.Kind() {
			case reflect.Struct:
				walk(prefix+key+".", f)
			case reflect.Float64:
				found = append(found, leaf{prefix + key, 0, f})
			case reflect.Array:
				for j := range f.Len() {
					found = append(found, leaf{prefix + key, j, f.Index(j)})
				}
			}
		}
	}
	walk("", reflect.ValueOf(b).Elem())
	return found
}

func TestEveryFigureIsChecked(t *testing.T) {
	var b document.Build
	all := leaves(&b)
	if len(all) != len(figures) {
		t.Errorf("the document has %d figures, %d are checked", len(all), len(figures))
	}
	for _, l := range all {
		l.value.SetFloat(1)
		var read []string
		for _, f := range figures {
			if f.of(&b) == 1 {
				read = append(read, f.field)
			}
		}
		if len(read) != 1 || read[0] != l.field {
			t.Errorf("%s is checked as %v", l.field, read)
		}
		l.value.SetFloat(0)
	}
}

// No figure may be absurd, and the error is at its field.
func TestAbsurdFigures(t *testing.T) {
	for i := range leaves(&document.Build{}) {
		for _, v := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 5001, -5001, math.MaxFloat64, -math.MaxFloat64} {
			b := load(t, "travel-bike.json")
			l := leaves(b)[i]
			l.value.SetFloat(v)
			bike, problems := Pose(b)
			if bike != nil {
				t.Errorf("%s = %v: posed", l.field, v)
			}
			if !has(problems, document.SeverityError, l.field) {
				t.Errorf("%s = %v: no error at the field: %v", l.field, v, problems)
			}
			for _, p := range problems {
				if p.Build != "travel" || p.Message.String() == "" {
					t.Errorf("%s = %v: %+v", l.field, v, p)
				}
			}
		}
	}
}

func has(problems []document.Problem, severity, field string) bool {
	for _, p := range problems {
		if p.Severity == severity && p.Field == field {
			return true
		}
	}
	return false
}

func TestEmptyBuild(t *testing.T) {
	bike, problems := Pose(&document.Build{ID: "empty"})
	if bike != nil {
		t.Error("posed")
	}
	for _, field := range []string{"frame.stack_mm", "frame.reach_mm", "frame.head_angle_deg", "fork.length_mm", "wheels.front.bead_seat_mm", "saddle.height_mm"} {
		if !has(problems, document.SeverityError, field) {
			t.Errorf("no error at %s", field)
		}
	}
}

// Figures that contradict each other or are odd: what is told, at which field,
// and what the sentence must name.
func TestContradictions(t *testing.T) {
	for _, c := range []struct {
		name     string
		from     string
		change   func(*document.Build)
		severity string
		field    string
		names    []string
	}{
		{"chainstay shorter than drop", "touring-bike.json", func(b *document.Build) { b.Frame.Chainstay, b.Frame.BBDrop = 80, 90 },
			"error", "frame.chainstay_mm", []string{"frame.chainstay_mm", "frame.bb_drop_mm", "80 mm", "90 mm"}},
		{"chainstay shorter than a negative drop", "touring-bike.json", func(b *document.Build) { b.Frame.Chainstay, b.Frame.BBDrop = 80, -90 },
			"error", "frame.chainstay_mm", []string{"frame.chainstay_mm", "frame.bb_drop_mm"}},
		{"fork travel beyond its length", "travel-bike.json", func(b *document.Build) { b.Fork.Travel = 556 },
			"error", "fork.travel_mm", []string{"fork.travel_mm", "fork.length_mm"}},
		{"fork sag beyond travel", "travel-bike.json", func(b *document.Build) { b.Fork.Sag = 151 },
			"error", "fork.sag_mm", []string{"fork.sag_mm", "fork.travel_mm", "151 mm", "150 mm"}},
		{"rear sag beyond travel", "travel-bike.json", func(b *document.Build) { b.Rear.Sag = 141 },
			"error", "rear.sag_mm", []string{"rear.sag_mm", "rear.travel_mm"}},
		{"sag of a rigid fork", "touring-bike.json", func(b *document.Build) { b.Fork.Sag = 10 },
			"error", "fork.sag_mm", []string{"fork.sag_mm", "fork.travel_mm", "must be 0"}},
		{"sag of a rigid rear", "touring-bike.json", func(b *document.Build) { b.Rear.Sag = 10 },
			"error", "rear.sag_mm", []string{"rear.sag_mm", "rear.travel_mm", "must be 0"}},
		{"head angle too slack", "touring-bike.json", func(b *document.Build) { b.Frame.HeadAngle = 44 },
			"error", "frame.head_angle_deg", []string{"between 45 and 85"}},
		{"head angle too steep", "touring-bike.json", func(b *document.Build) { b.Frame.HeadAngle = 86 },
			"error", "frame.head_angle_deg", []string{"between 45 and 85"}},
		{"pivot on the axle", "travel-bike.json", func(b *document.Build) { b.Rear.PivotFwd, b.Rear.PivotUp = -443.6, 35 },
			"error", "rear.pivot_forward_mm", []string{"rear.pivot_forward_mm", "rear.pivot_up_mm", "frame.chainstay_mm", "rear.travel_mm"}},
		{"pivot behind the axle", "travel-bike.json", func(b *document.Build) { b.Rear.PivotFwd = -600 },
			"error", "rear.pivot_forward_mm", []string{"rear.pivot_forward_mm", "frame.chainstay_mm", "156 mm behind"}},
		{"travel beyond the swingarm", "travel-bike.json", func(b *document.Build) { b.Rear.PivotFwd, b.Rear.PivotUp = -380, 35 },
			"error", "rear.travel_mm", []string{"rear.travel_mm", "rear.pivot_forward_mm", "64 mm long", "at most 63 mm"}},
		{"bottom bracket under the ground", "touring-bike.json", func(b *document.Build) { b.Frame.BBDrop = 360 },
			"error", "frame.bb_drop_mm", []string{"frame.bb_drop_mm", "wheels.rear.bead_seat_mm", "351 mm"}},
		{"wheels that overlap", "touring-bike.json", func(b *document.Build) { b.Frame.Reach, b.Frame.Chainstay = 10, 300 },
			"error", "frame.reach_mm", []string{"frame.reach_mm", "frame.chainstay_mm", "702 mm"}},
		{"fork far too short for the stack", "travel-bike.json", func(b *document.Build) { b.Fork.Length = 440 },
			"error", "fork.length_mm", []string{"fork.length_mm", "frame.stack_mm", "106 mm above", "556 mm", "527 mm"}},
		{"fork far too long for the stack", "travel-bike.json", func(b *document.Build) { b.Frame.Stack = 533 },
			"error", "fork.length_mm", []string{"fork.length_mm", "frame.stack_mm", "100 mm below"}},
		{"fork rather short for the stack", "travel-bike.json", func(b *document.Build) { b.Fork.Length = 520 },
			"warning", "fork.length_mm", []string{"fork.length_mm", "frame.stack_mm", "33 mm above"}},
		{"no room for the rear tyre", "touring-bike.json", func(b *document.Build) { b.Frame.Chainstay = 365 },
			"warning", "frame.chainstay_mm", []string{"frame.chainstay_mm", "wheels.rear.tyre_mm", "351 mm"}},
		{"the front tyre in the crown", "travel-bike.json", func(b *document.Build) { b.Fork.Travel = 200 },
			"warning", "fork.travel_mm", []string{"fork.length_mm", "fork.travel_mm", "wheels.front.tyre_mm", "372 mm"}},
		{"the front tyre in the down tube", "touring-bike.json", func(b *document.Build) { b.Fork.Offset = -60; b.Frame.Stack -= 34 },
			"warning", "frame.reach_mm", []string{"frame.reach_mm", "wheels.front.tyre_mm", "351 mm"}},
		{"a saddle in the seat tube", "touring-bike.json", func(b *document.Build) { b.Saddle.Height = 560 },
			"warning", "saddle.height_mm", []string{"saddle.height_mm", "frame.seat_tube_mm"}},
		{"pedals on the ground", "touring-bike.json", func(b *document.Build) { b.Cranks.Length = 250 },
			"warning", "cranks.length_mm", []string{"cranks.length_mm", "frame.bb_drop_mm", "281 mm"}},
		{"no shock", "travel-bike.json", func(b *document.Build) { b.Rear.ShockTo = b.Rear.ShockFrom },
			"warning", "rear.shock_swing_mm", []string{"rear.shock_frame_mm", "rear.shock_swing_mm"}},
		{"a shock that is pulled", "travel-bike.json", func(b *document.Build) { b.Rear.ShockTo[0], b.Rear.ShockFrom[0] = 200, 10 },
			"warning", "rear.shock_swing_mm", []string{"longer", "rear.shock_frame_mm"}},
		{"a bead seat that is not one", "touring-bike.json", func(b *document.Build) { b.Wheels.Front.BeadSeat = 620 },
			"warning", "wheels.front.bead_seat_mm", []string{"620 mm", "ISO 5775", "622 mm"}},
		{"an odd stem", "touring-bike.json", func(b *document.Build) { b.Cockpit.Stem = 300 },
			"warning", "cockpit.stem_mm", []string{"300 mm", "between 0 and 160"}},
		{"wheels that meet in their sag", "travel-bike.json", func(b *document.Build) {
			b.Frame.Chainstay, b.Frame.Reach, b.Rear.PivotFwd, b.Rear.PivotUp, b.Fork.Sag = 380, 140, 20, -300, 150
		}, "error", "fork.sag_mm", []string{"fork.sag_mm", "rear.sag_mm"}},
		{"a frame that sags out of all likeness", "travel-bike.json", func(b *document.Build) {
			b.Rear.Travel, b.Rear.Sag, b.Fork.Sag = 420, 420, 0
		}, "error", "fork.sag_mm", []string{"fork.sag_mm", "rear.sag_mm", "degrees"}},
		{"a bottom bracket that sags to the ground", "travel-bike.json", func(b *document.Build) {
			b.Rear.Travel, b.Rear.Sag, b.Fork.Travel, b.Fork.Sag = 400, 400, 420, 400
		}, "error", "frame.bb_drop_mm", []string{"frame.bb_drop_mm", "rear.sag_mm"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			b := load(t, c.from)
			c.change(b)
			bike, problems := Pose(b)
			var told *document.Problem
			for i, p := range problems {
				if p.Field == c.field && p.Severity == c.severity {
					told = &problems[i]
				}
				if c.severity == "warning" && p.Severity == "error" {
					t.Errorf("an error besides: %+v", p)
				}
			}
			if told == nil {
				t.Fatalf("no %s at %s; told: %v", c.severity, c.field, problems)
			}
			if (bike == nil) != (c.severity == "error") {
				t.Errorf("posed: %v", bike != nil)
			}
			if told.Build != b.ID {
				t.Errorf("build is %q", told.Build)
			}
			for _, n := range c.names {
				if !strings.Contains(told.Message.String(), n) {
					t.Errorf("the message does not name %q: %s", n, told.Message.String())
				}
			}
			if m := told.Message.String(); !strings.HasSuffix(m, ".") || m[0] < 'A' || m[0] > 'Z' {
				t.Errorf("not a sentence: %s", m)
			}
		})
	}
}

// The advice of the message that fork and stack disagree is good: taken, the
// figures agree.
func TestAdviceOnForkAndStack(t *testing.T) {
	b := load(t, "touring-bike.json")
	b.Fork.Length = 440
	_, problems := Pose(b)
	if !has(problems, document.SeverityWarning, "fork.length_mm") || !strings.Contains(problems[0].Message.String(), "near 400 mm") || !strings.Contains(problems[0].Message.String(), "near 639 mm") {
		t.Fatalf("told: %v", problems)
	}
	b.Frame.Stack = 639
	if _, problems := Pose(b); len(problems) != 0 {
		t.Errorf("after taking the advice: %v", problems)
	}
}
