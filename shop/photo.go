package shop

import (
	"bytes"
	"image"
	"image/color"
	"image/jpeg"
	_ "image/png" // decoder
	"sync"

	"golang.org/x/image/draw"
	_ "golang.org/x/image/webp" // decoder
)

// Limits of a photograph.
const (
	MaxUpload  = 25 << 20   // bytes as sent
	maxPixels  = 50_000_000 // before it is decoded
	longSide   = 2560       // as kept
	thumbSide  = 320
	fullJPEG   = 88 // quality
	thumbJPEG  = 75
	maxPerSide = 20_000
)

// A Photo is a photograph as the shop keeps it: upright, without what the
// camera noted (place, time, owner), not larger than a wall screen needs.
type Photo struct {
	Full, Thumb             []byte // JPEG
	Width, Height           int
	ThumbWidth, ThumbHeight int
}

// CleanPhoto reads a JPEG, PNG or WebP picture and makes it anew from its
// pixels alone. Anything else, anything too large and anything that only
// claims to be a picture is refused.
func CleanPhoto(upload []byte) (Photo, error) {
	if len(upload) > MaxUpload {
		return Photo{}, Fault(TooLarge, "A photograph has at most 25 MB.").At("photo")
	}
	if kind := tooNew(upload); kind != "" {
		return Photo{}, Fault(Invalid, "This photograph is in the form %s, which many devices cannot show: set the camera to save JPEG, or save a copy as JPEG, and add that.", kind).At("photo")
	}
	unreadable := Fault(Invalid, "This is not a photograph that can be read: send JPEG, PNG or WebP.").At("photo")
	// The head says how large it will become: a small file can hold a huge picture.
	config, format, err := image.DecodeConfig(bytes.NewReader(upload))
	if err != nil {
		return Photo{}, unreadable.Because(err)
	}
	if config.Width < 1 || config.Height < 1 || config.Width > maxPerSide || config.Height > maxPerSide || config.Width*config.Height > maxPixels {
		return Photo{}, Fault(TooLarge, "A photograph has at most 50 million points; this one has %d × %d.", config.Width, config.Height).At("photo")
	}
	decoding.Lock() // one at a time: each may take hundreds of megabytes
	defer decoding.Unlock()
	picture, _, err := image.Decode(bytes.NewReader(upload))
	if err != nil {
		return Photo{}, unreadable.Because(err)
	}
	full := turned(scaled(picture, longSide), orientationOf(format, upload))
	thumb := scaled(full, thumbSide)
	p := Photo{Width: full.Bounds().Dx(), Height: full.Bounds().Dy(), ThumbWidth: thumb.Bounds().Dx(), ThumbHeight: thumb.Bounds().Dy()}
	if p.Full, err = encoded(full, fullJPEG); err != nil {
		return Photo{}, err
	}
	p.Thumb, err = encoded(thumb, thumbJPEG)
	return p, err
}

var decoding sync.Mutex

// tooNew names the forms that new telephones save photographs in and that are
// not read here, "" for any other. ISO/IEC 14496-12, 4.3: the file begins with a
// box "ftyp" and a brand; the brands are those of ISO/IEC 23008-12, 10 (HEIC) and
// of AVIF 1.1, 6 (from memory).
func tooNew(upload []byte) string {
	if len(upload) < 12 || string(upload[4:8]) != "ftyp" {
		return ""
	}
	switch string(upload[8:12]) {
	case "heic", "heix", "heim", "heis", "hevc", "hevx", "mif1", "msf1":
		return "HEIC"
	case "avif", "avis":
		return "AVIF"
	}
	return ""
}

// scaled draws the picture on white paper, at most so many points long.
func scaled(src image.Image, most int) *image.RGBA {
	b := src.Bounds()
	w, h := b.Dx(), b.Dy()
	if long := max(w, h); long > most {
		w, h = max(w*most/long, 1), max(h*most/long, 1)
	}
	dst := image.NewRGBA(image.Rect(0, 0, w, h))
	draw.Draw(dst, dst.Bounds(), image.NewUniform(color.White), image.Point{}, draw.Src)
	if w == b.Dx() && h == b.Dy() {
		draw.Draw(dst, dst.Bounds(), src, b.Min, draw.Over)
	} else {
		draw.CatmullRom.Scale(dst, dst.Bounds(), src, b, draw.Over, nil)
	}
	return dst
}

func encoded(picture image.Image, quality int) ([]byte, error) {
	var out bytes.Buffer
	if err := jpeg.Encode(&out, picture, &jpeg.Options{Quality: quality}); err != nil {
		return nil, Fault(Internal, "The photograph cannot be written.").Because(err)
	}
	return out.Bytes(), nil
}
