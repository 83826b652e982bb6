package weldplan

import (
	"strings"
	"testing"

	"axlewright/axle"
	"axlewright/calc/material"
)

// kelvin makes a temperature of degrees.
func kelvin(degrees float64, text string) (v axle.Temperature) {
	v.Value, v.Low, v.High, v.Origin, v.Text = degrees+zeroCelsius, degrees+zeroCelsius, degrees+zeroCelsius, axle.Assumed, text
	return v
}

func TestPracticeByTheStatedRules(t *testing.T) {
	oven := kelvin(250, "250 °C")
	for _, c := range []struct {
		name    string
		family  material.Family
		shop    Shop
		rebored bool
		want    Practice
		refused string
	}{
		{"ductile, finished bores", material.DuctileIron, Shop{}, false, Cold, ""},
		{"ductile, finished bores, an oven", material.DuctileIron, Shop{Oven: oven}, false, Cold, ""},
		{"ductile, bored after, no oven", material.DuctileIron, Shop{}, true, Cold, ""},
		{"ductile, bored after, an oven", material.DuctileIron, Shop{Oven: oven}, true, Hot, ""},
		{"ductile, bored after, an oven, cold asked for", material.DuctileIron, Shop{Oven: oven, Practice: Cold}, true, Cold, ""},
		{"hot asked for without an oven", material.DuctileIron, Shop{Practice: Hot}, true, Hot, "oven"},
		{"hot asked for on finished bores", material.DuctileIron, Shop{Practice: Hot, Oven: oven}, false, Hot, "machined afterwards"},
		{"80 °C asked for", material.DuctileIron, Shop{Preheat: kelvin(80, "80 °C")}, true, Cold, "between the practices"},
		{"140 °C asked for with an oven", material.WhiteheartIron, Shop{Preheat: kelvin(140, "140 °C"), Oven: oven}, true, Cold, "between the practices"},
		{"200 °C asked for with an oven", material.DuctileIron, Shop{Preheat: kelvin(200, "200 °C"), Oven: oven}, true, Hot, ""},
		{"600 °C asked for", material.DuctileIron, Shop{Preheat: kelvin(600, "600 °C"), Oven: oven}, true, Hot, "foundry"},
		{"a torch on one corner", material.DuctileIron, Shop{Torch: true, Oven: oven}, true, Cold, "torch"},
		{"cold and 200 °C", material.DuctileIron, Shop{Practice: Cold, Preheat: kelvin(200, "200 °C"), Oven: oven}, true, Cold, "contradict"},
		{"blackheart", material.BlackheartIron, Shop{Oven: oven}, true, Cold, ""},
		{"blackheart hot", material.BlackheartIron, Shop{Practice: Hot, Oven: oven}, true, Cold, "white"},
	} {
		m := methodFor(c.family, &c.shop, c.rebored)
		switch {
		case m.Practice != c.want:
			t.Errorf("%s: %s, want %s", c.name, m.Practice, c.want)
		case (m.Refused == "") != (c.refused == "") || !strings.Contains(m.Refused, c.refused):
			t.Errorf("%s: refused %q, want %q", c.name, m.Refused, c.refused)
		case len(m.Why) == 0:
			t.Errorf("%s: no reason", c.name)
		case m.Refused == "" && m.MostStart > coldMost && m.LeastStart < hotLeast:
			t.Errorf("%s: %g to %g K lies between the practices", c.name, m.LeastStart, m.MostStart)
		}
	}
}

// A refused wish stops the plan, with its reason.
func TestWishInBetweenStopsThePlan(t *testing.T) {
	j := manyRuns(t, 4)
	j.Shop.Preheat = kelvin(90, "90 °C")
	p := planOf(t, j)
	if p.Go || len(p.Runs) > 0 || p.Sequence != nil {
		t.Error("something was planned")
	}
	if last := p.Stops[len(p.Stops)-1]; !strings.Contains(last.Why, "Pick one") || !last.NoPlan {
		t.Errorf("stop %+v", last)
	}
}

func planOf(t testing.TB, j *Job) Plan {
	t.Helper()
	p, err := Make(j, nil, Options{})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func TestBlackheartIsBrazedWhateverIsAskedFor(t *testing.T) {
	j := manyRuns(t, 4)
	j.Casting.Metal = Metal{Families: []Chance{{material.BlackheartIron, 1}}}
	j.Shop.Process = MAG
	p := planOf(t, j)
	if p.Process != TIG || !strings.Contains(p.Filler.Class, "Cu") {
		t.Errorf("process %s, filler %s", p.Process, p.Filler.Class)
	}
	for _, toe := range p.Runs[0].Toes {
		if toe.Where == "casting" && toe.High != 0 {
			t.Errorf("a brazed toe is said to reach %g HV", toe.High)
		}
	}
}

func TestPlannedForTheLeastForgivingThatCounts(t *testing.T) {
	for _, c := range []struct {
		metal Metal
		want  material.Family
	}{
		{Metal{Families: []Chance{{material.CastSteel, 0.9}, {material.DuctileIron, 0.1}}}, material.DuctileIron},
		{Metal{Families: []Chance{{material.CastSteel, 0.97}, {material.DuctileIron, 0.03}}}, material.CastSteel},
		{Metal{Families: []Chance{{material.DuctileIron, 0.9}, {material.BlackheartIron, 0.06}}, Unknown: 0.04}, material.BlackheartIron},
		{Metal{Families: []Chance{{material.DuctileIron, 0.96}, {material.GreyIron, 0.04}}}, material.DuctileIron},
	} {
		if got := c.metal.plannedFor(); got != c.want {
			t.Errorf("%s: planned for %s, want %s", c.metal, got, c.want)
		}
	}
}
