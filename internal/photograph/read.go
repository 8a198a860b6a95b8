package photograph

import (
	"math"

	"steelyard/internal/document"
	"steelyard/internal/geometry"
	"steelyard/internal/mass"
)

// Reading is what a photograph says of a frame.
type Reading struct {
	Wheelbase float64  `json:"wheelbase_mm"` // that the scale makes
	Scaled    string   `json:"scaled"`       // by what: "measured" or "figures", a wheelbase, or "wheel"
	Pixel     float64  `json:"pixel_mm"`     // what a px is on the bike
	Figures   []Figure `json:"figures"`      // those that what is marked gives
	Check     *Check   `json:"check"`        // of the scale, where wheelbase and wheel are both known
}

// Figure is one that was read off a photograph.
type Figure struct {
	Key     string  `json:"key"`   // what the document calls it, or what the geometry of a report does
	Taken   bool    `json:"taken"` // it can be taken into the document: its key is that of a figure there
	Unit    string  `json:"unit"`  // "mm" or "deg"
	Value   float64 `json:"value"` // as fine as it may be entered
	Plus    float64 `json:"plus"`
	Now     float64 `json:"now"`     // what the build has
	Differs bool    `json:"differs"` // the build's is outside of what was read
}

// Check holds the scale by the wheelbase against that by the wheel.
type Check struct {
	Excess float64 `json:"excess_percent"` // by how much larger the wheelbase makes everything
	Plus   float64 `json:"plus"`
	Agrees bool    `json:"agrees"`
}

// figure is how a figure is read: of what lies in the axes of [view.laid].
type figure struct {
	key     string
	unit    string
	of      func(v *view, at *[numMarks]point, e *[errors]float64) float64
	now     func(b *document.Build) *float64 // in the document; nil for what follows from it
	follows func(b *geometry.Bike) float64   // m
}

func between(a, b int) func(*view, *[numMarks]point, *[errors]float64) float64 {
	return func(_ *view, at *[numMarks]point, _ *[errors]float64) float64 {
		return 1000 * at[b].minus(at[a]).norm()
	}
}

// headAngle is that of the steering axis, rad.
func headAngle(at *[numMarks]point) float64 {
	d := at[headTop].minus(at[headBottom])
	return math.Atan2(d.y, -d.x)
}

// fork is from the crown race to the front axle, along the steering axis and ahead
// of it, m.
func fork(at *[numMarks]point, e *[errors]float64) (along, ahead float64) {
	sin, cos := math.Sincos(headAngle(at))
	d := at[frontAxle].minus(at[headBottom])
	return d.x*cos - d.y*sin - geometry.LowerBearing - e[bearing], d.x*sin + d.y*cos
}

// seat is from the bottom bracket to where the saddle would be without its setback.
func seat(v *view, at *[numMarks]point, e *[errors]float64) point {
	d := at[saddle].minus(at[bracket])
	d.x += v.setback + e[setback]
	return d
}

const degree = math.Pi / 180

var figures = [...]figure{
	{key: "frame.stack_mm", unit: "mm", now: func(b *document.Build) *float64 { return &b.Frame.Stack },
		of: func(_ *view, at *[numMarks]point, _ *[errors]float64) float64 {
			return 1000 * (at[headTop].y - at[bracket].y)
		}},
	{key: "frame.reach_mm", unit: "mm", now: func(b *document.Build) *float64 { return &b.Frame.Reach },
		of: func(_ *view, at *[numMarks]point, _ *[errors]float64) float64 {
			return 1000 * (at[headTop].x - at[bracket].x)
		}},
	{key: "frame.head_tube_mm", unit: "mm", now: func(b *document.Build) *float64 { return &b.Frame.HeadTube }, of: between(headTop, headBottom)},
	{key: "frame.head_angle_deg", unit: "deg", now: func(b *document.Build) *float64 { return &b.Frame.HeadAngle },
		of: func(_ *view, at *[numMarks]point, _ *[errors]float64) float64 { return headAngle(at) / degree }},
	{key: "frame.seat_angle_deg", unit: "deg", now: func(b *document.Build) *float64 { return &b.Frame.SeatAngle },
		of: func(v *view, at *[numMarks]point, e *[errors]float64) float64 {
			d := seat(v, at, e)
			return math.Atan2(d.y, -d.x) / degree
		}},
	{key: "frame.chainstay_mm", unit: "mm", now: func(b *document.Build) *float64 { return &b.Frame.Chainstay }, of: between(rearAxle, bracket)},
	{key: "frame.bb_drop_mm", unit: "mm", now: func(b *document.Build) *float64 { return &b.Frame.BBDrop },
		of: func(_ *view, at *[numMarks]point, _ *[errors]float64) float64 { return -1000 * at[bracket].y }},
	{key: "fork.length_mm", unit: "mm", now: func(b *document.Build) *float64 { return &b.Fork.Length },
		of: func(_ *view, at *[numMarks]point, e *[errors]float64) float64 {
			along, _ := fork(at, e)
			return 1000 * along
		}},
	{key: "fork.offset_mm", unit: "mm", now: func(b *document.Build) *float64 { return &b.Fork.Offset },
		of: func(_ *view, at *[numMarks]point, e *[errors]float64) float64 {
			_, ahead := fork(at, e)
			return 1000 * ahead
		}},
	{key: "saddle.height_mm", unit: "mm", now: func(b *document.Build) *float64 { return &b.Saddle.Height },
		of: func(v *view, at *[numMarks]point, e *[errors]float64) float64 { return 1000 * seat(v, at, e).norm() }},
	{key: "front_centre", unit: "mm", follows: func(b *geometry.Bike) float64 { return b.FrontCentre }, of: between(bracket, frontAxle)},
	{key: "wheelbase", unit: "mm", follows: func(b *geometry.Bike) float64 { return b.Wheelbase },
		of: func(v *view, at *[numMarks]point, _ *[errors]float64) float64 {
			if v.p.Scale != ByWheel {
				return math.NaN() // it is what gives the scale
			}
			return 1000 * at[frontAxle].x
		}},
}

// Read reads the frame of a build off a photograph. The ± of a figure follows from
// how far each mark, and all that is taken of camera, wheels and saddle, may be off,
// each by itself, and is told as all others: [mass.Expanded].
func Read(p *Photograph, b *document.Build) (*Reading, error) {
	v, err := newView(p, b)
	if err != nil {
		return nil, err
	}
	var e [errors]float64
	at, _ := v.laid(&e)
	r := &Reading{Wheelbase: math.Round(1000 * at[frontAxle].x), Scaled: "figures", Figures: []Figure{}}
	r.Pixel = math.Round(1e5*at[frontAxle].norm()/v.at[frontAxle].minus(v.at[rearAxle]).norm()) / 100
	switch {
	case p.Scale == ByWheel:
		r.Scaled = ByWheel
	case p.Wheelbase > 0:
		r.Scaled = "measured"
	}
	values, plus := v.all()
	stand := *b
	stand.Fork.Sag, stand.Rear.Sag = 0, 0
	bike, _ := geometry.Pose(&stand)
	for i := range figures {
		f := &figures[i]
		if math.IsNaN(values[i]) {
			continue
		}
		fine := 1.
		if f.unit == "deg" {
			fine = 10
		}
		g := Figure{
			Key: f.key, Taken: f.now != nil, Unit: f.unit,
			Value: math.Round(values[i]*fine) / fine,
			Plus:  math.Ceil(plus[i]*fine) / fine,
		}
		if f.now != nil {
			g.Now = *f.now(&stand)
		} else {
			g.Now = math.Round(1000 * f.follows(bike))
		}
		g.Differs = math.Abs(g.Now-g.Value) > g.Plus
		r.Figures = append(r.Figures, g)
	}
	if x, u := values[len(figures)], plus[len(figures)]; !math.IsNaN(x) {
		r.Check = &Check{Excess: math.Round(1000*x) / 10, Plus: math.Ceil(1000*u) / 10, Agrees: math.Abs(x) <= u}
	}
	return r, nil
}

// all reads all figures, and the check of the scale behind them, with their ±.
func (v *view) all() (values, plus [len(figures) + 1]float64) {
	read := func(e *[errors]float64) (out [len(figures) + 1]float64) {
		at, excess := v.laid(e)
		for i := range figures {
			out[i] = figures[i].of(v, &at, e)
		}
		out[len(figures)] = excess
		return out
	}
	var e [errors]float64
	values = read(&e)
	var variance, sum [len(figures) + 1]float64
	for k, half := range v.half {
		e[k] = half
		more := read(&e)
		e[k] = -half
		less := read(&e)
		e[k] = 0
		for i := range values {
			// What stands askew is foreshortened whichever way it does.
			off := max(math.Abs(more[i]-values[i]), math.Abs(less[i]-values[i]))
			u := mass.Rectangular(off)
			variance[i] += u * u
			sum[i] += u
		}
	}
	for i := range plus {
		plus[i] = mass.Expanded(variance[i], sum[i])
	}
	return values, plus
}
