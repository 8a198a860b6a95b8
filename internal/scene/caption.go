package scene

import "strings"

// Caption is what stands below a picture that leaves the page: plain text, laid
// out in a head line, a table and small print. All of it may be empty.
type Caption struct {
	Title string
	Date  string     // as people write it
	Head  []string   // of the table's columns, the first that of the names
	Rows  [][]string // a name, then a figure for each further column; those with " ± " are set in line at it
	Notes []string   // paragraphs
}

// plusMinus parts a figure from its doubt.
const plusMinus = " ± "

// Publish lays out a picture of the given size, px, and a caption below it,
// for which the scene is as much higher as that needs.
func Publish(sub Subject, v View, c *Caption, width, height float64) *Scene {
	cam := Fit(&sub, v, width, height)
	out := Draw(sub, v, cam)
	out.caption(cam, c)
	return out
}

// caption sets a caption below a picture that was drawn for a camera.
func (out *Scene) caption(cam Camera, c *Caption) {
	s := &captioner{pen: &pen{cam: cam, out: out}, y: cam.Height, left: 16, right: cam.Width - 16, big: 15, usual: 12, small: 10}
	if cam.Width < 520 {
		s.left, s.right, s.big, s.usual, s.small = 11, cam.Width-11, 14, 11, 9.5
	}
	if c.Title == "" && c.Date == "" && len(c.Rows) == 0 && len(c.Notes) == 0 {
		return
	}
	back := len(out.Marks)
	s.rule(Text, 1)
	s.title(c)
	s.table(c)
	s.notes(c)
	s.y += 0.9 * s.usual
	// The caption's own paper, so that nothing of the picture hangs into it.
	s.shape(pt{0, cam.Height}, pt{cam.Width, cam.Height}, pt{cam.Width, s.y}, pt{0, s.y})
	s.fill(Paper)
	n := len(out.Marks) - 1
	paper := out.Marks[n]
	copy(out.Marks[back+1:], out.Marks[back:n])
	out.Marks[back] = paper
	out.Height = s.y
	out.Desc = c.describe(out.Desc)
}

// captioner sets a caption from its top down.
type captioner struct {
	*pen
	y                 float64 // what is set reaches down to here
	left, right       float64
	big, usual, small float64 // sizes of type, px
}

// put sets a line of text with its baseline at y.
func (s *captioner) put(x, y float64, text string, size float64, bold bool, align int, ink Ink) {
	if text != "" {
		s.out.Labels = append(s.out.Labels, Label{X: x, Y: y, Text: text, Size: size, Bold: bold, Align: align, Ink: ink, Width: textWidth(text, size, bold)})
	}
}

func (s *captioner) rule(ink Ink, w float64) {
	s.move(pt{s.left, s.y})
	s.line(pt{s.right, s.y})
	s.mark(Mark{Stroke: ink, Width: w, Butt: true})
}

func (s *captioner) title(c *Caption) {
	if c.Title == "" && c.Date == "" {
		return
	}
	base := s.y + 1.35*s.big
	date := oneLine(c.Date)
	s.put(s.right, base, date, s.usual, false, 1, Quiet)
	room := s.right - s.left
	if date != "" {
		room -= textWidth(date, s.usual, false) + 2*s.usual
	}
	rows := lines(c.Title, room, s.big, true)
	for i, l := range rows {
		s.put(s.left, base+float64(i)*1.25*s.big, l, s.big, true, -1, Text)
	}
	s.y = base + float64(max(len(rows)-1, 0))*1.25*s.big + 0.55*s.big
}

// column is one of the table's: its figures end, and their doubts begin, at one
// line.
type column struct {
	x           float64
	wide        float64 // of the column
	value, plus float64 // widths
}

// table sets the rows, names first. Names that leave no room for the figures go
// on in further lines.
func (s *captioner) table(c *Caption) {
	if len(c.Rows) == 0 || len(c.Head) == 0 {
		return
	}
	const least = 84 // px for names
	gap := 1.8 * s.usual
	cols := make([]column, len(c.Head))
	names := 0.0
	for _, row := range c.Rows {
		for j, cell := range row[:min(len(row), len(cols))] {
			if j == 0 {
				names = max(names, textWidth(oneLine(cell), s.usual, false))
				continue
			}
			value, plus, _ := strings.Cut(cell, plusMinus)
			cols[j].value = max(cols[j].value, textWidth(value, s.usual, true))
			if plus != "" {
				cols[j].plus = max(cols[j].plus, textWidth(plusMinus+plus, s.usual, false))
			}
		}
	}
	// Heads stay on one line where there is room for that.
	var figures float64
	for _, most := range [...]float64{s.right - s.left, 11 * s.usual} {
		figures = 0
		for j := 1; j < len(cols); j++ {
			k := &cols[j]
			k.wide = max(k.value+k.plus, min(textWidth(oneLine(c.Head[j]), s.small, false), most))
			figures += k.wide + gap
		}
		if names+figures <= s.right-s.left {
			break
		}
	}
	names = max(least, min(names, s.right-s.left-figures))
	cols[0].x, cols[0].wide = s.left, names
	for j := 1; j < len(cols); j++ {
		cols[j].x = cols[j-1].x + cols[j-1].wide + gap
	}
	// Heads stand on one line, however many lines they have.
	heads := make([][]string, len(cols))
	most := 0
	for j := range cols {
		heads[j] = lines(c.Head[j], cols[j].wide, s.small, false)
		most = max(most, len(heads[j]))
	}
	lead := 1.25 * s.small
	base := s.y + float64(most)*lead + 0.1*s.small
	for j, h := range heads {
		for i, l := range h {
			s.put(cols[j].x, base-float64(len(h)-1-i)*lead, l, s.small, false, -1, Quiet)
		}
	}
	s.y = base + 0.5*s.small
	for _, row := range c.Rows {
		if len(row) == 0 {
			continue
		}
		s.rule(Hair, 0.6)
		base := s.y + 1.15*s.usual
		rows := lines(row[0], names, s.usual, false)
		for i, l := range rows {
			s.put(s.left, base+float64(i)*1.2*s.usual, l, s.usual, false, -1, Text)
		}
		for j := 1; j < min(len(row), len(cols)); j++ {
			value, plus, doubt := strings.Cut(row[j], plusMinus)
			end := cols[j].x + cols[j].value
			s.put(end, base, value, s.usual, true, 1, Text)
			if doubt {
				s.put(end+textWidth(" ", s.usual, false), base, plusMinus[1:]+plus, s.usual, false, -1, Quiet)
			}
		}
		s.y = base + float64(max(len(rows)-1, 0))*1.2*s.usual + 0.45*s.usual
	}
	s.rule(Hair, 0.6)
	s.y += 0.3 * s.usual
}

func (s *captioner) notes(c *Caption) {
	for _, n := range c.Notes {
		for _, l := range lines(n, s.right-s.left, s.small, false) {
			s.y += 1.35 * s.small
			s.put(s.left, s.y, l, s.small, false, -1, Quiet)
		}
		s.y += 0.25 * s.small
	}
}

// describe adds what the caption says to a description.
func (c *Caption) describe(desc string) string {
	text := []string{desc}
	if c.Title != "" || c.Date != "" {
		text = append(text, strings.Trim(oneLine(c.Title)+", "+oneLine(c.Date), ", ")+".")
	}
	for _, row := range c.Rows {
		for j := 1; j < min(len(row), len(c.Head)); j++ {
			text = append(text, oneLine(row[0])+", "+oneLine(c.Head[j])+": "+row[j]+".")
		}
	}
	return strings.Join(append(text, c.Notes...), " ")
}

// oneLine is short for a text of any length.
func oneLine(s string) string { return short(s, 400) }

// lines breaks a text into lines of at most a width, px; a word that is longer
// than that is cut.
func lines(text string, width, size float64, bold bool) []string {
	list := wrap(oneLine(text), width, size, bold)
	for i, l := range list {
		if textWidth(l, size, bold) <= width {
			continue
		}
		runes := []rune(l)
		for len(runes) > 1 && textWidth(string(runes)+"…", size, bold) > width {
			runes = runes[:len(runes)-1]
		}
		list[i] = string(runes) + "…"
	}
	return list
}
