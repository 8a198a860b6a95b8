package static

import (
	"context"
	"crypto/sha256"
	"encoding/base64"
	"errors"
	"fmt"
	"html"
	"maps"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
)

// SingleName is the file, beside the site, that holds all of the program.
const SingleName = "steelyard.html"

// WriteSingle writes the site and, beside it, one HTML file with everything
// inside. That file opens from a file system, without a server.
func WriteSingle(ctx context.Context, root, out string) (Sizes, error) {
	files, size, err := gather(ctx, root)
	if err != nil {
		return Sizes{}, err
	}
	whole := maps.Clone(files)
	web := filepath.Join(root, "web")
	if whole["main.js"], err = bundle(web, filepath.Join(web, "main.ts")); err != nil { // in one piece
		return Sizes{}, err
	}
	one, err := whole.single()
	if err != nil {
		return Sizes{}, err
	}
	files[SingleName] = one
	return files.write(out, size)
}

// Elements of our own HTML files that take something from the site, as
// addDocuments leaves them.
var (
	scriptElement = regexp.MustCompile(`<script([^>]*?) src="([^":?]+)(?:\?[^"]*)?"([^>]*)></script>`)
	linkElement   = regexp.MustCompile(`<link ([^>]*?)href="([^":?]+)(?:\?[^"]*)?"([^>]*)>`)
	frameElement  = regexp.MustCompile(`<iframe([^>]*?) data-src="([^":?]+)(?:\?[^"]*)?"([^>]*)>`)
	policyElement = regexp.MustCompile(`<meta http-equiv="Content-Security-Policy" content="[^"]*">\n?`)
	fontURL       = regexp.MustCompile(`url\(["']?(fonts/[^"')]+)["']?\)`)
	taking        = regexp.MustCompile(`\b(?:src|href)="([^":#]+)"`)
)

// insides collects what one file holds in itself: the hashes by which its
// policy allows scripts and styles.
type insides struct {
	files           site
	packed          string // the program
	scripts, styles []string
	failed          error
}

// single joins the site's files to one. The canvas's document goes into the
// frame's srcdoc, the program into a block of text before the frame.
//
// The file's policy names each of its scripts and styles by hash. It allows
// fonts and pictures from data: addresses, which are parts of the file itself,
// and nothing to be fetched. A srcdoc document is held to the policy of the page
// around it, so that one policy serves both.
func (s site) single() ([]byte, error) {
	in := insides{files: s}
	frame := in.join(policyElement.ReplaceAllString(string(s["frame.html"]), ""))
	page := frameElement.ReplaceAllStringFunc(string(s["index.html"]), func(found string) string {
		m := frameElement.FindStringSubmatch(found)
		if m[2] != "frame.html" {
			in.fail("the page has a frame of %s", m[2])
			return found
		}
		return in.notices() + `<script type="application/octet-stream" id="packed">` + in.packed + "</script>" +
			"<iframe" + m[1] + ` data-srcdoc="` + html.EscapeString(frame) + `"` + m[3] + ">"
	})
	page = in.join(page)
	if !strings.Contains(page, ` data-srcdoc="`) {
		in.fail("the page has no frame of frame.html")
	}
	page, ok := replaceOnce(policyElement, page, in.policy())
	if !ok {
		in.fail("the page must have one policy")
	}
	if in.failed != nil {
		return nil, fmt.Errorf("%s: %w", SingleName, in.failed)
	}
	return []byte(page), nil
}

func replaceOnce(pattern *regexp.Regexp, text, with string) (string, bool) {
	at := pattern.FindAllStringIndex(text, -1)
	if len(at) != 1 {
		return text, false
	}
	return text[:at[0][0]] + with + text[at[0][1]:], true
}

func (in *insides) fail(format string, args ...any) {
	in.failed = errors.Join(in.failed, fmt.Errorf(format, args...))
}

// notices is the file of notices as an element, for About to show.
func (in *insides) notices() string {
	text := string(in.take(NoticesName))
	in.closed(NoticesName, text, "</script")
	return `<script type="text/plain" id="notices">` + text + "</script>"
}

// take returns a file of the site.
func (in *insides) take(name string) []byte {
	data, ok := in.files[path.Clean(name)]
	if !ok {
		in.fail("%s is not part of the site", name)
	}
	return data
}

// closed keeps a text within its element: one that holds the element's end, or
// hides that end in a comment, would spill into the page.
func (in *insides) closed(name, text, end string) {
	low := strings.ToLower(text)
	if strings.Contains(low, end) || strings.Contains(low, "<!--") {
		in.fail("%s holds %q or <!--, which would end it within HTML", name, end)
	}
}

// join puts what an HTML file links into it.
func (in *insides) join(doc string) string {
	doc = scriptElement.ReplaceAllStringFunc(doc, func(found string) string {
		m := scriptElement.FindStringSubmatch(found)
		code := string(in.take(m[2]))
		in.closed(m[2], code, "</script")
		in.scripts = append(in.scripts, sourceHash(code))
		return "<script" + m[1] + m[3] + ">" + code + "</script>"
	})
	doc = linkElement.ReplaceAllStringFunc(doc, func(found string) string {
		m := linkElement.FindStringSubmatch(found)
		rest := m[1] + m[3]
		switch {
		case strings.Contains(rest, `rel="stylesheet"`):
			css := fontURL.ReplaceAllStringFunc(string(in.take(m[2])), func(u string) string {
				name := fontURL.FindStringSubmatch(u)[1]
				return "url(" + dataURL(name, in.take(name)) + ")"
			})
			in.closed(m[2], css, "</style")
			in.styles = append(in.styles, sourceHash(css))
			return "<style>" + css + "</style>"
		case strings.Contains(rest, `rel="icon"`):
			return `<link rel="icon" href="` + dataURL(m[2], in.take(m[2])) + `">`
		case strings.Contains(rest, `id="program"`):
			in.packed = pack(in.take(m[2]))
			return `<link id="program">`
		case strings.Contains(rest, `rel="steelyard-texts`): // and the rest
			code := string(in.take(m[2]))
			in.closed(m[2], code, "</script")
			in.scripts = append(in.scripts, sourceHash(code))
			return `<script type="module">` + code + "</script>"
		case strings.Contains(rest, `rel="steelyard-first"`):
			text := string(in.take(m[2]))
			in.closed(m[2], text, "</script")
			return `<script type="application/json" id="` + strings.NewReplacer("/", "-", ".json", "").Replace(m[2]) + `">` + text + "</script>"
		case strings.Contains(rest, `rel="manifest"`), strings.Contains(rest, `rel="apple-touch-icon"`):
			return "" // a file is not installed
		case strings.Contains(rest, `rel="modulepreload"`):
			return "" // its script is in one piece
		}
		return found
	})
	// The file must not take anything from beside it.
	for _, m := range taking.FindAllStringSubmatch(withoutInsides(doc), -1) {
		in.fail("%s is linked, and there is no place for it in one file", m[1])
	}
	return doc
}

var inside = regexp.MustCompile(`(?s)<script[^>]*>.*?</script>|<style>.*?</style>| data-srcdoc="[^"]*"`)

func withoutInsides(doc string) string { return inside.ReplaceAllString(doc, "") }

func dataURL(name string, data []byte) string {
	kind, _, _ := strings.Cut(types[filepath.Ext(name)], ";")
	return "data:" + kind + ";base64," + base64.StdEncoding.EncodeToString(data)
}

// pack writes bytes as text that an HTML script element bears, seven bits to a
// character, the last filled up with zeros. Three of the 128 characters would
// not arrive as they are: NUL, the carriage return, and the one that begins a
// tag; each of them stands 128 places higher. See web/core/inside.ts.
func pack(data []byte) string {
	var out strings.Builder
	out.Grow(len(data)*7/6 + 2)
	put := func(c rune) {
		if c == 0 || c == '\r' || c == '<' {
			c |= 128
		}
		out.WriteRune(c)
	}
	held, bits := uint(0), 0
	for _, b := range data {
		held = held<<8 | uint(b)
		for bits += 8; bits >= 7; {
			bits -= 7
			put(rune(held >> bits & 127))
		}
		held &= 1<<bits - 1
	}
	if bits > 0 {
		put(rune(held << (7 - bits) & 127))
	}
	return out.String()
}

// sourceHash is how a policy names a script or a style.
func sourceHash(code string) string {
	sum := sha256.Sum256([]byte(code))
	return "'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "'"
}

func (in *insides) policy() string {
	slices.Sort(in.scripts)
	slices.Sort(in.styles)
	rules := []string{
		"default-src 'none'",
		"script-src 'wasm-unsafe-eval' " + strings.Join(slices.Compact(in.scripts), " "),
		"style-src " + strings.Join(slices.Compact(in.styles), " "),
		"font-src data:",
		"img-src data: blob:",
		"base-uri 'none'",
		"form-action 'none'",
	}
	return `<meta http-equiv="Content-Security-Policy" content="` + strings.Join(rules, "; ") + "\">\n"
}
