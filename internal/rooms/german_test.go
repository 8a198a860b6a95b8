package rooms_test

import (
	"os"
	"testing"

	"steelyard/internal/words"
)

// german are the words of German.
func german(t testing.TB) *words.Words {
	t.Helper()
	text, err := os.ReadFile("../../data/words/de.json")
	if err != nil {
		t.Fatal(err)
	}
	w, err := words.New(text)
	if err != nil {
		t.Fatal(err)
	}
	return w
}
