package bridge

import (
	"github.com/goccy/go-json"

	"steelyard/internal/document"
	"steelyard/internal/frametable"
	"steelyard/internal/words"
)

// frameTableWanted says what is read for which build.
type frameTableWanted struct {
	Build string `json:"build"`
	Text  string `json:"text"`
	frametable.Options
}

// frameTable is what was recognised of a maker's table.
type frameTable struct {
	Sizes    []string           `json:"sizes"`
	Size     int                `json:"size"` // -1 until one is chosen
	Figures  []frameFigure      `json:"figures"`
	Checks   []frameCheck       `json:"checks"`
	Left     []frameLine        `json:"left"`
	Problems []document.Problem `json:"problems"` // of the frame with the figures taken
	Document *document.Document `json:"document,omitempty"`
}

type frameFigure struct {
	Field   string  `json:"field"`
	Label   string  `json:"label"`
	Printed string  `json:"printed"`
	Unit    string  `json:"unit"`
	Before  float64 `json:"before"`
	Value   float64 `json:"value"`
	Given   bool    `json:"given"`
	Taken   bool    `json:"taken"`
	Remark  string  `json:"remark,omitempty"`
}

type frameCheck struct {
	Key    string `json:"key"`
	Agrees bool   `json:"agrees"`
	Text   string `json:"text"`
}

type frameLine struct {
	Line int    `json:"line"`
	Text string `json:"text"`
	Why  string `json:"why"`
}

// readFrameTable takes a document and what to read for which of its builds, JSON:
// the frameTableWanted of frametable.schema.json. It answers with what was
// recognised and what was not, what contradicts the rest, and the document with the
// figures taken, once it is known of which size: frametable.schema.json. Nothing is
// kept, so looking at a table and taking it are the same call.
func (s *Session) readFrameTable(text, wanted string) string {
	d, problems := document.Open([]byte(text))
	if d == nil {
		return s.refusal(problems)
	}
	var o frameTableWanted
	if err := json.Unmarshal([]byte(wanted), &o); err != nil {
		return s.problem("", "bridge.options", "why", err)
	}
	b := d.Build(o.Build)
	if b == nil {
		return s.failed(noBuild(o.Build))
	}
	if len(o.Text) > frametable.MostBytes {
		return s.problem("text", "frametable.long", "most", frametable.MostBytes)
	}
	t := frametable.Read(o.Text, b, o.Options)
	out := frameTable{Sizes: t.Sizes, Size: t.Size, Figures: []frameFigure{}, Checks: []frameCheck{}, Left: []frameLine{}, Problems: []document.Problem{}}
	for i := range t.Figures {
		f := &t.Figures[i]
		out.Figures = append(out.Figures, frameFigure{
			Field: f.Field, Label: words.Sentence{Of: f.Label}.In(s.words), Printed: f.Printed, Unit: f.Unit,
			Before: f.Before, Value: f.Value, Given: f.Given, Taken: f.Taken, Remark: f.Remark.In(s.words),
		})
	}
	for i := range t.Checks {
		c := &t.Checks[i]
		out.Checks = append(out.Checks, frameCheck{c.Key, c.Agrees, c.Text.In(s.words)})
	}
	for i := range t.Left {
		l := &t.Left[i]
		out.Left = append(out.Left, frameLine{l.Line, l.Text, l.Why.In(s.words)})
	}
	if t.Build != nil {
		for _, p := range t.Problems {
			out.Problems = append(out.Problems, p.Said(s.words))
		}
		*b = *t.Build
		out.Document = d
	}
	return answer(out)
}
