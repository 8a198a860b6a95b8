package static

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/evanw/esbuild/pkg/api"
)

// labels leaves of the core's English words what the page says itself, the kinds
// that web/text/kinds.json lists. The rest is in the program, which says it.
func labels(web string) api.Plugin {
	return api.Plugin{Name: "labels", Setup: func(build api.PluginBuild) {
		build.OnLoad(api.OnLoadOptions{Filter: `data[/\\]words[/\\]en\.json$`}, func(args api.OnLoadArgs) (api.OnLoadResult, error) {
			kinds, err := pageKinds(web)
			if err != nil {
				return api.OnLoadResult{}, err
			}
			var words map[string]string
			if err := readJSON(args.Path, &words); err != nil {
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
