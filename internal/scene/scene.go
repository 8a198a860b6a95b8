package scene

// Scene is a laid-out picture.
type Scene struct {
	Width, Height float64
	Marks         []Mark // painted in order
	Labels        []Label
	Spots         []Spot // what can be hit, topmost last
	Title, Desc   string // for those who do not see it
}

// Mark is one thing to paint: a filled and/or stroked path.
type Mark struct {
	Path   []Seg
	Fill   Ink     // None for no fill
	Stroke Ink     // None for no line
	Width  float64 // of the line
	Dash   []float64
	Hatch  bool // the fill is hatched instead of solid: a sign besides colour
}

// Seg is a step of a path.
type Seg struct {
	Op             Op
	X, Y           float64 // end point; centre of a full circle
	R              float64 // of a full circle
	X1, Y1, X2, Y2 float64 // control points of a cubic
}

// Op is what a Seg does.
type Op uint8

// The steps of a path.
const (
	Move Op = iota
	Line
	Cubic
	Circle // a full circle as a sub-path of its own
	Close
)

// Label is a line of text.
type Label struct {
	X, Y  float64 // of the baseline's start, middle or end, by Align
	Text  string
	Size  float64
	Bold  bool
	Align int // -1 start, 0 middle, +1 end
	Ink   Ink
	Angle float64 // degrees, clockwise
	Halo  bool    // painted with an outline of the paper's colour, to stay legible over lines
}

// Spot is where a pointer finds something.
type Spot struct {
	Part    string // part id
	X, Y, R float64
}

// Ink names the role that a colour plays; a Palette turns it into a colour.
type Ink uint8
