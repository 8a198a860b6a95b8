package parts

import (
	"math"
	"slices"
	"sort"
	"strconv"
	"strings"
	"sync"

	"steelyard/internal/document"
	"steelyard/internal/words"
)

// Size is a size that somebody asks an entry of the catalogue to have. The zero
// Size leaves the entry as it is.
type Size struct {
	Value float64 // in the unit of the entry's kind, see sizings; of a cassette, the teeth of its largest cog
	Least float64 // teeth of a cassette's smallest cog, 0 for the entry's
}

// sizing says which size a kind of part is called by, and within what it is one.
type sizing struct {
	unit      string // as the name of an entry has it; "-" for a tyre's width before its bead seat
	low, high float64
	shape     int     // which of the shape's sizes it is, where the name does not have it; -1 is none
	per       float64 // that size for a size of 1
}

// Sizes are in mm, l, ml, Ah and teeth. What is beyond the bounds is no such
// part, or more likely its mass: common practice, no source.
var sizings = map[string]sizing{
	"tyre":      {unit: "-", low: 18, high: 127, shape: -1},
	"rotor":     {unit: "mm", low: 120, high: 250, shape: -1},
	"fork":      {unit: "mm", low: 60, high: 220, shape: -1},
	"bottle":    {unit: "l", low: 0.1, high: 30, shape: -1},
	"water":     {unit: "l", low: 0.1, high: 30, shape: -1},
	"bag":       {unit: "l", low: 0.5, high: 90, shape: -1},
	"sealant":   {unit: "ml", low: 20, high: 300, shape: -1},
	"battery":   {unit: "ah", low: 1, high: 60, shape: -1},
	"stem":      {unit: "mm", low: 20, high: 140, shape: 0, per: 1},
	"crank":     {unit: "mm", low: 130, high: 190, shape: 0, per: 2}, // the box is over both
	"bar":       {unit: "mm", low: 340, high: 900, shape: 1, per: 1},
	"chainring": {unit: "t", low: 18, high: 60, shape: -1},
	"cog":       {unit: "t", low: 9, high: 26, shape: -1},
	"cassette":  {unit: "t", low: 22, high: 56, shape: -1},
}

// figure is a number in what somebody typed, with the unit behind it.
type figure struct {
	text  string // the number, as words are compared
	value float64
	unit  string // "" for none
	word  int    // its place among the words
	words int    // that it takes up
}

// sizeUnits are the units of sizes as people write them, folded.
var sizeUnits = map[string]string{
	"mm": "mm", "cm": "cm", "l": "l", "litre": "l", "litres": "l", "liter": "l", "liters": "l", "ml": "ml", "ah": "ah", "mah": "mah",
	"t": "t", "z": "t", "teeth": "t", "tooth": "t", "zahn": "t", "zahne": "t", "in": "in", "inch": "in", "inches": "in", "zoll": "in",
}

// figuresOf finds the numbers among the words of a query. What has other letters
// behind it, as 12fach and 700c, is a word.
func figuresOf(words []string) []figure {
	var all []figure
	for i, w := range words {
		if !isFigure(w) {
			continue
		}
		number := w[:len(w)-len(strings.TrimLeft(w, "0123456789."))]
		v, err := strconv.ParseFloat(number, 64)
		if err != nil {
			continue
		}
		f := figure{text: number, value: v, word: i, words: 1}
		unit := w[len(number):]
		if unit == "" && i+1 < len(words) && sizeUnits[words[i+1]] != "" {
			unit, f.words = words[i+1], 2
		}
		if unit != "" {
			if f.unit = sizeUnits[unit]; f.unit == "" {
				continue
			}
		}
		all = append(all, f)
	}
	return all
}

// in returns a figure in a unit of sizes, false where it cannot be in that.
func (f *figure) in(unit string) (float64, bool) {
	v := f.value
	switch from := f.unit; {
	case from == unit, from == "":
		return v, true
	case unit == "-" && from == "mm":
		return v, true
	case (unit == "-" || unit == "mm") && from == "in":
		return math.Round(v * 25.4), true
	case unit == "mm" && from == "cm":
		return v * 10, true
	case unit == "l" && from == "ml", unit == "ah" && from == "mah":
		return v / 1000, true
	case unit == "ml" && from == "l":
		return v * 1000, true
	}
	return 0, false
}

// takes returns the size that figures ask of an entry, false where they do not, or
// ask for something else that it is not. Without a unit, a tyre's 2.4 is in
// inches, a drop bar's 44 in centimetres, and a bottle's 500 in millilitres:
// common practice, no source.
func (e *Entry) takes(figures []figure, x *indexed) (Size, bool) {
	s, ok := sizings[e.Kind]
	if !ok {
		return Size{}, false
	}
	own, named := namedSizes()[e.ID]
	teeth := s.unit == "t" && e.Gearing != nil && len(e.Gearing.Teeth) > 0
	if !named && !teeth && (s.shape < 0 || s.unit == "t") {
		return Size{}, false
	}
	if e.Kind == "cassette" && teeth && len(figures) == 2 && figures[0].value < figures[1].value && figures[0].value >= 9 && figures[0].value <= 16 {
		if v, ok := figures[1].in("t"); ok && v >= s.low && v <= s.high && v == math.Trunc(v) && figures[0].value == math.Trunc(figures[0].value) {
			return Size{Value: v, Least: figures[0].value}, true
		}
	}
	for i := range figures {
		f := &figures[i]
		v, ok := f.in(s.unit)
		if !ok {
			continue
		}
		low, high := s.low, s.high
		switch {
		case f.unit != "":
		case s.unit == "-" && strings.Contains(f.text, ".") && v >= 1 && v <= 5:
			v = math.Round(v * 25.4)
		case s.unit == "l" && v >= 200:
			v /= 1000
		case e.Kind == "bar":
			if low = 560; e.Shape.Size[s.shape] < low {
				if low, high = 34, 56; v >= low && v <= high {
					v, low, high = 10*v, 340, 560
				}
			}
		}
		if own.to > 0 { // the name has a range
			low, high = own.value, own.to
		}
		if v < low || v > high || s.unit == "t" && v != math.Trunc(v) {
			continue
		}
		others := true
		for j := range figures {
			if j != i && !x.has(figures[j].text) {
				others = false
			}
		}
		if others {
			return Size{Value: v}, true
		}
	}
	return Size{}, false
}

// has reports whether one of the words that an entry is found by is this one.
func (x *indexed) has(w string) bool {
	return slices.Contains(x.name, w) || slices.Contains(x.search, w) || slices.Contains(x.spoken, w)
}

// namedSize is the size in an entry's name, and the entries that differ from it
// only in that.
type namedSize struct {
	value, to float64 // to is the end of a range, else 0
	family    *[]int  // places in the catalogue, by size
}

var namedSizes = sync.OnceValue(func() map[string]namedSize {
	sizes := make(map[string]namedSize)
	families := make(map[string]*[]int)
	for i := range Catalogue() {
		e := &Catalogue()[i]
		start, end, value, to := sizeIn(e.Name, sizings[e.Kind].unit)
		if end == 0 {
			continue
		}
		like := e.Kind + ":" + e.Name[:start] + "#" + e.Name[end:]
		if families[like] == nil {
			families[like] = new([]int)
		}
		*families[like] = append(*families[like], i)
		sizes[e.ID] = namedSize{value, to, families[like]}
	}
	for _, family := range families {
		sort.Slice(*family, func(i, j int) bool {
			return sizes[Catalogue()[(*family)[i]].ID].value < sizes[Catalogue()[(*family)[j]].ID].value
		})
	}
	return sizes
})

// sizeIn finds the number with a unit in a name: where it stands, and what it is.
// Before it there may be another and a word: 35 to 60 mm.
func sizeIn(name, unit string) (start, end int, value, to float64) {
	if unit == "" || unit == "t" {
		return
	}
	before := -1 // where the number before this one begins
	ended := 0
	for i := 0; i < len(name); {
		if name[i] < '0' || name[i] > '9' {
			i++
			continue
		}
		j := i + len(name[i:]) - len(strings.TrimLeft(name[i:], "0123456789.,"))
		number := strings.TrimRight(name[i:j], ".,")
		j = i + len(number)
		v, err := strconv.ParseFloat(strings.Replace(number, ",", ".", 1), 64)
		rest := strings.ToLower(strings.TrimLeft(name[j:], " "))
		if err == nil && strings.HasPrefix(rest, unit) && (len(rest) == len(unit) || rest[len(unit)] < 'a' || rest[len(unit)] > 'z') {
			if before >= 0 && len(strings.Fields(name[ended:i])) == 1 && !strings.ContainsAny(name[ended:i], ",-") {
				from, err := strconv.ParseFloat(strings.TrimRight(name[before:ended], ".,"), 64)
				if err == nil {
					return before, j, from, v
				}
			}
			return i, j, v, 0
		}
		before, ended = i, j
		i = j
	}
	return 0, 0, 0, 0
}

// Sized returns the entry in a size, called in a language. What the catalogue
// knows of other sizes of it says what it weighs: between two of them in
// proportion, beyond them as much more or less as the size is, and then a quarter
// of that further goes to the half-width, except for what is sold by volume.
func (e *Entry) Sized(s Size, w *words.Words) *Entry {
	out := e.In(w)
	sizing := sizings[e.Kind]
	own, named := namedSizes()[e.ID]
	switch {
	case s == Size{}:
		return out
	case named && own.to == 0:
		if s.Value == own.value {
			return out
		}
		out.between(*own.family, s.Value)
	case sizing.unit == "t":
		teeth := resized(e.Gearing.Teeth, int(s.Least), int(s.Value))
		if slices.Equal(teeth, e.Gearing.Teeth) {
			return out
		}
		out.Gearing = e.Gearing.Clone()
		out.Gearing.Teeth = teeth
		if e.Shape.Form == document.FormDisc {
			out.Shape.Size[0] = math.Round(e.Shape.Size[0] * float64(slices.Max(teeth)) / float64(slices.Max(e.Gearing.Teeth)))
		}
		text := strconv.Itoa(slices.Max(teeth))
		if len(teeth) > 1 {
			text = strconv.Itoa(slices.Min(teeth)) + "–" + text
		}
		out.Name += ", " + w.Say("parts.teeth", "n", text)
		return out
	default:
		if length := s.Value * sizing.per; length != e.Shape.Size[sizing.shape] {
			out.Shape.Size[sizing.shape] = length
		} else if !named {
			return out
		}
	}
	value := strconv.FormatFloat(s.Value, 'f', -1, 64)
	if w.Comma() {
		value = strings.Replace(value, ".", ",", 1)
	}
	if start, end, _, _ := sizeIn(out.Name, sizing.unit); end > 0 {
		out.Name = out.Name[:start] + value + out.Name[end:]
	} else {
		out.Name += ", " + value + " mm"
	}
	return out
}

// between gives an entry mass, half-width and shape of a size among those of a
// family.
func (e *Entry) between(family []int, size float64) {
	at := func(i int) (*Entry, float64) {
		x := &Catalogue()[family[i]]
		return x, namedSizes()[x.ID].value
	}
	i := sort.Search(len(family), func(i int) bool { _, v := at(i); return v >= size })
	if i > 0 && i < len(family) {
		a, from := at(i - 1)
		b, to := at(i)
		share := (size - from) / (to - from)
		mix := func(x, y float64) float64 { return x + share*(y-x) }
		e.Mass, e.HalfWidth = math.Round(mix(a.Mass, b.Mass)), math.Ceil(mix(a.HalfWidth, b.HalfWidth))
		for k := range e.Shape.Size {
			e.Shape.Size[k] = mix(a.Shape.Size[k], b.Shape.Size[k])
		}
		return
	}
	near, from := at(min(i, len(family)-1))
	ratio := size / from
	e.Mass, e.HalfWidth, e.Shape.Size = max(1, math.Round(near.Mass*ratio)), near.HalfWidth*ratio, near.Shape.Size
	if e.Kind != "water" && e.Kind != "sealant" {
		e.HalfWidth += math.Abs(e.Mass-near.Mass) / 4
	}
	e.HalfWidth = math.Ceil(min(e.HalfWidth, e.Mass/2))
	switch {
	case ratio == 1:
	case e.Kind == "rotor": // its radius is half of its diameter
		e.Shape.Size[0] = size / 2
	case e.Kind == "tyre": // its middle lies half its width outside the bead seat
		e.Shape.Size[0] = near.Shape.Size[0] + (size-from)/2
	case near.Shape.Form == document.FormBox && e.Kind == "bag":
		for k := range e.Shape.Size {
			e.Shape.Size[k] = math.Round(near.Shape.Size[k] * math.Cbrt(ratio))
		}
	}
}

// resized spreads the teeth of cogs between another least and most, in steps of
// like ratio. A least of 0 keeps the least, except of a single ring or cog.
func resized(teeth []int, least, most int) []int {
	if len(teeth) == 1 {
		return []int{most}
	}
	low, high := slices.Min(teeth), slices.Max(teeth)
	if least == 0 {
		least = low
	}
	out := make([]int, len(teeth))
	for i, n := range teeth {
		share := math.Log(float64(n)/float64(low)) / math.Log(float64(high)/float64(low))
		out[i] = int(math.Round(float64(least) * math.Pow(float64(most)/float64(least), share)))
	}
	return out
}
