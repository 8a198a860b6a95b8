package schematest

import (
	"encoding/json"
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"steelyard/internal/words"
)

// Follow checks that a schema has the keys of a Go type and no others, at every
// depth; that values are of the sort that the type has; and that a key may be
// missing when the type leaves it out (omitempty), and only then.
func Follow(t testing.TB, name string, typ reflect.Type) {
	t.Helper()
	check(t, name, typ, true)
}

// FollowArgument is Follow for what is only ever read: any key of the type may
// be missing, so the schema is free to want it.
func FollowArgument(t testing.TB, name string, typ reflect.Type) {
	t.Helper()
	check(t, name, typ, false)
}

func check(t testing.TB, name string, typ reflect.Type, written bool) {
	t.Helper()
	for _, fault := range Faults(t, name, typ, written) {
		t.Error(fault)
	}
}

// Faults are what Follow has to say, for tests of Follow itself.
func Faults(t testing.TB, name string, typ reflect.Type, written bool) []string {
	t.Helper()
	all, err := trees()
	if err != nil {
		t.Fatal(err)
	}
	f := &follower{trees: all, written: written}
	f.follow(object{"$ref": url(name)}, "", typ, name)
	return f.faults
}

type follower struct {
	trees   map[string]object
	written bool
	faults  []string
}

func (f *follower) fault(at, format string, args ...any) {
	f.faults = append(f.faults, at+": "+fmt.Sprintf(format, args...))
}

// resolve follows references; home is the identifier of the file that a schema
// stands in.
func resolve(trees map[string]object, schema object, home string) (object, string) {
	for {
		ref, ok := schema["$ref"].(string)
		if !ok {
			return schema, home
		}
		id, pointer, _ := strings.Cut(ref, "#")
		if id != "" {
			home = id
		}
		schema = trees[home]
		for key := range strings.SplitSeq(strings.Trim(pointer, "/"), "/") {
			if key != "" {
				schema, _ = schema[key].(object)
			}
		}
	}
}

var raw = reflect.TypeFor[json.RawMessage]()

func (f *follower) follow(schema object, home string, typ reflect.Type, at string) {
	ref := schema["$ref"]
	schema, home = resolve(f.trees, schema, home)
	if schema == nil {
		f.fault(at, "there is no schema %v", ref)
		return
	}
	if typ == raw {
		return // text that another type has written
	}
	if typ == reflect.TypeFor[words.Message]() {
		typ = reflect.TypeFor[string]() // it writes itself as one
	}
	if either, ok := schema["anyOf"].([]any); ok && schema["properties"] == nil {
		values := withoutNull(either)
		if null := len(values) < len(either); null && typ.Kind() != reflect.Pointer && typ.Kind() != reflect.Slice {
			f.fault(at, "the schema lets it be null, which %s never is", typ)
		}
		if typ.Kind() == reflect.Pointer {
			typ = typ.Elem()
		}
		for _, v := range values {
			f.follow(v.(object), home, typ, at)
		}
		if schema["type"] == nil {
			return
		}
	}
	if typ.Kind() == reflect.Pointer {
		typ = typ.Elem()
	}
	f.sort(schema, typ, at)
	switch typ.Kind() {
	case reflect.Array:
		if n := fmt.Sprint(typ.Len()); fmt.Sprint(schema["minItems"]) != n || fmt.Sprint(schema["maxItems"]) != n {
			f.fault(at, "the schema wants %v to %v items, the type has %s", schema["minItems"], schema["maxItems"], n)
		}
		f.elements(schema, "items", home, typ, at+"[]")
	case reflect.Slice:
		f.elements(schema, "items", home, typ, at+"[]")
	case reflect.Map:
		f.elements(schema, "additionalProperties", home, typ, at+"{}")
	case reflect.Struct:
		f.fields(schema, home, typ, at)
	}
}

// sort checks that the values of a schema are of the sort that a type has.
func (f *follower) sort(schema object, typ reflect.Type, at string) {
	want := map[reflect.Kind]string{
		reflect.Struct: "object", reflect.Map: "object", reflect.Slice: "array", reflect.Array: "array",
		reflect.String: "string", reflect.Float64: "number", reflect.Int: "integer", reflect.Bool: "boolean",
	}[typ.Kind()]
	values, _ := schema["enum"].([]any)
	if v, ok := schema["const"]; ok {
		values = append(values, v)
	}
	for _, v := range values {
		var is string
		switch v.(type) {
		case string:
			is = "string"
		case bool:
			is = "boolean"
		case json.Number:
			is = want // 1 is an integer and a number
			if want != "integer" && want != "number" {
				is = "number"
			}
		}
		if is != want {
			f.fault(at, "the schema has the value %v, want %s", v, want)
		}
	}
	if is, ok := schema["type"]; ok && is != want || !ok && len(values) == 0 {
		f.fault(at, "the schema has type %v, want %s", schema["type"], want)
	}
}

func (f *follower) elements(schema object, key, home string, typ reflect.Type, at string) {
	items, ok := schema[key].(object)
	if !ok {
		f.fault(at, "the schema does not say what is in it")
		return
	}
	f.follow(items, home, typ.Elem(), at)
}

func (f *follower) fields(schema object, home string, typ reflect.Type, at string) {
	if schema["additionalProperties"] != false {
		f.fault(at, "further keys are not ruled out")
	}
	always, _ := schema["x-written"].([]any)
	if always == nil {
		always, _ = schema["required"].([]any)
	}
	properties, _ := schema["properties"].(object)
	var keys []string
	for _, field := range reflect.VisibleFields(typ) {
		key, options, _ := strings.Cut(field.Tag.Get("json"), ",")
		if field.Anonymous && key == "" || key == "-" {
			continue // its fields are here too
		}
		keys = append(keys, key)
		p, ok := properties[key].(object)
		if !ok {
			f.fault(at, "the schema has no %s", key)
			continue
		}
		switch listed, omitted := slices.Contains(always, any(key)), options == "omitempty"; {
		case !f.written:
		case listed && omitted:
			f.fault(at, "the schema says that %s is always there, the type leaves it out when it is empty", key)
		case !listed && !omitted:
			f.fault(at, "the type always writes %s, the schema does not say that it is always there", key)
		}
		f.follow(p, home, field.Type, at+"."+key)
	}
	for key := range properties {
		if !slices.Contains(keys, key) {
			f.fault(at, "the type has no %s", key)
		}
	}
	for _, key := range always {
		if properties[key.(string)] == nil {
			f.fault(at, "%v should always be there, but is no key", key)
		}
	}
}

// Value returns what a schema has at a path of keys below it, "" is the schema
// itself; references on the way are followed. Numbers are json.Number.
func Value(t testing.TB, name, path string) any {
	t.Helper()
	all, err := trees()
	if err != nil {
		t.Fatal(err)
	}
	schema, home := resolve(all, object{"$ref": url(name)}, "")
	v := any(schema)
	for key := range strings.SplitSeq(path, "/") {
		o, ok := v.(object)
		if ok && o[key] == nil {
			o, home = resolve(all, o, home)
		}
		if v = o[key]; !ok || v == nil {
			t.Fatalf("%s: no %s", name, path)
		}
	}
	return v
}

// Enum returns the values that a schema allows, or the one that a list of them
// does; the empty string is no value but stands for none.
func Enum(t testing.TB, name string) []string {
	t.Helper()
	values, _ := Value(t, name, "enum").([]any)
	list := make([]string, len(values))
	for i, v := range values {
		list[i] = v.(string)
	}
	return list
}
