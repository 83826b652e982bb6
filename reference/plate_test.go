//go:build reference

package reference_test

import (
	"fmt"
	"math"
	"testing"

	"axlewright/calc/ring"
)

const (
	modulus = 200e9
	poisson = 0.3
)

// uniformPlate is our plate of one thickness.
func uniformPlate(t *testing.T, inner, outer, h float64) *ring.Plate {
	t.Helper()
	p, err := ring.NewPlate(ring.PlateParams{
		Zones: []ring.PlateZone{{
			Inner: inner, Outer: outer,
			Rigidity: modulus * h * h * h / (12 * (1 - poisson*poisson)), Shear: 5.0 / 6 * modulus / (2 * (1 + poisson)) * h,
		}},
		Poisson: poisson, InnerEdge: ring.Clamped, OuterEdge: ring.Free,
	})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// ringLoaded solves an annular plate, clamped inside, under a ring load on its
// rim, as a body of revolution.
func ringLoaded(t *testing.T, inner, outer, h float64) float64 {
	d := newDeck("CAX8R")
	d.material("STEEL", modulus, poisson)
	radii, heights := spread((outer-inner)/24, inner, outer), spread(h/4, 0, h)
	nodes := map[[2]int]int{}
	at := func(i, k int) int {
		key := [2]int{i, k}
		if _, ok := nodes[key]; !ok {
			nodes[key] = d.node(between(radii, i), between(heights, k), 0)
		}
		return nodes[key]
	}
	for i := range len(radii) - 1 {
		for k := range len(heights) - 1 {
			var e []int
			for _, o := range [8][2]int{{0, 0}, {2, 0}, {2, 2}, {0, 2}, {1, 0}, {2, 1}, {1, 2}, {0, 1}} {
				e = append(e, at(2*i+o[0], 2*k+o[1]))
			}
			d.elements["STEEL"] = append(d.elements["STEEL"], e)
		}
	}
	var clamp []int
	for key, n := range nodes {
		if key[0] == 0 {
			clamp = append(clamp, n)
		}
	}
	d.fix(clamp, 1, 2)
	last := 2 * (len(radii) - 1)
	weights := map[int]float64{}
	for k, w := range simpson(heights, 0, h) {
		weights[at(last, k)] += w
	}
	mean := d.mean(weights, 2)
	d.force(mean, 2, 1000) // the whole force round the axis
	return d.solve(t)[mean][1]
}

func TestAnnularPlateUnderARingLoad(t *testing.T) {
	const inner, outer = 0.050, 0.111
	for _, h := range []float64{0.002, 0.010, 0.024} {
		theirs := ringLoaded(t, inner, outer, h)
		exact, err := ring.AnnularPlate(ring.AnnularPlateParams{
			InnerRadius: inner, OuterRadius: outer, Thickness: h, Modulus: modulus, Poisson: poisson,
			InnerEdge: ring.Clamped, OuterEdge: ring.Free, RingLoad: 1000, RingRadius: outer,
		})
		if err != nil {
			t.Fatal(err)
		}
		c, err := uniformPlate(t, inner, outer, h).Compliance([]ring.Point{{Radius: outer, Direction: ring.Axial, Spread: math.Pi}})
		if err != nil {
			t.Fatal(err)
		}
		name := fmt.Sprintf("annular plate, ring load on the rim, h/a = %.2f", h/outer)
		thin := 0.02
		if h > 0.02*outer {
			thin = 0.25 // what the thin plate leaves out: shear
		}
		compare(t, name+", thin plate", "mm", exact.OuterDeflection*1e3, theirs*1e3, thin)
		compare(t, name+", with shear", "mm", c.At(0, 0)*1e6, theirs*1e3, 0.02)
	}
}
