package drive

import (
	"cmp"
	"math"

	"steelyard/internal/order"
)

// Gear is one way through a drive.
type Gear struct {
	Ring, Cog   int // teeth
	Front, Rear int // gear of the gearbox at the cranks and of the hub, from 0, lowest first; -1 where there is none
	Ratio       float64
	Crossed     bool // left out by the rule, see [Drive.Gears]
}

// Crossing is the rule by which gears are left out in which the chain runs
// crosswise: so many of the largest cogs on the largest ring, and so many of the
// smallest on the smallest. Rings between take all. At least one cog is left to
// each ring. 0 leaves out none.
type Crossing int

// DefaultCrossing is the rule of nobody's choosing: common practice, no source.
const DefaultCrossing Crossing = 2

// Gears returns all gears, the lowest first, with the crossed ones marked.
func (d *Drive) Gears(rule Crossing) []Gear {
	if d == nil || d.count() > MaxGears {
		return nil
	}
	all := make([]Gear, 0, d.count())
	out := min(max(int(rule), 0), len(d.Cogs)-1)
	for i, ring := range d.Rings {
		for j, cog := range d.Cogs {
			crossed := len(d.Rings) > 1 && (i == len(d.Rings)-1 && j < out || i == 0 && j >= len(d.Cogs)-out)
			for f := range max(1, len(d.Front)) {
				for h := range max(1, len(d.Rear)) {
					g := Gear{Ring: ring, Cog: cog, Front: -1, Rear: -1, Ratio: float64(ring) / float64(cog), Crossed: crossed}
					if len(d.Front) > 0 {
						g.Front = f
						g.Ratio *= d.Front[f].Ratio
					}
					if len(d.Rear) > 0 {
						g.Rear = h
						g.Ratio *= d.Rear[h].Ratio
					}
					all = append(all, g)
				}
			}
		}
	}
	order.Stable(all, func(a, b Gear) int {
		return cmp.Or(cmp.Compare(a.Ratio, b.Ratio), cmp.Compare(a.Ring, b.Ring), cmp.Compare(a.Front, b.Front), cmp.Compare(a.Rear, b.Rear))
	})
	return all
}

// Used returns the gears that the rule leaves.
func Used(all []Gear) []Gear {
	used := make([]Gear, 0, len(all))
	for _, g := range all {
		if !g.Crossed {
			used = append(used, g)
		}
	}
	return used
}

// Development is the way for one turn of the cranks, m, for a roll-out in m.
func (g *Gear) Development(rollOut float64) float64 { return g.Ratio * rollOut }

// Inches is the diameter of a wheel that has the gear's development without any
// gears, in inches: development / π / 25.4 mm.
func (g *Gear) Inches(rollOut float64) float64 { return g.Development(rollOut) / math.Pi / 0.0254 }

// Speed is that of the bike, m/s, at a cadence in turns per minute.
func (g *Gear) Speed(rollOut, cadence float64) float64 { return g.Development(rollOut) * cadence / 60 }

// Moved is how many levers move from one gear to the other.
func (g *Gear) Moved(to *Gear) int {
	n := 0
	for _, differs := range []bool{g.Ring != to.Ring, g.Cog != to.Cog, g.Front != to.Front, g.Rear != to.Rear} {
		if differs {
			n++
		}
	}
	return n
}
