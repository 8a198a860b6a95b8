// Package onscale leads through the weighing of a build's parts on a kitchen
// scale, one after the other: what is not weighed yet, what of it narrows the
// total most, and what a reading says of a part.
package onscale
