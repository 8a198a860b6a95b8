package static

import (
	"context"
	"crypto/sha256"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// encoder is the module of the JSON encoder. It links its interpreter four
// times over, and JSON here is neither coloured nor indented by it.
const encoder = "github.com/goccy/go-json"

// leftOut are the folders of the encoder's copies that never run. The program
// gets a stub of each instead, which takes an eighth of a megabyte less to load.
var leftOut = []string{
	"internal/encoder/vm_color",
	"internal/encoder/vm_color_indent",
	"internal/encoder/vm_indent",
}

// stub answers what the rest of the encoder calls in such a package. Whoever
// indents or colours after all is told so.
const stub = `package %s

import (
	"errors"

	"` + encoder + `/internal/encoder"
)

func Run(*encoder.RuntimeContext, []byte, *encoder.OpcodeSet) ([]byte, error) {
	return nil, errors.New("this program was built without %[1]s: it neither indents nor colours JSON")
}

func DebugRun(ctx *encoder.RuntimeContext, b []byte, codeSet *encoder.OpcodeSet) ([]byte, error) {
	return Run(ctx, b, codeSet)
}
`

// lean returns the path of a go.mod in the folder keep that is root's but for
// the encoder, of which it takes a copy of the same version with stubs in place
// of what is left out. The go command checks the original against go.sum.
func lean(ctx context.Context, root, keep string) (string, error) {
	listed, err := goCommand(ctx, root, nil, "list", "-mod=readonly", "-f", "{{.Module.Version}}\t{{.Module.Dir}}", encoder)
	if err != nil {
		return "", err
	}
	version, dir, found := strings.Cut(strings.TrimSpace(string(listed)), "\t")
	if !found {
		return "", fmt.Errorf("go list: %q is not the version and the folder of %s", listed, encoder)
	}
	sum := sha256.Sum256([]byte(stub + strings.Join(leftOut, "")))
	copied := filepath.Join(keep, fmt.Sprintf("encoder-%s-%x", version, sum[:4]))
	if _, err := os.Stat(copied); err != nil {
		if err := trim(dir, copied); err != nil {
			return "", fmt.Errorf("%s %s: %w", encoder, version, err)
		}
	}

	mod, err := os.ReadFile(filepath.Join(root, "go.mod"))
	if err != nil {
		return "", err
	}
	sums, err := os.ReadFile(filepath.Join(root, "go.sum"))
	if err != nil {
		return "", err
	}
	path := filepath.Join(keep, "lean.mod")
	mod = fmt.Appendf(mod, "\nreplace %s => %q\n", encoder, copied)
	return path, errors.Join(replace(path, mod), replace(filepath.Join(keep, "lean.sum"), sums))
}

// trim copies the encoder with stubs in place of what is left out. The copy is
// there whole or not at all: the site and the empty program may be built at once.
func trim(from, to string) error {
	work, err := os.MkdirTemp(filepath.Dir(to), ".encoder-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(work)
	made := filepath.Join(work, "made")
	if err := os.CopyFS(made, os.DirFS(from)); err != nil {
		return err
	}
	for _, folder := range leftOut {
		at := filepath.Join(made, filepath.FromSlash(folder))
		files, err := filepath.Glob(filepath.Join(at, "*.go"))
		if err != nil || len(files) == 0 {
			return errors.Join(err, fmt.Errorf("there is no folder %s", folder))
		}
		// The module's files are read-only; its folders are made anew.
		for _, file := range files {
			if err := os.Remove(file); err != nil {
				return err
			}
		}
		if err := os.WriteFile(filepath.Join(at, "stub.go"), fmt.Appendf(nil, stub, filepath.Base(at)), 0o644); err != nil {
			return err
		}
	}
	if err := os.Rename(made, to); err != nil && !errors.Is(err, fs.ErrExist) {
		return err
	}
	return nil
}

// replace writes a file whole or not at all.
func replace(path string, text []byte) error {
	f, err := os.CreateTemp(filepath.Dir(path), ".lean-")
	if err != nil {
		return err
	}
	defer os.Remove(f.Name())
	if _, err := f.Write(text); err != nil {
		return errors.Join(err, f.Close())
	}
	return errors.Join(f.Close(), os.Rename(f.Name(), path))
}
