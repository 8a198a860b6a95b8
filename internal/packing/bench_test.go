package packing_test

import (
	"bytes"
	"encoding/json"
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

// patience is how long a referee may take for one programme.
const patience = 20 * time.Second

// 30 goods and 8 bags, with room to spare and with little, without rules and with
// those that people pack by: how long until it is proved that nothing is better by
// more than near (and, with rules, that nothing as good takes fewer moves), or what
// gap is left after twenty seconds; and how long GLPK and HiGHS take to prove the
// same of the same programme, in two steps where moves count. The last figures are
// how many times longer the better of both takes for the aim, and for aim and moves,
// at least that when it proves nothing in its time; they are left out where this
// search proves nothing: it gives up the moves, see giveUp.
func BenchmarkThirtyGoods(b *testing.B) {
	for _, rules := range []bool{false, true} {
		for _, full := range []float64{0.5, 0.7, 0.85} {
			for seed := range uint64(3) {
				name := fmt.Sprintf("full%.0f/%d", 100*full, seed)
				if rules {
					name = "rules/" + name
				}
				b.Run(name, func(b *testing.B) {
					task := tour(seed+1, 30, 8, full, full)
					if rules {
						ruled(task)
					}
					task.Tolerance = near
					against(b, task)
				})
			}
		}
	}
}

func against(b *testing.B, task *packing.Task) {
	var st packing.Status
	var aim, all time.Duration
	for b.Loop() {
		began := time.Now()
		s, err := packing.New(task)
		if err != nil {
			b.Fatal(err)
		}
		st = s.Status()
		for aim = 0; !st.Done && time.Since(began) < 20*time.Second; {
			st = s.Run(100) // so finely its time is told
			if st.Proved && aim == 0 {
				aim = time.Since(began)
			}
		}
		all = time.Since(began)
	}
	b.ReportMetric(st.Gap, "gap")
	b.ReportMetric(float64(aim.Milliseconds()), "aim-ms")
	b.ReportMetric(float64(all.Milliseconds()), "ms")
	b.ReportMetric(map[bool]float64{true: 1}[st.Proved && st.Fewest], "proved")
	if task.Start != nil {
		b.ReportMetric(float64(st.Moves), "moves")
	}
	// They have the whole tolerance for the aim, and then the solver's bound for the
	// moves.
	best := [2]float64{math.Inf(1), math.Inf(1)}
	for name, time := range map[string]func(*testing.B, string, float64) (time.Duration, bool){"glpk": timeGLPK, "highs": timeHiGHS} {
		theirs, proved := time(b, programme(b, task, math.Inf(1)), near)
		report := func(i int, what string) {
			b.ReportMetric(float64(theirs.Milliseconds()), name+what+"-ms")
			b.ReportMetric(map[bool]float64{true: 1}[proved], name+what+"-proved")
			best[i] = min(best[i], float64(theirs))
		}
		report(0, "-aim")
		if task.Start != nil {
			more, also := time(b, programme(b, task, st.Bound+near), 0.99)
			theirs, proved = theirs+more, proved && also
			report(1, "-moves")
		}
	}
	if st.Proved {
		b.ReportMetric(best[0]/float64(aim), "times-aim")
	}
	if st.Fewest && !math.IsInf(best[1], 1) {
		b.ReportMetric(best[1]/float64(all), "times-moves")
	}
}

func programme(b *testing.B, task *packing.Task, ceiling float64) string {
	b.Helper()
	var lp bytes.Buffer
	if err := writeLP(&lp, task, ceiling); err != nil {
		b.Fatal(err)
	}
	file := filepath.Join(b.TempDir(), "task.lp")
	if err := os.WriteFile(file, lp.Bytes(), 0o600); err != nil {
		b.Fatal(err)
	}
	return file
}

// timeGLPK is how long GLPK takes, and whether it comes to an end. Its gap is
// relative: that of the aim is of about 65, that of moves of about 20.
func timeGLPK(b *testing.B, file string, gap float64) (time.Duration, bool) {
	b.Helper()
	size := 65.0
	if gap > near {
		size = 20
	}
	began := time.Now()
	said, err := exec.Command("glpsol", "--lp", file, "--mipgap", fmt.Sprint(gap/size), "--cuts", "--tmlim", fmt.Sprint(patience.Seconds())).CombinedOutput()
	if err != nil {
		b.Fatalf("%v: install the package glpk-utils\n%s", err, said)
	}
	return time.Since(began), !bytes.Contains(said, []byte("TIME LIMIT EXCEEDED"))
}

// timeHiGHS is how long HiGHS takes, compiled to WebAssembly and in Node.js, and
// whether it comes to an end.
func timeHiGHS(b *testing.B, file string, gap float64) (time.Duration, bool) {
	b.Helper()
	web, err := filepath.Abs("../../web")
	if err != nil {
		b.Fatal(err)
	}
	said, err := exec.Command("node", "testdata/highs.mjs", web, file, fmt.Sprint(gap), fmt.Sprint(patience.Seconds())).Output()
	if err != nil {
		b.Fatalf("%v: run npm ci in the folder web", err)
	}
	var answer struct {
		Status string
		MS     float64
	}
	if err := json.Unmarshal(said, &answer); err != nil {
		b.Fatal(err)
	}
	return time.Duration(answer.MS * float64(time.Millisecond)), answer.Status == "Optimal"
}
