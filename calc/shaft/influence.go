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

// BeamState is how a place of the shaft has moved, or what a support carries.
type BeamState struct {
	At    float64 // m, place along the shaft
	Axial float64 // m, along x; for a reaction N
	Y     float64 // m, along y; for a reaction N
	Z     float64 // m, along z; for a reaction N
	TurnY float64 // rad, about y; for a reaction N·m
	TurnZ float64 // rad, about z; for a reaction N·m
}

// BeamResult is what the shaft does under its loads.
type BeamResult struct {
	Movements []BeamState // at the places asked for
	Reactions []BeamState // of the supports on the shaft, in their order
}

// Bend returns how a stepped shaft on springs moves under forces and moments,
// and what its supports carry.
//
//	K·u = F,  R = −k·u at each support
//
// K as StationStiffness.
//
// Valid as StationStiffness, for supports that leave no free motion along x,
// y, z and about y, z.
// Errors: *check.RangeError for dimensions out of range, places off the shaft
// or a shaft that is not held.
// Source: StationStiffness.
func Bend(p BeamParams, loads []BeamLoad, places []float64) (BeamResult, error) {
	const fn = "shaft.Bend"
	var at []float64
	for _, l := range loads {
		at = append(at, l.At)
	}
	at = append(at, places...)
	m, solver, err := held(fn, p, at)
	if err != nil {
		return BeamResult{}, err
	}
	force := mat.NewVecDense(Freedoms*len(m.nodes), nil)
	for _, l := range loads {
		for k, f := range []float64{l.Axial, l.Y, l.Z, l.TurnY, l.TurnZ} {
			if err := check.All(fn, check.Finite("loads", f)); err != nil {
				return BeamResult{}, err
			}
			rows, share := m.reach(l.At, k)
			for i, row := range rows {
				force.SetVec(row, force.AtVec(row)+share[i]*f)
			}
		}
	}
	var u mat.VecDense
	if err := solved(solver.SolveVecTo(&u, force)); err != nil {
		return BeamResult{}, err
	}
	state := func(x float64) BeamState {
		var moved [Freedoms]float64
		for k := range moved {
			rows, share := m.reach(x, k)
			moved[k] = share[0]*u.AtVec(rows[0]) + share[1]*u.AtVec(rows[1])
		}
		return BeamState{x, moved[AlongX], moved[AlongY], moved[AlongZ], moved[AboutY], moved[AboutZ]}
	}
	var r BeamResult
	for _, x := range places {
		r.Movements = append(r.Movements, state(x))
	}
	for _, s := range p.Supports {
		moved := state(s.At)
		r.Reactions = append(r.Reactions, BeamState{
			s.At, -s.Axial * moved.Axial, -s.Y * moved.Y, -s.Z * moved.Z, -s.TurnY * moved.TurnY, -s.TurnZ * moved.TurnZ,
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
