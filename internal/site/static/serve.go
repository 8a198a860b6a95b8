package static

import (
	"compress/gzip"
	"fmt"
	"net"
	"net/http"
	"path"
	"strings"
)

// Listen opens a loopback address and refuses every other: the server is for
// the person at this machine.
func Listen(addr string) (net.Listener, error) {
	host, _, err := net.SplitHostPort(addr)
	if err != nil {
		return nil, fmt.Errorf("address %q: %w; right would be 127.0.0.1:8173", addr, err)
	}
	if ip := net.ParseIP(host); host != "localhost" && (ip == nil || !ip.IsLoopback()) {
		return nil, fmt.Errorf("address %q is not on loopback; right would be 127.0.0.1:8173. To publish the site, copy the folder that build writes to a static host", addr)
	}
	ln, err := net.Listen("tcp", addr)
	if err != nil {
		return nil, fmt.Errorf("%w; name another port, as in -addr 127.0.0.1:8174", err)
	}
	return ln, nil
}

// types are fixed here, since those of the machine differ from one to the next.
var types = map[string]string{
	".html":        "text/html; charset=utf-8",
	".js":          "text/javascript; charset=utf-8",
	".css":         "text/css; charset=utf-8",
	".json":        "application/json",
	".svg":         "image/svg+xml",
	".webmanifest": "application/manifest+json",
	".png":         "image/png",
	".ico":         "image/x-icon",
	".ttf":         "font/ttf",
	".gz":          "application/gzip", // as plain bytes: the frame inflates them, as it must on any static host
	".md":          "text/markdown; charset=utf-8",
	".txt":         "text/plain; charset=utf-8",
}

// packable are the files that are sent gzipped, as static hosts send text.
var packable = map[string]bool{".html": true, ".js": true, ".css": true, ".json": true, ".svg": true, ".webmanifest": true, ".txt": true}

// packing gzips what is written to a response that has something to say.
type packing struct {
	http.ResponseWriter
	zip *gzip.Writer // nil until there is something to pack
}

func (p *packing) WriteHeader(status int) {
	if status == http.StatusOK {
		h := p.Header()
		h.Set("Content-Encoding", "gzip")
		h.Del("Content-Length")
		p.zip = gzip.NewWriter(p.ResponseWriter)
	}
	p.ResponseWriter.WriteHeader(status)
}

func (p *packing) Write(b []byte) (int, error) {
	if p.zip == nil {
		return p.ResponseWriter.Write(b)
	}
	return p.zip.Write(b)
}

func (p *packing) close() {
	if p.zip != nil {
		p.zip.Close() //nolint:errcheck // who asked has gone
	}
}

// Handler serves the site in dir, packed for who takes that.
func Handler(dir string) http.Handler {
	files := http.FileServer(http.Dir(dir))
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.Method != http.MethodGet && r.Method != http.MethodHead {
			w.Header().Set("Allow", "GET, HEAD")
			http.Error(w, "only GET and HEAD", http.StatusMethodNotAllowed)
			return
		}
		h := w.Header()
		if t, ok := types[path.Ext(r.URL.Path)]; ok {
			h.Set("Content-Type", t)
		}
		h.Set("X-Content-Type-Options", "nosniff")
		// The browser asks every time, and is told that nothing changed.
		h.Set("Cache-Control", "no-cache")
		if packable[path.Ext(r.URL.Path)] || strings.HasSuffix(r.URL.Path, "/") {
			h.Set("Vary", "Accept-Encoding")
			if strings.Contains(r.Header.Get("Accept-Encoding"), "gzip") && r.Header.Get("Range") == "" {
				p := &packing{ResponseWriter: w}
				defer p.close()
				w = p
			}
		}
		files.ServeHTTP(w, r)
	})
}
