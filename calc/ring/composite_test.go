package ring

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"axlewright/calc/check"
	"axlewright/internal/published"
)

func composite(t testing.TB, p CompositeParams) CompositeResult {
	t.Helper()
	r, err := CompositeBeam(p)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func TestCompositeBeamPublished(t *testing.T) {
	const inch, psi, lbf = 0.0254, 6894.757, 4.4482216
	// Gere counts from the top: wood above, steel strap below, pulled at the bottom.
	gere := composite(t, CompositeParams{
		Layers: []SectionLayer{
			{Thickness: 0.5 * inch, Width: 4 * inch, Modulus: 30e6 * psi},
			{Thickness: 6 * inch, Width: 4 * inch, Modulus: 1.5e6 * psi},
		},
		Bond: 1, Moment: 60e3 * lbf * inch,
	})
	wall := composite(t, CompositeParams{
		Layers: []SectionLayer{
			{Thickness: 0.014, Width: 0.060, Modulus: 165e9},
			{Thickness: 0.006, Width: 0.060, Modulus: 206e9},
		},
		Bond: 1,
	})
	const book = "Gere, Mechanics of Materials, 5th ed., examples 6-1 and 6-3"
	published.Check(t, []published.Row{
		{Name: "neutral axis below the top, in", Got: 6.5 - gere.NeutralAxis/inch, Printed: "5.031", Source: book},
		{Name: "wood, top, psi", Got: gere.TopStress[1] / psi, Printed: "-1310", Source: book,
			Within: 0.004, Why: "printed to three figures: the exact value of the same sum is -1305"},
		{Name: "wood, seam, psi", Got: gere.BottomStress[1] / psi, Printed: "251", Source: book},
		{Name: "steel, bottom, psi", Got: gere.BottomStress[0] / psi, Printed: "7620", Source: book, Within: 0.001, Why: "printed to three figures"},
		{Name: "steel, seam, psi", Got: gere.TopStress[0] / psi, Printed: "5030", Source: book, Within: 0.001, Why: "printed to three figures"},
		{Name: "transformed area's moment, in⁴", Got: gere.Stiffness / (1.5e6 * psi) / math.Pow(inch, 4), Printed: "231.271",
			Source: "derived: transformed section of the same example"},
		{Name: "steel on iron wall, neutral axis, mm", Got: wall.NeutralAxis * 1e3, Printed: "10.4856", Source: "derived: transformed section"},
		{Name: "steel on iron wall, stiffness, kN·m²", Got: wall.Stiffness * 1e-3, Printed: "7.31735", Source: "derived: transformed section"},
		{Name: "steel on iron wall, gain", Got: wall.Gain, Printed: "3.23233", Source: "derived: transformed section"},
	})
}

// Equal layers are one bar: stress M·y/I, shear flow 3/2·V/h at the middle.
func TestEqualLayersAreOneBar(t *testing.T) {
	layer := SectionLayer{Thickness: 0.01, Width: 0.03, Modulus: 2e11}
	r := composite(t, CompositeParams{Layers: []SectionLayer{layer, layer}, Bond: 1, Moment: 100, Shear: 5000})
	near(t, "stress", r.BottomStress[0], 6*100/(0.03*0.02*0.02), 1e-9)
	near(t, "stress across the seam", r.TopStress[0]+1, r.BottomStress[1]+1, 1e-6)
	near(t, "shear flow", r.ShearFlow[0], 1.5*5000/0.02, 1e-9)
	near(t, "gain", r.Gain, 8, 1e-9)
	loose := composite(t, CompositeParams{Layers: []SectionLayer{layer, layer}, Bond: 0, Moment: 100, Shear: 5000})
	near(t, "gain of loose layers", loose.Gain, 2, 1e-9)
	near(t, "stress of loose layers", loose.BottomStress[0], 6*50/(0.03*0.01*0.01), 1e-9)
	if loose.ShearFlow[0] != 0 {
		t.Errorf("loose layers pass shear %g", loose.ShearFlow[0])
	}
}

// Whatever the bond, the stress must carry the moment and no force, and the
// curvature must be M/EI in every layer.
func TestCompositeStressCarriesTheMoment(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := CompositeParams{Bond: rapid.Float64Range(0, 1).Draw(t, "bond"), Moment: 300}
		for range rapid.IntRange(1, 4).Draw(t, "layers") {
			p.Layers = append(p.Layers, SectionLayer{
				Thickness: rapid.Float64Range(0.002, 0.03).Draw(t, "t"),
				Width:     rapid.Float64Range(0.02, 0.1).Draw(t, "b"),
				Modulus:   rapid.Float64Range(1e11, 2.1e11).Draw(t, "E"),
			})
		}
		r, err := CompositeBeam(p)
		if err != nil {
			t.Fatal(err)
		}
		var force, moment, size, at float64
		for i, l := range p.Layers {
			mean, half := (r.BottomStress[i]+r.TopStress[i])/2, (r.BottomStress[i]-r.TopStress[i])/2
			area := l.Thickness * l.Width
			force += mean * area
			moment += -mean*area*(at+l.Thickness/2) + half*area*l.Thickness/6
			size += math.Abs(mean)*area + math.Abs(half)*area
			at += l.Thickness
			curvature := 2 * half / (l.Modulus * l.Thickness)
			if math.Abs(curvature-p.Moment/r.Stiffness) > 1e-9*curvature {
				t.Errorf("layer %d bends %g, the section %g", i, curvature, p.Moment/r.Stiffness)
			}
		}
		if math.Abs(force) > 1e-9*size || math.Abs(moment-p.Moment) > 1e-9*p.Moment {
			t.Errorf("stress adds up to %g N and %g N·m, want 0 and %g", force, moment, p.Moment)
		}
	})
}

func TestPlateEquivalencePublished(t *testing.T) {
	against := func(yield float64) PlateEquivalenceResult {
		r, err := PlateEquivalence(PlateEquivalenceParams{Thickness: 0.003, Yield: 700e6, ReferenceYield: yield, Modulus: 206e9, ReferenceModulus: 206e9})
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	const source = "derived: areas, section moduli and second moments set equal"
	mild, strong := against(275e6), against(355e6)
	published.Check(t, []published.Row{
		{Name: "275 MPa, tension, mm", Got: mild.Tension * 1e3, Printed: "7.6", Source: source},
		{Name: "275 MPa, bending, mm", Got: mild.Bending * 1e3, Printed: "4.8", Source: source},
		{Name: "275 MPa, stiffness, mm", Got: mild.Stiffness * 1e3, Printed: "3.0", Source: source},
		{Name: "355 MPa, tension, mm", Got: strong.Tension * 1e3, Printed: "5.9", Source: source},
		{Name: "355 MPa, bending, mm", Got: strong.Bending * 1e3, Printed: "4.2", Source: source},
	})
}

func TestCompositeRefusesAMissingMetal(t *testing.T) {
	var r *check.RangeError
	if _, err := CompositeBeam(CompositeParams{Bond: 1}); !errors.As(err, &r) || r.Param != "Layers" {
		t.Errorf("got %v, want a range error on Layers", err)
	}
	if _, err := CompositeBeam(CompositeParams{Layers: []SectionLayer{{0.01, 0.01, 0}}}); !errors.As(err, &r) || r.Param != "Layers.Modulus" {
		t.Errorf("got %v, want a range error on Layers.Modulus", err)
	}
	if _, err := PlateEquivalence(PlateEquivalenceParams{Thickness: 0.003}); !errors.As(err, &r) || r.Param != "Yield" {
		t.Errorf("got %v, want a range error on Yield", err)
	}
}
