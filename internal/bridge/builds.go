package bridge

import (
	"steelyard/internal/report"
	"steelyard/internal/rooms"
	"steelyard/internal/tables"
)

// builds takes a document, and "brief" where the figures of builds as they are
// ridden are not wanted. It answers with the builds that its show.table names side
// by side, set against the one that show.base names: builds.schema.json.
func (s *Session) builds(args ...string) string {
	e := s.evaluated(argument(args, 0))
	if e.Document == nil {
		return s.refusal(e.Report.Problems)
	}
	if argument(args, 1) == "brief" {
		return answer(e.SideBySide())
	}
	return answer(rooms.SideBySide(e))
}

// buildsParts takes a document. It answers with the parts of those builds in one
// list: buildsparts.schema.json.
func (s *Session) buildsParts(text string) string {
	e := s.evaluated(text)
	if e.Document == nil {
		return s.refusal(e.Report.Problems)
	}
	return answer(tables.PartsSideBySideOf(e))
}

// buildsCSV takes a document, a style of CSV and a date, see [Session.table]. It
// answers with the same as CSV.
func (s *Session) buildsCSV(args ...string) string {
	return s.table(args, func(e *report.Evaluation, x tables.Export) []byte {
		return tables.SideBySideCSV(rooms.SideBySide(e), ofAll(e, args, x))
	})
}

// buildsMarkdown takes a document, an empty text and a date, see [Session.table].
// It answers with the same as Markdown.
func (s *Session) buildsMarkdown(args ...string) string {
	return s.table(args, func(e *report.Evaluation, x tables.Export) []byte {
		return tables.SideBySideMarkdown(rooms.SideBySide(e), e.Document.Show, ofAll(e, args, x))
	})
}

// ofAll has the notes of a table tell of all builds that it shows.
func ofAll(e *report.Evaluation, args []string, x tables.Export) tables.Export {
	if date := argument(args, 2); date != "" {
		x.Notes = append(tables.ProvenanceOfAll(e, date), tables.Caution(e))
	}
	return x
}
