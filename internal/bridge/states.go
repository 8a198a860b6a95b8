package bridge

import "steelyard/internal/report"

var statesCSV = table(func(e *report.Evaluation, x report.Export) []byte { return report.StatesCSV(e.Report, x) })

var statesMarkdown = table(func(e *report.Evaluation, x report.Export) []byte {
	return report.StatesMarkdown(e.Report, e.Document.Show, x)
})
