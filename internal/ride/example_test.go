package ride_test

import (
	"fmt"

	"steelyard/internal/mass"
	"steelyard/internal/ride"
)

// A rider with a bike, whose centre of mass is 0.42 m ahead of the rear contact
// and 1.05 m up, on a wheelbase of 1.08 m.
func Example() {
	items := []mass.Item{{Mass: 98, Place: mass.Vec{X: 0.42, Z: 1.05}, PlaceU: mass.Alike(0.01)}}
	s := ride.Between(items, 0, 1.08)
	show := func(what string, f mass.Figure) {
		_, plus := mass.Uncertainty(items, f)
		fmt.Printf("%s %.3f ± %.3f\n", what, f.Value, plus)
	}
	show("brakes at", s.Braking(items, 0, 0.7).First)
	show("down 15 %", s.Braking(items, -0.15, 0.7).First)
	show("climbs", s.Climbing(items, 0.6).First)
	show("on wet earth brakes at", s.Braking(items, 0, 0.3).First)
	// Output:
	// brakes at 0.629 ± 0.022
	// down 15 % 0.473 ± 0.022
	// climbs 0.400 ± 0.021
	// on wet earth brakes at 0.300 ± 0.000
}
