package loadpath

import "math"

// capAxis is the caps' direction in the side bearings' radial directions 1 and
// 2, which are z and x.
func (a *Axle) capAxis() (c1, c2 float64) {
	length := math.Hypot(a.CapDirection.Z, a.CapDirection.X)
	return a.CapDirection.Z / length, a.CapDirection.X / length
}

// compliance of a side seat along the cap, pressed into the casting and drawn
// towards the cap.
func (s *SideSeat) compliances() (inward, toward float64) {
	return 1 / s.Inward, 1/s.Leg + 1/s.Cap
}

// diagonal enters a pinion seat without cross terms.
func (s *structure) diagonal(first int, seat *Seat) {
	s.seat[first][first] = 1 / seat.Axial
	s.seat[first+1][first+1] = 1 / seat.Radial
	s.seat[first+2][first+2] = 1 / seat.Radial
	s.seat[first+3][first+3] = 1 / seat.Tilt
	s.seat[first+4][first+4] = 1 / seat.Tilt
}

// sided enters a side seat: half of what it gives in its stiffer direction is
// fixed, the rest is a spring of its own whose stiffness depends on its sign.
func (s *structure) sided(first, extra int, seat *SideSeat, c1, c2 float64) (inward, toward float64) {
	in, to := seat.compliances()
	fixed := min(in, to) / 2
	across := 1 / seat.Across
	s.seat[first][first] = 1 / seat.Axial
	s.seat[first+1][first+1] = fixed*c1*c1 + across*c2*c2
	s.seat[first+2][first+2] = fixed*c2*c2 + across*c1*c1
	s.seat[first+1][first+2] = (fixed - across) * c1 * c2
	s.seat[first+2][first+1] = s.seat[first+1][first+2]
	s.seat[first+3][first+3] = 1 / seat.Tilt
	s.seat[first+4][first+4] = 1 / seat.Tilt
	s.extra[first+1][extra], s.extra[first+2][extra] = c1, c2
	return 1 / (in - fixed), 1 / (to - fixed)
}
