package weighin_test

import (
	"math"
	"reflect"
	"testing"

	"steelyard/internal/document"
	"steelyard/internal/geometry"
	"steelyard/internal/mass"
	"steelyard/internal/weighin"
)

// Whatever numbers come in, nothing panics; a result has finite numbers only,
// and where there is none a problem says why.
func FuzzWeigh(f *testing.F) {
	odd := []float64{0, -1, 1, math.NaN(), math.Inf(1), math.Inf(-1), 1e300, -1e300, 5e-324, 1e5}
	f.Add(45000.0, 52000.0, 60000.0, 100.0, 250.0, 2.0, "front", "rear", 90.0, 0.4, 1.0, 0.5, 0.01, 1.1, 0.35)
	f.Add(45000.0, 52000.0, 40000.0, 100.0, 250.0, 2.0, "front", "rear", 90.0, 0.4, 1.0, 0.5, 0.01, 1.1, 0.35)
	f.Add(45000.0, 52000.0, 50000.0, 0.1, 1.0, 0.99, "rear", "front", 90.0, 0.4, 1.0, 50.0, 0.01, 1.1, 0.35)
	for i, v := range odd {
		w := odd[(i+3)%len(odd)]
		f.Add(v, 52000.0, w, 100.0, 250.0, 2.0, "front", "rear", 90.0, 0.4, 1.0, 0.5, 0.01, 1.1, 0.35)
		f.Add(45000.0, 52000.0, 60000.0, v, w, 2.0, "front", "rear", 90.0, 0.4, 1.0, 0.5, 0.01, 1.1, 0.35)
		f.Add(45000.0, 52000.0, 60000.0, 100.0, 250.0, v, "rear", "rear", w, v, 1.0, 0.5, 0.01, 1.1, 0.35)
		f.Add(45000.0, 52000.0, 60000.0, 100.0, 250.0, 2.0, "front", "front", 90.0, 0.4, v, w, v, 1.1, 0.35)
		f.Add(45000.0, 52000.0, 60000.0, 100.0, 250.0, 2.0, "front", "rear", 90.0, 0.4, 1.0, 0.5, 0.01, v, w)
	}
	f.Fuzz(func(t *testing.T, front, rear, lifted, step, height, within float64, wheel, raised string, kg, x, z, massU, placeU, wheelbase, radius float64) {
		bike := &geometry.Bike{
			Wheelbase: wheelbase, RearRadius: radius, FrontRadius: radius * 0.9,
			RearSprung: kg > 50, RearSag: placeU,
			Stations: map[string]geometry.Station{
				"rear-axle": {Points: []mass.Vec{{Z: radius}}},
				"pedals":    {Points: []mass.Vec{{X: 0.5, Y: 0.1, Z: z}, {X: x, Y: -0.1, Z: 0.2}}},
				"frame":     {},
			},
		}
		items := []mass.Item{
			{Mass: kg, Place: mass.Vec{X: x, Z: z}, MassU: massU, PlaceU: mass.Alike(placeU)},
			{Mass: 5, Place: mass.Vec{X: 0.3, Z: 0.5}, MassU: 0.1, MassSource: 1, PlaceU: mass.Alike(0.01), PlaceSource: 1},
			{Mass: 1, Place: mass.Vec{X: 1, Z: 0.5}, MassU: massU, MassSource: -7, PlaceSource: 1},
		}
		w := &document.WeighIn{ID: "w", Name: wheel, Build: "a", State: document.State(raised), Readings: []document.Reading{
			{Wheel: "front", Mass: front, Resolution: step},
			{Wheel: "rear", Mass: rear, Resolution: step},
			{Wheel: wheel, Raised: raised, Height: height, HeightPlus: within, Mass: lifted, Resolution: 100},
			{Wheel: "front", Raised: "rear", Height: 100, HeightPlus: 1, Mass: lifted, Resolution: step},
			{Wheel: "front", Mass: rear, Scale: "s1"},
			{Wheel: "front", Mass: front, Scale: wheel, Resolution: step},
			{Wheel: "rear", Mass: rear, Resolution: step},
		}}
		w.Scales = []document.Scale{{ID: "s1", Step: step}, {ID: wheel, Step: height, Calibration: &massU}, {Step: within}}
		for n := range len(w.Readings) + 1 {
			some := *w
			some.Readings = w.Readings[:n]
			if n%2 == 0 {
				some.WheelbasePlus, some.RadiusPlus = &within, &placeU
			}
			r, problems := weighin.Weigh(&some, bike, items)
			for _, p := range problems {
				if p.Message.String() == "" || p.Field == "" || p.WeighIn != "w" {
					t.Errorf("%+v", p)
				}
			}
			if r == nil {
				if len(problems) == 0 {
					t.Error("no result, and no problem")
				}
				continue
			}
			finite(t, reflect.ValueOf(r), "result")
			told(r)
			if r.Weights != nil {
				for _, it := range r.Weights.Apply(items) {
					if !(it.Mass >= 0) && !(kg < 0) {
						t.Errorf("adjusted to %v kg", it.Mass)
					}
				}
			}
		}
	})
}

// finite walks through all that is exported, and wants numbers.
func finite(t *testing.T, v reflect.Value, where string) {
	switch v.Kind() {
	case reflect.Float64:
		if f := v.Float(); math.IsNaN(f) || math.IsInf(f, 0) {
			t.Errorf("%s is %v", where, f)
		}
	case reflect.Pointer:
		if !v.IsNil() {
			finite(t, v.Elem(), where)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if field := v.Type().Field(i); field.IsExported() {
				finite(t, v.Field(i), where+"."+field.Name)
			}
		}
	case reflect.Slice:
		for i := range v.Len() {
			finite(t, v.Index(i), where)
		}
	}
}
