package bridge

import (
	"steelyard/internal/report"
	"steelyard/internal/tables"
)

// builds answers a document with its builds side by side, against one of them:
// those that show.table names, against that of show.base. The schema is
// report.SideBySide.
func (s *Session) builds(text string) string {
	e := s.evaluated(text)
	if e.Document == nil {
		return s.refusal(e.Report.Problems)
	}
	return answer(e.SideBySide())
}

// buildsCSV answers a document, a style and a date with that as CSV.
func (s *Session) buildsCSV(args ...string) string {
	return s.table(args, func(e *report.Evaluation, x tables.Export) []byte { return tables.SideBySideCSV(e.SideBySide(), x) })
}

// buildsMarkdown answers a document, nothing and a date with that as Markdown.
func (s *Session) buildsMarkdown(args ...string) string {
	return s.table(args, func(e *report.Evaluation, x tables.Export) []byte {
		return tables.SideBySideMarkdown(e.SideBySide(), e.Document.Show, x)
	})
}
