// Package conversion changes a build from one set of parts to another: a gear hub
// for derailleurs, wheels for rim brakes for wheels for discs. It says what goes,
// what comes and what stays, and makes the changed build.
package conversion
