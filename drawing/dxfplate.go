package drawing

import (
	"fmt"
	"math"

	"axlewright/kit"
	"axlewright/kit/outline"
)

// PlateFile is the cut file of one plate: its outline and holes to cut, its
// mark to etch, and for people the centres of guide holes, the stations and the
// edges that are not welded.
func PlateFile(p *kit.Plate) CutFile {
	f := CutFile{Name: p.File(), Title: fmt.Sprintf("%s, %s %s", p.File(), p.Name, p.Steel)}
	f.Shapes = plateShapes(p, 0, outline.Point{})
	f.Shapes = append(f.Shapes, guideShapes(p)...)
	return f
}

// plateShapes are what the machine does for a plate that is turned and then
// shifted. Holes come before the outline, so that the plate is held until last.
func plateShapes(p *kit.Plate, turn float64, shift outline.Point) []CutShape {
	var shapes []CutShape
	for _, s := range p.Etched.Strokes {
		shapes = append(shapes, CutPath{MarkLine, outline.Loop(s).Turned(turn).Shifted(shift), false})
	}
	for _, h := range p.Holes {
		at := h.At.Turned(turn)
		shapes = append(shapes, CutCircle{CutLine, outline.Point{X: at.X + shift.X, Y: at.Y + shift.Y}, h.Diameter / 2})
	}
	for _, c := range p.Cutouts {
		shapes = append(shapes, loopShape(c.Loop.Turned(turn).Shifted(shift)))
	}
	return append(shapes, loopShape(p.Outline.Turned(turn).Shifted(shift)))
}

// loopShape is a closed path, or a circle where it is one.
func loopShape(l outline.Loop) CutShape {
	if len(l) == 2 && l[0].Bulge == 1 && l[1].Bulge == 1 {
		b := l.Bounds()
		return CutCircle{CutLine, b.Middle(), b.Width() / 2}
	}
	return CutPath{CutLine, l, true}
}

// guideShapes are for people and left alone by the machine.
func guideShapes(p *kit.Plate) []CutShape {
	var shapes []CutShape
	cross := func(at outline.Point, arm float64) {
		shapes = append(shapes,
			CutPath{GuideLine, []outline.Vertex{{At: outline.Point{X: at.X - arm, Y: at.Y}}, {At: outline.Point{X: at.X + arm, Y: at.Y}}}, false},
			CutPath{GuideLine, []outline.Vertex{{At: outline.Point{X: at.X, Y: at.Y - arm}}, {At: outline.Point{X: at.X, Y: at.Y + arm}}}, false})
	}
	const size, beside = 2.5e-3, 1e-3 // m
	for _, h := range p.Holes {
		if h.Kind != kit.Guide {
			continue
		}
		cross(h.At, h.Diameter/2+2e-3)
		shapes = append(shapes, CutText{GuideLine, outline.Point{X: h.At.X + h.Diameter/2 + beside, Y: h.At.Y + beside}, size, 0, h.Label + " " + h.Note})
	}
	for _, s := range p.Stations {
		cross(s.At, 2e-3)
		shapes = append(shapes, CutText{GuideLine, outline.Point{X: s.At.X + beside, Y: s.At.Y + beside}, size, 0, fmt.Sprintf("station %d", s.Number)})
	}
	for i := range p.Outline {
		if kit.Seam(p.Outline[i].Tag) == kit.WeldSeam {
			continue
		}
		e := p.Outline.Edge(i)
		shapes = append(shapes, CutPath{GuideLine, []outline.Vertex{{At: e.From, Bulge: e.Bulge}, {At: e.To}}, false})
	}
	return shapes
}

// NestFile is the cut file of one sheet of a nest; the sheet itself and its
// offcuts are for people.
func NestFile(c *kit.Cutting, sheet int) CutFile {
	s := &c.Plan.Sheets[sheet]
	name := fmt.Sprintf("nest-%s-%smm-%s", c.Steel, trimmed(c.Thickness*1e3), c.Plan.Name(sheet))
	f := CutFile{Name: fileWord(name), Title: fmt.Sprintf("%s, %s mm, sheet %s", c.Steel, trimmed(c.Thickness*1e3), c.Plan.Name(sheet))}
	for _, at := range s.Places {
		f.Shapes = append(f.Shapes, plateShapes(&c.Plates[at.Part], at.Turn, at.Shift)...)
	}
	f.Shapes = append(f.Shapes, CutPath{GuideLine, c.Plan.Stock[s.Stock].Outline, true})
	for _, o := range s.Offcuts {
		f.Shapes = append(f.Shapes, CutPath{GuideLine, outline.Rectangle(o), true})
	}
	return f
}

// trimmed prints a length in millimetres without needless noughts.
func trimmed(x float64) string {
	return fmt.Sprintf("%v", math.Round(x*1e3)/1e3)
}

// fileWord makes a name that every disc takes: letters, figures, point and dash.
func fileWord(name string) string {
	word := []rune(name)
	for i, r := range word {
		plain := r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '-' || r == '.'
		if !plain {
			word[i] = '-'
		}
	}
	return string(word)
}
