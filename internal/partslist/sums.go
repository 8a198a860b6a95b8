package partslist

import (
	"math"
	"slices"
	"strings"

	"steelyard/internal/spelling"
)

// SumRow is a row that sums other rows of the list. It is left out, unless
// CSVOptions.Sums has its line.
type SumRow struct {
	Line  int     `json:"line"`
	Name  string  `json:"name"`
	Mass  float64 `json:"mass_g"` // of all its pieces; 0 when it has none
	Of    []int   `json:"of"`     // the first and the last line that it sums, when it was found by that; else it is called a sum
	Can   bool    `json:"can"`    // it could be a part: it has a name and a mass
	Taken bool    `json:"taken"`  // and is taken for one
}

// isTotal reports whether a name is that of a sum of other rows: "Total", "Summe
// Laufräder", "Peso total".
func isTotal(name string) bool {
	words := spelling.Words(name[:min(len(name), 100)])
	for i, w := range words {
		// "Sub-total", "Grand total", "Poids total"; "Wheels, total".
		if totalWords[w] && (i <= 1 || i == len(words)-1) {
			return true
		}
	}
	return false
}

// Rows that must be summed for a row to be taken for their sum.
const (
	sumsUnnamed = 2 // by a row without a name
	sumsUnknown = 3 // by one whose name is that of no part
	sumsKnown   = 5 // by one that could be a part too: few parts weigh as much as five others by chance
)

// findSums finds the rows that sum others: by their names, and by arithmetic.
func (r *csvReader) findSums(lines []line) {
	var sections, all, totals running
	step := r.finest(lines)
	for i := range lines {
		l := &lines[i]
		heading := !l.why.IsZero() && l.grams == 0 && l.name != "" && r.cell(l.row, "mass") == "" && r.cell(l.row, "mass_rest") == ""
		var of []int
		if isTotal(l.name) {
			l.sum = true
		} else if l.grams > 0 {
			needed := sumsKnown
			switch {
			case l.name == "":
				needed = sumsUnnamed
			case l.entry == nil:
				needed = sumsUnknown
			}
			for _, s := range []*running{&sections, &all, &totals} {
				n := needed
				if s == &totals {
					n = min(n, 2) // what sums two sums is one
				}
				if s.rows >= n && s.is(l.grams, step) {
					l.sum, of = true, []int{s.first, s.last}
					break
				}
			}
		}
		switch {
		case l.sum:
			taken := slices.Contains(r.opt.Sums, l.line)
			r.result.Sums = append(r.result.Sums, SumRow{
				Line: l.line, Name: l.name, Mass: l.grams * float64(l.pieces), Of: append([]int{}, of...),
				Can: l.why.IsZero(), Taken: taken && l.why.IsZero(),
			})
			if taken && l.why.IsZero() {
				sections.add(l)
				all.add(l)
				continue
			}
			if l.grams > 0 {
				totals.add(l)
			}
			sections = running{}
		case heading:
			sections = running{}
		case l.why.IsZero():
			sections.add(l)
			all.add(l)
		}
	}
}

// running is a sum of rows: of what all their pieces weigh, and of the column of
// masses as it stands, which some lists add up.
type running struct {
	rows, first, last int
	pieces, column    float64
}

func (s *running) add(l *line) {
	if s.rows == 0 {
		s.first = l.line
	}
	s.rows++
	s.last = l.line
	s.pieces += l.grams * float64(l.pieces)
	s.column += l.grams
}

// is reports whether a mass is the sum, within what rounding everything to steps
// does to it.
func (s *running) is(grams, step float64) bool {
	within := min(step/2*(1+math.Sqrt(float64(s.rows))), 0.01*grams) + 1e-6*grams
	return math.Abs(grams-s.pieces) <= within || math.Abs(grams-s.column) <= within
}

// finest returns the smallest step of the masses of a list: a spreadsheet drops
// the zeros at the end of the others.
func (r *csvReader) finest(lines []line) float64 {
	least := math.Inf(1)
	for i := range lines {
		if step := r.step(lines[i].row); step > 0 {
			least = min(least, step)
		}
	}
	if math.IsInf(least, 1) {
		return 0
	}
	return least
}

// step returns what the last digit of a row's mass stands for, g; 0 when it has none.
func (r *csvReader) step(row row) float64 {
	field := "mass"
	if r.cell(row, "mass_rest") != "" {
		field = "mass_rest"
	}
	s, _ := withoutAbout(r.cell(row, field))
	// The last digit becomes a one and all others zeros.
	last := strings.LastIndexAny(s, "0123456789")
	if last < 0 {
		return 0
	}
	digit := []byte(s)
	for i, c := range digit {
		if c >= '0' && c <= '9' {
			digit[i] = '0'
		}
	}
	digit[last] = '1'
	grams, err := r.mass(string(digit), field)
	if err != nil {
		return 0
	}
	return grams
}
