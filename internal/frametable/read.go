package frametable

import (
	"strings"

	"steelyard/internal/words"
)

// MostBytes is how much of a text is read.
const MostBytes = 100_000

// Limits beyond which a text is no table of one bike.
const (
	mostLines = 1000
	mostCells = 40
	mostWide  = 2000 // bytes of a line
)

// row is a figure as the text gives it, a cell to a size.
type row struct {
	kind  *kind
	name  string // as it was printed
	unit  string // that its name tells
	line  int
	cells []cell
}

// cell is a cell of a row; without ok it holds no number.
type cell struct {
	number
	ok bool
}

// Left is a line that gave no figure.
type Left struct {
	Line int
	Text string
	Why  words.Message
}

// reader goes through a text line by line.
type reader struct {
	rows  []row
	sizes []string
	left  []Left

	header  []*row // columns of a table whose rows are sizes
	pending *row   // a name whose numbers stand on the lines below it
}

// read reads a text.
func read(text string) *reader {
	r := &reader{}
	text = strings.NewReplacer("\r\n", "\n", "\r", "\n", "\u2028", "\n").Replace(strings.ToValidUTF8(text[:min(len(text), MostBytes)], "\ufffd"))
	n := 0
	for line := range strings.SplitSeq(text, "\n") {
		if n++; n > mostLines {
			break
		}
		if len(line) > mostWide {
			line = strings.ToValidUTF8(line[:mostWide], "")
		}
		if line = strings.Trim(line, " \u00a0|;"); strings.TrimSpace(line) != "" {
			r.line(n, line)
		}
	}
	r.settle()
	for _, c := range r.header {
		if len(c.cells) > 0 {
			r.rows = append(r.rows, *c)
		}
	}
	return r
}

func (r *reader) skip(line int, text, why string, pairs ...any) {
	r.left = append(r.left, Left{line, words.Shorten(text), words.Tell("frametable.left."+why, pairs...)})
}

// settle ends a name that waits for numbers.
func (r *reader) settle() {
	if p := r.pending; p != nil {
		if len(p.cells) > 0 {
			r.rows = append(r.rows, *p)
		} else {
			r.skip(p.line, p.name, "number")
		}
		r.pending = nil
	}
}

func (r *reader) line(n int, line string) {
	parts, spaced := split(line)
	name, cells := parts[0], numbers(parts[1:])
	if spaced || len(parts) == 1 {
		name, cells = apart(line)
	} else if _, _, ok := cutNumber(name); ok {
		name, cells = "", numbers(parts)
	} else {
		// Letters that a drawing marks the lengths with stand in a column of their own.
		for len(cells) > 1 && !cells[0].ok && !missing(parts[len(parts)-len(cells)]) {
			name += " " + parts[len(parts)-len(cells)]
			cells = cells[1:]
		}
	}
	if !filled(cells) {
		r.titled(n, line, parts)
		return
	}
	if r.header != nil && r.size(name, parts, cells, line) {
		return
	}
	k, other := named(name)
	switch {
	case strings.TrimSpace(name) == "" && r.pending != nil:
		r.pending.cells = append(r.pending.cells, cells[:min(len(cells), mostCells)]...)
		return
	case k == nil:
		r.settle()
		r.skip(n, line, "unknown")
	case other:
		r.settle()
		r.skip(n, line, "other", "name", k.label())
	case k.id == sizes:
		r.settle()
		r.sizes = labels(parts, name)
	default:
		r.settle()
		r.rows = append(r.rows, row{k, name, unitOf(name), n, cells[:min(len(cells), mostCells)]})
	}
}

// titled reads a line without numbers: the header of a table, the names of the
// sizes, or a name whose numbers stand below it.
func (r *reader) titled(n int, line string, parts []string) {
	r.settle()
	if columns := header(parts, line, n); columns != nil {
		r.header = columns
		return
	}
	k, other := named(parts[0])
	switch {
	case k != nil && k.id == sizes || k == nil && len(parts) > 1 && r.sizes == nil && len(r.rows) == 0:
		r.sizes = labels(parts, parts[0])
	case k == nil && r.sizes == nil && sizesOnly(line):
		r.sizes = strings.Fields(line)
	case k != nil && !other && len(parts) == 1:
		r.pending = &row{kind: k, name: line, unit: unitOf(line), line: n}
	case k != nil:
		r.skip(n, line, "number")
	default:
		r.skip(n, line, "unknown")
	}
}

// size reads a row of a table below its header, if it is one.
func (r *reader) size(name string, parts []string, cells []cell, line string) bool {
	if k, _ := named(name); k != nil && k.id != sizes {
		return false
	}
	label := strings.TrimSpace(name)
	switch len(cells) - len(r.header) {
	case 0:
	case 1: // the size is a number
		label, cells = cells[0].text, cells[1:]
	default:
		return false
	}
	if len(r.sizes) >= mostCells {
		return true
	}
	r.sizes = append(r.sizes, label)
	for i := range r.header {
		r.header[i].cells = append(r.header[i].cells, cells[i])
	}
	return true
}

// header reads the columns of a table off a line, nil where it is none. Columns
// that are no figures are kept, so that what is below them is not taken for others.
func header(parts []string, line string, n int) (columns []*row) {
	figures := 0
	add := func(name string) {
		k, other := named(name)
		if k == nil || other || k.id == sizes {
			k = nil
		} else {
			figures++
		}
		columns = append(columns, &row{kind: k, name: name, unit: unitOf(name), line: n})
	}
	if len(parts) > 1 {
		first, _ := named(parts[0])
		if first == nil || first.id == sizes {
			parts = parts[1:]
		}
		for _, p := range parts {
			add(p)
		}
	} else {
		// Words in a row: each figure begins where a name of one is.
		list := strings.Fields(line)
		plain := folded(list)
		for i := 0; i < len(list); {
			p := at(plain[i:])
			if p == nil || p.kind.id == sizes {
				i++
				continue
			}
			add(strings.Join(list[i:i+len(p.words)], " "))
			i += len(p.words)
		}
	}
	if figures < 2 || len(columns) > mostCells {
		return nil
	}
	return columns
}
