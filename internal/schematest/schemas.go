package schematest

import (
	"bytes"
	"path"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"steelyard/data"
)

// object is an object of JSON.
type object = map[string]any

// urn is how the schemas call each other.
const urn = "urn:steelyard:schema:"

// url returns the identifier of the schema that a name is of.
func url(name string) string {
	file, place, inside := strings.Cut(name, "#")
	switch {
	case !inside:
		return urn + file + ":1"
	case strings.HasPrefix(place, "/"):
		return urn + file + ":1#" + place
	}
	return urn + file + ":1#/$defs/" + place
}

// Name returns the name of what a reference points to from a file.
func Name(ref, file string) string {
	id, pointer, inside := strings.Cut(ref, "#")
	if id != "" {
		file = strings.TrimSuffix(strings.TrimPrefix(id, urn), ":1")
	}
	if !inside {
		return file
	}
	return file + "#" + strings.TrimPrefix(pointer, "/$defs/")
}

// trees are all schemas by identifier, as they stand in the files.
var trees = sync.OnceValues(func() (map[string]object, error) { return read(func(object) {}) })

// strict are the schemas as they hold for what the program writes.
var strict = sync.OnceValues(func() (map[string]object, error) { return read(tighten) })

func read(change func(object)) (map[string]object, error) {
	files, err := data.Schemas.ReadDir("schema")
	if err != nil {
		return nil, err
	}
	all := map[string]object{}
	for _, f := range files {
		text, err := data.Schemas.ReadFile(path.Join("schema", f.Name()))
		if err != nil {
			return nil, err
		}
		v, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
		if err != nil {
			return nil, err
		}
		root := v.(object)
		change(root)
		for _, def := range definitions(root) {
			change(def)
		}
		all[root["$id"].(string)] = root
	}
	return all, nil
}

// definitions are the schemas that stand in a schema under $defs.
func definitions(root object) map[string]object {
	all := map[string]object{}
	defs, _ := root["$defs"].(object)
	for key, def := range defs {
		all[key] = def.(object)
	}
	return all
}

// tighten makes what may be there of an object of the document what is written:
// the keys of x-written, and null for none of the others.
func tighten(schema object) {
	written, ok := schema["x-written"].([]any)
	if !ok {
		return
	}
	schema["required"] = written
	for key, p := range schema["properties"].(object) {
		p := p.(object)
		if either, ok := p["anyOf"].([]any); ok && !slices.Contains(written, any(key)) {
			p["anyOf"] = withoutNull(either)
		}
	}
}

func withoutNull(schemas []any) []any {
	return slices.DeleteFunc(slices.Clone(schemas), func(v any) bool { return v.(object)["type"] == "null" })
}

func compile(t testing.TB, name string, trees map[string]object, err error) *jsonschema.Schema {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	for id, tree := range trees {
		if err := c.AddResource(id, tree); err != nil {
			t.Fatal(err)
		}
	}
	s, err := c.Compile(url(name))
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// Read returns a schema as it holds for what the program reads.
func Read(t testing.TB, name string) *jsonschema.Schema {
	t.Helper()
	all, err := trees()
	return compile(t, name, all, err)
}

// Written returns a schema as it holds for what the program writes.
func Written(t testing.TB, name string) *jsonschema.Schema {
	t.Helper()
	all, err := strict()
	return compile(t, name, all, err)
}

// Validate returns what a schema says to a text of JSON, which may begin with a
// byte order mark.
func Validate(schema *jsonschema.Schema, text []byte) error {
	v, err := jsonschema.UnmarshalJSON(bytes.NewReader(bytes.TrimPrefix(text, []byte("\xef\xbb\xbf"))))
	if err != nil {
		return err
	}
	return schema.Validate(v)
}
