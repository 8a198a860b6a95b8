package scene

import (
	"math"
	"strings"

	"steelyard/internal/document"
	"steelyard/internal/drive"
	"steelyard/internal/order"
)

// What is drawn of the fittings from behind; at is the point y to the left and z
// up of the ground, both in m.

// rearDrive draws the hub of the rear wheel with its cogs, to the right.
func (d *drawing) rearDrive(at func(y, z float64) pt) {
	axle, s := d.b.RearAxle.Z, d.cam.Scale
	if f := d.fitted.fitting("gear-hub"); f != nil && f.Form == document.FormDisc {
		half, r := sane(f.Size.Y, 0.02, 0.13)/2, f.radius(0.045)*s
		w := half * s
		d.roundBox(box{at(0, 0).x - w, at(0, axle).y - r, at(0, 0).x + w, at(0, axle).y + r}, 0.2*r)
		d.paint(Metal, Outline, d.edge*1.2)
	}
	var radii []float64
	for _, kind := range [...]string{"cassette", "cog"} {
		if len(radii) == 0 {
			radii = d.radii(kind)
		}
	}
	if d.fitted.fitting("cassette") == nil && len(radii) > 1 {
		radii = radii[:1]
	}
	// The largest cog is inside, by the spokes.
	const inner, apart = -0.024, 0.0038
	for i, r := range radii {
		y := inner - apart*float64(i)
		if len(radii) == 1 {
			y = -0.052
		}
		d.taper(at(y, axle-r/s), at(y, axle+r/s), max(0.6, d.mm(1.2)), max(0.6, d.mm(1.2)))
	}
	d.paint(Metal, Outline, d.edge*0.7)
}

// rearGearbox draws a crank gearbox's shell over the cranks' axle.
func (d *drawing) rearGearbox(at func(y, z float64) pt) {
	d.fitted.each("crank-gearbox", func(f *Fitting) {
		wide, high := 0.09, 0.15
		if f.Form == document.FormBox {
			wide, high = sane(f.Size.Y, 0.02, 0.4), sane(f.Size.Z, 0.02, 0.6)
		}
		c := at(f.Place.Y, f.Place.Z)
		w, h := wide/2*d.cam.Scale, high/2*d.cam.Scale
		d.roundBox(box{c.x - w, c.y - h, c.x + w, c.y + h}, 0.3*w)
		d.paint(Metal, Outline, d.edge*1.3)
	})
}

// rearRings draws the chainrings edge on.
func (d *drawing) rearRings(at func(y, z float64) pt) {
	z, s := d.b.BottomBracket.Z, d.cam.Scale
	for i, r := range d.radii("chainring") {
		y := -0.047 + 0.007*float64(i)
		d.taper(at(y, z-r/s), at(y, z+r/s), max(0.7, d.mm(1.5)), max(0.7, d.mm(1.5)))
	}
	d.paint(Metal, Outline, d.edge*0.8)
}

// rearCage draws a derailleur or a tensioner, which hangs from the right dropout.
func (d *drawing) rearCage(at func(y, z float64) pt) {
	for _, kind := range [...]string{"derailleur", "tensioner"} {
		f := d.fitted.fitting(kind)
		if f == nil || f.Station != "rear-derailleur" {
			continue
		}
		high := 0.15
		if f.Form == document.FormBox {
			high = sane(f.Size.Z, 0.06, 0.2)
		}
		z := d.b.RearAxle.Z
		d.capsule(at(-0.072, z-0.01), at(-0.062, z-0.05), d.mm(8), d.mm(8))
		if kind == "derailleur" {
			d.capsule(at(-0.062, z-0.05), at(-0.046, z-0.075), d.mm(15), d.mm(12))
		}
		d.taper(at(-0.046, z-0.06), at(-0.046, z-0.06-0.75*high), d.mm(6), d.mm(6))
		d.solid(Metal, Outline, d.edge)
		return
	}
}

// rearGuards draws mudguards over the tyres, as seen from behind.
func (d *drawing) rearGuards(at func(y, z float64) pt, front bool) {
	d.fitted.each("mudguard", func(f *Fitting) {
		if strings.HasPrefix(f.Station, "front-") != front {
			return
		}
		r, axle, half := d.b.RearRadius, d.b.RearAxle.Z, (d.b.RearRadius-d.b.RearRim)/2
		foot := axle - 0.25*r
		if front {
			r, axle, half = d.b.FrontRadius, d.b.FrontAxle.Z, (d.b.FrontRadius-d.b.FrontRim)/2
			foot = axle
		}
		if f.Form == document.FormBox && f.Size.X < 0.5 {
			foot = axle + 0.6*r
		}
		half = max(half+0.004, sane(f.Size.Y, 0, 0.2)/2)
		top := max(axle+r+0.015, f.Place.Z)
		p, q := at(half, top), at(-half, foot)
		if !(q.y > p.y) {
			return
		}
		d.roundBox(box{p.x, p.y, q.x, q.y}, d.mm(20))
		if d.open(f) {
			d.paint(Paper, Unsprung, d.edge)
		} else {
			d.paint(Tube, Outline, d.edge)
		}
	})
}

// rearDropBar draws a bar that is bent down, from behind.
func (d *drawing) rearDropBar(at func(y, z float64) pt, wide, down float64) {
	z, m := d.b.BarClamp.Z, d.mm
	half := wide / 2
	both(func(k float64) {
		d.move(at(0, z))
		d.line(at(k*(half-0.03), z))
		d.cubic(at(k*half, z), at(k*half, z-0.01), at(k*(half+0.004), z-0.04))
		d.line(at(k*(half+0.012), z-down))
	})
	path := d.take()
	d.add(Mark{Path: path, Stroke: Outline, Width: m(27) + 2*d.edge})
	d.add(Mark{Path: path, Stroke: Tyre, Width: m(27)})
	both(func(k float64) {
		d.capsule(at(k*half, z-0.03), at(k*half, z+0.045), m(17), m(13))
		d.paint(Metal, Outline, d.edge)
	})
}

// radii are those of the rings or cogs of a kind, px, largest first: by their
// teeth, where those are known, else by their shapes.
func (d *drawing) radii(kind string) (list []float64) {
	pitch, scale := drive.Pitch, 1.0
	if d.fitted.fitting("belt") != nil {
		pitch = beltPitch
	}
	if kind == "cassette" {
		// Its shape is the disc that its mass would fill, of which the largest
		// cog is some 1.45 times as large (common practice, no source).
		scale = 1.45
	}
	d.fitted.each(kind, func(f *Fitting) {
		for _, n := range f.Teeth {
			if n >= 6 {
				list = append(list, pitchRadius(min(n, 200), pitch)*d.cam.Scale)
			}
		}
		if len(f.Teeth) == 0 && f.Form == document.FormDisc {
			list = append(list, f.radius(0)*scale*d.cam.Scale)
		}
	})
	order.Stable(list, func(a, b float64) int { return int(math.Copysign(1, b-a)) })
	if kind == "cassette" && len(list) == 1 { // its cogs are not told one by one
		const cogs = 9
		most, least := list[0], min(0.024*d.cam.Scale, 0.5*list[0])
		list = list[:0]
		for i := range cogs {
			list = append(list, most*math.Pow(least/most, float64(i)/(cogs-1)))
		}
	}
	const enough = 16
	return list[:min(len(list), enough)]
}
