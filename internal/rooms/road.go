package rooms

import (
	"errors"
	"math"
	"strings"

	"steelyard/internal/assembly"
	"steelyard/internal/document"
	"steelyard/internal/mass"
	"steelyard/internal/report"
	"steelyard/internal/road"
	"steelyard/internal/words"
)

// Road is what a rough road does to the sides of a comparison.
type Road struct {
	Road       RoadShown    `json:"road"`
	Sides      []RoadSide   `json:"sides"`
	Difference []RoadChange `json:"difference"`      // of the second minus the first; empty without a second
	Words      string       `json:"words,omitempty"` // what of that is beyond doubt, a paragraph
	LeftOut    string       `json:"left_out"`        // what the model leaves out, a paragraph
	Caution    string       `json:"caution"`
}

// RoadShown is the road, and how it is ridden.
type RoadShown struct {
	Class     string  `json:"class"`         // "" where the roughness was typed
	Roughness float64 `json:"roughness_cm3"` // at 0.1 cycle/m
	Speed     float64 `json:"speed_m_s"`
	Typical   bool    `json:"typical"` // nobody said which road, or how fast
	Label     string  `json:"label"`   // the road in plain words
}

// RoadSide is what the road does to one side. A figure that the bike has not, as
// the travel of a rigid end, is left out.
type RoadSide struct {
	Build    string             `json:"build"`
	Load     string             `json:"load"`
	Name     string             `json:"name"`
	State    document.State     `json:"state"`
	OK       bool               `json:"ok"`              // false: there is no such motion, see Why
	Why      string             `json:"why,omitempty"`   // a sentence
	Words    string             `json:"words,omitempty"` // what it means, a paragraph
	Problems []document.Problem `json:"problems"`        // by field, for which there are no figures

	Standing bool           `json:"standing"`  // the rider stands
	SetState document.State `json:"set_state"` // in which the springs were set
	Settings []RoadSetting  `json:"settings"`
	Inputs   []Input        `json:"inputs"` // what was taken of a rider who stands
	Sketch   *RoadSketch    `json:"sketch,omitempty"`
	Ways     []RoadWays     `json:"ways"`    // in which those can be said
	Ratings  []RoadRating   `json:"ratings"` // by the makers
	Modes    []RoadMode     `json:"modes"`   // the slowest first

	LoadFront       *float64 `json:"tyre_load_rms_front,omitempty"` // share of the static load
	LoadFrontPlus   *float64 `json:"tyre_load_rms_front_plus,omitempty"`
	LoadRear        *float64 `json:"tyre_load_rms_rear,omitempty"`
	LoadRearPlus    *float64 `json:"tyre_load_rms_rear_plus,omitempty"`
	Saddle          *float64 `json:"saddle_wk_m_s2,omitempty"`
	SaddlePlus      *float64 `json:"saddle_wk_m_s2_plus,omitempty"`
	Grips           *float64 `json:"grips_wh_m_s2,omitempty"`
	GripsPlus       *float64 `json:"grips_wh_m_s2_plus,omitempty"`
	TravelFront     *float64 `json:"travel_rms_front_mm,omitempty"`
	TravelFrontPlus *float64 `json:"travel_rms_front_mm_plus,omitempty"`
	TravelRear      *float64 `json:"travel_rms_rear_mm,omitempty"`
	TravelRearPlus  *float64 `json:"travel_rms_rear_mm_plus,omitempty"`

	Figures []Figure   `json:"figures"` // all of them, rounded
	Marks   []RoadMark `json:"marks"`   // where the model ends
	Curves  RoadCurve  `json:"curves"`  // over a few speeds; the whole is in RoadCurves
}

// RoadMode is a way in which the bike swings by itself.
type RoadMode struct {
	Key           string    `json:"key"` // bounce, pitch, hop-front, hop-rear, body
	Label         string    `json:"label"`
	Words         string    `json:"words"` // what moves
	Frequency     float64   `json:"frequency_hz"`
	FrequencyPlus float64   `json:"frequency_hz_plus"`
	Damping       float64   `json:"damping"` // share of critical
	DampingPlus   float64   `json:"damping_plus"`
	Shape         RoadShape `json:"shape"`
}

// RoadShape is how far places go up in a mode, as real and imaginary part; the
// largest is 1. Travels are along the suspension.
type RoadShape struct {
	FrameFront [2]float64 `json:"frame_front"` // over the axles
	FrameRear  [2]float64 `json:"frame_rear"`
	AxleFront  [2]float64 `json:"axle_front"`
	AxleRear   [2]float64 `json:"axle_rear"`
	Rider      [2]float64 `json:"rider"`
	ForkTravel [2]float64 `json:"fork_travel"`
	RearTravel [2]float64 `json:"rear_travel"`
}

// RoadMark says where a figure is at the end of what the model can say.
type RoadMark struct {
	Key     string   `json:"key"`
	Side    string   `json:"side"` // front, rear or both
	Words   string   `json:"words"`
	Value   float64  `json:"value"` // SI
	Limit   float64  `json:"limit"`
	Figures []string `json:"figures"` // keys of those that it bears on; none: on all
}

// RoadChange is a figure of both sides and its difference, with what it comes from.
type RoadChange struct {
	Change
	Felt   string      `json:"felt,omitempty"` // of accelerations of a body: yes, no or undecided
	Causes []RoadCause `json:"causes,omitempty"`
}

// RoadCause is something that differs and its part in the difference, the largest
// first.
type RoadCause struct {
	Key   string  `json:"key"` // part, springs, dampers, tyres, body or rest
	Label string  `json:"label"`
	A     string  `json:"a,omitempty"` // id of the part in the first side
	B     string  `json:"b,omitempty"`
	Delta float64 `json:"delta"`
}

// RoadCurve is figures over speed.
type RoadCurve struct {
	Speeds  []float64    `json:"speeds_m_s"`
	Figures []RoadFigure `json:"figures"`
}

// RoadFigure is a figure at each of several speeds.
type RoadFigure struct {
	Key    string    `json:"key"`
	Label  string    `json:"label"`
	Unit   string    `json:"unit"`
	Values []float64 `json:"values"`
	Plus   []float64 `json:"plus"`
}

// fewSpeeds are those of the curves that come with the figures, km/h.
var fewSpeeds = []float64{10, 20, 30, 40}

// kindsTold are the figures of a ride with what each is told as.
var kindsTold = [road.NumKinds]struct {
	key, unit string
	factor    float64
	decimals  int
}{
	road.LoadFront:   {"tyre_load_rms_front", "share", 1, 5},
	road.LoadRear:    {"tyre_load_rms_rear", "share", 1, 5},
	road.SaddleWk:    {"saddle_wk_m_s2", "m_s2", 1, 4},
	road.GripsWh:     {"grips_wh_m_s2", "m_s2", 1, 4},
	road.RackUp:      {"rack_m_s2", "m_s2", 1, 4},
	road.ForkBagsUp:  {"fork_bags_m_s2", "m_s2", 1, 4},
	road.BarBagUp:    {"bar_bag_m_s2", "m_s2", 1, 4},
	road.TravelFront: {"travel_rms_front_mm", "mm", 1e3, 3},
	road.TravelRear:  {"travel_rms_rear_mm", "mm", 1e3, 3},
	road.LiftFront:   {"lift_off_front", "share", 1, 6},
	road.LiftRear:    {"lift_off_rear", "share", 1, 6},
	road.BottomFront: {"bottoming_front", "share", 1, 6},
	road.BottomRear:  {"bottoming_rear", "share", 1, 6},
}

// roadRider is a side that is ridden: its bike, and what came of it.
type roadRider struct {
	bike   *roughBike
	model  *road.Model
	told   []told
	of     map[string]*road.Figure
	kinds  map[string]road.Kind
	ridden map[float64]*road.Ride // that were found, by speed; all on one road
}

// at rides the road at a speed, m/s, once.
func (r *roadRider) at(speed float64, surface road.Road) (*road.Ride, error) {
	if ride := r.ridden[speed]; ride != nil {
		return ride, nil
	}
	ride, err := r.model.At(speed, surface)
	if err != nil {
		return nil, err
	}
	r.ridden[speed] = ride
	return ride, nil
}

// charge is what a figure owes to a budget, under the sources that lines have
// then.
func (r *roadRider) charge(f *road.Figure) func(*mass.Budget, float64) {
	return func(b *mass.Budget, sign float64) {
		r.bike.follow()
		f.Charge(b, sign)
	}
}

// add notes a figure, if the bike has it.
func (r *roadRider) add(key, unit string, factor float64, decimals int, f road.Figure) {
	if !f.There || math.IsNaN(f.Value) || math.IsInf(f.Value, 0) {
		return
	}
	r.told = append(r.told, told{key, unit, factor, decimals, f.Value, r.charge(&f)})
	r.of[key] = &f
}

// roadShown is the road of a document.
func roadShown(d *document.Document, label func(string) string) (*document.Rough, RoadShown, road.Road) {
	rough := d.Show.Rough
	if rough == nil {
		rough = &document.Rough{}
	}
	out := RoadShown{Class: rough.Class, Speed: document.DefaultRoadSpeed / 3.6, Typical: rough.Speed == nil}
	if rough.Speed != nil {
		out.Speed = *rough.Speed / 3.6
	}
	if out.Class == "" {
		out.Class = document.DefaultRoadClass
		out.Typical = out.Typical || rough.Roughness == nil
	}
	if rough.Roughness != nil {
		out.Class, out.Roughness = "", *rough.Roughness
		out.Label = label("class.own")
		return rough, out, road.Road{Roughness: road.Known{Value: *rough.Roughness * 1e-6}}
	}
	class := road.Class(strings.Index("ABCDE", out.Class))
	if len(out.Class) != 1 || class < 0 {
		return rough, out, road.Road{} // told by document.Check
	}
	value := class.Roughness()
	out.Roughness = report.Decimal(value*1e6, 3)
	out.Label = label("class." + strings.ToLower(out.Class))
	return rough, out, road.Road{Roughness: road.Known{Value: value}}
}

// ride makes the bike of a side and its motion. It tells in the side why there is
// none.
func rideOf(e *report.Evaluation, i int, side *RoadSide, rough *document.Rough, label func(string) string) *roadRider {
	w := e.Words()
	s := &e.Report.Sides[i]
	side.Build, side.Load, side.State, side.Name = s.Build, s.Load, s.State, e.SideName(i)
	side.Problems, side.Settings, side.Modes, side.Figures, side.Marks = []document.Problem{}, []RoadSetting{}, []RoadMode{}, []Figure{}, []RoadMark{}
	side.Ways, side.Ratings, side.Inputs = []RoadWays{}, []RoadRating{}, []Input{}
	side.SetState = s.State
	side.Curves = RoadCurve{Speeds: []float64{}, Figures: []RoadFigure{}}
	if e.Sides[i] == nil {
		side.Why = label("unweighed")
		if b := e.Document.Build(s.Build); b != nil {
			side.unposed(b, label)
		}
		return nil
	}
	a := e.Sides[i].Assembly
	side.State = levelOf(a).State()
	for _, p := range e.Report.Problems {
		if p.Severity == document.SeverityError && (strings.HasPrefix(p.Field, "show.rough.") && !strings.HasPrefix(p.Field, "show.rough.obstacle") || p.Build == a.Build.ID && p.Part == "" && strings.HasPrefix(p.Field, "setup.")) {
			side.Problems = append(side.Problems, p)
		}
	}
	other := a
	if i == 1 && e.Sides[0] != nil && e.Sides[0].Assembly.Build.ID == a.Build.ID && e.Sides[0].Highest() == a.Highest() {
		other = e.Sides[0].Assembly // one bike with two loads has one spring
	}
	bike, err := bikeOf(a, other, rough, label)
	var model *road.Model
	if err == nil && len(side.Problems) == 0 {
		model, err = road.New(&bike.Bike)
	}
	// What is wrong can be set right where it is told.
	side.Settings, side.SetState, side.Standing = append(side.Settings, bike.settings...), bike.setState, bike.Standing != nil
	side.Inputs = append(side.Inputs, bike.inputs...)
	side.Ways, side.Ratings = bike.waysOf(a.Build.Setup, model, label), ratings(a.Build.Setup, label)
	if len(side.Problems) > 0 {
		side.Why = side.Problems[0].Message.In(w)
		return nil
	}
	if err != nil {
		p := roadProblem(a.Build, err).Said(w)
		side.Problems, side.Why = append(side.Problems, p), p.Message.In(w)
		return nil
	}
	return &roadRider{bike: bike, model: model, of: map[string]*road.Figure{}, kinds: map[string]road.Kind{}, ridden: map[float64]*road.Ride{}}
}

// fieldsOf are the fields of a document that a problem of a bike is in; %s is the
// end.
var fieldsOf = map[road.Key]string{
	road.NoSag: "%.sag_mm", road.SagOverTravel: "%.sag_mm", road.NoPressure: "setup.%.pressure_bar", road.NoSize: "wheels.%.tyre_mm",
	road.NoDrop: "setup.%.drop.drop_mm", road.BadDamping: "setup.%.damping_share", road.NoDamping: "setup.%.damping_share",
	road.NoArm: "rear.pivot_forward_mm", road.NoHeadAngle: "frame.head_angle_deg", road.NoWheelbase: "frame.reach_mm", road.NoLoad: "parts",
	road.NoMass: "parts", road.NoSpeed: "show.rough.speed_km_h", road.NoRoughness: "show.rough.roughness_cm3",
	road.NoObstacle: "show.rough.obstacle.height_mm", road.TooHigh: "show.rough.obstacle.height_mm",
}

// roadProblem tells why there is no figure, at the field that it is about.
func roadProblem(b *document.Build, err error) document.Problem {
	out := document.Problem{Severity: document.SeverityError, Build: b.ID}
	var p *road.Problem
	if !errors.As(err, &p) {
		out.Message = words.Tell("road.problem.other")
		return out
	}
	end := p.Side.String()
	if p.Side == road.Both {
		end = "front"
	}
	out.Field = fieldsOf[p.Key]
	if strings.HasPrefix(out.Field, "%.sag") && p.Side == road.Front {
		end = "fork"
	}
	if p.Key == road.NoPressure && endOf(b.Setup, p.Side).Drop != nil {
		out.Field = fieldsOf[road.NoDrop] // a test that found the tyre too soft
	}
	out.Field = strings.Replace(out.Field, "%", end, 1)
	if strings.HasPrefix(out.Field, "show.") {
		out.Build = ""
	}
	key := string(p.Key)
	switch p.Key {
	case road.NoSag, road.SagOverTravel, road.NoPressure, road.NoSize, road.NoDrop, road.BadDamping, road.NoDamping, road.NoArm, road.NoHeadAngle,
		road.NoWheelbase, road.NoLoad, road.NoMass, road.TooHigh, road.NoObstacle:
	default:
		key = "other"
	}
	out.Message = words.Tell("road.problem."+key, "build", words.ShortenName(b.Name), "end", words.Tell("road.end."+p.Side.String()),
		"value", words.Fixed(1e3*p.Value, 0), "most", words.Fixed(1e3*p.Most, 0))
	return out
}

// RoadOf tells what the road that an evaluated document shows does to its sides.
func RoadOf(e *report.Evaluation) *Road {
	w := e.Words()
	label := func(key string) string { return w.Label("road." + key) }
	rough, shown, surface := roadShown(e.Document, label)
	out := &Road{Road: shown, Sides: []RoadSide{}, Difference: []RoadChange{}, LeftOut: label("left_out"), Caution: label("caution")}
	riders := make([]*roadRider, len(e.Sides))
	for i := range e.Sides {
		side := RoadSide{}
		r := rideOf(e, i, &side, rough, label)
		if r != nil && !r.tell(&side, shown.Speed, surface, w, label) {
			r = nil
		}
		if r != nil {
			side.Words = roadWords(w, &shown, &side)
		}
		riders[i] = r
		out.Sides = append(out.Sides, side)
	}
	if len(riders) == 2 && riders[0] != nil && riders[1] != nil {
		out.Difference = roadDifference(e, riders[0], riders[1], label)
		out.Words = roadDifferenceWords(w, out.Sides[0].Name, out.Sides[1].Name, out.Difference)
	}
	return out
}

// rides rides the road and notes what it does.
func (r *roadRider) rides(speed float64, surface road.Road) (*road.Ride, error) {
	at, err := r.at(speed, surface)
	if err != nil {
		return nil, err
	}
	for kind := range road.Kind(road.NumKinds) {
		k := &kindsTold[kind]
		r.kinds[k.key] = kind
		r.add(k.key, k.unit, k.factor, k.decimals, at.Figures[kind])
	}
	return at, nil
}

// tell fills in the figures of a side.
func (r *roadRider) tell(side *RoadSide, speed float64, surface road.Road, w *words.Words, label func(string) string) bool {
	m := r.model
	at, err := r.rides(speed, surface)
	if err != nil {
		p := roadProblem(r.bike.own.of.Build, err).Said(w)
		side.Problems, side.Why = append(side.Problems, p), p.Message.In(w)
		return false
	}
	side.OK, side.Sketch = true, sketchOf(r.bike.own.of)
	r.add("sag_front_mm", "mm", 1e3, 2, m.Sag(road.Front))
	r.add("sag_rear_mm", "mm", 1e3, 2, m.Sag(road.Rear))
	for _, mode := range m.Modes() {
		key := string(mode.Motion)
		out := RoadMode{
			Key: key, Label: label("motion." + key), Words: label("moves." + key), Frequency: mode.Frequency.Value, Damping: mode.Damping.Value,
			Shape: RoadShape{
				pairOf(mode.Shape.FrameFront), pairOf(mode.Shape.FrameRear), pairOf(mode.Shape.AxleFront), pairOf(mode.Shape.AxleRear),
				pairOf(mode.Shape.Rider), pairOf(mode.Shape.ForkTravel), pairOf(mode.Shape.RearLift),
			},
		}
		name := strings.ReplaceAll(key, "-", "_")
		r.add("frequency_"+name, "Hz", 1, 4, mode.Frequency)
		r.add("damping_"+name, "share", 1, 4, mode.Damping)
		side.Modes = append(side.Modes, out)
	}
	plus := make(map[string]float64, len(r.told))
	for i := range r.told {
		f := &r.told[i]
		p := f.factor * f.plus()
		plus[f.key] = p
		side.Figures = append(side.Figures, Figure{
			Key: f.key, Label: label(f.key), Unit: f.unit, Value: report.Decimal(f.factor*f.value, f.decimals), Plus: report.Decimal(p, f.decimals),
		})
		side.name(f, p)
	}
	for i := range side.Modes {
		mode := &side.Modes[i]
		name := strings.ReplaceAll(mode.Key, "-", "_")
		mode.FrequencyPlus, mode.DampingPlus = plus["frequency_"+name], plus["damping_"+name]
	}
	for _, mark := range append(m.Marks(), at.Marks...) {
		side.Marks = append(side.Marks, roadMark(w, mark))
	}
	side.Curves = r.curves(fewSpeeds, surface, label)
	return true
}

// name puts a figure under its own key.
func (s *RoadSide) name(f *told, plus float64) {
	at := map[string][2]**float64{
		"tyre_load_rms_front": {&s.LoadFront, &s.LoadFrontPlus}, "tyre_load_rms_rear": {&s.LoadRear, &s.LoadRearPlus},
		"saddle_wk_m_s2": {&s.Saddle, &s.SaddlePlus}, "grips_wh_m_s2": {&s.Grips, &s.GripsPlus},
		"travel_rms_front_mm": {&s.TravelFront, &s.TravelFrontPlus}, "travel_rms_rear_mm": {&s.TravelRear, &s.TravelRearPlus},
	}
	if p, ok := at[f.key]; ok {
		value := f.factor * f.value
		*p[0], *p[1] = &value, &plus
	}
}

// pairOf is a complex number to four decimals: what a mode's shape is drawn by.
func pairOf(z complex128) [2]float64 {
	return [2]float64{report.Decimal(real(z), 4), report.Decimal(imag(z), 4)}
}

// curveKinds are the figures that are drawn over speed.
var curveKinds = []road.Kind{road.LoadFront, road.LoadRear, road.SaddleWk, road.GripsWh, road.TravelFront, road.TravelRear}

// curves are figures over speeds in km/h.
func (r *roadRider) curves(speeds []float64, surface road.Road, label func(string) string) RoadCurve {
	out := RoadCurve{Speeds: []float64{}, Figures: []RoadFigure{}}
	at := make(map[road.Kind]int)
	for _, v := range speeds {
		got, err := r.at(v/3.6, surface)
		if err != nil {
			continue
		}
		out.Speeds = append(out.Speeds, v/3.6)
		for _, kind := range curveKinds {
			f := &got.Figures[kind]
			if !f.There {
				continue
			}
			k := &kindsTold[kind]
			i, ok := at[kind]
			if !ok {
				i = len(out.Figures)
				at[kind] = i
				out.Figures = append(out.Figures, RoadFigure{Key: k.key, Label: label(k.key), Unit: k.unit, Values: []float64{}, Plus: []float64{}})
			}
			t := told{charge: r.charge(f)}
			out.Figures[i].Values = append(out.Figures[i].Values, report.Decimal(k.factor*f.Value, k.decimals))
			out.Figures[i].Plus = append(out.Figures[i].Plus, report.Decimal(k.factor*t.plus(), k.decimals))
		}
	}
	return out
}

// roadDifference sets the figures of two sides against each other and says what
// their differences come from.
func roadDifference(e *report.Evaluation, a, b *roadRider, label func(string) string) []RoadChange {
	parts, lines := changedParts(e, a, b)
	out := []RoadChange{}
	for _, c := range changes(e, a.told, b.told, label) {
		r := RoadChange{Change: c}
		fa, fb := a.of[c.Key], b.of[c.Key]
		kind, ofRide := a.kinds[c.Key]
		if ofRide && kind <= road.TravelRear {
			r.Causes = causesOf(e, fa, fb, parts, lines, kindsTold[kind].factor, kindsTold[kind].decimals, label)
		}
		if (c.Key == "saddle_wk_m_s2" || c.Key == "grips_wh_m_s2") && fa.Value > 0 && fb.Value > 0 {
			plus := e.Difference(func(side int, budget *mass.Budget, sign float64) {
				r, f := a, fa
				if side == 1 {
					r, f = b, fb
				}
				r.charge(f)(budget, sign/f.Value)
			})
			r.Felt = string(road.Felt(fb.Value/fa.Value, plus))
		}
		out = append(out, r)
	}
	return out
}

// changedParts are the parts that differ, as package road wants them, and their
// lines.
func changedParts(e *report.Evaluation, a, b *roadRider) (parts []road.Part, lines [][2]int) {
	lines = e.Changed()
	pieces := func(p *placed, line int) []int {
		if p == nil || line < 0 || line >= len(p.pieces) {
			return nil
		}
		return p.pieces[line]
	}
	for _, l := range lines {
		p := road.Part{
			A: road.Pieces{Items: pieces(a.bike.own, l[0]), Set: pieces(a.bike.set, l[0])},
			B: road.Pieces{Items: pieces(b.bike.own, l[1]), Set: pieces(b.bike.set, l[1])},
		}
		if s := b.bike.set; s != nil && s.of != b.bike.own.of {
			p.B.Set = pieces(s, l[0]) // set with the load of the first side
		}
		parts = append(parts, p)
	}
	return parts, lines
}

// mostCauses is how many causes of a difference are told.
const mostCauses = 5

// causesOf says what the difference of a figure comes from.
func causesOf(e *report.Evaluation, a, b *road.Figure, parts []road.Part, lines [][2]int, factor float64, decimals int, label func(string) string) []RoadCause {
	c := road.Explain(a, b, parts)
	var out []RoadCause
	add := func(cause RoadCause, delta float64) {
		if cause.Delta = report.Decimal(factor*delta, decimals); cause.Delta != 0 {
			out = append(out, cause)
		}
	}
	wa, wb := e.Sides[0].Assembly, e.Sides[1].Assembly
	for i, delta := range c.Parts {
		cause := RoadCause{Key: "part"}
		if k := lines[i][0]; k >= 0 {
			cause.A, cause.Label = wa.Build.Parts[k].ID, wa.Build.Parts[k].Name
		}
		if k := lines[i][1]; k >= 0 {
			cause.B, cause.Label = wb.Build.Parts[k].ID, wb.Build.Parts[k].Name
		}
		add(cause, delta)
	}
	for _, g := range []struct {
		key   string
		delta float64
	}{{"springs", c.Springs}, {"dampers", c.Dampers}, {"tyres", c.Tyres}, {"body", c.Body}, {"rest", c.Rest}} {
		add(RoadCause{Key: g.key, Label: label("cause." + g.key)}, g.delta)
	}
	// The few largest come first, by selection.
	for i := range min(mostCauses, len(out)) {
		for k := i + 1; k < len(out); k++ {
			if math.Abs(out[k].Delta) > math.Abs(out[i].Delta) {
				out[i], out[k] = out[k], out[i]
			}
		}
	}
	return out[:min(mostCauses, len(out))]
}

// riderless is the state of a bike on which nobody rides.
func riderless(s document.State) bool { return assembly.LevelOf(s) < assembly.Ridden }
