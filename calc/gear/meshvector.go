package gear

import "math"

// MeshVectors places the tooth force in the frame of the package.
type MeshVectors struct {
	MeanPoint       Place     // place of the mean point
	OnPinion        Force     // force on the pinion
	OnWheel         Force     // force on the crown wheel, the reverse of that on the pinion
	PinionAxisZ     float64   // m, place of the pinion axis along z; −a for a left-hand pinion, +a for a right-hand one
	PinionTorqueX   float64   // N·m, moment of the tooth force on the pinion about its own axis, along +x
	WheelTorqueY    float64   // N·m, moment of the tooth force on the wheel about its own axis, along +y
	FlankNormal     Direction // square to the loaded flank, in the direction of the force on the wheel
	PitchNormal     Direction // square to the pitch plane, from the wheel into the pinion
	ToothDirection  Direction // along the tooth in the pitch plane, outward (toe to heel)
	PinionGenerator Direction // along the pinion's pitch cone, away from its apex
	WheelGenerator  Direction // along the wheel's pitch cone, away from its apex
}

// MeshForceVectors returns the tooth force on both members as vectors, with the
// mean point they act at, built from the geometry of the flank and not from the
// components of MeshForces.
//
//	F_wheel = F_n·(cos α_n·(±n_t) − sin α_n·n)
//	n_t = t × n for a right-hand wheel, n × t for a left-hand one
//	F_pinion = −F_wheel
//
// Here n is the normal of the pitch plane, from the wheel into the pinion, and
// t runs along the tooth, outward; plus is for drive, minus for coast. The drive
// flank of a right-hand wheel is pushed along −z and turns the wheel about +y;
// the coast flank and the other hand each reverse that.
//
// Valid for axes at a right angle, no friction, all load at the mean point.
// Errors: *check.RangeError as MeshForces.
// Source: derived from the pitch plane of ISO 23509:2016, annex A, with the hands
// of ISO 1122-1 (both from memory).
func MeshForceVectors(p MeshParams) (MeshVectors, error) {
	if err := p.valid("gear.MeshForceVectors"); err != nil {
		return MeshVectors{}, err
	}
	f := p.Cones.frame(p.PinionHand)
	alpha := p.loadedPressureAngle()
	flank := f.flankNormal(p.Flank, alpha)
	onWheel := flank.times(p.WheelTorque / (p.Cones.WheelMeanRadius * math.Cos(alpha) * math.Cos(p.Cones.WheelSpiral)))
	onPinion := onWheel.times(-1)
	fromPinionAxis := f.mean.plus(vector{Z: -f.pinionAxisZ})
	return MeshVectors{
		MeanPoint:       Place(f.mean),
		OnPinion:        Force(onPinion),
		OnWheel:         Force(onWheel),
		PinionAxisZ:     f.pinionAxisZ,
		PinionTorqueX:   fromPinionAxis.cross(onPinion).X,
		WheelTorqueY:    f.mean.cross(onWheel).Y,
		FlankNormal:     Direction(flank),
		PitchNormal:     Direction(f.normal),
		ToothDirection:  Direction(f.tooth),
		PinionGenerator: Direction(f.pinionGenerator),
		WheelGenerator:  Direction(f.wheelGenerator),
	}, nil
}

// meanFrame is the pitch plane at the mean point, in the frame of the package.
type meanFrame struct {
	mean, normal, tooth             vector
	pinionGenerator, wheelGenerator vector
	pinionAxisZ                     float64
	hand                            Hand
}

// frame is worked for a right-hand pinion, whose axis lies at z = +a, and
// mirrored for a left-hand one.
func (c PitchCones) frame(pinionHand Hand) meanFrame {
	sin1, cos1 := math.Sincos(c.PinionPitchAngle)
	sin2, cos2 := math.Sincos(c.WheelPitchAngle)
	sinEta := cos1 * math.Sin(c.OffsetAngle) // η turns the mean point about the wheel axis, towards the pinion
	cosEta := sin1 / cos2
	sinB, cosB := math.Sincos(c.WheelSpiral)

	normal := vector{cos2 * cosEta, -sin2, cos2 * sinEta}
	generator := vector{sin2 * cosEta, cos2, sin2 * sinEta}
	f := meanFrame{
		mean:            vector{c.WheelMeanRadius * cosEta, c.PinionMeanRadius * sin2 / cos1, c.WheelMeanRadius * sinEta},
		normal:          normal,
		pinionGenerator: vector{cos1, sin1 * sin2 / cos1, -sin1 * cos2 * sinEta / cos1},
		wheelGenerator:  generator,
		// a left-hand wheel's tooth leans anticlockwise from the generator, seen from the pinion
		tooth:       generator.times(cosB).plus(normal.cross(generator).times(sinB)),
		pinionAxisZ: c.Offset,
		hand:        pinionHand,
	}
	if pinionHand == LeftHand {
		for _, v := range []*vector{&f.mean, &f.normal, &f.pinionGenerator, &f.wheelGenerator, &f.tooth} {
			*v = v.mirrored()
		}
		f.pinionAxisZ = -c.Offset
	}
	return f
}

// flankNormal is the unit vector square to a flank, in the direction in which
// the pinion pushes the wheel.
func (f meanFrame) flankNormal(flank Flank, alpha float64) vector {
	across := f.normal.cross(f.tooth) // the drive side of a left-hand wheel
	if (f.hand == LeftHand) != (flank == Coast) {
		across = across.times(-1)
	}
	return across.times(math.Cos(alpha)).plus(f.normal.times(-math.Sin(alpha)))
}
