package stage

import (
	"math"

	"steelyard/internal/scene"
)

// Stage is the state of the picture that the user works on. The zero Stage is
// ready. It is not safe for use by several goroutines.
type Stage struct {
	views  [2]sight // by aspect
	aspect scene.Aspect
	spots  []scene.Spot
	hover  string

	mode    mode
	fingers []finger // those that are down, first pressed first; two at most
	grip    scene.Spot
	given   [3]int // tenths of a millimetre already handed out in this drag
	owed    *Move  // the end of a drag that was dropped, to be told with the next event
}

// sight is the camera of one aspect.
type sight struct {
	cam   scene.Camera
	moved bool // the user has moved it; otherwise it follows what fits
	set   bool
}

type finger struct {
	id     int
	x0, y0 float64 // where it was pressed
	x, y   float64 // where it is
	kind   string
}

type mode uint8

const (
	idle mode = iota
	pressed
	dragging // a part
	panning
	pinching
	spent // called off: wait for all fingers to lift
)

// Draw lays a subject out as the user sees it, and remembers what can be hit.
// The view's Hovered is the stage's own.
func (s *Stage) Draw(sub scene.Subject, v scene.View, width, height float64) *scene.Scene {
	v.Hovered = s.hover
	out := scene.Draw(sub, v, s.camera(&sub, v, width, height))
	s.spots = out.Spots
	return out
}

// camera returns the camera for a view. Until the user moves it, it follows
// what fits, though not under a finger.
func (s *Stage) camera(sub *scene.Subject, v scene.View, width, height float64) scene.Camera {
	if v.Aspect != scene.Rear {
		v.Aspect = scene.Side
	}
	if v.Aspect != s.aspect {
		s.aspect = v.Aspect
		s.drop()
	}
	k := &s.views[s.aspect]
	fit := scene.Fit(sub, v, width, height)
	switch {
	case !k.set || !k.moved && (s.mode == idle || fit.Width != k.cam.Width || fit.Height != k.cam.Height):
		k.cam, k.set = fit, true
	default:
		k.cam.Refit(fit)
	}
	return k.cam
}

// drop forgets the present gesture. A part that was being dragged stays where it
// is then.
func (s *Stage) drop() {
	if s.mode == dragging {
		s.owed = &Move{Part: s.grip.Part, Done: true}
	}
	s.mode, s.fingers, s.given = idle, s.fingers[:0], [3]int{}
	s.spots, s.hover = nil, ""
}

// Camera returns the camera of what was drawn last, the zero one while nothing was.
func (s *Stage) Camera() scene.Camera { return s.views[s.aspect].cam }

// Commands are the names that Command knows.
var Commands = []string{"fit", "in", "out", "left", "right", "up", "down"}

// Command moves the camera: "fit" shows all, "in" and "out" zoom about the
// middle, "left", "right", "up" and "down" look further that way. It returns
// false for any other name, and while nothing has been drawn.
func (s *Stage) Command(name string) bool {
	k := &s.views[s.aspect]
	if !k.set {
		return false
	}
	c := &k.cam
	const step, factor = 0.15, 1.25
	switch name {
	case "fit":
		c.Reset()
		k.moved = false
		return true
	case "in":
		c.Zoom(factor, c.Width/2, c.Height/2)
	case "out":
		c.Zoom(1/factor, c.Width/2, c.Height/2)
	case "left":
		c.Pan(step*c.Width, 0)
	case "right":
		c.Pan(-step*c.Width, 0)
	case "up":
		c.Pan(0, step*c.Height)
	case "down":
		c.Pan(0, -step*c.Height)
	default:
		return false
	}
	k.moved = true
	return true
}

// Hit returns the topmost spot under a point, or else the nearest within reach
// px beside its edge. What is fixed is hit only where nothing else is.
func (s *Stage) Hit(x, y, reach float64) (scene.Spot, bool) {
	best, near := -1, reach
	under := -1
	for i := len(s.spots) - 1; i >= 0; i-- {
		p := &s.spots[i]
		d := apart(p, x, y)
		if p.Fixed {
			if d <= 0 {
				under = i
			}
			continue
		}
		if d <= 0 {
			return *p, true
		}
		if d < near {
			best, near = i, d
		}
	}
	if best < 0 {
		best = under
	}
	if best < 0 {
		return scene.Spot{}, false
	}
	return s.spots[best], true
}

// apart is how far a point is outside of a spot.
func apart(p *scene.Spot, x, y float64) float64 {
	x, y = x-p.X, y-p.Y
	if l := p.DX*p.DX + p.DY*p.DY; l > 0 {
		t := min(max((x*p.DX+y*p.DY)/l, 0), 1)
		x, y = x-t*p.DX, y-t*p.DY
	}
	return math.Hypot(x, y) - p.R
}

// over is the cursor over what was hit.
func over(p scene.Spot, hit bool) string {
	switch {
	case !hit:
		return "default"
	case p.Fixed:
		return "pointer"
	}
	return "grab"
}

// Pointer takes an event and returns what it means. An event without sense (a
// finger lifted that never pressed, a place that is not a number) means nothing.
// A drag that ended because the picture turned under it ends with the next event,
// whatever that is.
func (s *Stage) Pointer(e Event) Intent {
	in := s.pointer(e)
	if in.Move == nil {
		in.Move, s.owed = s.owed, nil
	}
	return in
}

func (s *Stage) pointer(e Event) Intent {
	if !s.views[s.aspect].set {
		return Intent{}
	}
	if e.Type == "cancel" {
		return s.cancel(e.ID)
	}
	if e.Type == "leave" {
		if s.mode != idle {
			return Intent{}
		}
		return s.onto("")
	}
	if !e.sound() {
		return Intent{}
	}
	switch e.Type {
	case "down":
		return s.down(&e)
	case "move":
		return s.move(&e)
	case "up":
		return s.up(&e)
	case "wheel":
		return s.wheel(&e)
	}
	return Intent{}
}

func (s *Stage) finger(id int) int {
	for i := range s.fingers {
		if s.fingers[i].id == id {
			return i
		}
	}
	return -1
}

// onto notes the part that the pointer is on.
func (s *Stage) onto(part string) Intent {
	if part == s.hover {
		return Intent{}
	}
	s.hover = part
	return Intent{Hover: &part, Redraw: true}
}

// pans reports whether dragging the paper pans: a single finger on a picture that
// shows everything does not, so that it can scroll the page.
func (s *Stage) pans(kind string) bool {
	return kind != "touch" || s.views[s.aspect].cam.Zoomed() > 1.02 || s.views[s.aspect].moved
}

func (s *Stage) down(e *Event) Intent {
	if i := s.finger(e.ID); i >= 0 { // a lift was lost
		return s.cancel(e.ID)
	}
	f := finger{id: e.ID, x0: e.X, y0: e.Y, x: e.X, y: e.Y, kind: e.Kind}
	switch {
	case len(s.fingers) == 2:
		return Intent{}
	case len(s.fingers) == 1:
		in := Intent{}
		if s.mode == dragging {
			in.Move = s.takeBack()
		}
		s.fingers = append(s.fingers, f)
		s.mode = pinching
		in.Cursor = "grabbing"
		return in
	}
	s.fingers = append(s.fingers, f)
	s.mode = pressed
	s.given = [3]int{}
	spot, hit := scene.Spot{}, false
	if e.Button == 0 {
		spot, hit = s.Hit(e.X, e.Y, e.reach())
	}
	s.grip = spot
	if hit && !spot.Fixed || s.pans(e.Kind) {
		return Intent{Cursor: "grabbing"}
	}
	return Intent{Cursor: "default"}
}

func (s *Stage) move(e *Event) Intent {
	i := s.finger(e.ID)
	if i < 0 {
		if e.Kind == "touch" || s.mode != idle {
			return Intent{}
		}
		spot, hit := s.Hit(e.X, e.Y, e.reach())
		in := s.onto(spot.Part)
		in.Cursor = over(spot, hit)
		return in
	}
	f := &s.fingers[i]
	dx, dy := e.X-f.x, e.Y-f.y
	k := &s.views[s.aspect]
	switch s.mode {
	case pressed:
		if math.Hypot(e.X-f.x0, e.Y-f.y0) < e.slack() {
			return Intent{}
		}
		f.x, f.y = e.X, e.Y
		if s.grip.Part != "" && !s.grip.Fixed {
			s.mode = dragging
			part := s.grip.Part
			in := s.onto(part)
			in.Select, in.Move, in.Cursor = &part, s.drag(f, false), "grabbing"
			return in
		}
		if !s.pans(e.Kind) {
			s.mode = spent
			return Intent{}
		}
		s.mode = panning
		k.cam.Pan(dx, dy)
		k.moved = true
		return Intent{Redraw: true, Cursor: "grabbing"}
	case dragging:
		f.x, f.y = e.X, e.Y
		m := s.drag(f, false)
		if m.By == ([3]float64{}) {
			return Intent{Cursor: "grabbing"}
		}
		return Intent{Move: m, Cursor: "grabbing"}
	case panning:
		f.x, f.y = e.X, e.Y
		k.cam.Pan(dx, dy)
		return Intent{Redraw: true, Cursor: "grabbing"}
	case pinching:
		if len(s.fingers) < 2 {
			return Intent{}
		}
		o := &s.fingers[1-i]
		before := math.Hypot(f.x-o.x, f.y-o.y)
		after := math.Hypot(e.X-o.x, e.Y-o.y)
		f.x, f.y = e.X, e.Y
		k.cam.Pan(dx/2, dy/2)
		// Fingers that nearly touch say nothing certain about a factor.
		if before > 10 && after > 10 {
			k.cam.Zoom(after/before, (f.x+o.x)/2, (f.y+o.y)/2)
		}
		k.moved = true
		return Intent{Redraw: true}
	}
	f.x, f.y = e.X, e.Y
	return Intent{}
}

// drag returns the move that remains for the part to be where the finger is.
func (s *Stage) drag(f *finger, done bool) *Move {
	cam := s.views[s.aspect].cam
	by := cam.By(f.x-f.x0, f.y-f.y0)
	if s.grip.Mirror {
		by.Y = -by.Y
	}
	m := &Move{Part: s.grip.Part, Done: done}
	for i, v := range [3]float64{by.X, by.Y, by.Z} {
		tenths := int(math.Round(min(max(v, -1e3), 1e3) * 10000))
		m.By[i] = float64(tenths-s.given[i]) / 10
		s.given[i] = tenths
	}
	return m
}

// takeBack undoes the drag so far.
func (s *Stage) takeBack() *Move {
	m := &Move{Part: s.grip.Part, Done: true}
	for i, v := range s.given {
		if v != 0 { // 0 has no sign
			m.By[i] = float64(-v) / 10
		}
	}
	s.given = [3]int{}
	return m
}

func (s *Stage) up(e *Event) Intent {
	i := s.finger(e.ID)
	if i < 0 {
		return Intent{}
	}
	f := s.fingers[i]
	was := s.mode
	s.fingers = append(s.fingers[:i], s.fingers[i+1:]...)
	if len(s.fingers) > 0 {
		// The finger that stays goes on panning from where it is.
		o := &s.fingers[0]
		o.x0, o.y0 = o.x, o.y
		s.mode = spent
		if was == pinching {
			s.mode = panning
		}
		return Intent{}
	}
	s.mode = idle
	in := Intent{}
	switch was {
	case pressed:
		if e.Button > 0 {
			break
		}
		part := s.grip.Part
		in.Select = &part
	case dragging:
		f.x, f.y = e.X, e.Y
		in.Move = s.drag(&f, true)
	}
	in.Cursor = "default"
	if e.Kind == "touch" { // a finger that is gone is on nothing
		hover := s.onto("")
		in.Hover, in.Redraw = hover.Hover, hover.Redraw
	} else {
		in.Cursor = over(s.Hit(e.X, e.Y, e.reach()))
	}
	return in
}

// cancel undoes what a finger was doing.
func (s *Stage) cancel(id int) Intent {
	i := s.finger(id)
	if i < 0 {
		return Intent{}
	}
	in := Intent{Cursor: "default"}
	if s.mode == dragging {
		in.Move = s.takeBack()
	}
	s.fingers = append(s.fingers[:i], s.fingers[i+1:]...)
	s.mode = spent
	if len(s.fingers) == 0 {
		s.mode = idle
	}
	hover := s.onto("")
	in.Hover, in.Redraw = hover.Hover, hover.Redraw
	return in
}

func (s *Stage) wheel(e *Event) Intent {
	if s.mode != idle {
		return Intent{}
	}
	f := e.Pinch
	if !(f > 0) {
		f = math.Exp(-e.Delta * 0.0015)
	}
	if math.IsNaN(f) {
		return Intent{}
	}
	k := &s.views[s.aspect]
	k.cam.Zoom(min(max(f, 0.25), 4), e.X, e.Y)
	k.moved = true
	return Intent{Redraw: true}
}
