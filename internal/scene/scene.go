package scene

// Scene is a laid-out picture.
type Scene struct {
	Width, Height float64
	Marks         []Mark  // painted in order, upon paper
	Labels        []Label // painted after the marks, in order
	Spots         []Spot  // what can be hit, topmost last but for what is fixed
	Title, Desc   string  // for those who do not see it
}

// Mark is one thing to paint: a path, filled by the nonzero rule and then
// stroked. Joins are round.
type Mark struct {
	Path   []Seg
	Fill   Ink     // None for no fill
	Stroke Ink     // None for no line
	Width  float64 // of the line
	Dash   []float64
	Butt   bool // line ends are cut square; otherwise they are round
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
	Circle // a full circle as a sub-path of its own, clockwise as seen
	Close
)

// Label is a line of text.
type Label struct {
	X, Y  float64 // of the baseline's start, middle or end, by Align
	Text  string  // plain, as people wrote it: a painter escapes what it must
	Size  float64 // px to the em
	Bold  bool
	Align int // -1 start, 0 middle, +1 end
	Ink   Ink
	Angle float64 // degrees, clockwise about (X, Y)
	Halo  bool    // painted with an outline of the paper's colour, to stay legible over lines
	Width float64 // as measured, so that a painter with other fonts can hold it
}

// Spot is where a pointer finds something: what is within R of the way from X, Y
// by DX, DY.
type Spot struct {
	Part    string // part id
	X, Y, R float64
	DX, DY  float64
	Mirror  bool // the right one of a pair: its way outward is -y
	Fixed   bool // it cannot be dragged, and lies under all that can: the rider
}
