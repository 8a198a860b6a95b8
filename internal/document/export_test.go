package document

import "reflect"

// What the tests of this package see besides what everybody does.
const (
	LinkPrefix  = linkPrefix
	MaxLink     = maxLink
	MaxProblems = maxProblems
	DefaultBody = defaultBody
	MinStep     = minStep
)

var (
	ErrCutShort = errCutShort
	Migrate     = migrate
	Migrations  = len(migrations)
)

// Migration is a step from one version of the format to the next.
type Migration = migration

// Document returns what the reader has read last.
func (r *Reader) Document() *Document { return r.doc }

// Strict returns what a text has that a type has not.
func Strict(text []byte, t reflect.Type) []Problem {
	s := newScanner(text, true)
	s.scan(layoutOf(t))
	return s.problems()
}
