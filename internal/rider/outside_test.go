package rider

import (
	"testing"

	"steelyard/internal/document"
	"steelyard/internal/geometry"
	"steelyard/internal/mass"
)

// weighed puts the parts of a build at their stations, as points: enough for a
// bike's share of a centre of mass.
func weighed(t *testing.T, b *document.Build, bike *geometry.Bike) []mass.Item {
	t.Helper()
	var items []mass.Item
	for _, p := range b.Parts {
		at, ok := bike.Place(p.Station, mass.Vec{X: p.Offset[0], Y: p.Offset[1], Z: p.Offset[2]}.Scale(mm))
		if !ok || len(at) != 1 {
			t.Fatalf("no single place %q", p.Station)
		}
		items = append(items, mass.Item{Mass: p.Mass / 1000 * float64(p.Quantity), Place: at[0]})
	}
	return items
}

// limit is the braking deceleration over g at which the rear wheel lifts: the
// centre's distance behind the front contact over its height.
func limit(bike *geometry.Bike, items []mass.Item) float64 {
	c := mass.Sum(items, nil).Centre()
	return (bike.FrontContact.X - c.X) / c.Z
}

// J. S. Riel, Maximal Braking on a Standard Bicycle (2005), measured a limit of
// 0.63 g seated and 0.83 g hanging off the back of the saddle, on a bike with a
// wheelbase of 100 cm and wheels of 34 cm radius. Of the rider and of the rest of
// the bike nothing is said.
//
// A rider of usual size in this model comes to 0.56 g, a ninth lower; Whitt and
// Wilson, Bicycling Science, give 0.56 g for a typical bike and rider (memory).
// What is not known covers the rest: by stature alone, on a saddle to match, the
// limit runs from 0.52 g at 1.90 m to 0.59 g at 1.60 m, nearly the same in all
// seated postures, since a trunk that leans goes forward as it goes down. It
// rises by 0.006 g with each centimetre that somebody sits further back: a small
// rider on the saddle's rear end, six centimetres back and braced as for
// braking, is at 0.63 g.
func TestBrakingLimitNearRiel(t *testing.T) {
	b := load(t, "riel-bike.json")
	bike := posed(t, b)
	near(t, "wheelbase", bike.Wheelbase, 1.00, 0.002)
	near(t, "wheel radius", bike.FrontRadius, 0.34, 0.002)
	bare := weighed(t, b, bike)
	near(t, "bike's mass", mass.Sum(bare, nil).M, 9.05, 1e-9)
	with := func(bike *geometry.Bike, r *document.Rider) float64 {
		return limit(bike, append(seated(t, bike, r).Items(0, 0), bare...))
	}
	near(t, "limit of a usual rider, against Riel", with(bike, person()), 0.63, 0.08)
	near(t, "limit of a usual rider, against Whitt and Wilson", with(bike, person()), 0.56, 0.02)
	fitted := func(stature, back float64, table, posture string) float64 {
		b := *b
		b.Saddle.Height = 0.883 * 0.47 * stature
		b.Saddle.Setback += back
		return with(posed(t, &b), person(func(r *document.Rider) { r.Table, r.Stature, r.Posture = table, stature, posture }))
	}
	for _, table := range document.Tables {
		for _, posture := range document.Postures[:3] {
			near(t, "limit at 1.60 m", fitted(1600, 0, table, posture), 0.59, 0.01)
			near(t, "limit at 1.90 m", fitted(1900, 0, table, posture), 0.52, 0.01)
		}
	}
	near(t, "limit six centimetres further back", fitted(1750, 60, "male", "leaned")-fitted(1750, 0, "male", "leaned"), 0.006*6, 0.005)
	near(t, "limit of a small rider on the saddle's rear end", fitted(1600, 60, "male", "leaned"), 0.63, 0.01)
}

// winter is the second body table: D. A. Winter, Biomechanics and Motor Control
// of Human Movement, after Dempster: mass as a fraction of the body's, centre
// from the proximal end. The hand's end is the knuckle, the foot runs from the
// ankle to the ball, and head and neck have their centre at the ear: half way up
// the head.
var winter = map[string]struct{ mass, centre float64 }{
	Head: {0.081, 0}, Trunk: {0.497, 0.500}, UpperArm: {0.028, 0.436}, Forearm: {0.016, 0.430}, Hand: {0.006, 0.506},
	Thigh: {0.100, 0.433}, Shank: {0.0465, 0.433}, Foot: {0.0145, 0.500},
}

func (b *Body) winterCentre() mass.Vec {
	var m float64
	var s mass.Vec
	for _, g := range b.Segments {
		w := winter[g.Name]
		p := g.From.Lerp(g.To, w.centre)
		switch side := map[string]*Side{Left: &b.Left, Right: &b.Right}[g.Side]; g.Name {
		case Head:
			p = middle(b.Vertex, b.Midgonion)
		case Foot:
			p = middle(side.Ankle, side.Ball)
		}
		m += w.mass
		s = s.Add(p.Scale(w.mass))
	}
	return s.Scale(1 / m)
}

// A second source for the whole: with Winter's fractions on the same joints the
// centre of a body on a bike is within 2 cm, nearly all of it higher. The thighs
// of the cadavers behind his table are nearly a third lighter and the trunk a seventh
// heavier than those of the living young people of de Leva's, but his trunk has
// its centre lower.
func TestCentreAgainstWinter(t *testing.T) {
	for _, table := range document.Tables {
		for _, file := range []string{"../geometry/touring-bike.json", "../geometry/travel-bike.json", "riel-bike.json"} {
			for _, posture := range document.Postures {
				b := seated(t, posed(t, load(t, file)), person(func(r *document.Rider) { r.Table, r.Posture, r.Clothing, r.Shoes = table, posture, 0, 0 }))
				nearPoint(t, "centre", b.centre(), b.winterCentre(), 0.02)
			}
		}
	}
}
