package drawing

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
)

// inks are the tones as SVG writes them. The accent is the blue that gear
// teeth are marked with.
var inks = map[Tone]string{
	Black: "#111", Grey: "#555", Pale: "#9a9a9a", Paper: "#fff", Accent: "#17497d",
}

// face lists faces that take no more room than the letters were measured with.
const face = "'DejaVu Sans Condensed','Liberation Sans',Arial,Helvetica,'DejaVu Sans',sans-serif"

// WriteSVG writes a picture as an SVG element that stands by itself in a file
// or within a page. It refuses a picture with a length that is not a number.
func WriteSVG(w io.Writer, d Drawing) error {
	s := svg{}
	name := escape(d.Name)
	s.put(`<svg xmlns="http://www.w3.org/2000/svg" class="picture" width="%smm" height="%smm" viewBox="0 0 %s %s" role="img" aria-labelledby="%s-title %s-desc" font-family="%s" fill="none" stroke-linecap="butt" stroke-linejoin="round">`+"\n",
		s.n(d.Width), s.n(d.Height), s.n(d.Width), s.n(d.Height), name, name, face)
	s.put("<title id=\"%s-title\">%s</title>\n<desc id=\"%s-desc\">%s</desc>\n", name, escape(d.Title), name, escape(d.Desc))
	for _, layer := range d.Layers {
		if len(layer.Shapes) == 0 {
			continue
		}
		s.put("<g class=\"%s\">\n", escape(layer.Name))
		for _, shape := range layer.Shapes {
			s.shape(shape)
		}
		s.put("</g>\n")
	}
	s.put("</svg>\n")
	if s.bad != nil {
		return fmt.Errorf("picture %q: %w", d.Name, s.bad)
	}
	_, err := w.Write(s.out.Bytes())
	return err
}

type svg struct {
	out bytes.Buffer
	bad error
}

func (s *svg) put(format string, args ...any) { fmt.Fprintf(&s.out, format, args...) }

// n prints a length to a hundredth of a millimetre.
func (s *svg) n(x float64) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		s.bad = fmt.Errorf("a length is %v", x)
		return "0"
	}
	text := strconv.FormatFloat(x, 'f', 2, 64)
	text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	if text == "-0" {
		return "0"
	}
	return text
}

func (s *svg) shape(shape Shape) {
	switch f := shape.(type) {
	case Line:
		s.put("<path d=\"M%s %sL%s %s\"%s/>\n", s.n(f.From.X), s.n(f.From.Y), s.n(f.To.X), s.n(f.To.Y), s.ink(f.Ink))
	case Path:
		s.put("<path d=\"%s\"%s%s/>\n", s.path(f), fill(f.Fill), s.ink(f.Ink))
	case Rect:
		s.put("<rect x=\"%s\" y=\"%s\" width=\"%s\" height=\"%s\"%s%s/>\n",
			s.n(f.Box.Left), s.n(f.Box.Top), s.n(f.Box.Width()), s.n(f.Box.Height()), fill(f.Fill), s.ink(f.Ink))
	case Circle:
		s.put("<circle cx=\"%s\" cy=\"%s\" r=\"%s\"%s%s/>\n", s.n(f.Centre.X), s.n(f.Centre.Y), s.n(f.Radius), fill(f.Fill), s.ink(f.Ink))
	case Hatch:
		s.hatch(f)
	case Text:
		s.text(f)
	case Dimension:
		for _, part := range f.Parts() {
			s.shape(part)
		}
	}
}

func (s *svg) path(p Path) string {
	var b strings.Builder
	for i, v := range p.Vertices {
		if i == 0 {
			fmt.Fprintf(&b, "M%s %s", s.n(v.At.X), s.n(v.At.Y))
			continue
		}
		s.piece(&b, p.Vertices[i-1], v.At)
	}
	if p.Closed && len(p.Vertices) > 0 {
		if last := p.Vertices[len(p.Vertices)-1]; last.Bulge != 0 {
			s.piece(&b, last, p.Vertices[0].At)
		}
		b.WriteByte('Z')
	}
	return b.String()
}

// piece runs from a vertex to a place: a line or an arc.
func (s *svg) piece(b *strings.Builder, from Vertex, to Point) {
	if from.Bulge == 0 {
		fmt.Fprintf(b, "L%s %s", s.n(to.X), s.n(to.Y))
		return
	}
	bulge := math.Abs(from.Bulge)
	radius := math.Hypot(to.X-from.At.X, to.Y-from.At.Y) * (1 + bulge*bulge) / (4 * bulge)
	long, sweep := 0, 0
	if bulge > 1 {
		long = 1
	}
	if from.Bulge < 0 {
		sweep = 1
	}
	fmt.Fprintf(b, "A%s %s 0 %d %d %s %s", s.n(radius), s.n(radius), long, sweep, s.n(to.X), s.n(to.Y))
}

func (s *svg) hatch(h Hatch) {
	lines := h.Lines()
	if len(lines) == 0 {
		return
	}
	s.put("<path class=\"hatch\" d=\"")
	for _, l := range lines {
		s.put("M%s %sL%s %s", s.n(l.From.X), s.n(l.From.Y), s.n(l.To.X), s.n(l.To.Y))
	}
	s.put("\"%s/>\n", s.ink(h.Ink))
}

// text writes words and holds them to the width they were measured at, so that
// they keep to their place in whatever face they are printed.
func (s *svg) text(t Text) {
	if t.Words == "" {
		return
	}
	if t.Clear {
		s.clear(t)
	}
	s.put("<text x=\"%s\" y=\"%s\" font-size=\"%s\" fill=\"%s\"", s.n(t.At.X), s.n(t.At.Y), s.n(t.Size), inks[orBlack(t.Tone)])
	if t.Anchor == Middle || t.Anchor == End {
		s.put(" text-anchor=\"%s\"", t.Anchor)
	}
	if t.Bold {
		s.put(" font-weight=\"bold\"")
	}
	if t.Turn != 0 {
		s.put(" transform=\"rotate(%s %s %s)\"", s.n(-t.Turn), s.n(t.At.X), s.n(t.At.Y))
	}
	if width, known := letters(t.Words, t.Bold); known && len(t.Words) > 3 {
		s.put(" textLength=\"%s\" lengthAdjust=\"spacingAndGlyphs\"", s.n(width*t.Size/1000))
	}
	s.put(">")
	if t.Full != "" {
		s.put("<title>%s</title>", escape(t.Full))
	}
	s.put("%s</text>\n", escape(t.Words))
}

// clear lays paper under words, turned with them.
func (s *svg) clear(t Text) {
	const margin = 0.25
	level := t
	level.Turn = 0
	b := level.Box()
	s.put("<rect x=\"%s\" y=\"%s\" width=\"%s\" height=\"%s\" fill=\"%s\"", s.n(b.Left-margin), s.n(b.Top-margin),
		s.n(b.Width()+2*margin), s.n(b.Height()+2*margin), inks[Paper])
	if t.Turn != 0 {
		s.put(" transform=\"rotate(%s %s %s)\"", s.n(-t.Turn), s.n(t.At.X), s.n(t.At.Y))
	}
	s.put("/>\n")
}

func fill(t Tone) string {
	if t == "" {
		return ""
	}
	return ` fill="` + inks[t] + `"`
}

func (s *svg) ink(i Ink) string {
	if i.Width == 0 {
		return ""
	}
	text := fmt.Sprintf(` stroke="%s" stroke-width="%s"`, inks[orBlack(i.Tone)], s.n(i.Width))
	if len(i.Dash) > 0 {
		dashes := make([]string, len(i.Dash))
		for k, d := range i.Dash {
			dashes[k] = s.n(d)
		}
		text += ` stroke-dasharray="` + strings.Join(dashes, " ") + `"`
	}
	return text
}

// escape makes text safe within an element or an attribute; what XML cannot
// hold at all is left out.
func escape(text string) string {
	var b bytes.Buffer
	_ = xml.EscapeText(&b, []byte(Clean(text))) // a bytes.Buffer never fails
	return b.String()
}
