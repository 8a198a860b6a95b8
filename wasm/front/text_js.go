package front

import "syscall/js"

// encoder has strings of JavaScript encoded into memory that stays, which for a
// whole document is faster than [js.Value.String].
type encoder struct {
	text   js.Value // a TextEncoder
	shared js.Value // a Uint8Array
	copied []byte   // as long
}

func newEncoder(size int) *encoder {
	return &encoder{
		text:   js.Global().Get("TextEncoder").New(),
		shared: js.Global().Get("Uint8Array").New(size),
		copied: make([]byte, size),
	}
}

// of returns a string of JavaScript.
func (e *encoder) of(v js.Value) string {
	n := e.text.Call("encodeInto", v, e.shared).Get("written").Int()
	const longest = 4 // bytes of a character in UTF-8
	if n > len(e.copied)-longest {
		return v.String() // perhaps there is more of it
	}
	js.CopyBytesToGo(e.copied[:n], e.shared)
	return string(e.copied[:n])
}

// bytesOf returns the bytes of a typed array. The page's is of another window,
// whose arrays js.CopyBytesToGo does not take: this window gets a copy first.
func bytesOf(v js.Value) string {
	own := js.Global().Get("Uint8Array").New(v)
	b := make([]byte, own.Length())
	js.CopyBytesToGo(b, own)
	return string(b)
}
