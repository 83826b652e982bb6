package weldplan

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// A line is where a run of weld lies: straight, or an arc through three points.
type line struct {
	from, to r3.Vec
	arc      bool
	centre   r3.Vec // of an arc
	u, v     r3.Vec // unit vectors in its plane: u to the start, v the way it runs
	radius   float64
	sweep    float64 // rad
	length   float64
}

// lineOf is the line of a run. ok is false where it has no length, or its three
// points lie on one straight line.
func lineOf(r *Run) (l line, ok bool) {
	l = line{from: r.From.At, to: r.To.At}
	chord := r3.Sub(l.to, l.from)
	if !r.Through.Given {
		l.length = r3.Norm(chord)
		return l, l.length > 0
	}
	// Centre of the circle through three points.
	a, b := r3.Sub(r.Through.At, l.from), chord
	normal := r3.Cross(a, b)
	size := r3.Norm2(normal)
	if !(size > 1e-12*r3.Norm2(a)*r3.Norm2(b)) || size == 0 {
		return l, false
	}
	middle := r3.Scale(1/(2*size), r3.Cross(r3.Sub(r3.Scale(r3.Norm2(a), b), r3.Scale(r3.Norm2(b), a)), normal))
	l.arc = true
	l.centre = r3.Add(l.from, middle)
	l.radius = r3.Norm(middle)
	l.u = r3.Scale(-1/l.radius, middle)
	l.v = r3.Cross(r3.Unit(normal), l.u)
	angle := func(p r3.Vec) float64 {
		d := r3.Sub(p, l.centre)
		at := math.Atan2(r3.Dot(d, l.v), r3.Dot(d, l.u))
		if at < 0 {
			at += 2 * math.Pi
		}
		return at
	}
	l.sweep = angle(l.to)
	if angle(r.Through.At) > l.sweep { // the other way round
		l.v = r3.Scale(-1, l.v)
		l.sweep = 2*math.Pi - l.sweep
	}
	l.length = l.radius * l.sweep
	return l, l.length > 0
}

// at is the point a share of the way along.
func (l line) at(share float64) r3.Vec {
	if !l.arc {
		return r3.Add(l.from, r3.Scale(share, r3.Sub(l.to, l.from)))
	}
	s, c := math.Sincos(share * l.sweep)
	return r3.Add(l.centre, r3.Add(r3.Scale(l.radius*c, l.u), r3.Scale(l.radius*s, l.v)))
}

// along is the unit vector the way the run goes there.
func (l line) along(share float64) r3.Vec {
	if !l.arc {
		return r3.Unit(r3.Sub(l.to, l.from))
	}
	s, c := math.Sincos(share * l.sweep)
	return r3.Add(r3.Scale(-s, l.u), r3.Scale(c, l.v))
}
