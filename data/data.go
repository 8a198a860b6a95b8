// Package data holds what Steelyard comes with, embedded: the catalogue of
// generic parts, the demo, and the words that keys are shown as.
//
// The figures of the catalogue, of the goods and of the demo are typical values of this
// project's own. They are not the figures of any product: a generic part
// stands for many, and its half-width says how far a real one may lie off.
// Weigh the part at hand when it matters.
package data

import "embed"

// Files holds these files, by their path in this folder:
//
//	catalogue/*.json  an array of parts.Entry each, one file a group of parts
//	demo/travel.json  a document.Document
//	frames/frames.json  what newbike begins with: frames in three sizes
//	goods/goods.json  an array of parts.GoodEntry: what to take along
//	goods/bags.json   an array of parts.BagEntry: what to pack it in
//	sets/*.json       an array of parts.Set each: parts that are fitted together
//	words/en.json     key to label, sorted by key
//
// The labels of other languages, words/de.json, and the names of the catalogue,
// the goods and the demo in them, words/entries.de.json, are the page's to fetch when
// somebody wants them; the program does not carry them.
//
//go:embed catalogue/*.json sets/*.json demo/*.json frames/*.json goods/*.json words/en.json
var Files embed.FS

// Schemas holds schema/*.json: JSON Schemas of what the program reads and
// writes, and of every function that the page may call. They are apart from Files so that a program that does not ask for
// them does not carry them.
//
//go:embed schema/*.json
var Schemas embed.FS
