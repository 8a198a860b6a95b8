package browsertest

import (
	"bytes"
	"context"
	"encoding/base64"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"github.com/goccy/go-json"
)

// webkit is a window of WebKitGTK on a display of its own, led by WebDriver
// (https://www.w3.org/TR/webdriver2/).
type webkit struct {
	session string // address of the session's commands
	home    string
}

// startWebKit starts a WebKit, with its driver and display, that ends with the
// test.
func startWebKit(t *testing.T) engine {
	t.Helper()
	const program = "WebKitWebDriver"
	if _, err := exec.LookPath(program); err != nil {
		t.Fatal("no " + program + ", but the main job is tested in WebKit too: install it (on Debian: sudo apt-get install -y webkit2gtk-driver)")
	}
	home := t.TempDir()
	e := &webkit{home: home}
	saved, err := e.downloads()
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(home, "user-dirs.dirs"), fmt.Appendf(nil, "XDG_DOWNLOAD_DIR=%q\n", saved), 0o600); err != nil {
		t.Fatal(err)
	}
	port, err := freePort()
	if err != nil {
		t.Fatal(err)
	}
	// It must reach no host but this one.
	start(t, home, append(display(t, home), "http_proxy=http://127.0.0.1:9", "https_proxy=http://127.0.0.1:9", "no_proxy=127.0.0.1"), program, fmt.Sprintf("--port=%d", port))
	driver := fmt.Sprintf("http://127.0.0.1:%d", port)
	for deadline := time.Now().Add(patience); ; time.Sleep(20 * time.Millisecond) {
		if err = request("GET", driver+"/status", nil, nil); err == nil {
			break
		}
		if time.Now().After(deadline) {
			t.Fatalf("WebKitWebDriver does not answer: %v", err)
		}
	}
	var begun struct {
		SessionID string `json:"sessionId"`
	}
	if err := request("POST", driver+"/session", map[string]any{"capabilities": map[string]any{}}, &begun); err != nil {
		t.Fatal(err)
	}
	e.session = driver + "/session/" + begun.SessionID
	t.Cleanup(func() { request("DELETE", e.session, nil, nil) }) //nolint:errcheck // it is killed in any case
	if err := e.fit(); err != nil {
		t.Fatal(err)
	}
	pictureFailure(t, e)
	return e
}

// freePort finds a port of loopback that nobody listens at.
func freePort() (int, error) {
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		return 0, err
	}
	defer l.Close()
	return l.Addr().(*net.TCPAddr).Port, nil
}

// request gives one command of WebDriver.
func request(method, address string, params, answer any) error {
	ctx, cancel := context.WithTimeout(context.Background(), patience)
	defer cancel()
	var body io.Reader
	if method == "POST" {
		if params == nil {
			params = map[string]any{}
		}
		text, err := json.Marshal(params)
		if err != nil {
			return err
		}
		body = bytes.NewReader(text)
	}
	r, err := http.NewRequestWithContext(ctx, method, address, body)
	if err != nil {
		return err
	}
	resp, err := http.DefaultClient.Do(r)
	if err != nil {
		return err
	}
	defer resp.Body.Close()
	text, err := io.ReadAll(resp.Body)
	if err != nil {
		return err
	}
	var told struct {
		Value json.RawMessage `json:"value"`
	}
	if err := json.Unmarshal(text, &told); err != nil || resp.StatusCode != http.StatusOK {
		return fmt.Errorf("%s %s: %s: %.500s", method, address, resp.Status, text)
	}
	if answer == nil {
		return nil
	}
	return json.Unmarshal(told.Value, answer)
}

// fit makes the window as large as the page of a desk.
func (e *webkit) fit() error {
	if err := request("POST", e.session+"/timeouts", map[string]int64{"script": patience.Milliseconds(), "pageLoad": patience.Milliseconds()}, nil); err != nil {
		return err
	}
	// A window is larger than the page in it, and does not take its size at once.
	width, height := Desk.Width, Desk.Height
	for deadline := time.Now().Add(patience); ; time.Sleep(100 * time.Millisecond) {
		if err := request("POST", e.session+"/window/rect", map[string]int{"x": 0, "y": 0, "width": width, "height": height}, nil); err != nil {
			return err
		}
		time.Sleep(100 * time.Millisecond)
		text, err := e.eval("[innerWidth, innerHeight, outerWidth, outerHeight]")
		if err != nil {
			return err
		}
		var is [4]int
		if err := json.Unmarshal(text, &is); err != nil {
			return err
		}
		switch {
		case is[0] == Desk.Width && is[1] == Desk.Height:
			return nil
		case time.Now().After(deadline):
			return fmt.Errorf("the page in WebKit's window is %d by %d, however large the window", is[0], is[1])
		}
		width, height = Desk.Width+is[2]-is[0], Desk.Height+is[3]-is[1]
	}
}

// watchErrors has the page keep what goes wrong on it from now on, since
// WebDriver does not tell of it.
const watchErrors = `(() => {
	const w = window.steelyardWrongs = [];
	for (const at of [window, ...Array.from(frames)]) {
		at.addEventListener('error', (e) => w.push('exception: ' + e.message));
		at.addEventListener('unhandledrejection', (e) => w.push('rejection: ' + e.reason));
		const say = at.console.error;
		at.console.error = (...said) => { w.push('console: ' + said.join(' ')); say.apply(at.console, said); };
	}
})()`

func (e *webkit) watch() error {
	_, err := e.eval(watchErrors)
	return err
}

func (e *webkit) wrongs() []string {
	const ask = `((w) => { const told = w.splice(0); const out = [window, ...Array.from(frames)].flatMap((f) => f.performance.getEntriesByType('resource')).map((r) => new URL(r.name)).filter((u) => /^http/.test(u.protocol) && u.hostname !== '127.0.0.1'); return [...told, ...out.map((u) => 'request that leaves this machine: ' + u)] })(window.steelyardWrongs ?? [])`
	text, err := e.eval(ask)
	if err != nil {
		return []string{err.Error()}
	}
	var told []string
	if err := json.Unmarshal(text, &told); err != nil {
		return []string{err.Error()}
	}
	return told
}

func (e *webkit) open(address string) error {
	if err := request("POST", e.session+"/url", map[string]string{"url": address}, nil); err != nil {
		return err
	}
	return e.watch()
}

func (e *webkit) reload() error {
	if err := request("POST", e.session+"/refresh", nil, nil); err != nil {
		return err
	}
	return e.watch()
}

func (e *webkit) eval(expression string) ([]byte, error) {
	script := "const done = arguments[arguments.length - 1]; " + asText(expression) + ".then((text) => done({ text }), (e) => done({ wrong: String(e) }))"
	var said struct {
		Text  string `json:"text"`
		Wrong string `json:"wrong"`
	}
	if err := request("POST", e.session+"/execute/async", map[string]any{"script": script, "args": []any{}}, &said); err != nil {
		return nil, err
	}
	if said.Wrong != "" {
		return nil, fmt.Errorf("%s in %.200s", said.Wrong, expression)
	}
	return []byte(said.Text), nil
}

func (e *webkit) act(sources []inputSource) error {
	return request("POST", e.session+"/actions", map[string]any{"actions": sources}, nil)
}

func (e *webkit) hover(x, y float64) error { return e.act(mouse(moveAction(x, y))) }

func (e *webkit) drag(x0, y0, x1, y1 float64) error { return e.act(dragActions(x0, y0, x1, y1)) }

func (e *webkit) chord(keys ...string) error { return e.act(chordActions(keys)) }

func (e *webkit) types(text string) error { return e.act(typeActions(text)) }

func (e *webkit) give(input, path string) error {
	var element map[string]string
	if err := request("POST", e.session+"/execute/sync", map[string]any{"script": "return " + input, "args": []any{}}, &element); err != nil {
		return err
	}
	for _, id := range element { // under the key that WebDriver gives elements
		return request("POST", e.session+"/element/"+id+"/value", map[string]string{"text": path}, nil)
	}
	return fmt.Errorf("%s is no element", input)
}

func (e *webkit) downloads() (string, error) {
	dir := filepath.Join(e.home, "saved")
	return dir, os.MkdirAll(dir, 0o700)
}

func (e *webkit) picture() ([]byte, error) {
	var data string
	if err := request("GET", e.session+"/screenshot", nil, &data); err != nil {
		return nil, err
	}
	return base64.StdEncoding.DecodeString(data)
}
