package shaft

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"

	"axlewright/calc/check"
)

// Section is a piece of a stepped shaft with one diameter.
type Section struct {
	Length  float64 // m, length of the piece
	Outer   float64 // m, D: outer diameter
	Inner   float64 // m, d: bore; optional
	Windows float64 // -, share of the bending and shear stiffness that windows leave; 0 stands for 1; optional
}

// Support is a place where springs to ground hold the shaft. A stiffness of
// zero is no spring.
type Support struct {
	At    float64 // m, place along the shaft
	Axial float64 // N/m, stiffness along x; optional
	Y     float64 // N/m, stiffness along y; optional
	Z     float64 // N/m, stiffness along z; optional
	TurnY float64 // N·m/rad, stiffness about y; optional
	TurnZ float64 // N·m/rad, stiffness about z; optional
}

// BeamParams describes a stepped shaft on springs. x runs along the shaft from
// its first section.
type BeamParams struct {
	Sections []Section // pieces of the shaft from x = 0 on
	Modulus  float64   // Pa, E: Young's modulus
	Poisson  float64   // -, ν: Poisson's ratio
	Supports []Support // springs to ground; optional
}

// Freedoms of a station, in this order in every matrix and vector: movement
// along x, y and z, then turning about y and about z. Turning about x, the
// twist of the shaft, is no part of the bending.
const (
	AlongX = iota
	AlongY
	AlongZ
	AboutY
	AboutZ
	Freedoms // number of freedoms of a station
)

// StationStiffness returns the stiffness of a stepped shaft at the stations
// asked for, five freedoms each.
//
//	K = K_ss − K_si·K_ii⁻¹·K_is,  s stations, i every other place
//	k = E·I/(L³·(1 + Φ))·[12, 6·L, −12, 6·L; 6·L, (4 + Φ)·L², −6·L, (2 − Φ)·L²; …]
//	Φ = 12·E·I/(κ·G·A·L²),  θ_z = dv/dx − γ,  θ_y = −dw/dx + γ
//	κ = 6·(1 + ν)·(1 + m²)²/[(7 + 6·ν)·(1 + m²)² + (20 + 12·ν)·m²],  m = d/D
//
// Each piece is the exact solution of Timoshenko's beam, so steps need no
// finer division. Without supports the matrix is that of the free shaft: it
// passes rigid motions without force, and bearings of any law can be added by
// the caller at the stations.
//
// Valid for straight shafts with small slopes; the axial force does not soften
// the bending. Stations in rising order, within the shaft.
// Errors: *check.RangeError for dimensions that are not positive or stations
// off the shaft.
// Source: Przemieniecki, Theory of Matrix Structural Analysis, section 5.6
// (element with shear); Cowper, J. Appl. Mech. 33 (1966), 335-340 (κ of a
// hollow circle) (both from memory).
func StationStiffness(p BeamParams, stations []float64) (*mat.SymDense, error) {
	const fn = "shaft.StationStiffness"
	if err := checkBeam(fn, p); err != nil {
		return nil, err
	}
	length := p.length()
	if len(stations) == 0 {
		return nil, &check.RangeError{Func: fn, Param: "stations", Value: 0, Range: "at least one station"}
	}
	for i, x := range stations {
		if err := check.All(fn,
			check.That("stations", x, x >= 0 && x <= length*(1+1e-9), "on the shaft"),
			check.That("stations", x, i == 0 || x > stations[i-1]+together*length, "in rising order"),
		); err != nil {
			return nil, err
		}
	}
	m := newBeamModel(p, stations, nil)
	return m.condense(stations), nil
}

func checkBeam(fn string, p BeamParams) error {
	if err := check.All(fn,
		check.That("Sections", float64(len(p.Sections)), len(p.Sections) > 0, "at least one section"),
		check.Positive("Modulus", p.Modulus),
		check.That("Poisson", p.Poisson, p.Poisson >= 0 && p.Poisson < 0.5, "0 <= ν < 0.5"),
	); err != nil {
		return err
	}
	for _, s := range p.Sections {
		if err := check.All(fn,
			check.Positive("Sections.Length", s.Length),
			check.Positive("Sections.Outer", s.Outer),
			check.That("Sections.Inner", s.Inner, s.Inner >= 0 && s.Inner < s.Outer, "0 <= d < D"),
			check.Within("Sections.Windows", s.Windows, 0, 1),
		); err != nil {
			return err
		}
	}
	for _, s := range p.Supports {
		if err := check.All(fn,
			check.That("Supports.At", s.At, s.At >= 0 && s.At <= p.length()*(1+1e-9), "on the shaft"),
			check.NotNegative("Supports.Axial", s.Axial),
			check.NotNegative("Supports.Y", s.Y),
			check.NotNegative("Supports.Z", s.Z),
			check.NotNegative("Supports.TurnY", s.TurnY),
			check.NotNegative("Supports.TurnZ", s.TurnZ),
		); err != nil {
			return err
		}
	}
	return nil
}

func (p BeamParams) length() float64 {
	sum := 0.0
	for _, s := range p.Sections {
		sum += s.Length
	}
	return sum
}

// together is the share of the shaft's length below which two places are one
// node: a piece much shorter than that would be too stiff beside the others.
// Loads and readings there keep their arm to the node.
const together = 1e-4

// beamModel is the shaft cut at supports and stations, at steps, and at the
// places of loads and readings.
type beamModel struct {
	nodes     []float64
	stiffness *mat.SymDense
}

func newBeamModel(p BeamParams, stations, places []float64) beamModel {
	length := p.length()
	ends := []float64{0}
	for _, s := range p.Sections {
		ends = append(ends, ends[len(ends)-1]+s.Length)
	}
	var nodes []float64
	put := func(x float64) {
		if !slices.ContainsFunc(nodes, func(n float64) bool { return math.Abs(n-x) <= together*length }) {
			nodes = append(nodes, x)
		}
	}
	for _, s := range p.Supports {
		put(s.At)
	}
	for _, list := range [][]float64{stations, ends, places} { // the first keep their exact place
		for _, x := range list {
			put(x)
		}
	}
	slices.Sort(nodes)
	m := beamModel{nodes: nodes, stiffness: mat.NewSymDense(Freedoms*len(nodes), nil)}
	for i := range len(nodes) - 1 {
		middle := (nodes[i] + nodes[i+1]) / 2
		piece := 0
		for piece < len(p.Sections)-1 && middle > ends[piece+1] {
			piece++
		}
		m.addPiece(i, nodes[i+1]-nodes[i], p.Sections[piece], p.Modulus, p.Poisson)
	}
	for _, s := range p.Supports {
		n := Freedoms * m.node(s.At)
		for k, stiffness := range []float64{s.Axial, s.Y, s.Z, s.TurnY, s.TurnZ} {
			m.stiffness.SetSym(n+k, n+k, m.stiffness.At(n+k, n+k)+stiffness)
		}
	}
	return m
}

// node returns the node nearest to x.
func (m beamModel) node(x float64) int {
	best := 0
	for i, n := range m.nodes {
		if math.Abs(n-x) < math.Abs(m.nodes[best]-x) {
			best = i
		}
	}
	return best
}

// reach returns how the freedom of a place follows the freedoms of its node.
func (m beamModel) reach(x float64, freedom int) (rows [2]int, share [2]float64) {
	node := m.node(x)
	first, arm := Freedoms*node, x-m.nodes[node]
	rows, share = [2]int{first + freedom, first + freedom}, [2]float64{1, 0}
	switch freedom {
	case AlongY:
		rows[1], share[1] = first+AboutZ, arm
	case AlongZ:
		rows[1], share[1] = first+AboutY, -arm
	}
	return rows, share
}

func (m beamModel) addPiece(i int, l float64, s Section, e, nu float64) {
	hole := s.Inner / s.Outer
	area := math.Pi / 4 * s.Outer * s.Outer * (1 - hole*hole)
	inertia := math.Pi / 64 * math.Pow(s.Outer, 4) * (1 - math.Pow(hole, 4))
	h := (1 + hole*hole) * (1 + hole*hole)
	kappa := 6 * (1 + nu) * h / ((7+6*nu)*h + (20+12*nu)*hole*hole)
	windows := s.Windows
	if windows == 0 {
		windows = 1
	}
	phi := 12 * e * inertia / (kappa * e / (2 * (1 + nu)) * area * l * l)
	k := windows * e * inertia / (l * l * l * (1 + phi))
	a, b := Freedoms*i, Freedoms*(i+1)
	m.add(a+AlongX, b+AlongX, e*area/l)
	bend := [4][4]float64{
		{12, 6 * l, -12, 6 * l},
		{6 * l, (4 + phi) * l * l, -6 * l, (2 - phi) * l * l},
		{-12, -6 * l, 12, -6 * l},
		{6 * l, (2 - phi) * l * l, -6 * l, (4 + phi) * l * l},
	}
	for _, plane := range []struct {
		freedoms [4]int
		turn     float64 // sense of the turning against the slope of the deflection
	}{
		{[4]int{a + AlongY, a + AboutZ, b + AlongY, b + AboutZ}, 1},
		{[4]int{a + AlongZ, a + AboutY, b + AlongZ, b + AboutY}, -1},
	} {
		sense := [4]float64{1, plane.turn, 1, plane.turn}
		for r, fr := range plane.freedoms {
			for c, fc := range plane.freedoms {
				if fc >= fr {
					m.stiffness.SetSym(fr, fc, m.stiffness.At(fr, fc)+k*bend[r][c]*sense[r]*sense[c])
				}
			}
		}
	}
}

// add puts a spring between two freedoms.
func (m beamModel) add(a, b int, k float64) {
	m.stiffness.SetSym(a, a, m.stiffness.At(a, a)+k)
	m.stiffness.SetSym(b, b, m.stiffness.At(b, b)+k)
	m.stiffness.SetSym(a, b, m.stiffness.At(a, b)-k)
}

// condense takes every node but the stations out of the equations.
func (m beamModel) condense(stations []float64) *mat.SymDense {
	var kept, gone []int
	for i := range m.nodes {
		list := &gone
		if slices.ContainsFunc(stations, func(x float64) bool { return m.node(x) == i }) {
			list = &kept
		}
		for k := range Freedoms {
			*list = append(*list, Freedoms*i+k)
		}
	}
	out := mat.NewSymDense(len(kept), nil)
	for i, a := range kept {
		for j, b := range kept[i:] {
			out.SetSym(i, i+j, m.stiffness.At(a, b))
		}
	}
	if len(gone) == 0 {
		return out
	}
	inside := mat.NewSymDense(len(gone), nil)
	across := mat.NewDense(len(gone), len(kept), nil)
	for i, a := range gone {
		for j, b := range gone[i:] {
			inside.SetSym(i, i+j, m.stiffness.At(a, b))
		}
		for j, b := range kept {
			across.Set(i, j, m.stiffness.At(a, b))
		}
	}
	// A shaft held at one station can move nowhere: this is positive.
	var solver mat.Cholesky
	solver.Factorize(inside)
	var moved, taken mat.Dense
	_ = solver.SolveTo(&moved, across)
	taken.Mul(across.T(), &moved)
	for i := range kept {
		for j := i; j < len(kept); j++ {
			out.SetSym(i, j, out.At(i, j)-(taken.At(i, j)+taken.At(j, i))/2)
		}
	}
	return out
}
