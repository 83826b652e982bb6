//go:build reference

package reference_test

import (
	"fmt"
	"math"
	"testing"

	"axlewright/calc/ring"
)

// A peg plate held on three sides, its fourth free, under the pad of a peg.
func TestPlateOnThreeSidesUnderAPad(t *testing.T) {
	for _, c := range []struct {
		thickness float64
		within    float64
	}{
		{0.002, 0.02},
		{0.008, 0.12}, // a tenth of the side thick: shear, which the thin plate leaves out
	} {
		p := ring.PatchPlateParams{
			Length: 0.090, Width: 0.070, Thickness: c.thickness, Modulus: 206e9, Poisson: 0.3,
			Left: ring.Clamped, Right: ring.Clamped, Near: ring.Clamped, Far: ring.Free,
			Force: 1000, PatchX: 0.045, PatchY: 0.045, PatchA: 0.020, PatchB: 0.020,
		}
		r, err := ring.PatchPlate(p)
		if err != nil {
			t.Fatal(err)
		}
		d := newDeck("C3D20R")
		d.material("STEEL", p.Modulus, p.Poisson)
		g := &grid{
			d: d, at: blockPlace, c: spread(c.thickness/2, 0, c.thickness),
			a: spread(0.005, 0, p.PatchX-p.PatchA/2, p.PatchX+p.PatchA/2, p.Length),
			b: spread(0.005, 0, p.PatchY-p.PatchB/2, p.PatchY+p.PatchB/2, p.Width),
		}
		g.used = func(_, _, _ int) string { return "STEEL" }
		g.build()
		d.fix(g.where(func(x, y, _ float64) bool { return same(x, 0) || same(x, p.Length) || same(y, 0) }))
		weights := map[int]float64{}
		for i, wi := range simpson(g.a, p.PatchX-p.PatchA/2, p.PatchX+p.PatchA/2) {
			for j, wj := range simpson(g.b, p.PatchY-p.PatchB/2, p.PatchY+p.PatchB/2) {
				for k, wk := range simpson(g.c, 0, c.thickness) {
					if n, ok := g.nodes[[3]int{i, j, k}]; ok {
						weights[n] += wi * wj * wk
					}
				}
			}
		}
		pad := d.mean(weights, 3)
		d.force(pad, 3, p.Force)
		moved := d.solve(t)
		name := fmt.Sprintf("plate welded on three sides, %.0f mm thick, pad", c.thickness*1e3)
		compare(t, name, "µm", r.Deflection*1e6, moved[pad][2]*1e6, c.within)
		// The stress of the face away from the pad, from the strains across its middle.
		top := 2 * (len(g.c) - 1)
		at := func(x, y float64) [3]float64 {
			n := g.where(func(a, b, z float64) bool { return same(a, x) && same(b, y) && same(z, g.c[top/2]) })
			return moved[n[0]]
		}
		const step = 0.0025
		ex := (at(p.PatchX+step, p.PatchY)[0] - at(p.PatchX-step, p.PatchY)[0]) / (2 * step)
		ey := (at(p.PatchX, p.PatchY+step)[1] - at(p.PatchX, p.PatchY-step)[1]) / (2 * step)
		e := p.Modulus / (1 - p.Poisson*p.Poisson)
		theirs := max(math.Abs(e*(ex+p.Poisson*ey)), math.Abs(e*(ey+p.Poisson*ex)))
		compare(t, fmt.Sprintf("plate welded on three sides, %.0f mm thick, stress", c.thickness*1e3), "MPa", r.PadStress/1e6, theirs/1e6, 0.03)
	}
}
