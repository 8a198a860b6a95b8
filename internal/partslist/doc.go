// Package partslist reads and writes lists of parts as spreadsheets have them.
package partslist
