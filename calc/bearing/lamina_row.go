package bearing

import (
	"math"

	"axlewright/calc/check"
)

// MaxRollers is the largest number of rollers of a Row.
const MaxRollers = 64

// Displacement is how the cone of a bearing has moved in its cup from the place
// where all rollers just touch, at the centre of the rollers. Axis and radial
// directions 1 and 2 are right-handed in that order.
type Displacement struct {
	Axial   float64 // m, u_a: along the axis
	Radial1 float64 // m, u_1: along the first radial direction
	Radial2 float64 // m, u_2: along the second radial direction
	Tilt1   float64 // rad, θ_1: turn about the first radial direction
	Tilt2   float64 // rad, θ_2: turn about the second radial direction
}

// ReactionResult is what the rollers do to the cup; the cone feels the reverse.
type ReactionResult struct {
	Axial     float64   // N, F_a: force along the axis
	Radial1   float64   // N, F_1: force along the first radial direction
	Radial2   float64   // N, F_2: force along the second radial direction
	Moment1   float64   // N·m, M_1: about the first radial direction, at the centre of the rollers
	Moment2   float64   // N·m, M_2: about the second radial direction
	MaxRoller float64   // N, Q_max: load on the hardest pressed roller
	Loaded    int       // -, rollers that carry load
	Stiffness []float64 // N/m, five rows of five: derivatives by axial, radial 1, 2, tilt 1, 2; N/rad, N·m/m and N·m/rad where angles enter
}

// TaperedReaction returns what the rollers of a tapered roller bearing do to
// the cup for a given displacement of the cone, with tilts.
//
//	F = ∂U/∂u,  M = ∂U/∂θ,  U = Σ_j ∫ (c_L/L_we)·δ_j(s)^(19/9)·(9/19) ds
//	δ_j(s) = f·u_a·sin α + (u_1·cos ψ_j + u_2·sin ψ_j)·cos α + f·θ_j·(D_pw/2·sin α − s)
//	θ_j = θ_1·sin ψ_j − θ_2·cos ψ_j,  −L_we/2 <= s <= L_we/2, only where δ_j(s) > 0
//	c_L = 35948·L_we^(8/9) with N and mm
//
//	r       roller set
//	facing  f: +1 where the rollers take load when the cone moves along the axis, −1 against it, -
//	d       displacement of the cone in its cup
//
// The roller is cylindrical along its length (no crown), the integral along it
// is exact, and a part of a roller that has lifted carries nothing. Contact
// acts square to the cup's raceway; the rib is left out.
// Valid for steel rings and rollers, small movements, up to 64 rollers.
// Errors: *check.RangeError outside that range.
// Source: lamina model of ISO/TS 16281:2008 (constant from memory), in the
// limit of many laminae; kinematics derived.
func TaperedReaction(r Rollers, facing float64, d Displacement) (ReactionResult, error) {
	row, err := NewRow(r, facing)
	if err != nil {
		return ReactionResult{}, err
	}
	if err := check.All("bearing.TaperedReaction",
		check.Finite("Axial", d.Axial), check.Finite("Radial1", d.Radial1), check.Finite("Radial2", d.Radial2),
		check.Finite("Tilt1", d.Tilt1), check.Finite("Tilt2", d.Tilt2),
	); err != nil {
		return ReactionResult{}, err
	}
	u := [5]float64{d.Axial, d.Radial1, d.Radial2, d.Tilt1, d.Tilt2}
	var f [5]float64
	var k [25]float64
	c := row.Reaction(&u, &f, &k)
	return ReactionResult{
		Axial: f[0], Radial1: f[1], Radial2: f[2], Moment1: f[3], Moment2: f[4],
		MaxRoller: c.MaxRoller, Loaded: c.Loaded, Stiffness: k[:],
	}, nil
}

// Row is a roller set made ready for many evaluations. It is a value without
// pointers: copying it copies all, and using it allocates nothing.
type Row struct {
	count    int
	facing   float64
	sin, cos float64 // of the cup angle
	arm      float64 // D_pw/2·sin α
	half     float64 // L_we/2
	kappa    float64 // c_L/L_we
	diameter float64 // D_we
	c, s     [MaxRollers]float64
}

// NewRow prepares a roller set, the first roller on the first radial direction.
//
//	κ = c_L/L_we
//	ψ_j = 2·π·j/Z
//
//	r       roller set
//	facing  +1 where the rollers take load when the cone moves along the axis, −1 against it, -
//
// Valid for 3 to 64 rollers that fit round the pitch circle.
// Errors: *check.RangeError outside that range.
// Source: ISO/TS 16281:2008 (from memory).
func NewRow(r Rollers, facing float64) (Row, error) {
	const fn = "bearing.NewRow"
	if err := r.check(fn); err != nil {
		return Row{}, err
	}
	if err := check.All(fn,
		check.That("Count", float64(r.Count), r.Count <= MaxRollers, "<= 64"),
		check.That("facing", facing, facing == 1 || facing == -1, "1 or -1"),
	); err != nil {
		return Row{}, err
	}
	row := Row{count: r.Count, facing: facing, half: r.Length / 2, diameter: r.Diameter, kappa: rollerConstant(r.Length) / r.Length}
	row.sin, row.cos = math.Sincos(r.CupAngle)
	row.arm = r.PitchDiameter / 2 * row.sin
	for j := range r.Count {
		row.s[j], row.c[j] = math.Sincos(2 * math.Pi * float64(j) / float64(r.Count))
	}
	return row, nil
}

// Contact says how the rollers of a row take their load.
type Contact struct {
	Energy    float64 // N·m, stored in the contacts
	MaxRoller float64 // N, on the hardest pressed roller
	Loaded    int     // -, rollers that carry load
}

// Reaction sets f to force and moment on the cup and k to their derivatives by
// the displacement u, all in the order axial, radial 1, radial 2, tilt 1,
// tilt 2. It allocates nothing.
func (r *Row) Reaction(u, f *[5]float64, k *[25]float64) Contact {
	axial := r.facing * r.sin * u[0]
	u1, u2 := r.cos*u[1], r.cos*u[2]
	t1, t2 := r.facing*u[3], r.facing*u[4]
	// Sums of load, moment and stiffness over the rollers, plain and times the
	// cosine and sine of the roller's place. G is the moment by θ_j.
	var n, nc, ns, gc, gs, energy, most float64
	loaded := 0
	var a0, ac, as, acc, acs float64 // stiffness against approach
	var m0, mc, ms, mcc, mcs float64 // between approach and θ_j
	var t0, tcc, tcs float64         // against θ_j
	for j := range r.count {
		c, s := r.c[j], r.s[j]
		tilt := t1*s - t2*c
		a := axial + u1*c + u2*s + r.arm*tilt
		if a <= 0 && a+math.Abs(tilt)*r.half <= 0 {
			continue
		}
		q := roller(a, -tilt, r.half)
		g := r.arm*q.n - q.m
		most = max(most, q.n)
		loaded++
		n += q.n
		nc += q.n * c
		ns += q.n * s
		gc += g * c
		gs += g * s
		energy += q.energy
		kc, ks := q.naa*c, q.naa*s
		a0 += q.naa
		ac += kc
		as += ks
		acc += kc * c
		acs += kc * s
		mix := r.arm*q.naa - q.nab
		kc, ks = mix*c, mix*s
		m0 += mix
		mc += kc
		ms += ks
		mcc += kc * c
		mcs += kc * s
		twist := r.arm*(mix-q.nab) + q.nbb
		t0 += twist
		tcc += twist * c * c
		tcs += twist * c * s
	}
	e, sn, cs := r.facing, r.sin*r.kappa, r.cos*r.kappa
	f[0], f[1], f[2], f[3], f[4] = e*sn*n, cs*nc, cs*ns, e*r.kappa*gs, -e*r.kappa*gc
	k[0], k[1], k[2] = r.sin*sn*a0, e*sn*r.cos*ac, e*sn*r.cos*as
	k[6], k[7], k[12] = cs*r.cos*acc, cs*r.cos*acs, cs*r.cos*(a0-acc)
	k[3], k[4] = sn*ms, -sn*mc // facing squared
	k[8], k[9] = e*cs*mcs, -e*cs*mcc
	k[13], k[14] = e*cs*(m0-mcc), -e*cs*mcs
	k[18], k[19], k[24] = r.kappa*(t0-tcc), -r.kappa*tcs, r.kappa*tcc
	k[5], k[10], k[11] = k[1], k[2], k[7]
	k[15], k[16], k[17] = k[3], k[8], k[13]
	k[20], k[21], k[22], k[23] = k[4], k[9], k[14], k[19]
	return Contact{Energy: r.kappa * energy, MaxRoller: r.kappa * most, Loaded: loaded}
}

// approach is δ at the middle of roller j and its slope along the roller,
// towards the small end.
func (r *Row) approach(u *[5]float64, j int) (a, b float64) {
	tilt := r.facing * (u[3]*r.s[j] - u[4]*r.c[j])
	return r.facing*r.sin*u[0] + r.cos*(u[1]*r.c[j]+u[2]*r.s[j]) + r.arm*tilt, -tilt
}
