package paper

import (
	"io"
	"time"

	"axlewright/drawing"
)

// A Paper is what is printed, from top to bottom.
type Paper struct {
	Head
	Blocks []Block
	Foot   string // stands small at the foot of every page
}

// A Head is what stands at the top of every page.
type Head struct {
	Title    string    // "Set-up sheet"
	Number   string    // of the unit, as stamped; empty leaves the plate open
	NumberOf string    // what has that number; empty is "unit"
	Subject  string    // whose it is: customer, vehicle; empty leaves a line
	Shop     string    // the shop's name
	Contact  string    // its address, its telephone: a line each
	Day      time.Time // zero leaves a line
}

// A Block is a part of a paper. It is drawn in strips under each other; a page
// ends between two of them.
type Block interface {
	strips(s size, width float64) []strip
}

// A strip goes on to a page whole.
type strip struct {
	shapes []drawing.Shape // from its top left corner
	height float64
	bound  bool                                 // stays on the page of the next strip
	head   *strip                               // stands above it again where a page begins with it
	grow   func(height float64) []drawing.Shape // draws it higher, where the page has room
	most   float64                              // how high it grows; 0 is without end
}

func (x strip) blank() bool { return len(x.shapes) == 0 && x.grow == nil }

// A size is how large a paper is set, mm.
type size struct {
	text, small, heading float64 // letters
	box                  float64 // height of a box for the pencil
	gap                  float64 // between blocks
}

// sizes are tried from the most comfortable to the tightest.
var sizes = []size{
	{text: 3.7, small: 2.9, heading: 4.5, box: 12, gap: 3},
	{text: 3.4, small: 2.8, heading: 4.1, box: 10.5, gap: 2.4},
	{text: 3.15, small: 2.65, heading: 3.7, box: 9.5, gap: 1.9},
	{text: 2.9, small: 2.65, heading: 3.4, box: 8.5, gap: 1.4},
	{text: 2.65, small: 2.65, heading: 3.1, box: 6.6, gap: 0.6},
}

// line is the distance between base lines, in sizes of letters.
const line = 1.21

// The paper, mm. The left edge is wide enough for punched holes.
const (
	wide, high  = 210.0, 297.0
	left, right = 15.0, 10.0
	top, bottom = 9.0, 8.0
	width       = wide - left - right
	slack       = 1e-6 // sums of heights may be off by so much
)

// Add puts blocks below those that are there.
func (p *Paper) Add(blocks ...Block) { p.Blocks = append(p.Blocks, blocks...) }

// WritePDF writes the paper. The same paper gives the same bytes.
func (p Paper) WritePDF(w io.Writer) error {
	about := drawing.PDF{Title: p.Title + " " + p.Number, Author: p.Shop, At: p.Day}
	if p.Day.IsZero() {
		about.At = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)
	}
	return drawing.WritePDF(w, about, p.Pages()...)
}

// Pages lays the paper out, on as few pages as it goes on and then as large as
// it goes on these.
func (p Paper) Pages() []drawing.Drawing {
	var best [][]strip
	var chosen size
	for _, s := range sizes {
		_, head := p.head(s, 1, 1)
		room := high - top - bottom - p.footHeight() - head
		if pages := flow(p.Blocks, s, room); best == nil || len(pages) < len(best) {
			best, chosen = pages, s
		}
		if len(best) == 1 {
			break
		}
	}
	list := make([]drawing.Drawing, len(best))
	for i, page := range best {
		list[i] = p.page(chosen, page, i+1, len(best))
	}
	return list
}

// flow parts the strips of blocks over pages of a height.
func flow(blocks []Block, s size, room float64) (pages [][]strip) {
	var page []strip
	var held []strip // bound to what comes next
	used := 0.0
	turn := func() {
		pages = append(pages, page)
		page, used = nil, 0
	}
	put := func(strips []strip) {
		sum := 0.0
		for _, x := range strips {
			sum += x.height
		}
		if used+sum > room+slack && len(page) > 0 {
			turn()
			for len(strips) > 1 && strips[0].blank() { // a page does not begin with a gap
				strips = strips[1:]
			}
			if head := strips[0].head; head != nil {
				page, used = append(page, *head), head.height
			}
		}
		page, used = append(page, strips...), used+sum
	}
	for i, b := range blocks {
		strips := b.strips(s, width)
		if i > 0 && len(strips) > 0 && used > 0 {
			held = append(held, s.between(blocks[i-1]))
		}
		for _, x := range strips {
			held = append(held, x)
			if !x.bound {
				put(held)
				held = nil
			}
		}
	}
	if len(held) > 0 {
		put(held)
	}
	return append(pages, page)
}

// between is what is left free below a block.
func (s size) between(above Block) strip {
	switch above.(type) {
	case Heading, Mind:
		return strip{height: s.gap / 4, bound: true}
	}
	return strip{height: s.gap, bound: true}
}

// page draws one page: its head, its strips, its foot.
func (p Paper) page(s size, strips []strip, number, of int) drawing.Drawing {
	shapes, head := p.head(s, number, of)
	y := top + head
	spare := high - bottom - p.footHeight() - y
	for _, x := range strips {
		spare -= x.height
	}
	for _, x := range strips {
		if x.grow != nil {
			more := max(spare, 0)
			if x.most > 0 {
				more = min(more, x.most-x.height)
			}
			x.height += more
			x.shapes, spare = x.grow(x.height), spare-more
		}
		shapes = append(shapes, drawing.Place(x.shapes, drawing.Point{X: left, Y: y}, 1)...)
		y += x.height
	}
	shapes = append(shapes, p.foot(shapes, number, of)...)
	return drawing.Drawing{Name: "page", Width: wide, Height: high, Title: p.Title, Layers: []drawing.Layer{{Name: "page", Shapes: shapes}}}
}
