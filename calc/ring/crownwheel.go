package ring

import (
	"math"

	"axlewright/calc/check"
)

// CrownWheelParams describes a crown wheel bolted to the flange of its diff
// centre, as one annular plate.
type CrownWheelParams struct {
	ClampRadius     float64 // m, where the flange is really held: the hub, not the bolt circle
	Bore            float64 // m, inner radius of the crown wheel
	FlangeRadius    float64 // m, outer radius of the flange; flange and wheel overlap from Bore to here
	OuterRadius     float64 // m, outer radius of the crown wheel
	FlangeThickness float64 // m, thickness of the flange
	WheelThickness  float64 // m, thickness of the crown wheel below the teeth
	ToothDepth      float64 // m, mean whole depth of the teeth; optional
	ToothRadius     float64 // m, inner radius of the teeth (heel less face width); needed with ToothDepth; optional
	ToothShare      float64 // -, share of the tooth depth that counts as plate; optional
	Bond            float64 // -, bond: from 0 for flange and wheel that slide on each other to 1 for one piece
	WheelModulus    float64 // Pa, E of the crown wheel
	FlangeModulus   float64 // Pa, E of the flange; 0 stands for the wheel's; optional
	Poisson         float64 // -, ν, for both
	Harmonics       int     // -, N: highest circumferential harmonic; 0 stands for 24; optional
}

// CrownWheel prepares the plate of a crown wheel on its flange, clamped at the
// hub of the flange and free at its rim.
//
//	D = D_0·(h/h_0)³ in the overlap, h = h_loose + bond·(h_solid − h_loose)
//	h_loose³ ∝ D_flange + D_wheel,  h_solid³ ∝ D of both about their common neutral plane
//	S = 5/6·(G_flange·t_flange + G_wheel·t_wheel) in the overlap
//
// The bolts press flange and wheel together; how far they then bend as one
// plate is the bond, and a bench reading narrows it. With one modulus
// h_loose = (t_f³ + t_w³)^⅓ and h_solid = t_f + t_w. Bonded or not, both
// carry the shear.
// Against solid finite elements (CalculiX, a wheel of 222 mm) the movement
// agrees within 2 % where the middles of flange and wheel lie in one plane. As
// built, with the wheel to one side of its flange, one piece moves an eighth
// less than Bond 1 says (it is an arch too), and a wheel that slides moves 4 %
// more than Bond 0 says: the true span between the two is a little wider.
// Teeth stand on the rim like a cut-up layer: they do not carry bending round
// the circumference and carry some across it. They are smeared into the rim as
// an even layer of ToothShare·ToothDepth; 0 leaves them out and gives the
// larger movement, 0.5 counts the metal that is there.
//
// Valid for ClampRadius < Bore < FlangeRadius <= OuterRadius (a wheel that
// overhangs its flange to the outside), 0 <= Bond <= 1, and as NewPlate.
// Errors: *check.RangeError outside that range.
// Source: NewPlate; section of two layers by Gere, Mechanics of Materials,
// 5th edition, section 6.3; the bond factor is common practice, no source.
func CrownWheel(p CrownWheelParams) (*Plate, error) {
	if p.FlangeModulus == 0 {
		p.FlangeModulus = p.WheelModulus
	}
	if err := checkCrownWheel(p); err != nil {
		return nil, err
	}
	wheel := layer{p.WheelModulus, p.WheelThickness}
	toothed := layer{p.WheelModulus, p.WheelThickness + p.ToothShare*p.ToothDepth}
	flange := layer{p.FlangeModulus, p.FlangeThickness}

	radii := []float64{p.ClampRadius, p.Bore, p.FlangeRadius, p.OuterRadius}
	if p.ToothDepth > 0 {
		radii = insert(radii, p.ToothRadius)
	}
	var zones []PlateZone
	for i, inner := range radii[:len(radii)-1] {
		outer := radii[i+1]
		if outer == inner { // a flange as wide as the wheel
			continue
		}
		z := PlateZone{Inner: inner, Outer: outer}
		blank := wheel
		if p.ToothDepth > 0 && inner >= p.ToothRadius {
			blank = toothed
		}
		switch {
		case inner < p.Bore:
			z.Rigidity, z.Shear = flange.rigidity(p.Poisson), flange.shear(p.Poisson)
		case inner < p.FlangeRadius:
			loose := math.Cbrt(flange.rigidity(p.Poisson) + blank.rigidity(p.Poisson))
			solid := math.Cbrt(bonded(flange, blank, p.Poisson))
			z.Rigidity = math.Pow(loose+p.Bond*(solid-loose), 3)
			z.Shear = flange.shear(p.Poisson) + blank.shear(p.Poisson)
		default:
			z.Rigidity, z.Shear = blank.rigidity(p.Poisson), blank.shear(p.Poisson)
		}
		zones = append(zones, z)
	}
	return NewPlate(PlateParams{
		Zones: zones, Poisson: p.Poisson, InnerEdge: Clamped, OuterEdge: Free, Harmonics: p.Harmonics,
	})
}

func checkCrownWheel(p CrownWheelParams) error {
	return check.All("ring.CrownWheel",
		check.Positive("ClampRadius", p.ClampRadius),
		check.That("Bore", p.Bore, p.Bore > p.ClampRadius, "> ClampRadius"),
		check.That("FlangeRadius", p.FlangeRadius, p.FlangeRadius > p.Bore, "> Bore"),
		check.That("OuterRadius", p.OuterRadius, p.OuterRadius >= p.FlangeRadius, ">= FlangeRadius"),
		check.Positive("FlangeThickness", p.FlangeThickness),
		check.Positive("WheelThickness", p.WheelThickness),
		check.NotNegative("ToothDepth", p.ToothDepth),
		check.That("ToothRadius", p.ToothRadius,
			p.ToothDepth == 0 || p.ToothRadius >= p.Bore && p.ToothRadius < p.OuterRadius, "Bore <= ToothRadius < OuterRadius"),
		check.Within("ToothShare", p.ToothShare, 0, 1),
		check.Within("Bond", p.Bond, 0, 1),
		check.Positive("WheelModulus", p.WheelModulus),
		check.Positive("FlangeModulus", p.FlangeModulus),
		check.That("Poisson", p.Poisson, p.Poisson >= 0 && p.Poisson < 0.5, "0 <= ν < 0.5"),
	)
}

// layer is a flat layer of one metal.
type layer struct{ e, t float64 }

func (l layer) rigidity(nu float64) float64 { return l.e * l.t * l.t * l.t / (12 * (1 - nu*nu)) }

func (l layer) shear(nu float64) float64 { return 5.0 / 6 * l.e / (2 * (1 + nu)) * l.t }

// bonded returns the rigidity of two layers that bend as one.
func bonded(a, b layer, nu float64) float64 {
	stretch := a.e * a.t * b.e * b.t / (a.e*a.t + b.e*b.t)
	arm := (a.t + b.t) / 2
	return a.rigidity(nu) + b.rigidity(nu) + stretch*arm*arm/(1-nu*nu)
}

// insert puts a radius into the sorted list, once.
func insert(sorted []float64, r float64) []float64 {
	var out []float64
	for i, x := range sorted {
		if r < x && (i == 0 || r > sorted[i-1]) {
			out = append(out, r)
		}
		out = append(out, x)
	}
	return out
}
