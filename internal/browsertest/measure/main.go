// Command measure prints one table of measured figures with what they are held
// against: evaluation in Chromium's WebAssembly and natively, its growth with
// the number of parts, frames drawn at rest, the program's size and its start
// against an empty ebiten program's, and the Go benchmarks.
//
//	go run ./internal/browsertest/measure [-go=false] [-only regexp]
//
// Each figure has a deadline of its own and, where it needs one, a browser of its
// own: one that cannot be measured is said to be so, with the reason, the rest is
// measured all the same, and the command fails at its end. Figures depend on the
// machine and on what else it does; ratios less so. A bound that is not kept is
// shown, not failed.
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"time"

	"steelyard/internal/browsertest"
	"steelyard/internal/site/static"
)

func main() {
	goToo := flag.Bool("go", true, "run the Go benchmarks of all packages too")
	only := flag.String("only", "", "measure only the figures whose name matches")
	flag.Parse()
	names, err := regexp.Compile(*only)
	if err != nil {
		fmt.Fprintln(os.Stderr, "measure:", err)
		os.Exit(1)
	}
	os.Exit(run(*goToo, names))
}

func run(goToo bool, only *regexp.Regexp) int {
	root, err := static.Root(".")
	if err != nil {
		fmt.Fprintln(os.Stderr, "measure:", err)
		return 1
	}
	dir, err := os.MkdirTemp("", "steelyard-measure-")
	if err != nil {
		fmt.Fprintln(os.Stderr, "measure:", err)
		return 1
	}
	defer os.RemoveAll(dir)
	page, empty := site{dir: filepath.Join(dir, "page")}, site{dir: filepath.Join(dir, "empty")}
	defer page.close()
	defer empty.close()
	list := figures(root, &page, &empty, goToo)
	const sites = 2 // that all others are of
	list = append(list[:sites:sites], slices.DeleteFunc(list[sites:], func(f figure) bool { return !only.MatchString(f.name) })...)
	return table(context.Background(), list, os.Stdout, os.Stderr)
}

// figures are what is measured, in the order of the table.
func figures(root string, page, empty *site, goToo bool) []figure {
	var edited time.Duration // one evaluation in Chromium; 0 if it could not be measured
	list := []figure{
		{"the page, built and served", 10 * time.Minute, func(ctx context.Context) ([]line, error) {
			return nil, page.open(func() (static.Sizes, error) { return static.Write(ctx, root, page.dir) })
		}},
		{"an empty ebiten program, built and served", 5 * time.Minute, func(ctx context.Context) ([]line, error) {
			return nil, empty.open(func() (static.Sizes, error) { return static.WriteEmpty(ctx, root, empty.dir) })
		}},
		{"evaluation", 3 * time.Minute, func(ctx context.Context) (lines []line, err error) {
			lines, edited, err = evaluation(ctx, page)
			return lines, err
		}},
		{"what chapters ask for", 5 * time.Minute, func(ctx context.Context) ([]line, error) { return answers(ctx, page) }},
		{"evaluation, growing with the parts", 5 * time.Minute, func(ctx context.Context) ([]line, error) { return growth(ctx, page) }},
		{"the same sums in a spreadsheet", 5 * time.Minute, func(ctx context.Context) ([]line, error) { return spreadsheet(ctx, edited) }},
		{"a thousand edits", 8 * time.Minute, func(ctx context.Context) ([]line, error) { return edits(ctx, page) }},
		{"the picture, at rest and moving", 2 * time.Minute, func(ctx context.Context) ([]line, error) { return rest(ctx, page) }},
		{"the program's size", time.Minute, func(context.Context) ([]line, error) { return size(page, empty) }},
		{"first figures on a phone", 6 * time.Minute, func(ctx context.Context) ([]line, error) { return phone(ctx, page) }},
		{"time to the first totals", 5 * time.Minute, func(ctx context.Context) ([]line, error) { return start(ctx, page, empty) }},
	}
	if goToo {
		list = append(list, figure{"the Go benchmarks", 15 * time.Minute, func(ctx context.Context) ([]line, error) { return benchmarks(ctx, root) }})
	}
	return list
}

// site is a built site that is served, or nothing yet.
type site struct {
	dir    string
	sizes  static.Sizes
	server *browsertest.Server // nil until it is built
}

func (s *site) open(write func() (static.Sizes, error)) (err error) {
	if s.sizes, err = write(); err != nil {
		return err
	}
	s.server, err = browsertest.Serve(s.dir)
	return err
}

func (s *site) close() {
	if s.server != nil {
		s.server.Close()
	}
}

// url is where the site is served.
func (s *site) url() (string, error) {
	if s.server == nil {
		return "", errors.New("what it is measured on was not built")
	}
	return s.server.URL, nil
}
