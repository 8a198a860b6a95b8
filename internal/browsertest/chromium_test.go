package browsertest

import (
	"context"
	"errors"
	"testing"

	chromium "github.com/chromedp/cdproto/browser"
	"github.com/chromedp/cdproto/dom"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// blink is a page of the tests' Chromium as the main job wants it. What cannot
// be done fails the test by itself.
type blink struct{ *Page }

// startChromium opens a fresh tab, with nothing in it yet.
func startChromium(t *testing.T) engine {
	t.Helper()
	return blink{browser.Open(t, "about:blank", Desk)}
}

func (e blink) open(address string) error { e.Navigate(address); return nil }

func (e blink) reload() error { e.Reload(); return nil }

func (e blink) eval(expression string) ([]byte, error) {
	ctx, cancel := context.WithTimeout(e.ctx, e.patience)
	defer cancel()
	text, err := chromedp.Run(ctx, chromedp.Evaluate[string](asText(expression), chromedp.EvalAwaitPromise))
	return []byte(text), err
}

func (e blink) hover(x, y float64) error { e.Hover(x, y); return nil }

func (e blink) drag(x0, y0, x1, y1 float64) error {
	if x0 == x1 && y0 == y1 {
		e.ClickAt(x0, y0)
	} else {
		e.Drag(x0, y0, x1, y1)
	}
	return nil
}

func (e blink) chord(keys ...string) error {
	names := map[string]string{keyEnter: kb.Enter, keyEscape: kb.Escape, keyArrowLeft: kb.ArrowLeft, keyArrowUp: kb.ArrowUp}
	held := map[string]kb.Modifier{keyShift: kb.ModifierShift, keyControl: kb.ModifierCtrl}
	var modifiers []kb.Modifier
	for _, k := range keys {
		if m, is := held[k]; is {
			modifiers = append(modifiers, m)
		} else if name, is := names[k]; is {
			e.Key(name, modifiers...)
		} else {
			e.Key(k, modifiers...)
		}
	}
	return nil
}

func (e blink) types(text string) error { e.typing(text); return nil }

func (e blink) give(input, path string) error {
	object := Call(e.Page, runtime.Evaluate, runtime.EvaluateParams{Expression: input}).Result
	if object.ObjectID == "" {
		return errors.New(input + " is no element")
	}
	Call(e.Page, dom.SetFileInputFiles, dom.SetFileInputFilesParams{Files: []string{path}, ObjectID: object.ObjectID})
	return nil
}

func (e blink) downloads() (string, error) {
	dir := e.tb.TempDir()
	yes := true
	Call(e.Page, chromium.SetDownloadBehavior, chromium.SetDownloadBehaviorParams{
		Behavior:         chromium.SetDownloadBehaviorBehaviorAllow,
		BrowserContextID: chromedp.FromContext(e.ctx).BrowserContextID,
		DownloadPath:     dir,
		EventsEnabled:    &yes,
	})
	return dir, nil
}

func (e blink) picture() ([]byte, error) { return e.Screenshot(), nil }

func (e blink) wrongs() []string { return e.Wrongs() }
