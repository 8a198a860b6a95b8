package static

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"github.com/evanw/esbuild/pkg/api"
)

// ScriptTests runs the tests of the page's code, web/**/*.test.ts, with Node's own
// runner. Node reads no TypeScript: each is bundled first, to a file in
// .build/scripts.
func ScriptTests(ctx context.Context, root string) error {
	if err := Modules(ctx, root); err != nil {
		return err
	}
	web := filepath.Join(root, "web")
	var tests []string
	err := filepath.WalkDir(web, func(path string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && d.Name() == "node_modules":
			return fs.SkipDir
		case strings.HasSuffix(path, ".test.ts"):
			tests = append(tests, path)
		}
		return nil
	})
	if err != nil {
		return err
	}
	if len(tests) == 0 {
		return fmt.Errorf("no test of the page's code is in %s", web)
	}
	out := filepath.Join(root, ".build", "scripts")
	if err := os.RemoveAll(out); err != nil {
		return err
	}
	result := api.Build(api.BuildOptions{
		AbsWorkingDir: web,
		EntryPoints:   tests,
		Outdir:        out,
		OutExtension:  map[string]string{".js": ".mjs"},
		Bundle:        true,
		Platform:      api.PlatformNode,
		Format:        api.FormatESModule,
		Target:        api.ES2022,
		Loader:        map[string]api.Loader{".css": api.LoaderEmpty},
		Plugins:       []api.Plugin{every(web), labels(web)},
		Sourcemap:     api.SourceMapLinked,
		Write:         true,
		LogLevel:      api.LogLevelSilent,
	})
	if err := failure(result.Errors); err != nil {
		return err
	}
	// The font that the page cuts down, for the test that does so.
	if err := os.WriteFile(filepath.Join(out, "go-regular.ttf"), fonts["go-regular.ttf"], 0o644); err != nil {
		return err
	}
	args := []string{"--enable-source-maps", "--test"}
	for _, f := range result.OutputFiles {
		if strings.HasSuffix(f.Path, ".test.mjs") {
			args = append(args, f.Path)
		}
	}
	cmd := exec.CommandContext(ctx, "node", args...)
	cmd.Dir = out
	cmd.Stdout, cmd.Stderr = os.Stdout, os.Stderr
	if err := cmd.Run(); err != nil {
		if errors.Is(err, exec.ErrNotFound) {
			return errors.New("node is needed to test the page's code: install Node.js")
		}
		return fmt.Errorf("tests of the page's code: %w", err)
	}
	return nil
}
