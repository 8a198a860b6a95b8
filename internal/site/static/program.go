package static

import (
	"bytes"
	"compress/gzip"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"steelyard/internal/site/linetable"
)

// goCommand runs the go command in root, with the environment of a plain
// checkout: settings of the machine must not change what is written.
func goCommand(ctx context.Context, root string, env []string, args ...string) ([]byte, error) {
	cmd := exec.CommandContext(ctx, "go", args...)
	cmd.Dir = root
	cmd.Env = append(os.Environ(), "GOFLAGS=", "GOWORK=off", "GOWASM=")
	cmd.Env = append(cmd.Env, env...)
	var out, errs bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &errs
	if err := cmd.Run(); err != nil {
		return nil, fmt.Errorf("go %s: %w\n%s", strings.Join(args, " "), err, errs.Bytes())
	}
	return out.Bytes(), nil
}

// revision names the sources by the day and the name of their last commit, with
// a plus when they have changed since; without git it is empty. It goes into the
// program, which tells it with its figures.
func revision(ctx context.Context, root string) string {
	git := func(args ...string) (string, error) {
		cmd := exec.CommandContext(ctx, "git", args...)
		cmd.Dir = root
		out, err := cmd.Output()
		return strings.TrimSpace(string(out)), err
	}
	if _, err := git("ls-files", "--error-unmatch", "go.mod"); err != nil {
		return "" // a copy of the sources, perhaps inside some other repository
	}
	commit, err := git("log", "-1", "--abbrev=8", "--format=%cs.%h")
	if err != nil {
		return ""
	}
	changes, err := git("status", "--porcelain", "--", "wasm", "internal", "web", "data", "go.mod")
	if err != nil || changes != "" {
		commit += "+"
	}
	return commit
}

// quick are the packages whose code runs in every evaluation and for every corner of
// a picture, and what that stands on. Everything else is compiled without inlining: what runs once for an edit's
// picture or on a button, most of ebiten, and what the libraries bring along that is mostly
// not run here. It takes half a megabyte less to load.
var quick = []string{
	"runtime",
	"internal/runtime/...",
	"internal/abi",
	"internal/bytealg",
	"internal/byteorder",
	"internal/chacha8rand",
	"internal/cpu",
	"internal/goarch",
	"internal/sync",
	"sync",
	"sync/atomic",
	"strconv",
	"internal/strconv",
	"syscall/js",
	"math",
	"math/bits",
	"math/cmplx",
	"cmp",
	"slices",
	"unicode/utf8",
	"github.com/hajimehoshi/ebiten/v2",
	"github.com/hajimehoshi/ebiten/v2/internal/atlas",
	"github.com/hajimehoshi/ebiten/v2/internal/buffered",
	"github.com/hajimehoshi/ebiten/v2/internal/graphics",
	"github.com/hajimehoshi/ebiten/v2/internal/graphicscommand",
	"github.com/hajimehoshi/ebiten/v2/internal/graphicsdriver/opengl",
	"github.com/hajimehoshi/ebiten/v2/internal/graphicsdriver/opengl/gl",
	"github.com/hajimehoshi/ebiten/v2/internal/mipmap",
	"github.com/hajimehoshi/ebiten/v2/internal/restorable",
	"github.com/hajimehoshi/ebiten/v2/internal/ui",
	"steelyard/internal/assembly",
	"steelyard/internal/document",
	"steelyard/internal/drive",
	"steelyard/internal/effort",
	"steelyard/internal/geometry",
	"steelyard/internal/linear",
	"steelyard/internal/mass",
	"steelyard/internal/mesh",
	"steelyard/internal/order",
	"steelyard/internal/packing",
	"steelyard/internal/report",
	"steelyard/internal/ride",
	"steelyard/internal/rider",
	"steelyard/internal/road",
	"steelyard/internal/steer",
	"steelyard/internal/words",
}

// inlining are the flags that have all but the quick compiled without it.
func inlining() []string {
	flags := []string{"-gcflags=all=-l"}
	for _, p := range quick {
		flags = append(flags, "-gcflags="+p+"=") // of several that match, the last counts
	}
	return flags
}

// program compiles a Go package to WebAssembly, with flags of the compiler, hands it
// to finish, and returns it gzipped, with its size before. The work is kept in
// .build, so that an unchanged program costs neither linking nor compressing again.
func program(ctx context.Context, root, pkg, name string, flags []string, finish func([]byte) ([]byte, error)) (gz []byte, size int64, err error) {
	keep := filepath.Join(root, ".build")
	if err := os.MkdirAll(keep, 0o755); err != nil {
		return nil, 0, err
	}
	mod, err := lean(ctx, root, keep)
	if err != nil {
		return nil, 0, err
	}
	wasm := filepath.Join(keep, name+".wasm")
	args := []string{"build", "-mod=readonly", "-buildvcs=false", "-trimpath", "-modfile=" + mod,
		"-ldflags=-s -w -X steelyard/internal/report.version=" + revision(ctx, root)}
	args = append(args, flags...)
	args = append(args, "-o", wasm, pkg)
	if _, err := goCommand(ctx, root, []string{"GOOS=js", "GOARCH=wasm"}, args...); err != nil {
		return nil, 0, err
	}
	raw, err := os.ReadFile(wasm)
	if err != nil {
		return nil, 0, err
	}
	if raw, err = finish(raw); err != nil {
		return nil, 0, fmt.Errorf("%s: %w", pkg, err)
	}

	sum := sha256.Sum256(raw)
	stamp := []byte(hex.EncodeToString(sum[:]))
	packed, mark := wasm+".gz", wasm+".sha256"
	if old, err := os.ReadFile(mark); err == nil && bytes.Equal(old, stamp) {
		if gz, err = os.ReadFile(packed); err == nil {
			return gz, int64(len(raw)), nil
		}
	}

	var buf bytes.Buffer
	// No name and no time in the header: the same program, the same bytes.
	w, err := gzip.NewWriterLevel(&buf, gzip.BestCompression)
	if err != nil {
		return nil, 0, err
	}
	if _, err := w.Write(raw); err != nil {
		return nil, 0, err
	}
	if err := w.Close(); err != nil {
		return nil, 0, err
	}
	// The mark is removed first and written last: a build cut short leaves no mark
	// that belongs to other bytes.
	if err := os.RemoveAll(mark); err != nil {
		return nil, 0, err
	}
	if err := os.WriteFile(packed, buf.Bytes(), 0o644); err != nil {
		return nil, 0, err
	}
	if err := os.WriteFile(mark, stamp, 0o644); err != nil {
		return nil, 0, err
	}
	return buf.Bytes(), int64(len(raw)), nil
}

// lineless takes a program's lines out of it. A toolchain that lays them out in
// another way leaves a program that is larger, and as good.
func lineless(program []byte) ([]byte, error) {
	less, err := linetable.Drop(program)
	if errors.Is(err, linetable.ErrLayout) {
		fmt.Fprintf(os.Stderr, "The program keeps its tables of source lines, a twentieth of its size: %v.\n", err)
		return program, nil
	}
	return less, err
}

// asCompiled leaves a program as the toolchain made it.
func asCompiled(program []byte) ([]byte, error) { return program, nil }

// loader returns wasm_exec.js of the toolchain that compiles the program: the
// two must be of one version.
func loader(ctx context.Context, root string) ([]byte, error) {
	out, err := goCommand(ctx, root, nil, "env", "GOROOT")
	if err != nil {
		return nil, err
	}
	return os.ReadFile(filepath.Join(strings.TrimSpace(string(out)), "lib", "wasm", "wasm_exec.js"))
}
