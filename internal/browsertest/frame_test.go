package browsertest

import (
	"testing"
	"os"
)

func TestTmp(t *testing.T) {
	p := browser.Open(t, server.URL+"index.html", Desk)
	p.Until("ready", "document.querySelector('iframe').contentWindow.steelyardFrame?.state=='painted'")
	Eval[bool](p, "new Promise(done=>setTimeout(()=>done(true),500))")
	os.WriteFile("/tmp/x.png", p.Screenshot(), 0o644)
}
