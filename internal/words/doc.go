// Package words holds what the program says: the labels of a language by key, such
// as "carrier.fork-lower", the filling in of templates, and how a text or a figure
// of the user's stands in a sentence.
package words
