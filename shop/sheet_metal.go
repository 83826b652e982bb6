package shop

import (
	"fmt"
	"math"
	"strconv"

	"axlewright/calc/material"
	"axlewright/kit"
	"axlewright/kit/nest"
	"axlewright/kit/outline"
	"axlewright/quantity"
)

// Steel is sheets of one kind in stock, or one remnant of a sheet.
type Steel struct {
	Meta      `json:"-"`
	Name      string       `json:"name"`              // "R-0003-1"
	Grade     string       `json:"grade"`             // of calc/material
	Thickness float64      `json:"thickness"`         // m
	Long      float64      `json:"long"`              // m, along the rolling direction
	Wide      float64      `json:"wide"`              // m
	Corners   [][2]float64 `json:"corners,omitempty"` // m, of a remnant that is no rectangle
	Remnant   bool         `json:"remnant,omitempty"` // used before whole sheets
	Count     int          `json:"count"`
	Price     Money        `json:"price,omitempty"` // of one
	Batch     string       `json:"batch,omitempty"` // heat or mill lot, etched on the plates
	Came      string       `json:"came,omitempty"`  // day
	Place     string       `json:"place,omitempty"` // rack
	From      string       `json:"from,omitempty"`  // the nest that a remnant was left over from
	Note      string       `json:"note,omitempty"`
}

// Kind is KindSteel.
func (*Steel) Kind() CardKind { return KindSteel }

// Check demands a known grade and a size that can be laid out.
func (s *Steel) Check() error {
	m, err := material.Lookup(s.Grade)
	switch {
	case err != nil:
		return Fault(Invalid, "%v", err).At("grade")
	case m.Name != s.Grade:
		return Fault(Invalid, "Write the grade as %s.", m.Name).At("grade")
	case !(s.Thickness >= 0.5e-3 && s.Thickness <= 60e-3):
		return Fault(Invalid, "A sheet is 0.5 to 60 mm thick, such as 3 mm.").At("thickness")
	case !(s.Long > 0 && s.Long <= 50 && s.Wide > 0 && s.Wide <= 50):
		return Fault(Invalid, "Say how long and how wide the sheet is, such as 2500 mm and 1250 mm.").At("long")
	case s.Count < 0 || s.Count > 10000:
		return Fault(Invalid, "The count is a whole number from nought up.").At("count")
	case s.Remnant && s.Count > 1:
		return Fault(Invalid, "Each remnant has a card of its own.").At("count")
	case s.Price < 0:
		return Fault(Invalid, "A price is not negative.").At("price")
	}
	if err := s.outline().Check(); err != nil {
		return Fault(Invalid, "The corners of the remnant are no outline: %v", err).At("corners")
	}
	return firstFault(required("name", s.Name), lengthOf("name", s.Name, 60), lengthOf("batch", s.Batch, 40), dayOrEmpty("came", s.Came),
		lengthOf("place", s.Place, 100), lengthOf("from", s.From, 60), lengthOf("note", s.Note, longText))
}

func (s *Steel) describe() description {
	state := "sheet"
	if s.Remnant {
		state = "remnant"
	}
	return description{label: s.Name, group: s.Grade, state: state,
		words: []string{s.Grade, s.Batch, s.Place, strconv.FormatFloat(math.Round(s.Thickness*1e4)/10, 'f', -1, 64)}}
}

// outline is the sheet's, from its lower left corner.
func (s *Steel) outline() outline.Loop {
	if len(s.Corners) == 0 {
		return outline.Rectangle(outline.Box{High: outline.Point{X: s.Long, Y: s.Wide}})
	}
	var corners []outline.Point
	for _, c := range s.Corners {
		corners = append(corners, outline.Point{X: c[0], Y: c[1]})
	}
	return outline.Polygon(corners...)
}

// Size is how large it is, in words.
func (s *Steel) Size() string {
	return fmt.Sprintf("%s × %s, %s thick", quantity.Format(s.Long, quantity.Length), quantity.Format(s.Wide, quantity.Length), quantity.Format(s.Thickness, quantity.Length))
}

// inStock is the sheet as a nest takes it.
func (s *Steel) inStock() kit.InStock {
	length := func(x float64) kit.Typed { return kit.Typed{Text: quantity.Exact(x, quantity.Length)} }
	in := kit.InStock{Name: kit.Typed{Text: s.Name}, Steel: kit.Typed{Text: s.Grade}, Thickness: length(s.Thickness), Long: length(s.Long), Wide: length(s.Wide),
		Remnant: s.Remnant, Count: s.Count, Price: s.Price.Units()}
	for _, c := range s.Corners {
		in.Outline = append(in.Outline, kit.Spot{X: length(c[0]), Y: length(c[1])})
	}
	return in
}

// A Nest is which plates are cut from which sheets: a plan first, and once it was
// cut what was taken from stock and put back.
type Nest struct {
	Meta     `json:"-"`
	Name     string        `json:"name"` // "N-0003"
	Day      string        `json:"day"`
	Wanted   []NestWanted  `json:"wanted"`
	Rates    kit.Rates     `json:"rates"`
	Cuttings []NestCutting `json:"cuttings"`
	Cut      string        `json:"cut,omitempty"` // day on which the stock was taken
	Lots     []ID          `json:"lots,omitempty"`
	Remnants []ID          `json:"remnants,omitempty"` // put back
}

// NestWanted is so many sets of a kit's revision.
type NestWanted struct {
	Kit      Link   `json:"kit"`
	Revision string `json:"revision"`
	Sets     int    `json:"sets"`
	Batch    string `json:"batch,omitempty"` // etched on the plates
}

// Name of the kit's revision: "KIT-T24-A.2".
func (w *NestWanted) Name() string { return w.Kit.Label + "." + w.Revision }

// A NestCutting is the plan for all plates of one steel and thickness. The plates
// themselves are drawn anew from their kit, whose revision never changes.
type NestCutting struct {
	Steel     string     `json:"steel"`
	Thickness float64    `json:"thickness"` // m
	Plan      nest.Plan  `json:"plan"`
	Stock     []ID       `json:"stock"`    // cards of the plan's stock
	InRows    nest.Yield `json:"in_rows"`  // the same in simple rows
	Least     float64    `json:"at_least"` // m², sheet that no plan can do without
	Cost      kit.Cost   `json:"cost"`
}

// Left is how many pieces had no room.
func (c *NestCutting) Left() int {
	n := 0
	for _, l := range c.Plan.Left {
		n += l
	}
	return n
}

// Kind is KindNest.
func (*Nest) Kind() CardKind { return KindNest }

// Check demands what was wanted and what was planned for it.
func (n *Nest) Check() error {
	if len(n.Wanted) == 0 || len(n.Cuttings) == 0 {
		return Fault(Invalid, "A nest says which kits are cut.").At("wanted")
	}
	return firstFault(required("name", n.Name), lengthOf("name", n.Name, 60), required("day", n.Day), dayOrEmpty("day", n.Day), dayOrEmpty("cut", n.Cut))
}

func (n *Nest) describe() description {
	d := description{label: n.Name, state: "plan"}
	if n.Cut != "" {
		d.state = "cut"
	}
	for i := range n.Wanted {
		d.words = append(d.words, n.Wanted[i].Name())
	}
	return d
}
