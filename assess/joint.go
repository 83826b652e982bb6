package assess

import (
	"fmt"
	"math"

	"axlewright/axle"
	"axlewright/calc/bolt"
)

// boltModulus is Young's modulus of bolt steel, Pa.
const boltModulus = 205e9

// feltByTheFitter is the share of its yield up to which a bolt can be tightened
// by torque before it gives under the spanner. Common practice, no source.
const feltByTheFitter = 0.9

// A joint is one bolt of a bolted joint, tightened and settled.
type joint struct {
	size      bolt.ThreadSizeResult
	thread    bolt.ThreadResult
	strength  bolt.StrengthResult
	area      float64 // m², stress area
	assembled float64 // N, as tightened
	settled   float64 // N, after embedding
	factor    float64 // -, load factor Φ
}

// newJoint tightens one bolt by its torque and nut factor. modulus is Young's
// modulus of what it clamps, in Pa; plane says where the load enters (n of VDI
// 2230).
func newJoint(b axle.Bolts, modulus, plane float64, n *notes) (joint, error) {
	var j joint
	var err error
	if j.size, err = axle.ThreadSize(b.Thread); err != nil {
		return j, err
	}
	if j.strength, err = axle.BoltStrength(b.Grade, j.size); err != nil {
		return j, err
	}
	d := j.size.Diameter
	if j.thread, err = bolt.ThreadGeometry(j.size.Form, d, j.size.Pitch); err != nil {
		return j, err
	}
	if j.area, err = stressArea(j.size); err != nil {
		return j, err
	}
	asTightened, err := bolt.NutFactorPreload(b.Nut.Value, d, b.Torque.Value)
	if err != nil {
		return j, err
	}
	n.by("bolt.NutFactorPreload", "F_M", fmt.Sprintf("preload of one %s %s bolt tightened to %s", b.Thread, b.Grade, b.Torque.Text), asTightened, "N")
	j.assembled = math.Min(asTightened, feltByTheFitter*j.strength.Yield*j.area)
	if j.assembled < asTightened {
		n.say("F_M", "preload as it can be: past this the bolt gives under the spanner and is renewed", j.assembled, "N", "0.9 of yield, common practice, no source")
	}
	shank, err := bolt.BoltResilience(boltSpring(d, j.thread, b.Grip.Value, modulus))
	if err != nil {
		return j, err
	}
	members, err := bolt.MemberResilience(clampedUnder(d, b.Grip.Value, modulus))
	if err != nil {
		return j, err
	}
	n.by("bolt.BoltResilience", "δ_S", "give of the bolt", shank.Resilience, "m/N")
	n.by("bolt.MemberResilience", "δ_P", "give of what it clamps", members.Resilience, "m/N")
	loss, err := bolt.EmbeddingLoss(b.Settling.Value, shank.Resilience+members.Resilience)
	if err != nil {
		return j, err
	}
	n.by("bolt.EmbeddingLoss", "F_Z", "preload lost as thread and faces settle", loss, "N")
	j.settled = math.Max(0, j.assembled-loss)
	if j.factor, err = bolt.LoadFactor(bolt.LoadFactorParams{Bolt: shank.Resilience, Members: members.Resilience, Introduction: plane}); err != nil {
		return j, err
	}
	n.by("bolt.LoadFactor", "Φ", "share of a working load that the bolt feels", j.factor, "-")
	return j, nil
}

// stressArea is the tensile stress area by the thread's own standard.
func stressArea(size bolt.ThreadSizeResult) (float64, error) {
	switch size.Form {
	case bolt.Unified:
		return bolt.UnifiedStressArea(size.Diameter, size.Pitch)
	case bolt.Whitworth:
		return bolt.WhitworthArea(bolt.CoreRule, size.Diameter, size.Pitch)
	}
	return bolt.StressArea(size.Diameter, size.Pitch)
}

// boltSpring is a hexagon bolt in a tapped hole as a row of springs.
func boltSpring(d float64, thread bolt.ThreadResult, grip, modulus float64) bolt.BoltResilienceParams {
	return bolt.BoltResilienceParams{
		Sections: []bolt.Section{{Length: grip, Diameter: d}}, Diameter: d, Core: thread.CoreDiameter, Modulus: boltModulus,
		Head: bolt.Hexagon, Seat: bolt.TappedHole, SeatModulus: modulus,
	}
}

// clampedUnder is what a bolt clamps: usual sizes of head, hole and boss for
// its diameter.
func clampedUnder(d, grip, modulus float64) bolt.MemberParams {
	return bolt.MemberParams{Bearing: 1.4 * d, Hole: 1.1 * d, Outside: 2 * d, Clamp: grip, Modulus: modulus, Seat: bolt.TappedHole}
}

// boltForce is what the bolt carries under a working load along it: with the
// joint closed its share comes on top of the preload, once open all of it.
func (j joint) boltForce(load float64) float64 {
	return math.Max(j.assembled+j.factor*load, load)
}

// clamp is what is left of the clamp under a working load.
func (j joint) clamp(load float64) float64 {
	return math.Max(0, j.settled-(1-j.factor)*load)
}
