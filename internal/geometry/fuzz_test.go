package geometry

import (
	"encoding/binary"
	"math"
	"testing"

	"pgregory.net/rapid"

	"steelyard/internal/document"
)

// sane fails if Pose broke one of its promises.
func sane(t rapid.TB, b *document.Build) {
	t.Helper()
	bike, problems := Pose(b)
	failed := false
	for _, p := range problems {
		failed = failed || p.Severity == document.SeverityError
		if p.Field == "" || p.Message.String() == "" || p.Build != b.ID {
			t.Errorf("a problem that does not say where or what: %+v", p)
		}
	}
	if failed != (bike == nil) {
		t.Fatalf("bike %v, problems %v", bike != nil, problems)
	}
	if bike != nil && !bike.finite() {
		t.Fatalf("not finite: %+v", bike)
	}
}

// FuzzPose puts any numbers into a good build: nine bytes say which figure, and
// what it becomes.
func FuzzPose(f *testing.F) {
	set := func(pairs ...float64) []byte {
		var out []byte
		for i := 0; i+1 < len(pairs); i += 2 {
			out = append(out, byte(pairs[i]))
			out = binary.LittleEndian.AppendUint64(out, math.Float64bits(pairs[i+1]))
		}
		return out
	}
	f.Add(true, set())
	f.Add(false, set(0, math.NaN()))
	f.Add(true, set(6, math.Inf(1)))
	f.Add(true, set(4, 1, 8, 5000, 12, 4999))
	f.Add(true, set(14, -443.6, 15, 35))
	f.Add(false, set(20, 1, 21, 1, 22, 1, 23, 1))
	rigid, travel := load(f, "touring-bike.json"), load(f, "travel-bike.json")
	f.Fuzz(func(t *testing.T, sprung bool, data []byte) {
		b := *rigid
		if sprung {
			b = *travel
		}
		all := leaves(&b)
		for ; len(data) >= 9; data = data[9:] {
			all[int(data[0])%len(all)].value.SetFloat(math.Float64frombits(binary.LittleEndian.Uint64(data[1:])))
		}
		sane(t, &b)
	})
}

// Any figures whatever, and figures that are each within their bounds.
func TestPoseOfAnyFigures(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := &document.Build{ID: "any"}
		within := rapid.Bool().Draw(t, "within bounds")
		for i, l := range leaves(b) {
			if within {
				l.value.SetFloat(rapid.Float64Range(figures[i].low, figures[i].high).Draw(t, l.field))
			} else {
				l.value.SetFloat(rapid.Float64().Draw(t, l.field))
			}
		}
		sane(t, b)
	})
}

// Figures near enough to a bike's that most of them are posed, with now and
// then one at the end of its range.
func TestPoseOfOddBikes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := figuresThat(t, rapid.Float64Range(-100, 100).Draw(t, "gap"))
		if rapid.Bool().Draw(t, "sprung") {
			sprung(t, b)
		}
		all := leaves(b)
		for range rapid.IntRange(0, 3).Draw(t, "changes") {
			i := rapid.IntRange(0, len(all)-1).Draw(t, "which")
			f := figures[i]
			all[i].value.SetFloat(rapid.SampledFrom([]float64{f.low, f.high, f.from, f.to, (f.from + f.to) / 2}).Draw(t, "to"))
		}
		sane(t, b)
	})
}
