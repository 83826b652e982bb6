package casting

import (
	"math"
	"slices"
	"strings"
	"testing"

	"axlewright/calc/material"
	"axlewright/internal/published"

	"pgregory.net/rapid"
)

func assess(t *testing.T, e MetalEvidence) MetalFinding {
	t.Helper()
	m, err := AssessMetal(e)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func familyChance(m MetalFinding, f material.Family) float64 {
	for _, x := range m.Families {
		if x.Family == f {
			return x.Chance
		}
	}
	return 0
}

func answers(pairs ...string) MetalEvidence {
	var e MetalEvidence
	for i := 0; i < len(pairs); i += 2 {
		e.Answers = append(e.Answers, MetalAnswer{pairs[i], pairs[i+1]})
	}
	return e
}

func fractions(carbon, silicon, magnesium float64) MetalEvidence {
	return MetalEvidence{Laboratory: Analysis{Fraction{carbon, true}, Fraction{silicon, true}, Fraction{magnesium, magnesium > 0}}}
}

// What the tests of the bench say of metals (workshop guides to telling cast
// iron from cast steel; common practice, no single source).
func TestMetalTestsSayWhatTheTradeSays(t *testing.T) {
	prior := familyChance(assess(t, MetalEvidence{}), material.GreyIron)
	for _, test := range []struct {
		e    MetalEvidence
		grey bool // grey iron becomes likelier
	}{
		{answers("swarf", "powder"), true}, {answers("swarf", "curls"), false},
		{answers("chip", "crumbles"), true}, {answers("chip", "continuous"), false},
		{answers("ring", "thuds"), true}, {answers("ring", "rings"), false},
		{answers("tab", "tore out grey"), true}, {answers("tab", "tag bent or bead broke"), false},
		{answers("spark", "like grey iron"), true}, {answers("spark", "like steel"), false},
	} {
		if got := familyChance(assess(t, test.e), material.GreyIron); (got > prior) != test.grey {
			t.Errorf("%+v makes grey iron %.2f of %.2f", test.e.Answers, got, prior)
		}
	}
	rings := answers("ring", "rings").tests()
	steel, ductile := rings[0].like[slices.Index(castable, material.CastSteel)], rings[0].like[slices.Index(castable, material.DuctileIron)]
	if db := decibans(math.Log(steel / ductile)); math.Abs(db) >= 1 {
		t.Errorf("a ring tells steel from ductile iron with %.1f decibans; it cannot", db)
	}
}

// Analyses in the middle of what such metals have (Iron Castings Handbook, 1981,
// carbon and silicon; EN 10293; from memory).
func TestAnalysesTellTheFamily(t *testing.T) {
	for family, e := range map[material.Family]MetalEvidence{
		material.DuctileIron:    fractions(0.0355, 0.024, 0.00042),
		material.GreyIron:       fractions(0.0335, 0.020, 0.00001),
		material.BlackheartIron: fractions(0.0250, 0.013, 0.00001),
		material.WhiteheartIron: fractions(0.0150, 0.006, 0.00001),
		material.CastSteel:      fractions(0.0022, 0.004, 0.00001),
	} {
		if got := familyChance(assess(t, e), family); got < metalKnownFrom {
			t.Errorf("%s is told with only %.2f", family, got)
		}
	}
	// without magnesium grey and ductile iron cannot be told apart
	m := assess(t, fractions(0.0345, 0.022, 0))
	if g, d := familyChance(m, material.GreyIron), familyChance(m, material.DuctileIron); g < 0.03 || d < 0.3 || len(m.Stops) == 0 {
		t.Errorf("carbon and silicon alone made grey %.2f and ductile %.2f, stops %v", g, d, m.Stops)
	}
}

func TestMetalStops(t *testing.T) {
	for name, c := range map[string]struct {
		e    MetalEvidence
		what string // empty is none
		who  string
	}{
		"nothing tested": {MetalEvidence{}, "test the metal of this very casting", "answers for the welding"},
		"grey":           {answers("swarf", "powder", "ring", "thuds", "tab", "tore out grey"), "Grey iron: do not weld", "Nobody at the bench"},
		"may be grey":    {answers("ring", "thuds"), "may be grey iron", "after a tab test"},
		"unknown":        {answers("swarf", "short chips", "ring", "rings"), "the metal is not known", "procedure that was chosen"},
		"blackheart":     {fractions(0.025, 0.013, 0.00001), "weld only where no load passes", "welding engineer"},
		"ductile":        {fractions(0.0355, 0.024, 0.00042), "", ""},
		"steel":          {fractions(0.0022, 0.004, 0.00001), "", ""},
	} {
		m := assess(t, c.e)
		switch {
		case c.what == "" && len(m.Stops) != 0:
			t.Errorf("%s: stopped by %+v", name, m.Stops)
		case c.what == "":
			if m.Weld == "" || m.Weldability != material.WeldByProcedure {
				t.Errorf("%s: no word on how to weld", name)
			}
		case len(m.Stops) != 1 || !strings.Contains(m.Stops[0].What, c.what) || !strings.Contains(m.Stops[0].Overrule, c.who):
			t.Errorf("%s: %+v, expected %q and %q", name, m.Stops, c.what, c.who)
		}
	}
}

// Whatever the bench says, welding without a stop needs grey iron ruled out.
func TestNoWeldingUnlessGreyIsRuledOut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var e MetalEvidence
		for _, test := range MetalTests {
			if rapid.Bool().Draw(t, test.Name) {
				e.Answers = append(e.Answers, MetalAnswer{test.Name, rapid.SampledFrom(test.Answers).Draw(t, "answer")})
			}
		}
		if rapid.Bool().Draw(t, "hardness") {
			e.Hardness = Hardness{rapid.Float64Range(100, 350).Draw(t, "HB"), material.Brinell}
		}
		m, err := AssessMetal(e)
		if err != nil {
			t.Fatal(err)
		}
		sum := 0.0
		for _, f := range m.Families {
			sum += f.Chance
		}
		if math.Abs(sum-1) > 1e-9 {
			t.Fatalf("chances add up to %g", sum)
		}
		if len(m.Stops) == 0 && (familyChance(m, material.GreyIron) >= greyRuledOut || m.Families[0].Chance < metalKnownFrom) {
			t.Fatalf("no stop at %+v", m.Families)
		}
		for _, s := range m.Stops {
			if s.What == "" || s.Why == "" || s.Overrule == "" {
				t.Fatalf("a stop without words: %+v", s)
			}
		}
		for _, s := range m.Strengths {
			if !(s.Low > 0 && s.Low <= s.Middle && s.Middle <= s.High) {
				t.Fatalf("strength %+v", s)
			}
		}
	})
}

// Tests that see the same property must not count in full twice.
func TestSamePropertyCountsHalf(t *testing.T) {
	swarf := answers("swarf", "powder").tests()[0]
	chip := answers("chip", "crumbles").tests()[0]
	got := metalChances([]metalResult{swarf, chip})
	want := make([]float64, len(castable))
	for i := range want {
		a, b := swarf.like[i], chip.like[i]
		if plainness(swarf.like) < plainness(chip.like) {
			a, b = b, a
		}
		want[i] = a * math.Sqrt(b)
	}
	for i := range want {
		if math.Abs(got[i]/got[4]-want[i]/want[4]) > 1e-12 {
			t.Errorf("%s: %g, expected %g", castable[i], got[i]/got[4], want[i]/want[4])
		}
	}
}

func TestStrengthPublished(t *testing.T) {
	steel, _ := strengthFromHardness(material.CastSteel, Hardness{160, material.Vickers})
	brinellSteel, _ := strengthFromHardness(material.CastSteel, Hardness{152, material.Brinell})
	grey, ok := strengthFromHardness(material.GreyIron, Hardness{200, material.Brinell})
	if !ok {
		t.Fatal("no strength of grey iron")
	}
	const iso = "ISO 18265:2013, table A.1: 160 HV, 152 HBW, 510 MPa"
	published.Check(t, []published.Row{
		{Name: "cast steel of 160 HV, MPa", Got: steel.Middle / 1e6, Printed: "510", Source: iso},
		{Name: "cast steel of 152 HBW, MPa", Got: brinellSteel.Middle / 1e6, Printed: "510", Source: iso},
		{Name: "grey iron of 200 HBW, RH 1, MPa", Got: grey.Middle / 1e6, Printed: "227", Source: "derived: EN 1561:1997, HB = 100 + 0.44·R_m"},
	})
	if grey.High/grey.Low < 1.5 {
		t.Errorf("grey iron of one hardness lies between %g and %g MPa; charge and melt make more of a difference", grey.Low/1e6, grey.High/1e6)
	}
	if _, ok := strengthFromHardness(material.DuctileIron, Hardness{200, material.Brinell}); ok {
		t.Error("told the strength of ductile iron by a table for steel")
	}
	byRecord := strengthFromGrades(material.DuctileIron, Hardness{}, "EN-GJS-400-15")
	if byRecord.Low > 400e6 || byRecord.High < 400e6 {
		t.Errorf("EN-GJS-400-15 has %g to %g MPa, least 400", byRecord.Low/1e6, byRecord.High/1e6)
	}
	soft, hard := strengthFromGrades(material.DuctileIron, Hardness{150, material.Brinell}, ""), strengthFromGrades(material.DuctileIron, Hardness{260, material.Brinell}, "")
	if soft.Middle >= hard.Middle {
		t.Error("harder ductile iron must be told as stronger")
	}
}

func TestNextMetalTest(t *testing.T) {
	m := assess(t, MetalEvidence{})
	if m.Next == nil || m.Next.Cost > 1 || m.Next.Caution == "" || m.Next.Source == "" {
		t.Errorf("begins with %+v; expected a cheap one with its caution", m.Next)
	}
	all := answers("ring", "short ring", "swarf", "short chips", "chip", "breaks short", "spark", "between", "tab", "tore out bright")
	all.Hardness = Hardness{180, material.Brinell}
	if m := assess(t, all); m.Next == nil || m.Next.Test != "laboratory" {
		t.Errorf("after every test of the bench: %+v; expected the laboratory", m.Next)
	}
	if m := assess(t, fractions(0.0355, 0.024, 0.00042)); m.Next != nil {
		t.Errorf("asks for %+v though the metal is known", m.Next)
	}
	// the information of a test is never more than the doubt
	chance := generalMetals()
	for i := range MetalTests {
		if b := MetalTests[i].bits(chance); !(b > 0 && b <= entropy(chance)) {
			t.Errorf("%s tells %g bit of %g", MetalTests[i].Name, b, entropy(chance))
		}
		for a := range MetalTests[i].Answers {
			if len(MetalTests[i].Chance[a]) != len(castable) {
				t.Errorf("%s: %d families", MetalTests[i].Name, len(MetalTests[i].Chance[a]))
			}
		}
		for f := range castable {
			sum := 0.0
			for a := range MetalTests[i].Answers {
				sum += MetalTests[i].Chance[a][f]
			}
			if math.Abs(sum-1) > 1e-12 {
				t.Errorf("%s: answers of %s add up to %g", MetalTests[i].Name, castable[f], sum)
			}
		}
	}
	if b := hardnessBits(chance); !(b > 0 && b < entropy(chance)) {
		t.Errorf("a hardness tells %g bit", b)
	}
	if sum := total(chance); math.Abs(sum-1) > 1e-12 {
		t.Errorf("general chances add up to %g", sum)
	}
}

func TestMetalEvidenceIsRefused(t *testing.T) {
	for _, e := range []MetalEvidence{
		answers("taste", "sour"), answers("swarf", "dust"),
		{Hardness: Hardness{900, material.Vickers}}, {Hardness: Hardness{math.NaN(), material.Brinell}},
		fractions(0.5, 0.02, 0), fractions(math.NaN(), 0.02, 0),
	} {
		if _, err := AssessMetal(e); err == nil {
			t.Errorf("took %+v", e)
		}
	}
}
