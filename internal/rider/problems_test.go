package rider

import (
	"encoding/binary"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"steelyard/internal/document"
	"steelyard/internal/geometry"
	"steelyard/internal/mass"
)

// errorAt returns the first error, and fails unless it is at that field.
func errorAt(t rapid.TB, problems []document.Problem, field string) document.Problem {
	t.Helper()
	for _, p := range problems {
		if p.Severity == document.SeverityError {
			if p.Field != field {
				t.Fatalf("an error at %s, not at %s: %s", p.Field, field, p.Message.String())
			}
			return p
		}
	}
	t.Fatalf("no error at %s: %v", field, problems)
	return document.Problem{}
}

// Each bad figure is an error at its field, which names the rider and what
// would be right.
func TestBadFigures(t *testing.T) {
	bike := posed(t, load(t, "riel-bike.json"))
	for _, c := range []struct {
		field string
		set   func(*document.Rider)
		says  string
	}{
		{"stature_mm", func(r *document.Rider) { r.Stature = math.NaN() }, "not a finite number"},
		{"stature_mm", func(r *document.Rider) { r.Stature = 799 }, "between 800 and 2500 mm"},
		{"stature_mm", func(r *document.Rider) { r.Stature = 2501 }, "between 800 and 2500 mm"},
		{"stature_mm", func(r *document.Rider) { r.Stature = -1750 }, "-1750"},
		{"mass_g", func(r *document.Rider) { r.Mass = 75 }, "between 10000 and 300000 g"},
		{"mass_g", func(r *document.Rider) { r.Mass = 300001 }, "between 10000 and 300000 g"},
		{"mass_g", func(r *document.Rider) { r.Mass = math.Inf(1) }, "not a finite number"},
		{"half_width_g", func(r *document.Rider) { r.HalfWidth = -1 }, "-1 g"},
		{"half_width_g", func(r *document.Rider) { r.HalfWidth = 75001 }, "must not be more than the mass"},
		{"half_width_g", func(r *document.Rider) { r.HalfWidth = 300001 }, "between 0 and 300000 g"},
		{"half_width_g", func(r *document.Rider) { r.HalfWidth = math.NaN() }, "not a finite number"},
		{"clothing_g", func(r *document.Rider) { r.Clothing = -0.5 }, "-0.5 g"},
		{"clothing_g", func(r *document.Rider) { r.Clothing = 1e6 }, "between 0 and 30000 g"},
		{"shoes_g", func(r *document.Rider) { r.Shoes = -1 }, "between 0 and 10000 g"},
		{"crank_deg", func(r *document.Rider) { r.Crank = math.Inf(-1) }, "not a finite number"},
		{"crank_deg", func(r *document.Rider) { r.Crank = 361 }, "between -360 and 360 degrees"},
		{"table", func(r *document.Rider) { r.Table = "" }, "female or male"},
		{"posture", func(r *document.Rider) { r.Posture = "<b>" + strings.Repeat("x", 10000) }, "upright, leaned, low or standing"},
	} {
		body, problems := Seat(bike, person(c.set))
		told(t, body, problems)
		p := errorAt(t, problems, c.field)
		if len(problems) != 1 || !strings.Contains(p.Message.String(), c.says) || !strings.HasPrefix(p.Message.String(), "Rider “Somebody”: The") || p.Rider != "somebody" || len(p.Message.String()) > 300 {
			t.Errorf("%s: %v", c.field, problems)
		}
	}
	// All at once are told at once.
	if _, problems := Seat(bike, &document.Rider{ID: "nobody"}); len(problems) != 4 {
		t.Errorf("an empty rider has %d problems, want 4: stature, mass, table, posture: %v", len(problems), problems)
	}
	// The ends of the ranges are right.
	for _, set := range []func(*document.Rider){
		func(r *document.Rider) { r.Mass, r.HalfWidth = 10e3, 0 },
		func(r *document.Rider) { r.Mass, r.HalfWidth = 300e3, 300e3 },
		func(r *document.Rider) { r.Stature = 2500 },
		func(r *document.Rider) { r.Crank = 360 },
		func(r *document.Rider) { r.Name = "" },
	} {
		seated(t, bike, person(set))
	}
}

func TestNobody(t *testing.T) {
	if body, problems := Seat(nil, person()); body != nil || problems != nil {
		t.Errorf("somebody without a bike: %v, %v", body, problems)
	}
	if body, problems := Seat(posed(t, load(t, "riel-bike.json")), nil); body != nil || problems != nil {
		t.Errorf("nobody: %v, %v", body, problems)
	}
	body, problems := Seat(&geometry.Bike{Grip: mass.Vec{X: math.NaN()}}, person())
	told(t, body, problems)
	errorAt(t, problems, "frame")
}

// amount is the first number of mm in a message after those words.
func amount(t rapid.TB, message, after string) float64 {
	t.Helper()
	m := regexp.MustCompile(after + ` (\d+) mm`).FindStringSubmatch(message)
	if m == nil {
		t.Fatalf("no %q with mm in %q", after, message)
	}
	v, err := strconv.ParseFloat(m[1], 64)
	if err != nil {
		t.Fatal(err)
	}
	return v / 1000
}

// lift raises the saddle along its tube.
func lift(b geometry.Bike, by float64) *geometry.Bike {
	b.SaddleTop = b.SaddleTop.Add(mass.Vec{X: -by * math.Cos(b.SeatAngle), Z: by * math.Sin(b.SeatAngle)})
	return &b
}

// A saddle that is too high or too low by far is said to be so, by so many mm
// that the legs will do with as much, and not with a millimetre less.
func TestSaddleOutOfReach(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anybody(t)
		r.Posture = "leaned"
		bike := drawn(t, r.Stature/1000)
		off, sign, says := rapid.Float64Range(0.06, 0.5).Draw(t, "high"), -1., "must be at least"
		if rapid.Bool().Draw(t, "low") {
			off, sign = -rapid.Float64Range(0.25, 0.4).Draw(t, "off")*r.Stature/1000, 1
		}
		wrong := lift(*bike, off)
		body, problems := Seat(wrong, r)
		told(t, body, problems)
		if body != nil {
			return
		}
		p := errorAt(t, problems, "saddle.height_mm")
		if low := strings.Contains(p.Message.String(), "higher"); low != (sign > 0) {
			t.Fatalf("by %g: %s", off, p.Message.String())
		}
		by := amount(t, p.Message.String(), says)
		legs := func(by float64) bool {
			_, problems := Seat(lift(*wrong, sign*by), r)
			for _, p := range problems {
				if p.Severity == document.SeverityError && p.Field == "saddle.height_mm" {
					return false
				}
			}
			return true
		}
		if !legs(by) {
			t.Errorf("still wrong: %s", p.Message.String())
		}
		if legs(by - 0.001) {
			t.Errorf("less would do: %s", p.Message.String())
		}
	})
}

// The same through the document: a saddle moved by as much as is said seats the
// rider.
func TestSaddleOfTheDocument(t *testing.T) {
	b := load(t, "riel-bike.json")
	for _, c := range []struct{ height, stature float64 }{{800, 1700}, {720, 1500}, {720, 1300}, {420, 1900}} {
		b.Saddle.Height = c.height
		r := person(func(r *document.Rider) { r.Stature, r.Posture = c.stature, "upright" })
		_, problems := Seat(posed(t, b), r)
		p := errorAt(t, problems, "saddle.height_mm")
		by := 1000 * amount(t, p.Message.String(), "must be at least")
		if strings.Contains(p.Message.String(), "lower") {
			by = -by
		}
		b.Saddle.Height += by
		if _, problems := Seat(posed(t, b), r); len(problems) > 0 && problems[0].Field == "saddle.height_mm" && problems[0].Severity == document.SeverityError {
			t.Errorf("%+v: still %s", c, problems[0].Message.String())
		}
	}
}

// Pointed toes are told, with the saddle for which the feet need not.
func TestPointedToes(t *testing.T) {
	b := load(t, "riel-bike.json")
	b.Saddle.Height = 755
	bike := posed(t, b)
	r := person(func(r *document.Rider) { r.Crank = -73 })
	body, problems := Seat(bike, r)
	if body == nil || len(problems) != 1 || problems[0].Severity != document.SeverityWarning || problems[0].Field != "saddle.height_mm" {
		t.Fatalf("%v", problems)
	}
	if body.Left.Toes <= toesDown(-73*degree, false)+degree {
		t.Errorf("toes down by %.1f°", body.Left.Toes/degree)
	}
	near(t, "bend of the knee", body.Left.KneeBend, leastBend, 1e-6)
	by := amount(t, problems[0].Message.String(), `\(“Height along seat tube”\)`)
	if _, problems := Seat(lift(*bike, -by), r); len(problems) != 0 {
		t.Errorf("still %v", problems)
	}
	if _, problems := Seat(lift(*bike, 0.001-by), r); len(problems) != 1 {
		t.Error("less would do")
	}
}

// Grips out of reach are said to be so, by so many mm that the arms will do with
// as much, and not with a millimetre less.
func TestGripsOutOfReach(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anybody(t)
		bike := drawn(t, r.Stature/1000)
		ahead := mass.Vec{X: 1}.PitchBy(bike.Pitch)
		bike.Grip = bike.Grip.Add(ahead.Scale(rapid.Float64Range(0.3, 1.2).Draw(t, "further")))
		body, problems := Seat(bike, r)
		told(t, body, problems)
		if body != nil || problems[0].Field != "frame.reach_mm" {
			return
		}
		by := amount(t, problems[0].Message.String(), "The grips must be")
		grips := func(by float64) bool {
			b := *bike
			b.Grip = b.Grip.Sub(ahead.Scale(by))
			body, _ := Seat(&b, r)
			return body != nil
		}
		if !grips(by) || grips(by-0.001) {
			t.Errorf("not just right: %s", problems[0].Message.String())
		}
	})
}

// What no reach of the frame can put right is put to the stature.
func TestBarTooWide(t *testing.T) {
	bike := posed(t, load(t, "riel-bike.json"))
	bike.Grip.Y = 1.2
	_, problems := Seat(bike, person())
	errorAt(t, problems, "stature_mm")
	bike.Grip = mass.Vec{X: bike.SaddleTop.X + 0.1, Y: 0.2, Z: bike.SaddleTop.Z + 0.55}
	body, problems := Seat(bike, person())
	told(t, body, problems)
	p := errorAt(t, problems, "frame.reach_mm")
	if !strings.Contains(p.Message.String(), "too near") {
		t.Error(p.Message.String())
	}
	bike.Grip.X += amount(t, p.Message.String(), "They must be")
	seated(t, bike, person())
}

// Legs that are too short for the cranks whatever the saddle.
func TestCranksTooLong(t *testing.T) {
	for _, posture := range []string{"leaned", standing} {
		r := person(func(r *document.Rider) { r.Posture, r.Stature, r.Crank = posture, 1100, 90 })
		bike := posed(t, load(t, "riel-bike.json"))
		bike.PedalFront.X = bike.BottomBracket.X + 0.42
		_, problems := Seat(bike, r)
		errorAt(t, problems, "stature_mm")
		r.Crank = 0
		bike.PedalFront.X = bike.BottomBracket.X + 0.7
		_, problems = Seat(bike, r)
		errorAt(t, problems, "stature_mm")
	}
	// Higher, and the legs are too short; lower, and the knees do not fold.
	bike := posed(t, load(t, "riel-bike.json"))
	bike.PedalFront.X = bike.BottomBracket.X + 0.3
	bike.SaddleTop = bike.BottomBracket.Add(mass.Vec{X: -0.05, Z: 0.23})
	_, problems := Seat(bike, person(func(r *document.Rider) { r.Stature = 1100 }))
	if p := errorAt(t, problems, "stature_mm"); !strings.Contains(p.Message.String(), "cannot fold") {
		t.Error(p.Message.String())
	}
}

// A trunk that leaves the range of its posture is told, with the posture that it
// fits.
func TestLeansFurther(t *testing.T) {
	b := load(t, "riel-bike.json")
	b.Cockpit.Stem = 120
	body, problems := Seat(posed(t, b), person(func(r *document.Rider) { r.Posture = "upright" }))
	if body == nil || len(problems) != 1 || problems[0].Field != "posture" || !strings.Contains(problems[0].Message.String(), "“leaned” would fit") {
		t.Fatalf("%v", problems)
	}
	near(t, "bend of the elbow", body.Left.ElbowBend, leastBend, 1e-6)
}

// Standing under a saddle that is higher than the hips.
func TestSaddleInTheWay(t *testing.T) {
	b := load(t, "riel-bike.json")
	b.Saddle.Height = 860
	body, problems := Seat(posed(t, b), person(func(r *document.Rider) { r.Posture, r.Crank = standing, -90 }))
	if body == nil || len(problems) != 1 || problems[0].Field != "saddle.height_mm" || problems[0].Severity != document.SeverityWarning {
		t.Fatalf("%v", problems)
	}
	b.Saddle.Height -= math.Ceil(1000 * amount(t, problems[0].Message.String(), "the hips are") / math.Sin(b.Frame.SeatAngle*degree))
	if _, problems := Seat(posed(t, b), person(func(r *document.Rider) { r.Posture, r.Crank = standing, -90 })); len(problems) != 0 {
		t.Errorf("still %v", problems)
	}
}

// finite says whether every number of a body is.
func (b *Body) finite() bool {
	ok := func(vs ...float64) bool {
		for _, v := range vs {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				return false
			}
		}
		return true
	}
	for _, p := range b.joints() {
		if !ok(p.X, p.Y, p.Z) {
			return false
		}
	}
	for _, s := range b.Segments {
		k := s.Spread
		if !ok(s.Mass, s.MassU, s.Place.X, s.Place.Y, s.Place.Z, k.XX, k.YY, k.ZZ, k.XY, k.XZ, k.YZ) || s.Mass <= 0 {
			return false
		}
	}
	for _, l := range b.Outline() {
		if !ok(l.From.X, l.From.Y, l.From.Z, l.To.X, l.To.Y, l.To.Z, l.R, l.S) || l.R <= 0 || l.S <= 0 {
			return false
		}
	}
	return ok(b.Lean, b.Left.KneeBend, b.Right.KneeBend, b.Left.ElbowBend, b.Right.ElbowBend, b.Left.Toes, b.Right.Toes)
}

// FuzzSeat puts any numbers into a good bike and a good rider: nine bytes say
// which figure, and what it becomes.
func FuzzSeat(f *testing.F) {
	set := func(pairs ...float64) []byte {
		var out []byte
		for i := 0; i+1 < len(pairs); i += 2 {
			out = append(out, byte(pairs[i]))
			out = binary.LittleEndian.AppendUint64(out, math.Float64bits(pairs[i+1]))
		}
		return out
	}
	f.Add("leaned", "male", set())
	f.Add("standing", "female", set(0, 1400, 5, 90))
	f.Add("upright", "male", set(6, math.NaN()))
	f.Add("low", "female", set(7, 1e308, 8, -1e308))
	f.Add("standing", "male", set(13, 0, 14, 0))
	f.Add("upright", "other", set(8, 0, 9, 0, 10, 0))
	f.Add("leaned", "male", set(8, 0.2, 9, 0.2, 10, 1.1)) // the grip at the hip
	f.Add("leaned", "male", set(13, 0.6, 14, 0.8))        // pedals as wide as the legs are long
	good := posed(f, load(f, "riel-bike.json"))
	f.Fuzz(func(t *testing.T, posture, table string, data []byte) {
		b, r := *good, person(func(r *document.Rider) { r.Posture, r.Table = posture, table })
		fields := []*float64{
			&r.Stature, &r.Mass, &r.HalfWidth, &r.Clothing, &r.Shoes, &r.Crank,
			&b.SaddleTop.X, &b.SaddleTop.Z, &b.Grip.X, &b.Grip.Y, &b.Grip.Z,
			&b.BottomBracket.X, &b.BottomBracket.Z, &b.PedalFront.X, &b.PedalFront.Y, &b.PedalFront.Z,
			&b.SeatAngle, &b.Pitch,
		}
		for ; len(data) >= 9; data = data[9:] {
			*fields[int(data[0])%len(fields)] = math.Float64frombits(binary.LittleEndian.Uint64(data[1:]))
		}
		body, problems := Seat(&b, r)
		told(t, body, problems)
		if body == nil {
			return
		}
		if !body.finite() {
			t.Fatalf("not finite: %+v", body)
		}
		body.sound(t, &b, r)
	})
}
