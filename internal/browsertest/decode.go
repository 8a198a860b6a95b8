package browsertest

import (
	"testing"

	"github.com/goccy/go-json"
)

// decode reads what the browser answered.
func decode(tb testing.TB, text []byte, into any) {
	tb.Helper()
	if len(text) == 0 {
		return
	}
	if err := json.Unmarshal(text, into); err != nil {
		tb.Fatalf("%v in %.200q", err, text)
	}
}
