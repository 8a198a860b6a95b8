package browsertest

import (
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// engine is a window of a browser as the main job wants it. Places are CSS px
// of the window, expressions are JavaScript in the page.
type engine interface {
	// open goes to an address and waits until it is loaded.
	open(address string) error
	reload() error
	// eval evaluates an expression, waits when it is a promise, and returns its
	// value as JSON.
	eval(expression string) ([]byte, error)
	// hover moves the pointer.
	hover(x, y float64) error
	// drag presses the pointer's button at one place and releases it at another;
	// at the same place, it clicks.
	drag(x0, y0, x1, y1 float64) error
	// chord presses keys one after the other and releases them the other way
	// round. A key is a letter or one of the names below.
	chord(keys ...string) error
	// types types text, in one go: a pause would make two edits of it.
	types(text string) error
	// give puts a file into the file input that an expression tells.
	give(input, path string) error
	// downloads is the folder into which the window saves from now on.
	downloads() (string, error)
	picture() (png []byte, err error)
	// wrongs is what went wrong on the page since it was asked last.
	wrongs() []string
}

// The keys of a chord that are no letters, as WebDriver writes them.
const (
	keyEnter     = "\ue007"
	keyEscape    = "\ue00c"
	keyShift     = "\ue008"
	keyControl   = "\ue009"
	keyArrowLeft = "\ue012"
	keyArrowUp   = "\ue013"
)

// dragSteps is in how many moves a pointer gets from one end of a drag to the other.
const dragSteps = 8

// A source of input, and an action of it, as WebDriver and WebDriver BiDi write
// them both.
type (
	inputSource struct {
		Type       string            `json:"type"`
		ID         string            `json:"id"`
		Parameters map[string]string `json:"parameters,omitempty"`
		Actions    []inputAction     `json:"actions"`
	}
	inputAction struct {
		Type     string `json:"type"`
		Value    string `json:"value,omitempty"`
		Button   *int   `json:"button,omitempty"`
		X        *int   `json:"x,omitempty"`
		Y        *int   `json:"y,omitempty"`
		Duration *int   `json:"duration,omitempty"`
	}
)

// mouse is a pointer that does these things.
func mouse(actions ...inputAction) []inputSource {
	return []inputSource{{Type: "pointer", ID: "mouse", Parameters: map[string]string{"pointerType": "mouse"}, Actions: actions}}
}

// moveAction moves the pointer at once.
func moveAction(x, y float64) inputAction {
	px, py, at := int(math.Round(x)), int(math.Round(y)), 0
	return inputAction{Type: "pointerMove", X: &px, Y: &py, Duration: &at}
}

// dragActions writes a drag, which is a click when it leads nowhere.
func dragActions(x0, y0, x1, y1 float64) []inputSource {
	left, pause := 0, 10 // ms, for each move to be one of its own
	actions := []inputAction{moveAction(x0, y0), {Type: "pointerDown", Button: &left}}
	if x0 != x1 || y0 != y1 {
		for i := 1; i <= dragSteps; i++ {
			f := float64(i) / dragSteps
			actions = append(actions, moveAction(x0+(x1-x0)*f, y0+(y1-y0)*f), inputAction{Type: "pause", Duration: &pause})
		}
	}
	return mouse(append(actions, inputAction{Type: "pointerUp", Button: &left})...)
}

// chordActions writes keys pressed together.
func chordActions(keys []string) []inputSource {
	var actions []inputAction
	for _, k := range keys {
		actions = append(actions, inputAction{Type: "keyDown", Value: k})
	}
	for i := len(keys) - 1; i >= 0; i-- {
		actions = append(actions, inputAction{Type: "keyUp", Value: keys[i]})
	}
	return []inputSource{{Type: "key", ID: "keyboard", Actions: actions}}
}

// typeActions writes the keys of a text.
func typeActions(text string) []inputSource {
	var actions []inputAction
	for _, r := range text {
		actions = append(actions, chordActions([]string{string(r)})[0].Actions...)
	}
	return []inputSource{{Type: "key", ID: "keyboard", Actions: actions}}
}

// asText makes an expression one that gives its value as JSON text.
func asText(expression string) string {
	return "(async () => JSON.stringify((await (" + expression + ")) ?? null))()"
}

// start runs a program that ends with the test, however that goes, and with the
// tests' own process. What the program says goes to a file in the folder home,
// which it also takes for the user's.
func start(t *testing.T, home string, environ []string, name string, args ...string) (said func() string) {
	t.Helper()
	out, err := os.Create(filepath.Join(home, filepath.Base(name)+".log"))
	if err != nil {
		t.Fatal(err)
	}
	defer out.Close()
	c := exec.Command(name, args...)
	c.Stdout, c.Stderr = out, out
	c.Dir = home
	c.Env = append(append(os.Environ(), "HOME="+home, "XDG_CONFIG_HOME="+home, "XDG_CACHE_HOME="+home, "XDG_DATA_HOME="+home, "XDG_RUNTIME_DIR="+home), environ...)
	group(c)
	if err := c.Start(); err != nil {
		t.Fatalf("%s does not start: %v", name, err)
	}
	t.Cleanup(func() {
		end(c)
		c.Wait() //nolint:errcheck // it was killed
	})
	return func() string {
		text, err := os.ReadFile(out.Name())
		if err != nil {
			t.Fatal(err)
		}
		return string(text)
	}
}

// says waits until a program has said a word, and returns what follows it on
// its line.
func says(t *testing.T, said func() string, word string) string {
	t.Helper()
	for deadline := time.Now().Add(patience); ; time.Sleep(20 * time.Millisecond) {
		if _, rest, found := strings.Cut(said(), word); found {
			if line, _, whole := strings.Cut(rest, "\n"); whole {
				return strings.TrimSpace(line)
			}
		}
		if time.Now().After(deadline) {
			t.Fatalf("it did not say %q, but %q", word, said())
		}
	}
}

// display starts a display without a screen, drawn by software, and returns the
// environment of a program that is to use it.
func display(t *testing.T, home string) (environ []string) {
	t.Helper()
	const program = "Xvfb"
	if _, err := exec.LookPath(program); err != nil {
		t.Fatal("no " + program + ", the display of the browsers in which the main job is tested: install it (on Debian: sudo apt-get install -y xvfb)")
	}
	// It looks for a number that is free, and tells it.
	number := says(t, start(t, home, nil, program, "-displayfd", "1", "-screen", "0", fmt.Sprintf("%dx%dx24", Desk.Width+100, Desk.Height+300), "-nolisten", "tcp"), "")
	return []string{"DISPLAY=:" + number, "GDK_BACKEND=x11", "LIBGL_ALWAYS_SOFTWARE=1", "NO_AT_BRIDGE=1", "GIO_USE_VFS=local", "GSETTINGS_BACKEND=memory", "LC_ALL=C.UTF-8"}
}

// pictureFailure has a picture kept of what the window of a failed test showed.
func pictureFailure(t *testing.T, e engine) {
	t.Cleanup(func() {
		if !t.Failed() {
			return
		}
		if png, err := e.picture(); err == nil {
			keepPicture(t, png)
		}
	})
}
