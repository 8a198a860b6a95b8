package frametable

import (
	"strings"
	"unicode"

	"steelyard/internal/spelling"
)

// split parts a line into cells: by tabs, bars, semicolons, commas that are no
// decimal ones, or wide gaps. Spaced says that nothing but gaps parts them, some of
// which may be narrow.
func split(line string) (parts []string, spaced bool) {
	sep := "  "
	switch {
	case strings.Contains(line, "\t"):
		sep = "\t"
	case strings.Contains(line, "|"):
		sep = "|"
	case strings.Contains(line, ";"):
		sep = ";"
	case listed(line):
		sep = ","
	}
	for p := range strings.SplitSeq(line, sep) {
		if p = strings.Trim(p, " \u00a0"); p != "" || sep != "  " {
			parts = append(parts, p)
		}
	}
	return parts, sep == "  "
}

// listed reports whether the commas of a line stand between cells: one follows a
// letter or a bracket, and something else follows it at once.
func listed(line string) bool {
	before := ' '
	for i, r := range line {
		if r == ',' && (unicode.IsLetter(before) || before == ')' || before == ']') && i+1 < len(line) && line[i+1] != ' ' {
			return true
		}
		before = r
	}
	return false
}

// apart parts a line without cells into the name in front and the numbers.
func apart(line string) (name string, cells []cell) {
	for i := 0; i < len(line); i++ {
		if i > 0 && line[i-1] != ' ' && line[i-1] != ':' && line[i-1] != '=' {
			continue
		}
		rest := line[i:]
		if _, _, ok := cutNumber(rest); !ok {
			continue
		}
		for {
			rest = strings.TrimLeft(rest, " \u00a0,/")
			if rest == "" {
				break
			}
			n, after, ok := cutNumber(rest)
			if !ok {
				word, behind, _ := strings.Cut(rest, " ")
				if n.text, after = word, behind; !missing(word) {
					rest = after
					continue // a remark behind the numbers
				}
			}
			cells = append(cells, cell{n, ok})
			rest = after
		}
		return strings.TrimRight(line[:i], " :=\u00a0"), cells
	}
	return line, nil
}

// numbers reads cells.
func numbers(parts []string) []cell {
	cells := make([]cell, len(parts))
	for i, p := range parts {
		cells[i].number, _, cells[i].ok = cutNumber(p)
		if !cells[i].ok {
			cells[i].text = p
		}
	}
	return cells
}

func filled(cells []cell) bool {
	for i := range cells {
		if cells[i].ok {
			return true
		}
	}
	return false
}

// missing reports whether a cell says that there is nothing in it.
func missing(s string) bool {
	switch s {
	case "", "-", "–", "—", "n/a", "N/A", "/", "k.A.", "x":
		return true
	}
	return false
}

// labels are the names of the sizes in the cells of a line behind its name.
func labels(parts []string, name string) []string {
	if len(parts) == 1 {
		list := strings.Fields(parts[0])
		for len(list) > 0 && at(folded(list[:1])) != nil {
			list = list[1:]
		}
		return list
	}
	if k, _ := named(name); k != nil || parts[0] == "" || len(parts) > 2 && !sizesOnly(parts[0]) {
		parts = parts[1:]
	}
	return parts
}

// sizesOnly reports whether a line is nothing but names of sizes.
func sizesOnly(line string) bool {
	list := folded(strings.Fields(line))
	for _, w := range list {
		switch w {
		case "xxs", "xs", "s", "sm", "m", "md", "ml", "m/l", "s/m", "l", "lg", "xl", "xxl", "small", "medium", "large", "klein", "mittel", "gross":
		default:
			return false
		}
	}
	return len(list) > 0
}

// folded folds every word of a list.
func folded(list []string) []string {
	out := make([]string, len(list))
	for i, w := range list {
		out[i] = strings.Trim(spelling.Fold(w), "()[]:,.")
	}
	return out
}

// unitOf is the unit that a name tells, empty for none.
func unitOf(name string) string {
	for _, w := range strings.Fields(strings.NewReplacer("(", " ", ")", " ", "[", " ", "]", " ", ",", " ", ":", " ").Replace(strings.ToLower(name))) {
		if u := unitNamed(w); u != "" {
			return u
		}
	}
	return ""
}
