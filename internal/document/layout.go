package document

import (
	"fmt"
	"reflect"
	"strings"
	"sync"
)

// layout is what may stand at a place of a JSON text, read off the Go types
// once. The types stay the one place that says what a document is made of.
type layout struct {
	value  value
	hold   hold
	fields []field        // of an object, in the order of the Go struct
	index  map[string]int // into fields, by key
	elem   *layout        // of a list
	count  int            // elements that a list must have; -1 is any number
	null   bool           // null may stand for it: an optional value
}

type field struct {
	key      string
	optional bool // not written when empty
	*layout
}

// value is a sort of JSON value.
type value uint8

const (
	object value = iota
	array
	text
	number64 // any number
	integer
	truth // true or false
)

// hold marks the objects that the scanner keeps a record of.
type hold uint8

const (
	holdNothing hold = iota
	holdDocument
	holdShow
	holdPacking
	holdBuild
	holdPart
	holdShape
	holdRider
	holdLoad
	holdBag
	holdGood
	holdWeighIn
	holdRating
	holdReading
	holdScale
	numHolds
)

// what is a sort of thing that a document has lists of.
type what struct {
	one, many string
	most      int  // how many of them a document may have, in all its lists together
	inner     bool // it lies in a list of another thing
	nameless  bool // it has neither id nor name, and is known by its number
}

// whats are the things of which the scanner counts how many there are, and that
// its messages call by name.
var whats = [numHolds]*what{
	holdBuild:   {one: "build", many: "builds", most: MaxBuilds},
	holdPart:    {one: "part", many: "parts", most: MaxParts, inner: true},
	holdRider:   {one: "rider", many: "riders", most: MaxRiders},
	holdLoad:    {one: "load", many: "loads", most: MaxLoads},
	holdBag:     {one: "bag", many: "bags", most: MaxBags, inner: true},
	holdGood:    {one: "good", many: "goods", most: MaxGoods, inner: true},
	holdWeighIn: {one: "weigh-in", many: "weigh-ins", most: MaxWeighIns},
	holdRating:  {one: "rating", many: "ratings", most: MaxRatings, nameless: true},
	holdReading: {one: "reading", many: "readings", most: MaxReadings, nameless: true},
	holdScale:   {one: "scale", many: "scales", most: MaxScales, nameless: true},
}

var documentLayout = sync.OnceValue(func() *layout { return layoutOf(reflect.TypeFor[Document]()) })

var holds = map[reflect.Type]hold{
	reflect.TypeFor[Document](): holdDocument,
	reflect.TypeFor[Show]():     holdShow,
	reflect.TypeFor[Build]():    holdBuild,
	reflect.TypeFor[Part]():     holdPart,
	reflect.TypeFor[Shape]():    holdShape,
	reflect.TypeFor[Packing]():  holdPacking,
	reflect.TypeFor[Rider]():    holdRider,
	reflect.TypeFor[Load]():     holdLoad,
	reflect.TypeFor[Bag]():      holdBag,
	reflect.TypeFor[Good]():     holdGood,
	reflect.TypeFor[WeighIn]():  holdWeighIn,
	reflect.TypeFor[Rating]():   holdRating,
	reflect.TypeFor[Reading]():  holdReading,
	reflect.TypeFor[Scale]():    holdScale,
}

func layoutOf(t reflect.Type) *layout {
	switch t.Kind() {
	case reflect.Pointer:
		l := *layoutOf(t.Elem())
		l.null = true
		return &l
	case reflect.Struct:
		l := &layout{value: object, hold: holds[t], index: make(map[string]int)}
		for i := range t.NumField() {
			key, options, _ := strings.Cut(t.Field(i).Tag.Get("json"), ",")
			l.index[key] = len(l.fields)
			l.fields = append(l.fields, field{key, options == "omitempty", layoutOf(t.Field(i).Type)})
		}
		if len(l.fields) > 64 {
			panic("parts: the scanner has a bit for each of 64 keys, and " + t.Name() + " has more")
		}
		return l
	case reflect.Slice:
		return &layout{value: array, elem: layoutOf(t.Elem()), count: -1}
	case reflect.Array:
		return &layout{value: array, elem: layoutOf(t.Elem()), count: t.Len()}
	case reflect.String:
		return &layout{value: text}
	case reflect.Float64:
		return &layout{value: number64}
	case reflect.Int:
		return &layout{value: integer}
	case reflect.Bool:
		return &layout{value: truth}
	}
	panic("parts: no layout for a " + t.String())
}

// want says in words what should stand at a place, with the unit that the key
// names.
func (l *layout) want(key string) string {
	switch l.value {
	case object:
		return "an object, { … }"
	case array:
		switch {
		case l.count >= 0:
			return fmt.Sprintf("a list of %d numbers%s", l.count, unitOf(key))
		default:
			return "a list, [ … ]"
		}
	case text:
		return "a text in quotes"
	case integer:
		return "a whole number"
	case truth:
		return "true or false, without quotes"
	}
	return "a number" + unitOf(key) + ", without quotes"
}

// unitOf returns the unit at the end of a key, in words.
func unitOf(key string) string {
	switch {
	case strings.HasSuffix(key, "_g"):
		return " in grams"
	case strings.HasSuffix(key, "_mm"):
		return " in millimetres"
	case strings.HasSuffix(key, "_deg"):
		return " in degrees"
	case strings.HasSuffix(key, "_l"):
		return " in litres"
	}
	return ""
}
