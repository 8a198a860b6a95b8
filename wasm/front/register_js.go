package front

import (
	"syscall/js"

	"steelyard/internal/bridge"
)

// register puts the functions on the window: those of the bridge, and those of
// the stage that the canvas shows. An argument is text, or bytes in a typed array
// for functions that find out themselves what they are; anything else is taken
// as JavaScript writes it.
func register() {
	object := js.Global().Get("Object").New()
	text, buffer := js.Global().Get("String"), js.Global().Get("ArrayBuffer")
	encoded := newEncoder(1 << 18)
	for _, functions := range []map[string]bridge.Function{session.Functions(), Stage.Functions()} {
		for name, f := range functions {
			f = session.Guard(name, f)
			object.Set(name, js.FuncOf(func(_ js.Value, args []js.Value) any {
				texts := make([]string, len(args))
				for i, a := range args {
					switch {
					case a.Type() == js.TypeString:
						texts[i] = encoded.of(a)
					case buffer.Call("isView", a).Bool():
						texts[i] = bytesOf(a)
					default:
						texts[i] = encoded.of(text.Invoke(a))
					}
				}
				return f(texts...)
			}))
		}
	}
	object.Set("frames", js.FuncOf(func(js.Value, []js.Value) any { return Frames }))
	js.Global().Set("steelyard", object)
}
