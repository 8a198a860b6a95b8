package report_test

import (
	"bytes"
	"reflect"
	"strings"
	"testing"

	"github.com/goccy/go-json"
	"github.com/santhosh-tekuri/jsonschema/v6"
	"pgregory.net/rapid"

	"steelyard/data"
	"steelyard/internal/parts"
	"steelyard/internal/report"
)

const schemaFile = "schema/report.schema.json"

func schemaText(t testing.TB) []byte {
	t.Helper()
	text, err := data.Schemas.ReadFile(schemaFile)
	if err != nil {
		t.Fatal(err)
	}
	return text
}

func schema(t testing.TB) *jsonschema.Schema {
	t.Helper()
	v, err := jsonschema.UnmarshalJSON(bytes.NewReader(schemaText(t)))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource(schemaFile, v); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile(schemaFile)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func valid(s *jsonschema.Schema, text []byte) error {
	v, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		return err
	}
	return s.Validate(v)
}

// Every report fits the published schema, whatever it tells of.
func TestSchema(t *testing.T) {
	s := schema(t)
	wrong, refused := bike("b"), "{"
	wrong.Frame.HeadAngle = 700
	wrong.Parts = []parts.Part{point("p", -1, "x", 0, 0, 0)}
	moved := other("b")
	moved.Parts[1].Carrier = parts.MainFrame
	for _, r := range []*report.Report{
		report.EvaluateDocument(demo(t)),
		report.EvaluateDocument(document()),
		report.EvaluateDocument(document(bike("a"), bike("b"))),
		report.EvaluateDocument(document(fitted("a"), moved)),
		report.EvaluateDocument(document(fitted("a"), wrong)),
		report.Evaluate([]byte(refused)),
	} {
		if err := valid(s, writable(t, r)); err != nil {
			t.Error(err)
		}
	}
	rapid.Check(t, func(rt *rapid.T) {
		a, b := bike("a"), bike("b")
		a.Parts, b.Parts = anyParts(rt), anyParts(rt)
		text, err := report.Write(report.EvaluateDocument(document(a, b)))
		if err != nil {
			rt.Fatal(err)
		}
		if err := valid(s, text); err != nil {
			rt.Fatal(err)
		}
	})
}

// The schema is strict: it refuses what no report says.
func TestSchemaRefuses(t *testing.T) {
	s := schema(t)
	text := string(writable(t, report.EvaluateDocument(document(fitted("a"), other("b")))))
	for _, c := range [][2]string{
		{`"key":"total"`, `"key":"mass"`}, {`"plus":`, `"minus":`}, {`"verdict":"more"`, `"verdict":"better"`},
		{`"doubt":0`, `"doubt":7`}, {`"what":"added"`, `"what":"new"`}, {`"steelyard-report"`, `"report"`}, {`"summary":`, `"extra":1,"summary":`},
	} {
		spoilt := strings.Replace(text, c[0], c[1], 1)
		if spoilt == text {
			t.Fatalf("no %s in the report", c[0])
		}
		if valid(s, []byte(spoilt)) == nil {
			t.Errorf("%s for %s is taken", c[1], c[0])
		}
	}
}

// The schema has the keys of the types in this package, and no others.
func TestSchemaKeys(t *testing.T) {
	var tree struct {
		Properties map[string]any `json:"properties"`
		Defs       map[string]struct {
			Properties map[string]any `json:"properties"`
		} `json:"$defs"`
	}
	if err := json.Unmarshal(schemaText(t), &tree); err != nil {
		t.Fatal(err)
	}
	for name, v := range map[string]any{
		"": report.Report{}, "problem": parts.Problem{}, "build": report.Build{}, "length": report.Length{}, "figure": report.Figure{},
		"group": report.Subset{}, "carrier": report.Subset{}, "part": report.Part{}, "advice": report.Advice{},
		"difference": report.Difference{}, "change": report.Change{}, "groupChange": report.GroupChange{},
		"partChange": report.PartChange{}, "mover": report.Mover{},
		"side": report.Side{}, "state": report.State{}, "path": report.Path{}, "stop": report.Stop{}, "bag": report.Bag{}, "good": report.Good{},
		"body": report.Body{}, "segment": report.Segment{}, "handling": report.Handling{}, "rebalance": report.Rebalance{}, "value": report.Value{},
		"braking": report.Braking{}, "climb": report.Climb{}, "slopeLoad": report.SlopeLoad{}, "ratings": report.Ratings{}, "headroom": report.Headroom{},
	} {
		properties := tree.Properties
		if name != "" {
			properties = tree.Defs[name].Properties
		}
		keys := 0
		for _, field := range reflect.VisibleFields(reflect.TypeOf(v)) {
			if field.Anonymous {
				continue // its fields are here too
			}
			keys++
			key, _, _ := strings.Cut(field.Tag.Get("json"), ",")
			if properties[key] == nil {
				t.Errorf("%s: no key %s", name, key)
			}
		}
		if len(properties) != keys {
			t.Errorf("%s: %d keys, the type has %d", name, len(properties), keys)
		}
	}
}
