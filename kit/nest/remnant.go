package nest

import (
	"github.com/peterstace/simplefeatures/geom"

	"axlewright/kit/outline"
)

// outside are the polygons of a frame round a remnant's box that the remnant,
// less an inset along its rim, does not fill: each a rim and its holes.
func outside(l outline.Loop, box outline.Box, inset float64) ([][][]outline.Point, error) {
	const chord = chordHeight / 10
	kept, err := l.Anticlockwise().Offset(-inset - chord) // chords of its inner arcs lie outside
	if err != nil {
		return nil, err
	}
	var usable geom.Geometry
	for _, k := range kept {
		if usable, err = geom.Union(usable, asGeometry(k.Flatten(chord, outline.On))); err != nil {
			return nil, err
		}
	}
	const beyond = 1e-3 // m
	frame := outline.Rectangle(outline.Box{
		Low:  outline.Point{X: box.Low.X - beyond, Y: box.Low.Y - beyond},
		High: outline.Point{X: box.High.X + beyond, Y: box.High.Y + beyond},
	})
	lost, err := geom.Difference(asGeometry(frame.Flatten(1, outline.On)), usable)
	if err != nil {
		return nil, err
	}
	var polygons [][][]outline.Point
	for _, part := range lost.Dump() {
		p, ok := part.AsPolygon()
		if !ok {
			continue
		}
		rings := [][]outline.Point{places(p.ExteriorRing())}
		for i := range p.NumInteriorRings() {
			rings = append(rings, places(p.InteriorRingN(i)))
		}
		polygons = append(polygons, rings)
	}
	return polygons, nil
}

func asGeometry(places []outline.Point) geom.Geometry {
	var flat []float64
	for _, p := range append(places, places[0]) {
		flat = append(flat, p.X, p.Y)
	}
	ring := geom.NewLineString(geom.NewSequence(flat, geom.DimXY))
	return geom.NewPolygon([]geom.LineString{ring}).AsGeometry()
}

func places(l geom.LineString) []outline.Point {
	c := l.Coordinates()
	var list []outline.Point
	for i := range c.Length() - 1 { // the last is the first again
		list = append(list, outline.Point{X: c.GetXY(i).X, Y: c.GetXY(i).Y})
	}
	return list
}
