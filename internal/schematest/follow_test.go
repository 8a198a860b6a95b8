package schematest_test

import (
	"reflect"
	"strings"
	"testing"

	"steelyard/internal/schematest"
)

// costs is as packing's schema has it.
type costs struct {
	Front   float64 `json:"front"`
	Low     float64 `json:"low"`
	Balance float64 `json:"balance"`
	Middle  float64 `json:"middle"`
	Steered float64 `json:"steered"`
}

type half struct {
	Front float64 `json:"front"`
	Low   float64 `json:"low"`
}

// What a type and a schema differ in is found, and what they agree in is not
// objected to.
func TestFollow(t *testing.T) {
	type embedding struct {
		half
		Balance float64 `json:"balance"`
		Middle  float64 `json:"middle"`
		Steered float64 `json:"steered"`
	}
	type more struct {
		costs
		Height float64 `json:"height"`
	}
	type otherSort struct {
		half
		Balance string  `json:"balance"`
		Middle  int     `json:"middle"`
		Steered float64 `json:"steered"`
	}
	type leavesOut struct {
		half
		Balance float64 `json:"balance,omitempty"`
		Middle  float64 `json:"middle"`
		Steered float64 `json:"steered"`
	}
	type bad struct {
		Line int    `json:"line"`
		Text string `json:"text"`
		Why  string `json:"why"`
	}
	for _, c := range []struct {
		schema string
		typ    reflect.Type
		want   []string // in the faults, in no order
	}{
		{"packing#costs", reflect.TypeFor[costs](), nil},
		{"packing#costs", reflect.TypeFor[*costs](), nil},
		{"packing#costs", reflect.TypeFor[embedding](), nil},
		{"packing#costs", reflect.TypeFor[half](), []string{"the type has no balance", "the type has no middle", "the type has no steered"}},
		{"packing#costs", reflect.TypeFor[more](), []string{"the schema has no height"}},
		{"packing#costs", reflect.TypeFor[otherSort](), []string{"balance: the schema has type number, want string", "middle: the schema has type number, want integer"}},
		{"packing#costs", reflect.TypeFor[leavesOut](), []string{"balance is always there"}},
		{"packing#costs", reflect.TypeFor[[]costs](), []string{"want array", "does not say what is in it"}},
		{"document#basis", reflect.TypeFor[string](), nil},
		{"document#basis", reflect.TypeFor[float64](), []string{"the value weighed, want number", "the value stated", "the value typical", "the value guessed"}},
		{"document#vec3", reflect.TypeFor[[3]float64](), nil},
		{"document#vec3", reflect.TypeFor[[2]float64](), []string{"the type has 2"}},
		{"document#vec3", reflect.TypeFor[[3]int](), []string{"[]: the schema has type number, want integer"}},
		{"packing#/properties/after", reflect.TypeFor[bool](), []string{"lets it be null", "want boolean"}},
		{"partslist#badRow", reflect.TypeFor[bad](), nil},
		{"partslist#/properties/bad", reflect.TypeFor[[]bad](), nil},
		{"partslist#/properties/guess", reflect.TypeFor[map[string]int](), nil},
		{"partslist#/properties/guess", reflect.TypeFor[map[string]string](), []string{"{}: the schema has type integer, want string"}},
		{"packing#nothing", reflect.TypeFor[costs](), []string{"there is no schema"}},
	} {
		got := schematest.Faults(t, c.schema, c.typ, true)
		if len(got) != len(c.want) {
			t.Errorf("%s as %v: %q, want %q", c.schema, c.typ, got, c.want)
			continue
		}
		for _, want := range c.want {
			if !strings.Contains(strings.Join(got, "\n"), want) {
				t.Errorf("%s as %v: %q, want %q", c.schema, c.typ, got, want)
			}
		}
	}
}

// What the program writes is held to more than what it reads.
func TestWrittenIsStricter(t *testing.T) {
	read, written := schematest.Read(t, "document#weigh_in"), schematest.Written(t, "document#weigh_in")
	for text, strict := range map[string]bool{
		`{"id":"w1","name":"","build":"b1","state":"bare","readings":[]}`:                     true,
		`{"build":"b1","state":"bare"}`:                                                       false,
		`{"id":"w1","name":"","build":"b1","state":"bare","readings":[],"front_sag_mm":null}`: false,
	} {
		if err := schematest.Validate(read, []byte(text)); err != nil {
			t.Errorf("%s is not read: %v", text, err)
		}
		if err := schematest.Validate(written, []byte(text)); (err == nil) != strict {
			t.Errorf("%s written: %v", text, err)
		}
	}
}
