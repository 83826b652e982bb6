package web

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/png"

	"github.com/boombuler/barcode"
	"github.com/boombuler/barcode/qr"

	"axlewright/shop"
)

// squareCode makes the square code of a text as a PNG: black on white with the
// quiet border that readers want.
func squareCode(text string) ([]byte, error) {
	code, err := qr.Encode(text, qr.M, qr.Unicode)
	if err != nil {
		return nil, err
	}
	const module, border = 4, 4
	n := code.Bounds().Dx()
	code, err = barcode.Scale(code, n*module, n*module)
	if err != nil {
		return nil, err
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
		return nil, err
	}
	return out.Bytes(), nil
}

// certificateCode is the square code of the job's newest certificate.
func certificateCode(v *visit) error {
	j, err := v.job()
	if err != nil {
		return err
	}
	all := j.Certificates()
	if len(all) == 0 {
		return shop.Fault(shop.NotFound, "No certificate has been given for this unit yet.")
	}
	code, err := squareCode(all[len(all)-1].Text())
	if err != nil {
		return fmt.Errorf("the square code of a certificate: %w", err)
	}
	v.w.Header().Set("Content-Type", "image/png")
	_, err = v.w.Write(code)
	return err
}
