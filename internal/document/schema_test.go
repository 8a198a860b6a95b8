package document_test

import (
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"steelyard/internal/document"
	"steelyard/internal/document/documenttest"
	"steelyard/internal/schematest"
)

func TestWrittenDocumentsFitTheSchema(t *testing.T) {
	schema := schematest.Written(t, "document")
	rapid.Check(t, func(t *rapid.T) {
		d := documenttest.Document().Draw(t, "document")
		text, err := document.Write(d)
		if err != nil {
			t.Fatal(err)
		}
		if err := schematest.Validate(schema, text); err != nil {
			t.Fatalf("%v\n%s", err, text)
		}
	})
	text, err := document.Write(documenttest.TwoBuilds(300))
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
	schematest.Follow(t, "document", reflect.TypeFor[document.Document]())
}

// The words and limits that the schema allows are those that Check allows.
func TestSchemaFollowsTheChecks(t *testing.T) {
	for name, want := range map[string]any{
		"basis": document.Bases, "carrier": document.Carriers, "form": document.Forms, "massUnit": document.MassUnits, "lengthUnit": document.LengthUnits,
		"state": document.States, "supplies": document.SupplyLevels, "bodyTable": document.Tables, "posture": document.Postures, "supplyKind": document.SupplyKinds, "bagLiquids": document.BagLiquids, "goodLiquid": document.GoodLiquids, "rated": document.Rateds,
		"combine": document.Combines, "by": document.Bys,
		"roadClass": document.RoadClasses, "riderWay": document.RiderWays, "tyreContact": document.Contacts, "obstacleForm": document.ObstacleForms, "springWay": document.SpringWays,
		"knownBasis": document.KnownBases, "surface": document.Surfaces, "hold": document.Holds, "gearUnit": document.GearUnits, "stageLossKind": document.StageLosses,
	} {
		if got := schematest.Enum(t, "document#"+name); fmt.Sprint(got) != fmt.Sprint(want) {
			t.Errorf("%s: the schema has %v, the checks have %v", name, got, want)
		}
	}
	for _, c := range []struct {
		name, path string
		want       any
	}{
		{"document", "properties/format/const", document.Format},
		{"document", "properties/version/const", document.Version}, // a version that the schema of this name holds for
		{"document", "properties/builds/maxItems", document.MaxBuilds},
		{"document", "properties/riders/maxItems", document.MaxRiders},
		{"document", "properties/loads/maxItems", document.MaxLoads},
		{"document", "properties/weigh_ins/maxItems", document.MaxWeighIns},
		{"document#part", "properties/quantity/maximum", document.MaxQuantity},
		{"document#part", "properties/mass_g/maximum", document.MaxMass},
		{"document#part", "properties/half_width_g/maximum", document.MaxMass},
		{"document#part", "properties/within_mm/maximum", document.MaxLength},
		{"document#vec3", "items/minimum", -document.MaxLength},
		{"document#vec3", "items/maximum", document.MaxLength},
		{"document#gearing", "properties/teeth/maxItems", document.MaxWheels},
		{"document#gearing", "properties/teeth/items/minimum", document.MinTeeth},
		{"document#gearing", "properties/teeth/items/maximum", document.MaxTeeth},
		{"document#gearing", "properties/ratios/maxItems", document.MaxRatios},
		{"document#gearing", "properties/ratios/items/minimum", document.MinRatio},
		{"document#gearing", "properties/ratios/items/maximum", document.MaxRatio},
		{"document#gearing", "properties/meshes/items/maximum", document.MaxMeshes},
		{"document#gearing", "properties/stages/maxItems", document.MaxStages},
		{"document#gear_stage", "properties/driving/maxItems", document.MaxWheels},
		{"document#gear_stage", "properties/driven/maxItems", document.MaxWheels},
		{"document#gear_stage", "properties/combine/default", document.EveryPair},
		{"document#gear_stage", "properties/by/default", document.ByGears},
		{"document", "properties/days/maxItems", document.MaxDays},
		{"document#day", "properties/stretches/maxItems", document.MaxStretches},
		{"document#stretch", "properties/length_m/minimum", document.StretchSpan.Least},
		{"document#stretch", "properties/length_m/maximum", int(document.StretchSpan.Most)},
		{"document#stretch", "properties/slope_percent/minimum", document.SlopeSpan.Least},
		{"document#stretch", "properties/slope_percent/maximum", document.SlopeSpan.Most},
		{"document#drive_losses", "properties/stages/maxItems", document.MaxStageLosses},
		{"document#load", "properties/bags/maxItems", document.MaxBags},
		{"document#load", "properties/goods/maxItems", document.MaxGoods},
		{"document#weigh_in", "properties/readings/maxItems", document.MaxReadings},
		{"document#weigh_in", "properties/scales/maxItems", document.MaxScales},
		{"document#scale", "properties/step_g/minimum", document.MinStep},
		{"document#reading", "properties/resolution_g/minimum", document.MinStep},
		{"document#rider", "properties/stature_mm/minimum", document.MinStature},
		{"document#rider", "properties/stature_mm/maximum", document.MaxStature},
		{"document#rider", "properties/mass_g/minimum", document.MinBody},
		{"document#rider", "properties/mass_g/maximum", document.MaxBody},
		{"document#rider", "properties/half_width_g/default", document.DefaultBody},
		{"document#rider", "properties/clothing_g/maximum", document.MaxClothing},
		{"document#rider", "properties/shoes_g/maximum", document.MaxShoes},
		{"document#rider", "properties/crank_deg/maximum", document.MaxCrank},
		{"document#bag", "properties/volume_l/maximum", document.MaxVolume},
		{"document#bag", "properties/permitted_g/maximum", document.MaxMass},
		{"document#good", "properties/volume_l/maximum", document.MaxVolume},
		{"document#packing", "properties/of/enum", document.Judgeds},
		{"document#packing", "properties/of/default", document.DefaultPacking.Of},
		{"document#packing", "properties/low/maximum", document.MaxWeight},
		{"document#packing", "properties/front_share/default", document.DefaultPacking.FrontShare},
		{"document#packing", "properties/front/default", document.DefaultPacking.Front},
		{"document#packing", "properties/low/default", document.DefaultPacking.Low},
		{"document#packing", "properties/balance/default", document.DefaultPacking.Balance},
		{"document#packing", "properties/middle/default", document.DefaultPacking.Middle},
		{"document#rough", "properties/class/default", document.DefaultRoadClass},
		{"document#rough", "properties/speed_km_h/default", document.DefaultRoadSpeed},
		{"document#obstacle", "properties/height_mm/maximum", document.MaxObstacle},
		{"document#obstacle", "properties/length_mm/maximum", document.MaxObstacleWay},
		{"document#show", "properties/grip/minimum", document.MinGrip},
		{"document#show", "properties/grip/maximum", document.MaxGrip},
		{"document#show", "properties/grip/default", document.DefaultGrip},
		{"document#show", "properties/state/default", document.Ready},
		{"document#show", "properties/supplies/default", document.Full},
	} {
		if got := schematest.Value(t, c.name, c.path); fmt.Sprint(got) != fmt.Sprint(c.want) {
			t.Errorf("%s: %s is %v, want %v", c.name, c.path, got, c.want)
		}
	}
}
