package geometry

import (
	"sync"

	"steelyard/internal/mass"
)

// StationNames are the stations of a posed bike, rear to front and bottom to
// top. A pair has a point on either side; the drive side is the right (y < 0).
var StationNames = []string{
	"rear-axle", "rear-rotor", "rear-caliper", "cassette", "rear-derailleur",
	"swingarm", "chain", "pivot", "shock",
	"bottom-bracket", "chainring", "pedals", "crank-left", "crank-right", "front-derailleur", "stand",
	"frame", "down-tube", "top-tube", "seat-tube", "head-tube", "headset",
	"crown", "fork-upper", "fork-lower", "fork-legs", "front-axle", "front-rotor", "front-caliper",
	"stem", "bar", "grips", "brake-levers", "bar-centre",
	"saddle", "seatpost", "seat-clamp",
	"bottle-down-tube", "bottle-seat-tube", "bottle-under",
	"rear-rack", "rear-rack-deck", "rear-panniers", "rear-pannier-left", "rear-pannier-right",
	"front-rack", "front-rack-deck", "front-panniers", "front-pannier-left", "front-pannier-right",
	"handlebar-bag", "frame-bag", "top-tube-bag", "saddle-bag",
	"front-light", "rear-light", "rear-mudguard", "front-mudguard",
}

// Pair reports whether a station has a point on either side of the bike, whatever
// the bike's figures.
func Pair(station string) bool { return pairs()[station] }

var pairs = sync.OnceValue(func() map[string]bool {
	l := layout{Bike: &Bike{}, f: &frame{}}
	found := map[string]bool{}
	for _, s := range l.spots() {
		found[s.name] = s.n == 2
	}
	return found
})

// These are the places of parts on what carries them, m. All are common practice,
// no source: a part that sits elsewhere has an offset.
const (
	chainLine = 0.045 // chain and chainring right of the middle
	rackRoom  = 0.050 // a rack's deck over the tyre at full travel: mudguard, mud and rails
	rearBags  = 0.180 // middle of a rear pannier outside the middle of the bike
	frontBags = 0.150 // middle of a front pannier likewise
	bagDrop   = 0.170 // middle of a rear pannier below the deck that it hangs from
	heelRoom  = 0.040 // rear panniers behind the axle, out of the way of heels
	tubeHalf  = 0.020 // half a frame tube
	bottle    = 0.037 // half a bottle
	legOut    = 0.070 // middle of a fork's leg outside the middle of the bike
)

// spot is a station with its place: one point, or left and right.
type spot struct {
	name   string
	points [2]mass.Vec
	n      int
}

func one(name string, p mass.Vec) spot           { return spot{name, [2]mass.Vec{p}, 1} }
func pair(name string, left mass.Vec) spot       { return two(name, left, mirror(left)) }
func two(name string, left, right mass.Vec) spot { return spot{name, [2]mass.Vec{left, right}, 2} }

// spots says where every station is. To add one, add a line here, its name to
// StationNames and its label to data/words/en.json. The drive side is the right
// (y < 0), the brakes are on the left.
func (l *layout) spots() []spot {
	return []spot{
		one("rear-axle", l.RearAxle),                                         // on the axle, in the middle of the hub
		one("rear-rotor", l.RearAxle.Add(l.xyz(0, 0.060, 0))),                // on the hub, left of its flange
		one("rear-caliper", l.RearAxle.Add(l.xyz(0.050, 0.065, 0.060))),      // in the angle of the left stays
		one("cassette", l.RearAxle.Add(l.xyz(0, -0.035, 0))),                 // on the hub, right of its flange
		one("rear-derailleur", l.RearAxle.Add(l.xyz(0.015, -0.065, -0.060))), // hanging from the right dropout

		one("swingarm", l.swingarm()), // half way from main pivot to axle; on a rigid rear the middle of its stays
		one("chain", l.RearAxle.Lerp(l.BottomBracket, 0.5).Add(l.xyz(0, -chainLine, 0))), // half way between its two ends, on the chain line
		one("pivot", l.Pivot),   // the main pivot; on a rigid rear the bottom bracket
		one("shock", l.shock()), // half way between its eyes; without a shock the middle of the seat tube

		one("bottom-bracket", l.BottomBracket),                                            // the middle of the crank's axle
		one("chainring", l.BottomBracket.Add(l.xyz(0, -chainLine, 0))),                    // about the crank's axle, on the chain line
		two("pedals", l.PedalFront, l.PedalRear),                                          // the spindles' middles, cranks level: left forward, right back
		one("crank-left", l.crank(l.PedalFront)),                                          // half way along the left arm, inside its pedal face
		one("crank-right", l.crank(l.PedalRear)),                                          // half way along the right arm
		one("front-derailleur", l.onSeatTube(0.140, 0).Add(l.xyz(0, -0.030, 0))),          // on the seat tube over the largest ring, right
		one("stand", l.BottomBracket.Lerp(l.RearAxle, 0.35).Add(l.xyz(0, 0.050, -0.060))), // under the left chainstay, behind the bottom bracket

		one("frame", l.tubes()),                                   // the middle of all its tubes, longer ones counting for more
		one("down-tube", l.BottomBracket.Lerp(l.HeadBottom, 0.5)), // half way along
		one("top-tube", l.SeatTop.Lerp(l.HeadTop, 0.5)),           // half way along
		one("seat-tube", l.BottomBracket.Lerp(l.SeatTop, 0.5)),    // half way along
		one("head-tube", l.HeadTop.Lerp(l.HeadBottom, 0.5)),       // half way along
		one("headset", l.HeadTop.Lerp(l.Crown, 0.5)),              // between its two bearings

		one("crown", l.Crown),                                   // the crown race, on the steering axis
		one("fork-upper", l.forkUpper()),                        // steerer, crown and stanchions together: below the crown; a rigid fork's upper third
		one("fork-lower", l.leg()),                              // legs and arch together: over the axle
		pair("fork-legs", l.leg().Add(l.xyz(0, legOut, 0))),     // on the legs at the same height
		one("front-axle", l.FrontAxle),                          // on the axle, in the middle of the hub
		one("front-rotor", l.FrontAxle.Add(l.xyz(0, 0.050, 0))), // on the hub, left of its flange
		one("front-caliper", l.FrontAxle.Add(l.steer(-0.045, 0.080)).Add(l.xyz(0, 0.060, 0))), // behind the left leg, over the axle

		one("stem", l.StemBase.Lerp(l.BarClamp, 0.5)),    // half way along
		one("bar", l.BarClamp.Lerp(middle(l.Grip), 0.5)), // half way from its clamp to its grips, in the middle plane
		pair("grips", l.Grip),                            // their middles
		pair("brake-levers", l.lever()),                  // inside the grips, ahead of and below them
		one("bar-centre", l.BarClamp),                    // where the stem holds the bar

		one("saddle", l.SaddleTop.Add(l.xyz(0, 0, -0.035))),                        // half its height under its top
		one("seatpost", l.SeatTop.Lerp(l.SaddleTop.Add(l.xyz(0, 0, -0.050)), 0.5)), // half way from the seat tube to the saddle's rails
		one("seat-clamp", l.SeatTop),                                               // around the top of the seat tube

		one("bottle-down-tube", l.onDownTube(0.45, tubeHalf+bottle)),           // on top of the down tube, a little below its middle
		one("bottle-seat-tube", l.onSeatTube(0.5*l.seatTube, tubeHalf+bottle)), // ahead of the seat tube, half way up
		one("bottle-under", l.onDownTube(0.30, -tubeHalf-bottle)),              // under the down tube, near the bottom bracket

		one("rear-rack", l.deck.Lerp(l.deckFoot, 0.30)), // deck and legs together: nearer to the deck
		one("rear-rack-deck", l.deck),                   // over the rear wheel, fixed to the main frame, clear of the tyre at full travel
		pair("rear-panniers", l.rearBag(rearBags)),      // hanging from the deck's rails, back from the heels
		one("rear-pannier-left", l.rearBag(rearBags)),   // the left one of them
		one("rear-pannier-right", l.rearBag(-rearBags)), // the right one

		one("front-rack", l.FrontAxle.Add(l.xyz(0, 0, 0.6*(l.FrontRadius+rackRoom)))), // deck and legs together: nearer to the deck
		one("front-rack-deck", l.FrontAxle.Add(l.xyz(0, 0, l.FrontRadius+rackRoom))),  // over the front axle, clear of the tyre; it moves with the wheel
		pair("front-panniers", l.FrontAxle.Add(l.xyz(0, frontBags, 0))),               // low, abreast of the axle
		one("front-pannier-left", l.FrontAxle.Add(l.xyz(0, frontBags, 0))),            // the left one of them
		one("front-pannier-right", l.FrontAxle.Add(l.xyz(0, -frontBags, 0))),          // the right one

		one("handlebar-bag", l.BarClamp.Add(l.xyz(0.110, 0, -0.070))),                        // ahead of the bar and below it
		one("frame-bag", l.triangle()),                                                       // the middle of the main triangle
		one("top-tube-bag", l.HeadTop.Lerp(l.SeatTop, 0.2).Add(l.xyz(0, 0, tubeHalf+0.040))), // on the top tube, behind the stem
		one("saddle-bag", l.SaddleTop.Add(l.xyz(-0.200, 0, -0.080))),                         // behind the seatpost, under the saddle's tail

		one("front-light", l.Crown.Add(l.steer(0.060, 0))),              // ahead of the crown
		one("rear-light", l.deck.Add(l.xyz(-0.190, 0, 0))),              // at the deck's rear end
		one("rear-mudguard", l.RearAxle.Add(arc(l.RearRadius, 180))),    // the middle of half a circle round the tyre, up and back
		one("front-mudguard", l.FrontAxle.Add(arc(l.FrontRadius, 140))), // the same of a shorter one
	}
}
