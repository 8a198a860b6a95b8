package tables

import (
	"steelyard/internal/document"
	"steelyard/internal/parts"
	"steelyard/internal/report"
)

// PartsSideBySide are the parts of all builds that are set side by side, in one
// list: a part that is in several of them stands on one line.
type PartsSideBySide struct {
	Builds []report.Column `json:"builds"`
	Groups []PartsGroup    `json:"groups"`
}

// PartsGroup is a group of the list, with its mass in each build.
type PartsGroup struct {
	Key    string      `json:"key"`
	Label  string      `json:"label"`
	Masses []*float64  `json:"masses_g"` // null for a build without figures
	Lines  []PartsLine `json:"lines"`
}

// PartsLine is a part as it is in each build. Where the builds that have it say
// different things of it, what they do not agree on is empty here.
type PartsLine struct {
	Name  string       `json:"name"`
	Note  string       `json:"note"`
	Basis string       `json:"basis"`
	Where string       `json:"where"` // the label of its station
	Moved bool         `json:"moved"` // they have it in different places
	Same  bool         `json:"same"`  // every build has it, so many and as heavy
	Cells []*PartsCell `json:"cells"` // one for each build; null where it has no such part
}

// PartsCell is a part in one build.
type PartsCell struct {
	Name     string  `json:"name"`
	Basis    string  `json:"basis"`
	Quantity int     `json:"quantity"`
	Mass     float64 `json:"mass_g"` // of all pieces together
	Plus     float64 `json:"plus_g"`
}

// PartsSideBySideOf lists the parts of the builds that the document sets side by
// side. Which parts are one is told by [parts.Match], build after build.
func PartsSideBySideOf(e *report.Evaluation) *PartsSideBySide {
	d, w := e.Document, report.NewPhrasing(e.Words(), &e.Document.Show)
	out := &PartsSideBySide{Builds: []report.Column{}, Groups: []PartsGroup{}}
	table := e.InTable()
	var union document.Build // of each line a part that stands for it
	var lines [][]*document.Part
	rigid := true
	for n, i := range table {
		b := &d.Builds[i]
		out.Builds = append(out.Builds, e.Column(i))
		if r := &e.Report.Builds[i]; !r.Weighed || r.RearSprung {
			rigid = false
		}
		line := make(map[*document.Part]int, len(union.Parts))
		for k := range union.Parts {
			line[&union.Parts[k]] = k
		}
		known := union.Parts
		for _, pair := range parts.Match(&union, b) {
			if pair.B == nil {
				continue
			}
			k, ok := line[pair.A]
			if !ok {
				k = len(known)
				known = append(known, *pair.B)
				lines = append(lines, make([]*document.Part, len(table)))
			}
			lines[k][n] = pair.B
		}
		union.Parts = known
	}
	for g, key := range document.Groups {
		group := PartsGroup{Key: key, Label: w.On("group", key, rigid), Masses: make([]*float64, len(table)), Lines: []PartsLine{}}
		for k := range union.Parts {
			if document.GroupOf(union.Parts[k].Kind) == document.Groups[g] {
				group.Lines = append(group.Lines, partsLine(w, lines[k], rigid))
			}
		}
		if len(group.Lines) == 0 {
			continue
		}
		for n, i := range table {
			r := &e.Report.Builds[i]
			if !r.Weighed {
				continue
			}
			sum := 0.0
			for _, own := range r.Own {
				if own.Key == key {
					sum = own.Mass
				}
			}
			group.Masses[n] = &sum
		}
		out.Groups = append(out.Groups, group)
	}
	return out
}

// partsLine tells of a part as the builds have it, nil for those that do not.
func partsLine(w *report.Phrasing, of []*document.Part, rigid bool) PartsLine {
	l := PartsLine{Same: true, Cells: make([]*PartsCell, len(of))}
	var first *document.Part
	for n, p := range of {
		if p == nil {
			l.Same = false
			continue
		}
		basis := string(p.Basis)
		pieces := float64(p.Quantity)
		l.Cells[n] = &PartsCell{Name: p.Name, Basis: basis, Quantity: p.Quantity, Mass: pieces * p.Mass, Plus: pieces * p.HalfWidth}
		where := ""
		if p.At == nil {
			where = w.On("station", p.Station, rigid)
		}
		if first == nil {
			first, l.Name, l.Note, l.Basis, l.Where = p, p.Name, p.Note, basis, where
			continue
		}
		if p.Name != first.Name || p.Quantity != first.Quantity || p.Mass != first.Mass || p.HalfWidth != first.HalfWidth || p.Basis != first.Basis {
			l.Same = false
		}
		if p.Name != first.Name {
			l.Name = ""
		}
		if p.Note != first.Note {
			l.Note = ""
		}
		if p.Basis != first.Basis {
			l.Basis = ""
		}
		if p.Station != first.Station || (p.At == nil) != (first.At == nil) || p.At != nil && *p.At != *first.At || p.Offset != first.Offset {
			l.Where, l.Moved = "", true
		}
	}
	return l
}
