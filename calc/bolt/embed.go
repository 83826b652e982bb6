package bolt

import (
	"fmt"

	"axlewright/calc/check"
)

// Roughness is a band of the mean roughness Rz of the surfaces in a joint.
type Roughness string

// The bands of the guideline, Rz in µm.
const (
	Smooth Roughness = "below 10"
	Turned Roughness = "10 to 40"
	Rough  Roughness = "40 to 160"
)

// LoadKind says how a joint is loaded in service.
type LoadKind string

// A joint that a bolt is pulled in, or one that is pushed sideways.
const (
	Axial LoadKind = "axial"
	Shear LoadKind = "shear"
)

// Amounts in µm: loaded thread, each head or nut face, each inner interface.
var embeddings = map[Roughness]map[LoadKind][3]float64{
	Smooth: {Axial: {3, 2.5, 1.5}, Shear: {3, 3, 2}},
	Turned: {Axial: {3, 3, 2}, Shear: {3, 4.5, 2.5}},
	Rough:  {Axial: {3, 4, 3}, Shear: {3, 6.5, 3.5}},
}

// EmbeddingParams counts the surfaces that bed in.
type EmbeddingParams struct {
	Roughness  Roughness // name, band of Rz: below 10, 10 to 40, 40 to 160 µm
	Load       LoadKind  // name, axial or shear
	Threads    int       // -, loaded threads: 1 for a bolt in a tapped hole or with one nut
	Faces      int       // -, bearing faces of head and nut
	Interfaces int       // -, inner interfaces between clamped parts
}

// EmbeddingAmount returns how much a joint beds in after tightening.
//
//	f_Z = n_thread·f_thread + n_face·f_face + n_interface·f_interface
//
//	f_Z  amount of embedding, m
//
// Valid for solid steel and iron parts without coatings or gaskets, short joints.
// Errors: *check.RangeError for an unknown band or load, a negative count or no surface at all.
// Source: VDI 2230-1:2015, table 5 (from memory).
func EmbeddingAmount(p EmbeddingParams) (float64, error) {
	amounts, known := embeddings[p.Roughness][p.Load]
	if err := check.All("bolt.EmbeddingAmount",
		check.That("Roughness", 0, known, fmt.Sprintf("a band and a load of the table, not %q and %q", p.Roughness, p.Load)),
		check.NotNegative("Threads", float64(p.Threads)),
		check.NotNegative("Faces", float64(p.Faces)),
		check.NotNegative("Interfaces", float64(p.Interfaces)),
		check.That("Interfaces", float64(p.Interfaces), p.Threads+p.Faces+p.Interfaces > 0, "at least one surface"),
	); err != nil {
		return 0, err
	}
	micrometres := float64(p.Threads)*amounts[0] + float64(p.Faces)*amounts[1] + float64(p.Interfaces)*amounts[2]
	return micrometres * 1e-6, nil
}

// EmbeddingLoss returns the preload that a joint loses when it beds in.
//
//	F_Z = f_Z/(δ_S + δ_P)
//
//	amount      amount of embedding f_Z, m
//	resilience  resilience of bolt and clamped parts together δ_S + δ_P, m/N
//	F_Z         loss of preload, N
//
// Valid for elastic joints; short stiff ones lose most.
// Errors: *check.RangeError for a negative amount or a resilience of zero or below.
// Source: VDI 2230-1:2015, 5.4.2.1 (from memory).
func EmbeddingLoss(amount, resilience float64) (float64, error) {
	if err := check.All("bolt.EmbeddingLoss",
		check.NotNegative("amount", amount), check.Positive("resilience", resilience),
	); err != nil {
		return 0, err
	}
	return amount / resilience, nil
}
