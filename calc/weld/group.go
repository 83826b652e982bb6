package weld

import (
	"math"

	"axlewright/calc/check"
)

// Run is a straight run of fillet weld, as a line in the plane of the weld group.
type Run struct {
	X1     float64 // m, start
	Y1     float64 // m, start
	X2     float64 // m, end
	Y2     float64 // m, end
	Weight float64 // -, throat of this run over the group's throat, 0 stands for 1; optional
}

// Bend is a run of fillet weld along a circular arc, counter-clockwise.
type Bend struct {
	X      float64 // m, centre
	Y      float64 // m, centre
	Radius float64 // m, radius
	From   float64 // rad, start, from the x axis
	To     float64 // rad, end, above From by 2·π at most
	Weight float64 // -, throat of this run over the group's throat, 0 stands for 1; optional
}

// Group is a set of weld runs in one plane that hold one part.
type Group struct {
	Runs  []Run  // -, straight runs; optional
	Bends []Bend // -, runs along arcs; optional
}

// GroupPropertiesResult are the properties of a weld group as lines of unit throat.
type GroupPropertiesResult struct {
	Length    float64 // m, L: length of all runs, each times its weight
	CentroidX float64 // m, x̄
	CentroidY float64 // m, ȳ
	UnitIx    float64 // m³, I_xu: second moment about the centroid's x axis
	UnitIy    float64 // m³, I_yu: second moment about the centroid's y axis
	UnitIxy   float64 // m³, I_xyu: product moment about the centroid
	UnitJ     float64 // m³, J_u: polar second moment about the centroid
	FarthestX float64 // m, greatest distance of the weld from the centroid along x
	FarthestY float64 // m, greatest distance of the weld from the centroid along y
	OneLine   bool    // -, all the weld lies on one straight line
}

// GroupProperties returns length, centroid and unit second moments of a weld group treated as lines.
//
//	J_u = I_xu + I_yu
//	I_xu = ∫ (y − ȳ)² dl,  I_yu = ∫ (x − x̄)² dl,  I_xyu = ∫ (x − x̄)·(y − ȳ) dl
//	x̄ = ∫ x dl/L,  ȳ = ∫ y dl/L
//
// Valid for throats small beside the group. Times the throat, the unit moments become m⁴.
// Errors: *check.RangeError for no runs, a run without length, an arc of more than a full turn or a negative weight.
// Source: Shigley, Mechanical Engineering Design, 8th ed., 9-3 and 9-4; the integrals are definitions.
func GroupProperties(p Group) (GroupPropertiesResult, error) {
	const fn = "weld.GroupProperties"
	if err := p.check(fn); err != nil {
		return GroupPropertiesResult{}, err
	}
	var length, sx, sy float64
	for _, r := range p.Runs {
		w := weight(r.Weight) * math.Hypot(r.X2-r.X1, r.Y2-r.Y1)
		length += w
		sx += w * (r.X1 + r.X2) / 2
		sy += w * (r.Y1 + r.Y2) / 2
	}
	for _, b := range p.Bends {
		w := weight(b.Weight) * b.Radius
		length += w * (b.To - b.From)
		sx += w * (b.X*(b.To-b.From) + b.Radius*(math.Sin(b.To)-math.Sin(b.From)))
		sy += w * (b.Y*(b.To-b.From) - b.Radius*(math.Cos(b.To)-math.Cos(b.From)))
	}
	g := GroupPropertiesResult{Length: length, CentroidX: sx / length, CentroidY: sy / length}
	for _, r := range p.Runs {
		g.addRun(r)
	}
	for _, b := range p.Bends {
		g.addBend(b)
	}
	g.UnitJ = g.UnitIx + g.UnitIy
	g.OneLine = len(p.Bends) == 0 && g.principal().least < 1e-12*g.UnitJ
	return g, nil
}

func (g *GroupPropertiesResult) addRun(r Run) {
	x, y := (r.X1+r.X2)/2-g.CentroidX, (r.Y1+r.Y2)/2-g.CentroidY
	dx, dy := r.X2-r.X1, r.Y2-r.Y1
	w := weight(r.Weight) * math.Hypot(dx, dy)
	g.UnitIx += w * (y*y + dy*dy/12)
	g.UnitIy += w * (x*x + dx*dx/12)
	g.UnitIxy += w * (x*y + dx*dy/12)
	g.reach(math.Abs(x)+math.Abs(dx)/2, math.Abs(y)+math.Abs(dy)/2)
}

func (g *GroupPropertiesResult) addBend(b Bend) {
	x, y, r := b.X-g.CentroidX, b.Y-g.CentroidY, b.Radius
	turn := b.To - b.From
	s1, c1 := math.Sincos(b.From)
	s2, c2 := math.Sincos(b.To)
	cos, sin := s2-s1, c1-c2 // ∫cos and ∫sin over the arc
	cosSquared := turn/2 + (s2*c2-s1*c1)/2
	sinSquared := turn - cosSquared
	sinCos := (s2*s2 - s1*s1) / 2
	w := weight(b.Weight) * r
	g.UnitIx += w * (y*y*turn + 2*y*r*sin + r*r*sinSquared)
	g.UnitIy += w * (x*x*turn + 2*x*r*cos + r*r*cosSquared)
	g.UnitIxy += w * (x*y*turn + x*r*sin + y*r*cos + r*r*sinCos)
	for _, at := range b.extremes() {
		s, c := math.Sincos(at)
		g.reach(math.Abs(x+r*c), math.Abs(y+r*s))
	}
}

// extremes are the ends of the arc and the quarter points that lie on it.
func (b Bend) extremes() []float64 {
	at := []float64{b.From, b.To}
	for q := math.Ceil(b.From / (math.Pi / 2)); q*math.Pi/2 < b.To; q++ {
		at = append(at, q*math.Pi/2)
	}
	return at
}

func (g *GroupPropertiesResult) reach(x, y float64) {
	g.FarthestX = math.Max(g.FarthestX, x)
	g.FarthestY = math.Max(g.FarthestY, y)
}

// principalMoments are the greatest and least unit second moments and the
// direction (unit vector) of the axis about which the moment is least.
type principalMoments struct{ greatest, least, ux, uy float64 }

func (g *GroupPropertiesResult) principal() principalMoments {
	mean, half := (g.UnitIx+g.UnitIy)/2, (g.UnitIx-g.UnitIy)/2
	radius := math.Hypot(half, g.UnitIxy)
	// I(φ) = mean + half·cos2φ − Ixy·sin2φ is least where (cos2φ, sin2φ) = (−half, Ixy)/radius.
	phi := math.Atan2(g.UnitIxy, -half) / 2
	uy, ux := math.Sincos(phi)
	return principalMoments{mean + radius, mean - radius, ux, uy}
}

func (p Group) check(fn string) error {
	if err := check.All(fn, check.That("Runs", float64(len(p.Runs)+len(p.Bends)),
		len(p.Runs)+len(p.Bends) > 0, "one run at least")); err != nil {
		return err
	}
	for _, r := range p.Runs {
		if err := check.All(fn,
			check.Finite("X1", r.X1), check.Finite("Y1", r.Y1),
			check.Finite("X2", r.X2), check.Finite("Y2", r.Y2),
			check.That("X2", r.X2, r.X1 != r.X2 || r.Y1 != r.Y2, "an end apart from the start"),
			check.NotNegative("Weight", r.Weight),
		); err != nil {
			return err
		}
	}
	for _, b := range p.Bends {
		if err := check.All(fn,
			check.Finite("X", b.X), check.Finite("Y", b.Y),
			check.Positive("Radius", b.Radius),
			check.Finite("From", b.From),
			check.That("To", b.To, b.To > b.From && b.To-b.From <= 2*math.Pi*(1+1e-12), "From < To <= From + 2·π"),
			check.NotNegative("Weight", b.Weight),
		); err != nil {
			return err
		}
	}
	return nil
}

func weight(given float64) float64 {
	if given == 0 {
		return 1
	}
	return given
}
