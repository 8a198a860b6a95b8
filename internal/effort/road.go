package effort

import (
	"math"

	"steelyard/internal/drive"
)

// G is the acceleration of gravity, m/s².
const G = 9.81

// Rider is who rides.
type Rider struct {
	Power   drive.Quantity // held at the pedals, W
	Cadence float64        // liked, turns per minute
	Least   float64        // below it one walks
	Most    drive.Quantity // above it one coasts; 0 is no such
	Walk    drive.Quantity // speed on foot with the bike, m/s
	Top     float64        // speed above which one brakes, m/s; 0 is none
}

// Typical riders' figures (common practice, no source).
var DefaultRider = Rider{
	Power:   drive.Quantity{Value: 110, Half: 15, Basis: drive.Typical, Source: "power"},
	Cadence: 70, Least: 40, Top: 14,
	Most: drive.Quantity{Value: 110, Half: 5, Basis: drive.Typical, Source: "highest cadence"},
	Walk: drive.Quantity{Value: 1, Half: 0.25, Basis: drive.Typical, Source: "walking"},
}

// Surface is what one rides on.
type Surface string

// The surfaces, smoothest first.
const (
	Asphalt Surface = "asphalt"
	Rough   Surface = "rough-asphalt"
	Gravel  Surface = "gravel"
	Track   Surface = "track"
	Sand    Surface = "sand"
)

// Surfaces are all of them, smoothest first.
var Surfaces = []Surface{Asphalt, Rough, Gravel, Track, Sand}

// Rolling returns a typical coefficient of rolling resistance of a wide touring
// tyre on a surface (common practice, no source). Builds with the same tyre err
// alike; name is the tyre's.
func Rolling(s Surface, name string) drive.Quantity {
	q := drive.Quantity{Value: 0.008, Half: 0.003, Basis: drive.Typical, Source: "rolling " + string(s) + " " + name}
	switch s {
	case Rough:
		q.Value, q.Half = 0.011, 0.004
	case Gravel:
		q.Value, q.Half = 0.016, 0.006
	case Track:
		q.Value, q.Half = 0.025, 0.010
	case Sand:
		q.Value, q.Half = 0.06, 0.03
	}
	return q
}

// DragArea returns a typical drag area, m², of a rider in a posture of the
// document ("upright", "leaned", "low", "standing"), with bags at the sides or
// without (common practice, no source).
func DragArea(posture string, bags bool) drive.Quantity {
	q := drive.Quantity{Value: 0.52, Half: 0.08, Basis: drive.Typical, Source: "drag area"}
	switch posture {
	case "upright":
		q.Value, q.Half = 0.62, 0.10
	case "low":
		q.Value, q.Half = 0.40, 0.06
	case "standing":
		q.Value, q.Half = 0.65, 0.12
	}
	if bags {
		q.Value += 0.10
		q.Half += 0.05
	}
	return q
}

// AirDensity returns that of dry air, kg/m³, at a height above the sea, m, and a
// temperature, °C: the pressure of the ISO 2533 standard atmosphere,
// 101325 (1 - 0.0065 h/288.15)^5.2559 Pa, over 287.05 J/(kg K) T.
func AirDensity(height, celsius float64) float64 {
	base := max(1-0.0065*height/288.15, 0)
	return 101325 * math.Pow(base, 5.2559) / (287.05 * max(celsius+273.15, 1))
}

// Road is what acts from outside.
type Road struct {
	Slope   drive.Quantity // rise over run
	Rolling drive.Quantity // coefficient
	Wind    drive.Quantity // m/s, against the rider positive
	Density drive.Quantity // of the air, kg/m³
	Drag    drive.Quantity // area, m²
}
