// Package scene is the picture as a list of shapes and labels, independent of
// where it is painted: ebiten paints it on the canvas, package svg writes it
// to a file. A scene is laid out for one size and one camera; its coordinates
// are logical pixels, x right and y down, and painters scale them to the
// screen.
package scene
