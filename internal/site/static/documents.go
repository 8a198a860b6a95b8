package static

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"strings"

	"github.com/evanw/esbuild/pkg/api"
)

// link finds what an HTML file takes from its own site. The files are ours, so
// that a pattern does where a parser would be needed for those of others.
var link = regexp.MustCompile(`\b(src|href)="([^":#?]+)"`)

// addDocuments adds HTML files and everything that they link. The one that is
// linked by another must come first, so that its hash is known.
func (s site) addDocuments(web string, names ...string) error {
	for _, name := range names {
		text, err := os.ReadFile(filepath.Join(web, name))
		if err != nil {
			return err
		}
		var failed error
		linked := link.ReplaceAllStringFunc(string(text), func(found string) string {
			m := link.FindStringSubmatch(found)
			to, err := s.addLinked(web, path.Clean(m[2]))
			if err != nil {
				failed = errors.Join(failed, fmt.Errorf("%s links %s: %w", name, m[2], err))
			}
			return fmt.Sprintf(`%s="%s"`, m[1], to)
		})
		if failed != nil {
			return failed
		}
		s[name] = []byte(s.preload(linked))
	}
	return nil
}

// taken finds the pieces that a script cannot start without, as esbuild writes it.
var taken = regexp.MustCompile(`\bfrom"\./([^"]+)"`)

// preload has the pieces of a document's scripts asked for with the scripts, not
// when these have come.
func (s site) preload(doc string) string {
	return scriptElement.ReplaceAllStringFunc(doc, func(found string) string {
		links := ""
		for _, m := range taken.FindAllSubmatch(s[scriptElement.FindStringSubmatch(found)[2]], -1) {
			links += fmt.Sprintf("<link rel=\"modulepreload\" href=\"%s\">\n", m[1])
		}
		return links + found
	})
}

// addLinked adds what one link names, bundled when it is a script or a style
// sheet, and returns the link to write.
func (s site) addLinked(web, from string) (to string, err error) {
	to = from
	if ext := path.Ext(from); ext == ".ts" {
		to = strings.TrimSuffix(from, ext) + ".js"
	}
	if _, ok := s[to]; !ok {
		source := filepath.Join(web, filepath.FromSlash(from))
		switch path.Ext(from) {
		case ".ts", ".js":
			err = s.addScript(web, to, source)
		case ".css":
			s[to], err = bundle(web, source)
		default:
			s[to], err = os.ReadFile(source)
		}
		if err != nil {
			return "", err
		}
	}
	sum := sha256.Sum256(s[to])
	return to + "?v=" + hex.EncodeToString(sum[:4]), nil
}

// addScript adds a script, and the pieces of it that it takes by itself or when it
// wants them, which are named by their hashes.
func (s site) addScript(web, to, source string) error {
	options := bundling(web)
	options.EntryPoints = []string{source}
	options.Splitting = true
	result := api.Build(options)
	if err := failure(result.Errors); err != nil {
		return err
	}
	for _, f := range result.OutputFiles {
		name, err := filepath.Rel(web, f.Path)
		if err != nil {
			return err
		}
		s[filepath.ToSlash(name)] = f.Contents
	}
	if s[to] == nil {
		return fmt.Errorf("%s gave no %s", filepath.Base(source), to)
	}
	return nil
}

// bundling is how sources become bundles.
func bundling(web string) api.BuildOptions {
	return api.BuildOptions{
		AbsWorkingDir: web,
		Bundle:        true,
		Format:        api.FormatESModule,
		Target:        api.ES2022,
		External:      []string{"fonts/*"},
		LegalComments: api.LegalCommentsEndOfFile,
		Charset:       api.CharsetUTF8,
		Outdir:        web, // nothing is written; esbuild wants to know
		LogLevel:      api.LogLevelSilent,
		Plugins:       []api.Plugin{every(web), labels(web)},

		MinifyWhitespace:  true,
		MinifyIdentifiers: true,
		MinifySyntax:      true,
	}
}

// failure joins esbuild's errors to one.
func failure(messages []api.Message) error {
	if len(messages) == 0 {
		return nil
	}
	return errors.New(strings.Join(api.FormatMessages(messages, api.FormatMessagesOptions{}), "\n"))
}

// bundle makes one minified file of a source and all that it imports.
func bundle(web, source string) ([]byte, error) {
	options := bundling(web)
	options.EntryPoints = []string{source}
	result := api.Build(options)
	if err := failure(result.Errors); err != nil {
		return nil, err
	}
	want := path.Ext(source)
	if want == ".ts" {
		want = ".js"
	}
	for _, f := range result.OutputFiles {
		if filepath.Ext(f.Path) == want {
			return f.Contents, nil
		}
	}
	return nil, fmt.Errorf("%s gave no %s file", filepath.Base(source), want)
}

// minify shrinks a script that is not a module.
func minify(name string, script []byte) ([]byte, error) {
	result := api.Transform(string(script), api.TransformOptions{
		Sourcefile:        name,
		LegalComments:     api.LegalCommentsEndOfFile,
		MinifyWhitespace:  true,
		MinifyIdentifiers: true,
		MinifySyntax:      true,
	})
	if err := failure(result.Errors); err != nil {
		return nil, err
	}
	return result.Code, nil
}
