package rider

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"steelyard/internal/document"
	"steelyard/internal/mass"
)

// volume of a tapered capsule: a frustum with half a ball at either end. Seen
// whole, balls of different size stick out of their frustum a little.
func (l *Limb) volume() float64 {
	d := l.To.Sub(l.From).Norm()
	return math.Pi/3*d*(l.R*l.R+l.R*l.S+l.S*l.S) + 2*math.Pi/3*(l.R*l.R*l.R+l.S*l.S*l.S)
}

// dist is how far a point is outside a tapered capsule, taken as the hull of
// eighty balls.
func (l *Limb) dist(p mass.Vec) float64 {
	best := math.Inf(1)
	for i := range 81 {
		f := float64(i) / 80
		best = min(best, p.Sub(l.From.Lerp(l.To, f)).Norm()-(l.R+f*(l.S-l.R)))
	}
	return best
}

// What is drawn of a body covers it: each joint and the centre of each segment
// lies within a limb, nothing is above the top of the head or below the soles,
// and all of it, overlaps at the joints counted twice, has about the body's
// volume.
func TestOutlineCoversTheBody(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anybody(t)
		r.Mass = rapid.Float64Range(18, 32).Draw(t, "mass index") * r.Stature * r.Stature / 1000
		b, _ := Seat(drawn(t, r.Stature/1000), r)
		if b == nil {
			return
		}
		limbs := b.Outline()
		within := func(what string, p mass.Vec) {
			for i := range limbs {
				if limbs[i].dist(p) < 0.002 {
					return
				}
			}
			t.Errorf("%s is outside", what)
		}
		for name, p := range b.joints() {
			if name != "left pedal" && name != "right pedal" {
				within(name, p)
			}
		}
		for _, s := range b.Segments {
			within("centre of "+s.Name, s.Place)
		}
		var volume float64
		for _, l := range limbs {
			if l.Name != Trunk || l.Side != "" { // all but within its neighbours
				volume += l.volume()
			}
			if l.Name == Head {
				near(t, "top of the head", l.From.Z+l.R, b.Vertex.Z, 0.02)
			}
		}
		near(t, "volume over that of the mass", volume/(r.Mass/1000/density), 1.25, 0.30)
		for _, side := range []*Side{&b.Left, &b.Right} {
			up := mass.Vec{X: math.Sin(side.Toes), Z: math.Cos(side.Toes)}
			for _, l := range limbs {
				if l.Name != Foot {
					continue
				}
				for p, radius := range map[mass.Vec]float64{l.From: l.R, l.To: l.S} {
					if side.Ankle.Y*p.Y > 0 && p.Sub(side.Ball).Dot(up) < radius-1e-6 {
						t.Errorf("a foot goes through its sole by %g m", radius-p.Sub(side.Ball).Dot(up))
					}
				}
			}
		}
	})
}

// From its right, a body is drawn back to front; its sides have as many limbs.
func TestOutlineOrder(t *testing.T) {
	b := seated(t, posed(t, load(t, "riel-bike.json")), person())
	count := map[string]int{}
	for _, l := range b.Outline() {
		count[l.Side]++
		switch {
		case l.Name == Trunk:
		case l.Side == Left && count[""]+count[Right] > 0:
			t.Errorf("the left %s in front of the middle", l.Name)
		case l.Side == "" && count[Right] > 1:
			t.Errorf("the %s in front of the right limbs", l.Name)
		}
	}
	if count[Left] != count[Right] || count[""] != 3 {
		t.Errorf("%v", count)
	}
}

// More mass is more girth.
func TestGirth(t *testing.T) {
	bike := posed(t, load(t, "riel-bike.json"))
	thin := seated(t, bike, person(func(r *document.Rider) { r.Mass = 55e3 })).Outline()
	stout := seated(t, bike, person(func(r *document.Rider) { r.Mass = 110e3 })).Outline()
	for i := range thin {
		if grows := stout[i].R > 1.3*thin[i].R; grows == (thin[i].Name == Head || thin[i].Name == Neck || thin[i].Name == Foot) {
			t.Errorf("%s from %g to %g m", thin[i].Name, thin[i].R, stout[i].R)
		}
	}
}
