package browsertest

import (
	"bytes"
	"compress/zlib"
	"encoding/base64"
	"encoding/csv"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/chromedp/chromedp/kb"

	"steelyard/internal/document"
)

// hostile returns a fixture whose names and notes try to be something else:
// markup, script, addresses that run, formulas, writing that turns round.
func hostile(t *testing.T, name string) string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "..", "testdata", name))
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// openWatched opens the page with an eye on what its policy forbids: a hole
// shows itself there even though the policy stops it.
func openWatched(t *testing.T, look Look) *Page {
	t.Helper()
	p := browser.Open(t, server.URL+"icon.svg", look)
	p.Preload(watchPolicy + "; window.took = []; navigator.clipboard.writeText = async t => { window.took.push(t) }")
	p.Navigate(server.URL)
	p.started()
	return p
}

// alive is a script that lists what in a document could run, fetch or lead away,
// other than what the page has of its own.
const alive = `(d => {
	const odd = [];
	for (const e of d.querySelectorAll('*')) {
		const name = e.localName;
		if (['img', 'object', 'embed', 'base', 'form', 'template', 'math', 'foreignobject', 'animate', 'set', 'use', 'image'].includes(name.toLowerCase())) odd.push(name);
		if (name === 'script' && !e.src && e.id !== 'packed') odd.push('script ' + e.textContent.slice(0, 40));
		if (name === 'iframe' && e.id !== 'canvas') odd.push('iframe');
		if (name === 'b' && e.textContent === 'onclick') odd.push('sabotage');
		for (const a of e.attributes) {
			if (/^on/i.test(a.name)) odd.push(name + ' ' + a.name);
			if (/^(?:href|src|action|formaction|srcdoc|xlink:href|data|from|to)$/i.test(a.name) && /^[\s\u0000-\u001f]*(?:javascript|data:text|vbscript)/i.test(a.value)) odd.push(name + ' ' + a.name + '=' + a.value.slice(0, 40));
			if (a.name === 'style' && /fixed|url\(/.test(a.value)) odd.push(name + ' style=' + a.value);
		}
	}
	return odd;
})`

// harmless checks that nothing of what was opened has come to life.
func (p *Page) harmless(when string) {
	p.tb.Helper()
	wait(p, 150)
	for _, where := range []string{"document", inFrame + ".document"} {
		if odd := Eval[[]string](p, alive+"("+where+")"); len(odd) > 0 {
			p.tb.Errorf("%s: %.60s holds %q", when, where, odd)
		}
	}
	if ran := Eval[string](p, "String(window.ran ?? "+inFrame+".ran ?? '')"); ran != "" {
		p.tb.Errorf("%s: %s ran", when, ran)
	}
	if got := p.forbidden(); len(got) > 0 {
		p.tb.Errorf("%s: the policy had to forbid %q", when, got)
	}
	if title := Eval[string](p, "document.title"); strings.Contains(title, "hacked") {
		p.tb.Errorf("%s: the title is %q", when, title)
	}
}

// unfoldEverything opens whatever can be opened: sections, details of lines, menus.
func (p *Page) unfoldEverything() {
	p.tb.Helper()
	for range 3 {
		p.Eval("document.querySelectorAll('main details:not([open]) > summary').forEach(s => s.click())")
		p.Eval("document.querySelectorAll('main button.disclose[aria-expanded=false]').forEach(b => b.click())")
		wait(p, 300)
	}
	if n := Eval[int](p, "document.querySelectorAll('main details:not([open])').length"); n > 0 {
		p.tb.Errorf("%d sections stay folded", n)
	}
	if n := Eval[int](p, "document.querySelectorAll('#parts tr.details').length"); n < 20 {
		p.tb.Errorf("the details of %d lines are open", n)
	}
}

// formula says whether a spreadsheet would take a cell for a formula.
func formula(cell string) bool {
	s := strings.TrimLeft(cell, " ")
	r, n := utf8.DecodeRuneInString(s)
	if n == 0 || !strings.ContainsRune("=+-@\t\r\n＝＋－＠", r) {
		return false
	}
	s = strings.NewReplacer("−", "-", ",", ".", " ", "").Replace(strings.TrimSuffix(s, "%"))
	_, err := strconv.ParseFloat(s, 64)
	return err != nil
}

// formulas returns the cells of a table that are formulas.
func formulas(t *testing.T, text string) (bad []string, cells int) {
	t.Helper()
	text = strings.TrimPrefix(text, "\ufeff")
	r := csv.NewReader(strings.NewReader(text))
	// A comma before a space is one of a column's head.
	if head, _, _ := strings.Cut(text, "\n"); strings.Count(head, ";") > strings.Count(head, ",")-strings.Count(head, ", ") {
		r.Comma = ';'
	}
	r.FieldsPerRecord = -1
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatalf("%v in %.200q", err, text)
	}
	for _, row := range rows {
		for _, c := range row {
			cells++
			if formula(c) {
				bad = append(bad, c)
			}
		}
	}
	// A spreadsheet of another country splits elsewhere, and knows quotes only at
	// the start of what it takes for a cell.
	for _, comma := range ",;\t" {
		r := csv.NewReader(strings.NewReader(text))
		r.Comma, r.LazyQuotes, r.FieldsPerRecord = comma, true, -1
		rows, err := r.ReadAll()
		if err != nil {
			t.Fatalf("split at %q: %v", comma, err)
		}
		for _, c := range slices.Concat(rows...) {
			if formula(c) && !pieces.MatchString(c) {
				bad = append(bad, string(comma)+" "+c)
			}
		}
	}
	return bad, cells
}

// pieces of a number that was torn at its decimal comma, or of a row of numbers.
var pieces = regexp.MustCompile(`^[-−+]?[0-9][-−0-9.,;"\t ]*$|^-[;,\t]`)

// living finds what Markdown would make an element or a link of.
var living = regexp.MustCompile(`(?m)(?:^|[^\\])(?:\\\\)*(?:[<@` + "`" + `]|!?\[[^\]\\]*\]\(|(?i:https?|ftp)://|(?i:www)\.)`)

// What is asked of the tests themselves: that they see a hole.
func TestTheHostileTestsSee(t *testing.T) {
	t.Parallel()
	for cell, want := range map[string]bool{"=1+1": true, "+1": false, "-3,5": false, "@x": true, "\t=1": true, "-2+3": true, "'=1": false, "Bell": false, " =1+1": true, "＝1": true, "−3": false} {
		if formula(cell) != want {
			t.Errorf("%q is a formula: %v", cell, !want)
		}
	}
	for text, want := range map[string]bool{"| <b> |": true, `| \<b\> |`: false, "[x](y)": true, `\[x\](y)`: false, "a `b`": true, `\\<b>`: true, "see http://x.example": true, `see http\://x.example`: false, "www.x.example": true, `a\@b.example`: false} {
		if living.MatchString(text) != want {
			t.Errorf("%q is markup: %v", text, !want)
		}
	}
	p := openWatched(t, Desk)
	for script, says := range map[string]string{
		"const d = document.createElement('div'); d.innerHTML = '<img src=x>'; document.body.append(d)":                                          "img",
		"const a = document.createElement('a'); a.href = ' javascript:1'; document.body.append(a)":                                               "a href",
		"document.body.setAttribute('onclick', '1')":                                                                                             "body onclick",
		"document.body.append(document.createElement('script'))":                                                                                 "script",
		"const d = document.createElement('div'); d.innerHTML = '<svg onload=1></svg>'; document.body.append(d)":                                 "svg onload",
		inFrame + ".document.body.append(" + inFrame + ".document.createElement('object'))":                                                      "object",
		"const d = document.createElement('iframe'); document.body.append(d)":                                                                    "iframe",
		"const d = document.createElement('div'); d.innerHTML = '<p style=\"position:fixed\">'; document.body.append(d)":                         "p style",
		"document.body.append(document.createElementNS('http://www.w3.org/2000/svg', 'foreignObject'))":                                          "foreignObject",
		"const x = document.createElementNS('http://www.w3.org/2000/svg', 'a'); x.setAttribute('href', 'javascript:1'); document.body.append(x)": "a href",
	} {
		p.Eval(script)
		where := "document"
		if strings.HasPrefix(script, inFrame) {
			where = inFrame + ".document"
		}
		if odd := Eval[[]string](p, alive+"("+where+")"); !strings.Contains(strings.Join(odd, "\n"), says) {
			t.Errorf("%s: found %q", says, odd)
		}
	}
	p.Wrongs()
}

func TestHostileFile(t *testing.T) {
	t.Parallel()
	text := hostile(t, "documents/ok-hostile.json")
	d, problems := document.Open([]byte(text))
	if d == nil {
		t.Fatal(problems)
	}
	p := openWatched(t, Desk)
	p.Chooses(`hostile <img src=x onerror="top.ran='name'">.json`, text, p.Like("button", "Open").Click)
	p.Until("it is open", "document.body.innerText.includes('<img src=x')")
	p.harmless("opened")
	p.unfoldEverything()
	p.harmless("unfolded")
	if wide := Eval[float64](p, "document.scrollingElement.scrollWidth"); wide > float64(Desk.Width) {
		t.Errorf("the page is %v px wide in a window of %d", wide, Desk.Width)
	}
	// Writing that turns round turns nothing around it.
	p.Eval("const e = document.querySelector('sy-masthead input'); e.focus(); e.select()")
	p.typing("Bill \u202egnp.exe")
	p.Until("the title is taken", "document.title.startsWith('Bill')")
	if title := Eval[string](p, "document.title"); strings.ContainsAny(title, "\u202e\u2066") {
		t.Errorf("the window's title is %+q", title)
	}
	p.Key("z", kb.ModifierCtrl)
	p.Until("the title is back", "!document.title.startsWith('Bill')")

	// The names are there, as they are.
	values := Eval[string](p, "[...document.querySelectorAll('main input, main textarea')].map(e => e.value).join('\\n')")
	for _, want := range []string{"<img src=x onerror=", "javascript:top.ran", "=HYPERLINK(", "{name} {title}"} {
		if !strings.Contains(values, want) {
			t.Errorf("no field holds %q", want)
		}
	}

	// Tables that are copied.
	p.Eval("document.querySelectorAll('sy-menu.copy').forEach(m => m.querySelectorAll('.menu-items button').forEach(b => b.click()))")
	p.Until("the tables are copied", "window.took.length >= document.querySelectorAll('sy-menu.copy .menu-items button').length && window.took.length > 3")
	wait(p, 500)
	tables, markdown := 0, 0
	for _, text := range Eval[[]string](p, "window.took") {
		if strings.Contains(text, "| --") || strings.Contains(text, "| :-") {
			markdown++
			if m := living.FindString(text); m != "" {
				t.Errorf("in Markdown %q is alive: %.300q", m, text[max(0, strings.Index(text, m)-40):])
			}
			continue
		}
		bad, cells := formulas(t, text)
		tables++
		for _, b := range bad {
			t.Errorf("copied, %.80q is a formula", b)
		}
		if cells < 4 {
			t.Errorf("a table of %d cells: %.200q", cells, text)
		}
	}
	if tables < 2 || markdown < 2 {
		t.Errorf("%d tables for spreadsheets, %d for articles", tables, markdown)
	}

	// The list as a file.
	name, list := p.Saves(p.The("button", "CSV out").Click)
	if strings.ContainsAny(name, `<>"/\:|?*`) {
		t.Errorf("the file is called %q", name)
	}
	bad, cells := formulas(t, list)
	for _, b := range bad {
		t.Errorf("in the list %.80q is a formula", b)
	}
	if cells < 15*len(d.Builds[0].Parts) {
		t.Errorf("the list has %d cells", cells)
	}

	// The pictures: for paper, and as the core writes them.
	p.Eval("dispatchEvent(new Event('beforeprint'))")
	p.Until("the picture is drawn for paper", "document.querySelector('#printed svg')")
	p.harmless("drawn for paper")
	p.Eval("dispatchEvent(new Event('afterprint'))")
	for i, b := range d.Builds {
		view := `{"build":` + quote(b.ID) + `,"side":"side","labels":true,"dimensions":true,"key":true,"width":900,"height":600}`
		odd := Eval[[]string](p, "(() => { const text = "+inFrame+".steelyard.svg("+quote(text)+", "+quote(view)+"); const d = new DOMParser().parseFromString(text, 'image/svg+xml'); if (d.querySelector('parsererror') || d.documentElement.localName !== 'svg') return ['no SVG: ' + d.documentElement.textContent.slice(0, 200)]; if (d.querySelectorAll('text').length < 5) return ['no words']; return "+alive+"(d) })()")
		if len(odd) > 0 {
			t.Errorf("the picture of build %d holds %q", i, odd)
		}
	}

	// Saved, kept and opened again, it is what it was.
	saved, _ := p.saved()
	back, problems := document.Open([]byte(saved))
	if back == nil || back.Title != d.Title || back.Builds[0].ID != d.Builds[0].ID || back.Builds[1].Parts[20].Name != d.Builds[1].Parts[20].Name {
		t.Errorf("saved, it is another: %v", problems)
	}
	p.kept()
	p.Reload()
	p.started()
	p.harmless("reloaded")
	p.Wrongs() // control characters in a file's name are told of by the browser
}

func TestHostileLink(t *testing.T) {
	t.Parallel()
	for name, look := range map[string]Look{"desk": Desk, "phone": Phone} {
		t.Run(name, func(t *testing.T) {
			text := hostile(t, "documents/ok-hostile.json")
			link, err := document.EncodeLink([]byte(text))
			if err != nil {
				t.Fatal(err)
			}
			p := openWatched(t, look)
			before := p.total()
			p.Navigate(server.URL + "#" + link)
			p.Until("the reader is asked", "document.querySelector('dialog.incoming')?.open")
			p.harmless("asked")
			if now := p.total(); now != before {
				t.Errorf("before the answer the total is %v kg, was %v", now, before)
			}
			if wide := Eval[float64](p, "(d => d.scrollWidth - d.clientWidth)(document.querySelector('dialog.incoming'))"); wide > 0 {
				t.Errorf("the question is %v px too wide", wide)
			}
			p.The("button", "Open it").Click()
			p.until("the document is open", func() bool { return p.total() != before })
			p.harmless("opened")
		})
	}
}

func TestHostileCSV(t *testing.T) {
	t.Parallel()
	p := openWatched(t, Desk)
	_, d := p.saved()
	n := len(d.Build("gearbox").Parts)
	p.Chooses("hostile.csv", hostile(t, "csv/hostile.csv"), p.Like("button", "CSV in").Click)
	p.Until("the preview is there", "document.querySelector('dialog.csv')?.innerText.includes('<img src=x')")
	p.Until("the bad row is there", "document.querySelector('dialog.csv .bad')?.innerText.includes('bad row')")
	p.harmless("in the preview")
	p.The("button", "Add them").Click()
	p.until("the parts are there", func() bool { _, d = p.saved(); return len(d.Build("gearbox").Parts) > n+20 })
	p.unfoldEverything()
	p.harmless("added")
	_, list := p.Saves(p.The("button", "CSV out").Click)
	bad, _ := formulas(t, list)
	for _, b := range bad {
		t.Errorf("out again %.80q is a formula", b)
	}
}

// A link that unpacks without end is cut off, and the page goes on.
func TestALinkWithoutEnd(t *testing.T) {
	t.Parallel()
	var packed bytes.Buffer
	z := zlib.NewWriter(&packed)
	zeros := bytes.Repeat([]byte(" "), 1<<20)
	for range 256 {
		if _, err := z.Write(zeros); err != nil {
			t.Fatal(err)
		}
	}
	if err := z.Close(); err != nil {
		t.Fatal(err)
	}
	link := server.URL + "#sy1." + base64.RawURLEncoding.EncodeToString(packed.Bytes())
	t.Logf("256 MiB in a link of %d characters", len(link))
	p := openPage(t, Desk)
	before := p.total()
	p.Navigate(link)
	p.Until("it says that the link is too large", "[...document.querySelectorAll('sy-notices, sy-notes')].map(e => e.innerText).join(' ').includes('8 MiB')")
	if now := p.total(); now != before || Eval[bool](p, "!!document.querySelector('dialog[open]')") {
		t.Errorf("the total is %v kg, was %v", now, before)
	}
	p.mass(gearbox).Fill("3210")
	p.until("the page goes on", func() bool { return p.total() != before })
	// Opened afresh as well.
	q := browser.Open(t, link, Desk)
	q.started()
	q.Until("it says that the link is too large", "[...document.querySelectorAll('sy-notices, sy-notes')].map(e => e.innerText).join(' ').includes('8 MiB')")
}

// A link shows what it brings and what it takes the place of; refused, it is
// gone from the address, and taken, it can be undone.
func TestALinkShowsWhatItReplaces(t *testing.T) {
	t.Parallel()
	d, problems := document.Open([]byte(demo()))
	if d == nil {
		t.Fatal(problems)
	}
	d.Title, d.Builds = "Mule", d.Builds[1:]
	d.Builds[0].Name, d.Builds[0].Parts = "Steel mule", d.Builds[0].Parts[:1]
	d.Show.Compare = nil
	d.Loads[0].Name, d.Riders[0].Name, d.WeighIns = "Water for four days", "Somebody tall", nil
	text, err := document.WriteCompact(d)
	if err != nil {
		t.Fatal(err)
	}
	link, err := document.EncodeLink(text)
	if err != nil {
		t.Fatal(err)
	}
	p := openPage(t, Desk)
	p.mass(gearbox).Fill("3210")
	wait(p, 700)
	p.kept()
	before := p.total()
	_, mine := p.saved()
	p.Navigate(server.URL + "#" + link)
	p.Until("the reader is asked", "document.querySelector('dialog.incoming')?.open")
	if now := p.total(); now != before {
		t.Errorf("before the answer the total is %v kg, was %v", now, before)
	}
	said := func(id string) string {
		return strings.Join(strings.Fields(p.says("dialog.incoming [aria-labelledby="+id+"]")), " ")
	}
	for _, want := range []string{"Mule", "Steel mule, one line", "Water for four days", "Somebody tall", strconv.Itoa(len(d.Builds[1].Parts)) + " lines"} {
		if !strings.Contains(said("comes"), want) {
			t.Errorf("of what comes it says %q, not %q", said("comes"), want)
		}
	}
	for _, want := range []string{mine.Title, mine.Builds[0].Name + ", " + strconv.Itoa(len(mine.Builds[0].Parts)) + " lines", mine.Loads[0].Name, mine.Riders[0].Name, mine.WeighIns[0].Name} {
		if !strings.Contains(said("goes"), want) {
			t.Errorf("of what goes it says %q, not %q", said("goes"), want)
		}
	}
	if all := p.says("dialog.incoming"); !strings.Contains(all, "undo") {
		t.Errorf("it does not say that it can be undone: %q", all)
	}
	for _, v := range audit(p) {
		t.Errorf("%s (%s): %v", v.ID, v.Help, v.Nodes)
	}
	p.The("button", "Keep mine").Click()
	p.Until("the link is gone from the address", "!location.hash.includes('sy1')")
	if now := p.total(); now != before {
		t.Errorf("refused, the total is %v kg, was %v", now, before)
	}
	p.Navigate(server.URL + "#" + link)
	p.The("button", "Open it").Click()
	p.until("it is open", func() bool { return p.total() != before })
	p.command("Undo").Click()
	p.until("it is undone", func() bool { return p.total() == before })
	if _, now := p.saved(); now.Title != mine.Title {
		t.Errorf("undone, the title is %q", now.Title)
	}
}

// Where browsers or other programs would not bear a link, the dialog says so
// and offers the file.
func TestALongLink(t *testing.T) {
	t.Parallel()
	text, _ := manyParts(t)
	p := openPage(t, Desk)
	p.Chooses("many.json", text, p.Like("button", "Open").Click)
	p.Until("it is open", "[...document.querySelectorAll('#parts .group .n')].some(n => Number(n.textContent) > 300)")
	p.Eval("[...document.querySelectorAll('sy-masthead button')].find(b => b.textContent.trim() === 'Share link').click()")
	p.Until("it is said", "document.querySelector('dialog.share')?.innerText.match(/[0-9]{5,} characters/)")
	said := p.says("dialog.share")
	if !strings.Contains(said, "Send") || !strings.Contains(said, "file") {
		t.Errorf("it says %q", said)
	}
	_, saved := p.Saves(func() {
		p.Eval("[...document.querySelectorAll('dialog.share button')].find(b => b.textContent.trim() === 'Save as a file').click()")
	})
	if !strings.Contains(saved, "no. 9999") {
		t.Errorf("the file holds %.100q", saved)
	}
}
