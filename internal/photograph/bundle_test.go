package photograph

import (
	"bytes"
	"encoding/base64"
	"encoding/json"
	"image"
	"image/jpeg"
	"image/png"
	"strings"
	"testing"

	"steelyard/internal/document"
)

// drawn is a picture of a size as a JPEG file, w by h.
func drawn(t testing.TB, w, h int) string {
	t.Helper()
	var b bytes.Buffer
	if err := jpegEncode(&b, w, h); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func jpegEncode(b *bytes.Buffer, w, h int) error {
	m := image.NewGray(image.Rect(0, 0, w, h))
	for i := range m.Pix {
		m.Pix[i] = byte(i * i)
	}
	return jpeg.Encode(b, m, nil)
}

// told puts a segment of a kind behind the beginning of a JPEG file.
func told(file string, kind byte, what string) string {
	n := len(what) + 2
	return file[:2] + string([]byte{0xff, kind, byte(n >> 8), byte(n)}) + what + file[2:]
}

func TestLookBeforeDecoding(t *testing.T) {
	var p bytes.Buffer
	if err := png.Encode(&p, image.NewGray(image.Rect(0, 0, 640, 400))); err != nil {
		t.Fatal(err)
	}
	wide := []byte(p.String()[:40])
	copy(wide[16:], "\x00\x00\x00\x01\x00\x01\x86\xa0") // 1 by 100 000
	vast := []byte(p.String()[:40])
	copy(vast[16:], "\x00\x00\x4e\x20\x00\x00\x4e\x20") // 20 000 by 20 000
	endless := []byte(p.String()[:40])
	copy(endless[16:], "\xff\xff\xff\xff\xff\xff\xff\xff")
	webp := func(chunk, data string) string {
		return "RIFF\x00\x00\x00\x00WEBP" + chunk + "\x00\x00\x00\x00" + data + strings.Repeat("\x00", 20)
	}
	for name, c := range map[string]struct {
		head  string
		bytes float64
		w, h  int
	}{
		"png":            {p.String(), 1e5, 640, 400},
		"jpeg":           {drawn(t, 3000, 2000), 1e6, 3000, 2000},
		"telephone":      {told(drawn(t, 800, 600), 0xe1, "Exif\x00\x00"+strings.Repeat("\xff\xd8\xff\xc0", 9000)), 1e6, 800, 600},
		"filled":         {"\xff\xd8\xff\xff\xff" + drawn(t, 800, 600)[2:], 1e6, 800, 600},
		"webp, extended": {webp("VP8X", "\x00\x00\x00\x00\x7f\x02\x00\x8f\x01\x00"), 1e5, 640, 400},
		"webp, lossless": {webp("VP8L", "\x2f\x7f\xc2\x63\x00"), 1e5, 640, 400},
		"webp":           {webp("VP8 ", "\x00\x00\x00\x9d\x01\x2a\x80\x02\x90\x01"), 1e5, 640, 400},
		"large file":     {p.String(), 200e6, 0, 0},
		"no number":      {"", 0, 0, 0},
		"text":           {"hello, this is no picture at all", 32, 0, 0},
		"svg":            {"<svg xmlns='http://www.w3.org/2000/svg'/>", 40, 0, 0},
		"gif":            {"GIF89a\x80\x02\x90\x01", 1000, 0, 0},
		"1 by 100 000":   {string(wide), 1000, 0, 0},
		"400 million px": {string(vast), 1000, 0, 0},
		"endless":        {string(endless), 1000, 0, 0},
		"cut png":        {p.String()[:20], 20, 0, 0},
		"cut jpeg":       {drawn(t, 800, 600)[:20], 20, 0, 0},
		"empty jpeg":     {"\xff\xd8", 2, 0, 0},
		"cut webp":       {webp("VP8X", "")[:30], 30, 0, 0},
	} {
		s, err := Look(c.head, c.bytes)
		switch {
		case c.w == 0 && err == nil:
			t.Errorf("%s: taken as %+v", name, s)
		case c.w > 0 && (err != nil || s.Width != c.w || s.Height != c.h):
			t.Errorf("%s: %+v, %v", name, s, err)
		case c.w > longKept && (s.Keep.Width != longKept || s.Keep.Height != c.h*longKept/c.w), c.w > 0 && c.w <= longKept && s.Keep.Width != c.w:
			t.Errorf("%s is kept as %+v", name, s.Keep)
		}
	}
}

func photographs(t testing.TB, of ...Photograph) string {
	t.Helper()
	text, err := json.Marshal(of)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

func one(file string) Photograph {
	return Photograph{
		ID: "k3", Width: 300, Height: 200, Scale: ByWheelbase, Distance: 5, Within: 3,
		Marks: []Mark{{"saddle", 10, 20}}, Picture: base64.StdEncoding.EncodeToString([]byte(file)),
	}
}

const plainDocument = `{
	"format": "steelyard-document",
	"version": 1,
	"title": "a {\"photographs\": [1]} \\",
	"show": {"mass": "kg", "length": "mm"},
	"builds": []
}
`

// A file has its photographs back, and its document as it was; what a camera had told
// of place and time is gone.
func TestBundleAndBack(t *testing.T) {
	file := drawn(t, 300, 200)
	secret := told(told(file, 0xe1, "Exif\x00\x00 47.05 N, 8.31 E"), 0xfe, "on the 3rd of May")
	secret += "and more behind its end"
	text := Bundle(plainDocument, photographs(t, one(secret)))
	rest, got, err := Unbundle(text)
	if err != nil || len(got) != 1 || strings.Join(strings.Fields(rest), "") != strings.Join(strings.Fields(plainDocument), "") {
		t.Fatalf("%v, %d photographs, %s", err, len(got), rest)
	}
	if d, problems := document.Open([]byte(rest)); d == nil {
		t.Error(problems)
	}
	if p := got[0]; p.ID != "k3" || len(p.Marks) != 1 || p.Picture != one(file).Picture {
		t.Errorf("%.100s is another picture", p.Picture)
	}
	raw, _ := base64.StdEncoding.DecodeString(got[0].Picture)
	if m, err := jpeg.Decode(bytes.NewReader(raw)); err != nil || m.Bounds().Dx() != 300 {
		t.Error("it does not decode", err)
	}
	if Bundle(plainDocument, "[]") != plainDocument || Bundle(plainDocument, "") != plainDocument {
		t.Error("a file without photographs is another one")
	}
	// Wherever in the file they stand.
	for _, text := range []string{
		`{"photographs":` + photographs(t, one(file)) + `,"format":"x"}`,
		`{"format":"x" , "photographs" : ` + photographs(t, one(file)) + `}`,
	} {
		if rest, got, err := Unbundle(text); err != nil || len(got) != 1 || strings.ReplaceAll(rest, " ", "") != `{"format":"x"}` {
			t.Errorf("%v, %d, %s", err, len(got), rest)
		}
	}
}

// A photograph that is wrong is left out and told of; the document is read.
func TestBrokenPhotographsAreLeftOut(t *testing.T) {
	file := drawn(t, 300, 200)
	for name, spoil := range map[string]func(p *Photograph){
		"none":         func(p *Photograph) { p.Picture = "" },
		"no base64":    func(p *Photograph) { p.Picture = "…" },
		"no jpeg":      func(p *Photograph) { p.Picture = base64.StdEncoding.EncodeToString([]byte("<svg onload=alert(1)>")) },
		"cut":          func(p *Photograph) { p.Picture = one(file[:len(file)/2]).Picture },
		"another size": func(p *Photograph) { p.Width = 301 },
		"too large": func(p *Photograph) {
			*p = one(drawn(t, longKept+1, 200))
			p.Width = longKept + 1
		},
		"marks": func(p *Photograph) { p.Marks[0].X = 301 },
		"id":    func(p *Photograph) { p.ID = "current" + strings.Repeat("x", 40) },
	} {
		p := one(file)
		spoil(&p)
		rest, got, err := Unbundle(Bundle(plainDocument, photographs(t, p, one(file))))
		if len(got) != 1 || err == nil {
			t.Errorf("%s: %d photographs, %v", name, len(got), err)
		}
		if d, problems := document.Open([]byte(rest)); d == nil {
			t.Errorf("%s: %v", name, problems)
		}
	}
	for _, value := range []string{`{}`, `[1]`, `[null]`, `[{"id":[]}]`, `{"a":["]"]}`} {
		rest, got, err := Unbundle(`{"format":"x","photographs":` + value + `}`)
		if len(got) != 0 || err == nil || rest != `{"format":"x"}` {
			t.Errorf("%s: %d, %v, %s", value, len(got), err, rest)
		}
	}
}

// Whatever a file holds, what comes out of it is sound, and what is left out is told;
// a text without photographs stays as it is.
func FuzzUnbundle(f *testing.F) {
	f.Add(plainDocument)
	small := one(drawn(f, 8, 8))
	small.Width, small.Height, small.Marks = 8, 8, nil
	f.Add(Bundle(plainDocument, photographs(f, small)))
	f.Add(`{"photographs":[{"id":"a","width":1,"height":1,"picture":"/9j/2Q=="}]}`)
	f.Add(`{"photographs":["\`)
	f.Fuzz(func(t *testing.T, text string) {
		rest, got, err := Unbundle(text)
		if len(rest) > len(text) || rest == text && (len(got) > 0 || err != nil) {
			t.Errorf("%d photographs, %v, left %q", len(got), err, rest)
		}
		for i := range got {
			p := got[i]
			if p.check() != nil || !p.picture() || p.Picture != got[i].Picture {
				t.Errorf("%+v is not sound", p)
			}
		}
		if json.Valid([]byte(text)) && !json.Valid([]byte(rest)) {
			t.Errorf("%q becomes %q", text, rest)
		}
	})
}

// Whatever the beginning of a file is, it is judged, and what is kept is small.
func FuzzLook(f *testing.F) {
	f.Add(drawn(f, 300, 200), 1e4)
	f.Add("RIFF\x00\x00\x00\x00WEBPVP8X\x00\x00\x00\x00\x00\x00\x00\x00\x7f\x02\x00\x8f\x01\x00", 1e4)
	f.Add("\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR\x00\x00\x02\x80\x00\x00\x01\x90", 1e4)
	f.Fuzz(func(t *testing.T, head string, bytes float64) {
		s, err := Look(head, bytes)
		if err == nil && (s.Keep.Width < 1 || s.Keep.Height < 1 || max(s.Keep.Width, s.Keep.Height) > longKept || s.Width*s.Height > maxPixels) {
			t.Errorf("%+v", s)
		}
	})
}
