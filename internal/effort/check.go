package effort

import (
	"steelyard/internal/document"
)

// Limits of what may be asked. Beyond them lies a slip of the pen.
const (
	MaxPower   = 2500 // W
	MinCadence = 5    // turns per minute
	MaxCadence = 250
	MaxSpeed   = 40 // m/s, of walking, top speed and wind
	MaxSlope   = 1  // 100 %
	MaxRolling = 0.5
	MaxDensity = 2 // kg/m³
	MaxDrag    = 5 // m²
	MaxLength  = 1e6
)

// checker collects problems by field.
type checker []document.Problem
