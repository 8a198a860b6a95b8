package document_test

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"steelyard/internal/document"
)

func gearingPart(g *document.Gearing) document.Part {
	return document.Part{ID: "p", Name: "Part", Kind: "cassette", Quantity: 1, Mass: 1, HalfWidth: 1, Basis: document.Typical,
		Station: "cassette", Carrier: document.RearWheel, Shape: document.Shape{Form: document.FormPoint}, Gearing: g}
}

func TestGearingIsChecked(t *testing.T) {
	many := func(n int) []int { return slices.Repeat([]int{20}, n) }
	for _, c := range []struct {
		field, said string // of the first problem; "" when there is none
		g           document.Gearing
	}{
		{"", "", document.Gearing{Teeth: []int{11, 32}}},
		{"", "", document.Gearing{Ratios: []float64{0.5, 1, 2}, Meshes: []int{2, 0, 2}}},
		{"", "", document.Gearing{Stages: []document.Stage{{Driving: []int{19, 41}, Driven: []int{41, 19}, Combine: document.InTurn, By: document.ByChain}}}},
		{"gearing", "without teeth", document.Gearing{}},
		{"gearing", "more than one", document.Gearing{Teeth: []int{20}, Ratios: []float64{1}}},
		{"gearing.teeth.1", "is 0;", document.Gearing{Teeth: []int{20, 0}}},
		{"gearing.teeth.0", "is -11;", document.Gearing{Teeth: []int{-11}}},
		{"gearing.teeth.0", "is 301;", document.Gearing{Teeth: []int{301}}},
		{"gearing.teeth", "10000 rings or cogs", document.Gearing{Teeth: many(10000)}},
		{"gearing.ratios.0", "is 0;", document.Gearing{Ratios: []float64{0, 1}}},
		{"gearing.ratios.1", "is -1;", document.Gearing{Ratios: []float64{1, -1}}},
		{"gearing.ratios.0", "is NaN;", document.Gearing{Ratios: []float64{math.NaN()}}},
		{"gearing.ratios", "65 ratios", document.Gearing{Ratios: slices.Repeat([]float64{1}, 65)}},
		{"gearing.meshes", "1 numbers", document.Gearing{Ratios: []float64{1, 2}, Meshes: []int{2}}},
		{"gearing.meshes.0", "is -1;", document.Gearing{Ratios: []float64{1}, Meshes: []int{-1}}},
		{"gearing.stages.0.driving", "leads nowhere", document.Gearing{Stages: []document.Stage{{Driven: []int{20}}}}},
		{"gearing.stages.1.driven", "leads nowhere", document.Gearing{Stages: []document.Stage{{Driving: []int{20}, Driven: []int{20}}, {Driving: []int{20}}}}},
		{"gearing.stages.0.driven.0", "is 0;", document.Gearing{Stages: []document.Stage{{Driving: []int{20}, Driven: []int{0}}}}},
		{"gearing.stages.0.driven", "10000 rings", document.Gearing{Stages: []document.Stage{{Driving: []int{20}, Driven: many(10000)}}}},
		{"gearing.stages.0.driven", "has 2 wheels and the driven side 1", document.Gearing{Stages: []document.Stage{{Driving: []int{20, 21}, Driven: []int{20}, Combine: document.ListedPairs}}}},
		{"gearing.stages.0.combine", `"all"`, document.Gearing{Stages: []document.Stage{{Driving: []int{20}, Driven: []int{20}, Combine: "all"}}}},
		{"gearing.stages.0.by", `"rope"`, document.Gearing{Stages: []document.Stage{{Driving: []int{20}, Driven: []int{20}, By: "rope"}}}},
		{"gearing.stages", "5 stages", document.Gearing{Stages: make([]document.Stage, 5)}},
		{"gearing.stages", "100 gears", document.Gearing{Stages: []document.Stage{{Driving: many(10), Driven: many(10)}}}},
	} {
		p := gearingPart(&c.g)
		of, alone := p.Check(), c.g.Check()
		if c.field == "" {
			if len(of)+len(alone) > 0 {
				t.Errorf("%+v: %v", c.g, of)
			}
			continue
		}
		if len(of) == 0 || len(alone) != len(of) {
			t.Errorf("%+v: %v and alone %v", c.g, of, alone)
			continue
		}
		if of[0].Field != c.field || !strings.Contains(of[0].Message.String(), c.said) {
			t.Errorf("%s: %s, want %s of %s", of[0].Field, of[0].Message, c.said, c.field)
		}
		// A part whose teeth are wrong still weighs what it weighs.
		if of[0].Severity != document.SeverityWarning || alone[0].Severity != document.SeverityError {
			t.Errorf("%s is %s in a document and %s alone", c.field, of[0].Severity, alone[0].Severity)
		}
		if len(of) > 40 {
			t.Errorf("%s: %d problems", c.field, len(of))
		}
	}
}

// A copy of a build has gears of its own, and a part stays on one line.
func TestGearingIsWrittenAndCopied(t *testing.T) {
	g := &document.Gearing{Stages: []document.Stage{{Driving: []int{19, 41}, Driven: []int{41, 19}, Combine: document.InTurn}, {Driving: []int{20}, Driven: []int{30}}}}
	d := &document.Document{Show: document.Show{Mass: "kg", Length: "mm"}, Builds: []document.Build{{ID: "b", Name: "B", Parts: []document.Part{gearingPart(g)}}}}
	text, err := document.Write(d)
	if err != nil {
		t.Fatal(err)
	}
	if want := `"gearing": {"stages": [{"driving": [19, 41], "driven": [41, 19], "combine": "turn"}, {"driving": [20], "driven": [30]}]}}` + "\n"; !strings.Contains(string(text), want) {
		t.Errorf("the part is not on one line:\n%s", text)
	}
	back, problems := document.Open(text)
	if len(problems) > 0 || !reflect.DeepEqual(back.Builds[0].Parts[0].Gearing, g) {
		t.Errorf("%v %+v", problems, back)
	}
	d.CopyBuild("b", "C").Parts[0].Gearing.Stages[0].Driving[0] = 3
	if g.Stages[0].Driving[0] != 19 {
		t.Error("the copy shares its teeth")
	}
	d.Builds[0].Parts[0].Gearing = &document.Gearing{Stages: []document.Stage{{}}}
	if text, err = document.Write(d); err != nil {
		t.Fatal(err)
	}
	if _, problems := document.Open(text); len(problems) > 0 {
		t.Error(problems)
	}
}

func TestGearingIsReadStrictly(t *testing.T) {
	for _, g := range []string{
		`{"teeths": [1]}`, `{"teeth": [11.5]}`, `{"teeth": "11"}`, `{"teeth": [11], "teeth": [12]}`, `{"teeth": [null]}`, `{"ratios": [1e999]}`,
		`{"stages": [{"driving": [20], "through": [30]}]}`, `{"stages": [20]}`, `{"teeth": [99999999999999999999]}`, `[]`,
	} {
		text := fmt.Sprintf(`{"format": "steelyard-document", "version": 1, "builds": [{"id": "b", "parts": [{"id": "p", "name": "Hub", "station": "frame", "gearing": %s}]}]}`, g)
		if d, problems := document.Open([]byte(text)); d != nil || len(problems) == 0 || problems[0].Part != "p" || !strings.HasPrefix(problems[0].Field, "gearing") {
			t.Errorf("%s: %v", g, problems)
		}
	}
}
