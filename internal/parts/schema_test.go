package parts

import (
	"bytes"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/goccy/go-json"
	"github.com/santhosh-tekuri/jsonschema/v6"
	"pgregory.net/rapid"
)

const schemaFile = "../../data/schema/document.schema.json"

func documentSchema(t *testing.T) *jsonschema.Schema {
	t.Helper()
	schema, err := jsonschema.NewCompiler().Compile(schemaFile)
	if err != nil {
		t.Fatal(err)
	}
	return schema
}

// validate returns what the schema says to a text.
func validate(schema *jsonschema.Schema, text []byte) error {
	v, err := jsonschema.UnmarshalJSON(bytes.NewReader(bytes.TrimPrefix(text, []byte("\xef\xbb\xbf"))))
	if err != nil {
		return err
	}
	return schema.Validate(v)
}

func TestWrittenDocumentsFitTheSchema(t *testing.T) {
	schema := documentSchema(t)
	rapid.Check(t, func(t *rapid.T) {
		d := anyDocument().Draw(t, "document")
		text, err := Write(d)
		if err != nil {
			t.Fatal(err)
		}
		if err := validate(schema, text); err != nil {
			t.Fatalf("%v\n%s", err, text)
		}
	})
	text, err := Write(twoBuilds(len(Catalogue())))
	if err != nil {
		t.Fatal(err)
	}
	if err := validate(schema, text); err != nil {
		t.Fatal(err)
	}
}

func TestFixturesAndTheSchema(t *testing.T) {
	schema := documentSchema(t)
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
		err = validate(schema, text)
		switch kind, _, _ := strings.Cut(name, "-"); {
		case kind == "broken":
		case kind == "wrong" && err == nil:
			t.Errorf("%s fits the schema", name)
		case kind != "wrong" && err != nil:
			t.Errorf("%s: %v", name, err)
		}
	}
}

// The schema has the keys of the Go types, and no others.
func TestSchemaFollowsTheTypes(t *testing.T) {
	text, err := os.ReadFile(schemaFile)
	if err != nil {
		t.Fatal(err)
	}
	var root map[string]any
	if err := json.Unmarshal(text, &root); err != nil {
		t.Fatal(err)
	}
	followType(t, root, root, reflect.TypeFor[Document](), "document")
}

func followType(t *testing.T, root, schema map[string]any, typ reflect.Type, at string) {
	t.Helper()
	if ref, ok := schema["$ref"].(string); ok {
		schema = root["$defs"].(map[string]any)[strings.TrimPrefix(ref, "#/$defs/")].(map[string]any)
	}
	if typ.Kind() == reflect.Pointer {
		// Either the thing itself or null.
		first := schema["anyOf"].([]any)[0].(map[string]any)
		followType(t, root, first, typ.Elem(), at)
		return
	}
	want := map[reflect.Kind]string{
		reflect.Struct: "object", reflect.Slice: "array", reflect.Array: "array",
		reflect.String: "string", reflect.Float64: "number", reflect.Int: "integer", reflect.Bool: "boolean",
	}[typ.Kind()]
	_, isConst := schema["const"]
	_, isEnum := schema["enum"]
	if schema["type"] != want && !isConst && !isEnum {
		t.Errorf("%s: the schema has type %v, want %s", at, schema["type"], want)
	}
	switch typ.Kind() {
	case reflect.Array, reflect.Slice:
		if n := float64(typ.Size() / typ.Elem().Size()); typ.Kind() == reflect.Array && (schema["minItems"] != n || schema["maxItems"] != n) {
			t.Errorf("%s: the schema wants %v to %v items, the type has %v", at, schema["minItems"], schema["maxItems"], n)
		}
		followType(t, root, schema["items"].(map[string]any), typ.Elem(), at+"[]")
	case reflect.Struct:
		if schema["additionalProperties"] != false {
			t.Errorf("%s: further keys are not ruled out", at)
		}
		properties := schema["properties"].(map[string]any)
		var keys []string
		for i := range typ.NumField() {
			key, _, _ := strings.Cut(typ.Field(i).Tag.Get("json"), ",")
			keys = append(keys, key)
			p, ok := properties[key].(map[string]any)
			if !ok {
				t.Errorf("%s: the schema has no %s", at, key)
				continue
			}
			followType(t, root, p, typ.Field(i).Type, at+"."+key)
		}
		for key := range properties {
			if !slices.Contains(keys, key) {
				t.Errorf("%s: the type has no %s", at, key)
			}
		}
	}
}

// The words and limits that the schema allows are those that Check allows.
func TestSchemaFollowsTheChecks(t *testing.T) {
	text, err := os.ReadFile(schemaFile)
	if err != nil {
		t.Fatal(err)
	}
	var root struct {
		Defs struct {
			Part struct {
				Properties struct {
					Quantity  struct{ Minimum, Maximum float64 }
					Mass      struct{ Minimum, Maximum float64 } `json:"mass_g"`
					HalfWidth struct{ Minimum, Maximum float64 } `json:"half_width_g"`
					Within    struct{ Minimum, Maximum float64 } `json:"within_mm"`
					Basis     struct{ Enum []Basis }
					Carrier   struct{ Enum []Carrier }
				}
			}
			Shape struct {
				Properties struct{ Form struct{ Enum []Form } }
			}
			Vec3 struct {
				Items struct{ Minimum, Maximum float64 }
			}
		} `json:"$defs"`
		Properties struct {
			Format struct{ Const string }
			// A version that the schema of this name holds for.
			Version struct{ Const int }
			Show    struct {
				Properties struct{ Mass, Length struct{ Enum []string } }
			}
			Builds struct{ MaxItems int }
		}
	}
	if err := json.Unmarshal(text, &root); err != nil {
		t.Fatal(err)
	}
	p := root.Defs.Part.Properties
	for _, c := range []struct{ got, want any }{
		{p.Basis.Enum, Bases},
		{p.Carrier.Enum, Carriers},
		{root.Defs.Shape.Properties.Form.Enum, Forms},
		{root.Properties.Show.Properties.Mass.Enum, MassUnits},
		{root.Properties.Show.Properties.Length.Enum, LengthUnits},
		{root.Properties.Format.Const, Format},
		{root.Properties.Version.Const, Version},
		{root.Properties.Builds.MaxItems, MaxBuilds},
		{p.Quantity.Maximum, float64(MaxQuantity)},
		{p.Mass.Maximum, float64(MaxMass)},
		{p.HalfWidth.Maximum, float64(MaxMass)},
		{p.Within.Maximum, float64(MaxLength)},
		{root.Defs.Vec3.Items.Minimum, float64(-MaxLength)},
		{root.Defs.Vec3.Items.Maximum, float64(MaxLength)},
	} {
		if !reflect.DeepEqual(c.got, c.want) {
			t.Errorf("the schema has %v, the checks have %v", c.got, c.want)
		}
	}
}
