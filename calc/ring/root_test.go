package ring

import (
	"math"
	"testing"

	"axlewright/internal/published"
)

// The terms of the source, each apart: a long leg turns about its root, and
// what is left where the moment's part is taken off shifts with the force.
func TestRootGivePublished(t *testing.T) {
	give := func(length, poisson float64) float64 {
		d, err := RootGive(LegParams{Length: length, RootDepth: 0.03, Width: 0.05, Modulus: 168e9, Poisson: poisson, Force: 1000})
		if err != nil {
			t.Fatal(err)
		}
		return d * 168e9 * 0.05 / 1000
	}
	const source = "O'Donnell, J. Eng. Ind. 85 (1963), as quoted for the foundation of gear teeth (from memory), worked by hand"
	published.Check(t, []published.Row{
		{Name: "δ·E·b/F at L = 2·h, ν = 0.3", Got: give(0.06, 0.3), Printed: "25.559", Source: source},
		{Name: "δ·E·b/F at L = h, ν = 0.25", Got: give(0.03, 0.25), Printed: "8.340", Source: source},
	})
	if _, err := RootGive(LegParams{Length: 0.01, RootDepth: 0.03, Width: 0.05, Modulus: 168e9, Force: 1}); err == nil {
		t.Error("a leg shorter than half its depth")
	}
}

// Its root makes a stocky leg give half as much again and more, a slender one little more.
func TestRootMattersForStockyLegs(t *testing.T) {
	share := func(length float64) float64 {
		p := LegParams{Length: length, TipDepth: 0.03, RootDepth: 0.03, Width: 0.05, Modulus: 168e9, Poisson: 0.27, Force: 1}
		root, err := RootGive(p)
		if err != nil {
			t.Fatal(err)
		}
		return root / leg(t, p).Deflection
	}
	if stocky, slender := share(0.03), share(0.3); !(stocky > 0.5 && slender < 0.2) || math.IsNaN(stocky) {
		t.Errorf("root over leg: %g and %g", stocky, slender)
	}
}
