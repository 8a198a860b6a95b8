// Package document holds what a user keeps: builds, riders, loads, weigh-ins and
// what is shown of them. It reads and writes them as JSON, brings documents of
// earlier versions up to date, packs them into links, and checks them.
//
// A document speaks in the units of the workshop, with the unit in the key
// (mass_g, reach_mm, head_angle_deg). Axes are those of the whole project:
// x forward, y to the rider's left, z up. Where a station lies in space is the
// business of package geometry.
package document
