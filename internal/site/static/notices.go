package static

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strings"

	"github.com/evanw/esbuild/pkg/api"
	"github.com/goccy/go-json"
)

// NoticesName is the file of the site with the licences of what it is made of.
const NoticesName = "notices.txt"

// work is something of others that the site contains.
type work struct {
	name    string // with its version
	license string // its notices, whole
}

// notices returns the text of the notices file: every Go module linked into
// the program, Go itself, the fonts, and every npm package bundled into the
// page, each with its licence. A work without a licence is an error: it may not
// be given away.
func notices(ctx context.Context, root string, scripts []string) ([]byte, error) {
	works, err := goWorks(ctx, root, "./wasm")
	if err != nil {
		return nil, err
	}
	npm, err := npmWorks(filepath.Join(root, "web"), scripts)
	if err != nil {
		return nil, err
	}
	return writeNotices(append(works, npm...)), nil
}

func writeNotices(works []work) []byte {
	slices.SortFunc(works, func(a, b work) int { return strings.Compare(a.name, b.name) })
	var out strings.Builder
	out.WriteString("Steelyard contains the following works of others, under the licences below.\n\n")
	for _, w := range works {
		out.WriteString("    " + w.name + "\n")
	}
	// Works under one text share it.
	var texts []string
	under := map[string][]string{}
	for _, w := range works {
		if _, ok := under[w.license]; !ok {
			texts = append(texts, w.license)
		}
		under[w.license] = append(under[w.license], w.name)
	}
	rule := strings.Repeat("-", 72) + "\n"
	for _, text := range texts {
		out.WriteString("\n" + rule + strings.Join(under[text], "\n") + "\n" + rule + "\n" + text + "\n")
	}
	return []byte(out.String())
}

// goWorks are the modules linked into a program, Go's own library and runtime,
// and the fonts.
func goWorks(ctx context.Context, root, pkg string) ([]work, error) {
	env := []string{"GOOS=js", "GOARCH=wasm"}
	list, err := goCommand(ctx, root, env, "list", "-deps", "-f",
		`{{with .Module}}{{if not .Main}}{{.Path}} {{.Version}}{{"\t"}}{{.Dir}}{{"\t"}}{{$.Dir}}{{end}}{{end}}`, pkg)
	if err != nil {
		return nil, err
	}
	// A package may stand under a licence beside its module's.
	found := map[string][]string{} // folders to look in, by module
	for line := range strings.Lines(string(list)) {
		f := strings.Split(strings.TrimSpace(line), "\t")
		if len(f) != 3 {
			continue
		}
		for dir := f[2]; ; dir = filepath.Dir(dir) {
			if !slices.Contains(found[f[0]], dir) {
				found[f[0]] = append(found[f[0]], dir)
			}
			if dir == f[1] || dir == filepath.Dir(dir) {
				break
			}
		}
	}
	var works []work
	add := func(name string, dirs ...string) error {
		text, err := licenses(dirs...)
		if err != nil {
			return fmt.Errorf("the licence of %s: %w", name, err)
		}
		works = append(works, work{name, text})
		return nil
	}
	for name, dirs := range found {
		slices.Sort(dirs)
		if err := add(name, dirs...); err != nil {
			return nil, err
		}
	}

	out, err := goCommand(ctx, root, nil, "env", "GOROOT", "GOVERSION")
	if err != nil {
		return nil, err
	}
	goroot, version, _ := strings.Cut(strings.TrimSpace(string(out)), "\n")
	if err := add("Go standard library and runtime "+version, goroot); err != nil {
		return nil, err
	}

	out, err = goCommand(ctx, root, nil, "list", "-f", "{{.Module.Version}}\t{{.Dir}}", "golang.org/x/image/font/gofont/goregular")
	if err != nil {
		return nil, err
	}
	version, dir, _ := strings.Cut(strings.TrimSpace(string(out)), "\t")
	text, err := os.ReadFile(filepath.Join(filepath.Dir(dir), "ttfs", "README"))
	if err != nil {
		return nil, fmt.Errorf("the licence of the fonts: %w", err)
	}
	return append(works, work{"Go fonts, as in golang.org/x/image " + version, tidy(text)}), nil
}

// npmWorks are the packages that the page's scripts bundle.
func npmWorks(web string, scripts []string) ([]work, error) {
	options := bundling(web)
	for _, s := range scripts {
		options.EntryPoints = append(options.EntryPoints, filepath.Join(web, filepath.FromSlash(s)))
	}
	options.Metafile = true
	result := api.Build(options)
	if err := failure(result.Errors); err != nil {
		return nil, err
	}
	var meta struct {
		Inputs map[string]struct{} `json:"inputs"`
	}
	if err := json.Unmarshal([]byte(result.Metafile), &meta); err != nil {
		return nil, err
	}
	packages := map[string]bool{}
	for input := range meta.Inputs {
		if name := packageOf(input); name != "" {
			packages[name] = true
		}
	}
	var works []work
	for name := range packages {
		dir := filepath.Join(web, "node_modules", filepath.FromSlash(name))
		text, err := licenses(dir)
		if err != nil {
			return nil, fmt.Errorf("the licence of %s: %w", name, err)
		}
		data, err := os.ReadFile(filepath.Join(dir, "package.json"))
		if err != nil {
			return nil, err
		}
		var about struct {
			Version string `json:"version"`
		}
		if err := json.Unmarshal(data, &about); err != nil {
			return nil, fmt.Errorf("%s: %w", name, err)
		}
		works = append(works, work{name + " " + about.Version, text})
	}
	return works, nil
}

// packageOf names the npm package that a bundled file belongs to, its folder
// below node_modules: packages may lie in packages.
func packageOf(input string) string {
	const modules = "node_modules/"
	at := strings.LastIndex(input, modules)
	if at < 0 {
		return ""
	}
	begin := strings.Index(input, modules) + len(modules)
	parts := strings.SplitN(input[at+len(modules):], "/", 3)
	n := 1
	if strings.HasPrefix(parts[0], "@") && len(parts) > 1 {
		n = 2
	}
	return path.Join(input[begin:at+len(modules)], path.Join(parts[:n]...))
}

// licenseFile names what holds a licence or what one wants handed on.
var licenseFile = regexp.MustCompile(`(?i)^(un)?(licen[cs]e|copying|notice|copyright)([-._].*)?$`)

// licenses returns the notices in some folders, one below the other.
func licenses(dirs ...string) (string, error) {
	var texts []string
	for _, dir := range dirs {
		entries, err := os.ReadDir(dir)
		if err != nil {
			return "", err
		}
		for _, e := range entries {
			if !e.Type().IsRegular() || !licenseFile.MatchString(e.Name()) || strings.HasSuffix(e.Name(), ".go") {
				continue
			}
			data, err := os.ReadFile(filepath.Join(dir, e.Name()))
			if err != nil {
				return "", err
			}
			texts = append(texts, tidy(data))
		}
	}
	if len(texts) == 0 {
		return "", errors.Join(fmt.Errorf("no file in %s holds one", strings.Join(dirs, ", ")), fs.ErrNotExist)
	}
	return strings.Join(texts, "\n\n"), nil
}

func tidy(text []byte) string {
	return strings.TrimSpace(strings.ReplaceAll(strings.ToValidUTF8(string(text), "\uFFFD"), "\r\n", "\n"))
}
