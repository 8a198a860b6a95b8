package mass_test

import (
	"math"
	"os"
	"testing"

	"github.com/goccy/go-json"
	"gonum.org/v1/gonum/mat"

	"steelyard/internal/mass"
)

// bicycle is the benchmark bicycle with its rider, see the source in the file.
type bicycle struct {
	Wheelbase float64 `json:"wheelbase_m"`
	Trail     float64 `json:"trail_m"`
	Tilt      float64 `json:"steer_tilt_rad"`
	Bodies    []struct {
		Name string
		Mass float64 `json:"mass_kg"`
		X    float64 `json:"x_m"`
		Z    float64 `json:"z_m"`
		XX   float64 `json:"xx_kgm2"`
		YY   float64 `json:"yy_kgm2"`
		ZZ   float64 `json:"zz_kgm2"`
		XZ   float64 `json:"xz_kgm2"`
	}
	M, K0 [2][2]float64
}

func benchmarkBicycle(t *testing.T) bicycle {
	t.Helper()
	text, err := os.ReadFile("../../testdata/mass/meijaard2007.json")
	if err != nil {
		t.Fatal(err)
	}
	var b bicycle
	if err := json.Unmarshal(text, &b); err != nil {
		t.Fatal(err)
	}
	if len(b.Bodies) != 4 {
		t.Fatalf("%d bodies, want 4", len(b.Bodies))
	}
	return b
}

// items turns the table's axes (y right, z down) half round about x into ours
// (y left, z up): z and the xz entry change sign.
func (b *bicycle) items() []mass.Item {
	items := make([]mass.Item, len(b.Bodies))
	for i, p := range b.Bodies {
		tensor := mass.Sym{XX: p.XX, YY: p.YY, ZZ: p.ZZ, XZ: -p.XZ}
		items[i] = mass.Item{
			Mass: p.Mass, Place: mass.Vec{X: p.X, Z: -p.Z},
			Spread: mass.SecondMoment(tensor).Scale(1 / p.Mass),
		}
	}
	return items
}

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s = %.15g, want %.15g ± %g", what, got, want, tolerance)
	}
}

func TestMeijaardTotalCentreLoads(t *testing.T) {
	b := benchmarkBicycle(t)
	items := b.items()
	near(t, "total", mass.Total(items, nil).Value, 94, 1e-12)
	// By hand: (85·0.3 + 4·0.9 + 3·1.02)/94 and (2·0.3 + 85·0.9 + 4·0.7 + 3·0.35)/94.
	near(t, "centre x", mass.Centre(items, nil, mass.X).Value, 32.16/94, 1e-12)
	near(t, "centre y", mass.Centre(items, nil, mass.Y).Value, 0, 0)
	near(t, "centre z", mass.Centre(items, nil, mass.Z).Value, 80.95/94, 1e-12)
	// By hand, moments about the rear contact: 32.16/1.02 kg on the front wheel.
	near(t, "front load", mass.Support(items, nil, b.Wheelbase, 0).Value, 32.16/1.02, 1e-12)
	near(t, "rear load", mass.Support(items, nil, 0, b.Wheelbase).Value, 94-32.16/1.02, 1e-12)
	near(t, "front share",
		mass.Ratio(mass.Support(items, nil, b.Wheelbase, 0), mass.Total(items, nil)).Value, 32.16/1.02/94, 1e-12)
}

// The inertia about the common centre, against the parallel-axis theorem done
// with gonum's matrices: I = Σ (Iᵢ + m (d·d 1 - d dᵀ)), in the paper's axes.
func TestMeijaardInertiaAgainstGonum(t *testing.T) {
	b := benchmarkBicycle(t)
	items := b.items()

	total, centre := 0.0, mat.NewVecDense(3, nil)
	for _, p := range b.Bodies {
		total += p.Mass
		centre.AddScaledVec(centre, p.Mass, mat.NewVecDense(3, []float64{p.X, 0, p.Z}))
	}
	centre.ScaleVec(1/total, centre)
	sum := mat.NewDense(3, 3, nil)
	for _, p := range b.Bodies {
		sum.Add(sum, mat.NewDense(3, 3, []float64{p.XX, 0, p.XZ, 0, p.YY, 0, p.XZ, 0, p.ZZ}))
		var d mat.VecDense
		d.SubVec(mat.NewVecDense(3, []float64{p.X, 0, p.Z}), centre)
		var steiner, outer mat.Dense
		steiner.Scale(mat.Dot(&d, &d), eye3)
		outer.Outer(1, &d, &d)
		steiner.Sub(&steiner, &outer)
		steiner.Scale(p.Mass, &steiner)
		sum.Add(sum, &steiner)
	}
	// Half a turn about x takes the paper's axes to ours.
	half := mat.NewDense(3, 3, []float64{1, 0, 0, 0, -1, 0, 0, 0, -1})
	var want mat.Dense
	want.Product(half, sum, half.T())

	got := dense(mass.Inertia(mass.Sum(items, nil).Central()))
	if !mat.EqualApprox(got, &want, 1e-12) {
		t.Errorf("inertia about the centre of mass\n%v\nwant\n%v", mat.Formatted(got), mat.Formatted(&want))
	}
	for name, axis := range axes {
		near(t, "inertia "+name, mass.CentralInertia(items, nil, axis).Value, want.At(int(axis), int(axis)), 1e-12)
		near(t, "gyration "+name, mass.Gyration(items, nil, axis).Value,
			math.Sqrt(want.At(int(axis), int(axis))/94), 1e-12)
	}
	near(t, "product", mass.CentralProduct(items, nil).Value, want.At(0, 2), 1e-12)
}

// The paper prints the mass matrix M and the stiffness matrix K0 that follow
// from table 1, to 14 decimals. They are made here from the moments of the
// whole and of the front assembly by the formulas of the paper's appendix A:
// every mass, centre and inertia of ours must be right for them to come out.
func TestMeijaardPublishedMatrices(t *testing.T) {
	b := benchmarkBicycle(t)
	items := b.items()
	front := mass.Share{0, 0, 1, 1}

	whole, fore := mass.Sum(items, nil), mass.Sum(items, front)
	// Back to the paper's axes: z and xz change sign.
	it := mass.Inertia(whole.J) // about the rear contact
	itxx, itxz, itzz := it.XX, -it.XZ, it.ZZ
	ia := mass.Inertia(fore.Central())
	iaxx, iaxz, iazz := ia.XX, -ia.XZ, ia.ZZ
	xa, za := fore.Centre().X, -fore.Centre().Z
	xt, zt := whole.Centre().X, -whole.Centre().Z

	s, c := math.Sincos(b.Tilt)
	u := (xa-b.Wheelbase-b.Trail)*c - za*s // front centre ahead of the steer axis
	ill := fore.M*u*u + iaxx*s*s + 2*iaxz*s*c + iazz*c*c
	ilx := -fore.M*u*za + iaxx*s + iaxz*c
	ilz := fore.M*u*xa + iaxz*s + iazz*c
	mu := b.Trail / b.Wheelbase * c
	sa := fore.M*u + mu*whole.M*xt

	// 14 decimals were printed; rounding in ours is about as large.
	const tolerance = 1e-13
	near(t, "M[0][0]", itxx, b.M[0][0], tolerance*100)
	near(t, "M[0][1]", ilx+mu*itxz, b.M[0][1], tolerance)
	near(t, "M[1][1]", ill+2*mu*ilz+mu*mu*itzz, b.M[1][1], tolerance)
	near(t, "K0[0][0]", whole.M*zt, b.K0[0][0], tolerance*100)
	near(t, "K0[0][1]", -sa, b.K0[0][1], tolerance)
	near(t, "K0[1][1]", -sa*s, b.K0[1][1], tolerance)
}

var eye3 = mat.NewDiagDense(3, []float64{1, 1, 1})

func dense(a mass.Sym) *mat.Dense {
	return mat.NewDense(3, 3, []float64{a.XX, a.XY, a.XZ, a.XY, a.YY, a.YZ, a.XZ, a.YZ, a.ZZ})
}
