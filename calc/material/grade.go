package material

import "strings"

// grade is a row of a table, in the units of the standards. Zeros that a family has a
// usual figure for are filled from it.
type grade struct {
	name, other       string // other names after commas
	family            Family
	standard, section string
	rm, re            float64 // MPa, least
	a                 float64 // %, least elongation
	hbLow, hbHigh     float64
	e, eLow, eHigh    float64 // GPa
	density           float64 // kg/dm³
	shear, compress   float64 // MPa
	bending           float64 // MPa, endurance in rotating bending
	skinLow, skinHigh float64 // HRC
	yieldKind, note   string
}

// usual are the figures of a family that its rows do not repeat.
type usual struct {
	e, eLow, eHigh float64 // GPa
	poisson        float64
	density        float64 // kg/dm³
	expansion      float64 // 1e-6/K
	shear          float64 // share of R_m
	bending, pull  float64 // share of R_m
	fatigue        string
	yieldKind      string
}

const (
	steelFatigue = "rotating bending 0.5, Shigley, Mechanical Engineering Design, 8th ed., eq. (6-8), up to 1400 MPa; push-pull FKM guideline (from memory)"
	castFatigue  = "push-pull FKM guideline; rotating bending common practice (from memory)"
	gjsFatigue   = "rotating bending EN 1563:1997, informative annex; push-pull FKM guideline (from memory)"
	gjlFatigue   = "rotating bending EN 1561:1997, informative annex; push-pull FKM guideline (from memory)"
)

var usuals = map[Family]usual{
	StructuralSteel:   {210, 200, 215, 0.30, 7.85, 12, 0.60, 0.50, 0.45, steelFatigue, "yield"},
	FormedSteel:       {210, 200, 215, 0.30, 7.85, 12, 0.60, 0.50, 0.45, steelFatigue, "yield"},
	TreatedSteel:      {210, 203, 215, 0.30, 7.85, 12, 0.60, 0.50, 0.45, steelFatigue, "yield"},
	CaseHardenedSteel: {210, 203, 215, 0.30, 7.85, 12, 0.60, 0.50, 0.40, steelFatigue, "yield"},
	CastSteel:         {205, 198, 210, 0.30, 7.80, 12, 0.60, 0.40, 0.34, castFatigue, "0.2 % proof"},
	DuctileIron:       {169, 160, 178, 0.275, 7.1, 12.5, 0.90, 0, 0.34, gjsFatigue, "0.2 % proof"},
	BlackheartIron:    {172, 162, 178, 0.26, 7.3, 11, 0.90, 0.42, 0.30, castFatigue, "0.2 % proof"},
	WhiteheartIron:    {172, 162, 185, 0.26, 7.4, 11, 0.90, 0.42, 0.30, castFatigue, "0.2 % proof"},
	GreyIron:          {110, 88, 130, 0.26, 7.2, 11.7, 1.15, 0, 0.30, gjlFatigue, "0.1 % proof"},
	Bronze:            {105, 95, 115, 0.34, 8.7, 18, 0.65, 0.35, 0.30, castFatigue, "0.2 % proof"},
}

func (g grade) metal() Metal {
	u := usuals[g.family]
	f, err := FamilyOf(g.family)
	if err != nil {
		panic(err) // a fault of the tables
	}
	m := Metal{
		Name: g.name, Other: names(g.other), Family: g.family, Standard: g.standard, Section: g.section,
		Tensile: g.rm * 1e6, Yield: g.re * 1e6, YieldKind: or(g.yieldKind, u.yieldKind),
		Shear: first(g.shear, u.shear*g.rm) * 1e6, Compression: g.compress * 1e6, Elongation: g.a / 100,
		HardnessLow: g.hbLow, HardnessHigh: g.hbHigh, SkinLow: g.skinLow, SkinHigh: g.skinHigh,
		Modulus: first(g.e, u.e) * 1e9, ModulusLow: first(g.eLow, u.eLow) * 1e9, ModulusHigh: first(g.eHigh, u.eHigh) * 1e9,
		Poisson: u.poisson, Density: first(g.density, u.density) * 1e3, Expansion: u.expansion * 1e-6,
		BendingFatigue: first(g.bending/g.rm, u.bending), PullFatigue: u.pull, FatigueSource: u.fatigue,
		Note: g.note,
	}
	if g.re == 0 {
		m.YieldKind = "none"
	}
	m.TensileMean, m.TensileSD = spread(m.Tensile, f.TensileCoV)
	m.YieldMean, m.YieldSD = spread(m.Yield, f.YieldCoV)
	return m
}

// spread takes a least value as the 5 % fractile of a normal spread.
func spread(least, coefficient float64) (mean, deviation float64) {
	const fractile = 1.6448536269514722
	mean = least / (1 - fractile*coefficient)
	return mean, mean * coefficient
}

func first(given, usual float64) float64 {
	if given == 0 {
		return usual
	}
	return given
}

func names(list string) []string {
	if list == "" {
		return nil
	}
	return strings.Split(list, ", ")
}

func or(given, usual string) string {
	if given == "" {
		return usual
	}
	return given
}
