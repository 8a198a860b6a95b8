// Package geometry says where things are: it turns the figures of a frame,
// fork, wheels and cockpit into points on the posed bike. The pose has both
// wheels on level ground, the steering straight and the suspension at its
// stated sag. Lengths are metres, angles radians; the origin is on the ground
// straight below the rear axle, x forward, y to the rider's left, z up.
package geometry
