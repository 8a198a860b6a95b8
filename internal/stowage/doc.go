// Package stowage packs a load of a document: it states the load's goods and
// bags on a bike as a task for package packing, and writes a packing back as
// goods of the load, as what lies where, and as what to move.
//
// Goods and bags are meant by their index in the load wherever a comment does not
// say that they are the task's.
package stowage
