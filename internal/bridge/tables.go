package bridge

import (
	"unicode"
	"unicode/utf8"

	"github.com/goccy/go-json"

	"steelyard/internal/document"
	"steelyard/internal/geometry"
	"steelyard/internal/partslist"
	"steelyard/internal/report"
	"steelyard/internal/units"
	"steelyard/internal/words"
)

// readPartsCSV answers a list of parts with what was found in it. The list is
// the bytes of a file: its encoding is found out. The options, JSON, may be empty.
func readPartsCSV(list, options string) string {
	var o partslist.CSVOptions
	if options != "" {
		if err := json.Unmarshal([]byte(options), &o); err != nil {
			return problem("options", "The options cannot be read: "+err.Error()+".")
		}
	}
	o.Stations = geometry.StationNames
	return answer(partslist.ReadCSV([]byte(list), o))
}

// semicolon is what the style of a CSV table is for spreadsheets that want
// semicolons and a decimal comma; anything else is commas and a decimal point.
const semicolon = "semicolon"

// table answers a document with a table of it: the arguments are the document,
// the style of CSV, and the date, as people write it, for the notes on how the
// figures were obtained; without a date there are none.
func table(write func(*report.Evaluation, report.Export) []byte) Function {
	return func(args ...string) string {
		e := evaluation(argument(args, 0))
		if e.Document == nil {
			return refusal(e.Report.Problems)
		}
		return string(write(e, export(e, argument(args, 1), argument(args, 2))))
	}
}

func export(e *report.Evaluation, style, date string) report.Export {
	x := report.Export{Semicolon: style == semicolon}
	if date != "" {
		x.Notes = e.Notes(date)
	}
	return x
}

var figuresCSV = table(func(e *report.Evaluation, x report.Export) []byte { return report.FiguresCSV(e.Report, x) })

var differenceCSV = table(func(e *report.Evaluation, x report.Export) []byte { return report.DifferenceCSV(e.Report, x) })

var figuresMarkdown = table(func(e *report.Evaluation, x report.Export) []byte {
	return report.FiguresMarkdown(e.Report, e.Document.Show, x)
})

var differenceMarkdown = table(func(e *report.Evaluation, x report.Export) []byte {
	return report.DifferenceMarkdown(e.Report, e.Document.Show, x)
})

// listOf answers a document and the id of one of its things with a table of what
// that has; style and date are as in [table]. None is the problem of an id that
// the document does not have.
func listOf[T any](find func(*document.Document, string) *T, none func(id string) document.Problem, write func(*report.Evaluation, *T, report.Export) []byte) Function {
	return func(args ...string) string {
		e := evaluation(argument(args, 0))
		if e.Document == nil {
			return refusal(e.Report.Problems)
		}
		id := argument(args, 1)
		it := find(e.Document, id)
		if it == nil {
			return failed(none(id))
		}
		return string(write(e, it, export(e, argument(args, 2), argument(args, 3))))
	}
}

func noBuild(id string) document.Problem {
	return document.Problem{Severity: document.SeverityError, Build: id, Message: words.Plain("There is no build with this id in the document.")}
}

var partsCSV = listOf((*document.Document).Build, noBuild, func(_ *report.Evaluation, b *document.Build, x report.Export) []byte { return report.PartsCSV(b, x) })

var partsMarkdown = listOf((*document.Document).Build, noBuild, func(e *report.Evaluation, b *document.Build, x report.Export) []byte { return e.PartsMarkdown(b, x) })

// notes answers a document and a date with what goes with a table of its figures,
// a list of sentences: how they were obtained, and the caution.
func notes(text, date string) string {
	e := evaluation(text)
	if e.Document == nil {
		return refusal(e.Report.Problems)
	}
	return answer(e.Notes(date))
}

// provenance answers a document and a date with the sentences on how its
// figures were obtained, a list.
func provenance(text, date string) string {
	e := evaluation(text)
	if e.Document == nil {
		return refusal(e.Report.Problems)
	}
	return answer(e.Provenance(date))
}

// parseMass answers a mass as a person writes it with {"value": grams}; unit is
// that of a bare number.
func parseMass(text, unit string) string { return parsed(units.ParseMass(text, unit)) }

// parseLength answers a length with {"value": millimetres}.
func parseLength(text, unit string) string { return parsed(units.ParseLength(text, unit)) }

func parsed(value float64, err error) string {
	if err != nil {
		return problem("", sentence(err.Error()))
	}
	return answer(number{value})
}

// Number is the answer to parseMass and parseLength.
type number struct {
	Value float64 `json:"value"`
}

// sentence makes a sentence of the text of an error.
func sentence(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(r)) + s[n:] + "."
}
