package packing

import "math"

// cut is a row of the relaxation besides the limits: every packing keeps it, but
// not every relaxed one, in which goods are cut up.
//
//	Σ_k u_k x_kj <= rhs
type cut struct {
	bag int
	u   []float64 // by kind
	rhs float64
}

const (
	cutRounds = 10
	cutMost   = 24
)

// tighten adds cuts to an instance as long as they raise the bound of its root.
func tighten(in *instance, r *relax) *relax {
	x := make([]float64, len(in.kinds)*in.nb)
	last := math.Inf(-1)
	for range cutRounds {
		st := r.root()
		if r.solve(st, math.Inf(1)) != optimal {
			break
		}
		if st.bound < last+1e-6 {
			break
		}
		last = st.bound
		r.fractions(st, x)
		// keep what binds
		kept := in.cuts[:0]
		for c := range in.cuts {
			if st.pi[in.plain+c] < -1e-9 {
				kept = append(kept, in.cuts[c])
			}
		}
		in.cuts = kept
		n := len(in.cuts)
		for j := range in.nb {
			if row := in.loadRow[j]; row >= 0 {
				in.separate(j, x, in.load[j], func(k *kind) float64 { return k.mass })
			}
			if row := in.volRow[j]; row >= 0 {
				in.separate(j, x, in.vol[j], func(k *kind) float64 { return k.vol })
			}
		}
		if len(in.cuts) > cutMost {
			in.cuts = in.cuts[:cutMost]
		}
		more := len(in.cuts) > n
		in.index()
		r = newRelax(in)
		if !more {
			break
		}
	}
	return r
}

// index sets up the rows of the cuts.
func (in *instance) index() {
	in.rhs = in.rhs[:in.plain]
	in.cutsOf = make([][]int, in.nb)
	for c := range in.cuts {
		in.rhs = append(in.rhs, in.cuts[c].rhs)
		j := in.cuts[c].bag
		in.cutsOf[j] = append(in.cutsOf[j], c)
	}
	in.rows = len(in.rhs)
}

// fractions fills x with what the relaxation puts where, by kind and bag.
func (r *relax) fractions(s *state, x []float64) {
	for i := range x {
		x[i] = float64(s.fixed[i])
	}
	for t, q := range s.q {
		if q > 0 {
			x[r.kindOf[t]*r.nb+int(s.key[t])] += float64(q)
		}
	}
	for p, h := range s.head {
		if h >= 0 {
			t := int(h >> 8)
			x[r.kindOf[t]*r.nb+int(h&255)] += s.x[p]
			x[r.kindOf[t]*r.nb+int(s.key[t])] -= s.x[p]
		}
	}
}

// separate looks for a cut of the limit Σ a x <= b of a bag that x violates: a
// mixed integer rounding inequality (Marchand and Wolsey 2001), with variables
// that are over half of what they may be replaced by what they leave.
func (in *instance) separate(j int, x []float64, b float64, size func(*kind) float64) {
	type item struct{ a, x, top float64 }
	items := make([]item, len(in.kinds))
	var deltas []float64
	rest := b * (1 + 1e-12)
	for k := range in.kinds {
		kd := &in.kinds[k]
		it := &items[k]
		if kd.mask>>j&1 == 0 {
			continue
		}
		it.a, it.x = size(kd), x[k*in.nb+j]
		it.top = float64(kd.count)
		if it.a > 0 {
			it.top = min(it.top, math.Floor(b/it.a))
		}
		if it.x > 1e-6 && it.x < it.top-1e-6 && it.a > 0 {
			deltas = append(deltas, it.a)
		}
		if it.x > it.top/2 {
			rest -= it.a * it.top
		}
	}
	best := cut{bag: j}
	worst := 0.02
	try := func(delta float64) {
		n := math.Floor(rest / delta)
		f := rest/delta - n
		if f < 0.01 || f > 0.99 {
			return
		}
		round := func(a float64) float64 {
			n := math.Floor(a)
			return n + max(0, a-n-f)/(1-f)
		}
		rhs, sum, norm := n, 0.0, 0.0
		u := make([]float64, len(items))
		for k := range items {
			it := &items[k]
			if it.top == 0 || it.a == 0 {
				continue
			}
			if it.x > it.top/2 {
				u[k] = -round(-it.a / delta)
				rhs += u[k] * it.top
			} else {
				u[k] = round(it.a / delta)
			}
			sum += u[k] * it.x
			norm += u[k] * u[k]
		}
		if norm == 0 {
			return
		}
		norm = math.Sqrt(norm)
		if v := (sum - rhs) / norm; v > worst {
			worst = v
			for k := range u {
				u[k] /= norm
			}
			best.u, best.rhs = u, rhs/norm
		}
	}
	for _, d := range deltas {
		for _, f := range []float64{1, 0.5, 0.25, 2} {
			try(d * f)
		}
	}
	for k := 1.0; k <= 4; k++ {
		try(b * (1 + 1e-9) / (k + 1) * 1.0000001)
		try(b / (k + 0.5))
	}
	if best.u != nil {
		best.rhs += 1e-9
		in.cuts = append(in.cuts, best)
	}
}
