package weldplan

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"axlewright/axle"
)

// A movement is one thing that must not move, as it would be measured.
type movement struct {
	what  string    // in words
	row   []float64 // m, by freedom
	limit float64   // m
	from  string    // where the limit is from
}

// The trade's figures for what a strengthened casting may be out by.
const (
	inLineLimit  = 0.05e-3 // m over the mandrel
	apartLimit   = 0.10e-3 // m
	squareLimit  = 0.03e-3 // m in squareArm
	offsetLimit  = 0.05e-3 // m
	pegFaceLimit = 0.05e-3 // m
	pegTiltLimit = 0.10e-3 // m in pegArm
	squareArm    = 0.100   // m
	pegArm       = 0.030   // m
)

const (
	customary = "common practice, no source"
	ourGuess  = "assumed; the shop's own figure is better"
)

func allowed(own *axle.Length, trade float64, source string) (float64, string) {
	if own != nil && own.Given() {
		return own.Value, string(own.Origin)
	}
	return trade, source
}

// An axisOf is a line through two bore centres, or the axis of a single bore.
type axisOf struct {
	a, b   grip
	unit   r3.Vec
	length float64
	single bool
}

// watch lists the movements of a casting's bores and peg face. All are between
// one part of the casting and another, so that it does not matter where it is held.
func (m *model) watch(c *Casting) {
	var limits Limits
	if c.Limits != nil {
		limits = *c.Limits
	}
	sides, pinions := boresOf(c.Bores, SideBore), pinionBores(c.Bores)
	if len(pinions) == 2 {
		limit, from := allowed(&limits.InLine, inLineLimit, customary)
		m.watchInLine("pinion bores", m.axis(pinions), pinions, limit, from)
	}
	if len(sides) != 2 {
		return
	}
	side := m.axis(sides)
	limit, from := allowed(&limits.InLine, inLineLimit, customary)
	m.watchInLine("side bores", side, sides, limit, from)
	apart := m.blank()
	m.skeleton.move(apart, side.b, side.unit)
	m.skeleton.move(apart, side.a, r3.Scale(-1, side.unit))
	limit, from = allowed(&limits.Apart, apartLimit, ourGuess)
	m.moves = append(m.moves, movement{"side bores apart", apart, limit, from})
	if len(pinions) > 0 {
		m.watchPinion(side, m.axis(pinions), limits)
	}
	if c.Peg != nil {
		m.watchPeg(side, c.Peg, limits)
	}
}

func boresOf(all []Bore, role Role) (some []Bore) {
	for _, b := range all {
		if b.Role == role {
			some = append(some, b)
		}
	}
	return some
}

// pinionBores are the head bore and the tail bore, as far as there are such.
func pinionBores(all []Bore) (some []Bore) {
	for _, role := range []Role{HeadBore, TailBore} {
		if of := boresOf(all, role); len(of) > 0 {
			some = append(some, of[0])
		}
	}
	return some
}

func (m *model) blank() []float64 { return make([]float64, m.skeleton.dofs) }

// axis is the line through two bores, or the axis of a single pinion bore.
func (m *model) axis(some []Bore) (x axisOf) {
	x.a = m.skeleton.grip(some[0].On, some[0].At.At)
	if len(some) == 1 {
		x.b, x.unit, x.single = x.a, r3.Vec{X: 1}, true
		return x
	}
	x.a = m.skeleton.grip(some[0].On, some[0].At.At)
	x.b = m.skeleton.grip(some[1].On, some[1].At.At)
	d := r3.Sub(some[1].At.At, some[0].At.At)
	x.unit, x.length = r3.Unit(d), r3.Norm(d)
	return x
}

// turnOf adds how much the axis itself turns about d, which is square to it.
func (m *model) turnOf(row []float64, x axisOf, d r3.Vec, times float64) {
	if x.single {
		m.skeleton.turn(row, x.a, r3.Scale(times, d))
		return
	}
	// A line turns by ω = unit × (move of b − move of a)/length.
	way := r3.Scale(times/x.length, r3.Cross(d, x.unit))
	m.skeleton.move(row, x.b, way)
	m.skeleton.move(row, x.a, r3.Scale(-1, way))
}

// pointOf adds how much a point carried along by the axis moves along d; about the
// axis it turns as the mean of the two bores does.
func (m *model) pointOf(row []float64, x axisOf, from r3.Vec, p, d r3.Vec, times float64) {
	m.skeleton.move(row, x.a, r3.Scale(times, d))
	arm := r3.Cross(r3.Sub(p, from), d) // turning ω moves the point along d by ω·arm
	along := r3.Dot(arm, x.unit)
	m.turnOf(row, x, r3.Sub(arm, r3.Scale(along, x.unit)), times)
	for _, g := range []grip{x.a, x.b} {
		m.skeleton.turn(row, g, r3.Scale(times*along/2, x.unit))
	}
}

// watchInLine adds how far each bore tips against the line through both, over its
// length: what a mandrel feels.
func (m *model) watchInLine(what string, x axisOf, pair []Bore, limit float64, from string) {
	p, q := basis(x.unit)
	for i, g := range []grip{x.a, x.b} {
		for _, about := range []r3.Vec{p, q} {
			row := m.blank()
			m.skeleton.turn(row, g, r3.Scale(x.length, about))
			m.turnOf(row, x, about, -x.length)
			m.moves = append(m.moves, movement{what + ": " + pair[i].Name + " tips about " + axisName(about), row, limit, from})
		}
	}
}

// watchPinion adds squareness and offset of the two axes.
func (m *model) watchPinion(side, pinion axisOf, limits Limits) {
	normal := r3.Cross(pinion.unit, side.unit)
	if r3.Norm(normal) < 0.1 { // no two crossing axes
		return
	}
	normal = r3.Unit(normal)
	square := m.blank()
	m.turnOf(square, pinion, normal, squareArm)
	m.turnOf(square, side, normal, -squareArm)
	limit, from := allowed(&limits.Square, squareLimit, customary)
	m.moves = append(m.moves, movement{"pinion square to side bores, in 100 mm", square, limit, from})

	// Where the pinion axis passes the side axis.
	pa := r3.Add(m.skeleton.nodes[pinion.a.node], pinion.a.arm)
	sa := r3.Add(m.skeleton.nodes[side.a.node], side.a.arm)
	between := r3.Sub(sa, pa)
	c := r3.Dot(pinion.unit, side.unit)
	t := (r3.Dot(between, pinion.unit) - c*r3.Dot(between, side.unit)) / (1 - c*c)
	meet := r3.Add(pa, r3.Scale(t, pinion.unit))
	offset := m.blank()
	m.pointOf(offset, pinion, pa, meet, normal, 1)
	m.pointOf(offset, side, sa, meet, normal, -1)
	limit, from = allowed(&limits.Offset, offsetLimit, customary)
	m.moves = append(m.moves, movement{"pinion axis past side axis", offset, limit, from})
}

// watchPeg adds what the peg's face does against the crown wheel, which the side
// bores carry.
func (m *model) watchPeg(side axisOf, peg *PegFace, limits Limits) {
	g := m.skeleton.grip(peg.On, peg.At.At)
	sa := r3.Add(m.skeleton.nodes[side.a.node], side.a.arm)
	facing := peg.Facing.Vec()
	gap := m.blank()
	m.skeleton.move(gap, g, facing)
	m.pointOf(gap, side, sa, peg.At.At, facing, -1)
	limit, from := allowed(&limits.PegFace, pegFaceLimit, ourGuess)
	m.moves = append(m.moves, movement{"peg face towards the crown wheel", gap, limit, from})
	p, q := basis(facing)
	limit, from = allowed(&limits.PegTilt, pegTiltLimit, customary)
	for _, about := range []r3.Vec{p, q} {
		row := m.blank()
		m.skeleton.turn(row, g, r3.Scale(pegArm, about))
		along := r3.Dot(about, side.unit)
		m.turnOf(row, side, r3.Sub(about, r3.Scale(along, side.unit)), -pegArm)
		for _, bore := range []grip{side.a, side.b} {
			m.skeleton.turn(row, bore, r3.Scale(-pegArm*along/2, side.unit))
		}
		m.moves = append(m.moves, movement{"peg face tips about " + axisName(about) + ", in 30 mm", row, limit, from})
	}
}

// basis is two unit vectors square to a direction and to each other, along the
// casting's axes where that is possible.
func basis(d r3.Vec) (p, q r3.Vec) {
	least, pick := math.Inf(1), r3.Vec{}
	for _, axis := range []r3.Vec{{X: 1}, {Y: 1}, {Z: 1}} {
		if along := math.Abs(r3.Dot(axis, d)); along < least {
			least, pick = along, axis
		}
	}
	p = squareTo(pick, d)
	return p, r3.Cross(d, p)
}

func axisName(d r3.Vec) string {
	switch {
	case math.Abs(d.X) > 0.99:
		return "x"
	case math.Abs(d.Y) > 0.99:
		return "y"
	case math.Abs(d.Z) > 0.99:
		return "z"
	}
	return "a slanted axis"
}
