package bridge

import (
	"sync"

	"steelyard/internal/document"
	"steelyard/internal/parts"
	"steelyard/internal/report"
	"steelyard/internal/rooms"
	"steelyard/internal/stowage"
	"steelyard/internal/words"
)

// Session is what the program remembers for one page: the language, the last
// document, and the packing in hand. The zero Session speaks English and is
// ready for use. Its [Session.Functions] may be called from several goroutines.
type Session struct {
	mu    sync.Mutex
	words *words.Words

	evaluator  report.Evaluator
	text       string // of the last document evaluated
	evaluation *report.Evaluation
	answer     string // its report as text, once it was asked for

	ridden *rooms.Rides // of the last evaluation, once they were asked for

	finder    *parts.Finder  // nil until something is looked for in this language
	listing   *parts.Listing // likewise
	listingOf listed

	stowage *stowage.Stowage // the packing in hand, nil when there is none
}

// listed is the parts list that a listing was made of.
type listed struct {
	evaluation *report.Evaluation
	build      string
}

// speak takes the words of a language as JSON (the words of bridge.schema.json),
// or an empty text for English. It answers with an empty text; all later answers
// are in that language. The last evaluation is forgotten, since its report is in
// the language before.
func (s *Session) speak(text string) string {
	var w *words.Words
	if text != "" {
		var err error
		if w, err = words.New([]byte(text)); err != nil {
			return s.problem("", "bridge.words", "why", err)
		}
	}
	s.words = w
	s.evaluator, s.evaluation = report.Evaluator{Words: w}, nil
	s.finder, s.listing = nil, nil
	return ""
}

// evaluated evaluates a text, or finds it evaluated: after every edit the page
// asks for figures and for a picture of the same text. What it returns must not
// be changed.
func (s *Session) evaluated(text string) *report.Evaluation {
	if s.evaluation == nil || s.text != text {
		s.evaluation = nil // should there be a panic
		e := s.evaluator.Evaluate(text)
		s.text, s.evaluation, s.answer = text, e, ""
	}
	return s.evaluation
}

// document reads a document, or finds it read: mostly it is the one that was
// evaluated last.
func (s *Session) document(text string) (*document.Document, []document.Problem) {
	if e := s.evaluation; e != nil && s.text == text && e.Document != nil {
		return e.Document, nil
	}
	return document.Open([]byte(text))
}
