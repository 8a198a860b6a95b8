// Command empty is an ebiten program that draws nothing: the reference for
// the size and the start of the real one. It asks for frames in the same way.
package main
