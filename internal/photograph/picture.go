package photograph

import (
	"encoding/base64"
	"encoding/binary"
	"strings"

	"steelyard/internal/words"
)

// Limits of a picture file. Telephones make 3 to 15 MB and up to 50 million px; the
// least is what leaves anything to mark.
const (
	maxFile   = 60 << 20   // bytes
	maxPixels = 64_000_000 // of what is decoded: four bytes of memory each
	leastSide = 200        // px
	longKept  = 2400       // px, of the longer side, as it is kept
	maxKept   = 4 << 20    // bytes, as it is kept
)

// Size is how large a picture is, and how large it is kept.
type Size struct {
	Width  int `json:"width"`
	Height int `json:"height"`
	Keep   struct {
		Width  int `json:"width"`
		Height int `json:"height"`
	} `json:"keep"`
}

// Look finds out from the beginning of a file of so many bytes whether it is a
// picture that can be kept, before anybody decodes it: a JPEG, PNG or WebP file of a
// sound size. What is wrong otherwise is told in the error.
func Look(head string, bytes float64) (*Size, error) {
	if bytes > maxFile {
		return nil, words.Tell("photograph.file.large", "most", maxFile>>20)
	}
	w, h := 0, 0
	switch {
	case strings.HasPrefix(head, "\x89PNG\r\n\x1a\n"):
		if len(head) >= 24 && head[12:16] == "IHDR" {
			w, h = big32(head[16:]), big32(head[20:])
		}
	case strings.HasPrefix(head, "\xff\xd8"):
		j := segments{text: head}
		for j.next() {
			if j.frame() {
				w, h = j.width, j.height
				break
			}
		}
	case len(head) >= 30 && head[:4] == "RIFF" && head[8:12] == "WEBP":
		switch d := head[20:]; head[12:16] { // RFC 9649
		case "VP8X":
			w, h = 1+little24(d[4:]), 1+little24(d[7:])
		case "VP8 ":
			w, h = little24(d[6:])&0x3fff, little24(d[8:10]+"\x00")&0x3fff
		case "VP8L":
			n := little24(d[1:]) | int(d[4])<<24
			w, h = 1+n&0x3fff, 1+n>>14&0x3fff
		}
	default:
		return nil, words.Tell("photograph.file.type")
	}
	switch {
	case w <= 0 || h <= 0:
		return nil, words.Tell("photograph.file.broken")
	case min(w, h) < leastSide:
		return nil, words.Tell("photograph.file.small", "width", w, "height", h, "least", leastSide)
	case max(w, h) > maxSide || w*h > maxPixels:
		return nil, words.Tell("photograph.file.pixels", "width", w, "height", h, "most", maxPixels/1_000_000)
	}
	s := &Size{Width: w, Height: h}
	long := max(w, h)
	s.Keep.Width, s.Keep.Height = w, h
	if long > longKept {
		s.Keep.Width, s.Keep.Height = max(1, w*longKept/long), max(1, h*longKept/long)
	}
	return s, nil
}

func big32(s string) int    { return int(binary.BigEndian.Uint32([]byte(s[:4]))) }
func little24(s string) int { return int(s[0]) | int(s[1])<<8 | int(s[2])<<16 }

// segments walks over the segments of a JPEG file (ITU-T T.81, annex B).
type segments struct {
	text          string
	at, end       int // of the segment: its marker, and behind it
	width, height int
}

// next goes to the next segment, and returns false behind the last.
func (j *segments) next() bool {
	if j.at = j.end; j.at == 0 {
		j.end = 2 // SOI
		return len(j.text) >= 2
	}
	for j.at+1 < len(j.text) && j.text[j.at] == 0xff && j.text[j.at+1] == 0xff {
		j.at++ // a segment may be filled up
	}
	if j.at+4 > len(j.text) || j.text[j.at] != 0xff {
		return false
	}
	j.end = j.at + 2 + int(j.text[j.at+2])<<8 + int(j.text[j.at+3])
	if j.end < j.at+4 || j.end > len(j.text) {
		return false
	}
	if j.text[j.at+1] == 0xda { // SOS: what it scans follows
		for j.end+1 < len(j.text) {
			if c := j.text[j.end+1]; j.text[j.end] == 0xff && c != 0 && (c < 0xd0 || c > 0xd7) {
				break
			}
			j.end++
		}
	}
	return true
}

// frame reads the size where the segment is the header of a frame.
func (j *segments) frame() bool {
	m := j.text[j.at+1]
	if m < 0xc0 || m > 0xcf || m == 0xc4 || m == 0xc8 || m == 0xcc || j.end-j.at < 9 {
		return false
	}
	d := j.text[j.at+5:]
	j.height, j.width = int(d[0])<<8|int(d[1]), int(d[2])<<8|int(d[3])
	return true
}

// plain returns a JPEG file without what is told in it beside the picture: when and
// where it was taken, and by what. It returns false for what is no whole file.
func plain(file string) (out string, width, height int, ok bool) {
	j := segments{text: file}
	var b strings.Builder
	for j.next() {
		m := file[j.at+1]
		if j.frame() {
			width, height = j.width, j.height
		}
		// APP0 is JFIF's, APP14 says what the colours are.
		if m >= 0xe1 && m <= 0xef && m != 0xee || m == 0xfe {
			continue
		}
		b.WriteString(file[j.at:j.end])
	}
	if !strings.HasPrefix(file[j.at:], "\xff\xd9") || width == 0 || height == 0 {
		return "", 0, 0, false
	}
	b.WriteString("\xff\xd9")
	return b.String(), width, height, true
}

// picture judges the picture of a photograph in a file, and leaves out of it what is
// none of it.
func (p *Photograph) picture() bool {
	if len(p.Picture) > base64.StdEncoding.EncodedLen(maxKept) {
		return false
	}
	raw, err := base64.StdEncoding.DecodeString(p.Picture)
	if err != nil || len(raw) < 4 || raw[0] != 0xff || raw[1] != 0xd8 {
		return false
	}
	file, w, h, ok := plain(string(raw))
	if !ok || w != p.Width || h != p.Height || max(w, h) > longKept {
		return false
	}
	if len(file) < len(raw) {
		p.Picture = base64.StdEncoding.EncodeToString([]byte(file))
	}
	return true
}
