package setup

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"axlewright/internal/published"
)

func bore(along, aslant, across float64) Bore {
	return Bore{Read(along * mm), Read(aslant * mm), Read(across * mm)}
}

func goodBores() BoreCheck {
	return BoreCheck{Spec: light, Caps: CapsTorqued, Left: bore(72, 72.005, 72.01), Right: bore(72, 72, 72), Mandrel: MandrelFree,
		Feeler: Read(0), OffLine: Read(0.03 * mm), LineLength: Read(140 * mm), AxisOff: Read(0.02 * mm), SquareOff: Read(0.02 * mm), SquareLen: Read(100 * mm)}
}

func judgeBores(t testing.TB, in BoreCheck) BoreResult {
	t.Helper()
	return must[BoreResult](t)(JudgeBores(in))
}

func TestBoreAnglesPublished(t *testing.T) {
	in := goodBores()
	in.OffLine, in.SquareOff = Read(0.05*mm), Read(0.03*mm)
	r := judgeBores(t, in)
	published.Check(t, []published.Row{
		{Name: "0.05 mm over 140 mm, minutes of arc", Got: r.LineAngle / degree * 60, Printed: "1.23", Source: sheetSource},
		{Name: "0.05 mm, thou", Got: in.OffLine.SI / 25.4e-6, Printed: "2", Source: sheetSource},
		{Name: "0.03 mm over 100 mm, minutes of arc", Got: r.SquareAngle / degree * 60, Printed: "1.03", Source: "by hand"},
	})
	wantState(t, r.Answer, Fine, "Accept the bores")
	if r.Verdict != Accept || r.Checks[2].Shown != "1.23′" {
		t.Errorf("verdict %q, angle shown %q", r.Verdict, r.Checks[2].Shown)
	}
}

func TestBoreVerdicts(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*BoreCheck)
		want   BoreVerdict
		state  State
		words  string
	}{
		{"good", func(*BoreCheck) {}, Accept, Fine, "Accept"},
		{"stiff mandrel alone", func(b *BoreCheck) { b.Mandrel = MandrelStiff }, Scrape, Look, "scrape the high places"},
		{"a little oval", func(b *BoreCheck) { b.Left = bore(72, 72.02, 72.045) }, Scrape, Look, "Out-of-round of the left bore"},
		{"feeler enters", func(b *BoreCheck) { b.Feeler = Read(0.05 * mm) }, Scrape, Look, "Feeler that enters"},
		{"very oval", func(b *BoreCheck) { b.Left = bore(72, 72.05, 72.10) }, LineBore, Look, "Scraping does not cure"},
		{"out of line", func(b *BoreCheck) { b.OffLine, b.Mandrel = Read(0.15*mm), MandrelBlocks }, LineBore, Look, "Line-bore from the pinion axis"},
		{"a little out of line and no mandrel goes in", func(b *BoreCheck) { b.OffLine, b.Mandrel = Read(0.06*mm), MandrelBlocks }, LineBore, Look, "Line-bore"},
		{"pinion out of square", func(b *BoreCheck) { b.SquareOff = Read(0.05 * mm) }, LineBore, Look, "out of square"},
		{"pinion off its place", func(b *BoreCheck) { b.AxisOff = Read(0.08 * mm) }, LineBore, Look, "off its place"},
		{"welded without a jig", func(b *BoreCheck) { b.OffLine = Read(0.5 * mm) }, Scrap, Look, "more than line-boring is worth"},
		{"cracked", func(b *BoreCheck) { b.Cracked = true }, Scrap, Stop, "crack runs into a bearing bore"},
		{"caps loose", func(b *BoreCheck) { b.Caps = CapsNotTorqued }, NotJudged, Stop, "Torque the caps"},
		{"caps not said", func(b *BoreCheck) { b.Caps = "" }, NotJudged, NotYet, "were the caps torqued"},
		{"angle missing", func(b *BoreCheck) { b.Right.Aslant = Reading{} }, NotJudged, NotYet, "right bore at 45°"},
		{"not everything measured", func(b *BoreCheck) { b.AxisOff, b.SquareOff = Reading{}, Reading{} }, Accept, Fine, "Not measured: squareness"},
	} {
		in := goodBores()
		c.change(&in)
		r := judgeBores(t, in)
		if r.Verdict != c.want || r.State != c.state || !r.Has(c.words) {
			t.Errorf("%s: %q, %s\n%s", c.name, r.Verdict, r.State, told(r.Answer))
		}
	}
}

// Three diameters show an oval whose long axis lies between them.
func TestOvalThroughThreeDiameters(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		mean, half := rapid.Float64Range(50, 120).Draw(rt, "mean")*mm, rapid.Float64Range(0, 0.1).Draw(rt, "half")*mm
		widest := rapid.Float64Range(0, math.Pi).Draw(rt, "widest")
		at := func(angle float64) Reading { return Read(mean + half*math.Cos(2*(angle-widest))) }
		s := Bore{at(0), at(45 * degree), at(90 * degree)}.shape()
		if !near(s.Mean, mean, 1e-12) || !near(s.Oval, 2*half, 1e-12) {
			rt.Errorf("mean %g, oval %g; want %g, %g", s.Mean, s.Oval, mean, 2*half)
		}
		if off := math.Abs(math.Remainder(s.Widest-widest, math.Pi)); half > 1e-6 && off > 1e-6 {
			rt.Errorf("widest at %g, want %g", s.Widest, widest)
		}
	})
	if s := bore(72, 72.03, 72).shape(); !near(s.Oval, 0.06*mm, 1e-9) || !near(s.Widest, 45*degree, 1e-9) {
		t.Errorf("0.03 more at 45° is an oval of %g mm, widest at %g°: want 0.06 at 45°", s.Oval/mm, s.Widest/degree)
	}
}

func TestWeldingMovedTheBores(t *testing.T) {
	in := BoresAroundWelding{Spec: light, Before: goodBores(), After: goodBores(), BeforeGauge: "bore gauge 2", AfterGauge: "bore gauge 2"}
	in.After.Left = bore(72, 71.98, 71.96)
	r := must[WeldResult](t)(CompareBores(in))
	wantState(t, r.Answer, Look, "left bore at 90°, through the crown of the cap closed by 0.05 mm")
	if len(r.Changes) != 9 || !near(r.Worst.Change, -0.05*mm, 1e-9) {
		t.Errorf("%d changes, worst %g mm", len(r.Changes), r.Worst.Change/mm)
	}
	in.After = goodBores()
	in.BeforeTemp, in.AfterTemp = Read(293.15), Read(313.15)
	in.After.Left = bore(72+0.01584, 72.005+0.01584, 72.01+0.01584) // 72 mm grow 0.01584 mm by 20 K
	r = must[WeldResult](t)(CompareBores(in))
	if math.Abs(r.Changes[0].Change) > 1e-8 {
		t.Errorf("warmth alone is told as a change of %g mm", r.Changes[0].Change/mm)
	}
	in.AfterTemp = Read(340)
	wantState(t, must[WeldResult](t)(CompareBores(in)).Answer, NotYet, "cool in the jig")
	in.AfterTemp = Reading{}
	in.Before.Caps = CapsNotTorqued
	wantState(t, must[WeldResult](t)(CompareBores(in)).Answer, Stop, "Before welding: The caps were not torqued")
	in.Before = BoreCheck{Caps: CapsTorqued, Mandrel: MandrelFree}
	wantState(t, must[WeldResult](t)(CompareBores(in)).Answer, NotYet, "before and after welding")
	in.Before = goodBores()
	in.After.Left.Along = Read(72) // metres
	_, err := CompareBores(in)
	wantField(t, err, "After.Left.Along")
}

func TestGoodBoresThatMovedAreTold(t *testing.T) {
	in := BoresAroundWelding{Spec: light, Before: goodBores(), After: goodBores()}
	in.Before.Right = bore(72.05, 72.05, 72.05)
	wantState(t, must[WeldResult](t)(CompareBores(in)).Answer, Fine, "look at the jig")
}
