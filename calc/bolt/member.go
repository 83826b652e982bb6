package bolt

import (
	"fmt"
	"math"

	"axlewright/calc/check"
)

// MemberParams describes the parts that a bolt clamps.
type MemberParams struct {
	Bearing float64 // m, d_W: outside diameter of the bearing face of head or nut
	Hole    float64 // m, d_h: clearance hole
	Outside float64 // m, D_A: outside diameter of the clamped parts, twice the least edge distance
	Clamp   float64 // m, l_K: clamped length
	Modulus float64 // Pa, E_P: Young's modulus of the clamped parts
	Seat    Seat    // name, nut (through bolt) or tapped hole
}

// MemberResult is the resilience of clamped parts and the cone it came from.
type MemberResult struct {
	TanCone    float64 // -, tanφ: slope of the substitute cone
	Limit      float64 // m, D_A,Gr: outside diameter from which the cone is whole
	Resilience float64 // m/N, δ_P: resilience of the clamped parts
}

// MemberResilience returns the resilience of clamped parts as a cone, a cone with a sleeve, or a sleeve.
//
//	δ_P = 2·ln[(d_W + d_h)·(D − d_h)/((d_W − d_h)·(D + d_h))]/(w·E_P·π·d_h·tan φ) + sleeve
//	D = min(D_A, D_A,Gr),  D_A,Gr = d_W + w·l_K·tan φ,  w = 1 nut, 2 tapped hole
//	sleeve = 4·[l_K − (D_A − d_W)/(w·tan φ)]/(E_P·π·(D_A² − d_h²)) where D_A < D_A,Gr
//	tan φ = 0.362 + 0.032·ln(β_L/2) + 0.153·ln y (nut),  0.348 + 0.013·ln β_L + 0.193·ln y (tapped hole)
//	β_L = l_K/d_W,  y = D_A/d_W;  D_A <= d_W: sleeve alone, l_K/(E_P·π/4·(D_A² − d_h²))
//
// Valid for clamping in the middle of parts of one material, 0 < d_h < d_W, d_h < D_A.
// Errors: *check.RangeError outside that range, for an unknown seat, or where the cone formula gives no slope.
// Source: VDI 2230-1:2015, 5.1.2.1 (from memory).
func MemberResilience(p MemberParams) (MemberResult, error) {
	const fn = "bolt.MemberResilience"
	w := map[Seat]float64{Nut: 1, TappedHole: 2}[p.Seat]
	if err := check.All(fn,
		check.Positive("Bearing", p.Bearing),
		check.That("Hole", p.Hole, p.Hole > 0 && p.Hole < p.Bearing, "0 < d_h < d_W"),
		check.That("Outside", p.Outside, p.Outside > p.Hole, "> d_h"),
		check.Positive("Clamp", p.Clamp),
		check.Positive("Modulus", p.Modulus),
		check.That("Seat", 0, w > 0, fmt.Sprintf("%q or %q, not %q", Nut, TappedHole, p.Seat)),
	); err != nil {
		return MemberResult{}, err
	}
	dW, dh, DA, lK, E := p.Bearing, p.Hole, p.Outside, p.Clamp, p.Modulus
	sleeve := func(length, outside float64) float64 {
		return 4 * length / (E * math.Pi * (outside*outside - dh*dh))
	}
	if DA <= dW {
		return MemberResult{0, dW, sleeve(lK, DA)}, nil
	}
	betaL, y := lK/dW, DA/dW
	tan := 0.362 + 0.032*math.Log(betaL/2) + 0.153*math.Log(y)
	if p.Seat == TappedHole {
		tan = 0.348 + 0.013*math.Log(betaL) + 0.193*math.Log(y)
	}
	if err := check.All(fn, check.That("Clamp", lK, tan > 0, "long enough for a cone (tan φ > 0)")); err != nil {
		return MemberResult{}, err
	}
	limit := dW + w*lK*tan
	D := math.Min(DA, limit)
	delta := 2 * math.Log((dW+dh)*(D-dh)/((dW-dh)*(D+dh))) / (w * E * math.Pi * dh * tan)
	if DA < limit {
		delta += sleeve(lK-(DA-dW)/(w*tan), DA)
	}
	return MemberResult{tan, limit, delta}, nil
}
