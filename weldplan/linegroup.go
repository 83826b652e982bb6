package weldplan

import (
	"errors"
	"math"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/spatial/r3"
)

// A lineGroup is the runs that hold one plate, as lines in space. It carries on to
// space what the books do in a plane (Shigley, Mechanical Engineering Design, 8th
// ed., 9-3 and 9-4): the part is rigid, the weld elastic and alike in all directions,
// and a force on each metre of weld
//
//	w(p) = F/L + (J⁻¹·M) × r,  J = ∫ (|r|²·1 − r·rᵀ) dl
//
// holds force and moment in balance, with r from the centroid of the lines.
type lineGroup struct {
	lines    []line
	length   float64
	centroid r3.Vec
	inertia  *mat.SymDense // m³
}

// gauss3 are Gauss's points and weights on 0 to 1.
var gauss3 = [3][2]float64{{0.1127016653792583, 5.0 / 18}, {0.5, 8.0 / 18}, {0.8872983346207417, 5.0 / 18}}

// each visits the lines in small pieces.
func (g *lineGroup) each(visit func(p r3.Vec, dl float64)) {
	for _, l := range g.lines {
		pieces := 1
		if l.arc {
			pieces = 1 + int(l.sweep*8)
		}
		for i := range pieces {
			for _, q := range gauss3 {
				visit(l.at((float64(i)+q[0])/float64(pieces)), q[1]*l.length/float64(pieces))
			}
		}
	}
}

func newLineGroup(lines []line) *lineGroup {
	g := &lineGroup{lines: lines, inertia: mat.NewSymDense(3, nil)}
	g.each(func(p r3.Vec, dl float64) {
		g.length += dl
		g.centroid = r3.Add(g.centroid, r3.Scale(dl, p))
	})
	g.centroid = r3.Scale(1/g.length, g.centroid)
	g.each(func(p r3.Vec, dl float64) {
		r := r3.Sub(p, g.centroid)
		c := [3]float64{r.X, r.Y, r.Z}
		for i := range 3 {
			for j := i; j < 3; j++ {
				v := -c[i] * c[j]
				if i == j {
					v += r3.Norm2(r)
				}
				g.inertia.SetSym(i, j, g.inertia.At(i, j)+v*dl)
			}
		}
	})
	return g
}

// errOneLine is a moment about the line of a single straight run.
var errOneLine = errors.New("the load turns the plate about its one straight run, which the line method gives no strength")

// pull returns the force on each metre of weld at a point, for a force on the plate
// at a place.
func (g *lineGroup) pull(force, at r3.Vec) (func(p r3.Vec) r3.Vec, error) {
	moment := r3.Cross(r3.Sub(at, g.centroid), force)
	var eigen mat.EigenSym
	if !eigen.Factorize(g.inertia, true) {
		return nil, errOneLine
	}
	values := eigen.Values(nil)
	var vectors mat.Dense
	eigen.VectorsTo(&vectors)
	var turn r3.Vec
	for i, v := range values {
		axis := r3.Vec{X: vectors.At(0, i), Y: vectors.At(1, i), Z: vectors.At(2, i)}
		about := r3.Dot(axis, moment)
		if v <= 1e-9*values[2] {
			if math.Abs(about) > 1e-6*(r3.Norm(moment)+r3.Norm(force)*g.length) {
				return nil, errOneLine
			}
			continue
		}
		turn = r3.Add(turn, r3.Scale(about/v, axis))
	}
	even := r3.Scale(1/g.length, force)
	return func(p r3.Vec) r3.Vec { return r3.Add(even, r3.Cross(turn, r3.Sub(p, g.centroid))) }, nil
}
