package rooms

import (
	"math"
	"slices"

	"steelyard/internal/assembly"
	"steelyard/internal/clearance"
	"steelyard/internal/document"
	"steelyard/internal/geometry"
	"steelyard/internal/mass"
	"steelyard/internal/order"
	"steelyard/internal/report"
	"steelyard/internal/rider"
	"steelyard/internal/words"
)

// Clearances is the room that the sides of a comparison have.
type Clearances struct {
	Sides   []ClearanceSide `json:"sides"`
	Caution string          `json:"caution"`
}

// ClearanceSide is the room that one side has, what is tightest first.
type ClearanceSide struct {
	Build string `json:"build"`
	Name  string `json:"name"`
	Gaps  []Gap  `json:"gaps"`

	Bag *FrameBag `json:"bag,omitempty"` // the largest that its main triangle takes; none where it cannot be posed
}

// Gap is the room between two things: in the pose, and the least while the
// suspension moves.
type Gap struct {
	Key       string  `json:"key"`  // ground, tyre, front, knees, bar, tube, beside, long or high
	Name      string  `json:"name"` // of the part or bag
	Label     string  `json:"label"`
	Pose      float64 `json:"pose_mm"`
	PosePlus  float64 `json:"pose_plus"`
	Least     float64 `json:"least_mm"`
	LeastPlus float64 `json:"least_plus"`
	Verdict   string  `json:"verdict"`        // More: there is room; Less: they touch; Undecided
	Text      string  `json:"text,omitempty"` // a warning that names both
}

const (
	frameWithin = 0.004 // of frame, fork and tyre figures, m
	kneeRadius  = 0.065 // m; common practice, no source
	solidWithin = 0.010 // of each face of a part, m
	wideFrom    = 0.080 // a bag that is narrower stays between the knees, m
	farFrom     = 0.120 // room beyond this is not told, m
	barRadius   = 0.016 // m; common practice, no source
	turns       = 12    // of the cranks, at which the knees are looked at
)

// ClearancesOf tells the room under the cranks, at both tyres, at the knees, and for
// what is in the main triangle or hangs from the bar.
func ClearancesOf(e *report.Evaluation) *Clearances {
	w := e.Words()
	out := &Clearances{Sides: []ClearanceSide{}, Caution: w.Label("clearance.caution")}
	for i, weighed := range e.Sides {
		side := ClearanceSide{Build: e.Report.Sides[i].Build, Name: e.SideName(i), Gaps: []Gap{}}
		if weighed != nil {
			side.Gaps = gapsOf(weighed.Assembly, w)
			side.Bag = bagOf(clearance.Triangle(weighed.Assembly.Bike), w)
		}
		out.Sides = append(out.Sides, side)
	}
	return out
}

func gapsOf(a *assembly.Assembly, w *words.Words) []Gap {
	gaps := []Gap{}
	other := ""
	tell := func(key, name string, t clearance.Travel) {
		mm := func(v float64) float64 { return report.Decimal(1e3*v, 0) }
		g := Gap{
			Key: key, Name: name, Label: w.Say("clearance."+key, "name", name, "other", other),
			Pose: mm(t.Pose.Value), PosePlus: mm(t.Pose.Plus), Least: mm(t.Least.Value), LeastPlus: mm(t.Least.Plus),
		}
		if g.Verdict = report.Verdict(g.Least, g.LeastPlus); g.Verdict == report.Less {
			g.Text = w.Say("clearance."+key+".none", "name", name, "other", other)
		}
		gaps = append(gaps, g)
	}
	names := make(map[string]string)
	var hung, behind, wide, ahead, barred []clearance.Solid
	var within []inFrame
	// held notes what is in the main triangle, or between bar and tyre.
	held := func(s clearance.Solid, station string, carrier document.Carrier) {
		in := inFrame{s, station}
		switch station {
		case "bottle-down-tube", "bottle-seat-tube", "bottle-under":
			in.Solid = in.along(a.Bike)
			if station != "bottle-under" {
				within = append(within, in)
			}
		case "frame-bag":
			within = append(within, in)
		case "handlebar-bag":
			barred = append(barred, s)
		}
		if carrier == document.MainFrame || carrier == document.ForkUpper {
			ahead = append(ahead, in.Solid)
		}
	}
	for i := range a.Lines {
		l, p := &a.Lines[i], &a.Build.Parts[i]
		if !l.OK || a.Carried(i) {
			continue
		}
		if p.Kind == "bottle" && loaded(a, p.Station) {
			continue // it is the load's
		}
		if p.Kind == "bottle" && p.Shape.Form == document.FormRod && l.End-l.First == 1 {
			names[p.ID] = p.Name
			half := mass.Vec{X: p.Shape.Size[0] / 2e3, Y: bottleHalf, Z: bottleHalf}
			held(clearance.Solid{ID: p.ID, Place: l.Place, Half: half, Within: p.Within / 1e3, Size: bottleWithin}, p.Station, p.Carrier)
			continue
		}
		s, ok := solid(p.ID, l, p)
		if !ok {
			continue
		}
		names[s.ID] = p.Name
		switch {
		case p.Carrier == document.MainFrame && slices.Contains([]string{"crank-gearbox", "chainring", "bottom-bracket", "guard"}, p.Kind):
			hung = append(hung, s)
			if p.Kind == "crank-gearbox" {
				behind = append(behind, s)
			}
		case p.Kind == "bag" || p.Kind == "pannier":
			behind, wide = append(behind, s), append(wide, s)
			held(s, p.Station, p.Carrier)
		}
	}
	for _, b := range a.Bags() {
		if geometry.Pair(b.Bag.Station) {
			continue // in two places
		}
		half := mass.Vec{X: b.Bag.Size[0] / 2e3, Y: b.Bag.Size[1] / 2e3, Z: b.Bag.Size[2] / 2e3}
		s := clearance.Solid{ID: b.ID, Place: b.Place, Half: half, Within: solidWithin, Size: solidWithin, Swings: b.Bag.Carrier == document.Swingarm}
		names[s.ID] = b.Bag.Name
		behind, wide = append(behind, s), append(wide, s)
		held(s, b.Bag.Station, b.Bag.Carrier)
	}
	if t, ok := clearance.Ground(a.Bike, hung, frameWithin); ok {
		tell("ground", names[t.Least.ID], t)
	}
	for _, s := range behind {
		if t := clearance.Tyre(a.Bike, s, frameWithin); t.Least.Value < farFrom {
			tell("tyre", names[s.ID], t)
		}
	}
	for _, s := range ahead {
		if t := clearance.Front(a.Bike, s, frameWithin); t.Least.Value < farFrom {
			tell("front", names[s.ID], t)
		}
	}
	for _, s := range barred {
		if g := clearance.Bar(a.Bike, s, barRadius, frameWithin); g.Value < farFrom {
			tell("bar", names[s.ID], clearance.Travel{Pose: g, Least: g})
		}
	}
	tubes, room := clearance.Tubes(a.Bike), clearance.Triangle(a.Bike)
	for i := range within {
		in := &within[i]
		outline := in.outline(tubes)
		key, g, along, ok := in.fits(tubes, room)
		if ok && g.Value < farFrom {
			other = w.Label("station." + along)
			tell(key, names[in.ID], clearance.Travel{Pose: g, Least: g})
		}
		if in.tube() != "" {
			if g, ok := clearance.Shock(a.Bike, in.Solid, outline); ok && g.Value < farFrom {
				other = w.Label("station.shock")
				tell("beside", names[in.ID], clearance.Travel{Pose: g, Least: g})
			}
		}
		for j := i + 1; j < len(within); j++ {
			next := &within[j]
			if g := clearance.Between(in.Solid, next.Solid, outline, next.outline(tubes)); g.Value < farFrom {
				other = names[next.ID]
				tell("beside", names[in.ID], clearance.Travel{Pose: g, Least: g})
			}
		}
	}
	if knees := kneesOf(a); len(knees) > 0 {
		for _, s := range wide {
			if 2*s.Half.Y < wideFrom {
				continue
			}
			if g, ok := clearance.Knees(s, knees, rider.PlaceWithin); ok && g.Value < farFrom {
				tell("knees", names[s.ID], clearance.Travel{Pose: g, Least: g})
			}
		}
	}
	order.Stable(gaps, func(a, b Gap) int {
		switch {
		case a.Least < b.Least:
			return -1
		case a.Least > b.Least:
			return 1
		}
		return 0
	})
	return gaps
}

// loaded reports whether the load has a bag, or a bottle, at a station.
func loaded(a *assembly.Assembly, station string) bool {
	for _, b := range a.Bags() {
		if b.Bag.Station == station {
			return true
		}
	}
	return false
}

// solid is what a part takes up, by its shape; ok is false for one that takes up
// nothing, and for one in two places.
func solid(id string, l *assembly.Line, p *document.Part) (s clearance.Solid, ok bool) {
	s = clearance.Solid{
		ID: id, Place: l.Place, Pitch: p.Shape.Pitch * math.Pi / 180, Within: p.Within / 1e3, Size: solidWithin,
		Swings: p.Carrier == document.Swingarm || p.Carrier == document.RearWheel,
	}
	switch p.Shape.Form {
	case document.FormBox:
		s.Half = mass.Vec{X: p.Shape.Size[0] / 2e3, Y: p.Shape.Size[1] / 2e3, Z: p.Shape.Size[2] / 2e3}
	case document.FormDisc:
		s.Radius, s.Half.Y = p.Shape.Size[0]/1e3, p.Shape.Size[1]/2e3
	case document.FormRing:
		s.Radius = p.Shape.Size[0] / 1e3
	default:
		return s, false
	}
	return s, l.End-l.First == 1 && s.Half.X+s.Half.Z+s.Radius > 0
}

// kneesOf are both knees over a turn of the cranks; none without a rider.
func kneesOf(a *assembly.Assembly) (knees []clearance.Knee) {
	_, r := a.Seated()
	if r == nil {
		return nil
	}
	for k := range turns {
		turned := *r
		turned.Crank = float64(k)*360/turns - 180
		if body, _ := rider.Seat(a.Bike, &turned); body != nil {
			knees = append(knees, clearance.Knee{At: body.Left.Knee, Radius: kneeRadius}, clearance.Knee{At: body.Right.Knee, Radius: kneeRadius})
		}
	}
	return knees
}
