// Package front puts Steelyard's functions on the frame's window, and lets the
// page show its first figures, before ebiten gets ready.
//
// It does so in its initialisation. The Go runtime initialises packages in the
// order of their import paths as soon as what they import is ready; ebiten's
// imports text/template, which comes after everything of this project. ebiten's
// own initialisation then takes a tenth of a second (it compiles its shaders),
// and opening its canvas some more: this package holds all that back until the
// page has what it asked for. Should the order ever be another, figures come
// that much later, and nothing else changes.
package front
