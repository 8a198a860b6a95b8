// Package tables writes what leaves the program: tables of figures, differences,
// states, parts and luggage as CSV and Markdown, captions of pictures, and how
// the figures in them were obtained.
package tables
