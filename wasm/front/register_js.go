package front

import (
	"syscall/js"

	"steelyard/internal/bridge"
)

// register puts the functions on the window: those of the bridge, and those of
// the stage that the canvas shows. An argument that is not text is taken as
// JavaScript writes it.
func register() {
	object := js.Global().Get("Object").New()
	text := js.Global().Get("String")
	encoded := newEncoder(1 << 18)
	for _, functions := range []map[string]bridge.Function{bridge.Functions, Stage.Functions()} {
		for name, f := range functions {
			f = bridge.Guard(name, f)
			object.Set(name, js.FuncOf(func(_ js.Value, args []js.Value) any {
				texts := make([]string, len(args))
				for i, a := range args {
					if a.Type() != js.TypeString {
						a = text.Invoke(a)
					}
					texts[i] = encoded.of(a)
				}
				return f(texts...)
			}))
		}
	}
	object.Set("frames", js.FuncOf(func(js.Value, []js.Value) any { return Frames }))
	js.Global().Set("steelyard", object)
}
