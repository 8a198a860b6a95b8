package rooms

import (
	"math"

	"steelyard/internal/assembly"
	"steelyard/internal/document"
	"steelyard/internal/mass"
	"steelyard/internal/report"
	"steelyard/internal/steer"
	"steelyard/internal/units"
)

// Steering is how the sides of a comparison steer and balance.
type Steering struct {
	Sides      []SteeringSide `json:"sides"`
	Difference []Change       `json:"difference"`      // of the second minus the first; empty without a second
	Inputs     []Input        `json:"inputs"`          // what is done with the bike in the hand
	Words      string         `json:"words,omitempty"` // what of that is beyond doubt, a paragraph
	Caution    string         `json:"caution"`
}

// SteeringSide is how one side steers and balances.
type SteeringSide struct {
	Build string         `json:"build"`
	Load  string         `json:"load"`
	Name  string         `json:"name"`
	State document.State `json:"state"`
	OK    bool           `json:"ok"`              // false: there is no equation of motion, see Why
	Why   string         `json:"why,omitempty"`   // a sentence
	Words string         `json:"words,omitempty"` // what it means, a paragraph

	Weave       *float64 `json:"weave_m_s,omitempty"` // above it the weave dies away by itself
	WeavePlus   *float64 `json:"weave_plus,omitempty"`
	Capsize     *float64 `json:"capsize_m_s,omitempty"` // from it on the bike falls over slowly by itself
	CapsizePlus *float64 `json:"capsize_plus,omitempty"`

	Matrices *Matrices       `json:"matrices,omitempty"`
	Speeds   []SteeringSpeed `json:"speeds"`
	Touring  []TouringSpeed  `json:"touring"`
	Plain    []Figure        `json:"plain"`
	Hand     []Figure        `json:"hand"`
	Stand    *StandRest      `json:"stand,omitempty"`
}

// Matrices are those of the equation of motion, lean before steer, in full.
type Matrices struct {
	M  steer.Matrix `json:"m"`
	C1 steer.Matrix `json:"c1"`
	K0 steer.Matrix `json:"k0"`
	K2 steer.Matrix `json:"k2"`
}

// SteeringSpeed is a speed with its four eigenvalues, real and imaginary part,
// 1/s.
type SteeringSpeed struct {
	Speed       float64       `json:"v_m_s"`
	Eigenvalues [4][2]float64 `json:"eigenvalues"`
	Growth      float64       `json:"growth_1_s"` // of what grows fastest, or dies away slowest
}

// TouringSpeed is a speed of touring and what a disturbance does at it.
type TouringSpeed struct {
	Key     string  `json:"key"` // walking, slow, usual, fast
	Label   string  `json:"label"`
	Speed   float64 `json:"v_m_s"`
	Growth  float64 `json:"growth_1_s"` // of what grows fastest, or dies away slowest
	Plus    float64 `json:"growth_plus"`
	Time    float64 `json:"time_s"`  // in which a disturbance doubles, or halves; 0 where neither is decided
	Verdict string  `json:"verdict"` // More: it grows; Less: it dies away; Undecided

	// Of the weave, where there is one.
	Period      *float64 `json:"period_s,omitempty"`
	PeriodPlus  *float64 `json:"period_plus,omitempty"`
	Damping     *float64 `json:"damping,omitempty"` // share of critical; below 0 it grows
	DampingPlus *float64 `json:"damping_plus,omitempty"`
}

// StandRest is how a bike rests on its stand, without its rider.
type StandRest struct {
	Typical bool     `json:"typical"` // its place was not typed
	Over    bool     `json:"over"`    // it falls over on level ground
	Forward float64  `json:"forward_mm"`
	Out     float64  `json:"out_mm"`
	Lean    float64  `json:"lean_deg"`
	Figures []Figure `json:"figures"`
}

// Speeds of the curves, m/s, and of touring.
const (
	curveStep = 0.25
	curveEnd  = 12.5
)

var touringSpeeds = []struct {
	key   string
	speed float64
}{{"walking", 5 / 3.6}, {"slow", 15 / 3.6}, {"usual", 25 / 3.6}, {"fast", 45 / 3.6}}

// usualHand is done with a bike in the hand where nobody says anything else.
var usualHand = document.Hand{Step: 200, Lean: 10, Slope: 10}

// What is asked of the bar: held to the side while standing, a turn at walking
// pace, and a turn of the bar from side to side.
const (
	heldAngle   = 10 * math.Pi / 180
	turnSpeed   = 5 / 3.6
	turnRadius  = 5.0
	flickAngle  = 10 * math.Pi / 180
	flickTime   = 0.5
	pushRolling = 0.01
	behindSeat  = 0.12 // the saddle's rear behind its middle, m
)

// SteeringOf tells how the sides of an evaluated document steer and balance, in
// the state that the document shows.
func SteeringOf(e *report.Evaluation) *Steering {
	w := e.Words()
	out := &Steering{Sides: []SteeringSide{}, Difference: []Change{}, Caution: w.Label("steering.caution")}
	hand := &usual{}
	label := func(key string) string {
		if says := hand.says(key); says != 0 {
			return w.Say("steering."+key, "x", numbers(w)(says, -1))
		}
		return w.Label("steering." + key)
	}
	out.Inputs = hand.of(e.Document.Show.Hand, label)
	var all [][]told
	for i, weighed := range e.Sides {
		side := SteeringSide{Name: e.SideName(i), Speeds: []SteeringSpeed{}, Touring: []TouringSpeed{}, Plain: []Figure{}, Hand: []Figure{}}
		s := &e.Report.Sides[i]
		side.Build, side.Load, side.State = s.Build, s.Load, s.State
		if weighed == nil {
			side.Why = label("unweighed")
			out.Sides = append(out.Sides, side)
			all = append(all, nil)
			continue
		}
		figures, m := steerSide(&side, weighed.Assembly, &hand.Hand, label)
		for v := 0.0; m != nil && v <= curveEnd; v += curveStep {
			list := m.Eigenvalues(v)
			side.Speeds = append(side.Speeds, SteeringSpeed{v, pairsOf(list), report.Decimal(real(fastest(list)), 4)})
		}
		side.Words = steeringWords(w, &side)
		out.Sides = append(out.Sides, side)
		all = append(all, figures)
	}
	if len(all) == 2 && all[0] != nil && all[1] != nil {
		out.Difference = changes(e, all[0], all[1], label)
		out.Words = differenceWords(w, out.Sides[0].Name, out.Sides[1].Name, out.Difference)
	}
	return out
}

// steerSide fills in what there is to tell of a side but its curves, and returns
// its figures and its model, which is nil where there is no equation of motion.
func steerSide(side *SteeringSide, a *assembly.Assembly, hand *document.Hand, label func(string) string) ([]told, *steer.Model) {
	bike := bicycleOf(a, a.Items, report.Share(a, assembly.ForkUpper, assembly.ForkLower, assembly.FrontWheel))
	of := func(f mass.Figure) func(*mass.Budget, float64) {
		return func(b *mass.Budget, sign float64) { b.Charge(a.Items, f, sign) }
	}
	var list []told
	add := func(key, unit string, factor float64, decimals int, f mass.Figure) *told {
		list = append(list, told{key, unit, factor, decimals, f.Value, of(f)})
		return &list[len(list)-1]
	}
	exact := func(key, unit string, factor float64, decimals int, v float64) {
		list = append(list, told{key: key, unit: unit, factor: factor, decimals: decimals, value: v})
	}
	m, ok := steer.New(bike)
	exact("trail", "mm", 1e3, 1, bike.Trail)
	exact("mechanical_trail", "mm", 1e3, 1, bike.MechanicalTrail())
	exact("flop", "mm", 1e3, 1, bike.Flop())
	if ok {
		side.OK = true
		side.Matrices = &Matrices{m.M, m.C1, m.K0, m.K2}
		arm := gripArm(a)
		add("steered_mass", "g", 1e3, 0, mass.Total(a.Items, bike.Front))
		add("steered_ahead", "mm", 1e3, 1, m.Ahead())
		add("steering_inertia", "kg_m2", 1, 4, m.SteeringInertia())
		add("roll_inertia", "kg_m2", 1, 2, m.RollInertia())
		if arm > 0 {
			// Above 0: the hand must hold the bar back, since it would turn further.
			add("held", "n", 1, 2, mass.Times(-1/arm, m.HoldStanding(heldAngle)))
			add("turn", "n", 1, 2, mass.Times(-1/arm, m.HoldTurn(turnSpeed, turnRadius)))
			add("flick", "n", 1, 2, mass.Times(1/arm, m.Flick(flickAngle, flickTime)))
		}
	} else {
		side.Why = label("no_equation")
	}
	for i := range list {
		if list[i].real() {
			side.Plain = append(side.Plain, list[i].figure(label))
		}
	}
	if ok {
		optional := func(f mass.Figure, found bool, key string) (value, plus *float64) {
			if !found || !units.Finite(f.Value) {
				return nil, nil
			}
			t := add(key, "m_s", 1, 4, f)
			v, p := f.Value, report.Decimal(t.plus(), 4)
			return &v, &p
		}
		weave, found := m.Weave()
		side.Weave, side.WeavePlus = optional(weave, found, "weave")
		capsize, found := m.Capsize()
		side.Capsize, side.CapsizePlus = optional(capsize, found, "capsize")
		for _, s := range touringSpeeds {
			t, growth := touringOf(m, s.speed, of)
			t.Key, t.Label = s.key, label("speed."+s.key)
			side.Touring = append(side.Touring, t)
			list = append(list, told{"growth_" + s.key, "1/s", 1, 3, growth.Value, of(growth)})
		}
	}
	list = append(list, handOf(side, a, hand, label)...)
	if !ok {
		return list, nil
	}
	return list, m
}

// pairsOf writes eigenvalues as pairs; what is not a number becomes 0.
func pairsOf(s [4]complex128) (p [4][2]float64) {
	for i, v := range s {
		p[i] = [2]float64{real(v), imag(v)}
		for k, x := range p[i] {
			if !units.Finite(x) {
				p[i][k] = 0
			}
		}
	}
	return p
}

// fastest is the eigenvalue of what grows fastest, or dies away slowest.
func fastest(list [4]complex128) complex128 {
	worst := list[0]
	for _, s := range list {
		if real(s) > real(worst) {
			worst = s
		}
	}
	return worst
}

// touringOf tells what a disturbance does at a speed: what grows fastest, and the
// weave.
func touringOf(m *steer.Model, v float64, of func(mass.Figure) func(*mass.Budget, float64)) (TouringSpeed, mass.Figure) {
	within := func(f mass.Figure) float64 {
		t := told{charge: of(f)}
		return t.plus()
	}
	list := m.Eigenvalues(v)
	growth, _ := m.Rate(v, fastest(list))
	t := TouringSpeed{Speed: report.Decimal(v, 4), Growth: report.Decimal(growth.Value, 3), Plus: report.Decimal(within(growth), 3)}
	t.Verdict = report.Verdict(t.Growth, t.Plus)
	if t.Verdict == report.More || t.Verdict == report.Less {
		t.Time = report.Decimal(math.Ln2/math.Abs(growth.Value), 2)
	}
	if s := list[0]; imag(s) > 0 {
		re, hz := m.Rate(v, s)
		size := math.Hypot(real(s), imag(s))
		// T = 1/f, so T's ± is that of f over f²; the damping is -re/|s|.
		period, periodPlus := 1/hz.Value, within(hz)/(hz.Value*hz.Value)
		w := 2 * math.Pi * hz.Value
		damping := mass.Plus(mass.Times(-w*w/(size*size*size), re), mass.Times(2*math.Pi*real(s)*w/(size*size*size), hz))
		share, sharePlus := -real(s)/size, within(damping)
		round := func(v float64) *float64 { v = report.Decimal(v, 3); return &v }
		t.Period, t.PeriodPlus, t.Damping, t.DampingPlus = round(period), round(periodPlus), round(share), round(sharePlus)
	}
	return t, growth
}

// gripArm is the distance of a grip from the steering axis, m: the arm of a hand
// that is square to it.
func gripArm(a *assembly.Assembly) float64 {
	sin, cos := math.Sincos(a.Bike.HeadAngle)
	ahead := (a.Bike.Grip.X-a.Bike.Wheelbase-a.Bike.Trail)*sin + a.Bike.Grip.Z*cos
	return math.Hypot(a.Bike.Grip.Y, ahead)
}
