package assembly

import (
	"steelyard/internal/document"
)

// Omissions are the parts and what is carried that have an error and must not
// enter any figure.
type Omissions struct {
	parts  map[partRef]bool // true: only those after the first of that id
	bags   map[loadRef]bool
	goods  map[loadRef]bool
	riders map[string]bool
}

type partRef struct{ build, part string }

type loadRef struct{ load, id string }

func (o *Omissions) Bag(l *document.Load, b *document.Bag) bool {
	return b.ID == "" || o.bags[loadRef{l.ID, b.ID}]
}

func (o *Omissions) Good(l *document.Load, g *document.Good) bool {
	return g.ID == "" || o.goods[loadRef{l.ID, g.ID}]
}

func NewOmissions(problems []document.Problem) *Omissions {
	o := &Omissions{parts: map[partRef]bool{}, bags: map[loadRef]bool{}, goods: map[loadRef]bool{}, riders: map[string]bool{}}
	for i := range problems {
		p := &problems[i]
		switch {
		case p.Severity != document.SeverityError:
		case p.Bag != "":
			o.bags[loadRef{p.Load, p.Bag}] = true
		case p.Good != "":
			o.goods[loadRef{p.Load, p.Good}] = true
		case p.Rider != "":
			o.riders[p.Rider] = true
		case p.Load == "" && p.WeighIn == "":
			ref := partRef{p.Build, p.Part}
			later, ok := o.parts[ref]
			o.parts[ref] = p.Field == "id" && p.Part != "" && (later || !ok)
		}
	}
	return o
}

// omitted tells, line by line, which parts of a build are left out; nil for
// none.
func (o *Omissions) of(b *document.Build) []bool {
	if o.parts == nil {
		return nil
	}
	out := make([]bool, len(b.Parts))
	seen := make(map[string]bool)
	for i := range b.Parts {
		id := b.Parts[i].ID
		later, ok := o.parts[partRef{b.ID, id}]
		out[i] = id == "" || ok && (!later || seen[id])
		seen[id] = true
	}
	return out
}
