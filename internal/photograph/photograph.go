package photograph

import (
	"math"

	"steelyard/internal/units"
	"steelyard/internal/words"
)

// Photograph is what there is to know of a picture beside its points of colour.
type Photograph struct {
	ID        string  `json:"id"`
	Width     int     `json:"width"`  // of the picture, px
	Height    int     `json:"height"` // likewise
	Marks     []Mark  `json:"marks"`
	Scale     string  `json:"scale"`             // what gives the scale: ByWheelbase or ByWheel
	Wheelbase float64 `json:"wheelbase_mm"`      // as measured; 0 is that of the build's figures
	Distance  float64 `json:"distance_m"`        // from the camera to the bike
	Within    float64 `json:"within_mm"`         // how far a mark may be off, each way, on the bike
	Picture   string  `json:"picture,omitempty"` // in a file: a JPEG file in base64
}

// What gives the scale of a picture.
const (
	ByWheelbase = "wheelbase"
	ByWheel     = "wheel" // the tread of the rear tyre, whose size the build says
)

// Mark says where in the picture something is.
type Mark struct {
	Of string  `json:"of"` // one of Marked
	X  float64 `json:"x"`  // px
	Y  float64 `json:"y"`
}

// What can be marked, by index.
const (
	rearAxle = iota
	frontAxle
	bracket
	headTop
	headBottom
	saddle
	tread
	numMarks
)

// Marked names what can be marked: the ends of both axles, the middle of the bottom
// bracket, where the steering axis leaves the head tube at both ends, the middle of
// the saddle's top, and the tread of the rear tyre anywhere around.
var Marked = [numMarks]string{"rear_axle", "front_axle", "bottom_bracket", "head_top", "head_bottom", "saddle", "tread"}

// Limits of what is told of a photograph, and what it is without.
const (
	maxSide      = 20000 // px
	usualFar     = 5     // m
	usualWithin  = 3     // mm
	nearest      = 1.5   // m
	farthest     = 100   // m
	maxWheelbase = 5000  // mm
	maxWithin    = 100   // mm
)

// check returns what is wrong with a photograph, and fills in what it does not say.
func (p *Photograph) check() error {
	if !sound(p.ID) || p.Width < 1 || p.Height < 1 || max(p.Width, p.Height) > maxSide {
		return words.Tell("photograph.unread")
	}
	if p.Scale != ByWheel {
		p.Scale = ByWheelbase
	}
	if p.Distance == 0 {
		p.Distance = usualFar
	}
	if p.Within == 0 {
		p.Within = usualWithin
	}
	switch {
	case p.Wheelbase != 0 && !within(p.Wheelbase, 100, maxWheelbase):
		return words.Tell("photograph.wheelbase", "most", maxWheelbase)
	case !within(p.Distance, nearest, farthest):
		return words.Tell("photograph.distance", "least", nearest, "most", farthest)
	case !within(p.Within, 0.1, maxWithin):
		return words.Tell("photograph.within", "most", maxWithin)
	}
	seen := [numMarks]bool{}
	for i := range p.Marks {
		m := &p.Marks[i]
		k := indexOf(m.Of)
		if k < 0 || seen[k] || !within(m.X, 0, float64(p.Width)) || !within(m.Y, 0, float64(p.Height)) {
			return words.Tell("photograph.mark", "mark", words.Quote(words.Shorten(m.Of)))
		}
		seen[k] = true
	}
	return nil
}

// sound says whether a text may be the id of a photograph.
func sound(id string) bool {
	for _, c := range []byte(id) {
		if !(c >= 'a' && c <= 'z' || c >= '0' && c <= '9') {
			return false
		}
	}
	return id != "" && len(id) <= 40
}

func within(x, lo, hi float64) bool { return units.Finite(x) && x >= lo && x <= hi }

func indexOf(mark string) int {
	for i, m := range Marked {
		if m == mark {
			return i
		}
	}
	return -1
}

// point is a place in a plane.
type point struct{ x, y float64 }

func (p point) minus(q point) point { return point{p.x - q.x, p.y - q.y} }
func (p point) norm() float64       { return math.Hypot(p.x, p.y) }

// marks are the places of what is marked, by index; not a number where it is not.
func (p *Photograph) marks() [numMarks]point {
	var at [numMarks]point
	for i := range at {
		at[i] = point{math.NaN(), math.NaN()}
	}
	for _, m := range p.Marks {
		at[indexOf(m.Of)] = point{m.X, m.Y}
	}
	return at
}
