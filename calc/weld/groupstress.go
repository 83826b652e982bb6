package weld

import (
	"math"

	"axlewright/calc/check"
)

// GroupLoad is the load that a part puts on its weld group. The group lies in the
// plane z = 0, which is the surface the part is welded to.
type GroupLoad struct {
	Group   Group   // -, runs of weld
	Throat  float64 // m, a: throat of the group
	ForceX  float64 // N, force on the part
	ForceY  float64 // N, force on the part
	ForceZ  float64 // N, force on the part, positive lifts it off the surface
	AtX     float64 // m, point where the force acts
	AtY     float64 // m, point where the force acts
	AtZ     float64 // m, point where the force acts, height above the surface
	MomentX float64 // N·m, further couple on the part about the x direction; optional
	MomentY float64 // N·m, further couple on the part about the y direction; optional
	MomentZ float64 // N·m, further couple on the part about the z direction; optional
}

// GroupStressResult are the greatest stresses in a weld group and where they are.
type GroupStressResult struct {
	Direct      float64 // Pa, resultant of the forces alone, even over the group
	Stress      float64 // Pa, greatest vector sum on the throat
	X           float64 // m, where it is
	Y           float64 // m, where it is
	Along       float64 // N/m, force along the weld there, for the group's throat
	Across      float64 // N/m, force in the plane and square to the weld there, positive to the left of the run
	Upright     float64 // N/m, force square to the plane there
	Equivalent  float64 // Pa, greatest √(σ_⊥² + 3·(τ_⊥² + τ_∥²)) with the bead on the worse side
	EquivalentX float64 // m, where that is
	EquivalentY float64 // m, where that is
	Normal      float64 // Pa, greatest σ_⊥ with the bead on the worse side
}

// GroupStress returns the greatest stress on the throat of a weld group by the elastic line method.
//
//	s = √(s_x² + s_y² + s_z²)
//	s_x = F_x/(a·L) − M_z·y/(a·J_u)
//	s_y = F_y/(a·L) + M_z·x/(a·J_u)
//	s_z = F_z/(a·L) + (M_x·I_yu + M_y·I_xyu)·y/(a·D) − (M_y·I_xu + M_x·I_xyu)·x/(a·D)
//	D = I_xu·I_yu − I_xyu²
//
// x and y are from the centroid, M the moments about it. The weld is elastic, the
// part and the surface are rigid, and the surface is not pressed by the part: the
// welds take everything. Valid for thin throats. The directional figures suppose
// equal legs on square faces.
// Errors: *check.RangeError for a bad group, no throat, or a moment about the line of
// a single straight weld, which the line method gives no strength.
// Source: Shigley, Mechanical Engineering Design, 8th ed., 9-3 and 9-4; unsymmetrical
// bending after Timoshenko, Strength of Materials; directional figures EN 1993-1-8:2005, 4.5.3.2 (from memory).
func GroupStress(p GroupLoad) (GroupStressResult, error) {
	const fn = "weld.GroupStress"
	if err := check.All(fn,
		check.Positive("Throat", p.Throat),
		check.Finite("ForceX", p.ForceX), check.Finite("ForceY", p.ForceY), check.Finite("ForceZ", p.ForceZ),
		check.Finite("AtX", p.AtX), check.Finite("AtY", p.AtY), check.Finite("AtZ", p.AtZ),
		check.Finite("MomentX", p.MomentX), check.Finite("MomentY", p.MomentY), check.Finite("MomentZ", p.MomentZ),
	); err != nil {
		return GroupStressResult{}, err
	}
	g, err := GroupProperties(p.Group)
	if err != nil {
		return GroupStressResult{}, err
	}
	field, err := p.field(fn, &g)
	if err != nil {
		return GroupStressResult{}, err
	}
	r := GroupStressResult{Direct: math.Sqrt(p.ForceX*p.ForceX+p.ForceY*p.ForceY+p.ForceZ*p.ForceZ) / (p.Throat * g.Length)}
	for _, run := range p.Group.Runs {
		// Each of the three figures is convex along a straight run: its ends suffice.
		tx, ty := run.X2-run.X1, run.Y2-run.Y1
		l := math.Hypot(tx, ty)
		tx, ty = tx/l, ty/l
		r.see(field.at(run.X1, run.Y1, tx, ty), weight(run.Weight)*p.Throat)
		r.see(field.at(run.X2, run.Y2, tx, ty), weight(run.Weight)*p.Throat)
	}
	for _, b := range p.Group.Bends {
		for _, figure := range []func(throatPoint) float64{throatPoint.stress, throatPoint.equivalent, throatPoint.normal} {
			worst := b.worst(func(at float64) float64 { return figure(field.on(b, at)) })
			r.see(field.on(b, worst), weight(b.Weight)*p.Throat)
		}
	}
	return r, nil
}

// field is the stress over the group, linear in the place.
type field struct {
	cx, cy       float64
	fx, fy, fz   float64 // even part
	turn, bx, by float64 // slope: in-plane turn, s_z over x and over y
}

func (p GroupLoad) field(fn string, g *GroupPropertiesResult) (field, error) {
	rx, ry, rz := p.AtX-g.CentroidX, p.AtY-g.CentroidY, p.AtZ
	mx := p.MomentX + ry*p.ForceZ - rz*p.ForceY
	my := p.MomentY + rz*p.ForceX - rx*p.ForceZ
	mz := p.MomentZ + rx*p.ForceY - ry*p.ForceX
	a := p.Throat
	f := field{
		cx: g.CentroidX, cy: g.CentroidY,
		fx: p.ForceX / (a * g.Length), fy: p.ForceY / (a * g.Length), fz: p.ForceZ / (a * g.Length),
		turn: mz / (a * g.UnitJ),
	}
	if !g.OneLine {
		d := g.UnitIx*g.UnitIy - g.UnitIxy*g.UnitIxy
		f.by = (mx*g.UnitIy + my*g.UnitIxy) / (a * d)
		f.bx = -(my*g.UnitIx + mx*g.UnitIxy) / (a * d)
		return f, nil
	}
	// One straight line: bending across it is carried, bending about it is not.
	axis := g.principal()
	about := mx*axis.ux + my*axis.uy
	scale := math.Hypot(mx, my) + (math.Abs(p.ForceX)+math.Abs(p.ForceY)+math.Abs(p.ForceZ))*g.Length
	if err := check.All(fn, check.That("MomentX", about, math.Abs(about) <= 1e-9*scale,
		"no moment about the line of a single straight weld")); err != nil {
		return f, err
	}
	across := (my*axis.ux - mx*axis.uy) / (a * axis.greatest)
	f.bx, f.by = -across*axis.ux, -across*axis.uy
	return f, nil
}

// throatPoint is a place on the weld: stress along it, across it and upright.
type throatPoint struct{ x, y, along, across, upright float64 }

func (f field) at(x, y, tx, ty float64) throatPoint {
	dx, dy := x-f.cx, y-f.cy
	sx := f.fx - f.turn*dy
	sy := f.fy + f.turn*dx
	return throatPoint{x, y, sx*tx + sy*ty, sy*tx - sx*ty, f.fz + f.bx*dx + f.by*dy}
}

func (f field) on(b Bend, angle float64) throatPoint {
	s, c := math.Sincos(angle)
	return f.at(b.X+b.Radius*c, b.Y+b.Radius*s, -s, c)
}

func (t throatPoint) stress() float64 {
	return math.Sqrt(t.along*t.along + t.across*t.across + t.upright*t.upright)
}

// With the bead on the worse side the greater of the sum and the difference is shear.
func (t throatPoint) equivalent() float64 {
	sum := (math.Abs(t.across) + math.Abs(t.upright)) / math.Sqrt2
	difference := (math.Abs(t.across) - math.Abs(t.upright)) / math.Sqrt2
	return math.Sqrt(difference*difference + 3*(sum*sum+t.along*t.along))
}

func (t throatPoint) normal() float64 { return (math.Abs(t.across) + math.Abs(t.upright)) / math.Sqrt2 }

func (r *GroupStressResult) see(t throatPoint, throat float64) {
	if s := t.stress(); s > r.Stress || r.Stress == 0 {
		r.Stress, r.X, r.Y = s, t.x, t.y
		r.Along, r.Across, r.Upright = t.along*throat, t.across*throat, t.upright*throat
	}
	if e := t.equivalent(); e > r.Equivalent || r.Equivalent == 0 {
		r.Equivalent, r.EquivalentX, r.EquivalentY = e, t.x, t.y
	}
	r.Normal = math.Max(r.Normal, t.normal())
}

// worst finds where on the arc a figure is greatest: stations close enough to catch
// every hump, then each station that tops its neighbours narrowed by golden section.
func (b Bend) worst(figure func(float64) float64) float64 {
	stations := 8 + int(math.Ceil((b.To-b.From)*96))
	place := func(i int) float64 { return b.From + (b.To-b.From)*float64(i)/float64(stations) }
	best, value := b.From, figure(b.From)
	before, here := value, value
	for i := range stations + 1 {
		after := math.Inf(-1)
		if i < stations {
			after = figure(place(i + 1))
		}
		if here >= before && here >= after {
			at := summit(figure, place(max(i-1, 0)), place(min(i+1, stations)))
			for _, x := range [2]float64{at, place(i)} {
				if v := figure(x); v > value*(1+1e-9) { // of equal humps the first
					best, value = x, v
				}
			}
		}
		before, here = here, after
	}
	return best
}

// summit narrows an interval with one hump by golden section.
func summit(figure func(float64) float64, low, high float64) float64 {
	const golden = 0.6180339887498949
	x1, x2 := high-golden*(high-low), low+golden*(high-low)
	f1, f2 := figure(x1), figure(x2)
	for range 24 {
		if f1 > f2 {
			high, x2, f2 = x2, x1, f1
			x1 = high - golden*(high-low)
			f1 = figure(x1)
		} else {
			low, x1, f1 = x1, x2, f2
			x2 = low + golden*(high-low)
			f2 = figure(x2)
		}
	}
	return (low + high) / 2
}
