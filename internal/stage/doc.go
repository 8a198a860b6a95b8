// Package stage stands between hand and picture: it keeps the camera of each
// aspect, finds what a pointer is on, and turns pointer events into what the
// user means. It knows nothing of a browser and draws nothing itself.
package stage
