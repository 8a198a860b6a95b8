package browsertest

import (
	"crypto/sha256"
	"encoding/hex"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"steelyard/internal/site/static"
)

// serveSite serves a site of its own, whose server may be stopped and whose
// files may be changed.
func serveSite(t *testing.T) (s *Server, dir string) {
	t.Helper()
	dir = t.TempDir()
	if err := os.CopyFS(dir, os.DirFS(built)); err != nil {
		t.Fatal(err)
	}
	s, err := Serve(dir)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(s.Close)
	return s, dir
}

// standing waits until the masthead says how the page stands without a network.
func (p *Page) standing(words string) {
	p.tb.Helper()
	p.Until("the page says: "+words, "document.querySelector('sy-standing')?.innerText.includes("+quote(words)+")")
}

func TestOfflineDoesTheMainJob(t *testing.T) {
	t.Parallel()
	s, _ := serveSite(t)
	p := browser.Open(t, s.URL+"?from=afar", Desk)
	p.started()
	p.standing("Works offline")
	p.mass(gearbox).Fill("3210")
	p.until("it is weighed", func() bool { return strings.Contains(p.mass(gearbox).Value(), "3210") })
	total := p.total()
	p.kept()
	s.Close()

	p.Preload(watchPolicy)
	p.Reload()
	p.started()
	if now := p.total(); now != total {
		t.Errorf("without the server the total is %v kg, with it %v", now, total)
	}
	p.mainJob()
	p.standing("Works offline")
	if got := p.forbidden(); len(got) > 0 {
		t.Errorf("the policy forbade %q", got)
	}
	mustAllBeUnder(t, p.requests(), s.URL)

	// The address without its file, and with it.
	for _, address := range []string{"", "index.html", "#elsewhere"} {
		p.Navigate(s.URL + address)
		p.started()
	}
	// The frame can be loaded again, and the licences can be read.
	p.Eval(inFrame + ".old = true")
	p.Eval(inFrame + ".document.querySelector('canvas').getContext('webgl2').getExtension('WEBGL_lose_context').loseContext()")
	p.Until("the frame has loaded again", "!"+inFrame+".old && "+inFrame+".steelyardFrame?.state == 'painted'")
	p.command("About").Click()
	p.Eval("document.querySelector('dialog.about summary').click()")
	p.Until("the licences are there", "document.querySelector('dialog.about pre')?.innerText.includes('The Go Authors')")
}

// addition is what the next version's notices end with.
const addition = "\nAnd of one more.\n"

// change makes a new version of the site in dir: one file is another, and, when
// honest, the service worker lists it.
func change(t *testing.T, dir string, honest bool) {
	t.Helper()
	read := func(name string) string {
		data, err := os.ReadFile(filepath.Join(dir, name))
		if err != nil {
			t.Fatal(err)
		}
		return string(data)
	}
	write := func(name, text string) {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	hash := func(text string) string { sum := sha256.Sum256([]byte(text)); return hex.EncodeToString(sum[:]) }
	old := read(static.NoticesName)
	worker := read(static.WorkerName)
	if !strings.Contains(worker, hash(old)) {
		t.Fatal("the service worker does not list the notices")
	}
	write(static.NoticesName, old+addition)
	if honest {
		version := regexp.MustCompile(`"[0-9a-f]{16}"`)
		if n := len(version.FindAllString(worker, -1)); n != 1 {
			t.Fatalf("the service worker has %d versions", n)
		}
		worker = version.ReplaceAllString(worker, `"0123456789abcdef"`)
		write(static.WorkerName, strings.ReplaceAll(worker, hash(old), hash(old+addition)))
	}
}

const (
	lookForNew = "navigator.serviceWorker.getRegistration().then(r => r.update()).then(() => true)"
	readNew    = "fetch('notices.txt').then(r => r.text()).then(t => t.includes('And of one more.'))"
	sets       = "caches.keys().then(k => k.length)"
)

func TestANewVersionWaitsForTheReader(t *testing.T) {
	t.Parallel()
	s, dir := serveSite(t)
	p := browser.Open(t, s.URL, Desk)
	p.started()
	p.standing("Works offline")
	change(t, dir, true)
	Eval[bool](p, lookForNew)
	p.The("button", "New version: load it")
	p.until("the new set is there", func() bool { return Eval[int](p, sets) == 2 })
	if Eval[bool](p, readNew) {
		t.Error("the page is given files of a version that it is not")
	}
	// A reload by itself, with the old window open until it ends, changes nothing.
	p.Reload()
	p.started()
	if Eval[bool](p, readNew) {
		t.Error("the new version came unasked")
	}
	// The last edit comes along, however late it is.
	total := p.total()
	load := p.The("button", "New version: load it")
	p.Eval("window.old = true")
	_, d := p.saved()
	mass := d.Build("gearbox").Part("gearbox").Mass
	p.mass(gearbox).Fill("3000")
	load.Click()
	p.Until("the page has loaded again", "!window.old")
	p.started()
	want := total + (3000-mass)/1000
	p.until("the work is there", func() bool { return math.Abs(p.total()-want) < 0.011 })
	if !Eval[bool](p, readNew) {
		t.Error("the new version did not come")
	}
	p.until("the old set is gone", func() bool { return Eval[int](p, sets) == 1 })
	if n := len(p.All("button", "New version: load it")); n > 0 {
		t.Error("the page still offers the new version")
	}
	// And it is whole.
	s.Close()
	p.Reload()
	p.started()
	if !Eval[bool](p, readNew) {
		t.Error("without the server the old version is back")
	}
}

func TestANewVersionDoesNotLoseUnkeptWork(t *testing.T) {
	t.Parallel()
	s, dir := serveSite(t)
	p := browser.Open(t, s.URL, Desk)
	p.started()
	p.standing("Works offline")
	change(t, dir, true)
	Eval[bool](p, lookForNew)
	load := p.The("button", "New version: load it")
	p.Eval("window.old = true; IDBObjectStore.prototype.put = () => { throw new DOMException('the disk is full', 'QuotaExceededError') }")
	p.mass(gearbox).Fill("3000")
	p.Until("it says that nothing is kept", "[...document.querySelectorAll('sy-notices, sy-notes')].map(e => e.innerText).join(' ').includes('the disk is full')")
	load.Click()
	p.Until("it says why it does not load", "[...document.querySelectorAll('sy-notices, sy-notes')].map(e => e.innerText).join(' ').includes('The new version was not loaded')")
	wait(p, 300)
	if !Eval[bool](p, "window.old === true") {
		t.Error("the page loaded all the same")
	}
	if _, d := p.saved(); d.Build("gearbox").Part("gearbox").Mass != 3000 {
		t.Errorf("saved with %v g", d.Build("gearbox").Part("gearbox").Mass)
	}
}

// While a host is between two versions, no mixture is kept.
func TestAMixtureOfVersionsIsNotKept(t *testing.T) {
	t.Parallel()
	s, dir := serveSite(t)
	change(t, dir, false)
	p := browser.Open(t, s.URL, Phone)
	p.started()
	p.standing("Not ready for offline use")
	p.command("About").Click()
	p.Until("About says so too", "document.querySelector('dialog.about').innerText.includes('has not kept the page')")
}

func TestInstallable(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	type icon struct {
		Src     string `json:"src"`
		Sizes   string `json:"sizes"`
		Purpose string `json:"purpose"`
	}
	m := Eval[struct {
		Name    string `json:"name"`
		Start   string `json:"start_url"`
		Scope   string `json:"scope"`
		Display string `json:"display"`
		Icons   []icon `json:"icons"`
	}](p, "fetch(document.querySelector('link[rel=manifest]').href).then(r => r.json())")
	if m.Name != "Steelyard" || m.Display != "standalone" || m.Start != "./" || m.Scope != "./" {
		t.Errorf("the manifest says %+v", m)
	}
	seen := map[string]bool{}
	for _, i := range m.Icons {
		seen[i.Purpose+" "+i.Sizes] = true
		size := Eval[string](p, "new Promise((yes, no) => { const i = new Image(); i.onload = () => yes(i.naturalWidth + 'x' + i.naturalHeight); i.onerror = () => no(new Error('not a picture')); i.src = new URL("+quote(i.Src)+", document.querySelector('link[rel=manifest]').href) })")
		if i.Sizes != "any" && size != i.Sizes {
			t.Errorf("%s is %s, said to be %s", i.Src, size, i.Sizes)
		}
	}
	for _, want := range []string{"any 192x192", "any 512x512", "maskable 512x512"} {
		if !seen[want] {
			t.Errorf("there is no icon %s", want)
		}
	}
}
