package frametable

import (
	"math"
	"slices"
	"strings"

	"steelyard/internal/document"
	"steelyard/internal/geometry"
	"steelyard/internal/units"
	"steelyard/internal/words"
)

// Table is what was read of a text, and what it makes of a build.
type Table struct {
	Sizes   []string // the columns by their names, empty where they have none
	Size    int      // the column that is taken; -1 until one is chosen
	Figures []Figure
	Checks  []Check
	Left    []Left
	Build   *document.Build // with the figures taken; nil until a size is chosen

	Problems []document.Problem // of posing that build
}

// Figure is a figure that was recognised.
type Figure struct {
	Field   string        // of a build
	Label   words.Message // what it is called
	Printed string        // as in the text: its name and what stands there
	Unit    string        // mm or deg
	Before  float64       // of the build
	Value   float64       // what becomes of it, without a size as before
	Given   bool          // there is a value in the column chosen
	Taken   bool
	Remark  words.Message // how it was read, if that needs to be said
}

// Check holds a figure of the text against what follows from the others.
type Check struct {
	Key     string
	Label   words.Message
	Printed float64 // mm
	Follows float64 // mm
	Plus    float64 // how far the two may lie apart by rounding and by how makers measure, mm
	Agrees  bool
	Text    words.Message
}

// Options are what a person decides.
type Options struct {
	Size *int     `json:"size,omitempty"` // the column; with one alone it need not be said
	Skip []string `json:"skip,omitempty"` // fields that stay as they are
}

// known is a figure in the column that was chosen.
type known struct {
	value, half float64
}

// Read reads a text and says what it makes of a build, which stays as it is.
func Read(text string, b *document.Build, o Options) *Table {
	r := read(text)
	t := &Table{Size: -1}
	rows := r.once(t)
	columns := 0
	for i := range rows {
		columns = max(columns, len(rows[i].cells))
	}
	t.Sizes = make([]string, columns)
	copy(t.Sizes, r.sizes)
	for i := range t.Sizes {
		t.Sizes[i] = words.Shorten(t.Sizes[i])
	}
	switch {
	case o.Size != nil && *o.Size >= 0 && *o.Size < columns:
		t.Size = *o.Size
	case columns == 1:
		t.Size = 0
	}
	after := *b
	given := make(map[string]known)
	for i := range rows {
		t.figure(&rows[i], b, &after, given, o.Skip)
	}
	t.Left = append(r.left, t.Left...)
	slices.SortStableFunc(t.Left, func(a, b Left) int { return a.Line - b.Line })
	if t.Size < 0 {
		return t
	}
	t.follow(b, &after, given, o.Skip)
	t.check(&after, given)
	t.Build = &after
	_, t.Problems = geometry.Pose(&after)
	return t
}

// once returns the rows without those that say again what was said, or whose column
// is no figure.
func (r *reader) once(t *Table) []row {
	seen := make(map[string]bool)
	var rows []row
	for _, row := range r.rows {
		switch {
		case row.kind == nil:
			r.skip(row.line, row.name, "unknown")
		case seen[row.kind.id]:
			r.skip(row.line, row.name, "twice", "name", row.kind.label())
		default:
			seen[row.kind.id] = true
			rows = append(rows, row)
		}
	}
	return rows
}

// printed is what a row says, in the column chosen or in all.
func (r *row) printed(size int) string {
	var list []string
	for i := range r.cells {
		if c := &r.cells[i]; c.ok && (size < 0 || len(r.cells) == 1 || i == size) {
			list = append(list, c.text)
		}
	}
	return words.ShortenTo(strings.TrimRight(r.name, " :=")+": "+strings.Join(list, ", "), 80)
}

// figure reads the row in the column chosen and puts it into the build.
func (t *Table) figure(r *row, before, after *document.Build, given map[string]known, skip []string) {
	k := r.kind
	f := Figure{Field: k.id, Label: k.label(), Printed: r.printed(t.Size), Unit: k.unit()}
	if k.of != nil {
		f.Before = *k.of(before)
		f.Value = f.Before
	}
	at := t.Size
	if len(r.cells) == 1 {
		at = 0 // it is said once for all sizes
	}
	if at >= 0 && at < len(r.cells) && r.cells[at].ok {
		v, half, unit, ok := r.cells[at].in(k, r.unit)
		switch {
		case !ok:
			t.leave(r, "unit", "name", k.label())
			return
		case !units.Finite(v) || v <= 0 && k.from > 0 || math.Abs(v) > 5000:
			t.leave(r, "far", "name", k.label(), "value", words.Number(v))
			return
		}
		if k.id == "frame.bb_drop_mm" && v < 0 && after.Wheels.Rear.BeadSeat > 300 {
			v, f.Remark = -v, words.Tell("frametable.below")
		}
		given[k.id] = known{v, half}
		f.Value, f.Given = v, true
		switch {
		case v < k.from || v > k.to:
			f.Remark = words.Tell("frametable.odd", "low", words.Number(k.from), "high", words.Number(k.to))
		case unit == "cm" && f.Remark.IsZero():
			f.Remark = words.Tell("frametable.cm")
		case unit == "in":
			f.Remark = words.Tell("frametable.in")
		}
	} else if t.Size >= 0 {
		t.leave(r, "number")
		return
	}
	if k.of == nil {
		return // told by its check
	}
	t.put(f, k, after, skip)
}

func (t *Table) leave(r *row, why string, pairs ...any) {
	t.Left = append(t.Left, Left{r.line, r.printed(t.Size), words.Tell("frametable.left."+why, pairs...)})
}

// put tells a figure, and puts it into the build unless it is to stay.
func (t *Table) put(f Figure, k *kind, after *document.Build, skip []string) {
	if f.Given && !slices.Contains(skip, f.Field) {
		f.Taken = true
		*k.of(after) = f.Value
	}
	t.Figures = append(t.Figures, f)
}

// follow adds figures that the text does not give but that follow from it: the drop
// from the bottom bracket's height, and the fork's length, or the head tube's, that
// stands the bike on the ground.
func (t *Table) follow(before, after *document.Build, given map[string]known, skip []string) {
	derive := func(id string, value, half float64, remark string) {
		k := kindOf(id)
		value = math.Round(value)
		if value < k.from || value > k.to {
			return
		}
		given[id] = known{value, half + 0.5}
		t.put(Figure{
			Field: id, Label: k.label(), Unit: k.unit(), Before: *k.of(before), Value: value, Given: true, Remark: words.Tell("frametable." + remark),
		}, k, after, skip)
	}
	has := func(id string) bool { _, ok := given[id]; return ok }
	if h, ok := given[bbHeight]; ok && !has("frame.bb_drop_mm") {
		derive("frame.bb_drop_mm", after.Wheels.Rear.BeadSeat/2+after.Wheels.Rear.Tyre-h.value, h.half, "height")
		delete(given, bbHeight) // it says nothing more
	}
	const fork, tube = "fork.length_mm", "frame.head_tube_mm"
	if !has("frame.stack_mm") || !has("frame.head_angle_deg") || has(fork) == has(tube) {
		return
	}
	if more, ok := geometry.Lengthen(after); ok {
		if has(tube) {
			derive(fork, after.Fork.Length+more, 0, "ground")
		} else {
			derive(tube, after.Frame.HeadTube+more, 0, "ground")
		}
	}
}
