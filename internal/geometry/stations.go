package geometry

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
