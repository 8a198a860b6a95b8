package document

import (
	"bytes"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"github.com/goccy/go-json"

	"steelyard/internal/units"
	"steelyard/internal/words"
)

// Write returns the document as text: indented, keys in a fixed order, every
// part, bag, good, rider and reading on one line, so that two versions of it can
// be compared line by line. Format and Version are set. Open of the text gives
// the same document again. A figure that is not finite, which JSON cannot hold,
// is an error that names build, part and field.
func Write(d *Document) ([]byte, error) {
	text, err := WriteCompact(d)
	if err != nil {
		return nil, err
	}
	return indent(text), nil
}

// WriteCompact is Write without any space, for a link.
func WriteCompact(d *Document) ([]byte, error) {
	out := *d
	out.Format, out.Version = Format, Version
	// An empty list is written as [], never as null.
	out.Builds = make([]Build, len(d.Builds))
	copy(out.Builds, d.Builds)
	for i := range out.Builds {
		if out.Builds[i].Parts == nil {
			out.Builds[i].Parts = []Part{}
		}
	}
	out.Loads = slices.Clone(d.Loads)
	for i := range out.Loads {
		if l := &out.Loads[i]; l.Bags == nil {
			l.Bags = []Bag{}
		}
		if l := &out.Loads[i]; l.Goods == nil {
			l.Goods = []Good{}
		}
	}
	out.WeighIns = slices.Clone(d.WeighIns)
	for i := range out.WeighIns {
		if w := &out.WeighIns[i]; w.Readings == nil {
			w.Readings = []Reading{}
		}
	}
	out.Days = slices.Clone(d.Days)
	for i := range out.Days {
		if y := &out.Days[i]; y.Stretches == nil {
			y.Stretches = []Stretch{}
		}
	}
	text, err := json.MarshalWithOption(&out, json.DisableHTMLEscape())
	if err != nil {
		if err := notFinite(d); err != nil {
			return nil, err
		}
		return nil, words.Tell("document.write", "why", err)
	}
	return text, nil
}

// notFinite finds the first figure that JSON cannot hold.
func notFinite(d *Document) error {
	show := *d
	show.Builds, show.Riders, show.Loads, show.WeighIns, show.Days = nil, nil, nil, nil, nil
	if key := unwritable(show); key != "" {
		return words.Tell("document.write.infinite", "key", key)
	}
	for i := range d.Builds {
		b := d.Builds[i]
		of := entity{kindBuild, b.ID, b.Name}
		for j := range b.Parts {
			p := &b.Parts[j]
			if err := notFiniteOf(*p, entity{kindPart, p.ID, p.Name}, of); err != nil {
				return err
			}
		}
		b.Parts = nil
		if err := notFiniteOf(b, of, entity{}); err != nil {
			return err
		}
	}
	for i := range d.Riders {
		r := &d.Riders[i]
		if err := notFiniteOf(*r, entity{kindRider, r.ID, r.Name}, entity{}); err != nil {
			return err
		}
	}
	for i := range d.Loads {
		l := &d.Loads[i]
		of := entity{kindLoad, l.ID, l.Name}
		for j := range l.Bags {
			b := &l.Bags[j]
			if err := notFiniteOf(*b, entity{kindBag, b.ID, b.Name}, of); err != nil {
				return err
			}
		}
		for j := range l.Goods {
			g := &l.Goods[j]
			if err := notFiniteOf(*g, entity{kindGood, g.ID, g.Name}, of); err != nil {
				return err
			}
		}
	}
	for i := range d.WeighIns {
		w := &d.WeighIns[i]
		if err := notFiniteOf(*w, entity{kindWeighIn, w.ID, w.Name}, entity{}); err != nil {
			return err
		}
	}
	for i := range d.Days {
		y := &d.Days[i]
		if err := notFiniteOf(*y, entity{kindDay, y.ID, y.Name}, entity{}); err != nil {
			return err
		}
	}
	return nil
}

func notFiniteOf(v any, it, of entity) error {
	key := unwritable(v)
	if key == "" {
		return nil
	}
	why := words.Tell("document.write.infinite", "key", key)
	if of.hold == kindNothing {
		return words.Tell("document.placed", "what", it.title(), "message", why)
	}
	return words.Tell("document.placed.of", "what", it.title(), "of", of.title(), "message", why)
}

// indent lays out compact JSON: a tab for each level, with each part and each
// other entity of its kind on one line: see flat. The library's own indent would
// give every coordinate a line.
func indent(text []byte) []byte {
	var out bytes.Buffer
	out.Grow(2 * len(text))
	depth := 0
	line := func() {
		out.WriteByte('\n')
		for range depth {
			out.WriteByte('\t')
		}
	}
	for i := 0; i < len(text); i++ {
		switch c := text[i]; c {
		case '{', '[':
			if n := flat(text[i:]); n > 0 {
				spread(&out, text[i:i+n])
				i += n - 1
				continue
			}
			out.WriteByte(c)
			depth++
			line()
		case '}', ']':
			depth--
			line()
			out.WriteByte(c)
		case ',':
			out.WriteByte(c)
			line()
		case ':':
			out.WriteString(": ")
		case '"':
			n := stringLength(text[i:])
			out.Write(text[i : i+n])
			i += n - 1
		default:
			out.WriteByte(c)
		}
	}
	out.WriteByte('\n')
	return out.Bytes()
}

// inLine stands before the one list of objects that does not spread its part
// over lines: the stages of a gearbox.
var inLine = []byte(`"stages":`)

// flat returns the length of the object or list at the start of text if it
// stays on one line, and 0 if it does not: when it is, or holds, a list of
// objects or an empty list, which may become one, stages aside. So a part takes one line,
// whatever is known of it, and so do a bag, a good, a rider and a reading; a
// build, a load and a weigh-in take a line for each of their keys.
func flat(text []byte) int {
	depth := 0
	for i := 0; i < len(text); i++ {
		switch text[i] {
		case '[':
			if i+1 < len(text) && (text[i+1] == '{' || text[i+1] == ']') && !bytes.HasSuffix(text[:i], inLine) {
				if i == 0 && text[1] == ']' {
					return 2
				}
				return 0
			}
			depth++
		case '{':
			depth++
		case ']', '}':
			if depth--; depth == 0 {
				return i + 1
			}
		case '"':
			i += stringLength(text[i:]) - 1
		}
	}
	return 0
}

// spread writes a flat object or list with a space after each comma and colon.
func spread(out *bytes.Buffer, text []byte) {
	for i := 0; i < len(text); i++ {
		out.WriteByte(text[i])
		switch text[i] {
		case ',', ':':
			out.WriteByte(' ')
		case '"':
			n := stringLength(text[i:])
			out.Write(text[i+1 : i+n])
			i += n - 1
		}
	}
}

// stringLength returns the length of the JSON string at the start of text,
// quotes included.
func stringLength(text []byte) int {
	for i := 1; i < len(text); i++ {
		switch text[i] {
		case '\\':
			i++
		case '"':
			return i + 1
		}
	}
	return len(text)
}

// unwritable returns the key of the first figure in v that is not finite, with
// dots, or "" when there is none.
func unwritable(v any) string { return notFiniteIn(reflect.ValueOf(v)) }

func notFiniteIn(v reflect.Value) string {
	switch v.Kind() {
	case reflect.Float64:
		if !units.Finite(v.Float()) {
			return "."
		}
	case reflect.Pointer:
		if !v.IsNil() {
			return notFiniteIn(v.Elem())
		}
	case reflect.Array:
		for i := range v.Len() {
			if notFiniteIn(v.Index(i)) != "" {
				return "."
			}
		}
	case reflect.Slice:
		for i := range v.Len() {
			if rest := notFiniteIn(v.Index(i)); rest != "" {
				return strconv.Itoa(i) + "." + rest
			}
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if rest := notFiniteIn(v.Field(i)); rest != "" {
				key, _, _ := strings.Cut(v.Type().Field(i).Tag.Get("json"), ",")
				if rest == "." {
					return key
				}
				return key + "." + rest
			}
		}
	}
	return ""
}
