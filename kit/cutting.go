package kit

import (
	"cmp"
	"context"
	"fmt"
	"math"
	"slices"

	"axlewright/calc/material"
	"axlewright/kit/nest"
)

// A Cutting is the plan for all plates of one steel and thickness.
type Cutting struct {
	Steel     string    `json:"steel"`
	Thickness float64   `json:"thickness"` // m
	Plates    []Plate   `json:"plates"`    // by the plan's parts
	Plan      nest.Plan `json:"plan"`
	Rows      nest.Plan `json:"rows"`  // the same in simple rows, to compare with
	Least     float64   `json:"least"` // m², sheet that no plan can do without
	Cost      Cost      `json:"cost"`
}

// Cost of cutting, in the shop's own currency.
type Cost struct {
	Sheets  float64 `json:"sheets"` // sheets and remnants begun, less offcuts by their area
	Cut     float64 `json:"cut"`
	Pierces float64 `json:"pierces"`
	Marks   float64 `json:"marks"`
	Setting float64 `json:"setting"`
	Scrap   float64 `json:"scrap"` // got for what is left
	Total   float64 `json:"total"`
}

// Kits drawn for the job, in the order of its file.
func (j *Job) Drawn() []Drawn { return j.drawn }

// Run nests the whole job, one steel and thickness after the other.
//
// Errors: steel without sheets; the context's error.
func (j *Job) Run(ctx context.Context, progress nest.Progress) ([]Cutting, error) {
	cuttings := j.cuttings()
	total := 0
	rules := make([]nest.Rules, len(cuttings))
	parts := make([][]nest.Part, len(cuttings))
	for i := range cuttings {
		c := &cuttings[i]
		var err error
		if rules[i], err = j.rules(c.Thickness); err != nil {
			return nil, err
		}
		for k := range c.Plates {
			parts[i] = append(parts[i], j.part(&c.Plates[k]))
			total += parts[i][k].Count * rules[i].Tries
		}
	}
	before := 0
	for i := range cuttings {
		c := &cuttings[i]
		stock, prices := j.stockOf(c)
		if len(stock) == 0 {
			return nil, fmt.Errorf("no sheet of %s, %s, for %s", c.Steel, mm(c.Thickness), c.Plates[0].File())
		}
		report := func(done, _ int) {
			if progress != nil {
				progress(before+done, total)
			}
		}
		var err error
		if c.Plan, err = nest.Nest(ctx, parts[i], stock, rules[i], report); err != nil {
			return nil, err
		}
		if err := c.Plan.Check(); err != nil {
			return nil, fmt.Errorf("the nest of %s, %s, breaks its own rules: %w", c.Steel, mm(c.Thickness), err)
		}
		if c.Rows, err = nest.Rows(parts[i], stock, rules[i]); err != nil {
			return nil, err
		}
		if c.Least, err = nest.LeastSheet(parts[i], rules[i]); err != nil {
			return nil, err
		}
		c.price(j.Rates, prices)
		for _, p := range parts[i] {
			before += p.Count * rules[i].Tries
		}
	}
	return cuttings, nil
}

// cuttings sorts the plates of all kits by steel and thickness.
func (j *Job) cuttings() []Cutting {
	var list []Cutting
	for k := range j.drawn {
		for _, p := range j.drawn[k].Plates {
			p.Count *= j.Kits[k].Sets
			i := slices.IndexFunc(list, func(c Cutting) bool {
				return c.Steel == p.Steel && math.Abs(c.Thickness-p.Thickness) < 1e-6
			})
			if i < 0 {
				i = len(list)
				list = append(list, Cutting{Steel: p.Steel, Thickness: p.Thickness})
			}
			list[i].Plates = append(list[i].Plates, p)
		}
	}
	slices.SortStableFunc(list, func(a, b Cutting) int {
		return cmp.Or(cmp.Compare(a.Steel, b.Steel), cmp.Compare(a.Thickness, b.Thickness))
	})
	return list
}

func (j *Job) part(p *Plate) nest.Part {
	part := nest.Part{Name: p.File(), Outline: p.Outline, Area: p.Area(), Count: p.Count, Grain: p.Grain}
	if p.Hand != Neither {
		part.Pair = fmt.Sprintf("%s-%d", p.Kit, p.Piece)
	}
	return part
}

// stockOf lists the sheets of a steel and thickness with their prices.
func (j *Job) stockOf(c *Cutting) (stock []nest.Stock, prices []float64) {
	for i := range j.Sheets {
		s := &j.Sheets[i]
		thickness, err := typedLength(s.Thickness, 0)
		if err != nil || s.Steel.Text != c.Steel || math.Abs(thickness-c.Thickness) > 1e-6 {
			continue
		}
		if n, err := s.stock(); err == nil {
			stock, prices = append(stock, n), append(prices, s.Price)
		}
	}
	return stock, prices
}

// price works the cost out.
func (c *Cutting) price(r Rates, prices []float64) {
	density := 0.0
	if m, err := material.Lookup(c.Steel); err == nil {
		density = m.Density
	}
	for i := range c.Plan.Sheets {
		s := &c.Plan.Sheets[i]
		y := c.Plan.YieldOf(i)
		c.Cost.Sheets += prices[s.Stock] * (y.Sheet - y.Offcuts) / y.Sheet
		c.Cost.Setting += r.Sheet
		c.Cost.Scrap += (y.Sheet - y.Offcuts - y.Metal) * c.Thickness * density * r.Scrap
		for _, at := range s.Places {
			p := &c.Plates[at.Part]
			c.Cost.Cut += p.CutLength() * r.Cut
			c.Cost.Pierces += float64(p.Pierces()) * r.Pierce
			c.Cost.Marks += p.Etched.Length() * r.Mark
		}
	}
	c.Cost.Total = c.Cost.Sheets + c.Cost.Cut + c.Cost.Pierces + c.Cost.Marks + c.Cost.Setting - c.Cost.Scrap
}
