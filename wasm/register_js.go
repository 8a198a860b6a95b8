package main

import "syscall/js"

// register puts the functions on the window. An argument that is not text is
// taken as JavaScript writes it.
func register() {
	object := js.Global().Get("Object").New()
	for name, f := range functions() {
		object.Set(name, js.FuncOf(func(_ js.Value, args []js.Value) any {
			texts := make([]string, len(args))
			for i, a := range args {
				if a.Type() == js.TypeString {
					texts[i] = a.String()
				} else {
					texts[i] = js.Global().Call("String", a).String()
				}
			}
			return f(texts...)
		}))
	}
	object.Set("frames", js.FuncOf(func(js.Value, []js.Value) any { return frames }))
	js.Global().Set("steelyard", object)
}
