package drawing

import "math"

// entities writes the shapes in the order of the layers: marks are etched
// before the plate is cut free.
func (d *dxf) entities(f CutFile) {
	for _, layer := range cutLayers {
		for _, s := range f.Shapes {
			if s.layer() != layer.name {
				continue
			}
			switch s := s.(type) {
			case CutPath:
				d.path(s)
			case CutCircle:
				d.begin("CIRCLE", s.Layer)
				d.class("AcDbCircle")
				d.point(10, s.Centre)
				d.length(40, s.Radius)
			case CutText:
				d.text(s)
			}
		}
	}
}

// begin writes what all entities have.
func (d *dxf) begin(kind string, layer CutLayer) {
	d.group(0, kind)
	if d.r2000 {
		d.handle(d.next)
		d.next++
		d.owner(modelSpace)
	}
	d.class("AcDbEntity")
	d.group(8, string(layer))
}

func (d *dxf) path(p CutPath) {
	if len(p.Vertices) == 2 && !p.Closed && p.Vertices[0].Bulge == 0 {
		d.begin("LINE", p.Layer)
		d.class("AcDbLine")
		d.point(10, p.Vertices[0].At)
		d.point(11, p.Vertices[1].At)
		return
	}
	closed := 0
	if p.Closed {
		closed = 1
	}
	last := len(p.Vertices) - 1
	bulge := func(i int) float64 {
		if i == last && !p.Closed { // belongs to no piece
			return 0
		}
		return p.Vertices[i].Bulge
	}
	if d.r2000 {
		d.begin("LWPOLYLINE", p.Layer)
		d.class("AcDbPolyline")
		d.integer(90, len(p.Vertices))
		d.integer(70, closed)
		for i, v := range p.Vertices {
			d.flat(10, v.At)
			if b := bulge(i); b != 0 {
				d.number(42, b)
			}
		}
		return
	}
	d.begin("POLYLINE", p.Layer)
	d.integer(66, 1) // vertices follow
	d.integer(70, closed)
	d.number(10, 0)
	d.number(20, 0)
	d.number(30, 0)
	for i, v := range p.Vertices {
		d.begin("VERTEX", p.Layer)
		d.point(10, v.At)
		if b := bulge(i); b != 0 {
			d.number(42, b)
		}
	}
	d.begin("SEQEND", p.Layer)
}

func (d *dxf) text(t CutText) {
	d.begin("TEXT", t.Layer)
	d.class("AcDbText")
	d.point(10, t.At)
	d.length(40, t.Size)
	d.group(1, dxfText(t.Words))
	d.number(50, t.Turn*180/math.Pi)
	d.group(7, "STANDARD")
	d.class("AcDbText") // the marker stands twice, before and after the words
}
