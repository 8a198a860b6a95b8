package conversion

import (
	"slices"

	"steelyard/internal/document"
	"steelyard/internal/parts"
	"steelyard/internal/words"
)

// Except says what of a plan is not to be done.
type Except struct {
	Keep []string // ids of parts that stay, though they would go
	Skip []int    // places in Plan.Comes of parts that do not come
	Drop []string // ids of parts of Plan.Stays that go, though they would stay
}

// Apply returns the document with the plan carried out. What was better known
// than the catalogue of the parts that go is kept in Document.Aside, and what
// came from there is taken out. The document of the plan stays as it is.
func (p *Plan) Apply(except Except) *document.Document {
	after := *p.document
	after.Builds = slices.Clone(p.document.Builds)
	b := after.Build(p.build.ID)

	type placed struct {
		part  document.Part
		after int
	}
	var come []placed
	fetched := make(map[int]bool)
	used := make(map[string]bool)
	for i := range b.Parts {
		used[b.Parts[i].ID] = true
	}
	fresh := p.document.NewIDs(document.SortPart, len(p.Comes))
	for i, c := range p.Comes {
		if slices.Contains(except.Skip, i) {
			continue
		}
		part := c.Part
		if part.ID == "" || used[part.ID] {
			part.ID, fresh = fresh[0], fresh[1:]
		}
		used[part.ID] = true
		if c.Origin == FromAside {
			fetched[c.aside] = true
		}
		come = append(come, placed{part, c.after})
	}

	goes := make(map[string]bool)
	for i := range p.Goes {
		goes[p.Goes[i].ID] = !slices.Contains(except.Keep, p.Goes[i].ID)
	}
	for i := range p.Stays {
		goes[p.Stays[i].ID] = slices.Contains(except.Drop, p.Stays[i].ID)
	}
	after.Aside = nil
	for i := range p.document.Aside {
		if !fetched[i] {
			after.Aside = append(after.Aside, p.document.Aside[i])
		}
	}
	drive := driveOf(p.build)
	b.Parts = make([]document.Part, 0, len(p.build.Parts)+len(come))
	for i := -1; i < len(p.build.Parts); i++ {
		if i >= 0 {
			part := &p.build.Parts[i]
			if !goes[part.ID] {
				b.Parts = append(b.Parts, *part)
			} else if BetterKnown(part, p.words) {
				after.Aside = append(after.Aside, document.Aside{Build: b.ID, With: drive, Part: *part})
			}
		}
		for _, c := range come {
			if c.after == i && i >= 0 {
				b.Parts = append(b.Parts, c.part)
			}
		}
	}
	for _, c := range come {
		if c.after < 0 {
			b.Parts = append(b.Parts, c.part)
		}
	}
	if p.Set.BeadSeat > 0 {
		wheelOf(b, p.Set.Area).BeadSeat = p.Set.BeadSeat
	}
	return &after
}

// driveOf names the drive of a build, "" if it has none of those that sets have.
func driveOf(b *document.Build) string {
	has := parts.Meets(b)
	for _, n := range []parts.Need{parts.Gearbox, parts.GearHub, parts.Derailleur} {
		if has[n] {
			return string(n)
		}
	}
	return ""
}

// BetterKnown reports whether more is known of a part than the catalogue says, in
// English or in a language.
func BetterKnown(p *document.Part, w *words.Words) bool {
	e := parts.EntryByID(p.Catalogue)
	return e == nil || p.Basis.Better(document.Typical) || p.Mass != e.Mass || p.HalfWidth != e.HalfWidth || p.Note != e.Note && p.Note != e.In(w).Note
}
