package photograph

import (
	"math"
	"math/rand/v2"
	"testing"

	"steelyard/internal/document"
	"steelyard/internal/geometry"
	"steelyard/internal/mass"
)

// A picture that is to scale lies so that what is marked lies on what is drawn, from
// whichever side it was taken, however it is turned, and on a bike that has sunk by
// its sag too: its axles then, which are what it is laid by.
func TestPlaceLaysMarksOnTheDrawing(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 8))
	for n := range 24 {
		b := bikes()[n%3]
		b.Fork.Sag, b.Fork.Travel = 0, 0
		drawn, _ := geometry.Pose(&b)
		c := straight(1e6)
		c.w, c.h = 2400, 2400
		c.roll, c.left = random.Float64()*6, n%2 == 1
		p := shot(&b, &c, usual, still)
		p.Distance = farthest
		corner, right, down, err := Place(p, &b, drawn)
		if err != nil {
			t.Fatal(err)
		}
		want := places(&b, usual, false)
		for i, m := range p.Marks {
			x := corner[0] + right[0]*m.X + down[0]*m.Y
			z := corner[1] + right[1]*m.X + down[1]*m.Y
			// The depth of an axle's end is nothing at that distance.
			if math.Hypot(x-want[i].X, z-want[i].Z) > 0.001 {
				t.Errorf("%d, %s lies at %.4f, %.4f, drawn is %.4f, %.4f", n, m.Of, x, z, want[i].X, want[i].Z)
			}
		}
	}
}

// The figures that were read make the bike of the picture: with them taken, and both
// its tyres on the ground, all that is marked is drawn where it is.
func TestTakenFiguresMakeTheBike(t *testing.T) {
	for _, b := range bikes() {
		c := straight(5)
		p := shot(&b, &c, usual, still)
		p.Wheelbase = truth(&b)[11]
		// A build that is quite another one, but for its wheels and its setback.
		other := bikes()[0]
		other.Wheels, other.Saddle.Setback = b.Wheels, b.Saddle.Setback
		other.Frame = document.Frame{Stack: 560, Reach: 380, HeadTube: 120, HeadAngle: 68, SeatTube: 450, SeatAngle: 71, Chainstay: 470, BBDrop: 55}
		stand(&other)
		r, err := Read(p, &other)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range r.Figures {
			for i := range figures {
				if figures[i].key == f.Key && f.Taken {
					*figures[i].now(&other) = f.Value
				}
			}
		}
		want, got := places(&b, usual, false), places(&other, usual, false)
		for i := range want {
			if d := got[i].Sub(want[i]); math.Hypot(d.X, d.Z) > 0.0025 {
				t.Errorf("%s is drawn %.1f mm beside where it is", Marked[i], 1000*math.Hypot(d.X, d.Z))
			}
		}
	}
}

// The check of the scale agrees where it should, and tells a wheelbase that is 5 % off
// and the size of another wheel.
func TestScaleIsChecked(t *testing.T) {
	b := bikes()[0]
	c := straight(5)
	p := shot(&b, &c, usual, still)
	for _, k := range []struct {
		wheelbase float64
		bead      float64
		agrees    bool
	}{{truth(&b)[11], 622, true}, {truth(&b)[11] * 1.05, 622, false}, {truth(&b)[11], 559, false}} {
		p.Wheelbase = k.wheelbase
		o := b
		o.Wheels.Rear.BeadSeat, o.Wheels.Front.BeadSeat = k.bead, k.bead
		r, err := Read(p, &o)
		if err != nil {
			t.Fatal(err)
		}
		if r.Check == nil || r.Check.Agrees != k.agrees {
			t.Errorf("%+v: %+v", k, r.Check)
		}
	}
}

// What is not marked gives no figure, and what gives the scale is needed.
func TestReadsWhatIsMarked(t *testing.T) {
	b := bikes()[0]
	c := straight(5)
	all := shot(&b, &c, usual, still)
	some := *all
	some.Marks = all.Marks[:3]
	r, err := Read(&some, &b)
	if err != nil {
		t.Fatal(err)
	}
	var keys []string
	for _, f := range r.Figures {
		keys = append(keys, f.Key)
	}
	if len(keys) != 3 || r.Check != nil { // chainstay, drop, front centre
		t.Errorf("%v, %+v", keys, r.Check)
	}
	if some.Scale = ByWheel; true {
		if _, err := Read(&some, &b); err == nil {
			t.Error("scaled to a wheel that is not marked")
		}
	}
	some.Marks = all.Marks[1:]
	if _, err := Read(&some, &b); err == nil {
		t.Error("read without an axle")
	}
	same := *all
	same.Marks = []Mark{{"rear_axle", 500, 500}, {"front_axle", 501, 500}}
	if _, err := Read(&same, &b); err == nil {
		t.Error("both axles are one")
	}
	for name, spoil := range map[string]func(p *Photograph, b *document.Build){
		"twice":     func(p *Photograph, _ *document.Build) { p.Marks = append(p.Marks, p.Marks[0]) },
		"unknown":   func(p *Photograph, _ *document.Build) { p.Marks = []Mark{{"lamp", 1, 1}} },
		"outside":   func(p *Photograph, _ *document.Build) { p.Marks = []Mark{{"saddle", -1, 1}} },
		"no number": func(p *Photograph, _ *document.Build) { p.Marks = []Mark{{"saddle", math.NaN(), 1}} },
		"near":      func(p *Photograph, _ *document.Build) { p.Distance = 0.2 },
		"long":      func(p *Photograph, _ *document.Build) { p.Wheelbase = 1e9 },
		"blurred":   func(p *Photograph, _ *document.Build) { p.Within = 1e9 },
		"id":        func(p *Photograph, _ *document.Build) { p.ID = "../x" },
		"size":      func(p *Photograph, _ *document.Build) { p.Width = 0 },
		"build":     func(_ *Photograph, b *document.Build) { b.Frame.Chainstay = 0 },
	} {
		p, o := *all, b
		p.Marks = append([]Mark(nil), all.Marks...)
		spoil(&p, &o)
		if _, err := Read(&p, &o); err == nil {
			t.Errorf("%s: taken", name)
		}
		if _, _, _, err := Place(&p, &o, &geometry.Bike{FrontAxle: mass.Vec{X: 1}}); err == nil {
			t.Errorf("%s: placed", name)
		}
	}
}
