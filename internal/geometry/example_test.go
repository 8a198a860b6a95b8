package geometry_test

import (
	"fmt"
	"math"

	"steelyard/internal/document"
	"steelyard/internal/geometry"
	"steelyard/internal/mass"
)

// A full-suspension travel bike with 29 in wheels, its sag stated.
func ExamplePose() {
	bike, problems := geometry.Pose(&document.Build{
		ID:      "travel",
		Frame:   document.Frame{Stack: 633, Reach: 465, HeadTube: 115, HeadAngle: 65.5, SeatTube: 440, SeatAngle: 76, Chainstay: 445, BBDrop: 35},
		Fork:    document.Fork{Length: 556, Offset: 44, Travel: 150, Sag: 35},
		Rear:    document.Rear{Travel: 140, Sag: 42, PivotFwd: 20, PivotUp: 90, ShockFrom: document.Point2{218, 300}, ShockTo: document.Point2{10, 270}},
		Wheels:  document.Wheels{Front: document.Wheel{BeadSeat: 622, Tyre: 61}, Rear: document.Wheel{BeadSeat: 622, Tyre: 61}},
		Cockpit: document.Cockpit{Spacers: 20, Stem: 45, BarWidth: 780, BarRise: 25, BarBack: 30},
		Saddle:  document.Saddle{Height: 740, Setback: 10},
		Cranks:  document.Cranks{Length: 170, Width: 168},
	})
	fmt.Println("problems:", len(problems))
	fmt.Printf("wheelbase %.0f mm, trail %.0f mm\n", bike.Wheelbase*1000, bike.Trail*1000)
	fmt.Printf("head angle %.1f°, bottom bracket %.0f mm up\n", bike.HeadAngle*180/math.Pi, bike.BBHeight*1000)
	places, _ := bike.Place("rear-panniers", mass.Vec{})
	for _, p := range places {
		fmt.Printf("pannier %.0f mm behind the axle, %+.0f mm from the middle, %.0f mm up\n", -p.X*1000, p.Y*1000, p.Z*1000)
	}
	// Output:
	// problems: 0
	// wheelbase 1218 mm, trail 125 mm
	// head angle 65.0°, bottom bracket 299 mm up
	// pannier 40 mm behind the axle, +180 mm from the middle, 722 mm up
	// pannier 40 mm behind the axle, -180 mm from the middle, 722 mm up
}
