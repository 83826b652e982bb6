package assess

import (
	"math"

	"axlewright/axle"
	"axlewright/calc/bolt"
)

// adjusterUnwinds is thrust on the adjuster's thread against its lock, with
// only that part of the friction left which vibration spares.
func adjusterUnwinds(u *unit, n *notes) (limit, error) {
	a, lock := &u.axle.Casting.Adjuster, &u.axle.Casting.Lock
	torqueOf := func(thrust float64) float64 {
		r, err := bolt.AdjusterTorque(bolt.AdjusterParams{
			Thrust: thrust, Pitch: a.Pitch.Value, PitchDiameter: 2 * a.ThreadRadius.Value, FlankAngle: math.Pi / 6,
			Friction: a.FrictionKept.Value * a.FaceFriction.Value,
		})
		if err != nil {
			return math.NaN()
		}
		return r.Unwinding
	}
	perNewton := torqueOf(1)
	if math.IsNaN(perNewton) {
		_, err := bolt.AdjusterTorque(bolt.AdjusterParams{Thrust: 1, Pitch: a.Pitch.Value, PitchDiameter: 2 * a.ThreadRadius.Value, FlankAngle: math.Pi / 6})
		return nil, err
	}
	n.by("bolt.AdjusterTorque", "T/F", "unwinding torque for each newton of thrust; below zero it holds itself", perNewton, "m")
	n.say("F_lock", "what the lock stands", lock.Shear.Value, "N", lock.Name)
	return func(flank axle.Flank, torque float64, n *notes) (float64, float64) {
		thrust := math.Max(u.at(flank, nearAxial, torque), u.at(flank, farAxial, torque))
		force := math.Max(0, thrust*perNewton) / lock.Radius.Value
		n.say("F", "force on the lock", force, "N", "unwinding torque over the lock's radius")
		return force, lock.Shear.Value
	}, nil
}

// cupTurnsAdjuster is a cup that has begun to creep in its bore and drags the
// adjuster round. It happens only after the cap has let the cup go: links
// cascade.
func cupTurnsAdjuster(u *unit, n *notes) (limit, error) {
	a, lock := &u.axle.Casting.Adjuster, &u.axle.Casting.Lock
	share := u.axle.Casting.Cap.CreepShare.Value
	return func(flank axle.Flank, torque float64, n *notes) (float64, float64) {
		load := math.Max(u.at(flank, nearRadial, torque), u.at(flank, farRadial, torque))
		force := load * share * a.FaceFriction.Value * a.FaceRadius.Value / lock.Radius.Value
		n.by("bolt.CupDragTorque", "F", "force on the lock from a creeping cup", force, "N")
		return force, lock.Shear.Value
	}, nil
}
