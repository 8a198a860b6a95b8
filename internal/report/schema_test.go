package report_test

import (
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"steelyard/internal/document"
	"steelyard/internal/document/documenttest"
	"steelyard/internal/report"
	"steelyard/internal/schematest"
)

// Every report fits the published schema, whatever it tells of.
func TestSchema(t *testing.T) {
	s := schematest.Written(t, "report")
	wrong, refused := bike("b"), "{"
	wrong.Frame.HeadAngle = 700
	wrong.Parts = []document.Part{point("p", -1, "x", 0, 0, 0)}
	moved := other("b")
	moved.Parts[1].Carrier = document.MainFrame
	for _, r := range []*report.Report{
		report.Weigh(documenttest.Demo(t), nil).Report,
		report.Weigh(documentOf(), nil).Report,
		report.Weigh(documentOf(bike("a"), bike("b")), nil).Report,
		report.Weigh(documentOf(fitted("a"), moved), nil).Report,
		report.Weigh(documentOf(fitted("a"), wrong), nil).Report,
		report.Evaluate([]byte(refused)),
	} {
		if err := schematest.Validate(s, writable(t, r)); err != nil {
			t.Error(err)
		}
	}
	rapid.Check(t, func(rt *rapid.T) {
		a, b := bike("a"), bike("b")
		a.Parts, b.Parts = anyParts(rt), anyParts(rt)
		text, err := report.Write(report.Weigh(documentOf(a, b), nil).Report)
		if err != nil {
			rt.Fatal(err)
		}
		if err := schematest.Validate(s, text); err != nil {
			rt.Fatal(err)
		}
	})
}

// The schema is strict: it refuses what no report says.
func TestSchemaRefuses(t *testing.T) {
	s := schematest.Written(t, "report")
	text := string(writable(t, report.Weigh(documentOf(fitted("a"), other("b")), nil).Report))
	for _, c := range [][2]string{
		{`"key":"total"`, `"key":"mass"`}, {`"plus":`, `"minus":`}, {`"verdict":"more"`, `"verdict":"better"`},
		{`"doubt":0`, `"doubt":7`}, {`"what":"added"`, `"what":"new"`}, {`"steelyard-report"`, `"report"`}, {`"summary":`, `"extra":1,"summary":`},
	} {
		spoilt := strings.Replace(text, c[0], c[1], 1)
		if spoilt == text {
			t.Fatalf("no %s in the report", c[0])
		}
		if schematest.Validate(s, []byte(spoilt)) == nil {
			t.Errorf("%s for %s is taken", c[1], c[0])
		}
	}
}

func TestSchemaFollowsTheTypes(t *testing.T) {
	schematest.Follow(t, "report", reflect.TypeFor[report.Report]())
}
