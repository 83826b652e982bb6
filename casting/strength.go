package casting

import (
	"math"

	"axlewright/calc/material"
)

// A FamilyStrength is the tensile strength of a casting if it is of a family:
// the middle, and the ends between which nineteen of twenty lie.
type FamilyStrength struct {
	Family material.Family `json:"family"`
	Chance float64         `json:"chance"`
	Low    float64         `json:"low"`    // Pa
	Middle float64         `json:"middle"` // Pa
	High   float64         `json:"high"`   // Pa
	From   string          `json:"from"`
}

// strengthFrom is the chance from which a family's strength is told.
const strengthFrom = 0.05

// strengths tells the strength for every family that the casting may be of.
// One number over all families would hide that the metal decides.
func strengths(families []FamilyChance, h Hardness, grade string) []FamilyStrength {
	var list []FamilyStrength
	for _, f := range families {
		if f.Chance < strengthFrom {
			continue
		}
		s, ok := strengthFromHardness(f.Family, h)
		if !ok {
			s = strengthFromGrades(f.Family, h, grade)
		}
		s.Family, s.Chance = f.Family, f.Chance
		list = append(list, s)
	}
	return list
}

// conversionDoubt is two standard deviations of a strength told from a
// hardness. Assumed; ISO 18265 itself calls the conversion a guide.
const conversionDoubt = 0.10

// strengthFromHardness tells the strength from the hardness where the family
// allows it: steel by ISO 18265, grey iron by EN 1561 with both ends of what
// charge and melt can do.
func strengthFromHardness(family material.Family, h Hardness) (FamilyStrength, bool) {
	if h.Value == 0 {
		return FamilyStrength{}, false
	}
	if family == material.GreyIron {
		hb, err := brinell(h)
		if err != nil {
			return FamilyStrength{}, false
		}
		var ends [3]float64
		for i, relative := range []float64{1.2, 1, 0.8} {
			if ends[i], err = material.GreyIronTensile(material.GreyIronParams{Hardness: hb, Relative: relative}); err != nil {
				return FamilyStrength{}, false
			}
		}
		return FamilyStrength{Low: ends[0], Middle: ends[1], High: ends[2], From: "hardness by EN 1561, relative hardness 0.8 to 1.2 (from memory)"}, true
	}
	rm, err := material.TensileFromHardness(material.StrengthParams{Value: h.Value, Scale: h.Scale, Family: family})
	if err != nil {
		return FamilyStrength{}, false
	}
	return FamilyStrength{Low: rm * (1 - conversionDoubt), Middle: rm, High: rm * (1 + conversionDoubt), From: "hardness by ISO 18265, ± 10 % assumed"}, true
}

// strengthFromGrades mixes the grades of a family: the one in the variant's
// record if it is of this family, else all alike, or by how well a hardness
// suits each.
func strengthFromGrades(family material.Family, h Hardness, grade string) FamilyStrength {
	grades, from := material.InFamily(family), "all grades of the family alike"
	if m, err := material.Lookup(grade); err == nil && m.Family == family && h.Value == 0 {
		grades, from = []material.Metal{m}, m.Name+" by the variant's record, "+m.Standard
	}
	var sum, mean, square float64
	for _, g := range grades {
		weight := 1.0
		if hb, err := brinell(h); h.Value > 0 && err == nil && g.HardnessHigh > 0 {
			weight = bandOf(g, h.Scale).Prob(hb)
			from = "grades of the family by the usual hardness of each: a guide only"
		}
		sum += weight
		mean += weight * g.TensileMean
		square += weight * (g.TensileSD*g.TensileSD + g.TensileMean*g.TensileMean)
	}
	mean /= sum
	sd := math.Sqrt(math.Max(square/sum-mean*mean, 0))
	return FamilyStrength{Low: mean - 2*sd, Middle: mean, High: mean + 2*sd, From: from}
}
