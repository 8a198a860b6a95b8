// Package specimen has bikes to try the picture on: posed, laden and weighed,
// for the tests of the packages that draw. Nothing that a user sees imports it.
// The weights are of the size that such parts have, and are nobody's.
package specimen

import (
	"slices"
	"sync"

	"github.com/goccy/go-json"

	"steelyard/data"
	"steelyard/internal/document"
	"steelyard/internal/geometry"
	"steelyard/internal/mass"
	"steelyard/internal/rider"
	"steelyard/internal/scene"
)

var english = sync.OnceValue(func() map[string]string {
	words := map[string]string{}
	text, err := data.Files.ReadFile("words/en.json")
	if err == nil {
		err = json.Unmarshal(text, &words)
	}
	if err != nil {
		panic(err)
	}
	return words
})

// Words are the English words of a picture, for a scene.View.
func Words(key string) string {
	if w, ok := english()[key]; ok {
		return w
	}
	return key
}

// part is a line of a specimen's list.
type part struct {
	id, name string
	grams    float64 // of all pieces
	station  string
	unsprung float64
	carrier  document.Carrier
	role     scene.Role
	offset   mass.Vec // m
	size     mass.Vec // m
	fill     float64
	ring     float64 // m
	kind     string
	shape    document.Shape
}

func disc(radius float64) document.Shape {
	return document.Shape{Form: document.FormDisc, Size: document.Vec3{radius, 4}}
}

var travelFrame = document.Build{
	ID: "travel", Name: "Travel bike",
	Frame:   document.Frame{Stack: 633, Reach: 465, HeadTube: 115, HeadAngle: 65.5, SeatTube: 440, SeatAngle: 76, Chainstay: 445, BBDrop: 35},
	Fork:    document.Fork{Length: 556, Offset: 44, Travel: 150, Sag: 35},
	Rear:    document.Rear{Travel: 140, Sag: 42, PivotFwd: 20, PivotUp: 90, ShockFrom: document.Point2{218, 300}, ShockTo: document.Point2{10, 270}},
	Wheels:  document.Wheels{Front: document.Wheel{BeadSeat: 622, Tyre: 61}, Rear: document.Wheel{BeadSeat: 622, Tyre: 61}},
	Cockpit: document.Cockpit{Spacers: 20, Stem: 45, BarWidth: 780, BarRise: 25, BarBack: 30},
	Saddle:  document.Saddle{Height: 740, Setback: 10},
	Cranks:  document.Cranks{Length: 170, Width: 168},
}

var tourFrame = document.Build{
	ID: "tour", Name: "Touring bike",
	Frame:   document.Frame{Stack: 601, Reach: 390, HeadTube: 170, HeadAngle: 71.5, SeatTube: 540, SeatAngle: 73, Chainstay: 450, BBDrop: 70},
	Fork:    document.Fork{Length: 400, Offset: 48},
	Wheels:  document.Wheels{Front: document.Wheel{BeadSeat: 622, Tyre: 40}, Rear: document.Wheel{BeadSeat: 622, Tyre: 40}},
	Cockpit: document.Cockpit{Spacers: 30, Stem: 90, StemAngle: 6, BarWidth: 620, BarRise: 10, BarBack: 40},
	Saddle:  document.Saddle{Height: 720, Setback: 10},
	Cranks:  document.Cranks{Length: 172.5, Width: 150},
}

var common = []part{
	{id: "frame", name: "Frame", grams: 3350, station: "frame", carrier: document.MainFrame},
	{id: "swingarm", name: "Swingarm", grams: 980, station: "swingarm", unsprung: 1, carrier: document.Swingarm},
	{id: "shock", name: "Shock", grams: 460, station: "shock", unsprung: 0.5, carrier: document.Link},
	{id: "fork-upper", name: "Fork, upper half", grams: 1190, station: "fork-upper", carrier: document.ForkUpper},
	{id: "fork-lower", name: "Fork lowers", grams: 830, station: "fork-lower", unsprung: 1, carrier: document.ForkLower},
	{id: "front-rim", name: "Front rim", grams: 540, station: "front-axle", unsprung: 1, carrier: document.FrontWheel, ring: 0.303},
	{id: "front-hub", name: "Dynamo hub", grams: 420, station: "front-axle", unsprung: 1, carrier: document.FrontWheel, kind: "dynamo", shape: disc(33)},
	{id: "front-tyre", name: "Front tyre", grams: 910, station: "front-axle", unsprung: 1, carrier: document.FrontWheel, ring: 0.345},
	{id: "front-rotor", name: "Front rotor", grams: 150, station: "front-rotor", unsprung: 1, carrier: document.FrontWheel},
	{id: "rear-rim", name: "Rear rim", grams: 580, station: "rear-axle", unsprung: 1, carrier: document.RearWheel, ring: 0.303},
	{id: "rear-tyre", name: "Rear tyre", grams: 960, station: "rear-axle", unsprung: 1, carrier: document.RearWheel, ring: 0.345},
	{id: "rear-rotor", name: "Rear rotor", grams: 150, station: "rear-rotor", unsprung: 1, carrier: document.RearWheel},
	{id: "front-brake", name: "Front caliper", grams: 140, station: "front-caliper", unsprung: 1, carrier: document.ForkLower},
	{id: "rear-brake", name: "Rear caliper", grams: 140, station: "rear-caliper", unsprung: 1, carrier: document.Swingarm},
	{id: "levers", name: "Brake levers", grams: 240, station: "brake-levers", carrier: document.ForkUpper},
	{id: "bar", name: "Handlebar", grams: 290, station: "bar", carrier: document.ForkUpper},
	{id: "stem", name: "Stem", grams: 130, station: "stem", carrier: document.ForkUpper},
	{id: "grips", name: "Grips", grams: 110, station: "grips", carrier: document.ForkUpper},
	{id: "headset", name: "Headset", grams: 120, station: "headset", carrier: document.MainFrame},
	{id: "saddle", name: "Saddle", grams: 310, station: "saddle", carrier: document.MainFrame},
	{id: "seatpost", name: "Seatpost", grams: 480, station: "seatpost", carrier: document.MainFrame},
	{id: "cranks", name: "Crank, left", grams: 230, station: "crank-left", carrier: document.MainFrame},
	{id: "crank-r", name: "Crank, right", grams: 240, station: "crank-right", carrier: document.MainFrame},
	{id: "pedals", name: "Pedals", grams: 390, station: "pedals", carrier: document.MainFrame},
	{id: "ring", name: "Chainring", grams: 80, station: "chainring", carrier: document.MainFrame, kind: "chainring", shape: disc(65)},
	{id: "front-light", name: "Headlight", grams: 130, station: "front-light", carrier: document.ForkUpper},
	{id: "rear-light", name: "Rear light", grams: 45, station: "rear-light", carrier: document.MainFrame},
	{id: "rack", name: "Rear rack", grams: 750, station: "rear-rack", carrier: document.MainFrame},
	{id: "panniers", name: "Rear panniers, packed", grams: 5200, station: "rear-panniers", carrier: document.MainFrame, role: scene.Baggage, size: mass.Vec{X: 0.30, Y: 0.15, Z: 0.34}},
	{id: "bar-bag", name: "Handlebar bag", grams: 1600, station: "handlebar-bag", carrier: document.ForkUpper, role: scene.Baggage, size: mass.Vec{X: 0.16, Y: 0.40, Z: 0.16}},
	{id: "frame-bag", name: "Frame bag", grams: 1350, station: "frame-bag", carrier: document.MainFrame, role: scene.Baggage},
	{id: "bottle", name: "Bottle, full", grams: 860, station: "bottle-under", carrier: document.MainFrame, role: scene.Baggage, kind: "bottle", shape: document.Shape{Form: document.FormRod, Size: document.Vec3{200}}},
	{id: "tools", name: "Tools", grams: 520, station: "saddle-bag", carrier: document.MainFrame, role: scene.Baggage},
	{id: "stand", name: "Side stand", grams: 340, station: "stand", carrier: document.MainFrame, kind: "stand", shape: document.Shape{Form: document.FormRod, Size: document.Vec3{280}}},
}

var gearbox = []part{
	{id: "gearbox", name: "Crank gearbox", grams: 2400, station: "bottom-bracket", carrier: document.MainFrame, offset: mass.Vec{X: 0.02, Z: 0.02}, kind: "crank-gearbox", shape: document.Shape{Form: document.FormBox, Size: document.Vec3{170, 90, 150}}},
	{id: "belt", name: "Belt", grams: 90, station: "chain", unsprung: 0.5, carrier: document.Link, kind: "belt"},
	{id: "cog", name: "Rear sprocket", grams: 70, station: "cassette", unsprung: 1, carrier: document.RearWheel, kind: "cog", shape: disc(40)},
	{id: "rear-hub", name: "Rear hub", grams: 330, station: "rear-axle", unsprung: 1, carrier: document.RearWheel},
}

var gearhub = []part{
	{id: "gearhub", name: "Gear hub, wide range", grams: 1880, station: "rear-axle", unsprung: 1, carrier: document.RearWheel, kind: "gear-hub", shape: disc(50)},
	{id: "chain", name: "Chain", grams: 260, station: "chain", unsprung: 0.5, carrier: document.Link, kind: "chain"},
	{id: "cog", name: "Rear sprocket", grams: 60, station: "cassette", unsprung: 1, carrier: document.RearWheel, kind: "cog", shape: disc(33)},
	{id: "tensioner", name: "Chain tensioner", grams: 150, station: "rear-derailleur", unsprung: 1, carrier: document.Swingarm, kind: "tensioner", shape: document.Shape{Form: document.FormBox, Size: document.Vec3{60, 20, 120}}},
}

// Travel is a full-suspension travel bike with a gearbox at the cranks, set
// against the same bike with a gear hub.
func Travel() scene.Subject {
	a := assemble("Crank gearbox", &travelFrame, common, gearbox)
	b := assemble("Rear gear hub", &travelFrame, common, gearhub)
	a.Ghost = &b
	return a
}

// Tour is a rigid touring bike, set against the travel bike, which is larger.
func Tour() scene.Subject {
	rigid := make([]part, 0, len(common))
	for _, p := range common {
		if p.id == "swingarm" || p.id == "shock" || p.id == "fork-lower" {
			continue
		}
		if p.carrier != document.FrontWheel && p.carrier != document.RearWheel {
			p.unsprung = 0
		}
		rigid = append(rigid, p)
	}
	a := assemble("Touring bike", &tourFrame, rigid, gearhub)
	b := assemble("Crank gearbox", &travelFrame, common, gearbox)
	a.Ghost = &b
	return a
}

// laden are the bags of a tour; what is in them is in their weight.
var laden = []part{
	{id: "rear-rack", name: "Rear rack", grams: 760, station: "rear-rack", carrier: document.MainFrame},
	{id: "front-rack", name: "Front rack", grams: 520, station: "front-rack", carrier: document.ForkUpper},
	{id: "rear-left", name: "Rear pannier, left", grams: 6400, station: "rear-pannier-left", carrier: document.MainFrame, role: scene.Baggage, size: mass.Vec{X: 0.32, Y: 0.17, Z: 0.36}, fill: 0.9},
	{id: "rear-right", name: "Rear pannier, right", grams: 5900, station: "rear-pannier-right", carrier: document.MainFrame, role: scene.Baggage, size: mass.Vec{X: 0.32, Y: 0.17, Z: 0.36}, fill: 0.8},
	{id: "front-left", name: "Front pannier, left", grams: 3300, station: "front-pannier-left", carrier: document.ForkUpper, role: scene.Baggage, size: mass.Vec{X: 0.25, Y: 0.13, Z: 0.28}, fill: 0.6},
	{id: "front-right", name: "Front pannier, right", grams: 3500, station: "front-pannier-right", carrier: document.ForkUpper, role: scene.Baggage, size: mass.Vec{X: 0.25, Y: 0.13, Z: 0.28}, fill: 0.7},
	{id: "bar-bag", name: "Handlebar bag", grams: 2100, station: "handlebar-bag", carrier: document.ForkUpper, role: scene.Baggage, size: mass.Vec{X: 0.16, Y: 0.30, Z: 0.20}, fill: 0.5},
	{id: "water", name: "Water", grams: 2300, station: "bottle-down-tube", carrier: document.MainFrame, role: scene.Baggage},
	{id: "tent", name: "Tent", grams: 1900, station: "rear-rack-deck", carrier: document.MainFrame, role: scene.Baggage, offset: mass.Vec{Z: 0.08}, size: mass.Vec{X: 0.20, Y: 0.42, Z: 0.14}, fill: 1},
}

// Ridden is the touring bike with its bags and somebody on it, and the way of
// its centre of mass while food and water are used up.
func Ridden(posture string) scene.Subject { return ridden(&tourFrame, posture) }

// RiddenTravel is the travel bike with the same.
func RiddenTravel(posture string) scene.Subject { return ridden(&travelFrame, posture) }

func ridden(frame *document.Build, posture string) scene.Subject {
	var bare []part
	for _, p := range common {
		if p.role != scene.Baggage && p.id != "rack" && (frame == &travelFrame || p.id != "swingarm" && p.id != "shock" && p.id != "fork-lower") {
			bare = append(bare, p)
		}
	}
	s := assemble("Tour, loaded", frame, bare, gearhub, laden)
	s.FrontRack = true
	body, problems := rider.Seat(s.Bike, &document.Rider{
		ID: "rider", Name: "Rider", Stature: 1750, Mass: 72000, Clothing: 2500, Shoes: 800, Table: "female", Posture: posture,
	})
	if body == nil {
		panic(problems[0].Message.String())
	}
	for _, l := range body.Outline() {
		s.Rider = append(s.Rider, scene.Limb{From: l.From, To: l.To, R: l.R, S: l.S, Member: member(l.Name)})
	}
	sum := mass.Sum(body.Items(0, 1), nil)
	s.Markers = append(s.Markers, scene.Marker{Part: "rider", Name: "Rider", Mass: sum.M, MassPlus: 1, Place: sum.Centre(), Carrier: string(document.MainFrame), Role: scene.Body})
	weigh(&s)
	for i, name := range []string{"full", "half", "used up"} {
		left := slices.Clone(s.Markers)
		for k := range left {
			switch m := &left[k]; m.Part {
			case "water":
				m.Mass *= 1 - float64(i)/2
			case "rear-left":
				m.Mass -= 1.2 * float64(i)
			case "bar-bag":
				m.Mass -= 0.6 * float64(i)
			}
		}
		s.Path = append(s.Path, scene.Stop{Place: mass.Sum(items(left), nil).Centre(), Name: name})
	}
	return s
}

// member is what a limb of the rider's belongs to.
func member(name string) scene.Member {
	switch name {
	case rider.UpperArm, rider.Forearm, rider.Hand:
		return scene.Arm
	case rider.Thigh, rider.Shank, rider.Foot:
		return scene.Leg
	case rider.Head:
		return scene.Head
	}
	return scene.Torso
}

// assemble weighs the lists on a frame. The doubt of every mass is 4 %, and
// those of the sums are made up in proportion: the picture shows them, it does
// not judge them.
func assemble(name string, frame *document.Build, lists ...[]part) scene.Subject {
	bike, problems := geometry.Pose(frame)
	if bike == nil {
		panic(problems[0].Message.String())
	}
	s := scene.Subject{Name: name, Bike: bike, RearRack: true, RearRotor: 0.080, FrontRotor: 0.090}
	for _, list := range lists {
		for _, p := range list {
			places, ok := bike.Place(p.station, p.offset)
			if !ok {
				panic("no station " + p.station)
			}
			s.Mount(&document.Part{ID: p.id, Kind: p.kind, Station: p.station, Carrier: p.carrier, Shape: p.shape}, places...)
			kg := p.grams / 1000 / float64(len(places))
			for i, at := range places {
				s.Markers = append(s.Markers, scene.Marker{
					Part: p.id, Name: p.name, Mass: kg, MassPlus: 0.04 * kg, Place: at,
					Unsprung: p.unsprung, Carrier: string(p.carrier), Role: p.role, Size: p.size, Fill: p.fill, Ring: p.ring, Mirror: i == 1,
				})
			}
		}
	}
	weigh(&s)
	return s
}

func items(markers []scene.Marker) []mass.Item {
	list := make([]mass.Item, len(markers))
	for i, m := range markers {
		list[i] = mass.Item{Mass: m.Mass, Place: m.Place}
	}
	return list
}

// weigh makes a subject's figures of its markers.
func weigh(s *scene.Subject) {
	list := items(s.Markers)
	sum := mass.Sum(list, nil)
	s.Total, s.TotalPlus = sum.M, 0.012*sum.M
	s.Centre, s.CentrePlus = sum.Centre(), mass.Vec{X: 0.009, Y: 0.004, Z: 0.007}
	s.FrontLoad = mass.Support(list, nil, s.Bike.FrontContact.X, s.Bike.RearContact.X).Value
	s.RearLoad = sum.M - s.FrontLoad
	s.FrontLoadPlus, s.RearLoadPlus = 0.011*s.FrontLoad+0.05, 0.011*s.RearLoad+0.05
}
