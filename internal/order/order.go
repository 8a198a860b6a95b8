// Package order sorts. The standard library's generic sort is compiled anew for
// every type sorted, some 7 kB of the program that each page loads; this one has
// a single copy of the algorithm.
package order

import "sort"

// Stable sorts s so that compare(a, b), negative where a comes before b, is
// nowhere positive for neighbours; what is equal keeps its order.
func Stable[T any](s []T, compare func(a, b T) int) {
	sort.SliceStable(s, func(i, j int) bool { return compare(s[i], s[j]) < 0 })
}
