package weld

import (
	"math"

	"axlewright/calc/check"
)

// HardnessParams is a steel and how fast the metal beside the weld cooled.
type HardnessParams struct {
	Steel Composition // -, analysis of the steel
	Time  float64     // s, t_8/5: time from 800 °C to 500 °C
}

// DurenHardnessResult is the hardness beside a weld by Düren.
type DurenHardnessResult struct {
	Hardness   float64 // HV, expected greatest hardness of the heat-affected zone
	Martensite float64 // HV, H_M: all martensite, the upper bound
	Bainite    float64 // HV, H_B: all bainite, the lower bound
	Mixed      float64 // HV, H_x: before the bounds are applied
}

// HardnessDuren returns the greatest hardness beside a weld from analysis and cooling time, by Düren.
//
//	H_x = 2019·(C·(1 − 0.5·lg t) + 0.3·S) + 66·(1 − 0.8·lg t)
//	S = Si/11 + Mn/8 + Cu/9 + Cr/5 + Ni/17 + Mo/6 + V/3
//	H_M = 802·C + 305
//	H_B = 350·(C + S) + 101
//	H = H_x, but not above H_M nor below H_B
//
// In the formula's letters C to V are in %, t in s, H in HV10. Valid for low-alloy steel
// with C up to 0.6 % and 1 s <= t <= 500 s; published trials put such formulas at ± 28 HV
// (standard deviation). Not for iron: there the white edge reaches 500 to 700 HV.
// Errors: *check.RangeError outside that range, or where the steel is so rich that H_B is above H_M.
// Source: Düren, 3R international 24, 1985 (from memory, medium confidence); scatter: Nicholas and Abson, TWI, 2008.
func HardnessDuren(p HardnessParams) (DurenHardnessResult, error) {
	const fn = "weld.HardnessDuren"
	if err := p.check(fn); err != nil {
		return DurenHardnessResult{}, err
	}
	s := p.Steel
	c := 100 * s.Carbon
	sum := 100 * (s.Silicon/11 + s.Manganese/8 + s.Copper/9 + s.Chromium/5 + s.Nickel/17 + s.Molybdenum/6 + s.Vanadium/3)
	lg := math.Log10(p.Time)
	r := DurenHardnessResult{
		Martensite: 802*c + 305,
		Bainite:    350*(c+sum) + 101,
		Mixed:      2019*(c*(1-0.5*lg)+0.3*sum) + 66*(1-0.8*lg),
	}
	if err := check.All(fn, check.That("Steel", r.Bainite, r.Bainite <= r.Martensite, "H_B <= H_M")); err != nil {
		return DurenHardnessResult{}, err
	}
	r.Hardness = math.Min(math.Max(r.Mixed, r.Bainite), r.Martensite)
	return r, nil
}

// YuriokaHardnessResult is the hardness beside a weld by Yurioka.
type YuriokaHardnessResult struct {
	Hardness       float64 // HV, expected greatest hardness of the heat-affected zone
	Martensite     float64 // HV, H_M: all martensite
	Soft           float64 // HV, H_0: no martensite
	TimeMartensite float64 // s, τ_M: cooling time up to which all is martensite
	TimeSoft       float64 // s, τ_0: cooling time from which there is none
}

// HardnessYurioka returns the greatest hardness beside a weld from analysis and cooling time, by Yurioka.
//
//	H = (H_M + H_0)/2 − (H_M − H_0)·atan(x)/2.2
//	x = 4·ln(t/τ_M)/ln(τ_0/τ_M) − 2
//	H_M = 884·C·(1 − 0.3·C²) + 294,  τ_M = exp(10.6·CE_I − 4.8)
//	H_0 = 145 + 130·tanh(2.65·CE_II − 0.69),  τ_0 = exp(6.2·CE_III + 0.74)
//	CE_I = C_p + Si/24 + Mn/6 + Cu/15 + Ni/12 + Cr·(1 − 0.16·√Cr)/8 + Mo/4
//	CE_II = C + Si/24 + Mn/5 + Cu/10 + Ni/18 + Cr/5 + Mo/2.5 + V/5 + Nb/3
//	CE_III = C_p + Mn/3.6 + Cu/20 + Ni/9 + Cr/5 + Mo/4
//	C_p = C up to 0.3 %, C/6 + 0.25 above
//
// In the formula's letters C to Nb are in %, t in s, H in HV10. Outside τ_M to τ_0 the nearer
// of H_M and H_0 stands. Valid for low-alloy steel with C up to 0.6 %, no boron, and
// 1 s <= t <= 500 s. Not for iron.
// Errors: *check.RangeError outside that range, for boron, or where τ_M is not below τ_0.
// Source: Yurioka, Okumura, Kasuya and Cotton, Metal Construction 19, 1987, 217R (from memory; H_M and H_0 medium confidence, τ_M and τ_0 low).
func HardnessYurioka(p HardnessParams) (YuriokaHardnessResult, error) {
	const fn = "weld.HardnessYurioka"
	if err := p.check(fn); err != nil {
		return YuriokaHardnessResult{}, err
	}
	if err := check.All(fn, check.Within("Boron", p.Steel.Boron, 0, 1e-6)); err != nil {
		return YuriokaHardnessResult{}, err
	}
	c, si, mn := 100*p.Steel.Carbon, 100*p.Steel.Silicon, 100*p.Steel.Manganese
	cu, ni, cr := 100*p.Steel.Copper, 100*p.Steel.Nickel, 100*p.Steel.Chromium
	mo, v, nb := 100*p.Steel.Molybdenum, 100*p.Steel.Vanadium, 100*p.Steel.Niobium
	cp := c
	if c > 0.3 {
		cp = c/6 + 0.25
	}
	ce1 := cp + si/24 + mn/6 + cu/15 + ni/12 + cr*(1-0.16*math.Sqrt(cr))/8 + mo/4
	ce2 := c + si/24 + mn/5 + cu/10 + ni/18 + cr/5 + mo/2.5 + v/5 + nb/3
	ce3 := cp + mn/3.6 + cu/20 + ni/9 + cr/5 + mo/4
	r := YuriokaHardnessResult{
		Martensite:     884*c*(1-0.3*c*c) + 294,
		Soft:           145 + 130*math.Tanh(2.65*ce2-0.69),
		TimeMartensite: math.Exp(10.6*ce1 - 4.8),
		TimeSoft:       math.Exp(6.2*ce3 + 0.74),
	}
	if err := check.All(fn, check.That("Steel", r.TimeMartensite, r.TimeMartensite < r.TimeSoft, "τ_M < τ_0")); err != nil {
		return YuriokaHardnessResult{}, err
	}
	switch {
	case p.Time <= r.TimeMartensite:
		r.Hardness = r.Martensite
	case p.Time >= r.TimeSoft:
		r.Hardness = r.Soft
	default:
		x := 4*math.Log(p.Time/r.TimeMartensite)/math.Log(r.TimeSoft/r.TimeMartensite) - 2
		r.Hardness = (r.Martensite+r.Soft)/2 - (r.Martensite-r.Soft)*math.Atan(x)/2.2
	}
	return r, nil
}

func (p HardnessParams) check(fn string) error {
	if err := check.All(fn, check.Within("Time", p.Time, 1, 500)); err != nil {
		return err
	}
	return p.Steel.check(fn)
}
