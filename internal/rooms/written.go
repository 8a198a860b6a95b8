package rooms

import (
	"math"
	"strconv"
	"strings"

	"steelyard/internal/document"
	"steelyard/internal/effort"
	"steelyard/internal/words"
)

// written reads stretches that somebody wrote, one a line; a surface is that
// given where a line has none. The message names the first line that cannot be
// read.
func written(text string, surface int, w *words.Words) ([]effort.Stretch, error) {
	var out []effort.Stretch
	n := 0
	for line := range strings.Lines(text) {
		n++
		if line = strings.TrimSpace(line); line == "" {
			continue
		}
		if len(out) == document.MaxStretches {
			return nil, words.Tell("document.stretches.many", "n", "> "+strconv.Itoa(len(out)), "most", document.MaxStretches)
		}
		s := effort.Stretch{Surface: surface}
		cells := cellsOf(line)
		km, ok := numberOf(cells[0])
		if !ok || len(cells) < 2 || len(cells) > 3 {
			return nil, words.Tell("climb.lines.read", "line", n, "text", words.Quote(line))
		}
		slope, ok := numberOf(strings.TrimSuffix(cells[1], "%"))
		if !ok {
			return nil, words.Tell("climb.lines.read", "line", n, "text", words.Quote(line))
		}
		s.Length, s.Slope = 1000*km, slope/100
		between := func(what string, v float64, span document.Span, factor float64, unit string) error {
			if span.Has(v * factor) {
				return nil
			}
			return words.Tell("climb.lines.span", "line", n, "problem", words.Tell("document.between", "what", words.Tell("document.of."+what),
				"x", words.Number(v), "least", words.Number(span.Least/factor), "most", words.Number(span.Most/factor), "unit", unit))
		}
		if err := between("stretch", km, document.StretchSpan, 1000, " km"); err != nil {
			return nil, err
		}
		if err := between("stretch_slope", slope, document.SlopeSpan, 1, " %"); err != nil {
			return nil, err
		}
		if len(cells) == 3 && cells[2] != "" {
			if s.Surface = surfaceOf(cells[2], w); s.Surface < 0 {
				return nil, words.Tell("climb.lines.surface", "line", n, "surface", words.Quote(cells[2]), "choice", surfacesSaid(w))
			}
		}
		out = append(out, s)
	}
	if len(out) == 0 {
		return nil, words.Tell("climb.lines.none")
	}
	return out, nil
}

// cellsOf parts a line: at tabs, else at semicolons, else at commas with a space
// behind, else at spaces, else at commas. A comma within a number is its decimal
// sign wherever something else parts.
func cellsOf(line string) []string {
	var cells []string
	switch {
	case strings.Contains(line, "\t"):
		cells = strings.Split(line, "\t")
	case strings.Contains(line, ";"):
		cells = strings.Split(line, ";")
	case strings.Contains(line, ", "):
		cells = strings.Split(line, ", ")
	case strings.Contains(line, " "):
		cells = strings.Fields(line)
		if len(cells) > 3 { // "rough asphalt"
			cells = append(cells[:2:2], strings.Join(cells[2:], " "))
		}
	default:
		cells = strings.Split(line, ",")
	}
	for i := range cells {
		cells[i] = strings.TrimSpace(cells[i])
	}
	return cells
}

// numberOf reads a number with a point or a comma.
func numberOf(s string) (float64, bool) {
	s = strings.ReplaceAll(strings.ReplaceAll(strings.TrimSpace(s), "\u2212", "-"), ",", ".")
	if strings.Trim(s, "+-.0123456789") != "" {
		return 0, false
	}
	v, err := strconv.ParseFloat(s, 64)
	return v, err == nil && !math.IsInf(v, 0)
}

// surfaceOf is the surface that a word is, by its key or its label, -1 for none.
func surfaceOf(s string, w *words.Words) int {
	for i, k := range document.Surfaces {
		if strings.EqualFold(s, k) || strings.EqualFold(s, w.Label("climb.surface."+k)) {
			return i
		}
	}
	return -1
}

// surfacesSaid lists the surfaces by their labels.
func surfacesSaid(w *words.Words) string {
	var list []string
	for _, k := range document.Surfaces {
		list = append(list, w.Label("climb.surface."+k))
	}
	return strings.Join(list, ", ")
}
