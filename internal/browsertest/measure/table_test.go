package main

import (
	"context"
	"errors"
	"strings"
	"testing"
	"time"
)

// A figure that cannot be measured is named with the reason, and the rest of the
// table is there all the same.
func TestTableGoesOnAfterAFailure(t *testing.T) {
	good := func(name string) figure {
		return figure{name, time.Minute, func(context.Context) ([]line, error) { return []line{{what: name, measured: "7 ms"}}, nil }}
	}
	var out, complaints strings.Builder
	code := table(context.Background(), []figure{
		good("first"),
		{"refused", time.Minute, func(context.Context) ([]line, error) {
			return []line{{what: "half of it", measured: "3 ms"}}, errors.New("no such thing\nand at length")
		}},
		{"slow", 10 * time.Millisecond, func(ctx context.Context) ([]line, error) { <-ctx.Done(); return nil, ctx.Err() }},
		{"broken", time.Minute, func(context.Context) ([]line, error) { var none []int; return nil, errors.New(string(rune(none[3]))) }},
		good("last"),
	}, &out, &complaints)
	if code == 0 {
		t.Error("the command claims success")
	}
	for _, want := range []string{"first", "half of it", "last"} {
		if !strings.Contains(out.String(), "\n"+want) {
			t.Errorf("the table lacks %q:\n%s", want, out.String())
		}
	}
	for name, why := range map[string]string{"refused": "no such thing", "slow": "not done within 10ms", "broken": "index out of range"} {
		found := false
		for l := range strings.Lines(out.String()) {
			found = found || strings.HasPrefix(l, name) && strings.Contains(l, "FAILED") && strings.Contains(l, why)
		}
		if !found || !strings.Contains(complaints.String(), "measure: failed: "+name+": ") {
			t.Errorf("nothing says that %q failed, and that %s:\n%s\n%s", name, why, out.String(), complaints.String())
		}
	}
	if strings.Contains(out.String(), "at length") || !strings.Contains(complaints.String(), "at length") {
		t.Error("the reason at length belongs below the table")
	}
}

// A figure that does not hear that its time is over is left behind.
func TestFigureThatHangsIsLeftBehind(t *testing.T) {
	hold := make(chan bool)
	defer close(hold)
	f := figure{"deaf", time.Millisecond, func(context.Context) ([]line, error) { <-hold; return nil, nil }}
	if _, err := f.takeWithin(context.Background(), time.Millisecond); err == nil || !strings.Contains(err.Error(), "not done within 1ms") {
		t.Errorf("error %v", err)
	}
}

// What fails in a tab tells where in the measurement that was.
func TestTabTellsWhere(t *testing.T) {
	fresh := &tab{}
	err := fresh.do(func(t *tab) { t.Fatalf("context deadline exceeded") })
	if err == nil || !strings.HasPrefix(err.Error(), "table_test.go:") {
		t.Errorf("error %v", err)
	}
}
