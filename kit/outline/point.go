package outline

import "math"

// Point is a place or a direction in the plane.
type Point struct {
	X float64 `json:"x"` // m
	Y float64 `json:"y"`
}

func (p Point) plus(q Point) Point             { return Point{p.X + q.X, p.Y + q.Y} }
func (p Point) minus(q Point) Point            { return Point{p.X - q.X, p.Y - q.Y} }
func (p Point) times(k float64) Point          { return Point{p.X * k, p.Y * k} }
func (p Point) cross(q Point) float64          { return p.X*q.Y - p.Y*q.X }
func (p Point) dot(q Point) float64            { return p.X*q.X + p.Y*q.Y }
func (p Point) left() Point                    { return Point{-p.Y, p.X} }
func (p Point) along(u Point, k float64) Point { return Point{p.X + u.X*k, p.Y + u.Y*k} }

// To returns the distance to another place.
func (p Point) To(q Point) float64 { return math.Hypot(q.X-p.X, q.Y-p.Y) }

// finite says whether both coordinates are numbers.
func (p Point) finite() bool {
	return !math.IsNaN(p.X) && !math.IsInf(p.X, 0) && !math.IsNaN(p.Y) && !math.IsInf(p.Y, 0)
}

// whole keeps a negative zero out of files and comparisons.
func (p Point) whole() Point { return Point{p.X + 0, p.Y + 0} }

func polar(angle, r float64) Point {
	sin, cos := math.Sincos(angle)
	return Point{r * cos, r * sin}
}

// Box is an upright rectangle.
type Box struct {
	Low  Point `json:"low"`
	High Point `json:"high"`
}

// Width of the box.
func (b Box) Width() float64 { return b.High.X - b.Low.X }

// Height of the box.
func (b Box) Height() float64 { return b.High.Y - b.Low.Y }

// Middle of the box.
func (b Box) Middle() Point { return b.Low.plus(b.High).times(0.5) }

// Within says whether the box lies in another, to a nanometre.
func (b Box) Within(c Box) bool {
	return b.Low.X >= c.Low.X-Touch && b.Low.Y >= c.Low.Y-Touch && b.High.X <= c.High.X+Touch && b.High.Y <= c.High.Y+Touch
}

// Near says whether two boxes come closer than a distance in both directions.
func (b Box) Near(c Box, distance float64) bool {
	return b.Low.X <= c.High.X+distance && c.Low.X <= b.High.X+distance &&
		b.Low.Y <= c.High.Y+distance && c.Low.Y <= b.High.Y+distance
}

// With is the least box round both.
func (b Box) With(c Box) Box {
	return Box{
		Point{math.Min(b.Low.X, c.Low.X), math.Min(b.Low.Y, c.Low.Y)},
		Point{math.Max(b.High.X, c.High.X), math.Max(b.High.Y, c.High.Y)},
	}
}

// nothing is the box that With leaves unchanged.
func nothing() Box {
	return Box{Point{math.Inf(1), math.Inf(1)}, Point{math.Inf(-1), math.Inf(-1)}}
}
