package setup

import (
	"testing"

	"axlewright/internal/published"
)

func spread(t *testing.T, in CapSpread) SpreadResult {
	t.Helper()
	return must[SpreadResult](t)(SideSpreadByMicrometer(in))
}

func TestSpreadOfTheCapsPublished(t *testing.T) {
	r := spread(t, CapSpread{Spec: light, Before: []Reading{Read(389.000 * mm)}, After: []Reading{Read(389.230 * mm)}})
	published.Check(t, []published.Row{
		{Name: "389.000 to 389.230 mm, mm", Got: r.Spread / mm, Printed: "0.230", Source: "worked example of the large-micrometer method, published for one axle"},
		{Name: "the same, in", Got: r.Spread / 0.0254, Printed: "0.009", Source: "the same example, in inches"},
		{Name: "0.30 mm of a spreader, in", Got: light.Limit(SpreaderReach).High / 0.0254, Printed: "0.012", Source: "published for one axle"},
	})
	wantState(t, r.Answer, Fine, "[S] published for one axle, not a rule")
	if len(r.Sum) != 3 || r.Sum[2].Shown != "0.23 mm (9 thou)" {
		t.Errorf("the sum ends in %+v", r.Sum)
	}
}

func TestSpreadOutsideItsRange(t *testing.T) {
	at := func(mmAfter float64) CapSpread {
		return CapSpread{Spec: light, Before: []Reading{Read(389 * mm)}, After: []Reading{Read(mmAfter * mm)}}
	}
	wantState(t, spread(t, at(389.12)).Answer, Look, "tighter by the same count")
	wantState(t, spread(t, at(389.45)).Answer, Look, "Last move tightening")
	wantState(t, spread(t, at(388.95)).Answer, Look, "equally warm")
	wide := at(389.34)
	wide.BySpreader = true
	wantState(t, spread(t, wide).Answer, Look, "Take the spreader back")
	wantState(t, spread(t, CapSpread{Spec: light, Before: []Reading{Read(389 * mm)}}).Answer, NotYet, "after tightening")
}

func TestFeelOfTheAdjusters(t *testing.T) {
	in := CapSpread{Spec: light, Before: []Reading{Read(389 * mm)}, After: []Reading{Read(389.25 * mm)}, LeftFeel: Read(22), RightFeel: Read(20)}
	wantState(t, spread(t, in).Answer, Fine)
	in.RightFeel = Read(15)
	wantState(t, spread(t, in).Answer, Look, "thread of the left adjuster")
}

func TestRepeatsTellTheDoubt(t *testing.T) {
	in := CapSpread{Spec: light,
		Before: []Reading{Read(389.00 * mm), Read(389.02 * mm), Read(388.98 * mm)},
		After:  []Reading{Read(389.21 * mm), Read(389.19 * mm), Read(389.23 * mm)}}
	r := spread(t, in)
	// By hand: both standard deviations 0.02 mm, so each mean is known to 0.02/√3 = 0.01155 and their difference to 0.01633.
	if !near(r.Spread, 0.21*mm, 1e-9) || !near(r.Doubt, 0.01633*mm, 1e-8) {
		t.Errorf("spread %g ± %g mm, want 0.21 ± 0.01633", r.Spread/mm, r.Doubt/mm)
	}
	if !r.Has("nearer than that to the end") {
		t.Errorf("the doubt is not told\n%s", told(r.Answer))
	}
}

// TM 10-3930-660-34, p. 8-27: each ring one notch from zero end play.
func TestSidePreloadByNotches(t *testing.T) {
	in := NotchPreload{Spec: light, Adjusters: sixteen, Left: Read(1), Right: Read(1)}
	r := must[SpreadResult](t)(SidePreloadByNotches(in))
	if !near(r.Spread, 0.1875*mm, 1e-9) {
		t.Errorf("two notches close %g mm, want 0.1875", r.Spread/mm)
	}
	wantState(t, r.Answer, Fine)
	in.Right = Read(2)
	wantState(t, must[SpreadResult](t)(SidePreloadByNotches(in)).Answer, Look, "crown wheel has moved")
}
