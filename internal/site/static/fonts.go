package static

import (
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goitalic"
	"golang.org/x/image/font/gofont/gomono"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/gofont/gosmallcaps"
)

// fonts are the page's: the same faces that the canvas writes its labels in.
var fonts = map[string][]byte{
	"go-regular.ttf":   goregular.TTF,
	"go-bold.ttf":      gobold.TTF,
	"go-italic.ttf":    goitalic.TTF,
	"go-mono.ttf":      gomono.TTF,
	"go-smallcaps.ttf": gosmallcaps.TTF,
}

func (s site) addFonts() {
	for name, ttf := range fonts {
		s["fonts/"+name] = ttf
	}
}
