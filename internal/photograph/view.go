package photograph

import (
	"math"

	"steelyard/internal/document"
	"steelyard/internal/geometry"
	"steelyard/internal/words"
)

// What a reading depends on beside where the marks are, by index into a list of
// errors. What lies behind them are, for each mark, its x and y in px and how far
// towards the camera it is in m.
const (
	yaw     = iota // rad, how far the camera looks to the side of square
	pitch          // rad, and up or down
	aside          // how far the picture's middle is beside where the lens points, of its longer side: a picture may be cut
	above          // likewise up
	bend           // of the lens: how much farther out a corner is seen than it is
	far            // share of the camera's distance
	base           // m of the wheelbase
	round          // m of the rear tyre's radius
	slope          // m by which the front axle is higher than it should be
	setback        // m of the saddle
	bearing        // m that the lower bearing is high
	others
	errors = others + 3*numMarks
)

// How far each of these may be off (common practice, no source, unless said).
const (
	square   = 5 * math.Pi / 180 // rad, for somebody who takes care to stand square to the bike
	cut      = 0.05              // of the picture's longer side
	barrel   = 0.01              // of a telephone's lens in a picture that it has put right
	paced    = 0.25              // of a distance that was paced out
	taped    = 0.003             // m, of a wheelbase measured with a tape
	figured  = 0.015             // m, of the wheelbase that follows from the figures of a build
	tyre     = 0.006             // m, of a tyre's radius by its size
	level    = 0.005             // m, of ground and tyres together
	seated   = 0.010             // m, of the saddle's setback
	cup      = 0.006             // m, see geometry.LowerBearing
	grain    = 0.5               // px: a mark is no finer than the picture
	leastPix = 20                // px between the axles that anything can be read from
)

// towards is how far what is marked is towards the camera from the bike's middle
// plane, with how much that may be off, m: the ends of the axles and of the crank's,
// the side of the head tube, the saddle's edge (common practice, no source).
var towards = [numMarks][2]float64{
	rearAxle: {0.070, 0.015}, frontAxle: {0.055, 0.015}, bracket: {0.065, 0.025},
	headTop: {0.018, 0.018}, headBottom: {0.018, 0.018}, saddle: {0.020, 0.030}, tread: {0, 0.010},
}

// view is a photograph of a build with what is known of both.
type view struct {
	p       *Photograph
	at      [numMarks]point // px
	base    float64         // the known wheelbase, m
	radius  float64         // of the rear tyre, m
	rise    float64         // of the front axle over the rear one, m
	setback float64         // m
	density float64         // px to the metre, nearly
	mirror  float64         // -1 where the bike looks to the left when it stands upright
	half    [errors]float64
}

// newView returns the view of a photograph of a build, in which both axles are
// marked, and what gives the scale.
func newView(p *Photograph, b *document.Build) (*view, error) {
	if err := p.check(); err != nil {
		return nil, err
	}
	stand := *b
	stand.Fork.Sag, stand.Rear.Sag = 0, 0
	bike, _ := geometry.Pose(&stand)
	if bike == nil {
		return nil, words.Tell("photograph.figures")
	}
	v := &view{
		p: p, at: p.marks(), base: bike.Wheelbase, radius: bike.RearRadius, rise: bike.FrontRadius - bike.RearRadius,
		setback: b.Saddle.Setback / 1000, mirror: 1,
	}
	axles := v.at[frontAxle].minus(v.at[rearAxle])
	known, seen := figured, axles.norm()
	if p.Wheelbase > 0 {
		v.base, known = p.Wheelbase/1000, taped
	}
	v.density = seen / v.base
	if p.Scale == ByWheel {
		seen = v.at[tread].minus(v.at[rearAxle]).norm()
		v.density = seen / v.radius
	}
	if !(axles.norm() >= leastPix) || !(seen >= leastPix) {
		return nil, words.Tell("photograph.close")
	}
	v.orient()

	long := float64(max(p.Width, p.Height))
	v.half = [errors]float64{
		yaw: square, pitch: square, aside: cut, above: cut, bend: barrel, far: paced,
		base: known, round: tyre, slope: level, setback: seated, bearing: cup,
	}
	blur := math.Hypot(p.Within/1000*v.density, grain*max(1, long/2400))
	for i := range numMarks {
		k := v.half[others+3*i:]
		k[0], k[1], k[2] = blur, blur, towards[i][1]
	}
	return v, nil
}

// orient finds which way the bike looks: what is marked high on it is above its
// axles. Without that the picture is taken as upright.
func (v *view) orient() {
	a := v.at[frontAxle].minus(v.at[rearAxle])
	side := a.x
	for _, high := range []int{saddle, headTop} {
		h := v.at[high].minus(v.at[rearAxle])
		if s := a.y*h.x - a.x*h.y; s == s && s != 0 {
			side = s
		}
	}
	if side < 0 {
		v.mirror = -1
	}
}

// plane returns where what is marked is in the bike's middle plane, m, y upwards in
// the picture, for a camera that is off by some errors: a ray from the lens through
// the picture, turned as the camera is, meets the plane in which the mark lies. The
// scale is right nearly, and the origin is anywhere.
func (v *view) plane(mark int, e *[errors]float64) point {
	w, h := float64(v.p.Width), float64(v.p.Height)
	long := max(w, h)
	k := e[others+3*mark:]
	x := v.at[mark].x + k[0] - w/2 - e[aside]*long
	y := h/2 - v.at[mark].y - k[1] - e[above]*long
	out := 1 - e[bend]*(x*x+y*y)/(w*w/4+h*h/4)
	x, y = x*out, y*out
	distance := v.p.Distance * (1 + e[far])
	z := -v.density * distance
	sin, cos := math.Sincos(e[yaw])
	x, z = x*cos+z*sin, z*cos-x*sin
	sin, cos = math.Sincos(e[pitch])
	y, z = y*cos-z*sin, y*sin+z*cos
	reach := (distance - towards[mark][0] - k[2]) / -z
	return point{x * reach, y * reach}
}

// laid are all marks in the axes of the bike that stands on the ground, origin at
// the rear axle, x forward and y up, m, with how much larger the wheelbase says that
// everything is than the rear wheel does, as a share; both for some errors.
func (v *view) laid(e *[errors]float64) (at [numMarks]point, excess float64) {
	for i := range at {
		at[i] = v.plane(i, e)
	}
	origin := at[rearAxle]
	for i := range at {
		at[i] = at[i].minus(origin)
	}
	along := at[frontAxle].norm()
	ahead := point{at[frontAxle].x / along, at[frontAxle].y / along}
	rise := v.rise + e[slope]
	byBase := math.Hypot(v.base+e[base], rise) / along
	byWheel := (v.radius + e[round]) / at[tread].norm()
	scale := byBase
	if v.p.Scale == ByWheel {
		scale = byWheel
	}
	sin := min(max(rise/(scale*along), -1), 1)
	cos := math.Sqrt(1 - sin*sin)
	for i := range at {
		p := at[i]
		x, y := scale*(p.x*ahead.x+p.y*ahead.y), scale*v.mirror*(p.y*ahead.x-p.x*ahead.y)
		at[i] = point{x*cos - y*sin, x*sin + y*cos}
	}
	return at, byBase/byWheel - 1
}
