package static

import (
	"crypto/sha256"
	"encoding/hex"
	"maps"
	"path/filepath"
	"slices"

	"github.com/evanw/esbuild/pkg/api"
	"github.com/goccy/go-json"
)

// WorkerName is the site's service worker.
const WorkerName = "sw.js"

// addWorker adds the service worker, with the list of all files that are there by
// then, each with its hash, and the version that they make together.
func (s site) addWorker(web string) error {
	files := map[string]string{}
	all := sha256.New()
	for _, name := range slices.Sorted(maps.Keys(s)) {
		sum := sha256.Sum256(s[name])
		files[name] = hex.EncodeToString(sum[:])
		all.Write([]byte(name + " " + files[name] + "\n"))
	}
	list, err := json.Marshal(files)
	if err != nil {
		return err
	}
	options := bundling(web)
	options.EntryPoints = []string{filepath.Join(web, "sw.ts")}
	options.Format = api.FormatIIFE
	options.Define = map[string]string{
		"FILES":   string(list),
		"VERSION": `"` + hex.EncodeToString(all.Sum(nil)[:8]) + `"`,
	}
	result := api.Build(options)
	if err := failure(result.Errors); err != nil {
		return err
	}
	s[WorkerName] = result.OutputFiles[0].Contents
	return nil
}
