package sqlstore_test

import (
	"archive/zip"
	"bytes"
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"axlewright/shop"
	"axlewright/shop/shoptest"
	"axlewright/sqlstore"
)

// A backup of one database is restored into the other, and back, and nothing
// is lost on the way.
func TestBackupTravelsBetweenDatabases(t *testing.T) {
	postgres := newPostgres(t)
	inPostgres := func() *sqlstore.Store {
		return open(t, sqlstore.Options{Dir: t.TempDir(), Postgres: postgres(t)})
	}
	first := openSQLite(t, t.TempDir())
	b := shoptest.Fellgate(t, first)
	j := photographed(b)
	path := filepath.Join(t.TempDir(), "shop.zip")
	want, err := first.BackUpFile(t.Context(), b.Shop, path)
	if err != nil {
		t.Fatal(err)
	}
	for _, next := range []*sqlstore.Store{inPostgres(), openSQLite(t, t.TempDir())} {
		if _, err := next.RestoreFile(t.Context(), path); err != nil {
			t.Fatal(err)
		}
		again, err := shop.Open(t.Context(), next, shop.Options{})
		if err != nil {
			t.Fatal(err)
		}
		if found, err := again.VerifyJob(t.Context(), j.ID); err != nil || len(found) > 0 {
			t.Errorf("in %s: %v %v", next.About(), found, err)
		}
		path = filepath.Join(t.TempDir(), "again.zip")
		got, err := next.BackUpFile(t.Context(), again, path)
		if err != nil {
			t.Fatal(err)
		}
		if got.Jobs != want.Jobs || got.Entries != want.Entries || got.Cards != want.Cards || got.Files != want.Files || got.Shop != want.Shop {
			t.Errorf("in %s: %+v, want %+v", next.About(), got, want)
		}
	}
}

func photographed(b *shoptest.Bench) *shop.Job {
	b.T.Helper()
	j := b.Open()
	j, err := b.Shop.AddPhoto(b.Ctx, b.Builder, j.ID, "donor", "front", shoptest.Photograph(b.T, 60, 40))
	if err != nil {
		b.T.Fatal(err)
	}
	return j
}

func TestNightlyKeepsTheNewestAndCopiesPhotographsOnce(t *testing.T) {
	s := openSQLite(t, t.TempDir())
	b := shoptest.Fellgate(t, s)
	j := photographed(b)
	dir := filepath.Join(t.TempDir(), "stick")
	night := time.Date(2026, 3, 3, 2, 0, 0, 0, time.UTC)
	var paths []string
	for i := range 5 {
		path, err := s.BackUpInto(t.Context(), b.Shop, dir, 3, night.AddDate(0, 0, i))
		if err != nil {
			t.Fatal(err)
		}
		paths = append(paths, path)
	}
	kept, err := sqlstore.Nightlies(dir)
	if err != nil || len(kept) != 3 || kept[0] != paths[2] || kept[2] != paths[4] {
		t.Errorf("kept %v %v", kept, err)
	}
	if _, err := sqlstore.CheckFile(paths[4]); err != nil {
		t.Error(err)
	}
	store := openSQLite(t, t.TempDir())
	if _, err := store.RestoreFile(t.Context(), paths[4]); err != nil {
		t.Fatal(err)
	}
	again, err := shop.Open(t.Context(), store, shop.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if found, err := again.VerifyJob(t.Context(), j.ID); err != nil || len(found) > 0 {
		t.Errorf("restored from the night: %v %v", found, err)
	}
	// Without its photographs it is not whole.
	if err := os.RemoveAll(filepath.Join(dir, "files")); err != nil {
		t.Fatal(err)
	}
	_, err = sqlstore.CheckFile(paths[4])
	wantCode(t, err, shop.Damaged)
	_, err = sqlstore.CheckFile(filepath.Join(dir, "none.zip"))
	wantCode(t, err, shop.NotFound)
}

func TestNightlyRunsByItself(t *testing.T) {
	s := openSQLite(t, t.TempDir())
	b := shoptest.Fellgate(t, s)
	ctx, cancel := context.WithCancel(t.Context())
	done := make(chan error, 10)
	ended := make(chan bool)
	nightly := &sqlstore.Nightly{Store: s, Shop: b.Shop, Every: time.Millisecond, Done: func(_ string, err error) { done <- err }}
	if last, err := nightly.Last(); err != nil || !last.At.IsZero() {
		t.Errorf("before the first: %+v %v", last, err)
	}
	go func() {
		nightly.Run(ctx)
		close(ended)
	}()
	if err := <-done; err != nil {
		t.Error(err)
	}
	cancel()
	<-ended
	if kept, err := sqlstore.Nightlies(s.BackupDir()); err != nil || len(kept) != 1 {
		t.Errorf("after one night: %v %v", kept, err) // not one every millisecond
	}
	last, err := nightly.Last()
	if err != nil || last.Fault != "" || last.Bytes == 0 || last.Verdict(time.Now()) != shop.Fine || last.Verdict(time.Now().Add(48*time.Hour)) != shop.Look {
		t.Errorf("remembered: %+v %v", last, err)
	}
	// One that fails is remembered as such.
	if err := os.RemoveAll(s.BackupDir()); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(s.BackupDir(), nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := nightly.Make(t.Context()); err == nil {
		t.Error("a backup into a folder that is a file was made")
	}
}

// A backup with any one bit of it turned over is refused, or is still the same
// backup: the bit was one of those that say nothing, such as a date in the zip.
func TestADamagedBackupIsFoundWhereverItIs(t *testing.T) {
	s := openSQLite(t, t.TempDir())
	b := shoptest.Fellgate(t, s)
	photographed(b)
	dir := t.TempDir()
	path := filepath.Join(dir, "shop.zip")
	want, err := s.BackUpFile(t.Context(), b.Shop, path)
	if err != nil {
		t.Fatal(err)
	}
	good, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	z, err := zip.NewReader(bytes.NewReader(good), int64(len(good)))
	if err != nil {
		t.Fatal(err)
	}
	damaged := filepath.Join(dir, "damaged.zip")
	check := func(content []byte) (shop.Backup, error) {
		if err := os.WriteFile(damaged, content, 0o600); err != nil {
			t.Fatal(err)
		}
		return sqlstore.CheckFile(damaged)
	}
	// In the middle of each member: found, and the file is named.
	for _, member := range z.File {
		at, err := member.DataOffset()
		if err != nil {
			t.Fatal(err)
		}
		content := bytes.Clone(good)
		content[at+int64(member.CompressedSize64)/2] ^= 0x10
		_, err = check(content)
		if e := wantCode(t, err, shop.Damaged); !strings.HasPrefix(e.Error(), damaged+": ") || strings.Contains(e.Error(), ".:") {
			t.Errorf("%s: it says %q", member.Name, e)
		}
	}
	// Anywhere.
	found := 0
	for at := 0; at < len(good); at += 7 {
		content := bytes.Clone(good)
		content[at] ^= 1 << (at % 8)
		switch got, err := check(content); {
		case err != nil:
			found++
		case got.Shop != want.Shop || got.Entries != want.Entries || got.Cards != want.Cards || got.Files != want.Files:
			t.Errorf("byte %d: taken for another backup: %+v", at, got)
		}
	}
	if found < len(good)/7*8/10 {
		t.Errorf("only %d of %d damages were found", found, len(good)/7)
	}
	// Cut short.
	for _, cut := range []int{1, 22, len(good) / 2, len(good) - 1} {
		if _, err := check(good[:len(good)-cut]); err == nil {
			t.Errorf("%d bytes cut off and not found", cut)
		}
	}
}

// A record that was altered in the database does not keep the others from being
// saved, is told, and is not restored as if it were whole.
func TestBackupSetsDamagedRecordsAside(t *testing.T) {
	dir := t.TempDir()
	s := openSQLite(t, dir)
	b := shoptest.Fellgate(t, s)
	good, bad := b.Open(), b.Open()
	alter(t, dir, "UPDATE entries SET body = replace(body, '\"rear\"', '\"front\"') WHERE job = 2")

	found, err := b.Shop.VerifyJob(t.Context(), bad.ID)
	if err != nil || len(found) == 0 {
		t.Errorf("altered in the database: %v %v", found, err)
	}
	_, err = b.TryWrite(b.Owner, bad.ID, "lash", "lash", "1", shoptest.MM("0.15", 0.15))
	wantCode(t, err, shop.Damaged)

	path := filepath.Join(t.TempDir(), "shop.zip")
	made, err := s.BackUpFile(t.Context(), b.Shop, path)
	wantCode(t, err, shop.Damaged)
	if made.Jobs != 1 || len(made.Damaged) != 1 {
		t.Errorf("the backup holds %+v", made)
	}
	if content, err := os.ReadFile(path); err != nil || !bytes.Contains(content, []byte("damaged.jsonl")) {
		t.Errorf("the damaged record is not kept aside (%v)", err)
	}
	store := openSQLite(t, t.TempDir())
	if _, err := store.RestoreFile(t.Context(), path); err != nil {
		t.Fatal(err)
	}
	again, err := shop.Open(t.Context(), store, shop.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := again.Job(t.Context(), good.ID); err != nil {
		t.Error(err)
	}
	_, err = again.Job(t.Context(), bad.ID)
	wantCode(t, err, shop.NotFound)
}

func TestFilesThatRotAreFound(t *testing.T) {
	dir := t.TempDir()
	s := openSQLite(t, dir)
	b := shoptest.Fellgate(t, s)
	j := photographed(b)
	hash := j.All("donor", shop.ItemPhoto)[0].Value.File.SHA256
	path := filepath.Join(dir, "files", hash[:2], hash)
	if err := os.WriteFile(path, []byte("rot"), 0o600); err != nil {
		t.Fatal(err)
	}
	_, err := s.File(t.Context(), hash)
	wantCode(t, err, shop.Damaged)
	found, err := b.Shop.VerifyJob(t.Context(), j.ID)
	if err != nil || len(found) != 1 {
		t.Errorf("found %v %v", found, err)
	}
	// Uploading the photograph again mends it.
	photographed(b)
	if found, err = b.Shop.VerifyJob(t.Context(), j.ID); err != nil || len(found) != 0 {
		t.Errorf("after uploading again: %v %v", found, err)
	}
}
