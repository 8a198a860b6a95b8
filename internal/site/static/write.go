package static

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// Sizes are in bytes.
type Sizes struct {
	Site        int64 // everything written
	Program     int64 // the WebAssembly program, inflated
	ProgramGzip int64 // as written
	Single      int64 // the file that holds everything, which is no part of Site; 0 when not written
}

// Root finds the project's folder, the one with its go.mod, at dir or above.
func Root(dir string) (string, error) {
	dir, err := filepath.Abs(dir)
	if err != nil {
		return "", err
	}
	for at := dir; ; at = filepath.Dir(at) {
		if mod, err := os.ReadFile(filepath.Join(at, "go.mod")); err == nil && strings.HasPrefix(string(mod), "module steelyard\n") {
			return at, nil
		}
		if at == filepath.Dir(at) {
			return "", fmt.Errorf("%s is not inside a checkout of Steelyard", dir)
		}
	}
}

// site is what will be written: file contents by path, with forward slashes.
type site map[string][]byte

// Write builds the site from the sources in root and writes it to out. A
// folder that holds something other than a site is refused, since what is not
// part of the site is removed from out.
func Write(ctx context.Context, root, out string) (Sizes, error) {
	files, size, err := gather(ctx, root)
	if err != nil {
		return Sizes{}, err
	}
	return files.write(out, size)
}

// scripts are the page's sources that are bundled with packages of others.
var scripts = []string{"early.ts", "main.ts", "frame.ts", "sw.ts"}

// gather makes the files of the site, and returns the program's size inflated.
func gather(ctx context.Context, root string) (files site, program int64, err error) {
	files = site{}
	if program, err = files.addProgram(ctx, root, "./wasm", "steelyard", inlining(), lineless); err != nil {
		return nil, 0, err
	}
	if err := files.addFirst(root, revision(ctx, root)); err != nil {
		return nil, 0, err
	}
	files.addFonts()
	if err := files.addFolder(filepath.Join(root, "data", "schema"), "schema", ".json"); err != nil {
		return nil, 0, err
	}
	if err := Modules(ctx, root); err != nil {
		return nil, 0, err
	}
	web := filepath.Join(root, "web")
	icon, err := os.ReadFile(filepath.Join(web, "icon.svg"))
	if err != nil {
		return nil, 0, err
	}
	if err := files.addIcons(icon); err != nil {
		return nil, 0, err
	}
	if err := files.addDocuments(web, "frame.html", "index.html"); err != nil {
		return nil, 0, err
	}
	if files[NoticesName], err = notices(ctx, root, scripts); err != nil {
		return nil, 0, err
	}
	// Last, since it lists the others.
	if err := files.addWorker(web); err != nil {
		return nil, 0, err
	}
	return files, program, nil
}

// addProgram adds a program compiled to WebAssembly, with flags of the compiler and
// what is done with it then, and its loader. It returns its size inflated.
func (s site) addProgram(ctx context.Context, root, pkg, name string, flags []string, finish func([]byte) ([]byte, error)) (size int64, err error) {
	if s["steelyard.wasm.gz"], size, err = program(ctx, root, pkg, name, flags, finish); err != nil {
		return 0, err
	}
	exec, err := loader(ctx, root)
	if err != nil {
		return 0, err
	}
	s["wasm_exec.js"], err = minify("wasm_exec.js", exec)
	return size, err
}

// WriteEmpty writes the reference page: an ebiten program that draws nothing,
// compiled as the toolchain does it by itself, and compressed and loaded as the
// site's program is.
func WriteEmpty(ctx context.Context, root, out string) (Sizes, error) {
	files := site{}
	size, err := files.addProgram(ctx, root, "./internal/site/empty", "empty", nil, asCompiled)
	if err != nil {
		return Sizes{}, err
	}
	if err := files.addDocuments(filepath.Join(root, "web"), "frame.html"); err != nil {
		return Sizes{}, err
	}
	if files["icon.svg"], err = os.ReadFile(filepath.Join(root, "web", "icon.svg")); err != nil {
		return Sizes{}, err
	}
	files["index.html"] = []byte("<!doctype html><html lang=\"en\"><title>Empty</title>" +
		"<iframe src=\"frame.html\" title=\"Empty canvas\" style=\"width:640px;height:400px\"></iframe></html>\n")
	return files.write(out, size)
}

// addFolder takes the files with one ending out of a folder, which may be
// missing.
func (s site) addFolder(dir, to, ext string) error {
	entries, err := os.ReadDir(dir)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return err
	}
	for _, e := range entries {
		if e.IsDir() || filepath.Ext(e.Name()) != ext {
			continue
		}
		data, err := os.ReadFile(filepath.Join(dir, e.Name()))
		if err != nil {
			return err
		}
		s[to+"/"+e.Name()] = data
	}
	return nil
}

// write puts the files into out, leaves those alone that are already as they
// should be, and removes those that no longer belong to the site.
func (s site) write(out string, program int64) (Sizes, error) {
	if err := mayReplace(out); err != nil {
		return Sizes{}, err
	}
	sizes := Sizes{Program: program, ProgramGzip: int64(len(s["steelyard.wasm.gz"])), Single: int64(len(s[SingleName]))}
	for name, data := range s {
		if name != SingleName {
			sizes.Site += int64(len(data))
		}
		path := filepath.Join(out, filepath.FromSlash(name))
		if old, err := os.ReadFile(path); err == nil && string(old) == string(data) {
			continue
		}
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			return Sizes{}, err
		}
		if err := os.WriteFile(path, data, 0o644); err != nil {
			return Sizes{}, err
		}
	}
	return sizes, filepath.WalkDir(out, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		rel, err := filepath.Rel(out, path)
		if err != nil {
			return err
		}
		if _, ok := s[filepath.ToSlash(rel)]; ok {
			return nil
		}
		return os.Remove(path)
	})
}

// mayReplace guards against -out naming a folder that someone needs: it must
// be new, empty, or a site written before.
func mayReplace(out string) error {
	entries, err := os.ReadDir(out)
	if errors.Is(err, fs.ErrNotExist) || (err == nil && len(entries) == 0) {
		return nil
	}
	if err != nil {
		return err
	}
	if _, err := os.Stat(filepath.Join(out, "steelyard.wasm.gz")); err != nil {
		return fmt.Errorf("%s holds something that is not a site of Steelyard; name a new or empty folder", out)
	}
	return nil
}
