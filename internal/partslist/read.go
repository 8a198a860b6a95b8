package partslist

import (
	"encoding/csv"
	"errors"
	"io"
	"slices"
	"sort"
	"strconv"
	"strings"

	"steelyard/internal/document"
	"steelyard/internal/parts"
	"steelyard/internal/spelling"
	"steelyard/internal/units"
	"steelyard/internal/words"
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
	"name", "mass", "mass_rest", "half_width", "quantity", "kind", "basis", "station", "carrier", "note",
	"offset_x", "offset_y", "offset_z", "within", "catalogue", "id",
}

// CSVOptions say what the caller knows about a list. The zero value knows
// nothing and lets ReadCSV find out.
type CSVOptions struct {
	Columns  map[string]int `json:"columns,omitempty"`   // field to column, from 0; nil is to be guessed
	MassUnit string         `json:"mass_unit,omitempty"` // of masses without a unit in cell or header: "g", "kg", "lb" or "oz"; empty is to be found out
	Ends     map[int]string `json:"ends,omitempty"`      // line to where its pieces go, see EndRow
	Sums     []int          `json:"sums,omitempty"`      // lines that look like sums and are parts
	AsIs     bool           `json:"as_is,omitempty"`     // every row is one part: no sums are looked for, and nothing goes to both ends
	Taken    []string       `json:"taken,omitempty"`     // ids of parts that are in use
	Stations []string       `json:"-"`                   // the stations there are; nil takes every name as it is
}

// CSVResult is what was found in a list.
type CSVResult struct {
	Columns   []words.Message    `json:"columns"`   // the headers, or "Column 1", ...
	Guess     map[string]int     `json:"guess"`     // field to column, as used
	Header    bool               `json:"header"`    // whether the first row is one
	Note      bool               `json:"note"`      // it is no table, but a list as people write one down
	Separator string             `json:"separator"` // between the cells
	Encoding  string             `json:"encoding"`  // UTF8, UTF16 or Windows1252
	MassUnit  string             `json:"mass_unit"` // that masses without a unit in their cell were read in
	UnitBy    string             `json:"unit_by"`   // how that is known: UnitByHeader, ...
	Rows      int                `json:"rows"`      // rows that are not empty, without the header
	Parts     []document.Part    `json:"parts"`     // the good rows, in their order
	Unplaced  []int              `json:"unplaced"`  // those of Parts, by index, of which neither the list nor the name says what and where they are
	Total     float64            `json:"total_g"`   // of all Parts
	Placed    float64            `json:"placed_g"`  // of those that are not Unplaced
	Ends      []EndRow           `json:"ends"`      // rows of which it is open at which end of the bike they are
	Sums      []SumRow           `json:"sums"`      // rows that look like sums of others
	Bad       []BadRow           `json:"bad"`       // rows that cannot be read
	Problems  []document.Problem `json:"problems"`  // with the list as a whole
}

// BadRow is a row that is no part.
type BadRow struct {
	Line int           `json:"line"` // where it begins, from 1; of a note, which item it is
	Text string        `json:"text"` // as it stands, shortened
	Why  words.Message `json:"why"`
}

// ReadCSV reads a list of parts: RFC 4180 and what spreadsheets make of it. The
// cells may be separated by comma, semicolon or tab; numbers may have a decimal
// point or comma. A first row of headers in English, German or French is
// understood, with units ("Weight (kg)", "mass_g"); quantity and weight in Dutch,
// Spanish and Italian too. Without one the columns are told by what is in them.
// At least a name and a mass must be there.
//
// A row becomes a part with an id of its own. What the list does not say is
// taken from the most alike part of the catalogue: kind, station, carrier and
// shape. The basis is "stated", or "guessed" for a mass with "about" or ~ before
// it, and the half-width goes by it, see Basis.HalfWidth. Several pieces of what
// a bike has one of at each end become two parts, see EndRow. A row that is a sum
// of others is left out, see SumRow. A row that cannot be read is told with its
// line and the reason, and the others are read.
//
// What is no table may be a note, "saddle 512 g, post 272 g, two bottles 81 g", a
// line or a comma each. It is read as one when that gives more parts; its items
// then count as lines.
func ReadCSV(text []byte, opt CSVOptions) CSVResult {
	r := newReader(opt)
	r.read(text)
	if opt.Columns == nil && !opt.AsIs && len(text) <= maxNote && (!r.result.Header || len(r.result.Parts) == 0 || len(r.result.Bad) > 0) {
		note := newReader(opt)
		note.note = true
		if note.read(text); note.better(r) {
			return note.result
		}
	}
	return r.result
}

func newReader(opt CSVOptions) *csvReader {
	return &csvReader{opt: opt, result: CSVResult{
		MassUnit: units.Gram, UnitBy: UnitUsual,
		Columns: []words.Message{}, Guess: map[string]int{}, Parts: []document.Part{}, Unplaced: []int{},
		Ends: []EndRow{}, Sums: []SumRow{}, Bad: []BadRow{}, Problems: []document.Problem{},
	}}
}

type csvReader struct {
	opt      CSVOptions
	note     bool // the text is read as a note
	decimals bool // and has commas between digits
	result   CSVResult

	separator rune
	headers   []header // of the columns; empty ones without a header row
	decimal   rune     // decimal sign of the list's numbers, 0 if that is open
	taken     map[string]bool
	warned    map[string]bool // what was told once already
}

// row is a row of cells, trimmed.
type row struct {
	line  int // from 1; of a note, several of whose items may share a line, the item
	cells []string
	text  string
}

// fail adds an error with the list: the message of a key, see [words.Tell].
func (r *csvReader) fail(key string, pairs ...any) {
	r.result.Problems = append(r.result.Problems, document.Problem{Severity: document.SeverityError, Message: words.Tell(key, pairs...)})
}

// warn adds a warning about the list, once.
func (r *csvReader) warn(key string, pairs ...any) {
	message := words.Tell(key, pairs...)
	if r.warned == nil {
		r.warned = make(map[string]bool)
	}
	if r.warned[message.String()] || len(r.warned) >= 20 {
		return
	}
	r.warned[message.String()] = true
	r.result.Problems = append(r.result.Problems, document.Problem{Severity: document.SeverityWarning, Message: message})
}

func (r *csvReader) bad(row row, why words.Message) {
	r.result.Bad = append(r.result.Bad, BadRow{Line: row.line, Text: row.text, Why: why})
}

func (r *csvReader) read(raw []byte) {
	if len(raw) > MaxCSVText {
		r.fail("list.large", "most", MaxCSVText>>20)
		return
	}
	if u := r.opt.MassUnit; u != "" && !slices.Contains([]string{units.Gram, units.Kilogram, units.Pound, units.Ounce}, u) {
		r.fail("list.unit", "unit", words.Quote(u))
		return
	}
	text, encoding, damaged := decode(raw)
	r.result.Encoding = encoding
	switch {
	case encoding == Windows1252:
		r.warn("list.windows")
	case damaged > 0:
		r.warn("list.damaged", "n", damaged)
	}
	if r.note {
		r.readNote(text)
		return
	}
	text, skipped := r.separate(text)
	rows := r.split(text, skipped)
	if len(rows) == 0 {
		if len(r.result.Bad) == 0 {
			r.fail("list.empty")
		}
		return
	}
	rows = r.head(rows)
	r.result.Rows = len(rows) + len(r.result.Bad)
	r.columns(rows)
	for _, f := range []string{"name", "mass"} {
		if _, ok := r.result.Guess[f]; !ok {
			r.fail("list.no_column." + f)
		}
	}
	if len(r.result.Problems) > 0 && r.result.Problems[len(r.result.Problems)-1].Severity == document.SeverityError {
		return
	}
	r.findDecimal(rows)
	r.understood(rows)
}

// understood makes parts of rows whose columns are known.
func (r *csvReader) understood(rows []row) {
	r.taken = make(map[string]bool, len(r.opt.Taken))
	for _, id := range r.opt.Taken {
		r.taken[id] = true
	}
	lines := make([]line, len(rows))
	for i, row := range rows {
		lines[i] = r.understand(row)
	}
	r.findUnit(lines)
	for i := range lines {
		r.weigh(&lines[i])
	}
	if !r.opt.AsIs && !r.ours() {
		r.findSums(lines)
		r.findEnds(lines)
	}
	for i := range lines {
		l := &lines[i]
		if l.sum && !slices.Contains(r.opt.Sums, l.line) {
			continue
		}
		if l.why.IsZero() {
			l.why = r.add(l)
		}
		if !l.why.IsZero() {
			r.bad(l.row, l.why)
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
	if r.result.UnitBy == UnitAsked && len(r.result.Parts) >= 5 && most > 0 && most < 25 {
		r.warn("list.light", "most", words.Number(most))
	}
}

// separate finds what separates the cells. A first line "sep=;" says it, and is
// taken off.
func (r *csvReader) separate(text string) (rest string, skipped int) {
	first, after, _ := strings.Cut(text, "\n")
	if s, ok := strings.CutPrefix(strings.ToLower(first), "sep="); ok && len(s) == 1 && strings.Contains(",;\t|", s) {
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
		begins, closed := true, false // a cell; a quote, just now
		for _, c := range line[:min(len(line), 4000)] {
			separates := c == ',' || c == ';' || c == '\t'
			closes := c == '"' && quoted > 0
			switch {
			case closes:
				quoted = 0
			case c == '"' && (begins || closed): // a doubled quote stands for one, and closes nothing
				quoted = 1
			case quoted == 0 && separates && !seen[c]:
				seen[c] = true
				with[c]++
			}
			begins, closed = separates, closes
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
				rest, ok := strings.CutPrefix(record, "\n")
				if !ok {
					break
				}
				line++
				record = rest
			}
			lines := strings.Count(strings.TrimRight(record, "\n"), "\n") + 1
			at := row{line: line + 1, text: words.ShortenTo(record, 120)}
			if err != nil {
				r.bad(at, words.Tell("list.row.unread"))
				line += lines
				continue
			}
			if lines > 1 && (lines > maxRecordLines || !r.closed(record)) {
				// The first line is lost; reading goes on after it.
				first := strings.IndexByte(record, '\n') + 1
				at.text = words.ShortenTo(record[:first], 120)
				r.bad(at, words.Tell("list.row.quote"))
				line++
				if lost++; lost > maxLostQuotes {
					r.fail("list.quotes", "n", maxLostQuotes, "line", line+1)
					return rows
				}
				restart = end - len(record) + first
				break
			}
			line += lines
			if records++; records > 10*MaxCSVRows {
				r.warn("list.rows.empty", "n", 10*MaxCSVRows, "line", at.line)
				return rows
			}
			if len(cells) > maxColumns {
				r.bad(at, words.Tell("list.row.cells", "n", len(cells), "most", maxColumns))
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
				r.warn("list.rows", "n", MaxCSVRows, "line", at.line)
				return rows
			}
			rows = append(rows, at)
		}
		text = text[restart:]
	}
	return rows
}

// closed reports whether a record of several lines has its quotes where they
// belong. The lenient reader takes a lost quote as running to the next one, or to
// the end of the list.
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

// findDecimal finds the decimal sign of the list, by what most numbers prove it
// to be. Numbers that leave it open (1.234) then follow them.
func (r *csvReader) findDecimal(rows []row) {
	points, commas := 0, 0
	for _, row := range rows {
		for _, f := range []string{"mass", "mass_rest", "half_width", "offset_x", "offset_y", "offset_z", "within"} {
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

// ours reports whether WriteCSV wrote the list.
func (r *csvReader) ours() bool {
	return slices.EqualFunc(r.result.Columns, csvHeader, func(m words.Message, name string) bool { return m.Text == name })
}

// line is a row on its way to a part.
type line struct {
	row
	name, kind string
	words      []string     // of the name, English
	entry      *parts.Entry // the most alike of the catalogue, nil for none
	origin     string       // id of the entry that the list itself names
	told       bool         // the list itself says where the part is
	basis      document.Basis
	pieces     int
	grams      float64       // of one piece
	pair       bool          // one mass was given for a piece at each end
	sum        bool          // looks like a sum of others
	why        words.Message // it is no part

	at [2]int // pieces in front and at the rear, when it goes by ends
}

// understand finds out what a row is about, except how much it weighs.
func (r *csvReader) understand(row row) line {
	l := line{row: row, name: r.textCell(row, "name"), pieces: 1}
	if l.name == "" {
		l.why = words.Tell("list.row.no_name")
	}
	if strings.ContainsAny(l.name, "\r\n") {
		l.name = strings.Join(strings.Fields(l.name), " ")
	}
	l.words = parts.EnglishWords(spelling.Words(l.name[:min(len(l.name), 400)]))
	l.kind = r.kind(row, l.name)
	l.entry = parts.EntryByID(r.textCell(row, "catalogue"))
	if l.entry != nil {
		l.origin, l.told = l.entry.ID, true
	} else if l.entry = entryByName(l.name); l.entry == nil || l.entry.Kind != l.kind {
		l.entry = parts.GuessEntry(l.kind, l.name)
		if end := parts.EndOf(l.words); end != "" && parts.EndKinds[l.kind] {
			l.entry = parts.LikeliestAt(l.kind, l.words, end)
		}
	}
	return l
}

// weigh reads how many pieces a line has and what they weigh.
func (r *csvReader) weigh(l *line) {
	fail := func(key string, pairs ...any) {
		if l.why.IsZero() {
			l.why = words.Tell(key, pairs...)
		}
	}
	counted := r.cell(l.row, "quantity")
	if counted != "" {
		n, ok := pieces(counted)
		if !ok || n > document.MaxQuantity {
			fail("list.row.quantity", "n", words.Quote(counted), "most", document.MaxQuantity)
		}
		l.pieces = n
	}
	text, about := withoutAbout(r.cell(l.row, "mass"))
	rest, _ := withoutAbout(r.cell(l.row, "mass_rest"))
	l.basis = document.Stated
	if about {
		l.basis = document.Guessed
	}
	if text == "" && rest == "" {
		fail("list.row.no_mass")
		return
	}
	for _, c := range []struct{ text, field string }{{text, "mass"}, {rest, "mass_rest"}} {
		if c.text == "" {
			continue
		}
		grams, err := r.mass(c.text, c.field)
		if err != nil {
			fail("list.row.mass", "why", err)
			return
		}
		l.grams += grams
	}
	if r.perLine() && l.pieces > 1 {
		l.grams /= float64(l.pieces)
	}
}

// add makes the part, or the two parts, of a line, or reports why it cannot.
func (r *csvReader) add(l *line) (why words.Message) {
	ends := []int{-1} // as the entry has it
	if l.at != [2]int{} {
		ends = nil
		for end, n := range l.at {
			if n > 0 {
				ends = append(ends, end)
			}
		}
	}
	var made []document.Part
	placed := false
	for i, end := range ends {
		entry, n, grams := l.entry, l.pieces, l.grams
		if end >= 0 {
			entry, n = parts.AtEnd(l.entry, l.words, endNames[end]), l.at[end]
			if l.pair && len(ends) == 2 {
				grams = l.shareOfPair(end)
			}
		}
		p, known, why := r.part(l, entry, n, grams, i == 0)
		if !why.IsZero() {
			return why
		}
		made, placed = append(made, p), known
	}
	for _, p := range made {
		grams := p.Mass * float64(p.Quantity)
		r.result.Total += grams
		if placed {
			r.result.Placed += grams
		} else {
			r.result.Unplaced = append(r.result.Unplaced, len(r.result.Parts))
		}
		r.result.Parts = append(r.result.Parts, p)
	}
	return words.Message{}
}

// part makes a part of a line, or says why it is none. Placed is whether the
// list or the catalogue says where it is; first is whether it may have the id
// that the list gives.
func (r *csvReader) part(l *line, entry *parts.Entry, n int, grams float64, first bool) (p document.Part, placed bool, why words.Message) {
	if entry != nil {
		p = entry.Part("")
	} else {
		p = document.Part{Station: "frame", Carrier: document.MainFrame, Within: 300, Shape: document.Shape{Form: document.FormPoint}}
	}
	p.Name, p.Kind, p.Catalogue, p.Quantity, p.Basis = l.name, l.kind, l.origin, n, l.basis
	p.Note = r.textCell(l.row, "note")
	if s := r.textCell(l.row, "basis"); s != "" {
		if b, ok := basisWords[spelling.Fold(s)]; ok {
			p.Basis = b
		} else {
			r.warn("list.basis", "basis", words.Quote(s), "as", words.Quote(string(p.Basis)))
		}
	}
	p.Mass = grams
	p.HalfWidth = p.Basis.HalfWidth(p.Mass)
	if s := r.cell(l.row, "half_width"); s != "" {
		s = strings.TrimLeft(strings.TrimPrefix(s, "+/-"), "±+ ")
		if share, ok := strings.CutSuffix(s, "%"); ok {
			// A share is a number like any other; the mass gives it its unit.
			v, err := units.ParseMassMarked(share, units.Gram, r.decimal)
			if err != nil {
				return p, false, words.Tell("list.row.half_width", "why", err)
			}
			p.HalfWidth = v / 100 * p.Mass
		} else {
			v, err := r.mass(s, "half_width")
			if err != nil {
				return p, false, words.Tell("list.row.half_width", "why", err)
			}
			if l.pair {
				v /= 2 // of both pieces, which share it
			}
			p.HalfWidth = v
		}
	}
	if why := r.place(l.row, &p); !why.IsZero() {
		return p, false, why
	}

	p.ID = r.textCell(l.row, "id")
	if p.ID == "" || !first || r.taken[p.ID] {
		p.ID = document.FreshID("p", r.taken)
	}
	r.taken[p.ID] = true
	for _, problem := range p.Check() {
		if problem.Severity == document.SeverityError {
			return p, false, problem.Message
		}
	}
	return p, entry != nil || p.At != nil || p.Station != "frame" || r.textCell(l.row, "station") != "", words.Message{}
}

// mass reads a mass in the unit of its cell, of its column or of the list.
func (r *csvReader) mass(s, field string) (float64, error) {
	unit := r.headers[r.result.Guess[field]].unit
	switch {
	case unit != "":
	case field == "mass_rest":
		unit = r.restUnit()
	default:
		unit = r.result.MassUnit
	}
	return units.ParseMassMarked(s, unit, r.decimal)
}

// perLine reports whether the masses are those of all pieces of a row.
func (r *csvReader) perLine() bool { return r.headers[r.result.Guess["mass"]].total }

// kind finds the kind of a row's part.
func (r *csvReader) kind(row row, name string) string {
	if s := r.textCell(row, "kind"); s != "" {
		if id := strings.Join(spelling.Words(s), "-"); document.KnownKind(id) {
			return id
		}
		if kind := parts.GuessKind(name); kind != "" {
			return kind
		}
		if kind := parts.GuessKind(s); kind != "" {
			return kind
		}
	}
	if e := entryByName(name); e != nil {
		return e.Kind
	}
	if kind := parts.GuessKind(name); kind != "" {
		return kind
	}
	return "other"
}

// place puts a part where the row says. It returns why that cannot be.
func (r *csvReader) place(row row, p *document.Part) words.Message {
	station := r.textCell(row, "station")
	known := station
	if station != "" {
		if known = strings.Join(spelling.Words(station), "-"); r.opt.Stations != nil && !slices.Contains(r.opt.Stations, known) {
			r.warn("list.station", "station", words.Quote(station))
			known = ""
		}
	}
	if known != "" && known != p.Station {
		p.Station, p.Offset = known, document.Vec3{}
		if c := carrierAt(known); c != "" {
			p.Carrier = c
		}
	}
	var offset document.Vec3
	there := false
	for i, f := range []string{"offset_x", "offset_y", "offset_z"} {
		s := r.cell(row, f)
		if s == "" {
			continue
		}
		v, err := units.ParseLengthMarked(s, units.Millimetre, r.decimal)
		if err != nil {
			return words.Tell("list.row.offset", "why", err)
		}
		offset[i], there = v, true
	}
	if there {
		p.Offset = offset
		if _, ok := r.result.Guess["station"]; ok && station == "" {
			p.At, p.Station, p.Offset = &offset, "", document.Vec3{}
		}
	}
	if s := r.cell(row, "within"); s != "" {
		v, err := units.ParseLengthMarked(s, units.Millimetre, r.decimal)
		if err != nil {
			return words.Tell("list.row.within", "why", err)
		}
		p.Within = v
	}
	if s := r.textCell(row, "carrier"); s != "" {
		c := document.Carrier(strings.Join(spelling.Words(s), "-"))
		if slices.Contains(document.Carriers, c) {
			p.Carrier = c
		} else {
			r.warn("list.carrier", "carrier", words.Quote(s), "choice", words.Choose(document.Carriers))
		}
	}
	return words.Message{}
}

// carrierAt returns what the first entry of the catalogue at a station is fixed
// to, "" if there is none.
func carrierAt(station string) document.Carrier {
	for _, e := range parts.Catalogue() {
		if e.Station == station {
			return e.Carrier
		}
	}
	return ""
}

// entryByName returns the entry that is called like this, nil if none is.
func entryByName(name string) *parts.Entry {
	for i := range parts.Catalogue() {
		if e := &parts.Catalogue()[i]; strings.EqualFold(e.Name, name) {
			return e
		}
	}
	return nil
}

// pieces reads a quantity: 2, 2x, x 2, 2 pcs, 2.0.
func pieces(s string) (int, bool) {
	s = spelling.Fold(s)
	for _, w := range []string{"pcs", "pc", "pieces", "piece", "stuck", "stueck", "stk", "st", "stuks", "piezas", "uds", "ud", "pezzi", "pz", "x", "×", "."} {
		s = strings.TrimSpace(strings.TrimSuffix(s, w))
	}
	s = strings.TrimSpace(strings.TrimLeft(s, "x× "))
	if i := strings.IndexAny(s, ".,"); i >= 0 && strings.Trim(s[i+1:], "0") == "" {
		s = s[:i]
	}
	n, err := strconv.Atoi(s)
	return n, err == nil && n >= 0
}

// withoutAbout removes the words that say that a figure is rough.
func withoutAbout(s string) (rest string, about bool) {
	for _, w := range []string{"~", "≈", "ca.", "ca ", "c.", "circa", "about", "approx.", "approx", "etwa", "env.", "environ"} {
		if len(s) > len(w) && strings.EqualFold(s[:len(w)], w) {
			return strings.TrimSpace(s[len(w):]), true
		}
	}
	return s, false
}
