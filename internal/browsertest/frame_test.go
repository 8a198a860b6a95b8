package browsertest

import (
	"os"
	"testing"
)

func TestTmp(t *testing.T) {
	for _, d := range []float64{1, 2} {
		l := Desk
		l.Density = d
		p := browser.Open(t, server.URL+"page.css", l)
		p.Preload("window.took=[]; const raf0=requestAnimationFrame.bind(window); window.requestAnimationFrame=f=>raf0(t=>{const a=performance.now(); f(t); window.took.push(performance.now()-a)})")
		p.Navigate(server.URL + "index.html")
		p.Until("ready", "document.querySelector('iframe').contentWindow.steelyardFrame?.state=='painted'")
		Eval[bool](p, "new Promise(done=>setTimeout(()=>done(true),500))")
		for range 6 {
			t.Log(d, Eval[[]float64](p, "new Promise(async done => { const w=document.querySelector('iframe').contentWindow; const t=performance.now(); const n=w.steelyard.frames(); w.steelyard.camera('in'); w.steelyard.camera('out'); while(w.steelyard.frames()==n && performance.now()-t<3000) await new Promise(r=>setTimeout(r,1)); let a = performance.now()-t; await new Promise(r=>setTimeout(r,0)); done([w.steelyard.frames(), a, performance.now()-t, ...w.took.slice(-1)]) })"))
		}
		os.WriteFile("/tmp/x.png", p.Screenshot(), 0o644)
	}
}
