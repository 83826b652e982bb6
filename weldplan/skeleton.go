package weldplan

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/spatial/r3"
)

// A skeleton is the casting as limbs that bend, twist and stretch as beams, and
// the plates on it as bodies that stretch and bend evenly. It is held at one
// node, without force: every load of a weld holds itself in balance.
//
// Points off a limb's axis move as if a stiff arm held them: plane sections stay
// plane. The wall's own bending under a plate is left out, so the casting comes
// out too stiff beside a weld and about right over its length.
type skeleton struct {
	limbs  []limbBody
	nodes  []r3.Vec
	bars   []bar
	plates []plateBody
	held   int // node
	dofs   int
}

type limbBody struct {
	name     string
	from     r3.Vec
	x, y, z  r3.Vec
	length   float64
	section  section
	modulus  float64
	shear    float64
	stations []station // rising
}

type station struct {
	s    float64 // m along the limb
	node int
}

// closest is how near two nodes of a limb may lie; nearer ones become one.
const closest = 2e-3

// touching is how near the axes of two limbs must come to be one casting.
const touching = 1e-3

func newLimb(l *Limb, modulus, poisson float64) limbBody {
	d := r3.Sub(l.To.At, l.From.At)
	b := limbBody{name: l.Name, from: l.From.At, length: r3.Norm(d), modulus: modulus, shear: modulus / (2 * (1 + poisson))}
	b.x = r3.Unit(d)
	across := l.Across.Vec()
	b.y = r3.Unit(r3.Sub(across, r3.Scale(r3.Dot(across, b.x), b.x)))
	b.z = r3.Cross(b.x, b.y)
	b.section = rectangle(l.Width.Value, l.Depth.Value, l.Wall.Value)
	b.stations = []station{{0, -1}, {b.length, -1}}
	return b
}

// project is how far along the limb a point lies, kept within its ends.
func (b *limbBody) project(p r3.Vec) float64 {
	return math.Min(math.Max(r3.Dot(r3.Sub(p, b.from), b.x), 0), b.length)
}

func (b *limbBody) point(s float64) r3.Vec { return r3.Add(b.from, r3.Scale(s, b.x)) }

// mark makes sure that the limb has a node abreast of a point.
func (b *limbBody) mark(p r3.Vec) { b.markAt(b.project(p)) }

func (b *limbBody) markAt(s float64) {
	for _, at := range b.stations {
		if math.Abs(at.s-s) < closest {
			return
		}
	}
	b.stations = append(b.stations, station{s, -1})
	slices.SortFunc(b.stations, func(p, q station) int { return compareFloat(p.s, q.s) })
}

// limb returns the limb of a name.
func (k *skeleton) limb(name string) *limbBody {
	for i := range k.limbs {
		if k.limbs[i].name == name {
			return &k.limbs[i]
		}
	}
	return nil
}

// join marks on every limb where the ends of the others touch it.
func (k *skeleton) join() {
	for i := range k.limbs {
		for j := range k.limbs {
			for _, end := range []float64{0, k.limbs[j].length} {
				p := k.limbs[j].point(end)
				if i != j && r3.Norm(r3.Sub(p, k.limbs[i].point(k.limbs[i].project(p)))) < touching {
					k.limbs[i].mark(p)
				}
			}
		}
	}
}

// build numbers the nodes and the freedoms. held is the point that is held.
//
// Errors: a sentence, where a limb hangs in the air.
func (k *skeleton) build(held r3.Vec) error {
	k.nodes = nil
	for i := range k.limbs {
		b := &k.limbs[i]
		for n := range b.stations {
			p := b.point(b.stations[n].s)
			b.stations[n].node = k.nodeAt(i, p)
		}
		for n := 1; n < len(b.stations); n++ {
			from, to := b.stations[n-1], b.stations[n]
			k.bars = append(k.bars, bar{
				a: from.node, b: to.node, x: b.x, y: b.y, z: b.z, length: to.s - from.s,
				section: b.section, modulus: b.modulus, shear: b.shear,
			})
		}
	}
	if loose := k.loose(); loose != "" {
		return fmt.Errorf("%s touches no other limb: the axes must meet within %s", loose, mm(touching))
	}
	k.held = 0
	for i, p := range k.nodes {
		if r3.Norm(r3.Sub(p, held)) < r3.Norm(r3.Sub(k.nodes[k.held], held)) {
			k.held = i
		}
	}
	k.dofs = 6*(len(k.nodes)-1) + plateFreedoms*len(k.plates)
	return nil
}

// nodeAt returns the node at a place on a limb, a new one where no limb before it
// has one there.
func (k *skeleton) nodeAt(limb int, p r3.Vec) int {
	for j := range limb {
		for _, s := range k.limbs[j].stations {
			if r3.Norm(r3.Sub(k.nodes[s.node], p)) < closest {
				return s.node
			}
		}
	}
	k.nodes = append(k.nodes, p)
	return len(k.nodes) - 1
}

// loose names a limb that hangs in the air.
func (k *skeleton) loose() string {
	group := make([]int, len(k.nodes))
	for i := range group {
		group[i] = i
	}
	var root func(int) int
	root = func(i int) int {
		if group[i] != i {
			group[i] = root(group[i])
		}
		return group[i]
	}
	for _, b := range k.bars {
		group[root(b.a)] = root(b.b)
	}
	for _, l := range k.limbs {
		if root(l.stations[0].node) != root(k.limbs[0].stations[0].node) {
			return l.name
		}
	}
	return ""
}

// dof is the number of a node's first freedom, or -1 where it is held.
func (k *skeleton) dof(node int) int {
	switch {
	case node == k.held:
		return -1
	case node > k.held:
		node--
	}
	return 6 * node
}

// plateDof is the number of a plate's first freedom.
func (k *skeleton) plateDof(plate int) int {
	return 6*(len(k.nodes)-1) + plateFreedoms*plate
}

// stiffness is the casting and the plates, not yet joined.
func (k *skeleton) stiffness() *mat.SymDense {
	all := mat.NewSymDense(k.dofs, nil)
	for i := range k.bars {
		b := &k.bars[i]
		local := b.turned(b.stiffness())
		at := func(i int) int {
			first := k.dof(b.a)
			if i >= 6 {
				first, i = k.dof(b.b), i-6
			}
			if first < 0 {
				return -1
			}
			return first + i
		}
		for i := range 12 {
			for j := range 12 {
				if p, q := at(i), at(j); p >= 0 && q >= p {
					all.SetSym(p, q, all.At(p, q)+local[i][j])
				}
			}
		}
	}
	for i := range k.plates {
		k.plates[i].addTo(all, k.plateDof(i))
	}
	return all
}
