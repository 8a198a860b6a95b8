package static

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/evanw/esbuild/pkg/api"
)

// labels lets a script import, of the core's words in a language, those that the page
// says itself, the kinds that web/text/kinds.json lists: "labels:en". The rest is in
// the program, which says it.
func labels(web string) api.Plugin {
	const scheme = "labels:"
	return api.Plugin{Name: "labels", Setup: func(build api.PluginBuild) {
		build.OnResolve(api.OnResolveOptions{Filter: "^" + scheme}, func(args api.OnResolveArgs) (api.OnResolveResult, error) {
			return api.OnResolveResult{Path: strings.TrimPrefix(args.Path, scheme), Namespace: "labels"}, nil
		})
		build.OnLoad(api.OnLoadOptions{Filter: ".*", Namespace: "labels"}, func(args api.OnLoadArgs) (api.OnLoadResult, error) {
			kinds, err := pageKinds(web)
			if err != nil {
				return api.OnLoadResult{}, err
			}
			var words map[string]string
			if err := readJSON(filepath.Join(web, "..", "data", "words", args.Path+".json"), &words); err != nil {
				return api.OnLoadResult{}, err
			}
			said := make(map[string]string)
			for key, text := range words {
				if kind, _, _ := strings.Cut(key, "."); kinds[kind] {
					said[key] = text
				}
			}
			text, err := json.Marshal(said)
			if err != nil {
				return api.OnLoadResult{}, err
			}
			contents := string(text)
			return api.OnLoadResult{Contents: &contents, Loader: api.LoaderJSON}, nil
		})
	}}
}

// pageKinds are the kinds of words of the core that the page says.
func pageKinds(web string) (map[string]bool, error) {
	var list []string
	if err := readJSON(filepath.Join(web, "text", "kinds.json"), &list); err != nil {
		return nil, err
	}
	kinds := make(map[string]bool, len(list))
	for _, k := range list {
		kinds[k] = true
	}
	return kinds, nil
}

func readJSON(name string, into any) error {
	text, err := os.ReadFile(name)
	if err != nil {
		return err
	}
	if err := json.Unmarshal(text, into); err != nil {
		return fmt.Errorf("%s: %w", filepath.Base(name), err)
	}
	return nil
}
