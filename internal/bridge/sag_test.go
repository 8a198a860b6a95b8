package bridge

import (
	"math"
	"strings"
	"testing"

	"github.com/goccy/go-json"

	"steelyard/internal/document"
)

// weighInOf asks for the weigh-in of the demo after a change of it and of the
// build that was weighed.
func weighInOf(t *testing.T, change func(w *document.WeighIn, b *document.Build)) weighed {
	t.Helper()
	d, problems := document.Open([]byte(new(Session).demo()))
	if d == nil {
		t.Fatal(problems)
	}
	w := &d.WeighIns[0]
	w.State, w.Load = document.Ready, ""
	w.Readings = []document.Reading{
		{Wheel: "front", Mass: 7000, Resolution: 10},
		{Wheel: "rear", Mass: 9000, Resolution: 10},
		{Wheel: "rear", Raised: "front", Height: 400, HeightPlus: 2, Mass: 10000, Resolution: 10},
	}
	change(w, d.Build(w.Build))
	text, err := document.WriteCompact(d)
	if err != nil {
		t.Fatal(err)
	}
	var out weighed
	if err := json.Unmarshal([]byte(new(Session).weighIn(string(text), w.ID)), &out); err != nil {
		t.Fatal(err)
	}
	return out
}

// A bike that has sunk by so much on the scale is weighed as one whose build
// says so.
func TestWeighInAtItsOwnSag(t *testing.T) {
	sag := 3.0
	asBuilt := weighInOf(t, func(_ *document.WeighIn, b *document.Build) {})
	measured := weighInOf(t, func(w *document.WeighIn, b *document.Build) { w.FrontSag, w.RearSag = &sag, &sag })
	said := weighInOf(t, func(_ *document.WeighIn, b *document.Build) { b.Fork.Sag, b.Rear.Sag = sag, sag })
	z := func(o weighed) float64 {
		if o.Paper == nil {
			t.Fatalf("nothing on paper: %+v", o.Problems)
		}
		for _, f := range o.Paper.Figures {
			if f.Key == "centre_z" {
				return f.Value
			}
		}
		return math.NaN()
	}
	if z(measured) != z(said) || measured.Expected[2] != said.Expected[2] {
		t.Errorf("measured: %v mm, %v; said: %v mm, %v", z(measured), measured.Expected, z(said), said.Expected)
	}
	if up := z(measured) - z(asBuilt); !(up > 10 && up < 60) {
		t.Errorf("higher on its springs by %v mm", up)
	}
	tells := func(o weighed) bool {
		for _, p := range o.Problems {
			if strings.Contains(p.Message.String(), "measure how far it has sunk") {
				return true
			}
		}
		return false
	}
	if !tells(asBuilt) || tells(measured) {
		t.Errorf("asks for the sag: %v without it, %v with it", tells(asBuilt), tells(measured))
	}
}

func TestWeighInBeyondItsTravel(t *testing.T) {
	for field, set := range map[string]func(*document.WeighIn, *float64){
		"front_sag_mm": func(w *document.WeighIn, v *float64) { w.FrontSag = v },
		"rear_sag_mm":  func(w *document.WeighIn, v *float64) { w.RearSag = v },
	} {
		for _, sag := range []float64{-1, 400, 1e6} {
			o := weighInOf(t, func(w *document.WeighIn, _ *document.Build) { set(w, &sag) })
			found := false
			for _, p := range o.Problems {
				found = found || p.Field == field && p.Severity == document.SeverityError && p.WeighIn != ""
			}
			if !found {
				t.Errorf("%s of %v mm: %+v", field, sag, o.Problems)
			}
		}
	}
}
