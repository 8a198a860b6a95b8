package rooms

import (
	"steelyard/internal/document"
	"steelyard/internal/effort"
	"steelyard/internal/report"
)

// Rides are the builds of an evaluated document with who rides them, on its road.
// The chapters on gears and on climbing ask for the same ones: what one has found
// is there for the other.
type Rides struct {
	of    *report.Evaluation
	known map[onSide]*driven
}

// onSide is a build with its load, and the name of its mass in budgets.
type onSide struct {
	weighed  *report.Weighed
	massName string
}

// driven is a build with who rides it.
type driven struct {
	*drivetrain
	course *course       // nil where it cannot go on a road
	today  *document.Day // that the document shows, nil without one

	day    *effort.Day // that, once it was asked for
	result effort.DayResult
}

// RidesOf returns the rides of an evaluated document.
func RidesOf(e *report.Evaluation) *Rides { return &Rides{e, make(map[onSide]*driven)} }

// Of reports whether these are the rides of an evaluation.
func (r *Rides) Of(e *report.Evaluation) bool { return r != nil && r.of == e }

// massNames are those under which the masses of the two sides stand in budgets.
var massNames = [2]string{"mass 0", "mass 1"}

// side is a side of the comparison, which could be weighed.
func (r *Rides) side(i int) *driven {
	return r.at(r.of.Sides[i], massNames[i])
}

// build is a build of the document; where it is a side of the comparison it is that.
func (r *Rides) build(i int) *driven {
	w := r.of.Builds[i]
	if w == nil {
		d := r.of.Document
		t := drivetrainOf(d, &d.Builds[i], nil, ridesOf(riderOf(d, nil)))
		t.limits(t.rides.mass())
		return &driven{drivetrain: t}
	}
	for k, s := range r.of.Sides {
		if s == w {
			return r.side(k)
		}
	}
	return r.at(w, "mass")
}

func (r *Rides) at(w *report.Weighed, massName string) *driven {
	key := onSide{w, massName}
	if known := r.known[key]; known != nil {
		return known
	}
	d, a := r.of.Document, w.Assembly
	out := &driven{drivetrain: drivetrainOf(d, a.Build, a, ridesOf(riderOf(d, a.Load))), today: dayOf(d)}
	out.limits(out.rides.mass())
	if out.drive != nil && out.rollOut.Value > 0 {
		out.course = onRoad(d, out.drivetrain, massName)
	}
	r.known[key] = out
	return out
}

// ridden returns what the day takes.
func (r *driven) ridden() (*effort.Day, *effort.DayResult) {
	if r.day == nil {
		r.day = r.course.day(r.today)
		r.result = r.course.bike.Day(&r.rides.Rider, &r.course.road, r.day)
	}
	return r.day, &r.result
}
