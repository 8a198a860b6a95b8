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

// benchmarks runs the Go benchmarks of all packages. Where some fail, the lines
// of the others are there, and the error says what failed.
func benchmarks(ctx context.Context, root string) ([]line, error) {
	cmd := exec.CommandContext(ctx, "go", "test", "-run=^$", "-bench=.", "-benchtime=200ms", "./...")
	cmd.Dir = root
	out, failed := cmd.CombinedOutput()
	lines, err := readBenchmarks(out)
	if failed == nil {
		return lines, err
	}
	return lines, fmt.Errorf("go test -bench: %w: %s\n%s", failed, strings.Join(failing(out), ", "), out)
}

// failing names what go test says has failed.
func failing(out []byte) (names []string) {
	for l := range strings.Lines(string(out)) {
		f := strings.Fields(l)
		if len(f) > 1 && f[0] == "FAIL" {
			names = append(names, f[1])
		} else if len(f) > 2 && f[0] == "---" && f[1] == "FAIL:" {
			names = append(names, f[2])
		}
	}
	return names
}

// readBenchmarks reads what go test writes of benchmarks.
func readBenchmarks(out []byte) ([]line, error) {
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
