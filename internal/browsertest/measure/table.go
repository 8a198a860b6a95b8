package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"runtime/debug"
	"strings"
	"text/tabwriter"
	"time"
)

// figure is something to measure, which may make several lines of the table. A
// measurement that fails may have lines all the same: what it had by then.
type figure struct {
	name    string
	within  time.Duration // it is given up after that
	measure func(ctx context.Context) ([]line, error)
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

// table measures all figures, saying which one is being measured, prints what came
// of them, and below it at length why some could not be. It returns the command's exit code.
func table(ctx context.Context, figures []figure, out, complaints io.Writer) int {
	var lines []line
	var failures []error
	for i, f := range figures {
		fmt.Fprintf(complaints, "measure: %d of %d, %s\n", i+1, len(figures), f.name)
		more, err := f.take(ctx)
		lines = append(lines, more...)
		if err != nil {
			why, _, _ := strings.Cut(err.Error(), "\n")
			lines = append(lines, line{what: f.name, measured: "FAILED", reference: why})
			failures = append(failures, fmt.Errorf("%s: %w", f.name, err))
		}
	}
	print(out, lines)
	for _, err := range failures {
		fmt.Fprintf(complaints, "\nmeasure: failed: %v\n", err)
	}
	if len(failures) > 0 {
		return 1
	}
	return 0
}

// grace is how long a figure whose time is over may take to end.
const grace = 15 * time.Second

// take measures the figure, or says why that cannot be.
func (f *figure) take(ctx context.Context) ([]line, error) {
	return f.takeWithin(ctx, grace)
}

func (f *figure) takeWithin(ctx context.Context, grace time.Duration) ([]line, error) {
	ctx, cancel := context.WithTimeout(ctx, f.within)
	defer cancel()
	type result struct {
		lines []line
		err   error
	}
	done := make(chan result, 1)
	go func() {
		var r result
		defer func() {
			if p := recover(); p != nil {
				r.err = fmt.Errorf("panic: %v\n%s", p, debug.Stack())
			}
			done <- r
		}()
		r.lines, r.err = f.measure(ctx)
	}()
	late := fmt.Errorf("not done within %v", f.within)
	var r result
	select {
	case r = <-done:
	case <-ctx.Done():
		select {
		case r = <-done:
		case <-time.After(grace):
			return nil, late
		}
	}
	if r.err != nil && errors.Is(ctx.Err(), context.DeadlineExceeded) {
		r.err = fmt.Errorf("%w: %w", late, r.err)
	}
	return r.lines, r.err
}

func print(out io.Writer, lines []line) {
	w := tabwriter.NewWriter(out, 0, 0, 2, ' ', 0)
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
