package bridge

import (
	"unicode"
	"unicode/utf8"

	"github.com/goccy/go-json"

	"steelyard/internal/geometry"
	"steelyard/internal/parts"
	"steelyard/internal/report"
	"steelyard/internal/units"
)

// readPartsCSV answers a list of parts with what was found in it. The options,
// JSON, may be empty.
func readPartsCSV(text, options string) string {
	var o parts.CSVOptions
	if options != "" {
		if err := json.Unmarshal([]byte(options), &o); err != nil {
			return problem("options", "The options cannot be read: "+err.Error()+".")
		}
	}
	o.Stations = geometry.StationNames
	return answer(parts.ReadCSV([]byte(text), o))
}

// partsCSV answers a document and the id of a build with the build's parts as
// CSV. The third argument is "semicolon" for spreadsheets with a decimal comma.
func partsCSV(args ...string) string {
	d, problems := parts.Open([]byte(argument(args, 0)))
	if d == nil {
		return refusal(problems)
	}
	id := argument(args, 1)
	b := d.Build(id)
	if b == nil {
		return failed(parts.Problem{Severity: parts.SeverityError, Build: id, Message: "There is no build with this id in the document."})
	}
	return string(parts.WriteCSV(b, parts.CSVStyle{Semicolon: argument(args, 2) == "semicolon"}))
}

// table answers a document with a table of its report.
func table(text string, write func(*report.Evaluation) []byte) string {
	e := evaluation(text)
	if e.Document == nil {
		return refusal(e.Report.Problems)
	}
	return string(write(e))
}

func figuresCSV(text string) string {
	return table(text, func(e *report.Evaluation) []byte { return report.FiguresCSV(e.Report) })
}

func differenceCSV(text string) string {
	return table(text, func(e *report.Evaluation) []byte { return report.DifferenceCSV(e.Report) })
}

func figuresMarkdown(text string) string {
	return table(text, func(e *report.Evaluation) []byte { return report.FiguresMarkdown(e.Report, e.Document.Show) })
}

func differenceMarkdown(text string) string {
	return table(text, func(e *report.Evaluation) []byte { return report.DifferenceMarkdown(e.Report, e.Document.Show) })
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
	return answer(struct {
		Value float64 `json:"value"`
	}{value})
}

// sentence makes a sentence of the text of an error.
func sentence(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(r)) + s[n:] + "."
}
