package loadpath

// AxisMovement is how the members' axes have moved against each other, the four
// errors of position that setting-up knows. They are taken at the crossing
// point; what a member turns about its own axis is no error and is left out.
type AxisMovement struct {
	Wheel  float64 // m, mounting distance of the wheel, positive where it has grown
	Pinion float64 // m, mounting distance of the pinion, positive where it has grown
	Offset float64 // m, positive where the offset has grown; with zero offset, pinion along +z
	Angle  float64 // rad, positive where the angle between the axes has grown
}

// axisMovement carries the motion of the members at the mean point to their axes.
func (a *Axle) axisMovement(pinion, wheel *Motion) AxisMovement {
	turn := pinion.Turn.minus(wheel.Turn)
	at := pinion.Shift.minus(wheel.Shift).minus(turn.cross(a.Mesh.MeanPoint)) // at the crossing point
	// Turning about the pinion's own axis, which passes the crossing point at a
	// distance, shows there as a shift along y.
	at.Y -= turn.X * a.Mesh.PinionAxisZ
	m := AxisMovement{Wheel: -at.Y, Pinion: at.X, Offset: at.Z, Angle: -turn.Z}
	if a.Mesh.PinionAxisZ < 0 {
		m.Offset = -m.Offset
	}
	return m
}
