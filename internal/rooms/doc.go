// Package rooms tells what the rooms beside the report have to say of a document:
// steering, rough roads, gears and climbing. Each takes an evaluated document and
// answers for the sides that it compares, and for their difference.
package rooms
