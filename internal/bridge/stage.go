package bridge

import (
	"fmt"
	"slices"
	"strings"

	"github.com/goccy/go-json"

	"steelyard/internal/photograph"
	"steelyard/internal/report"
	"steelyard/internal/scene"
	"steelyard/internal/scene/svg"
	"steelyard/internal/stage"
)

// Stage is what the canvas shows and the user works on. It shows nothing at
// first. Drawing belongs to one goroutine.
type Stage struct {
	Session *Session

	// Redraw, when set, is called whenever the picture has changed and a frame
	// is wanted.
	Redraw func()

	stage   stage.Stage
	view    View
	subject *scene.Subject
	behind  *behind
}

// behind is where a photograph lies in the plane of the picture: see
// [photograph.Place].
type behind struct{ corner, right, down [2]float64 }

// Functions are the functions of the stage, by name, to stand beside the
// session's.
func (s *Stage) Functions() map[string]Function {
	return s.Session.alone(map[string]Function{
		"show": two(s.Show), "pointer": one(s.Pointer), "camera": one(s.Camera), "picture": none(s.Picture), "backdrop": none(s.Backdrop),
	})
}

func (s *Stage) redraw() {
	if s.Redraw != nil {
		s.Redraw()
	}
}

// Show takes a document and a view, JSON (picture.schema.json), which the canvas
// then draws. It answers with an empty text. A text that cannot be read leaves
// the picture as it is, and is answered with a problem; a build that cannot be
// weighed makes an empty picture.
func (s *Stage) Show(text, view string) string {
	v, err := readView(view)
	if err != nil {
		return s.Session.problem("view", "bridge.view", "why", err)
	}
	e := s.Session.evaluated(text)
	if e.Document == nil {
		return s.Session.refusal(e.Report.Problems)
	}
	s.view = v
	if s.subject = v.subject(e); s.subject == nil {
		s.subject = &scene.Subject{Name: nameOf(e, v.Build)}
	}
	s.behind = nil
	if b := e.Document.Build(v.Build); v.Photograph != nil && b != nil && s.subject.Bike != nil {
		if corner, right, down, err := photograph.Place(v.Photograph, b, s.subject.Bike); err == nil {
			s.behind = &behind{corner, right, down}
		}
	}
	s.redraw()
	return ""
}

// Bare reports whether the picture is to be painted without its paper, upon a
// photograph that the page lays behind it.
func (s *Stage) Bare() bool { return s.behind != nil && s.view.Side != "rear" }

// Backdrop takes nothing. It answers with where the photograph lies behind what was
// drawn last, as a transform of a style sheet that takes its px, from its upper left
// corner, to those of the picture. The text is empty where there is none.
func (s *Stage) Backdrop() string {
	cam, b := s.stage.Camera(), s.behind
	if !(cam.Scale > 0) || !s.Bare() {
		return ""
	}
	x, y := cam.XY(b.corner[0], b.corner[1])
	return fmt.Sprintf("matrix(%.9f, %.9f, %.9f, %.9f, %.3f, %.3f)",
		b.right[0]*cam.Scale, -b.right[1]*cam.Scale, b.down[0]*cam.Scale, -b.down[1]*cam.Scale, x, y)
}

func nameOf(e *report.Evaluation, id string) string {
	if b := e.Document.Build(id); b != nil {
		return b.Name
	}
	return ""
}

// Draw lays the picture out for a canvas of the given size in CSS pixels. The
// scene is nil while there is nothing to show.
func (s *Stage) Draw(width, height float64) (*scene.Scene, *scene.Palette) {
	if s.subject == nil {
		return nil, s.view.palette()
	}
	return s.stage.Draw(*s.subject, s.view.scene(s.Session.words), width, height), s.view.palette()
}

// Picture takes nothing. It answers with an SVG of what Draw lays out for a
// canvas of the size that the view says, for a page that has no canvas, or not
// yet. Its colours are those of the page's style, by the names of the inks. The
// text is empty while there is nothing to show.
func (s *Stage) Picture() string {
	picture, palette := s.Draw(s.view.Width, s.view.Height)
	if picture == nil {
		return ""
	}
	return written(picture, palette, svg.Options{Named: true, Clear: s.Bare()})
}

// Pointer takes a pointer event, JSON: the pointer of picture.schema.json. It
// answers with what the event means, an empty object for nothing: intent there.
func (s *Stage) Pointer(event string) string {
	var e stage.Event
	if err := json.Unmarshal([]byte(event), &e); err != nil {
		return s.Session.problem("event", "bridge.event", "why", err)
	}
	intent := s.stage.Pointer(e)
	if intent.Redraw {
		s.redraw()
	}
	return answer(intent)
}

// Camera takes one of [stage.Commands] and moves the camera by it. It answers
// with an empty text.
func (s *Stage) Camera(command string) string {
	if s.stage.Command(command) {
		s.redraw()
		return ""
	}
	if slices.Contains(stage.Commands, command) {
		return "" // nothing is drawn yet
	}
	return s.Session.problem("command", "bridge.command", "known", strings.Join(stage.Commands, ", "))
}
