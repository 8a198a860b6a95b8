package main

import (
	"errors"
	"fmt"
	"slices"
	"testing"

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

// inTabs does something with tabs, and closes them.
func inTabs(b *browsertest.Browser, do func(t *tab)) (err error) {
	t := &tab{browser: b}
	defer func() {
		if r := recover(); r != nil {
			f, ok := r.(failure)
			if !ok {
				panic(r)
			}
			t.wrong = errors.Join(t.wrong, f.error)
		}
		for _, clean := range slices.Backward(t.cleanups) {
			clean()
		}
		err = t.wrong
	}()
	do(t)
	return nil
}

// open opens a page of a site in a fresh tab, a script run before its own. The
// tab is on the site already when it does, on a file that costs nothing: a
// browser takes longer to open its first page of a host.
func (t *tab) open(site, page, script string) *browsertest.Page {
	p := t.browser.Open(t, site+"wasm_exec.js", browsertest.Desk)
	if script != "" {
		p.Preload(script)
	}
	p.Navigate(site + page)
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

func (t *tab) Fatalf(format string, a ...any) { panic(failure{fmt.Errorf(format, a...)}) }
func (t *tab) Fatal(a ...any)                 { panic(failure{errors.New(fmt.Sprint(a...))}) }
