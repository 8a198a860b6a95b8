package bridge

import (
	"fmt"
	"runtime/debug"

	"steelyard/internal/report"
)

// Function is a function that the page may call.
type Function = func(args ...string) string

// Functions are the functions that a page calls, by name; those about what its
// canvas shows are [Stage.Functions]. Arguments and answers are in
// bridge.schema.json.
func (s *Session) Functions() map[string]Function {
	return s.alone(map[string]Function{
		"evaluate":           one(s.evaluate),
		"open":               one(s.open),
		"blank":              none(s.blank),
		"demo":               none(s.demo),
		"catalogue":          none(s.catalogue),
		"words":              none(englishWords),
		"speak":              one(s.speak),
		"stations":           none(stations),
		"kinds":              none(kinds),
		"goods":              none(s.goods),
		"newRider":           none(newRider),
		"newBike":            one(s.newBike),
		"newIDs":             s.newIDs,
		"halfWidth":          two(s.halfWidth),
		"partFromEntry":      one(s.partFromEntry),
		"bagFromEntry":       one(s.bagFromEntry),
		"goodFromEntry":      one(s.goodFromEntry),
		"partFromWords":      two(s.partFromWords),
		"bagFromWords":       two(s.bagFromWords),
		"goodFromWords":      two(s.goodFromWords),
		"fileText":           two(s.fileText),
		"find":               two(s.find),
		"enter":              s.enter,
		"findParts":          s.findParts,
		"copyLoad":           s.copyLoad,
		"sets":               two(s.sets),
		"change":             two(s.change),
		"shared":             one(s.shared),
		"weighNext":          s.weighNext,
		"weighTaken":         s.weighTaken,
		"builds":             s.builds,
		"buildsParts":        one(s.buildsParts),
		"steering":           one(s.steering),
		"road":               one(s.road),
		"roadCurves":         one(s.roadCurves),
		"gears":              one(s.gears),
		"climb":              one(s.climb),
		"stretches":          one(s.stretches),
		"clearances":         one(s.clearances),
		"frameBag":           two(s.frameBag),
		"placements":         one(s.placements),
		"buildsCSV":          s.buildsCSV,
		"buildsMarkdown":     s.buildsMarkdown,
		"weighIn":            two(s.weighIn),
		"weighInDrawing":     s.weighInDrawing,
		"packStart":          two(s.packStart),
		"packRun":            one(s.packRun),
		"packApply":          one(s.packApply),
		"packStop":           none(s.packStop),
		"photograph":         s.photograph,
		"pictureFile":        two(s.pictureFile),
		"encodeLink":         one(s.encodeLink),
		"decodeLink":         one(s.decodeLink),
		"readPartsCSV":       two(s.readPartsCSV),
		"readFrameTable":     two(s.readFrameTable),
		"partsCSV":           s.partsCSV,
		"partsMarkdown":      s.partsMarkdown,
		"luggageCSV":         s.luggageCSV,
		"luggageMarkdown":    s.luggageMarkdown,
		"figuresCSV":         s.figuresCSV,
		"differenceCSV":      s.differenceCSV,
		"figuresMarkdown":    s.figuresMarkdown,
		"differenceMarkdown": s.differenceMarkdown,
		"statesCSV":          s.statesCSV,
		"statesMarkdown":     s.statesMarkdown,
		"notes":              two(s.notes),
		"provenance":         two(s.provenance),
		"parseMass":          two(s.parseMass),
		"parseLength":        two(s.parseLength),
		"svg":                two(s.drawSVG),
		"version":            none(report.Program),
	})
}

// alone makes functions wait for each other: they share the session.
func (s *Session) alone(functions map[string]Function) map[string]Function {
	for name, f := range functions {
		functions[name] = func(args ...string) string {
			s.mu.Lock()
			defer s.mu.Unlock()
			return f(args...)
		}
	}
	return functions
}

// none, one and two make a Function of one with so many arguments. Missing
// arguments are empty, further ones are ignored.
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
func (s *Session) Guard(name string, f Function) Function {
	return func(args ...string) (out string) {
		defer func() {
			if r := recover(); r != nil {
				out = s.problem("", "bridge.failed", "name", name, "fault", fmt.Sprint(r), "where", string(debug.Stack()))
			}
		}()
		return f(args...)
	}
}
