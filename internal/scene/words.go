package scene

import "steelyard/internal/words"

// word returns the words of a key, which stands below "scene.".
func (v *View) word(key string) string {
	key = "scene." + key
	if v.Words == nil {
		return key
	}
	return v.Words(key)
}

// say fills in the template of a key, see [words.Fill].
func (v *View) say(key string, pairs ...string) string { return words.Fill(v.word(key), pairs...) }
