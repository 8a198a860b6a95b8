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
}

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
	return Input{key, label("in." + key), unit, report.Decimal(t.Value*factor, decimals), report.Decimal(t.Half*factor, decimals), string(t.Basis), t.typical}
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
