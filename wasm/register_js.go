package main

import (
	"fmt"
	"runtime/debug"
	"syscall/js"

	"github.com/goccy/go-json"

	"steelyard/internal/parts"
)

// register puts the functions on the window.
func register() {
	object := js.Global().Get("Object").New()
	for name, f := range functions {
		object.Set(name, js.FuncOf(func(_ js.Value, args []js.Value) any {
			texts := make([]string, len(args))
			for i, a := range args {
				if a.Type() != js.TypeString {
					return problem(fmt.Sprintf("%s wants text as argument %d and got %s", name, i+1, a.Type()))
				}
				texts[i] = a.String()
			}
			return guarded(name, func() string { return f(texts...) })
		}))
	}
	object.Set("frames", js.FuncOf(func(js.Value, []js.Value) any { return frames }))
	js.Global().Set("steelyard", object)
}

// guarded turns a panic into a problem told as data: the page and its document
// live on, and the next call finds the program as it was.
func guarded(name string, f func() string) (out string) {
	defer func() {
		if r := recover(); r != nil {
			out = problem(fmt.Sprintf("%s failed inside Steelyard: %v\n%s", name, r, debug.Stack()))
		}
	}()
	return f()
}

func problem(message string) string {
	out, err := json.Marshal(struct {
		Problem parts.Problem `json:"problem"`
	}{parts.Problem{Severity: "error", Message: message}})
	if err != nil {
		return `{"problem":{"severity":"error","message":"a problem could not be told"}}`
	}
	return string(out)
}
