package ring

import (
	"math"

	"axlewright/calc/check"
)

// SectionLayer is one metal of a section built up of rectangles.
type SectionLayer struct {
	Thickness float64 // m, t: thickness of the layer
	Width     float64 // m, b: width of the layer
	Modulus   float64 // Pa, E: Young's modulus
}

// CompositeParams describes a straight section of layers under bending.
type CompositeParams struct {
	Layers []SectionLayer // metals from the bottom up; the first is the bare wall
	Bond   float64        // -, bond: from 0 for layers that slide on each other to 1 for one piece
	Moment float64        // N·m, M: bending moment, positive where it pulls at the bottom
	Shear  float64        // N, V: transverse force; optional
}

// CompositeResult is the section, its stress and the pull in its seams.
type CompositeResult struct {
	NeutralAxis  float64   // m, height of the neutral axis of the solid section above the bottom
	Stiffness    float64   // N·m², EI: bending stiffness with the bond given
	Loose        float64   // N·m², bending stiffness of layers that slide
	Solid        float64   // N·m², bending stiffness of one piece
	Gain         float64   // -, stiffness against that of the first layer alone
	BottomStress []float64 // Pa, stress at the bottom of each layer
	TopStress    []float64 // Pa, stress at the top of each layer
	ShearFlow    []float64 // N/m, q: shear to carry per length in each seam, from the bottom up
}

// CompositeBeam returns stiffness, stress and shear flow of a section of two
// or more metals, such as a cast wall with a steel plate welded on.
//
//	EI = EI_loose + bond·(EI_solid − EI_loose)
//	ȳ = Σ E·A·y/Σ E·A,  EI_loose = Σ E·I,  EI_solid = Σ E·(I + A·(y − ȳ)²)
//	σ_solid = E·M·(ȳ − y)/EI_solid,  q = V·Σ E·A·(y − ȳ)/EI_solid above the seam
//	β = (1/EI − 1/EI_loose)/(1/EI_solid − 1/EI_loose): σ = β·σ_solid + (1 − β)·σ_loose, q·β
//
// The share β makes the curvature agree with the stiffness, so that the pull in
// the seam is what is left of the moment after the layers' own bending.
//
// Valid for plane sections and elastic metals, 0 <= bond <= 1.
// Errors: *check.RangeError for no layer or a dimension that is not positive.
// Source: Gere, Mechanics of Materials, 5th edition, sections 6.2 and 6.3
// (transformed section) and 5.11 (shear flow); the bond is common practice,
// no source.
func CompositeBeam(p CompositeParams) (CompositeResult, error) {
	if err := checkLayers("ring.CompositeBeam", p.Layers, p.Bond); err != nil {
		return CompositeResult{}, err
	}
	if err := check.All("ring.CompositeBeam", check.Finite("Moment", p.Moment), check.Finite("Shear", p.Shear)); err != nil {
		return CompositeResult{}, err
	}
	var r CompositeResult
	var stretch, first, at float64
	middle := make([]float64, len(p.Layers))
	for i, l := range p.Layers {
		middle[i] = at + l.Thickness/2
		at += l.Thickness
		stretch += l.stretch()
		first += l.stretch() * middle[i]
		r.Loose += l.bend()
	}
	r.NeutralAxis = first / stretch
	r.Solid = r.Loose
	for i, l := range p.Layers {
		d := middle[i] - r.NeutralAxis
		r.Solid += l.stretch() * d * d
	}
	r.Stiffness = r.Loose + p.Bond*(r.Solid-r.Loose)
	r.Gain = r.Stiffness / p.Layers[0].bend()
	share := solidShare(r.Stiffness, r.Loose, r.Solid)
	above := 0.0
	for i := len(p.Layers) - 1; i >= 0; i-- {
		l := p.Layers[i]
		stress := func(y float64) float64 {
			solid := l.Modulus * p.Moment * (r.NeutralAxis - y) / r.Solid
			loose := l.Modulus * p.Moment * (middle[i] - y) / r.Loose
			return share*solid + (1-share)*loose
		}
		r.BottomStress = append([]float64{stress(middle[i] - l.Thickness/2)}, r.BottomStress...)
		r.TopStress = append([]float64{stress(middle[i] + l.Thickness/2)}, r.TopStress...)
		above += l.stretch() * (middle[i] - r.NeutralAxis)
		if i > 0 {
			r.ShearFlow = append([]float64{share * p.Shear * above / r.Solid}, r.ShearFlow...)
		}
	}
	return r, nil
}

func (l SectionLayer) stretch() float64 { return l.Modulus * l.Width * l.Thickness }

func (l SectionLayer) bend() float64 {
	return l.Modulus * l.Width * l.Thickness * l.Thickness * l.Thickness / 12
}

// solidShare returns how much of the bending is carried as by one piece when
// the stiffness lies between loose and solid.
func solidShare(stiffness, loose, solid float64) float64 {
	if solid <= loose*(1+1e-12) { // a single layer
		return 1
	}
	return (1/stiffness - 1/loose) / (1/solid - 1/loose)
}

func checkLayers(fn string, layers []SectionLayer, bond float64) error {
	if err := check.All(fn,
		check.That("Layers", float64(len(layers)), len(layers) > 0, "at least one layer"),
		check.Within("Bond", bond, 0, 1),
	); err != nil {
		return err
	}
	for _, l := range layers {
		if err := check.All(fn,
			check.Positive("Layers.Thickness", l.Thickness),
			check.Positive("Layers.Width", l.Width),
			check.Positive("Layers.Modulus", l.Modulus),
		); err != nil {
			return err
		}
	}
	return nil
}

// PlateEquivalenceParams compares a plate of one steel with another steel.
type PlateEquivalenceParams struct {
	Thickness        float64 // m, t: thickness of the plate
	Yield            float64 // Pa, R_e: yield strength of the plate
	ReferenceYield   float64 // Pa, R_e0: yield strength of the steel it is compared with
	Modulus          float64 // Pa, E: Young's modulus of the plate
	ReferenceModulus float64 // Pa, E_0: Young's modulus of the steel it is compared with
}

// PlateEquivalenceResult says how thick the other steel must be.
type PlateEquivalenceResult struct {
	Tension   float64 // m, for the same force at yield in tension
	Bending   float64 // m, for the same moment at yield in bending
	Stiffness float64 // m, for the same stiffness in bending
}

// PlateEquivalence returns how thick a plate of another steel would have to be
// to do the same, in tension, in bending and in stiffness.
//
//	t_0 = t·R_e/R_e0 in tension
//	t_0 = t·√(R_e/R_e0) in bending,  t·∛(E/E_0) in stiffness
//
// A strong steel buys strength and no stiffness: a movement that must shrink
// needs thickness.
//
// Valid for flat plates up to first yield.
// Errors: *check.RangeError where an input is not positive.
// Source: Gere, Mechanics of Materials, 5th edition, sections 1.7 and 5.6
// (A·R_e, b·t²/6·R_e, b·t³/12·E set equal).
func PlateEquivalence(p PlateEquivalenceParams) (PlateEquivalenceResult, error) {
	if err := check.All("ring.PlateEquivalence",
		check.Positive("Thickness", p.Thickness),
		check.Positive("Yield", p.Yield),
		check.Positive("ReferenceYield", p.ReferenceYield),
		check.Positive("Modulus", p.Modulus),
		check.Positive("ReferenceModulus", p.ReferenceModulus),
	); err != nil {
		return PlateEquivalenceResult{}, err
	}
	strength := p.Yield / p.ReferenceYield
	return PlateEquivalenceResult{
		Tension:   p.Thickness * strength,
		Bending:   p.Thickness * math.Sqrt(strength),
		Stiffness: p.Thickness * math.Cbrt(p.Modulus/p.ReferenceModulus),
	}, nil
}
