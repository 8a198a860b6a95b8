package packing_test

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"steelyard/internal/mass"
	"steelyard/internal/packing"
)

// solve runs a search to its end, watching that the bound never falls, the
// incumbent never rises, and the one stays below the other.
func solve(t failer, task *packing.Task) (*packing.Solver, packing.Status) {
	t.Helper()
	s, err := packing.New(task)
	if err != nil {
		var short *packing.Shortage
		if errors.As(err, &short) {
			return nil, packing.Status{Done: true, Err: err, Incumbent: math.Inf(1)}
		}
		t.Fatalf("New: %v", err)
	}
	last := s.Status()
	for range 200_000 {
		if last.Done {
			return s, last
		}
		st := s.Run(50)
		slack := 1e-9 * (1 + math.Abs(st.Bound))
		switch { // once the aim is proved, fewer moves may cost some of the tolerance, and only a better aim more of them
		case st.Bound < last.Bound-slack, st.Bound > st.Incumbent+slack, st.Proved && st.Err == nil && st.Gap > task.Tolerance+task.Rounding()+slack,
			!last.Proved && st.Incumbent > last.Incumbent+slack && !st.Proved, last.Proved && st.Moves > last.Moves && st.Incumbent > last.Incumbent-slack:
			t.Fatalf("from %+v to %+v", last, st)
		}
		last = st
	}
	t.Fatalf("the search does not end: %+v", last)
	return nil, last
}

type failer interface {
	Helper()
	Fatalf(string, ...any)
}

// keeps reports what limit a packing breaks, "" for none.
func keeps(task *packing.Task, p packing.Packing) string {
	const slack = 1e-9
	load, volume := make([]float64, len(task.Bags)), make([]float64, len(task.Bags))
	group := map[int]int{}
	if task.AtMost != nil && moves(task, p) > *task.AtMost {
		return "the number of moves"
	}
	for i, g := range task.Goods {
		n, bags := 0, 0
		for j := range task.Bags {
			if p[i][j] < 0 {
				return "less than nothing of " + g.Name
			}
			if p[i][j] > 0 {
				bags++
				if at, ok := group[g.Group]; g.Group != 0 && ok && at != j {
					return g.Name + " is not with its group"
				}
				group[g.Group] = j
			}
			n += p[i][j]
			load[j] += float64(p[i][j]) * g.Mass
			volume[j] += float64(p[i][j]) * g.Volume
		}
		switch {
		case n != g.Quantity:
			return fmt.Sprintf("%d of %d %s", n, g.Quantity, g.Name)
		case g.Pinned && p[i][g.In] != g.Quantity:
			return g.Name + " is not where it is pinned"
		case g.Together && bags > 1:
			return g.Name + " is not together"
		}
	}
	for _, f := range task.Forbidden {
		if p[f.Good][f.Bag] > 0 {
			return task.Goods[f.Good].Name + " is where it may not be"
		}
	}
	for j, b := range task.Bags {
		if b.Permitted > 0 && load[j] > b.Permitted+slack {
			return "the load of " + b.Name
		}
		if b.Volume > 0 && volume[j] > b.Volume+slack {
			return "the volume of " + b.Name
		}
	}
	for _, l := range task.Limits {
		sum := 0.0
		for j := range load {
			sum += l.Share[j] * load[j]
		}
		if sum > l.Permitted+slack {
			return "the limit of " + l.Name
		}
	}
	return ""
}

// moves counts what has changed bags: whole goods, or pieces of those that may be
// split, beyond those that lay in no bag.
func moves(task *packing.Task, p packing.Packing) int {
	sum := 0
	for i, g := range task.Goods {
		was, stay := 0, 0
		for j := range task.Bags {
			was += task.Start[i][j]
			stay += min(task.Start[i][j], p[i][j])
		}
		switch {
		case g.Together || g.Group != 0:
			if stay < was {
				sum++
			}
		default:
			sum += was - stay
		}
	}
	return sum
}

// everyPacking calls f with each way to lay the pieces of the goods into bags.
func everyPacking(task *packing.Task, f func(packing.Packing)) {
	p := make(packing.Packing, len(task.Goods))
	for i := range p {
		p[i] = make([]int, len(task.Bags))
	}
	var lay func(i, j, left int)
	lay = func(i, j, left int) {
		switch {
		case i == len(task.Goods):
			f(p)
		case j == len(task.Bags)-1:
			p[i][j] = left
			if i+1 < len(task.Goods) {
				lay(i+1, 0, task.Goods[i+1].Quantity)
			} else {
				f(p)
			}
			p[i][j] = 0
		default:
			for n := range left + 1 {
				p[i][j] = n
				lay(i, j+1, left-n)
			}
			p[i][j] = 0
		}
	}
	lay(0, 0, task.Goods[0].Quantity)
}

func tiny(t *rapid.T) *packing.Task {
	f := func(lo, hi float64, name string) float64 {
		return math.Round(rapid.Float64Range(lo, hi).Draw(t, name)*100) / 100
	}
	task := &packing.Task{RearContact: 0, FrontContact: 1.1}
	for i := range rapid.IntRange(1, 5).Draw(t, "goods") {
		g := packing.Good{
			Name: fmt.Sprint("good ", i), Mass: f(0.1, 3, "mass"), Volume: f(0, 5, "volume"),
			Quantity: rapid.IntRange(1, 2).Draw(t, "quantity"), Together: rapid.Bool().Draw(t, "together"),
		}
		task.Goods = append(task.Goods, g)
	}
	for j := range rapid.IntRange(1, 3).Draw(t, "bags") {
		b := packing.Bag{
			Name:  fmt.Sprint("bag ", j),
			Place: mass.Vec{X: f(-0.2, 1.2, "x"), Y: f(-0.2, 0.2, "y"), Z: f(0.3, 1, "z")}, Steered: f(0, 0.2, "distance"),
		}
		if rapid.Bool().Draw(t, "limited") {
			b.Permitted, b.Volume = f(1, 8, "permitted"), f(2, 20, "room")
		}
		task.Bags = append(task.Bags, b)
	}
	for i := range task.Goods {
		task.Goods[i].Group = rapid.IntRange(0, 2).Draw(t, "group") % 2 * rapid.IntRange(1, 2).Draw(t, "which")
	}
	task.Start = make(packing.Packing, len(task.Goods))
	for i := range task.Start {
		task.Start[i] = make([]int, len(task.Bags))
		g := &task.Goods[i]
		for n := g.Quantity; n > 0; {
			// in no bag, all in one, or, where that may be, in several
			j, k := rapid.IntRange(-1, len(task.Bags)-1).Draw(t, "start"), n
			if !g.Together && g.Group == 0 {
				k = 1
			}
			if j >= 0 {
				task.Start[i][j] += k
			}
			n -= k
		}
	}
	if rapid.IntRange(0, 3).Draw(t, "forbid") == 0 {
		task.Forbidden = append(task.Forbidden, packing.Pair{Good: len(task.Goods) - 1, Bag: 0})
	}
	if rapid.IntRange(0, 2).Draw(t, "limited moves") == 0 {
		n := rapid.IntRange(0, 4).Draw(t, "at most")
		task.AtMost = &n
	}
	if len(task.Goods) > 1 && rapid.Bool().Draw(t, "pin") {
		g := &task.Goods[0]
		g.Pinned, g.In = true, rapid.IntRange(0, len(task.Bags)-1).Draw(t, "in")
	}
	if rapid.Bool().Draw(t, "rest") {
		bike := mass.Item{Mass: 16, Place: mass.Vec{X: 0.5, Y: 0.01, Z: 0.5}}
		task.Rest, task.RestSteered = bike.Moments(), f(0, 1, "rest steered")
	}
	task.Aim = packing.Aim{
		FrontShare: f(0.2, 0.6, "share"), Front: f(0, 100, "front"), Low: f(0, 100, "low"),
		Balance: f(0, 100, "balance"), Middle: f(0, 100, "middle"), Steered: f(0, 1000, "steered"), Centre: mass.Vec{X: 0.5, Z: 0.6},
	}
	return task
}

// Every packing, one by one, is the referee of the fewest moves: none that is as
// good, within the tolerance of the bound, has fewer, and the one that is taken
// is itself so good.
func TestFewestMovesAgainstEnumeration(t *testing.T) {
	fewer := 0
	rapid.Check(t, func(t *rapid.T) {
		task := tiny(t)
		task.Tolerance = rapid.SampledFrom([]float64{0, 0.5, 3}).Draw(t, "tolerance")
		s, st := solve(t, task)
		if st.Err != nil {
			return
		}
		p := s.Packing()
		if n := moves(task, p); n != st.Moves || task.Moves(p) != n || keeps(task, p) != "" {
			t.Fatalf("%d moves, the solver says %d and %d; it breaks %q", n, st.Moves, task.Moves(p), keeps(task, p))
		}
		best, least := math.Inf(1), math.MaxInt
		everyPacking(task, func(p packing.Packing) {
			if keeps(task, p) != "" {
				return
			}
			aim := task.Figures(p).Aim
			best = min(best, aim)
			if aim <= st.Bound+task.Tolerance-1e-9 {
				least = min(least, moves(task, p))
			}
		})
		if st.Incumbent > best+task.Tolerance+1e-9 || st.Bound > best+1e-9 || st.Moves > least {
			t.Fatalf("%+v, best is %v, and %d moves do", st, best, least)
		}
		if st.Incumbent > best+1e-9 {
			fewer++
		}
	})
	if fewer == 0 {
		t.Error("no packing was taken for its fewer moves")
	}
}

// Every packing, one by one, is the referee.
func TestAgainstEnumeration(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		task := tiny(t)
		best := math.Inf(1)
		everyPacking(task, func(p packing.Packing) {
			if keeps(task, p) == "" {
				best = min(best, task.Figures(p).Aim)
			}
		})
		s, st := solve(t, task)
		if math.IsInf(best, 1) {
			var short *packing.Shortage
			if !errors.As(st.Err, &short) {
				t.Fatalf("no packing keeps the limits, but the solver ends with %+v", st)
			}
			return
		}
		if st.Err != nil {
			t.Fatalf("there is a packing with %v, but the solver says: %v", best, st.Err)
		}
		if math.Abs(st.Incumbent-best) > 1e-9*(1+math.Abs(best)) {
			t.Fatalf("aim %v, the best of all is %v", st.Incumbent, best)
		}
		p := s.Packing()
		if broken := keeps(task, p); broken != "" {
			t.Fatalf("the packing breaks %s", broken)
		}
		if f := task.Figures(p).Aim; math.Abs(f-st.Incumbent) > 1e-9*(1+math.Abs(f)) {
			t.Fatalf("the packing has aim %v, the solver says %v", f, st.Incumbent)
		}
	})
}

// GLPK (GNU Linear Programming Kit), on the same tasks as mixed integer
// programmes in the CPLEX LP format, is the referee.
func TestAgainstGLPK(t *testing.T) {
	glpsol, err := exec.LookPath("glpsol")
	if err != nil {
		t.Fatal("glpsol is missing, the referee of this test: install it (on Debian and Ubuntu: sudo apt-get install -y glpk-utils)")
	}
	for seed := range uint64(40) {
		n, b := 4+int(seed%5), 3+int(seed%4)
		task := tour(seed, n, b, []float64{0, 0.6, 0.8}[seed%3], []float64{0.7, 0}[seed%2])
		task.Tolerance = 0
		_, st := solve(t, task)
		want, ok := referee(t, glpsol, task, math.Inf(1))
		switch {
		case !ok:
			if st.Err == nil {
				t.Errorf("seed %d: GLPK finds no packing, the solver one with %v", seed, st.Incumbent)
			}
		case st.Err != nil:
			t.Errorf("seed %d: GLPK finds a packing with %v, the solver says: %v", seed, want, st.Err)
		case math.Abs(st.Incumbent-want) > 1e-5*(1+math.Abs(want)): // GLPK's own tolerances are 1e-7 on rows and 1e-5 on integers
			t.Errorf("seed %d: aim %v, GLPK has %v", seed, st.Incumbent, want)
		}
	}
}

// The rules that people pack by, and the fewest moves among packings that are as
// good: the same rules for GLPK, stage by stage.
func TestRulesAgainstGLPK(t *testing.T) {
	glpsol, err := exec.LookPath("glpsol")
	if err != nil {
		t.Fatal("glpsol is missing, the referee of this test: install it (on Debian and Ubuntu: sudo apt-get install -y glpk-utils)")
	}
	packed := 0
	for seed := range uint64(15) {
		task := ruled(tour(seed, 8+int(seed%5), 4+int(seed%3), []float64{0.4, 0.6}[seed%2], []float64{0.5, 0}[seed%2]))
		task.Tolerance = 0.3
		if n := int(seed%8) + 2; seed%3 == 2 {
			task.AtMost = &n
		}
		_, st := solve(t, task)
		want, ok := referee(t, glpsol, task, math.Inf(1))
		if ok != (st.Err == nil) {
			t.Errorf("seed %d: GLPK finds a packing: %v; the solver says %v", seed, ok, st.Err)
		}
		if !ok || st.Err != nil {
			continue
		}
		packed++
		if st.Incumbent < want-1e-4 || st.Incumbent > want+task.Tolerance+1e-4 || st.Bound > want+1e-4 {
			t.Errorf("seed %d: aim %v, at least %v; GLPK has %v", seed, st.Incumbent, st.Bound, want)
		}
		const edge = 1e-4
		most, _ := referee(t, glpsol, task, st.Bound+task.Tolerance-edge)
		least, _ := referee(t, glpsol, task, st.Bound+task.Tolerance+edge)
		if n := float64(st.Moves); n > most+1e-6 || n < least-1e-6 {
			t.Errorf("seed %d: %v moves, GLPK needs %v to %v", seed, n, least, most)
		}
	}
	if packed < 8 {
		t.Errorf("only %d tasks have a packing", packed)
	}
}

// referee is GLPK's objective; false when it proves that there is no packing.
func referee(t *testing.T, glpsol string, task *packing.Task, ceiling float64) (float64, bool) {
	t.Helper()
	dir := t.TempDir()
	var lp bytes.Buffer
	if err := writeLP(&lp, task, ceiling); err != nil {
		t.Fatal(err)
	}
	in, out := filepath.Join(dir, "task.lp"), filepath.Join(dir, "task.txt")
	if err := os.WriteFile(in, lp.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	said, err := exec.Command(glpsol, "--lp", in, "--mipgap", "0", "--cuts", "--tmlim", "120", "-o", out).CombinedOutput()
	if err != nil {
		t.Fatalf("glpsol: %v\n%s", err, said)
	}
	text, err := os.ReadFile(out)
	if err != nil {
		t.Fatal(err)
	}
	status, objective := "", math.NaN()
	for line := range strings.Lines(string(text)) {
		f := strings.Fields(line)
		if len(f) > 1 && f[0] == "Status:" {
			status = strings.Join(f[1:], " ")
		}
		if len(f) > 3 && f[0] == "Objective:" {
			if objective, err = strconv.ParseFloat(f[3], 64); err != nil {
				t.Fatal(err)
			}
		}
	}
	switch status {
	case "INTEGER OPTIMAL":
		return objective, true
	case "INTEGER EMPTY", "INTEGER UNDEFINED":
		return 0, false
	}
	t.Fatalf("glpsol ends with status %q\n%s", status, said)
	return 0, false
}
