package stage

import "math"

// Event is what a pointer did. Coordinates are the picture's, px.
type Event struct {
	Type   string  `json:"type"` // "down", "move", "up", "cancel", "leave" or "wheel"
	ID     int     `json:"id"`   // of the pointer: fingers are told apart by it
	X      float64 `json:"x"`
	Y      float64 `json:"y"`
	Button int     `json:"button"` // of a press: 0 main, 1 middle, 2 secondary
	Delta  float64 `json:"delta"`  // of a wheel, px downwards
	Pinch  float64 `json:"pinch"`  // of a wheel that stands for a pinch on a touch pad: the factor; 0 otherwise
	Kind   string  `json:"kind"`   // "mouse", "touch" or "pen"
	Time   float64 `json:"time"`   // ms
}

func (e *Event) sound() bool {
	for _, v := range [...]float64{e.X, e.Y} {
		if math.IsNaN(v) || math.Abs(v) > 1e6 {
			return false
		}
	}
	return true
}

// reach is how far beside a spot a pointer still hits it, px.
func (e *Event) reach() float64 {
	switch e.Kind {
	case "touch":
		return 14
	case "pen":
		return 6
	}
	return 2
}

// slack is how far a pressed pointer may stray before it is a drag, px.
func (e *Event) slack() float64 {
	if e.Kind == "mouse" || e.Kind == "" {
		return 4
	}
	return 8
}

// Intent is what an event means. The zero Intent means nothing.
type Intent struct {
	Hover  *string `json:"hover,omitempty"`  // the pointer came onto this part; "" onto none
	Select *string `json:"select,omitempty"` // this part was chosen; "" none
	Move   *Move   `json:"move,omitempty"`
	Cursor string  `json:"cursor,omitempty"` // a CSS cursor
	Redraw bool    `json:"redraw,omitempty"` // the picture changed by the event itself
}

// Move asks for a part to be moved. The moves of one drag add up; all are whole
// tenths of a millimetre, so that nothing is lost in between.
type Move struct {
	Part string     `json:"part"`
	By   [3]float64 `json:"by_mm"` // x forward, y left, z up; of the right one of a pair y is outward, as in its offset
	Done bool       `json:"done"`  // the drag has ended; a drag that was called off has been taken back
}
