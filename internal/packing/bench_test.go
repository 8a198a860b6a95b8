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
// a percentage point of front share, or half a millimetre.
const near = 0.05

// 30 goods and 8 bags, with room to spare and with little: how long until
// nothing is better by more than a hair, or what gap is left after ten seconds.
func BenchmarkThirtyGoods(b *testing.B) {
	for _, full := range []float64{0.5, 0.7, 0.85} {
		for seed := range uint64(3) {
			b.Run(fmt.Sprintf("full%.0f/%d", 100*full, seed), func(b *testing.B) {
				task := tour(seed+1, 30, 8, full, full)
				task.Tolerance = near
				for b.Loop() {
					s, err := packing.New(task)
					if err != nil {
						b.Fatal(err)
					}
					st := s.Status()
					for began := time.Now(); !st.Done && time.Since(began) < 10*time.Second; {
						st = s.Run(500)
					}
					b.ReportMetric(st.Gap, "gap")
				}
			})
		}
	}
}

// GLPK on the same tasks and with the same tolerance, for 30 seconds at most.
func BenchmarkThirtyGoodsGLPK(b *testing.B) {
	glpsol, err := exec.LookPath("glpsol")
	if err != nil {
		b.Skip("glpsol is missing: install the package glpk-utils")
	}
	for _, full := range []float64{0.5, 0.7, 0.85} {
		for seed := range uint64(3) {
			b.Run(fmt.Sprintf("full%.0f/%d", 100*full, seed), func(b *testing.B) {
				task := tour(seed+1, 30, 8, full, full)
				s, err := packing.New(task)
				if err != nil {
					b.Fatal(err)
				}
				gap := fmt.Sprint(near / math.Abs(s.Run(2000).Incumbent)) // GLPK's is relative
				var lp bytes.Buffer
				if err := writeLP(&lp, task); err != nil {
					b.Fatal(err)
				}
				in := filepath.Join(b.TempDir(), "task.lp")
				if err := os.WriteFile(in, lp.Bytes(), 0o600); err != nil {
					b.Fatal(err)
				}
				for b.Loop() {
					said, err := exec.Command(glpsol, "--lp", in, "--mipgap", gap, "--cuts", "--tmlim", "30").CombinedOutput()
					if err != nil {
						b.Fatalf("%v\n%s", err, said)
					}
					proved := 0.0
					if !bytes.Contains(said, []byte("TIME LIMIT EXCEEDED")) {
						proved = 1
					}
					b.ReportMetric(proved, "proved")
				}
			})
		}
	}
}
