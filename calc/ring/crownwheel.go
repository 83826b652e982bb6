package ring

import (
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
	FlangeBehind    float64 // m, e: middle of the flange behind the middle of the wheel, (t_f + t_w)/2 for flat ones one upon the other; optional
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
//	C = (1 − bond)·C_loose + bond·C_solid
//	C_loose: D = D_flange + D_wheel in the overlap, each about its own middle
//	C_solid: D of both about their common neutral plane, zones e apart in height
//	S = 5/6·(G_flange·t_flange + G_wheel·t_wheel) in the overlap
//
// The bolts press flange and wheel together; how far they then give as one
// plate is the bond, and a bench reading narrows it. Bonded or not, both carry
// the shear. A wheel in front of its flange is an arch as well as a plate, which
// takes up to an eighth off its movement, and a force in its plane then moves it
// along its axis.
// Against solid finite elements (CalculiX, a wheel of 222 mm) the movement is
// within 1 % where the middles lie in one plane, and 4 % too small for a flat
// wheel upon its flange, in one piece and sliding alike: a plate does not know
// the give of the corners at its steps.
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
	var loose, solid []PlateZone
	for i, inner := range radii[:len(radii)-1] {
		outer := radii[i+1]
		if outer == inner { // a flange as wide as the wheel
			continue
		}
		blank := wheel
		if p.ToothDepth > 0 && inner >= p.ToothRadius {
			blank = toothed
		}
		apart := PlateZone{Inner: inner, Outer: outer}
		one := apart
		switch {
		case inner < p.Bore:
			apart.add(flange, p.Poisson, 0)
			one = apart
		case inner < p.FlangeRadius:
			for _, l := range []layer{flange, blank} { // each about its own middle
				apart.Rigidity += l.rigidity(p.Poisson)
				apart.Shear += l.shear(p.Poisson)
			}
			upon := (flange.t + blank.t) / 2
			one.add(flange, p.Poisson, 0)
			one.add(blank, p.Poisson, -upon)
			one.Offset *= p.FlangeBehind / upon
		default:
			apart.add(blank, p.Poisson, 0)
			one.add(blank, p.Poisson, -p.FlangeBehind-(blank.t-wheel.t)/2)
		}
		loose, solid = append(loose, apart), append(solid, one)
	}
	return blend(p, loose, solid)
}

// blend makes the plate that gives between the loose and the solid one.
func blend(p CrownWheelParams, loose, solid []PlateZone) (*Plate, error) {
	mean := new(Plate)
	for _, x := range []struct {
		share float64
		zones []PlateZone
	}{{1 - p.Bond, loose}, {p.Bond, solid}} {
		if x.share == 0 {
			continue
		}
		one, err := NewPlate(PlateParams{
			Zones: x.zones, Poisson: p.Poisson, InnerEdge: Clamped, OuterEdge: Free, Harmonics: p.Harmonics,
		})
		if err != nil {
			return nil, err
		}
		one.parts[0].share = x.share
		mean.parts = append(mean.parts, one.parts...)
	}
	return mean, nil
}

// add joins a layer with its middle at a height to the zone, so that both bend
// as one about their neutral plane.
func (z *PlateZone) add(l layer, nu, height float64) {
	stretch := l.e * l.t / (1 - nu*nu)
	arm := height - z.Offset
	z.Rigidity += l.rigidity(nu) + arm*arm*z.Stretch*stretch/(z.Stretch+stretch)
	z.Offset += arm * stretch / (z.Stretch + stretch)
	z.Stretch += stretch
	z.Shear += l.shear(nu)
}

func checkCrownWheel(p CrownWheelParams) error {
	return check.All("ring.CrownWheel",
		check.Positive("ClampRadius", p.ClampRadius),
		check.That("Bore", p.Bore, p.Bore > p.ClampRadius, "> ClampRadius"),
		check.That("FlangeRadius", p.FlangeRadius, p.FlangeRadius > p.Bore, "> Bore"),
		check.That("OuterRadius", p.OuterRadius, p.OuterRadius >= p.FlangeRadius, ">= FlangeRadius"),
		check.Positive("FlangeThickness", p.FlangeThickness),
		check.Positive("WheelThickness", p.WheelThickness),
		check.Finite("FlangeBehind", p.FlangeBehind),
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
