package geometry

import (
	"math"

	"steelyard/internal/document"
	"steelyard/internal/words"
)

// list gathers the problems of one build.
type list struct {
	build    string
	problems []document.Problem
	failed   bool // whether one of them is an error
}

// fault adds an error: there is no bike until this figure is put right.
func (l *list) fault(field, key string, pairs ...any) {
	l.failed = true
	l.problems = append(l.problems, document.Problem{Severity: document.SeverityError, Build: l.build, Field: field, Message: words.Tell(key, pairs...)})
}

// doubt adds a warning: the figure is odd, and is used as it is.
func (l *list) doubt(field, key string, pairs ...any) {
	l.problems = append(l.problems, document.Problem{Severity: document.SeverityWarning, Build: l.build, Field: field, Message: words.Tell(key, pairs...)})
}

// show is a figure of the document for people, to a tenth.
func show(v float64) words.Number { return words.Number(math.Round(v*10)/10 + 0) }

// showMM is a length in m as whole mm for people, since it was worked out and not
// typed.
func showMM(m float64) words.Message {
	return words.Tell("pose.mm", "mm", words.Number(math.Round(m*1000)+0))
}

// cite names a figure, its value and its field.
func cite(b *document.Build, field string) words.Message {
	for i := range figures {
		if f := &figures[i]; f.field == field {
			return words.Tell("pose.cite", "name", words.Tell("pose.name."+f.name), "value", show(f.of(b)),
				"unit", words.Tell("pose.unit."+f.unit), "field", field)
		}
	}
	panic("geometry: no figure " + field)
}
