package loadpath

import (
	"axlewright/calc/gear"
)

// NewMesh takes the mean point and the direction of the tooth force on either
// flank from the pitch cones. Angles are in rad.
func NewMesh(cones gear.PitchCones, hand gear.Hand, driveAngle, coastAngle float64) (Mesh, error) {
	m := Mesh{Ratio: float64(cones.WheelTeeth) / float64(cones.PinionTeeth)}
	for _, flank := range []Flank{Drive, Coast} {
		v, err := gear.MeshForceVectors(gear.MeshParams{
			Cones: cones, WheelTorque: 1, Flank: flank, PinionHand: hand,
			DrivePressureAngle: driveAngle, CoastPressureAngle: coastAngle,
		})
		if err != nil {
			return Mesh{}, err
		}
		force := Vector(v.OnWheel)
		m.MeanPoint, m.PinionAxisZ = Vector(v.MeanPoint), v.PinionAxisZ
		if flank == Drive {
			m.Drive = force
		} else {
			m.Coast = force
		}
	}
	return m, nil
}

// onWheel is the tooth force on the crown wheel per torque at it.
func (m *Mesh) onWheel(flank Flank) Vector {
	if flank == Coast {
		return m.Coast
	}
	return m.Drive
}
