package loadpath

import "math"

func (a Vector) plus(b Vector) Vector   { return Vector{a.X + b.X, a.Y + b.Y, a.Z + b.Z} }
func (a Vector) minus(b Vector) Vector  { return Vector{a.X - b.X, a.Y - b.Y, a.Z - b.Z} }
func (a Vector) times(k float64) Vector { return Vector{a.X * k, a.Y * k, a.Z * k} }
func (a Vector) dot(b Vector) float64   { return a.X*b.X + a.Y*b.Y + a.Z*b.Z }
func (a Vector) norm() float64          { return math.Sqrt(a.dot(a)) }
func (a Vector) cross(b Vector) Vector {
	return Vector{a.Y*b.Z - a.Z*b.Y, a.Z*b.X - a.X*b.Z, a.X*b.Y - a.Y*b.X}
}

// member says whose axis a local frame follows. Local components run axial,
// radial 1, radial 2 and are right-handed: x, y, z for the pinion and y, z, x
// for the wheel.
type member int

const (
	pinionShaft member = iota
	wheelShaft
)

func (m member) local(v Vector) (a, r1, r2 float64) {
	if m == pinionShaft {
		return v.X, v.Y, v.Z
	}
	return v.Y, v.Z, v.X
}

func (m member) global(a, r1, r2 float64) Vector {
	if m == pinionShaft {
		return Vector{a, r1, r2}
	}
	return Vector{r2, a, r1}
}

// wrench is force and moment at a point of a shaft, without the moment about
// its own axis: axial, radial 1, radial 2, moment 1, moment 2.
type wrench [5]float64

// at moves a force that acts at r from the point to the point.
func (m member) wrench(force, r Vector) wrench {
	var w wrench
	w[0], w[1], w[2] = m.local(force)
	_, w[3], w[4] = m.local(r.cross(force))
	return w
}
