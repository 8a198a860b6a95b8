package rooms

import (
	"steelyard/internal/assembly"
	"steelyard/internal/mass"
	"steelyard/internal/report"
	"steelyard/internal/rider"
)

// RoadSketch is a bike in its pose from its right side, on which what moves is
// drawn: x forward and z up from the ground.
type RoadSketch struct {
	Wheels [2][3]float64 `json:"wheels_mm"` // rear and front: x and z of the axle, and the radius
	Lines  []RoadLine    `json:"lines"`
	Rider  *[2]float64   `json:"rider_mm,omitempty"` // the middle of a rider's trunk
}

// RoadLine is a line through points.
type RoadLine struct {
	Of     string       `json:"of"` // frame, swingarm, fork or rider
	Points [][2]float64 `json:"points_mm"`
}

// sketchOf draws the bike of a side.
func sketchOf(a *assembly.Assembly) *RoadSketch {
	g := a.Bike
	mm := func(v float64) float64 { return report.Decimal(1e3*v, 0) }
	at := func(v mass.Vec) [2]float64 { return [2]float64{mm(v.X), mm(v.Z)} }
	s := &RoadSketch{Wheels: [2][3]float64{{mm(g.RearAxle.X), mm(g.RearAxle.Z), mm(g.RearRadius)}, {mm(g.FrontAxle.X), mm(g.FrontAxle.Z), mm(g.FrontRadius)}}}
	line := func(of string, through ...mass.Vec) {
		l := RoadLine{of, make([][2]float64, len(through))}
		for i, v := range through {
			l.Points[i] = at(v)
		}
		s.Lines = append(s.Lines, l)
	}
	line("frame", g.SaddleTop, g.SeatTop, g.BottomBracket, g.HeadBottom, g.HeadTop, g.SeatTop)
	line("frame", g.HeadTop, g.StemBase, g.BarClamp, mass.Vec{X: g.Grip.X, Z: g.Grip.Z})
	if g.RearSprung {
		line("swingarm", g.Pivot, g.RearAxle, g.ShockSwing)
		line("frame", g.ShockSwing, g.ShockFrame)
	} else {
		line("frame", g.BottomBracket, g.RearAxle, g.SeatTop)
	}
	line("fork", g.HeadBottom, g.ForkFoot, g.FrontAxle)
	if levelOf(a) < assembly.Ridden {
		return s
	}
	b := a.Cargo.Body
	line("rider", b.Vertex, b.Midgonion, b.MidShoulder, b.MidHip)
	for _, side := range [...]*rider.Side{&b.Left, &b.Right} {
		line("rider", side.Shoulder, side.Elbow, side.Wrist, side.Hand)
		line("rider", side.Hip, side.Knee, side.Ankle, side.Ball)
	}
	middle := at(b.MidHip.Lerp(b.MidShoulder, 0.5))
	s.Rider = &middle
	return s
}
