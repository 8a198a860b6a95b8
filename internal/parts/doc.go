// Package parts says what can be fitted: the catalogue of generic parts, bags and
// goods, the search in it, the kind that a part's name tells, and which parts of
// two builds are the same.
package parts
