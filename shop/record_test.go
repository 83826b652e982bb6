package shop_test

import (
	"math"
	"testing"
	"time"

	"axlewright/quantity"
	"axlewright/shop"
	"axlewright/shop/shoptest"
)

func TestWhatABoxDoesNotHold(t *testing.T) {
	b := bench(t)
	j := b.Open()
	nan, inf := math.NaN(), math.Inf(1)
	for name, c := range map[string]struct {
		step  shop.StepKey
		item  string
		place string
		value shop.Value
		want  shop.Code
	}{
		"no such step":          {"magic", "x", "", shop.Text("x"), shop.NotFound},
		"no such box":           {"lash", "magic", "", shop.Text("x"), shop.NotFound},
		"no such place":         {"lash", "lash", "9", shoptest.MM("0.1", 0.1), shop.Invalid},
		"a place with a stroke": {"stations", "gap", "a/b", shoptest.MM("0.1", 0.1), shop.Invalid},
		"no place":              {"lash", "lash", "", shoptest.MM("0.1", 0.1), shop.Invalid},
		"words for a number":    {"lash", "lash", "1", shop.Text("tight"), shop.Invalid},
		"no unit":               {"lash", "lash", "1", shop.Value{Typed: "0.1"}, shop.Invalid},
		"another kind":          {"lash", "lash", "1", shop.Figure("5 N·m", 5, quantity.Torque), shop.Invalid},
		"no number":             {"lash", "lash", "1", shop.Value{Typed: "x", SI: &nan, Dim: quantity.Length}, shop.Invalid},
		"endless":               {"lash", "lash", "1", shop.Value{Typed: "x", SI: &inf, Dim: quantity.Length}, shop.Invalid},
		"a number and words":    {"lash", "lash", "1", shop.Value{Typed: "1 mm", SI: new(float64), Dim: quantity.Length, Words: []string{"x"}}, shop.Invalid},
		"a word not offered":    {"metal", "metal", "", shop.Words("tin"), shop.Invalid},
		"two words of one":      {"metal", "metal", "", shop.Words(shop.MetalGrey, shop.MetalSteel), shop.Invalid},
		"a word twice":          {"clean", "wash", "", shop.Words("caustic", "caustic"), shop.Invalid},
		"no word":               {"clean", "wash", "", shop.Value{}, shop.Invalid},
		"no text":               {"enquiry", "why", "", shop.Text(" \n\u200e"), shop.Invalid},
		"no day":                {"enquiry", "due", "", shop.Day("31.12.2026"), shop.Invalid},
		"a day that is none":    {"enquiry", "due", "", shop.Day("2026-02-30"), shop.Invalid},
		"less than nothing":     {"deal", "price", "", shop.Sum(-1), shop.Invalid},
		"another kind of card":  {"enquiry", "customer", "", shop.LinkTo(shop.KindVehicle, b.Vehicle.ID), shop.Invalid},
		"no such card":          {"enquiry", "customer", "", shop.LinkTo(shop.KindCustomer, "none"), shop.NotFound},
		"another kind of lot":   {"assemble", "head_bearing", "", shop.Used(b.CapBolts.ID, 1), shop.Invalid},
		"none of a lot":         {"assemble", "head_bearing", "", shop.Used(b.Head.ID, 0), shop.Invalid},
		"a number of two lines": {"stamp", "number", "", shop.Text("01\n17"), shop.Invalid},
		"a number of signs":     {"stamp", "number", "", shop.Text("--//"), shop.Invalid},
		"a note that is none":   {"lash", "note", "x", shop.Text("x"), shop.NotFound},
		"a photograph":          {"lash", "photo", "x", shop.Value{File: &shop.File{SHA256: "x"}}, shop.NotFound},
	} {
		set := b.Set(c.step, c.item, c.place, c.value)
		if last := j.Last(set.Slot); last != nil {
			set.Corrects = last.Seq
		}
		if _, err := b.Shop.Record(b.Ctx, b.Owner, j.ID, set); shop.CodeOf(err) != c.want {
			t.Errorf("%s: %v, want %q", name, err, c.want)
		}
	}
	_, err := b.Shop.Record(b.Ctx, b.Owner, "none", b.Set("lash", "lash", "1", shoptest.MM("0.1", 0.1)))
	wantCode(t, err, shop.NotFound)
	late := b.Set("lash", "lash", "1", shoptest.MM("0.1", 0.1))
	late.Taken = time.Date(2030, 1, 1, 0, 0, 0, 0, time.UTC)
	_, err = b.Shop.Record(b.Ctx, b.Owner, j.ID, late)
	wantCode(t, err, shop.Invalid)
	again, err := b.Shop.Job(b.Ctx, j.ID)
	if err != nil || len(again.Entries()) != len(j.Entries()) {
		t.Errorf("something of it was written: %d entries, had %d (%v)", len(again.Entries()), len(j.Entries()), err)
	}
}

// The range beside a box: the variant's own spec before the house's, the
// house's before the bands of the trade. What stood there stays in the record.
func TestRangesBesideABox(t *testing.T) {
	b := bench(t)
	j := b.Open()
	slot := shop.Slot{Step: "lash", Item: "lash", Place: "1"}
	j = b.Write(j.ID, slot.Step, slot.Item, slot.Place, shoptest.MM("x", 0.15))
	if e := j.Standing(slot); e.Verdict != shop.NotYet || !e.Limit.Vague {
		t.Errorf("without a kind of axle: %q beside %+v", e.Verdict, e.Limit)
	}
	b.Write(j.ID, slot.Step, slot.Item, slot.Place, shop.Withdrawn())
	b.Write(j.ID, "identify", "casting", "", shop.LinkTo(shop.KindCasting, b.T24.ID))
	write := func(mm float64) *shop.Entry {
		t.Helper()
		return b.Write(j.ID, slot.Step, slot.Item, slot.Place, shoptest.MM("x", mm)).Standing(slot)
	}
	check := func(what string, e *shop.Entry, verdict shop.Verdict, source string) {
		t.Helper()
		if e.Verdict != verdict || e.Limit == nil || e.Limit.Source != source {
			t.Errorf("%s: %q beside %+v, want %q by %q", what, e.Verdict, e.Limit, verdict, source)
		}
	}
	band := "published for axles of this kind; the manual of the axle on the bench wins"
	check("trade", write(0.15), shop.Fine, band)
	check("trade, outside", write(0.30), shop.Look, band)

	house, err := shop.Get[shop.House](b.Ctx, b.Shop, shop.HouseID)
	if err != nil {
		t.Fatal(err)
	}
	low, high := 0.10e-3, 0.20e-3
	house.Specs = []shop.Spec{{Step: "lash", Field: "lash", Limit: shop.Limit{Low: &low, High: &high, Origin: shop.Measured, Source: "our own, since 2019"}}}
	if house, err = shop.Save(b.Ctx, b.Shop, b.Owner, house); err != nil {
		t.Fatal(err)
	}
	check("house", write(0.20), shop.Fine, "our own, since 2019")
	check("house, outside", write(0.205), shop.Halt, "our own, since 2019")

	top := 0.25e-3
	b.T24.Specs = []shop.Spec{{Step: "lash", Field: "lash", Limit: shop.Limit{Low: &low, High: &top, Typed: "0.10 to 0.25 mm", Origin: shop.Maker, Source: "manual, page 51-12"}}}
	if _, err = shop.Save(b.Ctx, b.Shop, b.Owner, b.T24); err != nil {
		t.Fatal(err)
	}
	check("variant", write(0.21), shop.Fine, "manual, page 51-12")

	// The page changes; what was judged against the old one still says so.
	j, err = b.Shop.Job(b.Ctx, j.ID)
	if err != nil {
		t.Fatal(err)
	}
	var sources []string
	for _, e := range j.History(slot)[2:] {
		sources = append(sources, e.Limit.Source)
	}
	if len(sources) != 5 || sources[0] != band || sources[2] != "our own, since 2019" {
		t.Errorf("the record keeps %q", sources)
	}

	for _, bad := range []shop.Spec{
		{Step: "lash", Field: "magic", Limit: shop.Limit{Low: &low, Source: "x"}},
		{Step: "metal", Field: "metal", Limit: shop.Limit{Low: &low, Source: "x"}},
		{Step: "lash", Field: "lash", Limit: shop.Limit{Source: "x"}},
		{Step: "lash", Field: "lash", Limit: shop.Limit{Low: &high, High: &low, Source: "x"}},
		{Step: "lash", Field: "lash", Limit: shop.Limit{Low: &low, High: &high}},
	} {
		house.Specs = []shop.Spec{bad}
		_, err := shop.Save(b.Ctx, b.Shop, b.Owner, house)
		wantCode(t, err, shop.Invalid)
	}
}

// New bearings and used ones have other bands (published manuals).
func TestPreloadOfUsedBearings(t *testing.T) {
	b := bench(t)
	j := b.Open()
	b.Write(j.ID, "identify", "casting", "", shop.LinkTo(shop.KindCasting, b.T24.ID))
	write := func(nm float64) shop.Verdict {
		t.Helper()
		slot := shop.Slot{Step: "preload", Item: "torque"}
		return b.Write(j.ID, slot.Step, slot.Item, "", shop.Figure("x N·m", nm, quantity.Torque)).Standing(slot).Verdict
	}
	if got := write(1.4); got != shop.Look {
		t.Errorf("1.4 N·m on bearings not said to be used: %q", got)
	}
	b.Write(j.ID, "preload", "bearings", "", shop.Words("used"))
	if got := write(1.41); got != shop.Fine {
		t.Errorf("1.41 N·m on used bearings: %q", got)
	}
	if got := write(2.5); got != shop.Look {
		t.Errorf("2.5 N·m on used bearings: %q", got)
	}
	b.Write(j.ID, "preload", "bearings", "", shop.Words("new"))
	if got := write(2.51); got != shop.Fine {
		t.Errorf("2.51 N·m on new bearings: %q", got)
	}
	// New 2.0 to 4.5 N·m without the seal, which adds 0.3 to 0.6 N·m (common
	// practice, no source): 2.6 to 4.8 N·m hold whatever the seal drags.
	b.Write(j.ID, "preload", "seal", "", shop.Words("in"))
	for nm, want := range map[float64]shop.Verdict{2.52: shop.Look, 2.61: shop.Fine, 4.79: shop.Fine, 4.81: shop.Look} {
		if got := write(nm); got != want {
			t.Errorf("%g N·m with the seal in: %q, want %q", nm, got, want)
		}
	}
}

func TestALotPastItsDayIsShown(t *testing.T) {
	b := bench(t) // the resin was to be used by the end of February; it is March
	j := b.Open(shop.WorkPlates)
	e := b.Write(j.ID, "resin", "resin", "", shop.Used(b.Resin.ID, 0.3)).Standing(shop.Slot{Step: "resin", Item: "resin"})
	if e.Verdict != shop.Look || e.Value.Text != "It was to be used by 2026-02-28." {
		t.Errorf("%q %q", e.Verdict, e.Value.Text)
	}
	if v, err := b.Shop.Lot(b.Ctx, b.Resin.ID); err != nil || !v.Expired {
		t.Errorf("the lot %+v %v", v, err)
	}
}

func TestADonorServesOneJob(t *testing.T) {
	b := bench(t)
	one, two := b.Open(), b.Open()
	take := func(j *shop.Job) error {
		_, err := b.TryWrite(b.Builder, j.ID, "donor", "donor", "", shop.LinkTo(shop.KindDonor, b.Donor.ID))
		return err
	}
	if err := take(one); err != nil {
		t.Fatal(err)
	}
	if e := wantCode(t, take(two), shop.Short); e.Says != "Donor D-12 is kept for job 0001." {
		t.Errorf("it says %q", e.Says)
	}
	donors, _, err := b.Shop.Donors(b.Ctx, shop.CardQuery{})
	if err != nil || len(donors) != 2 || donors[0].Job == nil || donors[0].Job.Job != one.ID || donors[1].Job != nil {
		t.Errorf("donors %+v %v", donors, err)
	}
	// The customer declines: it is free again.
	if _, err := b.Shop.SetState(b.Ctx, b.Adviser, one.ID, shop.StateDeclined, 0, "too dear"); err != nil {
		t.Fatal(err)
	}
	if err := take(two); err != nil {
		t.Error(err)
	}
}

func TestKitRevisionsAreNeverChanged(t *testing.T) {
	b := bench(t)
	k := b.Kit
	k.Revisions = append(k.Revisions, shop.KitRevision{Name: "4", Fits: []shop.ID{b.T24.ID}})
	k.Revisions[0].Closed = true
	k, err := shop.Save(b.Ctx, b.Shop, b.Builder, k)
	if err != nil {
		t.Fatal(err)
	}
	changed, dropped := k, k
	changed.Revisions = append([]shop.KitRevision{}, k.Revisions...)
	changed.Revisions[1].Fits = []shop.ID{b.T31.ID}
	dropped.Revisions = k.Revisions[1:]
	for _, bad := range []shop.Kit{changed, dropped} {
		_, err := shop.Save(b.Ctx, b.Shop, b.Owner, bad)
		wantCode(t, err, shop.Invalid)
	}
}
