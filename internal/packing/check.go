package packing

import (
	"errors"
	"fmt"
	"math"

	"steelyard/internal/words"
)

// Fault is an impossible value in a field of a task. Its text names the good, bag
// or limit, the field, what is wrong and what would be right.
type Fault struct {
	What  string // "good", "bag", "limit", "forbidden", "start", "aim", "rest" or "task"
	Index int    // which one of them, where there are several
	Name  string
	Field string // as in the Go type
	Why   string
}

func (f *Fault) Error() string {
	switch f.What {
	case "good", "bag", "limit":
		return fmt.Sprintf("%s, %s: %s", title(f.What, f.Index, f.Name), f.Field, f.Why)
	case "forbidden", "start":
		return fmt.Sprintf("%s %d, %s: %s", f.What, f.Index+1, f.Field, f.Why)
	}
	return fmt.Sprintf("%s, %s: %s", f.What, f.Field, f.Why)
}

// title names a good, bag or limit to a person.
func title(what string, index int, name string) words.Message {
	if name == "" {
		return words.Tell("packing.number."+what, "n", index+1)
	}
	return words.Tell("packing.title."+what, "name", words.Quote(name))
}

// Check returns everything that is wrong with the fields of a task, as *Fault
// joined to one error, or nil. It does not check whether the goods fit.
func (t *Task) Check() error {
	c := &checker{task: t}
	c.sizes()
	if len(c.faults) > 0 {
		return errors.Join(c.faults...)
	}
	c.goods()
	c.bags()
	c.limits()
	c.pairs()
	c.aim()
	return errors.Join(c.faults...)
}

type checker struct {
	task   *Task
	faults []error
}

func (c *checker) fault(what string, index int, name, field, why string, args ...any) {
	c.faults = append(c.faults, &Fault{what, index, name, field, fmt.Sprintf(why, args...)})
}

// most is the largest number that a mass, a volume, a place or a weight may
// be: beyond it is a slip of the pen, and sums stay far from the end of float64.
const most = 1e9

// number reports whether x is a number of sensible size.
func number(x float64) bool { return abs(x) <= most }

const (
	wantNumber = "must be a number of at most 1e9 in size, not %g"
	wantSize   = "must be a number from 0 to 1e9, not %g"
)

func (c *checker) sizes() {
	t := c.task
	if n := len(t.Goods); n > MaxGoods {
		c.fault("task", 0, "", "Goods", "at most %d goods can be packed, not %d", MaxGoods, n)
	}
	if n := len(t.Bags); n > MaxBags {
		c.fault("task", 0, "", "Bags", "at most %d bags can be packed, not %d", MaxBags, n)
	}
	if n := len(t.Limits); n > MaxLimits {
		c.fault("task", 0, "", "Limits", "at most %d limits can be kept, not %d", MaxLimits, n)
	}
}

func (c *checker) goods() {
	t := c.task
	pieces := 0
	for i := range t.Goods {
		g := &t.Goods[i]
		if !(g.Mass >= 0 && g.Mass <= most) {
			c.fault("good", i, g.Name, "Mass", wantSize, g.Mass)
		}
		if !(g.Volume >= 0 && g.Volume <= most) {
			c.fault("good", i, g.Name, "Volume", wantSize, g.Volume)
		}
		switch {
		case g.Quantity < 0:
			c.fault("good", i, g.Name, "Quantity", "must be 0 or more, not %d", g.Quantity)
		case g.Quantity > MaxPieces:
			c.fault("good", i, g.Name, "Quantity", "must be %d or less, not %d", MaxPieces, g.Quantity)
		default:
			before := pieces
			pieces += g.Quantity
			if pieces > MaxPieces && before <= MaxPieces {
				c.fault("good", i, g.Name, "Quantity", "all goods together may have %d pieces; with these %d they have more", MaxPieces, g.Quantity)
			}
		}
		if g.Pinned && (g.In < 0 || g.In >= len(t.Bags)) {
			c.fault("good", i, g.Name, "In", "pinned in bag number %d, but there are %d bags", g.In+1, len(t.Bags))
		}
		if len(t.Bags) == 0 && g.Quantity > 0 && !g.Pinned {
			c.fault("good", i, g.Name, "In", "there is no bag to put it in")
		}
	}
}

func (c *checker) bags() {
	for j := range c.task.Bags {
		b := &c.task.Bags[j]
		for k, x := range []float64{b.Place.X, b.Place.Y, b.Place.Z} {
			if !number(x) {
				c.fault("bag", j, b.Name, "Place."+"XYZ"[k:k+1], wantNumber, x)
			}
		}
		if !(b.Permitted >= 0 && b.Permitted <= most) {
			c.fault("bag", j, b.Name, "Permitted", wantSize+" (0 is not stated)", b.Permitted)
		}
		if !(b.Volume >= 0 && b.Volume <= most) {
			c.fault("bag", j, b.Name, "Volume", wantSize+" (0 is not limited)", b.Volume)
		}
		if !(b.Steered >= 0 && b.Steered <= most) {
			c.fault("bag", j, b.Name, "Steered", wantSize, b.Steered)
		}
	}
}

func (c *checker) limits() {
	t := c.task
	for l := range t.Limits {
		m := &t.Limits[l]
		if !(m.Permitted >= 0 && m.Permitted <= most) {
			c.fault("limit", l, m.Name, "Permitted", wantSize, m.Permitted)
		}
		if len(m.Share) != len(t.Bags) {
			c.fault("limit", l, m.Name, "Share", "must have one number for each of the %d bags, not %d", len(t.Bags), len(m.Share))
			continue
		}
		for j, s := range m.Share {
			if !(s >= 0 && s <= most) {
				c.fault("limit", l, m.Name, "Share", "of %s "+wantSize, title("bag", j, t.Bags[j].Name), s)
			}
		}
	}
}

func (c *checker) pairs() {
	t := c.task
	for n, p := range t.Forbidden {
		switch {
		case p.Good < 0 || p.Good >= len(t.Goods):
			c.fault("forbidden", n, "", "Good", "good number %d is not among the %d goods", p.Good+1, len(t.Goods))
		case p.Bag < 0 || p.Bag >= len(t.Bags):
			c.fault("forbidden", n, "", "Bag", "bag number %d is not among the %d bags", p.Bag+1, len(t.Bags))
		case t.Goods[p.Good].Pinned && t.Goods[p.Good].In == p.Bag && t.Goods[p.Good].Quantity > 0:
			g := &t.Goods[p.Good]
			c.fault("good", p.Good, g.Name, "In", "it is pinned in %s and forbidden there", title("bag", p.Bag, t.Bags[p.Bag].Name))
		}
	}
	if t.Start == nil {
		return
	}
	if len(t.Start) != len(t.Goods) {
		c.fault("start", 0, "", "Packing", "must have a row for each of the %d goods, not %d", len(t.Goods), len(t.Start))
		return
	}
	for i, row := range t.Start {
		if len(row) != len(t.Bags) {
			c.fault("start", i, "", "Packing", "must have a number for each of the %d bags, not %d", len(t.Bags), len(row))
			continue
		}
		for j, n := range row {
			if n < 0 || n > MaxPieces {
				c.fault("start", i, "", "Packing", "number of pieces in %s must be 0 to %d, not %d", title("bag", j, t.Bags[j].Name), MaxPieces, n)
			}
		}
	}
}

func (c *checker) aim() {
	t, a := c.task, &c.task.Aim
	for _, w := range []struct {
		field string
		value float64
	}{{"Front", a.Front}, {"Low", a.Low}, {"Balance", a.Balance}, {"Middle", a.Middle}, {"Steered", a.Steered}} {
		if !(w.value >= 0 && w.value <= most) {
			c.fault("aim", 0, "", w.field, "weight "+wantSize, w.value)
		}
	}
	if !number(a.FrontShare) {
		c.fault("aim", 0, "", "FrontShare", wantNumber, a.FrontShare)
	}
	for k, x := range []float64{a.Centre.X, a.Centre.Y, a.Centre.Z} {
		if !number(x) {
			c.fault("aim", 0, "", "Centre."+"XYZ"[k:k+1], wantNumber, x)
		}
	}
	if !number(t.RearContact) || !number(t.FrontContact) {
		c.fault("task", 0, "", "FrontContact", "contacts must be numbers of at most 1e9 in size, not %g and %g", t.RearContact, t.FrontContact)
	} else if a.Front > 0 && !(abs(t.FrontContact-t.RearContact) >= 1e-3) {
		c.fault("task", 0, "", "FrontContact", "wheels must touch the ground in two places to have a front share; both are at x = %g m", t.FrontContact)
	}
	if !(t.RestSteered >= 0 && t.RestSteered <= most) {
		c.fault("rest", 0, "", "RestSteered", wantSize, t.RestSteered)
	}
	if t.AtMost != nil && *t.AtMost < 0 {
		c.fault("task", 0, "", "AtMost", "must be 0 or more, not %d", *t.AtMost)
	}
	if !(t.Tolerance >= 0) || math.IsInf(t.Tolerance, 1) {
		c.fault("task", 0, "", "Tolerance", "must be 0 or more, not %g", t.Tolerance)
	}
	r := &t.Rest
	if !(r.M >= 0 && r.M <= most) {
		c.fault("rest", 0, "", "M", "mass "+wantSize, r.M)
	}
	for k, x := range []float64{r.S.X, r.S.Y, r.S.Z} {
		if !(abs(x) <= most*most) {
			c.fault("rest", 0, "", "S."+"XYZ"[k:k+1], "must be a number, not %g", x)
		}
	}
	for k, x := range []float64{r.J.XX, r.J.YY, r.J.ZZ} {
		if !(abs(x) <= most*most*most) {
			c.fault("rest", 0, "", "J."+[]string{"XX", "YY", "ZZ"}[k], "must be a number, not %g", x)
		}
	}
}
