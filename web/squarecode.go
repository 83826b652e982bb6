package web

import (
	"bytes"
	"image/color"
	"image/png"

	"image"

	"github.com/boombuler/barcode"
	"github.com/boombuler/barcode/qr"
)

// squareCode makes the square code of a text as the source of a picture: black
// on white with the quiet border that readers want.
func squareCode(text string) (string, error) {
	code, err := qr.Encode(text, qr.M, qr.Unicode)
	if err != nil {
		return "", err
	}
	const module, border = 4, 4
	n := code.Bounds().Dx()
	code, err = barcode.Scale(code, n*module, n*module)
	if err != nil {
		return "", err
	}
	side := (n + 2*border) * module
	img := image.NewGray(image.Rect(0, 0, side, side))
	for y := range side {
		for x := range side {
			img.SetGray(x, y, color.Gray{255})
		}
	}
	for y := range n * module {
		for x := range n * module {
			img.Set(x+border*module, y+border*module, code.At(x, y))
		}
	}
	var out bytes.Buffer
	if err := png.Encode(&out, img); err != nil {
		return "", err
	}
	return asPicture(out.Bytes()), nil
}
