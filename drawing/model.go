package drawing

// A Drawing is a picture as data. Lengths are millimetres on paper, x to the
// right and y down from the top left corner; later shapes lie on earlier ones.
type Drawing struct {
	Name          string // one word, its own on a page that shows several
	Width, Height float64
	Title         string // what it is, in a line
	Desc          string // what it shows, for one who cannot see it
	Layers        []Layer
}

// A Layer is a named group of shapes, drawn in the order of the layers.
type Layer struct {
	Name   string
	Shapes []Shape
}

// A Shape is one of Line, Path, Rect, Circle, Hatch, Text and Dimension.
type Shape interface{ shape() }

// Point is a place on the paper.
type Point struct{ X, Y float64 }

// Line is a straight line.
type Line struct {
	From, To Point
	Ink      Ink
}

// A Path runs through its vertices, straight or along arcs.
type Path struct {
	Vertices []Vertex
	Closed   bool
	Ink      Ink
	Fill     Tone
}

// A Vertex is a place on a path. Bulge bends the piece from here to the next
// vertex into an arc: the tangent of a quarter of the angle it turns through,
// positive anticlockwise as seen; 0 is straight, 1 a half circle.
type Vertex struct {
	At    Point
	Bulge float64
}

// Rect is an upright rectangle.
type Rect struct {
	Box  Box
	Ink  Ink
	Fill Tone
}

// Circle is a full circle.
type Circle struct {
	Centre Point
	Radius float64
	Ink    Ink
	Fill   Tone
}

// A Hatch fills a closed outline with parallel lines. It stays a shape of its
// own because some files know hatches; for others Lines gives its lines.
type Hatch struct {
	Outline []Point
	Angle   float64 // degrees, anticlockwise from the x direction
	Spacing float64
	Crossed bool // a second set of lines square to the first
	Ink     Ink
}

// Text is one line of words.
type Text struct {
	At     Point // on the base line, at the anchor
	Words  string
	Full   string // the whole text where Words is a shortened one, else ""
	Size   float64
	Anchor Anchor
	Bold   bool
	Tone   Tone
	Turn   float64 // degrees, anticlockwise
	Clear  bool    // paper is laid under the words, so that lines do not run through them
}

// Anchor says which part of a text lies at its place.
type Anchor string

// The anchors.
const (
	Start  Anchor = "start"
	Middle Anchor = "middle"
	End    Anchor = "end"
)

// A Dimension shows the distance between two places with a dimension line and
// its figure. Offset moves the dimension line off the places, to the left of
// one who walks from From to To.
type Dimension struct {
	From, To Point
	Offset   float64
	Words    string
	Size     float64
	Ink      Ink
}

func (Line) shape()      {}
func (Path) shape()      {}
func (Rect) shape()      {}
func (Circle) shape()    {}
func (Hatch) shape()     {}
func (Text) shape()      {}
func (Dimension) shape() {}

// Ink is how a line is drawn. A Width of 0 draws none.
type Ink struct {
	Width float64   // mm
	Tone  Tone      // Black where empty
	Dash  []float64 // mm drawn, mm left out, and so on; none is a full line
}

// Tone is what a line, a letter or an area is printed in. As a fill the empty
// tone leaves the area open.
type Tone string

// The tones. There is one colour; it prints dark on a black-and-white printer.
const (
	Black  Tone = "black"
	Grey   Tone = "grey"   // still easy to read as text
	Pale   Tone = "pale"   // for rulings and hatches, never for text
	Paper  Tone = "paper"  // what the picture is printed on
	Accent Tone = "accent" // what to do next
)

// Widths of lines, of the series of ISO 128.
const (
	hairline = 0.13
	thin     = 0.18
	light    = 0.25
	medium   = 0.35
	strong   = 0.5
	heavy    = 0.9
)

// Sizes of letters, mm. The small one is 7.5 points, the least that is printed.
const (
	small  = 2.65
	normal = 3.0
	large  = 3.8
)

// spread is the distance between the base lines of wrapped text, in letter sizes.
const spread = 1.2

// A Box is an upright rectangle on the paper.
type Box struct{ Left, Top, Right, Bottom float64 }

// Width of the box.
func (b Box) Width() float64 { return b.Right - b.Left }

// Height of the box.
func (b Box) Height() float64 { return b.Bottom - b.Top }

// Overlaps says whether two boxes share more than an edge.
func (b Box) Overlaps(c Box) bool {
	return b.Left < c.Right && c.Left < b.Right && b.Top < c.Bottom && c.Top < b.Bottom
}

// Holds says whether c lies in b.
func (b Box) Holds(c Box) bool {
	return c.Left >= b.Left && c.Right <= b.Right && c.Top >= b.Top && c.Bottom <= b.Bottom
}

// Corners of the box, clockwise from the top left.
func (b Box) Corners() []Point {
	return []Point{{b.Left, b.Top}, {b.Right, b.Top}, {b.Right, b.Bottom}, {b.Left, b.Bottom}}
}
