package bearing

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"axlewright/internal/published"
)

// 3, 4 and 5 kN at 1440, 1080 and 720 1/min for a quarter, a half and a quarter.
var jindal = []DutyBlock{
	{Time: 0.25, Speed: 1440 * rpm, Load: 3000},
	{Time: 0.50, Speed: 1080 * rpm, Load: 4000},
	{Time: 0.25, Speed: 720 * rpm, Load: 5000},
}

func TestMeanLoadPublished(t *testing.T) {
	m, err := MeanLoad(MeanLoadParams{Blocks: jindal, Element: Ball})
	must(t, m, err)
	c, err := RequiredRating(RequiredRatingParams{Load: m.Load, Revolutions: m.Speed / (2 * math.Pi) * 10000 * hour, Element: Ball})
	must(t, c, err)
	published.Check(t, []published.Row{
		{Name: "cubic mean load", Got: m.Load, Printed: "3954.34", Source: "derived: Jindal, Machine Design (2010), ex. 18-9, worked a second time outside this code"},
		{Name: "rating for 10 000 h", Got: c, Printed: "34219", Source: "Jindal, Machine Design (2010), ex. 18-9 (read)"},
	})
}

// Damage summed block by block and the mean load are two roads to one life.
func TestDutyLifeAgreesWithMeanLoad(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var blocks []DutyBlock
		for range rapid.IntRange(1, 6).Draw(t, "blocks") {
			blocks = append(blocks, DutyBlock{
				Time:  rapid.Float64Range(0.1, 1e4).Draw(t, "t"),
				Speed: rapid.Float64Range(1, 300).Draw(t, "ω"),
				Load:  rapid.Float64Range(1, 4e4).Draw(t, "P"),
			})
		}
		e := rapid.SampledFrom([]Element{Ball, Roller}).Draw(t, "element")
		const rating = 1e5
		m, err := MeanLoad(MeanLoadParams{Blocks: blocks, Element: e})
		if err != nil {
			t.Fatal(err)
		}
		l, err := BasicLife(LifeParams{Rating: rating, Load: m.Load, Element: e})
		if err != nil {
			t.Fatal(err)
		}
		d, err := DutyLife(DutyLifeParams{Rating: rating, Blocks: blocks, Element: e})
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(d.Revolutions/l-1) > 1e-9 {
			t.Fatalf("Miner %g, mean load %g", d.Revolutions, l)
		}
		time, err := LifeTime(l, m.Speed)
		if err != nil || math.Abs(d.Time/time-1) > 1e-9 {
			t.Fatalf("time %g, want %g", d.Time, time)
		}
		sum := 0.
		for i, s := range d.Shares {
			sum += s
			blocks[i].Factor = 0.5
		}
		if math.Abs(sum-1) > 1e-12 {
			t.Fatalf("shares add up to %g", sum)
		}
		half, err := DutyLife(DutyLifeParams{Rating: rating, Blocks: blocks, Element: e})
		if err != nil || math.Abs(half.Revolutions/d.Revolutions-0.5) > 1e-9 {
			t.Fatalf("half the factor gives %g of the life (%v)", half.Revolutions/d.Revolutions, err)
		}
	})
}

func TestDutyRefuses(t *testing.T) {
	for name, blocks := range map[string][]DutyBlock{
		"empty":         nil,
		"never turns":   {{Time: 1, Load: 100}},
		"negative load": {{Time: 1, Speed: 1, Load: -1}},
		"no load":       {{Time: 1, Speed: 1}},
	} {
		if _, err := DutyLife(DutyLifeParams{Rating: 1, Blocks: blocks, Element: Roller}); err == nil {
			t.Errorf("%s: accepted", name)
		}
	}
	// standing under load does no rolling damage and does not count as heaviest
	d, err := DutyLife(DutyLifeParams{Rating: 100, Element: Roller, Blocks: []DutyBlock{
		{Time: 5, Load: 90}, {Time: 1, Speed: 10, Load: 20},
	}})
	must(t, d, err)
	if d.Shares[0] != 0 || math.Abs(d.Heaviest-0.2) > 1e-15 {
		t.Errorf("got %+v", d)
	}
}
