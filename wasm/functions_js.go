package main

import "steelyard/internal/bridge"

// functions is what the page may call.
func functions() map[string]bridge.Function {
	all := map[string]bridge.Function{
		// Until the bridge has a stage, the canvas shows nothing.
		"show":    func(...string) string { return "" },
		"pointer": func(...string) string { return "" },
		"camera":  func(...string) string { return "" },
	}
	for name, f := range bridge.Functions {
		all[name] = bridge.Guard(name, f)
	}
	return all
}
