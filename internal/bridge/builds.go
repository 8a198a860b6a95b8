package bridge

import (
	"steelyard/internal/report"
	"steelyard/internal/tables"
)

// builds takes a document. It answers with the builds that its show.table names
// side by side, set against the one that show.base names: builds.schema.json.
func (s *Session) builds(text string) string {
	e := s.evaluated(text)
	if e.Document == nil {
		return s.refusal(e.Report.Problems)
	}
	return answer(e.SideBySide())
}

// buildsCSV takes a document, a style of CSV and a date, see [Session.table]. It
// answers with the same as CSV.
func (s *Session) buildsCSV(args ...string) string {
	return s.table(args, func(e *report.Evaluation, x tables.Export) []byte { return tables.SideBySideCSV(e.SideBySide(), x) })
}

// buildsMarkdown takes a document, an empty text and a date, see [Session.table].
// It answers with the same as Markdown.
func (s *Session) buildsMarkdown(args ...string) string {
	return s.table(args, func(e *report.Evaluation, x tables.Export) []byte {
		return tables.SideBySideMarkdown(e.SideBySide(), e.Document.Show, x)
	})
}
