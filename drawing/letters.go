package drawing

import (
	"fmt"
	"sync"

	"github.com/go-fonts/dejavu/dejavusanscondensed"
	"github.com/go-fonts/dejavu/dejavusanscondensedbold"
	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// Pictures and papers are measured with the letters that papers are printed in:
// DejaVu Sans Condensed, regular and bold.
var faces = [2][]byte{dejavusanscondensed.TTF, dejavusanscondensedbold.TTF}

// A typeface is a font ready to be asked.
type typeface struct {
	font  *sfnt.Font
	latin [0x180]float64 // widths of the letters that nearly every text is made of
}

var readFaces = sync.OnceValue(func() (list [2]*typeface) {
	for i, data := range faces {
		f, err := sfnt.Parse(data)
		if err != nil { // the fonts are part of the program
			panic(fmt.Sprintf("the font of the pictures: %v", err))
		}
		list[i] = &typeface{font: f}
		for r := range list[i].latin {
			list[i].latin[r] = list[i].read(rune(r))
		}
	}
	return list
})

// faceOf is the regular or the bold face.
func faceOf(bold bool) *typeface {
	if bold {
		return readFaces()[1]
	}
	return readFaces()[0]
}

// noLetter is the width of a letter that a face does not have, or has where the
// font of a PDF does not reach.
const noLetter = -1

// width of a letter in thousandths of its size, noLetter where there is none.
func (f *typeface) width(r rune) float64 {
	if r >= 0 && int(r) < len(f.latin) {
		return f.latin[r]
	}
	return f.read(r)
}

func (f *typeface) read(r rune) float64 {
	if r > 0xFFFF {
		return noLetter
	}
	var b sfnt.Buffer
	i, err := f.font.GlyphIndex(&b, r)
	if err != nil || i == 0 {
		return noLetter
	}
	w, err := f.font.GlyphAdvance(&b, i, fixed.I(1000), font.HintingNone)
	if err != nil {
		return noLetter
	}
	return float64(w) / 64
}
