package linetable_test

import (
	"bytes"
	"debug/gosym"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"steelyard/internal/site/linetable"
)

// crash is a program that catches one panic, collects garbage under a deep stack,
// and dies of a second one.
const crash = `package main

import (
	"fmt"
	"runtime"
	"strings"
)

type leaf struct{ next *leaf; text string }

//go:noinline
func deep(n int) *leaf {
	if n == 0 {
		runtime.GC()
		return nil
	}
	l := &leaf{text: strings.Repeat("x", n)}
	l.next = deep(n - 1)
	return l
}

//go:noinline
func index(a []int, i int) (v int, err error) {
	defer func() {
		if r := recover(); r != nil {
			err = fmt.Errorf("caught: %v", r)
		}
	}()
	return a[i], nil
}

//go:noinline
func die(a []int, i int) int { return a[i] }

func main() {
	n := 0
	for l := deep(1000); l != nil; l = l.next {
		n += len(l.text)
	}
	_, err := index(nil, 3)
	fmt.Println(n, err)
	fmt.Println(die(nil, 4))
}
`

func compile(t *testing.T) []byte {
	t.Helper()
	dir := t.TempDir()
	for name, text := range map[string]string{"go.mod": "module crash\n\ngo 1.24\n", "main.go": crash} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	cmd := exec.Command("go", "build", "-ldflags=-s -w", "-o", "crash.wasm", ".")
	cmd.Dir = dir
	cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm", "GOFLAGS=", "GOWORK=off", "GOWASM=")
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	program, err := os.ReadFile(filepath.Join(dir, "crash.wasm"))
	if err != nil {
		t.Fatal(err)
	}
	return program
}

// start runs a program in Node, and returns what it wrote.
func start(t *testing.T, program []byte) (out, errs string) {
	t.Helper()
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "program.wasm")
	if err := os.WriteFile(path, program, 0o644); err != nil {
		t.Fatal(err)
	}
	var stdout, stderr strings.Builder
	cmd := exec.Command("node", filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", "wasm_exec_node.js"), path)
	cmd.Stdout, cmd.Stderr = &stdout, &stderr
	if err := cmd.Run(); err == nil {
		t.Fatal("the program did not crash")
	}
	return stdout.String(), stderr.String()
}

func TestDrop(t *testing.T) {
	program := compile(t)
	less, err := linetable.Drop(program)
	if err != nil {
		t.Fatal(err)
	}
	if len(less) != len(program) || bytes.Equal(less, program) {
		t.Errorf("%d bytes became %d, and nothing was dropped: %v", len(program), len(less), bytes.Equal(less, program))
	}

	// It runs as before, stacks are walked by the collector and by recovery.
	out, trace := start(t, program)
	also, bare := start(t, less)
	if want := "500500 caught: runtime error: index out of range [3] with length 0\n"; out != want || also != want {
		t.Errorf("it printed %q before and %q after, not %q", out, also, want)
	}
	// Its trace has the functions, and no lines.
	if !strings.Contains(trace, "main.die(") || !strings.Contains(trace, "main.go:") {
		t.Errorf("the trace of the program as compiled: %s", trace)
	}
	if !strings.Contains(bare, "main.die(") || !strings.Contains(bare, "main.main(") || !strings.Contains(bare, "index out of range [4]") {
		t.Errorf("the trace does not tell the functions: %s", bare)
	}
	if strings.Contains(bare, ".go:") || bytes.Contains(less, []byte("main.go\x00")) {
		t.Errorf("lines are left: %s", bare)
	}
}

// debug/gosym reads the same table for debuggers.
func TestDropKeepsFunctions(t *testing.T) {
	program := compile(t)
	less, err := linetable.Drop(program)
	if err != nil {
		t.Fatal(err)
	}
	before, after := functions(t, program), functions(t, less)
	if len(before.Funcs) < 1000 || len(before.Funcs) != len(after.Funcs) {
		t.Fatalf("%d functions became %d", len(before.Funcs), len(after.Funcs))
	}
	named := 0
	for i, f := range before.Funcs {
		g := after.Funcs[i]
		if f.Name != g.Name || f.Entry != g.Entry || f.End != g.End {
			t.Errorf("function %d was %s at %#x to %#x, and is %s at %#x to %#x", i, f.Name, f.Entry, f.End, g.Name, g.Entry, g.End)
		}
		if _, line, _ := before.PCToLine(f.Entry); line > 0 {
			named++
		}
		if file, line, _ := after.PCToLine(g.Entry); line > 0 {
			t.Errorf("%s is still told to be in line %d of %s", g.Name, line, file)
		}
	}
	if named < 1000 {
		t.Errorf("gosym told lines of %d of %d functions before", named, len(before.Funcs))
	}
}

func functions(t *testing.T, program []byte) *gosym.Table {
	t.Helper()
	image := linetable.Memory(t, program)
	at := bytes.Index(image, []byte("\xf1\xff\xff\xff\x00\x00\x01\x08"))
	table, err := gosym.NewTable(nil, gosym.NewLineTable(image[at:], 0))
	if err != nil {
		t.Fatal(err)
	}
	return table
}

func TestDropRefuses(t *testing.T) {
	program := compile(t)
	at := bytes.Index(program, []byte("\xf1\xff\xff\xff\x00\x00\x01\x08"))
	later := bytes.Clone(program)
	later[at] = 0xf0
	for name, c := range map[string]struct {
		program []byte
		says    string
	}{
		"nothing":       {nil, "not a WebAssembly program"},
		"text":          {[]byte("hello, world"), "not a WebAssembly program"},
		"no Go program": {[]byte("\x00asm\x01\x00\x00\x00"), "found 0"},
		"far away":      {[]byte("\x00asm\x01\x00\x00\x00\x0b\x0d\x01\x00\x41\xff\xff\xff\xff\x07\x0b\x03abc"), "damaged"},
		"cut short":     {program[:len(program)-1000], "damaged"},
		"a later Go":    {later, "found 0"},
	} {
		_, err := linetable.Drop(c.program)
		if err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v, which does not say %q", name, err, c.says)
		}
		if layout := strings.HasPrefix(c.says, "found"); errors.Is(err, linetable.ErrLayout) != layout {
			t.Errorf("%s: it is another layout: %t, want %t", name, !layout, layout)
		}
	}
}

func FuzzDrop(f *testing.F) {
	f.Add([]byte("\x00asm\x01\x00\x00\x00"))
	f.Add([]byte("\x00asm\x01\x00\x00\x00\x0b\x09\x01\x00\x41\x08\x0b\x03abc"))
	f.Add([]byte("\x00asm\x01\x00\x00\x00\x0b\xff\xff\xff\xff\x0f"))
	f.Fuzz(func(t *testing.T, program []byte) {
		if less, err := linetable.Drop(program); err == nil && len(less) != len(program) {
			t.Errorf("%d bytes became %d", len(program), len(less))
		}
	})
}
