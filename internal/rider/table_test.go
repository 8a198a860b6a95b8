package rider

import (
	"math"
	"testing"

	"steelyard/internal/document"
	"steelyard/internal/mass"
)

// The sums of reference tables: de Leva (1996), table 4, and its rounding.
func TestTablesAddUp(t *testing.T) {
	near(t, "the men's table", tables["male"].sum(), 1, 1e-12)
	near(t, "the women's table", tables["female"].sum(), 0.9999, 1e-12)
	if len(document.Tables) != len(tables) || len(document.Postures) != len(postures) {
		t.Errorf("a document may name %v and %v", document.Tables, document.Postures)
	}
	for i, p := range postures {
		if document.Postures[i] != p.name {
			t.Errorf("posture %d is %q, in a document %q", i, p.name, document.Postures[i])
		}
	}
	for _, name := range document.Tables {
		if tables[name] == nil {
			t.Errorf("no table %q", name)
		}
	}
}

// Radii of gyration must be those of a body: none of the three second moments
// along the axes may be negative.
func TestRadiiBelongToABody(t *testing.T) {
	for name, table := range tables {
		for k, r := range table.rows {
			s, tr, l := r.sagittal*r.sagittal, r.transverse*r.transverse, r.longitudinal*r.longitudinal
			for _, m := range []float64{tr + l - s, s + l - tr, s + tr - l} {
				if m < 0 {
					t.Errorf("%s %s: second moment %g along an axis", name, kindNames[k], m/2)
				}
			}
			if !(r.centre > 0 && r.centre < 1 && r.mass > 0) {
				t.Errorf("%s %s: %+v", name, kindNames[k], r)
			}
		}
	}
}

// From the sole to the top of the head the lengths of a standing body make one
// stature.
func TestLengthsStackUp(t *testing.T) {
	near(t, "ankle, shank, thigh, trunk, head and neck", ankleHeight+shankLength+thighLength+trunkLength+shoulderToTop, 1, 1e-12)
	for _, name := range document.Tables {
		m := measure(1.75, tables[name])
		near(t, "neck and head", m.neck+m.length[head], shoulderToTop*1.75, 1e-12)
	}
}

// A second source of lengths: the mean lengths of the men measured for the
// table of de Leva (1996), table 4, over their mean stature of 1741 mm. Limb by
// limb the two agree within 6 %; within the arm the elbow is placed differently.
func TestLengthsAgainstSecondSource(t *testing.T) {
	for _, c := range []struct {
		what      string
		ours, his float64
	}{
		{"trunk", trunkLength, 515.5 / 1741},
		{"arm", upperArmLength + forearmLength, (281.7 + 268.9) / 1741},
		{"leg", thighLength + shankLength, (422.2 + 434.0) / 1741},
		{"foot", footLength, 258.1 / 1741},
	} {
		near(t, c.what, c.ours/c.his, 1, 0.06)
	}
}

// The spread of a segment, whatever its direction, gives back the radii of
// gyration about its axes: I = m k².
func TestSpreadGivesBackRadii(t *testing.T) {
	from, across := mass.Vec{X: 0.1, Y: 0.2, Z: 0.3}, mass.Vec{X: 0.2, Y: 1, Z: -0.4}
	for _, to := range []mass.Vec{{X: 0.5, Y: 0.3, Z: 0.3}, {X: 0.1, Y: 0.2, Z: -1}, {X: -2, Y: 0.7, Z: 0.9}} {
		for _, table := range tables {
			for k, r := range table.rows {
				way := to.Sub(from)
				l := way.Norm()
				way = way.Scale(1 / l)
				transverse := square(across, way)
				sagittal := cross(transverse, way)
				i := inertia(r.spread(from, to, across))
				for _, c := range []struct {
					axis mass.Vec
					k    float64
				}{{sagittal, r.sagittal}, {transverse, r.transverse}, {way, r.longitudinal}} {
					near(t, kindNames[k]+"'s radius", math.Sqrt(i.Times(c.axis).Dot(c.axis))/l, c.k, 1e-12)
				}
			}
		}
	}
}
