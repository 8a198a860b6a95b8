package scene

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"steelyard/internal/mass"
)

// flat is a path as straight lines, each outline closed.
func flat(path []Seg) (outlines [][]pt) {
	var at []pt
	end := func() {
		if len(at) > 0 {
			outlines = append(outlines, at)
		}
		at = nil
	}
	for _, g := range path {
		to := pt{g.X, g.Y}
		switch g.Op {
		case Move:
			end()
			at = append(at, to)
		case Line:
			at = append(at, to)
		case Cubic:
			a, b, c := at[len(at)-1], pt{g.X1, g.Y1}, pt{g.X2, g.Y2}
			const n = 24
			for k := 1; k <= n; k++ {
				t := float64(k) / n
				s := 1 - t
				at = append(at, a.mul(s*s*s).add(b.mul(3*s*s*t)).add(c.mul(3*s*t*t)).add(to.mul(t*t*t)))
			}
		}
	}
	end()
	return outlines
}

// winding is how often outlines go round a point.
func winding(outlines [][]pt, p pt) int {
	n := 0
	for _, o := range outlines {
		for i, a := range o {
			b := o[(i+1)%len(o)]
			side := b.sub(a).left().dot(p.sub(a))
			switch {
			case a.y <= p.y && b.y > p.y && side > 0:
				n++
			case a.y > p.y && b.y <= p.y && side < 0:
				n--
			}
		}
	}
	return n
}

func drawHull(t *rapid.T) hull {
	at := func(name string) pt {
		return pt{rapid.Float64Range(0, 200).Draw(t, name+" x"), rapid.Float64Range(0, 200).Draw(t, name+" y")}
	}
	h := hull{at("a"), at("b"), rapid.Float64Range(3, 40).Draw(t, "r"), rapid.Float64Range(3, 40).Draw(t, "s")}
	if rapid.IntRange(0, 9).Draw(t, "ball") == 0 {
		h.b = h.a
	}
	return h
}

// chain draws limbs that hang together, as a body's do: each begins where an
// earlier one ends, some with the same radius.
func chain(t *rapid.T) []hull {
	hs := []hull{drawHull(t)}
	for range rapid.IntRange(0, 6).Draw(t, "more") {
		h := drawHull(t)
		from := hs[rapid.IntRange(0, len(hs)-1).Draw(t, "from")]
		h.a = from.b
		if rapid.Bool().Draw(t, "same") {
			h.r = from.s
		}
		hs = append(hs, h)
	}
	return hs
}

// A hull is all the discs on the way from one end to the other, so a point is as
// deep in it as in the disc that it is deepest in.
func TestHullIsAllItsDiscs(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := drawHull(t)
		p := pt{rapid.Float64Range(-50, 250).Draw(t, "x"), rapid.Float64Range(-50, 250).Draw(t, "y")}
		want := math.Inf(-1)
		const n = 4000
		for i := range n + 1 {
			f := float64(i) / n
			want = max(want, h.r+(h.s-h.r)*f-p.sub(h.a.lerp(h.b, f)).len())
		}
		if got := h.depth(p); math.Abs(got-want) > 0.04 { // the discs are up to 0.07 apart
			t.Fatalf("%+v is %v deep in %+v, want %v", p, got, h, want)
		}
		for _, e := range h.edge() {
			for i := range 9 {
				if d := h.depth(e.at(float64(i) / 8)); math.Abs(d) > 1e-6 {
					t.Fatalf("the edge of %+v is %v deep in it", h, d)
				}
			}
		}
	})
}

// The figure holds all of the limbs, and nothing that is farther from them than
// the hollows are round.
func TestFigureHoldsTheLimbs(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		hs := alone(chain(t))
		hollow := rapid.SampledFrom([]float64{0.5, 5, 12}).Draw(t, "hollow")
		p := &pen{out: &Scene{}}
		p.limbs(hs)
		limbs := flat(p.take())
		p.figure(hs, hollow)
		outlines := flat(p.take())
		const slack = 1.2 // px: where edges only just touch
		for i := -3; i < 26; i++ {
			for j := -3; j < 26; j++ {
				q := pt{float64(i)*10 + 0.37, float64(j)*10 + 0.61}
				deep := math.Inf(-1)
				for k := range hs {
					deep = max(deep, hs[k].depth(q))
				}
				if deep > slack && winding(limbs, q) == 0 {
					t.Fatalf("%+v is %v deep in the limbs %+v and not filled", q, deep, hs)
				}
				if deep < -slack && winding(limbs, q) != 0 {
					t.Fatalf("%+v is %v off the limbs %+v and filled", q, -deep, hs)
				}
				if deep < -hollow-slack && winding(outlines, q) != 0 {
					t.Fatalf("%+v is %v off the limbs %+v and in the figure", q, -deep, hs)
				}
			}
		}
	})
}

// Two limbs make one outline, and where they meet it is round.
func TestHollowsAreRound(t *testing.T) {
	hs := []hull{{pt{0, 0}, pt{100, 0}, 10, 10}, {pt{50, 0}, pt{50, 80}, 10, 10}}
	p := &pen{out: &Scene{}}
	p.figure(hs, 6)
	outlines := flat(p.take())
	if len(outlines) != 1 {
		t.Fatalf("%d outlines", len(outlines))
	}
	// The corners are at (40, 10) and (60, 10); the circle of the hollow touches
	// both edges, with its middle 6 away from each.
	for _, x := range []float64{34, 66} {
		nearest := math.Inf(1)
		for _, q := range outlines[0] {
			nearest = min(nearest, q.sub(pt{x, 16}).len())
		}
		if math.Abs(nearest-6) > 0.05 {
			t.Errorf("the hollow at %v comes within %v of its middle, want 6", x, nearest)
		}
	}

	for _, o := range outlines {
		for i, a := range o {
			if b := o[(i+1)%len(o)]; b.sub(a).len() > 101 {
				t.Errorf("a leap from %+v to %+v", a, b)
			}
		}
	}
}

// A body is inside of the picture that fits it, in both aspects, and turns with
// its bike: what is drawn is the limbs, to scale.
func TestBodyFits(t *testing.T) {
	limbs := []Limb{
		{From: mass.Vec{X: 0.1, Z: 1.0}, To: mass.Vec{X: 0.4, Z: 1.5}, R: 0.1, S: 0.12},
		{From: mass.Vec{X: 0.5, Z: 1.75}, To: mass.Vec{X: 0.5, Z: 1.7}, R: 0.09, S: 0.06, Member: Head},
		{From: mass.Vec{X: 0.4, Y: 0.2, Z: 1.45}, To: mass.Vec{X: 0.9, Y: 0.3, Z: 1.1}, R: 0.05, S: 0.04, Member: Arm},
		{From: mass.Vec{X: 0.4, Y: -0.2, Z: 1.45}, To: mass.Vec{X: 0.9, Y: -0.3, Z: 1.1}, R: 0.05, S: 0.04, Member: Arm},
	}
	sub := Subject{Rider: limbs}
	for _, a := range []Aspect{Side, Rear} {
		for _, size := range [][2]float64{{390, 300}, {760, 480}, {1400, 600}} {
			v := View{Aspect: a}
			cam := Fit(&sub, v, size[0], size[1])
			drawn := nothing
			for _, m := range Draw(sub, v, cam).Marks {
				if m.Stroke != Rider {
					continue
				}
				for _, o := range flat(m.Path) {
					for _, q := range o {
						drawn = drawn.with(q.x, q.y)
					}
				}
			}
			if !(drawn.x0 >= 0 && drawn.y0 >= 0 && drawn.x1 <= size[0] && drawn.y1 <= size[1]) {
				t.Errorf("aspect %d, %v: the body reaches over %+v", a, size, drawn)
			}
			if got := (cam.Height/2-drawn.y0)/cam.Scale + cam.V; math.Abs(got-1.84) > 0.003 {
				t.Errorf("aspect %d, %v: the top of the head is at %v m, want 1.84", a, size, got)
			}
		}
	}
}

// From the right the left arm and leg are behind and thinner; from behind both
// are alike.
func TestFarLimbsAreThin(t *testing.T) {
	limb := func(y float64, m Member) Limb {
		return Limb{From: mass.Vec{X: 0.1, Y: y, Z: 1.0}, To: mass.Vec{X: 0.1 + 2*y, Y: y, Z: 0.3}, R: 0.05, S: 0.05, Member: m}
	}
	sub := Subject{Rider: []Limb{limb(0.1, Leg), limb(-0.1, Leg), limb(0.05, Torso)}}
	widths := func(a Aspect) (ws []float64) {
		v := View{Aspect: a}
		for _, m := range Draw(sub, v, Fit(&sub, v, 760, 480)).Marks {
			if m.Stroke == Rider {
				ws = append(ws, m.Width)
			}
		}
		return ws
	}
	if ws := widths(Side); len(ws) != 2 || !(ws[0] < 0.7*ws[1]) {
		t.Errorf("from the right: lines of %v px", ws)
	}
	if ws := widths(Rear); len(ws) != 1 {
		t.Errorf("from behind: lines of %v px", ws)
	}
}
