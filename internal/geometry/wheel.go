package geometry

import (
	"slices"

	"steelyard/internal/document"
)

// BeadSeats are the bead seat diameters in mm of ISO 5775 (ETRTO) that wheels
// of today and of the last decades have, largest first. (memory)
var BeadSeats = []float64{630, 622, 590, 584, 571, 559, 540, 520, 507, 451, 406, 355, 349, 305}

// KnownBeadSeat reports whether a bead seat diameter in mm is one of BeadSeats.
func KnownBeadSeat(mm float64) bool { return slices.Contains(BeadSeats, mm) }

// tyreRadius is the radius in m of a wheel with its tyre on, unloaded. ISO 5775
// takes a tyre's section height equal to its width, so it is half the bead
// seat diameter plus the section width.
func tyreRadius(w document.Wheel) float64 { return rimRadius(w) + metres(w.Tyre) }

// rimRadius is the radius in m of the seat that the tyre's bead sits on.
func rimRadius(w document.Wheel) float64 { return metres(w.BeadSeat) / 2 }
