package scene

import "testing"

func TestSay(t *testing.T) {
	words := map[string]string{
		"scene.a": "{x} forward, {z} up", "scene.b": "plain", "scene.c": "{x", "scene.d": "}{x}{", "scene.e": "{none}{x}{x}",
	}
	v := View{Words: func(key string) string { return words[key] }}
	for key, want := range map[string]string{
		"a": "1 {z} forward, 2 up", // what is filled in is not filled in again
		"b": "plain", "c": "{x", "d": "}1 {z}{", "e": "{none}1 {z}1 {z}",
	} {
		if got := v.say(key, "x", "1 {z}", "z", "2"); got != want {
			t.Errorf("%q says %q, want %q", words["scene."+key], got, want)
		}
	}
	if got := (&View{}).say("centre"); got != "scene.centre" {
		t.Errorf("without words: %q", got)
	}
}
