package tables_test

import "steelyard/internal/report/specimen"

// What the tests are made of.
var (
	bike       = specimen.Bike
	documentOf = specimen.DocumentOf
	fitted     = specimen.Fitted
	other      = specimen.Other
	laden      = specimen.Laden
	withState  = specimen.WithState
	point      = specimen.Point
)
