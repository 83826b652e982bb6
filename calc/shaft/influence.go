package shaft

import (
	"slices"

	"gonum.org/v1/gonum/mat"

	"axlewright/calc/check"
)

// BeamLoad is a force and a moment on the shaft at one place.
type BeamLoad struct {
	At    float64 // m, place along the shaft
	Axial float64 // N, force along x; optional
	Y     float64 // N, force along y; optional
	Z     float64 // N, force along z; optional
	TurnY float64 // N·m, moment about y; optional
	TurnZ float64 // N·m, moment about z; optional
}

// BendParams describes a stepped shaft, what loads it and where it is read.
type BendParams struct {
	Shaft  BeamParams // the shaft on its springs
	Loads  []BeamLoad // forces and moments on the shaft
	Places []float64  // m, places along the shaft to read; optional
}

// BeamMovement is how a place of the shaft has moved.
type BeamMovement struct {
	At    float64 // m, place along the shaft
	Axial float64 // m, u: movement along x
	Y     float64 // m, v: movement along y
	Z     float64 // m, w: movement along z
	TurnY float64 // rad, θ_y: turning about y
	TurnZ float64 // rad, θ_z: turning about z
}

// BeamReaction is what a support puts on the shaft.
type BeamReaction struct {
	At    float64 // m, place along the shaft
	Axial float64 // N, force along x
	Y     float64 // N, force along y
	Z     float64 // N, force along z
	TurnY float64 // N·m, moment about y
	TurnZ float64 // N·m, moment about z
}

// BendResult is what the shaft does under its loads.
type BendResult struct {
	Movements []BeamMovement // of the places asked for
	Reactions []BeamReaction // of the supports in their order
}

// Bend returns how a stepped shaft on springs moves under forces and moments,
// and what its supports put on it.
//
//	K·u = F,  R = −k·u at each support
//	k = E·I/(L³·(1 + Φ))·[12, 6·L, −12, 6·L; 6·L, (4 + Φ)·L², −6·L, (2 − Φ)·L²; …]
//	Φ = 12·E·I/(κ·G·A·L²),  θ_z = dv/dx − γ,  θ_y = −dw/dx + γ
//
// K as StationStiffness.
//
// Valid for straight shafts with small slopes, held along x and in both planes.
// Errors: *check.RangeError for dimensions out of range, places off the shaft
// or a shaft that is not held.
// Source: Przemieniecki, Theory of Matrix Structural Analysis, section 5.6
// (element with shear); Cowper, J. Appl. Mech. 33 (1966), 335-340 (κ of a
// hollow circle) (both from memory).
func Bend(p BendParams) (BendResult, error) {
	const fn = "shaft.Bend"
	var at []float64
	for _, l := range p.Loads {
		at = append(at, l.At)
	}
	m, solver, err := held(fn, p.Shaft, append(at, p.Places...))
	if err != nil {
		return BendResult{}, err
	}
	force := mat.NewVecDense(Freedoms*len(m.nodes), nil)
	for _, l := range p.Loads {
		for k, f := range []float64{l.Axial, l.Y, l.Z, l.TurnY, l.TurnZ} {
			if err := check.All(fn, check.Finite("Loads", f)); err != nil {
				return BendResult{}, err
			}
			rows, share := m.reach(l.At, k)
			for i, row := range rows {
				force.SetVec(row, force.AtVec(row)+share[i]*f)
			}
		}
	}
	var u mat.VecDense
	if err := solved(solver.SolveVecTo(&u, force)); err != nil {
		return BendResult{}, err
	}
	movement := func(x float64) BeamMovement {
		var moved [Freedoms]float64
		for k := range moved {
			rows, share := m.reach(x, k)
			moved[k] = share[0]*u.AtVec(rows[0]) + share[1]*u.AtVec(rows[1])
		}
		return BeamMovement{x, moved[AlongX], moved[AlongY], moved[AlongZ], moved[AboutY], moved[AboutZ]}
	}
	var r BendResult
	for _, x := range p.Places {
		r.Movements = append(r.Movements, movement(x))
	}
	for _, s := range p.Shaft.Supports {
		n := Freedoms * m.node(s.At)
		r.Reactions = append(r.Reactions, BeamReaction{
			s.At, -s.Axial * u.AtVec(n), -s.Y * u.AtVec(n+AlongY), -s.Z * u.AtVec(n+AlongZ),
			-s.TurnY * u.AtVec(n+AboutY), -s.TurnZ * u.AtVec(n+AboutZ),
		})
	}
	return r, nil
}

// Influence returns the compliance of a stepped shaft on springs at the
// stations asked for: the movement in each of five freedoms for a unit force
// or moment in each other.
//
//	C = (K⁻¹)_ss
//
// Stations in any order, five freedoms each: along x, y, z, about y, z.
//
// Valid as Bend.
// Errors: *check.RangeError as Bend.
// Source: StationStiffness.
func Influence(p BeamParams, stations []float64) (*mat.SymDense, error) {
	const fn = "shaft.Influence"
	if len(stations) == 0 {
		return nil, &check.RangeError{Func: fn, Param: "stations", Value: 0, Range: "at least one station"}
	}
	m, solver, err := held(fn, p, stations)
	if err != nil {
		return nil, err
	}
	count := Freedoms * len(stations)
	units := mat.NewDense(Freedoms*len(m.nodes), count, nil)
	for i := range count {
		rows, share := m.reach(stations[i/Freedoms], i%Freedoms)
		for k, row := range rows {
			units.Set(row, i, units.At(row, i)+share[k])
		}
	}
	var moved, product mat.Dense
	if err := solved(solver.SolveTo(&moved, units)); err != nil {
		return nil, err
	}
	product.Mul(units.T(), &moved)
	c := mat.NewSymDense(count, nil)
	for i := range count {
		for j := i; j < count; j++ {
			c.SetSym(i, j, product.At(i, j))
		}
	}
	return c, nil
}

// held returns the model of a shaft that its supports hold, factorised.
func held(fn string, p BeamParams, at []float64) (beamModel, *mat.Cholesky, error) {
	if err := checkBeam(fn, p); err != nil {
		return beamModel{}, nil, err
	}
	length := p.length()
	for _, x := range at {
		if err := check.All(fn, check.That("places", x, x >= 0 && x <= length*(1+1e-9), "on the shaft")); err != nil {
			return beamModel{}, nil, err
		}
	}
	// Springs that hold each direction; a plane needs a second one against turning.
	var axial, y, z []float64
	var turnY, turnZ bool
	for _, s := range p.Supports {
		if s.Axial > 0 {
			axial = append(axial, s.At)
		}
		if s.Y > 0 {
			y = append(y, s.At)
		}
		if s.Z > 0 {
			z = append(z, s.At)
		}
		turnY, turnZ = turnY || s.TurnY > 0, turnZ || s.TurnZ > 0
	}
	plane := func(at []float64, turn bool) bool {
		return len(at) > 0 && (turn || slices.Max(at)-slices.Min(at) > together*length)
	}
	ok := len(axial) > 0 && plane(y, turnZ) && plane(z, turnY)
	if err := check.All(fn, check.That("Supports", float64(len(p.Supports)), ok, "springs that hold the shaft along x, and in both planes")); err != nil {
		return beamModel{}, nil, err
	}
	m := newBeamModel(p, nil, at)
	var solver mat.Cholesky
	if !solver.Factorize(m.stiffness) {
		return m, nil, &check.RangeError{Func: fn, Param: "Supports", Value: 0, Range: "stiff enough against the shaft to be computed"}
	}
	return m, &solver, nil
}

// solved passes over the library's warning that stiff springs stand beside
// soft ones; the tests hold the answer to equilibrium.
func solved(err error) error {
	if _, warning := err.(mat.Condition); warning {
		return nil
	}
	return err
}
