// Package report is the one call: a document in, everything that the page
// shows out. It joins what is fitted (parts), where it is (geometry) and what
// it weighs (mass) into figures with their doubt, sets two builds against each
// other, and writes the tables that leave the page.
package report
