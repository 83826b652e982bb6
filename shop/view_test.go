package shop_test

import (
	"testing"

	"axlewright/shop"
	"axlewright/shop/shoptest"
)

func TestGapsAreShownAndStepsBelongToTheirWorks(t *testing.T) {
	b := bench(t)
	plain, welded := b.Open(), b.Open(shop.WorkPlates)
	state := func(j *shop.Job, key shop.StepKey) shop.StepView {
		t.Helper()
		v, ok := j.Step(key)
		if !ok {
			t.Fatalf("no step %s", key)
		}
		return v
	}
	if v := state(plain, "weld"); v.State != shop.StepNotNeeded || v.Applies || v.Gaps != 0 {
		t.Errorf("weld of a standard rebuild: %q, %d gaps", v.State, v.Gaps)
	}
	if v := state(welded, "weld"); v.State != shop.StepEmpty || !v.Applies || v.Gaps == 0 {
		t.Errorf("weld of a build with plates: %q, %d gaps", v.State, v.Gaps)
	}
	b.Write(plain.ID, "identify", "casting", "", shop.LinkTo(shop.KindCasting, b.T24.ID))
	j := b.Write(plain.ID, "lash", "lash", "3", shoptest.MM("0.15", 0.15))
	v := state(j, "lash")
	if v.State != shop.StepBegun || v.Gaps != 3+1 || v.Verdict != shop.Fine { // three more places, and how the dial stood
		t.Errorf("one lash of four: %q, %d gaps, %q", v.State, v.Gaps, v.Verdict)
	}
	for _, place := range []string{"1", "5", "7"} {
		b.Write(plain.ID, "lash", "lash", place, shoptest.MM("0.19", 0.19))
	}
	j = b.Write(plain.ID, "lash", "dial", "", shop.Words("along the turn"))
	if v = state(j, "lash"); v.State != shop.StepFull || v.Gaps != 0 || v.Verdict != shop.Look {
		t.Errorf("four lashes: %q, %d gaps, %q", v.State, v.Gaps, v.Verdict)
	}
	// Steps before the furthest one that was begun show their gaps; those after do not.
	views := j.Steps()
	before := shop.Gaps(views)
	if before == 0 {
		t.Error("no gaps before the lash")
	}
	if next := j.Next(views); next != "pattern" { // after the step worked at last, which is full
		t.Errorf("next is %q", next)
	}
	j, err := b.Shop.Mark(b.Ctx, b.Builder, plain.ID, "strip", shop.MarkNotNeeded, 0, "came stripped")
	if err != nil {
		t.Fatal(err)
	}
	strip := state(j, "strip")
	if after := shop.Gaps(j.Steps()); strip.State != shop.StepNotNeeded || after >= before {
		t.Errorf("strip is %q; %d gaps, before %d", strip.State, after, before)
	}
	mark := j.Last(shop.Slot{Step: "strip", Item: shop.ItemMark})
	set := b.Set("strip", shop.ItemMark, "", shop.Withdrawn())
	set.Corrects = mark.Seq
	if j, err = b.Shop.Record(b.Ctx, b.Builder, plain.ID, set); err != nil {
		t.Fatal(err)
	}
	if after := shop.Gaps(j.Steps()); after != before {
		t.Errorf("with the mark taken back: %d gaps, before %d", after, before)
	}
}

func TestNotesPhotographsAndPapersBesideAStep(t *testing.T) {
	b := bench(t)
	j := b.Open()
	picture := shoptest.Photograph(t, 50, 40)
	for range 2 { // sent twice
		if _, err := b.Shop.Note(b.Ctx, b.Builder, j.ID, "strip", "swarf on the magnet", "n1"); err != nil {
			t.Fatal(err)
		}
		var err error
		if j, err = b.Shop.AddPhoto(b.Ctx, b.Builder, j.ID, "strip", "swarf", picture); err != nil {
			t.Fatal(err)
		}
	}
	v, _ := j.Step("strip")
	if len(v.Notes) != 1 || len(v.Photos) != 1 || v.State != shop.StepBegun {
		t.Fatalf("%d notes, %d photographs, %q", len(v.Notes), len(v.Photos), v.State)
	}
	photo := v.Photos[0]
	content, err := b.Shop.File(b.Ctx, *photo.Value.Thumb)
	if err != nil || int64(len(content)) != photo.Value.Thumb.Bytes || photo.Value.File.Width != 50 {
		t.Errorf("the small one: %d bytes, %v; %+v", len(content), err, photo.Value)
	}
	change := func(at *shop.Entry, v shop.Value) {
		t.Helper()
		set := shop.Set{Slot: at.Slot(), Value: v, Corrects: j.Last(at.Slot()).Seq}
		if j, err = b.Shop.Record(b.Ctx, b.Builder, j.ID, set); err != nil {
			t.Fatal(err)
		}
	}
	change(v.Notes[0], shop.Text("bronze on the magnet"))
	change(photo, shop.Text("bronze"))
	v, _ = j.Step("strip")
	if v.Notes[0].Value.Text != "bronze on the magnet" || v.Photos[0].Value.Text != "bronze" || v.Photos[0].Value.File == nil {
		t.Errorf("changed: %+v, %+v", v.Notes[0].Value, v.Photos[0].Value)
	}
	change(photo, shop.Withdrawn())
	if v, _ = j.Step("strip"); len(v.Photos) != 0 || len(j.History(photo.Slot())) != 3 {
		t.Errorf("taken back: %d shown, %d in the record", len(v.Photos), len(j.History(photo.Slot())))
	}
	if j, err = b.Shop.AddPhoto(b.Ctx, b.Builder, j.ID, "strip", "again", picture); err != nil {
		t.Fatal(err)
	}
	if v, _ = j.Step("strip"); len(v.Photos) != 1 {
		t.Errorf("added again: %d shown", len(v.Photos))
	}

	// Advice is kept byte for byte, with numbers that no float holds.
	advice := []byte(`{ "seed":18446744073709551615, "x":1.10 }` + "\n")
	for i := range 2 {
		if j, err = b.Shop.Attach(b.Ctx, b.Adviser, j.ID, shop.Attachment{Kind: shop.EntryAdvice, Step: "enquiry", Name: "advice.json", Media: "application/json", Content: advice, Ticket: string(rune('a' + i))}); err != nil {
			t.Fatal(err)
		}
	}
	kept := j.Kept(shop.EntryAdvice)
	if len(kept) != 2 {
		t.Fatalf("%d pieces of advice", len(kept))
	}
	if content, err = b.Shop.File(b.Ctx, *kept[0].Value.File); err != nil || string(content) != string(advice) {
		t.Errorf("advice came back as %s (%v)", content, err)
	}
	if findings, err := b.Shop.VerifyJob(b.Ctx, j.ID); err != nil || len(findings) > 0 {
		t.Errorf("%v %v", findings, err)
	}
}
