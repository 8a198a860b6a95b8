package browsertest

import (
	"testing"
)

func TestTmp(t *testing.T) {
	for _, d := range []float64{1, 2} {
	p := browser.Open(t, server.URL+"page.css", Look{Width: 900, Height: 600, Density: d})
	p.Preload("window.took=[]; const raf0=requestAnimationFrame.bind(window); window.requestAnimationFrame=f=>raf0(t=>{const a=performance.now(); f(t); window.took.push(performance.now()-a)})")
	p.Navigate(server.URL+"frame.html")
	p.Until("painted", "window.steelyardFrame?.state=='painted'")
	for range 4 {
	t.Log(d, Eval[[]float64](p, "new Promise(async done => { const t=performance.now(); const n=steelyard.frames(); steelyardRedraw(); while(steelyard.frames()==n && performance.now()-t<3000) await new Promise(r=>setTimeout(r,1)); let a = performance.now()-t; await new Promise(r=>setTimeout(r,0)); done([steelyard.frames(), a, performance.now()-t, ...window.took.slice(-1)]) })"))
	}
	}
}
