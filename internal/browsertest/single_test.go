package browsertest

import (
	"context"
	"net/url"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"testing"

	"github.com/chromedp/chromedp/kb"

	"steelyard/internal/scene"
	"steelyard/internal/site/static"
)

// openSingle opens the one file as a double click does: from the file system,
// alone in its folder.
func openSingle(t *testing.T, look Look) *Page {
	t.Helper()
	p, address := singleToBe(t, look)
	p.Navigate(address)
	p.started()
	return p
}

// singleText is the one file.
var singleText = sync.OnceValues(func() ([]byte, error) {
	root, err := static.Root(".")
	if err != nil {
		return nil, err
	}
	site, err := os.MkdirTemp("", "steelyard-single-")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(site)
	if _, err := static.WriteSingle(context.Background(), root, site); err != nil {
		return nil, err
	}
	return os.ReadFile(filepath.Join(site, static.SingleName))
})

// singleToBe opens an empty tab that is to go to the one file, and tells where
// that is.
func singleToBe(t *testing.T, look Look) (p *Page, address string) {
	t.Helper()
	text, err := singleText()
	if err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "My steelyard, #1.html")
	if err := os.WriteFile(file, text, 0o600); err != nil {
		t.Fatal(err)
	}
	p = browser.Open(t, "about:blank", look)
	p.file = file
	p.Preload(watchPolicy)
	return p, (&url.URL{Scheme: "file", Path: file}).String()
}

func TestOneFileDoesTheMainJob(t *testing.T) {
	t.Parallel()
	p := openSingle(t, Desk)
	if at := Eval[string](p, "location.protocol"); at != "file:" {
		t.Fatalf("the page is at %s", at)
	}
	total := p.mainJob()
	if got := p.forbidden(); len(got) > 0 {
		t.Errorf("the policy forbade %q", got)
	}
	p.The("button", "Side").Click()
	p.Eval("scrollTo(0, 0)")
	p.until("the picture is there", func() bool { return count(picture(t, p.Screenshot()), scene.Light.Of(scene.Tyre)) > 500 })

	// It says how it stands, and the licences are inside.
	p.standing("Works offline: one file")
	p.command("About").Click()
	p.Eval("document.querySelector('dialog.about summary').click()")
	p.Until("the licences are there", "document.querySelector('dialog.about pre')?.innerText.includes('The Go Authors')")
	if said := Eval[string](p, "document.querySelector('dialog.about').innerText"); !strings.Contains(said, "needs no network") || strings.Contains(said, "notices.txt") {
		t.Errorf("About says %q", said)
	}
	p.Key(kb.Escape)

	// Reloaded, the file has the work.
	p.Reload()
	p.started()
	if now := p.total(); now != total {
		t.Errorf("after a reload the total is %v kg, before %v", now, total)
	}

	// The program inside starts again after the graphics are lost.
	p.Eval(inFrame + ".old = true")
	p.Eval(inFrame + ".document.querySelector('canvas').getContext('webgl2').getExtension('WEBGL_lose_context').loseContext()")
	p.Until("the frame has loaded again", "!"+inFrame+".old && "+inFrame+".steelyardFrame?.state == 'painted'")
	p.until("the figures are there", func() bool { return p.total() == total })
}

// Where the browser refuses to keep anything, the file says so and saves.
func TestOneFileSaysWhenNothingIsKept(t *testing.T) {
	t.Parallel()
	p, address := singleToBe(t, Phone)
	p.Preload("Object.defineProperty(window, 'indexedDB', { get() { throw new DOMException('storage is off', 'SecurityError') } }); Object.defineProperty(window, 'localStorage', { get() { throw new DOMException('storage is off', 'SecurityError') } })")
	p.Navigate(address)
	p.Until("it says that nothing is kept", "[...document.querySelectorAll('sy-notices, sy-notes')].map(e => e.innerText).join(' ').includes('storage is off')")
	p.Until("the picture is painted", inFrame+".steelyardFrame?.state == 'painted'")
	p.mass(gearbox).Fill("3210")
	p.until("it is weighed", func() bool { return strings.Contains(p.mass(gearbox).Value(), "3210") })
	if _, d := p.saved(); d.Build("gearbox").Part("gearbox").Mass != 3210 {
		t.Errorf("saved with %v g", d.Build("gearbox").Part("gearbox").Mass)
	}
}

// The figure is the project's own promise; the file's other contents are
// checked by opening it above.
func TestOneFileIsSmallAndWhole(t *testing.T) {
	t.Parallel()
	root, err := static.Root(".")
	if err != nil {
		t.Fatal(err)
	}
	var texts [2]string
	for i := range texts {
		dir := t.TempDir()
		sizes, err := static.WriteSingle(context.Background(), root, dir)
		if err != nil {
			t.Fatal(err)
		}
		text, err := os.ReadFile(filepath.Join(dir, static.SingleName))
		if err != nil {
			t.Fatal(err)
		}
		if int64(len(text)) != sizes.Single || sizes.Single >= 8_000_000 {
			t.Errorf("the file has %d bytes (said to be %d), want less than 8 MB", len(text), sizes.Single)
		}
		texts[i] = string(text)
	}
	if texts[0] != texts[1] {
		t.Error("written twice, the file differs")
	}
	for _, m := range regexp.MustCompile(`<(?:script|link|iframe|img)\b[^>]*?\b(?:src|href)="([^"]{0,60})`).FindAllStringSubmatch(texts[0], -1) {
		if !strings.HasPrefix(m[1], "data:") {
			t.Errorf("the file takes %s from elsewhere", m[1])
		}
	}
}
