package static

import (
	"fmt"
	"path/filepath"
	"strings"

	"github.com/evanw/esbuild/pkg/api"
)

// every lets a script or a style sheet import all files that a pattern names:
// "every:rooms/*/text.ts" is every room's text.ts, and a room that is added has its
// words and styles on the page without a list that names them. The pattern starts
// at the folder web; the files come in the order of their names.
func every(web string) api.Plugin {
	const scheme = "every:"
	return api.Plugin{Name: "every", Setup: func(build api.PluginBuild) {
		build.OnResolve(api.OnResolveOptions{Filter: "^" + scheme}, func(args api.OnResolveArgs) (api.OnResolveResult, error) {
			return api.OnResolveResult{Path: strings.TrimPrefix(args.Path, scheme), Namespace: "every"}, nil
		})
		build.OnLoad(api.OnLoadOptions{Filter: ".*", Namespace: "every"}, func(args api.OnLoadArgs) (api.OnLoadResult, error) {
			pattern := filepath.FromSlash(args.Path)
			files, err := filepath.Glob(filepath.Join(web, pattern))
			if err != nil {
				return api.OnLoadResult{}, err
			}
			if len(files) == 0 {
				return api.OnLoadResult{}, fmt.Errorf("no file is named %s", args.Path)
			}
			line, loader := "import %q;\n", api.LoaderJS
			if filepath.Ext(pattern) == ".css" {
				line, loader = "@import %q;\n", api.LoaderCSS
			}
			var all strings.Builder
			for _, f := range files {
				name, err := filepath.Rel(web, f)
				if err != nil {
					return api.OnLoadResult{}, err
				}
				fmt.Fprintf(&all, line, "./"+filepath.ToSlash(name))
			}
			text := all.String()
			return api.OnLoadResult{Contents: &text, Loader: loader, ResolveDir: web}, nil
		})
	}}
}
