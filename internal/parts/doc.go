// Package parts says what is fitted: the catalogue of generic parts, the
// document that a user keeps, the checks on both, and the versions of the
// format. It knows what a part weighs and what it is fixed to; where a station
// lies in space is the business of package geometry.
//
// A document speaks in the units of the workshop, with the unit in the key
// (mass_g, reach_mm, head_angle_deg). Axes are those of the whole project:
// x forward, y to the rider's left, z up.
package parts
