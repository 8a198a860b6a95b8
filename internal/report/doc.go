// Package report evaluates a document in one call: it joins what is fitted
// (document, parts), where it is (geometry, assembly) and what it weighs (mass)
// into figures with their doubt, and sets builds against each other. Everything
// that the page shows of a document is in its report; package tables writes what
// leaves the page.
package report
