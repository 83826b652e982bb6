package drawing

import (
	"bytes"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"axlewright/kit/outline"
)

// WriteCutSVG writes a cut file as an SVG picture in true size, one group for
// each layer, to a hundredth of a micrometre.
//
// Errors: what CutFile.Check refuses; the writer's error.
func WriteCutSVG(w io.Writer, f CutFile) error {
	if err := f.Check(); err != nil {
		return err
	}
	const margin = 5e-3 // m
	b := f.Bounds()
	c := cutSVG{left: b.Low.X - margin, top: b.High.Y + margin}
	wide, high := c.n(b.Width()+2*margin), c.n(b.Height()+2*margin)
	c.put(`<svg xmlns="http://www.w3.org/2000/svg" width="%smm" height="%smm" viewBox="0 0 %s %s" fill="none" stroke-width="0.2" role="img">`+"\n",
		wide, high, wide, high)
	c.put("<title>%s</title>\n", escape(f.Title))
	for _, layer := range cutLayers {
		style := map[CutLayer]string{
			CutLine: `stroke="#111"`, MarkLine: `stroke="#17497d"`, GuideLine: `stroke="#777" stroke-dasharray="2 1"`,
		}[layer.name]
		c.put("<g id=\"%s\" %s>\n", layer.name, style)
		for _, s := range f.Shapes {
			if s.layer() == layer.name {
				c.shape(s)
			}
		}
		c.put("</g>\n")
	}
	c.put("</svg>\n")
	_, err := w.Write(c.out.Bytes())
	return err
}

type cutSVG struct {
	out       bytes.Buffer
	left, top float64
}

func (c *cutSVG) put(format string, args ...any) { fmt.Fprintf(&c.out, format, args...) }

// n prints metres as millimetres.
func (c *cutSVG) n(x float64) string {
	text := strconv.FormatFloat(x*1e3, 'f', 5, 64)
	text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	if text == "-0" {
		return "0"
	}
	return text
}

func (c *cutSVG) at(p outline.Point) string { return c.n(p.X-c.left) + " " + c.n(c.top-p.Y) }

func (c *cutSVG) shape(s CutShape) {
	switch s := s.(type) {
	case CutPath:
		c.put("<path d=\"M%s", c.at(s.Vertices[0].At))
		l := outline.Loop(s.Vertices)
		for i := range l {
			if i == len(l)-1 && !s.Closed {
				break
			}
			c.piece(l.Edge(i))
		}
		if s.Closed {
			c.put("Z")
		}
		c.put("\"/>\n")
	case CutCircle:
		c.put("<circle cx=\"%s\" cy=\"%s\" r=\"%s\"/>\n", c.n(s.Centre.X-c.left), c.n(c.top-s.Centre.Y), c.n(s.Radius))
	case CutText:
		at := strings.Fields(c.at(s.At))
		c.put("<text x=\"%s\" y=\"%s\" font-size=\"%s\" fill=\"#777\" stroke=\"none\" font-family=\"%s\" transform=\"rotate(%s %s %s)\">%s</text>\n",
			at[0], at[1], c.n(s.Size/0.72), face, strconv.FormatFloat(0-s.Turn*180/math.Pi, 'f', 4, 64), at[0], at[1], escape(s.Words))
	}
}

// piece writes a line or an arc, an arc of more than half a circle in two.
func (c *cutSVG) piece(e outline.Edge) {
	if e.Straight() {
		c.put("L%s", c.at(e.To))
		return
	}
	parts := []outline.Edge{e}
	if math.Abs(e.Bulge) > 0.9 {
		parts = []outline.Edge{e.Part(0, 0.5), e.Part(0.5, 1)}
	}
	sweep := 0
	if e.Bulge < 0 {
		sweep = 1 // y runs down on paper
	}
	for _, p := range parts {
		c.put("A%s %s 0 0 %d %s", c.n(p.Radius()), c.n(p.Radius()), sweep, c.at(p.To))
	}
}
