// Package words holds what the program says: the labels of a language, and
// sentences that are composed before it is known in which language somebody will
// read them.
//
// A label has a key such as "carrier.fork-lower". A sentence has no key besides
// itself: its English template, as package fmt understands it, stands in the code
// that says it, and another language maps the template to its own.
//
// No language is kept anywhere: a value of [Words] is handed to whoever writes.
package words
