// Package newbike makes a first whole bike: a frame of some sort and size, with
// figures of this project's own, and the sets that go on it. It is a place to
// start from, whose figures are then typed over.
package newbike
