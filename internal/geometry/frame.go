package geometry

import (
	"math"

	"steelyard/internal/document"
	"steelyard/internal/mass"
)

const (
	// LowerBearing is how far the lower headset bearing keeps the fork's crown
	// race below the head tube, m. Makers do not print it; it is about 0 for a
	// bearing inside the head tube and 12 mm for one in a cup below it (common
	// practice, no source). The middle of the two puts the front axle at most
	// 6 mm wrong along the steering axis, a quarter of a degree of pitch.
	LowerBearing = 0.006
	// stemHalf is half the height of a stem's clamp on the steerer, m (common
	// practice, no source).
	stemHalf = 0.020
	// gripHalf is how far the middle of a grip is from the end of the bar, m
	// (common practice, no source).
	gripHalf = 0.065
	// pedalOut is how far the middle of a pedal is outside the crank's mounting
	// face, m (common practice, no source).
	pedalOut = 0.055
)

// metres turns mm into m, radians degrees into rad.
func metres(mm float64) float64   { return mm / 1000 }
func radians(deg float64) float64 { return deg * (math.Pi / 180) }

// frame is a bike in the frame's own axes, as its maker's figures describe it:
// the bottom bracket is the origin, x forward, z up, suspension at full length.
type frame struct {
	down, ahead mass.Vec // unit vectors along the steering axis towards the ground, and square to it, forward

	rearAxle, frontAxle         mass.Vec
	headTop, headBottom         mass.Vec
	crown, forkFoot             mass.Vec
	seatTop, saddleTop          mass.Vec
	stemBase, barClamp, grip    mass.Vec
	pivot                       mass.Vec
	shockFrame, shockSwing      mass.Vec
	rearRadius, frontRadius     float64
	frontTravel, rearTravel     float64
	frontSag, rearSag           float64
	pedalForward, pedalSideways float64
	shock                       bool // whether the shock has a place
}

// unloaded lays the figures out in the frame's own axes.
func unloaded(b *document.Build) frame {
	var f frame
	f.rearRadius, f.frontRadius = tyreRadius(b.Wheels.Rear), tyreRadius(b.Wheels.Front)
	f.frontTravel, f.frontSag = metres(b.Fork.Travel), metres(b.Fork.Sag)
	f.rearTravel, f.rearSag = metres(b.Rear.Travel), metres(b.Rear.Sag)
	f.pedalForward = metres(b.Cranks.Length)
	f.pedalSideways = metres(b.Cranks.Width)/2 + pedalOut

	// Chainstay length and bottom-bracket drop are a right triangle's long
	// side and its height.
	cs, drop := metres(b.Frame.Chainstay), metres(b.Frame.BBDrop)
	f.rearAxle = mass.Vec{X: -math.Sqrt(cs*cs - drop*drop), Z: drop}

	// The fork hangs from the top of the head tube along the steering axis.
	s, c := math.Sincos(radians(b.Frame.HeadAngle))
	f.down, f.ahead = mass.Vec{X: c, Z: -s}, mass.Vec{X: s, Z: c}
	f.headTop = mass.Vec{X: metres(b.Frame.Reach), Z: metres(b.Frame.Stack)}
	f.headBottom = f.headTop.Add(f.down.Scale(metres(b.Frame.HeadTube)))
	f.crown = f.headBottom.Add(f.down.Scale(LowerBearing))
	f.forkFoot = f.crown.Add(f.down.Scale(metres(b.Fork.Length)))
	f.frontAxle = f.forkFoot.Add(f.ahead.Scale(metres(b.Fork.Offset)))

	s, c = math.Sincos(radians(b.Frame.SeatAngle))
	alongSeat := mass.Vec{X: -c, Z: s}
	f.seatTop = alongSeat.Scale(metres(b.Frame.SeatTube))
	f.saddleTop = alongSeat.Scale(metres(b.Saddle.Height)).Sub(mass.Vec{X: metres(b.Saddle.Setback)})

	// The stem leaves the steerer square to it and turned up by its angle; the
	// grips are above and behind the clamp, level as the frame is level.
	s, c = math.Sincos(radians(b.Cockpit.StemAngle))
	alongStem := f.ahead.Scale(c).Sub(f.down.Scale(s))
	f.stemBase = f.headTop.Sub(f.down.Scale(metres(b.Cockpit.Spacers) + stemHalf))
	f.barClamp = f.stemBase.Add(alongStem.Scale(metres(b.Cockpit.Stem)))
	f.grip = f.barClamp.Add(mass.Vec{
		X: -metres(b.Cockpit.BarBack),
		Y: max(0, metres(b.Cockpit.BarWidth)/2-gripHalf),
		Z: metres(b.Cockpit.BarRise),
	})

	if f.rearTravel > 0 {
		f.pivot = mass.Vec{X: metres(b.Rear.PivotFwd), Z: metres(b.Rear.PivotUp)}
		f.shockFrame, f.shockSwing = at(b.Rear.ShockFrom), at(b.Rear.ShockTo)
		f.shock = f.shockFrame != f.shockSwing
	}
	return f
}

// at turns a point of the document, forward and up in mm, into one in m.
func at(p document.Point2) mass.Vec { return mass.Vec{X: metres(p[0]), Z: metres(p[1])} }
