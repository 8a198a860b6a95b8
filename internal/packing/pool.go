package packing

// node is a state that open ways lead on from, in little memory: without the
// inverse of its basis, which is worked out again when it is needed.
type node struct {
	q              []int16
	mask           []uint32
	key            []int8
	basic          []uint32
	head           []int32
	pi             []float64
	rhs            []float64
	load, vol, lim []float64
	fixed          []int16
	base, bound    float64
	most           float64
}

func newNode(s *state) *node {
	n := &node{
		q: make([]int16, len(s.q)), mask: make([]uint32, len(s.q)), basic: make([]uint32, len(s.q)),
		key: append([]int8(nil), s.key...), head: append([]int32(nil), s.head...), fixed: append([]int16(nil), s.fixed...),
		base: s.base, bound: s.bound, most: s.most,
	}
	d, b, l := len(s.rhs), len(s.load), len(s.lim)
	f := make([]float64, 2*d+2*b+l)
	cut := func(from []float64) []float64 {
		to := f[:len(from):len(from)]
		f = f[len(from):]
		copy(to, from)
		return to
	}
	n.pi, n.rhs, n.load, n.vol, n.lim = cut(s.pi), cut(s.rhs), cut(s.load), cut(s.vol), cut(s.lim)
	for t := range s.q {
		n.q[t], n.mask[t], n.basic[t] = int16(s.q[t]), uint32(s.mask[t]), uint32(s.basic[t])
	}
	return n
}

// restore makes a state of a node, but for the inverse.
func (n *node) restore(s *state) {
	s.q, s.mask, s.basic = s.q[:0], s.mask[:0], s.basic[:0]
	for t := range n.q {
		s.q = append(s.q, int32(n.q[t]))
		s.mask = append(s.mask, uint64(n.mask[t]))
		s.basic = append(s.basic, uint64(n.basic[t]))
	}
	s.key = append(s.key[:0], n.key...)
	s.head = append(s.head[:0], n.head...)
	s.pi = append(s.pi[:0], n.pi...)
	s.rhs = append(s.rhs[:0], n.rhs...)
	s.load = append(s.load[:0], n.load...)
	s.vol = append(s.vol[:0], n.vol...)
	s.lim = append(s.lim[:0], n.lim...)
	s.fixed = append(s.fixed[:0], n.fixed...)
	s.base, s.bound, s.most = n.base, n.bound, n.most
	d := len(n.head)
	if cap(s.inv) < d*d {
		s.inv = make([]float64, d*d)
		s.x = make([]float64, d)
	}
	s.inv, s.x = s.inv[:d*d], s.x[:d]
}

// open is a way not yet gone.
type open struct {
	node *node
	way  way
}

// pool is a heap of open ways, least bound first.
type pool []open

func (p pool) less(i, j int) bool { return p[i].way.bound < p[j].way.bound }

func (p *pool) push(o open) {
	*p = append(*p, o)
	h := *p
	for i := len(h) - 1; i > 0; {
		up := (i - 1) / 2
		if !h.less(i, up) {
			break
		}
		h[i], h[up] = h[up], h[i]
		i = up
	}
}

func (p *pool) pop() open {
	h := *p
	n := len(h) - 1
	top := h[0]
	h[0] = h[n]
	h[n] = open{}
	h = h[:n]
	*p = h
	for i := 0; ; {
		least := i
		for c := 2*i + 1; c <= 2*i+2 && c < n; c++ {
			if h.less(c, least) {
				least = c
			}
		}
		if least == i {
			return top
		}
		h[i], h[least] = h[least], h[i]
		i = least
	}
}
