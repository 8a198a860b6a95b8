package browsertest

import (
	"context"
	"fmt"
	"os"
	"testing"

	"github.com/chromedp/chromedp"

	"steelyard/internal/site/static"
)

// What the tests share: a browser, and the site built from the sources at hand.
var (
	browser *Browser
	server  *Server
	sizes   static.Sizes
	built   string // the folder of the site
)

func TestMain(m *testing.M) { os.Exit(run(m)) }

func run(m *testing.M) int {
	fail := func(err error) int {
		fmt.Fprintln(os.Stderr, err)
		return 1
	}
	ctx := context.Background()
	root, err := static.Root(".")
	if err != nil {
		return fail(err)
	}
	dir, err := os.MkdirTemp("", "steelyard-site-")
	if err != nil {
		return fail(err)
	}
	defer os.RemoveAll(dir)
	if sizes, err = static.Write(ctx, root, dir); err != nil {
		return fail(err)
	}
	built = dir
	if server, err = Serve(dir); err != nil {
		return fail(err)
	}
	defer server.Close()
	// Every test loads the program anew, and few run it for long: optimising it
	// costs as much as all else that a page does until it is painted. Without a
	// graphics card, laying the page together is done quicker by the browser itself
	// than by the emulated card that the canvas needs.
	if browser, err = Start(ctx, chromedp.Flag("js-flags", "--liftoff-only"), chromedp.Flag("disable-gpu-compositing", true)); err != nil {
		return fail(err)
	}
	defer browser.Close()
	return m.Run()
}
