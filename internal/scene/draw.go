package scene

import (
	"math"

	"steelyard/internal/geometry"
	"steelyard/internal/mass"
	"steelyard/internal/units"
)

// Draw lays the subject out for the camera's size. It never fails: what is not
// finite is left out.
func Draw(sub Subject, v View, cam Camera) *Scene {
	out := &Scene{Width: cam.Width, Height: cam.Height}
	out.Title, out.Desc = describe(&sub, v)
	here := dots(&sub, &cam)
	var there []dot
	if sub.Ghost != nil {
		there = dots(sub.Ghost, &cam)
	}
	out.Marks = make([]Mark, 0, 256+2*len(here))
	out.Spots = make([]Spot, 0, len(here))
	p := &pen{cam: cam, out: out, segs: make([]Seg, 0, 1600+12*len(here))}
	s := &sheet{pen: p, v: v, type1: 12, type2: 11, longest: maxName}
	if cam.Width < 520 {
		s.type1, s.type2, s.longest = 11, 10, maxNarrow
	}

	k := dotScale(&cam, here, there)
	s.size(here, k)
	s.size(there, k)

	s.ground()
	sameBike := true
	if g := sub.Ghost; g != nil && g.Bike != nil && (sub.Bike == nil || !sameOutline(sub.Bike, g.Bike)) {
		s.ghostBike(g.Bike)
		sameBike = false
	}
	s.rider(&sub)
	first := len(out.Marks)
	s.bike(&sub)
	s.bags(&sub)
	s.cover(&sub, out.Marks[first:], here)
	s.busy = newBusyMap(cam.Width, cam.Height)
	s.busy.marks(out.Marks)

	other, gone := otherDots(here, there, sameBike)
	for i := range other {
		s.ghostDot(&other[i])
		s.busy.disc(other[i].at, other[i].r, 1)
	}
	for i := range here {
		d := &here[i]
		s.marker(d)
		s.busy.disc(d.at, d.r, 3)
		if d.m.Role == Body && d.r == largestBody(cam.Width, cam.Height) {
			s.taken = append(s.taken, square(d.at, d.r))
		}
		out.Spots = append(out.Spots, Spot{Part: d.m.Part, X: d.at.x, Y: d.at.y, R: max(d.r, leastSpot), Mirror: d.m.Mirror, Fixed: d.m.Role == Body})
	}
	if v.Steering {
		s.steered(&sub, here)
	}
	s.touched(&sub)
	s.busy.total()
	s.keep(&sub)
	s.centres(&sub)
	s.path(&sub)
	for i := range here {
		if d := &here[i]; d.m.Part != "" && (d.m.Part == v.Selected || d.m.Part == v.Hovered) {
			s.ring(d, d.m.Part == v.Selected)
		}
	}

	s.loads(&sub)
	s.scaleBar()
	if v.Key {
		s.key(&sub, k)
	}
	if v.Dimensions {
		s.dimensions(&sub)
	}
	if v.Steering {
		s.steering(&sub)
	}
	s.detail(&sub)
	s.pathNotes(&sub)
	if _, y := cam.XY(0, 0); y < cam.Height { // notes stay above ground
		s.taken = append(s.taken, box{0, y + 1, cam.Width, cam.Height})
	}
	s.notes(&sub, here, there, other[:gone])
	return out
}

func (s *sheet) bike(sub *Subject) {
	if sub.Bike == nil {
		return
	}
	edge := sane(0.0032*s.cam.Scale, 0.75, 1.5)
	d := drawing{pen: s.pen, b: sub.Bike, fitted: sub, edge: edge, hair: 0.6 * edge}
	if sub.Crank != 0 {
		turned := *sub.Bike
		turned.PedalFront = about(sub.Bike.BottomBracket, turned.PedalFront, sub.Crank)
		turned.PedalRear = about(sub.Bike.BottomBracket, turned.PedalRear, sub.Crank)
		d.b = &turned
	}
	if s.cam.Aspect == Rear {
		(&rearView{d}).draw()
	} else {
		(&sideView{d}).draw()
	}
}

// drawing is a bike while it is drawn.
type drawing struct {
	*pen
	b      *geometry.Bike
	fitted *Subject // what is on it
	edge   float64  // width of an edge, px
	hair   float64
}

// about turns a place about an axis across the bike: what is ahead goes up.
func about(axis, r mass.Vec, angle float64) mass.Vec {
	sin, cos := math.Sincos(angle)
	d := r.Sub(axis)
	return axis.Add(mass.Vec{X: d.X*cos - d.Z*sin, Y: d.Y, Z: d.X*sin + d.Z*cos})
}

// deck is the middle of a rack's deck: ok is false where the bike has none.
func (d *drawing) deck(station string) (at mass.Vec, ok bool) {
	if p := d.b.Stations[station].Points; len(p) > 0 {
		return p[0], true
	}
	return at, false
}

// notes names the part that is chosen, the heaviest of what differs between the
// two builds, the centre of mass, and then the rest that there is room for. The part
// pointed at comes last, so that the others stay where they are.
func (s *sheet) notes(sub *Subject, here, there, gone []dot) {
	named := make(map[string]bool)
	name := func(d *dot, bold bool, worth float64, ink Ink) bool {
		if named[d.m.Part] && d.m.Part != "" || !s.paper().holds(d.at.x, d.at.y) {
			return false
		}
		n := note{at: d.at, r: d.r, name: short(d.m.Name, s.longest), figure: s.v.Units.mass(d.part), bold: bold, ink: ink, worth: worth, own: square(d.at, d.r)}
		if n.name == "" {
			n.name, n.figure = n.figure, ""
		}
		if r := d.m.Ring * s.cam.Scale; s.cam.Aspect == Side && d.r < r && units.Finite(r) {
			n.ring = r
		}
		ok := s.annotate(&n)
		named[d.m.Part] = named[d.m.Part] || ok
		return ok
	}
	one := func(id string) {
		for i := range here {
			if d := &here[i]; id != "" && d.m.Part == id && name(d, true, math.Inf(1), Text) {
				return
			}
		}
	}
	one(s.v.Selected)
	defer one(s.v.Hovered)
	if !s.v.Labels {
		return
	}
	const foremost = 4
	left, tries := s.howMany(), 3*s.howMany()
	noted := false
	for i, c := range callOrder(here, there, gone) {
		if left == 0 || i == tries {
			break
		}
		if !noted && (!c.differs || i == foremost) {
			s.centreNote(sub)
			noted = true
		}
		worth := 2.2 + 2/float64(1+i) // the first may stand in the way
		switch {
		case c.differs && i < foremost: // what the picture is looked at for
			worth = 9
		case c.differs:
			worth = 3.2
		}
		ink := Text
		if c.gone {
			ink = Ghost
		}
		if name(c.dot, false, worth, ink) {
			left--
		}
	}
	if !noted {
		s.centreNote(sub)
	}
}

// describe tells the picture to those who do not see it.
func describe(sub *Subject, v View) (title, desc string) {
	name := short(sub.Name, maxName)
	if name == "" {
		name = v.word("bike")
	}
	key := "title_side"
	if v.Aspect == Rear {
		key = "title_rear"
	}
	title = v.say(key, "name", name)
	if !sub.has() {
		return title, v.word("desc_bare")
	}
	u := v.Units
	total, within := u.massWithin(sub.Total, sub.TotalPlus)
	if within != "" {
		total += " " + within
	}
	desc = v.say("desc", "total", total, "x", u.length(sub.Centre.X), "z", u.length(sub.Centre.Z),
		"front", u.mass(sub.FrontLoad), "rear", u.mass(sub.RearLoad))
	if len(sub.Rider) > 0 {
		desc += " " + v.word("desc_rider")
	}
	if g := sub.Ghost; g.has() {
		desc += " " + v.say("desc_ghost", "name", short(g.Name, maxName), "apart", u.length(sub.Centre.Sub(g.Centre).Norm()))
	}
	if k := len(sub.Path); k > 1 && known(sub.Path[0].Place) && known(sub.Path[k-1].Place) {
		desc += " " + v.say("desc_path", "length", u.length(sub.Path[k-1].Place.Sub(sub.Path[0].Place).Norm()))
	}
	return title, desc
}
