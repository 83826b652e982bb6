package weldplan

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// A grip is a point of the casting: a node and the arm from it.
type grip struct {
	node int
	arm  r3.Vec
}

// grip holds a point on a limb, by the nearest node along it.
func (k *skeleton) grip(limb string, p r3.Vec) grip {
	b := k.limb(limb)
	s, best := b.project(p), b.stations[0]
	for _, at := range b.stations {
		if math.Abs(at.s-s) < math.Abs(best.s-s) {
			best = at
		}
	}
	return grip{best.node, r3.Sub(p, k.nodes[best.node])}
}

// move adds to row how much the point moves along d for each freedom.
func (k *skeleton) move(row []float64, g grip, d r3.Vec) {
	if first := k.dof(g.node); first >= 0 {
		addVec(row[first:], d)
		addVec(row[first+3:], r3.Cross(g.arm, d))
	}
}

// turn adds to row how much the point turns about d.
func (k *skeleton) turn(row []float64, g grip, d r3.Vec) {
	if first := k.dof(g.node); first >= 0 {
		addVec(row[first+3:], d)
	}
}

func addVec(to []float64, v r3.Vec) {
	to[0] += v.X
	to[1] += v.Y
	to[2] += v.Z
}
