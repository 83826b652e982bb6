package ring

import (
	"math"

	"gonum.org/v1/gonum/integrate/quad"

	"axlewright/calc/check"
)

// ArcLoad says how a bearing presses on the arc of a cap.
type ArcLoad string

const (
	EvenLoad   ArcLoad = "even"   // the same pressure over the arc
	CosineLoad ArcLoad = "cosine" // a quarter wave each side, nothing at the ends of the arc
)

// CapParams describes a bearing cap: half a ring, both feet on the split of
// the bearing seat, pushed away by the bearing at the middle of its arc.
type CapParams struct {
	BoreRadius float64        // m, radius of the bearing seat
	Layers     []SectionLayer // metals from the bore outwards: the cap itself and then its overlay
	Bond       float64        // -, bond: from 0 for an overlay that slides on the cap to 1 for welds that make it one piece
	Poisson    float64        // -, ν: Poisson's ratio
	Force      float64        // N, F: bearing force at right angles to the split, away from the casting
	HalfArc    float64        // rad, α: half the arc over which the bearing presses
	Load       ArcLoad        // name, even or cosine
	FootTurn   float64        // rad/(N·m), how far a foot turns under a moment; 0 for a foot that cannot; optional
	FootSlide  float64        // m/N, how far a foot slides sideways under a force; 0 for a foot that cannot; optional
}

// CapResult is what the cap does.
type CapResult struct {
	Deflection      float64 // m, δ: mean movement of the loaded arc
	Stiffness       float64 // N/m, k: force against mean movement, without bolts and joint
	CrownForce      float64 // N, hoop force at the middle of the arc
	CrownMoment     float64 // N·m, moment at the middle of the arc, positive where it straightens the cap
	FootThrust      float64 // N, sideways force on each foot, positive where the joint must hold it in
	FootMoment      float64 // N·m, moment at each foot, positive where it straightens the cap
	CrownInner      float64 // Pa, stress in the bore at the middle of the arc
	CrownOuter      float64 // Pa, stress on the outside at the middle of the arc
	FootInner       float64 // Pa, stress in the bore at the foot
	MaxTension      float64 // Pa, largest tension in the first layer, the cap itself
	MaxTensionAngle float64 // rad, its place, from the middle of the arc
	OverlayTension  float64 // Pa, largest tension in the outermost layer
}

// Cap returns stiffness, forces and stress of a bearing cap as a curved beam.
//
//	U = 2·∫ [N²·R/(2·EA) − M·N/EA + M²/(2·B) + 1.2·V²·R/(2·GA)] dφ + c_s·V_f² + c_r·M_f²
//	N = N_0·cos φ + ∫p·sin(φ − s) ds,  V = N_0·sin φ − ∫p·cos(φ − s) ds
//	M = M_0 + R·(N − N_0),  ∂U/∂N_0 = 0,  ∂U/∂M_0 = 0,  δ = 2·U/F
//	B = EA·(R·A_E − EA)/A_E,  A_E = Σ E·∫dA/r for layers that are one piece
//	B = B_loose + bond·(B_solid − B_loose) between sliding and one piece
//	σ = E·[N/EA + M·(EA − r·A_E)/(EA·r·(R·A_E − EA))]
//
// Against solid finite elements (CalculiX) the cap moves 4 to 8 % less here,
// because its wall is not squashed under the bearing; the stress in the middle
// agrees within 3 %, and with a loose overlay is 15 % too high.
// The bearing's own outer ring is taken to follow the cap. The movement of
// bolts and joint along the force comes on top.
//
// Valid for bending in the plane, thickness up to about the bore radius,
// 0 < HalfArc <= π/2. FootTurn and FootSlide far above the cap's own
// compliance stand for a hinged and a sliding foot.
// Errors: *check.RangeError outside that range.
// Source: Boresi and Schmidt, Advanced Mechanics of Materials, 6th edition,
// sections 9.2 and 9.4 (curved beam: stress and energy); the distribution of
// the bearing's pressure is common practice, no source.
func Cap(p CapParams) (CapResult, error) {
	if err := checkCap(p); err != nil {
		return CapResult{}, err
	}
	s := newCurvedSection(p.BoreRadius, p.Layers, p.Bond, p.Poisson)
	a := newCapArch(p, s)
	n0, m0 := a.redundants()
	energy := a.energy(n0, m0)

	var r CapResult
	r.Deflection = 2 * energy / p.Force
	r.Stiffness = p.Force / r.Deflection
	crown, foot := a.forces(0, n0, m0), a.forces(math.Pi/2, n0, m0)
	r.CrownForce, r.CrownMoment = crown.n, crown.m
	r.FootThrust, r.FootMoment = foot.v, foot.m
	last := len(s.layers) - 1
	inside, outside := s.layers[0], s.layers[last]
	r.CrownInner = s.stress(0, inside.inner, crown.n, crown.m)
	r.CrownOuter = s.stress(last, outside.outer, crown.n, crown.m)
	r.FootInner = s.stress(0, inside.inner, foot.n, foot.m)
	r.MaxTension, r.OverlayTension = math.Inf(-1), math.Inf(-1)
	const steps = 180
	for i := range steps + 1 {
		phi := math.Pi / 2 * float64(i) / steps
		f := a.forces(phi, n0, m0)
		for _, radius := range []float64{inside.inner, inside.outer} {
			if t := s.stress(0, radius, f.n, f.m); t > r.MaxTension {
				r.MaxTension, r.MaxTensionAngle = t, phi
			}
		}
		for _, radius := range []float64{outside.inner, outside.outer} {
			r.OverlayTension = max(r.OverlayTension, s.stress(last, radius, f.n, f.m))
		}
	}
	return r, nil
}

func checkCap(p CapParams) error {
	const fn = "ring.Cap"
	if err := checkLayers(fn, p.Layers, p.Bond); err != nil {
		return err
	}
	return check.All(fn,
		check.Positive("BoreRadius", p.BoreRadius),
		check.That("Poisson", p.Poisson, p.Poisson >= 0 && p.Poisson < 0.5, "0 <= ν < 0.5"),
		check.Positive("Force", p.Force),
		check.That("HalfArc", p.HalfArc, p.HalfArc > 0 && p.HalfArc <= math.Pi/2, "0 < α <= π/2"),
		check.That("Load", 0, p.Load == EvenLoad || p.Load == CosineLoad, "even or cosine"),
		check.NotNegative("FootTurn", p.FootTurn),
		check.NotNegative("FootSlide", p.FootSlide),
	)
}

// capArch is one half of the cap, from the middle of the arc (φ = 0) to the
// foot (φ = π/2), cut free at the middle.
type capArch struct {
	p        CapParams
	s        curvedSection
	pressure float64 // force per radian at the middle of the arc
	angle    []float64
	weight   []float64
	load     []capForces // of the bearing's pressure alone, at the angles
}

type capForces struct{ n, v, m float64 }

func newCapArch(p CapParams, s curvedSection) capArch {
	a := capArch{p: p, s: s, pressure: 1}
	a.pressure = p.Force / 2 / a.bearing(math.Pi/2).n // each foot carries half
	// The pressure has a corner at the end of its arc.
	for _, part := range [][2]float64{{0, p.HalfArc}, {p.HalfArc, math.Pi / 2}} {
		if part[0] == part[1] {
			continue
		}
		x, w := make([]float64, 16), make([]float64, 16)
		quad.Legendre{}.FixedLocations(x, w, part[0], part[1])
		a.angle, a.weight = append(a.angle, x...), append(a.weight, w...)
	}
	for _, phi := range a.angle {
		a.load = append(a.load, a.bearing(phi))
	}
	return a
}

// bearing returns the forces at φ from the pressure alone, cut at the middle:
// the pressure cos(k·s), k = π/(2·α) or nought for an even one, along s up to φ
// or the end of its arc, by the sum formulas of sine and cosine.
func (a capArch) bearing(phi float64) capForces {
	k, end := 0.0, math.Min(phi, a.p.HalfArc)
	if a.p.Load == CosineLoad {
		k = math.Pi / 2 / a.p.HalfArc
	}
	// ∫ sin(φ + c·s) ds and ∫ cos(φ + c·s) ds from 0 to the end.
	along := func(c float64) (sine, cosine float64) {
		x := c * end / 2
		length := end
		if x != 0 {
			length *= math.Sin(x) / x
		}
		sine, cosine = math.Sincos(phi + x)
		return length * sine, length * cosine
	}
	s1, c1 := along(k - 1)
	s2, c2 := along(-k - 1)
	n := a.pressure * (s1 + s2) / 2
	return capForces{n, -a.pressure * (c1 + c2) / 2, a.s.centroid * n}
}

// unit returns the forces at φ from a unit hoop force and a unit moment at the middle.
func (a capArch) unit(phi float64) (force, moment capForces) {
	sin, cos := math.Sincos(phi)
	return capForces{cos, sin, a.s.centroid * (cos - 1)}, capForces{0, 0, 1}
}

func (f capForces) plus(k float64, g capForces) capForces {
	return capForces{f.n + k*g.n, f.v + k*g.v, f.m + k*g.m}
}

func (a capArch) forces(phi, n0, m0 float64) capForces {
	force, moment := a.unit(phi)
	return a.bearing(phi).plus(n0, force).plus(m0, moment)
}

// work returns the work per radian of the forces f on the strains of g.
func (a capArch) work(f, g capForces) float64 {
	s := a.s
	return f.n*g.n*s.centroid/s.stretch - (f.m*g.n+f.n*g.m)/s.stretch + f.m*g.m/s.bend + 1.2*f.v*g.v*s.centroid/s.shear
}

func (a capArch) footWork(f, g capForces) float64 {
	return a.p.FootSlide*f.v*g.v + a.p.FootTurn*f.m*g.m
}

// redundants returns hoop force and moment at the middle of the arc, which
// make the half cap fit its other half and its foot.
func (a capArch) redundants() (n0, m0 float64) {
	var nn, nm, mm, nl, ml float64
	add := func(weight float64, work func(f, g capForces) float64, load capForces, phi float64) {
		force, moment := a.unit(phi)
		nn += weight * work(force, force)
		nm += weight * work(force, moment)
		mm += weight * work(moment, moment)
		nl += weight * work(force, load)
		ml += weight * work(moment, load)
	}
	for i, phi := range a.angle {
		add(a.weight[i], a.work, a.load[i], phi)
	}
	add(1, a.footWork, a.bearing(math.Pi/2), math.Pi/2)
	det := nn*mm - nm*nm
	return (nm*ml - mm*nl) / det, (nm*nl - nn*ml) / det
}

// energy returns the elastic energy of both halves.
func (a capArch) energy(n0, m0 float64) float64 {
	sum := 0.0
	for i, phi := range a.angle {
		force, moment := a.unit(phi)
		f := a.load[i].plus(n0, force).plus(m0, moment)
		sum += a.weight[i] * a.work(f, f)
	}
	foot := a.forces(math.Pi/2, n0, m0)
	return sum + a.footWork(foot, foot) // two halves of ½·sum
}
