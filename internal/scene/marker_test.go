package scene

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"steelyard/internal/mass"
)

// area is that of a closed path, by the shoelace formula over a flattened copy.
func area(path []Seg) float64 {
	sum := 0.0
	var start, at pt
	to := func(p pt) { sum += at.x*p.y - p.x*at.y; at = p }
	for _, g := range path {
		p := pt{g.X, g.Y}
		switch g.Op {
		case Move:
			start, at = p, p
		case Line:
			to(p)
		case Cubic:
			a, b, c := at, pt{g.X1, g.Y1}, pt{g.X2, g.Y2}
			for i := 1; i <= 64; i++ {
				t := float64(i) / 64
				s := 1 - t
				to(a.mul(s * s * s).add(b.mul(3 * s * s * t)).add(c.mul(3 * s * t * t)).add(p.mul(t * t * t)))
			}
		case Circle:
			sum += 2 * math.Pi * g.R * g.R
		case Close:
			to(start)
		}
	}
	return sum / 2
}

// The figure of every role has the area that the mass asks for, whatever its
// shape; bags lose a little at their round corners.
func TestAreaByMass(t *testing.T) {
	roles := []Role{Fitted, Baggage, Body}
	rapid.Check(t, func(t *rapid.T) {
		var s Subject
		n := rapid.IntRange(1, 30).Draw(t, "n")
		for i := range n {
			s.Markers = append(s.Markers, Marker{
				Part: strings.Repeat("p", i+1), Mass: rapid.Float64Range(0.05, 20).Draw(t, "kg"),
				Place: mass.Vec{X: float64(i) / 20, Z: 0.5}, Role: roles[rapid.IntRange(0, 2).Draw(t, "role")],
			})
		}
		cam := Fit(&s, View{}, 760, 440)
		ds := dots(&s, &cam)
		k := dotScale(&cam, ds)
		(&sheet{pen: &pen{cam: cam}}).size(ds, k)
		for i := range ds {
			d := &ds[i]
			if i > 0 && d.kg > ds[i-1].kg {
				t.Fatal("a heavier dot covers a lighter one")
			}
			if d.r <= leastDot || d.m.Role == Body && d.r == largestBody(760, 440) {
				continue
			}
			p := &pen{out: &Scene{}}
			p.outline(d.m.Role, d.at, d.r, 0)
			got, want := area(p.take()), math.Pi*k*k*d.kg
			if math.Abs(got-want) > 0.005*want+3.5 {
				t.Fatalf("%v kg of role %d has an area of %v px², want %v", d.kg, d.m.Role, got, want)
			}
		}
		if ds[0].r > largestDot(760, 440)+1e-9 {
			t.Fatalf("the heaviest has a radius of %v px", ds[0].r)
		}
	})
}

// Half of a figure is half of it.
func TestRightHalf(t *testing.T) {
	for _, role := range []Role{Fitted, Baggage, Body} {
		p := &pen{out: &Scene{}}
		p.rightHalf(role, pt{100, 50}, 20)
		if got, want := math.Abs(area(p.take())), math.Pi*200; math.Abs(got-want) > 0.002*want {
			t.Errorf("role %d: the half has an area of %v, want %v", role, got, want)
		}
	}
}

// Hatching stays inside its figure, and in its half.
func TestHatchInside(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		role := Role(rapid.IntRange(0, 2).Draw(t, "role"))
		r := rapid.Float64Range(3, 40).Draw(t, "r")
		half := rapid.Bool().Draw(t, "half")
		p := &pen{out: &Scene{}}
		p.hatch(role, pt{}, r, half)
		path := p.take()
		if r > 8 && len(path) < 4 {
			t.Fatalf("%d steps of hatching in a figure of radius %v", len(path), r)
		}
		for _, g := range path {
			inside := math.Hypot(g.X, g.Y) <= r+1e-6
			switch role {
			case Baggage:
				d := r*math.Sqrt(math.Pi)/2 + 1e-6
				inside = math.Abs(g.X) <= d && math.Abs(g.Y) <= d
			case Body:
				inside = math.Abs(g.X)+math.Abs(g.Y) <= r*math.Sqrt(math.Pi/2)+1e-6
			}
			if !inside || half && g.X > 1e-6 {
				t.Fatalf("role %d, radius %v, half %v: hatched at (%v, %v)", role, r, half, g.X, g.Y)
			}
		}
	})
}

// What is sprung, what is not and what is by half are drawn in different ways,
// not only in different colours.
func TestMarkersDifferByShape(t *testing.T) {
	shape := func(unsprung float64) string {
		p := &pen{out: &Scene{}}
		p.marker(&dot{m: &Marker{Unsprung: unsprung}, r: 10, at: pt{50, 50}})
		var b strings.Builder
		for _, m := range p.out.Marks {
			b.WriteByte('|')
			if m.Fill != None && m.Fill != Paper {
				b.WriteByte('f')
			}
			if m.Stroke != None && m.Stroke != Paper {
				b.WriteByte('s')
			}
			for _, g := range m.Path {
				b.WriteByte("MLCOZ"[g.Op])
			}
		}
		return b.String()
	}
	sprung, half, unsprung := shape(0), shape(0.5), shape(1)
	if sprung == half || half == unsprung || sprung == unsprung {
		t.Errorf("sprung %s, half %s, unsprung %s", sprung, half, unsprung)
	}
}

func TestShort(t *testing.T) {
	for _, c := range [][2]string{
		{"", ""},
		{"Frame", "Frame"},
		{"  Frame \t\n set ", "Frame set"},
		{"a\x00b", "a b"},
		{"exactly twenty-eight runes..", "exactly twenty-eight runes.."},
		{"exactly twenty-nine runes....", "exactly twenty-nine runes.." + "…"},
		{strings.Repeat("ü", 40), strings.Repeat("ü", 27) + "…"},
		{strings.Repeat("x ", 5000), strings.Repeat("x ", 13) + "x…"},
		{"left\u202eright", "leftright"},
		{"bad \xff byte", "bad \ufffd byte"},
	} {
		if got := short(c[0], maxName); got != c[1] {
			t.Errorf("short(%.40q) = %q, want %q", c[0], got, c[1])
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		s := short(rapid.String().Draw(t, "name"), maxName)
		if n := len([]rune(s)); n > maxName {
			t.Fatalf("%d runes", n)
		}
		if strings.ContainsAny(s, "\n\t\x00") || strings.Contains(s, "  ") || strings.TrimSpace(s) != s {
			t.Fatalf("not on one clean line: %q", s)
		}
	})
}

func TestRoundLength(t *testing.T) {
	const in = 0.0254
	for _, c := range []struct {
		unit        string
		limit, want float64
	}{
		{"mm", 0.55, 0.5}, {"mm", 0.5, 0.5}, {"mm", 0.4999, 0.2}, {"mm", 0.0101, 0.01}, {"mm", 3, 2},
		{"in", 7 * in, 5 * in}, {"in", 11.9 * in, 10 * in}, {"in", 12 * in, 12 * in}, {"in", 30 * in, 24 * in},
		{"mm", 0, 0.001}, {"mm", math.NaN(), 0.001},
	} {
		if got := (Units{Length: c.unit}).roundLength(c.limit); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("at most %v m in %s: %v m, want %v", c.limit, c.unit, got, c.want)
		}
	}
}
