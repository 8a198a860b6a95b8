package steer_test

import (
	"math"
	"math/cmplx"
	"math/rand/v2"
	"os"
	"testing"

	"github.com/goccy/go-json"
	"gonum.org/v1/gonum/mat"

	"steelyard/internal/mass"
	"steelyard/internal/steer"
)

// benchmark is the bicycle of table 1 of Meijaard et al. (2007).
func benchmark(t testing.TB) *steer.Bicycle {
	t.Helper()
	text, err := os.ReadFile("../../testdata/mass/meijaard2007.json")
	if err != nil {
		t.Fatal(err)
	}
	var b struct {
		Wheelbase float64 `json:"wheelbase_m"`
		Trail     float64 `json:"trail_m"`
		Tilt      float64 `json:"steer_tilt_rad"`
		Bodies    []struct {
			Mass float64 `json:"mass_kg"`
			X    float64 `json:"x_m"`
			Z    float64 `json:"z_m"`
			XX   float64 `json:"xx_kgm2"`
			YY   float64 `json:"yy_kgm2"`
			ZZ   float64 `json:"zz_kgm2"`
			XZ   float64 `json:"xz_kgm2"`
		}
	}
	if err := json.Unmarshal(text, &b); err != nil {
		t.Fatal(err)
	}
	bike := &steer.Bicycle{
		Wheelbase: b.Wheelbase, Trail: b.Trail, HeadAngle: math.Pi/2 - b.Tilt, RearRadius: 0.3, FrontRadius: 0.35,
		RearWheel: mass.Share{1, 0, 0, 0}, Front: mass.Share{0, 0, 1, 1}, FrontWheel: mass.Share{0, 0, 0, 1},
	}
	for i, p := range b.Bodies {
		half := (p.XX + p.YY + p.ZZ) / 2 // of the tensor I = 2 half 1 - K m
		bike.Items = append(bike.Items, mass.Item{
			Mass: p.Mass, Place: mass.Vec{X: p.X, Z: -p.Z},
			Spread:     mass.Sym{XX: half - p.XX, YY: half - p.YY, ZZ: half - p.ZZ, XZ: p.XZ}.Scale(1 / p.Mass),
			MassU:      0.01 * p.Mass,
			MassSource: i, PlaceU: mass.Vec{X: 0.005, Z: 0.005}, PlaceSource: i,
		})
	}
	return bike
}

func model(t testing.TB, b *steer.Bicycle) *steer.Model {
	t.Helper()
	m, ok := steer.New(b)
	if !ok {
		t.Fatal("no equation of motion")
	}
	return m
}

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s is %.15g, want %.15g ± %g", what, got, want, within)
	}
}

// Meijaard et al. (2007), the benchmark's matrices and eigenvalues as printed.
func TestPublishedBenchmark(t *testing.T) {
	m := model(t, benchmark(t))
	for _, c := range []struct {
		name string
		got  steer.Matrix
		want steer.Matrix
	}{
		{"M", m.M, steer.Matrix{{80.81722, 2.31941332208709}, {2.31941332208709, 0.29784188199686}}},
		{"K0", m.K0, steer.Matrix{{-80.95, -2.59951685249872}, {-2.59951685249872, -0.80329488458618}}},
		{"K2", m.K2, steer.Matrix{{0, 76.59734589573222}, {0, 2.65431523794604}}},
		{"C1", m.C1, steer.Matrix{{0, 33.86641391492494}, {-0.85035641456978, 1.68540397397560}}},
	} {
		for i := range 2 {
			for j := range 2 {
				near(t, c.name, c.got[i][j], c.want[i][j], 1e-12)
			}
		}
	}
	for v, want := range map[float64][4]complex128{
		0:  {3.13164324790656, -3.13164324790656, 5.53094371765393, -5.53094371765393},
		1:  {3.52696170990070 + 0.80774027519930i, 3.52696170990070 - 0.80774027519930i, -3.13423125066578, -7.11008014637442},
		2:  {2.68234517512745 + 1.68066296590675i, 2.68234517512745 - 1.68066296590675i, -3.07158645641514, -8.67387984831735},
		3:  {1.70675605663975 + 2.31582447384325i, 1.70675605663975 - 2.31582447384325i, -2.63366137253667, -10.35101467245920},
		4:  {0.41325331521125 + 3.07910818603206i, 0.41325331521125 - 3.07910818603206i, -1.42944427361326, -12.15861426576447},
		5:  {-0.77534188219585 + 4.46486771378823i, -0.77534188219585 - 4.46486771378823i, -0.32286642900409, -14.07838969279822},
		6:  {-1.52644486584142 + 5.87673060598709i, -1.52644486584142 - 5.87673060598709i, -0.00406690076970, -16.08537123098026},
		8:  {-2.69348683581097 + 8.46037971396931i, -2.69348683581097 - 8.46037971396931i, 0.14327879765713, -20.27940894394569},
		10: {-3.72016840437287 + 10.90681139476287i, -3.72016840437287 - 10.90681139476287i, 0.16105338653172, -24.62459635017404},
	} {
		got := m.Eigenvalues(v)
		for _, w := range want {
			off := math.Inf(1)
			for _, g := range got {
				off = math.Min(off, cmplx.Abs(g-w))
			}
			if off > 1e-12*(1+cmplx.Abs(w)) {
				t.Errorf("at %g m/s no eigenvalue is %v, the nearest is off by %g: %v", v, w, off, got)
			}
		}
		if v >= 1 && (imag(got[0]) <= 0 || got[1] != cmplx.Conj(got[0])) {
			t.Errorf("at %g m/s the weave does not come first: %v", v, got)
		}
	}
	weave, ok := m.Weave()
	if !ok {
		t.Fatal("no weave speed")
	}
	near(t, "weave speed", weave.Value, 4.29238253634111, 1e-12)
	capsize, ok := m.Capsize()
	if !ok {
		t.Fatal("no capsize speed")
	}
	near(t, "capsize speed", capsize.Value, 6.02426201538837, 1e-12)
}

// random returns a bicycle with bodies anywhere within reason.
func random(rng *rand.Rand) *steer.Bicycle {
	in := func(a, b float64) float64 { return a + (b-a)*rng.Float64() }
	b := &steer.Bicycle{
		Wheelbase: in(0.9, 1.3), Trail: in(-0.02, 0.14), HeadAngle: in(1.0, 1.45), RearRadius: in(0.2, 0.38), FrontRadius: in(0.2, 0.38),
		RearWheel: mass.Share{1, 0, 0, 0, 0}, Front: mass.Share{0, 0, 1, 1, 1}, FrontWheel: mass.Share{0, 0, 0, 1, 0},
	}
	wheel := func(x, r float64) mass.Item {
		return mass.Item{Mass: in(1, 4), Place: mass.Vec{X: x, Z: r}, Spread: mass.Ring(in(0.6, 0.95) * r)}
	}
	body := func(m, x, z float64) mass.Item {
		return mass.Item{Mass: m, Place: mass.Vec{X: x, Z: z}, Spread: mass.Box(in(0.1, 1), in(0.1, 0.5), in(0.1, 1)).PitchBy(in(-1, 1))}
	}
	b.Items = []mass.Item{
		wheel(0, b.RearRadius), body(in(10, 130), in(0.2, 0.6), in(0.5, 1.1)), body(in(2, 15), in(0.6, 1.1), in(0.4, 0.9)),
		wheel(b.Wheelbase, b.FrontRadius), body(in(0, 10), in(0.7, 1.3), in(0.2, 0.9)),
	}
	for i := range b.Items {
		it := &b.Items[i]
		it.MassU, it.MassSource, it.PlaceU, it.PlaceSource = 0.02*it.Mass, i, mass.Vec{X: 0.01, Z: 0.01}, i
	}
	return b
}

// The referee is gonum's eigenvalues of the state matrix, on random bicycles at
// random speeds, speeds at which two meet among them.
func TestEigenvaluesAgainstGonum(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 4))
	for n := range 1000 {
		m := model(t, random(rng))
		v := 12 * rng.Float64()
		if n%4 == 0 {
			v = meeting(m, v)
		}
		var state mat.Dense
		mm := mat.NewDense(2, 2, []float64{m.M[0][0], m.M[0][1], m.M[1][0], m.M[1][1]})
		kc := mat.NewDense(2, 4, nil)
		for i := range 2 {
			for j := range 2 {
				kc.Set(i, j, -(steer.Gravity*m.K0[i][j] + v*v*m.K2[i][j]))
				kc.Set(i, 2+j, -v*m.C1[i][j])
			}
		}
		var lower mat.Dense
		if err := lower.Solve(mm, kc); err != nil {
			t.Fatal(err)
		}
		state.Stack(mat.NewDense(2, 4, []float64{0, 0, 1, 0, 0, 0, 0, 1}), &lower)
		var e mat.Eigen
		if !e.Factorize(&state, mat.EigenNone) {
			t.Fatal("gonum gave up")
		}
		within := 1e-9
		if n%4 == 0 {
			within = 1e-5 // where two meet, half of the digits are lost by any way
		}
		got := m.Eigenvalues(v)
		for _, w := range e.Values(nil) {
			off := math.Inf(1)
			for _, g := range got {
				off = math.Min(off, cmplx.Abs(g-w))
			}
			if off > within*(1+cmplx.Abs(w)) {
				t.Fatalf("bicycle %d at %g m/s: %v is not in %v, off by %g", n, v, w, got, off)
			}
		}
	}
}

// meeting looks for a speed near which two real eigenvalues become a pair.
func meeting(m *steer.Model, from float64) float64 {
	pair := func(v float64) bool { e := m.Eigenvalues(v); return imag(e[0]) != 0 }
	lo, hi := 0.0, from
	if pair(lo) == pair(hi) {
		return from
	}
	for range 60 {
		if mid := (lo + hi) / 2; pair(mid) == pair(lo) {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo
}
