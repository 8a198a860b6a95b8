package tables

import (
	"steelyard/internal/document"
	"steelyard/internal/report"
)

// SideBySideCSV writes builds set side by side, for a spreadsheet: one line a
// figure, for every build its value, its ±, the difference from the base, the ±
// of that, and the verdict. Notes are as in [FiguresCSV].
func SideBySideCSV(s *report.SideBySide, x Export) []byte {
	t := csvTable{Export: x}
	w := &report.Phrasing{Words: x.Words}
	head := []string{"Chapter", "Key", "Figure", "Unit"}
	for _, b := range s.Builds {
		head = append(head, b.Name, b.Name+" ±")
		if b.ID != s.Base {
			head = append(head, b.Name+" Δ", b.Name+" Δ ±", b.Name+" "+w.Label("table.verdict"))
		}
	}
	t.line(head...)
	for _, c := range s.Chapters {
		for _, r := range c.Rows {
			cells := []string{c.Label, r.Key, r.Label, r.Unit}
			for i, b := range s.Builds {
				v := r.Cells[i]
				if v == nil {
					v = &report.Cell{}
					cells = append(cells, "", "")
				} else {
					cells = append(cells, t.number(v.Value), t.number(v.Plus))
				}
				switch {
				case b.ID == s.Base:
				case r.Cells[i] == nil:
					cells = append(cells, "", "", "")
				default:
					cells = append(cells, t.number(v.Delta), t.number(v.DeltaPlus), w.Label("verdict."+v.Verdict))
				}
			}
			t.line(cells...)
		}
	}
	return t.bytes()
}

// SideBySideMarkdown writes builds set side by side for an article, in the units
// that the document wants shown: every figure, and below it in the same cell how
// far it is from the base. Notes follow below.
func SideBySideMarkdown(s *report.SideBySide, show document.Show, x Export) []byte {
	w := report.NewPhrasing(x.Words, &show)
	var t markdownTable
	layout, head := "w", []string{w.Label("table.figure")}
	for _, b := range s.Builds {
		layout += "f"
		head = append(head, b.Name)
		if b.ID != s.Base {
			layout += "f"
			head = append(head, w.Label("table.difference"))
		}
	}
	for _, c := range s.Chapters {
		t.head(layout, append([]string{c.Label}, head[1:]...)...)
		for _, r := range c.Rows {
			cells := []string{r.Label}
			for i, b := range s.Builds {
				v := r.Cells[i]
				switch {
				case v == nil && b.ID == s.Base:
					cells = append(cells, "–")
				case v == nil:
					cells = append(cells, "–", "–")
				default:
					cells = append(cells, w.Figure(r.Unit, v.Value, v.Plus))
					if b.ID != s.Base {
						told := plusSign(v.Delta, w.Figure(r.Unit, v.Delta, v.DeltaPlus))
						if v.Verdict == report.Undecided || v.Verdict == report.Same {
							told += ", " + w.Label("verdict."+v.Verdict)
						}
						cells = append(cells, told)
					}
				}
			}
			t.line(cells...)
		}
	}
	return t.end(x)
}
