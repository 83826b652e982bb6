//go:build reference

package reference_test

import (
	"testing"

	"axlewright/calc/ring"
)

// A stocky leg on a block of the same metal, a thin slice of both: what its root
// gives is its movement less that of the leg alone.
func TestLegOnAnElasticRoot(t *testing.T) {
	for _, length := range []float64{0.030, 0.054} {
		p := ring.LegParams{Length: length, TipDepth: 0.034, RootDepth: 0.034, Width: 0.004, Modulus: modulus, Poisson: poisson, Force: 1000}
		leg, err := ring.TaperedLeg(p)
		if err != nil {
			t.Fatal(err)
		}
		root, err := ring.RootGive(p)
		if err != nil {
			t.Fatal(err)
		}
		d := newDeck("C3D20R")
		d.material("IRON", modulus, poisson)
		half, depth := p.RootDepth/2, 0.25
		// Planes close together at the corners of the root.
		g := &grid{
			d: d, at: blockPlace, c: []float64{0, p.Width},
			a: append(spread(0.03, -depth, -0.06), spread(0.004, -0.06, -0.008, 0, 0.008, length)[1:]...),
			b: append(append(spread(0.03, -depth, -0.05), spread(0.004, -0.05, -half, half, 0.05)[1:]...), spread(0.03, 0.05, depth)[1:]...),
		}
		g.used = func(i, j, _ int) string {
			y := (g.b[j] + g.b[j+1]) / 2
			if g.a[i] >= 0 && (y < -half || y > half) {
				return ""
			}
			return "IRON"
		}
		g.build()
		d.fix(g.where(func(x, y, _ float64) bool { return same(x, -depth) || same(y, -depth) || same(y, depth) }))
		weights := map[int]float64{}
		for j, wj := range simpson(g.b, -half, half) {
			for k, wk := range simpson(g.c, 0, p.Width) {
				if n, ok := g.nodes[[3]int{2 * (len(g.a) - 1), j, k}]; ok {
					weights[n] += wj * wk
				}
			}
		}
		tip := d.mean(weights, 2)
		d.force(tip, 2, p.Force)
		moved := d.solve(t)[tip][1]
		compare(t, "leg with its root", "µm", (leg.Deflection+root)*1e6, moved*1e6, 0.1)
		compare(t, "give of the root alone", "µm", root*1e6, (moved-leg.Deflection)*1e6, 0.2)
	}
}
