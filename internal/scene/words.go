package scene

import "strings"

// word returns the words of a key, which stands below "scene.".
func (v *View) word(key string) string {
	key = "scene." + key
	if v.Words == nil {
		return key
	}
	return v.Words(key)
}

// say fills in the template of a key: {name} becomes the value that follows
// "name" in pairs. What is filled in is not looked at again, so that a name may
// hold braces.
func (v *View) say(key string, pairs ...string) string {
	template := v.word(key)
	var b strings.Builder
	for {
		open := strings.IndexByte(template, '{')
		if open < 0 {
			break
		}
		length := strings.IndexByte(template[open:], '}')
		if length < 0 {
			break
		}
		b.WriteString(template[:open])
		for i := 0; i+1 < len(pairs); i += 2 {
			if pairs[i] == template[open+1:open+length] {
				b.WriteString(pairs[i+1])
				break
			}
		}
		template = template[open+length+1:]
	}
	b.WriteString(template)
	return b.String()
}
