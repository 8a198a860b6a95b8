package browsertest

import (
	"strings"
	"testing"

	"github.com/chromedp/chromedp/kb"
)

func TestAbout(t *testing.T) {
	t.Parallel()
	dark := Phone
	dark.Dark = true
	for name, look := range map[string]Look{"desk": Desk, "phone, dark": dark} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			p := openFirst(t, look)
			p.standing("Works offline")
			p.command("About").Focus()
			p.Key(kb.Enter)
			p.The("heading", "About Steelyard")
			// Licences are got when they are asked for.
			if n := p.Requests("/some/folder/notices.txt"); n != 0 {
				t.Errorf("the licences were asked for %d times before anyone wanted them", n)
			}
			p.Eval("document.querySelector('dialog.about summary').click()")
			p.Until("the licences are there", "document.querySelector('dialog.about pre')?.innerText.length > 5000")
			said := Eval[string](p, "document.querySelector('dialog.about').innerText")
			version := Eval[string](p, "JSON.parse("+inFrame+".steelyard.evaluate("+inFrame+".steelyard.demo())).program")
			for _, want := range []string{"Version " + version, "qualified mechanic", "JCGM 100:2008", "opens without a network", "hajimehoshi/ebiten", "Bigelow & Holmes", "lit-html"} {
				if !strings.Contains(said, want) {
					t.Errorf("About does not speak of %s", want)
				}
			}
			if top, bottom := Eval[float64](p, "document.querySelector('dialog.about').getBoundingClientRect().top"), Eval[float64](p, "document.querySelector('dialog.about').getBoundingClientRect().bottom"); top < 0 || bottom > float64(look.Height) {
				t.Errorf("About reaches from %v to %v in a window of %d", top, bottom, look.Height)
			}
			if wide := Eval[float64](p, "document.scrollingElement.scrollWidth"); wide > float64(look.Width) {
				t.Errorf("the page is %v px wide in a window of %d", wide, look.Width)
			}
			for _, v := range audit(p) {
				t.Errorf("%s (%s): %v", v.ID, v.Help, v.Nodes)
			}
			p.Key(kb.Escape)
			p.Until("About is closed and the keyboard is back where it was", "!document.querySelector('dialog.about')?.open && ['About', 'Commands'].includes(document.activeElement?.textContent.trim())")
		})
	}
}
