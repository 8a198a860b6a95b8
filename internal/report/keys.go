package report

import (
	"math"

	"steelyard/internal/document"
	"steelyard/internal/mass"
)

// slot is the place of a figure in the order in which figures are told.
type slot uint8

// The figures. Their keys and units are in figureKeys; how each is reckoned is
// in [Weighed.computeFigures].
const (
	total slot = iota
	centreX
	centreY
	centreZ
	frontLoad
	rearLoad
	frontShare
	sprung
	unsprungFront
	unsprungRear
	effectiveFront
	effectiveRear
	ratioFront
	ratioRear
	rotatingFront
	rotatingRear
	rimFront
	rimRear
	inertiaRoll
	inertiaPitch
	inertiaYaw
	inertiaXZ
	gyrationRoll
	gyrationPitch
	gyrationYaw
	numFigures
)

// unit is what a figure is shown in: its name, how many of it go into the SI
// unit, and how many steps of rounding go into it.
type unit struct {
	name  string
	perSI float64
	steps float64
}

// The units of a report. Rounding keeps the text short; it lies well below
// what anybody can weigh or measure on a bike.
var (
	gram       = unit{"g", 1e3, 1e2}
	millimetre = unit{"mm", 1e3, 1e2}
	degree     = unit{"deg", 180 / math.Pi, 1e3}
	kgm2       = unit{"kg_m2", 1, 1e5}
	ratio      = unit{"ratio", 1, 1e4}
)

// of returns an SI value in the unit, rounded.
func (u *unit) of(si float64) float64 { return round(si*u.perSI, u.steps) }

// round rounds v to a whole number of steps; 100 steps are two decimals. Zero
// is never negative.
func round(v, steps float64) float64 {
	r := math.Round(v*steps) / steps
	if r == 0 {
		return 0
	}
	return r
}

// inMillimetres converts a place for the report.
func inMillimetres(v mass.Vec) document.Vec3 {
	return document.Vec3{millimetre.of(v.X), millimetre.of(v.Y), millimetre.of(v.Z)}
}

// figureKeys names the figures, in the order of their slots.
var figureKeys = [numFigures]struct {
	key  string
	unit *unit
}{
	total:          {"total", &gram},
	centreX:        {"centre_x", &millimetre},
	centreY:        {"centre_y", &millimetre},
	centreZ:        {"centre_z", &millimetre},
	frontLoad:      {"front_load", &gram},
	rearLoad:       {"rear_load", &gram},
	frontShare:     {"front_share", &ratio},
	sprung:         {"sprung", &gram},
	unsprungFront:  {"unsprung_front", &gram},
	unsprungRear:   {"unsprung_rear", &gram},
	effectiveFront: {"effective_front", &gram},
	effectiveRear:  {"effective_rear", &gram},
	ratioFront:     {"ratio_front", &ratio},
	ratioRear:      {"ratio_rear", &ratio},
	rotatingFront:  {"rotating_front", &gram},
	rotatingRear:   {"rotating_rear", &gram},
	rimFront:       {"rim_front", &gram},
	rimRear:        {"rim_rear", &gram},
	inertiaRoll:    {"inertia_roll", &kgm2},
	inertiaPitch:   {"inertia_pitch", &kgm2},
	inertiaYaw:     {"inertia_yaw", &kgm2},
	inertiaXZ:      {"inertia_xz", &kgm2},
	gyrationRoll:   {"gyration_roll", &millimetre},
	gyrationPitch:  {"gyration_pitch", &millimetre},
	gyrationYaw:    {"gyration_yaw", &millimetre},
}

// Key is the key of a figure with its unit.
type Key struct{ Key, Unit string }

// Keys returns the keys of all figures, in the order in which they are told.
func Keys() []Key {
	list := make([]Key, numFigures)
	for s := range figureKeys {
		list[s] = Key{figureKeys[s].key, figureKeys[s].unit.name}
	}
	return list
}
