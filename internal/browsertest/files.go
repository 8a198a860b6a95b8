package browsertest

import (
	"os"
	"path/filepath"
	"strings"

	chromium "github.com/chromedp/cdproto/browser"
	"github.com/chromedp/cdproto/dom"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
)

// Saves does something that saves a file, and returns the file's name and what
// is in it.
func (p *Page) Saves(act func()) (name, content string) {
	p.tb.Helper()
	dir := p.tb.TempDir()
	yes := true
	Call(p, chromium.SetDownloadBehavior, chromium.SetDownloadBehaviorParams{
		Behavior:         chromium.SetDownloadBehaviorBehaviorAllow,
		BrowserContextID: chromedp.FromContext(p.ctx).BrowserContextID,
		DownloadPath:     dir,
		EventsEnabled:    &yes,
	})
	act()
	p.until("a file is saved", func() bool {
		entries, err := os.ReadDir(dir)
		if err != nil || len(entries) != 1 || strings.HasSuffix(entries[0].Name(), ".crdownload") {
			return false
		}
		data, err := os.ReadFile(filepath.Join(dir, entries[0].Name()))
		name, content = entries[0].Name(), string(data)
		return err == nil && content != ""
	})
	return name, content
}

// Chooses does something that asks for a file, and gives it one.
func (p *Page) Chooses(name, content string, act func()) {
	p.tb.Helper()
	path := filepath.Join(p.tb.TempDir(), name)
	if err := os.WriteFile(path, []byte(content), 0o600); err != nil {
		p.tb.Fatal(err)
	}
	Call(p, page.SetInterceptFileChooserDialog, page.SetInterceptFileChooserDialogParams{Enabled: true})
	act()
	p.until("a file is asked for", func() bool {
		p.mu.Lock()
		defer p.mu.Unlock()
		return p.chooser != 0
	})
	p.mu.Lock()
	node := p.chooser
	p.chooser = 0
	p.mu.Unlock()
	Call(p, dom.SetFileInputFiles, dom.SetFileInputFilesParams{Files: []string{path}, BackendNodeID: node})
}
