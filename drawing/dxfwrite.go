package drawing

import (
	"bytes"
	"fmt"
	"math"
	"strconv"
	"strings"

	"axlewright/kit/outline"
)

// dxf writes pairs of group code and value, each on its own line ended by CR LF.
type dxf struct {
	out   bytes.Buffer
	r2000 bool
	next  int // next free handle
}

func (d *dxf) group(code int, value string) {
	fmt.Fprintf(&d.out, "%3d\r\n%s\r\n", code, value)
}

func (d *dxf) integer(code, value int) { d.group(code, strconv.Itoa(value)) }

// number writes a plain number.
func (d *dxf) number(code int, x float64) {
	text := strconv.FormatFloat(x+0, 'f', 12, 64)
	text = strings.TrimRight(text, "0")
	if strings.HasSuffix(text, ".") {
		text += "0"
	}
	if text == "-0.0" {
		text = "0.0"
	}
	d.group(code, text)
}

// length writes metres as millimetres, to a millionth of a micrometre.
func (d *dxf) length(code int, x float64) { d.number(code, math.Round(x*1e12)/1e9) }

// point writes x, y and a z of nought under code, code+10 and code+20.
func (d *dxf) point(code int, p outline.Point) {
	d.flat(code, p)
	d.number(code+20, 0)
}

// flat writes x and y alone.
func (d *dxf) flat(code int, p outline.Point) {
	d.length(code, p.X)
	d.length(code+10, p.Y)
}

func (d *dxf) handle(h int) { d.group(5, hex(h)) }

func (d *dxf) owner(h int) {
	if d.r2000 {
		d.group(330, hex(h))
	}
}

// class marks which part of an object follows; R12 has none.
func (d *dxf) class(name string) {
	if d.r2000 {
		d.group(100, name)
	}
}

func hex(h int) string { return strings.ToUpper(strconv.FormatInt(int64(h), 16)) }

func (d *dxf) section(name string, body func()) {
	d.group(0, "SECTION")
	d.group(2, name)
	body()
	d.group(0, "ENDSEC")
}

func (d *dxf) header(f CutFile) {
	b := f.Bounds()
	d.section("HEADER", func() {
		version := R12
		if d.r2000 {
			version = R2000
		}
		d.group(9, "$ACADVER")
		d.group(1, string(version))
		if d.r2000 {
			d.group(9, "$DWGCODEPAGE")
			d.group(3, "ANSI_1252")
			d.group(9, "$HANDSEED")
			d.group(5, hex(d.next))
			d.group(9, "$INSUNITS")
			d.integer(70, 4) // millimetres
			d.group(9, "$MEASUREMENT")
			d.integer(70, 1) // metric
		}
		d.group(9, "$INSBASE")
		d.point(10, outline.Point{})
		d.group(9, "$EXTMIN")
		d.point(10, b.Low)
		d.group(9, "$EXTMAX")
		d.point(10, b.High)
		d.group(9, "$LIMMIN")
		d.flat(10, b.Low)
		d.group(9, "$LIMMAX")
		d.flat(10, b.High)
	})
}

// mostDXFText is how long a string may be that every reader takes, in bytes.
const mostDXFText = 250

// dxfText writes Ø, ° and ± as the format's own codes and any other letter that
// is not ASCII, or that would begin a code, by its number.
func dxfText(words string) string {
	var b strings.Builder
	text := []rune(Clean(words))
	next := func(i int) rune {
		if i < 0 || i >= len(text) {
			return ' '
		}
		return text[i]
	}
	for i, r := range text {
		code := r > '~' || r == '^' ||
			r == '%' && (next(i-1) == '%' || next(i+1) == '%') ||
			r == '\\' && next(i+2) == '+'
		switch {
		case r == 'Ø' || r == '⌀':
			b.WriteString("%%c")
		case r == '°':
			b.WriteString("%%d")
		case r == '±':
			b.WriteString("%%p")
		case r > 0xFFFF: // has no such code
			b.WriteByte('?')
		case code:
			fmt.Fprintf(&b, "\\U+%04X", r)
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}
