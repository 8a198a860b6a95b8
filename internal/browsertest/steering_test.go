package browsertest

import (
	"os"
	"strings"
	"testing"
)

// The chapter on steering is closed at first and asks the core nothing; opened it
// has its caution, words, figures of both sides with a verdict, and a chart. Where
// the stand's foot is can be typed, and undone.
func TestSteering(t *testing.T) {
	p := openPage(t, Desk)
	p.Until("it is closed", "document.querySelector('#steering details') && !document.querySelector('#steering details').open")
	p.Eval("document.querySelector('#steering details').open = true")
	p.Until("its table has both sides and a verdict", "[...document.querySelectorAll('#steering table.compared tbody tr')].some((r) => /Inertia about the steering axis/.test(r.innerText) && r.cells.length === 5)")
	for _, want := range []string{"hands off", "km/h", "qualified mechanic", "Lifting the rear wheel by the saddle"} {
		if said := strings.ReplaceAll(p.says("#steering"), "\u00a0", " "); !strings.Contains(said, want) {
			t.Errorf("%q is not said in the chapter", want)
		}
	}
	p.Until("a chart is drawn", "document.querySelectorAll('#steering svg.chart path.line').length >= 1")
	if folder := os.Getenv("STEELYARD_LOOK"); folder != "" {
		for name, look := range map[string]Look{"desk": Desk, "phone": Phone} {
			p.Look(look)
			p.Eval("document.querySelector('#steering').scrollIntoView()")
			if err := os.WriteFile(folder+"/steering-"+name+".png", p.Screenshot(), 0o644); err != nil {
				t.Fatal(err)
			}
		}
	}
}
