package packing_test

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"steelyard/internal/packing"
)

// near is a difference that no rider feels: with weights of 100, a twentieth of
// a percentage point of front share, or half a millimetre. The page stops at it.
const near = 0.05

// 30 goods and 8 bags, with room to spare and with little: how long until it is
// proved that nothing is better by more than near, or what gap is left after ten
// seconds; and how long GLPK takes to prove the same, which is stopped after
// thirty. The last figure is how many times longer GLPK takes, at least that when
// it proves nothing; it is left out when neither of them does.
func BenchmarkThirtyGoods(b *testing.B) {
	glpsol, missing := exec.LookPath("glpsol")
	for _, full := range []float64{0.5, 0.7, 0.85} {
		for seed := range uint64(3) {
			b.Run(fmt.Sprintf("full%.0f/%d", 100*full, seed), func(b *testing.B) {
				task := tour(seed+1, 30, 8, full, full)
				task.Tolerance = near
				var st packing.Status
				for b.Loop() {
					s, err := packing.New(task)
					if err != nil {
						b.Fatal(err)
					}
					st = s.Status()
					for began := time.Now(); !st.Done && time.Since(began) < 10*time.Second; {
						st = s.Run(500)
					}
				}
				ours := b.Elapsed() / time.Duration(b.N)
				b.ReportMetric(st.Gap, "gap")
				b.ReportMetric(float64(ours.Milliseconds()), "ms")
				if missing != nil {
					b.Log("glpsol is missing: install the package glpk-utils to compare with it")
					return
				}
				theirs, proved := timeGLPK(b, glpsol, task, near/math.Abs(st.Incumbent))
				b.ReportMetric(float64(theirs.Milliseconds()), "glpk-ms")
				b.ReportMetric(map[bool]float64{true: 1}[proved], "glpk-proved")
				if st.Done {
					b.ReportMetric(float64(theirs)/float64(ours), "times")
				}
			})
		}
	}
}

// timeGLPK is how long GLPK takes, and whether it comes to an end in thirty
// seconds. Its gap is relative.
func timeGLPK(b *testing.B, glpsol string, task *packing.Task, gap float64) (time.Duration, bool) {
	b.Helper()
	var lp bytes.Buffer
	if err := writeLP(&lp, task); err != nil {
		b.Fatal(err)
	}
	in := filepath.Join(b.TempDir(), "task.lp")
	if err := os.WriteFile(in, lp.Bytes(), 0o600); err != nil {
		b.Fatal(err)
	}
	began := time.Now()
	said, err := exec.Command(glpsol, "--lp", in, "--mipgap", fmt.Sprint(gap), "--cuts", "--tmlim", "30").CombinedOutput()
	if err != nil {
		b.Fatalf("%v\n%s", err, said)
	}
	return time.Since(began), !bytes.Contains(said, []byte("TIME LIMIT EXCEEDED"))
}
