package shoptest

import (
	"bytes"
	"image"
	"image/color"
	"image/jpeg"
	"testing"

	"axlewright/shop"
)

// Photograph is a picture to upload.
func Photograph(t testing.TB, w, h int) []byte {
	t.Helper()
	m := image.NewRGBA(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			m.Set(x, y, color.RGBA{uint8(x * 255 / w), uint8(y * 255 / h), 120, 255})
		}
	}
	var out bytes.Buffer
	if err := jpeg.Encode(&out, m, nil); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// whole builds a job with a bit of everything and returns it.
func whole(b *Bench) *shop.Job {
	b.T.Helper()
	j := b.Open(shop.WorkPlates, shop.WorkPeg)
	b.Write(j.ID, "identify", "casting", "", shop.LinkTo(shop.KindCasting, b.T24.ID))
	b.Write(j.ID, "donor", "donor", "", shop.LinkTo(shop.KindDonor, b.Donor.ID))
	b.Write(j.ID, "metal", "metal", "", shop.Words(shop.MetalDuctile))
	b.Write(j.ID, "plates", "kit", "", shop.Used(b.Kits.ID, 1))
	b.Write(j.ID, "lash", "lash", "1", MM("0.15", 0.15))
	b.Write(j.ID, "lash", "lash", "1", MM("0.16", 0.16))
	b.Write(j.ID, "stamp", "number", "", shop.Text("0117-T24-A3"))
	_, err := b.Shop.AddPhoto(b.Ctx, b.Builder, j.ID, "weld", "first run", Photograph(b.T, 400, 300))
	b.must(err)
	_, err = b.Shop.Attach(b.Ctx, b.Adviser, j.ID, shop.Attachment{Kind: shop.EntryAdvice, Step: "enquiry", Name: "advice.json",
		Media: "application/json", Content: []byte(`{"seed":18446744073709551615}`), Words: []string{"strengthen"}})
	b.must(err)
	_, err = b.Shop.Certify(b.Ctx, b.Owner, j.ID, "the rest was not ordered")
	b.must(err)
	j, err = b.Shop.Job(b.Ctx, j.ID)
	b.must(err)
	return j
}

func testExport(t *testing.T, open Opener) {
	here, there := Fellgate(t, open(t)), Fellgate(t, open(t))
	j := whole(here)
	var file bytes.Buffer
	here.must(here.Shop.Export(here.Ctx, here.Owner, j.ID, &file))
	read := func(b *Bench, content []byte) (shop.Imported, error) {
		return b.Shop.Import(b.Ctx, b.Owner, bytes.NewReader(content), int64(len(content)))
	}

	// Here it is already: nothing changes.
	again, err := read(here, file.Bytes())
	here.must(err)
	if again.Added != 0 || !again.Signed {
		t.Errorf("importing at home: %+v", again)
	}
	// There it arrives whole, with its number, its cards and its files.
	came, err := read(there, file.Bytes())
	there.must(err)
	if came.Added != len(j.Entries()) || !came.Signed {
		t.Errorf("importing elsewhere: added %d of %d, signed %v", came.Added, len(j.Entries()), came.Signed)
	}
	found, err := there.Shop.VerifyJob(there.Ctx, j.ID)
	there.must(err)
	if len(found) > 0 {
		t.Errorf("elsewhere: %v", found)
	}
	lines, err := there.Shop.Search(there.Ctx, "0117T24A3", 0)
	there.must(err)
	if len(lines) != 1 || lines[0].Origin != here.Shop.ID() || len(lines[0].Marks) == 0 {
		t.Errorf("found elsewhere: %+v", lines)
	}
	used, _, err := there.Shop.UsedIn(there.Ctx, shop.KindLot, here.Kits.ID, 100)
	there.must(err)
	equal(t, "uses of the kit elsewhere", len(used), 1)
	twice, err := read(there, file.Bytes())
	there.must(err)
	equal(t, "importing again", twice.Added, 0)

	// It goes on here; the longer copy continues the one there, the shorter one
	// changes nothing here.
	here.Write(j.ID, "lash", "lash", "2", MM("0.17", 0.17))
	var longer bytes.Buffer
	here.must(here.Shop.Export(here.Ctx, here.Owner, j.ID, &longer))
	more, err := read(there, longer.Bytes())
	there.must(err)
	equal(t, "added by the longer copy", more.Added, 1)
	old, err := read(here, file.Bytes())
	here.must(err)
	equal(t, "added by the shorter copy", old.Added, 0)

	// They go separate ways: refused.
	there.Write(j.ID, "lash", "lash", "3", MM("0.18", 0.18))
	here.Write(j.ID, "lash", "lash", "3", MM("0.19", 0.19))
	var apart bytes.Buffer
	here.must(here.Shop.Export(here.Ctx, here.Owner, j.ID, &apart))
	_, err = read(there, apart.Bytes())
	wantCode(t, err, shop.Conflict)
	_, err = there.Shop.Import(there.Ctx, there.Builder, bytes.NewReader(file.Bytes()), int64(file.Len()))
	wantCode(t, err, shop.Forbidden)
}

func testBackup(t *testing.T, open Opener) {
	b := Fellgate(t, open(t))
	b.must(b.Shop.SetSecret(b.Ctx, b.Owner, b.Builder.ID, "corrèct horse"))
	j := whole(b)
	empty := shop.NewID()
	update(b, func(tx shop.Tx) error { return tx.AddJob(empty) })
	second := b.Open()
	var file bytes.Buffer
	made, err := b.Shop.BackUp(b.Ctx, b.Owner, &file, true)
	b.must(err)
	if made.Jobs != 3 || made.Entries < 15 || made.Cards < 20 || made.Files != 3 || len(made.Damaged)+len(made.Lost) > 0 {
		t.Errorf("backup holds %+v", made)
	}
	checked, err := shop.CheckBackup(bytes.NewReader(file.Bytes()), int64(file.Len()), nil)
	b.must(err)
	equal(t, "jobs as checked", checked.Jobs, made.Jobs)

	store := open(t)
	if _, err := shop.Restore(b.Ctx, store, bytes.NewReader(file.Bytes()), int64(file.Len()), nil); err != nil {
		t.Fatal(err)
	}
	again, err := shop.Open(b.Ctx, store, shop.Options{Now: b.Clock.Now})
	b.must(err)
	equal(t, "the shop", again.ID(), b.Shop.ID())
	equal(t, "its key", again.PublicKey(), b.Shop.PublicKey())
	for _, id := range []shop.ID{j.ID, second.ID} {
		found, err := again.VerifyJob(b.Ctx, id)
		b.must(err)
		if len(found) > 0 {
			t.Errorf("restored: %v", found)
		}
	}
	before, err := b.Shop.FindJobs(b.Ctx, shop.JobQuery{})
	b.must(err)
	after, err := again.FindJobs(b.Ctx, shop.JobQuery{})
	b.must(err)
	equal(t, "jobs listed", len(after.Lines), len(before.Lines))
	lines, err := again.Search(b.Ctx, "0117-T24", 0)
	b.must(err)
	equal(t, "found by number", len(lines), 1)
	history, err := shop.History[shop.House](b.Ctx, again, shop.HouseID)
	b.must(err)
	equal(t, "revisions of the house card", len(history), 2)
	_, _, err = again.SignIn(b.Ctx, b.Builder.ID, "corrèct horse", "1.2.3.4", "")
	b.must(err)
	next, err := again.OpenJob(b.Ctx, b.Owner, "")
	b.must(err)
	equal(t, "the next number", next.Number, second.Number+1)

	// Not over a shop that is there.
	_, err = shop.Restore(b.Ctx, store, bytes.NewReader(file.Bytes()), int64(file.Len()), nil)
	wantCode(t, err, shop.Conflict)
	// A backup cut short is refused, and leaves nothing.
	bare := open(t)
	cut := file.Bytes()[:file.Len()/2]
	_, err = shop.Restore(b.Ctx, bare, bytes.NewReader(cut), int64(len(cut)), nil)
	wantCode(t, err, shop.Damaged)
	err = bare.View(b.Ctx, func(tx shop.Tx) error {
		names, err := tx.Settings()
		equal(t, "settings left", len(names), 0)
		return err
	})
	b.must(err)
	_, err = b.Shop.BackUp(b.Ctx, b.Builder, &file, true)
	wantCode(t, err, shop.Forbidden)
}
