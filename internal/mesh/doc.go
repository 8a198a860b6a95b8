// Package mesh turns the marks of a scene into triangles with soft edges, for
// a graphics card, which has no notion of paths: all marks of a picture become
// one list, in the order in which they are painted, and are drawn in one go.
//
// An edge is made smooth by geometry. The body of a shape ends half a pixel
// inside its outline, and a fringe one pixel wide leads from full cover there
// to none half a pixel outside. The area that is covered is that of the shape.
// A line or a shape thinner than a pixel becomes all fringe and as much paler.
//
// Colours are opaque, so that triangles of one mark may overlap, and the
// sub-paths of a fill are filled one by one: where the nonzero rule fills both
// of two sub-paths, so does this. What this does not do is holes, sub-paths
// that turn the other way round to take out a part of another; scenes draw
// rings as lines.
//
// (Painting path by path through a stencil buffer, as vector packages for
// graphics cards do, took some twenty draw calls a path: over half a second a
// picture by software, where this takes one call.)
package mesh
