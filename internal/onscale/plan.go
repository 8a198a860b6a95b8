package onscale

import (
	"cmp"

	"steelyard/internal/document"
	"steelyard/internal/mass"
	"steelyard/internal/order"
	"steelyard/internal/parts"
	"steelyard/internal/report"
)

// Plan is what is left to weigh of a build. Masses are g, and of the build ready
// to ride, without a load.
type Plan struct {
	Build   string   `json:"build"`
	Total   float64  `json:"total_g"`
	Plus    float64  `json:"plus_g"`
	Least   float64  `json:"least_g"`       // ± of the total once everything is weighed
	Weighed float64  `json:"weighed_g"`     // of the total
	Share   float64  `json:"weighed_share"` // that of the total, 0 to 1
	Doubt   float64  `json:"doubt_share"`   // of the total's variance, that is owed to what is not weighed, 0 to 1
	Parts   int      `json:"parts"`         // lines of the list
	Left    []Left   `json:"left"`          // not weighed yet, in the order of the list
	First   []string `json:"first"`         // their ids, what narrows the total most first
}

// Left is a part that is not weighed yet.
type Left struct {
	ID   string  `json:"id"`
	Mass float64 `json:"mass_g"` // of all its pieces
	Plus float64 `json:"plus_g"` // how far that may be off
	Then float64 `json:"then_g"` // ± of the total once this part is weighed
}

// sums are what the ± of a total is made of: see [mass.Expanded].
type sums struct{ variance, size float64 }

// with returns the sums with a contribution of another size in the place of one.
func (s sums) with(now, then float64) sums {
	return sums{max(s.variance-now*now+then*then, 0), max(s.size-now+then, 0)}
}

func (s sums) expanded() float64 { return mass.Expanded(s.variance, s.size) }

// New says what is left to weigh of build i of an evaluated document, on a scale
// that reads to a step, g. All pieces of a line are put on the scale at once; their
// sum then lies within ± step, as a document tells it of a part that is weighed. A
// line that the report leaves out counts to no sum, but can be weighed.
//
// Lines of one part type share their error, so the line that narrows the total most
// need not be the one with the largest ±: see [parts.ErrorKey].
func New(e *report.Evaluation, i int, step float64) *Plan {
	b := &e.Document.Builds[i]
	p := &Plan{Build: b.ID, Parts: len(b.Parts), Left: []Left{}, First: []string{}}
	known := make(map[parts.Source]int, len(b.Parts))
	var types []float64 // standard uncertainty of all lines of a part type, g
	of := make([]int, len(b.Parts))
	for j := range b.Parts {
		q := &b.Parts[j]
		if of[j] = -1; !counts(e.Builds[i], j, q) {
			continue
		}
		k, ok := known[parts.ErrorKey(q)]
		if !ok {
			k = len(types)
			known[parts.ErrorKey(q)] = k
			types = append(types, 0)
		}
		of[j] = k
		types[k] += doubt(q)
		all := float64(q.Quantity) * q.Mass
		p.Total += all
		if q.Basis == document.Weighed {
			p.Weighed += all
		}
	}
	var now sums
	for _, u := range types {
		now = now.with(0, u)
	}
	p.Plus = now.expanded()
	if p.Total > 0 {
		p.Share = p.Weighed / p.Total
	}
	p.left(b, of, types, now, mass.Rectangular(step))
	return p
}

// left lists what is not weighed yet. Of says which part type a line is of, -1 for
// one that does not count; scale is the standard uncertainty of a reading, g.
func (p *Plan) left(b *document.Build, of []int, types []float64, now sums, scale float64) {
	least, open := now, 0.0
	seen := make([]bool, len(types))
	var lines []line
	for j := range b.Parts {
		q := &b.Parts[j]
		if q.Basis == document.Weighed {
			continue
		}
		n, then := doubt(q), now
		if k := of[j]; k >= 0 {
			// What else is of its type keeps its own doubt, and no longer shares it.
			then = then.with(types[k], types[k]-n).with(0, scale)
			if u := types[k]; !seen[k] { // all lines of a type are on the same basis
				seen[k] = true
				least = least.with(u, 0)
				open += u * u
			}
			least = least.with(0, scale)
		}
		lines = append(lines, line{q.ID, then})
		p.Left = append(p.Left, Left{q.ID, float64(q.Quantity) * q.Mass, float64(q.Quantity) * q.HalfWidth, then.expanded()})
	}
	p.Least = min(least.expanded(), p.Plus)
	if now.variance > 0 {
		p.Doubt = min(open/now.variance, 1)
	}
	order.Stable(lines, byGain)
	for _, l := range lines {
		p.First = append(p.First, l.id)
	}
}

// counts reports whether a line counts to the total: whether the report leaves it
// out, or, where the bike has no pose, whether it has a mass.
func counts(w *report.Weighed, line int, q *document.Part) bool {
	if w == nil {
		return q.Mass >= 0 && q.HalfWidth >= 0 && q.Quantity > 0
	}
	return w.Lines[line].OK || w.Lines[line].Off
}

// doubt is the standard uncertainty of a line with all its pieces, g.
func doubt(q *document.Part) float64 { return mass.Rectangular(float64(q.Quantity) * q.HalfWidth) }

// line is a line with what is left of the total's doubt once it is weighed.
type line struct {
	id   string
	then sums
}

// byGain puts the line first that leaves less.
func byGain(a, b line) int {
	return cmp.Or(cmp.Compare(a.then.expanded(), b.then.expanded()), cmp.Compare(a.then.variance, b.then.variance))
}
