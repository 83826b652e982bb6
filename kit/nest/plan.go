package nest

import (
	"context"
	"fmt"
	"math"

	"axlewright/kit/outline"
)

// A Plan is what is cut from which sheet.
type Plan struct {
	Sheets  []Sheet `json:"sheets"`
	Left    []int   `json:"left"` // by part: pieces for which there was no room
	Parts   []Part  `json:"parts"`
	Stock   []Stock `json:"stock"`
	Rules   Rules   `json:"rules"`
	Tried   int     `json:"tried"` // orders
	Placing string  `json:"placing"`
}

// A Sheet is one sheet or remnant with what is cut from it.
type Sheet struct {
	Stock   int           `json:"stock"`
	Serial  int           `json:"serial"` // of its kind, from 1
	Places  []Place       `json:"places"`
	Used    outline.Box   `json:"used"`    // round all parts
	Offcuts []outline.Box `json:"offcuts"` // rests that go back into stock, the largest first
}

// A Place is where a piece lies: its outline turned about its own origin and
// then shifted.
type Place struct {
	Part  int           `json:"part"`
	Turn  float64       `json:"turn"` // rad
	Shift outline.Point `json:"shift"`
}

// Outline is the piece's outline on its sheet.
func (p Plan) Outline(at Place) outline.Loop {
	return p.Parts[at.Part].Outline.Turned(at.Turn).Shifted(at.Shift)
}

// Progress is told how many of how many pieces have been placed, over all tries.
// It may be called from several goroutines.
type Progress func(done, total int)

// Nest lays parts on the stock given.
//
// Errors: what is wrong with parts, stock or rules; the context's error. Pieces
// without room are no error: see Plan.Left.
func Nest(ctx context.Context, parts []Part, stock []Stock, r Rules, progress Progress) (Plan, error) {
	if err := check(parts, stock, r); err != nil {
		return Plan{}, err
	}
	t, err := newTable(ctx, parts, stock, r)
	if err != nil {
		return Plan{}, err
	}
	best := t.search(ctx, newCounter(progress, r.Tries*pieces(parts)))
	if err := ctx.Err(); err != nil {
		return Plan{}, err
	}
	best.Tried, best.Placing = r.Tries, "left and down by no-fit columns"
	return best, nil
}

func pieces(parts []Part) int {
	n := 0
	for _, p := range parts {
		n += p.Count
	}
	return n
}

// better prefers fewer pieces left over, then less sheet, then more of it as an
// offcut.
func (p *Plan) better(q *Plan) bool {
	a, b := p.merit(), q.merit()
	for i := range a {
		if math.Abs(a[i]-b[i]) > 1e-9 {
			return a[i] < b[i]
		}
	}
	return false
}

func (p *Plan) merit() [3]float64 {
	var left, sheet, kept float64
	for _, n := range p.Left {
		left += float64(n)
	}
	for i := range p.Sheets {
		sheet += p.Stock[p.Sheets[i].Stock].Outline.Area()
		for _, o := range p.Sheets[i].Offcuts {
			kept += o.Width() * o.Height()
		}
	}
	used := 0.0
	if n := len(p.Sheets); n > 0 {
		used = p.Sheets[n-1].Used.High.X
	}
	return [3]float64{left, sheet - kept, used}
}

// A Yield says how well sheets were used.
type Yield struct {
	Metal   float64 `json:"metal"`   // m², of parts, holes taken off
	Outline float64 `json:"outline"` // m², within the outlines of parts
	Sheet   float64 `json:"sheet"`   // m², of sheets and remnants begun
	Offcuts float64 `json:"offcuts"` // m², of rests that go back into stock
}

// OfSheet is the share of the sheets begun that became parts.
func (y Yield) OfSheet() float64 { return y.Metal / y.Sheet }

// OfUsed is the same with offcuts counted as not used.
func (y Yield) OfUsed() float64 { return y.Metal / (y.Sheet - y.Offcuts) }

// Yield of the whole plan.
func (p Plan) Yield() Yield {
	var y Yield
	for i := range p.Sheets {
		one := p.YieldOf(i)
		y.Metal += one.Metal
		y.Outline += one.Outline
		y.Sheet += one.Sheet
		y.Offcuts += one.Offcuts
	}
	return y
}

// YieldOf is the yield of one sheet.
func (p Plan) YieldOf(sheet int) Yield {
	s := &p.Sheets[sheet]
	y := Yield{Sheet: math.Abs(p.Stock[s.Stock].Outline.Area())}
	for _, at := range s.Places {
		y.Metal += p.Parts[at.Part].metal()
		y.Outline += p.Parts[at.Part].Outline.Area()
	}
	for _, o := range s.Offcuts {
		y.Offcuts += o.Width() * o.Height()
	}
	return y
}

// Name of a sheet: "new 2", or a remnant's own name.
func (p Plan) Name(sheet int) string {
	s := p.Sheets[sheet]
	if p.Stock[s.Stock].Remnant && p.Stock[s.Stock].Count == 1 {
		return p.Stock[s.Stock].Name
	}
	return fmt.Sprintf("%s %d", p.Stock[s.Stock].Name, s.Serial)
}
