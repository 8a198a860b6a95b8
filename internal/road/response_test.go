package road_test

import (
	"math"
	"testing"

	"steelyard/internal/road"
)

// A spectrum is the square of the response times that of the road's height, Gd(n0)
// (n/n0)⁻² over n, and so 1/v of it over f = n v (ISO 8608); below 0.01 cycle/m
// there is no road.
func TestSpectrumIsResponseTimesRoad(t *testing.T) {
	const speed = 4.0
	frequencies := []float64{0.039, 0.041, 0.5, 3, 12, 40, 150}
	for name, b := range every() {
		m := model(t, b)
		for k := range road.LiftFront {
			response, spectrum := m.Response(k, speed, frequencies), m.Spectrum(k, speed, gravel(), frequencies)
			for i := range response {
				n := frequencies[i] / speed
				want := response[i] * response[i] * gravel().Roughness.Value * math.Pow(n/0.1, -2) / speed
				if n < 0.01 {
					want = 0
				}
				near(t, name+" "+k.String(), spectrum[i], want, 1e-12)
			}
		}
	}
	if m := model(t, rigid(rough(2), road.Rear)); m.Response(road.TravelRear, speed, frequencies) != nil || m.Response(road.LiftRear, speed, frequencies) != nil {
		t.Error("a figure that is not there has a response")
	}
}

// Over waves that are long a bike goes up and down with the road: w² of its
// height, as it is under a point between the wheels.
func TestLongWaves(t *testing.T) {
	b := rough(2.1)
	b.Rack.Place.X = (b.FrontAxle.X + b.RearAxle.X) / 2
	m := model(t, b)
	const f, speed = 0.02, 3.0
	w := 2 * math.Pi * f
	near(t, "rack", m.Response(road.RackUp, speed, []float64{f})[0], w*w*math.Cos(w*b.FrontAxle.X/speed/2), 1e-3)
}

// The load of a torus on a plane: pressure times the ellipse that it cuts off.
func TestTyreRates(t *testing.T) {
	const p, radius, width, d = 2.2 * road.Bar, 0.36, 0.05, 1e-3
	k, err := road.Membrane(road.Front, p, radius, width)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "membrane", k*d, p*math.Pi*math.Sqrt(2*radius*d)*math.Sqrt(2*width/2*d), 1e-12)
	k, u, err := road.Drop(road.Front, 400, 4, 0.004, 0.00016)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "rate", k, 100e3, 1e-12)
	near(t, "its doubt", u, 100e3*math.Hypot(0.01, 0.04), 1e-12)
}

// Each motion is named once, and hops are those in which that wheel goes.
func TestMotionsAreNamedOnce(t *testing.T) {
	for name, b := range every() {
		seen := map[road.Motion]bool{}
		for _, o := range model(t, b).Modes() {
			if seen[o.Motion] {
				t.Errorf("%s: two are called %s", name, o.Motion)
			}
			seen[o.Motion] = true
			size := func(z complex128) float64 { return math.Hypot(real(z), imag(z)) }
			if o.Motion == road.HopFront && size(o.Shape.AxleFront) < 0.99 || o.Motion == road.HopRear && size(o.Shape.AxleRear) < 0.99 {
				t.Errorf("%s: %s goes by %v", name, o.Motion, o.Shape)
			}
		}
		if !seen[road.Pitching] || !seen[road.Bounce] || seen[road.Swaying] != (b.Standing != nil) ||
			seen[road.HopFront] != (b.Ends[road.Front].Spring != nil) || seen[road.HopRear] != (b.Ends[road.Rear].Spring != nil) {
			t.Errorf("%s: %v", name, seen)
		}
	}
}
