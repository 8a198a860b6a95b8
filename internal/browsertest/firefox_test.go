package browsertest

import (
	"context"
	"encoding/base64"
	"errors"
	"fmt"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/coder/websocket"
	"github.com/goccy/go-json"
)

// firefox is a window of Firefox, led by WebDriver BiDi
// (https://www.w3.org/TR/webdriver-bidi/).
type firefox struct {
	conn    *websocket.Conn
	home    string
	id      int
	context string // the window
	wrong   []string
}

// firefoxProfile is what sets the profile of a test apart from a user's: it
// saves without asking, reaches no host but this one, draws WebGL by software.
const firefoxProfile = `
user_pref("browser.download.folderList", 2);
user_pref("browser.download.dir", %q);
user_pref("browser.download.useDownloadDir", true);
user_pref("browser.download.alwaysOpenPanel", false);
user_pref("browser.shell.checkDefaultBrowser", false);
user_pref("browser.startup.page", 0);
user_pref("browser.startup.homepage", "about:blank");
user_pref("datareporting.policy.dataSubmissionEnabled", false);
user_pref("network.proxy.type", 1);
user_pref("network.proxy.http", "127.0.0.1");
user_pref("network.proxy.http_port", 9);
user_pref("network.proxy.ssl", "127.0.0.1");
user_pref("network.proxy.ssl_port", 9);
user_pref("network.proxy.no_proxies_on", "127.0.0.1");
user_pref("ui.prefersReducedMotion", 1);
user_pref("ui.systemUsesDarkTheme", 0);
user_pref("intl.accept_languages", "en");
user_pref("webgl.force-enabled", true);
`

// startFirefox starts a Firefox that ends with the test.
func startFirefox(t *testing.T) engine {
	t.Helper()
	program := os.Getenv("FIREFOX")
	for _, name := range []string{"firefox-esr", "firefox"} {
		if program == "" {
			program, _ = exec.LookPath(name)
		}
	}
	if program == "" {
		t.Fatal("no Firefox, in which the main job is tested too: install it (on Debian: sudo apt-get install -y firefox-esr), or name its program in the environment variable FIREFOX")
	}
	home := t.TempDir()
	e := &firefox{home: home}
	saved, err := e.downloads()
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(home, "user.js"), fmt.Appendf(nil, firefoxProfile, saved), 0o600); err != nil {
		t.Fatal(err)
	}
	said := start(t, home, append(display(t, home), "MOZ_CRASHREPORTER_DISABLE=1"), program,
		"--no-remote", "--profile", home, "--width", "1280", "--height", "800", "--remote-debugging-port", "0", "about:blank")
	address := says(t, said, "WebDriver BiDi listening on ")
	ctx, cancel := context.WithTimeout(context.Background(), patience)
	defer cancel()
	if e.conn, _, err = websocket.Dial(ctx, address+"/session", nil); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { e.conn.CloseNow() }) //nolint:errcheck // it is going away
	e.conn.SetReadLimit(-1)
	if err := e.prepare(); err != nil {
		t.Fatal(err)
	}
	pictureFailure(t, e)
	return e
}

// prepare begins a session with the one window there is.
func (e *firefox) prepare() error {
	if err := e.call("session.new", map[string]any{"capabilities": map[string]any{}}, nil); err != nil {
		return err
	}
	if err := e.call("session.subscribe", map[string]any{"events": []string{"log.entryAdded", "network.beforeRequestSent"}}, nil); err != nil {
		return err
	}
	var tree struct {
		Contexts []struct {
			Context string `json:"context"`
		} `json:"contexts"`
	}
	if err := e.call("browsingContext.getTree", map[string]any{}, &tree); err != nil {
		return err
	}
	if len(tree.Contexts) == 0 {
		return errors.New("Firefox has no window")
	}
	e.context = tree.Contexts[0].Context
	return e.call("browsingContext.setViewport", map[string]any{"context": e.context, "viewport": map[string]int{"width": Desk.Width, "height": Desk.Height}}, nil)
}

// call gives one command and reads until it is answered; what Firefox tells in
// between is noted.
func (e *firefox) call(method string, params map[string]any, answer any) error {
	ctx, cancel := context.WithTimeout(context.Background(), patience)
	defer cancel()
	e.id++
	command, err := json.Marshal(map[string]any{"id": e.id, "method": method, "params": params})
	if err != nil {
		return err
	}
	if err := e.conn.Write(ctx, websocket.MessageText, command); err != nil {
		return fmt.Errorf("%s: %w", method, err)
	}
	for {
		_, text, err := e.conn.Read(ctx)
		if err != nil {
			return fmt.Errorf("%s: %w", method, err)
		}
		var m struct {
			ID      int             `json:"id"`
			Type    string          `json:"type"`
			Method  string          `json:"method"`
			Params  json.RawMessage `json:"params"`
			Result  json.RawMessage `json:"result"`
			Error   string          `json:"error"`
			Message string          `json:"message"`
		}
		switch err := json.Unmarshal(text, &m); {
		case err != nil:
			return fmt.Errorf("%s: %w in %.200s", method, err, text)
		case m.Type == "event":
			e.hear(m.Method, m.Params)
		case m.ID != e.id:
		case m.Type == "error":
			return fmt.Errorf("%s: %s: %s", method, m.Error, m.Message)
		case answer == nil:
			return nil
		default:
			return json.Unmarshal(m.Result, answer)
		}
	}
}

// hear notes what goes wrong on the page.
func (e *firefox) hear(event string, params []byte) {
	var told struct {
		Level   string `json:"level"`
		Text    string `json:"text"`
		Request struct {
			URL string `json:"url"`
		} `json:"request"`
	}
	if err := json.Unmarshal(params, &told); err != nil {
		e.wrong = append(e.wrong, fmt.Sprintf("%s: %v", event, err))
		return
	}
	if event == "log.entryAdded" {
		if told.Level == "error" {
			e.wrong = append(e.wrong, "console: "+told.Text)
		}
		return
	}
	u, err := url.Parse(told.Request.URL)
	if err != nil || strings.HasPrefix(u.Scheme, "http") && u.Hostname() != "127.0.0.1" {
		e.wrong = append(e.wrong, "request that leaves this machine: "+told.Request.URL)
	}
}

func (e *firefox) wrongs() []string {
	w := e.wrong
	e.wrong = nil
	return w
}

func (e *firefox) open(address string) error {
	return e.call("browsingContext.navigate", map[string]any{"context": e.context, "url": address, "wait": "complete"}, nil)
}

func (e *firefox) reload() error {
	return e.call("browsingContext.reload", map[string]any{"context": e.context, "wait": "complete"}, nil)
}

// evaluated is the answer to an expression: text, or an element.
type evaluated struct {
	Type   string `json:"type"`
	Result struct {
		Value    json.RawMessage `json:"value"`
		SharedID string          `json:"sharedId"`
	} `json:"result"`
	ExceptionDetails struct {
		Text string `json:"text"`
	} `json:"exceptionDetails"`
}

func (e *firefox) evaluate(expression string) (v evaluated, err error) {
	err = e.call("script.evaluate", map[string]any{"expression": expression, "target": map[string]string{"context": e.context}, "awaitPromise": true}, &v)
	if err == nil && v.Type == "exception" {
		err = errors.New(v.ExceptionDetails.Text)
	}
	return v, err
}

func (e *firefox) eval(expression string) ([]byte, error) {
	v, err := e.evaluate(asText(expression))
	if err != nil {
		return nil, err
	}
	var text string
	err = json.Unmarshal(v.Result.Value, &text)
	return []byte(text), err
}

func (e *firefox) act(sources []inputSource) error {
	return e.call("input.performActions", map[string]any{"context": e.context, "actions": sources}, nil)
}

func (e *firefox) hover(x, y float64) error { return e.act(mouse(moveAction(x, y))) }

func (e *firefox) drag(x0, y0, x1, y1 float64) error { return e.act(dragActions(x0, y0, x1, y1)) }

func (e *firefox) chord(keys ...string) error { return e.act(chordActions(keys)) }

func (e *firefox) types(text string) error { return e.act(typeActions(text)) }

func (e *firefox) give(input, path string) error {
	v, err := e.evaluate(input)
	if err != nil {
		return err
	}
	return e.call("input.setFiles", map[string]any{"context": e.context, "element": map[string]string{"sharedId": v.Result.SharedID}, "files": []string{path}}, nil)
}

func (e *firefox) downloads() (string, error) {
	dir := filepath.Join(e.home, "saved")
	return dir, os.MkdirAll(dir, 0o700)
}

func (e *firefox) picture() ([]byte, error) {
	var shot struct {
		Data string `json:"data"`
	}
	if err := e.call("browsingContext.captureScreenshot", map[string]any{"context": e.context}, &shot); err != nil {
		return nil, err
	}
	return base64.StdEncoding.DecodeString(shot.Data)
}
