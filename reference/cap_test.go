//go:build reference

package reference_test

import (
	"fmt"
	"math"
	"testing"

	"axlewright/calc/ring"
)

// solidCap is one half of a cap in bricks, from the middle of its arc (angle
// 0) to its foot (angle π/2), pushed along x.
//
// An overlay is a second ring outside the first: bonded to it, or tied to it
// across the seam and free to slide along it, held at the foot by its own ear.
func solidCap(p ring.CapParams) (inner, outer *grid, weights map[int][2]float64) {
	d := newDeck("C3D20R")
	w := p.Layers[0].Width
	angles := spread(math.Pi/48, 0, p.HalfArc, math.Pi/2)
	radius := p.BoreRadius
	var rings []*grid
	for i, l := range p.Layers {
		name := fmt.Sprintf("METAL%d", i)
		d.material(name, l.Modulus, p.Poisson)
		r := &grid{
			d: d, at: ringPlace, a: spread(l.Thickness/4, radius, radius+l.Thickness), b: angles, c: spread(w/2, 0, w/2),
			used: func(_, _, _ int) string { return name },
		}
		r.build()
		d.fix(r.where(func(_, a, _ float64) bool { return same(a, math.Pi/2) }))
		d.fix(r.where(func(_, a, _ float64) bool { return same(a, 0) }), 2)
		d.fix(r.where(func(_, _, z float64) bool { return same(z, 0) }), 3) // middle of the width
		rings = append(rings, r)
		radius += l.Thickness
	}
	if len(rings) == 2 {
		join(d, rings[0], rings[1], p.Bond == 1)
	}
	// Even pressure over the arc, as forces on the nodes of the bore.
	weights = map[int][2]float64{}
	radial := p.Force / (2 * math.Sin(p.HalfArc)) * p.HalfArc / 2 // on a quarter: half the arc, half the width
	for key, share := range even(angles, 0, p.HalfArc, rings[0].c) {
		n := rings[0].nodes[[3]int{0, key[0], key[1]}]
		sin, cos := math.Sincos(between(angles, key[0]))
		weights[n] = [2]float64{radial * share * cos, radial * share * sin}
		d.force(n, 1, radial*share*cos)
		d.force(n, 2, radial*share*sin)
	}
	return rings[0], rings[len(rings)-1], weights
}

// join ties the seam of two rings: wholly, or across it only.
func join(d *deck, in, out *grid, bonded bool) {
	last := 2 * (len(in.a) - 1)
	for j := range 2*len(in.b) - 1 {
		theta := between(in.b, j)
		if same(theta, math.Pi/2) {
			continue // held
		}
		sin, cos := math.Sincos(theta)
		for k := range 2*len(in.c) - 1 {
			a, ok := in.nodes[[3]int{last, j, k}]
			if !ok {
				continue
			}
			b := out.nodes[[3]int{0, j, k}]
			if bonded {
				for f := 1; f <= 3; f++ {
					if f == 2 && j == 0 || f == 3 && k == 0 {
						continue // held
					}
					fmt.Fprintf(&d.extra, "*EQUATION\n2\n%d,%d,1.,%d,%d,-1.\n", b, f, a, f)
				}
				continue
			}
			terms := []string{fmt.Sprintf("%d,1,%.12g", b, cos), fmt.Sprintf("%d,1,%.12g", a, -cos)}
			if j > 0 {
				terms = append(terms, fmt.Sprintf("%d,2,%.12g", b, sin), fmt.Sprintf("%d,2,%.12g", a, -sin))
			}
			fmt.Fprintf(&d.extra, "*EQUATION\n%d\n", len(terms))
			for _, t := range terms {
				fmt.Fprintf(&d.extra, "%s\n", t)
			}
		}
	}
}

func TestCapUnderABearing(t *testing.T) {
	iron := ring.SectionLayer{Thickness: 0.017, Width: 0.026, Modulus: 168e9}
	steel := ring.SectionLayer{Thickness: 0.006, Width: 0.026, Modulus: 206e9}
	base := ring.CapParams{BoreRadius: 0.042, Poisson: 0.27, Force: 30e3, HalfArc: math.Pi / 4, Load: ring.EvenLoad}
	for _, c := range []struct {
		name   string
		layers []ring.SectionLayer
		bond   float64
		move   float64 // how far apart the movements may be
		stress float64 // how far apart the stresses may be
	}{
		{"thin cap", []ring.SectionLayer{{Thickness: 0.006, Width: 0.026, Modulus: 168e9}}, 1, 0.03, 0.07},
		// The bricks also squash the wall under the bearing.
		{"cap", []ring.SectionLayer{iron}, 1, 0.07, 0.03},
		{"cap, overlay welded on", []ring.SectionLayer{iron, steel}, 1, 0.11, 0.03},
		// A loose overlay need not bend with the cap everywhere, as ours must.
		{"cap, overlay held at its ears", []ring.SectionLayer{iron, steel}, 0, 0.08, 0.2},
	} {
		p := base
		p.Layers, p.Bond = c.layers, c.bond
		r, err := ring.Cap(p)
		if err != nil {
			t.Fatal(err)
		}
		in, out, weights := solidCap(p)
		moved := in.d.solve(t)
		work := 0.0
		for n, f := range weights {
			work += f[0]*moved[n][0] + f[1]*moved[n][1]
		}
		// A quarter of the cap stands in the bricks.
		compare(t, c.name+", mean movement of the arc", "µm", r.Deflection*1e6, 4*work/p.Force*1e6, c.move)
		// Outside, at the middle of the arc, nothing presses on the face: the
		// hoop stress is E times the strain, from the nodes' movements.
		last := 2 * (len(out.a) - 1)
		middle, next := out.nodes[[3]int{last, 0, 0}], out.nodes[[3]int{last, 1, 0}]
		theta, radius := between(out.b, 1), out.a[len(out.a)-1]
		sin, cos := math.Sincos(theta)
		along := moved[next][1]*cos - moved[next][0]*sin
		strain := (moved[middle][0] + along/theta) / radius
		compare(t, c.name+", stress outside at the middle", "MPa", r.CrownOuter/1e6, strain*c.layers[len(c.layers)-1].Modulus/1e6, c.stress)
	}
}
