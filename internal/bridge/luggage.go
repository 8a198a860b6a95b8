package bridge

import (
	"steelyard/internal/parts"
	"steelyard/internal/report"
)

func noLoad(id string) parts.Problem {
	return parts.Problem{Severity: parts.SeverityError, Load: id, Message: "There is no load with this id in the document."}
}

var luggageCSV = listOf((*parts.Document).Load, noLoad, func(_ *report.Evaluation, l *parts.Load, x report.Export) []byte { return report.LuggageCSV(l, x) })

var luggageMarkdown = listOf((*parts.Document).Load, noLoad, func(e *report.Evaluation, l *parts.Load, x report.Export) []byte {
	return report.LuggageMarkdown(l, e.Document.Show, x)
})
