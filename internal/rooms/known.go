package rooms

import (
	"fmt"
	"strings"

	"steelyard/internal/document"
	"steelyard/internal/drive"
	"steelyard/internal/mass"
	"steelyard/internal/report"
)

// Input is a figure that went into a reckoning, as it was taken.
type Input struct {
	Key     string  `json:"key"`
	Label   string  `json:"label"`
	Unit    string  `json:"unit"`
	Value   float64 `json:"value"`
	Half    float64 `json:"half_width"`
	Basis   string  `json:"basis"`
	Typical bool    `json:"typical"` // nobody said it: common practice, no source

	// Where in the document it belongs, as a problem names it: keys and numbers in
	// lists, with dots between. A field of no build and no rider is the document's.
	Field string `json:"field,omitempty"` // empty where it cannot be said
	Build string `json:"build,omitempty"` // id
	Rider string `json:"rider,omitempty"` // id

	Said    string   `json:"said_basis,omitempty"` // with which one begins that somebody says
	Bare    bool     `json:"bare,omitempty"`       // a number with neither ± nor basis
	Text    string   `json:"text,omitempty"`       // of a choice: the option taken
	Options []Option `json:"options,omitempty"`    // of a choice; none is a figure
}

// Option is something that may be chosen.
type Option struct {
	Value string `json:"value"`
	Label string `json:"label"`
}

// Bases of inputs beside those of documents.
const (
	reckoned = "reckoned" // from others, until somebody says it
	unstated = "unstated" // there is none until somebody says it

	boundless = "boundless" // somebody stated it without a ±, which is typical
)

// Measure is what is gained by measuring one of the figures that an answer rests
// on.
type Measure struct {
	Key   string  `json:"key"`
	Label string  `json:"label"`
	Share float64 `json:"share"`     // of the answer's variance
	Then  float64 `json:"then_plus"` // ± of the answer once this and all above it are known exactly, in its unit
}

// taken is a figure of the document, or what is typical in its place.
type taken struct {
	drive.Quantity
	typical bool
}

// take returns a figure of the document where it may be reckoned with, in SI by a
// factor, and else a typical one. Its source is named by the key, so that two
// typical ones err alike; one that somebody said errs alike with another only if
// both say the same.
func take(key string, k *document.Known, s document.Span, factor float64, typical drive.Quantity) taken {
	typical.Source, typical.Basis = key, drive.Typical
	if k = s.Sound(k); k == nil {
		return taken{typical, true}
	}
	basis := drive.Basis(k.Basis)
	if basis == "" {
		basis = drive.Guessed
	}
	return taken{drive.Quantity{Value: k.Value * factor, Half: k.HalfWidth * factor, Basis: basis, Source: fmt.Sprintf("%s %g %g", key, k.Value, k.HalfWidth)}, false}
}

// input tells it in a unit.
func (t *taken) input(label func(string) string, key, unit string, factor float64, decimals int) Input {
	return Input{
		Key: key, Label: label("in." + key), Unit: unit, Value: report.Decimal(t.Value*factor, decimals), Half: report.Decimal(t.Half*factor, decimals),
		Basis: string(t.Basis), Typical: t.typical,
	}
}

// at says where in the document an input belongs.
func (i Input) at(field string) Input {
	i.Field = field
	if !i.Bare && i.Options == nil {
		i.Said = string(drive.Guessed)
	}
	return i
}

// bare is an input that is a number without more.
func bare(label func(string) string, key, unit string, v float64, typical bool) Input {
	i := Input{Key: key, Label: label("in." + key), Unit: unit, Value: report.Decimal(v, 3), Typical: typical, Bare: true}
	if typical {
		i.Basis = string(drive.Typical)
	}
	return i
}

// chosen is an input that is one of several.
func chosen(label func(string) string, key, text string, typical bool, options []Option) Input {
	i := bare(label, key, "", 0, typical)
	i.Bare, i.Text, i.Options = false, text, options
	return i
}

// optionsOf labels what may be chosen, each under its name after a prefix.
func optionsOf(label func(string) string, prefix string, values []string) []Option {
	out := make([]Option, len(values))
	for i, v := range values {
		out[i] = Option{v, label(prefix + v)}
	}
	return out
}

// sourceKey is the key of a source: what stands before what tells it apart.
func sourceKey(source string) string {
	key, _, _ := strings.Cut(source, " ")
	return key
}

// first says what of the sources of a figure is worth measuring, in a unit by a
// factor. Names are all that the budget may hold.
func first(f drive.Figure, names []string, label func(string) string, factor float64, decimals int) []Measure {
	out := []Measure{}
	for _, m := range drive.First(f, names) {
		if m.Share < 0.01 || len(out) == 5 {
			break
		}
		key := sourceKey(m.Source)
		out = append(out, Measure{key, label("in." + key), report.Decimal(m.Share, 3), report.Decimal(m.Then*factor, decimals)})
	}
	return out
}

// of is what a figure owes, as charge functions have it.
func of(f drive.Figure) func(*mass.Budget, float64) {
	return func(b *mass.Budget, sign float64) {
		if f.Budget != nil {
			b.Add(f.Budget, sign)
		}
	}
}
