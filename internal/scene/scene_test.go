package scene_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/math/fixed"
	"pgregory.net/rapid"

	"steelyard/internal/geometry"
	"steelyard/internal/mass"
	"steelyard/internal/scene"
	"steelyard/internal/scene/specimen"
)

// rect is what a label's letters take up, worked out here from the fonts'
// capital height and descent and not by the code under test.
type rect struct{ x0, y0, x1, y1 float64 }

func letters(l *scene.Label) rect {
	x := l.X
	switch {
	case l.Align == 0:
		x -= l.Width / 2
	case l.Align > 0:
		x -= l.Width
	}
	r := rect{x, l.Y - 0.72*l.Size, x + l.Width, l.Y + 0.2*l.Size}
	if l.Angle == 0 {
		return r
	}
	sin, cos := math.Sincos(l.Angle * math.Pi / 180)
	t := rect{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	for _, c := range [][2]float64{{r.x0, r.y0}, {r.x1, r.y0}, {r.x1, r.y1}, {r.x0, r.y1}} {
		dx, dy := c[0]-l.X, c[1]-l.Y
		px, py := l.X+dx*cos-dy*sin, l.Y+dx*sin+dy*cos
		t = rect{min(t.x0, px), min(t.y0, py), max(t.x1, px), max(t.y1, py)}
	}
	return t
}

func (r rect) meets(q rect) bool { return r.x0 < q.x1 && q.x0 < r.x1 && r.y0 < q.y1 && q.y0 < r.y1 }

// checkLabels fails where two labels overlap or one leaves the paper.
func checkLabels(t interface{ Fatalf(string, ...any) }, s *scene.Scene) {
	boxes := make([]rect, len(s.Labels))
	for i := range s.Labels {
		l := &s.Labels[i]
		if strings.Contains(l.Text, "scene.") {
			t.Fatalf("the label %q is a key without words", l.Text)
		}
		boxes[i] = letters(l)
		if b := boxes[i]; !(b.x0 >= 0 && b.y0 >= 0 && b.x1 <= s.Width && b.y1 <= s.Height) {
			t.Fatalf("%q leaves the paper: %+v in %v x %v", l.Text, b, s.Width, s.Height)
		}
		for j := range i {
			if boxes[j].meets(boxes[i]) {
				t.Fatalf("%q at %+v overlaps %q at %+v", s.Labels[j].Text, boxes[j], l.Text, boxes[i])
			}
		}
	}
}

// checkFinite fails where a painter would be handed what is no number.
func checkFinite(t interface{ Fatalf(string, ...any) }, s *scene.Scene) {
	ok := func(vs ...float64) bool {
		for _, v := range vs {
			if math.IsNaN(v) || math.Abs(v) > 1e8 {
				return false
			}
		}
		return true
	}
	for i := range s.Marks {
		m := &s.Marks[i]
		if len(m.Path) == 0 || m.Fill == scene.None && m.Stroke == scene.None {
			t.Fatalf("mark %d shows nothing: %+v", i, m)
		}
		if !ok(m.Width) || !ok(m.Dash...) || m.Stroke != scene.None && !(m.Width > 0) {
			t.Fatalf("mark %d: %+v", i, m)
		}
		for _, d := range m.Dash {
			if !(d > 0) {
				t.Fatalf("mark %d would be dashed for ever: %v", i, m.Dash)
			}
		}
		if op := m.Path[0].Op; op != scene.Move && op != scene.Circle {
			t.Fatalf("mark %d begins nowhere: %+v", i, m.Path[0])
		}
		for _, g := range m.Path {
			if !ok(g.X, g.Y, g.R, g.X1, g.Y1, g.X2, g.Y2) || g.R < 0 {
				t.Fatalf("mark %d leads to %+v", i, g)
			}
		}
	}
	for _, l := range s.Labels {
		if !ok(l.X, l.Y, l.Size, l.Width, l.Angle) || !(l.Size > 0) {
			t.Fatalf("label %+v", l)
		}
	}
	for _, p := range s.Spots {
		if !ok(p.X, p.Y, p.R) {
			t.Fatalf("spot %+v", p)
		}
	}
}

func drawName(t *rapid.T, label string) string {
	return rapid.OneOf(
		rapid.SampledFrom([]string{"Frame", "Rear hub, wide range", "", "Wheel <b>&\"'", "Rücklicht ½", "前照灯", strings.Repeat("long ", 2000)}),
		rapid.StringN(0, 40, 200),
	).Draw(t, label)
}

func leaned() scene.Subject { return specimen.Ridden("leaned") }

func low() scene.Subject { return specimen.RiddenTravel("low") }

// within draws places round a bike.
func within(t *rapid.T) mass.Vec {
	return mass.Vec{
		X: rapid.Float64Range(-0.6, 1.8).Draw(t, "x"),
		Y: rapid.Float64Range(-0.5, 0.5).Draw(t, "y"),
		Z: rapid.Float64Range(-0.1, 1.4).Draw(t, "z"),
	}
}

func drawMarkers(t *rapid.T, most int, place func(*rapid.T) mass.Vec) []scene.Marker {
	n := rapid.IntRange(0, most).Draw(t, "markers")
	ms := make([]scene.Marker, n)
	for i := range ms {
		ms[i] = scene.Marker{
			Part: fmt.Sprint("p", i/rapid.IntRange(1, 2).Draw(t, "pair")), Name: drawName(t, "name"),
			Mass: rapid.Float64Range(0, 8).Draw(t, "kg"), Place: place(t),
			Unsprung: rapid.SampledFrom([]float64{0, 0.5, 1}).Draw(t, "unsprung"),
			Role:     scene.Role(rapid.IntRange(0, 2).Draw(t, "role")),
			Size:     mass.Vec{X: 0.3, Y: 0.15, Z: 0.3},
			Fill:     rapid.Float64Range(0, 1).Draw(t, "fill"),
			Mirror:   rapid.Bool().Draw(t, "mirror"),
		}
	}
	return ms
}

func drawSubject(t *rapid.T, most int) scene.Subject {
	s := rapid.SampledFrom([]func() scene.Subject{specimen.Travel, specimen.Tour, leaned, low}).Draw(t, "bike")()
	s.Crank = rapid.Float64Range(-4, 4).Draw(t, "crank")
	if rapid.Bool().Draw(t, "own path") {
		s.Path = nil
		from, by := within(t), rapid.SampledFrom([]float64{0, 1e-5, 0.003, 0.1, 1}).Draw(t, "by")
		for range rapid.IntRange(0, 4).Draw(t, "stops") {
			s.Path = append(s.Path, scene.Stop{Place: from.Add(within(t).Scale(by)), Name: drawName(t, "stop")})
		}
	}
	if rapid.Bool().Draw(t, "own markers") {
		s.Markers = drawMarkers(t, most, within)
	}
	s.Centre = within(t)
	s.CentrePlus = mass.Vec{X: 0.02, Y: 0.01, Z: 0.02}
	s.FrontLoad, s.RearLoad = rapid.Float64Range(-5, 90).Draw(t, "front"), rapid.Float64Range(0, 150).Draw(t, "rear")
	if rapid.Bool().Draw(t, "alone") {
		s.Ghost = nil
	}
	return s
}

func drawView(t *rapid.T) scene.View {
	return scene.View{
		Words:      specimen.Words,
		Aspect:     scene.Aspect(rapid.IntRange(0, 1).Draw(t, "aspect")),
		Selected:   rapid.SampledFrom([]string{"", "p1", "p3", "frame", "nothing"}).Draw(t, "selected"),
		Hovered:    rapid.SampledFrom([]string{"", "p1", "p2", "panniers"}).Draw(t, "hovered"),
		Dimensions: rapid.Bool().Draw(t, "dimensions"),
		Steering:   rapid.Bool().Draw(t, "steering"),
		Labels:     rapid.Bool().Draw(t, "labels"),
		Key:        rapid.Bool().Draw(t, "key"),
		Units: scene.Units{
			Mass:   rapid.SampledFrom([]string{"", "g", "kg", "lb_oz"}).Draw(t, "mass unit"),
			Length: rapid.SampledFrom([]string{"", "mm", "in"}).Draw(t, "length unit"),
		},
	}
}

func TestLabelsNeverOverlap(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, v := drawSubject(t, 60), drawView(t)
		w := rapid.SampledFrom([]float64{390, 120, 320, 760, 1280, 1900}).Draw(t, "width")
		h := rapid.SampledFrom([]float64{300, 90, 440, 800}).Draw(t, "height")
		cam := scene.Fit(&s, v, w, h)
		cam.Zoom(rapid.Float64Range(0.3, 30).Draw(t, "zoom"), rapid.Float64Range(0, w).Draw(t, "zoom x"), rapid.Float64Range(0, h).Draw(t, "zoom y"))
		out := scene.Draw(s, v, cam)
		checkLabels(t, out)
		checkFinite(t, out)
		for _, l := range out.Labels {
			if n := len([]rune(l.Text)); n > 60 {
				t.Fatalf("a label of %d runes: %q", n, l.Text)
			}
		}
	})
}

// Whatever figures come in, the picture is one that a painter can paint.
func TestAbsurdFigures(t *testing.T) {
	absurd := func(t *rapid.T, label string) float64 {
		return rapid.OneOf(
			rapid.SampledFrom([]float64{0, math.NaN(), math.Inf(1), math.Inf(-1), 1e300, -1e300, 1e-300, -1}),
			rapid.Float64(),
			rapid.Float64Range(-2, 2),
		).Draw(t, label)
	}
	vec := func(t *rapid.T) mass.Vec {
		return mass.Vec{X: absurd(t, "x"), Y: absurd(t, "y"), Z: absurd(t, "z")}
	}
	rapid.Check(t, func(t *rapid.T) {
		s := scene.Subject{Name: drawName(t, "name"), Markers: drawMarkers(t, 6, vec)}
		for i := range s.Markers {
			m := &s.Markers[i]
			m.Mass, m.Unsprung, m.Size, m.Fill = absurd(t, "kg"), absurd(t, "unsprung"), vec(t), absurd(t, "fill")
		}
		for range rapid.IntRange(0, 5).Draw(t, "limbs") {
			s.Rider = append(s.Rider, scene.Limb{From: vec(t), To: vec(t), R: absurd(t, "r"), S: absurd(t, "s"), Member: scene.Member(rapid.IntRange(0, 5).Draw(t, "member"))})
		}
		for range rapid.IntRange(0, 4).Draw(t, "stops") {
			s.Path = append(s.Path, scene.Stop{Place: vec(t), Name: drawName(t, "stop")})
		}
		s.Crank, s.RearRotor, s.FrontRotor = absurd(t, "crank"), absurd(t, "rear rotor"), absurd(t, "front rotor")
		s.RearRack, s.FrontRack = true, true
		s.Total, s.TotalPlus, s.Centre, s.CentrePlus = absurd(t, "total"), absurd(t, "plus"), vec(t), vec(t)
		s.FrontLoad, s.RearLoad, s.FrontLoadPlus = absurd(t, "front"), absurd(t, "rear"), absurd(t, "front plus")
		if rapid.Bool().Draw(t, "bike") {
			s.Bike = &geometry.Bike{
				Wheelbase: absurd(t, "wb"), Trail: absurd(t, "trail"), HeadAngle: absurd(t, "head"), SeatAngle: absurd(t, "seat"),
				RearRadius: absurd(t, "rr"), FrontRadius: absurd(t, "fr"), RearRim: absurd(t, "rim"), FrontRim: absurd(t, "frim"),
				RearAxle: vec(t), FrontAxle: vec(t), RearContact: vec(t), FrontContact: vec(t), BottomBracket: vec(t),
				HeadTop: vec(t), HeadBottom: vec(t), Crown: vec(t), ForkFoot: vec(t), SeatTop: vec(t), SaddleTop: vec(t),
				StemBase: vec(t), BarClamp: vec(t), Grip: vec(t), Pivot: vec(t), ShockFrame: vec(t), ShockSwing: vec(t),
				Stations: map[string]geometry.Station{
					"rear-rack-deck":  {Points: []mass.Vec{vec(t)}},
					"front-rack-deck": {Points: []mass.Vec{vec(t)}},
				},
				PedalFront: vec(t), PedalRear: vec(t), RearSprung: rapid.Bool().Draw(t, "rs"), FrontSprung: rapid.Bool().Draw(t, "fs"),
			}
		}
		if rapid.Bool().Draw(t, "ghost") {
			g := specimen.Travel()
			s.Ghost = &g
		}
		v := drawView(t)
		cam := scene.Fit(&s, v, absurd(t, "width"), absurd(t, "height"))
		cam.Zoom(absurd(t, "zoom"), absurd(t, "zx"), absurd(t, "zy"))
		out := scene.Draw(s, v, cam)
		checkFinite(t, out)
		checkLabels(t, out)
	})
}

func TestNothingToDraw(t *testing.T) {
	var s scene.Subject
	out := scene.Draw(s, scene.View{Words: specimen.Words, Labels: true, Dimensions: true}, scene.Fit(&s, scene.View{Words: specimen.Words}, 400, 300))
	checkFinite(t, out)
	if out.Title == "" || out.Desc == "" || len(out.Spots) != 0 {
		t.Errorf("got %q, %q, %d spots", out.Title, out.Desc, len(out.Spots))
	}
}

// When everything fits, it is inside: every spot with its figure, and what is
// said of the loads.
func TestFitShowsAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, v := drawSubject(t, 40), drawView(t)
		w, h := rapid.Float64Range(300, 1900).Draw(t, "w"), rapid.Float64Range(220, 1100).Draw(t, "h")
		out := scene.Draw(s, v, scene.Fit(&s, v, w, h))
		for _, p := range out.Spots {
			if p.X-p.R < 0 || p.X+p.R > w || p.Y-p.R < 0 || p.Y+p.R > h {
				t.Fatalf("%s at (%.1f, %.1f) with radius %.1f is not inside %v x %v", p.Part, p.X, p.Y, p.R, w, h)
			}
		}
	})
}

// many is n markers strewn over a bike, light and heavy.
func many(n int) scene.Subject {
	s := specimen.Travel()
	s.Markers = make([]scene.Marker, n)
	for i := range s.Markers {
		f := float64(i)
		s.Markers[i] = scene.Marker{
			Part: fmt.Sprint("p", i), Name: fmt.Sprint("Part ", i), Mass: 0.01 + 0.3*math.Abs(math.Sin(12.9898*f)),
			Place:    mass.Vec{X: -0.3 + 1.8*math.Abs(math.Sin(78.233*f)), Y: 0.3 * math.Sin(3*f), Z: 0.1 + math.Abs(math.Sin(37.719*f))},
			Unsprung: float64(i%3) / 2,
		}
	}
	g := s
	g.Ghost = nil
	s.Ghost = &g
	return s
}

func TestTenThousandMarkers(t *testing.T) {
	s := many(10000)
	v := scene.View{Words: specimen.Words, Labels: true}
	for _, size := range [][2]float64{{390, 300}, {760, 440}, {1600, 900}} {
		out := scene.Draw(s, v, scene.Fit(&s, v, size[0], size[1]))
		checkLabels(t, out)
		if len(out.Spots) != 10000 {
			t.Errorf("%v: %d spots", size, len(out.Spots))
		}
		heavy := 0
		for _, l := range out.Labels {
			var i int
			if _, err := fmt.Sscanf(l.Text, "Part %d", &i); err == nil {
				if heavy++; s.Markers[i].Mass < 0.3 {
					t.Errorf("%v: %s of %v kg is named", size, l.Text, s.Markers[i].Mass)
				}
			}
		}
		if heavy > 22 {
			t.Errorf("%v: %d parts are named", size, heavy)
		}
	}
}

// The side view shows both sides of a pair as one, the view from behind as two.
func TestPairs(t *testing.T) {
	s := specimen.Travel()
	s.Ghost = nil
	count := func(a scene.Aspect) (n int, mirrored int) {
		v := scene.View{Words: specimen.Words, Aspect: a}
		for _, p := range scene.Draw(s, v, scene.Fit(&s, v, 760, 440)).Spots {
			if p.Part == "panniers" {
				n++
				if p.Mirror {
					mirrored++
				}
			}
		}
		return n, mirrored
	}
	if n, m := count(scene.Side); n != 1 || m != 0 {
		t.Errorf("side view: %d spots, %d mirrored", n, m)
	}
	if n, m := count(scene.Rear); n != 2 || m != 1 {
		t.Errorf("from behind: %d spots, %d mirrored", n, m)
	}
}

// From behind, the rider's left is to the left.
func TestLeftIsLeft(t *testing.T) {
	s := specimen.Travel()
	s.Markers = []scene.Marker{{Part: "a", Mass: 1, Place: mass.Vec{Y: 0.2, Z: 0.5}}, {Part: "b", Mass: 1, Place: mass.Vec{Y: -0.2, Z: 0.5}}}
	v := scene.View{Words: specimen.Words, Aspect: scene.Rear}
	out := scene.Draw(s, v, scene.Fit(&s, v, 400, 400))
	if len(out.Spots) != 2 || !(out.Spots[0].X < 200 && out.Spots[1].X > 200) {
		t.Errorf("got %+v", out.Spots)
	}
}

func has(s *scene.Scene, text string) bool {
	for _, l := range s.Labels {
		if strings.Contains(l.Text, text) {
			return true
		}
	}
	return false
}

// The figures in the picture are the subject's.
func TestFigures(t *testing.T) {
	s := specimen.Travel()
	v := scene.View{Words: specimen.Words, Dimensions: true, Labels: true, Units: scene.Units{Mass: "kg"}}
	out := scene.Draw(s, v, scene.Fit(&s, v, 1200, 800))
	for _, want := range []string{
		fmt.Sprintf("wheelbase %.0f\u00a0mm", s.Bike.Wheelbase*1000),
		fmt.Sprintf("trail %.0f\u00a0mm", s.Bike.Trail*1000),
		fmt.Sprintf("%.1f°", s.Bike.HeadAngle*180/math.Pi),
		fmt.Sprintf("front centre %.0f\u00a0mm", s.Bike.FrontCentre*1000),
		fmt.Sprintf("bb %.0f\u00a0mm", s.Bike.BBHeight*1000),
		fmt.Sprintf("centre of mass %.0f\u00a0mm", s.Centre.Z*1000),
		fmt.Sprintf("%.2f\u00a0kg", s.FrontLoad),
		fmt.Sprintf("%.0f\u00a0%%", 100*s.RearLoad/s.Total),
		fmt.Sprintf("moves %.0f\u00a0mm", 1000*s.Centre.Sub(s.Ghost.Centre).Norm()),
	} {
		if !has(out, want) {
			t.Errorf("%q is not in the picture", want)
		}
	}
	v.Units = scene.Units{Mass: "lb_oz", Length: "in"}
	out = scene.Draw(s, v, scene.Fit(&s, v, 1200, 800))
	if want := fmt.Sprintf("wheelbase %.1f\u00a0in", s.Bike.Wheelbase*1000/25.4); !has(out, want) {
		t.Errorf("%q is not in the picture", want)
	}
}

// What is selected is named even when names are off.
func TestSelectedIsNamed(t *testing.T) {
	s := specimen.Travel()
	v := scene.View{Words: specimen.Words, Selected: "rear-light"}
	if out := scene.Draw(s, v, scene.Fit(&s, v, 390, 300)); !has(out, "Rear light") {
		t.Error("the part selected has no name in the picture")
	}
}

// Pointing at a part names it and moves no other name.
func TestHoverMovesNoLabel(t *testing.T) {
	s := specimen.Travel()
	v := scene.View{Words: specimen.Words, Labels: true}
	cam := scene.Fit(&s, v, 760, 440)
	before := scene.Draw(s, v, cam)
	for _, part := range []string{"rear-light", "stem", "frame"} {
		v.Hovered = part
		after := scene.Draw(s, v, cam)
		if len(after.Labels) < len(before.Labels) {
			t.Fatalf("%s: labels were lost", part)
		}
		for i, l := range before.Labels {
			if after.Labels[i] != l {
				t.Errorf("%s: %q went from (%v, %v) to %q at (%v, %v)", part, l.Text, l.X, l.Y, after.Labels[i].Text, after.Labels[i].X, after.Labels[i].Y)
			}
		}
	}
	v.Hovered = "rear-light"
	if !has(scene.Draw(s, v, cam), "Rear light") {
		t.Error("the part pointed at has no name")
	}
}

// The dimension of the wheelbase on paper is the wheelbase to scale.
func TestToScale(t *testing.T) {
	s := specimen.Tour()
	v := scene.View{Words: specimen.Words}
	cam := scene.Fit(&s, v, 900, 500)
	x0, y0 := cam.At(s.Bike.RearContact)
	x1, y1 := cam.At(s.Bike.FrontContact)
	if got := math.Hypot(x1-x0, y1-y0) / cam.Scale; math.Abs(got-s.Bike.Wheelbase) > 1e-9 {
		t.Errorf("wheelbase on paper %v m, want %v", got, s.Bike.Wheelbase)
	}
	// The outermost circle about the rear axle is the tyre.
	ax, ay := cam.At(s.Bike.RearAxle)
	most := 0.0
	for _, m := range scene.Draw(s, v, cam).Marks {
		if g := m.Path[0]; g.Op == scene.Circle && math.Hypot(g.X-ax, g.Y-ay) < 0.01 && m.Stroke == scene.Outline {
			most = max(most, g.R)
		}
	}
	if got := most / cam.Scale; math.Abs(got-s.Bike.RearRadius) > 0.002 {
		t.Errorf("tyre radius on paper %v m, want %v", got, s.Bike.RearRadius)
	}
}

// Whatever has a body is filled with an ink that is thin over a photograph: with
// paper only what is small, such as bolts. The swingarm and a fork's legs once hid the
// bike in the picture.
func TestPaperCoversNoPhotograph(t *testing.T) {
	s := specimen.Equipped("derailleur-one-ring")
	v := scene.View{Words: specimen.Words}
	cam := scene.Fit(&s, v, 900, 500)
	for _, m := range scene.Draw(s, v, cam).Marks {
		if m.Fill != scene.Paper {
			continue
		}
		x0, y0, x1, y1 := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
		for _, g := range m.Path {
			if g.Op != scene.Close {
				x0, y0 = min(x0, g.X-g.R), min(y0, g.Y-g.R)
				x1, y1 = max(x1, g.X+g.R), max(y1, g.Y+g.R)
			}
		}
		if size := math.Hypot(x1-x0, y1-y0) / cam.Scale; size > 0.15 {
			t.Errorf("%.0f mm at %.0f, %.0f are filled with paper and edged with %v", 1e3*size, x0, y0, m.Stroke)
		}
	}
}

// Widths are those that the font's own layout gives.
func TestWidths(t *testing.T) {
	s := specimen.Travel()
	s.Name = "Größe ± 12½"
	v := scene.View{Words: specimen.Words, Labels: true, Dimensions: true}
	out := scene.Draw(s, v, scene.Fit(&s, v, 1200, 800))
	for _, l := range out.Labels {
		ttf := goregular.TTF
		if l.Bold {
			ttf = gobold.TTF
		}
		f, err := opentype.Parse(ttf)
		if err != nil {
			t.Fatal(err)
		}
		const k = 64 // measured large, so that rounding to 1/64 px does not count
		face, err := opentype.NewFace(f, &opentype.FaceOptions{Size: l.Size * k, DPI: 72, Hinting: font.HintingNone})
		if err != nil {
			t.Fatal(err)
		}
		want := float64(font.MeasureString(face, l.Text)) / float64(fixed.I(1)) / k
		if math.Abs(want-l.Width) > 0.02 {
			t.Errorf("%q is %v px wide, want %v", l.Text, l.Width, want)
		}
	}
}

func TestDrawIsRepeatable(t *testing.T) {
	s := specimen.Travel()
	v := scene.View{Words: specimen.Words, Labels: true, Dimensions: true}
	a := fmt.Sprintf("%+v", scene.Draw(s, v, scene.Fit(&s, v, 760, 440)))
	for range 5 {
		if b := fmt.Sprintf("%+v", scene.Draw(s, v, scene.Fit(&s, v, 760, 440))); a != b {
			t.Fatal("the same subject gave two pictures")
		}
	}
}

func BenchmarkDraw(b *testing.B) {
	for _, c := range []struct {
		name string
		s    scene.Subject
	}{{"60", sixty()}, {"ridden", leaned()}, {"10000", many(10000)}} {
		b.Run(c.name, func(b *testing.B) {
			v := scene.View{Words: specimen.Words, Labels: true}
			cam := scene.Fit(&c.s, v, 760, 440)
			b.ReportAllocs()
			for b.Loop() {
				scene.Draw(c.s, v, cam)
			}
		})
	}
}

// sixty is a bike of 60 markers set against another one of 60.
func sixty() scene.Subject {
	s := specimen.Travel()
	fill := func(s *scene.Subject) {
		for i := 0; len(s.Markers) < 60; i++ {
			m := s.Markers[i]
			m.Part += "-2"
			m.Place.Z += 0.05
			s.Markers = append(s.Markers, m)
		}
	}
	fill(&s)
	g := *s.Ghost
	fill(&g)
	s.Ghost = &g
	return s
}
