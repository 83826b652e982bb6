package bolt

import (
	"fmt"
	"testing"

	"axlewright/internal/published"
)

// engagement is the length of thread, in diameters, at which an M12 bolt breaks first.
func engagement(class Class, tensile, ratio float64) EngagementResult {
	force := must(ClassStrength(class, 12*mm)).Tensile * must(StressArea(12*mm, 1.75*mm))
	return must(RequiredEngagement(EngagementParams{Metric, 12 * mm, 1.75 * mm, force, ratio * tensile * mpa, 1}))
}

func TestEngagementOfTheTradePublished(t *testing.T) {
	const source = "engagement so that the bolt breaks first, M12, basic sizes, τ_B 0.9·R_m grey iron and 0.6·R_m ductile iron and steel; common practice, no source"
	var rows []published.Row
	for _, c := range []struct {
		metal   TappedMetal
		tensile float64
		printed [3]string // 8.8, 10.9, 12.9
	}{
		{TappedGreyIron, 200, [3]string{"0.95", "1.23", "1.44"}},
		{TappedDuctile, 400, [3]string{"0.71", "0.92", "1.08"}},
		{TappedSteel, 400, [3]string{"0.71", "0.92", "1.08"}},
	} {
		ratio := must(ShearRatio(c.metal)).Cautious
		for i, class := range []Class{Class8_8, Class10_9, Class12_9} {
			rows = append(rows, published.Row{Name: fmt.Sprintf("%s in %s %g, diameters", class, c.metal, c.tensile),
				Got: engagement(class, c.tensile, ratio).Diameters, Printed: c.printed[i], Source: source})
		}
	}
	rows = append(rows, published.Row{Name: "M12 10.9 in grey 200 iron, mm", Got: engagement(Class10_9, 200, 0.9).Effective * 1e3, Printed: "14.8", Source: source})
	published.Check(t, rows)
}

// Makers' trial values hold some reserve: none may be shorter than what we compute.
func TestEngagementStaysBelowTrialValues(t *testing.T) {
	// Recommended least lengths of tapped thread without countersink from trials
	// with M6 to M16, coarse thread, as a fastener handbook prints them.
	for _, c := range []struct {
		metal   TappedMetal
		tensile float64
		printed [3]float64 // 8.8, 10.9, 12.9, in diameters
	}{
		{TappedSteel, 360, [3]float64{1.0, 1.25, 1.4}},
		{TappedSteel, 500, [3]float64{0.9, 1.0, 1.2}},
		{TappedGreyIron, 250, [3]float64{1.0, 1.25, 1.4}},
	} {
		ratio := must(ShearRatio(c.metal)).Cautious
		for i, class := range []Class{Class8_8, Class10_9, Class12_9} {
			got := engagement(class, c.tensile, ratio).Diameters
			if got > c.printed[i] || got < 0.5*c.printed[i] {
				t.Errorf("%s in %s %g: %.2f d computed, %.2f d by trial", class, c.metal, c.tensile, got, c.printed[i])
			}
		}
	}
}

func TestEngagementJustHolds(t *testing.T) {
	for _, form := range []Form{Metric, Unified, Whitworth} {
		d, pitch := 12*mm, 1.5*mm
		g := must(ThreadGeometry(form, d, pitch))
		r := must(RequiredEngagement(EngagementParams{form, d, pitch, 60 * kN, 200 * mpa, 0.9}))
		area := must(ShearArea(ShearAreaParams{form, pitch, r.Effective, d, g.PitchDiameter, g.PitchDiameter, g.HoleMinor}))
		if got := must(StrippingForce(area.Hole, 200*mpa, 0.9)); !near(got, 60*kN, 1e-12) {
			t.Errorf("%s: strips at %g", form, got)
		}
		if !near(r.Total-r.Effective, 0.8*pitch, 1e-9) {
			t.Errorf("%s: total %g, effective %g", form, r.Total, r.Effective)
		}
	}
}

func TestHandbookEngagement(t *testing.T) {
	const source = "derived: FED-STD-H28/2B method on the 1/4-20 UNC areas 0.368 and 0.539 in² an inch, A_t 0.0318 in², bolt 120 in metal of 60 kpsi"
	in2 := inch * inch
	r := must(HandbookEngagement(HandbookEngagementParams{0.0318 * in2, 0.368 * in2, 0.539 * in2, inch, 120 * kpsi, 60 * kpsi}))
	published.Check(t, []published.Row{
		{Name: "equal metals, in", Got: r.Equal / inch, Printed: "0.173", Source: source},
		{Name: "strength ratio", Got: r.Ratio, Printed: "1.365", Source: source},
		{Name: "length, in", Got: r.Length / inch, Printed: "0.236", Source: source},
	})
	strong := must(HandbookEngagement(HandbookEngagementParams{0.0318 * in2, 0.368 * in2, 0.539 * in2, inch, 120 * kpsi, 200 * kpsi}))
	if strong.Length != strong.Equal {
		t.Errorf("a stronger hole must not need more than %g: %g", strong.Equal, strong.Length)
	}
}

func TestEngagementRefuses(t *testing.T) {
	good := EngagementParams{Metric, 12 * mm, 1.75 * mm, 60 * kN, 180 * mpa, 1}
	bad := good
	bad.Pitch = 7 * mm
	_, err := RequiredEngagement(bad)
	refuses(t, "Pitch", err)
	bad = good
	bad.Keep = 0
	_, err = RequiredEngagement(bad)
	refuses(t, "Keep", err)
	_, err = HandbookEngagement(HandbookEngagementParams{1, 1, 1, 1, 1, 0})
	refuses(t, "HoleTensile", err)
}
