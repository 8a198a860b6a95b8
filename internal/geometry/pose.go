package geometry

import (
	"math"

	"steelyard/internal/document"
	"steelyard/internal/mass"
)

// Pose turns the figures of a build into the posed bike: both tyres on level
// ground, steering straight, suspension at its stated sag.
//
// The figures are taken as makers print them, for the bike on level ground
// with its suspension at full length, and lay the bike out in the frame's own
// axes. Then the suspension is let down by its sag, and the whole is turned
// and shifted until both tyres touch the ground and the origin is below the
// rear axle. Tyres are taken as round and unloaded.
//
// Every problem names its field as it is written in the document. A warning
// says that figures are odd and were taken as they are. With an error there is
// no bike: the result is nil exactly when a problem has document.SeverityError.
func Pose(b *document.Build) (*Bike, []document.Problem) {
	l := list{build: b.ID}
	l.figures(b)
	if !l.failed {
		l.pairs(b)
	}
	if l.failed {
		return nil, l.problems
	}
	f := unloaded(b)
	l.fit(b, &f)
	if l.failed {
		return nil, l.problems
	}
	f.sag()
	l.sagged(b, &f)
	if l.failed {
		return nil, l.problems
	}
	g := f.footing()
	bike := stand(b, &f, g)
	l.standing(b, bike)
	if l.failed {
		return nil, l.problems
	}
	bike.Stations = place(bike, &f, g)
	return bike, l.problems
}

// level is the angle in rad, nose up positive, by which a bike must be turned
// for both tyres to touch level ground. Between axles a distance d apart the
// front one must end up higher by the difference of the radii:
// sin(b + turn) = (front - rear)/d, where b is the slope from axle to axle.
// The wheels must not overlap, or d may be less than that difference.
func (f *frame) level() float64 {
	d := f.frontAxle.Sub(f.rearAxle)
	return math.Asin((f.frontRadius-f.rearRadius)/math.Hypot(d.X, d.Z)) - angleOver(d.X, d.Z)
}

// angleOver is the slope in rad of a way that goes x level and z up.
func angleOver(x, z float64) float64 { return math.Atan2(z, x) }

// footing carries points from the frame's own axes to the ground's.
type footing struct {
	turn  float64
	shift mass.Vec
}

func (g footing) of(p mass.Vec) mass.Vec { return p.PitchBy(g.turn).Add(g.shift) }

// footing finds how the frame stands on the ground.
func (f *frame) footing() footing {
	turn := f.level()
	return footing{turn, mass.Vec{Z: f.rearRadius}.Sub(f.rearAxle.PitchBy(turn))}
}

// stand puts the frame on level ground.
func stand(b *document.Build, f *frame, g footing) *Bike {
	bike := &Bike{
		Pitch:      g.turn,
		HeadAngle:  radians(b.Frame.HeadAngle) - g.turn,
		SeatAngle:  radians(b.Frame.SeatAngle) - g.turn,
		RearRadius: f.rearRadius, FrontRadius: f.frontRadius,
		RearRim: rimRadius(b.Wheels.Rear), FrontRim: rimRadius(b.Wheels.Front),

		RearAxle: g.of(f.rearAxle), FrontAxle: g.of(f.frontAxle),
		BottomBracket: g.of(mass.Vec{}),
		HeadTop:       g.of(f.headTop), HeadBottom: g.of(f.headBottom),
		Crown: g.of(f.crown), ForkFoot: g.of(f.forkFoot),
		SeatTop: g.of(f.seatTop), SaddleTop: g.of(f.saddleTop),
		StemBase: g.of(f.stemBase), BarClamp: g.of(f.barClamp), Grip: g.of(f.grip),
		Pivot: g.of(f.pivot),

		RearSprung: f.rearTravel > 0, FrontSprung: f.frontTravel > 0,
		RearTravel: f.rearTravel, FrontTravel: f.frontTravel,
		RearSag: f.rearSag, FrontSag: f.frontSag,
	}
	if f.shock {
		bike.ShockFrame, bike.ShockSwing = g.of(f.shockFrame), g.of(f.shockSwing)
	}
	// Rounding must not leave a tyre a hair above or below the ground.
	bike.RearContact = mass.Vec{X: bike.RearAxle.X}
	bike.FrontContact = mass.Vec{X: bike.FrontAxle.X}
	bike.PedalFront = bike.BottomBracket.Add(mass.Vec{X: f.pedalForward, Y: f.pedalSideways})
	bike.PedalRear = bike.BottomBracket.Sub(mass.Vec{X: f.pedalForward, Y: f.pedalSideways})

	bike.Wheelbase = bike.FrontContact.X - bike.RearContact.X
	bike.FrontCentre = bike.FrontAxle.Sub(bike.BottomBracket).Norm()
	bike.RearCentre = bike.RearAxle.Sub(bike.BottomBracket).Norm()
	bike.BBHeight = bike.BottomBracket.Z
	bike.Trail = Trail(bike.FrontRadius, bike.HeadAngle, metres(b.Fork.Offset))
	return bike
}

// Trail is how far the front contact is behind the point where the steering
// axis meets the ground, m: (R cos h - o)/sin h for a wheel of radius R, a
// head angle h in rad from the horizontal and a fork offset o, both in m.
// It is negative when the contact is ahead.
func Trail(radius, headAngle, offset float64) float64 {
	s, c := math.Sincos(headAngle)
	return (radius*c - offset) / s
}
