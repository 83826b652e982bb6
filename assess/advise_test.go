package assess

import (
	"context"
	"encoding/json"
	"math"
	"runtime"
	"slices"
	"strings"
	"testing"

	"axlewright/axle"
)

const fewDraws = 200

func load(t testing.TB, name string) (axle.Enquiry, axle.Catalogue) {
	t.Helper()
	e, c, err := axle.LoadEnquiry("../examples/enquiries/" + name + ".yaml")
	if err != nil {
		t.Fatal(err)
	}
	return e, c
}

func adviceOn(t testing.TB, e axle.Enquiry, c axle.Catalogue, draws int) Advice {
	t.Helper()
	a, err := Advise(context.Background(), &e, &c, Options{Draws: draws})
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// The five enquiries of the trade, with the limits printed for them. Common
// practice, no source: grip = friction × axle load × 9.81 × loaded radius,
// engine = engine × gearbox × low range × axle ratio × 0.9.
func TestEnquiriesComeOutAsPrinted(t *testing.T) {
	for _, c := range []struct {
		name         string
		engine, grip float64
		index        float64
	}{
		{"01-hill-farm", 7191, 3872, 1.45},
		{"03-overland", 13580, 6043, 2.26},
		{"05-restorer", 5152, 2945, 1.10},
		{"06-operator", 15234, 6679, 2.50},
		{"09-quarry", 16516, 6750, 2.52},
	} {
		e, catalogue := load(t, c.name)
		stock, err := catalogue.Stock(e.Casting, e.Gears)
		if err != nil {
			t.Fatal(err)
		}
		p, err := peakOf(&e.Vehicle, &stock.Gears, e.Mounting)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(p.engine/c.engine-1) > 0.002 {
			t.Errorf("%s: engine limit %.0f, printed %.0f", c.name, p.engine, c.engine)
		}
		// The print takes g as 9.81 and rounds the tyre's radius.
		if math.Abs(p.grip/c.grip-1) > 0.012 {
			t.Errorf("%s: grip limit %.0f, printed %.0f", c.name, p.grip, c.grip)
		}
		if p.governing != p.grip {
			t.Errorf("%s: grip must govern", c.name)
		}
		std, err := peakOf(e.Standard, &stock.Gears, e.Mounting)
		if err != nil {
			t.Fatal(err)
		}
		if index := p.governing / std.governing; math.Abs(index/c.index-1) > 0.012 {
			t.Errorf("%s: demand index %.2f, printed %.2f", c.name, index, c.index)
		}
	}
}

func TestSameSeedSameAnswerOnAnyNumberOfCores(t *testing.T) {
	e, c := load(t, "14-front-coast")
	text := func(cores int, seed uint64) string {
		defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(cores))
		a, err := Advise(context.Background(), &e, &c, Options{Draws: fewDraws, Seed: seed})
		if err != nil {
			t.Fatal(err)
		}
		b, err := json.Marshal(a)
		if err != nil {
			t.Fatal(err)
		}
		return string(b)
	}
	one := text(1, 3)
	if many := text(4, 3); many != one {
		t.Error("four cores give another answer than one")
	}
	if other := text(4, 4); other == one {
		t.Error("another seed gives the same answer")
	}
}

func TestUpgradeWeakensNoLinkItDoesNotTouch(t *testing.T) {
	e, c := load(t, "03-overland")
	s, err := newStudy(&e, &c, Options{Draws: fewDraws})
	if err != nil {
		t.Fatal(err)
	}
	if err := s.run(context.Background(), nil); err != nil {
		t.Fatal(err)
	}
	compared := 0
	for b := range s.builds {
		for l := range links {
			if s.kinds[l].of[b] != s.kinds[l].of[0] {
				continue // it touches the link
			}
			compared++
			if !slices.Equal(s.giveOut[l][s.kinds[l].of[b]], s.giveOut[l][s.kinds[l].of[0]]) {
				t.Errorf("%s changes in build %q", links[l].name, buildName(s.builds[b]))
			}
		}
	}
	if compared < 100 {
		t.Fatalf("compared only %d pairs", compared)
	}
}

// A better lock, a four-pin centre or stronger shafts touch one link each and
// must raise it in every draw.
func TestUpgradeRaisesItsOwnLink(t *testing.T) {
	for _, tc := range []struct {
		link  string
		raise func(a *axle.Assembly)
	}{
		{"spun cup turns the adjuster", func(a *axle.Assembly) { a.Casting.Lock.Shear.Value *= 2 }},
		{"half-shaft yields", func(a *axle.Assembly) { a.HalfShafts.Yield.Value *= 2 }},
		{"diff-centre pins shear", func(a *axle.Assembly) { a.Centre.PinShear.Value *= 2 }},
		{"pinion tooth root", func(a *axle.Assembly) { a.Gears.RootStrength.Value *= 2 }},
		{"crown wheel slips on its bolts", func(a *axle.Assembly) { a.Gears.WheelBolts.Friction.Value *= 2 }},
	} {
		e, c := load(t, "03-overland")
		stock, err := c.Stock(e.Casting, e.Gears)
		if err != nil {
			t.Fatal(err)
		}
		stock.Casting.Lock.Shear.Value /= 8 // so weak that it gives out within the range looked at
		before := giveOutOf(t, &e, &c, stock, tc.link)
		tc.raise(&stock)
		after := giveOutOf(t, &e, &c, stock, tc.link)
		// Every one of these limits is in proportion to torque: twice the strength,
		// twice the torque.
		if math.Abs(after/before-2) > 0.01 {
			t.Errorf("%s: twice the strength gives %.3f times the torque", tc.link, after/before)
		}
	}
}

func giveOutOf(t *testing.T, e *axle.Enquiry, c *axle.Catalogue, build axle.Assembly, name string) float64 {
	t.Helper()
	all, err := Explain(e, c, build)
	if err != nil {
		t.Fatal(err)
	}
	i := slices.IndexFunc(all, func(x Explanation) bool { return x.Link == name })
	if i < 0 {
		t.Fatalf("%s does not give out", name)
	}
	return all[i].GiveOut
}

func TestWiderDoubtWidensTheBand(t *testing.T) {
	width := func(share float64) float64 {
		e, c := load(t, "03-overland")
		for i := range c.GearSets {
			g := &c.GearSets[i].WheelBolts.Friction
			g.Shape, g.Low, g.High = axle.Lognormal, g.Value/(1+share), g.Value*(1+share)
		}
		b := adviceOn(t, e, c, fewDraws).Builds[0]
		r, there := b.Rung("crown wheel slips on its bolts")
		if !there {
			t.Fatal("the link is not there")
		}
		return r.GiveOut.High - r.GiveOut.Low
	}
	if narrow, wide := width(0.1), width(0.5); wide < 1.3*narrow {
		t.Errorf("band %.0f with a tenth of doubt, %.0f with a half", narrow, wide)
	}
}

func TestPairedChancesAgreeWithTheirReverse(t *testing.T) {
	e, c := load(t, "14-front-coast")
	a := adviceOn(t, e, c, fewDraws)
	if len(a.Comparisons) == 0 {
		t.Fatal("nothing to compare")
	}
	for _, k := range a.Comparisons {
		if k.Stronger.Value < 0 || k.Stronger.Value > 1 {
			t.Errorf("chance %g", k.Stronger.Value)
		}
		if a.Builds[k.Dearer].Price < a.Builds[k.Cheaper].Price {
			t.Errorf("%q is called dearer than %q", a.Builds[k.Dearer].Name, a.Builds[k.Cheaper].Name)
		}
	}
}

func TestPegHelpsWhereTheAxlePullsOnTheCoastSide(t *testing.T) {
	e, c := load(t, "14-front-coast")
	a := adviceOn(t, e, c, fewDraws)
	if !a.Peg.Offered || !a.Peg.Brings || a.Peg.Gain < 0.1 {
		t.Errorf("front axle on the coast side: %+v", a.Peg.Text)
	}
	// The same axle pulling on its drive side: the weakest case for a peg.
	e.Mounting.Forward = axle.DriveFlank
	if a := adviceOn(t, e, c, fewDraws); a.Peg.Gain > 0.03 {
		t.Errorf("drive side: the peg gains %.2f: %s", a.Peg.Gain, a.Peg.Text)
	}
}

func TestAnswersIncludeStandardAndNotThisAxle(t *testing.T) {
	e, c := load(t, "05-restorer")
	e.Vehicle.Friction.Value, e.Vehicle.Friction.Low, e.Vehicle.Friction.High = 0.3, 0.28, 0.32 // wet grass
	if a := adviceOn(t, e, c, fewDraws); a.Verdict != Standard {
		t.Errorf("a light vehicle on wet grass: %s", a.Verdict)
	}
	e, c = load(t, "13-small-pinion")
	if a := adviceOn(t, e, c, fewDraws); a.Verdict != NotThisAxle {
		t.Errorf("a small pinion under a huge demand: %s", a.Verdict)
	}
}

func TestWearIsToldWithTheBuildThatLastsSurest(t *testing.T) {
	e, c := load(t, "12-towing")
	a := adviceOn(t, e, c, fewDraws)
	i := slices.IndexFunc(a.Rules, func(r Rule) bool { return r.Because == "wear" })
	if best := a.Builds[a.Best]; !best.WearsOut() || i < 0 {
		t.Fatalf("lasts %.2f, rules %+v", best.Lasts.Value, a.Rules)
	}
	_, says, there := strings.Cut(a.Rules[i].Text, "Surest to last of those that carry it: ")
	if !there {
		t.Fatalf("no surer build in %q", a.Rules[i].Text)
	}
	most, cheapest := a.Builds[a.Best].Lasts.Value, ""
	for _, b := range a.Builds {
		if b.Carries.Value >= a.Wanted && b.Lasts.Value > most {
			most, cheapest = b.Lasts.Value, b.Label()
		}
	}
	if !strings.HasPrefix(says, cheapest) {
		t.Errorf("%q, want %q", says, cheapest)
	}
}

func TestOwnerOfAnOriginalGetsNoWeldWhereOneCanBeSpared(t *testing.T) {
	e, c := load(t, "12-towing")
	e.Wanted = 0.89
	plain := adviceOn(t, e, c, fewDraws)
	cheapest := plain.Builds[plain.Recommended]
	for i := range c.Upgrades { // as if the cheapest good enough build were welded
		if slices.Contains(cheapest.Upgrades, c.Upgrades[i].Name) {
			c.Upgrades[i].Welds = true
		}
	}
	e.Use = append(e.Use, axle.Original)
	a := adviceOn(t, e, c, fewDraws)
	if a.Recommended < 0 || a.Builds[a.Recommended].Welds || a.Builds[a.Recommended].Price <= cheapest.Price || a.Best != a.Recommended {
		t.Fatalf("recommended %d of %d builds, verdict %s", a.Recommended, len(a.Builds), a.Verdict)
	}
	if a.NextUp >= 0 && a.NextUp <= a.Recommended {
		t.Errorf("the next one up, %d, is cheaper than the recommended %d", a.NextUp, a.Recommended)
	}
	if !slices.ContainsFunc(a.Rules, func(r Rule) bool { return r.Because == "originality" && r.Overrides }) {
		t.Errorf("not told: %+v", a.Rules)
	}
}

func TestDominatedBuildsAreNowhereStronger(t *testing.T) {
	e, c := load(t, "03-overland")
	e.Fitted = nil
	a := adviceOn(t, e, c, fewDraws)
	if len(a.Builds)+len(a.SetAside) < 20 {
		t.Fatalf("only %d builds", len(a.Builds)+len(a.SetAside))
	}
	for i := 1; i < len(a.Builds); i++ {
		if a.Builds[i].Price < a.Builds[i-1].Price {
			t.Fatal("builds are not sorted by price")
		}
	}
}

func BenchmarkAdvise(b *testing.B) {
	e, c := load(b, "03-overland")
	builds, err := c.BuildsFor(&e)
	if err != nil {
		b.Fatal(err)
	}
	b.ReportMetric(float64(len(builds)), "builds")
	b.ReportAllocs()
	for range b.N {
		if _, err := Advise(context.Background(), &e, &c, Options{Draws: DefaultDraws}); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkDraw is one draw of all builds with all links.
func BenchmarkDraw(b *testing.B) {
	e, c := load(b, "03-overland")
	s, err := newStudy(&e, &c, Options{Draws: 50})
	if err != nil {
		b.Fatal(err)
	}
	w := s.newWorker()
	b.ReportAllocs()
	b.ResetTimer()
	for i := range b.N {
		if err := w.draw(i % 50); err != nil {
			b.Fatal(err)
		}
	}
}

// An answer says what it was worked out from, as the sums took it.
func TestAnswerSaysWhatItWasWorkedOutFrom(t *testing.T) {
	e, c := load(t, "01-hill-farm")
	e.Vehicle.AxleLoad.Value = 1610
	a := adviceOn(t, e, c, fewDraws)
	var got []string
	for _, g := range a.From {
		got = append(got, g.Name+" "+g.Text)
	}
	want := []string{"axle load 1,610 kg (3,549 lb)", "tyre 235/85R16", "engine torque 190 N·m (140 lbf·ft)", "gearing first 3.6, low range 3.3, axle 3.54", "grip 0.7", "use farm and towing"}
	if !slices.Equal(got, want) {
		t.Errorf("it says %q", got)
	}
}
