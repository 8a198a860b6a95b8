package bridge

import (
	"github.com/goccy/go-json"

	"steelyard/internal/document"
	"steelyard/internal/words"
)

// answer writes a value as JSON.
func answer(v any) string {
	text, err := json.MarshalWithOption(v, json.DisableHTMLEscape())
	if err != nil {
		return problem("", "The answer could not be written: "+err.Error()+".")
	}
	return string(text)
}

// problem answers that it cannot be done, and why. The field is the one that
// is wrong, if it is one.
func problem(field, message string) string {
	return failed(document.Problem{Severity: document.SeverityError, Field: field, Message: words.Plain(message)})
}

// failure is what a function answers with when it cannot.
type failure struct {
	Problem document.Problem `json:"problem"`
}

func failed(p document.Problem) string {
	text, err := json.Marshal(failure{p})
	if err != nil {
		return `{"problem":{"severity":"error","message":"A problem could not be told."}}`
	}
	return string(text)
}

// refusal answers with the first error among problems.
func refusal(problems []document.Problem) string {
	for _, p := range problems {
		if p.Severity == document.SeverityError {
			return failed(p)
		}
	}
	return problem("", "This document could not be read.")
}
