package report

import (
	"math"

	"steelyard/internal/assembly"
	"steelyard/internal/document"
	"steelyard/internal/mass"
	"steelyard/internal/ride"
	"steelyard/internal/units"
)

// Gradients that limits are told at.
var (
	brakingAt = gradients(-0.2, 0.2, 5)
	slopesAt  = gradients(-0.3, 0.3, 7)
)

func gradients(from, to float64, n int) []float64 {
	list := make([]float64, n)
	for i := range list {
		list[i] = round(from+(to-from)*float64(i)/float64(n-1), 1e3)
	}
	return list
}

// Units of what masses mean on the road.
var deceleration, gradient = unit{"g", 1, 1e4}, unit{"ratio", 1, 1e4}

// value works out how well a figure of the items is known.
func (t *workspace) value(items []mass.Item, f mass.Figure, u *unit) (Value, bool) {
	if !units.Finite(f.Value) {
		return Value{}, false
	}
	t.one.Reset()
	t.one.Charge(items, f, 1)
	plus := t.one.Expanded()
	return Value{u.of(f.Value), u.of(plus)}, units.Finite(plus)
}

// handling works out what masses mean on the road.
func (t *workspace) handling(w *Weighed) *Handling {
	to := w.Level
	if to < assembly.Loaded {
		to = w.Highest()
	}
	items := w.At(to, w.Left)
	s := ride.On(items, w.Bike)
	h := &Handling{State: to.State(), Supplies: t.supplies(), Braking: []Braking{}, Slopes: []SlopeLoad{}}
	t.balance(w, to, items, s, h)
	grip := t.grip()
	for _, g := range brakingAt {
		b := s.Braking(items, g, grip)
		lift, okLift := t.value(items, b.Lift, &deceleration)
		slip, okSlip := t.value(items, b.Slip, &deceleration)
		if !okLift || !okSlip {
			continue
		}
		first := lift
		if b.Slips {
			first = slip
		}
		h.Braking = append(h.Braking, Braking{g, lift, slip, first, b.Slips, b.Decided})
	}
	h.Climb = t.climb(items, s)
	for _, g := range slopesAt {
		l := s.Loads(g, 0)
		front, okFront := t.value(items, l.Front, &gram)
		rear, okRear := t.value(items, l.Rear, &gram)
		if okFront && okRear {
			h.Slopes = append(h.Slopes, SlopeLoad{g, front.Value, front.Plus, rear.Value, rear.Plus})
		}
	}
	return h
}

// grip is the coefficient of grip that the document states, or the usual one
// where it states none that is possible.
func (t *workspace) grip() float64 {
	if g := t.show.Grip; g >= document.MinGrip && g <= document.MaxGrip {
		return g
	}
	return document.DefaultGrip
}

// climb works out what ends a climb; nil unless all of it exists.
func (t *workspace) climb(items []mass.Item, s *ride.System) *Climb {
	grip := t.grip()
	c := s.Climbing(items, grip)
	lift, okLift := t.value(items, c.Lift, &gradient)
	first, okFirst := t.value(items, c.First, &gradient)
	if !okLift || !okFirst {
		return nil
	}
	out := &Climb{Grip: grip, Lift: lift, First: first, Slips: c.Slips, Decided: c.Decided}
	if slip, ok := t.value(items, c.Slip, &gradient); ok {
		out.Slip = &slip
	}
	return out
}

// aside is how far from the middle plane something still lies in it, m.
const aside = 0.001

// balance tells how the load hangs left and right.
func (t *workspace) balance(w *Weighed, to assembly.Level, items []mass.Item, s *ride.System, h *Handling) {
	if v, ok := t.value(items, s.Lean(), &degree); ok {
		h.Lean = &Figure{Key: "lean", Unit: degree.name, Value: v.Value, Plus: v.Plus}
	}
	if w.Cargo == nil || to < assembly.Loaded {
		return
	}
	var left, right, outLeft, outRight float64
	for k := range w.Cargo.Lines {
		l := &w.Lines[w.Own+k]
		if w.Cargo.Bag[k] < 0 || !l.OK && !l.Off {
			continue
		}
		kg := 0.0
		for _, it := range w.Whole[l.WholeFirst:l.WholeEnd] {
			kg += it.Mass
		}
		if l.Supply != assembly.Lasting {
			kg *= w.Left
		}
		switch y := l.Place.Y; {
		case y > aside:
			left += kg
			outLeft = max(outLeft, y)
		case y < -aside:
			right += kg
			outRight = max(outRight, -y)
		}
	}
	h.Left, h.Right = gram.of(left), gram.of(right)
	if outLeft == 0 || outRight == 0 {
		return
	}
	if v, ok := t.value(items, s.Rebalance(outLeft+outRight), &gram); ok {
		r := &Rebalance{Mass: math.Abs(v.Value), Plus: v.Plus, From: "left", Apart: millimetre.of(outLeft + outRight)}
		if v.Value < 0 {
			r.From = "right"
		}
		h.Rebalance = r
	}
}

// ratings sets the loads of the fullest state against what makers permit.
func (t *workspace) ratings(w *Weighed) *Ratings {
	to := w.Highest()
	r := &Ratings{State: to.State(), Rider: to == assembly.Ridden, List: []Headroom{}}
	items, lines := w.itemised(to)
	racks := make(map[string]mass.Share)
	for j, i := range lines {
		l, p := &w.Lines[i], &w.Build.Parts[i]
		if l.Group != assembly.BagsGroup && l.Group != assembly.CarriedGroup {
			continue
		}
		if rack := ride.RackOf(p.Station, items[j].Place.Y); rack != "" {
			if racks[rack] == nil {
				racks[rack] = make(mass.Share, len(items))
			}
			racks[rack][j] = 1
		}
	}
	for _, h := range ride.On(items, w.Bike).Judge(items, w.Build.Ratings, racks) {
		r.List = append(r.List, *t.tellHeadroom(h, t.phrasing.Label("rating."+h.What)))
	}
	return r
}

// itemised returns the items of the bike in a state at full supplies, with the
// line of each.
func (w *Weighed) itemised(to assembly.Level) ([]mass.Item, []int32) {
	items, lines := make([]mass.Item, 0, len(w.Whole)), make([]int32, 0, len(w.Whole))
	for i := range w.Lines {
		l := &w.Lines[i]
		if l.Level > to || !l.OK && !l.Off {
			continue
		}
		for _, it := range w.Whole[l.WholeFirst:l.WholeEnd] {
			items, lines = append(items, it), append(lines, int32(i))
		}
	}
	return items, lines
}

// headroom sets what is in a bag against the load that it may hold, kg; nil
// without one.
func (t *workspace) headroom(what string, b *document.Bag, items []mass.Item, load mass.Figure, limit float64) *Headroom {
	h, ok := ride.Judge(what, items, load, limit)
	if !ok {
		return nil
	}
	out := t.tellHeadroom(h, b.Name)
	out.Bag = b.ID
	return out
}

func (t *workspace) tellHeadroom(h ride.Headroom, name string) *Headroom {
	out := &Headroom{
		What: h.What, Name: name, Unit: gram.name,
		Load: gram.of(h.Load), Plus: gram.of(h.Plus), Limit: gram.of(h.Limit), Left: gram.of(h.Left()),
		Used: ratio.of(h.Used), Verdict: string(h.Verdict), Sure: h.Sure,
	}
	key := "headroom." + out.Verdict
	if out.Sure {
		key += ".sure"
	}
	out.Text = t.phrasing.Say(key, "name", name,
		"load", t.phrasing.Grams(out.Load, out.Plus), "limit", t.phrasing.Limit(out.Limit), "left", t.phrasing.Grams(math.Abs(out.Left), out.Plus))
	return out
}

// room sets what is in a bag against its volume; nil when that is not limited.
func (t *workspace) room(b *document.Bag, volume float64) *Headroom {
	if !(b.Volume > 0) || !units.Finite(b.Volume) || !units.Finite(volume/b.Volume) {
		return nil
	}
	out := &Headroom{
		What: "volume", Bag: b.ID, Name: b.Name, Unit: "l",
		Load: round(volume, 1e3), Limit: b.Volume, Left: round(b.Volume-volume, 1e3), Used: ratio.of(volume / b.Volume),
		Verdict: string(ride.OK),
	}
	key := "headroom.volume.ok"
	if out.Left < 0 {
		out.Verdict, out.Sure, key = string(ride.Over), true, "headroom.volume.over"
	}
	out.Text = t.phrasing.Say(key, "name", b.Name, "load", t.phrasing.Litres(out.Load), "limit", t.phrasing.Litres(out.Limit), "left", t.phrasing.Litres(math.Abs(out.Left)))
	return out
}
