package weighin_test

import (
	"testing"

	"steelyard/internal/weighin"
)

// BenchmarkWeigh works out a weigh-in of four readings against a dozen parts.
func BenchmarkWeigh(b *testing.B) {
	bike, items := tourer(b)
	w := visit(bike, items, 100, 250)
	b.ReportAllocs()
	for b.Loop() {
		if r, _ := weighin.Weigh(w, bike, items); r == nil {
			b.Fatal("not weighed")
		}
	}
}
