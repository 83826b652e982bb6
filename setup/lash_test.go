package setup

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"axlewright/calc/gear"
	"axlewright/internal/published"
)

func lashes(t testing.TB, in LashRound) LashResult {
	t.Helper()
	return must[LashResult](t)(LashOfRound(in))
}

func lashAt(values ...float64) LashRound {
	in := LashRound{Spec: light, Plunger: gear.DialTangential, Gears: NewGears}
	for _, v := range values {
		in.Readings = append(in.Readings, Read(v*mm))
	}
	return in
}

func TestDialSquareToTheTooth(t *testing.T) {
	in := lashAt(0.115, 0.115, 0.115, 0.115)
	in.Plunger = gear.DialSquare
	assumed := lashes(t, in)
	in.Mesh = pair354(t, 0)
	known := lashes(t, in)
	published.Check(t, []published.Row{
		{Name: "reads 0.115, true lash by assumed angles, mm", Got: assumed.Mean / mm, Printed: "0.149", Source: sheetSource},
		{Name: "the same by the pair's angles, mm", Got: known.Mean / mm, Printed: "0.149", Source: sheetSource},
	})
	wantState(t, assumed.Answer, Fine, "stood square to the tooth and reads 77 % of the lash")
	if assumed.Sum[0].Origin != "assumed" || known.Sum[0].Origin != "computed" {
		t.Errorf("origins %q and %q", assumed.Sum[0].Origin, known.Sum[0].Origin)
	}
}

func TestLashRoundTheWheel(t *testing.T) {
	wantState(t, lashes(t, lashAt(0.12, 0.14, 0.16, 0.13)).Answer, Fine)
	wantState(t, lashes(t, lashAt(0.16, 0.18, 0.17, 0.15)).Answer, Look, "Lash runs from 0.15 mm")
	wantState(t, lashes(t, lashAt(0.24, 0.25, 0.26, 0.25)).Answer, Look, "Crown wheel in, towards the pinion by about 0.16 mm") // 0.2500 − 0.1265 over 0.78
	wantState(t, lashes(t, lashAt(0.05, 0.06, 0.05, 0.06)).Answer, Look, "Crown wheel out, away from the pinion")
	wantState(t, lashes(t, lashAt(0.15, 0.14)).Answer, NotYet, "3 places at least")
	in := lashAt(0.12, 0.14, 0.16, 0.13)
	in.Readings = append(in.Readings, Reading{}, Reading{}, Reading{}, Reading{}) // half of the round is not read yet
	if r := lashes(t, in); len(r.Points) != 4 || r.Mean != (0.12+0.14+0.16+0.13)/4*mm {
		t.Errorf("%d points, mean %g", len(r.Points), r.Mean)
	}
}

func TestWhatALargeVariationLooksLike(t *testing.T) {
	once := lashAt()
	once.Readings = turn(8, 0.13*mm, quiet, hump(1, 0.045*mm, 100*degree))
	wantState(t, lashes(t, once).Answer, Look, "once a turn, most at 100°")
	twice := lashAt()
	twice.Readings = turn(8, 0.13*mm, quiet, hump(2, 0.06*mm, 40*degree))
	r := lashes(t, twice)
	wantState(t, r.Answer, Look, "bent or pulled")
	if !near(r.Twice.High, 20*degree, 1e-9) || !near(r.Twice.FullReading(), 0.12*mm, 1e-12) {
		t.Errorf("two humps of %g mm, the first at %g°", r.Twice.FullReading()/mm, r.Twice.High/degree)
	}
	wantState(t, lashes(t, lashAt(0.13, 0.13, 0.09, 0.13, 0.13, 0.17, 0.12, 0.13)).Answer, Look, "without order")
}

// A crown wheel that runs out by t along its axis shows in the lash by t times
// what lash does for a movement.
func TestRunOutShowsInTheLash(t *testing.T) {
	mesh := pair354(t, 0.108)
	sens := must[Sensitivity](t)(mesh.Sensitivity()).Wheel.Likely
	in := lashAt()
	in.Mesh = mesh
	in.Readings = turn(8, 0.13*mm, quiet, hump(1, 0.02*mm*sens, 1))
	r := lashes(t, in)
	if !near(r.Axial, 0.04*mm, 1e-12) {
		t.Errorf("run-out %g mm behind the lash, want 0.04", r.Axial/mm)
	}
	if !near(r.MeanCircle, 0.13*mm*0.094/0.108, 1e-12) {
		t.Errorf("on the mean circle %g mm", r.MeanCircle/mm)
	}
}

func TestLashOfUsedAndOfRacedGears(t *testing.T) {
	used := lashAt(0.30, 0.31, 0.29, 0.30)
	used.Gears = UsedGears
	wantState(t, lashes(t, used).Answer, Look, "before it was taken apart was not recorded")
	used.AsFound = Read(0.31 * mm)
	wantState(t, lashes(t, used).Answer, Fine, "[T] A set that has run")
	raced := lashAt(0.12, 0.14, 0.16, 0.13)
	raced.Use = CompetitionUse
	wantState(t, lashes(t, raced).Answer, Fine, "[T] For competition the trade sets the upper third of the range, 0.14 to 0.18 mm")
}

// TM 10-3930-660-34, p. 8-28: a new set 0.012 in, an old one as measured before
// it was taken apart, 0.008 to 0.018 in; run-out 0.008 in at most.
func TestRulesOfAManual(t *testing.T) {
	spec := light.With(Maker(Lash, 0.011*0.0254, 0.013*0.0254, "8-28"), Maker(WheelRunOut, 0, 0.008*0.0254, "8-28"))
	published.Check(t, []published.Row{
		{Name: "middle of the range for new gears, in", Got: spec.Limit(Lash).Target() / 0.0254, Printed: "0.012", Source: "TM 10-3930-660-34, p. 8-28"},
		{Name: "run-out, mm", Got: spec.Limit(WheelRunOut).High / mm, Printed: "0.20", Source: "TM 10-3930-660-34, p. 8-28, and light trucks, published for one axle"},
	})
	in := lashAt(0.40, 0.41, 0.42, 0.41)
	in.Spec, in.Gears, in.AsFound = spec, UsedGears, Read(0.016*0.0254)
	wantState(t, lashes(t, in).Answer, Fine)
	in.Gears = NewGears
	wantState(t, lashes(t, in).Answer, Look, "maker's page 8-28")
}

func TestMeanAndVariation(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		values := rapid.SliceOfN(rapid.Float64Range(0.02, 0.5), 4, 8).Draw(rt, "lash")
		r := lashes(t, lashAt(values...))
		if r.Least > r.Mean || r.Mean > r.Most || !near(r.Variation, r.Most-r.Least, 1e-15) {
			rt.Errorf("least %g, mean %g, most %g, variation %g", r.Least, r.Mean, r.Most, r.Variation)
		}
		if r.Once.FullReading() > 1.5*r.Variation+1e-12 || math.IsNaN(r.Rest) {
			rt.Errorf("once a turn %g of a variation of %g", r.Once.FullReading(), r.Variation)
		}
		// Beginning at another place turns the wave and changes nothing else.
		q := lashes(t, lashAt(append(values[1:len(values):len(values)], values[0])...))
		if !near(q.Mean, r.Mean, 1e-15) || !near(q.Once.Amplitude, r.Once.Amplitude, 1e-12) {
			rt.Errorf("from another mark: mean %g, was %g", q.Mean, r.Mean)
		}
	})
}
