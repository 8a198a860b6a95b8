package report

import (
	"steelyard/internal/document"
)

// Format and Version name the format of a report.
const (
	Format  = "steelyard-report"
	Version = 1
)

// Report is the result of evaluating a document. Masses are grams, lengths
// millimetres, inertia kg m², whatever the document wants shown.
//
// Types that are embedded here, and the types that embed them, are written as one
// object; each is also a piece that is written in one go, see [Evaluation.Text].
type Report struct {
	Head
	Builds     []Build     `json:"builds"`
	Sides      []Side      `json:"sides"`                // what show.compare sets against each other, with what each carries; the first build when it names none
	Difference *Difference `json:"difference,omitempty"` // second build of show.compare minus the first
}

// Head is what comes first in a report.
type Head struct {
	Format   string             `json:"format"`
	Version  int                `json:"version"`
	Program  string             `json:"program"` // the program's version
	Problems []document.Problem `json:"problems"`
}

// Build is one build weighed. A build with an error in its frame figures has
// no figures; a part with an error is left out, and both are told in Problems.
type Build struct {
	Bike
	Findings
	Geometry []Length `json:"geometry"` // wheelbase, trail, ...: exact, from the figures
	Parts    []Part   `json:"parts"`    // in the document's order
	Own      []Subset `json:"own"`      // mass of these parts by group, whatever the state and without a load; heaviest first
}

// Bike is what a build is, and what it carries.
type Bike struct {
	ID      string `json:"id"`
	Name    string `json:"name"`
	Weighed bool   `json:"weighed"` // whether Figures hold

	Load     string            `json:"load"`     // what it carries: a load id, or nothing
	State    document.State    `json:"state"`    // how much of that is on it: what figures, groups, carriers, weigh and summary are of
	Supplies document.Supplies `json:"supplies"` // and how much of it is left

	FrontSprung bool `json:"front_sprung"` // false: a rigid fork, the tyre is the only spring in front
	RearSprung  bool `json:"rear_sprung"`  // likewise
}

// Findings is what weighing a bike in a state has shown.
type Findings struct {
	Sums
	Weigh []Advice `json:"weigh"` // what to weigh first for a better total, most useful first
}

// Sums are what all parts of a bike together come to.
type Sums struct {
	Figures  []Figure `json:"figures"`
	Groups   []Subset `json:"groups"`   // mass by group of parts, heaviest first
	Carriers []Subset `json:"carriers"` // mass by carrier
	Summary  string   `json:"summary"`  // the bike in words, for those who do not see the picture
}

// Length is a geometric figure.
type Length struct {
	Key   string  `json:"key"`  // "wheelbase", "trail", ...
	Unit  string  `json:"unit"` // "mm" or "deg"
	Value float64 `json:"value"`
}

// Figure is a figure with its doubt.
type Figure struct {
	Key   string  `json:"key"`  // "total", "centre_x", ...: see Keys
	Unit  string  `json:"unit"` // "g", "mm", "kg_m2", "ratio"
	Value float64 `json:"value"`
	Plus  float64 `json:"plus"` // ± this, expanded with coverage factor 2
}

// Subset is the mass of some of the parts.
type Subset struct {
	Key   string  `json:"key"`
	Mass  float64 `json:"mass_g"`
	Plus  float64 `json:"plus_g"`
	Count int     `json:"count"` // lines of the parts list
}

// Part is a line of the parts list, weighed and placed.
type Part struct {
	ID       string        `json:"id"`
	Mass     float64       `json:"mass_g"` // all pieces
	Plus     float64       `json:"plus_g"`
	Place    document.Vec3 `json:"place_mm"` // the middle of a pair
	Group    string        `json:"group"`
	Unsprung float64       `json:"unsprung"`      // share counted as unsprung, 0 to 1
	Doubt    float64       `json:"doubt"`         // share of the total's variance, 0 to 1
	OK       bool          `json:"ok"`            // false: left out, see Problems
	Off      bool          `json:"off,omitempty"` // not on the bike in the state shown, and not in its figures
}

// Advice says what weighing one part would do.
type Advice struct {
	Part    string  `json:"part"`  // part id, in build B where both have it; of what is carried "bag:", "good:" or "rider:" and its id
	Build   string  `json:"build"` // build id
	Name    string  `json:"name"`
	Now     float64 `json:"now_g"`   // ± of the figure now
	Then    float64 `json:"then_g"`  // ± once this and everything above it is weighed
	Settles bool    `json:"settles"` // whether a verdict then falls (differences only)
}

// Difference is build B minus build A.
type Difference struct {
	Comparison
	Weigh []Advice     `json:"weigh"` // to settle the difference in total mass
	Parts []PartChange `json:"parts"` // largest first; parts that are the same in both are left out
	Moved []Mover      `json:"moved"` // what moved the centre of mass, largest first
}

// Comparison is a difference without what tells it part by part.
type Comparison struct {
	A       string         `json:"a"` // build ids; the same one for two loads on one build
	B       string         `json:"b"`
	LoadA   string         `json:"load_a"` // load ids, or nothing
	LoadB   string         `json:"load_b"`
	StateA  document.State `json:"state_a"`
	StateB  document.State `json:"state_b"`
	Figures []Change       `json:"figures"`
	Groups  []GroupChange  `json:"groups"` // largest first
	Summary string         `json:"summary"`
}

// Change is one figure in both builds.
type Change struct {
	Key     string  `json:"key"`
	Unit    string  `json:"unit"`
	A       float64 `json:"a"`
	B       float64 `json:"b"`
	Delta   float64 `json:"delta"`
	Plus    float64 `json:"plus"`    // ± of the difference; what both share has cancelled
	Verdict string  `json:"verdict"` // "more", "less", "undecided" or "same"
}

// GroupChange is the difference in one group of parts.
type GroupChange struct {
	Key   string  `json:"key"`
	A     float64 `json:"a_g"`
	B     float64 `json:"b_g"`
	Delta float64 `json:"delta_g"`
	Plus  float64 `json:"plus_g"`
}

// PartChange is a part that is not the same in both builds.
type PartChange struct {
	What  string        `json:"what"`        // "added", "removed", "changed" (mass, or how well its place is known), "moved"
	A     string        `json:"a,omitempty"` // part id in A
	B     string        `json:"b,omitempty"` // part id in B
	Name  string        `json:"name"`
	Group string        `json:"group"`
	Delta float64       `json:"delta_g"`
	Plus  float64       `json:"plus_g"`
	Moved document.Vec3 `json:"moved_mm"` // for parts in both
	Far   float64       `json:"far_mm"`   // how far that is

	WithFrame bool   `json:"with_frame,omitempty"` // it sits at the same station, which the bike's own figures moved
	CarrierA  string `json:"carrier_a,omitempty"`  // both only when they differ
	CarrierB  string `json:"carrier_b,omitempty"`

	WithinA float64 `json:"within_a_mm,omitempty"` // how well its place is known; both only when they differ
	WithinB float64 `json:"within_b_mm,omitempty"`
}

// Mover says by how much a part's change moved the centre of mass.
type Mover struct {
	Name string        `json:"name"`
	A    string        `json:"a,omitempty"`
	B    string        `json:"b,omitempty"`
	By   document.Vec3 `json:"by_mm"`
}
