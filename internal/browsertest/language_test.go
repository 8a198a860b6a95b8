package browsertest

import (
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp/kb"
	"github.com/goccy/go-json"

	"steelyard/internal/site/static"
)

var (
	textLine = regexp.MustCompile(`(?m)^\s+"([A-Za-z0-9_.-]+)":\s*("(?:[^"\\]|\\.)*"),?(?:\s*//.*)?$`)
	filled   = regexp.MustCompile(`\{\w+\}`)
)

// texts reads the page's texts in a language, the rooms' and those they share, and
// the words of the core in it.
func texts(t *testing.T, code string) map[string]string {
	t.Helper()
	root, err := static.Root(".")
	if err != nil {
		t.Fatal(err)
	}
	name := "text.ts"
	if code != "en" {
		name = "text." + code + ".ts"
	}
	found := map[string]string{}
	files, err := filepath.Glob(filepath.Join(root, "web", "rooms", "*", name))
	if err != nil || len(files) == 0 {
		t.Fatal("no room has ", name, err)
	}
	for _, f := range append(files, filepath.Join(root, "web", "text", code+".ts")) {
		source, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range textLine.FindAllSubmatch(source, -1) {
			text, err := strconv.Unquote(string(m[2]))
			if err != nil {
				t.Fatalf("%s: %s: %v", f, m[1], err)
			}
			found["page "+string(m[1])] = text
		}
	}
	core, err := os.ReadFile(filepath.Join(root, "data", "words", code+".json"))
	if err != nil {
		t.Fatal(err)
	}
	words := map[string]string{}
	if err := json.Unmarshal(core, &words); err != nil {
		t.Fatal(err)
	}
	for k, w := range words {
		found["core "+k] = w
	}
	return found
}

func TestEveryTextIsThereInGerman(t *testing.T) {
	t.Parallel()
	english, german := texts(t, "en"), texts(t, "de")
	if len(english) < 1000 {
		t.Fatalf("only %d English texts were read", len(english))
	}
	places := func(s string) []string {
		f := filled.FindAllString(s, -1)
		slices.Sort(f)
		return slices.Compact(f)
	}
	for _, key := range slices.Sorted(maps.Keys(english)) {
		e, g := english[key], german[key]
		if _, ok := german[key]; !ok {
			t.Errorf("%s has no German", key)
			continue
		}
		if !slices.Equal(places(e), places(g)) {
			t.Errorf("%s fills in %v in English and %v in German", key, places(e), places(g))
		}
		if (e == "") != (g == "") {
			t.Errorf("%s is %q in English and %q in German", key, e, g)
		}
	}
	for key := range german {
		if _, ok := english[key]; !ok {
			t.Errorf("%s is there in German and not in English", key)
		}
	}
}

// speak chooses a language in the display menu.
func (p *Page) speak(language string) {
	p.tb.Helper()
	p.Eval("(s => { s.value = " + quote(language) + "; s.dispatchEvent(new Event('change', { bubbles: true })) })([...document.querySelectorAll('#masthead select')].find(s => s.querySelector('option[value=de]')))")
	if language != "auto" {
		p.Until("the page speaks "+language, "document.documentElement.lang === "+quote(language))
		wait(p, 100)
	}
}

// seen is a script of all that the page says, seen or told, but what readers
// have named and what the core says in sentences.
const seen = `(() => {
	const said = new Set();
	const add = s => { s = (s ?? '').replace(/\s+/g, ' ').trim(); if (s.length > 2) said.add(s) };
	for (const e of document.querySelectorAll('body *')) {
		for (const a of ['aria-label', 'title', 'placeholder', 'alt']) if (e.hasAttribute(a)) add(e.getAttribute(a));
		for (const n of e.childNodes) if (n.nodeType === 3 && !e.closest('script, style, .about pre')) add(n.data);
	}
	return [...said];
})()`

// unfoldAll opens all that lies folded, sections, details and more figures; of
// the lines of a list the details of one, for they are all alike.
func (p *Page) unfoldAll() {
	p.tb.Helper()
	for range 3 {
		p.Eval(`(() => {
			document.querySelectorAll('details').forEach(d => { d.open = true });
			const lines = new Set();
			document.querySelectorAll('[aria-expanded]').forEach(b => {
				if (b.closest('sy-menu, sy-contents') || b.getAttribute('role') === 'combobox' || b.disabled) return;
				const kind = b.closest('tr')?.className.replace(/chosen|even/g, '').trim();
				if (kind && b.matches('.disclose')) {
					if (lines.has(kind)) return;
					lines.add(kind);
				}
				if (b.ariaExpanded === 'false') b.click();
			});
		})()`)
		wait(p, 150)
	}
}

func TestGerman(t *testing.T) {
	t.Parallel()
	english, german := texts(t, "en"), texts(t, "de")
	p := openPage(t, Desk)
	if n := p.Requests("/some/folder/de.js"); n != 0 {
		t.Errorf("the German texts were fetched %d times before anyone wanted them", n)
	}
	// Work is under way: a part edited, a field half typed.
	p.mass(gearbox).Fill("2500,5")
	p.until("it is weighed", func() bool { return p.mass(gearbox).Value() == "2500.5" })
	p.Eval("window.same = true; document.getElementById('title').focus()")
	before, _ := p.saved()
	total := p.says("#balance .num")

	p.speak("de")
	if !Eval[bool](p, "window.same === true") {
		t.Error("the page was loaded again")
	}
	if after, _ := p.savedBy("Speichern"); after != before {
		t.Error("another language is another document")
	}
	for what, want := range map[string]string{
		"document.querySelector('#balance h2').innerText": german["page builds.title"],
		"document.title": "Steelyard",
		"document.querySelector('#picture-words').innerText":                                                                 " wiegt ",
		inFrame + ".document.documentElement.lang":                                                                           "de",
		inFrame + ".document.querySelector('canvas').getAttribute('aria-label')":                                             "Bild von ",
		inFrame + `.steelyard.svg(` + inFrame + `.steelyard.demo(), '{"build":"gearbox","key":true,"units":{"mass":"kg"}}')`: "ungefedert",
	} {
		if got := Eval[string](p, what); !strings.Contains(got, want) {
			t.Errorf("%s is %.200q, without %q", what, got, want)
		}
	}
	// The decimal comma is shown, and taken; so is the point.
	if now := p.says("#balance .num"); now != strings.ReplaceAll(total, ".", ",") {
		t.Errorf("the total is written %q, was %q", now, total)
	}
	mass := func() Thing { return p.Like("textbox", "Masse je Stück, "+gearbox) }
	if v := mass().Value(); v != "2500,5" {
		t.Errorf("the mass stands as %q", v)
	}
	for typed, want := range map[string]string{"2,25 kg": "2250", "2.75 kg": "2750", "1999,9": "1999,9", "1.234,5": "1234,5"} {
		mass().Fill(typed)
		p.until(typed+" is read as "+want, func() bool { return mass().Value() == want })
	}
	// The catalogue is searched in German too, and takes a mass with a comma.
	was := p.comma(t)
	p.Eval("document.getElementById('add').focus()")
	Call(p, input.InsertText, input.InsertTextParams{Text: "Klingel"})
	p.Until("a bell is found", "[...document.querySelectorAll('#add-list [role=option] .name')].some(e => e.innerText.startsWith('Klingel'))")
	Call(p, input.InsertText, input.InsertTextParams{Text: " 1042,5 g"})
	p.Until("one's own is offered", "[...document.querySelectorAll('#add-list [role=option]')].some(e => e.innerText.includes('„Klingel“'))")
	p.Key(kb.Enter)
	p.until("it is weighed", func() bool { now := p.comma(t); return now > was+1.03 && now < was+1.06 })
	p.unfoldAll()
	p.until("every section is there", func() bool { return Eval[int](p, "document.querySelectorAll('main section h2').length") >= 8 })

	// Nothing English is left, but what the core says in sentences of its own and
	// the names of parts.
	is := map[string]bool{}
	for _, g := range german {
		is[g] = true
	}
	type pattern struct {
		key string
		re  *regexp.Regexp
	}
	var patterns []pattern
	for key, e := range english {
		letters := len(filled.ReplaceAllString(e, ""))
		if is[e] || letters < 4 || letters < 12 && filled.MatchString(e) {
			continue
		}
		re := regexp.QuoteMeta(e)
		re = regexp.MustCompile(`\\\{\w+\\\}`).ReplaceAllString(re, ".*")
		patterns = append(patterns, pattern{key, regexp.MustCompile("^" + re + "$")})
	}
	_, d := p.savedBy("Speichern")
	named := map[string]bool{}
	for _, b := range d.Builds {
		named[b.Name] = true
		for _, part := range b.Parts {
			named[part.Name] = true
		}
	}
	for _, r := range d.Riders {
		named[r.Name] = true
	}
	for _, l := range d.Loads {
		for _, b := range l.Bags {
			named[b.Name] = true
		}
		for _, g := range l.Goods {
			named[g.Name] = true
		}
	}
	said := Eval[[]string](p, seen)
	if len(said) < 300 {
		t.Fatalf("the page says only %d things", len(said))
	}
	for _, s := range said {
		if is[s] || named[s] {
			continue
		}
		for n := range named {
			s = strings.ReplaceAll(s, n, "…")
		}
		for _, k := range patterns {
			if k.re.MatchString(s) {
				t.Errorf("the German page says %q (%s)", s, k.key)
				break
			}
		}
	}

	// A part taken has its German name, the demo is German, and so is what there
	// is to take along.
	p.Eval("document.getElementById('add').focus()")
	Call(p, input.InsertText, input.InsertTextParams{Text: "Nabendynamo"})
	p.Until("a hub is found", "document.querySelector('#add-list [role=option] .name')?.innerText.startsWith('Nabendynamo, vorn')")
	p.Key(kb.Escape)
	for what, want := range map[string]string{"demo().title": "Ein Reiserad, dreimal anders geschaltet", "goodFromEntry('sleeping-bag').name": "Schlafsack, drei Jahreszeiten"} {
		call, field, _ := strings.Cut(what, ").")
		if got := Eval[string](p, "JSON.parse("+inFrame+".steelyard."+call+"))."+field); got != want {
			t.Errorf("%s is %q, want %q", what, got, want)
		}
	}

	// It is remembered, and the page is German from the first moment.
	p.kept()
	p.Preload("addEventListener('DOMContentLoaded', () => { window.early = document.querySelector('.skip')?.innerText })")
	p.Reload()
	p.started()
	if early := Eval[string](p, "window.early ?? ''"); early != "" && early != german["page page.skip"] {
		t.Errorf("after loading again it began with %q", early)
	}
	p.The("heading", german["page builds.title"])
	if now := p.says("#picture-words"); !strings.Contains(now, " wiegt ") {
		t.Errorf("after loading again the core says %.100q", now)
	}
	p.speak("en")
	p.The("heading", english["page builds.title"])
	if now := p.says("#picture-words"); !strings.Contains(now, " weighs ") {
		t.Errorf("in English again the core says %.100q", now)
	}
}

// comma is the total of build A as it is written in German, kg.
func (p *Page) comma(t *testing.T) float64 {
	t.Helper()
	whole := Eval[string](p, "(n => n.querySelector('.whole').textContent + n.querySelector('.rest').textContent)(document.querySelector('#balance .num'))")
	v, err := strconv.ParseFloat(strings.Replace(whole, ",", ".", 1), 64)
	if err != nil {
		t.Fatalf("the total is written %q", whole)
	}
	return v
}

// The one file has German inside.
func TestGermanInOneFile(t *testing.T) {
	t.Parallel()
	p := openSingle(t, Desk)
	p.speak("de")
	p.The("heading", "Der Vergleich")
	p.kept()
	p.Reload()
	p.started()
	p.The("heading", "Der Vergleich")
	if found := p.forbidden(); len(found) > 0 {
		t.Errorf("the file's policy forbids %q", found)
	}
}

// Unless one is chosen, the browser's languages decide.
func TestTheLanguageFollowsTheBrowser(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ accepts, want string }{
		{"de-AT,en", "de"},
		{"fr,de,en", "de"},
		{"fr,it", "en"},
		{"en-GB,de", "en"},
	} {
		t.Run(c.accepts, func(t *testing.T) {
			t.Parallel()
			p := browser.Open(t, server.URL+"icon.svg", Desk)
			agent := Eval[string](p, "navigator.userAgent")
			Call(p, emulation.SetUserAgentOverride, emulation.SetUserAgentOverrideParams{UserAgent: agent, AcceptLanguage: c.accepts})
			p.Navigate(server.URL)
			p.Until("the masthead is there", "document.querySelector('#masthead select')")
			if got := Eval[string](p, "document.documentElement.lang"); got != c.want {
				t.Errorf("the page speaks %s, want %s", got, c.want)
			}
			if got := Eval[string](p, "[...document.querySelectorAll('#masthead select')].at(-1).value"); got != "auto" {
				t.Errorf("the choice is %q", got)
			}
		})
	}
}

// A language that cannot be had leaves the page as it is.
func TestALanguageThatIsNotThere(t *testing.T) {
	t.Parallel()
	p := openPage(t, Desk)
	p.Eval("document.querySelector('link[hreflang=de]').href = 'data:text/javascript,0'")
	p.Eval("(s => { s.value = 'de'; s.dispatchEvent(new Event('change', { bubbles: true })) })([...document.querySelectorAll('#masthead select')].at(-1))")
	p.Until("it says so", "document.querySelector('.note.error')?.innerText.includes('could not be loaded')")
	p.The("heading", "The balance")
	p.mass(gearbox).Fill("2500")
	p.until("it works on", func() bool { return p.mass(gearbox).Value() == "2500" })
	p.Wrongs() // that the policy has refused the script is told in the console
	p.Key(kb.Escape)
}

// The first screen has its words before the rest of the language is there. When that
// does not come, the page goes over to English, which it has, and works.
func TestTheRestOfALanguageThatDoesNotCome(t *testing.T) {
	t.Parallel()
	p := browser.Open(t, server.URL+"icon.svg", Desk)
	p.Preload(`localStorage.setItem('steelyard.language', 'de');
		window.spoke = new Set();
		new MutationObserver(() => {
			const rest = document.querySelector('link[rel=steelyard-texts-rest]');
			if (rest) rest.href = 'data:text/javascript,0';
			const heading = document.querySelector('#balance h2')?.innerText;
			if (heading) window.spoke.add(heading);
		}).observe(document, { childList: true, subtree: true, characterData: true })`)
	p.Navigate(server.URL)
	p.Until("it says so", "document.querySelector('.note.error')?.innerText.includes('could not be loaded')")
	p.The("heading", "The balance")
	if spoke := Eval[[]string](p, "[...window.spoke]"); !slices.Contains(spoke, "Der Vergleich") {
		t.Errorf("the first screen said %q", spoke)
	}
	p.started()
	p.mass(gearbox).Fill("2500")
	p.until("it works on", func() bool { return p.mass(gearbox).Value() == "2500" })
	p.Wrongs() // that the policy has refused the script is told in the console
	p.Key(kb.Escape)
}
