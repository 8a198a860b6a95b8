// Package bridge holds the functions that the page may call: text in, text out,
// nothing else. They run and are tested natively; wasm/ only puts them on the
// window.
//
// A function answers with what it was asked for, JSON or plain text, or with
//
//	{"problem":{"severity":"error","message":...}}
//
// when it cannot. Bad input never panics; should a function panic all the same,
// [Session.Guard] turns that into a problem too, so that the page and the user's
// work in it live on.
//
// The comment of each function says what it takes and what it answers with, by
// the schema in data/schema.
package bridge
