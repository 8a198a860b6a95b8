package rider_test

import (
	"fmt"

	"steelyard/internal/document"
	"steelyard/internal/geometry"
	"steelyard/internal/mass"
	"steelyard/internal/rider"
)

func ExampleSeat() {
	bike := &geometry.Bike{
		SeatAngle:     1.28,
		BottomBracket: mass.Vec{X: 0.43, Z: 0.28},
		SaddleTop:     mass.Vec{X: 0.22, Z: 0.97},
		Grip:          mass.Vec{X: 0.85, Y: 0.27, Z: 1.02},
		PedalFront:    mass.Vec{X: 0.43 + 0.17, Y: 0.13, Z: 0.28},
	}
	r := &document.Rider{
		Name: "A tourer", Stature: 1740, Mass: 70000, HalfWidth: 1000, Clothing: 2000, Shoes: 1000,
		Table: "female", Posture: "leaned",
	}
	body, _ := rider.Seat(bike, r)
	whole := mass.Sum(body.Items(0, 1), nil)
	fmt.Printf("%.0f kg, %.2f m up\n", whole.M, whole.Centre().Z)

	r.Stature = 1500
	_, problems := rider.Seat(bike, r)
	fmt.Println(problems[0].Field)
	fmt.Println(problems[0].Message.String())
	// Output:
	// 73 kg, 1.12 m up
	// saddle.height_mm
	// Rider “A tourer”: The legs are 87 mm too short for the pedals at the bottom of their turn, though the toes point. The saddle (“Height along seat tube”) must be at least 87 mm lower.
}
