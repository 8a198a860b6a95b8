package browsertest

import (
	"strings"
	"testing"
)

func TestThePolicyForbidsNothingThatThePageNeeds(t *testing.T) {
	t.Parallel()
	p := browser.Open(t, server.URL+"icon.svg", Desk)
	p.Preload(watchPolicy)
	p.Navigate(server.URL)
	p.started()
	p.mainJob()
	if got := p.forbidden(); len(got) > 0 {
		t.Errorf("the policy forbade %q", got)
	}
	mustAllBeUnder(t, p.requests(), server.URL)
}

// What a hole elsewhere might let in does nothing in the page or its frame.
func TestThePolicyForbidsWhatIsNotOurs(t *testing.T) {
	t.Parallel()
	const other = "http://127.0.0.1:9/elsewhere" // nothing listens there
	p := browser.Open(t, server.URL+"icon.svg", Desk)
	p.Preload(watchPolicy)
	p.Navigate(server.URL)
	p.started()
	for _, c := range []struct{ what, try, why string }{
		{"inline script", "const s = d.createElement('script'); s.textContent = 'top.ran = true'; d.head.append(s)", "script-src"},
		{"handler", "const i = d.createElement('div'); i.innerHTML = '<b onclick=\"top.ran = true\">x</b>'; d.body.append(i); i.firstChild.click()", "script-src"},
		{"foreign script", "const s = d.createElement('script'); s.src = '" + other + "'; d.head.append(s)", "script-src"},
		{"data script", "const s = d.createElement('script'); s.src = 'data:text/javascript,top.ran=true'; d.head.append(s)", "script-src"},
		{"text as code", "w.setTimeout('top.ran = true', 0)", "script-src"},
		{"style element", "const s = d.createElement('style'); s.textContent = 'body { opacity: .5 }'; d.head.append(s)", "style-src"},
		{"picture", "const i = d.createElement('img'); i.src = '" + other + "'; d.body.append(i)", "img-src"},
		{"fetch", "w.fetch('" + other + "').catch(() => {})", "connect-src"},
		{"socket", "new w.WebSocket('ws://127.0.0.1:9/elsewhere')", "connect-src"},
		{"base", "const b = d.createElement('base'); b.href = '" + other + "'; d.head.append(b)", "base-uri"},
		{"frame", "const f = d.createElement('iframe'); f.src = '" + other + "'; d.body.append(f)", "frame-src"},
		{"plug-in", "const o = d.createElement('object'); o.data = '" + other + "'; d.body.append(o)", "object-src"},
	} {
		for i, window := range []string{"window", inFrame} {
			where := []string{"page", "frame"}[i]
			p.Eval("const w = " + window + ", d = w.document; w.forbidden = []; try { " + c.try + " } catch {}")
			p.Until("the "+where+" forbids the "+c.what, window+".forbidden.length > 0")
			if got := Eval[[]string](p, window+".forbidden"); !strings.HasPrefix(got[0], c.why) {
				t.Errorf("%s, %s: forbidden as %q, want %s", c.what, where, got, c.why)
			}
		}
	}
	// A form would take the page along, did it go.
	p.Eval("window.forbidden = []; const f = document.createElement('form'); f.action = '" + other + "'; document.body.append(f); f.submit()")
	p.Until("the page forbids the form", "window.forbidden.some(v => v.startsWith('form-action'))")
	wait(p, 200)
	if Eval[bool](p, "!!window.ran") {
		t.Error("a script ran")
	}
	p.Wrongs() // the browser tells what it forbade
}
