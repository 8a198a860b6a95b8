package browsertest

import (
	"net"
	"net/http"
	"time"

	"steelyard/internal/site/static"
)

// Server serves a site on loopback.
type Server struct {
	URL    string // of the site's folder, with a slash at its end
	server *http.Server
}

// Serve serves the folder dir under /some/folder/, for a site must work from
// any folder of its host.
func Serve(dir string) (*Server, error) {
	ln, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		return nil, err
	}
	const folder = "/some/folder/"
	mux := http.NewServeMux()
	mux.Handle(folder, http.StripPrefix(folder[:len(folder)-1], static.Handler(dir)))
	// Chromium asks for it when it shows a file that is no page.
	mux.HandleFunc("/favicon.ico", func(w http.ResponseWriter, _ *http.Request) { w.WriteHeader(http.StatusNoContent) })
	s := &Server{
		URL:    "http://" + ln.Addr().String() + folder,
		server: &http.Server{Handler: mux, ReadHeaderTimeout: 10 * time.Second},
	}
	go s.server.Serve(ln) //nolint:errcheck // it ends when Close says so
	return s, nil
}

// Close stops serving.
func (s *Server) Close() { s.server.Close() }
