package partslist

import (
	"errors"
	"slices"
	"strconv"
	"strings"

	"steelyard/internal/document"
	"steelyard/internal/parts"
	"steelyard/internal/spelling"
	"steelyard/internal/units"
	"steelyard/internal/words"
)

// A note is a list of parts as people write one down or mail it: "saddle 512 g,
// post 272 g, two bottles 81 g", a line or a comma each, with bullets or without.

// maxNote is the longest text that is tried as one, in bytes.
const maxNote = 64 << 10

// noteFields are the columns of a note, whose items have them in this order.
var noteFields = []string{"quantity", "name", "mass", "half_width"}

// Several returns how many parts a text lists that somebody put into a search
// for one, 0 when it is none or one.
func Several(text string) int {
	n := 0
	if strings.ContainsAny(strings.TrimSpace(text), "\r\n") {
		n = len(ReadCSV([]byte(text), CSVOptions{}).Parts)
	} else {
		for _, item := range noteItems(text) {
			if item.cells[2] != "" {
				n++
			}
		}
	}
	if n < 2 {
		return 0
	}
	return n
}

// better reports whether a text makes a better note than a table: it has more parts,
// or as many where the table took decimal commas for its separators.
func (r *csvReader) better(table *csvReader) bool {
	a, b := &r.result, &table.result
	if len(a.Parts) > len(b.Parts) {
		return true
	}
	return !b.Header && len(a.Parts) > 0 && len(a.Parts) == len(b.Parts) && len(a.Bad) == 0 && b.Separator == "," && r.decimals
}

// readNote reads a text that is no table as a note.
func (r *csvReader) readNote(text string) {
	rows := noteItems(text)
	for i := 1; i+1 < len(text) && !r.decimals; i++ {
		r.decimals = text[i] == ',' && digit(text[i-1]) && digit(text[i+1])
	}
	r.result.Rows = len(rows)
	r.result.Note = true
	for i, f := range noteFields {
		r.result.Columns = append(r.result.Columns, words.Tell("list.field."+f))
		r.result.Guess[f] = i
	}
	r.headers = make([]header, len(noteFields))
	if len(rows) > MaxCSVRows {
		r.warn("list.rows", "n", MaxCSVRows, "line", rows[MaxCSVRows].line)
		rows = rows[:MaxCSVRows]
	}
	r.understood(rows)
}

// noteItems cuts a note into items, as rows of cells.
func noteItems(text string) []row {
	mark := noteMark(text)
	var rows []row
	for line := range strings.Lines(text) {
		for _, piece := range noteSplit(withoutBullet(line)) {
			if strings.Trim(piece, " \t.-–—_=*#|>") == "" {
				continue
			}
			rows = append(rows, row{line: len(rows) + 1, cells: noteItem(piece, mark), text: words.ShortenTo(piece, 120)})
		}
	}
	return rows
}

// noteMark finds the decimal sign of a note, 0 when that is open.
func noteMark(text string) rune {
	var mark rune
	for f := range strings.FieldsSeq(text) {
		m := units.DecimalMark(strings.TrimRight(f, ",.;:()abcdefghijklmnopqrstuvwxyz"))
		if m != 0 && mark != 0 && m != mark {
			return 0
		}
		if m != 0 {
			mark = m
		}
	}
	return mark
}

// withoutBullet takes off what stands before an item of a list or a quoted mail.
func withoutBullet(line string) string {
	line = strings.TrimSpace(line)
	for {
		rest := strings.TrimLeft(line, ">|*•·‣◦▪–—-+ \t\u00a0")
		for _, box := range []string{"[ ]", "[x]", "[X]", "☐", "☑", "✓", "✔"} {
			rest = strings.TrimSpace(strings.TrimPrefix(rest, box))
		}
		// 3. or 3), but not 3.5
		digits := len(rest) - len(strings.TrimLeft(rest, "0123456789"))
		if digits > 0 && digits <= 3 && len(rest) > digits+1 && (rest[digits] == '.' || rest[digits] == ')') && (rest[digits+1] == ' ' || rest[digits+1] == '\t') {
			rest = rest[digits+1:]
		}
		if rest == line {
			return line
		}
		line = rest
	}
}

// noteSplit cuts a line at commas, semicolons and the word "and", where a mass
// stands before them: "Tyre, front, 50-622, 700 g, post 272 g" is two items. A comma
// between digits is a decimal sign.
func noteSplit(line string) []string {
	var items []string
	begin := 0
	for i := 0; i < len(line); i++ {
		n := 0
		switch rest := line[i:]; {
		case rest[0] == ',' || rest[0] == ';' || rest[0] == '|':
			if decimal := i > 0 && digit(line[i-1]) && i+1 < len(line) && digit(line[i+1]); rest[0] != ',' || !decimal {
				n = 1
			}
		case rest[0] == ' ':
			for _, and := range []string{" and ", " und ", " et ", " + ", " & "} {
				if len(rest) > len(and) && strings.EqualFold(rest[:len(and)], and) {
					n = len(and)
				}
			}
		}
		if n == 0 {
			continue
		}
		if piece := line[begin:i]; ends(piece, line[i+n:]) {
			items = append(items, strings.TrimSpace(piece))
			begin = i + n
		}
		i += n - 1
	}
	return append(items, strings.TrimSpace(line[begin:]))
}

func digit(b byte) bool { return b >= '0' && b <= '9' }

// ends reports whether an item ends with piece: it has its mass, or rest is about
// another kind of part.
func ends(piece, rest string) bool {
	if strings.TrimSpace(piece) == "" {
		return false
	}
	if _, ok := units.CutMass(piece); ok {
		return true
	}
	if at, _ := unsure(piece, 0); at > 0 {
		return true
	}
	next := strings.FieldsFunc(rest, func(r rune) bool { return strings.ContainsRune(",;|", r) })
	if len(next) == 0 {
		return false
	}
	if _, ok := units.CutMass(next[0]); !ok {
		return false
	}
	a, b := parts.GuessKind(piece), parts.GuessKind(next[0])
	return a != "" && b != "" && a != b
}

// noteItem reads an item into the cells of noteFields. A mass alone has no name,
// and what has no mass is a name alone.
func noteItem(item string, mark rune) []string {
	cells := make([]string, len(noteFields))
	text, each, pieces := withoutTogether(item)
	w, ok := units.CutMass(text)
	if !ok {
		w.Name = text
		if at, ambiguous := unsure(text, mark); at >= 0 {
			w.Name, cells[2] = text[:at], ambiguous
		}
	}
	name, n := counted(w.Name)
	if pieces > 0 {
		n = pieces
	}
	name = strings.TrimRight(name, " .·…_:=-–—\t")
	if !ok && cells[2] == "" {
		// A number alone is a mass where it is that of such a part.
		if at := strings.LastIndexByte(name, ' '); at > 0 {
			grams, err := units.ParseMass(name[at:], units.Gram)
			if e := parts.GuessEntry(parts.GuessKind(name[:at]), name[:at]); err == nil && e != nil && grams >= e.Mass-e.HalfWidth && grams <= e.Mass+e.HalfWidth {
				w.Grams, ok, name = grams, true, strings.TrimSpace(name[:at])
			}
		}
	}
	if n > 0 {
		cells[0] = strconv.Itoa(n)
	}
	cells[1] = name
	if !ok {
		return cells
	}
	if !each && n > 1 {
		w.Grams, w.Within = w.Grams/float64(n), w.Within/float64(n)
	}
	cells[2] = strconv.FormatFloat(w.Grams, 'f', 2, 64) + " g"
	if w.About {
		cells[2] = "~" + cells[2]
	}
	if w.Within > 0 {
		cells[3] = strconv.FormatFloat(w.Within, 'f', 2, 64) + " g"
	}
	return cells
}

// unsure finds a mass at the end of a text that may be two numbers, 1.234 g, and
// reads it by the note's decimal sign, or leaves it to be told of.
func unsure(text string, mark rune) (at int, mass string) {
	fields := strings.Fields(text)
	for n := 1; n <= 2 && n < len(fields); n++ {
		last := strings.Join(fields[len(fields)-n:], " ")
		var e *units.Error
		if _, err := units.ParseMass(last, units.PoundOunce); !errors.As(err, &e) || e.Reason != units.Ambiguous {
			continue
		}
		at := strings.LastIndex(text, fields[len(fields)-n])
		if g, err := units.ParseMassMarked(last, units.PoundOunce, mark); err == nil && mark != 0 {
			return at, strconv.FormatFloat(g, 'f', 2, 64) + " g"
		}
		return at, last
	}
	return -1, ""
}

// withoutTogether takes off the words that say whether a mass is that of each piece,
// as it is without them, or of all.
func withoutTogether(item string) (rest string, each bool, pieces int) {
	each = true
	fields := strings.Fields(item)
	keep := fields[:0:0]
	for i, f := range fields {
		w := spelling.Fold(strings.Trim(f, "(),;."))
		switch w {
		case "each", "je", "jeweils", "apiece", "a", "ea":
			if w != "a" || i > 0 && f == "à" {
				continue
			}
		case "together", "altogether", "zusammen", "insgesamt":
			each = false
			continue
		}
		keep = append(keep, f)
	}
	// x2 and 2x may stand behind the name or the mass too.
	for i := 1; i < len(keep); i++ {
		w := strings.Trim(keep[i], "(),;")
		n, ok := times(w)
		if !ok && i+1 < len(keep) && isTimes(w) {
			if v, err := strconv.Atoi(strings.Trim(keep[i+1], "(),;")); err == nil && (i+2 == len(keep) || strings.HasSuffix(keep[i+1], ")")) && !digit(keep[i-1][0]) {
				n, ok = v, true
				keep = slices.Delete(keep, i, i+1)
			}
		}
		if ok && n >= 0 && n <= document.MaxQuantity {
			return strings.Join(slices.Delete(keep, i, i+1), " "), each, n
		}
	}
	return strings.Join(keep, " "), each, 0
}

func isTimes(w string) bool { return w == "x" || w == "X" || w == "×" }

// times reads 2x, x2 and 2×.
func times(w string) (int, bool) {
	w = strings.ToLower(strings.ReplaceAll(w, "×", "x"))
	rest, before := strings.CutPrefix(w, "x")
	if !before {
		var after bool
		if rest, after = strings.CutSuffix(w, "x"); !after {
			return 0, false
		}
	}
	n, err := strconv.Atoi(rest)
	return n, err == nil && n > 0
}

// numbers are written out to twelve, folded.
var numbers = func() map[string]int {
	m := make(map[string]int)
	for n, list := range strings.Split("one ein eine einen,two zwei zwo beide both,three drei,four vier,five funf fuenf,six sechs,seven sieben,eight acht,nine neun,ten zehn,eleven elf,twelve zwolf zwoelf", ",") {
		for w := range strings.FieldsSeq(list) {
			m[w] = n + 1
		}
	}
	return m
}()

// counted takes the number of pieces off the front of a name: two bottles, 2 ×
// bottle, 2x bottle, 2 bottles; 0 where none is told. 12 speed and 29 x 2.35 are
// sizes.
func counted(name string) (rest string, n int) {
	name = strings.TrimSpace(name)
	first, rest, _ := strings.Cut(name, " ")
	rest = strings.TrimSpace(rest)
	if rest == "" {
		return name, 0
	}
	if n, ok := times(first); ok && n <= document.MaxQuantity && !digit(rest[0]) {
		return rest, n
	}
	second, behind, _ := strings.Cut(rest, " ")
	n, err := strconv.Atoi(first)
	if err == nil && isTimes(second) && n > 0 && n <= document.MaxQuantity && behind != "" && !digit(strings.TrimSpace(behind + "x")[0]) {
		return strings.TrimSpace(behind), n
	}
	if err != nil {
		n = numbers[spelling.Fold(first)]
	}
	if n < 1 || n > 12 || sizeWord(spelling.Fold(second)) || digit(second[0]) {
		return name, 0
	}
	return rest, n
}

// sizeWord reports whether a word behind a number makes it a size: 12 speed.
func sizeWord(w string) bool {
	for _, begin := range []string{"speed", "fach", "gang", "piston", "kolben", "bolt", "loch", "hole", "leg", "bein", "person", "people", "inch", "zoll", "pocket", "way"} {
		if strings.HasPrefix(w, begin) {
			return true
		}
	}
	switch w {
	case "x", "×", "mm", "cm", "m", "l", "ml", "t", "in", "ah", "mah", "w", "v", "litre", "litres", "liter", "liters", "by", "g", "kg", "oz", "lb", "teeth", "zahne":
		return true
	}
	return false
}
