package parts

import (
	"fmt"
	"slices"
	"strings"

	"steelyard/internal/document"
	"steelyard/internal/words"
)

// CheckCatalogue judges entries as a catalogue: what Check asks of a part, and
// besides that ids in kebab case, a doubt on every mass, a size for every form,
// and an entry for every kind. A Problem names the entry as its part.
func CheckCatalogue(entries []Entry) []document.Problem {
	var problems []document.Problem
	ids := make(map[string]bool)
	kinds := make(map[string]bool)
	for i := range entries {
		e := &entries[i]
		fail := func(field, format string, args ...any) {
			problems = append(problems, document.Problem{
				Severity: document.SeverityError, Part: e.ID, Field: field,
				Message: words.Plain(fmt.Sprintf("The entry %s: ", words.Quote(e.Name)) + fmt.Sprintf(format, args...)),
			})
		}
		if !kebab(e.ID) {
			fail("id", "the id %s should be small letters and digits with hyphens between", words.Quote(e.ID))
		}
		if ids[e.ID] {
			fail("id", "the id %s is there twice", words.Quote(e.ID))
		}
		ids[e.ID], kinds[e.Kind] = true, true
		p := e.Part(e.ID)
		for _, wrong := range p.Check() {
			wrong.Part = e.ID
			problems = append(problems, wrong)
		}
		if e.Mass <= 0 {
			fail("mass_g", "the mass is %v; it should be more than 0 g", e.Mass)
		}
		if e.HalfWidth <= 0 || e.HalfWidth > e.Mass {
			fail("half_width_g", "the half-width is %v; it should be more than 0 g and at most the mass", e.HalfWidth)
		}
		if e.Basis != document.Typical {
			fail("basis", "the basis is %s; the catalogue's figures are %s", words.Quote(string(e.Basis)), words.Quote(string(document.Typical)))
		}
		if e.Quantity < 1 {
			fail("quantity", "the quantity is %d; it should be 1 or more", e.Quantity)
		}
		for k := range sizes(e.Shape.Form) {
			if e.Shape.Size[k] <= 0 {
				fail("shape.size_mm", "size %d of a %s is %v; it should be more than 0 mm", k+1, e.Shape.Form, e.Shape.Size[k])
			}
		}
		for _, n := range e.Needs {
			if !slices.Contains(Needs, n) {
				fail("needs", "%s is nothing that a build has or lacks", words.Quote(string(n)))
			}
		}
		for _, s := range e.Search {
			if words.Blank(s) || s != strings.ToLower(s) {
				fail("search", "the search word %s should be in small letters", words.Quote(s))
			}
		}
	}
	for _, k := range document.Kinds {
		if !kinds[k.ID] {
			problems = append(problems, document.Problem{Severity: document.SeverityError, Field: "kind", Message: words.Plain(fmt.Sprintf("no entry is of the kind %s", words.Quote(k.ID)))})
		}
	}
	return problems
}

// sizes returns how many of the three sizes a form has.
func sizes(f document.Form) int {
	switch f {
	case document.FormRod, document.FormRing, document.FormPair:
		return 1
	case document.FormDisc:
		return 2
	case document.FormBox:
		return 3
	}
	return 0
}

func kebab(s string) bool {
	for word := range strings.SplitSeq(s, "-") {
		if word == "" || strings.Trim(word, "abcdefghijklmnopqrstuvwxyz0123456789") != "" {
			return false
		}
	}
	return true
}
