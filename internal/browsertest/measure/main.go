// Command measure prints one table of measured figures with what they are held
// against: evaluation in Chromium's WebAssembly and natively, its growth with
// the number of parts, frames drawn at rest, the program's size and its start
// against an empty ebiten program's, and the Go benchmarks.
//
//	go run ./internal/browsertest/measure [-go=false]
//
// Figures depend on the machine and on what else it does; ratios less so. It is
// no test: a bound that is not kept is shown, not failed.
package main

import (
	"context"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"text/tabwriter"
	"time"

	"steelyard/internal/browsertest"
	"steelyard/internal/site/static"
)

func main() {
	goToo := flag.Bool("go", true, "run the Go benchmarks of all packages too")
	flag.Parse()
	if err := run(context.Background(), *goToo); err != nil {
		fmt.Fprintln(os.Stderr, "measure:", err)
		os.Exit(1)
	}
}

// line is a line of the table.
type line struct {
	what      string
	measured  string
	reference string
	ratio     float64 // 0 for none
	bound     string
	ok        *bool // nil when there is no bound
}

func run(ctx context.Context, goToo bool) error {
	root, err := static.Root(".")
	if err != nil {
		return err
	}
	dir, err := os.MkdirTemp("", "steelyard-measure-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	page, empty := filepath.Join(dir, "page"), filepath.Join(dir, "empty")
	sizes, err := static.Write(ctx, root, page)
	if err != nil {
		return err
	}
	emptySizes, err := static.WriteEmpty(ctx, root, empty)
	if err != nil {
		return err
	}
	pageServer, err := browsertest.Serve(page)
	if err != nil {
		return err
	}
	defer pageServer.Close()
	emptyServer, err := browsertest.Serve(empty)
	if err != nil {
		return err
	}
	defer emptyServer.Close()
	browser, err := browsertest.Start(ctx)
	if err != nil {
		return err
	}
	defer browser.Close()

	var lines []line
	var edited time.Duration // one evaluation in Chromium
	for _, measure := range []func() ([]line, error){
		func() (lines []line, err error) {
			lines, edited, err = evaluation(browser, pageServer.URL)
			return lines, err
		},
		func() ([]line, error) { return spreadsheet(ctx, edited) },
		func() ([]line, error) { return edits(browser, pageServer.URL) },
		func() ([]line, error) { return rest(browser, pageServer.URL) },
		func() ([]line, error) { return size(sizes, emptySizes), nil },
		func() ([]line, error) { return start(browser, pageServer.URL, emptyServer.URL) },
		func() ([]line, error) {
			if !goToo {
				return nil, nil
			}
			return benchmarks(ctx, root)
		},
	} {
		more, err := measure()
		if err != nil {
			return err
		}
		lines = append(lines, more...)
	}
	print(lines)
	return nil
}

func print(lines []line) {
	w := tabwriter.NewWriter(os.Stdout, 0, 0, 2, ' ', 0)
	fmt.Fprintln(w, "what\tmeasured\tagainst\tratio\tbound\t")
	fmt.Fprintln(w, "----\t--------\t-------\t-----\t-----\t")
	for _, l := range lines {
		ratio, verdict := "", ""
		if l.ratio != 0 {
			ratio = fmt.Sprintf("%.2f", l.ratio)
		}
		if l.ok != nil {
			verdict = "kept"
			if !*l.ok {
				verdict = "NOT KEPT"
			}
		}
		fmt.Fprintf(w, "%s\t%s\t%s\t%s\t%s\t%s\n", l.what, l.measured, l.reference, ratio, l.bound, verdict)
	}
	w.Flush()
}

func kept(b bool) *bool { return &b }
