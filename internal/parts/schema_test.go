package parts

import (
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"steelyard/internal/schematest"
)

func TestWrittenDocumentsFitTheSchema(t *testing.T) {
	schema := schematest.Written(t, "document")
	rapid.Check(t, func(t *rapid.T) {
		d := anyDocument().Draw(t, "document")
		text, err := Write(d)
		if err != nil {
			t.Fatal(err)
		}
		if err := schematest.Validate(schema, text); err != nil {
			t.Fatalf("%v\n%s", err, text)
		}
	})
	text, err := Write(twoBuilds(300))
	if err != nil {
		t.Fatal(err)
	}
	if err := schematest.Validate(schema, text); err != nil {
		t.Fatal(err)
	}
}

func TestFixturesAndTheSchema(t *testing.T) {
	schema := schematest.Read(t, "document")
	files, err := filepath.Glob(documents + "/*.json")
	if err != nil || len(files) == 0 {
		t.Fatal(err)
	}
	for _, file := range append(files, "../../data/demo/travel.json") {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		name := filepath.Base(file)
		err = schematest.Validate(schema, text)
		switch kind, _, _ := strings.Cut(name, "-"); {
		case kind == "broken":
		case kind == "wrong" && err == nil:
			t.Errorf("%s fits the schema", name)
		case kind != "wrong" && err != nil:
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestSchemaFollowsTheTypes(t *testing.T) {
	schematest.Follow(t, "document", reflect.TypeFor[Document]())
}

// The words and limits that the schema allows are those that Check allows.
func TestSchemaFollowsTheChecks(t *testing.T) {
	for name, want := range map[string]any{
		"basis": Bases, "carrier": Carriers, "form": Forms, "massUnit": MassUnits, "lengthUnit": LengthUnits,
		"state": States, "supplies": SupplyLevels, "bodyTable": Tables, "posture": Postures, "supplyKind": SupplyKinds, "rated": Rateds,
	} {
		if got := schematest.Enum(t, "document#"+name); fmt.Sprint(got) != fmt.Sprint(want) {
			t.Errorf("%s: the schema has %v, the checks have %v", name, got, want)
		}
	}
	for _, c := range []struct {
		name, path string
		want       any
	}{
		{"document", "properties/format/const", Format},
		{"document", "properties/version/const", Version}, // a version that the schema of this name holds for
		{"document", "properties/builds/maxItems", MaxBuilds},
		{"document", "properties/riders/maxItems", MaxRiders},
		{"document", "properties/loads/maxItems", MaxLoads},
		{"document", "properties/weigh_ins/maxItems", MaxWeighIns},
		{"document#part", "properties/quantity/maximum", MaxQuantity},
		{"document#part", "properties/mass_g/maximum", MaxMass},
		{"document#part", "properties/half_width_g/maximum", MaxMass},
		{"document#part", "properties/within_mm/maximum", MaxLength},
		{"document#vec3", "items/minimum", -MaxLength},
		{"document#vec3", "items/maximum", MaxLength},
		{"document#load", "properties/bags/maxItems", MaxBags},
		{"document#load", "properties/goods/maxItems", MaxGoods},
		{"document#weigh_in", "properties/readings/maxItems", MaxReadings},
		{"document#weigh_in", "properties/scales/maxItems", MaxScales},
		{"document#scale", "properties/step_g/minimum", MinStep},
		{"document#reading", "properties/resolution_g/minimum", MinStep},
		{"document#rider", "properties/stature_mm/minimum", MinStature},
		{"document#rider", "properties/stature_mm/maximum", MaxStature},
		{"document#rider", "properties/mass_g/minimum", MinBody},
		{"document#rider", "properties/mass_g/maximum", MaxBody},
		{"document#rider", "properties/half_width_g/default", DefaultBody},
		{"document#rider", "properties/clothing_g/maximum", MaxClothing},
		{"document#rider", "properties/shoes_g/maximum", MaxShoes},
		{"document#rider", "properties/crank_deg/maximum", MaxCrank},
		{"document#bag", "properties/volume_l/maximum", MaxVolume},
		{"document#bag", "properties/permitted_g/maximum", MaxMass},
		{"document#good", "properties/volume_l/maximum", MaxVolume},
		{"document#packing", "properties/of/enum", Judgeds},
		{"document#packing", "properties/of/default", DefaultPacking.Of},
		{"document#packing", "properties/low/maximum", MaxWeight},
		{"document#packing", "properties/front_share/default", DefaultPacking.FrontShare},
		{"document#packing", "properties/front/default", DefaultPacking.Front},
		{"document#packing", "properties/low/default", DefaultPacking.Low},
		{"document#packing", "properties/balance/default", DefaultPacking.Balance},
		{"document#packing", "properties/middle/default", DefaultPacking.Middle},
		{"document#show", "properties/grip/minimum", MinGrip},
		{"document#show", "properties/grip/maximum", MaxGrip},
		{"document#show", "properties/grip/default", DefaultGrip},
		{"document#show", "properties/state/default", Ready},
		{"document#show", "properties/supplies/default", Full},
	} {
		if got := schematest.Value(t, c.name, c.path); fmt.Sprint(got) != fmt.Sprint(c.want) {
			t.Errorf("%s: %s is %v, want %v", c.name, c.path, got, c.want)
		}
	}
}
