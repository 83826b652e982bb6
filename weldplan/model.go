package weldplan

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// A run is joined to the casting at two points of its length, Gauss's, one for
// each half: so a half can be laid before the other, and an even pull along the
// run is passed on exactly.
const (
	halves  = 2
	ties    = 4 // springs of a half: along, across, square to both, and turning about the run
	effects = 3 // loads of a half: across, along, folding
)

// gaussPoints are where the halves of a run are tied, as shares of its length.
var gaussPoints = [halves]float64{0.5 - 0.5/math.Sqrt(3), 0.5 + 0.5/math.Sqrt(3)}

// Effects of a run, in this order wherever they stand apart.
const (
	transverse = iota
	longitudinal
	angular
)

// spring is how stiff a metre of weld joins plate and casting, over the modulus
// of the casting: the wall's skin, the bead and the plate's edge in series. Our
// assumption, uncertain by a factor of two; it counts little where plates are
// longer than wide welds are thick.
const spring = 0.25 // -, N/m for each metre and Pa

// A tied is a run as the model sees it.
type tied struct {
	line   line
	plate  int
	limb   string
	half   [halves]tiedHalf
	shrink shrinkage
}

type tiedHalf struct {
	length float64
	tie    [ties][]float64    // movement of the plate over the casting, by freedom
	load   [effects][]float64 // forces on the freedoms when the half shrinks; misfits apart
	full   [ties]float64      // N/m, N·m/rad: stiffness when welded
	misfit [ties]float64      // m, rad: what the plate would move by, unheld
	most   float64            // N, what the half can pull across
	across r3.Vec             // the way the plate is drawn
}

// A model is the casting with its plates tacked on, ready for the first run.
type model struct {
	skeleton skeleton
	runs     []tied
	moves    []movement
	tacked   float64 // share of a run's stiffness that its tacks give
}

// tie makes the springs and the loads of a run.
func (m *model) tie(r *tied, side r3.Vec, joint JointKind, bead r3.Vec, wall float64) {
	k := &m.skeleton
	plate := &k.plates[r.plate]
	limb := k.limb(r.limb)
	for h := range halves {
		part := &r.half[h]
		at, along := r.line.at(gaussPoints[h]), r.line.along(gaussPoints[h])
		part.length = r.line.length / halves
		upright := squareTo(side, along)
		across := r3.Cross(upright, along)
		if joint == Tee {
			across = r3.Scale(-1, upright) // the plate is drawn on to the wall
		} else if r3.Dot(across, r3.Sub(at, plate.centre)) < 0 {
			across = r3.Scale(-1, across) // outwards, towards the bead
		}
		third := r3.Cross(along, across)
		part.across = across
		g := k.grip(r.limb, at)
		relative := func(d r3.Vec, turning bool) []float64 {
			row := make([]float64, k.dofs)
			own := row[k.plateDof(r.plate):]
			if turning {
				k.turn(row, g, d)
			} else {
				k.move(row, g, d)
			}
			for i := range row {
				row[i] = -row[i]
			}
			if turning {
				plate.turn(own, at, d)
			} else {
				plate.move(own, at, d)
			}
			return row
		}
		part.tie = [ties][]float64{relative(along, false), relative(across, false), relative(third, false), relative(along, true)}
		each := spring * limb.modulus * part.length
		// About the run the same springs, spread over the plate's thickness.
		part.full = [ties]float64{each, each, each, each * plate.thickness * plate.thickness / 12}
		part.misfit[1] = r.shrink.across
		if joint == Tee && bead != (r3.Vec{}) {
			// Turning about the run that carries the plate's far edge towards the bead.
			part.misfit[3] = r.shrink.tilt * sign(r3.Dot(r3.Cross(along, upright), bead))
		}
		part.most = r.shrink.most * part.length
		part.load = m.loads(r, limb, float64(h)/halves, float64(h+1)/halves, side, wall)
	}
}

// loads are the forces of a half that act on the casting alone.
func (m *model) loads(r *tied, limb *limbBody, from, to float64, side r3.Vec, wall float64) (load [effects][]float64) {
	k := &m.skeleton
	for e := range load {
		load[e] = make([]float64, k.dofs)
	}
	a, b := r.line.at(from), r.line.at(to)
	middle := r.line.at((from + to) / 2)
	chord := r3.Sub(b, a)
	along := r3.Unit(chord)
	// Along: the pull draws the ends of the half together.
	k.move(load[longitudinal], k.grip(r.limb, a), r3.Scale(r.shrink.pull, along))
	k.move(load[longitudinal], k.grip(r.limb, b), r3.Scale(-r.shrink.pull, along))

	// Across: the wall is drawn together, and folded, over the stretch of the limb
	// that the half and its warm zone, a wall either side, cover. What of it
	// lengthens the limb goes by the square of the cosine.
	upright := squareTo(side, along)
	across := r3.Cross(upright, along)
	share := r3.Dot(across, limb.x)
	s1, s2 := limb.warm(a, b, wall)
	length, e := r3.Norm(chord), limb.modulus
	depth := r3.Sub(middle, r3.Scale(wall/2, side)) // mid-wall
	offset := r3.Sub(depth, limb.point(limb.project(depth)))
	oy, oz := r3.Dot(offset, limb.y), r3.Dot(offset, limb.z)
	strain := r.shrink.wall * wall * length * share * share / (s2 - s1) // m², strain times area
	m.eigen(load[transverse], limb, s1, s2, -e*strain, -e*strain*oz, e*strain*oy)

	// Folding: hollow on the bead's side, in the share that the wall has of the
	// limb's bending stiffness.
	fold := r.shrink.kink * length * wall * wall * wall / 12 * share * share / (s2 - s1) // m³
	about := r3.Cross(limb.x, side)                                                      // turning that lifts the far end towards the side
	m.eigen(load[angular], limb, s1, s2, 0, e*fold*r3.Dot(about, limb.y), e*fold*r3.Dot(about, limb.z))
	return load
}

// eigen adds the forces that stand for a strain and curvatures which a stretch of
// limb takes on by itself: a normal force and two bending moments, as if the
// stretch were held and then let go.
func (m *model) eigen(load []float64, limb *limbBody, s1, s2, normal, aboutY, aboutZ float64) {
	k := &m.skeleton
	for _, end := range []struct{ s, sign float64 }{{s1, -1}, {s2, 1}} {
		g := k.grip(limb.name, limb.point(end.s))
		k.move(load, g, r3.Scale(end.sign*normal, limb.x))
		k.turn(load, g, r3.Scale(end.sign*aboutY, limb.y))
		k.turn(load, g, r3.Scale(end.sign*aboutZ, limb.z))
	}
}

// warm is the stretch of a limb that a piece of weld draws together: abreast of
// it, and one wall either side.
func (b *limbBody) warm(from, to r3.Vec, wall float64) (s1, s2 float64) {
	s1, s2 = b.project(from), b.project(to)
	if s1 > s2 {
		s1, s2 = s2, s1
	}
	return math.Max(0, s1-wall), math.Min(b.length, s2+wall)
}

// squareTo is the part of a direction that is square to another, as a unit vector.
func squareTo(d, to r3.Vec) r3.Vec { return r3.Unit(r3.Sub(d, r3.Scale(r3.Dot(d, to), to))) }

func sign(x float64) float64 {
	if x < 0 {
		return -1
	}
	return 1
}
