package drawing

import (
	"fmt"
	"io"
	"math"

	"axlewright/kit/outline"
)

// A CutFile is what a cutting machine is given: shapes in true size on three
// layers. Lengths are metres, y up; the files that are written are in millimetres.
type CutFile struct {
	Name   string
	Title  string
	Shapes []CutShape
}

// CutLayer says what the machine does with a shape.
type CutLayer string

// The layers.
const (
	CutLine   CutLayer = "CUT"   // cut through
	MarkLine  CutLayer = "MARK"  // etch
	GuideLine CutLayer = "GUIDE" // leave alone: for people
)

// cutLayers in the order in which they are worked, with their colour numbers
// and line types.
var cutLayers = []struct {
	name   CutLayer
	colour int
	dashed bool
}{{MarkLine, 5, false}, {CutLine, 7, false}, {GuideLine, 8, true}}

// A CutShape is one of CutPath, CutCircle and CutText.
type CutShape interface {
	layer() CutLayer
	bounds() outline.Box
}

// CutPath runs along lines and arcs.
type CutPath struct {
	Layer    CutLayer
	Vertices []outline.Vertex
	Closed   bool
}

// CutCircle is a full circle.
type CutCircle struct {
	Layer  CutLayer
	Centre outline.Point
	Radius float64 // m
}

// CutText is a line of words in the machine's own letters, so never on the
// cutting layer.
type CutText struct {
	Layer CutLayer
	At    outline.Point
	Size  float64 // m, of capitals
	Turn  float64 // rad
	Words string
}

func (p CutPath) layer() CutLayer   { return p.Layer }
func (c CutCircle) layer() CutLayer { return c.Layer }
func (t CutText) layer() CutLayer   { return t.Layer }

func (p CutPath) bounds() outline.Box {
	l := outline.Loop(p.Vertices)
	b := outline.Box{Low: l[0].At, High: l[0].At}
	for i := range l {
		if i < len(l)-1 || p.Closed {
			b = b.With(l.Edge(i).Bounds())
		}
	}
	return b
}

func (c CutCircle) bounds() outline.Box {
	r := c.Radius
	return outline.Box{Low: outline.Point{X: c.Centre.X - r, Y: c.Centre.Y - r}, High: outline.Point{X: c.Centre.X + r, Y: c.Centre.Y + r}}
}

// bounds of a text are estimated: a machine has letters of its own.
func (t CutText) bounds() outline.Box {
	const ofHeight = 1.0 // widest usual letter with its space
	wide := float64(len([]rune(t.Words))) * t.Size * ofHeight
	b := outline.Box{Low: t.At, High: t.At}
	for _, p := range []outline.Point{{X: wide}, {X: wide, Y: t.Size}, {Y: t.Size}} {
		p = p.Turned(t.Turn)
		p = outline.Point{X: p.X + t.At.X, Y: p.Y + t.At.Y}
		b = b.With(outline.Box{Low: p, High: p})
	}
	return b
}

// Bounds is the least box round all shapes.
func (f CutFile) Bounds() outline.Box {
	b := f.Shapes[0].bounds()
	for _, s := range f.Shapes[1:] {
		b = b.With(s.bounds())
	}
	return b
}

// mostCutCoordinate is further than any machine reaches.
const mostCutCoordinate = 1000.0 // m

// Check refuses a file that a reader or a machine could take wrongly.
func (f CutFile) Check() error {
	if len(f.Shapes) == 0 {
		return fmt.Errorf("cut file %q: it has no shapes", f.Name)
	}
	for i, s := range f.Shapes {
		if err := checkShape(s); err != nil {
			return fmt.Errorf("cut file %q, shape %d: %w", f.Name, i+1, err)
		}
	}
	return nil
}

func checkShape(s CutShape) error {
	var numbers []float64
	switch s := s.(type) {
	case CutPath:
		least := 2
		if len(s.Vertices) < least {
			return fmt.Errorf("a path of %d places", len(s.Vertices))
		}
		for i, v := range s.Vertices {
			numbers = append(numbers, v.At.X, v.At.Y)
			if math.IsNaN(v.Bulge) || math.Abs(v.Bulge) > 1e4 {
				return fmt.Errorf("a bulge of %v", v.Bulge)
			}
			next := s.Vertices[(i+1)%len(s.Vertices)].At
			if (i < len(s.Vertices)-1 || s.Closed) && v.At.To(next) == 0 {
				return fmt.Errorf("a piece of a path without length")
			}
		}
	case CutCircle:
		numbers = append(numbers, s.Centre.X, s.Centre.Y, s.Radius)
		if !(s.Radius > 0) {
			return fmt.Errorf("a circle of radius %v", s.Radius)
		}
	case CutText:
		numbers = append(numbers, s.At.X, s.At.Y, s.Size, s.Turn)
		switch {
		case s.Layer == CutLine:
			return fmt.Errorf("text on the cutting layer")
		case !(s.Size > 0):
			return fmt.Errorf("text of size %v", s.Size)
		case Clean(s.Words) == "":
			return fmt.Errorf("text without words")
		case len(dxfText(s.Words)) > mostDXFText:
			return fmt.Errorf("text of %d letters; a file takes %d", len(dxfText(s.Words)), mostDXFText)
		}
	default:
		return fmt.Errorf("an unknown shape %T", s)
	}
	if known := s.layer() == CutLine || s.layer() == MarkLine || s.layer() == GuideLine; !known {
		return fmt.Errorf("an unknown layer %q", s.layer())
	}
	for _, x := range numbers {
		if math.IsNaN(x) || math.Abs(x) > mostCutCoordinate {
			return fmt.Errorf("a length of %v m", x)
		}
	}
	return nil
}

// DXFVersion is a version of the exchange format, by its own mark.
type DXFVersion string

// The versions: the one every machine reads, and one with light polylines.
const (
	R12   DXFVersion = "AC1009"
	R2000 DXFVersion = "AC1015"
)

// WriteDXF writes a cut file. The same file gives the same bytes.
//
// Errors: what Check refuses; the writer's error.
func WriteDXF(w io.Writer, f CutFile, version DXFVersion) error {
	if err := f.Check(); err != nil {
		return err
	}
	d := dxf{r2000: version == R2000}
	switch version {
	case R12:
		d.header(f)
		d.tablesR12()
		d.section("BLOCKS", func() {})
		d.section("ENTITIES", func() { d.entities(f) })
	case R2000:
		d.next = firstFree
		body := dxf{r2000: true, next: firstFree}
		body.section("ENTITIES", func() { body.entities(f) })
		d.next = body.next // handles of the whole file are known now
		d.header(f)
		d.section("CLASSES", func() {})
		d.tablesR2000()
		d.blocksR2000()
		d.out.Write(body.out.Bytes())
		d.objects()
	default:
		return fmt.Errorf("cut file %q: version %q; expected %q or %q", f.Name, version, R12, R2000)
	}
	d.group(0, "EOF")
	_, err := w.Write(d.out.Bytes())
	return err
}
