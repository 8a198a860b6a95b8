// Package photograph reads a photograph of a bike: where it lies behind the
// drawing of a build, and what it says of the frame, with how far that may be off.
//
// A picture's points are in px from its upper left corner, y downwards. The bike
// stands as its maker's figures describe it, on level ground and with its
// suspension at full length.
package photograph
