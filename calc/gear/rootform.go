package gear

import (
	"math"

	"axlewright/calc/check"
)

// FormParams is what the shape of a tooth root follows from; lengths in normal modules.
type FormParams struct {
	NormalTeeth   float64 // -, z_n: virtual number of teeth in the normal section
	PressureAngle float64 // rad, α: normal pressure angle
	Addendum      float64 // -, h_a/m: tip height over the reference circle
	ToolAddendum  float64 // -, h_a0/m: addendum of the cutting rack, the dedendum without profile shift
	ToolTipRadius float64 // -, ρ_a0/m: tip radius of the cutting rack
	Shift         float64 // -, x: profile shift
	Thickness     float64 // -, x_s: extra half thickness of the tooth
}

// FormResult is the shape of a tooth root and what it does to the stress.
type FormResult struct {
	Form   float64 // -, Y_Fa: form factor for load at the tip
	Notch  float64 // -, Y_Sa: stress correction factor for load at the tip
	Chord  float64 // -, s_Fn/m: thickness of the root at the 30° tangents
	Arm    float64 // -, h_Fa/m: lever arm of the load at the tip
	Fillet float64 // -, ρ_F/m: radius of the fillet at the 30° tangents
}

// ToothForm30 returns the form factor and the stress correction factor of a
// tooth, at the points where 30° tangents touch the root fillet, load at the tip.
//
//	Y_Fa = 6·(h_Fa/m)·cos α_Fan/((s_Fn/m)²·cos α)
//	Y_Sa = (1.2 + 0.13·L)·q_s^(1/(1.21 + 2.3/L)), L = s_Fn/h_Fa, q_s = s_Fn/(2·ρ_F)
//	E/m = π/4 − x_s − (h_a0/m)·tan α − (ρ_a0/m)·(1 − sin α)/cos α
//	G = ρ_a0/m − h_a0/m + x
//	H = (2/z_n)·(π/2 − E/m) − π/3
//	θ = (2·G/z_n)·tan θ − H
//	s_Fn/m = z_n·sin(π/3 − θ) + √3·(G/cos θ − ρ_a0/m)
//	ρ_F/m = ρ_a0/m + 2·G²/(cos θ·(z_n·cos²θ − 2·G))
//	cos α_an = z_n·cos α/(z_n + 2·h_a/m)
//	γ = (π/2 + 2·(x·tan α + x_s))/z_n + inv α − inv α_an
//	α_Fan = α_an − γ
//	h_Fa/m = ½·((cos γ − sin γ·tan α_Fan)·(z_n + 2·h_a/m) − z_n·cos(π/3 − θ) − G/cos θ + ρ_a0/m)
//
// The thickness x_s belongs to this tooth: positive makes it thicker.
//
// Valid for z_n ≥ 6, 10° ≤ α ≤ 32°, and roots whose 30° tangents exist, with 1 ≤ q_s ≤ 8.
// Errors: *check.RangeError outside that range.
// Source: ISO 6336-3:2006, 6.2 and 7.2, as ISO 10300-3:2014 uses them for method B1 (from memory).
func ToothForm30(p FormParams) (FormResult, error) {
	const fn = "gear.ToothForm30"
	if err := check.All(fn,
		check.That("NormalTeeth", p.NormalTeeth, p.NormalTeeth >= 6, ">= 6"),
		check.That("PressureAngle", p.PressureAngle, within(p.PressureAngle, 10, 32), "10° to 32°"),
		check.Within("Addendum", p.Addendum, 0.1, 2.5), check.Within("ToolAddendum", p.ToolAddendum, 0.5, 2),
		check.Within("ToolTipRadius", p.ToolTipRadius, 0.05, 0.6),
		check.Within("Shift", p.Shift, -1, 1), check.Within("Thickness", p.Thickness, -0.4, 0.4),
	); err != nil {
		return FormResult{}, err
	}
	zn, alpha, rho := p.NormalTeeth, p.PressureAngle, p.ToolTipRadius
	e := math.Pi/4 - p.Thickness - p.ToolAddendum*math.Tan(alpha) - rho*(1-math.Sin(alpha))/math.Cos(alpha)
	g := rho - p.ToolAddendum + p.Shift
	h := 2/zn*(math.Pi/2-e) - math.Pi/3
	theta := math.Pi / 6
	for range 100 { // contracts by 2·G/z_n/cos²θ, well below one
		theta = 2*g/zn*math.Tan(theta) - h
	}
	cosT := math.Cos(theta)
	r := FormResult{
		Chord:  zn*math.Sin(math.Pi/3-theta) + math.Sqrt(3)*(g/cosT-rho),
		Fillet: rho + 2*g*g/(cosT*(zn*cosT*cosT-2*g)),
	}
	alphaTip := math.Acos(zn * math.Cos(alpha) / (zn + 2*p.Addendum))
	gamma := (math.Pi/2+2*(p.Shift*math.Tan(alpha)+p.Thickness))/zn + involute(alpha) - involute(alphaTip)
	load := alphaTip - gamma
	r.Arm = ((math.Cos(gamma)-math.Sin(gamma)*math.Tan(load))*(zn+2*p.Addendum) -
		zn*math.Cos(math.Pi/3-theta) - g/cosT + rho) / 2
	if err := check.All(fn,
		check.That("NormalTeeth", zn, r.Chord > 0 && r.Fillet > 0 && r.Arm > 0, "a tooth with a root at 30°"),
		check.That("Addendum", p.Addendum, gamma > 0, "a tooth that is not pointed"),
	); err != nil {
		return FormResult{}, err
	}
	r.Form = 6 * r.Arm * math.Cos(load) / (r.Chord * r.Chord * math.Cos(alpha))
	slender, notch := r.Chord/r.Arm, r.Chord/(2*r.Fillet)
	r.Notch = (1.2 + 0.13*slender) * math.Pow(notch, 1/(1.21+2.3/slender))
	return r, check.All(fn, check.That("ToolTipRadius", rho, notch >= 1 && notch <= 8, "a notch of 1 ≤ q_s ≤ 8"))
}

func involute(a float64) float64 { return math.Tan(a) - a }
