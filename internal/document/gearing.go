package document

import (
	"slices"
	"strconv"

	"steelyard/internal/words"
)

// Gearing is what a part does to the turns that go through it: teeth of a
// chainring, of rings, a cog, a cassette or a belt pulley; ratios of a gear hub
// or a gearbox; or the stages of a gearbox that is described by its wheels. A
// part has one of the three.
type Gearing struct {
	// Teeth are those of each ring or cog, in any order.
	Teeth []int `json:"teeth,omitempty"`
	// Ratios are turns of the output for one turn of the input.
	Ratios []float64 `json:"ratios,omitempty"`
	// Meshes say how many pairs of gears carry the load in each of the ratios;
	// empty when nobody knows.
	Meshes []int `json:"meshes,omitempty"`
	// Stages follow each other: every gear of one goes with every gear of the
	// next.
	Stages []Stage `json:"stages,omitempty"`
}

// Stage is two shafts and what turns one by the other.
type Stage struct {
	Driving []int `json:"driving,omitempty"` // teeth
	Driven  []int `json:"driven,omitempty"`  // teeth
	// Combine says which of them go together; empty is EveryPair.
	Combine Combine `json:"combine,omitempty"`
	// By is what links the shafts; empty is ByGears.
	By By `json:"by,omitempty"`
}

// Combine is a way in which the driving and the driven teeth of a stage go
// together.
type Combine string

// The ways to combine.
const (
	EveryPair   Combine = "every"  // each driving wheel with each driven one, as a chain between two cassettes
	ListedPairs Combine = "listed" // the first with the first and so on, as gears that are always in mesh
	InTurn      Combine = "turn"   // from the lowest gear up first the driving side moves one wheel, then the driven side
)

// By is what links the shafts of a stage.
type By string

// The links.
const (
	ByGears By = "gears"
	ByChain By = "chain"
)

// Combines and Bys are the words that a document may use.
var (
	Combines = []Combine{EveryPair, ListedPairs, InTurn}
	Bys      = []By{ByGears, ByChain}
)

// Limits of a gearing. Beyond them lies a slip of the pen, or a list that would
// give more gears than anybody can tell apart.
const (
	MinTeeth  = 3
	MaxTeeth  = 300
	MaxWheels = 32 // rings, cogs, or teeth of one side of a stage
	MaxRatios = 64
	MaxMeshes = 12
	MaxStages = 4
	MinRatio  = 0.02
	MaxRatio  = 50
)

// Clone returns a copy that shares no memory; nil of nil.
func (g *Gearing) Clone() *Gearing {
	if g == nil {
		return nil
	}
	c := &Gearing{Teeth: slices.Clone(g.Teeth), Ratios: slices.Clone(g.Ratios), Meshes: slices.Clone(g.Meshes), Stages: slices.Clone(g.Stages)}
	for i := range c.Stages {
		s := &c.Stages[i]
		s.Driving, s.Driven = slices.Clone(s.Driving), slices.Clone(s.Driven)
	}
	return c
}

// IsZero reports whether the gearing is empty.
func (g *Gearing) IsZero() bool {
	return g == nil || len(g.Teeth) == 0 && len(g.Ratios) == 0 && len(g.Stages) == 0
}

// Check returns what is wrong with a gearing, all of it errors: its gears cannot
// be determined. In a document they are warnings, since a part whose teeth are
// wrong still has its mass.
func (g *Gearing) Check() []Problem {
	var c checker
	c.gearing(g)
	for i := range c.problems {
		c.problems[i].Severity = SeverityError
	}
	return c.problems
}

// gearing checks what a part says of its gears.
func (c *checker) gearing(g *Gearing) {
	if g == nil {
		return
	}
	kinds := 0
	for _, n := range []int{len(g.Teeth), len(g.Ratios), len(g.Stages)} {
		if n > 0 {
			kinds++
		}
	}
	switch {
	case kinds == 0:
		c.warn("gearing", "document.gearing.none")
	case kinds > 1:
		c.warn("gearing", "document.gearing.both")
	}
	c.wheels("gearing.teeth", g.Teeth)
	if n := len(g.Ratios); n > MaxRatios {
		c.warn("gearing.ratios", "document.gearing.ratios.many", "n", n, "most", MaxRatios)
	} else {
		for i, r := range g.Ratios {
			if !(r >= MinRatio && r <= MaxRatio) { // nor is it a number
				c.warn(item("gearing.ratios", i), "document.gearing.ratio", "ratio", words.Number(r), "least", MinRatio, "most", MaxRatio)
			}
		}
	}
	switch n := len(g.Meshes); {
	case n == 0:
	case n != len(g.Ratios):
		c.warn("gearing.meshes", "document.gearing.meshes.length", "n", n, "ratios", len(g.Ratios))
	case n <= MaxRatios:
		for i, m := range g.Meshes {
			if m < 0 || m > MaxMeshes {
				c.warn(item("gearing.meshes", i), "document.gearing.meshes", "n", m, "most", MaxMeshes)
			}
		}
	}
	if n := len(g.Stages); n > MaxStages {
		c.warn("gearing.stages", "document.gearing.stages.many", "n", n, "most", MaxStages)
		return
	}
	for i := range g.Stages {
		c.stage(item("gearing.stages", i), &g.Stages[i])
	}
	if n := g.gears(); n > MaxRatios {
		c.warn("gearing.stages", "document.gearing.gears", "n", n, "most", MaxRatios)
	}
}

// gears is how many gears the stages give.
func (g *Gearing) gears() int {
	n := 1
	for i := range g.Stages {
		s := &g.Stages[i]
		a, b := min(len(s.Driving), MaxWheels), min(len(s.Driven), MaxWheels)
		switch s.Combine {
		case ListedPairs:
			n *= min(a, b)
		case InTurn:
			n *= max(a+b-1, 0)
		default:
			n *= a * b
		}
	}
	return n
}

func (c *checker) stage(field string, s *Stage) {
	for _, side := range []struct {
		key   string
		teeth []int
	}{{"driving", s.Driving}, {"driven", s.Driven}} {
		if len(side.teeth) == 0 {
			c.warn(field+"."+side.key, "document.gearing.stage.nowhere."+side.key)
		}
		c.wheels(field+"."+side.key, side.teeth)
	}
	if s.Combine == ListedPairs && len(s.Driving) > 0 && len(s.Driven) > 0 && len(s.Driving) != len(s.Driven) {
		c.warn(field+".driven", "document.gearing.stage.pairs", "driving", len(s.Driving), "driven", len(s.Driven))
	}
	if s.Combine != "" && !slices.Contains(Combines, s.Combine) {
		c.warn(field+".combine", "document.gearing.combine", "combine", words.Quote(string(s.Combine)), "choice", words.Choose(Combines))
	}
	if s.By != "" && !slices.Contains(Bys, s.By) {
		c.warn(field+".by", "document.gearing.by", "by", words.Quote(string(s.By)), "choice", words.Choose(Bys))
	}
}

func (c *checker) wheels(field string, teeth []int) {
	if n := len(teeth); n > MaxWheels {
		c.warn(field, "document.gearing.teeth.many", "n", n, "most", MaxWheels)
		return
	}
	for i, n := range teeth {
		if n < MinTeeth || n > MaxTeeth {
			c.warn(item(field, i), "document.gearing.teeth", "n", n, "least", MinTeeth, "most", MaxTeeth)
		}
	}
}

// item is the field of an item of a list.
func item(list string, i int) string { return list + "." + strconv.Itoa(i) }
