package rider

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"steelyard/internal/document"
	"steelyard/internal/geometry"
	"steelyard/internal/mass"
)

// exact is what rounding may leave of a length or a place, m.
const exact = 1e-9

// drawn draws a bike that fits somebody of that stature, in m, more or less.
func drawn(t *rapid.T, stature float64) *geometry.Bike {
	in := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	seat := in("seat angle", 70, 77) * degree
	height := stature * in("saddle over stature", 0.385, 0.425)
	bb := mass.Vec{X: in("rear centre", 0.40, 0.48), Z: in("bottom bracket", 0.24, 0.36)}
	saddle := bb.Add(mass.Vec{X: -height * math.Cos(seat), Z: height * math.Sin(seat)})
	cranks := stature * in("cranks over stature", 0.085, 0.105)
	return &geometry.Bike{
		SeatAngle:     seat,
		Pitch:         in("pitch", -2, 2) * degree,
		BottomBracket: bb,
		SaddleTop:     saddle,
		Grip:          saddle.Add(mass.Vec{X: stature * in("grips ahead", 0.28, 0.44), Y: stature * in("grips out", 0.10, 0.20), Z: stature * in("grips up", -0.06, 0.12)}),
		PedalFront:    bb.Add(mass.Vec{X: cranks, Y: in("pedals out", 0.11, 0.15)}),
	}
}

// anybody draws a rider.
func anybody(t *rapid.T) *document.Rider {
	r := person()
	r.Stature = rapid.Float64Range(1400, 2050).Draw(t, "stature")
	r.Mass = rapid.Float64Range(35e3, 140e3).Draw(t, "mass")
	r.Clothing = rapid.Float64Range(0, 5e3).Draw(t, "clothing")
	r.Shoes = rapid.Float64Range(0, 2e3).Draw(t, "shoes")
	r.Table = rapid.SampledFrom(document.Tables).Draw(t, "table")
	r.Posture = rapid.SampledFrom(document.Postures).Draw(t, "posture")
	r.Crank = rapid.Float64Range(-360, 360).Draw(t, "crank")
	return r
}

// joints are all the points of a body, by name.
func (b *Body) joints() map[string]mass.Vec {
	all := map[string]mass.Vec{"mid-hip": b.MidHip, "mid-shoulder": b.MidShoulder, "midgonion": b.Midgonion, "vertex": b.Vertex}
	for side, s := range map[string]*Side{Left: &b.Left, Right: &b.Right} {
		for name, p := range map[string]mass.Vec{
			"shoulder": s.Shoulder, "elbow": s.Elbow, "wrist": s.Wrist, "hand": s.Hand, "hip": s.Hip, "knee": s.Knee,
			"ankle": s.Ankle, "heel": s.Heel, "toe": s.Toe, "ball": s.Ball, "pedal": s.Pedal,
		} {
			all[side+" "+name] = p
		}
	}
	return all
}

// sound fails unless a body is one: segments of the lengths that they should
// have, joined at their ends, on its contact points, with all of its mass.
func (b *Body) sound(t rapid.TB, bike *geometry.Bike, r *document.Rider) {
	t.Helper()
	h := r.Stature / 1000
	between := func(what string, p, q mass.Vec, want float64) {
		t.Helper()
		near(t, what, q.Sub(p).Norm(), want, exact)
	}
	between("trunk", b.MidHip, b.MidShoulder, 0.288*h)
	between("neck and head, straightened", mass.Vec{}, mass.Vec{Z: b.Vertex.Sub(b.Midgonion).Norm() + b.Midgonion.Sub(b.MidShoulder).Norm()}, 0.182*h)
	angle := r.Crank * degree
	cranks := bike.PedalFront.Sub(bike.BottomBracket)
	for i, s := range []*Side{&b.Left, &b.Right} {
		out := 1 - 2*float64(i)
		between("thigh", s.Hip, s.Knee, 0.245*h)
		between("shank", s.Knee, s.Ankle, 0.246*h)
		between("foot", s.Heel, s.Toe, 0.152*h)
		between("upper arm", s.Shoulder, s.Elbow, 0.186*h)
		between("forearm", s.Elbow, s.Wrist, 0.146*h)
		between("hand", s.Wrist, s.Hand, b.body.length[hand])
		between("ball of the foot to spindle", s.Ball, s.Pedal, spindleToSole)
		between("ankle to ball", s.Ankle, s.Ball, h*math.Hypot(0.47*0.152, 0.039))
		nearPoint(t, "hand", s.Hand, mass.Vec{X: bike.Grip.X, Y: out * bike.Grip.Y, Z: bike.Grip.Z}, exact)
		sin, cos := math.Sincos(angle + float64(i)*math.Pi)
		nearPoint(t, "pedal", s.Pedal, bike.BottomBracket.Add(mass.Vec{X: cranks.X * cos, Y: out * cranks.Y, Z: cranks.X * sin}), exact)
		near(t, "bend of the knee", s.KneeBend, angleBetween(s.Knee.Sub(s.Hip), s.Ankle.Sub(s.Knee)), 1e-6)
		near(t, "bend of the elbow", s.ElbowBend, angleBetween(s.Elbow.Sub(s.Shoulder), s.Hand.Sub(s.Elbow)), 1e-6)
		if s.KneeBend < leastBend-1e-6 || s.KneeBend > kneeMost+1e-6 || s.ElbowBend < leastBend-1e-6 || s.ElbowBend > elbowMost+1e-6 {
			t.Errorf("knee %g°, elbow %g°", s.KneeBend/degree, s.ElbowBend/degree)
		}
		if s.Toes > toesMost+1e-9 {
			t.Errorf("toes down by %g°", s.Toes/degree)
		}
	}
	nearPoint(t, "middle of the hips", middle(b.Left.Hip, b.Right.Hip), b.MidHip, exact)
	nearPoint(t, "middle of the shoulders", middle(b.Left.Shoulder, b.Right.Shoulder), b.MidShoulder, exact)
	if r.Posture != standing {
		nearPoint(t, "middle of the hips", b.MidHip, bike.SaddleTop.Add(mass.Vec{Z: hipOverSeat * h}), exact)
	}
	var sum, u float64
	ends := map[string][2]mass.Vec{}
	for _, s := range b.Segments {
		sum += s.Mass
		u += s.MassU
		ends[s.Side+" "+s.Name] = [2]mass.Vec{s.From, s.To}
	}
	near(t, "mass", sum, (r.Mass+r.Clothing+r.Shoes)/1000, 1e-9)
	near(t, "its uncertainty", u, dressed(r)/1000/math.Sqrt(3), 1e-9)
	if len(b.Segments) != 14 || len(ends) != 14 {
		t.Errorf("%d segments, %d of them different", len(b.Segments), len(ends))
	}
	for _, side := range []string{Left, Right} {
		for _, chain := range [][]string{{UpperArm, Forearm, Hand}, {Thigh, Shank}} {
			for i := 1; i < len(chain); i++ {
				nearPoint(t, side+" "+chain[i], ends[side+" "+chain[i]][0], ends[side+" "+chain[i-1]][1], 0)
			}
		}
	}
}

func angleBetween(v, w mass.Vec) float64 { return math.Atan2(cross(v, w).Norm(), v.Dot(w)) }

// Anybody on a bike about their size is whole, or is told why not.
func TestSeatAnybody(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anybody(t)
		bike := drawn(t, r.Stature/1000)
		body, problems := Seat(bike, r)
		told(t, body, problems)
		if body != nil {
			body.sound(t, bike, r)
		}
	})
}

// told fails unless problems and result agree, and every problem says where
// and what.
func told(t rapid.TB, body *Body, problems []document.Problem) {
	t.Helper()
	failed := false
	for _, p := range problems {
		failed = failed || p.Severity == document.SeverityError
		odd := strings.Contains(p.Message.String(), "NaN") || strings.Contains(p.Message.String(), "Inf")
		if p.Field == "" || p.Message.String() == "" || odd && p.Field != "table" && p.Field != "posture" { // those quote what was typed
			t.Errorf("a problem that does not say where or what: %+v", p)
		}
		if builds := strings.Contains(p.Field, ".") || p.Field == "frame"; builds == (p.Rider != "") || p.Build != "" {
			t.Errorf("not whose field it is: %+v", p)
		}
	}
	if failed == (body != nil) {
		t.Fatalf("body %v, problems %v", body != nil, problems)
	}
}

// Half a turn of the cranks changes the legs over: the body is mirrored.
func TestHalfATurnMirrors(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anybody(t)
		r.Crank = rapid.Float64Range(-180, 180).Draw(t, "half crank")
		bike := drawn(t, r.Stature/1000)
		body, _ := Seat(bike, r)
		r.Crank += 180
		other, _ := Seat(bike, r)
		if (body == nil) != (other == nil) {
			t.Fatal("one half of the turn only")
		}
		if body == nil {
			return
		}
		a, b := body.joints(), other.joints()
		for name, p := range a {
			twin := name
			if side, joint, ok := strings.Cut(name, " "); ok {
				twin = map[string]string{Left: Right, Right: Left}[side] + " " + joint
			}
			nearPoint(t, name, mirror(b[twin]), p, exact)
		}
		nearPoint(t, "centre", mirror(other.centre()), body.centre(), exact)
	})
}

// On level cranks a standing body is as high on the left as on the right, and
// its hips are ahead of the saddle and above where they sit.
func TestStanding(t *testing.T) {
	for _, file := range []string{"../geometry/touring-bike.json", "../geometry/travel-bike.json", "riel-bike.json"} {
		bike := posed(t, load(t, file))
		r := person()
		sat := seated(t, bike, r)
		r.Posture = standing
		b := seated(t, bike, r)
		near(t, "knee", b.Left.Knee.Z, b.Right.Knee.Z, 0.05) // the feet are not quite abreast of the hips
		near(t, "ankle", b.Left.Ankle.Z, b.Right.Ankle.Z, exact)
		near(t, "bend of the knees", b.Left.KneeBend, b.Right.KneeBend, 1e-6)
		near(t, "bend of the knees", b.Left.KneeBend, standBend, 1e-6)
		near(t, "hips over both feet", b.MidHip.X-b.Left.Ankle.X, b.Right.Ankle.X-b.MidHip.X, exact)
		if b.MidHip.X <= sat.MidHip.X+0.05 || b.MidHip.Z <= sat.MidHip.Z+0.10 {
			t.Errorf("%s: hips at %v standing, %v seated", file, b.MidHip, sat.MidHip)
		}
		if b.Note != NoteStanding || sat.Note != NoteSeated {
			t.Errorf("notes %q, %q", b.Note, sat.Note)
		}
		if up := b.centre().Z - sat.centre().Z; up < 0.08 || up > 0.3 {
			t.Errorf("%s: standing lifts the centre by %g m", file, up)
		}
	}
}

// A body on a bike looks like one: knees ahead of the line from hip to ankle,
// elbows below and behind the line from shoulder to hand and no nearer to each
// other, head ahead of the hips and above all else.
func TestBendsLikeABody(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anybody(t)
		bike := drawn(t, r.Stature/1000)
		b, _ := Seat(bike, r)
		if b == nil {
			return
		}
		for _, s := range []*Side{&b.Left, &b.Right} {
			if m := s.Hip.Lerp(s.Ankle, 0.5); s.Knee.X <= m.X {
				t.Errorf("knee %v behind %v", s.Knee, m)
			}
			m := s.Shoulder.Lerp(s.Hand, b.body.arms.a/(b.body.arms.a+b.body.arms.b))
			if s.Elbow.Z > m.Z+1e-3 && s.Elbow.X > m.X+1e-3 || math.Abs(s.Elbow.Y) < math.Abs(m.Y)-1e-9 {
				t.Errorf("elbow %v of %v and %v", s.Elbow, s.Shoulder, s.Hand)
			}
		}
		if b.Vertex.X < b.MidHip.X-0.02 || b.Vertex.Z < b.MidShoulder.Z {
			t.Errorf("head %v, hips %v", b.Vertex, b.MidHip)
		}
	})
}

// A turn of the cranks has no jump. At the bottom a leg that is straightened as
// far as it goes moves its knee by several times what moves its foot, but half
// the step is half the way.
func TestCranksTurnSmoothly(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anybody(t)
		bike := drawn(t, r.Stature/1000)
		from := rapid.Float64Range(-180, 179).Draw(t, "from")
		r.Crank = from
		before, _ := Seat(bike, r)
		if before == nil {
			return
		}
		const steps = 50
		for i := 1; i <= steps; i++ {
			r.Crank = from + float64(i)/steps // a degree in all
			after := seated(t, bike, r)
			now := after.joints()
			for name, p := range before.joints() {
				if d := now[name].Sub(p).Norm(); d > 0.080/steps {
					t.Fatalf("%s jumps by %.3g mm at %g°", name, d*1000, r.Crank)
				}
			}
			before = after
		}
	})
}

// A whole turn, by degrees, comes back to where it started.
func TestWholeTurn(t *testing.T) {
	for _, file := range []string{"../geometry/touring-bike.json", "../geometry/travel-bike.json", "riel-bike.json"} {
		bike := posed(t, load(t, file))
		for _, posture := range document.Postures {
			r := person(func(r *document.Rider) { r.Posture = posture; r.Crank = -180 })
			first := seated(t, bike, r)
			before := first
			for r.Crank < 180 {
				r.Crank++
				after := seated(t, bike, r)
				after.sound(t, bike, r)
				now := after.joints()
				for name, p := range before.joints() {
					if d := now[name].Sub(p).Norm(); d > 0.018 {
						t.Errorf("%s, %s: %s moves by %.3g mm to %g°", file, posture, name, d*1000, r.Crank)
					}
				}
				if d := after.centre().Sub(before.centre()).Norm(); d > 0.005 {
					t.Errorf("%s, %s: the centre moves by %.3g mm to %g°", file, posture, d*1000, r.Crank)
				}
				before = after
			}
			last := before.joints()
			for name, p := range first.joints() {
				nearPoint(t, name, last[name], p, exact)
			}
		}
	}
}

// A higher saddle lifts the centre, by less than itself: feet and hands stay.
func TestHigherSaddle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anybody(t)
		r.Posture = rapid.SampledFrom(document.Postures[:3]).Draw(t, "seated posture")
		bike := drawn(t, r.Stature/1000)
		low, _ := Seat(bike, r)
		up := rapid.Float64Range(0.002, 0.02).Draw(t, "up")
		bike.SaddleTop = bike.SaddleTop.Add(mass.Vec{X: -up * math.Cos(bike.SeatAngle), Z: up * math.Sin(bike.SeatAngle)})
		high, _ := Seat(bike, r)
		if low == nil || high == nil {
			return
		}
		if d := high.centre().Z - low.centre().Z; d <= 0 || d >= up {
			t.Errorf("%.3g mm of saddle lift the centre by %.3g mm", up*1000, d*1000)
		}
	})
}

// A taller rider on the same bike, seated as the arms like it, has the centre
// of mass higher.
func TestTallerRider(t *testing.T) {
	bike := posed(t, load(t, "../geometry/touring-bike.json"))
	for _, table := range document.Tables {
		for _, posture := range document.Postures {
			last := 0.
			for stature := 1720.; stature <= 2000; stature += 10 {
				b := seated(t, bike, person(func(r *document.Rider) { r.Table, r.Posture, r.Stature = table, posture, stature }))
				if z := b.centre().Z; z <= last {
					t.Errorf("%s, %s: the centre of %g mm is at %g m, of 10 mm less at %g m", table, posture, stature, z, last)
				}
				last = b.centre().Z
			}
		}
	}
}

// document.Postures keep their order: the lower, the further the trunk leans and the
// lower the centre.
func TestPosturesInOrder(t *testing.T) {
	for _, file := range []string{"../geometry/touring-bike.json", "../geometry/travel-bike.json", "riel-bike.json"} {
		bike := posed(t, load(t, file))
		var last *Body
		for _, p := range postures[:3] {
			b := seated(t, bike, person(func(r *document.Rider) { r.Posture = p.name }))
			if last != nil && (b.Lean >= last.Lean || b.centre().Z >= last.centre().Z) {
				t.Errorf("%s: %s leans by %.1f°, %s by %.1f°", file, last.Posture, last.Lean/degree, p.name, b.Lean/degree)
			}
			last = b
		}
	}
}

// The knee is bent by 25 to 35 degrees at the bottom of the turn when the
// saddle is set by the rule of 0.883 of the crotch height, which is 0.47 of
// stature (common practice, no source).
func TestSaddleByTheRule(t *testing.T) {
	b := load(t, "riel-bike.json")
	for _, stature := range []float64{1550, 1650, 1750, 1850, 1950} {
		b.Saddle.Height = 0.883 * 0.47 * stature
		b.Cranks.Length = 172.5 / 1750 * stature
		r := person(func(r *document.Rider) { r.Stature = stature })
		least := math.Inf(1)
		for r.Crank = -120; r.Crank <= -30; r.Crank++ {
			least = min(least, seated(t, posed(t, b), r).Left.KneeBend)
		}
		near(t, fmt.Sprintf("bend of the knee, %g mm", stature), least/degree, 30, 5)
	}
}

// dressed is the half-width of a rider's mass, g: of the body as it is stated, a
// quarter of the clothes, 15 % of the shoes, independent of each other.
func dressed(r *document.Rider) float64 {
	return math.Sqrt(r.HalfWidth*r.HalfWidth + r.Clothing*r.Clothing/16 + 0.0225*r.Shoes*r.Shoes)
}

// The rider's mass, as dressed, has one error for all segments.
func TestItems(t *testing.T) {
	r := person()
	b := seated(t, posed(t, load(t, "riel-bike.json")), r)
	items := b.Items(7, 9)
	for i, it := range items {
		if it.MassSource != 7 || it.PlaceSource != 9 || it.Place != b.Segments[i].Place || it.Mass != b.Segments[i].Mass {
			t.Errorf("item %d: %+v", i, it)
		}
	}
	u, plus := mass.Uncertainty(items, mass.Total(items, nil))
	near(t, "uncertainty of the total", u, mass.Rectangular(dressed(r)/1000), 1e-12)
	// A heavier body has its centre in the same place; only its shoes are then a
	// smaller share of it.
	near(t, "± of the total", plus, dressed(r)/1000, 1e-12)
	u, _ = mass.Uncertainty(items, mass.Centre(items, nil, mass.Z))
	near(t, "uncertainty of the height", u, mass.Rectangular(PlaceWithin), 2e-4)
	if n := testing.AllocsPerRun(10, func() { b.Items(7, 9) }); n > 1 {
		t.Errorf("%g allocations", n)
	}
}

// Clothes go with the body, shoes with the feet.
func TestClothesAndShoes(t *testing.T) {
	bike := posed(t, load(t, "riel-bike.json"))
	bare := seated(t, bike, person(func(r *document.Rider) { r.Clothing, r.Shoes = 0, 0 }))
	clad := seated(t, bike, person(func(r *document.Rider) { r.Clothing, r.Shoes = 7500, 0 }))
	shod := seated(t, bike, person(func(r *document.Rider) { r.Clothing, r.Shoes = 0, 1000 }))
	nearPoint(t, "centre with clothes", clad.centre(), bare.centre(), exact)
	for i, s := range bare.Segments {
		near(t, s.Name+" with clothes", clad.Segments[i].Mass, s.Mass*1.1, exact)
		want := s.Mass
		if s.Name == Foot {
			want += 0.5
		}
		near(t, s.Name+" with shoes", shod.Segments[i].Mass, want, exact)
	}
}
