package rooms

import (
	"math"
	"strings"

	"steelyard/internal/document"
	"steelyard/internal/mass"
	"steelyard/internal/report"
	"steelyard/internal/road"
	"steelyard/internal/words"
)

// RoadCurves is what takes longer of a rough road: figures over speed, the
// response, spectra, an obstacle, and what it would take to do as well.
type RoadCurves struct {
	Road       RoadShown       `json:"road"`
	Obstacle   ObstacleShown   `json:"obstacle"`
	Sides      []RoadCurveSide `json:"sides"`
	Difference []RoadFigure    `json:"difference"` // of the second side minus the first, over the speeds of the curves
	Over       []Change        `json:"over"`       // the differences at the obstacle
	Gains      []RoadGain      `json:"gains"`      // what the worse side would need
	Caution    string          `json:"caution"`
}

// ObstacleShown is a single obstacle.
type ObstacleShown struct {
	Form    string  `json:"form"`
	Label   string  `json:"label"`
	Height  float64 `json:"height_mm"`
	Length  float64 `json:"length_mm"`
	Typical bool    `json:"typical"` // nobody said which

	Forms []ObstacleForm `json:"forms"` // that there are
}

// ObstacleForm is a form of an obstacle, with the length, mm, that it has when an
// obstacle takes it on.
type ObstacleForm struct {
	Key    string  `json:"key"`
	Label  string  `json:"label"`
	Length float64 `json:"length_mm"`
}

// RoadCurveSide is that of one side.
type RoadCurveSide struct {
	Build    string       `json:"build"`
	Load     string       `json:"load"`
	Name     string       `json:"name"`
	OK       bool         `json:"ok"` // false: there is no such motion, see Why
	Why      string       `json:"why,omitempty"`
	Curves   RoadCurve    `json:"curves"`
	Response RoadSpectrum `json:"response"` // root mean square over root mean square of the road's height, in the figure's unit per metre
	Spectra  RoadSpectrum `json:"spectra"`  // in the square of the figure's unit per Hz
	Over     *RoadOver    `json:"over,omitempty"`
}

// RoadSpectrum is figures over frequency.
type RoadSpectrum struct {
	Frequencies []float64      `json:"frequencies_hz"`
	Figures     []RoadSpectral `json:"figures"`
}

// RoadSpectral is a figure at each of several frequencies.
type RoadSpectral struct {
	Key    string    `json:"key"`
	Label  string    `json:"label"`
	Unit   string    `json:"unit"`
	Values []float64 `json:"values"`
}

// RoadOver is a ride over an obstacle. The traces are beside the times; one of what
// the bike has not is empty.
type RoadOver struct {
	OK       bool               `json:"ok"`
	Why      string             `json:"why,omitempty"`
	Problems []document.Problem `json:"problems"`
	Figures  []Figure           `json:"figures"`
	OffFront float64            `json:"off_front_s"` // how long the tyres are off the ground
	OffRear  float64            `json:"off_rear_s"`
	Marks    []RoadMark         `json:"marks"`

	Times     []float64 `json:"times_s"`
	LoadFront []float64 `json:"load_front_n"`
	LoadRear  []float64 `json:"load_rear_n"`
	Saddle    []float64 `json:"saddle_m_s2"`
	Rack      []float64 `json:"rack_m_s2"`
	PathFront []float64 `json:"path_front_mm"` // how the road rises as the tyre feels it
	PathRear  []float64 `json:"path_rear_mm"`
}

// RoadGain is what one side would need to do as well as the other in a figure.
type RoadGain struct {
	Key    string  `json:"key"` // of the figure
	Build  string  `json:"build"`
	Load   string  `json:"load"`
	Lever  string  `json:"lever"`
	Label  string  `json:"label"`
	Unit   string  `json:"unit"`   // percent of today's pressure, g off the lower fork legs, mm of sag
	Amount float64 `json:"amount"` // to be added
	Words  string  `json:"words"`
}

// Grids of the curves, and how many of a trace's steps are told: one in so many.
const (
	firstSpeed, lastSpeed, speedStep = 5.0, 45.0, 2.5 // km/h
	firstHertz, lastHertz            = 0.5, 50.0
	hertzSteps                       = 60
	traceStep                        = 3
)

// RoadCurvesOf tells what takes longer of the road that an evaluated document
// shows.
func RoadCurvesOf(e *report.Evaluation) *RoadCurves {
	w := e.Words()
	label := func(key string) string { return w.Label("road." + key) }
	rough, shown, surface := roadShown(e.Document, label)
	out := &RoadCurves{
		Road: shown, Sides: []RoadCurveSide{}, Difference: []RoadFigure{}, Over: []Change{}, Gains: []RoadGain{}, Caution: label("caution"),
	}
	obstacle := obstacleShown(rough, &out.Obstacle, label)
	var speeds []float64
	for v := firstSpeed; v <= lastSpeed; v += speedStep {
		speeds = append(speeds, v)
	}
	riders, over := make([]*roadRider, len(e.Sides)), make([][]told, len(e.Sides))
	for i := range e.Sides {
		none := RoadSpectrum{Frequencies: []float64{}, Figures: []RoadSpectral{}}
		side := RoadCurveSide{Curves: RoadCurve{Speeds: []float64{}, Figures: []RoadFigure{}}, Response: none, Spectra: none}
		var s RoadSide
		r := rideOf(e, i, &s, rough, label)
		side.Build, side.Load, side.Name, side.Why = s.Build, s.Load, s.Name, s.Why
		if r != nil {
			if _, err := r.at(shown.Speed, surface); err != nil {
				side.Why, r = roadProblem(r.bike.own.of.Build, err).Said(w).Message.In(w), nil
			}
		}
		if r != nil {
			side.OK = true
			side.Curves = r.curves(speeds, surface, label)
			side.Response, side.Spectra = r.spectra(shown.Speed, surface, label)
			side.Over, over[i] = r.over(e, obstacle, shown.Speed, w, label)
		}
		riders[i] = r
		out.Sides = append(out.Sides, side)
	}
	if len(riders) == 2 && riders[0] != nil && riders[1] != nil {
		out.Difference = differenceOver(e, riders[0], riders[1], speeds, surface, label)
		out.Over = changes(e, over[0], over[1], label)
		out.Gains = gains(e, riders[0], riders[1], shown.Speed, surface, w, label)
	}
	return out
}

// obstacleShown is the obstacle of a document.
func obstacleShown(rough *document.Rough, out *ObstacleShown, label func(string) string) road.Obstacle {
	*out = ObstacleShown{Form: document.DefaultForm, Height: document.DefaultEdgeHeight, Typical: true}
	if o := rough.Obstacle; o != nil {
		*out = ObstacleShown{Form: o.Form, Height: o.Height, Length: o.Length}
	}
	for _, form := range document.ObstacleForms {
		length := out.Length
		if form != document.DefaultForm && length <= 0 {
			length = document.DefaultLength
		}
		out.Forms = append(out.Forms, ObstacleForm{form, label("form." + form), length})
	}
	o := road.Obstacle{Height: out.Height / 1e3, Length: out.Length / 1e3}
	switch out.Form {
	case "edge":
		o.Form = road.Edge
	case "step":
		o.Form = road.Step
	case "hole":
		o.Form = road.Hole
	default:
		return road.Obstacle{} // told by document.Check
	}
	out.Label = label("form." + out.Form)
	return o
}

// spectra are the response and the spectra of the figures that are drawn.
func (r *roadRider) spectra(speed float64, surface road.Road, label func(string) string) (response, spectra RoadSpectrum) {
	frequencies := make([]float64, hertzSteps+1)
	for i := range frequencies {
		frequencies[i] = report.Decimal(firstHertz*math.Pow(lastHertz/firstHertz, float64(i)/hertzSteps), 4)
	}
	response, spectra = RoadSpectrum{frequencies, []RoadSpectral{}}, RoadSpectrum{frequencies, []RoadSpectral{}}
	for _, kind := range curveKinds {
		k := &kindsTold[kind]
		scaled := func(values []float64, factor float64) []float64 {
			for i := range values {
				values[i] *= factor
			}
			return values
		}
		if values := r.model.Response(kind, speed, frequencies); values != nil {
			response.Figures = append(response.Figures, RoadSpectral{k.key, label(k.key), k.unit, scaled(values, k.factor)})
		}
		if values := r.model.Spectrum(kind, speed, surface, frequencies); values != nil {
			spectra.Figures = append(spectra.Figures, RoadSpectral{k.key, label(k.key), k.unit, scaled(values, k.factor*k.factor)})
		}
	}
	return response, spectra
}

// joltsTold are the figures of a ride over an obstacle with what each is told as.
var joltsTold = [road.NumJolts]struct {
	key, unit string
	factor    float64
	decimals  int
}{
	road.MostLoadFront:   {"most_load_front", "n", 1, 1},
	road.MostLoadRear:    {"most_load_rear", "n", 1, 1},
	road.LeastLoadFront:  {"least_load_front", "n", 1, 1},
	road.LeastLoadRear:   {"least_load_rear", "n", 1, 1},
	road.SaddleJolt:      {"saddle_jolt", "m_s2", 1, 3},
	road.GripsJolt:       {"grips_jolt", "m_s2", 1, 3},
	road.RackJolt:        {"rack_jolt", "m_s2", 1, 3},
	road.ForkBagsJolt:    {"fork_bags_jolt", "m_s2", 1, 3},
	road.BarBagJolt:      {"bar_bag_jolt", "m_s2", 1, 3},
	road.MostTravelFront: {"most_travel_front", "mm", 1e3, 2},
	road.MostTravelRear:  {"most_travel_rear", "mm", 1e3, 2},
	road.RackForce:       {"rack_force", "n", 1, 1},
}

// over rides over an obstacle.
func (r *roadRider) over(e *report.Evaluation, o road.Obstacle, speed float64, w *words.Words, label func(string) string) (*RoadOver, []told) {
	out := &RoadOver{
		Problems: []document.Problem{}, Figures: []Figure{}, Marks: []RoadMark{},
		Times: []float64{}, LoadFront: []float64{}, LoadRear: []float64{}, Saddle: []float64{}, Rack: []float64{}, PathFront: []float64{}, PathRear: []float64{},
	}
	for _, p := range e.Report.Problems {
		if strings.HasPrefix(p.Field, "show.rough.obstacle") && p.Severity == document.SeverityError {
			out.Problems = append(out.Problems, p)
		}
	}
	var passage *road.Passage
	if len(out.Problems) == 0 {
		var err error
		if passage, err = r.model.Over(o, speed); err != nil {
			out.Problems = append(out.Problems, roadProblem(r.bike.own.of.Build, err).Said(w))
		}
	}
	if len(out.Problems) > 0 {
		out.Why = out.Problems[0].Message.In(w)
		return out, nil
	}
	out.OK = true
	var list []told
	for j := range road.NumJolts {
		f, k := &passage.Jolts[j], &joltsTold[j]
		if f.There && !math.IsNaN(f.Value) && !math.IsInf(f.Value, 0) {
			list = append(list, told{k.key, k.unit, k.factor, k.decimals, f.Value, r.charge(f)})
		}
	}
	for i := range list {
		out.Figures = append(out.Figures, list[i].figure(label))
	}
	for _, m := range passage.Marks {
		out.Marks = append(out.Marks, roadMark(w, m))
	}
	out.OffFront, out.OffRear = report.Decimal(passage.OffFront, 4), report.Decimal(passage.OffRear, 4)
	for _, t := range []struct {
		to       *[]float64
		from     []float64
		factor   float64
		decimals int
	}{
		{&out.Times, passage.Times, 1, 4}, {&out.LoadFront, passage.LoadFront, 1, 1}, {&out.LoadRear, passage.LoadRear, 1, 1},
		{&out.Saddle, passage.SaddleUp, 1, 3}, {&out.Rack, passage.RackUp, 1, 3}, {&out.PathFront, passage.PathFront, 1e3, 2}, {&out.PathRear, passage.PathRear, 1e3, 2},
	} {
		for i := 0; i < len(t.from); i += traceStep {
			*t.to = append(*t.to, report.Decimal(t.factor*t.from[i], t.decimals))
		}
	}
	return out, list
}

// differenceOver is the difference of the drawn figures at each speed.
func differenceOver(e *report.Evaluation, a, b *roadRider, speeds []float64, surface road.Road, label func(string) string) []RoadFigure {
	out := []RoadFigure{}
	for n, v := range speeds {
		x, err1 := a.at(v/3.6, surface)
		y, err2 := b.at(v/3.6, surface)
		if err1 != nil || err2 != nil {
			return []RoadFigure{}
		}
		i := 0
		for _, kind := range curveKinds {
			fa, fb, k := &x.Figures[kind], &y.Figures[kind], &kindsTold[kind]
			if !fa.There || !fb.There {
				continue
			}
			if n == 0 {
				out = append(out, RoadFigure{Key: k.key, Label: label(k.key), Unit: k.unit})
			}
			plus := e.Difference(func(side int, budget *mass.Budget, sign float64) {
				if side == 0 {
					a.charge(fa)(budget, sign)
				} else {
					b.charge(fb)(budget, sign)
				}
			})
			out[i].Values = append(out[i].Values, report.Decimal(k.factor*(fb.Value-fa.Value), k.decimals))
			out[i].Plus = append(out[i].Plus, report.Decimal(k.factor*plus, k.decimals))
			i++
		}
	}
	return out
}

// gains say what the side that does worse in a figure, beyond doubt, would need to
// do as well as the other.
func gains(e *report.Evaluation, a, b *roadRider, speed float64, surface road.Road, w *words.Words, label func(string) string) []RoadGain {
	out := []RoadGain{}
	x, err1 := a.at(speed, surface)
	y, err2 := b.at(speed, surface)
	if err1 != nil || err2 != nil {
		return out
	}
	for _, kind := range []road.Kind{road.LoadFront, road.LoadRear, road.SaddleWk} {
		k := &kindsTold[kind]
		fa, fb := x.Figures[kind], y.Figures[kind]
		list := func(r *roadRider, f *road.Figure) []told {
			return []told{{k.key, k.unit, k.factor, k.decimals, f.Value, r.charge(f)}}
		}
		change := changes(e, list(a, &fa), list(b, &fb), label)
		if len(change) == 0 {
			continue
		}
		var worse *roadRider
		var side int
		var wanted float64
		switch change[0].Verdict {
		case report.More:
			worse, side, wanted = b, 1, fa.Value
		case report.Less:
			worse, side, wanted = a, 0, fb.Value
		default:
			continue
		}
		for _, l := range road.Levers() {
			amount, ok := worse.model.Match(kind, wanted, l, speed, surface)
			if !ok || !permitted(worse, l, amount) {
				continue
			}
			g := RoadGain{Key: k.key, Lever: l.String(), Label: label("lever." + l.String())}
			g.Build, g.Load = e.Report.Sides[side].Build, e.Report.Sides[side].Load
			switch l {
			case road.PressureFront, road.PressureRear, road.PressureBoth:
				g.Unit, g.Amount = "%", report.Decimal(100*(amount-1), 1)
			case road.ForkLoad:
				g.Unit, g.Amount = "g", report.Decimal(1e3*amount, 0)
			default:
				at := road.Side(l - road.SagFront)
				g.Unit, g.Amount = "mm", report.Decimal(1e3*(amount-worse.bike.Ends[at].Spring.Sag.Value), 1)
			}
			g.Words = w.Say("road.gain."+l.String()+"."+direction(g.Amount), "side", e.SideName(side), "figure", label(g.Key),
				"amount", words.Number(math.Abs(g.Amount)).In(w))
			out = append(out, g)
		}
	}
	return out
}

// permitted reports whether the pressures that a lever leads to are what the makers
// permit, as far as they are said.
func permitted(r *roadRider, l road.Lever, times float64) bool {
	setup := r.bike.own.of.Build.Setup
	for side := range road.Both {
		if l != road.PressureBoth && l != road.PressureFront+road.Lever(side) {
			continue
		}
		end := endOf(setup, side)
		for _, s := range r.bike.settings {
			if bar := s.Value * times; s.Key == "pressure_"+side.String() &&
				(end.TyreLeast != nil && bar < *end.TyreLeast || end.TyreMost != nil && bar > *end.TyreMost || end.RimMost != nil && bar > *end.RimMost) {
				return false
			}
		}
	}
	return true
}

func direction(v float64) string {
	if v < 0 {
		return "less"
	}
	return "more"
}
