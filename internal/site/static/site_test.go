package static

import (
	"bytes"
	"compress/gzip"
	"context"
	"io"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func root(t *testing.T) string {
	t.Helper()
	dir, err := Root(".")
	if err != nil {
		t.Fatal(err)
	}
	return dir
}

func TestRoot(t *testing.T) {
	dir := root(t)
	if here, err := filepath.Abs("."); err != nil || filepath.Join(dir, "internal", "site", "static") != here {
		t.Errorf("the project of %s is at %s", here, dir)
	}
	if dir, err := Root(t.TempDir()); err == nil {
		t.Errorf("outside of a checkout it is at %s", dir)
	}
}

// The program carries nothing that it has no use for: each of these would cost
// the reader a tenth of a megabyte and more.
func TestWhatTheProgramIsMadeOf(t *testing.T) {
	out, err := goCommand(context.Background(), root(t), []string{"GOOS=js", "GOARCH=wasm"}, "list", "-deps", "./wasm")
	if err != nil {
		t.Fatal(err)
	}
	packages := strings.Fields(string(out))
	if len(packages) < 100 {
		t.Fatalf("it is made of %d packages", len(packages))
	}
	for _, p := range packages {
		for _, heavy := range []string{
			"gonum.org", "github.com/santhosh-tekuri", "golang.org/x/image", "golang.org/x/text", "net/http", "crypto/tls", "github.com/hajimehoshi/ebiten/v2/text", "github.com/hajimehoshi/ebiten/v2/vector",
		} {
			if strings.HasPrefix(p, heavy) {
				t.Errorf("it is made of %s", p)
			}
		}
	}
}

func TestListenStaysOnThisMachine(t *testing.T) {
	for _, addr := range []string{"127.0.0.1:0", "localhost:0"} {
		ln, err := Listen(addr)
		if err != nil {
			t.Errorf("%s: %v", addr, err)
			continue
		}
		ln.Close()
	}
	for _, addr := range []string{"0.0.0.0:0", ":0", "192.168.1.1:0", "[::]:0", "example.org:80", "127.0.0.1", ""} {
		if ln, err := Listen(addr); err == nil {
			ln.Close()
			t.Errorf("%q is listened on", addr)
		} else if addr != "" && !strings.Contains(err.Error(), "127.0.0.1:") {
			t.Errorf("%q: %v; it does not say what would be right", addr, err)
		}
	}
}

func TestHandler(t *testing.T) {
	dir := t.TempDir()
	files := map[string]string{
		"index.html": "text/html; charset=utf-8", "main.js": "text/javascript; charset=utf-8", "page.css": "text/css; charset=utf-8",
		"steelyard.wasm.gz": "application/gzip", "fonts/go-regular.ttf": "font/ttf", "schema/document.schema.json": "application/json",
	}
	for name := range files {
		path := filepath.Join(dir, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte("content of "+name), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	server := httptest.NewServer(Handler(dir))
	defer server.Close()
	for name, want := range files {
		path := name
		if name == "index.html" {
			path = "" // the folder
		}
		r, err := http.Get(server.URL + "/" + path)
		if err != nil {
			t.Fatal(err)
		}
		body, _ := io.ReadAll(r.Body)
		r.Body.Close()
		if got := r.Header.Get("Content-Type"); got != want || r.StatusCode != http.StatusOK || r.Header.Get("Content-Encoding") != "" {
			t.Errorf("%s: %s, %s, encoded %q; want %s", name, r.Status, got, r.Header.Get("Content-Encoding"), want)
		}
		if string(body) != "content of "+name {
			t.Errorf("%s holds %q", name, body)
		}
	}
	// Text is packed for who takes that, and asks for all of it.
	for path, packed := range map[string]bool{"/": true, "/main.js": true, "/steelyard.wasm.gz": false, "/fonts/go-regular.ttf": false} {
		ask, err := http.NewRequest(http.MethodGet, server.URL+path, nil)
		if err != nil {
			t.Fatal(err)
		}
		ask.Header.Set("Accept-Encoding", "gzip")
		r, err := http.DefaultTransport.RoundTrip(ask)
		if err != nil {
			t.Fatal(err)
		}
		body, err := io.ReadAll(r.Body)
		r.Body.Close()
		if got := r.Header.Get("Content-Encoding") == "gzip"; got != packed || err != nil {
			t.Errorf("%s: packed %t, %v", path, got, err)
		}
		if packed {
			z, err := gzip.NewReader(bytes.NewReader(body))
			if err != nil {
				t.Fatal(err)
			}
			if text, err := io.ReadAll(z); err != nil || !strings.HasPrefix(string(text), "content of ") {
				t.Errorf("%s unpacks to %q, %v", path, text, err)
			}
		}
	}
	r, err := http.Post(server.URL+"/", "text/plain", strings.NewReader("x"))
	if err != nil {
		t.Fatal(err)
	}
	r.Body.Close()
	if r.StatusCode != http.StatusMethodNotAllowed {
		t.Errorf("a POST gives %s", r.Status)
	}
}

// A folder with something in it that is no site is left alone; a site is
// brought up to date, with what no longer belongs to it removed.
func TestWriteReplacesSitesOnly(t *testing.T) {
	dir := t.TempDir()
	mine := filepath.Join(dir, "photos")
	if err := os.Mkdir(mine, 0o755); err != nil {
		t.Fatal(err)
	}
	photo := filepath.Join(mine, "bike.jpg")
	if err := os.WriteFile(photo, []byte("a photo"), 0o644); err != nil {
		t.Fatal(err)
	}
	s := site{"index.html": []byte("new"), "steelyard.wasm.gz": []byte("program"), "fonts/a.ttf": []byte("font")}
	if _, err := s.write(mine, 1); err == nil {
		t.Error("a folder of photos was written to")
	}
	if _, err := os.Stat(photo); err != nil {
		t.Errorf("the photo is gone: %v", err)
	}

	out := filepath.Join(dir, "dist")
	if _, err := s.write(out, 1); err != nil {
		t.Fatal(err)
	}
	delete(s, "fonts/a.ttf")
	s["index.html"] = []byte("newer")
	sizes, err := s.write(out, 1)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := os.Stat(filepath.Join(out, "fonts", "a.ttf")); !os.IsNotExist(err) {
		t.Errorf("a font that no longer belongs there: %v", err)
	}
	if got, _ := os.ReadFile(filepath.Join(out, "index.html")); string(got) != "newer" {
		t.Errorf("index.html holds %q", got)
	}
	if sizes.Site != int64(len("newer")+len("program")) {
		t.Errorf("the site has %d bytes", sizes.Site)
	}
}

// Sources that a page links become files of the site, and links get the hash of
// what they lead to.
func TestDocumentsLinkWhatIsWritten(t *testing.T) {
	web := t.TempDir()
	for name, text := range map[string]string{
		"inner.html": `<script type="module" src="inner.ts"></script>`,
		"outer.html": `<link rel="stylesheet" href="look/a.css"><link rel="icon" href="data:,"><a href="#here">x</a><iframe src="inner.html"></iframe>`,
		"inner.ts":   `import { n } from "./more.ts"; const unused: number = 1; console.log(n)`,
		"more.ts":    `export const n: number = 42`,
		"look/a.css": `@import "./b.css"; @font-face { font-family: Go; src: url("fonts/go-regular.ttf") }`,
		"look/b.css": `p { color: red }`,
	} {
		path := filepath.Join(web, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	s := site{}
	if err := s.addDocuments(web, "inner.html", "outer.html"); err != nil {
		t.Fatal(err)
	}
	if js := string(s["inner.js"]); !strings.Contains(js, "42") || strings.Contains(js, "import") {
		t.Errorf("inner.js is %q", js)
	}
	if css := string(s["look/a.css"]); !strings.Contains(css, "red") || !strings.Contains(css, "fonts/go-regular.ttf") {
		t.Errorf("look/a.css is %q", css)
	}
	outer := string(s["outer.html"])
	for _, want := range []string{`href="look/a.css?v=`, `href="data:,"`, `href="#here"`, `src="inner.html?v=`} {
		if !strings.Contains(outer, want) {
			t.Errorf("no %s in %s", want, outer)
		}
	}
	// A change within changes every link that leads to it.
	if err := os.WriteFile(filepath.Join(web, "more.ts"), []byte(`export const n = 43`), 0o644); err != nil {
		t.Fatal(err)
	}
	again := site{}
	if err := again.addDocuments(web, "inner.html", "outer.html"); err != nil {
		t.Fatal(err)
	}
	if string(again["outer.html"]) == outer {
		t.Error("a changed script left the links to it as they were")
	}
	// What is missing is named.
	if err := os.Remove(filepath.Join(web, "look", "b.css")); err != nil {
		t.Fatal(err)
	}
	if err := (site{}).addDocuments(web, "inner.html", "outer.html"); err == nil || !strings.Contains(err.Error(), "b.css") {
		t.Errorf("without b.css: %v", err)
	}
}
