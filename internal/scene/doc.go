// Package scene is the picture as a list of shapes and labels, independent of
// where it is painted: ebiten paints it on the canvas, package svg writes it
// to a file. A scene is laid out for one size and one camera; its coordinates
// are logical pixels, x right and y down, and painters scale them to the
// screen.
//
// [Draw] works in layers, from the paper up: the ground, the other build as a
// ghost, the rider, the bike, its bags, the dots of the parts, the centre of mass
// and its path; then the lettering, what must be read before what may be left
// out. Whatever is lettered takes its place on the sheet, and what comes later
// stays clear of it. [WeighIn] is a drawing of its own kind by the same hand.
//
// The words in a picture come from its caller, by key, so that it can speak
// another language.
//
// What the suspension carries is solid, what it follows is open: tubes and dots
// alike, so that no colour is needed to tell them apart. Painters fill by the
// nonzero rule, then stroke, with round joins; there are no other styles, so
// that a new painter has little to learn.
package scene
