package static

import (
	"bytes"
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"
)

// unpack is pack backwards, as web/core/inside.ts does it.
func unpack(text string) []byte {
	var out []byte
	held, bits := uint(0), 0
	for _, c := range text {
		held, bits = held<<7|uint(c&127), bits+7
		if bits >= 8 {
			bits -= 8
			out = append(out, byte(held>>bits))
		}
	}
	return out
}

func TestPackedTextIsWhatHTMLBears(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		data := rapid.SliceOf(rapid.Byte()).Draw(t, "data")
		text := pack(data)
		if !utf8.ValidString(text) || strings.ContainsAny(text, "<\r\x00") {
			t.Fatalf("%q would not arrive as it is", text)
		}
		if got := unpack(text); !bytes.Equal(got, data) {
			t.Fatalf("%x came back as %x", data, got)
		}
	})
}

const policyLine = `<meta http-equiv="Content-Security-Policy" content="x">` + "\n"

// small is a site of the fewest files.
func small() site {
	return site{
		"index.html":        []byte("<html>" + policyLine + `<link rel="stylesheet" href="page.css?v=1"><link rel="steelyard-texts" hreflang="de" href="text/de/index.js?v=5"><script type="module" src="main.js?v=2"></script><link rel="steelyard-first" hreflang="en" href="first/en.json?v=6"><iframe id="canvas" data-src="frame.html?v=3"></iframe>`),
		"frame.html":        []byte("<html>" + policyLine + `<link id="program" rel="preload" href="steelyard.wasm.gz?v=4"><script src="wasm_exec.js"></script>`),
		"page.css":          []byte(`@font-face{src:url(fonts/a.ttf)}`),
		"fonts/a.ttf":       []byte("font"),
		"notices.txt":       []byte("all <of> them"),
		"main.js":           []byte(`main("a & b")`),
		"first/en.json":     []byte(`{"report":1}`),
		"text/de/index.js":  []byte(`sprich("ä")`),
		"wasm_exec.js":      []byte(`exec()`),
		"steelyard.wasm.gz": []byte{0x1f, 0x8b, 0, 60, 13},
	}
}

func TestSingleJoinsEverything(t *testing.T) {
	one, err := small().single()
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{
		`<style>@font-face{src:url(data:font/ttf;base64,Zm9udA==)}</style>`,
		`<script type="module">main("a & b")</script>`,
		`<script type="module">sprich("ä")</script>`,
		`<script type="application/json" id="first-en">{"report":1}</script>`,
		` data-srcdoc="&lt;html&gt;&lt;link id=&#34;program&#34;&gt;&lt;script&gt;exec()&lt;/script&gt;"`,
		// printf '%s' 'exec()' | openssl dgst -sha256 -binary | base64
		`'sha256-7fiAayDHmIb4IVph43kDSS86lWGBKcqJ5EVT07WVChc='`,
		`<script type="text/plain" id="notices">all <of> them</script>`,
		pack([]byte{0x1f, 0x8b, 0, 60, 13}),
	} {
		if !strings.Contains(string(one), want) {
			t.Errorf("%s is not in\n%s", want, one)
		}
	}
}

func TestSingleRefusesWhatItCannotHold(t *testing.T) {
	for name, c := range map[string]struct {
		file, text, why string
	}{
		"script that ends itself": {"main.js", `a("</SCRIPT>")`, "main.js"},
		"script with a comment":   {"main.js", `a("<!--")`, "main.js"},
		"style that ends itself":  {"page.css", `a{content:"</style>"}`, "page.css"},
		"notice that ends itself": {"notices.txt", "a </script>", "notices.txt"},
		"picture beside":          {"index.html", policyLine + `<img src="icon.png"><iframe data-src="frame.html"></iframe>`, "icon.png"},
		"script not of the site":  {"index.html", policyLine + `<script src="gone.js"></script><iframe data-src="frame.html"></iframe>`, "gone.js"},
		"no frame":                {"index.html", policyLine, "frame"},
		"no policy":               {"index.html", `<iframe data-src="frame.html"></iframe>`, "policy"},
	} {
		s := small()
		s[c.file] = []byte(c.text)
		if _, err := s.single(); err == nil || !strings.Contains(err.Error(), c.why) {
			t.Errorf("%s: %v, want a word on %s", name, err, c.why)
		}
	}
}
