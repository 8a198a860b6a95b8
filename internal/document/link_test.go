package document_test

import (
	"bytes"
	"compress/zlib"
	"encoding/base64"
	"math/rand/v2"
	"runtime"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"steelyard/internal/document"
	"steelyard/internal/document/documenttest"
)

func TestLinkRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.SliceOf(rapid.Byte()).Draw(t, "text")
		link, err := document.EncodeLink(text)
		if err != nil {
			t.Fatal(err)
		}
		if strings.Trim(link, "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_.") != "" {
			t.Fatalf("%q has characters that an address does not bear", link)
		}
		for _, as := range []string{link, "#" + link, link + "==", link[:len(link)/2] + "\r\n " + link[len(link)/2:]} {
			back, err := document.DecodeLink(as)
			if err != nil || !bytes.Equal(back, text) {
				t.Fatalf("%q: %v", as, err)
			}
		}
	})
}

// The demo's size, two builds of sixty parts, must stay well below what
// messengers and browsers bear.
func TestLinkLength(t *testing.T) {
	text, err := document.WriteCompact(documenttest.TwoBuilds(60))
	if err != nil {
		t.Fatal(err)
	}
	link, err := document.EncodeLink(text)
	if err != nil {
		t.Fatal(err)
	}
	if len(link) > len(text)/4 {
		t.Errorf("a link of %d characters for a text of %d", len(link), len(text))
	}
	d, problems := openLink(t, link)
	if d == nil || len(d.Builds[1].Parts) != 60 {
		t.Error(problems)
	}
}

// What a link is called stands before it, in letters that an address bears, and a
// link without is read as ever.
func TestCallLink(t *testing.T) {
	link, err := document.EncodeLink([]byte("{}"))
	if err != nil {
		t.Fatal(err)
	}
	named := func(title string, builds ...string) *document.Document {
		d := &document.Document{Title: title}
		for _, name := range builds {
			d.Builds = append(d.Builds, document.Build{Name: name})
		}
		return d
	}
	long := strings.Repeat("long ", 30)
	for _, c := range []struct {
		of   *document.Document
		want string
	}{
		{named(""), ""},
		{named("  ", " "), ""},
		{named("Travel bike", "Hub", "Gearbox"), "Travel_bike,_Hub,_Gearbox="},
		{named("", "Hub"), "Hub="},
		{named("a=sy1.b&c#d_e%", long, "f"), "a%3Dsy1%2Eb%26c%23d%5Fe%25,_f="},
		{named("Rad für\nunterwegs"), "Rad_f%C3%BCr_unterwegs="},
		{named(long), strings.Repeat("long_", 16) + "%E2%80%A6="},
	} {
		called := document.CallLink(link, c.of)
		if called != c.want+link {
			t.Errorf("%q, %d builds: %q", c.of.Title, len(c.of.Builds), called)
		}
		for _, as := range []string{called, "#" + called, called + "=="} {
			if text, err := document.DecodeLink(as); err != nil || string(text) != "{}" {
				t.Errorf("%q: %q, %v", as, text, err)
			}
		}
	}
}

func openLink(t *testing.T, link string) (*document.Document, []document.Problem) {
	t.Helper()
	text, err := document.DecodeLink(link)
	if err != nil {
		t.Fatal(err)
	}
	return document.Open(text)
}

func TestDecodeLinkErrors(t *testing.T) {
	good, err := document.EncodeLink([]byte(strings.Repeat(`{"mass_g": 350, "name": "Rear hub"} `, 40)))
	if err != nil {
		t.Fatal(err)
	}
	body := strings.TrimPrefix(good, document.LinkPrefix)
	pack := func(raw []byte) string { return document.LinkPrefix + base64.RawURLEncoding.EncodeToString(raw) }
	raw, err := base64.RawURLEncoding.DecodeString(body)
	if err != nil {
		t.Fatal(err)
	}
	sum := bytes.Clone(raw)
	sum[len(sum)-1] ^= 1
	for _, c := range []struct{ name, link, says string }{
		{"empty", "", "holds no document"},
		{"another fragment", "#help", "holds no document"},
		{"a newer kind", "sy2.abc", `kind "sy2"`},
		{"only the prefix", document.LinkPrefix, "cut short"},
		{"a letter of no link", document.LinkPrefix + "abc!def", "character 4"},
		{"plain base64", document.LinkPrefix + "ab+/", "character 3"},
		{"the checksum", pack(sum), "checksum"},
		{"no deflate", pack([]byte("hello, this is nothing")), "damaged"},
		{"too long", document.LinkPrefix + strings.Repeat("A", document.MaxLink), "longer than any"},
	} {
		if text, err := document.DecodeLink(c.link); err == nil || !strings.Contains(err.Error(), c.says) || text != nil {
			t.Errorf("%s: %v", c.name, err)
		}
	}
	for n := range len(good) {
		if _, err := document.DecodeLink(good[:n]); err == nil {
			t.Errorf("a link cut after %d of %d characters is read", n, len(good))
		} else if n > len(document.LinkPrefix)+8 && !strings.Contains(err.Error(), "cut short") {
			t.Errorf("cut after %d: %v", n, err)
		}
	}
	// Any one letter changed is noticed.
	for i := len(document.LinkPrefix); i < len(good); i++ {
		other := byte('A')
		if good[i] == other {
			other = 'B'
		}
		if back, err := document.DecodeLink(good[:i] + string(other) + good[i+1:]); err == nil {
			if again, _ := document.EncodeLink(back); again != good {
				t.Errorf("letter %d changed gives another text", i)
			}
		}
	}
}

// A bomb of half a gigabyte is refused once it has unpacked to the limit.
func TestLinkBomb(t *testing.T) {
	// Between two flushes a deflate stream is whole bytes, and a mebibyte of
	// zeros after another one deflates to the same bytes again and again.
	var packed bytes.Buffer
	z := zlib.NewWriter(&packed)
	zeros := make([]byte, 1<<20)
	var ends [3]int
	for i := range ends {
		if _, err := z.Write(zeros); err != nil {
			t.Fatal(err)
		}
		if err := z.Flush(); err != nil {
			t.Fatal(err)
		}
		ends[i] = packed.Len()
	}
	again := packed.Bytes()[ends[1]:ends[2]]
	bomb := append(bytes.Clone(packed.Bytes()), bytes.Repeat(again, 509)...)
	link := document.LinkPrefix + base64.RawURLEncoding.EncodeToString(bomb)

	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	_, err := document.DecodeLink(link)
	runtime.ReadMemStats(&after)
	if err == nil || !strings.Contains(err.Error(), "8 MiB") {
		t.Error(err)
	}
	// Growing a buffer to the limit takes a few times the limit.
	if used := after.TotalAlloc - before.TotalAlloc; used > 8*document.MaxText {
		t.Errorf("%d MiB allocated", used>>20)
	}
	// Cut after the sixth mebibyte it would have fitted: it is the bomb's size
	// that is refused, not its form.
	if _, err := document.DecodeLink(document.LinkPrefix + base64.RawURLEncoding.EncodeToString(bomb[:ends[2]+3*len(again)])); err == nil || err.Error() != document.ErrCutShort.Error() {
		t.Error(err)
	}
}

func TestLinkLimits(t *testing.T) {
	if _, err := document.EncodeLink(make([]byte, document.MaxText+1)); err == nil || !strings.Contains(err.Error(), "share it as a file") {
		t.Error(err)
	}
	// What cannot be deflated still fits when it is of the largest size: it grows
	// by less than a thousandth, and by a third in base64.
	noise := make([]byte, 1<<18)
	random := rand.New(rand.NewPCG(1, 2))
	for i := range noise {
		noise[i] = byte(random.Uint32())
	}
	link, err := document.EncodeLink(noise)
	if err != nil {
		t.Fatal(err)
	}
	longest := func(n int) int { return 100 + (n+n/1000)*4/3 }
	if len(link) > longest(len(noise)) || longest(document.MaxText) > document.MaxLink {
		t.Errorf("%d characters for %d bytes of noise", len(link), len(noise))
	}
	if back, err := document.DecodeLink(link); err != nil || !bytes.Equal(back, noise) {
		t.Error(err)
	}
}

func FuzzDecodeLink(f *testing.F) {
	for _, text := range []string{"", "{}", strings.Repeat(`{"mass_g":350},`, 20)} {
		link, err := document.EncodeLink([]byte(text))
		if err != nil {
			f.Fatal(err)
		}
		f.Add(link)
	}
	f.Add("#sy1.")
	f.Add("Travel_bike=sy1.eJyrrgUAAXUA-Q")
	f.Add("sy1.!\x00é")
	f.Fuzz(func(t *testing.T, fragment string) {
		text, err := document.DecodeLink(fragment)
		if err != nil {
			if err.Error() == "" || text != nil {
				t.Errorf("%q with %d bytes", err, len(text))
			}
			return
		}
		if len(text) > document.MaxText {
			t.Errorf("%d bytes", len(text))
		}
		link, err := document.EncodeLink(text)
		if err != nil {
			t.Fatal(err)
		}
		if back, err := document.DecodeLink(link); err != nil || !bytes.Equal(back, text) {
			t.Errorf("%q comes back as %q, %v", text, back, err)
		}
	})
}

func BenchmarkLink(b *testing.B) {
	text, err := document.WriteCompact(documenttest.TwoBuilds(60))
	if err != nil {
		b.Fatal(err)
	}
	link, err := document.EncodeLink(text)
	if err != nil {
		b.Fatal(err)
	}
	b.Run("encode", func(b *testing.B) {
		for b.Loop() {
			if _, err := document.EncodeLink(text); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("decode", func(b *testing.B) {
		b.ReportMetric(float64(len(link)), "characters")
		for b.Loop() {
			if _, err := document.DecodeLink(link); err != nil {
				b.Fatal(err)
			}
		}
	})
}
