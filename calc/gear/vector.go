package gear

// Place is a point in the frame of the package.
type Place struct {
	X float64 // m, along the pinion axis, out of the nose
	Y float64 // m, along the crown-wheel axis, from the pinion towards the back of the wheel
	Z float64 // m, square to both, z = x × y
}

// Force is a force in the frame of the package.
type Force struct {
	X float64 // N, along the pinion axis, out of the nose
	Y float64 // N, along the crown-wheel axis, from the pinion towards the back of the wheel
	Z float64 // N, square to both, z = x × y
}

// Direction is a unit vector in the frame of the package.
type Direction struct {
	X float64 // -, along the pinion axis, out of the nose
	Y float64 // -, along the crown-wheel axis, from the pinion towards the back of the wheel
	Z float64 // -, square to both, z = x × y
}

// vector does the arithmetic of the three; their conversion is free.
type vector struct{ X, Y, Z float64 }

func (a vector) plus(b vector) vector   { return vector{a.X + b.X, a.Y + b.Y, a.Z + b.Z} }
func (a vector) times(k float64) vector { return vector{a.X * k, a.Y * k, a.Z * k} }
func (a vector) dot(b vector) float64   { return a.X*b.X + a.Y*b.Y + a.Z*b.Z }
func (a vector) cross(b vector) vector {
	return vector{a.Y*b.Z - a.Z*b.Y, a.Z*b.X - a.X*b.Z, a.X*b.Y - a.Y*b.X}
}

// mirrored turns a right-hand pair into a left-hand one.
func (a vector) mirrored() vector { return vector{a.X, a.Y, -a.Z} }
