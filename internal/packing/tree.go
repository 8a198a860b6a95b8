package packing

// tree is what a search still has to look at, but for the way to go at once.
type tree struct {
	pool  pool   // open ways, least bound first
	stack []open // open ways beyond what the pool may hold, last first
}

// poolMax is how many open ways are kept in order: about 40 MB of nodes.
const poolMax = 20000

// take takes out the last of the stack, or what has the least bound. Bounds from
// the cut on are of no interest.
func (t *tree) take(cut float64) (open, bool) {
	for n := len(t.stack); n > 0; n-- {
		o := t.stack[n-1]
		t.stack = t.stack[:n-1]
		if o.way.bound < cut {
			return o, true
		}
	}
	if len(t.pool) > 0 {
		if o := t.pool.pop(); o.way.bound < cut {
			return o, true
		}
		t.pool = nil // nor is any other
	}
	return open{}, false
}

func (t *tree) push(o open) {
	if len(t.pool) < poolMax {
		t.pool.push(o)
	} else {
		t.stack = append(t.stack, o)
	}
}

// low is the least bound of everything open, the cut if nothing is.
func (t *tree) low(cut float64) float64 {
	low := cut
	if len(t.pool) > 0 {
		low = min(low, t.pool[0].way.bound)
	}
	for i := range t.stack {
		low = min(low, t.stack[i].way.bound)
	}
	return low
}
