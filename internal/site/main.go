// Command site writes Steelyard's static site and serves it on this machine.
//
//	go run ./internal/site build [-out dist]
//	go run ./internal/site single [-out dist]
//	go run ./internal/site serve [-out dist] [-addr 127.0.0.1:8173]
//	go run ./internal/site empty [-out .build/empty]
//	go run ./internal/site modules
//	go run ./internal/site test
//
// build writes the site. single writes it with one file more, steelyard.html,
// that holds everything and opens without a server. serve brings it up to date and serves it on a
// loopback address only. empty writes the smallest page that opens an ebiten
// canvas, built and loaded the same way: the reference that sizes and times
// are compared with. test runs the tests of the page's code in Node.
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"net"
	"net/http"
	"os"
	"os/signal"
	"path/filepath"
	"syscall"
	"time"

	"steelyard/internal/site/static"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	if err := run(ctx, os.Args[1:]); err != nil {
		fmt.Fprintln(os.Stderr, "site:", err)
		os.Exit(1)
	}
}

func run(ctx context.Context, args []string) error {
	if len(args) == 0 {
		return errors.New("say what to do: build, single, serve, empty, modules or test")
	}
	flags := flag.NewFlagSet("site "+args[0], flag.ContinueOnError)
	root, err := static.Root(".")
	if err != nil {
		return err
	}
	out := filepath.Join(root, "dist")
	if args[0] == "empty" {
		out = filepath.Join(root, ".build", "empty")
	}
	flags.StringVar(&out, "out", out, "folder to write the site to")
	addr := flags.String("addr", "127.0.0.1:8173", "loopback address to serve on")
	if err := flags.Parse(args[1:]); err != nil {
		return err
	}
	if flags.NArg() > 0 {
		return fmt.Errorf("%q is not an option of %s", flags.Arg(0), args[0])
	}

	switch args[0] {
	case "build", "single", "empty":
		return build(ctx, args[0], root, out)
	case "modules":
		return static.Modules(ctx, root)
	case "test":
		return static.ScriptTests(ctx, root)
	case "serve":
		// It listens first: an occupied port need not cost a build to find out.
		ln, err := static.Listen(*addr)
		if err != nil {
			return err
		}
		defer ln.Close()
		if err := build(ctx, "build", root, out); err != nil {
			return err
		}
		return serve(ctx, ln, out)
	default:
		return fmt.Errorf("%q is not something to do; say build, single, serve, empty, modules or test", args[0])
	}
}

func build(ctx context.Context, what, root, out string) error {
	write := static.Write
	switch what {
	case "single":
		write = static.WriteSingle
	case "empty":
		write = static.WriteEmpty
	}
	began := time.Now()
	sizes, err := write(ctx, root, out)
	if err != nil {
		return err
	}
	rel, err := filepath.Rel(root, out)
	if err != nil {
		rel = out
	}
	fmt.Printf("%s: %.2f MB, of which %.2f MB is the program (%.1f MB inflated); %.1f s\n",
		rel, mb(sizes.Site), mb(sizes.ProgramGzip), mb(sizes.Program), time.Since(began).Seconds())
	if sizes.Single > 0 {
		fmt.Printf("%s: %.2f MB in one file\n", filepath.Join(rel, static.SingleName), mb(sizes.Single))
	}
	return nil
}

func serve(ctx context.Context, ln net.Listener, dir string) error {
	server := &http.Server{Handler: static.Handler(dir), ReadHeaderTimeout: 10 * time.Second}
	go func() {
		<-ctx.Done()
		quit, cancel := context.WithTimeout(context.Background(), 2*time.Second)
		defer cancel()
		if server.Shutdown(quit) != nil {
			server.Close()
		}
	}()
	fmt.Printf("Steelyard: http://%s/  (stop with Ctrl+C)\n", ln.Addr())
	if err := server.Serve(ln); !errors.Is(err, http.ErrServerClosed) {
		return err
	}
	return nil
}

func mb(bytes int64) float64 { return float64(bytes) / 1e6 }
