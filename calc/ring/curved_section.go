package ring

import "math"

// curvedSection is a section of a curved beam in layers from the bore outwards,
// reduced to its elastic constants. A force N acts at the centroid, weighted by
// modulus; a moment M is positive where it straightens the beam. Then, for each
// radian of arc,
//
//	stretch of the centroid line = N·R/EA − M/EA
//	loss of angle                = M/B − N/EA
//
// with EA and R the same whether the layers are bonded or slide; only the
// bending constant B differs.
type curvedSection struct {
	layers   []curvedLayer
	stretch  float64 // EA, N
	shear    float64 // GA, N
	centroid float64 // R, m
	over     float64 // ∫E·dA/r, N/m
	loose    float64 // B of layers that slide, N·m
	solid    float64 // B of one piece, N·m
	bend     float64 // B with the bond given, N·m
}

type curvedLayer struct {
	inner, outer float64 // radii, m
	modulus      float64 // Pa
	area         float64 // m²
	overRadius   float64 // ∫dA/r, m
	centroid     float64 // m
}

// stiffness returns the layer's own bending constant.
func (l curvedLayer) stiffness() float64 {
	return l.modulus * l.area * (l.centroid*l.overRadius - l.area) / l.overRadius
}

func newCurvedSection(bore float64, layers []SectionLayer, bond, nu float64) curvedSection {
	var s curvedSection
	var first float64
	at := bore
	for _, l := range layers {
		c := curvedLayer{inner: at, outer: at + l.Thickness, modulus: l.Modulus}
		at = c.outer
		c.area = l.Width * l.Thickness
		c.overRadius = l.Width * math.Log(c.outer/c.inner)
		c.centroid = (c.inner + c.outer) / 2
		s.layers = append(s.layers, c)
		s.stretch += l.Modulus * c.area
		s.shear += l.Modulus / (2 * (1 + nu)) * c.area
		s.loose += c.stiffness()
		first += l.Modulus * c.area * c.centroid
		s.over += l.Modulus * c.overRadius
	}
	s.centroid = first / s.stretch
	s.solid = s.stretch * (s.centroid*s.over - s.stretch) / s.over
	s.bend = s.loose + bond*(s.solid-s.loose)
	return s
}

// stress returns the stress in layer i at radius r.
func (s curvedSection) stress(i int, r, force, moment float64) float64 {
	l := s.layers[i]
	share := solidShare(s.bend, s.loose, s.solid)
	// One piece: ε = (A0 + ω·r)/r with A0 and ω from the sums over all layers.
	solid := l.modulus * moment * (s.stretch - r*s.over) / (s.stretch * r * (s.centroid*s.over - s.stretch))
	own := moment * l.stiffness() / s.loose
	loose := own * (l.area - r*l.overRadius) / (l.area * r * (l.centroid*l.overRadius - l.area))
	return l.modulus*force/s.stretch + share*solid + (1-share)*loose
}
