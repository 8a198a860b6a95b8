package bridge

import (
	"bytes"
	"slices"

	"github.com/goccy/go-json"

	"steelyard/internal/photograph"
	"steelyard/internal/report"
	"steelyard/internal/scene"
	"steelyard/internal/scene/subject"
	"steelyard/internal/scene/svg"
	"steelyard/internal/tables"
	"steelyard/internal/words"
)

// View says what the picture shows, as the page writes it.
type View struct {
	Build      string  `json:"build"`
	Ghost      string  `json:"ghost"`    // the build behind; empty for none
	At         string  `json:"at"`       // "a" or "b": a side of the comparison in place of Build
	GhostAt    string  `json:"ghost_at"` // likewise of Ghost
	Side       string  `json:"side"`     // "side" or "rear"
	Dark       bool    `json:"dark"`
	Selected   string  `json:"selected"` // part id
	Dimensions bool    `json:"dimensions"`
	Steering   bool    `json:"steering"` // what turns with the bar, trail and flop
	Labels     bool    `json:"labels"`
	Key        bool    `json:"key"` // what the marks mean
	Units      Units   `json:"units"`
	Width      float64 `json:"width"` // CSS pixels
	Height     float64 `json:"height"`

	Photograph *photograph.Photograph `json:"photograph"` // to lie behind the build; nil for none

	Row []string `json:"row"` // builds in a row, to one scale, in place of Build and Ghost

	Caption *Caption `json:"caption"` // below the picture, beyond Height; for none it is absent
	Pixels  float64  `json:"pixels"`  // how wide an SVG says it is; 0 is Width
}

// Caption says what stands below a picture that leaves the page.
type Caption struct {
	Title   string   `json:"title"`
	Date    string   `json:"date"`    // as people write it
	Figures bool     `json:"figures"` // the main ones, and how they differ from the ghost's
	Pick    []string `json:"pick"`    // the keys of those figures; none are the main ones
	Sources bool     `json:"sources"` // how the figures were obtained
	On      string   `json:"on"`      // the date to tell with the sources
}

// Units are those of the figures in the picture.
type Units struct {
	Mass   string `json:"mass"`
	Length string `json:"length"`
}

// Size of a picture when the view does not say.
const (
	usualWidth  = 1200
	usualHeight = 800
)

func readView(text string) (View, error) {
	v := View{Width: usualWidth, Height: usualHeight}
	if text != "" {
		if err := json.Unmarshal([]byte(text), &v); err != nil {
			return v, err
		}
	}
	if !(v.Width > 0) {
		v.Width = usualWidth
	}
	if !(v.Height > 0) {
		v.Height = usualHeight
	}
	return v, nil
}

// scene returns the view in the scene's terms, with the words of a language.
func (v *View) scene(w *words.Words) scene.View {
	s := scene.View{
		Selected: v.Selected, Dimensions: v.Dimensions, Steering: v.Steering, Labels: v.Labels, Key: v.Key,
		Units: scene.Units{Mass: v.Units.Mass, Length: v.Units.Length, Comma: w.Comma()},
		Words: w.Label,
	}
	if v.Side == "rear" {
		s.Aspect = scene.Rear
	}
	return s
}

func (v *View) palette() *scene.Palette {
	if v.Dark {
		return &scene.Dark
	}
	return &scene.Light
}

// subject returns what the view shows of an evaluated document, with the ghost
// behind it; nil when there is nothing to show.
func (v *View) subject(e *report.Evaluation) *scene.Subject {
	s := subject.In(e, v.Build, v.At)
	switch {
	case s == nil:
	case v.GhostAt != "" && v.GhostAt != v.At, v.GhostAt == "" && v.Ghost != "" && v.Ghost != v.Build:
		s.Ghost = subject.In(e, v.Ghost, v.GhostAt)
	}
	return s
}

// caption returns the caption that the view asks for. Figures are those of a
// side of the comparison.
func (v *View) caption(e *report.Evaluation, ghost bool) *scene.Caption {
	c := &scene.Caption{}
	if v.Caption == nil {
		return c
	}
	c.Title, c.Date = v.Caption.Title, v.Caption.Date
	if v.Caption.Figures {
		for i := range e.Report.Sides {
			if v.At == [...]string{"a", "b"}[i] || v.At == "" && e.Report.Sides[i].Build == v.Build {
				c.Head, c.Rows = tables.Digest(e, i, ghost, v.Caption.Pick...)
				break
			}
		}
	}
	if v.Caption.Sources {
		c.Notes = tables.Provenance(e, v.Caption.On)
	}
	// Loads on wheels and in bags are what somebody might take for leave to ride.
	if v.Caption.Figures || v.Caption.Sources || v.Labels {
		c.Notes = append(c.Notes, tables.Caution(e))
	}
	return c
}

// row draws the builds of the view side by side; nil when none of them can be
// shown.
func (v *View) row(e *report.Evaluation, w *words.Words) *scene.Scene {
	var subjects []scene.Subject
	var builds []int
	for _, id := range v.Row {
		for i := range e.Document.Builds {
			if e.Document.Builds[i].ID != id || slices.Contains(builds, i) {
				continue
			}
			if s := subject.In(e, id, ""); s != nil {
				subjects, builds = append(subjects, *s), append(builds, i)
			}
		}
	}
	if len(subjects) == 0 {
		return nil
	}
	c := &scene.Caption{}
	if v.Caption != nil {
		c.Title, c.Date = v.Caption.Title, v.Caption.Date
		if v.Caption.Figures {
			c.Head, c.Rows = tables.DigestOf(e, builds, v.Caption.Pick...)
		}
		if v.Caption.Sources {
			c.Notes = tables.ProvenanceOf(e, v.Caption.On, builds)
		}
		c.Notes = append(c.Notes, tables.Caution(e))
	}
	return scene.SideBySide(subjects, v.scene(w), c, v.Width, v.Height)
}

// drawSVG takes a document and a view, JSON: picture.schema.json. It answers with
// the picture as SVG.
func (s *Session) drawSVG(text, view string) string {
	v, err := readView(view)
	if err != nil {
		return s.problem("view", "bridge.view", "why", err)
	}
	e := s.evaluated(text)
	if e.Document == nil {
		return s.refusal(e.Report.Problems)
	}
	if len(v.Row) > 0 {
		picture := v.row(e, s.words)
		if picture == nil {
			return s.problem("view.row", "bridge.draw")
		}
		return written(picture, v.palette(), svg.Options{Pixels: v.Pixels})
	}
	shown := v.subject(e)
	if shown == nil {
		return s.problem("view.build", "bridge.draw")
	}
	picture := scene.Publish(*shown, v.scene(s.words), v.caption(e, shown.Ghost != nil), v.Width, v.Height)
	return written(picture, v.palette(), svg.Options{Pixels: v.Pixels})
}

// written is a picture as SVG.
func written(picture *scene.Scene, p *scene.Palette, o svg.Options) string {
	var out bytes.Buffer
	if err := svg.Write(&out, picture, *p, o); err != nil {
		return unwritten
	}
	return out.String()
}
