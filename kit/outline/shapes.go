package outline

// Polygon is the outline with straight edges through the places given.
func Polygon(places ...Point) Loop {
	l := make(Loop, len(places))
	for i, p := range places {
		l[i].At = p
	}
	return l
}

// Rectangle is the upright rectangle of a box.
func Rectangle(b Box) Loop {
	return Polygon(b.Low, Point{b.High.X, b.Low.Y}, b.High, Point{b.Low.X, b.High.Y})
}

// Circle is a full circle as two half circles.
func Circle(centre Point, diameter float64) Loop {
	r := diameter / 2
	return Loop{{At: Point{centre.X - r, centre.Y}, Bulge: 1}, {At: Point{centre.X + r, centre.Y}, Bulge: 1}}
}

// Slot is a slot with round ends, long over all, its middle at a place and its
// length turned by an angle. A slot as long as wide is a circle.
func Slot(middle Point, long, wide, angle float64) Loop {
	if long-wide < Touch {
		return Circle(middle, wide)
	}
	x, r := (long-wide)/2, wide/2
	return Loop{
		{At: Point{-x, -r}}, {At: Point{x, -r}, Bulge: 1},
		{At: Point{x, r}}, {At: Point{-x, r}, Bulge: 1},
	}.Turned(angle).Shifted(middle)
}

// Oblong is a slot with square ends, as a tab needs.
func Oblong(middle Point, long, wide, angle float64) Loop {
	x, y := long/2, wide/2
	return Polygon(Point{-x, -y}, Point{x, -y}, Point{x, y}, Point{-x, y}).Turned(angle).Shifted(middle)
}
