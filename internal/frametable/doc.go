// Package frametable reads the figures of a frame from text, as makers print
// them: lines of a name and numbers, or a row of a table below its header, in
// English or German. It says what each line was taken for, puts the figures into
// a build, and holds against them what follows from them, such as the wheelbase.
// Lengths are mm, angles degrees.
package frametable
