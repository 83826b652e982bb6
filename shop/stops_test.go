package shop_test

import (
	"math"
	"slices"
	"testing"

	"axlewright/quantity"
	"axlewright/shop"
	"axlewright/shop/shoptest"
)

// standing returns the stop of that key at a job, nil where it does not stand.
func standing(j *shop.Job, key string) *shop.StandingStop {
	for _, s := range j.Stops() {
		if s.Key == key {
			return &s
		}
	}
	return nil
}

// refused demands that a value is refused by the stop, and written once the
// cause is gone.
func refused(b *shoptest.Bench, job shop.ID, key string, step shop.StepKey, item, place string, v shop.Value) {
	b.T.Helper()
	_, err := b.TryWrite(b.Owner, job, step, item, place, v)
	e, _ := err.(*shop.Error)
	if shop.CodeOf(err) != shop.Stopped || e.Stop == nil || e.Stop.Key != key || e.Says == "" {
		b.T.Fatalf("%s/%s: got %v, want the stop %q", step, item, err, key)
	}
}

func TestNoWeldOnGreyOrUnknownIron(t *testing.T) {
	b := bench(t)
	j := b.Open(shop.WorkPlates)
	refused(b, j.ID, "iron", "weld", "runs", "1", count("2"))
	for _, metal := range []string{shop.MetalUnknown, shop.MetalGrey} {
		b.Write(j.ID, "metal", "metal", "", shop.Words(metal))
		refused(b, j.ID, "iron", "weld", "runs", "1", count("2"))
	}
	// Notes and photographs are never refused.
	_, err := b.Shop.Note(b.Ctx, b.Builder, j.ID, "weld", "owner asked", "n1")
	if err != nil {
		t.Error(err)
	}
	_, err = b.Shop.AddPhoto(b.Ctx, b.Builder, j.ID, "weld", "", shoptest.Photograph(t, 30, 20))
	if err != nil {
		t.Error(err)
	}
	for _, metal := range []string{shop.MetalDuctile, shop.MetalMalleable, shop.MetalSteel} {
		b.Write(j.ID, "metal", "metal", "", shop.Words(metal))
		if s := standing(b.Write(j.ID, "weld", "runs", metal, count("2")), "iron"); s != nil {
			t.Errorf("%s is stopped: %+v", metal, s)
		}
	}
}

func TestNoWeldWithoutVentOrOverSolvent(t *testing.T) {
	b := bench(t)
	j := b.Open(shop.WorkPlates)
	b.Write(j.ID, "metal", "metal", "", shop.Words(shop.MetalSteel))
	b.Write(j.ID, "plates", "vents", "", shop.Words(shop.VentMissing))
	refused(b, j.ID, "vent", "weld", "runs", "1", count("2"))
	// Only the owner.
	_, err := b.Shop.Override(b.Ctx, b.Builder, j.ID, "vent", "I know")
	wantCode(t, err, shop.Forbidden)
	b.Write(j.ID, "plates", "vents", "", shop.Words(shop.VentsOpen))
	b.Write(j.ID, "weld", "runs", "1", count("2"))

	b.Write(j.ID, "clean", "wash", "", shop.Words("caustic", shop.SolventChlorinated))
	refused(b, j.ID, "solvent", "weld", "runs", "2", count("2"))
	_, err = b.Shop.Override(b.Ctx, b.Builder, j.ID, "solvent", "it has dried")
	wantCode(t, err, shop.Forbidden)
	b.Write(j.ID, "clean", "wash", "", shop.Words("caustic"))
	b.Write(j.ID, "weld", "runs", "2", count("2"))
}

func TestACrackedEarOrBoreIsNotBuiltUpon(t *testing.T) {
	b := bench(t)
	for _, where := range []string{shop.CrackEar, shop.CrackBore} {
		j := b.Open(shop.WorkFixings)
		b.Write(j.ID, "clean", "cracks", "", shop.Words(where))
		refused(b, j.ID, "crack", "assemble", "gears", "", shop.Text("46/13, set 7"))
		refused(b, j.ID, "crack", "drill", "wall", "", shoptest.MM("8", 8))
		b.Write(j.ID, "bores", "caps", "", shop.Words(shop.CapsTorqued)) // finding out more is not stopped
	}
}

func TestKitMustBeDrawnForTheVariant(t *testing.T) {
	b := bench(t)
	j := b.Open(shop.WorkPlates)
	b.Write(j.ID, "metal", "metal", "", shop.Words(shop.MetalSteel))
	j = b.Write(j.ID, "plates", "kit", "", shop.Used(b.Kits.ID, 1))
	if fits := j.Value("plates", "kit").Fits; len(fits) != 1 || fits[0].Label != "T24" {
		t.Errorf("the kit's castings are kept as %+v", fits)
	}
	refused(b, j.ID, "kit", "jig", "caps", "", shop.Words("yes")) // the variant is not known yet
	b.Write(j.ID, "identify", "casting", "", shop.LinkTo(shop.KindCasting, b.T31.ID))
	refused(b, j.ID, "kit", "weld", "runs", "1", count("2"))
	j = b.Write(j.ID, "identify", "casting", "", shop.LinkTo(shop.KindCasting, b.T24.ID))
	if standing(j, "kit") != nil {
		t.Error("kit and variant fit and are stopped")
	}
	b.Write(j.ID, "jig", "caps", "", shop.Words("yes"))
}

func TestBoresAreMeasuredWithCapsTorqued(t *testing.T) {
	b := bench(t)
	j := b.Open()
	if standing(j, "bores") != nil {
		t.Error("stopped before anything was measured")
	}
	// The reading itself is written; what builds on it is refused.
	b.Write(j.ID, "bores", "line", "", shoptest.MM("0.03", 0.03))
	refused(b, j.ID, "bores", "assemble", "gears", "", shop.Text("x"))
	refused(b, j.ID, "bores", "bores", "decision", "", shop.Words("accepted"))
	b.Write(j.ID, "bores", "caps", "", shop.Words(shop.CapsNotTorqued))
	refused(b, j.ID, "bores", "lash", "lash", "1", shoptest.MM("0.15", 0.15))
	b.Write(j.ID, "bores", "caps", "", shop.Words(shop.CapsTorqued))
	b.Write(j.ID, "bores", "decision", "", shop.Words("accepted"))
	b.Write(j.ID, "assemble", "gears", "", shop.Text("x"))
}

func TestPegThatTouches(t *testing.T) {
	b := bench(t)
	j := b.Open(shop.WorkPeg)
	j = b.Write(j.ID, "peg", "gap", "tight spot", shoptest.MM("0", 0))
	if e := j.Standing(shop.Slot{Step: "peg", Item: "gap", Place: "tight spot"}); e.Verdict != shop.Halt {
		t.Errorf("a gap of nothing is %q", e.Verdict)
	}
	refused(b, j.ID, "peg", "handover", "day", "", shop.Day("2026-03-09"))
	b.Write(j.ID, "peg", "gap", "tight spot", shoptest.MM("0.2", 0.2))
	b.Write(j.ID, "peg", "touches", "", shop.Words(shop.PegTouches))
	refused(b, j.ID, "peg", "run", "breather", "", shop.Words("yes"))
	b.Write(j.ID, "peg", "touches", "", shop.Words(shop.PegClear))

	// By the sum, too, until the gap has been read: 30° on 1.5 mm is 0.125 mm
	// (geometry), less 0.15 mm of run-out.
	b.Write(j.ID, "peg", "gap", "tight spot", shop.Withdrawn())
	b.Write(j.ID, "assemble", "runout", "", shoptest.MM("0.15", 0.15))
	b.Write(j.ID, "peg", "pitch", "", shoptest.MM("1.5", 1.5))
	b.Write(j.ID, "peg", "angle", "", shop.Figure("30 deg", math.Pi/6, quantity.Angle))
	if j = b.Write(j.ID, "peg", "spot", "", shop.Words("tight spot")); standing(j, "peg") != nil {
		t.Error("stopped although run-out only opens the gap from the tight spot on")
	}
	if s := standing(b.Write(j.ID, "peg", "spot", "", shop.Words("anywhere")), "peg"); s == nil || len(s.Because) != 4 {
		t.Errorf("the sum leaves no gap: %+v", s)
	}
	b.Write(j.ID, "peg", "gap", "tight spot", shoptest.MM("0.16", 0.16))
	b.Write(j.ID, "run", "breather", "", shop.Words("yes"))
}

// An override has a name and a reason, stands in the record, and covers what
// was known when it was given and nothing else.
func TestOverrideCoversTheCauseAsItStands(t *testing.T) {
	b := bench(t)
	j := b.Open(shop.WorkPeg)
	b.Write(j.ID, "clean", "cracks", "", shop.Words(shop.CrackEar))
	for _, c := range []struct {
		by   shop.Actor
		stop string
		why  string
		want shop.Code
	}{
		{b.Owner, "crack", "", shop.Invalid},
		{b.Owner, "crack", " \n", shop.Invalid},
		{b.Reader, "crack", "because", shop.Forbidden},
		{b.Adviser, "crack", "because", shop.Forbidden},
		{b.Owner, "peg", "because", shop.NotFound},
		{b.Owner, "nonsense", "because", shop.NotFound},
	} {
		_, err := b.Shop.Override(b.Ctx, c.by, j.ID, c.stop, c.why)
		wantCode(t, err, c.want)
	}
	j, err := b.Shop.Override(b.Ctx, b.Builder, j.ID, "crack", "ear is not used: cap goes to the other casting")
	if err != nil {
		t.Fatal(err)
	}
	s := standing(j, "crack")
	if s == nil || s.Override == nil || s.Override.Who.Name != b.Builder.Name || s.Override.Why == "" || !slices.Equal(s.Because, s.Override.Value.Because) {
		t.Fatalf("overridden stop: %+v", s)
	}
	b.Write(j.ID, "assemble", "gears", "", shop.Text("x"))

	// One more crack: the override no longer covers it.
	b.Write(j.ID, "clean", "cracks", "", shop.Words(shop.CrackEar, shop.CrackBore))
	refused(b, j.ID, "crack", "assemble", "gears", "", shop.Text("y"))
	if _, err = b.Shop.Override(b.Ctx, b.Owner, j.ID, "crack", "seen by the owner"); err != nil {
		t.Fatal(err)
	}
	j = b.Write(j.ID, "assemble", "gears", "", shop.Text("y"))
	if h := j.History(shop.Slot{Step: shop.StepJob, Item: "override", Place: "crack"}); len(h) != 2 {
		t.Errorf("%d overrides are in the record", len(h))
	}
}

// Each stop there is: refused with its cause, no reason no override, those who
// may not override it do not, and with a name and a reason the work goes on.
func TestEachStopIsOverriddenByNameWithAReason(t *testing.T) {
	b := bench(t)
	type write struct {
		step        shop.StepKey
		item, place string
		value       shop.Value
	}
	steel := write{"metal", "metal", "", shop.Words(shop.MetalSteel)}
	cases := map[string]struct {
		causes []write
		then   write
	}{
		"iron":    {[]write{{"metal", "metal", "", shop.Words(shop.MetalGrey)}}, write{"weld", "runs", "1", count("2")}},
		"vent":    {[]write{steel, {"plates", "vents", "", shop.Words(shop.VentMissing)}}, write{"weld", "runs", "1", count("2")}},
		"solvent": {[]write{steel, {"clean", "wash", "", shop.Words(shop.SolventChlorinated)}}, write{"weld", "runs", "1", count("2")}},
		"crack":   {[]write{{"clean", "cracks", "", shop.Words(shop.CrackBore)}}, write{"drill", "wall", "", shoptest.MM("8", 8)}},
		"kit": {[]write{{"identify", "casting", "", shop.LinkTo(shop.KindCasting, b.T31.ID)}, {"plates", "kit", "", shop.Used(b.Kits.ID, 1)}},
			write{"jig", "mandrel", "", shop.Words("free")}},
		"bores": {[]write{{"cooled", "bore_crown", "0°", shoptest.MM("80.01", 80.01)}, {"cooled", "caps", "", shop.Words(shop.CapsNotTorqued)}},
			write{"cooled", "decision", "", shop.Words("free")}},
		"peg": {[]write{{"peg", "touches", "", shop.Words(shop.PegTouches)}}, write{"handover", "day", "", shop.Day("2026-03-09")}},
	}
	for _, stop := range shop.AllStops() {
		t.Run(stop.Key, func(t *testing.T) {
			c, ok := cases[stop.Key]
			if !ok {
				t.Fatal("this stop has no test")
			}
			j := b.Open(shop.WorkPlates, shop.WorkPeg)
			for _, w := range c.causes {
				b.Write(j.ID, w.step, w.item, w.place, w.value)
			}
			refused(b, j.ID, stop.Key, c.then.step, c.then.item, c.then.place, c.then.value)
			for _, r := range []struct {
				by   shop.Actor
				why  string
				want shop.Code
			}{{b.Owner, "  ", shop.Invalid}, {b.Reader, "because", shop.Forbidden}, {b.Adviser, "because", shop.Forbidden}} {
				_, err := b.Shop.Override(b.Ctx, r.by, j.ID, stop.Key, r.why)
				wantCode(t, err, r.want)
			}
			by := b.Builder
			if stop.Owner {
				_, err := b.Shop.Override(b.Ctx, b.Builder, j.ID, stop.Key, "because")
				wantCode(t, err, shop.Forbidden)
				by = b.Owner
			}
			refused(b, j.ID, stop.Key, c.then.step, c.then.item, c.then.place, c.then.value)
			j, err := b.Shop.Override(b.Ctx, by, j.ID, stop.Key, "measured again by hand")
			if err != nil {
				t.Fatal(err)
			}
			if s := standing(j, stop.Key); s == nil || s.Override == nil || s.Override.Who.Name != by.Name || s.Override.Why != "measured again by hand" {
				t.Errorf("the record has %+v", s)
			}
			b.Write(j.ID, c.then.step, c.then.item, c.then.place, c.then.value)
		})
	}
}

// What was welded before the metal was found out gets no certificate until
// somebody answers for it by name.
func TestNoCertificateForWhatWasBuiltPastAStop(t *testing.T) {
	b := bench(t)
	j := stamped(b)
	b.Write(j.ID, "metal", "metal", "", shop.Words(shop.MetalSteel))
	b.Write(j.ID, "weld", "runs", "1", count("2"))
	b.Write(j.ID, "metal", "metal", "", shop.Words(shop.MetalGrey))
	_, err := b.Shop.Certify(b.Ctx, b.Owner, j.ID, "the rest was not ordered")
	if e := wantCode(t, err, shop.Stopped); e.Stop == nil || e.Stop.Key != "iron" {
		t.Errorf("stopped by %+v", e.Stop)
	}
	if _, err := b.Shop.Override(b.Ctx, b.Owner, j.ID, "iron", "chips of a second place are steel"); err != nil {
		t.Fatal(err)
	}
	if _, err := b.Shop.Certify(b.Ctx, b.Owner, j.ID, "the rest was not ordered"); err != nil {
		t.Error(err)
	}
}

// Nothing else forces an order: a fresh job takes a reading at every step that
// no stop guards.
func TestStepsAreFilledInAnyOrder(t *testing.T) {
	b := bench(t)
	j := b.Open(shop.Works...)
	b.Write(j.ID, "metal", "metal", "", shop.Words(shop.MetalSteel))
	all, written := shop.Steps(), 0
	for i := len(all) - 1; i >= 0; i-- {
		for _, f := range all[i].Fields {
			place := ""
			if len(f.Places) > 0 {
				place = f.Places[len(f.Places)-1]
			}
			var v shop.Value
			switch f.Kind {
			case shop.FieldFigure:
				v = shop.Figure("1", 1, f.Dim)
			case shop.FieldText:
				v = shop.Text("x")
			case shop.FieldDay:
				v = shop.Day("2026-01-31")
			case shop.FieldSum:
				v = shop.Sum(100)
			case shop.FieldChoice, shop.FieldChoices:
				v = shop.Words(f.Options[0].Word)
			default:
				continue // links and lots have tests of their own
			}
			if j.Standing(shop.Slot{Step: all[i].Key, Item: f.Key, Place: place}) != nil || f.Key == "work" || f.Key == "metal" {
				continue
			}
			if _, err := b.TryWrite(b.Owner, j.ID, all[i].Key, f.Key, place, v); err != nil {
				t.Errorf("%s/%s: %v", all[i].Key, f.Key, err)
			}
			written++
		}
	}
	if written < 120 {
		t.Errorf("only %d boxes were filled", written)
	}
}
