package shop_test

import (
	"bytes"
	"encoding/base64"
	"encoding/binary"
	"fmt"
	"hash/crc32"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"strings"
	"testing"

	"axlewright/shop"
)

// corners is a picture whose four corners can be told apart, 80 × 40.
func corners() *image.RGBA {
	m := image.NewRGBA(image.Rect(0, 0, 80, 40))
	for y := range 40 {
		for x := range 80 {
			c := color.RGBA{255, 0, 0, 255} // top left red
			switch {
			case x >= 40 && y < 20:
				c = color.RGBA{0, 255, 0, 255}
			case x < 40 && y >= 20:
				c = color.RGBA{0, 0, 255, 255}
			case x >= 40:
				c = color.RGBA{255, 255, 255, 255}
			}
			m.SetRGBA(x, y, c)
		}
	}
	return m
}

type byteOrder interface {
	binary.ByteOrder
	binary.AppendByteOrder
}

// exif is a TIFF with orientation and a GPS position, as Exif 2.3 lays it out.
func exif(order byteOrder, orientation uint16) []byte {
	tiff := []byte("MM")
	if order.Uint16([]byte{1, 0}) == 1 {
		tiff = []byte("II")
	}
	tiff = order.AppendUint16(tiff, 42)
	tiff = order.AppendUint32(tiff, 8)
	tiff = order.AppendUint16(tiff, 2)
	field := func(tag, kind uint16, count, value uint32) {
		tiff = order.AppendUint16(order.AppendUint16(tiff, tag), kind)
		tiff = order.AppendUint32(tiff, count)
		if kind == 3 {
			tiff = order.AppendUint16(order.AppendUint16(tiff, uint16(value)), 0)
		} else {
			tiff = order.AppendUint32(tiff, value)
		}
	}
	field(274, 3, 1, uint32(orientation))
	field(34853, 4, 1, 38) // GPS directory
	tiff = order.AppendUint32(tiff, 0)
	return append(tiff, "GPS 54.4609 N 3.0886 W"...)
}

// jpegWith puts an APP1 segment into a JPEG (Exif 2.3, 4.5.4).
func jpegWith(t *testing.T, picture image.Image, tiff []byte) []byte {
	t.Helper()
	var plain bytes.Buffer
	if err := jpeg.Encode(&plain, picture, &jpeg.Options{Quality: 95}); err != nil {
		t.Fatal(err)
	}
	segment := append([]byte("Exif\x00\x00"), tiff...)
	head := binary.BigEndian.AppendUint16([]byte{0xFF, 0xD8, 0xFF, 0xE1}, uint16(len(segment)+2))
	return append(append(head, segment...), plain.Bytes()[2:]...)
}

// pngWith puts a chunk eXIf behind the head of a PNG (PNG, third edition, 5.3, 11.3.4.5).
func pngWith(t *testing.T, picture image.Image, tiff []byte) []byte {
	t.Helper()
	var plain bytes.Buffer
	if err := png.Encode(&plain, picture); err != nil {
		t.Fatal(err)
	}
	const head = 8 + 25 // signature and IHDR
	named := append([]byte("eXIf"), tiff...)
	out := append([]byte{}, plain.Bytes()[:head]...)
	out = append(binary.BigEndian.AppendUint32(out, uint32(len(tiff))), named...)
	out = binary.BigEndian.AppendUint32(out, crc32.ChecksumIEEE(named))
	return append(out, plain.Bytes()[head:]...)
}

// cornersWebP is corners() as libwebp 1.2.4 writes it, without loss.
const cornersWebP = "UklGRjoAAABXRUJQVlA4TC0AAAAvT8AJAB8gEEjeHzqN+RcQFPwf3fxHZA+ASIDEk570pI1MjOj/BAwWuhd46B4A"

// webpWith puts the extended head and a chunk EXIF round that (RFC 9649, 2.7).
func webpWith(t *testing.T, tiff []byte) []byte {
	t.Helper()
	plain, err := base64.StdEncoding.DecodeString(cornersWebP)
	if err != nil {
		t.Fatal(err)
	}
	out := []byte("WEBPVP8X\x0a\x00\x00\x00\x08\x00\x00\x00\x4f\x00\x00\x27\x00\x00") // EXIF inside, 80 × 40
	out = append(out, plain[12:]...)
	out = binary.LittleEndian.AppendUint32(append(out, "EXIF"...), uint32(len(tiff)))
	out = append(out, tiff...)
	if len(tiff)%2 == 1 {
		out = append(out, 0)
	}
	return append(binary.LittleEndian.AppendUint32([]byte("RIFF"), uint32(len(out))), out...)
}

// Which corner of what the camera wrote belongs at the top left, by Exif 2.3
// (JEITA CP-3451C), 4.6.4 A, "Orientation": 1 is row 0 top, column 0 left; 2 top
// right; 3 bottom right; 4 bottom left; 5 left top; 6 right top; 7 right bottom;
// 8 left bottom. So for 6, "the 0th row is the visual right-hand side and the
// 0th column the visual top", the top left is what was written bottom left.
func TestPhotographsStandUpright(t *testing.T) {
	red, green, blue, white := color.RGBA{255, 0, 0, 255}, color.RGBA{0, 255, 0, 255}, color.RGBA{0, 0, 255, 255}, color.RGBA{255, 255, 255, 255}
	for _, c := range []struct {
		orientation   uint16
		left, right   color.RGBA // of the upper edge
		tall          bool
		lower, lower2 color.RGBA
	}{
		{1, red, green, false, blue, white},
		{2, green, red, false, white, blue},
		{3, white, blue, false, green, red},
		{4, blue, white, false, red, green},
		{5, red, blue, true, green, white},
		{6, blue, red, true, white, green},
		{7, white, green, true, blue, red},
		{8, green, white, true, red, blue},
		{0, red, green, false, blue, white}, // no such value
		{9, red, green, false, blue, white},
	} {
		for _, order := range []byteOrder{binary.BigEndian, binary.LittleEndian} {
			tiff := exif(order, c.orientation)
			for form, upload := range map[string][]byte{"JPEG": jpegWith(t, corners(), tiff), "PNG": pngWith(t, corners(), tiff), "WebP": webpWith(t, tiff)} {
				t.Run(fmt.Sprint(form, c.orientation), func(t *testing.T) {
					p, err := shop.CleanPhoto(upload)
					if err != nil {
						t.Fatal(err)
					}
					if (p.Height > p.Width) != c.tall {
						t.Errorf("%d × %d", p.Width, p.Height)
					}
					m, err := jpeg.Decode(bytes.NewReader(p.Full))
					if err != nil {
						t.Fatal(err)
					}
					w, h := m.Bounds().Dx(), m.Bounds().Dy()
					for _, at := range []struct {
						x, y int
						want color.RGBA
					}{{w / 4, h / 4, c.left}, {3 * w / 4, h / 4, c.right}, {w / 4, 3 * h / 4, c.lower}, {3 * w / 4, 3 * h / 4, c.lower2}} {
						if !near(m.At(at.x, at.y), at.want) {
							t.Errorf("at %d, %d stands %v, want %v", at.x, at.y, m.At(at.x, at.y), at.want)
						}
					}
					for _, part := range []string{"GPS", "Exif", "54.4609"} {
						if bytes.Contains(p.Full, []byte(part)) || bytes.Contains(p.Thumb, []byte(part)) {
							t.Errorf("%q is still in it", part)
						}
					}
				})
			}
		}
	}
}

func near(got color.Color, want color.RGBA) bool {
	r, g, b, _ := got.RGBA()
	for i, x := range []uint32{r >> 8, g >> 8, b >> 8} {
		d := int(x) - int([]uint8{want.R, want.G, want.B}[i])
		if d < -12 || d > 12 {
			return false
		}
	}
	return true
}

func TestPhotographsAreMadeSmaller(t *testing.T) {
	var out bytes.Buffer
	if err := png.Encode(&out, image.NewGray(image.Rect(0, 0, 4000, 1000))); err != nil {
		t.Fatal(err)
	}
	p, err := shop.CleanPhoto(out.Bytes())
	if err != nil {
		t.Fatal(err)
	}
	if p.Width != 2560 || p.Height != 640 || p.ThumbWidth != 320 || p.ThumbHeight != 80 {
		t.Errorf("%d × %d and %d × %d", p.Width, p.Height, p.ThumbWidth, p.ThumbHeight)
	}
	// What shines through is shown on white paper.
	out.Reset()
	if err := png.Encode(&out, image.NewNRGBA(image.Rect(0, 0, 10, 10))); err != nil {
		t.Fatal(err)
	}
	if p, err = shop.CleanPhoto(out.Bytes()); err != nil {
		t.Fatal(err)
	}
	m, err := jpeg.Decode(bytes.NewReader(p.Full))
	if err != nil || !near(m.At(5, 5), color.RGBA{255, 255, 255, 255}) {
		t.Errorf("nothing is drawn as %v (%v)", m.At(5, 5), err)
	}
}

// pngOf is the head of a PNG that claims a size, and nothing more.
func pngOf(w, h uint32) []byte {
	head := append([]byte("IHDR"), binary.BigEndian.AppendUint32(binary.BigEndian.AppendUint32(nil, w), h)...)
	head = append(head, 8, 2, 0, 0, 0)
	out := []byte("\x89PNG\r\n\x1a\n\x00\x00\x00\x0d")
	return binary.BigEndian.AppendUint32(append(out, head...), crc32.ChecksumIEEE(head))
}

func TestWhatIsNoPhotographIsRefused(t *testing.T) {
	for name, c := range map[string]struct {
		upload []byte
		want   shop.Code
	}{
		"nothing":                        {nil, shop.Invalid},
		"a page":                         {[]byte("<html><script>alert(1)</script>"), shop.Invalid},
		"a drawing":                      {[]byte(`<svg xmlns="http://www.w3.org/2000/svg"/>`), shop.Invalid},
		"a moving picture":               {[]byte("GIF89a\x01\x00\x01\x00\x00\x00\x00"), shop.Invalid},
		"a head without a body":          {pngOf(10, 10), shop.Invalid},
		"a small file of a huge picture": {pngOf(60_000, 60_000), shop.TooLarge},
		"a long strip":                   {pngOf(1_000_000, 1), shop.TooLarge},
		"too many bytes":                 {make([]byte, shop.MaxUpload+1), shop.TooLarge},
	} {
		_, err := shop.CleanPhoto(c.upload)
		if got := shop.CodeOf(err); got != c.want {
			t.Errorf("%s: %v, want %q", name, err, c.want)
		}
	}
}

// What new telephones save is refused with what to do. The heads are those that
// libheif 1.15.1 writes.
func TestPhotographsThatAreTooNew(t *testing.T) {
	for head, want := range map[string]string{
		"\x00\x00\x00\x18ftypheic\x00\x00\x00\x00mif1heic": "HEIC",
		"\x00\x00\x00\x1cftypavif\x00\x00\x00\x00avifmif1": "AVIF",
	} {
		_, err := shop.CleanPhoto([]byte(head))
		if e := wantCode(t, err, shop.Invalid); !strings.Contains(e.Says, want) || !strings.Contains(e.Says, "JPEG") {
			t.Errorf("it says %q", e.Says)
		}
	}
}

func FuzzCleanPhoto(f *testing.F) {
	var small bytes.Buffer
	if err := jpeg.Encode(&small, image.NewGray(image.Rect(0, 0, 8, 8)), nil); err != nil {
		f.Fatal(err)
	}
	f.Add(small.Bytes())
	f.Add(append([]byte("\xff\xd8\xff\xe1\x00\x20Exif\x00\x00MM\x00\x2a\x00\x00\x00\x08\xff\xff\x01\x12"), small.Bytes()[2:]...))
	f.Add(pngOf(3, 3))
	f.Add([]byte("\x89PNG\r\n\x1a\n\xff\xff\xff\xffeXIf"))
	f.Add([]byte("RIFF\xff\xff\xff\xffWEBPVP8X\xff\xff\xff\xff"))
	f.Fuzz(func(t *testing.T, upload []byte) {
		p, err := shop.CleanPhoto(upload)
		if err != nil {
			if code := shop.CodeOf(err); code != shop.Invalid && code != shop.TooLarge {
				t.Errorf("refused with %v", err)
			}
			return
		}
		if _, err := jpeg.Decode(bytes.NewReader(p.Full)); err != nil {
			t.Errorf("what is kept cannot be read: %v", err)
		}
	})
}
