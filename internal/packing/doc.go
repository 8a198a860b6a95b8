// Package packing finds out which goods belong in which bag.
//
// A packing says how many pieces of every good lie in every bag. A bag counts
// as a point at its packed centre, so a packing matters to the ride only
// through the loads of the bags, W_j = Σ_i m_i x_ij. The aim is a sum of five
// weighted terms, each of the goods and the rest together, of mass M:
//
//	front    |share of M on the front wheel - the wanted share|
//	low      height of the centre of mass, m
//	balance  |sideways offset of the centre of mass|, m
//	middle   mean of the squared radii of pitch and yaw about a stated
//	         middle, m²: Σ m (dx² + (dy² + dz²)/2) / M
//	steered  moment of inertia about the steering axis of what turns with the
//	         bar, by M, m²
//
// The smaller the sum, the better. All goods must be packed, so M is given and
// every term is linear in x or the absolute value of something linear: the
// task is a mixed integer linear programme, and any solver for such can check
// the answer.
//
// # How the best packing is found and proved
//
// Branch and bound. The bound of a part of the search is that of the linear
// relaxation: goods may be cut like cake. Its dual has one multiplier for
// every limit and for each absolute value; for given multipliers π the bound
//
//	L(π) = const + Σ_r π_r b_r + Σ_i q_i min_j (m_i K_j(π) + v_i H_j(π))
//
// falls apart into the goods, and holds for every π of the right signs: the
// simplex method only proposes multipliers, and a rounding error in it costs
// tightness but never truth. The same pass gives the reduced cost of every
// good in every bag; what exceeds the gap to the best known packing is ruled
// out. See relax.go for the simplex and search.go for the search.
//
// Pieces of one good, and goods that are equal in all that counts, are
// interchangeable: only how many of them lie in a bag is searched. Bags that
// differ only in their side (panniers left and right) are told apart last, when
// all the rest is settled. Goods that stay together are one piece. Where moves are
// limited they are one more row, and only pieces that start in the same bag are
// interchangeable; fewest.go has how the fewest are found. Bags that are equal and empty are tried once.
//
// The package knows nothing of documents: whoever calls it turns a load into a
// Task. Units are SI, except litres for volume; axes are those of the project,
// x forward, y to the rider's left, z up from level ground.
package packing
