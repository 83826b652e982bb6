package drawing

// Place moves shapes so that their origin lies at a place, after making them
// larger or smaller about it; hatches keep their angle and dashes their length.
func Place(shapes []Shape, at Point, scale float64) []Shape {
	list := make([]Shape, len(shapes))
	move := func(p Point) Point { return Point{at.X + scale*p.X, at.Y + scale*p.Y} }
	ink := func(i Ink) Ink { i.Width *= scale; return i }
	for i, shape := range shapes {
		switch f := shape.(type) {
		case Line:
			f.From, f.To, f.Ink = move(f.From), move(f.To), ink(f.Ink)
			shape = f
		case Path:
			vertices := make([]Vertex, len(f.Vertices))
			for k, v := range f.Vertices {
				vertices[k] = Vertex{At: move(v.At), Bulge: v.Bulge}
			}
			f.Vertices, f.Ink = vertices, ink(f.Ink)
			shape = f
		case Rect:
			low, high := move(Point{f.Box.Left, f.Box.Top}), move(Point{f.Box.Right, f.Box.Bottom})
			f.Box, f.Ink = Box{low.X, low.Y, high.X, high.Y}, ink(f.Ink)
			shape = f
		case Circle:
			f.Centre, f.Radius, f.Ink = move(f.Centre), f.Radius*scale, ink(f.Ink)
			shape = f
		case Hatch:
			outline := make([]Point, len(f.Outline))
			for k, p := range f.Outline {
				outline[k] = move(p)
			}
			f.Outline, f.Spacing, f.Ink = outline, f.Spacing*scale, ink(f.Ink)
			shape = f
		case Text:
			f.At, f.Size = move(f.At), f.Size*scale
			shape = f
		case Dimension:
			f.From, f.To, f.Offset, f.Size, f.Ink = move(f.From), move(f.To), f.Offset*scale, f.Size*scale, ink(f.Ink)
			shape = f
		}
		list[i] = shape
	}
	return list
}
