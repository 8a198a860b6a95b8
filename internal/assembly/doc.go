// Package assembly puts a build together with its load: each part at its place on
// the posed bike, each good in its bag, the rider on the saddle, as items with a
// mass, a place and the doubts about both. Figures and pictures are made of that.
//
// Inside, masses are kg and lengths m; documents hold g and mm.
package assembly
