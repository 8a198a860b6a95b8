package order_test

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"steelyard/internal/order"
)

// TestStable: as the standard library's generic sort, in any order and with
// equals among them.
func TestStable(t *testing.T) {
	type pair struct{ key, place int }
	rapid.Check(t, func(t *rapid.T) {
		keys := rapid.SliceOf(rapid.IntRange(-3, 3)).Draw(t, "keys")
		got := make([]pair, len(keys))
		for i, k := range keys {
			got[i] = pair{k, i}
		}
		want := slices.Clone(got)
		byKey := func(a, b pair) int { return a.key - b.key }
		order.Stable(got, byKey)
		slices.SortStableFunc(want, byKey)
		if !slices.Equal(got, want) {
			t.Fatalf("got %v, want %v", got, want)
		}
	})
}
