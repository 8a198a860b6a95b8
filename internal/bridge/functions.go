package bridge

import (
	"fmt"
	"runtime/debug"

	"steelyard/internal/report"
)

// Function is a function that the page may call.
type Function = func(args ...string) string

// Functions are the functions without memory, by name. Those that deal with
// what the canvas shows are methods of [Stage].
var Functions = map[string]Function{
	"evaluate":           one(evaluate),
	"open":               one(open),
	"blank":              none(blank),
	"demo":               none(demo),
	"catalogue":          none(catalogue),
	"words":              none(englishWords),
	"speak":              one(speak),
	"stations":           none(stations),
	"kinds":              none(kinds),
	"goods":              none(goods),
	"newRider":           none(newRider),
	"newIDs":             newIDs,
	"halfWidth":          two(halfWidth),
	"partFromEntry":      one(partFromEntry),
	"bagFromEntry":       one(bagFromEntry),
	"goodFromEntry":      one(goodFromEntry),
	"partFromWords":      two(partFromWords),
	"bagFromWords":       two(bagFromWords),
	"goodFromWords":      two(goodFromWords),
	"fileText":           one(fileText),
	"find":               two(find),
	"findParts":          findParts,
	"copyLoad":           copyLoad,
	"weighIn":            two(weighIn),
	"weighInDrawing":     weighInDrawing,
	"packStart":          two(packStart),
	"packRun":            one(packRun),
	"packApply":          one(packApply),
	"packStop":           none(packStop),
	"encodeLink":         one(encodeLink),
	"decodeLink":         one(decodeLink),
	"readPartsCSV":       two(readPartsCSV),
	"partsCSV":           partsCSV,
	"partsMarkdown":      partsMarkdown,
	"luggageCSV":         luggageCSV,
	"luggageMarkdown":    luggageMarkdown,
	"figuresCSV":         figuresCSV,
	"differenceCSV":      differenceCSV,
	"figuresMarkdown":    figuresMarkdown,
	"differenceMarkdown": differenceMarkdown,
	"statesCSV":          statesCSV,
	"statesMarkdown":     statesMarkdown,
	"notes":              two(notes),
	"provenance":         two(provenance),
	"parseMass":          two(parseMass),
	"parseLength":        two(parseLength),
	"svg":                two(drawSVG),
	"version":            none(report.Program),
}

// none, one and two fit functions of so many arguments. Missing ones are empty,
// further ones are not looked at.
func none(f func() string) Function { return func(...string) string { return f() } }

func one(f func(string) string) Function {
	return func(args ...string) string { return f(argument(args, 0)) }
}

func two(f func(string, string) string) Function {
	return func(args ...string) string { return f(argument(args, 0), argument(args, 1)) }
}

func argument(args []string, i int) string {
	if i < len(args) {
		return args[i]
	}
	return ""
}

// Guard makes a function that answers a panic of f with a problem. A panic is
// a fault of this program: the answer tells where, for a report of the fault.
func Guard(name string, f Function) Function {
	return func(args ...string) (answer string) {
		defer func() {
			if r := recover(); r != nil {
				answer = problem("", fmt.Sprintf("%s failed inside Steelyard (%v). Your work is untouched; this is a fault of the program.\n%s", name, r, debug.Stack()))
			}
		}()
		return f(args...)
	}
}
