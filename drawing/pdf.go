package drawing

import (
	"fmt"
	"io"
	"math"
	"time"

	"codeberg.org/go-pdf/fpdf"
)

// A PDF is what a file of pages says of itself.
type PDF struct {
	Title  string
	Author string
	At     time.Time // when it was made: the same pages at the same time are the same bytes
}

// greys are the tones as a PDF is printed: papers are black and white.
var greys = map[Tone]int{Black: 0, Grey: 0x50, Pale: 0x9a, Paper: 0xff, Accent: 0}

// points is a millimetre in points.
const points = 72 / 25.4

// WritePDF writes pictures as the pages of a PDF, each as large as its picture,
// in black and white and with the letters that it uses embedded. The same
// pictures give the same bytes. It refuses a picture with a length that is not a
// number.
func WritePDF(w io.Writer, about PDF, pages ...Drawing) error {
	p := &pdf{Fpdf: fpdf.NewCustom(&fpdf.InitType{UnitStr: "mm"})}
	p.SetMargins(0, 0, 0)
	p.SetAutoPageBreak(false, 0)
	p.SetCatalogSort(true)
	p.SetCreationDate(about.At.UTC())
	p.SetModificationDate(about.At.UTC())
	p.SetTitle(Clean(about.Title), true)
	p.SetAuthor(Clean(about.Author), true)
	p.SetCreator("Axlewright", true)
	p.SetLang("en-GB")
	p.AddUTF8FontFromBytes(family, "", faces[0])
	p.AddUTF8FontFromBytes(family, "B", faces[1])
	for _, d := range pages {
		p.AddPageFormat("P", fpdf.SizeType{Wd: d.Width, Ht: d.Height})
		p.SetLineJoinStyle("round")
		p.SetLineCapStyle("butt")
		for _, layer := range d.Layers {
			for _, shape := range layer.Shapes {
				p.shape(shape)
			}
		}
		if p.bad != nil {
			return fmt.Errorf("picture %q: %w", d.Name, p.bad)
		}
	}
	return p.Output(w)
}

// family is the name of the letters within the file.
const family = "dejavu"

// A pdf draws shapes into a file of pages.
type pdf struct {
	*fpdf.Fpdf
	bad error
}

func (p *pdf) shape(shape Shape) {
	switch f := shape.(type) {
	case Line:
		p.path(Path{Vertices: []Vertex{{At: f.From}, {At: f.To}}, Ink: f.Ink})
	case Path:
		p.path(f)
	case Rect:
		c := f.Box.Corners()
		p.path(Path{Vertices: []Vertex{{At: c[0]}, {At: c[1]}, {At: c[2]}, {At: c[3]}}, Closed: true, Ink: f.Ink, Fill: f.Fill})
	case Circle:
		p.path(Path{Vertices: []Vertex{{Point{f.Centre.X - f.Radius, f.Centre.Y}, 1}, {Point{f.Centre.X + f.Radius, f.Centre.Y}, 1}},
			Closed: true, Ink: f.Ink, Fill: f.Fill})
	case Hatch:
		for _, l := range f.Lines() {
			p.shape(l)
		}
	case Text:
		p.text(f)
	case Dimension:
		for _, part := range f.Parts() {
			p.shape(part)
		}
	}
}

// finite says whether all the lengths are numbers, and notes where one is not.
func (p *pdf) finite(lengths ...float64) bool {
	for _, x := range lengths {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			p.bad = fmt.Errorf("a length is %v", x)
			return false
		}
	}
	return true
}

func (p *pdf) path(f Path) {
	style := ""
	if f.Fill != "" {
		p.SetFillColor(grey(f.Fill))
		style = "F"
	}
	if f.Ink.Width > 0 {
		p.SetDrawColor(grey(orBlack(f.Ink.Tone)))
		p.SetLineWidth(f.Ink.Width)
		p.SetDashPattern(f.Ink.Dash, 0)
		style += "D"
	}
	if style == "" || len(f.Vertices) == 0 {
		return
	}
	for _, v := range f.Vertices {
		if !p.finite(v.At.X, v.At.Y, v.Bulge) {
			return
		}
	}
	p.MoveTo(f.Vertices[0].At.X, f.Vertices[0].At.Y)
	for i, v := range f.Vertices[1:] {
		p.piece(f.Vertices[i], v.At)
	}
	if f.Closed {
		if last := f.Vertices[len(f.Vertices)-1]; last.Bulge != 0 {
			p.piece(last, f.Vertices[0].At)
		}
		p.ClosePath()
	}
	p.DrawPath(style)
}

// piece runs from a vertex to a place: a line, or an arc in parts of at most a
// quarter turn, which a cubic curve follows to three parts in ten thousand.
func (p *pdf) piece(from Vertex, to Point) {
	if from.Bulge == 0 {
		p.LineTo(to.X, to.Y)
		return
	}
	turn := 4 * math.Atan(from.Bulge) // anticlockwise as seen
	dx, dy := to.X-from.At.X, to.Y-from.At.Y
	away := (1 - from.Bulge*from.Bulge) / (4 * from.Bulge) // of the centre from the middle of the chord, to its left
	centre := Point{(from.At.X+to.X)/2 + dy*away, (from.At.Y+to.Y)/2 - dx*away}
	parts := math.Ceil(math.Abs(turn)/(math.Pi/2) - 1e-9)
	step := -turn / parts // clockwise, as y runs down
	reach := 4.0 / 3 * math.Tan(step/4)
	sin, cos := math.Sincos(step)
	x, y := from.At.X-centre.X, from.At.Y-centre.Y
	for range int(parts) {
		nx, ny := x*cos-y*sin, x*sin+y*cos
		p.CurveBezierCubicTo(centre.X+x-reach*y, centre.Y+y+reach*x, centre.X+nx+reach*ny, centre.Y+ny-reach*nx, centre.X+nx, centre.Y+ny)
		x, y = nx, ny
	}
}

func (p *pdf) text(t Text) {
	words := visual(t.Words)
	if words == "" || !p.finite(t.At.X, t.At.Y, t.Size, t.Turn) {
		return
	}
	style := ""
	if t.Bold {
		style = "B"
	}
	p.SetFont(family, style, t.Size*points)
	width := TextWidth(words, t.Size, t.Bold)
	if t.Turn != 0 {
		p.TransformBegin()
		p.TransformRotate(t.Turn, t.At.X, t.At.Y)
		defer p.TransformEnd()
	}
	x := t.At.X
	switch t.Anchor {
	case Middle:
		x -= width / 2
	case End:
		x -= width
	}
	if t.Clear {
		const margin = 0.25
		p.SetFillColor(grey(Paper))
		p.Rect(x-margin, t.At.Y-ascent*t.Size-margin, width+2*margin, (ascent+descent)*t.Size+2*margin, "F")
	}
	p.SetTextColor(grey(orBlack(t.Tone)))
	p.Text(x, t.At.Y, words)
}

func grey(t Tone) (r, g, b int) { return greys[t], greys[t], greys[t] }
