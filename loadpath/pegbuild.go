package loadpath

import (
	"math"

	"axlewright/calc/check"
	"axlewright/calc/ring"
)

// PegBuild is what stands behind the pad, one after the other.
type PegBuild struct {
	ScrewArea    float64               // m², stress area of the screw
	ScrewLength  float64               // m, loaded length from pad to thread
	ScrewModulus float64               // Pa
	Thread       float64               // N/m, thread and its boss; zero for rigid
	Wall         float64               // N/m, casting behind the plate; zero where a Casting holds it, or for rigid
	Plate        ring.PatchPlateParams // one plate under the peg; its Force is not used
	Plates       int                   // -, loose plates one on the other; zero where there is none
}

// Stiffness returns the stiffness of the peg, springs in series. Plates that
// lie loose on each other bend side by side and add up.
//
//	1/k = L/(E·A) + 1/k_thread + 1/k_wall + 1/(n·k_plate)
func (b PegBuild) Stiffness() (float64, error) {
	if err := check.All("loadpath.PegBuild.Stiffness",
		check.Positive("ScrewArea", b.ScrewArea),
		check.Positive("ScrewLength", b.ScrewLength),
		check.Positive("ScrewModulus", b.ScrewModulus),
		check.NotNegative("Thread", b.Thread),
		check.NotNegative("Wall", b.Wall),
		check.Within("Plates", float64(b.Plates), 0, 8),
	); err != nil {
		return 0, err
	}
	give := b.ScrewLength / (b.ScrewArea * b.ScrewModulus)
	for _, k := range []float64{b.Thread, b.Wall} {
		if k > 0 {
			give += 1 / k
		}
	}
	if b.Plates > 0 {
		plate := b.Plate
		plate.Force = 1e4 // the plate is linear
		p, err := ring.PatchPlate(plate)
		if err != nil {
			return 0, err
		}
		give += 1 / (p.Stiffness * float64(b.Plates))
	}
	if math.IsInf(give, 0) {
		return 0, &BadAxle{Field: "PegBuild", Reason: "has no stiffness"}
	}
	return 1 / give, nil
}
