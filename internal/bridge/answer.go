package bridge

import (
	"strings"

	"github.com/goccy/go-json"

	"steelyard/internal/document"
	"steelyard/internal/words"
)

// answer writes a value as JSON.
func answer(v any) string {
	var text strings.Builder // which takes what the encoder wrote as it is
	e := json.NewEncoder(&text)
	e.SetEscapeHTML(false)
	if err := e.Encode(v); err != nil {
		return unwritten
	}
	return strings.TrimSuffix(text.String(), "\n")
}

// unwritten is the answer when no other can be written, which is a fault of the
// program.
const unwritten = `{"problem":{"severity":"error","message":"The answer could not be written."}}`

// problem answers that it cannot be done, and why: the message of a key, see
// [words.Tell]. The field is the one that is wrong, if it is one.
func (s *Session) problem(field, key string, pairs ...any) string {
	return s.failed(document.Problem{Severity: document.SeverityError, Field: field, Message: words.Tell(key, pairs...)})
}

// problemOf is an error as the problem of a field.
func problemOf(field string, err error) document.Problem {
	return document.Problem{Severity: document.SeverityError, Field: field, Message: sentence(err)}
}

// sentence makes a sentence of an error.
func sentence(err error) words.Message {
	return words.Tell("bridge.sentence", "message", words.Sentence{Of: err})
}

// failure is what a function answers with when it cannot.
type failure struct {
	Problem document.Problem `json:"problem"`
}

// failed answers with a problem.
func (s *Session) failed(p document.Problem) string { return answer(failure{p.Said(s.words)}) }

// refusal answers with the first error among problems.
func (s *Session) refusal(problems []document.Problem) string {
	for _, p := range problems {
		if p.Severity == document.SeverityError {
			return s.failed(p)
		}
	}
	return s.problem("", "bridge.unread")
}
