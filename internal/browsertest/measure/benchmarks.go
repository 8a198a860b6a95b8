package main

import (
	"bufio"
	"bytes"
	"context"
	"fmt"
	"os/exec"
	"regexp"
	"strconv"
	"strings"
	"time"
)

var result = regexp.MustCompile(`^Benchmark(\S+?)(?:-\d+)?\s+\d+\s+([0-9.]+) ns/op(.*)$`)

// benchmarks runs the Go benchmarks of all packages.
func benchmarks(ctx context.Context, root string) ([]line, error) {
	cmd := exec.CommandContext(ctx, "go", "test", "-run=^$", "-bench=.", "-benchtime=200ms", "./...")
	cmd.Dir = root
	out, err := cmd.CombinedOutput()
	if err != nil {
		return nil, fmt.Errorf("go test -bench: %w\n%s", err, out)
	}
	var lines []line
	pkg := ""
	for s := bufio.NewScanner(bytes.NewReader(out)); s.Scan(); {
		if p, ok := strings.CutPrefix(s.Text(), "pkg: steelyard/"); ok {
			pkg = p
			continue
		}
		m := result.FindStringSubmatch(s.Text())
		if m == nil {
			continue
		}
		ns, err := strconv.ParseFloat(m[2], 64)
		if err != nil {
			return nil, err
		}
		lines = append(lines, line{
			what:      fmt.Sprintf("%s %s", pkg, m[1]),
			measured:  short(time.Duration(ns)),
			reference: strings.Join(strings.Fields(m[3]), " "),
		})
	}
	return lines, nil
}

// short writes a time with three digits.
func short(d time.Duration) string {
	switch {
	case d >= time.Second:
		return fmt.Sprintf("%.3g s", d.Seconds())
	case d >= time.Millisecond:
		return fmt.Sprintf("%.3g ms", float64(d)/float64(time.Millisecond))
	case d >= time.Microsecond:
		return fmt.Sprintf("%.3g µs", float64(d)/float64(time.Microsecond))
	}
	return fmt.Sprintf("%d ns", d.Nanoseconds())
}
