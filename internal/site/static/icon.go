package static

import (
	"bytes"
	"fmt"
	"image"
	"image/draw"
	"image/png"

	"github.com/fyne-io/oksvg"
	"github.com/srwiley/rasterx"
)

// Icons for those who install the site are drawn from web/icon.svg, so that
// there is one drawing. Its first shape is the ground.

// icons are the sizes in px, by file name. A maskable icon fills its square,
// since the system cuts it to a shape of its own, and keeps what matters within
// the middle circle of four fifths of its width (W3C, Web Application Manifest).
var icons = map[string]struct {
	size     int
	maskable bool
}{
	"icons/icon-192.png":          {192, false},
	"icons/icon-512.png":          {512, false},
	"icons/icon-maskable-512.png": {512, true},
	"icons/icon-180.png":          {180, true}, // for systems that round the corners themselves
}

// maskableShrink brings all of the drawing but its ground into the middle circle.
const maskableShrink = 0.64

// addIcons draws all of them.
func (s site) addIcons(svg []byte) error {
	for name, icon := range icons {
		data, err := drawIcon(svg, icon.size, icon.maskable)
		if err != nil {
			return fmt.Errorf("%s from icon.svg: %w", name, err)
		}
		s[name] = data
	}
	return nil
}

// drawIcon draws a square SVG as a PNG of size px.
func drawIcon(svg []byte, size int, maskable bool) ([]byte, error) {
	drawing, err := oksvg.ReadIconStream(bytes.NewReader(svg), oksvg.StrictErrorMode)
	if err != nil {
		return nil, err
	}
	if box := drawing.ViewBox; box.W != box.H || !(box.W > 0) || len(drawing.SVGPaths) == 0 {
		return nil, fmt.Errorf("%d shapes in a view of %g by %g; right would be some in a square", len(drawing.SVGPaths), box.W, box.H)
	}
	img := image.NewRGBA(image.Rect(0, 0, size, size))
	side, margin := float64(size), 0.
	if maskable {
		ground := drawing.SVGPaths[0].GetFillColor()
		if ground == nil {
			return nil, fmt.Errorf("the first shape, the ground, has no fill")
		}
		draw.Draw(img, img.Rect, image.NewUniform(ground), image.Point{}, draw.Src)
		side *= maskableShrink
		margin = (float64(size) - side) / 2
	}
	drawing.SetTarget(margin, margin, side, side)
	for i := range drawing.SVGPaths { // SetTarget leaves strokes as thick as they are
		drawing.SVGPaths[i].LineWidth *= side / drawing.ViewBox.W
	}
	drawing.Draw(rasterx.NewDasher(size, size, rasterx.NewScannerGV(size, size, img, img.Rect)), 1)
	var out bytes.Buffer
	if err := (&png.Encoder{CompressionLevel: png.BestCompression}).Encode(&out, img); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}
