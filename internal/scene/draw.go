package scene

import "math"

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
	s := &sheet{pen: p, v: v, type1: 12, type2: 11}
	if cam.Width < 520 {
		s.type1, s.type2 = 11, 10
	}

	k := dotScale(&cam, here, there)
	size(here, k)
	size(there, k)

	s.ground()
	sameBike := true
	if g := sub.Ghost; g != nil && g.Bike != nil && (sub.Bike == nil || !sameOutline(sub.Bike, g.Bike)) {
		s.ghostBike(g.Bike)
		sameBike = false
	}
	s.bike(&sub)
	for i := range sub.Markers {
		if m := &sub.Markers[i]; m.Role == Baggage && m.Size.X > 0 {
			if x, y := cam.At(m.Place); finite(x) && finite(y) {
				s.bag(m, pt{x, y})
			}
		}
	}
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
		out.Spots = append(out.Spots, Spot{Part: d.m.Part, X: d.at.x, Y: d.at.y, R: max(d.r, leastSpot), Mirror: d.m.Mirror})
	}
	s.busy.total()
	s.centres(&sub)
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
	s.detail(&sub)
	if _, y := cam.XY(0, 0); y < cam.Height { // notes stay above ground
		s.taken = append(s.taken, box{0, y + 1, cam.Width, cam.Height})
	}
	s.notes(&sub, here, other[:gone])
	return out
}

func (s *sheet) bike(sub *Subject) {
	if sub.Bike == nil {
		return
	}
	edge := sane(0.0032*s.cam.Scale, 0.75, 1.5)
	if s.cam.Aspect == Rear {
		(&behind{pen: s.pen, b: sub.Bike, edge: edge, hair: 0.6 * edge}).draw()
	} else {
		(&sideView{pen: s.pen, b: sub.Bike, edge: edge, hair: 0.6 * edge}).draw()
	}
}

// notes names the part that is chosen, the one pointed at, the centre of mass,
// and then the heaviest that there is room for.
func (s *sheet) notes(sub *Subject, here, gone []dot) {
	paper := box{0, 0, s.cam.Width, s.cam.Height}
	named := ""
	name := func(d *dot, bold bool, worth float64, ink Ink) bool {
		n := note{at: d.at, r: d.r, name: short(d.m.Name), figure: s.v.Units.mass(d.part), bold: bold, ink: ink, worth: worth}
		if n.name == "" {
			n.name, n.figure = n.figure, ""
		}
		return s.annotate(&n)
	}
	for _, id := range [2]string{s.v.Selected, s.v.Hovered} {
		if id == "" || id == named {
			continue
		}
		for i := range here {
			if d := &here[i]; d.m.Part == id && paper.holds(d.at.x, d.at.y) && name(d, true, math.Inf(1), Text) {
				named = id
				break
			}
		}
	}
	if !s.v.Labels {
		return
	}
	s.centreNote(sub)
	left, tries := s.howMany(), 2*s.howMany()
	for i := range gone {
		if i == 2 || left < 4 || gone[i].part < 0.2*gone[0].part {
			break
		}
		if d := &gone[i]; paper.holds(d.at.x, d.at.y) && name(d, false, 1.8, Ghost) {
			left--
		}
	}
	done := map[string]bool{s.v.Selected: true, s.v.Hovered: true}
	for i := range here {
		d := &here[i]
		if left == 0 || tries == 0 {
			break
		}
		if done[d.m.Part] && d.m.Part != "" || !paper.holds(d.at.x, d.at.y) {
			continue
		}
		tries--
		done[d.m.Part] = true
		if name(d, false, 2.2, Text) {
			left--
		}
	}
}

// describe tells the picture to those who do not see it.
func describe(sub *Subject, v View) (title, desc string) {
	name := short(sub.Name)
	if name == "" {
		name = "Bike"
	}
	from := "seen from its right"
	if v.Aspect == Rear {
		from = "seen from behind"
	}
	title = name + ", " + from
	if !sub.has() {
		return title, "A bike to scale, without weights."
	}
	u := v.Units
	total, within := u.massWithin(sub.Total, sub.TotalPlus)
	if within != "" {
		total += " " + within
	}
	desc = "Total " + total + ". Centre of mass " +
		u.length(sub.Centre.X) + " ahead of the rear axle and " + u.length(sub.Centre.Z) + " above the ground. On the front wheel " +
		u.mass(sub.FrontLoad) + ", on the rear wheel " + u.mass(sub.RearLoad) + "."
	if g := sub.Ghost; g.has() {
		desc += " Behind it " + short(g.Name) + ", with its centre of mass " + u.length(sub.Centre.Sub(g.Centre).Norm()) + " away."
	}
	return title, desc
}
