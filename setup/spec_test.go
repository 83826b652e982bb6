package setup

import (
	"encoding/json"
	"reflect"
	"strings"
	"testing"

	"axlewright/internal/published"
	"axlewright/quantity"
)

func TestRangeOfEveryItem(t *testing.T) {
	for _, kind := range append(Kinds(), "") {
		for _, item := range Items() {
			l := Spec{Kind: kind}.Limit(item)
			if l.Item != item || l.High <= 0 || l.Low > l.High || l.Tag == "" || !strings.HasPrefix(l.From(), "["+string(l.Tag)+"]") {
				t.Errorf("%s, %q: %+v from %q", item, kind, l, l.From())
			}
			if item.Dim().Unit() == "" || l.Range() == "" {
				t.Errorf("%s has neither unit nor range", item)
			}
			if l.hasAim() && !(l.AimLow >= l.Low && l.AimHigh <= l.High) {
				t.Errorf("%s aims outside its range", item)
			}
		}
	}
}

func TestBandsOfTheTrade(t *testing.T) {
	at := func(kind Kind, item Item) Limit { return Spec{Kind: kind}.Limit(item) }
	const source = "published for one axle of the kind"
	published.Check(t, []published.Row{
		{Name: "lash, light 4x4 with adjusters, from thou", Got: at(LightAdjusted, Lash).Low / 25.4e-6, Printed: "3", Source: source},
		{Name: "to thou", Got: at(LightAdjusted, Lash).High / 25.4e-6, Printed: "7", Source: source},
		{Name: "lash, light truck, from thou", Got: at(LightTruck75, Lash).Low / 25.4e-6, Printed: "5", Source: source},
		{Name: "to thou", Got: at(LightTruck85, Lash).High / 25.4e-6, Printed: "9", Source: source},
		{Name: "pinion, 7.5 in, from N·m", Got: at(LightTruck75, PinionNew).Low, Printed: "2.7", Source: source},
		{Name: "to N·m", Got: at(LightTruck75, PinionNew).High, Printed: "3.6", Source: source},
		{Name: "pinion, 8.5 in, from N·m", Got: at(LightTruck85, PinionNew).Low, Printed: "2.3", Source: source},
		{Name: "to N·m", Got: at(LightTruck85, PinionNew).High, Printed: "2.8", Source: source},
		{Name: "used, 7.5 in, from N·m", Got: at(LightTruck75, PinionUsed).Low, Printed: "0.9", Source: source + "; printed there as 1.0 beside 8 lbf·in"},
		{Name: "to N·m", Got: at(LightTruck75, PinionUsed).High, Printed: "1.4", Source: source},
		{Name: "used, 8.5 in, from N·m", Got: at(LightTruck85, PinionUsed).Low, Printed: "1.1", Source: source},
		{Name: "to N·m", Got: at(LightTruck85, PinionUsed).High, Printed: "1.7", Source: source},
		{Name: "pinion, 8.9 in, from lbf·inch", Got: at(LightAdjusted, PinionNew).Low / poundInch, Printed: "18", Source: source + "; printed 20 beside 2 N·m"},
		{Name: "to lbf·inch", Got: at(LightAdjusted, PinionNew).High / poundInch, Printed: "40", Source: source},
		{Name: "run-out, pegged, mm", Got: Spec{Kind: LightAdjusted, Pegged: true}.Limit(WheelRunOut).High / mm, Printed: "0.10", Source: "common practice, no source"},
		{Name: "run-out, heavy truck, thou", Got: at(HeavyTruck, WheelRunOut).High / 25.4e-6, Printed: "10", Source: source},
	})
}

func TestOwnRangeGoesBeforeTheTrade(t *testing.T) {
	spec := light.With(Maker(Lash, 0.10*mm, 0.15*mm, "54-12"), Own(LashVariation, 0, 0.04*mm, "sheet 3"))
	l := spec.Limit(Lash)
	if l.From() != "maker's page 54-12" || l.Text() != "0.10 to 0.15 mm (4 to 6 thou) (maker's page 54-12)" {
		t.Errorf("%q", l.Text())
	}
	if len(l.Others) == 0 || l.Others[0].Tag != Published {
		t.Errorf("what the trade says is lost: %v", l.Others)
	}
	if got := spec.Limit(LashVariation).From(); got != "shop's own sheet 3" {
		t.Errorf("%q", got)
	}
	if _, changed := light.Own[Lash]; changed {
		t.Error("With changed the spec it was called on")
	}
	if err := spec.Check(); err != nil {
		t.Error(err)
	}
}

func TestBadSpecs(t *testing.T) {
	for field, spec := range map[string]Spec{
		"Spec.Kind":           {Kind: "tank"},
		"Spec.Own[lash].Page": light.With(Maker(Lash, 0.1*mm, 0.2*mm, "")),
		"Spec.Own[lash].High": light.With(Maker(Lash, 0.2*mm, 0.1*mm, "5")),
		"Spec.Own[lash].Low":  light.With(Maker(Lash, -0.2*mm, 0.1*mm, "5")),
		"Spec.Own[lash].Tag":  light.With(Limit{Item: Lash, Low: 0.1 * mm, High: 0.2 * mm, Tag: Published}),
		"Spec.Own[lash].Aim":  light.With(Limit{Item: Lash, Low: 0.1 * mm, High: 0.2 * mm, AimLow: 0.1 * mm, AimHigh: 0.3 * mm, Tag: ShopsOwn}),
		"Spec.Own[lash]":      {Own: map[Item]Limit{Lash: Own(WheelRunOut, 0, 1*mm, "")}},
		"Spec.Own[luck]":      light.With(Own("luck", 0, 1, "")),
	} {
		wantField(t, spec.Check(), field)
	}
	if err := (Spec{}).Check(); err != nil {
		t.Errorf("an empty spec: %v", err)
	}
}

func TestJudgeOneReading(t *testing.T) {
	judge := func(item Item, value float64) Answer {
		t.Helper()
		return must[Answer](t)(Judge(light, item, Read(value)))
	}
	wantState(t, judge(FlangeRunOut, 0.08*mm), Fine, "is within 0.13 mm (5 thou)")
	wantState(t, judge(FlangeRunOut, 0.12*mm), Fine, "better is up to 0.10 mm")
	wantState(t, judge(FlangeRunOut, 0.14*mm), Look, "is over 0.13 mm (5 thou) ([T] custom of the trade, no source)")
	wantState(t, judge(CupGap, 0.0005*25.4*mm), Fine)
	wantState(t, judge(CupGap, 0.002*25.4*mm), Look, "must not enter")
	wantState(t, must[Answer](t)(Judge(Spec{}, Lash, Read(0.15*mm))), Look, "Say the kind")
	wantState(t, must[Answer](t)(Judge(light, Lash, Reading{})), NotYet)
	// Rounded, 0.181 and the end of its range, 0.177, read alike.
	wantState(t, judge(Lash, 0.181*mm), Look, "0.181 mm (7.13 thou) is over 0.177 mm (6.97 thou), the end of")
	_, err := Judge(light, "luck", Read(1))
	wantField(t, err, "item")
	_, err = Judge(light, FlangeRunOut, Read(80))
	wantField(t, err, "reading")
}

func TestDisagreementIsTold(t *testing.T) {
	a := must[Answer](t)(Judge(light, PegGap, Read(0.25*mm)))
	for _, words := range []string{"[S]", "[T]", "[?] the trade disagrees: touch, then back a flat or two", "no source found"} {
		if !a.Has(words) {
			t.Errorf("%q is not told\n%s", words, told(a))
		}
	}
}

func TestStates(t *testing.T) {
	for want, states := range map[State][]State{Fine: {}, NotYet: {Fine, NotYet}, Look: {NotYet, Look, Fine}, Stop: {Look, Stop, Fine}} {
		if got := Worst(states...); got != want {
			t.Errorf("worst of %v is %q", states, got)
		}
	}
	seen := map[string]bool{}
	for _, s := range []State{Fine, NotYet, Look, Stop} {
		if seen[s.Symbol()] {
			t.Errorf("two states share %q", s.Symbol())
		}
		seen[s.Symbol()] = true
	}
}

// Stored and read again, an answer is what it was.
func TestAnswersAreValues(t *testing.T) {
	a := judged(t, wrench(light, 7)).Answer
	var back Answer
	if err := json.Unmarshal(must[[]byte](t)(json.Marshal(a)), &back); err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(a, back) {
		t.Errorf("stored %+v, read %+v", a, back)
	}
}

// Both systems of units stand in every figure of a sum, torques with inch or
// foot spelled.
func TestSumsAreInBothSystems(t *testing.T) {
	in := wrench(light, 2.4)
	in.Torque = Typed(must[quantity.Quantity](t)(quantity.Parse("21 lbf in", quantity.Torque)))
	r := judged(t, in)
	if got := r.Sum[0].Shown; got != "2.4 N·m (21 lbf·inch)" {
		t.Errorf("shown %q", got)
	}
	if got := r.Sum[0].Source; got != "typed 21 lbf in" {
		t.Errorf("what was typed is told as %q", got)
	}
	for _, r := range []Answer{r.Answer, notches(t, AdjustLash{Spec: light, Adjusters: sixteen, Lash: Read(0.3 * mm), Gears: NewGears}).Answer,
		tightened(t, tight("M12x1.75", "10.9", Oiled, 94)).Answer, peg(t, pegSet(1)).Answer} {
		for _, l := range r.Sum {
			switch l.Unit {
			case "m", "N", "N·m":
				if !strings.Contains(l.Shown, "(") {
					t.Errorf("%s is shown as %q", l.Meaning, l.Shown)
				}
			}
			if l.Origin == "" {
				t.Errorf("%s: nobody says where %s is from", l.Meaning, l.Shown)
			}
		}
	}
}

// Every band as the trade's list has it, in the unit in which it is printed there.
// [S] are figures of workshop manuals for one axle each, [T] common practice
// without a source.
func TestEveryBandAsListed(t *testing.T) {
	const manual, custom = "published for one axle of the kind", "common practice, no source"
	thou, pound, unit := 25.4e-6, poundInch, 1.0
	for _, c := range []struct {
		item             Item
		kind             Kind
		low, high        string // low "" is none
		in               float64
		source           string
		within           float64 // where the list rounds its second unit
		aimLow, aimHigh_ string
	}{
		{item: Lash, kind: SmallPassenger, low: "4", high: "6", in: thou, source: manual},
		{item: Lash, kind: SmallPassenger, low: "0.10", high: "0.15", in: mm, source: manual},
		{item: Lash, kind: LightAdjusted, low: "0.076", high: "0.177", in: mm, source: manual},
		{item: Lash, kind: LightTruck75, low: "0.13", high: "0.23", in: mm, source: manual},
		{item: Lash, kind: LightTruck95, low: "0.075", high: "0.25", in: mm, source: manual + ": 0.125 to 0.20 ± 0.05", aimLow: "0.125", aimHigh_: "0.20"},
		{item: Lash, kind: HeavyShimmed, low: "6", high: "11", in: thou, source: manual},
		{item: Lash, kind: HeavyTruck, low: "0.3", high: "0.4", in: mm, source: manual},
		{item: LashVariation, high: "0.07", in: mm, source: manual},
		{item: PinionNew, kind: SmallPassenger, low: "6", high: "9", in: pound, source: manual},
		{item: PinionNew, kind: LightTruck75, low: "24", high: "32", in: pound, source: manual},
		{item: PinionNew, kind: LightTruck95, low: "20", high: "25", in: pound, source: manual},
		{item: PinionNew, kind: LightAdjusted, low: "2", high: "4.5", in: unit, source: manual},
		{item: PinionNew, kind: HeavyShimmed, low: "17", high: "30", in: pound, source: manual},
		{item: PinionNew, kind: HeavyTruck, low: "0.8", high: "1.2", in: unit, source: manual},
		{item: PinionUsed, kind: LightTruck75, low: "8", high: "12", in: pound, source: manual},
		{item: PinionUsed, kind: LightTruck85, low: "10", high: "15", in: pound, source: manual},
		{item: PinionUsed, kind: LightAdjusted, low: "1", high: "2", in: unit, source: manual},
		{item: PinionUsed, kind: SmallPassenger, low: "3", high: "9", in: pound, source: "by hand: half to all of 6 to 9, used bearings having lost up to half"},
		{item: PinionUsed, kind: HeavyTruck, low: "0.4", high: "1.2", in: unit, source: "by hand: half to all of 0.8 to 1.2"},
		{item: SealDrag, low: "0.3", high: "0.6", in: unit, source: custom},
		{item: TotalRise, low: "0.8", high: "1.24", in: unit, source: manual},
		{item: CentreDrag, low: "0.6", high: "0.7", in: unit, source: manual},
		{item: WheelRunOut, kind: SmallPassenger, high: "2", in: thou, source: manual},
		{item: WheelRunOut, kind: LightAdjusted, high: "0.10", in: mm, source: manual},
		{item: WheelRunOut, kind: LightTruck85, high: "8", in: thou, source: manual},
		{item: WheelRunOut, kind: HeavyTruck, high: "10", in: thou, source: manual},
		{item: SeatRunOut, high: "0.05", in: mm, source: custom},
		{item: FlangeRunOut, high: "0.13", in: mm, source: custom},
		{item: BoreRound, high: "0.03", in: mm, source: custom},
		{item: AxisOffset, high: "0.05", in: mm, source: custom},
		{item: FaceFlat, high: "0.10", in: mm, source: custom},
		{item: CupGap, high: "1.5", in: thou, source: manual},
		{item: SideSpread, kind: LightAdjusted, low: "8", high: "12", in: thou, source: manual},
		{item: SideSpread, kind: HeavyTruck, low: "6", high: "13", in: thou, source: custom},
		{item: SpreaderReach, high: "12", in: thou, source: manual},
		{item: PegGap, low: "0.20", high: "0.30", in: mm, source: custom},
		{item: PegTight, low: "0.15", high: "0.40", in: mm, source: custom},
		{item: PegLockTorque, low: "30", high: "60", in: unit, source: custom},
	} {
		l := Spec{Kind: c.kind}.Limit(c.item)
		if l.Vague {
			t.Errorf("%s of %s is vague", c.item, c.kind)
			continue
		}
		rows := []published.Row{{Name: string(c.item) + ", " + string(c.kind) + ", to", Got: l.High / c.in, Printed: c.high, Source: c.source}}
		if c.low == "" && l.Low != 0 {
			t.Errorf("%s: a least of %g that nobody printed", c.item, l.Low)
		} else if c.low != "" {
			rows = append(rows, published.Row{Name: string(c.item) + ", " + string(c.kind) + ", from", Got: l.Low / c.in, Printed: c.low, Source: c.source})
		}
		if c.aimLow != "" {
			rows = append(rows, published.Row{Name: "aim from", Got: l.AimLow / c.in, Printed: c.aimLow, Source: c.source},
				published.Row{Name: "aim to", Got: l.AimHigh / c.in, Printed: c.aimHigh_, Source: c.source})
		}
		published.Check(t, rows)
	}
}

// What the seal adds is taken off either way: a torque inside holds whatever the
// seal drags.
func TestRangeWithTheSealIn(t *testing.T) {
	l := light.Limit(PinionNew).Plus(light.Limit(SealDrag), "with the seal in")
	if !near(l.Low, 2.6, 1e-12) || !near(l.High, 4.8, 1e-12) || l.Vague || !strings.HasSuffix(l.For, "with the seal in") {
		t.Errorf("2.0 to 4.5 and 0.3 to 0.6 N·m: %+v", l)
	}
	narrow := Limit{Item: PinionNew, Low: 1, High: 1.1}.Plus(light.Limit(SealDrag), "x")
	if !narrow.Vague || !near(narrow.Low, 1.3, 1e-12) || !near(narrow.High, 1.7, 1e-12) {
		t.Errorf("no torque holds for certain: %+v", narrow)
	}
	for _, nm := range []float64{2.2, 2.61, 3.5, 4.79, 5.0} { // the sum and the box say the same
		in := wrench(light, nm)
		in.Seal = SealIn
		if got := judged(t, in).State == Fine; got != l.Holds(nm) {
			t.Errorf("%g N·m with the seal in: the sum says %v, the box %v", nm, got, l.Holds(nm))
		}
	}
}
