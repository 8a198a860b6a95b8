package document

import (
	"reflect"
	"strings"
	"sync"

	"steelyard/internal/words"
)

// layout is what may stand at a place of a JSON text, read off the Go types
// once. The types stay the one place that says what a document is made of.
type layout struct {
	value  value
	hold   kind
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

// kind marks the objects that the scanner keeps a record of.
type kind uint8

const (
	kindNothing kind = iota
	kindDocument
	kindShow
	kindPacking
	kindBuild
	kindPart
	kindShape
	kindRider
	kindLoad
	kindBag
	kindGood
	kindWeighIn
	kindRating
	kindReading
	kindScale
	kindAside
	kindDay
	kindStretch
	numKinds
)

// entityInfo is a sort of entity that a document has lists of.
type entityInfo struct {
	name     string // the end of the keys of what one and many are called
	most     int    // how many of them a document may have, in all its lists together
	inner    bool   // it lies in a list of another thing
	nameless bool   // it has neither id nor name, and is known by its number
}

// entityInfos are the entities that the scanner counts, and calls by name in its
// messages.
var entityInfos = [numKinds]*entityInfo{
	kindBuild:   {name: "build", most: MaxBuilds},
	kindPart:    {name: "part", most: MaxParts, inner: true},
	kindRider:   {name: "rider", most: MaxRiders},
	kindLoad:    {name: "load", most: MaxLoads},
	kindBag:     {name: "bag", most: MaxBags, inner: true},
	kindGood:    {name: "good", most: MaxGoods, inner: true},
	kindWeighIn: {name: "weigh_in", most: MaxWeighIns},
	kindRating:  {name: "rating", most: MaxRatings, nameless: true},
	kindReading: {name: "reading", most: MaxReadings, nameless: true},
	kindScale:   {name: "scale", most: MaxScales, nameless: true},
	kindAside:   {name: "aside", most: MaxAside, nameless: true},
	kindDay:     {name: "day", most: MaxDays},
	kindStretch: {name: "stretch", most: MaxAllStretches, nameless: true},
}

var documentLayout = sync.OnceValue(func() *layout { return layoutOf(reflect.TypeFor[Document]()) })

var kinds = map[reflect.Type]kind{
	reflect.TypeFor[Document](): kindDocument,
	reflect.TypeFor[Show]():     kindShow,
	reflect.TypeFor[Build]():    kindBuild,
	reflect.TypeFor[Part]():     kindPart,
	reflect.TypeFor[Shape]():    kindShape,
	reflect.TypeFor[Packing]():  kindPacking,
	reflect.TypeFor[Rider]():    kindRider,
	reflect.TypeFor[Load]():     kindLoad,
	reflect.TypeFor[Bag]():      kindBag,
	reflect.TypeFor[Good]():     kindGood,
	reflect.TypeFor[WeighIn]():  kindWeighIn,
	reflect.TypeFor[Rating]():   kindRating,
	reflect.TypeFor[Reading]():  kindReading,
	reflect.TypeFor[Scale]():    kindScale,
	reflect.TypeFor[Aside]():    kindAside,
	reflect.TypeFor[Day]():      kindDay,
	reflect.TypeFor[Stretch]():  kindStretch,
}

func layoutOf(t reflect.Type) *layout {
	switch t.Kind() {
	case reflect.Pointer:
		l := *layoutOf(t.Elem())
		l.null = true
		return &l
	case reflect.Struct:
		l := &layout{value: object, hold: kinds[t], index: make(map[string]int)}
		for i := range t.NumField() {
			key, options, _ := strings.Cut(t.Field(i).Tag.Get("json"), ",")
			l.index[key] = len(l.fields)
			of := layoutOf(t.Field(i).Type)
			if t == reflect.TypeFor[Aside]() {
				of = of.unheld() // its part is in no list of parts
			}
			l.fields = append(l.fields, field{key, options == "omitempty", of})
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

// unheld is the layout without any record of its objects.
func (l *layout) unheld() *layout {
	u := *l
	u.hold = kindNothing
	if u.elem != nil {
		u.elem = u.elem.unheld()
	}
	u.fields = append([]field(nil), u.fields...)
	for i := range u.fields {
		u.fields[i].layout = u.fields[i].unheld()
	}
	return &u
}

// want says what should stand at a place, with the unit that the key names.
func (l *layout) want(key string) words.Message {
	switch l.value {
	case object:
		return words.Tell("document.want.object")
	case array:
		switch {
		case l.count >= 0:
			return words.Tell("document.want.numbers", "n", l.count, "unit", unitOf(key))
		default:
			return words.Tell("document.want.list")
		}
	case text:
		return words.Tell("document.want.text")
	case integer:
		return words.Tell("document.want.whole")
	case truth:
		return words.Tell("document.want.truth")
	}
	return words.Tell("document.want.number", "unit", unitOf(key))
}

// unitOf returns the unit at the end of a key, in words with a space before; an
// empty text where there is none.
func unitOf(key string) words.Message {
	switch {
	case strings.HasSuffix(key, "_g"):
		return words.Tell("document.in.g")
	case strings.HasSuffix(key, "_mm"):
		return words.Tell("document.in.mm")
	case strings.HasSuffix(key, "_deg"):
		return words.Tell("document.in.deg")
	case strings.HasSuffix(key, "_l"):
		return words.Tell("document.in.l")
	case strings.HasSuffix(key, "_bar"):
		return words.Tell("document.in.bar")
	}
	return words.Message{}
}
