package geometry

import (
	"steelyard/internal/mass"
)

// Bike is a posed bike: every point that a picture or a part needs.
type Bike struct {
	Wheelbase   float64 // between the contact points, m
	FrontCentre float64 // bottom bracket to front axle, m
	RearCentre  float64 // bottom bracket to rear axle, m: the chainstay length, and how sag changes it
	Trail       float64 // front contact behind the steering axis on the ground, m
	HeadAngle   float64 // as posed, rad
	SeatAngle   float64 // as posed, rad
	BBHeight    float64 // bottom bracket over the ground, m
	Pitch       float64 // how far the frame is turned from its printed figures by sag, and by figures that leave a tyre off the ground; nose up positive, rad

	RearRadius, FrontRadius float64 // tyre radius, unloaded, m
	RearRim, FrontRim       float64 // bead seat radius, m

	RearAxle, FrontAxle       mass.Vec
	RearContact, FrontContact mass.Vec
	BottomBracket             mass.Vec
	HeadTop, HeadBottom       mass.Vec // ends of the head tube, on the steering axis
	Crown                     mass.Vec // fork crown race
	ForkFoot                  mass.Vec // on the steering axis abreast of the front axle
	SeatTop                   mass.Vec // top of the seat tube
	SaddleTop                 mass.Vec // middle of the saddle's top
	StemBase, BarClamp        mass.Vec
	Grip                      mass.Vec // left grip's middle; the right one mirrors it
	Pivot                     mass.Vec // main or effective pivot; the bottom bracket on a rigid rear
	ShockFrame, ShockSwing    mass.Vec // both the zero Vec on a rigid rear
	PedalFront, PedalRear     mass.Vec // pedal spindles' middles with the cranks level: left forward, right back
	RearSprung, FrontSprung   bool
	RearTravel, FrontTravel   float64 // 0 on a rigid end, m: vertical at the rear axle, along the steering axis in front
	RearSag, FrontSag         float64 // of that travel, in the pose, m

	Stations map[string]Station
}

// Station is a named place where things are fixed: one point, or a pair of
// points left (y > 0) and right.
type Station struct {
	Points []mass.Vec
}
