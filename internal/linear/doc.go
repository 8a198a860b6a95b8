// Package linear is the linear algebra of small symmetric problems: dense
// vectors and matrices, and the Cholesky decomposition.
//
// It is made for a few dozen rows at most, where plain loops are fast enough and
// can be read beside the formulas. Sizes that do not fit each other are a
// mistake of the program, and panic.
package linear
