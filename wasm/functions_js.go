package main

import "steelyard/data"

// functions is what the page may call.
var functions = map[string]func(...string) string{
	"demo":  func(...string) string { return embedded("demo/travel.json") },
	"words": func(...string) string { return embedded("words/en.json") },
}

func embedded(path string) string {
	text, err := data.Files.ReadFile(path)
	if err != nil {
		return problem(err.Error())
	}
	return string(text)
}
