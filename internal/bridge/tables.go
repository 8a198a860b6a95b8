package bridge

import (
	"github.com/goccy/go-json"

	"steelyard/internal/document"
	"steelyard/internal/geometry"
	"steelyard/internal/partslist"
	"steelyard/internal/report"
	"steelyard/internal/tables"
	"steelyard/internal/units"
	"steelyard/internal/words"
)

// readPartsCSV takes the bytes of a file, whose encoding is found out, and
// options, JSON or empty: those of partslist.schema.json. It answers with the
// parts that were found in it: partslist.schema.json.
func (s *Session) readPartsCSV(list, options string) string {
	var o partslist.CSVOptions
	if options != "" {
		if err := json.Unmarshal([]byte(options), &o); err != nil {
			return s.problem("options", "bridge.options", "why", err)
		}
	}
	o.Stations = geometry.StationNames
	read := partslist.ReadCSV([]byte(list), o)
	read.Problems = document.SayAll(read.Problems, s.words)
	for i := range read.Columns {
		read.Columns[i] = read.Columns[i].Said(s.words)
	}
	for i := range read.Bad {
		read.Bad[i].Why = read.Bad[i].Why.Said(s.words)
	}
	return answer(read)
}

// semicolon is what the style of a CSV table is for spreadsheets that want
// semicolons and a decimal comma; anything else is commas and a decimal point.
const semicolon = "semicolon"

// table answers with a table of a document. Its arguments are the document, the
// style of CSV, and the date as people write it, for the notes on how the figures
// were obtained; without a date there are no notes.
func (s *Session) table(args []string, write func(*report.Evaluation, tables.Export) []byte) string {
	e := s.evaluated(argument(args, 0))
	if e.Document == nil {
		return s.refusal(e.Report.Problems)
	}
	return string(write(e, s.export(e, argument(args, 1), argument(args, 2))))
}

func (s *Session) export(e *report.Evaluation, style, date string) tables.Export {
	x := tables.Export{Words: s.words, Semicolon: style == semicolon}
	if date != "" {
		x.Notes = tables.Notes(e, date)
	}
	return x
}

// figuresCSV takes a document, a style of CSV and a date, see [Session.table]. It
// answers with the figures of all builds as CSV.
func (s *Session) figuresCSV(args ...string) string {
	return s.table(args, func(e *report.Evaluation, x tables.Export) []byte { return tables.FiguresCSV(e.Report, x) })
}

// figuresMarkdown takes a document, an empty text and a date, see
// [Session.table]. It answers with the figures of all builds as Markdown.
func (s *Session) figuresMarkdown(args ...string) string {
	return s.table(args, func(e *report.Evaluation, x tables.Export) []byte {
		return tables.FiguresMarkdown(e.Report, e.Document.Show, x)
	})
}

// differenceCSV takes a document, a style of CSV and a date, see [Session.table].
// It answers with the difference of both sides as CSV.
func (s *Session) differenceCSV(args ...string) string {
	return s.table(args, func(e *report.Evaluation, x tables.Export) []byte { return tables.DifferenceCSV(e.Report, x) })
}

// differenceMarkdown takes a document, an empty text and a date, see
// [Session.table]. It answers with the difference of both sides as Markdown.
func (s *Session) differenceMarkdown(args ...string) string {
	return s.table(args, func(e *report.Evaluation, x tables.Export) []byte {
		return tables.DifferenceMarkdown(e.Report, e.Document.Show, x)
	})
}

// statesCSV takes a document, a style of CSV and a date, see [Session.table]. It
// answers with every state of both sides as CSV.
func (s *Session) statesCSV(args ...string) string {
	return s.table(args, func(e *report.Evaluation, x tables.Export) []byte { return tables.StatesCSV(e.Report, x) })
}

// statesMarkdown takes a document, an empty text and a date, see [Session.table].
// It answers with every state of both sides as Markdown.
func (s *Session) statesMarkdown(args ...string) string {
	return s.table(args, func(e *report.Evaluation, x tables.Export) []byte {
		return tables.StatesMarkdown(e.Report, e.Document.Show, x)
	})
}

// listOf answers with a table of what one build or load of a document has. Its
// arguments are the document, the id, the style and the date, as in
// [Session.table]; none makes the problem of an id that the document does not
// have.
func listOf[T any](s *Session, args []string, find func(*document.Document, string) *T, none func(id string) document.Problem, write func(*report.Evaluation, *T, tables.Export) []byte) string {
	e := s.evaluated(argument(args, 0))
	if e.Document == nil {
		return s.refusal(e.Report.Problems)
	}
	id := argument(args, 1)
	it := find(e.Document, id)
	if it == nil {
		return s.failed(none(id))
	}
	return string(write(e, it, s.export(e, argument(args, 2), argument(args, 3))))
}

func noBuild(id string) document.Problem {
	return document.Problem{Severity: document.SeverityError, Build: id, Message: words.Tell("bridge.no_build")}
}

func noLoad(id string) document.Problem {
	return document.Problem{Severity: document.SeverityError, Load: id, Message: words.Tell("bridge.no_load")}
}

// partsCSV takes a document, the id of a build, a style of CSV and a date, see
// [listOf]. It answers with the build's parts as CSV.
func (s *Session) partsCSV(args ...string) string {
	return listOf(s, args, (*document.Document).Build, noBuild, func(_ *report.Evaluation, b *document.Build, x tables.Export) []byte {
		return tables.PartsCSV(b, x)
	})
}

// partsMarkdown takes a document, the id of a build, an empty text and a date,
// see [listOf]. It answers with the build's parts as Markdown.
func (s *Session) partsMarkdown(args ...string) string {
	return listOf(s, args, (*document.Document).Build, noBuild, func(e *report.Evaluation, b *document.Build, x tables.Export) []byte {
		return tables.PartsMarkdown(e, b, x)
	})
}

// luggageCSV takes a document, the id of a load, a style of CSV and a date, see
// [listOf]. It answers with the load's bags and goods as CSV.
func (s *Session) luggageCSV(args ...string) string {
	return listOf(s, args, (*document.Document).Load, noLoad, func(_ *report.Evaluation, l *document.Load, x tables.Export) []byte {
		return tables.LuggageCSV(l, x)
	})
}

// luggageMarkdown takes a document, the id of a load, an empty text and a date,
// see [listOf]. It answers with the load's bags and goods as Markdown.
func (s *Session) luggageMarkdown(args ...string) string {
	return listOf(s, args, (*document.Document).Load, noLoad, func(e *report.Evaluation, l *document.Load, x tables.Export) []byte {
		return tables.LuggageMarkdown(l, e.Document.Show, x)
	})
}

// notes takes a document and a date. It answers with the sentences that go with a
// table of its figures, how they were obtained and the caution: a list of texts,
// see notes in bridge.schema.json.
func (s *Session) notes(text, date string) string {
	e := s.evaluated(text)
	if e.Document == nil {
		return s.refusal(e.Report.Problems)
	}
	return answer(tables.Notes(e, date))
}

// provenance takes a document and a date. It answers with the sentences on how the
// figures of all builds that it sets side by side were obtained: a list of texts,
// see provenance in bridge.schema.json.
func (s *Session) provenance(text, date string) string {
	e := s.evaluated(text)
	if e.Document == nil {
		return s.refusal(e.Report.Problems)
	}
	return answer(tables.ProvenanceOfAll(e, date))
}

// parseMass takes a mass as a person writes it, and the unit of a bare number. It
// answers with grams: the parsed of bridge.schema.json.
func (s *Session) parseMass(text, unit string) string { return s.parsed(units.ParseMass(text, unit)) }

// parseLength takes a length as a person writes it, and the unit of a bare
// number. It answers with millimetres: the parsed of bridge.schema.json.
func (s *Session) parseLength(text, unit string) string {
	return s.parsed(units.ParseLength(text, unit))
}

func (s *Session) parsed(value float64, err error) string {
	if err != nil {
		return s.failed(problemOf("", err))
	}
	return answer(number{value})
}

// Number is the answer to parseMass and parseLength.
type number struct {
	Value float64 `json:"value"`
}
