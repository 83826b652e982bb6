package weldplan

import (
	"math"
	"strings"
	"testing"

	"axlewright/calc/material"
	"axlewright/calc/weld"
	"axlewright/internal/published"
)

// A transverse fillet by the directional method.
func TestThroatUsePublished(t *testing.T) {
	const source = "derived: EN 1993-1-8:2005, 4.5.3.2: 50 kN square to a fillet of 4 by 100, S355 with f_u 510 MPa"
	plate := material.Metal{Name: "S355", Tensile: 510e6}
	casting := material.Metal{Tensile: 600e6}
	filler := Filler{Tensile: 550e6}
	use, s, err := throatUse(weld.ThroatForces{Across: 50e3 / 0.1, Throat: 4e-3}, plate, casting, filler)
	if err != nil {
		t.Fatal(err)
	}
	published.Check(t, []published.Row{
		{Name: "σ_⊥ = τ_⊥, MPa", Got: s.Normal / 1e6, Printed: "88.388", Source: source},
		{Name: "share used", Got: use.Use, Printed: "0.38995", Source: source},
	})
	// The weakest of plate, casting and filler counts.
	soft := casting
	soft.Tensile = 400e6
	weak, _, err := throatUse(weld.ThroatForces{Across: 50e3 / 0.1, Throat: 4e-3}, plate, soft, filler)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "with a weaker casting", weak.Use, use.Use*510/400, 1e-9)
}

func TestToeKeepsTheFamilysShare(t *testing.T) {
	iron, err := material.Lookup("EN-GJS-400-15")
	if err != nil {
		t.Fatal(err)
	}
	toe, err := toeUse(-120e6, iron)
	if err != nil {
		t.Fatal(err)
	}
	published.Check(t, []published.Row{
		{Name: "use of 120 MPa, typical", Got: toe.Use, Printed: "0.40", Source: "trade custom: three quarters of 400 MPa left at a toe in ductile iron, EN 1563"},
		{Name: "use of 120 MPa, worst", Got: toe.UseWorst, Printed: "0.50", Source: "trade custom: six tenths of 400 MPa, EN 1563"},
	})
	if toe.Source == "" {
		t.Error("no source named")
	}
}

func TestFatigueOfSteelAndIron(t *testing.T) {
	steel, _ := material.Lookup("GE240")
	iron, _ := material.Lookup("EN-GJS-400-15")
	load := &Load{}
	if fatigueUse(load, weld.ThroatStressesResult{Normal: 1e6}, 0, 12e-3, steel) != nil {
		t.Error("a load without cycles has a life")
	}
	load.Cycles.Value, load.Cycles.Origin = 2e6, "assumed"
	f := fatigueUse(load, weld.ThroatStressesResult{Normal: 50e6 * 3 / 5, ShearAcross: 50e6 * 4 / 5}, 0, 12e-3, steel)
	published.Check(t, []published.Row{
		{Name: "life of the root at 50 MPa, category 36 over 1.35, millions", Got: f.Life / 1e6, Printed: "0.303", Source: "derived: EN 1993-1-9:2005, 7.1: 2e6·(36/50)³ = 746,496 cycles, over 1.35³"},
	})
	if low := fatigueUse(load, weld.ThroatStressesResult{Normal: 1e6}, 0, 12e-3, steel); !low.Endless {
		t.Errorf("1 MPa at the root: %+v", low)
	}
	if high := fatigueUse(load, weld.ThroatStressesResult{Normal: 400e6}, 0, 12e-3, steel); high.Endless || high.Note == "" {
		t.Errorf("400 MPa at the root: %+v", high)
	}
	if none := fatigueUse(load, weld.ThroatStressesResult{Normal: 1e6}, 0, 12e-3, iron); none.Life != 0 || none.Endless || !strings.Contains(none.Note, "iron") {
		t.Errorf("a life is claimed for iron: %+v", none)
	}
}

// Turning the force round turns tension across the bead into compression.
func TestPartsOfALineForce(t *testing.T) {
	l := straight(0, 0, 0.1, 0)
	f := parts(vecOf([3]float64{10, 20, 30}), l, 0.5, PlusZ.Vec(), MinusY.Vec())
	if f.Along != 10 || math.Abs(f.Across-20) > 1e-12 || f.Upright != 30 {
		t.Errorf("bead on the −y side: %+v", f)
	}
	if g := parts(vecOf([3]float64{10, 20, 30}), l, 0.5, PlusZ.Vec(), PlusY.Vec()); math.Abs(g.Across+20) > 1e-12 {
		t.Errorf("bead on the +y side: %+v", g)
	}
}
