package browsertest

import (
	"strings"
	"testing"
)

// The headline of what the bike permits says what ends the braking first, and
// names what may be over its rating; the room of the load has its caution.
func TestWhatItPermitsInOneLine(t *testing.T) {
	t.Parallel()
	p := openPage(t, Phone)
	told := func(want ...string) func() bool {
		return func() bool {
			said := strings.ReplaceAll(p.says("#limits"), "\u00a0", " ")
			for _, w := range want {
				if !strings.Contains(said, w) {
					return false
				}
			}
			return true
		}
	}
	p.until("the tyres are said to slip first, and a pannier to be perhaps over", told("brakes to 0.6 g (tyres slip)", "may be over its rating: Pannier, right"))
	if said := p.says("#limits"); strings.Contains(strings.ToLower(said), "no rating exceeded") {
		t.Errorf("the headline says both: %q", said)
	}
	p.Eval("document.querySelector('#load details').open = true")
	p.Until("the load has its caution", "/qualified mechanic/.test(document.querySelector('#load .caution')?.innerText ?? '')")
}
