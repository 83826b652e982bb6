package bolt

import (
	"testing"

	"axlewright/internal/published"

	"pgregory.net/rapid"
)

func TestFrustaOfSteelOverIronPublished(t *testing.T) {
	const source = "Shigley's Mechanical Engineering Design, 8th ed., solutions manual, problem 8-23: 12 mm bolt, steel 20 mm over iron 6 mm"
	const misprint = source + "; the manual sums 1/55 620 for 1/15 620 and so prints k_m 2158, C 0.256, n 5.84: recomputed here with the frusta it prints"
	r := must(FrustaStiffness(FrustaParams{
		[]Layer{{20 * mm, 207 * gpa}, {6 * mm, 100 * gpa}}, 18 * mm, 12 * mm, 30 * deg, Nut,
	}))
	if len(r.Frusta) != 3 {
		t.Fatalf("got %d frusta, want 3", len(r.Frusta))
	}
	const kb = 744e6 // N/m, as printed
	c := must(LoadFactor(LoadFactorParams{1 / kb, 1 / r.Stiffness, 1}))
	n := must(OverloadFactor(OverloadParams{600 * mpa, 84.3e-6, 37.9 * kN, c, 8.48 * kN}))
	published.Check(t, []published.Row{
		{Name: "steel, 13 mm under the head, MN/m", Got: r.Frusta[0] / 1e6, Printed: "5316", Source: source},
		{Name: "steel, 7 mm below the middle, MN/m", Got: r.Frusta[1] / 1e6, Printed: "15620", Source: source,
			Within: 0.003, Why: "the manual rounds the diameter 24.93 to 24.9 mm"},
		{Name: "iron, 6 mm over the nut, MN/m", Got: r.Frusta[2] / 1e6, Printed: "3887", Source: source,
			Within: 0.0005, Why: "the manual rounds tan 30° to 0.5774"},
		{Name: "all, MN/m", Got: r.Stiffness / 1e6, Printed: "1963", Source: misprint, Within: 0.001, Why: "24.93 rounded to 24.9 mm in the frusta summed"},
		{Name: "load factor", Got: c, Printed: "0.275", Source: misprint},
		{Name: "overload factor", Got: n, Printed: "5.44", Source: misprint},
	})
}

func TestHalfInchPlatesPublished(t *testing.T) {
	const source = "Shigley's Mechanical Engineering Design, 9th ed., ex. 8-2: 1/2 in bolt, washer 0.095 and plate 0.5 in steel over 0.75 in iron (from memory)"
	stack := func(lower float64) FrustaResult {
		return must(FrustaStiffness(FrustaParams{
			[]Layer{{0.595 * inch, 30e3 * kpsi}, {0.75 * inch, lower * kpsi}}, 0.75 * inch, 0.5 * inch, 30 * deg, Nut,
		}))
	}
	in := func(k float64) float64 { return k / (lbf / inch) / 1e6 } // Mlbf/in
	iron, steel := stack(14.5e3), stack(30e3)
	const why = "the book rounds tan 30° to 0.5774 and 0.577·2 to 1.155"
	published.Check(t, []published.Row{
		{Name: "steel frustum, Mlbf/in", Got: in(iron.Frusta[0]), Printed: "30.80", Source: source, Within: 0.001, Why: why},
		{Name: "iron frustum above the middle", Got: in(iron.Frusta[1]), Printed: "285.5", Source: source, Within: 0.002, Why: why},
		{Name: "iron frustum below the middle", Got: in(iron.Frusta[2]), Printed: "14.15", Source: source},
		{Name: "steel over iron", Got: in(iron.Stiffness), Printed: "9.378", Source: source, Within: 0.001, Why: why},
		{Name: "steel over steel", Got: in(steel.Stiffness), Printed: "14.64", Source: source},
		{Name: "steel over steel by the fitted formula", Printed: "14.92", Source: source,
			Got: in(must(WilemanStiffness(WilemanParams{Steel, 0.5 * inch, 1.345 * inch, 30e3 * kpsi})))},
	})
}

func TestPressureVesselJointPublished(t *testing.T) {
	const source = "Shigley's Mechanical Engineering Design, 9th ed., ex. 8-4: 5/8-11 grade 5, grip 1.5 in, iron 14 Mpsi (from memory)"
	km := must(FrustaStiffness(FrustaParams{[]Layer{{1.5 * inch, 14e3 * kpsi}}, 1.5 * 0.625 * inch, 0.625 * inch, 30 * deg, Nut})).Stiffness
	const kb = 6.14 // Mlbf/in, as printed
	published.Check(t, []published.Row{
		{Name: "members, Mlbf/in", Got: km / (lbf / inch) / 1e6, Printed: "8.95", Source: source},
		{Name: "load factor", Got: must(LoadFactor(LoadFactorParams{1 / (kb * 1e6 * lbf / inch), 1 / km, 1})), Printed: "0.407", Source: source},
	})
}

func TestWilemanPublished(t *testing.T) {
	published.Check(t, []published.Row{
		{Name: "12 mm bolt, 26 mm of steel, MN/m", Printed: "2613.57",
			Got:    must(WilemanStiffness(WilemanParams{Steel, 12 * mm, 26 * mm, 207 * gpa})) / 1e6,
			Source: "derived: Shigley's Mechanical Engineering Design, 9th ed., eq. 8-23, constants of table 8-8 from memory"},
	})
}

func TestFrustaLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := rapid.Float64Range(5, 24).Draw(t, "d") * mm
		n := rapid.IntRange(1, 5).Draw(t, "layers")
		var layers, turned []Layer
		for range n {
			l := Layer{d * rapid.Float64Range(0.1, 2).Draw(t, "t"), rapid.Float64Range(70, 210).Draw(t, "E") * gpa}
			layers, turned = append(layers, l), append([]Layer{l}, turned...)
		}
		p := FrustaParams{layers, 1.5 * d, d, 30 * deg, Nut}
		whole := must(FrustaStiffness(p)).Stiffness
		p.Layers = turned
		if got := must(FrustaStiffness(p)).Stiffness; !near(got, whole, 1e-9) {
			t.Errorf("turned upside down: %g of %g", got, whole)
		}
		// cutting a part in two of the same metal changes nothing
		first := layers[0]
		p.Layers = append([]Layer{{first.Thickness * 0.3, first.Modulus}, {first.Thickness * 0.7, first.Modulus}}, layers[1:]...)
		if got := must(FrustaStiffness(p)).Stiffness; !near(got, whole, 1e-9) {
			t.Errorf("cut in two: %g of %g", got, whole)
		}
	})
}

func TestFrustaRefuse(t *testing.T) {
	_, err := FrustaStiffness(FrustaParams{nil, 18 * mm, 12 * mm, 30 * deg, Nut})
	refuses(t, "Layers", err)
	_, err = FrustaStiffness(FrustaParams{[]Layer{{1 * mm, 1}}, 12 * mm, 12 * mm, 30 * deg, Nut})
	refuses(t, "Hole", err)
	_, err = WilemanStiffness(WilemanParams{"brass", 12 * mm, 26 * mm, 100 * gpa})
	refuses(t, "Metal", err)
	_, err = WilemanStiffness(WilemanParams{Steel, 12 * mm, 3 * mm, 207 * gpa})
	refuses(t, "Clamp", err)
}
