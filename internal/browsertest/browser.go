package browsertest

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"sync"
	"time"

	"github.com/chromedp/chromedp"
)

// Browser is a running headless Chromium.
type Browser struct {
	Patience time.Duration // how long anything on a page opened from now on may take

	ctx     context.Context
	cancel  context.CancelFunc
	release context.CancelFunc
	profile string

	mu   sync.Mutex
	tabs []*tab // that no test uses
}

// names are what the program is called on one system or another. Those without
// a window come first: a headless one with all of the browser's own controls
// draws these too, for every page, at half of what the page itself costs.
var names = []string{"chromium-headless-shell", "headless_shell", "chromium", "chromium-browser", "chrome", "google-chrome"}

// Executable finds Chromium, or says how to get it.
func Executable() (string, error) {
	if path := os.Getenv("CHROMIUM"); path != "" {
		return exec.LookPath(path)
	}
	for _, name := range names {
		if path, err := exec.LookPath(name); err == nil {
			return path, nil
		}
	}
	return "", errors.New("no Chromium, which the browser tests need: " + Install)
}

// Install says how to get Chromium.
const Install = "install it (on Debian and Ubuntu: sudo apt-get update && sudo apt-get install -y chromium), or name its program in the environment variable CHROMIUM"

// Start starts Chromium with a profile of its own. It draws WebGL by software,
// so that a machine without a graphics card will do, and reaches no host but
// this one. More flags may be given.
func Start(ctx context.Context, flags ...chromedp.ExecAllocatorOption) (*Browser, error) {
	path, err := Executable()
	if err != nil {
		return nil, err
	}
	profile, err := os.MkdirTemp("", "steelyard-browser-")
	if err != nil {
		return nil, err
	}
	b := &Browser{Patience: patience, profile: profile}
	ctx, b.release = chromedp.NewExecAllocator(ctx, append([]chromedp.ExecAllocatorOption{
		chromedp.ExecPath(path),
		chromedp.UserDataDir(profile),
		chromedp.NoFirstRun,
		chromedp.NoDefaultBrowserCheck,
		chromedp.Flag("headless", "new"),
		chromedp.Flag("no-sandbox", true), // it is refused to root, as which CI runs
		chromedp.Flag("use-gl", "angle"),
		chromedp.Flag("use-angle", "swiftshader"),
		chromedp.Flag("enable-unsafe-swiftshader", true),
		chromedp.Flag("disable-dev-shm-usage", true),
		chromedp.Flag("disable-background-networking", true),
		chromedp.Flag("disable-component-update", true),
		chromedp.Flag("disable-sync", true),
		chromedp.Flag("disable-extensions", true),
		chromedp.Flag("disable-default-apps", true),
		chromedp.Flag("disable-features", "Translate,OptimizationHints,MediaRouter,BackForwardCache"),
		chromedp.Flag("disable-background-timer-throttling", true),
		chromedp.Flag("disable-backgrounding-occluded-windows", true),
		chromedp.Flag("disable-renderer-backgrounding", true),
		chromedp.Flag("disable-ipc-flooding-protection", true),
		chromedp.Flag("force-color-profile", "srgb"),
		chromedp.Flag("hide-scrollbars", true),
		chromedp.Flag("host-resolver-rules", "MAP * ~NOTFOUND, EXCLUDE 127.0.0.1"),
		chromedp.WSURLReadTimeout(60 * time.Second),
	}, flags...)...)
	b.ctx, b.cancel = chromedp.NewContext(ctx)
	if err := chromedp.Do(b.ctx); err != nil {
		b.Close()
		return nil, fmt.Errorf("%s does not start: %w", path, err)
	}
	return b, nil
}

// Close ends the browser and removes its profile.
func (b *Browser) Close() {
	chromedp.Cancel(b.ctx) //nolint:errcheck // it is going away
	b.cancel()
	b.release()
	os.RemoveAll(b.profile)
}
