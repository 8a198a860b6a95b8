package spelling_test

import (
	"math/rand/v2"
	"slices"
	"testing"

	"steelyard/internal/spelling"
)

func TestNearest(t *testing.T) {
	names := []string{"front-hub", "rear-hub", "saddle", "seatpost", "stem"}
	for _, c := range []struct{ typed, want string }{
		{"saddle", "saddle"},
		{"  Sadle ", "saddle"},
		{"saddel", "saddle"}, // neighbours swapped are one slip
		{"front-hup", "front-hub"},
		{"raer-hub", "rear-hub"},
		{"SEATPOST", "seatpost"},
		{"tem", "stem"},
		{"", "stem"}, // the shortest is the fewest letters away
	} {
		if got := spelling.Nearest(c.typed, names); got != c.want {
			t.Errorf("%q is taken for %q, want %q", c.typed, got, c.want)
		}
	}
	if got := spelling.Nearest("ac", []string{"ab", "ad"}); got != "ab" {
		t.Errorf("of two that are as near %q comes, want the first", got)
	}
	if got := spelling.Nearest("stem", nil); got != "" {
		t.Errorf("of no names %q comes", got)
	}
}

// distance is the optimal string alignment distance as it is defined, without a
// table and without a limit.
func distance(a, b string) int {
	if a == "" || b == "" {
		return len(a) + len(b)
	}
	m, n := len(a)-1, len(b)-1
	change := 1
	if a[m] == b[n] {
		change = 0
	}
	d := min(distance(a[:m], b)+1, distance(a, b[:n])+1, distance(a[:m], b[:n])+change)
	if m > 0 && n > 0 && a[m] == b[n-1] && a[m-1] == b[n] {
		d = min(d, distance(a[:m-1], b[:n-1])+1)
	}
	return d
}

func TestDistance(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	word := func() string {
		w := make([]byte, random.IntN(7))
		for i := range w {
			w[i] = "abc"[random.IntN(3)]
		}
		return string(w)
	}
	for range 500 {
		a, b := word(), word()
		want := distance(a, b)
		for limit := range 8 {
			if got := spelling.Distance(a, b, limit); got != min(want, limit+1) {
				t.Fatalf("from %q to %q within %d: %d, want %d", a, b, limit, got, min(want, limit+1))
			}
		}
	}
	// Longer words than the table on the stack has room for.
	long := string(slices.Repeat([]byte("ab"), 40))
	if got := spelling.Distance(long, long[1:]+"x", 5); got != 2 {
		t.Errorf("a letter off in front and one on behind are %d changes, want 2", got)
	}
}
