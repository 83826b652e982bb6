package shop

import (
	"bytes"
	"encoding/binary"
	"image"
)

// orientation is how a camera was held, as the TIFF tag 274 counts it (TIFF
// 6.0, section 8; Exif 2.3, 4.6.4): where the picture's first row and column
// belong.
type orientation int

const upright orientation = 1

// orientationOf finds the tag in what the camera wrote beside the picture. It
// reads nothing else of that, and takes what it cannot read as upright.
func orientationOf(format string, picture []byte) orientation {
	switch format {
	case "jpeg":
		return orientationIn(exifOfJPEG(picture))
	case "png":
		return orientationIn(exifOfPNG(picture))
	case "webp":
		return orientationIn(exifOfWebP(picture))
	}
	return upright
}

// exifOfJPEG returns the TIFF in the APP1 segment (Exif 2.3, 4.7.2).
func exifOfJPEG(jpeg []byte) []byte {
	for at := 2; at+4 <= len(jpeg) && jpeg[at] == 0xFF; {
		marker, length := jpeg[at+1], int(binary.BigEndian.Uint16(jpeg[at+2:]))
		if marker == 0xDA || length < 2 || at+2+length > len(jpeg) { // the picture begins
			break
		}
		segment := jpeg[at+4 : at+2+length]
		if tiff, ok := bytes.CutPrefix(segment, exifStart); marker == 0xE1 && ok {
			return tiff
		}
		at += 2 + length
	}
	return nil
}

// exifOfPNG returns the TIFF in the chunk eXIf (PNG, third edition, 11.3.4.5):
// length, name, data, checksum.
func exifOfPNG(png []byte) []byte {
	for at := 8; at+12 <= len(png); {
		length := int(binary.BigEndian.Uint32(png[at:]))
		if length < 0 || length > len(png)-at-12 {
			break
		}
		if string(png[at+4:at+8]) == "eXIf" {
			return png[at+8 : at+8+length]
		}
		at += 12 + length
	}
	return nil
}

// exifOfWebP returns the TIFF in the chunk EXIF (RFC 9649, 2.7.1.5): name,
// length, data, made even. Some cameras begin it as in a JPEG.
func exifOfWebP(webp []byte) []byte {
	for at := 12; at+8 <= len(webp); {
		length := int(binary.LittleEndian.Uint32(webp[at+4:]))
		if length < 0 || length > len(webp)-at-8 {
			break
		}
		if string(webp[at:at+4]) == "EXIF" {
			return bytes.TrimPrefix(webp[at+8:at+8+length], exifStart)
		}
		at += 8 + length + length&1
	}
	return nil
}

var exifStart = []byte("Exif\x00\x00")

// orientationIn reads the first directory of a TIFF.
func orientationIn(tiff []byte) orientation {
	if len(tiff) < 8 {
		return upright
	}
	var order binary.ByteOrder = binary.BigEndian
	if string(tiff[:2]) == "II" {
		order = binary.LittleEndian
	}
	directory := int64(order.Uint32(tiff[4:]))
	if directory+2 > int64(len(tiff)) {
		return upright
	}
	count := int64(order.Uint16(tiff[directory:]))
	for i := range count {
		at := directory + 2 + 12*i
		if at+12 > int64(len(tiff)) {
			break
		}
		if order.Uint16(tiff[at:]) == 274 {
			if o := orientation(order.Uint16(tiff[at+8:])); o >= 1 && o <= 8 {
				return o
			}
			break
		}
	}
	return upright
}

// turned puts a picture upright.
func turned(src *image.RGBA, o orientation) *image.RGBA {
	if o == upright {
		return src
	}
	w, h := src.Bounds().Dx(), src.Bounds().Dy()
	size := image.Rect(0, 0, w, h)
	if o >= 5 { // the first row of what the camera wrote is a side
		size = image.Rect(0, 0, h, w)
	}
	dst := image.NewRGBA(size)
	for y := range h {
		for x := range w {
			tx, ty := x, y
			switch o {
			case 2:
				tx = w - 1 - x
			case 3:
				tx, ty = w-1-x, h-1-y
			case 4:
				ty = h - 1 - y
			case 5:
				tx, ty = y, x
			case 6:
				tx, ty = h-1-y, x
			case 7:
				tx, ty = h-1-y, w-1-x
			case 8:
				tx, ty = y, w-1-x
			}
			copy(dst.Pix[dst.PixOffset(tx, ty):][:4], src.Pix[src.PixOffset(x, y):][:4])
		}
	}
	return dst
}
