package browsertest

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"steelyard/internal/document"
)

// What earlier programs wrote opens in the page, from a file, from a link and
// from what the browser had kept.
func TestEarlierDocumentsInThePage(t *testing.T) {
	t.Parallel()
	files, err := filepath.Glob("../../testdata/documents/earlier/*")
	if err != nil || len(files) < 5 {
		t.Fatalf("%d files, %v", len(files), err)
	}
	const pages = 4 // one after the other in each
	for page := range pages {
		t.Run(fmt.Sprint("page ", page), func(t *testing.T) {
			t.Parallel()
			p := openPage(t, Desk)
			for i := page; i < len(files); i += pages {
				p.opensAsItDid(files[i])
			}
		})
	}
}

// opensAsItDid opens a document of an earlier program, first as somebody would
// and then as the browser had kept it.
func (p *Page) opensAsItDid(file string) {
	t := p.tb
	t.Helper()
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	name, text := filepath.Base(file), string(data)
	if strings.HasSuffix(name, ".link") {
		p.Navigate(server.URL + "#" + text)
		p.Until("the reader is asked", "document.querySelector('dialog.incoming')?.open")
		p.The("button", "Open it").Click()
		if data, err = document.DecodeLink(text); err != nil {
			t.Fatal(err)
		}
		text = string(data)
	} else {
		p.Chooses(name, text, p.Like("button", "Open").Click)
	}
	d, problems := document.Open(data)
	if d == nil {
		t.Fatal(problems)
	}
	build := d.Builds[0].ID
	if len(d.Show.Compare) > 0 {
		build = d.Show.Compare[0]
	}
	want := figure(t, weigh(t, text), build, "total") / 1000 // shown to a tenth when its ± is large
	if d.Show.Mass == "lb_oz" {
		want /= 0.45359237
	}
	p.until(name+" is open", func() bool {
		return math.Abs(p.total()-want) < 0.06 && strings.Contains(p.notices(), "Opened") && Eval[string](p, "document.querySelector('sy-masthead input').value") == d.Title
	})
	if said := p.says("sy-notices .notice"); said != "" {
		t.Errorf("%s: it says %q", name, said)
	}

	// As the browser kept it then, in a step of its own: the sight that is kept too is
	// of an earlier one.
	p.kept()
	p.Navigate(server.URL + "icon.svg")
	Eval[bool](p, put("{ text: "+quote(text)+", rev: 1000, by: 'an earlier window', at: 1 }"))
	p.Navigate(server.URL)
	p.started()
	p.until(name+" is taken up", func() bool { return math.Abs(p.total()-want) < 0.06 })
	if said := p.notices(); said != "" {
		t.Errorf("%s, kept: it says %q", name, said)
	}
}
