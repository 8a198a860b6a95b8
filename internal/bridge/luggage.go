package bridge

import (
	"steelyard/internal/document"
	"steelyard/internal/report"
	"steelyard/internal/words"
)

func noLoad(id string) document.Problem {
	return document.Problem{Severity: document.SeverityError, Load: id, Message: words.Plain("There is no load with this id in the document.")}
}

var luggageCSV = listOf((*document.Document).Load, noLoad, func(_ *report.Evaluation, l *document.Load, x report.Export) []byte { return report.LuggageCSV(l, x) })

var luggageMarkdown = listOf((*document.Document).Load, noLoad, func(e *report.Evaluation, l *document.Load, x report.Export) []byte {
	return report.LuggageMarkdown(l, e.Document.Show, x)
})
