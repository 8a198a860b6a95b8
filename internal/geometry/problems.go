package geometry

import (
	"math"
	"strconv"

	"steelyard/internal/document"
	"steelyard/internal/words"
)

// list gathers the problems of one build.
type list struct {
	build    string
	problems []document.Problem
	failed   bool // whether one of them is an error
}

// fault adds an error: without this figure put right there is no bike.
func (l *list) fault(field, message string) {
	l.failed = true
	l.problems = append(l.problems, document.Problem{Severity: document.SeverityError, Build: l.build, Field: field, Message: words.Plain(message)})
}

// doubt adds a warning: the figure is odd, and is taken as it is.
func (l *list) doubt(field, message string) {
	l.problems = append(l.problems, document.Problem{Severity: document.SeverityWarning, Build: l.build, Field: field, Message: words.Plain(message)})
}

// show writes a figure of the document for people, to a tenth.
func show(v float64) string {
	return strconv.FormatFloat(math.Round(v*10)/10+0, 'f', -1, 64)
}

// showMM writes a length in m as mm for people: to a whole one, since it was
// worked out and not typed.
func showMM(m float64) string {
	return strconv.FormatFloat(math.Round(m*1000)+0, 'f', -1, 64) + " mm"
}

// cite names a figure, its value and its field.
func cite(b *document.Build, field string) string {
	for i := range figures {
		if f := &figures[i]; f.field == field {
			return f.name + " " + show(f.of(b)) + " " + f.unit + " (" + field + ")"
		}
	}
	panic("geometry: no figure " + field)
}
