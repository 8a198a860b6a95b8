package main

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"

	"steelyard/internal/browsertest"
)

// tab stands in for the test that a page wants: what would fail a test ends the
// measurement with an error.
type tab struct {
	testing.TB // none: only what follows is called
	browser    *browsertest.Browser
	cleanups   []func()
	wrong      error
}

// failure is what Fatalf panics with.
type failure struct{ error }

// inTabs starts a browser, does something with tabs of it, and ends it. A step
// may take as long as ctx lasts.
func inTabs(ctx context.Context, do func(t *tab)) error {
	b, err := browsertest.Start(ctx)
	if err != nil {
		return err
	}
	defer b.Close()
	if end, ok := ctx.Deadline(); ok {
		b.Patience = time.Until(end)
	}
	return (&tab{browser: b}).do(do)
}

// do does something with tabs, and closes them.
func (t *tab) do(do func(t *tab)) (err error) {
	defer func() {
		if r := recover(); r != nil {
			f, ok := r.(failure)
			if !ok {
				panic(r)
			}
			t.wrong = errors.Join(t.wrong, f.error)
		}
		t.close()
		err = t.wrong
	}()
	do(t)
	return nil
}

// close closes the tabs that are open.
func (t *tab) close() {
	for _, clean := range slices.Backward(t.cleanups) {
		clean()
	}
	t.cleanups = nil
}

// open opens a page of a site in a fresh tab, a script run before its own. The
// tab is on the site already when it does, on a file that costs nothing: a
// browser takes longer to open its first page of a host.
func (t *tab) open(site, page, script string) *browsertest.Page {
	p := t.openAs(site, browsertest.Desk, script)
	p.Navigate(site + page)
	return p
}

// openAs does so with a look, and stays on that file.
func (t *tab) openAs(site string, look browsertest.Look, script string) *browsertest.Page {
	p := t.browser.Open(t, site+"icon.svg", look)
	if script != "" {
		p.Preload(script)
	}
	return p
}

func (t *tab) Helper()                      {}
func (t *tab) Name() string                 { return "measure" }
func (t *tab) Cleanup(f func())             { t.cleanups = append(t.cleanups, f) }
func (t *tab) Failed() bool                 { return t.wrong != nil }
func (t *tab) Logf(format string, a ...any) {}

func (t *tab) Errorf(format string, a ...any) {
	t.wrong = errors.Join(t.wrong, fmt.Errorf(format, a...))
}

func (t *tab) Fatalf(format string, a ...any) {
	panic(failure{fmt.Errorf(where()+format, a...)})
}
func (t *tab) Fatal(a ...any) { panic(failure{errors.New(where() + fmt.Sprint(a...))}) }

// where is the line of the measurement that is being done, as a test's log has
// it.
func where() string {
	var at [32]uintptr
	frames := runtime.CallersFrames(at[:runtime.Callers(1, at[:])])
	for {
		f, more := frames.Next()
		file := filepath.Base(f.File)
		if strings.HasPrefix(f.Function, "main.") || strings.Contains(f.Function, "/measure.") {
			if file != "tab.go" {
				return fmt.Sprintf("%s:%d: ", file, f.Line)
			}
		}
		if !more {
			return ""
		}
	}
}
