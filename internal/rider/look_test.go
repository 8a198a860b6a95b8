package rider

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"steelyard/internal/document"
	"steelyard/internal/geometry"
	"steelyard/internal/mass"
)

// TestLook seats riders of every posture on several bikes, and draws a sheet of
// them, an SVG, to the file that the variable STEELYARD_RIDERS names, for people
// to look at.
func TestLook(t *testing.T) {
	path := os.Getenv("STEELYARD_RIDERS")
	if path == "" {
		path = filepath.Join(t.TempDir(), "riders.svg")
	}
	var s sheet
	for _, file := range []string{"touring-bike", "travel-bike"} {
		bike := posed(t, load(t, filepath.Join("..", "geometry", file+".json")))
		for _, posture := range document.Postures {
			s.draw(t, bike, person(func(r *document.Rider) { r.Posture = posture }))
		}
	}
	bike := posed(t, load(t, filepath.Join("..", "geometry", "travel-bike.json")))
	for _, crank := range []float64{90, 45, -45, -90, 180} {
		s.draw(t, bike, person(func(r *document.Rider) { r.Posture = "leaned"; r.Crank = crank }))
	}
	s.draw(t, bike, person(func(r *document.Rider) { r.Posture = standing; r.Crank = -90 }))
	s.draw(t, bike, person(func(r *document.Rider) { r.Posture = "leaned"; r.Stature = 1950; r.Mass = 110e3 }))
	s.draw(t, posed(t, load(t, "riel-bike.json")), person(func(r *document.Rider) { r.Posture = "leaned" }))
	s.behind = true
	for _, file := range []string{"../geometry/touring-bike.json", "../geometry/travel-bike.json"} {
		s.draw(t, posed(t, load(t, file)), person())
		s.draw(t, posed(t, load(t, file)), person(func(r *document.Rider) { r.Posture = standing }))
	}
	text := fmt.Sprintf(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %d %d"><rect width="100%%" height="100%%" fill="#fff"/>%s</svg>`, 4*cell, (s.n+3)/4*cell, s.String())
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}

const cell = 480 // px

type sheet struct {
	strings.Builder
	n      int
	behind bool
}

func (s *sheet) draw(t *testing.T, b *geometry.Bike, r *document.Rider) {
	t.Helper()
	body, problems := Seat(b, r)
	if body == nil {
		t.Errorf("%s at %g°, %g mm tall, does not sit: %v", r.Posture, r.Crank, r.Stature, problems)
	}
	x, y := float64(s.n%4*cell), float64(s.n/4*cell)
	s.n++
	fmt.Fprintf(s, `<g transform="translate(%g %g)"><text x="12" y="20" font-size="13" font-family="sans-serif">%s %g°, %g mm`, x, y, r.Posture, r.Crank, r.Stature)
	if body != nil {
		fmt.Fprintf(s, `: lean %.0f°, elbow %.0f°, knees %.0f° %.0f°`, body.Lean/degree, body.Left.ElbowBend/degree, body.Left.KneeBend/degree, body.Right.KneeBend/degree)
	}
	s.WriteString(`</text>`)
	for i, p := range problems {
		fmt.Fprintf(s, `<text x="12" y="%d" font-size="9" font-family="sans-serif">%s: %s</text>`, 34+12*i, p.Field, p.Message.String())
	}
	const scale = 195.
	at := func(v mass.Vec) (float64, float64) {
		if s.behind {
			return cell/2 - scale*v.Y, cell - 25 - scale*v.Z
		}
		return 95 + scale*v.X, cell - 25 - scale*v.Z
	}
	line := func(width float64, colour string, points ...mass.Vec) {
		s.WriteString(`<polyline fill="none" stroke="` + colour + fmt.Sprintf(`" stroke-width="%g" points="`, width))
		for _, p := range points {
			u, v := at(p)
			fmt.Fprintf(s, "%.2f,%.2f ", u, v)
		}
		s.WriteString(`"/>`)
	}
	circle := func(p mass.Vec, r float64, fill, stroke string) {
		u, v := at(p)
		fmt.Fprintf(s, `<circle cx="%.2f" cy="%.2f" r="%.2f" fill="%s" stroke="%s"/>`, u, v, scale*r, fill, stroke)
	}
	limbs := func(side string) {
		for _, l := range body.Outline() {
			if l.Side != side {
				continue
			}
			fill := map[string]string{Left: "#c9a8c0", Right: "#a05a90", "": "#b47fa8"}[side]
			if l.Name == Trunk {
				fill = "#b47fa8"
			}
			s.capsule(l, at, scale, fill)
		}
	}
	if body != nil {
		limbs(Left)
	}
	for _, w := range [2]struct {
		c mass.Vec
		r float64
	}{{b.RearAxle, b.RearRadius}, {b.FrontAxle, b.FrontRadius}} {
		circle(w.c, w.r, "none", "#333")
	}
	line(5, "#555", b.BottomBracket, b.HeadBottom, b.HeadTop, b.SeatTop, b.BottomBracket, b.RearAxle, b.SeatTop)
	line(4, "#555", b.SeatTop, b.SaddleTop)
	line(5, "#222", b.SaddleTop.Add(mass.Vec{X: -0.13}), b.SaddleTop.Add(mass.Vec{X: 0.14}))
	line(4, "#555", b.HeadBottom, b.Crown, b.ForkFoot, b.FrontAxle)
	line(4, "#555", b.HeadTop, b.StemBase, b.BarClamp, b.Grip)
	if body != nil {
		limbs("")
		line(4, "#333", body.Left.Pedal, b.BottomBracket, body.Right.Pedal)
		limbs(Right)
		items := body.Items(0, 1)
		for _, g := range body.Segments {
			line(0.8, "#000", g.From, g.To)
			circle(g.Place, 0.006, "#fff", "#000")
		}
		circle(mass.Sum(items, nil).Centre(), 0.02, "gold", "#000")
	}
	s.WriteString("</g>\n")
}

// capsule draws the hull of two circles.
func (s *sheet) capsule(l Limb, at func(mass.Vec) (float64, float64), scale float64, fill string) {
	x0, y0 := at(l.From)
	x1, y1 := at(l.To)
	r0, r1 := scale*l.R, scale*l.S
	d := math.Hypot(x1-x0, y1-y0)
	for _, c := range [2][3]float64{{x0, y0, r0}, {x1, y1, r1}} {
		fmt.Fprintf(s, `<circle cx="%.2f" cy="%.2f" r="%.2f" fill="%s"/>`, c[0], c[1], c[2], fill)
	}
	if d > math.Abs(r0-r1) {
		a, h := math.Atan2(y1-y0, x1-x0), math.Acos((r0-r1)/d)
		p := func(x, y, r, t float64) string {
			return fmt.Sprintf("%.2f %.2f", x+r*math.Cos(t), y+r*math.Sin(t))
		}
		path := "M" + p(x0, y0, r0, a+h) + "L" + p(x0, y0, r0, a-h) + "L" + p(x1, y1, r1, a-h) + "L" + p(x1, y1, r1, a+h) + "z"
		fmt.Fprintf(s, `<path d="%s" fill="%s"/>`, path, fill)
	}
}
