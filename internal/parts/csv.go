package parts

import (
	"bytes"
	"encoding/binary"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"sort"
	"strconv"
	"strings"
	"unicode/utf16"
	"unicode/utf8"

	"steelyard/internal/units"
)

// Limits of a list of parts.
const (
	MaxCSVText = 4 << 20 // bytes
	MaxCSVRows = 10000

	maxColumns     = 200
	maxRecordLines = 20 // a quoted cell with more line breaks has lost its closing quote
	maxLostQuotes  = 20 // of one list
)

// Fields that a column of a list may be, by the keys of CSVOptions.Columns.
// Those after note are written by WriteCSV and rarely found elsewhere.
var CSVFields = []string{
	"name", "mass", "half_width", "quantity", "kind", "basis", "station", "carrier", "note",
	"offset_x", "offset_y", "offset_z", "within", "catalogue", "id",
}

// CSVOptions say what the caller knows about a list. The zero value knows
// nothing and lets ReadCSV find out.
type CSVOptions struct {
	Columns  map[string]int `json:"columns,omitempty"`   // field to column, from 0; nil is to be guessed
	MassUnit string         `json:"mass_unit,omitempty"` // of masses without a unit in cell or header: "g" (also when empty), "kg", "lb" or "oz"
	Taken    []string       `json:"taken,omitempty"`     // ids of parts that are in use
	Stations []string       `json:"-"`                   // the stations there are; nil takes every name as it is
}

// CSVResult is what was found in a list.
type CSVResult struct {
	Columns   []string       `json:"columns"`   // the headers, or "Column 1", ...
	Guess     map[string]int `json:"guess"`     // field to column, as used
	Header    bool           `json:"header"`    // whether the first row is one
	Separator string         `json:"separator"` // between the cells
	Rows      int            `json:"rows"`      // rows that are not empty, without the header
	Parts     []Part         `json:"parts"`     // the good rows
	Bad       []BadRow       `json:"bad"`       // the others
	Problems  []Problem      `json:"problems"`  // with the list as a whole
}

// BadRow is a row that is no part.
type BadRow struct {
	Line int    `json:"line"` // where it begins, from 1
	Text string `json:"text"` // as it stands, shortened
	Why  string `json:"why"`
}

// ReadCSV reads a list of parts: RFC 4180 and what spreadsheets make of it. The
// cells may be separated by comma, semicolon or tab; numbers may have a decimal
// point or comma. A first row of headers in English, German or French is
// understood, with units ("Weight (kg)", "mass_g"); without one the columns are
// told by what is in them. At least a name and a mass must be there.
//
// A row becomes a part with an id of its own. What the list does not say is
// taken from the most alike part of the catalogue: kind, station, carrier and
// shape. The basis is "stated", or "guessed" for a mass with "about" or ~ before
// it, and the half-width goes by it, see Basis.HalfWidth. A row that cannot be
// read is told with its line and the reason, and the others are read.
func ReadCSV(text []byte, opt CSVOptions) CSVResult {
	r := csvReader{opt: opt, result: CSVResult{Columns: []string{}, Guess: map[string]int{}, Parts: []Part{}, Bad: []BadRow{}, Problems: []Problem{}}}
	r.read(text)
	return r.result
}

type csvReader struct {
	opt    CSVOptions
	result CSVResult

	separator rune
	headers   []header // of the columns; empty ones without a header row
	decimal   rune     // decimal sign of the list's numbers, 0 if that is open
	taken     map[string]bool
	warned    map[string]bool // what was told once already
}

// row is a row of cells, trimmed.
type row struct {
	line  int
	cells []string
	text  string
}

func (r *csvReader) fail(format string, args ...any) {
	r.result.Problems = append(r.result.Problems, Problem{Severity: SeverityError, Message: fmt.Sprintf(format, args...)})
}

// warn tells something about the list once.
func (r *csvReader) warn(format string, args ...any) {
	message := fmt.Sprintf(format, args...)
	if r.warned == nil {
		r.warned = make(map[string]bool)
	}
	if r.warned[message] || len(r.warned) >= 20 {
		return
	}
	r.warned[message] = true
	r.result.Problems = append(r.result.Problems, Problem{Severity: SeverityWarning, Message: message})
}

func (r *csvReader) bad(row row, format string, args ...any) {
	r.result.Bad = append(r.result.Bad, BadRow{Line: row.line, Text: row.text, Why: fmt.Sprintf(format, args...)})
}

func (r *csvReader) read(raw []byte) {
	if len(raw) > MaxCSVText {
		r.fail("This list is larger than %d MiB; a list is at most that.", MaxCSVText>>20)
		return
	}
	if u := r.opt.MassUnit; u != "" && !slices.Contains([]string{units.Gram, units.Kilogram, units.Pound, units.Ounce}, u) {
		r.fail("The unit of the masses is %s; it should be g, kg, lb or oz.", quote(u))
		return
	}
	text := r.decode(raw)
	text, skipped := r.separate(text)
	rows := r.split(text, skipped)
	if len(rows) == 0 {
		if len(r.result.Bad) == 0 {
			r.fail("There is nothing in this list; it should have a row for each part, with name and mass.")
		}
		return
	}
	rows = r.head(rows)
	r.result.Rows = len(rows) + len(r.result.Bad)
	r.columns(rows)
	for _, f := range []string{"name", "mass"} {
		if _, ok := r.result.Guess[f]; !ok {
			r.fail("No column of this list holds the %s of the parts; say which one does.", f)
		}
	}
	if len(r.result.Problems) > 0 && r.result.Problems[len(r.result.Problems)-1].Severity == SeverityError {
		return
	}
	r.findDecimal(rows)
	r.taken = make(map[string]bool, len(r.opt.Taken))
	for _, id := range r.opt.Taken {
		r.taken[id] = true
	}
	for _, row := range rows {
		if p, why := r.part(row); why != "" {
			r.bad(row, "%s", why)
		} else {
			r.result.Parts = append(r.result.Parts, p)
		}
	}
	sort.SliceStable(r.result.Bad, func(i, j int) bool { return r.result.Bad[i].Line < r.result.Bad[j].Line })
	r.suspect()
}

// suspect warns when the masses are those of no parts.
func (r *csvReader) suspect() {
	most := 0.0
	for _, p := range r.result.Parts {
		most = max(most, p.Mass)
	}
	if r.headers[r.result.Guess["mass"]].unit == "" && len(r.result.Parts) >= 5 && most > 0 && most < 25 {
		r.warn("No part of this list weighs more than %s g; are the masses in another unit?", number(most))
	}
}

// decode makes UTF-8 of what spreadsheets write: UTF-8 with or without a byte
// order mark, UTF-16 with one, or the Western code page 1252.
func (r *csvReader) decode(raw []byte) string {
	for mark, order := range map[string]binary.ByteOrder{"\xff\xfe": binary.LittleEndian, "\xfe\xff": binary.BigEndian} {
		if rest, ok := bytes.CutPrefix(raw, []byte(mark)); ok {
			wide := make([]uint16, len(rest)/2)
			for i := range wide {
				wide[i] = order.Uint16(rest[2*i:])
			}
			return string(utf16.Decode(wide))
		}
	}
	raw = bytes.TrimPrefix(raw, []byte("\xef\xbb\xbf"))
	if utf8.Valid(raw) {
		return string(raw)
	}
	r.warn("This list is not in UTF-8; it was read as Windows-1252. Look at the letters beyond A to Z.")
	var b strings.Builder
	for _, c := range raw {
		switch {
		case c >= 0x80 && c < 0xa0:
			b.WriteRune(windows1252[c-0x80])
		default:
			b.WriteRune(rune(c))
		}
	}
	return b.String()
}

// windows1252 are the characters 80 to 9F of that code page; all others are as
// in Unicode. Five are not used.
var windows1252 = []rune("€\ufffd‚ƒ„…†‡ˆ‰Š‹Œ\ufffdŽ\ufffd\ufffd‘’“”•–—˜™š›œ\ufffdžŸ")

// separate finds what separates the cells. A first line "sep=;" says it, and is
// taken off.
func (r *csvReader) separate(text string) (rest string, skipped int) {
	first, after, _ := strings.Cut(text, "\n")
	if s, ok := strings.CutPrefix(strings.ToLower(strings.TrimRight(first, "\r")), "sep="); ok && len(s) == 1 && strings.Contains(",;\t|", s) {
		r.separator, text, skipped = rune(s[0]), after, 1
	} else {
		r.separator = separatorOf(text)
	}
	r.result.Separator = string(r.separator)
	return text, skipped
}

// separatorOf looks at the first lines. Tab and semicolon stand in nearly every
// line of a list that they separate, and hardly ever elsewhere; a comma may also
// be a decimal sign or part of a name.
func separatorOf(text string) rune {
	lines := 0
	with := make(map[rune]int)
	seen := make(map[rune]bool)
	quoted := 0 // lines since a quote was opened at the beginning of a cell; 0 is outside
	for line := range strings.Lines(text) {
		if strings.TrimSpace(line) == "" {
			continue
		}
		if quoted > maxRecordLines {
			quoted = 0 // that quote has lost its partner
		}
		if quoted > 0 {
			quoted++
		} else {
			if lines++; lines > 50 {
				break
			}
			clear(seen)
		}
		begins := true
		for _, c := range line[:min(len(line), 4000)] {
			separates := c == ',' || c == ';' || c == '\t'
			switch {
			case c == '"' && quoted > 0:
				quoted = 0
			case c == '"' && begins:
				quoted = 1
			case quoted == 0 && separates && !seen[c]:
				seen[c] = true
				with[c]++
			}
			begins = separates
		}
	}
	for _, c := range []rune{'\t', ';'} {
		if with[c]*10 >= lines*7 && with[c] > 0 {
			return c
		}
	}
	if with[',']*10 >= lines*5 {
		return ','
	}
	best := ','
	for _, c := range []rune{'\t', ';'} {
		if with[c] > with[best] {
			best = c
		}
	}
	return best
}

// split cuts the text into rows of cells. Rows that are empty are left out.
func (r *csvReader) split(text string, line int) []row {
	var rows []row
	lost, records := 0, 0
	for text != "" {
		c := csv.NewReader(strings.NewReader(text))
		c.Comma, c.LazyQuotes, c.FieldsPerRecord, c.ReuseRecord = r.separator, true, -1, true
		restart := -1
		for restart < 0 {
			start := int(c.InputOffset())
			cells, err := c.Read()
			if errors.Is(err, io.EOF) {
				return rows
			}
			end := int(c.InputOffset())
			record := text[start:end]
			// The reader passes over empty lines before the record.
			for {
				rest, ok := strings.CutPrefix(strings.TrimPrefix(record, "\r"), "\n")
				if !ok {
					break
				}
				line++
				record = rest
			}
			lines := strings.Count(strings.TrimRight(record, "\r\n"), "\n") + 1
			at := row{line: line + 1, text: cut(record, 120)}
			if err != nil {
				r.bad(at, "this row cannot be read: %v", err)
				line += lines
				continue
			}
			if lines > 1 && (lines > maxRecordLines || !r.closed(record)) {
				// Take the first line for lost, and go on after it.
				first := strings.IndexByte(record, '\n') + 1
				at.text = cut(record[:first], 120)
				r.bad(at, "a quote is opened in this line and not closed")
				line++
				if lost++; lost > maxLostQuotes {
					r.fail("More than %d quotes are opened and not closed; the rest of the list, from line %d, was not read.", maxLostQuotes, line+1)
					return rows
				}
				restart = end - len(record) + first
				break
			}
			line += lines
			if records++; records > 10*MaxCSVRows {
				r.warn("This list has more than %d rows, empty ones included; those from line %d were not read.", 10*MaxCSVRows, at.line)
				return rows
			}
			if len(cells) > maxColumns {
				r.bad(at, "this row has %d cells; a list of parts has at most %d", len(cells), maxColumns)
				continue
			}
			at.cells = make([]string, len(cells))
			filled := false
			for i, s := range cells {
				at.cells[i] = strings.TrimSpace(s)
				filled = filled || at.cells[i] != ""
			}
			if !filled {
				continue
			}
			if len(rows)+len(r.result.Bad) >= MaxCSVRows+1 {
				r.warn("This list has more than %d rows; those from line %d were not read.", MaxCSVRows, at.line)
				return rows
			}
			rows = append(rows, at)
		}
		text = text[restart:]
	}
	return rows
}

// closed says whether a record of several lines has its quotes where they
// belong. The lenient reader takes a lost one as running to the next, or to the
// end of the list.
func (r *csvReader) closed(record string) bool {
	c := csv.NewReader(strings.NewReader(record))
	c.Comma, c.FieldsPerRecord = r.separator, -1
	_, err := c.Read()
	return err == nil
}

// cell returns the cell of a row that holds a field, "" if there is none.
func (r *csvReader) cell(row row, field string) string {
	if i, ok := r.result.Guess[field]; ok && i < len(row.cells) {
		return row.cells[i]
	}
	return ""
}

// textCell is cell for a text: without the apostrophe that keeps a spreadsheet
// from taking it for a formula.
func (r *csvReader) textCell(row row, field string) string { return uncover(r.cell(row, field)) }

// findDecimal finds the decimal sign of the list: what most numbers prove it to
// be. Numbers that leave it open (1.234) then follow them.
func (r *csvReader) findDecimal(rows []row) {
	points, commas := 0, 0
	for _, row := range rows {
		for _, f := range []string{"mass", "half_width", "offset_x", "offset_y", "offset_z", "within"} {
			switch units.DecimalMark(r.cell(row, f)) {
			case '.':
				points++
			case ',':
				commas++
			}
		}
	}
	switch {
	case points > 0 && commas > 0:
		r.decimal = 0 // let every number speak for itself
	case points > 0:
		r.decimal = '.'
	case commas > 0:
		r.decimal = ','
	case r.separator == ',':
		r.decimal = '.' // who has a decimal comma has another separator
	case r.separator == ';' && r.ours():
		r.decimal = ','
	}
}

// ours says whether WriteCSV wrote the list.
func (r *csvReader) ours() bool {
	return slices.Equal(r.result.Columns, csvHeader)
}

// part makes a part of a row, or says why it is none.
func (r *csvReader) part(row row) (p Part, why string) {
	name, massText := r.textCell(row, "name"), r.cell(row, "mass")
	if name == "" {
		return p, "there is no name"
	}
	if massText == "" {
		return p, "there is no mass"
	}
	if isTotal(name) {
		return p, "this looks like a total, not like a part"
	}

	kind := r.kind(row, name)
	entry := EntryByID(r.textCell(row, "catalogue"))
	origin := ""
	if entry != nil {
		origin = entry.ID
	} else if entry = entryByName(name); entry == nil || entry.Kind != kind {
		entry = guessEntry(kind, name)
	}
	if entry != nil {
		p = entry.Part("")
	} else {
		p = Part{Station: "frame", Carrier: MainFrame, Within: 300, Shape: Shape{Form: FormPoint}}
	}
	if strings.ContainsAny(name, "\r\n") {
		name = strings.Join(strings.Fields(name), " ")
	}
	p.Name, p.Kind, p.Catalogue, p.Quantity = name, kind, origin, 1
	p.Note = r.textCell(row, "note")

	if s := r.cell(row, "quantity"); s != "" {
		n, ok := pieces(s)
		if !ok || n > MaxQuantity {
			return p, fmt.Sprintf("the quantity is %s; it should be a whole number from 0 to %d", quote(s), MaxQuantity)
		}
		p.Quantity = n
	}

	massText, about := withoutAbout(massText)
	p.Basis = Stated
	if about {
		p.Basis = Guessed
	}
	if s := r.textCell(row, "basis"); s != "" {
		if b, ok := basisWords[fold(s)]; ok {
			p.Basis = b
		} else {
			r.warn("The basis %s is not known; the mass is taken as %s.", quote(s), quote(string(p.Basis)))
		}
	}
	grams, err := r.mass(massText, "mass")
	if err != nil {
		return p, "the mass: " + err.Error()
	}
	if r.perLine() && p.Quantity > 1 {
		grams /= float64(p.Quantity)
	}
	p.Mass = grams
	p.HalfWidth = p.Basis.HalfWidth(p.Mass)
	if s := r.cell(row, "half_width"); s != "" {
		s = strings.TrimLeft(strings.TrimPrefix(s, "+/-"), "±+ ")
		if share, ok := strings.CutSuffix(s, "%"); ok {
			// A share is a number like any other; the mass gives it its unit.
			v, err := units.ParseMassMarked(share, units.Gram, r.decimal)
			if err != nil {
				return p, "the half-width: " + err.Error()
			}
			p.HalfWidth = v / 100 * p.Mass
		} else if p.HalfWidth, err = r.mass(s, "half_width"); err != nil {
			return p, "the half-width: " + err.Error()
		}
	}
	if why := r.place(row, &p); why != "" {
		return p, why
	}

	p.ID = r.textCell(row, "id")
	if p.ID == "" || r.taken[p.ID] {
		p.ID = freshID("p", r.taken)
	}
	r.taken[p.ID] = true
	c := checker{}
	c.one(&p)
	for _, problem := range c.problems {
		if problem.Severity == SeverityError {
			return p, problem.Message
		}
	}
	return p, ""
}

// mass reads a mass in the unit of its cell, of its column or of the list.
func (r *csvReader) mass(s, field string) (float64, error) {
	unit := r.headers[r.result.Guess[field]].unit
	if unit == "" {
		unit = r.opt.MassUnit
	}
	if unit == "" {
		unit = units.Gram
	}
	return units.ParseMassMarked(s, unit, r.decimal)
}

// perLine says whether the masses are those of all pieces of a row.
func (r *csvReader) perLine() bool { return r.headers[r.result.Guess["mass"]].total }

// kind finds the kind of a row's part.
func (r *csvReader) kind(row row, name string) string {
	if s := r.textCell(row, "kind"); s != "" {
		if id := strings.Join(wordsOf(s), "-"); kindGroup[id] != "" {
			return id
		}
		if kind := GuessKind(name); kind != "" {
			return kind
		}
		if kind := GuessKind(s); kind != "" {
			return kind
		}
	}
	if e := entryByName(name); e != nil {
		return e.Kind
	}
	if kind := GuessKind(name); kind != "" {
		return kind
	}
	return "other"
}

// place puts a part where the row says. It returns why that cannot be.
func (r *csvReader) place(row row, p *Part) string {
	station := r.textCell(row, "station")
	known := station
	if station != "" {
		if known = strings.Join(wordsOf(station), "-"); r.opt.Stations != nil && !slices.Contains(r.opt.Stations, known) {
			r.warn("There is no station %s; such parts are placed by their kind.", quote(station))
			known = ""
		}
	}
	if known != "" && known != p.Station {
		p.Station, p.Offset = known, Vec3{}
		if c := carrierAt(known); c != "" {
			p.Carrier = c
		}
	}
	var offset Vec3
	there := false
	for i, f := range []string{"offset_x", "offset_y", "offset_z"} {
		s := r.cell(row, f)
		if s == "" {
			continue
		}
		v, err := units.ParseLengthMarked(s, units.Millimetre, r.decimal)
		if err != nil {
			return "the offset: " + err.Error()
		}
		offset[i], there = v, true
	}
	if there {
		p.Offset = offset
		if _, ok := r.result.Guess["station"]; ok && station == "" {
			p.At, p.Station, p.Offset = &offset, "", Vec3{}
		}
	}
	if s := r.cell(row, "within"); s != "" {
		v, err := units.ParseLengthMarked(s, units.Millimetre, r.decimal)
		if err != nil {
			return "the doubt in place: " + err.Error()
		}
		p.Within = v
	}
	if s := r.textCell(row, "carrier"); s != "" {
		c := Carrier(strings.Join(wordsOf(s), "-"))
		if slices.Contains(Carriers, c) {
			p.Carrier = c
		} else {
			r.warn("The carrier %s is not known; it should be one of %s. Such parts are fixed to what their kind usually is.", quote(s), list(Carriers))
		}
	}
	return ""
}

// carrierAt returns what the first entry of the catalogue at a station is fixed
// to, "" if there is none.
func carrierAt(station string) Carrier {
	for _, e := range Catalogue() {
		if e.Station == station {
			return e.Carrier
		}
	}
	return ""
}

// entryByName returns the entry that is called like this, nil if none is.
func entryByName(name string) *Entry {
	for i := range Catalogue() {
		if e := &Catalogue()[i]; strings.EqualFold(e.Name, name) {
			return e
		}
	}
	return nil
}

// pieces reads a quantity: 2, 2x, x 2, 2 pcs, 2.0.
func pieces(s string) (int, bool) {
	s = fold(s)
	for _, w := range []string{"pcs", "pc", "pieces", "piece", "stuck", "stk", "st", "x", "×", "."} {
		s = strings.TrimSpace(strings.TrimSuffix(s, w))
	}
	s = strings.TrimSpace(strings.TrimLeft(s, "x× "))
	if i := strings.IndexAny(s, ".,"); i >= 0 && strings.Trim(s[i+1:], "0") == "" {
		s = s[:i]
	}
	n, err := strconv.Atoi(s)
	return n, err == nil && n >= 0
}

// withoutAbout takes off the words that say that a figure is rough.
func withoutAbout(s string) (rest string, about bool) {
	for _, w := range []string{"~", "≈", "ca.", "ca ", "c.", "circa", "about", "approx.", "approx", "etwa", "env.", "environ"} {
		if len(s) > len(w) && strings.EqualFold(s[:len(w)], w) {
			return strings.TrimSpace(s[len(w):]), true
		}
	}
	return s, false
}

// isTotal says whether a name is that of a sum of other rows.
func isTotal(name string) bool {
	words := wordsOf(name[:min(len(name), 100)])
	for _, w := range words {
		if !totalWords[w] && !massWords[w] && w != "bike" && w != "grand" && w != "sub" {
			return false
		}
	}
	return len(words) > 0 && slices.ContainsFunc(words, func(w string) bool { return totalWords[w] })
}
