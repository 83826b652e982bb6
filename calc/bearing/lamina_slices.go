package bearing

import (
	"math"

	"axlewright/calc/check"
)

// Profile says how the rollers are crowned.
type Profile string

const (
	Straight    Profile = "straight"    // no crown
	Logarithmic Profile = "logarithmic" // reference profile of ISO/TS 16281
)

// LaminaParams asks how the load is spread along each roller.
type LaminaParams struct {
	Rollers      Rollers      // roller set
	Facing       float64      // -, f: +1 where the rollers take load when the cone moves along the axis, −1 against it
	Displacement Displacement // of the cone in its cup, from touch of all rollers
	Laminae      int          // -, n_s: slices of a roller; 0 stands for 31; optional
	Profile      Profile      // name, crown of the rollers; empty stands for straight; optional
}

// LaminaResult is the load on every slice of every roller.
type LaminaResult struct {
	Loads       []float64 // N, q_jk: on each slice, roller after roller, each from the large end to the small end
	Rollers     []float64 // N, Q_j: on each roller
	Laminae     int       // -, n_s: slices of a roller
	MaxRoller   float64   // N, Q_max: on the hardest pressed roller
	MaxPressure float64   // Pa, p_max: greatest contact pressure, at the cone raceway
	Axial       float64   // N, F_a: force of all slices along the axis, on the cup
	Radial1     float64   // N, F_1: along the first radial direction
	Radial2     float64   // N, F_2: along the second radial direction
}

// LaminaLoads returns how the load of a tapered roller bearing is spread over
// its rollers and along each of them.
//
//	q_jk = (c_L/n_s)·δ_jk^(10/9)
//	δ_jk = δ_j(s_k) − 2·P(s_k), only where positive
//	P(s) = 0.00035·D_we·ln(1/(1 − (2·s/L_we)²)), zero for a straight roller
//	c_L = 35948·L_we^(8/9) with N and mm
//	p_max as ContactPressure on the cone, of the hardest pressed slice
//
// δ_j(s) is that of TaperedReaction. Slices have equal width and are taken at
// their middle. Life by slices depends on their number: keep it and do not rank on it.
// Valid for steel, rollers no longer than 2.5 diameters when crowned, 3 to 1000 slices.
// Errors: *check.RangeError outside that range.
// Source: ISO/TS 16281:2008, lamina model and reference profile (from memory);
// ContactPressure.
func LaminaLoads(p LaminaParams) (LaminaResult, error) {
	const fn = "bearing.LaminaLoads"
	if p.Laminae == 0 {
		p.Laminae = 31
	}
	row, err := NewRow(p.Rollers, p.Facing)
	if err != nil {
		return LaminaResult{}, err
	}
	d := p.Displacement
	if err := check.All(fn,
		check.Within("Laminae", float64(p.Laminae), 3, 1000),
		check.That("Profile", 0, p.Profile == "" || p.Profile == Straight || p.Profile == Logarithmic, "straight or logarithmic"),
		check.That("Rollers.Length", p.Rollers.Length, p.Profile != Logarithmic || p.Rollers.Length <= 2.5*p.Rollers.Diameter, "<= 2.5 diameters"),
		check.Finite("Displacement.Axial", d.Axial), check.Finite("Displacement.Radial1", d.Radial1),
		check.Finite("Displacement.Radial2", d.Radial2), check.Finite("Displacement.Tilt1", d.Tilt1),
		check.Finite("Displacement.Tilt2", d.Tilt2),
	); err != nil {
		return LaminaResult{}, err
	}
	u := [5]float64{d.Axial, d.Radial1, d.Radial2, d.Tilt1, d.Tilt2}
	result := LaminaResult{
		Loads:   make([]float64, row.count*p.Laminae),
		Rollers: make([]float64, row.count),
		Laminae: p.Laminae,
	}
	row.Slices(&u, result.Loads, p.Profile)
	peak := 0.0
	for j := range row.count {
		q := 0.0
		for _, slice := range result.Loads[j*p.Laminae : (j+1)*p.Laminae] {
			q += slice
			peak = max(peak, slice)
		}
		result.Rollers[j] = q
		result.MaxRoller = max(result.MaxRoller, q)
		result.Axial += row.facing * row.sin * q
		result.Radial1 += row.cos * row.c[j] * q
		result.Radial2 += row.cos * row.s[j] * q
	}
	result.MaxPressure = conePressure(p.Rollers, peak*float64(p.Laminae)/p.Rollers.Length)
	return result, nil
}

// Slices sets loads to the load of every slice of every roller for the
// displacement u, roller after roller, as LaminaLoads; the number of slices is
// what fits. It allocates nothing.
func (r *Row) Slices(u *[5]float64, loads []float64, profile Profile) {
	laminae := len(loads) / r.count
	width := 2 * r.half / float64(laminae)
	for j := range r.count {
		a, b := r.approach(u, j)
		for k := range laminae {
			s := (float64(k)+0.5)*width - r.half
			delta := a + b*s
			if profile == Logarithmic && delta > 0 {
				x := s / r.half
				delta += 2 * 0.00035 * r.diameter * math.Log1p(-x*x)
			}
			q := 0.0
			if delta > 0 {
				q = r.kappa * width * delta * ninthRoot(delta)
			}
			loads[j*laminae+k] = q
		}
	}
}

// conePressure is the greatest Hertz pressure of a line load (N/m) between
// roller and cone raceway, both steel. The cone is convex and so the worse one.
func conePressure(r Rollers, perLength float64) float64 {
	const modulus, poisson = 206e9, 0.3
	curvature := 2/r.Diameter + 2/(r.PitchDiameter/math.Cos(r.CupAngle)-r.Diameter)
	return math.Sqrt(perLength * curvature * modulus / (2 * math.Pi * (1 - poisson*poisson)))
}
