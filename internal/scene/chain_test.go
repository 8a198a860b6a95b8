package scene

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"steelyard/internal/drive"
)

// A sprocket's pitch diameter is p / sin(180° / z) (ISO 606); the diameters of
// 12.7 mm pitch are in every table of sprockets (memory).
func TestPitchRadius(t *testing.T) {
	for n, across := range map[int]float64{32: 129.57, 16: 65.10, 11: 45.08, 4: 12.7 * math.Sqrt2} {
		if got := 2000 * pitchRadius(n, drive.Pitch); math.Abs(got-across) > 0.01 {
			t.Errorf("%d teeth: %.2f mm across, want %.2f", n, got, across)
		}
	}
}

// Two equal wheels side by side: the way between them is level, above and below.
func TestTangentOfEqualWheels(t *testing.T) {
	a, b := pulley{at: pt{0, 0}, r: 10}, pulley{at: pt{100, 0}, r: 10}
	from, to, ok := tangent(&a, &b)
	if !ok || from != (pt{0, -10}) || to != (pt{100, -10}) {
		t.Errorf("above: %v to %v, %v", from, to, ok)
	}
	from, to, ok = tangent(&b, &a)
	if !ok || from != (pt{100, 10}) || to != (pt{0, 10}) {
		t.Errorf("below: %v to %v, %v", from, to, ok)
	}
	// Crossed, one wheel against the clock: with radii 3 and 3 and 10 between the
	// centres, the normal's share along the way is 6/10 and across it 8/10.
	from, to, ok = tangent(&pulley{r: 3}, &pulley{at: pt{10, 0}, r: 3, ccw: true})
	if want := (pt{1.8, -2.4}); !ok || from.sub(want).len() > 1e-12 || to.sub(pt{8.2, 2.4}).len() > 1e-12 {
		t.Errorf("crossed: %v to %v", from, to)
	}
}

// Wherever there is a way between two wheels, it touches both square to their
// radii, with the wheel on the side that its turn says.
func TestTangentTouches(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		wheel := func() pulley {
			return pulley{
				at: pt{rapid.Float64Range(-500, 500).Draw(t, "x"), rapid.Float64Range(-500, 500).Draw(t, "y")},
				r:  rapid.Float64Range(1, 120).Draw(t, "r"), ccw: rapid.Bool().Draw(t, "ccw"),
			}
		}
		a, b := wheel(), wheel()
		from, to, ok := tangent(&a, &b)
		if apart := b.at.sub(a.at).len(); !ok {
			if apart > 1.01*(a.r+b.r) {
				t.Fatalf("no way between wheels %v apart", apart)
			}
			return
		}
		d := to.sub(from)
		if d.len() < 1e-6 {
			return
		}
		for _, k := range []struct {
			w *pulley
			p pt
		}{{&a, from}, {&b, to}} {
			r := k.p.sub(k.w.at)
			if math.Abs(r.len()-k.w.r) > 1e-9*k.w.r+1e-9 {
				t.Fatalf("the way ends %v from the centre of a wheel of %v", r.len(), k.w.r)
			}
			if math.Abs(r.unit().dot(d.unit())) > 1e-6 {
				t.Fatalf("the way is not square to the radius")
			}
			// The centre lies to the right of the way where the wheel turns with
			// the clock; left() is to the right as seen, for y is down.
			if side := d.unit().left().dot(r.mul(-1)); side < 0 != k.w.ccw {
				t.Fatalf("the wheel lies on the wrong side")
			}
		}
	})
}

// A chain over two wheels is as long as the formula says: with a and b the radii
// and l the distance, 2 sqrt(l² - (a-b)²) + π(a+b) + 2(a-b) asin((a-b)/l).
func TestRunIsAsLongAsTheFormula(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := rapid.Float64Range(10, 120).Draw(t, "a"), rapid.Float64Range(10, 120).Draw(t, "b")
		l := rapid.Float64Range(1.2, 5).Draw(t, "l") * max(a, b)
		p := &pen{out: &Scene{}}
		if !p.run([]pulley{{r: b}, {at: pt{l, 0.3 * l}, r: a}}) {
			t.Fatal("no run")
		}
		l *= math.Hypot(1, 0.3)
		want := 2*math.Sqrt(l*l-(a-b)*(a-b)) + math.Pi*(a+b) + 2*(a-b)*math.Asin((a-b)/l)
		got := length(p.take())
		if math.Abs(got-want) > 1e-3*want {
			t.Fatalf("%v long, want %v", got, want)
		}
	})
}

// length measures a path by many short pieces.
func length(path []Seg) (sum float64) {
	var at, start pt
	for i := range path {
		g := &path[i]
		to := pt{g.X, g.Y}
		switch g.Op {
		case Move:
			start = to
		case Line:
			sum += to.sub(at).len()
		case Cubic:
			last := at
			const pieces = 200
			for k := 1; k <= pieces; k++ {
				u := float64(k) / pieces
				v := 1 - u
				q := at.mul(v * v * v).add(pt{g.X1, g.Y1}.mul(3 * v * v * u)).add(pt{g.X2, g.Y2}.mul(3 * v * u * u)).add(to.mul(u * u * u))
				sum += q.sub(last).len()
				last = q
			}
		case Close:
			sum += start.sub(at).len()
			to = start
		}
		at = to
	}
	return sum
}

// The chain of a derailleur goes round the front of the guide pulley and round
// the back of the other one.
func TestRunThroughACage(t *testing.T) {
	cog, ring := pulley{r: 40}, pulley{at: pt{440, 40}, r: 65}
	guide, last := pulley{at: pt{16, 71}, r: 22, ccw: true}, pulley{at: pt{40, 150}, r: 22}
	p := &pen{out: &Scene{}}
	if !p.run([]pulley{cog, ring, last, guide}) {
		t.Fatal("no run")
	}
	front, back := false, false
	for _, g := range p.take() {
		if q := (pt{g.X, g.Y}); g.Op == Line || g.Op == Cubic {
			front = front || math.Abs(q.sub(guide.at).len()-22) < 1e-6 && q.x > guide.at.x
			back = back || math.Abs(q.sub(last.at).len()-22) < 1e-6 && q.x < last.at.x
			if math.Abs(q.sub(guide.at).len()-22) < 1e-6 && q.x < guide.at.x-1 {
				t.Errorf("the chain is behind the guide pulley, at %v", q)
			}
		}
	}
	if !front || !back {
		t.Errorf("in front of the guide pulley: %v, behind the other: %v", front, back)
	}
}

// Nothing that a document can say makes the run panic or go on for ever.
func TestRunOfAnyWheels(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var list []pulley
		for range rapid.IntRange(0, 5).Draw(t, "wheels") {
			list = append(list, pulley{
				at: pt{rapid.Float64().Draw(t, "x"), rapid.Float64Range(-100, 100).Draw(t, "y")},
				r:  rapid.Float64Range(-1, 200).Draw(t, "r"), ccw: rapid.Bool().Draw(t, "ccw"),
			})
		}
		(&pen{out: &Scene{}}).run(list)
	})
}

func TestArcOf(t *testing.T) {
	// Half a circle's centroid is 2/π of its radius from the centre, a quarter
	// circle's 2√2/π.
	for k, want := range map[float64]float64{2 / math.Pi: math.Pi / 2, 2 * math.Sqrt2 / math.Pi: math.Pi / 4} {
		if got := arcOf(k); math.Abs(got-want) > 1e-6 {
			t.Errorf("%v: %v, want %v", k, got, want)
		}
	}
}
