package bridge_test

import (
	"strings"
	"testing"
)

func TestStatesTables(t *testing.T) {
	text := call(t, "demo")
	csv := call(t, "statesCSV", text, "semicolon", "")
	if !strings.HasPrefix(strings.TrimPrefix(csv, "\ufeff"), "Side;State;Supplies;Total mass, g;") || strings.Count(csv, "Loaded, with rider") < 3 {
		t.Errorf("%.300s", csv)
	}
	if md := call(t, "statesMarkdown", text, "", "1 May"); !strings.Contains(md, "| Ready to ride | – |") || !strings.Contains(md, "1 May") {
		t.Errorf("%s", md)
	}
	if p := problemIn(call(t, "statesCSV", "{")); p == nil {
		t.Error("no problem with a broken document")
	}
}
