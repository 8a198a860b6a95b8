// Package linetable takes the tables of source lines out of a Go program compiled
// to WebAssembly.
//
// The toolchain's linker leaves names of symbols and DWARF out of a program when
// asked (-s -w), but not what a trace of a crash tells with: for each function, in
// which file and line each of its instructions was written. A page's reader has no
// use for it, and gzipped it is a twentieth of the program. Without it a trace
// tells functions by name, with "?:0" for file and line. The tables of where a
// goroutine must not be interrupted from outside go too: that takes signals, which
// WebAssembly does not have (preemptMSupported in the runtime). Everything else,
// garbage collection and recovery among it, goes by other tables, which stay.
//
// The layout is that of the linker since Go 1.20: a header with a magic number,
// then names of functions, files of compilation units, names of files, tables by
// program counter, and a record for each function that points into all of these
// (cmd/link/internal/ld/pcln.go, and internal/runtime's reading of it in
// runtime/symtab.go). Offset 0 there means "no such table".
package linetable

import (
	"encoding/binary"
	"errors"
	"fmt"
)

// The header: a magic number, two zeros, the least length of an instruction, the
// size of a pointer; then eight words.
const (
	magic  = "\xf1\xff\xff\xff\x00\x00\x01\x08"
	header = len(magic) + 8*8
)

// Offsets of fields in a function's record, which is an array of numbers of four
// bytes, then npcdata offsets of tables.
const (
	recordSP      = 16 // table of stack depths
	recordFile    = 20
	recordLine    = 24
	recordTables  = 28 // npcdata
	recordUnit    = 32 // the function's compilation unit: where its files are
	recordStart   = 36 // line of its first statement
	recordPCData0 = 44 // unsafe points, the first of npcdata
)

// ErrLayout is that a program has no table of functions in the layout known here:
// another Go has linked it, or none.
var ErrLayout = errors.New("a Go program has one table of functions, laid out as by Go 1.20 to 1.26")

// Drop returns the program without its lines. The error is [ErrLayout], or says what
// is wrong with the WebAssembly or with the table.
func Drop(program []byte) ([]byte, error) {
	image, segments, err := memory(program)
	if err != nil {
		return nil, err
	}
	t, err := find(image)
	if err != nil {
		return nil, err
	}
	if err := t.drop(); err != nil {
		return nil, err
	}
	out := make([]byte, 0, len(program))
	end := 0
	for _, s := range segments {
		out = append(out, program[end:s.at]...)
		out = append(out, image[s.address:s.address+s.size]...)
		end = s.at + s.size
	}
	return append(out, program[end:]...), nil
}

// tables are the parts of the linker's table, as slices of the program's memory.
type tables struct {
	units, files []byte
	byPC         []byte
	functions    []byte // an index of pairs of four bytes, then the records
	count        int
}

// find looks for the header. What only looks like one has words that do not
// follow one another.
func find(image []byte) (tables, error) {
	var found []tables
	for at := 0; at+header <= len(image); at += 8 { // the linker aligns it
		if string(image[at:at+len(magic)]) != magic {
			continue
		}
		if t, ok := read(image[at:]); ok {
			found = append(found, t)
		}
	}
	if len(found) != 1 {
		return tables{}, fmt.Errorf("%w; found %d", ErrLayout, len(found))
	}
	return found[0], nil
}

func read(b []byte) (tables, bool) {
	word := func(i int) uint64 { return binary.LittleEndian.Uint64(b[len(magic)+8*i:]) }
	count, names, units, files, byPC, functions := word(0), word(3), word(4), word(5), word(6), word(7)
	size := uint64(len(b))
	if count == 0 || count > size/8 || names < uint64(header) || units < names || files < units || byPC < files || functions < byPC || functions > size-8*count-4 {
		return tables{}, false
	}
	return tables{
		units: b[units:files], files: b[files:byPC], byPC: b[byPC:functions], functions: b[functions:],
		count: int(count),
	}, true
}

// record returns the record of function i, cut to what belongs to it.
func (t tables) record(i int) ([]byte, error) {
	at := uint64(binary.LittleEndian.Uint32(t.functions[8*i+4:]))
	if at+recordPCData0 > uint64(len(t.functions)) {
		return nil, fmt.Errorf("function %d of %d lies outside of the table", i, t.count)
	}
	r := t.functions[at:]
	end := recordPCData0 + 4*uint64(binary.LittleEndian.Uint32(r[recordTables:]))
	if end > uint64(len(r)) {
		return nil, fmt.Errorf("function %d of %d has tables outside of the table", i, t.count)
	}
	return r[:end], nil
}

func (t tables) drop() error {
	stays, goes := make([]bool, len(t.byPC)), make([]bool, len(t.byPC))
	// One table may serve several functions, and two purposes.
	mark := func(marks []bool, tables ...uint32) error {
		for _, at := range tables {
			n, err := t.length(at)
			if err != nil {
				return err
			}
			for k := range n {
				marks[int(at)+k] = true
			}
		}
		return nil
	}
	for i := range t.count {
		r, err := t.record(i)
		if err != nil {
			return err
		}
		number := func(at int) uint32 { return binary.LittleEndian.Uint32(r[at:]) }
		unsafe, others := cut(pcdata(r))
		if err := errors.Join(
			mark(stays, number(recordSP)),
			mark(stays, others...),
			mark(goes, number(recordFile), number(recordLine)),
			mark(goes, unsafe...),
		); err != nil {
			return fmt.Errorf("function %d of %d: %w", i, t.count, err)
		}
		clear(r[recordFile : recordLine+4])
		clear(r[recordUnit : recordStart+4])
		clear(r[recordPCData0 : recordPCData0+4*len(unsafe)])
	}
	for k := range t.byPC {
		if goes[k] && !stays[k] {
			t.byPC[k] = 0
		}
	}
	clear(t.units)
	clear(t.files)
	return nil
}

// cut parts the first, if there is one, from the others.
func cut(tables []uint32) (first, others []uint32) {
	n := min(len(tables), 1)
	return tables[:n], tables[n:]
}

func pcdata(record []byte) []uint32 {
	var at []uint32
	for b := record[recordPCData0:]; len(b) > 0; b = b[4:] {
		at = append(at, binary.LittleEndian.Uint32(b))
	}
	return at
}

// length returns how many bytes the table by program counter at an offset has: pairs
// of numbers, a step of the value and a step of the counter, until a step of the
// value is 0 that is not the first. There is none at offset 0.
func (t tables) length(at uint32) (int, error) {
	if at == 0 {
		return 0, nil
	}
	if uint64(at) >= uint64(len(t.byPC)) {
		return 0, errors.New("a table by program counter lies outside of the tables")
	}
	b := t.byPC[at:]
	for n := 0; ; {
		step, k := binary.Uvarint(b[n:])
		if k <= 0 {
			return 0, errors.New("a table by program counter does not end")
		}
		if step == 0 && n > 0 {
			return n + k, nil
		}
		n += k
		if _, k = binary.Uvarint(b[n:]); k <= 0 {
			return 0, errors.New("a table by program counter does not end")
		}
		n += k
	}
}
