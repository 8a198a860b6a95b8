package bridge

import (
	"steelyard/internal/parts"
	"steelyard/internal/report"
)

// luggageOf answers a document and the id of a load with a table of its bags and
// goods; style and date are as in [table].
func luggageOf(write func(*report.Evaluation, *parts.Load, report.Export) []byte) Function {
	return func(args ...string) string {
		e := evaluation(argument(args, 0))
		if e.Document == nil {
			return refusal(e.Report.Problems)
		}
		id := argument(args, 1)
		l := e.Document.Load(id)
		if l == nil {
			return failed(parts.Problem{Severity: parts.SeverityError, Load: id, Message: "There is no load with this id in the document."})
		}
		return string(write(e, l, export(e, argument(args, 2), argument(args, 3))))
	}
}

var luggageCSV = luggageOf(func(_ *report.Evaluation, l *parts.Load, x report.Export) []byte { return report.LuggageCSV(l, x) })

var luggageMarkdown = luggageOf(func(e *report.Evaluation, l *parts.Load, x report.Export) []byte {
	return report.LuggageMarkdown(l, e.Document.Show, x)
})
