package road_test

import (
	"math"
	"testing"

	"steelyard/internal/mass"
	"steelyard/internal/road"
)

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within*math.Max(1e-300, math.Abs(want))) {
		t.Errorf("%s is %.15g, want %.15g within %g of it", what, got, want, within)
	}
}

func known(v, u float64, source string) road.Known { return road.Known{Value: v, U: u, Source: source} }

// quarter is a wheel under a part of a bike: what [decoupled] has at either end.
type quarter struct{ body, wheel, spring, damper, tyre float64 }

// decoupled is a bike whose ends know nothing of each other: the square of its
// radius of gyration is the product of the axles' distances from its centre, and
// all lies on one level, so that no end moves the other. Its tyres touch the road
// in a point.
func decoupled(front, rear quarter) *road.Bike {
	const wheelbase, level = 1.1, 0.35
	m := front.body + rear.body
	x := wheelbase * front.body / m
	b := &road.Bike{
		RearAxle: mass.Vec{Z: level}, FrontAxle: mass.Vec{X: wheelbase, Z: level}, Pivot: mass.Vec{X: 0.45, Z: level},
		HeadAngle: math.Pi / 2, PointContact: true,
		Saddle: road.Point{There: true, Place: mass.Vec{X: 0, Z: 0.9}},
		Rack:   road.Point{There: true, Place: mass.Vec{X: 0, Z: 0.6}},
		BarBag: road.Point{There: true, Place: mass.Vec{X: wheelbase, Z: 0.8}},
	}
	b.Items = []mass.Item{
		{Mass: m, Place: mass.Vec{X: x, Z: level}, Spread: mass.Sym{XX: 0.3 * x * (wheelbase - x), ZZ: 0.7 * x * (wheelbase - x)}, MassU: 0.4, MassSource: 0, PlaceU: mass.Alike(0.01)},
		{Mass: front.wheel, Place: b.FrontAxle, Spread: mass.Ring(0.3), MassU: 0.1, MassSource: 1, PlaceSource: 1},
		{Mass: rear.wheel, Place: b.RearAxle, Spread: mass.Ring(0.3), MassU: 0.1, MassSource: 2, PlaceSource: 2},
	}
	b.Shares[road.Frame] = mass.Share{1, 0, 0}
	b.Shares[road.FrontWheel] = mass.Share{0, 1, 0}
	b.Shares[road.RearWheel] = mass.Share{0, 0, 1}
	for i, q := range []quarter{front, rear} {
		b.Ends[i] = road.End{
			Spring: &road.Spring{Travel: 0.2, Rate: known(q.spring, 0.1*q.spring, "spring"), Damper: known(q.damper, 0.2*q.damper, "damper")},
			Tyre:   road.Tyre{Rate: known(q.tyre, 0.1*q.tyre, "tyre"), Radius: level, Width: 0.05},
		}
	}
	return b
}

func model(t testing.TB, b *road.Bike) *road.Model {
	t.Helper()
	m, err := road.New(b)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func at(t testing.TB, m *road.Model, v float64, r road.Road) *road.Ride {
	t.Helper()
	ride, err := m.At(v, r)
	if err != nil {
		t.Fatal(err)
	}
	return ride
}

// white is a road on which, at 1 m/s, E[w' w'] = q δ.
func white(q float64) road.Road {
	return road.Road{Roughness: road.Known{Value: q / (2 * math.Pi * math.Pi * 0.01)}}
}

// The closed forms of two masses on a white road, from their Lyapunov equation;
// spectral formula: Crandall and Mark, Random Vibration in Mechanical Systems
// (1963). The published check is m 40, u 4, k 9000, c 350, kt 90000, q 0.001.
func TestTwoMassesOnAWhiteRoad(t *testing.T) {
	front, rear := quarter{40, 4, 9000, 350, 90000}, quarter{52, 3.1, 11000, 270, 120000}
	m := model(t, decoupled(front, rear))
	const q = 0.001
	r := at(t, m, 1, white(q))
	for i, w := range []quarter{front, rear} {
		mb, u, k, c, kt := w.body, w.wheel, w.spring, w.damper, w.tyre
		all := mb + u
		travel := math.Sqrt(q * all / (2 * c))
		accel := math.Sqrt(q * (c*c*kt + k*k*all) / (2 * c * mb * mb))
		load := kt * math.Sqrt(q*(c*c*kt*all*all+k*k*all*all*all-2*k*kt*mb*u*all+kt*kt*mb*mb*u)/(2*c*kt*kt*mb*mb))
		side := road.Side(i)
		near(t, "travel "+side.String(), r.Figures[road.TravelFront+road.Kind(i)].Value, travel, 1e-9)
		near(t, "load "+side.String(), r.Figures[road.LoadFront+road.Kind(i)].Value*m.Static(side), load, 1e-9)
		near(t, "static load "+side.String(), m.Static(side), all*road.Gravity, 1e-12)
		over := road.RackUp // over the rear axle
		if side == road.Front {
			over = road.BarBagUp
			near(t, "published travel", travel, 7.928249672e-3, 1e-9)
			near(t, "published acceleration", accel, 3.609140183, 1e-9)
			near(t, "published load", load, 247.630744687, 1e-11)
		}
		near(t, "acceleration "+side.String(), r.Figures[over].Value, accel, 1e-9)
	}
}
