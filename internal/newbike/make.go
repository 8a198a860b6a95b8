package newbike

import (
	"slices"
	"strings"

	"steelyard/internal/conversion"
	"steelyard/internal/document"
	"steelyard/internal/parts"
	"steelyard/internal/words"
)

// Choice is what a bike is to be made of. What is left out, unknown, or does not
// go with the rest is chosen as is usual.
type Choice struct {
	Frame string                `json:"frame,omitempty"`
	Size  string                `json:"size,omitempty"`
	Wheel int                   `json:"wheel,omitempty"` // diameter of the bead seats, mm
	Sets  map[parts.Area]string `json:"sets,omitempty"`  // id of a set by area
}

// Offer is what there is to choose from in an area.
type Offer struct {
	Area     parts.Area
	Chosen   string // id of a set; empty for none
	Optional bool   // a bike can go without
	Sets     []*parts.Set
}

// Bike is a bike that was made.
type Bike struct {
	Document *document.Document // with this bike as its only build
	Frame    *Frame
	Size     *Size
	Offers   []Offer // in the order in which they are chosen
	Remarks  []words.Message
}

// areas are in the order in which what is chosen first decides what goes next.
var areas = []parts.Area{parts.Drivetrain, parts.Brakes, parts.FrontWheel, parts.RearWheel, parts.Cockpit, parts.Lighting, parts.Racks, parts.Mudguards}

// optional reports whether a bike can go without an area.
func optional(a parts.Area) bool {
	return a == parts.Lighting || a == parts.Racks || a == parts.Mudguards
}

const usualSize = "medium"

// Make makes a bike of a choice, called in a language.
func Make(c Choice, w *words.Words) *Bike {
	all := Frames()
	f := &all[max(0, slices.IndexFunc(all, func(f Frame) bool { return f.ID == c.Frame }))]
	at := 0
	for i, fit := 0, -1; i < len(f.Sizes); i++ {
		// The size counts before the wheels, the first of those that are as good is taken.
		s, n := &f.Sizes[i], 0
		if s.ID == c.Size {
			n = 4
		} else if s.ID == usualSize {
			n = 2
		}
		if s.Wheel == c.Wheel {
			n++
		}
		if n > fit {
			at, fit = i, n
		}
	}
	b := document.Build{ID: "b1", Name: w.Label("newbike." + f.ID)}
	f.figures(&b, &f.Sizes[at], "")
	bike := &Bike{Frame: f, Size: &f.Sizes[at]}
	chosen := make(map[parts.Area]*parts.Set)
	for _, area := range areas {
		o := Offer{Area: area, Optional: optional(area)}
		for i := range parts.Sets() {
			if s := &parts.Sets()[i]; s.Area == area && goes(s, &b, chosen) {
				o.Sets = append(o.Sets, s)
			}
		}
		find := func(id string) bool {
			i := slices.IndexFunc(o.Sets, func(s *parts.Set) bool { return s.ID == id })
			if i >= 0 {
				chosen[area] = o.Sets[i]
			}
			return i >= 0
		}
		if !find(c.Sets[area]) && !o.Optional && !find(f.Usual[area]) && len(o.Sets) > 0 {
			chosen[area] = o.Sets[0]
		}
		if s := chosen[area]; s != nil {
			o.Chosen = s.ID
		}
		bike.Offers = append(bike.Offers, o)
	}
	if s := chosen[parts.Cockpit]; s != nil {
		f.figures(&b, bike.Size, s.ID)
	}
	f.fit(&b, chosen[parts.Drivetrain], w)

	d := &document.Document{
		Format: document.Format, Version: document.Version,
		Title:  w.Label("blank.title"),
		Show:   document.Show{Mass: "kg", Length: "mm", Compare: []string{b.ID}},
		Builds: []document.Build{b},
	}

	for _, area := range areas {
		set := chosen[area]
		if set == nil {
			continue
		}
		plan, err := conversion.New(d, b.ID, set, w)
		if err != nil {
			panic("newbike: " + err.Error()) // the build is in the document
		}
		d = plan.Apply(conversion.Except{})
		for _, r := range plan.Remarks() {
			if !slices.ContainsFunc(bike.Remarks, func(m words.Message) bool { return m.String() == r.String() }) {
				bike.Remarks = append(bike.Remarks, r)
			}
		}
	}
	bike.Document = d
	return bike
}

// goes reports whether a set goes on a bike with its frame's figures, and with what
// is chosen already. What goes with what is common practice, no source.
func goes(s *parts.Set, b *document.Build, chosen map[parts.Area]*parts.Set) bool {
	has := parts.Meets(b)
	drive := parts.Need("")
	if d := chosen[parts.Drivetrain]; d != nil {
		drive = d.Drive
		has[drive] = true
	}
	for _, n := range s.Needs {
		if !has[n] {
			return false
		}
	}
	brakes := chosen[parts.Brakes]
	onRim := func(id string) bool { return strings.Contains(id, "rim") && strings.Contains(id, "brake") }
	rigid := has[parts.RigidFork] && has[parts.RigidRear]
	switch s.Area {
	case parts.Brakes:
		return rigid || !onRim(s.ID)
	case parts.RearWheel:
		// One for a cassette needs nothing; one about a gear hub or for one cog does.
		if slices.Contains(s.Needs, drive) != (drive != parts.Derailleur) {
			return false
		}
	case parts.Lighting:
		if strings.Contains(s.ID, "battery") {
			return true
		}
	}
	switch s.Area {
	case parts.FrontWheel, parts.RearWheel, parts.Lighting:
		if brakes != nil && onRim(brakes.ID) != onRim(s.ID) {
			return false
		}
	}
	return s.BeadSeat == 0 || s.BeadSeat == b.Wheels.Rear.BeadSeat
}

// fit puts the parts on the bike that no set brings.
func (f *Frame) fit(b *document.Build, drive *parts.Set, w *words.Words) {
	has := parts.Meets(b)
	if drive != nil {
		has[drive.Drive] = true
		has[belt] = strings.HasSuffix(drive.ID, "-belt")
	}
	for _, l := range f.Parts {
		if l.If != "" && !has[l.If] || l.Unless != "" && has[l.Unless] {
			continue
		}
		e := parts.EntryByID(l.Entry)
		if has[parts.Gearbox] {
			if g := parts.EntryByID(l.Entry + "-gearbox"); g != nil {
				e = g
			}
		}
		b.Parts = append(b.Parts, e.In(w).Part(l.Entry))
	}
}
