package casting

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/stat/distuv"

	"axlewright/calc/material"
	"axlewright/quantity"
)

// A metalResult is what one test said: its chance under each castable family.
type metalResult struct {
	test, said, property string
	like                 []float64
}

// tests works out every test that was made.
func (e MetalEvidence) tests() []metalResult {
	var list []metalResult
	for _, a := range e.Answers {
		i := metalTest(a.Test)
		list = append(list, MetalTests[i].result(slices.Index(MetalTests[i].Answers, a.Answer)))
	}
	if e.Hardness.Value > 0 {
		list = append(list, metalResult{"hardness", fmt.Sprintf("%g %s", e.Hardness.Value, e.Hardness.Scale), "hardness", hardnessLike(e.Hardness)})
	}
	if a := e.Laboratory; a.Carbon.Given || a.Silicon.Given || a.Magnesium.Given {
		list = append(list, metalResult{"laboratory", a.String(), wholly, a.like()})
	}
	return list
}

func (t *MetalTest) result(answer int) metalResult {
	like := make([]float64, len(castable))
	for i := range castable {
		like[i] = t.Trust*t.Chance[answer][i] + (1-t.Trust)/float64(len(t.Answers))
	}
	return metalResult{t.Name, t.Answers[answer], t.Property, like}
}

// Suits is the family that an answer suits best.
func (t *MetalTest) Suits(answer string) material.Family {
	return castable[argmax(t.Chance[slices.Index(t.Answers, answer)])]
}

func (a Analysis) String() string {
	var parts []string
	for _, e := range []struct {
		sign string
		f    Fraction
	}{{"C", a.Carbon}, {"Si", a.Silicon}, {"Mg", a.Magnesium}} {
		if e.f.Given {
			parts = append(parts, e.sign+" "+quantity.Percent(e.f.Value))
		}
	}
	return strings.Join(parts, ", ")
}

// How far a hardness and an analysis are believed. Assumed.
const (
	hardnessTrust = 0.85
	labTrust      = 0.98
)

// brinell is the hardness in HBW; other scales are converted as for steel,
// which on iron is a guide only.
func brinell(h Hardness) (float64, error) {
	hb := h.Value
	if h.Scale != material.Brinell {
		var err error
		if hb, err = material.ConvertHardness(material.HardnessParams{Value: h.Value, From: h.Scale, To: material.Brinell}); err != nil {
			return 0, err
		}
	}
	if !(hb >= softest && hb <= hardest) {
		return 0, fmt.Errorf("%g HBW is outside %g to %g", hb, softest, hardest)
	}
	return hb, nil
}

// Between these a bare casting's hardness is looked for, HBW.
const softest, hardest = 80.0, 400.0

// hardnessLike is the density of a hardness in each family: every grade of the
// family alike, its usual band two standard deviations either way.
func hardnessLike(h Hardness) []float64 {
	hb, _ := brinell(h)
	like := make([]float64, len(castable))
	for i, family := range castable {
		grades := material.InFamily(family)
		density, n := 0.0, 0.0
		for _, g := range grades {
			if g.HardnessHigh == 0 {
				continue
			}
			n++
			density += bandOf(g, h.Scale).Prob(hb)
		}
		like[i] = hardnessTrust*density/n + (1-hardnessTrust)/(hardest-softest)
	}
	return like
}

// bandOf is the usual hardness of a grade, widened by a tenth of its middle
// where the reading was converted from another scale.
func bandOf(g material.Metal, scale material.Scale) distuv.Normal {
	n := distuv.Normal{Mu: (g.HardnessLow + g.HardnessHigh) / 2, Sigma: (g.HardnessHigh - g.HardnessLow) / 4}
	if scale != material.Brinell {
		n.Sigma = math.Hypot(n.Sigma, 0.05*n.Mu)
	}
	return n
}

// like is the density of an analysis in each family, each element normal.
func (a Analysis) like() []float64 {
	like := make([]float64, len(castable))
	for i, family := range castable {
		c := composition[family]
		density, flat := 1.0, 1.0
		for _, e := range []struct {
			f    Fraction
			ends [2]float64
			most float64
		}{{a.Carbon, c.carbon, 0.045}, {a.Silicon, c.silicon, 0.035}, {a.Magnesium, c.magnesium, 0.001}} {
			if e.f.Given {
				density *= distuv.Normal{Mu: (e.ends[0] + e.ends[1]) / 2, Sigma: (e.ends[1] - e.ends[0]) / 4}.Prob(e.f.Value)
				flat /= e.most
			}
		}
		like[i] = labTrust*density + (1-labTrust)*flat
	}
	return like
}

// metalChances joins the tests: the chance of all they said under each family.
// Of tests that see the same property the plainest counts in full and the
// others half.
func metalChances(tests []metalResult) []float64 {
	logs := make([]float64, len(castable))
	for i, t := range tests {
		share := 1.0
		for j, o := range tests {
			if o.property == t.property && j != i && (plainness(o.like) > plainness(t.like) || plainness(o.like) == plainness(t.like) && j < i) {
				share = 0.5
			}
		}
		for f := range logs {
			logs[f] += share * math.Log(t.like[f])
		}
	}
	most := slices.Max(logs)
	for i := range logs {
		logs[i] = math.Exp(logs[i] - most)
	}
	return logs
}

// plainness is how far a test sets the families apart.
func plainness(like []float64) float64 { return math.Log(slices.Max(like) / slices.Min(like)) }
