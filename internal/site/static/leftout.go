package static

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
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
	copied := filepath.Join(keep, "encoder-"+version)
	if err := os.RemoveAll(copied); err != nil {
		return "", err
	}
	if err := os.CopyFS(copied, os.DirFS(dir)); err != nil {
		return "", err
	}
	for _, folder := range leftOut {
		at := filepath.Join(copied, filepath.FromSlash(folder))
		files, err := filepath.Glob(filepath.Join(at, "*.go"))
		if err != nil || len(files) == 0 {
			return "", errors.Join(err, fmt.Errorf("%s %s has no folder %s", encoder, version, folder))
		}
		// The module's files are read-only; its folders are made anew.
		for _, file := range files {
			if err := os.Remove(file); err != nil {
				return "", err
			}
		}
		if err := os.WriteFile(filepath.Join(at, "stub.go"), fmt.Appendf(nil, stub, filepath.Base(at)), 0o644); err != nil {
			return "", err
		}
	}

	mod, err := os.ReadFile(filepath.Join(root, "go.mod"))
	if err != nil {
		return "", err
	}
	sum, err := os.ReadFile(filepath.Join(root, "go.sum"))
	if err != nil {
		return "", err
	}
	path := filepath.Join(keep, "lean.mod")
	mod = slices.Concat(mod, fmt.Appendf(nil, "\nreplace %s => %q\n", encoder, copied))
	return path, errors.Join(os.WriteFile(path, mod, 0o644), os.WriteFile(filepath.Join(keep, "lean.sum"), sum, 0o644))
}
