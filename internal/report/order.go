package report

import "sort"

// order returns the indices of n elements, those with the larger key first; equal
// ones go by the larger tie, if there are ties, and then by their order. Sorting
// the elements themselves, large ones with pointers in them, costs far more.
func order(keys, ties []float64) []int32 {
	o := ordering{at: make([]int32, len(keys)), keys: keys, ties: ties}
	for i := range o.at {
		o.at[i] = int32(i)
	}
	sort.Sort(&o)
	return o.at
}

// ordering sorts indices.
type ordering struct {
	at         []int32
	keys, ties []float64
}

func (o *ordering) Len() int      { return len(o.at) }
func (o *ordering) Swap(i, j int) { o.at[i], o.at[j] = o.at[j], o.at[i] }

func (o *ordering) Less(i, j int) bool {
	a, b := o.at[i], o.at[j]
	if x, y := o.keys[a], o.keys[b]; x != y {
		return x > y
	}
	if o.ties != nil {
		if x, y := o.ties[a], o.ties[b]; x != y {
			return x > y
		}
	}
	return a < b
}

// gather returns a list in an order.
func gather[T any](list []T, order []int32) []T {
	out := make([]T, len(list))
	for k, i := range order {
		out[k] = list[i]
	}
	return out
}
