package linetable

import (
	"encoding/binary"
	"errors"
	"fmt"
)

// A segment is a run of the program's file that becomes its memory.
type segment struct{ at, address, size int }

// What a WebAssembly module begins with, version 1, and the number of its section
// of data. https://webassembly.github.io/spec/core/binary/modules.html
const (
	preamble = "\x00asm\x01\x00\x00\x00"
	data     = 11
)

// memory returns what the program's memory holds when it starts, up to the last
// byte that the program gives, and from where in the file each run of it is.
func memory(program []byte) (image []byte, segments []segment, err error) {
	r := reader{b: program}
	if string(r.take(len(preamble))) != preamble {
		return nil, nil, errors.New("not a WebAssembly program")
	}
	for r.err == nil && r.at < len(program) {
		id := r.take(1)
		size := r.unsigned()
		if r.err != nil {
			break
		}
		if id[0] != data {
			r.take(size)
			continue
		}
		for n := r.unsigned(); n > 0 && r.err == nil; n-- {
			segments = append(segments, r.segment())
		}
	}
	if r.err != nil {
		return nil, nil, r.err
	}
	top := 0
	for _, s := range segments {
		top = max(top, s.address+s.size)
	}
	image = make([]byte, top)
	for _, s := range segments {
		copy(image[s.address:], program[s.at:s.at+s.size])
	}
	return image, segments, nil
}

// A reader reads a module's numbers, and stops at its first error.
type reader struct {
	b   []byte
	at  int
	err error
}

// take returns the next n bytes, or n zeros when there are not so many.
func (r *reader) take(n int) []byte {
	if r.err != nil || n < 0 || n > len(r.b)-r.at {
		r.fail()
		return make([]byte, min(max(n, 0), len(preamble)))
	}
	b := r.b[r.at : r.at+n]
	r.at += n
	return b
}

func (r *reader) fail() {
	if r.err == nil {
		r.err = fmt.Errorf("the WebAssembly program is damaged at byte %d of %d", r.at, len(r.b))
	}
}

// unsigned reads a LEB128 number below 2^32.
func (r *reader) unsigned() int {
	if r.err != nil {
		return 0
	}
	v, n := binary.Uvarint(r.b[r.at:])
	if n <= 0 || v >= 1<<32 {
		r.fail()
		return 0
	}
	r.at += n
	return int(v)
}

// segment reads a segment for the first memory at a constant address: the only
// kind that the Go linker writes.
func (r *reader) segment() segment {
	const i32Const, end = 0x41, 0x0b
	const most = 1 << 28 // bytes of memory that a program may come with
	if kind := r.unsigned(); kind != 0 {
		r.fail()
	}
	if r.take(1)[0] != i32Const {
		r.fail()
	}
	// The address is a signed number; one that most allows is not negative.
	var address uint64
	for shift := 0; ; shift += 7 {
		b := r.take(1)[0]
		address |= uint64(b&0x7f) << shift
		if b&0x80 == 0 || shift > 28 {
			break
		}
	}
	if r.take(1)[0] != end || address >= most {
		r.fail()
	}
	size := r.unsigned()
	s := segment{at: r.at, address: int(address), size: size}
	r.take(size)
	if r.err != nil {
		return segment{}
	}
	return s
}
