package mass_test

import "steelyard/internal/mass"

// tourer is a small loaded bike of our own invention, with everything that the
// package must carry: shared mass sources, shared places, extents, parts off
// the middle plane and a part that is known exactly.
func tourer() []mass.Item {
	return []mass.Item{
		{Mass: 3.4, Place: mass.Vec{X: 0.55, Z: 0.55}, Spread: mass.Box(0.7, 0.05, 0.4), MassU: 0.06, MassSource: 0, PlaceU: mass.Alike(0.010), PlaceSource: 0},
		{Mass: 2.1, Place: mass.Vec{X: 0, Z: 0.34}, Spread: mass.Ring(0.31), MassU: 0.03, MassSource: 1},
		{Mass: 1.7, Place: mass.Vec{X: 1.08, Z: 0.34}, Spread: mass.Ring(0.31), MassU: 0.03, MassSource: 1},
		{Mass: 1.9, Place: mass.Vec{X: 0, Z: 0.34}, Spread: mass.Disc(0.05, 0.1), MassU: 0.04, MassSource: 2},
		{Mass: 2.6, Place: mass.Vec{X: 0.46, Z: 0.28}, Spread: mass.Disc(0.06, 0.12), MassU: 0.05, MassSource: 3, PlaceU: mass.Alike(0.004), PlaceSource: 1},
		{Mass: 8.0, Place: mass.Vec{X: -0.05, Y: 0.18, Z: 0.55}, Spread: mass.Box(0.32, 0.17, 0.33), MassU: 0.40, MassSource: 4, PlaceU: mass.Alike(0.015), PlaceSource: 2},
		{Mass: 7.1, Place: mass.Vec{X: -0.05, Y: -0.18, Z: 0.55}, Spread: mass.Box(0.32, 0.17, 0.33), MassU: 0.35, MassSource: 4, PlaceU: mass.Alike(0.015), PlaceSource: 2},
		{Mass: 0.6, Place: mass.Vec{X: 0.95, Z: 1.02}, Spread: mass.Pair(0.55)},
		{Mass: 75, Place: mass.Vec{X: 0.38, Z: 1.05}, Spread: mass.Box(0.5, 0.4, 0.8), MassU: 0.5, MassSource: 5, PlaceU: mass.Alike(0.02), PlaceSource: 3},
	}
}

// half shares out the tourer as unsprung mass is tallied: all, none, half.
var half = mass.Share{0, 1, 1, 1, 0.5, 0, 0, 0, 0}

// fore is another share of the same length: the front wheel and part of the bar.
var fore = mass.Share{0, 0, 1, 0, 0, 0, 0, 0.3, 0}

// figures are all the figures of the package, as functions of the items, for
// tests that hold for every one of them.
func figures() map[string]func([]mass.Item) mass.Figure {
	m := map[string]func([]mass.Item) mass.Figure{
		"total":         func(it []mass.Item) mass.Figure { return mass.Total(it, nil) },
		"total of half": func(it []mass.Item) mass.Figure { return mass.Total(it, half) },
		"product":       func(it []mass.Item) mass.Figure { return mass.CentralProduct(it, nil) },
		"product of half": func(it []mass.Item) mass.Figure {
			return mass.CentralProduct(it, half)
		},
		"lever": func(it []mass.Item) mass.Figure {
			return mass.LeverMass(it, nil, mass.Vec{X: 0.44, Y: 0.1, Z: 0.37}, mass.Vec{Y: -0.2, Z: 0.34})
		},
		"lever of half": func(it []mass.Item) mass.Figure {
			return mass.LeverMass(it, half, mass.Vec{X: 0.44, Z: 0.37}, mass.Vec{Z: 0.34})
		},
		"front load": func(it []mass.Item) mass.Figure { return mass.Support(it, nil, 1.08, 0) },
		"rear load":  func(it []mass.Item) mass.Figure { return mass.Support(it, nil, 0, 1.08) },
		"front share": func(it []mass.Item) mass.Figure {
			return mass.Ratio(mass.Support(it, nil, 1.08, 0), mass.Total(it, nil))
		},
		"sprung": func(it []mass.Item) mass.Figure {
			return mass.Plus(mass.Total(it, nil), mass.Times(-1, mass.Total(it, half)))
		},
		"sprung to unsprung": func(it []mass.Item) mass.Figure {
			u := mass.Total(it, half)
			return mass.Ratio(mass.Plus(mass.Total(it, nil), mass.Times(-1, u)), u)
		},
		"half to fore": func(it []mass.Item) mass.Figure {
			return mass.Ratio(mass.Total(it, half), mass.Total(it, fore))
		},
	}
	for name, axis := range axes {
		m["centre "+name] = func(it []mass.Item) mass.Figure { return mass.Centre(it, nil, axis) }
		m["inertia "+name] = func(it []mass.Item) mass.Figure { return mass.CentralInertia(it, nil, axis) }
		m["gyration "+name] = func(it []mass.Item) mass.Figure { return mass.Gyration(it, nil, axis) }
		m["centre of half "+name] = func(it []mass.Item) mass.Figure { return mass.Centre(it, half, axis) }
		m["inertia of half "+name] = func(it []mass.Item) mass.Figure { return mass.CentralInertia(it, half, axis) }
	}
	return m
}

var axes = map[string]mass.Axis{"x": mass.X, "y": mass.Y, "z": mass.Z}
